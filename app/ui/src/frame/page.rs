use super::notices::Notices;
use super::places::Places;
use super::strip::Strip;
use crate::context::{say, use_page};
use crate::far;
use crate::jump;
use crate::parts::{HowBelow, HowWords};
use leptos::prelude::*;
use logbook::book::Book;

/// A screen: its sheet, and in the foot its bar above the places.
#[component]
pub fn Page(
    /// What the window is called.
    #[prop(into)]
    title: Signal<String>,
    /// A form: the bar stands alone, the places come back with the desk.
    #[prop(optional)]
    form: bool,
    /// The id that gets the focus on arrival; the sheet itself where none is named.
    #[prop(optional, default = "main")]
    focus: &'static str,
    /// Own keys above the bar.
    #[prop(optional, into)]
    keys: ViewFn,
    /// The bar.
    #[prop(optional, into)]
    bar: ViewFn,
    /// The sheet.
    children: Children,
) -> impl IntoView {
    let page = use_page();
    let below = RwSignal::new(Vec::new());
    provide_context(HowBelow(below));
    let how = move || (!below.with(Vec::is_empty)).then(|| view! { <HowWords says=below.get() open=false/> });
    let sample = page.book() == Book::Sample;
    Effect::new(move |_| document().set_title(&say().frame.title(&title.get())));
    Effect::new(move |_| jump::focus_still(focus));
    view! {
        <a class="skip" href="#main" on:click=|event| jump::to(&event, "main")>{say().frame.skip()}</a>
        <div class="page" class:in-sample=sample>
            {sample.then(far::book_strip)}
            <main class="sheet" id="main" tabindex="-1"><Notices/>{children()} {how}</main>
            <footer class="foot" class:bar-only=form>
                <Strip form/>
                {keys.run()}
                {bar.run()}
                <Places/>
            </footer>
        </div>
    }
    .into_any()
}
