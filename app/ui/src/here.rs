//! Follows the device while a form says "here": one watch, ended with the form.

use crate::context::Context;
use leptos::prelude::*;
use logbook::places::Fixes;
use ports::position::{NoFix, Watch};

/// Watches the device's position while `wanted`; `heard` is called with all fixes so far at every new one. Says why
/// there is no fix while there is none.
pub fn follow(
    page: Context,
    wanted: Signal<bool>,
    heard: impl Fn(&Fixes) + Send + Sync + 'static,
) -> Signal<Option<NoFix>> {
    let trouble = RwSignal::new(None);
    let watch: StoredValue<Option<Box<dyn Watch>>, LocalStorage> = StoredValue::new_local(None);
    let heard = StoredValue::new(heard);
    Effect::new(move |_| {
        if !wanted.get() {
            watch.set_value(None);
            return;
        }
        let fixes = StoredValue::new_local(Fixes::since(page.moment().unix_ms));
        let each = move |fix| match fix {
            Ok(fix) => {
                let _ = trouble.try_set(None);
                fixes.try_update_value(|fixes| fixes.take(fix));
                fixes.try_with_value(|fixes| heard.try_with_value(|heard| heard(fixes)));
            }
            Err(why) => drop(trouble.try_set(Some(why))),
        };
        watch.set_value(Some(page.ports().position.watch(Box::new(each))));
    });
    on_cleanup(move || {
        watch.try_set_value(None);
    });
    trouble.into()
}
