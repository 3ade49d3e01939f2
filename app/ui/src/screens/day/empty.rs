//! A day without events: a result, or notes to be written up.

use crate::context::{Context, say, use_page};
use crate::draft::Draft;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::form::CatchForm;
use logbook::moment::{self, Day};

/// Nothing was logged on this day.
#[component]
pub fn EmptyDay(day: Day) -> impl IntoView {
    let page = use_page();
    let words = say().day;
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M8 104 112 8v96z"/><path class="faint" d="M98 21v83M22 91h90M98 104l14-14"/>
            </svg>
            <p class="ink">{words.empty()}</p>
            <p>{words.empty_says()}</p>
        </section>
        <div class="commands">
            <button class="button grow" type="button" on:click=move |_| nothing_caught(page, day)>{words.nothing_caught()}</button>
            <button class="button grow" type="button" on:click=move |_| from_notes(page, day)>{words.from_notes()}</button>
        </div>
    }
    .into_any()
}

/// A result without a catch, saved at once.
fn nothing_caught(page: Context, day: Day) {
    let deed = page.make(|logbook, saving, ids| {
        let mut form = logbook.new_catch(saving.now);
        on_day(&mut form, day, moment::today(saving.now));
        form.nothing = true;
        form.open = false;
        form.containers.clear();
        logbook.save_catch(&form, saving, ids)
    });
    page.save(deed.expect("a form without containers holds no span of numbers"), |_| {});
}

/// The form of a catch on that day. What lies half written already is not touched.
fn from_notes(page: Context, day: Day) {
    if Draft::<CatchForm>::kept(page, "catch").is_none() {
        let draft = Draft::open("catch", || page.logbook.with_untracked(|logbook| logbook.new_catch(page.moment())));
        draft.change(|form| on_day(form, day, moment::today(page.moment())));
    }
    page.go(Screen::NewCatch);
}

/// Caught on that day: unless it is today, neither "now" nor "here" nor the last site belong to it.
fn on_day(form: &mut CatchForm, day: Day, today: Day) {
    if day == today {
        return;
    }
    form.caught_otherwise();
    form.caught.day = moment::day_text(day);
    form.caught.clock.clear();
    form.site.clear();
}
