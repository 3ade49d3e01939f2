//! What the catch form does not need: every other screen, and the heavier parts of the first ones, in a module of its own.
//!
//! A new catch must take typing on an old phone over a poor connection, so the page starts without these. They are
//! fetched as soon as the book is open, or when first asked for, and the offline copy holds them like every other file.
//! What is named in [`Far`] and nowhere else ends up in that module; a screen that the first module names itself does not.

use crate::context::{Context, say, use_page};
use crate::frame::Page;
use crate::parts::Message;
use crate::route::Screen;
use crate::rows::{CatchDraft, WriteHost};
use crate::screens;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::form::{HostForm, PlaceForm};
use logbook::view::OpenLine;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// The doors of the second module.
pub struct Far {
    screen: fn(Screen) -> AnyView,
    typed_place: fn(Signal<PlaceForm>, Callback<PlaceForm>) -> AnyView,
    today: fn() -> AnyView,
    sample: fn() -> AnyView,
    lamp_night: fn(OpenLine) -> AnyView,
    fold: fn(Context),
    device_height: fn(CatchDraft) -> AnyView,
    seldom_rows: fn(CatchDraft) -> AnyView,
    rings: fn(Memo<Vec<f64>>) -> AnyView,
    book_strip: fn() -> AnyView,
    host_more: fn(Signal<HostForm>, Callback<(WriteHost, String)>) -> AnyView,
}

/// How far the second module is.
#[derive(Clone, Copy, Default)]
pub enum Reached {
    /// Not asked for yet.
    #[default]
    Not,
    /// On its way.
    Asked,
    /// Here.
    There(&'static Far),
    /// It did not come; asking again tries again.
    Failed,
}

#[wasm_split(far, fallible)]
fn reach() -> Result<&'static Far, SplitLoaderError> {
    Ok(&Far {
        screen,
        typed_place: |place, change| view! { <crate::rows::TypedPlace place change/> }.into_any(),
        device_height: |draft| view! { <crate::rows::DeviceHeightOffer draft/> }.into_any(),
        seldom_rows: |draft| view! { <screens::SeldomRows draft/> }.into_any(),
        host_more: |host, set| view! { <crate::rows::HostMore host set/> }.into_any(),
        rings: |radii| view! { <crate::rows::Rings radii/> }.into_any(),
        book_strip: || view! { <crate::frame::BookStrip/> }.into_any(),
        lamp_night: |line| view! { <screens::LampNight line/> }.into_any(),
        today: || view! { <screens::TodayColumns/> }.into_any(),
        sample: || view! { <screens::LoadingSample/> }.into_any(),
        fold: |page| spawn_local(async move { page.driver().fold().await }),
    })
}

/// Fetches the second module, unless that was done before.
pub fn fetch(page: Context) {
    if !matches!(page.far.get_untracked(), Reached::Not) {
        return;
    }
    *page.far.write_untracked() = Reached::Asked;
    spawn_local(async move {
        let reached = reach().await.map_or(Reached::Failed, Reached::There);
        page.far.set(reached);
    });
}

/// A screen of the second module, in a frame of its own until it is there.
pub fn screen_of(screen: Screen) -> AnyView {
    let page = use_page();
    match page.far.get() {
        Reached::There(far) => (far.screen)(screen),
        Reached::Not | Reached::Asked | Reached::Failed => {
            view! { <Page title=say().frame.fetching()><Fetching/></Page> }.into_any()
        }
    }
}

/// Coordinates as a person has them.
pub fn typed_place(place: Signal<PlaceForm>, change: Callback<PlaceForm>) -> AnyView {
    part(move |far| (far.typed_place)(place, change))
}

/// The height that the device's altitude makes.
pub fn device_height(draft: CatchDraft) -> AnyView {
    part(move |far| (far.device_height)(draft))
}

/// The rows of a catch that are seldom needed.
pub fn seldom_rows(draft: CatchDraft) -> AnyView {
    part(move |far| (far.seldom_rows)(draft))
}

/// What is seldom said of a host.
pub fn host_more(host: Signal<HostForm>, set: Callback<(WriteHost, String)>) -> AnyView {
    part(move |far| (far.host_more)(host, set))
}

