use crate::context::{Context, say, use_page};
use crate::parts::Message;
use crate::turn::Turn;
use leptos::prelude::*;
use leptos::task::spawn_local;
use ports::press::{Batch, Over, PressFault, Proof, Shown, Work, Worked};

/// What the press made of some labels.
#[derive(Clone, Debug, PartialEq)]
pub enum Pressed {
    /// It is setting them.
    Waiting,
    /// It has set them, and says where each lies.
    Set(Shown),
    /// The sheet cannot hold them.
    TooLarge(Vec<Over>),
    /// It gave no answer; why.
    Gone(String),
}

impl Pressed {
    /// The proofs, once it has made them.
    pub fn proofs(&self) -> &[Proof] {
        match self {
            Self::Set(shown) => &shown.proofs,
            Self::Waiting | Self::TooLarge(_) | Self::Gone(_) => &[],
        }
    }

    /// The proof of a label by its place.
    pub fn proof(&self, at: usize) -> Option<&Proof> {
        self.proofs().get(at)
    }
}

/// Asks the press what these labels will look like, again whenever they change; an answer that comes too late is let go.
pub fn proofs(batch: Signal<Batch>) -> Signal<Pressed> {
    let page = use_page();
    let pressed = RwSignal::new(Pressed::Waiting);
    let turn = Turn::new();
    Effect::new(move |_| {
        let batch = batch.get();
        let mine = turn.next();
        spawn_local(async move {
            let set = set(page, batch).await;
            if turn.is(mine) {
                let _ = pressed.try_set(set);
            }
        });
    });
    pressed.into()
}

/// Words beside the bar at the foot of each sheet, a line each.
pub fn foot_words() -> Vec<String> {
    let words = say().labels;
    vec![words.bar().to_owned(), words.bar_print().to_owned()]
}

async fn set(page: Context, batch: Batch) -> Pressed {
    match page.ports().press.work(Work::Show { batch, words: foot_words() }).await {
        Ok(Worked::Shown(shown)) => Pressed::Set(shown),
        Ok(Worked::DoesNotFit(over)) => Pressed::TooLarge(over.into_iter().flat_map(|(_, over)| over).collect()),
        Ok(Worked::NotWritten(reason)) | Err(PressFault::Gone(reason)) => Pressed::Gone(reason),
        Ok(Worked::Shared(_) | Worked::Under { .. } | Worked::Pdf { .. } | Worked::Idle) => {
            Pressed::Gone(String::new())
        }
    }
}

/// While the press works, when it gave no answer, and when the sheet is too small.
#[component]
pub fn Setting(
    /// What it made of the labels.
    pressed: Signal<Pressed>,
) -> impl IntoView {
    let late = use_page().late();
    let waits = Memo::new(move |_| pressed.with(|pressed| matches!(pressed, Pressed::Waiting)));
    let message = Memo::new(move |_| {
        pressed.with(|pressed| match pressed {
            Pressed::Waiting | Pressed::Set(_) => None,
            Pressed::TooLarge(over) => {
                let over: Vec<String> = over.iter().map(|over| super::over_words(over, 0.0)).collect();
                Some((say().labels.sheet_too_small().to_owned(), over.join(" ")))
            }
            Pressed::Gone(reason) => Some((say().desk.press_gone().to_owned(), say().desk.press_gone_do(reason))),
        })
    });
    view! {
        <p class="note" role="status" hidden=move || !(late.get() && waits.get())>{say().labels.setting()}</p>
        {move || message.get().map(|(what, safe)| view! { <Message what safe/> })}
    }
    .into_any()
}

/// Where labels on pins do not fit and type may still get smaller: the way to let it.
#[component]
pub fn SmallerType(
    /// What the press made of the labels.
    pressed: Signal<Pressed>,
) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let too_much = |proof: &Proof| proof.over.iter().any(|over| matches!(over, Over::Long { .. } | Over::High { .. }));
    let over = Memo::new(move |_| pressed.with(|pressed| pressed.proofs().iter().any(too_much)));
    let form = Memo::new(move |_| page.logbook.with(|logbook| logbook.rules().with_smallest_type()));
    let press = move |_| {
        let Some(form) = form.get_untracked() else { return };
        if let Ok(deed) = page.make(|logbook, _, ids| logbook.set_rules(&form, ids)) {
            page.save(deed, |_| {});
        }
    };
    move || {
        (over.get() && form.with(Option::is_some)).then(|| {
            view! {
                <div class="part">
                    <p class="note">{words.type_stops()}</p>
                    <div class="commands"><button class="button" type="button" on:click=press>{words.type_smaller()}</button></div>
                </div>
            }
        })
    }
}
