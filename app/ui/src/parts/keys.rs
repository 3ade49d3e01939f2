use crate::context::say;
use leptos::prelude::*;

/// One of the page's own number keys.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// A figure.
    Figure(u8),
    /// The word left of zero: "To" or "Now".
    Word,
    /// Takes the last sign away.
    RubOut,
}

impl Key {
    /// The text after this key; `Word` changes nothing.
    pub fn on(self, text: &str) -> String {
        let mut text = text.to_owned();
        match self {
            Self::Figure(figure) => text.push(char::from(b'0' + figure)),
            Self::RubOut => drop(text.pop()),
            Self::Word => {}
        }
        text
    }

    /// The hour after this key: four figures, the colon set by itself.
    pub fn on_clock(self, clock: &str) -> String {
        let figures: String = clock.chars().filter(char::is_ascii_digit).collect();
        let kept = if figures.len() >= 4 && matches!(self, Self::Figure(_)) { "" } else { &figures };
        let figures = self.on(kept);
        match figures.split_at_checked(2) {
            Some((hours, minutes)) if !minutes.is_empty() => format!("{hours}:{minutes}"),
            _ => figures,
        }
    }
}

/// Own large keys above the save bar while a number or an hour is edited; on the desk they vanish.
#[component]
pub fn NumberKeys(
    /// The word left of zero; none for no such key.
    #[prop(into)]
    word: Signal<Option<&'static str>>,
    /// Called with the key pressed.
    press: Callback<Key>,
) -> impl IntoView {
    let figure = move |figure: u8| {
        view! { <button type="button" tabindex="-1" on:pointerdown=hold on:click=move |_| press.run(Key::Figure(figure))>{figure}</button> }
    };
    view! {
        <div class="keys" role="group" aria-label=say().frame.number_keys()>
            {(1..=9).map(figure).collect_view()}
            <button type="button" tabindex="-1" class="word-key" disabled=move || word.get().is_none()
                on:pointerdown=hold on:click=move |_| press.run(Key::Word)>{move || word.get()}</button>
            {figure(0)}
            <button type="button" tabindex="-1" class="word-key" on:pointerdown=hold on:click=move |_| press.run(Key::RubOut)>
                {say().frame.rub_out()}
            </button>
        </div>
    }
    .into_any()
}

/// The field that is edited keeps the focus.
fn hold(event: web_sys::PointerEvent) {
    event.prevent_default();
}

/// `inputmode` of a field that the page's own keys write into: none where they stand, the system's where they give way
/// to a desk or to large text.
pub fn own_keys() -> &'static str {
    let away = "(min-width: 60rem), (max-height: 28rem)";
    let gone = window().match_media(away).ok().flatten().is_some_and(|list| list.matches());
    if gone { "numeric" } else { "none" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_hour_is_written_by_its_figures() {
        let clock = [2, 3, 1, 0].into_iter().fold(String::new(), |clock, figure| Key::Figure(figure).on_clock(&clock));
        assert_eq!(clock, "23:10");
        assert_eq!(Key::RubOut.on_clock("23:10"), "23:1");
        assert_eq!(Key::RubOut.on_clock("23:1"), "23");
        assert_eq!(Key::Figure(7).on_clock("23:10"), "7");
    }
}
