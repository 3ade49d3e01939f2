use super::change::Change;
use super::where_rows::WhereFacts;
use super::{Shown, of};
use crate::context::{say, use_page};
use crate::parts::{Mark, Sign};
use crate::route::{Group, Screen};
use crate::screens::event_line::method_words;
use crate::screens::{HostWords, SkyRow};
use leptos::prelude::*;
use logbook::Id;
use logbook::form::Row;
use logbook::moment::{Known, clock_text};
use logbook::view::{self, EventView, Facts as View};

/// One group of rows: text to read, or open for change.
#[component]
pub fn Facts(id: Id, group: Option<Group>, event: Shown, which: Group) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let (head, what, key) = match which {
        Group::Host => (words.host_head(), words.host_change(), "1"),
        Group::Where => (words.where_head(), words.where_change(), "2"),
        Group::When => (words.when_head(), words.when_change(), "3"),
        Group::Whom => (words.whom_head(), words.whom_change(), "4"),
    };
    let open = group == Some(which);
    let facts = of(event, |event: &EventView| event.facts.clone());
    let marks = of(event, |event: &EventView| event.line.marks.clone());
    let rows = move || match which {
        Group::Host => view! { <HostFacts facts marks/> }.into_any(),
        Group::Where => view! { <WhereFacts facts marks/> }.into_any(),
        Group::When => view! { <WhenFacts facts/><SkyRow id/> }.into_any(),
        Group::Whom => view! { <WhomFacts facts/> }.into_any(),
    };
    let change = (group.is_none()).then(|| {
        view! {
            <a class="button quiet" href=page.to(Screen::Event(id, Some(which))) data-key=key>
                {say().frame.change()}" "<span class="unseen">{what}</span>" "<kbd class="key">{key}</kbd>
            </a>
        }
    });
    view! {
        <section class="part" aria-label=head>
            <div class="part-head"><h2>{head}</h2>{change}</div>
            {if open { view! { <Change id which/> }.into_any() } else { view! { <div class="pin still-rows">{rows}</div> }.into_any() }}
        </section>
    }
    .into_any()
}

/// A name and what is written; nothing where nothing is.
pub fn written(name: &'static str, class: &'static str, text: &str) -> Option<AnyView> {
    let value = view! { <p class=class>{text.to_owned()}</p> };
    (!text.is_empty()).then(|| {
        view! { <div class="row"><div class="row-name">{name}</div><div class="row-value">{value}</div></div> }
            .into_any()
    })
}

/// A row in which nothing is written: marked as unknown, missing, or simply left empty.
pub fn nothing(name: &'static str, facts: &View, row: Option<Row>, missing: bool) -> AnyView {
    let words = say().event;
    let unknown = row.is_some_and(|row| facts.unknown.contains(&row));
    let value = match (unknown, missing) {
        (true, _) => view! { <p class="note">{words.marked_unknown()}</p> }.into_any(),
        (false, true) => view! { <Mark sign=Sign::Caret words=words.nothing_written()/> }.into_any(),
        (false, false) => view! { <p class="note">{words.nothing_written()}</p> }.into_any(),
    };
    view! {
        <div class="row">
            <div class="row-name">{name}</div>
            <div class="row-value">{value}</div>
        </div>
    }
    .into_any()
}

#[component]
fn HostFacts(facts: Memo<View>, marks: Memo<Vec<view::Mark>>) -> impl IntoView {
    let words = say().catch;
    move || {
        let facts = facts.get();
        let missing = marks.with(|marks| marks.contains(&view::Mark::Host));
        let Some(host) = facts.host.clone() else { return nothing(words.host(), &facts, Some(Row::Host), missing) };
        let more = [
            (words.host_what(), say().codes.thing(&host.what)),
            (words.host_voucher(), host.voucher.clone()),
            (words.host_named_by(), host.named_by.clone()),
        ];
        view! {
            <div class="row"><div class="row-name">{words.host()}</div><div class="row-value ink"><HostWords host/></div></div>
            {more.into_iter().map(|(name, text)| written(name, "ink", &text)).collect_view()}
        }
        .into_any()
    }
}

#[component]
fn WhenFacts(facts: Memo<View>) -> impl IntoView {
    let words = say();
    move || {
        let facts = facts.get();
        let method = facts.method.as_ref().map(method_words).filter(|words| !words.is_empty());
        let caught = facts.from.map(|from| {
            let day = words.dates.known(from.year, from.month, from.day);
            let night = facts.night.then(|| format!("{} ", words.event.night_of()));
            view! {
                <div class="row"><div class="row-name">{words.event.caught()}</div><div class="row-value">
                    <p class="measure">{night}{day}</p><p class="measure">{hours(from, facts.until)}</p>
                </div></div>
            }
            .into_any()
        });
        view! {
            {caught.unwrap_or_else(|| nothing(words.event.caught(), &facts, Some(Row::Caught), true))}
            {method.and_then(|method| written(words.catch.method(), "ink", &method)).unwrap_or_else(|| nothing(words.catch.method(), &facts, Some(Row::Method), true))}
            {written(words.catch.station(), "measure", &facts.station)}
            {written(words.catch.weather(), "ink", &facts.weather)}
        }
        .into_any()
    }
}

/// `14:32 to 15:02`; another day is said with its date.
fn hours(from: Known, until: Option<Known>) -> String {
    let dates = say().dates;
    let begin = from.clock.map(clock_text).unwrap_or_default();
    let Some(until) = until else { return begin };
    let end = until.clock.map(clock_text).unwrap_or_default();
    let day = if until.date() == from.date() {
        String::new()
    } else {
        format!("{} ", dates.known(until.year, until.month, until.day))
    };
    format!("{begin} {} {day}{end}", dates.to()).trim().to_owned()
}

#[component]
fn WhomFacts(facts: Memo<View>) -> impl IntoView {
    let words = say().catch;
    move || {
        let facts = facts.get();
        let collectors = written(words.collectors(), "ink", &facts.collectors.join(", "));
        view! {
            {collectors.unwrap_or_else(|| nothing(words.collectors(), &facts, None, true))}
            {written(words.permit(), "measure", &facts.permit)}
            {written(words.notes(), "ink", &facts.notes)}
        }
        .into_any()
    }
}
