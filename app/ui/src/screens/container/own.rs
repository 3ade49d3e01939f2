use super::VialDraft;
use super::links::Links;
use crate::context::{say, use_page};
use crate::parts::{Check, Line, More, Row, TimeLine};
use crate::rows::HostFields;
use leptos::prelude::*;
use logbook::form::{ContainerForm, HostForm};

/// Alive, or observed and released.
#[component]
pub fn Fate(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    let alive = draft.on(|form: &mut ContainerForm, on: bool| {
        form.alive = on;
        form.released &= !on;
    });
    let released = draft.on(|form: &mut ContainerForm, on: bool| {
        form.released = on;
        form.alive &= !on;
    });
    view! {
        <section class="part">
            <p><Check ticked=draft.part(|form| form.alive) change=alive>{words.alive()}</Check></p>
            <p><Check ticked=draft.part(|form| form.released) change=released>{words.released()}</Check></p>
        </section>
    }
    .into_any()
}

/// What differs from the event: collector, hour, host; and links and notes.
#[component]
pub fn Own(draft: VialDraft) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let open = draft.form.with_untracked(has_own);
    let hosts = page.logbook.with_untracked(|logbook| logbook.hosts_lately());
    let host = draft.on(|form: &mut ContainerForm, host: HostForm| form.host = host);
    let collector = draft.on(|form: &mut ContainerForm, name: String| form.collector = name);
    let clock = draft.on(|form: &mut ContainerForm, clock: String| form.clock = clock);
    let notes = draft.on(|form: &mut ContainerForm, text: String| form.notes = text);
    view! {
        <section class="part pin">
            <More words=words.own() open>
                <Row of="own-clock" name=words.own_hour()><TimeLine id="own-clock" value=draft.part(|form| form.clock.clone()) change=clock/></Row>
                <Row of="own-collector" name=words.own_collector()>
                    <Line id="own-collector" capitals="words" hint=words.own_from_event() value=draft.part(|form| form.collector.clone()) change=collector/>
                </Row>
                <Row name=words.own_host()>
                    <HostFields id="own-thing" host=draft.part(|form| form.host.clone()) change=host offers=Signal::stored(hosts)/>
                    <p class="note">{words.own_host_says()}</p>
                </Row>
                <Row name=words.links()><Links draft/></Row>
                <Row of="own-notes" name=words.notes()>
                    <Line id="own-notes" capitals="sentences" value=draft.part(|form| form.notes.clone()) change=notes/>
                </Row>
            </More>
        </section>
    }
    .into_any()
}

fn has_own(form: &ContainerForm) -> bool {
    !(form.clock.is_empty()
        && form.collector.is_empty()
        && form.host.is_empty()
        && form.links.is_empty()
        && form.notes.is_empty())
}
