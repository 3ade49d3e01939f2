//! The PDF: made by the press, opened or handed on by a tap, then noted as printed word for word.

use super::{Desk, over_lines};
use crate::context::{Context, say, use_page};
use crate::desk::{Pressed, foot_words};
use crate::parts::{Check, Message, Progress};
use crate::turn::Turn;
use chrono::{Datelike, Timelike};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::labels::{Labelled, Orders};
use logbook::moment::{day_text, local, today};
use ports::files::{File, Left, Ways};
use ports::press::{Over, PressFault, Proof, Work, Worked};

/// A PDF that was made, and of what.
#[derive(Clone)]
pub struct Made {
    file: File,
    ways: Ways,
    orders: Orders,
    proofs: Vec<Proof>,
    labels: u32,
    sheets: u32,
}

/// How far printing is.
#[derive(Clone)]
enum Stage {
    Idle,
    Making(u32),
    Made(Box<Made>),
    DoesNotFit(Orders, Vec<(usize, Vec<Over>)>),
    Gone(String),
}

/// Printing.
#[derive(Clone, Copy)]
pub struct Printing {
    stage: RwSignal<Stage, LocalStorage>,
    refused: RwSignal<Option<String>>,
    on_pins: RwSignal<bool>,
    /// Pieces of a print done, of so many.
    done: RwSignal<(usize, usize)>,
    /// Which print is under way: one that is not waits for nothing any more.
    turn: Turn,
}

impl Printing {
    /// Nothing made yet.
    pub fn new() -> Self {
        Self {
            stage: RwSignal::new_local(Stage::Idle),
            refused: RwSignal::new(None),
            on_pins: RwSignal::new(false),
            done: RwSignal::new((0, 1)),
            turn: Turn::new(),
        }
    }

    /// What became of it, where something did.
    pub fn says(self, desk: Desk) -> Option<AnyView> {
        let words = say().labels;
        if let Some(reason) = self.refused.get() {
            return Some(
                view! { <Message what=say().export.refused() safe=say().export.refused_do(&reason)/> }.into_any(),
            );
        }
        match self.stage.get() {
            Stage::Idle | Stage::Making(_) | Stage::Made(_) => None,
            Stage::DoesNotFit(orders, over) => {
                if !desk.still(&orders) {
                    return None;
                }
                let lines = over.iter().take(6).map(|(_, over)| over_lines(over, 0.0)).collect_view();
                Some(view! { <Message what=words.not_fit(over.len()) safe=words.not_fit_do()/>{lines} }.into_any())
            }
            Stage::Gone(reason) => Some(
                view! { <Message what=say().desk.press_gone() safe=say().desk.press_gone_do(&reason)/> }.into_any(),
            ),
        }
    }

    fn make(self, page: Context, desk: Desk) {
        let orders = desk.orders.get_untracked();
        let proofs = match desk.pressed.get_untracked() {
            Pressed::Set(shown) => shown.proofs,
            Pressed::Waiting | Pressed::TooLarge(_) | Pressed::Gone(_) => return,
        };
        self.refused.set(None);
        self.stage.set(Stage::Making(orders.labels()));
        self.done.set((0, 1));
        let mine = self.turn.next();
        spawn_local(async move {
            let Some(worked) = self.worked(page, begin(page, &orders), mine).await else { return };
            let stage = match worked {
                Ok(Worked::Pdf { bytes, sheets, labels }) => made(page, orders, proofs, bytes, (labels, sheets)),
                Ok(Worked::DoesNotFit(over)) => Stage::DoesNotFit(orders, over),
                Ok(Worked::NotWritten(reason)) | Err(PressFault::Gone(reason)) => Stage::Gone(reason),
                Ok(Worked::Idle | Worked::Under { .. } | Worked::Shown(_) | Worked::Shared(_)) => Stage::Idle,
            };
            let _ = self.stage.try_set(stage);
        });
    }

    /// Piece by piece until the print is finished; none when it was stopped, or another was begun.
    async fn worked(self, page: Context, begin: Work, mine: u32) -> Option<Result<Worked, PressFault>> {
        let mut worked = page.ports().press.work(begin).await;
        while let Ok(Worked::Under { done, all }) = worked {
            if !self.turn.is(mine) {
                return None;
            }
            let _ = self.done.try_set((done, all));
            worked = page.ports().press.work(Work::Continue).await;
        }
        self.turn.is(mine).then_some(worked)
    }

    /// Stops the print under way: nothing was printed.
    fn stop(self, page: Context) {
        self.turn.next();
        self.stage.set(Stage::Idle);
        spawn_local(async move {
            let _ = page.ports().press.work(Work::Cancel).await;
        });
    }

