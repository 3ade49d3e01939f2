//! The pages, in Leptos: screens, the parts of which they are built, and the explaining of what went wrong.
//!
//! In go the ports, out comes a running page. Components show and do not decide: what is worth a test belongs to
//! `logbook` or below. The words belong to `phrases`; how the device is reached belongs to the ports.

pub mod app;
pub mod asset;
pub mod context;
pub mod desk;
pub mod draft;
pub mod explain;
pub mod far;
pub mod frame;
pub mod here;
pub mod jump;
pub mod narrow;
pub mod parts;
pub mod percent;
pub mod route;
pub mod rows;
pub mod screens;
pub mod shortcuts;
pub mod theme;
pub mod turn;

use leptos::prelude::*;
use ports::Ports;

/// Mounts the page.
pub fn mount(ports: Ports) {
    leptos::mount::mount_to_body(move || {
        let ports = StoredValue::new_local(ports.clone());
        view! { <app::App ports/> }
    });
}
