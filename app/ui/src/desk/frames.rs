use leptos::prelude::*;
use std::time::Duration;

/// Follows a signal after the next frame: what is typed is painted first, what it leads to is worked out then, and
/// only for the last of several changes.
pub fn after_frame<T: Clone + PartialEq + Send + Sync + 'static>(source: Signal<T>) -> Signal<T> {
    let shown = RwSignal::new(source.get_untracked());
    let waiting = StoredValue::new(false);
    Effect::new(move |_| {
        source.track();
        if waiting.try_update_value(|waiting| std::mem::replace(waiting, true)) == Some(false) {
            request_animation_frame(move || set_timeout(move || take(source, shown, waiting), Duration::ZERO));
        }
    });
    shown.into()
}

fn take<T: Clone + PartialEq + Send + Sync + 'static>(
    source: Signal<T>,
    shown: RwSignal<T>,
    waiting: StoredValue<bool>,
) {
    let _ = waiting.try_set_value(false);
    let (Some(now), Some(before)) = (source.try_get_untracked(), shown.try_get_untracked()) else { return };
    if now != before {
        shown.set(now);
    }
}
