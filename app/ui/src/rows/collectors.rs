use super::CatchDraft;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Check, Line, Offer, Offers};
use leptos::prelude::*;
use logbook::form::{CatchForm, CollectorForm};

/// Who was there: those of late to tick, and one more to write.
#[component]
pub fn CollectorsRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let known = draft.part(|form| form.collectors.clone());
    let more = draft.part(|form| form.collector_more.clone());
    let tick = move |at: usize| {
        draft.on(move |form: &mut CatchForm, there: bool| {
            if let Some(collector) = form.collectors.get_mut(at) {
                collector.there = there;
            }
        })
    };
    let person = move |(at, collector): (usize, CollectorForm)| {
        view! {
            <Check ticked=Signal::stored(collector.there) change=tick(at)><span class="ink">{collector.name}</span></Check>
        }
    };
    let typed = draft.on(|form: &mut CatchForm, name: String| form.collector_more = name);
    let offers = narrowed(move || {
        let typed = more.get().to_lowercase();
        let persons = page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form).persons));
        let listed = known.get();
        let fits = |name: &String| {
            !typed.is_empty() && name.to_lowercase().contains(&typed) && !listed.iter().any(|known| known.name == *name)
        };
        persons
            .into_iter()
            .filter(fits)
            .take(6)
            .map(|name| Offer { code: name.clone(), words: name, ..Offer::default() })
            .collect::<Vec<_>>()
    });
    let add = move |name: &str| {
        draft.change(|form| {
            form.add_collector(name);
            form.collector_more.clear();
        });
    };
    view! {
        <fieldset class="row" id="collectors">
            <legend class="unseen">{words.collectors()}</legend>
            <div class="row-name" aria-hidden="true">{words.collectors()}</div>
            <div class="row-value">
                {move || known.get().into_iter().enumerate().map(person).collect_view()}
                <div class="together">
                    <label class="unseen" for="collector-more">{words.collector_more()}</label>
                    <Line id="collector-more" capitals="words" hint=words.collector_more() value=more change=typed/>
                    <button class="button quiet fit" type="button" hidden=move || more.with(|name| name.trim().is_empty())
                        on:click=move |_| add(&more.get())>{words.collector_add()}</button>
                </div>
                <Offers name=words.collectors() offers take=Callback::new(move |offer: Offer| add(&offer.code))/>
            </div>
        </fieldset>
    }
    .into_any()
}
