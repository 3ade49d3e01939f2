//! What an import would do, before anything is written.

use super::Importing;
use crate::context::{say, use_page};
use crate::desk::{SaidView, how, said_is_measured};
use crate::explain;
use crate::parts::{Mark, PlateView, Row, Sign, Tally};
use crate::screens::event_line::MethodWords;
use leptos::prelude::*;
use logbook::conflict::Said;
use logbook::exchange::{Counts, Difference, Preview};
use logbook::moment::{Known, clock_text};
use logbook::view::{EventLine, Mark as Marked};

/// How many events, and how many differences, are shown at most.
const SHOWN: usize = 30;

/// Whose log it is.
pub fn title(preview: &Preview) -> String {
    let words = say().import;
    if preview.author.person.is_empty() { words.unnamed_log().to_owned() } else { words.log_of(&preview.author.person) }
}

fn touched(counts: Counts) -> usize {
    counts.added + counts.changed + counts.deleted
}

/// Refuse, or take it.
#[component]
pub fn PreviewBar(importing: Importing) -> impl IntoView {
    let page = use_page();
    let words = say().import;
    let count = importing.stage.with_untracked(|stage| match stage {
        super::Stage::Seen(preview) => touched(preview.counts),
        _ => 0,
    });
    let refuse = move |_| importing.stage.set(super::Stage::Waiting);
    view! {
        <div class="bar">
            <button class="button quiet" type="button" on:click=refuse>{words.refuse()}</button>
            <button class="button main" type="button" data-key="ctrl+enter" hidden=count == 0 on:click=move |_| importing.accept(page)>
                {words.accept(count)}" "<kbd class="key">"Ctrl ⏎"</kbd>
            </button>
        </div>
    }
    .into_any()
}

/// All that is known of the file and of what it would do.
#[component]
pub fn PreviewView<'a>(preview: &'a Preview) -> impl IntoView + use<> {
    let words = say().import;
    let theirs = theirs(preview);
    let (top, end) = how("import", vec![words.how_1(), words.how_2(), words.how_3()]);
    let nothing = (touched(preview.counts) == 0)
        .then(|| view! { <p class="part mark sure">{Sign::Tick.draw()}<span>{words.all_known()}</span></p> });
    view! {
        {top}
        <div class="columns two">
            <div class="column">
                {tally(preview)}
                {nothing}
                {file(preview)}
                {conflicts(preview, &theirs)}
                {twice(preview)}
            </div>
            <div class="column">
                {added(preview)}
                {changed(preview, &theirs)}
                {(preview.counts.deleted > 0).then(|| view! { <p class="note part">{words.deleted_says(preview.counts.deleted)}</p> })}
                {(preview.counts.known > 0).then(|| view! { <p class="note part">{words.known_says(preview.counts.known)}</p> })}
                {end}
            </div>
        </div>
    }
    .into_any()
}

/// What the other side is called beside a value.
fn theirs(preview: &Preview) -> String {
    if preview.author.person.is_empty() { say().import.theirs().to_owned() } else { preview.author.person.clone() }
}

fn tally(preview: &Preview) -> AnyView {
    let words = say().import;
    let number = |count| say().dates.number(count);
    let class = |count: usize, class: &'static str| if count > 0 { class } else { "" };
    let counts = vec![
        (words.added(), number(preview.counts.added), ""),
        (words.changed(), number(preview.counts.changed), ""),
        (words.known(), number(preview.counts.known), ""),
        (words.conflicts(), number(preview.conflicts.len()), class(preview.conflicts.len(), "caution-number")),
        (words.twice(), number(preview.twice.len()), class(preview.twice.len(), "fault-number")),
    ];
    view! { <Tally counts class="five"/> }.into_any()
}

fn file(preview: &Preview) -> AnyView {
    let words = say().import;
    let person =
        if preview.author.person.is_empty() { words.unnamed().to_owned() } else { preview.author.person.clone() };
    let written = Known::read(&preview.written);
    let device = &preview.author.device;
    let at = written
        .and_then(|known| Some(words.on_at(device, known.date()?, &known.clock.map(clock_text).unwrap_or_default())));
    let days = preview
        .days
        .map(|(from, to)| view! { <Row name=words.days() class="measure">{words.days_span(from, to)}</Row> });
    let at = at.unwrap_or_else(|| device.clone());
    let (whole, name) = (words.whole(preview.records), preview.name.clone());
    view! {
        <section class="part pin still-rows" aria-label=words.the_file()>
            <Row name=words.from()><p class="ink">{person}</p><p class="note">{at}</p></Row>
            {days}
            <Row name=words.file()><p><Mark sign=Sign::Tick words=whole/></p><p class="note file-name">{name}</p></Row>
        </section>
    }
    .into_any()
}

