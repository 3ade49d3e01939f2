//! A site: made in the field as well. It lends its words and a suggested point.

use crate::asset::asset;
use crate::context::{Context, say, use_page};
use crate::draft::Draft;
use crate::frame::Page;
use crate::here;
use crate::jump;
use crate::narrow::narrowed;
use crate::parts::{How, Line, MissingList, Offer, Offers, Row, Sign};
use crate::route::Screen;
use crate::rows::PlaceFields;
use leptos::prelude::*;
use logbook::form::{CatchForm, PlaceForm, SiteForm, Source};
use logbook::land::{Land, Regions, lands};
use logbook::{Id, OffsetPoint};

type SiteDraft = Draft<SiteForm>;

/// Where the borders lie among the files of the app.
const REGIONS: &str = "geo/regions.bin";

/// A site, or a new one.
#[component]
pub fn Site(id: Option<Id>) -> impl IntoView {
    let page = use_page();
    let there = narrowed(move || id.is_none_or(|id| page.logbook.with(|logbook| logbook.site_of(id).is_some())));
    view! { <Show when=move || there.get() fallback=|| view! { <crate::screens::Lost/> }><SiteScreen id/></Show> }
        .into_any()
}

#[component]
fn SiteScreen(id: Option<Id>) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let name = id.map_or("site".to_owned(), |id| format!("site/{id}"));
    let draft: SiteDraft = Draft::open(&name, || {
        let known = id.and_then(|id| page.logbook.with_untracked(|logbook| logbook.site_of(id)));
        known.unwrap_or_else(|| page.logbook.with_untracked(|logbook| logbook.new_site(&CatchForm::default())))
    });
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        save(page, draft);
    };
    let title = if id.is_some() { words.title() } else { words.title_new() };
    view! {
        <Page title form=true bar=move || view! { <Bar draft/> }>
            <header class="head"><h1>{title}</h1><p class="note">{say().frame.kept_as_typed()}</p></header>
            <How screen="site" says=vec![words.how_1(), words.how_2()]/>
            <form class="columns two" id="site-form" autocomplete="off" novalidate on:submit=submit on:keydown=jump::enter_goes_on>
                <div class="column"><Names draft/></div>
                <div class="column"><Point draft/><Near draft/></div>
            </form>
        </Page>
    }
    .into_any()
}

fn save(page: Context, draft: SiteDraft) {
    let form = draft.form.get_untracked();
    let name = form.name.clone();
    page.save(page.make(|logbook, saving, ids| logbook.save_site(&form, saving, ids)), move |_| {
        draft.forget();
        back(page, form.id, Some(name));
    });
}

/// A new site goes back into the catch that is being typed, where there is one.
fn back(page: Context, id: Option<Id>, name: Option<String>) {
    let catch: Option<CatchForm> = Draft::kept(page, "catch").filter(|_| id.is_none());
    let Some(mut catch) = catch else { return page.go_back() };
    if let Some(name) = name {
        catch.site = name;
        catch.site_given = true;
        crate::draft::put(page, "catch", &catch);
    }
    page.go(Screen::NewCatch);
}

#[component]
fn Names(draft: SiteDraft) -> impl IntoView {
    let words = say().site;
    let row = move |id: &'static str,
                    name: &'static str,
                    capitals: &'static str,
                    read: fn(&SiteForm) -> &String,
                    write: fn(&mut SiteForm, String)| {
        let hint = if id == "offset" { words.offset_hint() } else { "" };
        view! { <Row of=id name=name><Line id capitals hint value=draft.part(move |form| read(form).clone()) change=draft.on(write)/></Row> }
    };
    view! {
        <section class="part pin" aria-label=words.names()>
            {row("site-name", words.name(), "words", |form| &form.name, |form, text| form.name = text)}
            {row("offset", words.offset(), "off", |form| &form.offset, |form, text| form.offset = text)}
            <FromPlace draft/>
            {row("locality", words.locality(), "sentences", |form| &form.locality, |form, text| form.locality = text)}
            {row("province", words.province(), "words", |form| &form.province, |form, text| form.province = text)}
            {row("country", words.country(), "words", |form| &form.country, |form, text| form.country = text)}
            <Lands draft/>
            {row("habitat", words.habitat(), "off", |form| &form.habitat, |form, text| form.habitat = text)}
        </section>
    }
    .into_any()
}

/// The point that the offset describes, while the site has none.
#[component]
fn FromPlace(draft: SiteDraft) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let point = narrowed(move || {
        let form = draft.form.get();
        let wanted = form.place.coordinates().is_none() || form.place.typed == form.offset.trim();
        wanted.then(|| page.logbook.with(|logbook| logbook.offset_point(&form))).flatten()
    });
    let offer = move |point: OffsetPoint| {
        let (latitude, longitude) = point.written.coordinates.clone();
        let radius = point.written.radius.clone().unwrap_or_default();
        let shares: Vec<String> = point.shares.iter().map(|(code, metres)| words.share(code, *metres)).collect();
        let usual = words.usual(point.usual_m);
        let from = words.offset_from(&point.from);
        let take = move |_| draft.change(|form| *form = point.taken(form.clone()));
        view! {
            <div class="row"><div class="row-name"></div><div class="row-value">
                <p class="note">{from}</p>
                <p class="measure">{latitude}" "{longitude}" ±"{radius}" m"</p>
                <p class="note">{shares.join(" + ")}". "{usual}</p>
                <button class="button quiet" type="button" on:click=take>{words.take_offset()}</button>
            </div></div>
        }
    };
    view! { {move || point.get().map(offer)} }.into_any()
}

