//! Files that come by themselves, and what was imported last: both outlive the screen.

use crate::context::Context;
use crate::route::Screen;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::exchange::Imported;
use logbook::view::Plate;
use ports::files::File;

/// What became of the last import of this page.
#[derive(Clone)]
pub enum Last {
    /// It was written.
    Done {
        /// What it did.
        imported: Imported,
        /// Numbers that stand twice since.
        twice: Vec<Plate>,
    },
    /// It was taken back.
    Undone,
}

/// What the page keeps of imports.
#[derive(Clone, Copy)]
pub struct Inbox {
    /// A file that was dropped, or sent from another app.
    pub file: RwSignal<Option<File>, LocalStorage>,
    /// What was imported last.
    pub last: RwSignal<Option<Last>, LocalStorage>,
}

/// Takes files for as long as the page lives: each leads to the import screen.
pub fn listen(page: Context) {
    let inbox = Inbox { file: RwSignal::new_local(None), last: RwSignal::new_local(None) };
    provide_context(inbox);
    let take = move |file: File| {
        inbox.file.set(Some(file));
        page.go(Screen::Import);
    };
    page.ports().files.on_drop(Box::new(take));
    spawn_local(async move {
        let files = page.ports().files;
        if let Some(file) = files.received().await {
            take(file);
        }
    });
}
