//! A person's own fonts, for letters that those of the labels lack.

use crate::context::{Context, say, use_page};
use crate::explain;
use crate::parts::Message;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::fonts::{FontRefused, OwnFont};
use ports::press::PressFault;
use ports::store::StoreFault;

/// What this part holds.
#[derive(Clone, Copy)]
struct Fonts {
    there: RwSignal<Vec<OwnFont>>,
    refused: RwSignal<Option<FontRefused>>,
    busy: RwSignal<bool>,
    page: Context,
}

impl Fonts {
    fn new(page: Context) -> Self {
        let (there, refused, busy) = (RwSignal::new(Vec::new()), RwSignal::new(None), RwSignal::new(false));
        let fonts = Self { there, refused, busy, page };
        spawn_local(async move { fonts.look().await });
        fonts
    }

    async fn look(self) {
        if let Some(found) = self.noted(self.page.driver().own_fonts().await) {
            let _ = self.there.try_set(found);
        }
    }

    /// What an answer of the store holds; its fault is shown.
    fn noted<T>(self, answer: Result<T, StoreFault>) -> Option<T> {
        answer.map_err(|why| self.refused.try_set(Some(FontRefused::Store(why)))).ok()
    }

    fn add(self) {
        self.refused.set(None);
        spawn_local(async move {
            let files = self.page.ports().files;
            let Some(file) = files.pick().await else { return };
            let _ = self.busy.try_set(true);
            if let Err(why) = self.page.driver().add_font(file).await {
                let _ = self.refused.try_set(Some(why));
            }
            let _ = self.busy.try_set(false);
            self.look().await;
        });
    }

    fn take_away(self, key: String) {
        self.refused.set(None);
        spawn_local(async move {
            self.noted(self.page.driver().take_font_away(&key).await);
            self.look().await;
        });
    }
}

/// The fonts that were added, and the way to add another.
#[component]
pub fn OwnFonts() -> impl IntoView {
    let fonts = Fonts::new(use_page());
    let words = say().setup;
    let line = move |font: OwnFont| {
        let says = words.font_has(&font.family, font.characters);
        let name = words.font_away_which(&font.family);
        let away = move |_| fonts.take_away(font.key.clone());
        view! {
            <li class="container-line">
                <span class="what">{says}</span>
                <button class="button quiet" type="button" aria-label=name on:click=away>{words.font_away()}</button>
            </li>
        }
    };
    view! {
        <section class="part" aria-labelledby="s-fonts">
            <h2 id="s-fonts">{words.fonts()}</h2>
            <ul>{move || fonts.there.get().into_iter().map(line).collect_view()}</ul>
            {move || fonts.refused.get().map(refused)}
            <p class="note" role="status" hidden=move || !fonts.busy.get()>{words.font_reading()}</p>
            <div class="commands">
                <button class="button" type="button" disabled=move || fonts.busy.get() on:click=move |_| fonts.add()>{words.font_add()}</button>
            </div>
            <p class="note">{words.fonts_says()}</p>
        </section>
    }
    .into_any()
}

fn refused(why: FontRefused) -> impl IntoView {
    let words = say().setup;
    let (what, safe) = match why {
        FontRefused::NoFont(name) => (words.font_no_font(&name), words.font_no_font_do().to_owned()),
        FontRefused::Shut(family) => (words.font_shut(&family), words.font_shut_do().to_owned()),
        FontRefused::Press(PressFault::Gone(reason)) => {
            (say().desk.press_gone().to_owned(), say().desk.press_gone_do(&reason))
        }
        FontRefused::Store(fault) => explain::store_fault(&fault),
    };
    view! { <Message what safe/> }
}
