//! Label sheet, size of a label, spare ones, and the limit above which a position is marked. Kept when a row is left.

use super::part;
use crate::context::{say, use_page};
use crate::desk::kind_name;
use crate::explain;
use crate::parts::{Chooser, More, Pick, Row, typed};
use leptos::prelude::*;
use logbook::setup::{RulesForm, SetupView};

/// The rules.
#[component]
pub fn LabelRules(view: Memo<SetupView>) -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let rules = part(view, |view| view.rules.clone());
    let refused = RwSignal::new(Vec::<String>::new());
    let save = move |form: RulesForm| match page.make(|logbook, _, ids| logbook.set_rules(&form, ids)) {
        Ok(deed) => {
            refused.set(Vec::new());
            page.save(deed, |_| {});
        }
        Err(why) => refused.set(why.iter().map(explain::refused).collect()),
    };
    let keep = move |put: fn(&mut RulesForm, String), typed: String| {
        let mut form = rules.get_untracked();
        put(&mut form, typed);
        save(form);
    };
    let sheets = Signal::stored(
        logbook::codes::SHEETS.iter().map(|code| ((*code).to_owned(), say().labels.paper(code))).collect::<Vec<_>>(),
    );
    let choose = move |put: fn(&mut RulesForm, String)| Callback::new(move |chosen: String| keep(put, chosen));
    let pins = Signal::stored(
        logbook::codes::PINS.iter().map(|code| ((*code).to_owned(), words.pin_no(code))).collect::<Vec<_>>(),
    );
    let places = Signal::stored(vec![
        ("middle".to_owned(), words.pin_middle().to_owned()),
        ("end".to_owned(), words.pin_end().to_owned()),
    ]);
    let shapes = Signal::stored(
        [("", words.code_none()), ("square", words.code_square()), ("slim", words.code_slim())]
            .map(|(code, words)| (code.to_owned(), words.to_owned()))
            .to_vec(),
    );
    let no_card = move || rules.with(|rules| rules.sheet != "card");
    let figure = move |id: &'static str,
                       name: &'static str,
                       unit: &'static str,
                       read: fn(&RulesForm) -> &String,
                       put: fn(&mut RulesForm, String)| {
        let value = Signal::derive(move || rules.with(|rules| read(rules).clone()));
        view! {
            <label class="with-unit fit" for=id>
                <span class="unseen">{name}</span>
                <input class="line measure few" id=id inputmode="decimal" autocomplete="off" prop:value=value on:change=move |event| keep(put, typed(&event))/>
                <span>{unit}</span>
            </label>
        }
    };
    view! {
        <section class="part pin" aria-label=words.labels()>
            <Row of="s-sheet" name=words.sheet()>
                <Pick id="s-sheet" options=sheets chosen=Signal::derive(move || rules.with(|rules| rules.sheet.clone()))
                    choose=Callback::new(move |sheet| keep(|form, sheet| form.sheet = sheet, sheet))/>
            </Row>
            <Row name=words.label_size()>
                <div class="together">
                    {figure("s-wide", words.label_width(), "×", |rules| &rules.width, |rules, typed| rules.width = typed)}
                    {figure("s-high", words.label_height(), "mm", |rules| &rules.height, |rules, typed| rules.height = typed)}
                </div>
            </Row>
            <div hidden=no_card><Row name=words.card()>
                <div class="together">
                    {figure("s-card-wide", words.card_width(), "×", |rules| &rules.card_width, |rules, typed| rules.card_width = typed)}
                    {figure("s-card-high", words.card_height(), "mm", |rules| &rules.card_height, |rules, typed| rules.card_height = typed)}
                </div>
            </Row></div>
            <Row name=words.margin()>{figure("s-margin", words.margin(), "mm", |rules| &rules.margin, |rules, typed| rules.margin = typed)}</Row>
            <Row name=words.type_size()>
                <div class="together">
                    {figure("s-largest", words.type_largest(), "–", |rules| &rules.largest, |rules, typed| rules.largest = typed)}
                    {figure("s-least", words.type_least(), "pt", |rules| &rules.least, |rules, typed| rules.least = typed)}
                </div>
            </Row>
            <Row of="s-pin" name=words.pin_size()>
                <Pick id="s-pin" options=pins chosen=Signal::derive(move || rules.with(|rules| rules.pin.clone())) choose=choose(|form, pin| form.pin = pin)/>
            </Row>
            <Row name=words.pin_at()>
                <Chooser name="s-pin-at" legend=words.pin_at().to_owned() options=places
                    chosen=Signal::derive(move || rules.with(|rules| rules.pin_at.clone())) choose=choose(|form, at| form.pin_at = at)/>
                <p class="note">{words.pin_end_says()}</p>
            </Row>
            <Row name=words.code()>
                <Chooser name="s-code" legend=words.code().to_owned() options=shapes
                    chosen=Signal::derive(move || rules.with(|rules| rules.code.clone())) choose=choose(|form, code| form.code = code)/>
                <p class="note">{words.code_says()}</p>
            </Row>
            <LooseSizes rules keep=Callback::new(move |(at, width, high): (usize, Option<String>, Option<String>)| {
                let mut form = rules.get_untracked();
                if let Some((_, wide, tall)) = form.sizes.get_mut(at) {
                    width.into_iter().for_each(|typed| *wide = typed);
                    high.into_iter().for_each(|typed| *tall = typed);
                }
                save(form);
            })/>
            <Row name=words.heights()>
                <div class="together">
                    {figure("s-insect", words.height_insect(), words.height_insect(), |rules| &rules.heights[0], |rules, typed| rules.heights[0] = typed)}
                    {figure("s-first", words.height_first(), words.height_first(), |rules| &rules.heights[1], |rules, typed| rules.heights[1] = typed)}
                    {figure("s-second", words.height_second(), words.height_second(), |rules| &rules.heights[2], |rules, typed| rules.heights[2] = typed)}
                </div>
                <p class="note">{words.heights_says()}</p>
            </Row>
            <Row name=words.spares()>{figure("s-spares", words.spares(), words.spares_unit(), |rules| &rules.spares, |rules, typed| rules.spares = typed)}</Row>
            <Row name=words.radius()>
                {figure("s-radius", words.radius(), "m", |rules| &rules.radius_limit, |rules, typed| rules.radius_limit = typed)}
                <p class="note">{words.radius_says()}</p>
            </Row>
            <div role="status">{move || refused.get().into_iter().map(|why| view! { <p class="mark fault">{why}</p> }).collect_view()}</div>
        </section>
    }
    .into_any()
}

