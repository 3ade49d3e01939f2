//! Data files of the app that are fetched only when a screen needs them: the geoid, borders.

use crate::context::Context;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// How far a file is.
pub enum Asset<T> {
    /// Not here.
    Not,
    /// Here, and read.
    There(T),
    /// It could not be had.
    Failed,
}

impl<T> Asset<T> {
    /// What was read.
    pub fn there(&self) -> Option<&T> {
        if let Self::There(read) = self { Some(read) } else { None }
    }
}

/// A file by its path below the app's root, fetched and read once `needed` says so.
pub fn asset<T: 'static>(
    page: Context,
    path: &'static str,
    read: fn(&[u8]) -> Option<T>,
    needed: impl Fn() -> bool + 'static,
) -> RwSignal<Asset<T>, LocalStorage> {
    let file = RwSignal::new_local(Asset::Not);
    Effect::new(move |asked: Option<bool>| {
        let asked = asked.unwrap_or_default();
        if asked || !needed() {
            return asked;
        }
        spawn_local(async move {
            let bytes = page.ports().assets.bytes(path).await.ok();
            let _ = file.try_set(bytes.and_then(|bytes| read(&bytes)).map_or(Asset::Failed, Asset::There));
        });
        true
    });
    file
}
