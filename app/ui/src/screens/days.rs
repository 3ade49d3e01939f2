//! All days with events, the newest first.

use crate::context::{say, use_page};
use crate::desk::{Window, how};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::DayLine;
use crate::route::Screen;
use chrono::Datelike;
use leptos::prelude::*;
use logbook::moment::{self, Day as Date};

/// All days.
#[component]
pub fn Days() -> impl IntoView {
    let page = use_page();
    let words = say().day;
    let days = narrowed(move || {
        let mut days = page.logbook.with(|logbook| logbook.days());
        days.reverse();
        days
    });
    let total = move || days.with(|days| words.days_total(days.len(), days.iter().map(|(_, count)| count).sum()));
    let none = narrowed(move || days.with(Vec::is_empty));
    let window = Window::new("days");
    let (top, end) = how("days", vec![words.days_how_1(), words.days_how_2()]);
    let go = Callback::new(move |typed: String| {
        if let Some(day) = moment::read_day(&typed) {
            page.go(Screen::Day(day));
        }
    });
    view! {
        <Page title=words.days() bar=move || view! { <Bar/> }>
            <header class="head"><h1>{words.days()}</h1><p class="note" hidden=none>{total}</p></header>
            {top}
            <div hidden=move || !none.get()><Empty/></div>
            <div hidden=none>
                {window.before(move || days.with(Vec::len))}
                <div id="days" tabindex="-1">{move || months(&days.with(|days| window.rows(days)))}</div>
                {window.after(move || days.with(Vec::len))}
                <section class="part go-to">
                    <p class="note" aria-hidden="true">{words.go_to()}</p>
                    <DayLine id="go-to" name=words.go_to() value=Signal::stored(String::new()) change=go/>
                </section>
            </div>
            {end}
        </Page>
    }
    .into_any()
}

#[component]
fn Bar() -> impl IntoView {
    let page = use_page();
    let words = say().day;
    view! {
        <div class="bar">
            <a class="button grow" href=page.to(Screen::Search(String::new()))>{words.search()}</a>
            <a class="button grow" href=page.to(Screen::Import)>{words.import()}</a>
        </div>
    }
    .into_any()
}

#[component]
fn Empty() -> impl IntoView {
    let words = say().day;
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M22 14h76v92H22zM38 14v92"/><path class="faint" d="M50 38h36M50 56h36M50 74h24"/>
            </svg>
            <p class="ink">{words.days_none()}</p>
            <p>{words.days_none_says()}</p>
        </section>
    }
    .into_any()
}

fn months(days: &[(Date, usize)]) -> AnyView {
    let months = days.chunk_by(|(a, _), (b, _)| (a.year(), a.month()) == (b.year(), b.month()));
    months.map(month).collect_view().into_any()
}

fn month(days: &[(Date, usize)]) -> AnyView {
    let page = use_page();
    let words = say().day;
    let row = |(day, count): &(Date, usize)| {
        view! {
            <li class="container-line whole">
                <span class="what"><a class="ink" href=page.to(Screen::Day(*day))>{words.day_of_month(*day)}</a></span>
                <span class="note">{words.days_events(*count)}</span>
            </li>
        }
    };
    let head = days.first().map(|(day, _)| words.month(*day));
    view! { <section class="part"><h2>{head}</h2><ul>{days.iter().map(row).collect_view()}</ul></section> }.into_any()
}
