use super::{CatchDraft, unknown};
use crate::context::{say, use_page};
use crate::far;
use crate::narrow::narrowed;
use crate::parts::{Line, More, Offer, Offers, Options, Pick, Row, UnknownWord};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::{self, CatchForm, HostForm};
use logbook::view::looks_latin;

/// The host of a catch. What was written before is offered, never filled in.
#[component]
pub fn HostRow(draft: CatchDraft) -> impl IntoView {
    let page = use_page();
    let words = say().catch;
    let host = draft.part(|form| form.host.clone());
    let change = draft.on(|form: &mut CatchForm, host: HostForm| form.host = host);
    let (marked, mark) = unknown(draft, form::Row::Host);
    let offers = narrowed(move || {
        let hosts = page.logbook.with(|logbook| draft.form.with(|form| logbook.offers(form).hosts));
        hosts.into_iter().filter(|known| host.with(|host| host.thing != known.thing)).collect::<Vec<_>>()
    });
    view! {
        <Row name=words.host()>
            <HostFields id="thing" host change offers/>
            <UnknownWord row=words.host() empty=Signal::derive(move || host.with(HostForm::is_empty)) marked change=mark/>
        </Row>
    }
    .into_any()
}

/// A relation and a thing, and what is seldom said of it.
#[component]
pub fn HostFields(
    /// The id of the thing.
    id: &'static str,
    /// The host.
    #[prop(into)]
    host: Signal<HostForm>,
    /// Called with the new host.
    change: Callback<HostForm>,
    /// Things that were written before.
    #[prop(into)]
    offers: Signal<Vec<HostForm>>,
) -> impl IntoView {
    let words = say().catch;
    let set = move |write: WriteHost| {
        Callback::new(move |text: String| {
            let mut now = host.get_untracked();
            write(&mut now, text);
            change.run(now);
        })
    };
    let relation = Signal::derive(move || host.with(|host| host.relation.clone()));
    let thing = Signal::derive(move || host.with(|host| host.thing.clone()));
    let offered = narrowed(move || {
        let shown = |host: HostForm| Offer {
            latin: looks_latin(&host.thing),
            words: host.thing.clone(),
            code: host.thing,
            note: String::new(),
        };
        offers.get().into_iter().map(shown).collect::<Vec<_>>()
    });
    let take = Callback::new(move |offer: Offer| {
        let known = offers.with_untracked(|offers| offers.iter().find(|known| known.thing == offer.code).cloned());
        if let Some(known) = known {
            change.run(HostForm { thing: known.thing, what: known.what, ..host.get_untracked() });
        }
    });
    let latin = move || host.with(|host| if looks_latin(&host.thing) { "line latin" } else { "line" });
    let open = host.with_untracked(|host| {
        !(host.what.is_empty() && host.part.is_empty() && host.voucher.is_empty() && host.named_by.is_empty())
    });
    view! {
        <Pick id="relation" name=words.host_how() options=Signal::stored(relations()) chosen=relation choose=set(|host, code| host.relation = code)/>
        <label class="unseen" for=id>{words.host_thing()}</label>
        <input class=latin id=id placeholder=words.host_hint() autocapitalize="off" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} autocomplete="off" spellcheck="false"
            prop:value=thing on:input=move |event| set(|host, text| host.thing = text).run(event_target_value(&event))/>
        <Offers name=words.hosts_offered() offers=offered take/>
        <More words=words.host_more() open>
            {far::host_more(host, Callback::new(move |(write, text): (WriteHost, String)| set(write).run(text)))}
        </More>
    }
    .into_any()
}

/// Writes a text into a host.
pub type WriteHost = fn(&mut HostForm, String);

/// What it is, its part, its voucher and who named it.
#[component]
pub fn HostMore(
    /// The host.
    host: Signal<HostForm>,
    /// Called with what is to be written.
    set: Callback<(WriteHost, String)>,
) -> impl IntoView {
    let words = say().catch;
    let on = move |write: WriteHost| Callback::new(move |text: String| set.run((write, text)));
    let part = move |part: fn(&HostForm) -> String| Signal::derive(move || host.with(part));
    view! {
        <div class="together">
            <Pick id="host-what" name=words.host_what() options=Signal::stored(things()) chosen=part(|host| host.what.clone()) choose=on(|host, text| host.what = text)/>
            <Line id="host-part" named=words.host_part() hint=words.host_part() value=part(|host| host.part.clone()) change=on(|host, text| host.part = text)/>
            <Line id="host-voucher" class="measure" named=words.host_voucher() hint=words.host_voucher()
                value=part(|host| host.voucher.clone()) change=on(|host, text| host.voucher = text)/>
            <Line id="host-named" capitals="words" named=words.host_named_by() hint=words.host_named_by()
                value=part(|host| host.named_by.clone()) change=on(|host, text| host.named_by = text)/>
        </div>
    }
    .into_any()
}

fn relations() -> Options {
    let none = (String::new(), say().catch.host_none().to_owned());
    std::iter::once(none)
        .chain(codes::RELATIONS.iter().map(|code| ((*code).to_owned(), say().codes.relation_option(code))))
        .collect()
}

fn things() -> Options {
    let none = (String::new(), say().catch.host_what().to_owned());
    std::iter::once(none)
        .chain(codes::THINGS.iter().map(|code| ((*code).to_owned(), say().codes.thing(code))))
        .collect()
}