fn conflicts(preview: &Preview, theirs: &str) -> Option<AnyView> {
    let words = say().import;
    let count = preview.conflicts.len();
    (count > 0).then(|| view! {
        <section class="part">
            <h2>{words.conflicts_head(count)}</h2>
            <p>{words.conflicts_says(preview.counts.changed)}</p>
            <ul class="differ">{preview.conflicts.iter().take(SHOWN).map(|difference| differs(difference, theirs)).collect_view()}</ul>
        </section>
    }
    .into_any())
}

fn twice(preview: &Preview) -> Option<AnyView> {
    let words = say().import;
    let count = preview.twice.len();
    let plate = |doubled: &logbook::exchange::Doubled| view! { <li class="container-line"><PlateView plate=doubled.plate.clone()/></li> };
    (count > 0).then(|| {
        view! {
            <section class="part">
                <h2>{words.twice_head(count)}</h2>
                <p class="mark fault">{Sign::Twice.draw()}<span>{words.twice_says()}</span></p>
                <ul>{preview.twice.iter().take(SHOWN).map(plate).collect_view()}</ul>
            </section>
        }
        .into_any()
    })
}

fn added(preview: &Preview) -> Option<AnyView> {
    let words = say().import;
    let counts = preview.counts;
    let shown = preview.added.len().min(SHOWN);
    let others = counts.added.saturating_sub(preview.events.added + preview.containers.added);
    let more = words.more_added(preview.events.added.saturating_sub(shown), preview.containers.added, others);
    (counts.added > 0).then(|| view! {
        <section class="part">
            <h2>{words.added_head(counts.added)}</h2>
            <div class="pin" hidden=shown == 0><ol>{preview.added.iter().take(SHOWN).map(event).collect_view()}</ol></div>
            <p class="note">{more}</p>
        </section>
    }
    .into_any())
}

/// An event that is not here yet: a line without a link.
fn event(line: &EventLine) -> AnyView {
    let site = if line.site.is_empty() { say().event.untitled().to_owned() } else { line.site.clone() };
    let day = line.day.map(|day| say().dates.roman_short(day));
    let spans: Vec<String> = line
        .numbers
        .iter()
        .map(|span| {
            let first = format!("{}{}", span.prefix, span.first);
            if span.first == span.last { first } else { format!("{first}–{}", span.last) }
        })
        .collect();
    let marks = line.marks.iter().filter(|mark| matches!(mark, Marked::Nothing | Marked::Open)).map(explain::mark);
    view! {
        <li class="event row">
            <div class="row-name">{line.clock.clone()}<span class="order">{day}</span></div>
            <div class="row-value">
                <div class="event-head"><h3>{site}</h3><p class="numbers">{spans.join(", ")}</p></div>
                <p><MethodWords method=line.method.clone() host=line.host.clone()/></p>
                {marks.map(|(sign, words)| view! { <Mark sign words/> }).collect_view()}
            </div>
        </li>
    }
    .into_any()
}

fn changed(preview: &Preview, theirs: &str) -> Option<AnyView> {
    let words = say().import;
    let shown = preview.changed.len().min(SHOWN);
    let more = preview.changed.len() > SHOWN;
    (shown > 0).then(|| view! {
        <section class="part">
            <h2>{words.changed_head(preview.counts.changed)}</h2>
            <ul class="differ">{preview.changed.iter().take(SHOWN).map(|difference| differs(difference, theirs)).collect_view()}</ul>
            <p class="note" hidden=!more>{words.changed_more()}</p>
        </section>
    }
    .into_any())
}

/// A field as it stands here and in the file, one under the other.
fn differs(difference: &Difference, theirs: &str) -> AnyView {
    let page = use_page();
    let said = |value: &Option<serde_json::Value>| match value {
        Some(value) => page.logbook.with_untracked(|logbook| logbook.said(&difference.kind, &difference.field, value)),
        None => Said::Empty,
    };
    let (here, there) = (said(&difference.here), said(&difference.there));
    let when = difference.when.as_ref().map(|(day, clock)| format!("{} {clock}, ", say().dates.roman_short(*day)));
    let title = if difference.title.is_empty() { say().event.untitled().to_owned() } else { difference.title.clone() };
    let value = |said: Said| {
        let class = if said_is_measured(&said) { "measure" } else { "" };
        view! { <dd class=class><SaidView said/></dd> }
    };
    view! {
        <li>
            <p class="ink">{title}</p>
            <p class="note"><span class="measure">{when}</span>{say().event.field(&difference.field)}</p>
            <dl>
                <div><dt>{say().desk.here()}</dt>{value(here)}</div>
                <div><dt>{theirs.to_owned()}</dt>{value(there)}</div>
            </dl>
        </li>
    }
    .into_any()
}
