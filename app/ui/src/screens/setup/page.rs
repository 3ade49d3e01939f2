//! The page itself: the light one works in, what its altitudes are counted from, the language. All stay on this device.

use crate::context::{Context, say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Chooser, Pick};
use crate::theme;
use leptos::prelude::*;
use logbook::setup::DeviceSettings;
use phrases::Language;

/// The code under which "as the system" is chosen.
const SYSTEM: &str = "system";

/// Theme, what the device's altitudes are counted from, and language.
#[component]
pub fn PageRows() -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let theme = narrowed(move || {
        page.logbook.with(|logbook| logbook.device().theme.clone()).unwrap_or_else(|| SYSTEM.to_owned())
    });
    let language = narrowed(move || page.logbook.with(|logbook| logbook.device().language.clone()));
    let codes = logbook::codes::THEMES.iter().map(|code| ((*code).to_owned(), say().codes.theme(code)));
    let themes: Vec<_> = codes.chain([(SYSTEM.to_owned(), words.theme_system().to_owned())]).collect();
    let languages: Vec<_> =
        Language::ALL.iter().map(|language| (language.code().to_owned(), language.name().to_owned())).collect();
    let choose_theme = Callback::new(move |code: String| {
        let chosen = Some(code).filter(|code| code != SYSTEM);
        theme::choose(page, chosen.as_deref());
        keep(page, |device| device.theme = chosen);
    });
    let choose_language = Callback::new(move |code: String| {
        keep(page, |device| device.language = code);
        let _ = window().location().reload();
    });
    let zero = narrowed(move || {
        page.logbook.with(|logbook| logbook.device().altitude_zero.clone()).unwrap_or_else(|| SYSTEM.to_owned())
    });
    let zeros = [(SYSTEM, words.zero_system()), ("ellipsoid", words.zero_ellipsoid()), ("sea_level", words.zero_sea())]
        .map(|(code, says)| (code.to_owned(), says.to_owned()))
        .to_vec();
    let choose_zero = Callback::new(move |code: String| {
        keep(page, |device| device.altitude_zero = Some(code).filter(|code| code != SYSTEM));
    });
    view! {
        <Chooser name="theme" legend=words.theme() headed=true options=Signal::stored(themes) chosen=theme choose=choose_theme/>
        <p class="note">{words.lamp_says()}</p>
        <section class="part">
            <h2><label for="s-zero">{words.zero()}</label></h2>
            <Pick id="s-zero" options=Signal::stored(zeros) chosen=zero choose=choose_zero/>
            <p class="note">{words.zero_says()}</p>
        </section>
        <section class="part">
            <h2><label for="s-language">{words.language()}</label></h2>
            <Pick id="s-language" options=Signal::stored(languages) chosen=language choose=choose_language/>
        </section>
    }
    .into_any()
}

/// Changes what belongs to this device only, and keeps it.
fn keep(page: Context, change: impl FnOnce(&mut DeviceSettings)) {
    let mut device = page.logbook.with_untracked(|logbook| logbook.device().clone());
    change(&mut device);
    page.set_device(device);
}
