//! Numbers on this device, when another one of the same person counts already.

use crate::context::{Context, say, use_page};
use crate::explain;
use crate::frame::Page;
use crate::parts::{How, PlateView};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::setup::{OtherNumbering, Own, SecondDevice};
use logbook::view::Next;

/// What this device takes for its own.
#[derive(Clone, Copy)]
struct Choice {
    kind: RwSignal<Kind>,
    letter: RwSignal<String>,
    from: RwSignal<String>,
    to: RwSignal<String>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Letter,
    Range,
    Nothing,
    InItsPlace,
}

impl Choice {
    fn own(self) -> Own {
        match self.kind.get() {
            Kind::Letter => Own::Letter(self.letter.get()),
            Kind::Range => Own::Range(self.from.get(), self.to.get()),
            Kind::Nothing => Own::Nothing,
            Kind::InItsPlace => Own::InItsPlace,
        }
    }
}

/// Numbers on this device.
#[component]
pub fn Habit() -> impl IntoView {
    let page = use_page();
    match page.logbook.with_untracked(|logbook| logbook.second_device()) {
        Some(second) => view! { <Second second/> }.into_any(),
        None => view! { <Alone/> }.into_any(),
    }
}

/// No other device counts for this person.
#[component]
fn Alone() -> impl IntoView {
    let page = use_page();
    let words = say().first;
    view! {
        <Page title=words.own_title()>
            <header class="head"><h1>{words.own_title()}</h1></header>
            <p>{words.own_alone()}</p>
            <p class="part"><a class="button" href=page.to(Screen::Setup)>{say().frame.setup()}</a></p>
        </Page>
    }
    .into_any()
}

#[component]
fn Second(second: SecondDevice) -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let choice = Choice {
        kind: RwSignal::new(Kind::Letter),
        letter: RwSignal::new(second.letter.clone()),
        from: RwSignal::new(second.from.clone()),
        to: RwSignal::new(second.to.clone()),
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        take(page, choice);
    };
    view! {
        <Page title=words.own_title() form=true bar=move || view! { <Bar choice/> }>
            <header class="head"><h1>{words.own_title()}</h1><p class="note">{words.own_note(&second.person)}</p></header>
            <How screen="habit" says=vec![words.own_how()]/>
            <p>{words.own_says()}</p>
            <form class="columns two" id="habit" autocomplete="off" novalidate on:submit=submit>
                <div class="column"><Choices choice/></div>
                <div class="column"><Both others=second.others choice/></div>
            </form>
        </Page>
    }
    .into_any()
}

fn take(page: Context, choice: Choice) {
    if let Ok(settled) = page.make(|logbook, _, ids| logbook.take_own(&choice.own(), ids)) {
        page.settle(Some(settled), move || page.go(Screen::Setup));
    }
}

#[component]
fn Bar(choice: Choice) -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let name = move || match choice.own() {
        Own::Letter(letter) => words.own_take_letter(&letter),
        Own::Range(from, to) => words.own_take_range(&from, &to),
        Own::Nothing => words.own_take_none().to_owned(),
        Own::InItsPlace => words.own_take_place().to_owned(),
    };
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Setup)>{say().frame.later()}</a>
            <button class="button main" type="submit" form="habit" data-key="ctrl+enter">{name}" "<kbd class="key">"⏎"</kbd></button>
        </div>
    }
    .into_any()
}

#[component]
fn Choices(choice: Choice) -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let radio = move |kind: Kind, id: &'static str| {
        view! { <input type="radio" name="own" id=id prop:checked=move || choice.kind.get() == kind on:change=move |_| choice.kind.set(kind)/> }
    };
    let field = move |id: &'static str, name: &'static str, kind: Kind, value: RwSignal<String>| {
        let write = move |event: web_sys::Event| {
            choice.kind.set(kind);
            value.set(event_target_value(&event));
        };
        view! { <label class="unseen" for=id>{name}</label><input class="line measure few" id=id autocapitalize="characters" autocomplete="off" prop:value=value on:input=write/> }
    };
    let size = move || page.logbook.with(|logbook| logbook.range_size(&choice.from.get(), &choice.to.get()));
    let range_says = move || match size() {
        Ok(size) => words.own_range_count(size as usize),
        Err(why) => explain::refused(&why),
    };
    let next = move || match page.logbook.with(|logbook| logbook.own_preview(&Own::Letter(choice.letter.get()))) {
        Ok(Next::Number(plate)) => view! { <span class="note">{words.own_from()}</span><PlateView plate/> }.into_any(),
        Ok(_) => ().into_any(),
        Err(why) => view! { <span class="mark fault">{explain::refused(&why)}</span> }.into_any(),
    };
    view! {
        <fieldset class="part">
            <legend class="unseen">{words.own_legend()}</legend>
            <div class="candidate as-box">{radio(Kind::Letter, "own-letter")}<div>
                <label class="top" for="own-letter"><strong>{words.own_letter()}</strong></label>
                <div class="own">{field("letter", words.own_letter_field(), Kind::Letter, choice.letter)}{next}</div>
            </div></div>
            <div class="candidate as-box">{radio(Kind::Range, "own-range")}<div>
                <label class="top" for="own-range"><strong>{words.own_range()}</strong></label>
                <div class="own">
                    {field("range-from", words.own_from(), Kind::Range, choice.from)}<span>{words.own_range_to()}</span>
                    {field("range-to", words.own_range_to(), Kind::Range, choice.to)}<span class="note">{range_says}</span>
                </div>
            </div></div>
            <div class="candidate as-box">{radio(Kind::Nothing, "own-none")}<div>
                <label class="top" for="own-none"><strong>{words.own_none()}</strong></label><span class="note">{words.own_none_says()}</span>
            </div></div>
            <div class="candidate as-box">{radio(Kind::InItsPlace, "own-place")}<div>
                <label class="top" for="own-place"><strong>{words.own_place()}</strong></label><span class="note">{words.own_place_says()}</span>
            </div></div>
        </fieldset>
    }
    .into_any()
}

/// What each device will give next.
#[component]
fn Both(others: Vec<OtherNumbering>, choice: Choice) -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let other = |other: OtherNumbering| {
        let highest = other.highest.map(|plate| words.own_other_says(&format!("{}{}", plate.prefix, plate.run)));
        let device = if other.device.is_empty() { words.own_other().to_owned() } else { other.device };
        view! { <li class="container-line"><NextPlate next=other.next/><span class="what">{device}<br/><span class="note">{highest}</span></span></li> }
    };
    let own = move || {
        page.logbook.with(|logbook| logbook.own_preview(&choice.own())).ok().map(|next| view! { <NextPlate next/> })
    };
    view! {
        <section class="part" aria-labelledby="both">
            <h2 id="both">{words.own_both()}</h2>
            <ul>
                {others.into_iter().map(other).collect_view()}
                <li class="container-line">{own}<span class="what">{words.own_this()}</span></li>
            </ul>
            <p class="note">{words.own_both_says()}</p>
        </section>
    }
    .into_any()
}

#[component]
fn NextPlate(next: Next) -> impl IntoView {
    match next {
        Next::Number(plate) => view! { <PlateView plate/> }.into_any(),
        Next::None | Next::Unasked => view! { <span class="note">{say().container.no_number()}</span> }.into_any(),
        Next::RangeFull => view! { <span class="note">{say().start.next_full()}</span> }.into_any(),
    }
}
