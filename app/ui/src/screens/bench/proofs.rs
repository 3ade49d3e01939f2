//! What the labels will say: the press's own proofs, how many of each, and the way onto the sheet.

use super::wording::Wording;
use crate::context::{Context, say, use_page};
use crate::desk::{OverList, Pressed, ProofView, Setting, kind_name, proofs};
use crate::narrow::narrowed;
use crate::parts::{Sign, Stepper};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::labels::{LabelKind, Queue, Queued, Wanted};
use ports::press::{Format, Line};

/// What is held for the labels of one container.
#[derive(Clone, Copy)]
struct Copies {
    queue: RwSignal<Queue>,
    own: RwSignal<Queued>,
}

impl Copies {
    fn new(page: Context, id: Id) -> Self {
        let queue = Queue::load(&*page.ports().draft, page.book());
        let [collection, host] = page.logbook.with_untracked(|logbook| logbook.wanted(id)).map(|wanted| wanted.copies);
        let own = queue.of(id).cloned().unwrap_or(Queued { of: id, collection, host, chosen: true });
        Self { queue: RwSignal::new(queue), own: RwSignal::new(own) }
    }

    fn queued(self) -> bool {
        let id = self.own.with(|own| own.of);
        self.queue.with(|queue| queue.of(id).is_some())
    }

    /// Changes the queue as it lies on the device now, and keeps it.
    fn change(self, page: Context, change: impl FnOnce(&mut Queue)) {
        let mut queue = Queue::load(&*page.ports().draft, page.book());
        change(&mut queue);
        page.draft_refused.set(!queue.keep(&*page.ports().draft, page.book()));
        self.queue.set(queue);
    }

    fn set(self, page: Context, kind: LabelKind, copies: u32) {
        let copies = copies.min(Queue::COPIES_MOST);
        self.own.update(|own| match kind {
            LabelKind::Collection => own.collection = copies,
            LabelKind::Host => own.host = copies,
        });
        let id = self.own.with_untracked(|own| own.of);
        if self.queue.with_untracked(|queue| queue.of(id).is_some()) {
            self.change(page, |queue| queue.set_copies(id, kind, copies));
        }
    }

    fn put_on(self, page: Context) {
        let own = self.own.get_untracked();
        self.change(page, |queue| {
            queue.take_out(own.of);
            queue.entries.push(own);
        });
    }
}

/// Both labels of a container.
#[component]
pub fn LabelsOf(id: Id) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let wanted = narrowed(move || page.logbook.with(|logbook| logbook.wanted(id)));
    let format = narrowed(move || page.logbook.with(|logbook| logbook.rules().format()));
    let lines = Signal::derive(move || {
        wanted.with(|wanted| wanted.iter().map(|wanted| wanted.lines.clone()).collect::<Vec<Vec<Line>>>())
    });
    let lines = narrowed(move || lines.get());
    let pressed = proofs(lines.into(), format.into());
    let copies = Copies::new(page, id);
    let editing = RwSignal::new(None::<LabelKind>);
    let insects = move || {
        let insects = page.logbook.with(|logbook| logbook.insects(id));
        let spare = wanted.with(|wanted| wanted.iter().map(|wanted| wanted.spare).max().unwrap_or(0));
        words.insects(insects.at_least, insects.exact, spare)
    };
    let figure = move |at: usize, kind: LabelKind| view! { <Figure at kind wanted pressed format copies editing id/> };
    view! {
        <section class="part" aria-labelledby="labels">
            <h2 id="labels">{words.says()}</h2>
            <Setting pressed/>
            <div class="proofs">{figure(0, LabelKind::Collection)}{figure(1, LabelKind::Host)}</div>
            <p class="note">{insects}</p>
            <OnSheet copies/>
        </section>
    }
    .into_any()
}

/// One label: its proof or its words as they are edited, and how many.
#[component]
fn Figure(
    at: usize,
    kind: LabelKind,
    wanted: Memo<[Wanted; 2]>,
    pressed: Signal<Pressed>,
    format: Memo<Format>,
    copies: Copies,
    editing: RwSignal<Option<LabelKind>>,
    id: Id,
) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let mine = narrowed(move || wanted.with(|wanted| wanted[at].clone()));
    let says = move || mine.with(|mine| !mine.lines.is_empty());
    let edits = move || editing.get() == Some(kind);
    let proof = move || {
        let format = format.get();
        pressed.with(|pressed| pressed.proof(at).cloned()).filter(|_| says() && !edits()).map(|proof| {
            view! {
                <ProofView proof=proof.clone() size=(format.width_mm, format.height_mm) kind/>
                <OverList proof/>
            }
        })
    };
    let name = if kind == LabelKind::Collection { say().desk.collection_labels() } else { say().desk.host_labels() };
    let value = Signal::derive(move || copies.own.with(|own| own.copies(kind)).to_string());
    let change = Callback::new(move |typed: String| copies.set(page, kind, typed.trim().parse().unwrap_or(0)));
    let edit_name = if kind == LabelKind::Collection { words.edit_collection() } else { words.edit_host() };
    view! {
        <figure class="proof">
            {proof}
            <p class="note" hidden=says>{words.nothing_to_say(kind_name(kind))}</p>
            {move || edits().then(|| view! { <Wording id kind editing/> })}
            <div class="proof-line" hidden=move || !says()>
                <span>{name}</span>
                <Stepper name value change/>
            </div>
            <div class="commands apart">
                <button class="button quiet" type="button" aria-label=edit_name hidden=edits on:click=move |_| editing.set(Some(kind))>{words.edit()}</button>
                <span class="note" hidden=move || !mine.with(|mine| mine.edited)>{words.edited()}</span>
            </div>
        </figure>
    }
    .into_any()
}

/// The way onto the sheet, and off it.
#[component]
fn OnSheet(copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let name = move || copies.own.with(|own| words.put_on_sheet(own.collection, own.host));
    let nothing = move || copies.own.with(|own| own.collection + own.host == 0);
    let off = move |_| {
        let id = copies.own.with_untracked(|own| own.of);
        copies.change(page, |queue| queue.take_out(id));
    };
    move || {
        if copies.queued() {
            view! {
                <p class="mark sure" role="status">{Sign::Tick.draw()}<span>{words.on_sheet()}</span></p>
                <div class="commands">
                    <a class="button" href=page.to(Screen::Labels) data-key="l">{words.to_labels()}" "<kbd class="key">"L"</kbd></a>
                    <button class="button quiet" type="button" on:click=off>{words.take_off()}</button>
                </div>
            }
            .into_any()
        } else {
            view! {
                <div class="commands">
                    <button class="button grow" type="button" data-key="l" disabled=nothing on:click=move |_| copies.put_on(page)>{name}" "<kbd class="key">"L"</kbd></button>
                </div>
            }
            .into_any()
        }
    }
}