    fn hand_on(self, page: Context, made: &Made, how: How) {
        let file = made.file.clone();
        self.refused.set(None);
        spawn_local(async move {
            let files = page.ports().files;
            let left = match how {
                How::Open => files.show(file),
                How::Share => files.share(file).await,
                How::Save => files.save(file).await,
            };
            if let Left::Refused(reason) = left {
                let _ = self.refused.try_set(Some(reason));
            }
        });
    }

    fn note(self, page: Context, desk: Desk, made: &Made) {
        let labelled = if self.on_pins.get_untracked() { Labelled::Yes } else { Labelled::NotYet };
        let deed = page
            .make(|logbook, saving, ids| logbook.printed_deed(&made.orders, &made.proofs, labelled, saving.now, ids));
        let printed = made.orders.clone();
        page.save(deed, move |_| {
            let before = desk.queue.get_untracked();
            desk.change(page, |queue| queue.take_out_printed(&printed));
            page.when_undone(move || desk.put_back(page, &before));
            self.on_pins.set(false);
            self.stage.set(Stage::Idle);
        });
    }
}

impl Default for Printing {
    fn default() -> Self {
        Self::new()
    }
}

#[derive(Clone, Copy)]
enum How {
    Open,
    Share,
    Save,
}

fn begin(page: Context, orders: &Orders) -> Work {
    let now = page.moment();
    let at = local(now);
    let small = |number: u32| u8::try_from(number).unwrap_or_default();
    Work::Begin {
        batch: orders.batch.clone(),
        title: say().labels.document(today(now)),
        words: foot_words(),
        made: (
            u16::try_from(at.year()).unwrap_or_default(),
            small(at.month()),
            small(at.day()),
            small(at.hour()),
            small(at.minute()),
            small(at.second()),
        ),
    }
}

fn made(page: Context, orders: Orders, proofs: Vec<Proof>, bytes: Vec<u8>, (labels, sheets): (u32, u32)) -> Stage {
    let name = say().labels.file(&day_text(today(page.moment())));
    let file = File { name, media: "application/pdf".to_owned(), bytes };
    let ways = page.ports().files.ways(&file);
    Stage::Made(Box::new(Made { file, ways, orders, proofs, labels, sheets }))
}

/// The main command: make the PDF, then open it; and what else can be done with it.
#[component]
pub fn Bar(desk: Desk, printing: Printing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let labels = move || desk.orders.with(Orders::labels);
    let ready = move || desk.pressed.with(|pressed| matches!(pressed, Pressed::Set(_)));
    move || {
        match printing.stage.get() {
        Stage::Making(labels) => view! {
            <div class="bar">
                <Progress words=Signal::derive(move || words.making(labels, printing.done.get().0, printing.done.get().1))
                    done=Signal::derive(move || printing.done.get().0) of=Signal::derive(move || printing.done.get().1)>
                    <button class="button quiet" type="button" on:click=move |_| printing.stop(page)>{words.making_cancel()}</button>
                </Progress>
            </div>
        }
        .into_any(),
        Stage::Made(made) if desk.still(&made.orders) => view! { <Ready desk printing made=*made/> }.into_any(),
        Stage::Idle | Stage::Made(_) | Stage::DoesNotFit(..) | Stage::Gone(_) => view! {
            <div class="bar" hidden=move || labels() == 0>
                <button class="button main" type="button" data-key="p" disabled=move || !ready() on:click=move |_| printing.make(page, desk)>
                    {move || words.make(labels())}" "<kbd class="key">"P"</kbd>
                </button>
            </div>
        }
        .into_any(),
    }
    }
}

#[component]
fn Ready(desk: Desk, printing: Printing, made: Made) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let says = words.made(made.labels, made.sheets);
    let note_name = words.note_printed(made.labels);
    let (ways, on_pins) = (made.ways, made.orders.on_pins());
    let made = StoredValue::new_local(made);
    let on = move |how: How| move |_| made.with_value(|made| printing.hand_on(page, made, how));
    let note = move |_| made.with_value(|made| printing.note(page, desk, made));
    view! {
        <div class="bar made">
            <p class="says" role="status">{says}" "<span class="note">{words.note_says()}</span></p>
            {on_pins.then(|| view! { <Check ticked=printing.on_pins change=Callback::new(move |ticked| printing.on_pins.set(ticked))>{words.labelled_too()}</Check> })}
            <button class="button" type="button" on:click=note>{note_name}</button>
            {ways.share.then(|| view! { <button class="button quiet" type="button" on:click=on(How::Share)>{words.share()}</button> })}
            {ways.save.then(|| view! { <button class="button quiet" type="button" on:click=on(How::Save)>{words.save()}</button> })}
            <button class="button main" type="button" data-key="p" on:click=on(How::Open)>{words.open()}" "<kbd class="key">"P"</kbd></button>
        </div>
    }
    .into_any()
}
