use super::VialDraft;
use super::editor::Editor;
use crate::context::{Context, say, use_page};
use crate::draft::Draft;
use crate::narrow::narrowed;
use crate::route::{FormOf, Screen};
use crate::screens::lost::Lost;
use leptos::prelude::*;
use logbook::Id;
use logbook::form::{CatchForm, ContainerForm};
use logbook::numbers::SpanSays;

/// One more container for a catch that is being typed, or one of its containers to be changed.
#[component]
pub fn FormContainer(of: FormOf, at: Option<usize>) -> impl IntoView {
    let page = use_page();
    let catch = move || {
        Draft::<CatchForm>::kept(page, &of.draft())
            .unwrap_or_else(|| page.logbook.with_untracked(|logbook| logbook.new_catch(page.moment())))
    };
    let name = format!("{}/container/{}", of.draft(), at.map_or("new".to_owned(), |at| at.to_string()));
    let draft: VialDraft = Draft::open(&name, || {
        let form = catch();
        let known = at.and_then(|at| form.containers.get(at).cloned());
        known.unwrap_or_else(|| page.logbook.with_untracked(|logbook| logbook.next_container(&form)))
    });
    let keep = Callback::new(move |()| {
        let mut form = catch();
        let container = draft.form.get_untracked();
        form.nothing = false;
        match at.and_then(|at| form.containers.get_mut(at)) {
            Some(known) => *known = container,
            None => form.containers.push(container),
        }
        crate::draft::put(page, &of.draft(), &form);
        draft.forget();
        page.go(of.screen());
    });
    let take_out = move |_| {
        let mut form = catch();
        if let Some(at) = at.filter(|at| *at < form.containers.len()) {
            form.containers.remove(at);
        }
        crate::draft::put(page, &of.draft(), &form);
        draft.forget();
        page.go(of.screen());
    };
    let end = move || {
        at.map(|_| view! { <button class="button quiet" type="button" on:click=take_out>{say().container.delete()}</button> })
    };
    let title = if at.is_some() { say().container.title_change() } else { say().container.title_add() };
    let name = if at.is_some() { Signal::stored(say().container.keep().to_owned()) } else { add_name(page, draft) };
    view! { <Editor draft title note=say().catch.title() back=of.screen() name done=keep end/> }.into_any()
}

/// One more container for a saved event.
#[component]
pub fn EventContainer(id: Id) -> impl IntoView {
    let page = use_page();
    let there = narrowed(move || page.logbook.with(|logbook| logbook.event(id).is_some()));
    view! { <Show when=move || there.get() fallback=|| view! { <Lost/> }><AddToEvent id/></Show> }.into_any()
}

#[component]
fn AddToEvent(id: Id) -> impl IntoView {
    let page = use_page();
    let draft: VialDraft = Draft::open(&format!("event/{id}/container"), || {
        page.logbook.with_untracked(|logbook| logbook.next_container_of(id))
    });
    let note = narrowed(move || {
        page.logbook.with(|logbook| logbook.event(id).map(|event| event.line.site).unwrap_or_default())
    });
    let back = Screen::Event(id, None);
    let after = back.clone();
    let done = Callback::new(move |()| {
        let forms = [draft.form.get_untracked()];
        let after = after.clone();
        if let Ok(deed) = page.make(|logbook, saving, ids| logbook.add_containers(id, &forms, saving, ids)) {
            page.save(deed, move |_| {
                draft.forget();
                page.go(after);
            });
        }
    });
    view! { <Editor draft title=say().container.title_add() note back name=add_name(page, draft) done/> }.into_any()
}

/// A saved container, to be changed.
#[component]
pub fn ChangeContainer(id: Id) -> impl IntoView {
    let page = use_page();
    let there = narrowed(move || page.logbook.with(|logbook| logbook.container(id).is_some()));
    view! { <Show when=move || there.get() fallback=|| view! { <Lost/> }><Change id/></Show> }.into_any()
}

#[component]
fn Change(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let event = page.logbook.with_untracked(|logbook| logbook.container(id).and_then(|container| container.event));
    let back = event.map_or(Screen::Start, |event| Screen::Event(event, None));
    let draft: VialDraft = Draft::open(&format!("container/{id}"), || {
        page.logbook.with_untracked(|logbook| logbook.container_form_of(id)).unwrap_or_default()
    });
    let note = page.logbook.with_untracked(|logbook| {
        event.and_then(|event| logbook.event(event)).map(|event| event.line.site).unwrap_or_default()
    });
    let leave = StoredValue::new(back.clone());
    let after = move |_| {
        draft.forget();
        page.go(leave.get_value());
    };
    let done = Callback::new(move |()| {
        let form: ContainerForm = draft.form.get_untracked();
        if let Ok(deed) = page.make(|logbook, saving, ids| logbook.save_container(&form, saving, ids)) {
            page.save(deed, after);
        }
    });
    let delete = move |_| page.save(page.logbook.with_untracked(|logbook| logbook.delete_container(id)), after);
    let end = move || view! { <button class="button quiet" type="button" on:click=delete>{words.delete()}</button> };
    view! { <Editor draft title=words.title_change() note=Signal::stored(note) back name=Signal::stored(words.keep().to_owned()) done end/> }.into_any()
}

/// "Add 6 vials".
fn add_name(page: Context, draft: VialDraft) -> Signal<String> {
    let words = say().container;
    Signal::derive(move || {
        let says = page.logbook.with(|logbook| draft.form.with(|form| logbook.span_says(form)));
        let vessel = draft.form.with(|form| form.vessel.clone());
        match says {
            _ if draft.form.with(|form| form.released) => words.add_plain().to_owned(),
            SpanSays::Unnumbered(count) | SpanSays::Free(count) | SpanSays::Taken(count, _) => {
                words.add(&vessel, count)
            }
            SpanSays::Fault(_) => words.add_plain().to_owned(),
        }
    })
}
