use super::{Field, Writing};
use crate::context::{Context, say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Chooser, Options, Stepper, own_keys, typed};
use crate::screens::container::{VialDraft, counts};
use leptos::prelude::*;
use logbook::Id;
use logbook::form::{ContainerForm, ContentForm, HostForm};
use logbook::moment;
use logbook::numbers::{SpanSays, plate_of};
use logbook::offers::OfferedGroup;

/// Stands for what is not among the words.
const OTHER: &str = "other";

/// The next container of the night.
#[component]
pub fn NextContainer(id: Id, draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let words = say().open;
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        add(page, id, draft);
    };
    let vessels: Options =
        ["vial", "envelope", "jar"].iter().map(|code| ((*code).to_owned(), say().codes.vessel_option(code))).collect();
    let choose = draft.on(|form: &mut ContainerForm, code: String| form.vessel = code);
    view! {
        <form class="part" id="next" autocomplete="off" novalidate aria-label=words.next_container() on:submit=submit>
            <Chooser name="kind" legend=say().container.kind() options=Signal::stored(vessels) chosen=draft.part(|form| form.vessel.clone()) choose/>
            <div class="with-hour"><NumberField draft writing/><HourField draft writing/></div>
            <Says draft/>
            <GroupChoice draft writing/>
            <Count draft/>
            <HostChoice draft writing/>
        </form>
    }
    .into_any()
}

/// Adds the container; the next one takes its place with the same fluids and a new number.
fn add(page: Context, id: Id, draft: VialDraft) {
    let mut form = draft.form.get_untracked();
    if form.clock.is_empty() {
        form.clock = moment::clock_text(moment::local(page.moment()).time());
    }
    if let Ok(deed) = page.make(|logbook, saving, ids| logbook.add_containers(id, &[form], saving, ids)) {
        page.save(deed, move |_| {
            draft.form.set(page.logbook.with_untracked(|logbook| logbook.next_container_of(id)));
            draft.forget();
        });
    }
}

#[component]
fn NumberField(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let vessel = draft.part(|form| form.vessel.clone());
    let prefix = draft.part(|form| plate_of("vial", form.first.trim()).prefix);
    let shown_prefix = move || {
        let typed = prefix.get();
        if typed.is_empty() { page.logbook.with(|logbook| logbook.prefix()) } else { typed }
    };
    let run = draft.part(|form| plate_of("vial", &form.first).run);
    let write = draft.on(|form: &mut ContainerForm, text: String| {
        form.unnumbered = if text.trim().is_empty() { "1".into() } else { String::new() };
        form.first = text;
    });
    let come = move |_| {
        writing.field.set(Some(Field::Number));
        writing.fresh.set(true);
    };
    let mode =
        if run.with_untracked(|run| run.chars().all(|sign| sign.is_ascii_digit())) { own_keys() } else { "text" };
    let now = move || writing.field.get() == Some(Field::Number);
    view! {
        <div class=move || format!("plate {} entry", vessel.get()) role="group" aria-label=move || words.number_label(&shown_prefix())>
            <span class="prefix">{shown_prefix}</span>
            <label class="unseen" for="number">{words.number()}</label>
            <input id="number" inputmode=mode autocomplete="off" autocapitalize="characters" class:now=now prop:value=run
                aria-describedby="next-says" on:focus=come on:input=move |event| write.run(typed(&event))/>
        </div>
    }
    .into_any()
}

/// The hour at which it was filled; empty means the moment of adding.
#[component]
fn HourField(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let clock = draft.part(|form| form.clock.clone());
    let shown = Signal::derive(move || {
        if clock.with(String::is_empty) {
            moment::clock_text(moment::local(page.now.get()).time())
        } else {
            clock.get()
        }
    });
    let write = draft.on(|form: &mut ContainerForm, text: String| form.clock = text);
    let come = move |_| {
        writing.field.set(Some(Field::Hour));
        writing.fresh.set(true);
    };
    let now = move || if writing.field.get() == Some(Field::Hour) { "line measure now" } else { "line measure" };
    view! {
        <div class="hour">
            <label class="note" for="hour">{say().open.caught_at()}</label>
            <input class=now id="hour" inputmode=own_keys() autocomplete="off" prop:value=shown aria-describedby="next-says"
                on:focus=come on:input=move |event| write.run(typed(&event))/>
        </div>
    }
    .into_any()
}

/// How long ago, and whether the number is free.
#[component]
fn Says(draft: VialDraft) -> impl IntoView {
    let page = use_page();
    let span = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.span_says(form))));
    let clock = draft.part(|form| form.clock.clone());
    let ago = move || {
        let clock = moment::read_clock(&clock.get())?;
        let minutes = (moment::local(page.now.get()).time() - clock).num_minutes();
        // An hour just ahead of the clock is one before midnight, written up after it.
        let minutes = if minutes < 0 { minutes + 24 * 60 } else { minutes };
        Some(say().open.ago(minutes))
    };
    let says = move || match span.get() {
        SpanSays::Free(_) => say().open.free().to_owned(),
        SpanSays::Unnumbered(_) => say().container.unnumbered_slip().to_owned(),
        other => explain::span(&other, "vial").1,
    };
    let faulty = move || span.with(|span| matches!(span, SpanSays::Taken(..) | SpanSays::Fault(_)));
    view! { <p class="note" id="next-says" aria-live="polite">{ago}" "<span class:fault=faulty class:mark=faulty>{says}</span></p> }.into_any()
}

