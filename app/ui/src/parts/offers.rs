use leptos::prelude::*;

/// Something that can be taken over with one tap.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Offer {
    /// By which the screen knows it.
    pub code: String,
    /// Its words.
    pub words: String,
    /// Words behind it, smaller.
    pub note: String,
    /// Set in italics.
    pub latin: bool,
}

/// Words that complete what is typed: taken by a tap, never filled in by themselves.
#[component]
pub fn Offers(
    /// What is offered here, for those who hear.
    name: &'static str,
    /// What is offered.
    #[prop(into)]
    offers: Signal<Vec<Offer>>,
    /// Called with the one taken.
    take: Callback<Offer>,
) -> impl IntoView {
    let word = move |offer: Offer| {
        let words = offer.words.clone();
        let words = if offer.latin { view! { <em>{words}</em> }.into_any() } else { words.into_any() };
        let note = (!offer.note.is_empty()).then(|| view! { " " <span class="note">{offer.note.clone()}</span> });
        view! { <li class="word"><button type="button" class="offer" on:click=move |_| take.run(offer.clone())>{words} {note}</button></li> }
    };
    view! {
        <ul class="words offers" aria-label=name hidden=move || offers.with(Vec::is_empty)>
            {move || offers.get().into_iter().map(word).collect_view()}
        </ul>
    }
    .into_any()
}
