//! Label sheet, size of a label, spare ones, and the limit above which a position is marked. Kept when a row is left.

use super::part;
use crate::context::{say, use_page};
use crate::explain;
use crate::parts::{Pick, Row, typed};
use leptos::prelude::*;
use logbook::setup::{RulesForm, SetupView};

/// The rules.
#[component]
pub fn LabelRules(view: Memo<SetupView>) -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let rules = part(view, |view| view.rules.clone());
    let refused = RwSignal::new(Vec::<String>::new());
    let keep = move |put: fn(&mut RulesForm, String), typed: String| {
        let mut form = rules.get_untracked();
        put(&mut form, typed);
        match page.make(|logbook, _, ids| logbook.set_rules(&form, ids)) {
            Ok(deed) => {
                refused.set(Vec::new());
                page.save(deed, |_| {});
            }
            Err(why) => refused.set(why.iter().map(explain::refused).collect()),
        }
    };
    let sheets = Signal::stored(
        logbook::codes::SHEETS.iter().map(|code| ((*code).to_owned(), say().labels.paper(code))).collect::<Vec<_>>(),
    );
    let figure = move |id: &'static str,
                       name: &'static str,
                       unit: &'static str,
                       read: fn(&RulesForm) -> &String,
                       put: fn(&mut RulesForm, String)| {
        let value = Signal::derive(move || rules.with(|rules| read(rules).clone()));
        view! {
            <label class="with-unit fit" for=id>
                <span class="unseen">{name}</span>
                <input class="line measure few" id=id inputmode="decimal" autocomplete="off" prop:value=value on:change=move |event| keep(put, typed(&event))/>
                <span>{unit}</span>
            </label>
        }
    };
    view! {
        <section class="part pin" aria-label=words.labels()>
            <Row of="s-sheet" name=words.sheet()>
                <Pick id="s-sheet" options=sheets chosen=Signal::derive(move || rules.with(|rules| rules.sheet.clone()))
                    choose=Callback::new(move |sheet| keep(|form, sheet| form.sheet = sheet, sheet))/>
            </Row>
            <Row name=words.label_size()>
                <div class="together">
                    {figure("s-wide", words.label_width(), "×", |rules| &rules.width, |rules, typed| rules.width = typed)}
                    {figure("s-high", words.label_height(), "mm", |rules| &rules.height, |rules, typed| rules.height = typed)}
                </div>
            </Row>
            <Row name=words.spares()>{figure("s-spares", words.spares(), words.spares_unit(), |rules| &rules.spares, |rules, typed| rules.spares = typed)}</Row>
            <Row name=words.radius()>
                {figure("s-radius", words.radius(), "m", |rules| &rules.radius_limit, |rules, typed| rules.radius_limit = typed)}
                <p class="note">{words.radius_says()}</p>
            </Row>
            <div role="status">{move || refused.get().into_iter().map(|why| view! { <p class="mark fault">{why}</p> }).collect_view()}</div>
        </section>
    }
    .into_any()
}
