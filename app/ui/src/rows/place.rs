use super::{CatchDraft, unknown};
use crate::context::{say, use_page};
use crate::explain;
use crate::far;
use crate::here;
use crate::narrow::narrowed;
use crate::parts::{UnknownWord, WithUnit};
use leptos::prelude::*;
use logbook::form::{self, CatchForm, PlaceForm, Source};
use logbook::places;
use ports::position::NoFix;

/// The position of a catch: the device's, allowed to improve while one types; kept, typed, or the site's own.
#[component]
pub fn PlaceRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say();
    let place = draft.part(|form| form.place.clone());
    let here = draft.part(|form| form.place.source == Source::Here);
    let trouble = here::follow(page, here, move |fixes| {
        draft.change_unkept(|form| page.logbook.with_untracked(|logbook| logbook.follow(form, fixes)));
    });
    let change = draft.on(|form: &mut CatchForm, place: PlaceForm| form.place = place);
    let site = draft.part(|form| form.site.clone());
    let site_point = narrowed(move || page.logbook.with(|logbook| logbook.site_point(&site.get())));
    let (marked, mark) = unknown(draft, form::Row::Place);
    let empty =
        Signal::derive(move || place.with(|place| place.coordinates().is_none() && place.source != Source::Here));
    view! {
        <div class="row" role="group" aria-labelledby="position-name" id="position">
            <div class="row-name" id="position-name">{words.catch.position()}</div>
            <div class="row-value">
                <PlaceFields place change trouble site_point=Signal::derive(move || site_point.get())/>
                <UnknownWord row=words.catch.position() empty marked change=mark/>
            </div>
        </div>
    }
    .into_any()
}

/// A position with its radius and its rings, and the ways to come by another one.
#[component]
pub fn PlaceFields(
    /// The position.
    #[prop(into)]
    place: Signal<PlaceForm>,
    /// Called with the new one.
    change: Callback<PlaceForm>,
    /// Why there is no fix.
    #[prop(into)]
    trouble: Signal<Option<NoFix>>,
    /// The site's own point, where it has one.
    #[prop(into)]
    site_point: Signal<Option<PlaceForm>>,
) -> impl IntoView {
    let source = narrowed(move || place.with(|place| place.source));
    let shown = move || match source.get() {
        Source::Typed => far::typed_place(place, change),
        _ if place.with(|place| place.coordinates().is_some()) => view! { <Found place change/> }.into_any(),
        Source::Here => {
            let waiting = move || trouble.get().map_or(say().place.waiting(), explain::no_fix);
            view! { <p role="status">{waiting}</p> }.into_any()
        }
        Source::Kept | Source::Site | Source::None => view! { <p>{say().place.none()}</p> }.into_any(),
    };
    let has = narrowed(move || place.with(|place| place.coordinates().is_some()));
    let body = move || {
        has.track();
        shown()
    };
    view! { {body} <PlaceCommands place change site_point/> }.into_any()
}

/// Coordinates, radius and rings.
#[component]
fn Found(place: Signal<PlaceForm>, change: Callback<PlaceForm>) -> impl IntoView {
    let words = say().place;
    let written = narrowed(move || {
        let (latitude, longitude) = place.with(PlaceForm::coordinates)?;
        places::write(latitude, longitude, place.with(|place| logbook::values::read_number(&place.radius)))
            .map(|written| written.coordinates)
    });
    let radius = Signal::derive(move || place.with(|place| place.radius.clone()));
    let write = Callback::new(move |radius: String| {
        let now = place.get_untracked();
        let source = if now.source == Source::Here { Source::Kept } else { now.source };
        change.run(PlaceForm { radius, source, ..now });
    });
    let radii = narrowed(move || place.with(|place| place.radii.clone()));
    let note = move || {
        place.with(|place| match place.source {
            Source::Site => words.site_point().to_owned(),
            Source::Kept => words.kept().to_owned(),
            Source::Here if place.fixes > 1 => words.fixes(place.fixes, place.seconds),
            Source::Here | Source::Typed | Source::None => String::new(),
        })
    };
    view! {
        <div class="position">
            <div>
                <p class="measure">{move || written.get().map(|(latitude, longitude)| view! { {latitude}<br/>{longitude} })}</p>
                <WithUnit id="radius" name=words.radius() unit=words.radius_unit() sign="±" class="radius" value=radius change=write/>
                <p class="note">{note}</p>
            </div>
            <Show when=move || !radii.with(Vec::is_empty)>{far::rings(radii)}</Show>
        </div>
    }
    .into_any()
}

/// The ways to come by a position.
#[component]
fn PlaceCommands(
    place: Signal<PlaceForm>,
    change: Callback<PlaceForm>,
    site_point: Signal<Option<PlaceForm>>,
) -> impl IntoView {
    let words = say().place;
    let source = narrowed(move || place.with(|place| place.source));
    let has = narrowed(move || place.with(|place| place.coordinates().is_some()));
    let command = move |shown: Signal<bool>, name: &'static str, to: fn(PlaceForm) -> PlaceForm| {
        view! { <button class="button quiet" type="button" hidden=move || !shown.get() on:click=move |_| change.run(to(place.get_untracked()))>{name}</button> }
    };
    let keep = Signal::derive(move || source.get() == Source::Here && has.get());
    let type_it = Signal::derive(move || source.get() != Source::Typed);
    let here = Signal::derive(move || source.get() != Source::Here);
    let here_name = move || if source.get() == Source::None { words.confirm_here() } else { words.take_here() };
    let take_here = move |_| change.run(PlaceForm { source: Source::Here, ..PlaceForm::default() });
    let take_site = move |_| {
        if let Some(point) = site_point.get_untracked() {
            change.run(point);
        }
    };
    view! {
        <div class="commands place-commands">
            {command(keep, words.keep(), |place| PlaceForm { source: Source::Kept, ..place })}
            <button class="button quiet" type="button" hidden=move || !here.get() on:click=take_here>{here_name}</button>
            {command(type_it, words.type_it(), |place| PlaceForm { source: Source::Typed, ..place })}
            <button class="button quiet" type="button" hidden=move || site_point.with(Option::is_none) || source.get() == Source::Site
                on:click=take_site>{words.take_site_point()}</button>
        </div>
    }
    .into_any()
}
