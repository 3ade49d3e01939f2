use super::words::{contents_words, fluid_words, when_words};
use crate::context::say;
use crate::parts::{PlateView, plate_words};
use crate::screens::{HostWords, MethodWords};
use leptos::prelude::*;
use logbook::conflict::Said;
use logbook::moment::{Known, clock_text};

/// What a value of a field says.
#[component]
pub fn SaidView(
    /// The value.
    said: Said,
) -> impl IntoView {
    let words = say().desk;
    match said {
        Said::Empty => words.empty_value().into_any(),
        Said::Unknown => words.unknown_value().into_any(),
        Said::Deleted => words.deleted_value().into_any(),
        Said::Edited(fields) => {
            fields.iter().map(|field| say().event.field(field)).collect::<Vec<_>>().join(", ").into_any()
        }
        Said::Flag(flag) => if flag { words.yes() } else { words.no() }.into_any(),
        Said::Text(text) | Said::Name(text) | Said::Stored(text) => text.into_any(),
        Said::Elevation(metres) => format!("{} m", metres.trim().trim_end_matches([' ', 'm'])).into_any(),
        Said::Place(latitude, longitude, radius) => {
            let radius = radius.map(|metres| format!("±{metres} m"));
            let parts = [Some(latitude), Some(longitude), radius].into_iter().flatten();
            parts.map(|part| view! { <span class="nowrap">{part}</span>" " }).collect_view().into_any()
        }
        Said::When(from, until, night) => caught_words(from, until, night).into_any(),
        Said::Method(method) => view! { <MethodWords method=Some(method) host=None/> }.into_any(),
        Said::Host(host) => view! { <HostWords host/> }.into_any(),
        Said::Fluid(fluid) => fluid_words(&fluid).into_any(),
        Said::Number(plate) => view! { <PlateView plate/> }.into_any(),
        Said::Content(line) => contents_words(&[line]).into_any(),
        Said::Link(relation, plate) => format!("{} {}", say().codes.link(&relation), plate_words(&plate)).into_any(),
        Said::Lines(lines) => lines.into_iter().map(|line| view! { {line}<br/> }).collect_view().into_any(),
    }
}

/// True for what was counted or measured.
pub fn said_is_measured(said: &Said) -> bool {
    matches!(said, Said::Place(..) | Said::When(..) | Said::Elevation(_) | Said::Number(_))
}

/// A time of catch: `19.vi.2027, 14:32 to 15:02`.
pub fn caught_words(from: Option<Known>, until: Option<Known>, night: bool) -> String {
    let words = say().desk;
    let Some(from) = from else { return words.empty_value().to_owned() };
    let begin = when_words(from, true);
    let begin = if night { format!("{} {begin}", say().bench.night_of()) } else { begin };
    let Some(until) = until else { return begin };
    let end = match until.clock.filter(|_| until.date() == from.date()) {
        Some(clock) => clock_text(clock),
        None => when_words(until, true),
    };
    format!("{begin} {} {end}", say().dates.to())
}
