//! One's own name, and those who usually come along. Kept when the row is left.

use super::part;
use crate::context::{say, use_page};
use crate::explain;
use crate::parts::{Row, typed};
use leptos::prelude::*;
use logbook::setup::SetupView;

/// Name and company.
#[component]
pub fn Person(view: Memo<SetupView>) -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let refused = RwSignal::new(None::<String>);
    let name = part(view, |view| view.name.clone());
    let team = part(view, |view| view.team.join("; "));
    let keep_name = move |event: web_sys::Event| {
        let typed = typed(&event);
        match page.make(|logbook, _, ids| logbook.name_oneself(&typed, ids)) {
            Ok(settled) => {
                refused.set(None);
                page.settle(Some(settled), || {});
            }
            Err(why) => refused.set(Some(explain::refused(&why))),
        }
    };
    let keep_team = move |event: web_sys::Event| {
        let names: Vec<String> =
            typed(&event).split(';').map(|name| name.trim().to_owned()).filter(|name| !name.is_empty()).collect();
        page.save(page.make(|logbook, _, ids| logbook.set_team(&names, ids)), |_| {});
    };
    view! {
        <section class="part pin" aria-label=words.you()>
            <Row of="s-name" name=words.name()>
                <input class="line" id="s-name" autocomplete="name" autocapitalize="words" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} spellcheck="false" prop:value=name on:change=keep_name/>
                <p class="mark fault" role="status" hidden=move || refused.with(Option::is_none)>{refused}</p>
            </Row>
            <Row of="s-team" name=words.team()>
                <input class="line" id="s-team" autocomplete="off" autocapitalize="words" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} spellcheck="false" aria-describedby="s-team-says" prop:value=team on:change=keep_team/>
                <p class="note" id="s-team-says">{words.team_says()}</p>
            </Row>
        </section>
    }
    .into_any()
}
