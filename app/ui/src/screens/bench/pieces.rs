//! When reared insects emerged, and which parts of insects are kept elsewhere.

use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{DayLine, Line, More, Row};
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::PieceView;

/// From when until when they emerged.
#[component]
pub fn Emerged(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let (from, until) = page.logbook.with_untracked(|logbook| logbook.emerged(id));
    let open = !from.is_empty();
    let (from, until) = (RwSignal::new(from), RwSignal::new(until));
    let keep = move |_| {
        let deed = page
            .logbook
            .with_untracked(|logbook| logbook.set_emerged(id, &from.get_untracked(), &until.get_untracked()));
        page.save(deed, |_| {});
    };
    let same = move || page.logbook.with(|logbook| logbook.emerged(id)) == (from.get(), until.get());
    view! {
        <More words=words.emerged() open>
            <div class="pin">
                <Row of="em-from" name=words.emerged_from()>
                    <DayLine id="em-from" name=words.emerged_from() value=from change=Callback::new(move |day| from.set(day))/>
                </Row>
                <Row of="em-until" name=words.emerged_until()>
                    <DayLine id="em-until" name=words.emerged_until() value=until change=Callback::new(move |day| until.set(day))/>
                </Row>
            </div>
            <p class="note">{words.emerged_says()}</p>
            <div class="commands"><button class="button" type="button" disabled=same on:click=keep>{words.keep_emerged()}</button></div>
        </More>
    }
    .into_any()
}

/// The parts kept elsewhere, and the form of one more.
#[component]
pub fn Pieces(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let known = narrowed(move || page.logbook.with(|logbook| logbook.pieces(id)));
    let open = known.with_untracked(|known| !known.is_empty());
    let (what, number) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let add = move |_| {
        let deed =
            page.make(|logbook, _, ids| logbook.add_piece(id, &what.get_untracked(), &number.get_untracked(), ids));
        let Some(deed) = deed else { return };
        page.save(deed, move |_| {
            what.set(String::new());
            number.set(String::new());
        });
    };
    let line = |piece: PieceView| view! { <li class="ink">{say().bench.piece_of(&piece.what, &piece.number)}</li> };
    view! {
        <More words=words.pieces() open>
            <ul>{move || known.get().into_iter().map(line).collect_view()}</ul>
            <div class="pin">
                <Row of="p-what" name=words.piece_what()>
                    <Line id="p-what" value=what change=Callback::new(move |typed| what.set(typed))/>
                </Row>
                <Row of="p-number" name=words.piece_number()>
                    <Line id="p-number" class="measure" value=number change=Callback::new(move |typed| number.set(typed))/>
                </Row>
            </div>
            <p class="note">{words.piece_says()}</p>
            <div class="commands"><button class="button" type="button" disabled=move || number.with(|number| number.trim().is_empty()) on:click=add>{words.add_piece()}</button></div>
        </More>
    }
    .into_any()
}
