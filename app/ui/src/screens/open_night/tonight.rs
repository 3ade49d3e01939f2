use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::route::Screen;
use crate::screens::HostWords;
use crate::screens::container::{ContentWords, count_words};
use leptos::prelude::*;
use logbook::view::{ContainerView, EventView, OpenLine};

/// How many containers of the night are shown.
const SHOWN: usize = 60;

/// What the night has brought so far, newest first.
#[component]
pub fn Tonight(open: Memo<Option<(OpenLine, EventView)>>) -> impl IntoView {
    let words = say().open;
    let containers = narrowed(move || {
        let mut all = open.with(|open| open.as_ref().map(|(_, event)| event.containers.clone()).unwrap_or_default());
        all.reverse();
        all.truncate(SHOWN);
        all
    });
    let none = move || containers.with(Vec::is_empty);
    view! {
        <section class="part" aria-labelledby="tonight">
            <h2 id="tonight">{words.tonight()}</h2>
            <p class="note" hidden=move || !none()>{words.none_yet()}</p>
            <ol class="pin" hidden=none>{move || containers.get().into_iter().map(|container| view! { <Item container/> }).collect_view()}</ol>
        </section>
    }
    .into_any()
}

#[component]
fn Item(container: ContainerView) -> impl IntoView {
    let page = use_page();
    let numbered = !container.plate.run.is_empty();
    let number = if numbered { container.plate.run.clone() } else { say().container.no_number().to_owned() };
    let counts = count_words(&container.contents);
    view! {
        <li class="event row">
            <div class="row-name"><time>{container.clock.clone()}</time></div>
            <div class="row-value">
                <div class="event-head">
                    <h3><a href=page.to(Screen::Container(container.id))><ContentWords contents=container.contents.clone()/></a></h3>
                    <p class="numbers"><span class="unseen">{say().codes.vessel(&container.plate.vessel)}" "</span>{number}</p>
                </div>
                <p class="note">{counts}</p>
                {container.host.map(|host| view! { <p class="note"><HostWords host/></p> })}
            </div>
        </li>
    }
    .into_any()
}
