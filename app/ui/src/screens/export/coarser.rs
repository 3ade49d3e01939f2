//! Share copies: for others' eyes, with coarser positions and without the words for the place.

use super::Exporting;
use crate::context::say;
use crate::parts::{More, Pick};
use leptos::prelude::*;
use ports::share_copy::Coarse;

const STEPS: [(&str, Option<Coarse>); 5] = [
    ("log", None),
    ("0.001", Some(Coarse::Thousandth)),
    ("0.01", Some(Coarse::Hundredth)),
    ("0.1", Some(Coarse::Tenth)),
    ("1", Some(Coarse::Whole)),
];

/// How coarse.
#[component]
pub fn Coarser(exporting: Exporting) -> impl IntoView {
    let words = say().export;
    let name = |code: &str| match code {
        "log" => words.coarse_not().to_owned(),
        degrees => words.coarse_to(degrees),
    };
    let options: Vec<(String, String)> = STEPS.iter().map(|(code, _)| ((*code).to_owned(), name(code))).collect();
    let chosen = Signal::derive(move || {
        let coarse = exporting.coarse.get();
        STEPS.iter().find(|(_, step)| *step == coarse).map(|(code, _)| (*code).to_owned()).unwrap_or_default()
    });
    let choose = Callback::new(move |code: String| {
        exporting.outcome.set(None);
        exporting.coarse.set(STEPS.iter().find(|(known, _)| *known == code).and_then(|(_, step)| *step));
    });
    view! {
        <section class="part">
            <More words=words.coarse()>
                <label class="unseen" for="coarse">{words.coarse()}</label>
                <Pick id="coarse" options=Signal::stored(options) chosen choose/>
                <p class="note">{words.coarse_says()}</p>
            </More>
        </section>
    }
    .into_any()
}
