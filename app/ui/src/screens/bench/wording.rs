//! The wording of a label, edited in place: a line of the label is a line here.

use crate::context::{say, use_page};
use crate::desk::{OverList, ProofView, after_frame, kind_name, proofs};
use crate::jump;
use crate::narrow::narrowed;
use crate::parts::typed;
use leptos::prelude::*;
use logbook::Id;
use logbook::labels::{Which, lines_as_typed};

/// The words of a label, with a proof that follows them.
#[component]
pub fn Wording(id: Id, which: Which, editing: RwSignal<Option<Which>>) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let now = page.logbook.with_untracked(|logbook| logbook.label_lines(id, which));
    let text = RwSignal::new(now.text.clone());
    let asked: Signal<String> = after_frame(text.into());
    let format = narrowed(move || page.logbook.with(|logbook| logbook.rules().format(which.kind)));
    let batch = narrowed(move || {
        page.logbook.with(|logbook| {
            logbook.to_look_at([(lines_as_typed(&asked.get()), logbook.wanted_of(id, which).code, which.kind)])
        })
    });
    let pressed = proofs(batch.into());
    let proof = move || {
        let format = format.get();
        pressed.with(|pressed| pressed.proof(0).cloned()).map(|proof| {
            view! {
                <ProofView proof=proof.clone() size=(format.width_mm, format.height_mm) kind=which.kind/>
                <OverList proof/>
            }
        })
    };
    let close = move || editing.set(None);
    let keep = move |_| {
        let deed = page.logbook.with_untracked(|logbook| logbook.set_wording(id, which, &text.get_untracked()));
        page.save(deed, move |_| close());
    };
    let keep_for_event = move |_| {
        let deed =
            page.logbook.with_untracked(|logbook| logbook.set_wording_for_event(id, which, &text.get_untracked()));
        page.save(deed, move |_| close());
    };
    let usual = move |_| {
        let deed = page.logbook.with_untracked(|logbook| logbook.set_wording(id, which, ""));
        page.save(deed, move |_| close());
    };
    let (others, edited) = (now.others, now.edited);
    let rows = (now.text.lines().count() + 1).max(3).to_string();
    Effect::new(move |_| jump::focus_still("wording"));
    view! {
        <div class="wording stack">
            <label class="note" for="wording">{words.wording(&kind_name(which.kind))}</label>
            <textarea class="line" id="wording" rows=rows spellcheck="false" autocapitalize="off" aria-describedby="wording-says"
                prop:value=text on:input=move |event| text.set(typed(&event))></textarea>
            <p class="note" id="wording-says">{words.wording_says()}</p>
            {proof}
            <div class="commands">
                <button class="button" type="button" on:click=keep>{words.keep_wording()}</button>
                {(others > 0).then(|| view! { <button class="button" type="button" on:click=keep_for_event>{words.keep_for_event(others + 1)}</button> })}
                {edited.then(|| view! { <button class="button quiet" type="button" on:click=usual>{words.usual()}</button> })}
                <button class="button quiet" type="button" on:click=move |_| close()>{say().frame.cancel()}</button>
            </div>
        </div>
    }
    .into_any()
}
