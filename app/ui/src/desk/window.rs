use crate::context::say;
use crate::jump;
use crate::narrow::narrowed;
use leptos::prelude::*;

/// Rows of a list that stand in the page at once.
const ROWS: usize = 60;

/// A window that goes along a long list: no more than sixty rows stand in the page at once.
#[derive(Clone, Copy)]
pub struct Window {
    from: RwSignal<usize>,
    list: &'static str,
}

impl Window {
    /// A window at the beginning of the list with this id.
    pub fn new(list: &'static str) -> Self {
        Self { from: RwSignal::new(0), list }
    }

    /// Back to the beginning: another list stands there.
    pub fn begin(self) {
        if self.from.get_untracked() != 0 {
            self.from.set(0);
        }
    }

    /// The rows in the window.
    pub fn rows<T: Clone>(self, all: &[T]) -> Vec<T> {
        all.iter().skip(self.start(all.len())).take(ROWS).cloned().collect()
    }

    /// The number of the first row in the window, from 0; a list that became shorter is shown from its beginning.
    fn start(self, count: usize) -> usize {
        Some(self.from.get()).filter(|from| *from < count).unwrap_or(0)
    }

    fn step(self, forth: bool) {
        self.from.update(|from| *from = if forth { *from + ROWS } else { from.saturating_sub(ROWS) });
        let list = self.list;
        request_animation_frame(move || jump::focus(list));
    }

    /// The way to the rows before the window.
    pub fn before(self, count: impl Fn() -> usize + Send + 'static) -> AnyView {
        let hidden = move || self.start(count()) == 0;
        view! {
            <button class="button quiet" type="button" hidden=hidden on:click=move |_| self.step(false)>{say().desk.rows_before()}</button>
        }
        .into_any()
    }

    /// The way to the rows after the window.
    pub fn after(self, count: impl Fn() -> usize + Send + Sync + 'static) -> AnyView {
        let left = narrowed(move || {
            let count = count();
            count.saturating_sub(self.start(count) + ROWS)
        });
        view! {
            <button class="button quiet" type="button" hidden=move || left.get() == 0 on:click=move |_| self.step(true)>
                {move || say().frame.more_rows(left.get())}
            </button>
        }
        .into_any()
    }
}
