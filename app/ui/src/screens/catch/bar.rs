use super::leading;
use crate::context::{Context, say};
use crate::narrow::narrowed;
use crate::parts::MissingList;
use crate::route::Screen;
use crate::rows::CatchDraft;
use leptos::prelude::*;
use logbook::view::Mark;

/// What is missing, a way out that keeps the draft, the main command.
#[component]
pub fn SaveBar(draft: CatchDraft, missing: Memo<Vec<Mark>>) -> impl IntoView {
    let page = crate::context::use_page();
    let words = say().catch;
    let items = narrowed(move || {
        let quiet = |(sign, words, _)| (sign, words, "");
        missing.with(|missing| missing.iter().map(leading).map(quiet).take(3).collect::<Vec<_>>())
    });
    let nothing = draft.part(|form| form.nothing);
    let name = move || match (page.fault.with(Option::is_some), nothing.get()) {
        (true, _) => say().faults.save_again(),
        (false, true) => words.save_nothing(),
        (false, false) => words.save(),
    };
    view! {
        <div class="bar">
            <MissingList class="says" name=say().frame.missing() items/>
            <a class="button quiet" href=page.to(Screen::Start)>{say().frame.set_aside()}</a>
            <button class="button main" type="submit" form="catch" data-key="ctrl+enter" aria-disabled=move || page.busy.get().then_some("true")>
                {name}" "<kbd class="key">"Ctrl ⏎"</kbd>
            </button>
        </div>
    }
    .into_any()
}

/// Saves the catch; the draft is forgotten only once the storage has it.
pub fn save(page: Context, draft: CatchDraft) {
    let form = draft.form.get_untracked();
    match page.make(|logbook, saving, ids| logbook.save_catch(&form, saving, ids)) {
        Ok(deed) => page.save(deed, move |_| {
            crate::draft::forget_all(page, "catch");
            if page.update_after.get_untracked() {
                page.ports().device.use_update();
            }
            page.go(Screen::Start);
        }),
        Err((at, _)) => {
            draft.keep();
            page.go(Screen::FormContainer(crate::route::FormOf::Catch, Some(at)));
        }
    }
}