/// Country and province by the point, while neither is written.
#[component]
fn Lands(draft: SiteDraft) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let place = draft.part(|form| form.place.clone());
    let empty = draft.part(|form| form.country.trim().is_empty() && form.province.trim().is_empty());
    let regions =
        asset(page, REGIONS, Regions::read, move || empty.get() && place.with(|place| place.coordinates().is_some()));
    let found = narrowed(move || match (empty.get(), regions.read().there()) {
        (true, Some(regions)) => place.with(|place| lands(place, regions)),
        _ => Vec::new(),
    });
    let offers = Signal::derive(move || found.get().into_iter().enumerate().map(offer).collect::<Vec<_>>());
    let take = Callback::new(move |taken: Offer| {
        let land = taken.code.parse().ok().and_then(|at: usize| found.with(|found| found.get(at).cloned()));
        if let Some(land) = land {
            draft.change(|form| (form.country, form.province) = (land.country, land.region));
        }
    });
    let none = narrowed(move || found.with(Vec::is_empty));
    view! {
        <div class="row" hidden=none><div class="row-name"></div><div class="row-value"><Offers name=words.lands() offers take/></div></div>
    }
    .into_any()
}

fn offer((at, land): (usize, Land)) -> Offer {
    let note = if land.inside { "" } else { say().site.land_near() };
    let names = [land.region, land.country];
    let words = names.into_iter().filter(|name| !name.is_empty()).collect::<Vec<_>>().join(", ");
    Offer { code: at.to_string(), words, note: note.to_owned(), latin: false }
}

#[component]
fn Point(draft: SiteDraft) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let place = draft.part(|form| form.place.clone());
    let here = draft.part(|form| form.place.source == Source::Here);
    let trouble = here::follow(page, here, move |fixes| {
        draft.change_unkept(|form| {
            let mut follower = CatchForm { place: form.place.clone(), site_given: true, ..CatchForm::default() };
            page.logbook.with_untracked(|logbook| logbook.follow(&mut follower, fixes));
            form.place = follower.place;
        });
    });
    let change = draft.on(|form: &mut SiteForm, place: PlaceForm| form.place = place);
    let drop_point = move |_| draft.change(|form| form.place = PlaceForm::default());
    let none = Signal::stored(None);
    view! {
        <section class="part pin" aria-label=words.point()>
            <Row name=words.point()>
                <PlaceFields place change trouble site_point=none/>
                <button class="button quiet" type="button" hidden=move || place.with(|place| place.coordinates().is_none()) on:click=drop_point>{words.drop()}</button>
                <p class="note">{words.point_says()}</p>
            </Row>
        </section>
    }
    .into_any()
}

/// Sites near it already: one of them may be the one that was meant.
#[component]
fn Near(draft: SiteDraft) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let near = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.sites_near(form))));
    let item = move |site: logbook::beside::SiteNear| {
        let name = site.name.clone();
        let take = move |_| {
            draft.forget();
            back(page, None, Some(name.clone()));
        };
        view! {
            <li class="container-line">
                <span class="what"><span class="ink">{site.name.clone()}</span><br/><span class="note">{words.near_line(site.distance_m, site.events)}</span></span>
                <button class="button" type="button" on:click=take>{say().frame.use_this()}</button>
            </li>
        }
    };
    let new = draft.form.with_untracked(|form| form.id.is_none());
    view! {
        <section class="part" aria-labelledby="near" hidden=move || !new || near.with(Vec::is_empty)>
            <h2 id="near">{words.near()}</h2>
            <ul>{move || near.get().into_iter().map(item).collect_view()}</ul>
        </section>
    }
    .into_any()
}

#[component]
fn Bar(draft: SiteDraft) -> impl IntoView {
    let page = use_page();
    let words = say().site;
    let items = narrowed(move || draft.form.with(missing));
    let out = move |_| {
        let id = draft.form.with_untracked(|form| form.id);
        back(page, id, None);
    };
    view! {
        <div class="bar">
            <MissingList class="says" name=say().frame.missing() items/>
            <button class="button quiet" type="button" on:click=out>{say().frame.set_aside()}</button>
            <button class="button main" type="submit" form="site-form" data-key="ctrl+enter">{words.save()}" "<kbd class="key">"Ctrl ⏎"</kbd></button>
        </div>
    }
    .into_any()
}

fn missing(form: &SiteForm) -> Vec<(Sign, String, &'static str)> {
    let words = say().site;
    let rows = [
        (&form.name, words.missing_name(), "site-name"),
        (&form.country, words.missing_country(), "country"),
        (&form.locality, words.missing_locality(), "locality"),
    ];
    rows.into_iter()
        .filter(|(text, ..)| text.trim().is_empty())
        .map(|(_, words, row)| (Sign::Caret, words.to_owned(), row))
        .collect()
}
