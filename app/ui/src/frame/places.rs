use crate::context::{say, use_page};
use crate::route::{Place, Screen};
use leptos::prelude::*;

/// The places of the foot; on the desk a rail at the left with Setup as fifth.
#[component]
pub fn Places() -> impl IntoView {
    let page = use_page();
    let here = page.route.with_untracked(|route| route.screen.place());
    let words = say().frame;
    let item = move |place: Place, screen: Screen, name: &'static str| {
        let current = (place == here).then_some("page");
        view! { <li class:desk-only=place == Place::Setup><a href=page.to(screen) aria-current=current>{drawing(place)}{name}</a></li> }
    };
    view! {
        <nav class="places" aria-label=words.places()>
            <ul>
                {item(Place::Field, Screen::Start, words.field())}
                {item(Place::Days, Screen::Days, words.days())}
                {item(Place::Bench, Screen::Bench(String::new()), words.bench())}
                {item(Place::Labels, Screen::Labels, words.labels())}
                {item(Place::Setup, Screen::Setup, words.setup())}
            </ul>
        </nav>
    }
    .into_any()
}

fn drawing(place: Place) -> AnyView {
    let path = match place {
        Place::Field => {
            return view! {
                <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M13.6 12.6 20.5 20.5"/>
                    <ellipse cx="9.2" cy="8" rx="5.6" ry="4.6" transform="rotate(45 9.2 8)"/>
                    <path d="M4.6 11.4c-1 3.6-1.4 6-1.1 9.1 3.1-1.2 6-3.2 8.7-6"/></svg>
            }
            .into_any();
        }
        Place::Days => "M5 3.5h14v17H5zM8.5 3.5v17M11.5 8.5h4.5M11.5 12h4.5M11.5 15.5h3",
        Place::Bench => {
            "M3 20.5h18M3 20.5v-4.5h6v-4h6V8h6v12.5M12 12V4M10.9 3.2a1.1 1.1 0 1 0 2.2 0a1.1 1.1 0 1 0-2.2 0"
        }
        Place::Labels => "M2.5 6.5h19v11h-19zM5.5 9.5h13M5.5 14.5h8.5M11.4 12a.6.6 0 1 0 1.2 0a.6.6 0 1 0-1.2 0",
        Place::Setup => "M4 7h16M4 12h16M4 17h16M9 5v4M15 10v4M7 15v4",
    };
    view! { <svg viewBox="0 0 24 24" aria-hidden="true"><path d=path/></svg> }.into_any()
}
