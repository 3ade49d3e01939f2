//! Sun and moon over an event: a row to read, and the night of a lamp drawn from noon to noon.

use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Night, Row};
use leptos::prelude::*;
use logbook::Id;
use logbook::moment::{clock_text, local};
use logbook::sky::{Dark, FromSun, SkyAt, SkyView, Which};
use logbook::view::OpenLine;

/// The sky over an event: the night, and each hour of the event.
#[component]
pub fn SkyRow(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().sky;
    let sky = narrowed(move || page.logbook.with(|logbook| logbook.sky(id, page.now.get())));
    let shown = move |sky: SkyView| {
        let hours = sky.at.iter().map(|at| view! { <p>{hour_words(at)}</p> }).collect_view();
        view! {
            <Row name=words.sky()>
                <p>{night_words(&sky)}</p>{hours}
                <p class="note">{words.dark_says()}</p>
            </Row>
        }
    };
    view! { {move || sky.get().map(shown)} }.into_any()
}

/// The night of a lamp that burns: what the sky does, and how far the night is.
#[component]
pub fn LampNight(line: OpenLine) -> impl IntoView {
    let page = use_page();
    let id = line.id;
    let sky = narrowed(move || page.logbook.with(|logbook| logbook.sky(id, page.now.get())));
    let clock = line.since.as_ref().map(|(_, clock)| clock.clone()).unwrap_or_default();
    let drawn = move || {
        let now = clock_text(local(page.now.get()).time());
        let says = say().open.night_span(&clock, line.containers, &now);
        let sky = sky.get();
        let dark = sky.as_ref().and_then(|sky| match sky.dark {
            Dark::Between(_, minutes) => Some(minutes),
            Dark::Never(_) | Dark::Always => None,
        });
        let last = sky.as_ref().and_then(|sky| sky.at.last()).map(|at| view! { <p class="note">{hour_words(at)}</p> });
        let night = sky.as_ref().map(|sky| view! { <p class="note">{night_words(sky)}</p> });
        view! { <Night span=line.span filled=line.filled.clone() dark says/> {night} {last} }
    };
    view! { {drawn} }.into_any()
}

/// `sunset 20:26, dark 21:06 to 03:48, sunrise 04:29`.
fn night_words(sky: &SkyView) -> String {
    let words = say().sky;
    let (sunset, sunrise) = &sky.sun;
    let dark = match &sky.dark {
        Dark::Between((from, until), _) => words.dark(from, until),
        Dark::Never(true) => words.sun_stays_up().to_owned(),
        Dark::Never(false) => words.no_dark().to_owned(),
        Dark::Always => words.sun_stays_down().to_owned(),
    };
    let parts = [
        sunset.as_deref().map(|clock| words.sunset(clock)),
        Some(dark),
        sunrise.as_deref().map(|clock| words.sunrise(clock)),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// `21:05: 9 min before sunset, moon 12 %, waxing crescent, down`.
fn hour_words(at: &SkyAt) -> String {
    let words = say().sky;
    let hour = if at.when == Which::Now { words.now() } else { &at.clock };
    let sun = at.sun.map(|sun| match sun {
        FromSun::BeforeSunset(minutes) => words.before_sunset(minutes),
        FromSun::AfterSunset(minutes) => words.after_sunset(minutes),
        FromSun::BeforeSunrise(minutes) => words.before_sunrise(minutes),
        FromSun::AfterSunrise(minutes) => words.after_sunrise(minutes),
    });
    let moon = words.moon(at.moon_percent, at.phase.code(), at.moon_up);
    let rest = [sun, Some(moon)].into_iter().flatten().collect::<Vec<_>>().join(", ");
    format!("{hour}: {rest}")
}
