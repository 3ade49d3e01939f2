use crate::context::say;
use leptos::prelude::*;
use logbook::view::Plate;

/// A number as it stands on its carrier, shaped like it; its kind is heard in words.
#[component]
pub fn PlateView(
    /// The number and what carries it.
    plate: Plate,
    /// `small`, `middle`, `big`, `huge`; empty for the usual size.
    #[prop(optional)]
    size: &'static str,
) -> impl IntoView {
    if plate.run.is_empty() {
        let words = if plate.vessel == "none" { say().container.released_says() } else { say().container.no_number() };
        let vessel =
            if plate.vessel == "none" { String::new() } else { format!("{}, ", say().codes.vessel(&plate.vessel)) };
        return view! { <span class=format!("plate none {size}")><span class="run">{vessel}{words}</span></span> }
            .into_any();
    }
    view! {
        <span class=format!("plate {} {size}", plate.vessel)>
            <span class="unseen">{say().codes.vessel(&plate.vessel)}" "</span>
            {(!plate.prefix.is_empty()).then(|| view! { <span class="prefix">{plate.prefix.clone()}</span> })}
            <span class="run">{plate.run.clone()}</span>
        </span>
    }
    .into_any()
}

/// The number in one piece.
pub fn plate_words(plate: &Plate) -> String {
    format!("{}{}", plate.prefix, plate.run)
}
