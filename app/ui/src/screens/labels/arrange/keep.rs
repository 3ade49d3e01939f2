//! Which arrangement is used, and keeping the one that is edited under a name.

use super::Editing;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Line, Options, Pick, Row};
use leptos::prelude::*;
use logbook::labels::ThatArrangement;

/// The arrangements there are: the one chosen is shown and used.
#[component]
pub fn Choice(editing: Editing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let kind = editing.kind;
    let options = narrowed(move || -> Options {
        let usual = (String::new(), words.usual_arrangement().to_owned());
        let named = page.logbook.with(|logbook| logbook.arrangements(kind));
        std::iter::once(usual).chain(named.into_iter().map(|named| (named.id.to_string(), named.name))).collect()
    });
    let id = move || editing.that.with(|that| that.id);
    let chosen = Signal::derive(move || id().map(|id| id.to_string()).unwrap_or_default());
    let choose = Callback::new(move |code: String| {
        let id = code.parse().ok();
        let deed = page.make(|logbook, _, ids| logbook.use_arrangement(kind, id, ids));
        page.save(deed, move |_| {
            editing.show(page, page.logbook.with_untracked(|logbook| logbook.arrangement_with(kind, id)));
        });
    });
    let name = Signal::derive(move || editing.that.with(|that| that.name.clone()));
    let rename = Callback::new(move |typed: String| editing.change(page, |that| that.name = typed));
    let delete = move |_| {
        let Some(id) = editing.that.with_untracked(|that| that.id) else { return };
        let deed = page.logbook.with_untracked(|logbook| logbook.delete_arrangement(id));
        page.save(deed, move |_| {
            editing.show(page, page.logbook.with_untracked(|logbook| logbook.arrangement_with(kind, None)));
        });
    };
    view! {
        <section class="part pin" aria-label=words.arrangement()>
            <Row of="arrangement" name=words.arrangement()><Pick id="arrangement" options chosen choose/></Row>
            <Row of="arrangement-name" name=words.arrangement_name()><Line id="arrangement-name" value=name change=rename/></Row>
        </section>
        <div class="commands" hidden=move || id().is_none()>
            <button class="button quiet" type="button" on:click=delete>{words.delete_arrangement()}</button>
        </div>
    }
    .into_any()
}

/// Saves it, as itself or as a new one; without a change there is nothing to do.
#[component]
pub fn Keep(editing: Editing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let kind = editing.kind;
    let same = move || !editing.changed(page);
    let own = move || editing.that.with(|that| that.id.is_some());
    let nameless = move || editing.that.with(|that| that.name.trim().is_empty());
    let save = move |fresh: bool| {
        move |_| {
            let that = editing.that.get_untracked();
            let that = if fresh { ThatArrangement { id: None, ..that } } else { that };
            let deed = page.make(|logbook, _, ids| logbook.save_arrangement(kind, &that, ids));
            page.save(deed, move |_| {
                editing.show(page, page.logbook.with_untracked(|logbook| logbook.arrangement_used(kind)));
            });
        }
    };
    let forget = move |_| {
        let saved = page
            .logbook
            .with_untracked(|logbook| editing.that.with_untracked(|that| logbook.arrangement_with(kind, that.id)));
        editing.show(page, saved);
    };
    view! {
        <div class="bar" hidden=same>
            <p class="says">{words.changed_arrangement()}" "<span class="note" hidden=move || !nameless()>{words.arrangement_needs_name()}</span></p>
            <button class="button quiet" type="button" on:click=forget>{words.forget_changes()}</button>
            <button class="button" type="button" hidden=move || !own() disabled=nameless on:click=save(true)>{words.save_new_arrangement()}</button>
            <button class="button main" type="button" data-key="ctrl+enter" disabled=nameless on:click=save(false)>{words.save_arrangement()}</button>
        </div>
    }
    .into_any()
}
