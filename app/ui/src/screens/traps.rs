//! Traps: set into the ground, emptied, taken up. Each emptying makes an event of the interval.

use crate::context::{Context, say, use_page};
use crate::draft::Draft;
use crate::frame::Page;
use crate::jump;
use crate::narrow::narrowed;
use crate::parts::{Caution, Chooser, DayLine, How, Line, Options, Pick, Row, Stepper, TimeLine, TrapRow, WithUnit};
use crate::route::{FormOf, Screen};
use crate::rows::{CatchDraft, CaughtRow, CollectorsRow, NotesRow, PlaceRow, SiteRow};
use crate::screens::Lost;
use crate::screens::catch::Vials;
use crate::screens::event_line::{EventItem, method_words};
use crate::screens::start::OpenFor;
use leptos::prelude::*;
use logbook::Id;
use logbook::form::CatchForm;
use logbook::open::OpenView;
use logbook::view::{EventLine, Method, OpenKind, OpenLine};

/// Traps that can be set.
const KINDS: [&str; 4] = ["pitfall_trap", "pan_trap", "malaise_trap", "interception_trap"];

/// How a trap was found.
const FOUND: [&str; 4] = ["whole", "flooded", "dry", "dug_out"];

/// Setting a trap.
#[component]
pub fn SetTrap() -> impl IntoView {
    let page = use_page();
    let words = say().open;
    let draft: CatchDraft =
        Draft::open("trap", || page.logbook.with_untracked(|logbook| logbook.new_trap(page.moment())));
    Effect::new(move |_| {
        let now = page.now.get();
        draft.change_unkept(|form| form.tick(now));
    });
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        set(page, draft);
    };
    view! {
        <Page title=words.trap_set_title() form=true bar=move || view! { <SetBar/> }>
            <header class="head"><h1>{words.trap_set_title()}</h1><p class="note">{say().frame.kept_as_typed()}</p></header>
            <How screen="traps" says=vec![words.trap_how_1(), words.trap_how_2()]/>
            <figure class="span-line">
                <svg class="drawing" viewBox="0 0 240 46" preserveAspectRatio="none" aria-hidden="true">
                    <path class="stroke still" d="M0 16H104v22h32V16H240"/><path class="stroke still" d="M98 5h44M102 5v11M138 5v11"/>
                    <path class="faint still" d="M105 26h30M105 30h30M105 34h30"/>
                </svg>
            </figure>
            <form class="columns two" id="trap" autocomplete="off" novalidate on:submit=submit on:keydown=jump::enter_goes_on>
                <div class="column">
                    <section class="part pin" aria-label=words.trap_where()><SiteRow draft/><PlaceRow draft/></section>
                    <section class="part pin" aria-label=words.trap_set()><CaughtRow draft/><TrapRows draft/><CollectorsRow draft/></section>
                </div>
                <div class="column">
                    <div class="part"><Caution says=words.trap_caution()/></div>
                    <p class="note part">{words.trap_stands()}</p>
                </div>
            </form>
        </Page>
    }
    .into_any()
}

fn set(page: Context, draft: CatchDraft) {
    let form = draft.form.get_untracked();
    let due = form.particulars.get("due_days").and_then(|days| days.trim().parse().ok());
    let deed = page.make(|logbook, saving, ids| logbook.set_trap(&form, due, saving, ids));
    page.save(deed, move |_| {
        draft.forget();
        page.go(Screen::Start);
    });
}

#[component]
fn SetBar() -> impl IntoView {
    let page = use_page();
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Start)>{say().frame.set_aside()}</a>
            <button class="button main" type="submit" form="trap" data-key="ctrl+enter">{say().open.trap_set_do()}" "<kbd class="key">"Ctrl ⏎"</kbd></button>
        </div>
    }
    .into_any()
}

