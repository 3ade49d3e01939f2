//! Import: a file comes in, is shown, and is taken or refused; afterwards it can be undone.

mod after;
mod inbox;
mod preview;
mod track;

use crate::context::{Context, say, use_page};
use crate::desk::how;
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::Message;
use crate::route::Screen;
use after::After;
pub use inbox::{Inbox, Last, listen};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::book::State;
use logbook::exchange::{ExchangeFault, Preview};
use logbook::track::{Read, is_track};
use ports::files::File;
use preview::{PreviewBar, PreviewView};
use std::sync::Arc;
use track::TrackView;

/// How far an import is.
pub enum Stage {
    /// No file yet.
    Waiting,
    /// The courier reads it.
    Reading(String),
    /// It is shown; nothing is written.
    Seen(Box<Preview>),
    /// It is a recorded track; what it gives is shown.
    Track(Arc<Read>),
    /// It is being written.
    Writing,
    /// It was not taken.
    Refused(ExchangeFault),
}

/// What this screen holds.
#[derive(Clone, Copy)]
pub struct Importing {
    /// How far it is.
    pub stage: RwSignal<Stage, LocalStorage>,
    /// What was imported last by this page.
    pub last: RwSignal<Option<Last>, LocalStorage>,
}

impl Importing {
    /// Reads a file and shows what it would do.
    pub fn read(self, page: Context, file: File) {
        self.last.set(None);
        self.stage.set(Stage::Reading(file.name.clone()));
        spawn_local(async move {
            let stage = if is_track(&file) {
                page.driver().read_track(file).await.map(|read| Stage::Track(Arc::new(read)))
            } else {
                page.driver().plan_import(file).await.map(|preview| Stage::Seen(Box::new(preview)))
            };
            let _ = self.stage.try_set(stage.unwrap_or_else(Stage::Refused));
        });
    }

    /// Lets the person pick a file.
    pub fn pick(self, page: Context) {
        spawn_local(async move {
            let files = page.ports().files;
            if let Some(file) = files.pick().await {
                self.read(page, file);
            }
        });
    }

    /// Writes what is shown.
    pub fn accept(self, page: Context) {
        let Some(Stage::Seen(preview)) = self.stage.try_update(|stage| std::mem::replace(stage, Stage::Writing)) else {
            return;
        };
        let twice = preview.twice.iter().map(|doubled| doubled.plate.clone()).collect();
        spawn_local(async move {
            match page.driver().accept(*preview).await {
                Ok(imported) => {
                    page.ports().device.buzz();
                    let _ = self.last.try_set(Some(Last::Done { imported, twice }));
                    let _ = self.stage.try_set(Stage::Waiting);
                }
                Err(fault) => {
                    let _ = self.stage.try_set(Stage::Refused(fault));
                }
            }
        });
    }

    /// Takes the last import back.
    pub fn undo(self, page: Context) {
        self.stage.set(Stage::Writing);
        spawn_local(async move {
            let undone = page.driver().undo_import().await;
            let stage = match undone {
                Ok(()) => {
                    let _ = self.last.try_set(Some(Last::Undone));
                    Stage::Waiting
                }
                Err(fault) => Stage::Refused(fault),
            };
            let _ = self.stage.try_set(stage);
        });
    }
}

/// Import.
#[component]
pub fn Import() -> impl IntoView {
    let page = use_page();
    let inbox = expect_context::<Inbox>();
    let importing = Importing { stage: RwSignal::new_local(Stage::Waiting), last: inbox.last };
    take_files(page, importing, inbox);
    view! {
        {move || match (importing.last.get(), stage_kind(importing)) {
            (Some(last), Kind::Waiting) => view! { <After importing last/> }.into_any(),
            (_, Kind::Seen) => view! { <Seen importing/> }.into_any(),
            (_, Kind::Track) => view! { <TrackView importing/> }.into_any(),
            (_, _) => view! { <Before importing/> }.into_any(),
        }}
    }
    .into_any()
}

/// A file that was dropped or sent is read as soon as the whole book is here.
fn take_files(page: Context, importing: Importing, inbox: Inbox) {
    let open = narrowed(move || page.logbook.with(|logbook| !matches!(logbook.state(), State::Opening { .. })));
    Effect::new(move |_| {
        let waits = inbox.file.with(Option::is_some);
        let taken = (open.get() && waits).then(|| inbox.file.try_update(Option::take)).flatten();
        if let Some(file) = taken.flatten() {
            importing.read(page, file);
        }
    });
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Waiting,
    Seen,
    Track,
    Other,
}

fn stage_kind(importing: Importing) -> Kind {
    importing.stage.with(|stage| match stage {
        Stage::Waiting => Kind::Waiting,
        Stage::Seen(_) => Kind::Seen,
        Stage::Track(_) => Kind::Track,
        Stage::Reading(_) | Stage::Writing | Stage::Refused(_) => Kind::Other,
    })
}

/// No file yet, one that is being read or written, or one that was refused.
#[component]
fn Before(importing: Importing) -> impl IntoView {
    let page = use_page();
    let words = say().import;
    let (top, end) = how("import", vec![words.how_1(), words.how_2(), words.how_3()]);
    let state = move || {
        importing.stage.with(|stage| match stage {
            Stage::Waiting | Stage::Seen(_) | Stage::Track(_) => view! { <Empty/> }.into_any(),
            Stage::Reading(name) => view! { <p class="part" role="status">{words.reading(name)}</p> }.into_any(),
            Stage::Writing => view! { <p class="part" role="status">{words.writing()}</p> }.into_any(),
            Stage::Refused(fault) => {
                let (what, safe) = crate::screens::exchange_fault(fault);
                view! { <Message what safe/> }.into_any()
            }
        })
    };
    let busy = move || importing.stage.with(|stage| matches!(stage, Stage::Reading(_) | Stage::Writing));
    let bar = move || {
        view! {
            <div class="bar">
                <a class="button quiet" href=page.to(Screen::Days)>{say().frame.back()}</a>
                <button class="button main" type="button" data-key="ctrl+enter" hidden=busy on:click=move |_| importing.pick(page)>
                    {words.pick()}" "<kbd class="key">"Ctrl ⏎"</kbd>
                </button>
            </div>
        }
    };
    view! {
        <Page title=words.title() form=true bar>
            <header class="head"><h1>{words.title()}</h1><p class="note">{words.nothing_yet()}</p></header>
            {top}
            {state}
            {end}
        </Page>
    }
    .into_any()
}

#[component]
fn Empty() -> impl IntoView {
    let words = say().import;
    view! {
        <section class="empty">
            <svg class="drawing" viewBox="0 0 120 120" aria-hidden="true">
                <path class="stroke" d="M24 10h52l20 20v80H24zM76 10v20h20"/><path class="faint" d="M38 50h44M38 66h44M38 82h28"/>
            </svg>
            <p class="ink">{words.drop_here()}</p>
            <p>{words.pick_says()}</p>
        </section>
    }
    .into_any()
}

#[component]
fn Seen(importing: Importing) -> impl IntoView {
    let title = importing.stage.with_untracked(|stage| match stage {
        Stage::Seen(preview) => preview::title(preview),
        _ => String::new(),
    });
    let shown = importing.stage.with_untracked(|stage| match stage {
        Stage::Seen(preview) => Some(view! { <PreviewView preview=preview/> }.into_any()),
        _ => None,
    });
    view! {
        <Page title=title.clone() form=true bar=move || view! { <PreviewBar importing/> }>
            <header class="head"><h1>{title.clone()}</h1><p class="note">{say().import.nothing_yet()}</p></header>
            {shown}
        </Page>
    }
    .into_any()
}
