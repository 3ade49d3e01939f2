use super::CatchDraft;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Line, Offer, Offers, Row};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::form::CatchForm;

/// The site: typed or taken, nearest first; a new one is made by saving.
#[component]
pub fn SiteRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let value = draft.part(|form| form.site.clone());
    let change = draft.on(|form: &mut CatchForm, name: String| {
        form.site = name;
        form.site_given = true;
    });
    let typing = RwSignal::new(false);
    let offers = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form))));
    let sites = narrowed(move || {
        let open = typing.get() || value.with(String::is_empty);
        let offered = |site: &logbook::offers::OfferedSite| Offer {
            code: site.name.clone(),
            words: site.name.clone(),
            note: site.distance_m.map(|metres| say().dates.way(metres)).unwrap_or_default(),
            latin: false,
        };
        if open { offers.with(|offers| offers.sites.iter().map(offered).collect()) } else { Vec::new() }
    });
    let typed = Callback::new(move |name: String| {
        typing.set(true);
        change.run(name);
    });
    let take = Callback::new(move |offer: Offer| {
        typing.set(false);
        change.run(offer.code);
    });
    let site_state = move || offers.with(|offers| (offers.site_is_new, offers.site_distance_m));
    let note = move || {
        match site_state() {
        (true, _) => view! {
            <p class="note" id="site-note">{words.site_new()}". "<a href=page.to(Screen::Site(None)) on:click=move |_| name_site(page, draft)>{words.site_make()}</a></p>
        }
        .into_any(),
        (false, Some(metres)) => view! { <p class="note" id="site-note">{words.site_here(metres)}</p> }.into_any(),
        (false, None) => ().into_any(),
    }
    };
    view! {
        <Row of="site" name=words.site()>
            <Line id="site" capitals="words" described="site-note" value change=typed/>
            {note}
            <Offers name=words.sites_offered() offers=sites take/>
        </Row>
    }
    .into_any()
}

/// The site's own form begins with the name and the position of the catch.
fn name_site(page: crate::context::Context, draft: CatchDraft) {
    draft.keep();
    let form = draft.form.with_untracked(|form| page.logbook.with_untracked(|logbook| logbook.new_site(form)));
    crate::draft::put(page, "site", &form);
}