/// What a trap is: kind, how many, own number, bait, fluid, opening, and when it is due.
#[component]
fn TrapRows(draft: CatchDraft) -> impl IntoView {
    let words = say().open;
    let options: Options = KINDS.iter().map(|code| ((*code).to_owned(), say().codes.method(code))).collect();
    let choose = draft.on(|form: &mut CatchForm, code: String| form.method = code);
    let value =
        move |code: &'static str| draft.part(move |form| form.particulars.get(code).cloned().unwrap_or_default());
    let change = move |code: &'static str| {
        draft.on(move |form: &mut CatchForm, text: String| {
            if text.trim().is_empty() {
                form.particulars.remove(code);
            } else {
                form.particulars.insert(code.to_owned(), text);
            }
        })
    };
    view! {
        <Row of="trap-method" name=words.trap_kind()>
            <Pick id="trap-method" options=Signal::stored(options) chosen=draft.part(|form| form.method.clone()) choose/>
        </Row>
        <Row name=words.trap_count()><Stepper name=words.trap_count() value=value("traps") change=change("traps")/></Row>
        <Row of="own" name=words.trap_own()><Line id="own" class="measure" capitals="characters" value=value("trap") change=change("trap")/></Row>
        <Row of="bait" name=words.trap_bait()><Line id="bait" value=value("bait") change=change("bait")/></Row>
        <Row of="fluid" name=words.trap_fluid()><Line id="fluid" value=value("fluid") change=change("fluid")/></Row>
        <Row of="cup" name=words.trap_opening()>
            <WithUnit id="cup" unit=words.trap_opening_unit() figure="few" value=value("opening_cm") change=change("opening_cm")/>
        </Row>
        <Row of="due" name=words.trap_due()>
            <WithUnit id="due" unit=words.trap_due_unit() figure="few" value=value("due_days") change=change("due_days")/>
        </Row>
    }
    .into_any()
}

/// A trap in the ground: emptied and left, or taken up.
#[component]
pub fn Trap(id: Id) -> impl IntoView {
    let page = use_page();
    let open = narrowed(move || match page.logbook.with(|logbook| logbook.open(id, page.now.get())) {
        Some(OpenView::Traps(line, services)) => Some((line, services)),
        Some(OpenView::Event(..)) | None => None,
    });
    let there = narrowed(move || open.with(Option::is_some));
    view! { <Show when=move || there.get() fallback=|| view! { <Lost/> }><Service id open/></Show> }.into_any()
}

#[component]
fn Service(id: Id, open: Memo<Option<(OpenLine, Vec<EventLine>)>>) -> impl IntoView {
    let page = use_page();
    let words = say().open;
    let draft: CatchDraft = Draft::open(&FormOf::Trap(id).draft(), || {
        page.logbook.with_untracked(|logbook| logbook.service(id, page.moment(), true)).unwrap_or_default()
    });
    let line = narrowed(move || open.with(|open| open.as_ref().map(|(line, _)| line.clone())));
    let site = move || {
        line.with(|line| {
            line.as_ref()
                .map(|line| line.site.clone())
                .filter(|site| !site.is_empty())
                .unwrap_or_else(|| words.trap_title().into())
        })
    };
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        save(page, draft, true);
    };
    let method = draft.form.with_untracked(|form| Method {
        code: form.method.clone(),
        text: form.method_text.clone(),
        particulars: form.particulars.clone(),
    });
    view! {
        <Page title=Signal::derive(site) form=true bar=move || view! { <ServiceBar/> }>
            <header class="open-head">
                <div class="open-what"><h1>{site}</h1></div>
                {move || line.get().map(|line| view! { <OpenFor minutes=line.minutes name=words.trap_in_ground()/> })}
            </header>
            <How screen="trap" says=vec![words.trap_how_1(), words.trap_how_2()]/>
            <form class="columns two" id="trap" autocomplete="off" novalidate on:submit=submit on:keydown=jump::enter_goes_on>
                <div class="column">
                    <section class="part">
                        <p>{method_words(&method)}</p>
                        {move || line.get().map(drawn)}
                        <div class="pin"><UpRows draft/></div>
                    </section>
                    <Vials draft of=FormOf::Trap(id)/>
                </div>
                <div class="column">
                    <section class="part pin"><CollectorsRow draft/><NotesRow draft/></section>
                    <div class="commands part"><button class="button grow" type="button" on:click=move |_| save(page, draft, false)>{words.trap_empty()}</button></div>
                    <p class="note">{words.trap_empty_says()}</p>
                    <Services open/>
                </div>
            </form>
        </Page>
    }
    .into_any()
}

