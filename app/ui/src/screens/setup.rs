//! Setup: who one is, how one numbers, labels and limits, the page itself, and the storage.

mod fonts;
mod labels;
mod numbers;
mod page;
mod person;
mod storage;

use crate::context::{Context, say, use_page};
use crate::desk::how;
use crate::frame::Page as Frame;
use crate::narrow::narrowed;
use chrono::Datelike;
use fonts::OwnFonts;
use labels::LabelRules;
use leptos::prelude::*;
use logbook::moment;
use logbook::setup::SetupView;
use numbers::Numbers;
use page::PageRows;
use person::Person;
use storage::Storage;

/// Setup.
#[component]
pub fn Setup() -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let year = year(page);
    let view = narrowed(move || page.logbook.with(|logbook| logbook.setup(year)));
    let (top, end) = how("setup", vec![words.how_1(), words.how_2()]);
    view! {
        <Frame title=words.title()>
            <header class="head"><h1>{words.title()}</h1></header>
            {top}
            <div class="columns two">
                <div class="column"><Person view/><Numbers view/><LabelRules view/><OwnFonts/></div>
                <div class="column"><PageRows/><Storage/>{end}</div>
            </div>
        </Frame>
    }
    .into_any()
}

fn year(page: Context) -> i32 {
    moment::today(page.moment()).year()
}

/// A part of the view, for an input to show.
fn part<T: PartialEq + Send + Sync + 'static>(
    view: Memo<SetupView>,
    part: impl Fn(&SetupView) -> T + Send + Sync + 'static,
) -> Signal<T> {
    narrowed(move || view.with(&part)).into()
}
