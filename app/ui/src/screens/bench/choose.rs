//! Several that could be meant, or numbers like one that is not known. None is opened unasked.

use super::bench_of;
use crate::context::{say, use_page};
use crate::desk::contents_words;
use crate::parts::PlateView;
use crate::route::Screen;
use leptos::prelude::*;
use logbook::bench::{Candidate, Near, Why};

/// Containers that could be meant, the likeliest first.
#[component]
pub fn Choices(typed: String, candidates: Vec<Candidate>, more: usize) -> impl IntoView {
    let words = say().bench;
    let head = if candidates.len() == 1 {
        words.one_candidate(&typed)
    } else {
        words.candidates(candidates.len() + more, &typed)
    };
    let each = |(index, candidate): (usize, Candidate)| {
        let why = why(&candidate);
        view! { <Row index candidate why/> }
    };
    view! {
        <section aria-labelledby="number-says">
            <h2 class="candidates" id="number-says">{head}</h2>
            <p class="note">{words.which()}</p>
            <ol>{candidates.into_iter().enumerate().map(each).collect_view()}</ol>
            {(more > 0).then(|| view! { <p class="note">{words.more(more)}</p> })}
        </section>
    }
    .into_any()
}

/// No container has the number.
#[component]
pub fn NoneFound(typed: String, nearest: Vec<Near>) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let says = if nearest.is_empty() { words.none_near() } else { words.nearest() };
    let each = |(index, near): (usize, Near)| {
        let why = words.reason(near.reason.code());
        view! { <Row index candidate=near.container why/> }
    };
    view! {
        <section aria-labelledby="number-says">
            <h2 class="candidates" id="number-says">{words.none(&typed)}</h2>
            <p class="note">{says}</p>
            <ol>{nearest.into_iter().enumerate().map(each).collect_view()}</ol>
        </section>
        <section class="part">
            <h2>{words.never()}</h2>
            <p class="note">{words.never_says()}</p>
            <a class="button quiet" href=page.to(Screen::NewCatch)>{words.log_now()}</a>
        </section>
    }
    .into_any()
}

#[component]
fn Row(index: usize, candidate: Candidate, why: String) -> impl IntoView {
    let page = use_page();
    let key = (index < 9).then(|| (index + 1).to_string());
    let contents = contents_words(&candidate.container.contents);
    let people = candidate.collectors.join(", ");
    let says: Vec<String> = [contents, people].into_iter().filter(|words| !words.is_empty()).collect();
    let site = candidate.event.as_ref().map(|line| line.site.clone()).filter(|site| !site.is_empty());
    let day = candidate.day.map(|day| say().dates.roman(day));
    let hint = key.clone().map(|key| view! { " " <kbd class="key">{key}</kbd> });
    view! {
        <li><a class="candidate" href=bench_of(page, candidate.container.id) data-key=key>
            <span class="top"><PlateView plate=candidate.container.plate size="middle"/><span class="measure note">{day}</span></span>
            <span class="ink">{says.join(", ")}</span>
            <span class="why">{site.map(|site| format!("{site}. "))}{why}{hint}</span>
        </a></li>
    }
    .into_any()
}

/// Whose it is, what lies beside it, and whether it was dealt with.
fn why(candidate: &Candidate) -> String {
    let words = say().bench;
    let whose = match candidate.why {
        Why::Own => words.why_own().to_owned(),
        Why::Other => words.why_other().to_owned(),
        Why::Colleague => words.why_colleague().to_owned(),
        Why::LastYear => words.why_last_year().to_owned(),
        Why::Earlier(years) => words.why_earlier(years),
    };
    let beside = if candidate.neighbours.is_empty() { String::new() } else { words.beside(&candidate.neighbours) };
    let dealt = if candidate.dealt { words.dealt() } else { words.not_dealt() };
    [whose, beside, dealt.to_owned()].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}
