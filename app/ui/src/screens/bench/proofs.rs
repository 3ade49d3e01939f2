//! What the labels will say: the press's own proofs, how many of each, and the way onto the sheet.

use super::wording::Wording;
use crate::context::{Context, say, use_page};
use crate::desk::{OverList, Pressed, ProofView, Setting, SmallerType, kind_name, kinds_name, proofs, stamp_words};
use crate::narrow::narrowed;
use crate::parts::{More, Sign, Stepper};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::labels::{LabelKind, Queue, Queued, Wanted, Which};

/// What is held for the labels of one container.
#[derive(Clone, Copy)]
pub struct Copies {
    queue: RwSignal<Queue>,
    own: RwSignal<Queued>,
}

impl Copies {
    /// As they lie in the queue, or else as they are proposed.
    pub fn new(page: Context, id: Id) -> Self {
        let queue = Queue::load(&*page.ports().draft, page.book());
        let wanted = page.logbook.with_untracked(|logbook| logbook.wanted(id));
        let own = queue.of(id).cloned().unwrap_or_else(|| Queued::proposed(id, &wanted));
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

    /// Changes what is wanted, on the sheet too if it lies there.
    fn change_own(self, page: Context, change: impl Fn(&mut Queued)) {
        self.own.update(&change);
        let of = self.own.with_untracked(|own| own.of);
        if self.queue.with_untracked(|queue| queue.of(of).is_some()) {
            self.change(page, |queue| queue.change(of, change));
        }
    }

    /// Says how many of a label are wanted.
    pub fn set(self, page: Context, which: Which, copies: u32) {
        self.change_own(page, |own| own.set_copies(which, copies));
    }

    /// Follows the pins that were added or taken out: the labels that every pin has, and that of each code.
    pub fn follow_pins(self, page: Context) {
        let of = self.own.with_untracked(|own| own.of);
        let wanted = page.logbook.with_untracked(|logbook| logbook.wanted(of));
        self.change_own(page, |own| own.follow_pins(&wanted));
    }

    fn put_on(self, page: Context) {
        let own = self.own.get_untracked();
        self.change(page, |queue| {
            queue.take_out(own.of);
            queue.entries.push(own);
        });
    }

    fn of(self, which: Which) -> u32 {
        self.own.with(|own| own.copies(which))
    }
}

/// What the labels of a container are shown with.
#[derive(Clone, Copy)]
struct Shown {
    id: Id,
    wanted: Memo<Vec<Wanted>>,
    /// Those that are drawn.
    drawn: Memo<Vec<Which>>,
    pressed: Signal<Pressed>,
    copies: Copies,
    editing: RwSignal<Option<Which>>,
}

impl Shown {
    fn wanted(self, which: Which) -> Option<Wanted> {
        self.wanted.with(|wanted| wanted.iter().find(|wanted| wanted.which == which).cloned())
    }
}

/// The labels of a container: those that every pin may have and those asked for are drawn, the others wait below.
#[component]
pub fn LabelsOf(id: Id, copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let wanted = narrowed(move || page.logbook.with(|logbook| logbook.wanted(id)));
    let asked = move |wanted: &Wanted| wanted.which.is_basic() || copies.of(wanted.which) > 0;
    let split = move |drawn: bool| {
        narrowed(move || {
            let of = |wanted: &Wanted| (asked(wanted) == drawn).then_some(wanted.which);
            wanted.with(|wanted| wanted.iter().filter_map(of).collect::<Vec<Which>>())
        })
    };
    let (drawn, others) = (split(true), split(false));
    let labels = narrowed(move || {
        let drawn = wanted.with(|wanted| {
            let drawn = wanted.iter().filter(|wanted| asked(wanted));
            drawn.map(|wanted| (wanted.lines.clone(), wanted.code.clone(), wanted.which.kind)).collect::<Vec<_>>()
        });
        page.logbook.with(|logbook| logbook.to_look_at(drawn))
    });
    let pressed = proofs(labels.into());
    let shown = Shown { id, wanted, drawn, pressed, copies, editing: RwSignal::new(None) };
    let insects = move || {
        let insects = page.logbook.with(|logbook| logbook.insects(id));
        let spare = wanted.with(|wanted| wanted.iter().map(|wanted| wanted.spare).max().unwrap_or(0));
        words.insects(insects.at_least, insects.exact, spare)
    };
    view! {
        <section class="part" aria-labelledby="labels">
            <h2 id="labels">{words.says()}</h2>
            <Setting pressed/>
            <div class="proofs">
                <For each=move || drawn.get() key=|which| *which children=move |which| view! { <Figure shown which/> }/>
            </div>
            <SmallerType pressed/>
            <p class="note">{insects}</p>
            <div hidden=move || others.with(Vec::is_empty)>
                <More words=words.other_labels()>
                    <For each=move || others.get() key=|which| *which children=move |which| view! { <HowMany shown which/> }/>
                </More>
            </div>
            <OnSheet copies/>
        </section>
    }
    .into_any()
}

/// One label: its proof or its words as they are edited, and how many.
#[component]
fn Figure(shown: Shown, which: Which) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let kind = which.kind;
    let mine = narrowed(move || shown.wanted(which));
    let says = move || mine.with(|mine| mine.as_ref().is_some_and(|mine| !mine.lines.is_empty()));
    let edits = move || shown.editing.get() == Some(which);
    let proof = move || {
        let at = shown.drawn.with(|drawn| drawn.iter().position(|known| *known == which))?;
        let format = page.logbook.with(|logbook| logbook.rules().format(kind));
        shown.pressed.with(|pressed| pressed.proof(at).cloned()).filter(|_| says() && !edits()).map(|proof| {
            view! {
                <ProofView proof=proof.clone() size=(format.width_mm, format.height_mm) kind/>
                <OverList proof/>
            }
        })
    };
    let outdated = move || {
        let earlier = mine.with(|mine| mine.as_ref().and_then(|mine| mine.earlier.clone()))?;
        let says = words.outdated(&stamp_words(&earlier.at));
        Some(view! {
            <p class="mark">{Sign::Look.draw()}<span>{says}</span></p>
            <p class="note">{earlier.old.join(" / ")}</p>
        })
    };
    let advice = match kind {
        LabelKind::Fluid => Some(words.ink_fluid()),
        LabelKind::Envelope => Some(words.ink_card()),
        _ => None,
    };
    let edited = move || mine.with(|mine| mine.as_ref().is_some_and(|mine| mine.edited));
    view! {
        <figure class="proof">
            {proof}
            <p class="note" hidden=says>{words.nothing_to_say(&kind_name(kind))}</p>
            {move || edits().then(|| view! { <Wording id=shown.id which editing=shown.editing/> })}
            <div hidden=move || !says()><HowMany shown which/></div>
            {outdated}
            {advice.map(|advice| view! { <p class="note">{advice}</p> })}
            <div class="commands apart">
                <button class="button quiet" type="button" aria-label=words.edit_of(&kind_name(kind)) hidden=edits on:click=move |_| shown.editing.set(Some(which))>{words.edit()}</button>
                <span class="note" hidden=move || !edited()>{words.edited()}</span>
            </div>
        </figure>
    }
    .into_any()
}

/// How many of a label.
#[component]
fn HowMany(shown: Shown, which: Which) -> impl IntoView {
    let page = use_page();
    let item = shown.wanted.with_untracked(|wanted| {
        wanted.iter().find(|wanted| wanted.which == which).map(|wanted| wanted.item.clone()).unwrap_or_default()
    });
    let name = kinds_name(which.kind, &item);
    let value = Signal::derive(move || shown.copies.of(which).to_string());
    let change = Callback::new(move |typed: String| shown.copies.set(page, which, typed.trim().parse().unwrap_or(0)));
    view! {
        <div class="proof-line">
            <span>{name.clone()}</span>
            <Stepper name value change/>
        </div>
    }
    .into_any()
}

/// The way onto the sheet, and off it.
#[component]
fn OnSheet(copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let name = move || words.put_on_sheet(copies.own.with(Queued::labels));
    let nothing = move || copies.own.with(Queued::labels) == 0;
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