/// The strip of a book that is not one's own.
pub fn book_strip() -> AnyView {
    part(|far| (far.book_strip)())
}

/// The drawing of how accurate a position is: its numbers stand beside it, so nothing waits for it.
pub fn rings(radii: Memo<Vec<f64>>) -> AnyView {
    let page = use_page();
    let shown = move || match page.far.get() {
        Reached::There(far) => Some((far.rings)(radii)),
        Reached::Not | Reached::Asked | Reached::Failed => None,
    };
    view! { {shown} }.into_any()
}

/// The night of a lamp that burns.
pub fn lamp_night(line: OpenLine) -> AnyView {
    part(move |far| (far.lamp_night)(line.clone()))
}

/// What is open and what was caught today.
pub fn today() -> AnyView {
    part(|far| (far.today)())
}

/// The sample survey on its way in.
pub fn sample() -> AnyView {
    part(|far| (far.sample)())
}

/// Folds the journal of the book, when that should be done and the module that can is there.
pub fn fold(page: Context) {
    if let Reached::There(far) = page.far.get_untracked()
        && page.driver().should_fold()
    {
        (far.fold)(page);
    }
}

fn part(show: impl Fn(&'static Far) -> AnyView + Send + 'static) -> AnyView {
    let page = use_page();
    let shown = move || match page.far.get() {
        Reached::There(far) => show(far),
        Reached::Not | Reached::Asked | Reached::Failed => view! { <Fetching/> }.into_any(),
    };
    view! { {shown} }.into_any()
}

/// Fetches, says so after half a second, and what to do if it fails.
#[component]
fn Fetching() -> impl IntoView {
    let page = use_page();
    fetch(page);
    let late = page.late();
    let failed = move || matches!(page.far.get(), Reached::Failed);
    let again = move |_| {
        page.far.set(Reached::Not);
        fetch(page);
    };
    let message = move || {
        failed().then(|| {
            let words = say().faults;
            view! {
                <Message what=words.not_fetched() safe=words.not_fetched_do()>
                    <button class="button" type="button" on:click=again>{words.fetch_again()}</button>
                </Message>
            }
        })
    };
    view! { <p role="status" hidden=move || failed() || !late.get()>{say().frame.fetching()}</p> {message} }.into_any()
}

fn screen(screen: Screen) -> AnyView {
    match screen {
        Screen::Start => view! { <screens::Start/> }.into_any(),
        Screen::NewCatch => view! { <screens::NewCatch/> }.into_any(),
        Screen::First => view! { <screens::First/> }.into_any(),
        Screen::Habit => view! { <screens::Habit/> }.into_any(),
        Screen::FormContainer(of, at) => view! { <screens::FormContainer of at/> }.into_any(),
        Screen::Event(id, group) => view! { <screens::Event id group/> }.into_any(),
        Screen::EventContainer(id) => view! { <screens::EventContainer id/> }.into_any(),
        Screen::Container(id) => view! { <screens::ChangeContainer id/> }.into_any(),
        Screen::Open(id) => view! { <screens::OpenNight id/> }.into_any(),
        Screen::SetTrap => view! { <screens::SetTrap/> }.into_any(),
        Screen::Trap(id) => view! { <screens::Trap id/> }.into_any(),
        Screen::Site(id) => view! { <screens::Site id/> }.into_any(),
        Screen::Days => view! { <screens::Days/> }.into_any(),
        Screen::Day(day) => view! { <screens::Day day/> }.into_any(),
        Screen::Bench(sought) => view! { <screens::Bench sought/> }.into_any(),
        Screen::Arrange(kind) => view! { <screens::Arrange kind/> }.into_any(),
        Screen::Labels => view! { <screens::Labels/> }.into_any(),
        Screen::Setup => view! { <screens::Setup/> }.into_any(),
        Screen::Search(sought) => view! { <screens::Search sought/> }.into_any(),
        Screen::Export(asked) => view! { <screens::Export asked/> }.into_any(),
        Screen::Import => view! { <screens::Import/> }.into_any(),
        Screen::Conflict(id) => view! { <screens::Conflict id/> }.into_any(),
    }
}
