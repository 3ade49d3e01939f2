//! Export: what goes out, the file that is made before the tap, and the ways by which it leaves.

mod chosen;
mod coarser;
mod leaving;
mod what;

use crate::context::{Context, say, use_page};
use crate::desk::how;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::route::{self, Screen};
use crate::turn::Turn;
use chosen::Choose;
use coarser::{Asked, Coarser};
use leaving::{Bar, Outcome, Waitings, WaysOut};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::Id;
use logbook::book::State;
use logbook::exchange::{ExchangeFault, OutCounts, Outgoing, Selection};
use logbook::moment::{self, Day};
use what::{Goes, What};

/// Which of the four kinds of selection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// One day.
    Day,
    /// Events ticked by hand.
    Chosen,
    /// What exists only here.
    NotExported,
    /// The whole book.
    All,
}

/// The file, as far as it is made.
#[derive(Clone, Debug)]
pub enum Ready {
    /// The book is still coming in, or the file is being made.
    Making,
    /// It can leave.
    File(Box<Outgoing>),
    /// A share copy is asked for, and its radius is not typed yet.
    NoRadius,
    /// There is none; why.
    Not(ExchangeFault),
}

/// What this screen holds.
#[derive(Clone, Copy)]
pub struct Exporting {
    /// Which kind of selection.
    pub kind: RwSignal<Kind>,
    /// Which day.
    pub day: RwSignal<Option<Day>>,
    /// Which events.
    pub chosen: RwSignal<Vec<Id>>,
    /// What goes out.
    pub selection: Memo<Option<Selection>>,
    /// How many of what.
    pub counts: Memo<OutCounts>,
    /// The file.
    pub ready: RwSignal<Ready, LocalStorage>,
    /// What became of the last try.
    pub outcome: RwSignal<Option<Outcome>, LocalStorage>,
    /// The log as it is, or a share copy.
    pub asked: RwSignal<Asked>,
    /// Counts up whenever the list of downloads that wait is to be read again.
    pub waitings: RwSignal<u32>,
}

impl Exporting {
    fn new(page: Context, asked: route::Export) -> Self {
        let newest = page.logbook.with_untracked(|logbook| logbook.days().last().map(|(day, _)| *day));
        let kind = RwSignal::new(match asked {
            route::Export::Day(_) => Kind::Day,
            route::Export::NotExported => Kind::NotExported,
            route::Export::All => Kind::All,
        });
        let day = RwSignal::new(match asked {
            route::Export::Day(day) => Some(day),
            _ => newest,
        });
        let chosen = RwSignal::new(Vec::new());
        let selection = narrowed(move || match kind.get() {
            Kind::Day => day.get().map(Selection::Day),
            Kind::Chosen => Some(chosen.get()).filter(|chosen| !chosen.is_empty()).map(Selection::Chosen),
            Kind::NotExported => Some(Selection::NotExported),
            Kind::All => Some(Selection::All),
        });
        let counts = narrowed(move || {
            let selection = selection.get();
            selection
                .map(|selection| page.logbook.with(|logbook| logbook.outgoing_counts(&selection)))
                .unwrap_or_default()
        });
        Self {
            kind,
            day,
            chosen,
            selection,
            counts,
            ready: RwSignal::new_local(Ready::Making),
            outcome: RwSignal::new_local(None),
            asked: RwSignal::new(Asked::Log),
            waitings: RwSignal::new(0),
        }
    }

    /// Makes the file anew whenever the selection or the book changes; one that comes too late is let go.
    fn keep_ready(self, page: Context) {
        let turn = Turn::new();
        let open =
            narrowed(move || page.logbook.with(|logbook| matches!(logbook.state(), State::Ready | State::ReadOnly(_))));
        Effect::new(move |_| {
            page.logbook.track();
            let (selection, open, asked) = (self.selection.get(), open.get(), self.asked.get());
            let mine = turn.next();
            if !open {
                return self.ready.set(Ready::Making);
            }
            let Some(selection) = selection else { return self.ready.set(Ready::Not(ExchangeFault::Empty)) };
            let coarse = match asked {
                Asked::NoRadius => return self.ready.set(Ready::NoRadius),
                Asked::Share(coarse) => Some(coarse),
                Asked::Log => None,
            };
            spawn_local(async move {
                let made = match coarse {
                    Some(coarse) => page.driver().prepare_share(selection, coarse).await,
                    None => page.driver().prepare(selection).await,
                };
                if turn.is(mine) {
                    self.ready.set(made.map_or_else(Ready::Not, |outgoing| Ready::File(Box::new(outgoing))));
                }
            });
        });
    }
}

/// Export.
#[component]
pub fn Export(asked: route::Export) -> impl IntoView {
    let page = use_page();
    let words = say().export;
    let exporting = Exporting::new(page, asked);
    exporting.keep_ready(page);
    let only_here = narrowed(move || page.logbook.with(|logbook| logbook.start(page.now.get()).only_here));
    let note =
        move || if only_here.get() == 0 { words.all_left().to_owned() } else { words.only_here(only_here.get()) };
    let (top, end) = how("export", vec![words.how_1(), words.how_2(), words.how_3()]);
    view! {
        <Page title=words.title() form=true bar=move || view! { <Bar exporting/> }>
            <header class="head"><h1>{words.title()}</h1><p class="note">{note}</p></header>
            {top}
            {move || exporting.outcome.get().map(|outcome| outcome.view())}
            <div class="columns two">
                <div class="column">
                    <What exporting/>
                    <Show when=move || exporting.kind.get() == Kind::Chosen><Choose exporting/></Show>
                    <Goes exporting/>
                    <Coarser exporting/>
                </div>
                <div class="column">
                    <WaysOut exporting/>
                    <Waitings exporting/>
                    {end}
                </div>
            </div>
        </Page>
    }
    .into_any()
}

/// The way back: to the day that was asked for, else to the days.
fn back(day: Option<Day>, kind: Kind) -> Screen {
    day.filter(|_| kind == Kind::Day).map_or(Screen::Days, Screen::Day)
}

/// A day as the system's own field writes it.
fn day_typed(day: Option<Day>) -> String {
    day.map(moment::day_text).unwrap_or_default()
}
