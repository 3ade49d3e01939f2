//! The form of a new catch: filled with what can be known, everything to be typed over.

mod bar;
mod vials;

use crate::context::{say, use_page};
use crate::draft::Draft;
use crate::explain;
use crate::far;
use crate::frame::Page;
use crate::jump;
use crate::narrow::narrowed;
use crate::parts::{How, MissingList, More};
use crate::rows::{
    CatchDraft, CaughtRow, CollectorsRow, ElevationRow, HeightRow, HostRow, MethodRow, MicrohabitatRow, NotesRow,
    OpenRow, PermitRow, PlaceRow, SiteRow, StationRow, UntilRow, WeatherRow,
};
use bar::SaveBar;
use leptos::prelude::*;
use logbook::book::State;
use logbook::form::CatchForm;
use logbook::view::Mark;

pub use vials::Vials;

/// A new catch. Before the book is open there is nothing to fill it with, so it waits for it.
#[component]
pub fn NewCatch() -> impl IntoView {
    let page = use_page();
    let open = narrowed(move || !page.logbook.with(|logbook| matches!(logbook.state(), State::Opening { .. })));
    let waiting = || view! { <Page title=say().catch.title() form=true><header class="head"><h1>{say().catch.title()}</h1></header></Page> };
    view! { <Show when=move || open.get() fallback=waiting><CatchScreen/></Show> }.into_any()
}

#[component]
fn CatchScreen() -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    page.done.set(None);
    let draft: CatchDraft =
        Draft::open("catch", || page.logbook.with_untracked(|logbook| logbook.new_catch(page.moment())));
    draft.change_unkept(|form| form.resume(page.moment()));
    Effect::new(move |_| {
        let now = page.now.get();
        draft.change_unkept(|form| form.tick(now));
    });
    let missing = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.missing(form))));
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        bar::save(page, draft);
    };
    view! {
        <Page title=words.title() form=true bar=move || view! { <SaveBar draft missing/> }>
            <header class="head"><h1>{words.title()}</h1><p class="note">{say().frame.kept_as_typed()}</p></header>
            <How screen="catch" says=vec![words.how_1(), words.how_2(), words.how_3(), words.how_4()]/>
            <form class="columns two" id="catch" autocomplete="off" novalidate on:submit=submit on:keydown=jump::enter_goes_on>
                <div class="column">
                    <Vials draft/>
                    <section class="part pin" aria-label=words.where_when()>
                        <SiteRow draft/><PlaceRow draft/><CaughtRow draft/><MethodRow draft/><OpenRow draft/>
                    </section>
                </div>
                <div class="column"><Whom draft/><Missing missing/></div>
            </form>
        </Page>
    }
    .into_any()
}

#[component]
fn Whom(draft: CatchDraft) -> impl IntoView {
    let open = draft.form.with_untracked(has_more);
    view! {
        <section class="part pin" aria-label=say().catch.whom()>
            <HostRow draft/><CollectorsRow draft/><WeatherRow draft/><PermitRow draft/><NotesRow draft/>
            <More words=say().frame.more() open>{far::seldom_rows(draft)}</More>
        </section>
    }
    .into_any()
}

/// Rows that are seldom needed.
#[component]
pub fn SeldomRows(draft: CatchDraft) -> impl IntoView {
    view! { <UntilRow draft/><ElevationRow draft/><HeightRow draft/><MicrohabitatRow draft/><StationRow draft/> }
        .into_any()
}

fn has_more(form: &CatchForm) -> bool {
    !(form.caught.until_clock.is_empty()
        && form.elevation.is_empty()
        && form.height.is_empty()
        && form.microhabitat.is_empty()
        && form.station.is_empty())
}

/// What is missing, each leading to its row.
#[component]
pub fn Missing(missing: Memo<Vec<Mark>>) -> impl IntoView {
    let items = narrowed(move || missing.with(|missing| missing.iter().map(leading).collect::<Vec<_>>()));
    view! {
        <section class="part" aria-labelledby="missing" hidden=move || missing.with(Vec::is_empty)>
            <h2 id="missing">{say().frame.missing()}</h2>
            <MissingList items/>
            <p class="note">{say().marks.stay_on_list()}</p>
        </section>
    }
    .into_any()
}

fn leading(mark: &Mark) -> (crate::parts::Sign, String, &'static str) {
    let (sign, words) = explain::mark(mark);
    (sign, words, row_of(mark))
}

/// The id of the row that mends a mark.
pub fn row_of(mark: &Mark) -> &'static str {
    match mark {
        Mark::Site => "site",
        Mark::Coordinates | Mark::Radius(..) => "position",
        Mark::Caught => "caught",
        Mark::Method => "method",
        Mark::Host => "thing",
        Mark::Collector => "collectors",
        Mark::Elevation => "elevation",
        Mark::Catch | Mark::Unnumbered(_) | Mark::Twice(_) => "containers",
        Mark::Open | Mark::Nothing | Mark::Conflicts(_) => "",
    }
}
