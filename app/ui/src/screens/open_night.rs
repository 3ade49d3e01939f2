//! A lamp that burns: the night so far, the next container with its hour, the lamp off.

mod next;
mod off;
mod tonight;

use crate::context::{say, use_page};
use crate::draft::Draft;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{How, Key, NumberKeys};
use crate::route::Screen;
use crate::screens::Lost;
use crate::screens::container::VialDraft;
use crate::screens::start::{OpenFor, OpenSays};
use leptos::prelude::*;
use logbook::Id;
use logbook::numbers::plate_of;
use logbook::open::OpenView;
use logbook::view::{EventView, OpenKind, OpenLine};
use next::NextContainer;
use off::Off;
use tonight::Tonight;

/// An open event.
#[component]
pub fn OpenNight(id: Id) -> impl IntoView {
    let page = use_page();
    let open = narrowed(move || match page.logbook.with(|logbook| logbook.open(id, page.now.get())) {
        Some(OpenView::Event(line, event)) => Some((line, *event)),
        Some(OpenView::Traps(..)) | None => None,
    });
    let there = narrowed(move || open.with(Option::is_some));
    view! { <Show when=move || there.get() fallback=|| view! { <Lost/> }><Night id open/></Show> }.into_any()
}

/// Which field the keys write into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The number.
    Number,
    /// The hour.
    Hour,
}

/// Where the keys write; the first figure after coming to a field replaces what stood there.
#[derive(Clone, Copy)]
pub struct Writing {
    /// The field; none while something else is written.
    pub field: RwSignal<Option<Field>>,
    /// Nothing was keyed since it was come to.
    pub fresh: RwSignal<bool>,
}

#[component]
fn Night(id: Id, open: Memo<Option<(OpenLine, EventView)>>) -> impl IntoView {
    let page = use_page();
    let words = say().open;
    let draft: VialDraft =
        Draft::open(&format!("open/{id}"), || page.logbook.with_untracked(|logbook| logbook.next_container_of(id)));
    let writing = Writing { field: RwSignal::new(Some(Field::Number)), fresh: RwSignal::new(true) };
    let line = narrowed(move || open.with(|open| open.as_ref().map(|(line, _)| line.clone())));
    let site = move || {
        line.with(|line| {
            line.as_ref()
                .map(|line| line.site.clone())
                .filter(|site| !site.is_empty())
                .unwrap_or_else(|| say().event.untitled().into())
        })
    };
    let lamp = narrowed(move || line.with(|line| line.as_ref().is_some_and(|line| line.what == OpenKind::Lamp)));
    let still = narrowed(move || {
        open.with(|open| open.as_ref().is_some_and(|(_, event)| event.line.marks.contains(&logbook::view::Mark::Open)))
    });
    let keys = move || view! { <Keys draft writing/> };
    let large = move || line.get().map(|line| view! { <OpenFor minutes=line.minutes name=words.lamp_on_for()/> });
    view! {
        <Page title=Signal::derive(site) form=true keys bar=move || view! { <Bar draft/> }>
            <header class="open-head"><div class="open-what"><h1>{site}</h1></div>{large}</header>
            <How screen="open" says=vec![words.night_how_1(), words.night_how_2()]/>
            <div class="columns two">
                <div class="column">
                    <section class="part" aria-label=words.night()>{move || line.get().map(|line| view! { <OpenSays line/> })}</section>
                    <NextContainer id draft writing/>
                </div>
                <div class="column">
                    <Tonight open/>
                    <Show when=move || still.get() fallback=move || view! { <p class="note part">{words.closed()}</p> }><Off id line lamp/></Show>
                    <p class="part"><a class="button quiet" href=page.to(Screen::Event(id, None))>{words.whole_event()}</a></p>
                </div>
            </div>
        </Page>
    }
    .into_any()
}

#[component]
fn Keys(draft: VialDraft, writing: Writing) -> impl IntoView {
    let page = use_page();
    let word = Signal::stored(Some(say().frame.key_now()));
    let press = Callback::new(move |key| {
        let replace = writing.fresh.get_untracked() && matches!(key, Key::Figure(_));
        writing.fresh.set(false);
        let hour = writing.field.get_untracked() == Some(Field::Hour);
        draft.change(|form| match (hour, key) {
            (_, Key::Word) => form.clock = logbook::moment::clock_text(logbook::moment::local(page.moment()).time()),
            (true, key) => form.clock = key.on_clock(if replace { "" } else { &form.clock }),
            (false, key) => {
                form.first = key.on(&if replace { String::new() } else { plate_of("vial", &form.first).run })
            }
        });
    });
    view! { <Show when=move || writing.field.get().is_some()><NumberKeys word press/></Show> }.into_any()
}

#[component]
fn Bar(draft: VialDraft) -> impl IntoView {
    let page = use_page();
    let vessel = draft.part(|form| form.vessel.clone());
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Start)>{say().frame.set_aside()}</a>
            <button class="button main" type="submit" form="next" data-key="ctrl+enter">{move || say().open.add(&vessel.get())}" "<kbd class="key">"⏎"</kbd></button>
        </div>
    }
    .into_any()
}