/// One group out of those of tonight and of late, or another.
#[component]
fn GroupChoice(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let lately = narrowed(move || page.logbook.with(|logbook| logbook.groups_lately()));
    let other = RwSignal::new(lately.with_untracked(Vec::is_empty));
    let group = draft.part(|form| form.contents.first().map(|line| line.group.clone()).unwrap_or_default());
    let options = narrowed(move || {
        let known = lately.get().into_iter().take(5).map(|group| (group.text.clone(), group.text));
        known.chain([(OTHER.to_owned(), words.group_other().to_owned())]).collect::<Options>()
    });
    let chosen = Signal::derive(move || if other.get() { OTHER.to_owned() } else { group.get() });
    let set = move |group: OfferedGroup| {
        draft.change(|form| {
            let count = form
                .contents
                .first()
                .cloned()
                .unwrap_or_else(|| ContentForm { count_kind: "uncounted".into(), ..ContentForm::default() });
            form.contents = vec![ContentForm { group: group.text, group_code: group.code, ..count }];
        });
    };
    let choose = Callback::new(move |text: String| {
        other.set(text == OTHER);
        writing.field.set(None);
        let known = lately.with_untracked(|lately| lately.iter().find(|group| group.text == text).cloned());
        set(known.unwrap_or(OfferedGroup { text: String::new(), code: String::new() }));
    });
    let write = move |event: web_sys::Event| {
        let text = typed(&event);
        let code = phrases::groups::code_of(say().groups, &text).unwrap_or_default().to_owned();
        set(OfferedGroup { text, code });
    };
    view! {
        <Chooser name="group" legend=words.in_it() headed=true options chosen choose/>
        <span hidden=move || !other.get()>
            <label class="unseen" for="group-other">{words.group()}</label>
            <input class="line" id="group-other" autocapitalize="sentences" autocomplete="off" spellcheck="false" prop:value=group on:input=write
                on:focus=move |_| writing.field.set(None)/>
        </span>
    }
    .into_any()
}

#[component]
fn Count(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    let line = draft.part(|form| form.contents.first().cloned().unwrap_or_default());
    let on = move |write: fn(&mut ContentForm, String)| {
        draft.on(move |form: &mut ContainerForm, text: String| {
            if let Some(line) = form.contents.first_mut() {
                write(line, text);
            }
        })
    };
    let kind = on(|line, code| {
        if code == "uncounted" {
            line.count.clear();
        }
        line.count_kind = code;
    });
    let group = Signal::derive(move || line.with(|line| line.group.clone()));
    view! {
        <div hidden=move || group.with(String::is_empty)>
            <Chooser name="count" legend=Signal::derive(move || words.count_is(&group.get())) class="pairs" options=Signal::stored(counts())
                chosen=Signal::derive(move || line.with(|line| line.count_kind.clone())) choose=kind/>
            <div class="proof-line" hidden=move || line.with(|line| line.count_kind == "uncounted")>
                <span class="ink">{group}</span>
                <Stepper name=group value=Signal::derive(move || line.with(|line| line.count.clone())) change=on(|line, text| line.count = text)/>
            </div>
        </div>
    }
    .into_any()
}

/// Its own host: what came to the lamp itself has none.
#[component]
fn HostChoice(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let host = draft.part(|form| form.host.clone());
    let change = draft.on(|form: &mut ContainerForm, host: HostForm| form.host = host);
    let options: Options = std::iter::once((String::new(), words.own_host_none().to_owned()))
        .chain(["on", "swept", "beaten"].iter().map(|code| ((*code).to_owned(), say().codes.relation(code))))
        .collect();
    let choose = Callback::new(move |relation: String| {
        let thing = if relation.is_empty() { String::new() } else { host.get_untracked().thing };
        change.run(HostForm { relation, thing, ..HostForm::default() });
    });
    let lately = page.logbook.with_untracked(|logbook| logbook.hosts_lately());
    let things: Options = lately.iter().take(4).map(|host| (host.thing.clone(), host.thing.clone())).collect();
    let few = things.is_empty();
    let take = Callback::new(move |thing: String| change.run(HostForm { thing, ..host.get_untracked() }));
    let thing = Signal::derive(move || host.with(|host| host.thing.clone()));
    view! {
        <Chooser name="host" legend=words.own_host() headed=true options=Signal::stored(options)
            chosen=Signal::derive(move || host.with(|host| host.relation.clone())) choose/>
        <div hidden=move || host.with(|host| host.relation.is_empty())>
            <div hidden=few><Chooser name="thing" legend=say().catch.hosts_offered() options=Signal::stored(things) chosen=thing choose=take/></div>
            <label class="unseen" for="thing-other">{say().catch.host_thing()}</label>
            <input class="line" id="thing-other" placeholder=say().catch.host_hint() autocomplete="off" autocapitalize="off" spellcheck="false" prop:value=thing
                on:focus=move |_| writing.field.set(None) on:input=move |event| take.run(typed(&event))/>
            <p class="note">{words.own_host_says()}</p>
        </div>
    }
    .into_any()
}
