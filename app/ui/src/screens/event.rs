//! A saved event: text to read, each group of rows to be changed in place.

mod bar;
mod change;
mod containers;
mod facts;
mod where_rows;

use crate::context::{say, use_page};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{Calm, How};
use crate::route::{Group, Screen};
use crate::screens::Lost;
use bar::Bar;
use containers::Containers;
use facts::Facts;
use leptos::prelude::*;
use logbook::Id;
use logbook::view::EventView;

/// A saved event; one group may be open for change.
#[component]
pub fn Event(id: Id, group: Option<Group>) -> impl IntoView {
    let page = use_page();
    let event = narrowed(move || page.logbook.with(|logbook| logbook.event(id)));
    let there = narrowed(move || event.with(Option::is_some));
    let known = Memo::new(move |before: Option<&Option<EventView>>| event.get().or_else(|| before.cloned().flatten()));
    let shown = move || known.with_untracked(Option::is_some).then(|| view! { <EventScreen id group event=known/> });
    view! { <Show when=move || there.get() fallback=|| view! { <Lost/> }>{shown()}</Show> }.into_any()
}

/// The event, which is there as long as the screen is.
pub type Shown = Memo<Option<EventView>>;

/// A part of the event that is shown.
pub fn of<T: Default + PartialEq + Send + Sync + 'static>(
    event: Shown,
    part: impl Fn(&EventView) -> T + Send + Sync + 'static,
) -> Memo<T> {
    narrowed(move || event.with(|event| event.as_ref().map(&part).unwrap_or_default()))
}

#[component]
fn EventScreen(id: Id, group: Option<Group>, event: Shown) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let site = of(event, |event| event.line.site.clone());
    let title =
        Signal::derive(move || if site.with(String::is_empty) { words.untitled().to_owned() } else { site.get() });
    let deleted = of(event, |event| event.deleted);
    let gone = move || {
        deleted.get().then(|| {
        let back = move |_| page.save(page.logbook.with_untracked(|logbook| logbook.bring_back(id)), |_| {});
        view! { <Calm says=words.deleted_says()><button class="button" type="button" on:click=back>{words.bring_back()}</button></Calm> }
    })
    };
    view! {
        <Page title form=group.is_some() bar=move || view! { <Bar id group event/> }>
            <header class="head"><h1>{title}</h1><Turn event/></header>
            <How screen="event" says=vec![words.how_1(), words.how_2()]/>
            {gone}
            <div class="columns two">
                <div class="column"><Containers id event/><Facts id group event which=Group::Host/><Facts id group event which=Group::Where/></div>
                <div class="column"><Facts id group event which=Group::When/><Facts id group event which=Group::Whom/><Written id event/></div>
            </div>
        </Page>
    }
    .into_any()
}

/// The events before and after it on its day.
#[component]
fn Turn(event: Shown) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let day = of(event, |event| event.line.day);
    let id = of(event, |event| Some(event.line.id));
    let around = move || {
        let (day, id) = (day.get()?, id.get()?);
        page.logbook.with(|logbook| logbook.around(day, id)).map(|around| (day, around))
    };
    let shown = move || {
        around().map(|(day, around)| {
        let turn = |turn: Option<(Id, usize)>| turn.map(|(id, order)| view! { <a class="button quiet" href=page.to(Screen::Event(id, None))>{words.event(order)}</a> });
        view! {
            <p class="note">{words.order(around.order, around.of)}</p>
            <nav class="turn" aria-label=words.turn()>
                {turn(around.before)}<a class="button quiet" href=page.to(Screen::Day(day))>{say().dates.short(day)}</a>{turn(around.after)}
            </nav>
        }
    })
    };
    view! { {shown} }.into_any()
}

/// When it was entered, and deleting it, which can be undone.
#[component]
fn Written(id: Id, event: Shown) -> impl IntoView {
    let page = use_page();
    let words = say().event;
    let deleted = of(event, |event| event.deleted);
    let who = narrowed(move || page.logbook.with(|logbook| logbook.written_by(id)));
    let delete = move |_| {
        let day = event.with_untracked(|event| event.as_ref().and_then(|event| event.line.day));
        page.save(page.logbook.with_untracked(|logbook| logbook.delete_event(id)), move |_| {
            page.go(day.map_or(Screen::Start, Screen::Day))
        });
    };
    let item = |written: logbook::written::Written| {
        view! {
            <li class="event row">
                <div class="row-name"><time>{written.clock}</time><span class="order">{written.day.map(|day| say().dates.roman_short(day))}</span></div>
                <div class="row-value">
                    <p class="ink">{written.person}</p>
                    <p class="note">{say().event.who_line(&written.device, &written.fields.iter().map(|field| say().event.field(field)).collect::<Vec<_>>().join(", "))}</p>
                </div>
            </li>
        }
    };
    view! {
        <section class="part" aria-labelledby="who">
            <h2 id="who">{words.who()}</h2>
            <ol class="pin">{move || who.get().into_iter().map(item).collect_view()}</ol>
            <p class="note">{words.clocks()}</p>
            <div class="commands apart" hidden=deleted><button class="button quiet" type="button" on:click=delete>{words.delete()}</button></div>
        </section>
    }
    .into_any()
}
