//! Events ticked by hand: the newest ones, or those that a search finds.

use super::Exporting;
use crate::context::{Context, say, use_page};
use crate::desk::{Window, after_frame};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Check, Line};
use leptos::prelude::*;
use logbook::Id;
use logbook::search::Show as Kinds;
use logbook::view::EventLine;

/// How many of the newest events are listed while nothing is sought.
const NEWEST: usize = 120;

/// The list to tick.
#[component]
pub fn Choose(exporting: Exporting) -> impl IntoView {
    let page = use_page();
    let words = say().export;
    let text = RwSignal::new(String::new());
    let asked: Signal<String> = after_frame(text.into());
    let lines = narrowed(move || listed(page, &asked.get()));
    let window = Window::new("to-choose");
    Effect::new(move |_| {
        asked.track();
        window.begin();
    });
    let count = move || lines.with(Vec::len);
    let all = move |_| {
        let shown: Vec<Id> = lines.with_untracked(|lines| lines.iter().map(|line| line.id).collect());
        exporting.chosen.update(|chosen| shown.into_iter().for_each(|id| tick(chosen, id, true)));
    };
    view! {
        <section class="part">
            <label class="note" for="find">{words.find()}</label>
            <Line id="find" value=text change=Callback::new(move |typed| text.set(typed))/>
            <div class="commands">
                <button class="button quiet" type="button" hidden=move || count() == 0 on:click=all>{move || words.choose_shown(count())}</button>
                <button class="button quiet" type="button" hidden=move || exporting.chosen.with(Vec::is_empty)
                    on:click=move |_| exporting.chosen.set(Vec::new())>{words.choose_none()}</button>
            </div>
            {window.before(count)}
            <ul class="queue" id="to-choose" tabindex="-1" aria-label=words.list()>
                {move || lines.with(|lines| window.rows(lines)).into_iter().map(|line| view! { <ToTick exporting line/> }).collect_view()}
            </ul>
            {window.after(count)}
        </section>
    }
    .into_any()
}

fn listed(page: Context, text: &str) -> Vec<EventLine> {
    page.logbook.with(|logbook| {
        if !text.trim().is_empty() {
            return logbook.search(text, Kinds::Events).events.shown;
        }
        let days = logbook.days().into_iter().rev();
        let mut lines = Vec::new();
        for (day, _) in days {
            lines.extend(logbook.day(day).events.into_iter().rev());
            if lines.len() >= NEWEST {
                break;
            }
        }
        lines
    })
}

fn tick(chosen: &mut Vec<Id>, id: Id, ticked: bool) {
    chosen.retain(|known| *known != id);
    if ticked {
        chosen.push(id);
    }
}

#[component]
fn ToTick(exporting: Exporting, line: EventLine) -> impl IntoView {
    let id = line.id;
    let ticked = Signal::derive(move || exporting.chosen.with(|chosen| chosen.contains(&id)));
    let change = Callback::new(move |ticked| exporting.chosen.update(|chosen| tick(chosen, id, ticked)));
    let site = if line.site.is_empty() { say().event.untitled().to_owned() } else { line.site.clone() };
    let when = line.day.map(|day| format!("{} {}", say().dates.roman(day), line.clock)).unwrap_or_default();
    view! {
        <li>
            <div class="top"><Check ticked change><span class="ink">{site}</span></Check><span class="measure">{explain::numbers(&line)}</span></div>
            <p class="note measure">{when}</p>
        </li>
    }
    .into_any()
}