/// The sizes of labels that lie loose, by kind.
#[component]
fn LooseSizes(
    /// The rules as typed.
    rules: Signal<RulesForm>,
    /// Called with the place of a kind, and its width or height as typed.
    keep: Callback<(usize, Option<String>, Option<String>)>,
) -> impl IntoView {
    let words = say().setup;
    let count = rules.with_untracked(|rules| rules.sizes.len());
    let row = move |at: usize| {
        let name =
            rules.with_untracked(|rules| rules.sizes.get(at).map(|(kind, ..)| kind_name(*kind))).unwrap_or_default();
        let read = move |high: bool| {
            rules.with(|rules| rules.sizes.get(at).map(|(_, wide, tall)| if high { tall } else { wide }.clone()))
        };
        let (wide, tall) = (words.loose_width(&name), words.loose_height(&name));
        view! {
            <Row name=name.clone()>
                <div class="together">
                    <label class="with-unit fit">
                        <input class="line measure few" inputmode="decimal" autocomplete="off" aria-label=wide prop:value=move || read(false)
                            on:change=move |event| keep.run((at, Some(typed(&event)), None))/>
                        <span>"×"</span>
                    </label>
                    <label class="with-unit fit">
                        <input class="line measure few" inputmode="decimal" autocomplete="off" aria-label=tall prop:value=move || read(true)
                            on:change=move |event| keep.run((at, None, Some(typed(&event))))/>
                        <span>"mm"</span>
                    </label>
                </div>
            </Row>
        }
    };
    view! { <More words=words.loose_sizes()>{(0..count).map(row).collect_view()}</More> }.into_any()
}
