//! What goes out, in words and counts.

use super::coarser::Asked;
use super::{Exporting, Kind, Ready, day_typed};
use crate::context::say;
use crate::parts::{Chooser, DayLine, Row, Tally};
use leptos::prelude::*;
use logbook::exchange::ExchangeFault;
use logbook::moment;

const KINDS: [(&str, Kind); 4] =
    [("day", Kind::Day), ("chosen", Kind::Chosen), ("new", Kind::NotExported), ("all", Kind::All)];

/// The kinds of selection.
#[component]
pub fn What(exporting: Exporting) -> impl IntoView {
    let words = say().export;
    let name = |kind: Kind| match kind {
        Kind::Day => words.day(),
        Kind::Chosen => words.chosen(),
        Kind::NotExported => words.not_exported(),
        Kind::All => words.all(),
    };
    let options: Vec<(String, String)> =
        KINDS.iter().map(|(code, kind)| ((*code).to_owned(), name(*kind).to_owned())).collect();
    let chosen = Signal::derive(move || {
        let kind = exporting.kind.get();
        KINDS.iter().find(|(_, known)| *known == kind).map(|(code, _)| (*code).to_owned()).unwrap_or_default()
    });
    let choose = Callback::new(move |code: String| {
        if let Some((_, kind)) = KINDS.iter().find(|(known, _)| **known == code) {
            exporting.outcome.set(None);
            exporting.kind.set(*kind);
        }
    });
    let day = Signal::derive(move || day_typed(exporting.day.get()));
    let change = Callback::new(move |typed: String| exporting.day.set(moment::read_day(&typed)));
    view! {
        <div class="part"><Chooser name="what" legend=words.what() class="pairs" options=Signal::stored(options) chosen choose/></div>
        <div class="part" hidden=move || exporting.kind.get() != Kind::Day>
            <p class="note" aria-hidden="true">{words.which_day()}</p>
            <DayLine id="which-day" name=words.which_day() value=day change/>
        </div>
    }
    .into_any()
}

/// How many of what go out, what goes along, and the file.
#[component]
pub fn Goes(exporting: Exporting) -> impl IntoView {
    let words = say().export;
    let counts = exporting.counts;
    let head = move || match exporting.kind.get() {
        Kind::Day => exporting.day.get().map(|day| words.goes_day(day)).unwrap_or_default(),
        Kind::Chosen => words.goes_chosen(exporting.chosen.with(Vec::len)),
        Kind::NotExported => words.goes_not_exported().to_owned(),
        Kind::All => words.goes_all().to_owned(),
    };
    let note = move || match (exporting.kind.get(), counts.get().deleted) {
        _ if exporting.asked.get() != Asked::Log => "",
        (Kind::Day, _) => words.day_says(),
        (Kind::All, _) => words.whole_says(),
        (_, 0) => "",
        (_, _) => words.deleted_says(),
    };
    let along = move || {
        let counts = counts.get();
        words.along_list(counts.sites, counts.persons, counts.numberings, counts.permits, counts.others)
    };
    view! {
        <section class="part" aria-labelledby="goes">
            <h2 id="goes">{head}</h2>
            {move || view! { <Tally counts=tally(exporting)/> }}
            <p class="note">{note}</p>
        </section>
        <section class="part pin still-rows">
            <Row name=words.along()><p>{along}</p><p class="note" hidden=move || exporting.kind.get() == Kind::All>{words.along_says()}</p></Row>
            <Row name=words.file()>{move || file(exporting)}</Row>
        </section>
    }
    .into_any()
}

fn tally(exporting: Exporting) -> Vec<(&'static str, String, &'static str)> {
    let words = say().export;
    let counts = exporting.counts.get();
    let number = |count| say().dates.number(count);
    let mut shown =
        vec![(words.events(), number(counts.events), ""), (words.containers(), number(counts.containers), "")];
    if counts.deleted > 0 {
        shown.push((words.deleted(), number(counts.deleted), ""));
    }
    shown
}

fn file(exporting: Exporting) -> AnyView {
    let words = say().export;
    exporting.ready.with(|ready| match ready {
        Ready::Making => view! { <p class="note" role="status">{words.making()}</p> }.into_any(),
        Ready::File(outgoing) => {
            let (name, size) = (outgoing.file.name.clone(), outgoing.file.bytes.len());
            view! { <p class="measure file-name">{name}</p><p class="note">{words.file_says(size)}</p> }.into_any()
        }
        Ready::NoRadius => view! { <p class="note" role="status">{words.coarse_no_radius()}</p> }.into_any(),
        Ready::Not(ExchangeFault::Empty) => {
            let why = match exporting.kind.get() {
                Kind::Chosen => words.nothing_chosen(),
                Kind::NotExported => words.nothing_new(),
                Kind::Day | Kind::All => words.nothing(),
            };
            view! { <p class="note">{why}</p> }.into_any()
        }
        Ready::Not(fault) => {
            let (what, safe) = crate::screens::exchange_fault(fault);
            view! { <p class="mark fault">{what}</p><p class="note">{safe}</p> }.into_any()
        }
    })
}
