//! The fields of a form: read by a line, and written by what is typed there.

use leptos::prelude::*;

/// A field of a form, for a line to show.
pub fn read<T: Send + Sync + 'static>(form: RwSignal<T>, read: fn(&T) -> &String) -> Signal<String> {
    Signal::derive(move || form.with(|form| read(form).clone()))
}

/// Writes what is typed into a field of a form.
pub fn write<T: Send + Sync + 'static>(form: RwSignal<T>, write: fn(&mut T, String)) -> Callback<String> {
    Callback::new(move |typed: String| form.update(|form| write(form, typed)))
}
