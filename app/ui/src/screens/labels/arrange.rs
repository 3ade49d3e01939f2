//! What stands on a kind of label: parts, order, words and dates, with labels of real catches beside them.

mod keep;
mod parts;
mod style;

use crate::context::{Context, say, use_page};
use crate::desk::{OverList, ProofView, Setting, after_frame, how, kind_name, proofs};
use crate::frame::Page;
use crate::narrow::narrowed;
use crate::parts::More;
use crate::route::Screen;
use keep::{Choice, Keep};
use leptos::prelude::*;
use logbook::labels::{LabelKind, ThatArrangement};
use parts::PartLines;
use style::{Abbreviations, Dates};

/// How many catches are shown.
const SAMPLES: usize = 3;

/// The arrangement that is edited, as it was saved and as it is now.
#[derive(Clone, Copy)]
struct Editing {
    kind: LabelKind,
    that: RwSignal<ThatArrangement>,
}

impl Editing {
    fn new(page: Context, kind: LabelKind) -> Self {
        let draft = page.ports().draft.get(&draft_name(page, kind));
        let draft = draft.and_then(|text| serde_json::from_str(&text).ok());
        let used = || page.logbook.with_untracked(|logbook| logbook.arrangement_used(kind));
        Self { kind, that: RwSignal::new(draft.unwrap_or_else(used)) }
    }

    /// Changes it, and keeps it on the device.
    fn change(self, page: Context, change: impl FnOnce(&mut ThatArrangement)) {
        self.that.update(change);
        let text = self.that.with_untracked(serde_json::to_string).unwrap_or_default();
        page.draft_refused.set(!page.ports().draft.put(&draft_name(page, self.kind), &text));
    }

    /// Shows another one, or this one as it was saved.
    fn show(self, page: Context, that: ThatArrangement) {
        page.ports().draft.remove(&draft_name(page, self.kind));
        self.that.set(that);
    }

    /// Whether it differs from what was saved.
    fn changed(self, page: Context) -> bool {
        let saved = page.logbook.with(|logbook| self.that.with(|that| logbook.arrangement_with(self.kind, that.id)));
        self.that.with(|that| *that != saved)
    }
}

fn draft_name(page: Context, kind: LabelKind) -> String {
    format!("glassine/{}/arrangement/{}", page.book().name(), kind.code())
}

/// The ways to the arrangements of all kinds.
#[component]
pub fn Kinds() -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let link = move |kind: LabelKind| view! { <a class="button quiet" href=page.to(Screen::Arrange(kind))>{kind_name(kind)}</a> };
    view! {
        <section class="part">
            <More words=words.arrange()>
                <p class="note">{words.arrange_says()}</p>
                <div class="commands">{LabelKind::ALL.into_iter().map(link).collect_view()}</div>
            </More>
        </section>
    }
    .into_any()
}

/// The editor.
#[component]
pub fn Arrange(kind: LabelKind) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let editing = Editing::new(page, kind);
    let title = words.arrange_title(&kind_name(kind));
    let (top, end) = how("arrange", vec![words.arrange_how_1(), words.arrange_how_2()]);
    view! {
        <Page title=title.clone() bar=move || view! { <Keep editing/> }>
            <header class="head"><h1>{title.clone()}</h1></header>
            {top}
            <div class="columns two arrange">
                <div class="column"><Samples editing/><Choice editing/></div>
                <div class="column"><PartLines editing/><Dates editing/><Abbreviations editing/>{end}</div>
            </div>
        </Page>
    }
    .into_any()
}

/// Labels of real catches, as the arrangement makes them now.
#[component]
fn Samples(editing: Editing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let kind = editing.kind;
    let arrangement = narrowed(move || editing.that.with(|that| that.arrangement.clone()));
    let settled = after_frame(arrangement.into());
    let batch = narrowed(move || {
        page.logbook.with(|logbook| {
            let samples = settled.with(|arrangement| logbook.sample_lines(kind, arrangement, SAMPLES));
            logbook.to_look_at(samples.into_iter().map(|sample| (sample.lines, None, kind)))
        })
    });
    let pressed = proofs(batch.into());
    let none = move || batch.with(|batch| batch.labels.is_empty());
    let drawn = move || {
        let format = page.logbook.with(|logbook| logbook.rules().format(kind));
        let one = |proof: &ports::press::Proof| {
            view! {
                <figure class="proof">
                    <ProofView proof=proof.clone() size=(format.width_mm, format.height_mm) kind/>
                    <OverList proof=proof.clone()/>
                </figure>
            }
        };
        pressed.with(|pressed| pressed.proofs().iter().map(one).collect_view())
    };
    view! {
        <section class="part samples" aria-labelledby="samples">
            <h2 id="samples">{words.sample_head()}</h2>
            <Setting pressed/>
            <p class="note" hidden=move || !none()>{words.sample_none()}</p>
            <div class="proofs">{drawn}</div>
        </section>
    }
    .into_any()
}
