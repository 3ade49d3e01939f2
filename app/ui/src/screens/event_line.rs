//! One event in a list, and the words of method and host that lists and readings share.

use crate::context::{say, use_page};
use crate::explain;
use crate::parts::MissingList;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::moment::day_text;
use logbook::view::{EventLine, Host, Mark, Method};

/// A line in the day: time and order, site and numbers, how, marks. The whole line is the target.
#[component]
pub fn EventItem(
    /// The event.
    line: EventLine,
    /// Its order within the day stands below the hour.
    #[prop(optional)]
    ordered: bool,
    /// What is missing stands below it.
    #[prop(optional)]
    marked: bool,
) -> impl IntoView {
    let page = use_page();
    let open = line.marks.contains(&Mark::Open);
    let screen = if open { Screen::Open(line.id) } else { Screen::Event(line.id, None) };
    let time = line.day.map(|day| format!("{}T{}", day_text(day), line.clock));
    let numbers = explain::numbers(&line);
    let marks: Vec<_> = line.marks.iter().map(explain::mark).map(|(sign, words)| (sign, words, "")).collect();
    let site = if line.site.is_empty() { say().event.untitled().to_owned() } else { line.site.clone() };
    view! {
        <li class="event row">
            <div class="row-name">
                <time datetime=time>{line.clock.clone()}</time>
                {ordered.then(|| view! { <span class="order">{line.order}</span> })}
            </div>
            <div class="row-value">
                <div class="event-head"><h3><a href=page.to(screen)>{site}</a></h3><p class="numbers">{numbers}</p></div>
                <p><MethodWords method=line.method.clone() host=line.host.clone()/></p>
                {marked.then(|| view! { <MissingList items=Signal::stored(marks)/> })}
            </div>
        </li>
    }
    .into_any()
}

/// The method, with the host behind it: `Beating, beaten from Salix caprea`.
#[component]
pub fn MethodWords(
    /// The method.
    method: Option<Method>,
    /// The host.
    host: Option<Host>,
) -> impl IntoView {
    let words = method.map(|method| method_words(&method)).filter(|words| !words.is_empty());
    let comma = (words.is_some() && host.is_some()).then_some(", ");
    view! { {words}{comma}{host.map(|host| view! { <HostWords host/> })} }.into_any()
}

/// The method in words.
pub fn method_words(method: &Method) -> String {
    let particulars: Vec<(String, String)> =
        method.particulars.iter().map(|(code, value)| (code.clone(), value.clone())).collect();
    if method.code.is_empty() { method.text.clone() } else { say().codes.method_with(&method.code, &particulars) }
}

/// Relation and thing; a Latin name in italics.
#[component]
pub fn HostWords(
    /// The host.
    host: Host,
) -> impl IntoView {
    let relation = (!host.relation.is_empty()).then(|| format!("{} ", say().codes.relation(&host.relation)));
    let thing = if logbook::view::looks_latin(&host.thing) {
        view! { <em>{host.thing.clone()}</em> }.into_any()
    } else {
        host.thing.clone().into_any()
    };
    let part = (!host.part.is_empty()).then(|| format!(", {}", host.part));
    view! { {relation}{thing}{part} }.into_any()
}
