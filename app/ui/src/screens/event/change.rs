use crate::context::{Context, use_page};
use crate::draft::Draft;
use crate::jump;
use crate::route::{Group, Screen};
use crate::rows::{
    CatchDraft, CaughtRow, CollectorsRow, ElevationRow, HeightRow, HostRow, MethodRow, MicrohabitatRow, NotesRow,
    PermitRow, PlaceRow, SiteRow, StationRow, UntilRow, WeatherRow,
};
use leptos::prelude::*;
use logbook::Id;

/// One group open for change: the same rows as in the form of a catch. Only what was changed is written.
#[component]
pub fn Change(id: Id, which: Group) -> impl IntoView {
    let page = use_page();
    let draft: CatchDraft = Draft::open(&format!("event/{id}"), || {
        page.logbook.with_untracked(|logbook| logbook.catch_of(id)).unwrap_or_default()
    });
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        save(page, id, draft);
    };
    Effect::new(move |_| jump::focus(first_of(which)));
    let rows = match which {
        Group::Host => view! { <HostRow draft/> }.into_any(),
        Group::Where => {
            view! { <SiteRow draft/><PlaceRow draft/><ElevationRow draft/><HeightRow draft/><MicrohabitatRow draft/> }
                .into_any()
        }
        Group::When => {
            view! { <CaughtRow draft/><UntilRow draft/><MethodRow draft/><StationRow draft/><WeatherRow draft/> }
                .into_any()
        }
        Group::Whom => view! { <CollectorsRow draft/><PermitRow draft/><NotesRow draft/> }.into_any(),
    };
    view! { <form class="pin" id="change" autocomplete="off" novalidate on:submit=submit on:keydown=jump::enter_goes_on>{rows}</form> }.into_any()
}

fn first_of(which: Group) -> &'static str {
    match which {
        Group::Host => "thing",
        Group::Where => "site",
        Group::When => "caught",
        Group::Whom => "collectors",
    }
}

fn save(page: Context, id: Id, draft: CatchDraft) {
    let form = draft.form.get_untracked();
    if let Ok(deed) = page.make(|logbook, saving, ids| logbook.save_catch(&form, saving, ids)) {
        page.save(deed, move |_| {
            draft.forget();
            page.go(Screen::Event(id, None));
        });
    }
}
