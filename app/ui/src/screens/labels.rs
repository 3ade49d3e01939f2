//! The labels: what is to be printed, the sheet in true size as the press lays it, the PDF, and noting what was printed.

mod arrange;
mod begin;
mod calibrate;
mod empty;
mod outdated;
mod print;
mod queue;
mod sheet;

pub use arrange::Arrange;

use crate::context::{Context, say, use_page};
use crate::desk::{Pressed, Setting, SmallerType, how, proofs};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::{More, Sign};
use arrange::Kinds;
use begin::Begin;
use calibrate::Calibrate;
use empty::{Empty, NotPrinted};
use leptos::prelude::*;
use logbook::labels::{Orders, Queue, QueueView};
use outdated::OutOfDate;
use ports::press::{Over, Proof};
use print::{Bar, Printing};
use queue::QueueList;
use sheet::Sheet;

/// What this screen holds.
#[derive(Clone, Copy)]
pub struct Desk {
    /// What is to be printed.
    pub queue: RwSignal<Queue>,
    /// The same for reading.
    pub view: Memo<QueueView>,
    /// What the press is asked to print.
    pub orders: Memo<Orders>,
    /// What the press made of the orders, one proof each.
    pub pressed: Signal<Pressed>,
}

impl Desk {
    fn new(page: Context) -> Self {
        let queue = RwSignal::new(Queue::load(&*page.ports().draft, page.book()));
        let view = narrowed(move || page.logbook.with(|logbook| queue.with(|queue| logbook.queue(queue))));
        let begin = narrowed(move || queue.with(|queue| queue.begin));
        let orders =
            narrowed(move || page.logbook.with(|logbook| view.with(|view| logbook.print_orders(view, begin.get()))));
        let batch = narrowed(move || orders.with(|orders| orders.batch.clone()));
        Self { queue, view, orders, pressed: proofs(batch.into()) }
    }

    /// Changes the queue and keeps it.
    pub fn change(self, page: Context, change: impl FnOnce(&mut Queue)) {
        self.queue.update(change);
        let kept = self.queue.with_untracked(|queue| queue.keep(&*page.ports().draft, page.book()));
        page.draft_refused.set(!kept);
    }

    /// Keeps a queue as it was; the screen may have been left.
    fn put_back(self, page: Context, before: &Queue) {
        let kept = before.keep(&*page.ports().draft, page.book());
        page.draft_refused.set(!kept);
        let _ = self.queue.try_set(before.clone());
    }

    /// Whether the queue still asks for this: what was made of another one is not offered.
    fn still(self, made: &Orders) -> bool {
        self.orders.with(|orders| orders == made)
    }

    /// Labels that fit, and how many orders do not; none before the press has said so.
    pub fn fit(self) -> Option<(u32, usize)> {
        let over: Vec<bool> = self.pressed.with(|pressed| match pressed {
            Pressed::Set(shown) => Some(shown.proofs.iter().map(|proof| !proof.over.is_empty()).collect()),
            Pressed::Waiting | Pressed::TooLarge(_) | Pressed::Gone(_) => None,
        })?;
        let said = self.orders.with(|orders| {
            let fits = |at: usize| !over.get(at).copied().unwrap_or(false);
            let labels = orders.batch.labels.iter().enumerate();
            let labels = labels.filter(|(at, _)| fits(*at)).map(|(_, label)| label.copies).sum();
            (labels, over.iter().filter(|over| **over).count())
        });
        Some(said)
    }

    /// The proof of an order.
    pub fn proof(self, at: usize) -> Option<Proof> {
        self.pressed.with(|pressed| pressed.proof(at).cloned())
    }
}

/// The labels.
#[component]
pub fn Labels() -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let desk = Desk::new(page);
    let printing = Printing::new();
    let none = narrowed(move || desk.view.with(|view| view.rows.is_empty()));
    let note = move || desk.fit().map(|(labels, over)| words.fit(labels, over));
    let (top, end) = how("labels", vec![words.how_1(), words.how_2(), words.how_3()]);
    view! {
        <Page title=words.title() bar=move || view! { <Bar desk printing/> }>
            <header class="head"><h1>{words.title()}</h1><p class="note" role="status" hidden=none>{note}</p></header>
            {top}
            {move || printing.says(desk)}
            <Show when=move || !none.get() fallback=|| view! { <Empty/> }>
                <Setting pressed=desk.pressed/>
                <SmallerType pressed=desk.pressed/>
                <div class="columns queue-sheet">
                    <div class="column"><QueueList desk/></div>
                    <div class="column">
                        <Sheet desk/>
                        <Begin desk/>
                        <p class="part mark">{Sign::Look.draw()}<span>{words.advice()}</span></p>
                        <p class="note">{words.advice_calm()}</p>
                        <More words=words.calibrate()><Calibrate/></More>
                    </div>
                </div>
            </Show>
            <OutOfDate desk/>
            <NotPrinted desk/>
            <Kinds/>
            {end}
        </Page>
    }
    .into_any()
}

/// What does not fit, for a proof of this size of type.
pub fn over_lines(over: &[Over], type_pt: f64) -> AnyView {
    let each = |over: &Over| view! { <p class="mark fault">{Sign::Cross.draw()}<span>{crate::desk::over_words(over, type_pt)}</span></p> };
    over.iter().map(each).collect_view().into_any()
}
