use crate::jump;
use leptos::prelude::*;

/// The signs, each of which stands beside its word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// The corrector's caret: something goes here.
    Caret,
    /// Two strokes: twice.
    Twice,
    /// A cross: does not fit.
    Cross,
    /// A stroke and a point: to be looked at.
    Look,
    /// A tick: done.
    Tick,
    /// A ring: open.
    Ring,
}

impl Sign {
    /// The drawing.
    pub fn draw(self) -> AnyView {
        let path = match self {
            Self::Caret => "M2.5 13 8 4l5.5 9",
            Self::Twice => "M2 5.5h12M2 10.5h12",
            Self::Cross => "M3 3l10 10M13 3 3 13",
            Self::Look => "M8 2v8M8 13.5v.5",
            Self::Tick => "M2 9l4 4.5L14 3",
            Self::Ring => "M3 8a5 5 0 1 0 10 0a5 5 0 1 0-10 0",
        };
        view! { <svg class="sign" viewBox="0 0 16 16" aria-hidden="true"><path d=path/></svg> }.into_any()
    }

    /// The class by which its colour is chosen.
    pub fn class(self) -> &'static str {
        match self {
            Self::Caret | Self::Look => "",
            Self::Twice | Self::Cross => "fault",
            Self::Tick => "mark sure",
            Self::Ring => "mark plain",
        }
    }
}

/// A sign with its words, in running text.
#[component]
pub fn Mark(
    /// The sign.
    sign: Sign,
    /// The words.
    #[prop(into)]
    words: String,
) -> impl IntoView {
    view! { <span class=format!("mark {}", sign.class())>{sign.draw()}<span>{words}</span></span> }.into_any()
}

/// What is missing or to be known; where rows of the same screen can mend it, each leads to its row.
#[component]
pub fn MissingList(
    /// Class besides `missing`.
    #[prop(optional)]
    class: &'static str,
    /// What is heard as its name.
    #[prop(optional)]
    name: &'static str,
    /// Sign, words, and the id of the row that mends it (empty for none).
    #[prop(into)]
    items: Signal<Vec<(Sign, String, &'static str)>>,
) -> impl IntoView {
    let name = Some(name).filter(|name| !name.is_empty());
    let item = |(sign, words, row): (Sign, String, &'static str)| {
        let inner = if row.is_empty() {
            view! { {sign.draw()} {words} }.into_any()
        } else {
            view! { <a href=format!("#{row}") on:click=move |event| jump::to(&event, row)>{sign.draw()} {words}</a> }
                .into_any()
        };
        view! { <li class=sign.class()>{inner}</li> }
    };
    view! {
        <ul class=format!("missing {class}") aria-label=name hidden=move || items.with(Vec::is_empty)>
            {move || items.get().into_iter().map(item).collect_view()}
        </ul>
    }
    .into_any()
}
