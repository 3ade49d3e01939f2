//! The ways out, and what became of a try.

use super::{Exporting, Ready, back};
use crate::context::{Context, say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Calm, Message, Sign};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::exchange::{Outgoing, Waiting};
use ports::files::{Left, Ways};
use ports::store::StoreFault;

/// What became of a try.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// So many events have left.
    Left(usize),
    /// A share copy has left.
    Copied,
    /// It waits for a person's word.
    Downloaded,
    /// It was closed.
    Closed,
    /// The system refused; why.
    Refused(String),
    /// It left, and that could not be written down.
    Unmarked(StoreFault),
}

impl Outcome {
    /// What is said.
    pub fn view(self) -> AnyView {
        let words = say().export;
        match self {
            Self::Left(events) => view! {
                <p class="part mark sure" role="status">{Sign::Tick.draw()}<span>{words.left(events)}" "{words.left_says()}</span></p>
            }
            .into_any(),
            Self::Copied => view! { <p class="part note" role="status">{words.copied()}</p> }.into_any(),
            Self::Downloaded => ().into_any(),
            Self::Closed => view! { <p class="part note" role="status">{words.closed()}</p> }.into_any(),
            Self::Refused(reason) => view! { <Message what=words.refused() safe=words.refused_do(&reason)/> }.into_any(),
            Self::Unmarked(fault) => {
                let (_, safe) = explain::store_fault(&fault);
                view! { <Message what=words.unmarked() safe/> }.into_any()
            }
        }
    }
}

/// A way out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Share,
    Save,
    Download,
}

impl Way {
    /// Those that this device offers for the file, the surest first.
    fn offered(ways: Ways) -> Vec<Self> {
        let share = ways.share.then_some(Self::Share);
        let save = ways.save.then_some(Self::Save);
        [share, save, Some(Self::Download)].into_iter().flatten().collect()
    }
}

fn offered(exporting: Exporting, page: Context) -> Vec<Way> {
    exporting.ready.with(|ready| match ready {
        Ready::File(outgoing) => Way::offered(page.ports().files.ways(&outgoing.file)),
        Ready::Making | Ready::NoRadius | Ready::Not(_) => Vec::new(),
    })
}

/// Runs inside the tap: the file is ready, and the sheet opens before anything else is awaited.
fn send(exporting: Exporting, page: Context, way: Way) {
    let outgoing = exporting.ready.with_untracked(|ready| match ready {
        Ready::File(outgoing) => Some(outgoing.clone()),
        Ready::Making | Ready::NoRadius | Ready::Not(_) => None,
    });
    let Some(outgoing) = outgoing else { return };
    spawn_local(async move {
        let files = page.ports().files;
        let file = outgoing.file.clone();
        let left = match way {
            Way::Share => files.share(file).await,
            Way::Save => files.save(file).await,
            Way::Download => files.download(file),
        };
        note(exporting, page, outgoing, left).await;
    });
}

async fn note(exporting: Exporting, page: Context, outgoing: Box<Outgoing>, left: Left) {
    let marked = page.driver().has_left(&outgoing, &left).await;
    let outcome = match (left, marked) {
        (_, Err(fault)) => Outcome::Unmarked(fault),
        (Left::Shared | Left::ReadBack | Left::Downloaded, Ok(_)) if outgoing.is_share_copy() => Outcome::Copied,
        (Left::Shared | Left::ReadBack, Ok(_)) => Outcome::Left(outgoing.counts.events),
        (Left::Downloaded, Ok(_)) => Outcome::Downloaded,
        (Left::Cancelled, Ok(_)) => Outcome::Closed,
        (Left::Refused(reason), Ok(_)) => Outcome::Refused(reason),
    };
    let _ = exporting.outcome.try_set(Some(outcome));
    let _ = exporting.waitings.try_update(|waitings| *waitings += 1);
}

/// The main command: the surest way that there is.
#[component]
pub fn Bar(exporting: Exporting) -> impl IntoView {
    let page = use_page();
    let words = say().export;
    let way = narrowed(move || offered(exporting, page).first().copied());
    let events = move || exporting.counts.get().events;
    let name = move || match way.get() {
        Some(Way::Share) => words.share_main(events()),
        Some(Way::Save) => words.save_main(events()),
        Some(Way::Download) => words.download_main(events()),
        None => words.making().to_owned(),
    };
    let press = move |_| {
        if let Some(way) = way.get_untracked() {
            send(exporting, page, way);
        }
    };
    let href = move || page.to(back(exporting.day.get(), exporting.kind.get()));
    view! {
        <div class="bar">
            <a class="button quiet" href=href>{say().frame.back()}</a>
            <button class="button main" type="button" data-key="ctrl+enter" hidden=move || way.get().is_none() on:click=press>
                {name}" "<kbd class="key">"Ctrl ⏎"</kbd>
            </button>
        </div>
    }
    .into_any()
}

/// All ways, each with when it counts.
#[component]
pub fn WaysOut(exporting: Exporting) -> impl IntoView {
    let page = use_page();
    let words = say().export;
    let ways = narrowed(move || offered(exporting, page));
    let row = move |(index, way): (usize, Way)| {
        let (name, says, command, key) = match way {
            Way::Share => (words.share(), words.share_says(), words.share(), "h"),
            Way::Save => (words.save(), words.save_says(), words.save_do(), "s"),
            Way::Download => (words.download(), words.download_says(), words.download(), "d"),
        };
        let button = (index > 0).then(|| view! {
            <button class="button" type="button" data-key=key on:click=move |_| send(exporting, page, way)>{command}" "<kbd class="key">{key.to_uppercase()}</kbd></button>
        });
        view! { <li class="container-line"><span class="what"><strong>{name}</strong><br/><span class="note">{says}</span></span>{button}</li> }
    };
    view! {
        <section class="part" aria-labelledby="ways" hidden=move || ways.with(Vec::is_empty)>
            <h2 id="ways">{words.ways()}</h2>
            <ul>{move || ways.get().into_iter().enumerate().map(row).collect_view()}</ul>
        </section>
    }
    .into_any()
}

/// Downloads of which nobody has said yet that a copy lies elsewhere.
#[component]
pub fn Waitings(exporting: Exporting) -> impl IntoView {
    let page = use_page();
    let list = RwSignal::new(Vec::<Waiting>::new());
    Effect::new(move |_| {
        exporting.waitings.track();
        spawn_local(async move {
            if let Ok(waiting) = page.driver().downloads_waiting().await {
                let _ = list.try_set(waiting);
            }
        });
    });
    let one = move |waiting: Waiting| {
        let words = say().export;
        let name = waiting.name.clone();
        let elsewhere = move |_| {
            let name = name.clone();
            spawn_local(async move {
                if let Err(fault) = page.driver().copy_is_elsewhere(&name).await {
                    let _ = exporting.outcome.try_set(Some(Outcome::Unmarked(fault)));
                }
                let _ = exporting.waitings.try_update(|waitings| *waitings += 1);
            });
        };
        view! {
            <Calm says=format!("{} {}", words.downloaded(&waiting.name), words.downloaded_says(waiting.records))>
                <button class="button" type="button" on:click=elsewhere>{words.elsewhere()}</button>
            </Calm>
        }
    };
    view! { <div role="status">{move || list.get().into_iter().map(one).collect_view()}</div> }.into_any()
}
