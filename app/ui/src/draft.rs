//! A form that is kept as it is typed: every change is written to the device at once, before anything else happens.

use crate::context::{Context, use_page};
use crate::narrow::narrowed;
use leptos::prelude::*;
use logbook::kept::{self, Kept};

/// A form in a signal, and the name under which it is kept.
pub struct Draft<T: Send + Sync + 'static> {
    /// The form.
    pub form: RwSignal<T>,
    name: StoredValue<String>,
    page: Context,
}

impl<T: Send + Sync + 'static> Clone for Draft<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T: Send + Sync + 'static> Copy for Draft<T> {}

impl<T: Kept + Send + Sync + 'static> Draft<T> {
    /// What lies kept under this name; else a fresh form, which is kept from the first change on.
    pub fn open(name: &str, fresh: impl FnOnce() -> T) -> Self {
        let page = use_page();
        let form = Self::kept(page, name).unwrap_or_else(fresh);
        Self { form: RwSignal::new(form), name: StoredValue::new(full(page, name)), page }
    }

    /// What lies kept under this name in the book that is open.
    pub fn kept(page: Context, name: &str) -> Option<T> {
        kept::form_of_json(&page.ports().draft.get(&full(page, name))?)
    }

    /// Changes the form and keeps it.
    pub fn change(&self, change: impl FnOnce(&mut T)) {
        self.change_unkept(change);
        self.keep();
    }

    /// Changes the form without keeping it: for what comes from the device and not from a person.
    pub fn change_unkept(&self, change: impl FnOnce(&mut T)) {
        let mut change = Some(change);
        self.work(&mut |form| {
            if let Some(change) = change.take() {
                change(form);
            }
        });
    }

    fn work(&self, change: &mut dyn FnMut(&mut T)) {
        self.form.update(change);
    }

    /// Forgets what is kept: it was saved, or a person threw it away.
    pub fn forget(&self) {
        self.name.with_value(|name| self.page.ports().draft.remove(name));
    }

    /// Keeps the form as it stands.
    pub fn keep(&self) {
        let text = self.form.with_untracked(|form| kept::form_as_json(form));
        let kept = self.name.with_value(|name| self.page.ports().draft.put(name, &text));
        if self.page.draft_refused.get_untracked() == kept {
            self.page.draft_refused.set(!kept);
        }
    }

    /// A part of the form, for an input to show.
    pub fn part<V: PartialEq + Send + Sync + 'static>(
        &self,
        part: impl Fn(&T) -> V + Send + Sync + 'static,
    ) -> Signal<V> {
        let form = self.form;
        narrowed(move || form.with(&part)).into()
    }

    /// What an input calls with what was typed.
    pub fn on<V: 'static>(&self, write: impl Fn(&mut T, V) + Send + Sync + 'static) -> Callback<V> {
        let draft = *self;
        Callback::new(move |value| draft.change(|form| write(form, value)))
    }
}

/// True when something lies kept under a name in the book that is open.
pub fn is_kept(page: Context, name: &str) -> bool {
    page.ports().draft.get(&full(page, name)).is_some()
}

/// Forgets what is kept under a name in the book that is open.
pub fn forget(page: Context, name: &str) {
    page.ports().draft.remove(&full(page, name));
}

/// Forgets all that is kept under names that begin so: a form and what belongs to it.
pub fn forget_all(page: Context, name: &str) {
    let draft = page.ports().draft;
    draft.names(&full(page, name)).iter().for_each(|name| draft.remove(name));
}

/// Keeps a form under a name in the book that is open, for the screen that will show it.
pub fn put(page: Context, name: &str, form: &impl Kept) {
    let text = kept::form_as_json(form);
    page.draft_refused.set(!page.ports().draft.put(&full(page, name), &text));
}

fn full(page: Context, name: &str) -> String {
    format!("glassine/{}/draft/{name}", page.book().name())
}
