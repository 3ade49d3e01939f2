use crate::context::{say, use_page};
use crate::parts::Tally;
use crate::route::Screen;
use crate::screens::EventItem;
use leptos::prelude::*;
use logbook::view::{EventLine, Tally as Counts};

/// Today's counts, and its newest events.
#[component]
pub fn Today(newest: Memo<(Vec<EventLine>, Counts)>) -> impl IntoView {
    let page = use_page();
    let words = say().start;
    let tally = move || {
        let counts = newest.with(|(_, counts)| *counts);
        let number = |count| say().dates.number(count);
        let mut shown =
            vec![(words.events(), number(counts.events), ""), (words.containers(), number(counts.containers), "")];
        if counts.missing > 0 {
            shown.push((words.missing(), number(counts.missing), "caution-number"));
        }
        if counts.twice > 0 {
            shown.push((words.twice(), number(counts.twice), "fault-number"));
        }
        view! { <Tally counts=shown/> }
    };
    let lines = move || {
        newest.with(|(lines, _)| lines.clone()).into_iter().map(|line| view! { <EventItem line/> }).collect_view()
    };
    let today = move || page.to(Screen::Day(logbook::moment::today(page.now.get())));
    view! {
        <section class="part" aria-labelledby="today">
            <h2 id="today">{words.today()}</h2>
            {tally}
            <div class="pin part"><ol>{lines}</ol></div>
            <a class="button quiet" href=today>{words.whole_day()}</a>
        </section>
    }
    .into_any()
}
