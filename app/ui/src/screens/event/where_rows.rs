use super::facts::{nothing, written};
use crate::context::{say, use_page};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::form::Row;
use logbook::view::{Facts as View, Mark};

/// Where: the site's words, the event's own position and heights.
#[component]
pub fn WhereFacts(facts: Memo<View>, marks: Memo<Vec<Mark>>) -> impl IntoView {
    let words = say().event;
    move || {
        let facts = facts.get();
        let height = if facts.height.is_empty() { String::new() } else { words.height(&facts.height) };
        let radius = facts.radius.as_ref().map(|radius| format!("±{radius} m")).unwrap_or_default();
        view! {
            {site(&facts)}
            {position(&facts)}
            {written(words.radius(), "measure", &radius)}
            {facts.radius_reading.map(|(share, most)| view! { <div class="row"><div class="row-name"></div><div class="row-value"><p class="note">{words.radius_reading(share, most)}</p></div></div> })}
            {elevation(&facts, marks.with(|marks| marks.contains(&Mark::Elevation)))}
            {written(say().catch.height(), "measure", &height)}
            {written(say().catch.microhabitat(), "ink", &facts.microhabitat)}
        }
        .into_any()
    }
}

fn site(facts: &View) -> AnyView {
    let page = use_page();
    let words = say().event;
    if facts.site_name.is_empty() {
        return nothing(words.site(), facts, None, true);
    }
    let around: Vec<&str> = [&facts.country, &facts.province, &facts.offset, &facts.locality]
        .into_iter()
        .map(String::as_str)
        .filter(|text| !text.is_empty())
        .collect();
    let name = facts.site_name.clone();
    let name = match facts.site {
        Some(id) => view! { <a href=page.to(Screen::Site(Some(id)))>{name}</a> }.into_any(),
        None => name.into_any(),
    };
    view! {
        <div class="row"><div class="row-name">{words.site()}</div><div class="row-value"><p class="ink">{name}</p><p class="note">{around.join(", ")}</p></div></div>
    }
    .into_any()
}

fn position(facts: &View) -> AnyView {
    let words = say().event;
    let Some((latitude, longitude)) = facts.coordinates.clone() else {
        return nothing(words.position(), facts, Some(Row::Place), true);
    };
    let datum = (!facts.datum.is_empty()).then(|| format!(" {}", facts.datum));
    let how = match facts.place_fixes {
        Some((fixes, seconds)) if fixes > 0 => words.by_device(fixes, seconds),
        Some(_) | None => say().codes.place_how(&facts.place_how),
    };
    view! {
        <div class="row"><div class="row-name">{words.position()}</div><div class="row-value"><p class="measure">{latitude}" "{longitude}{datum}</p><p class="note">{how}</p></div></div>
    }
    .into_any()
}

fn elevation(facts: &View, missing: bool) -> Option<AnyView> {
    let words = say().event;
    let metres = |text: &String| format!("{text} m");
    match (&facts.elevation, &facts.altitude_raw) {
        (Some(elevation), _) => written(words.elevation(), "measure", &metres(elevation)),
        (None, Some(raw)) => Some(
            view! {
                <div class="row"><div class="row-name">{words.altitude()}</div><div class="row-value"><p class="measure">{metres(raw)}</p><p class="note">{words.altitude_says()}</p></div></div>
            }
            .into_any(),
        ),
        (None, None) => Some(nothing(words.elevation(), facts, Some(Row::Elevation), missing)),
    }
}
