use crate::context::{say, use_page};
use crate::far;
use crate::parts::TrapRow;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::view::{OpenKind, OpenLine};

/// How many open things are shown on the field page.
const SHOWN: usize = 20;

/// Lamps that burn and traps that are out.
#[component]
pub fn OpenNow(open: Memo<Vec<OpenLine>>) -> impl IntoView {
    let shown = move || open.get().into_iter().take(SHOWN).map(|line| view! { <OpenItem line/> }).collect_view();
    view! { <section class="part" aria-labelledby="open-now"><h2 id="open-now">{say().start.open_now()}</h2>{shown}</section> }.into_any()
}

#[component]
fn OpenItem(line: OpenLine) -> impl IntoView {
    let page = use_page();
    let id = line.id;
    let screen = if matches!(line.what, OpenKind::Traps(..)) { Screen::Trap(id) } else { Screen::Open(id) };
    let name = if line.site.is_empty() { say().event.untitled().to_owned() } else { line.site.clone() };
    let label = name.clone();
    view! {
        <article class="open" aria-label=label>
            <div class="open-head">
                <div class="open-what"><h3><a href=page.to(screen)>{name}</a></h3></div>
                <OpenFor minutes=line.minutes name=say().start.open_for()/>
            </div>
            <OpenSays line=line.clone()/>
            <OpenCommands line/>
        </article>
    }
    .into_any()
}

/// From so many days on the hours are left out: nobody counts them, and large text has no room for them.
const DAYS_ALONE: i64 = 100;

/// How long, in large figures.
#[component]
pub fn OpenFor(minutes: i64, name: &'static str) -> impl IntoView {
    let dates = say().dates;
    let (days, hours, rest) = (minutes / 1440, minutes / 60 % 24, minutes % 60);
    let figure = |count: i64, unit: String| view! { {count.to_string()}<small>{unit}</small> };
    let large = if days > 0 {
        view! { {figure(days, dates.day_unit(days))} {(hours > 0 && days < DAYS_ALONE).then(|| figure(hours, dates.hour_unit().into()))} }
            .into_any()
    } else {
        view! { {(hours > 0).then(|| figure(hours, dates.hour_unit().into()))} {figure(rest, dates.minute_unit().into())} }.into_any()
    };
    view! { <p class="open-for"><span class="unseen">{name}" "</span>{large}</p> }.into_any()
}

/// What it is, in a sentence and a drawing.
#[component]
pub fn OpenSays(line: OpenLine) -> impl IntoView {
    let page = use_page();
    let open = say().open;
    let (since, clock) = line.since.clone().map_or((None, String::new()), |(day, clock)| (Some(day), clock));
    let since = since.filter(|day| *day != logbook::moment::today(page.now.get_untracked()));
    match line.what {
        OpenKind::Traps(count, due) => {
            let due = due.map(|days| format!(", {}", open.due(days)));
            let traps = say().codes.method_with(&line.method, &[("traps".into(), count.to_string())]);
            view! { <p>{traps}{due}</p> <TrapRow count says=open.traps_span(count)/> }.into_any()
        }
        OpenKind::Lamp | OpenKind::Other => {
            let lamp = line.what == OpenKind::Lamp;
            let began = if lamp { open.lamp_since(&clock, since) } else { open.open_since(&clock, since) };
            view! {
                <p>{began}", "{open.containers(line.containers)}</p>
                {lamp.then(|| far::lamp_night(line))}
            }
            .into_any()
        }
    }
}

#[component]
fn OpenCommands(line: OpenLine) -> impl IntoView {
    let page = use_page();
    let open = say().open;
    let id = line.id;
    let off = move |_| page.save(page.make(|logbook, saving, _| logbook.lamp_off(id, saving.now)), |_| {});
    match line.what {
        OpenKind::Traps(..) => view! {
            <div class="commands"><a class="button grow" href=page.to(Screen::Trap(id))>{open.service()}</a></div>
        }
        .into_any(),
        OpenKind::Lamp => view! {
            <div class="commands">
                <a class="button grow" href=page.to(Screen::Open(id))>{open.add_container()}</a>
                <button class="button" type="button" on:click=off>{open.lamp_off()}</button>
            </div>
        }
        .into_any(),
        OpenKind::Other => view! {
            <div class="commands"><a class="button grow" href=page.to(Screen::Open(id))>{open.add_container()}</a></div>
        }
        .into_any(),
    }
}