fn drawn(line: OpenLine) -> Option<AnyView> {
    let OpenKind::Traps(count, _) = line.what else { return None };
    Some(view! { <TrapRow count says=say().open.traps_span(count)/> }.into_any())
}

/// The service as it stands; with it the trap is taken up, or stays.
fn save(page: Context, draft: CatchDraft, take_up: bool) {
    let form = CatchForm { take_up, ..draft.form.get_untracked() };
    let trap = form.trap;
    match page.make(|logbook, saving, ids| logbook.save_catch(&form, saving, ids)) {
        Ok(deed) => page.save(deed, move |_| {
            draft.forget();
            page.go(Screen::Start);
        }),
        Err((at, _)) => {
            draft.keep();
            if let Some(trap) = trap {
                page.go(Screen::FormContainer(FormOf::Trap(trap), Some(at)));
            }
        }
    }
}

#[component]
fn UpRows(draft: CatchDraft) -> impl IntoView {
    let words = say().open;
    let clock = draft.on(|form: &mut CatchForm, clock: String| form.caught.until_clock = clock);
    let day = draft.on(|form: &mut CatchForm, day: String| form.caught.until_day = day);
    let set_clock = draft.on(|form: &mut CatchForm, clock: String| form.caught.clock = clock);
    let set_day = draft.on(|form: &mut CatchForm, day: String| form.caught.day = day);
    let found: Options = FOUND.iter().map(|code| ((*code).to_owned(), say().codes.found(code))).collect();
    let chosen = draft.part(|form| form.particulars.get("found").cloned().unwrap_or_default());
    let choose = draft.on(|form: &mut CatchForm, code: String| drop(form.particulars.insert("found".to_owned(), code)));
    view! {
        <Row of="set-time" name=words.trap_set() class="together">
            <TimeLine id="set-time" value=draft.part(|form| form.caught.clock.clone()) change=set_clock/>
            <DayLine id="set-day" name=words.trap_set_day() value=draft.part(|form| form.caught.day.clone()) change=set_day/>
        </Row>
        <Row of="up-time" name=words.trap_up() class="together">
            <TimeLine id="up-time" value=draft.part(|form| form.caught.until_clock.clone()) change=clock/>
            <DayLine id="up-day" name=words.trap_up_day() value=draft.part(|form| form.caught.until_day.clone()) change=day/>
        </Row>
        <Row name=words.trap_found()><Chooser name="found" class="pairs" legend=words.trap_found() options=Signal::stored(found) chosen choose/></Row>
    }
    .into_any()
}

/// What it brought before.
#[component]
fn Services(open: Memo<Option<(OpenLine, Vec<EventLine>)>>) -> impl IntoView {
    let services = narrowed(move || {
        let mut lines = open.with(|open| open.as_ref().map(|(_, services)| services.clone()).unwrap_or_default());
        lines.reverse();
        lines.truncate(20);
        lines
    });
    view! {
        <section class="part" aria-labelledby="services" hidden=move || services.with(Vec::is_empty)>
            <h2 id="services">{say().open.trap_services()}</h2>
            <ol class="pin">{move || services.get().into_iter().map(|line| view! { <EventItem line/> }).collect_view()}</ol>
        </section>
    }
    .into_any()
}

#[component]
fn ServiceBar() -> impl IntoView {
    let page = use_page();
    let words = say().open;
    view! {
        <div class="bar">
            <a class="button quiet" href=page.to(Screen::Start)>{say().frame.set_aside()}</a>
            <button class="button main" type="submit" form="trap" data-key="ctrl+enter">{words.trap_take_up()}" "<kbd class="key">"Ctrl ⏎"</kbd></button>
        </div>
    }
    .into_any()
}
