use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Offer, Offers, PlateView};
use crate::route::{FormOf, Screen};
use crate::rows::CatchDraft;
use crate::screens::container::{FormContents, form_plate};
use leptos::prelude::*;
use logbook::form::ContainerForm;
use logbook::offers::OfferedGroup;

/// The containers of a catch that is being typed, and the groups caught lately.
#[component]
pub fn Vials(
    /// The form.
    draft: CatchDraft,
    /// Which form it is, for the addresses.
    #[prop(optional, default = FormOf::Catch)]
    of: FormOf,
) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let containers = draft.part(|form| form.containers.clone());
    let nothing = draft.part(|form| form.nothing);
    let groups = narrowed(move || page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form).groups)));
    let offers = narrowed(move || {
        let bare = containers.with(|containers| {
            containers.iter().any(|one| one.contents.iter().all(|line| line.group.trim().is_empty()))
        });
        let shown =
            |group: &OfferedGroup| Offer { code: group.code.clone(), words: group.text.clone(), ..Offer::default() };
        if bare && !nothing.get() { groups.with(|groups| groups.iter().map(shown).collect()) } else { Vec::new() }
    });
    let take = draft.on(|form: &mut logbook::form::CatchForm, offer: Offer| {
        form.take_group(&OfferedGroup { text: offer.words, code: offer.code })
    });
    let toggle = move |_| {
        draft.change(|form| {
            form.nothing = !form.nothing;
            form.open &= !form.nothing;
        })
    };
    let line =
        move |(at, container)| view! { <Vial container href=page.to(Screen::FormContainer(of, Some(at))) draft/> };
    let toggle_name = move || if nothing.get() { words.nothing_undo() } else { words.nothing_caught() };
    view! {
        <section class="part" id="containers" tabindex="-1" aria-label=words.containers()>
            <p class="ink" hidden=move || !nothing.get()>{words.nothing_says()}</p>
            <ul hidden=nothing>{move || containers.get().into_iter().enumerate().map(line).collect_view()}</ul>
            <Offers name=words.offered() offers take/>
            <div class="commands apart">
                <a class="button quiet" href=page.to(Screen::FormContainer(of, None)) data-key="v" hidden=nothing on:click=move |_| draft.keep()>
                    {words.add_container()}" "<kbd class="key">"V"</kbd>
                </a>
                <button class="button quiet" type="button" on:click=toggle>{toggle_name}</button>
            </div>
        </section>
    }
    .into_any()
}

#[component]
fn Vial(container: ContainerForm, href: String, draft: CatchDraft) -> impl IntoView {
    view! {
        <li class="container-line whole">
            <PlateView plate=form_plate(&container) size="middle"/>
            <span class="what"><a class="ink" href=href on:click=move |_| draft.keep()><FormContents container/></a></span>
        </li>
    }
    .into_any()
}
