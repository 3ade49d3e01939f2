//! Share copies: for others' eyes, with coarser positions and without the words for the place.

use super::Exporting;
use crate::context::say;
use crate::parts::{More, Pick, WithUnit};
use leptos::prelude::*;
use logbook::exchange::coarse_radius;
use ports::share_copy::Coarse;

/// What is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Asked {
    /// The log as it is.
    Log,
    /// A share copy.
    Share(Coarse),
    /// A share copy of a radius that is not typed yet, or cannot be read.
    NoRadius,
}

const GRIDS: [(&str, Coarse); 4] =
    [("0.001", Coarse::Thousandth), ("0.01", Coarse::Hundredth), ("0.1", Coarse::Tenth), ("1", Coarse::Whole)];
const LOG: &str = "log";
const RADIUS: &str = "radius";

/// How coarse.
#[component]
pub fn Coarser(exporting: Exporting) -> impl IntoView {
    let words = say().export;
    let (way, radius) = (RwSignal::new(LOG.to_owned()), RwSignal::new(String::new()));
    let ask = move || {
        exporting.outcome.set(None);
        exporting.asked.set(asked(&way.get_untracked(), &radius.get_untracked()));
    };
    let choose = Callback::new(move |code: String| {
        way.set(code);
        ask();
    });
    let change = Callback::new(move |typed: String| {
        radius.set(typed);
        ask();
    });
    let understood = move || match exporting.asked.get() {
        Asked::Share(Coarse::Radius(metres)) => words.coarse_radius_says(metres),
        _ => String::new(),
    };
    let no_radius = move || way.with(|way| way != RADIUS);
    view! {
        <section class="part">
            <More words=words.coarse()>
                <label class="unseen" for="coarse">{words.coarse()}</label>
                <Pick id="coarse" options=Signal::stored(options()) chosen=way choose/>
                <div hidden=no_radius>
                    <WithUnit id="coarse-radius" name=words.coarse_radius() unit="m" class="fit" figure="few" value=radius change/>
                    <p class="note">{understood}</p>
                </div>
                <p class="note">{words.coarse_says()}</p>
            </More>
        </section>
    }
    .into_any()
}

fn options() -> Vec<(String, String)> {
    let words = say().export;
    let log = (LOG, words.coarse_not().to_owned());
    let grids = GRIDS.iter().map(|(degrees, _)| (*degrees, words.coarse_to(degrees)));
    let radius = (RADIUS, words.coarse_by_radius().to_owned());
    [log].into_iter().chain(grids).chain([radius]).map(|(code, name)| (code.to_owned(), name)).collect()
}

fn asked(way: &str, radius: &str) -> Asked {
    let grid = || GRIDS.iter().find(|(degrees, _)| *degrees == way).map(|(_, grid)| Asked::Share(*grid));
    match way {
        RADIUS => coarse_radius(radius).map_or(Asked::NoRadius, Asked::Share),
        _ => grid().unwrap_or(Asked::Log),
    }
}
