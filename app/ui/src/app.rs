//! The page: one context, and the screen that the address names.

use crate::context::Context;
use crate::far;
use crate::jump;
use crate::narrow::narrowed;
use crate::route::{Route, Screen};
use crate::screens;
use crate::shortcuts;
use leptos::ev;
use leptos::prelude::*;
use leptos::task::spawn_local;
use phrases::Language;
use ports::Ports;

/// The whole page.
#[component]
pub fn App(
    /// How the outside world is asked.
    ports: StoredValue<Ports, LocalStorage>,
) -> impl IntoView {
    let page = Context::new(ports.get_value(), Route::read(&hash()).unwrap_or_default());
    let language = logbook::setup::DeviceSettings::load(&*page.ports().draft, page.book()).language;
    provide_context(Language::from_code(&language));
    provide_context(page);
    follow_address(page);
    follow_clock(page);
    shortcuts::listen();
    screens::listen(page);
    page.ports().device.on_update(Box::new(move || page.update.set(true)));
    spawn_local(async move {
        page.driver().open().await;
        far::fetch(page);
    });
    let screen = narrowed(move || page.route.with(|route| route.screen.clone()));
    view! { {move || shown(screen.get())} }
}

fn shown(screen: Screen) -> AnyView {
    match screen {
        Screen::Start => view! { <screens::Start/> }.into_any(),
        Screen::NewCatch => view! { <screens::NewCatch/> }.into_any(),
        other => far::screen_of(other),
    }
}

/// Follows the address; another book means another page.
fn follow_address(page: Context) {
    let handle = window_event_listener(ev::hashchange, move |_| {
        let Some(route) = Route::read(&hash()) else { return };
        if route.book != page.book() {
            let _ = window().location().reload();
        } else if page.route.with_untracked(|shown| *shown != route) {
            page.fault.set(None);
            page.gone_on();
            let in_place = page.route.with_untracked(|shown| shown.screen.stays_for(&route.screen));
            page.route.set(route);
            if !in_place {
                jump::to_top();
            }
        }
    });
    on_cleanup(move || handle.remove());
}

fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// Keeps "now" at the minute.
fn follow_clock(page: Context) {
    spawn_local(async move {
        loop {
            page.ports().time.wait(2_000).await;
            let now = page.moment();
            let minute = |at: ports::device::Moment| (at.unix_ms.div_euclid(60_000), at.offset_minutes);
            if minute(page.now.get_untracked()) != minute(now) {
                page.now.set(now);
            }
        }
    });
}
