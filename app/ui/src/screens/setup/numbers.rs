//! How this device numbers: typed as a whole, with the next number shown, kept by a command.

use super::{part, year};
use crate::context::{say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Line, More, Pick, PlateView, Row, WithUnit, field};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::setup::{NumberingForm, SetupView};
use logbook::view::Next;

/// Habit, prefix, digits, letter and range.
#[component]
pub fn Numbers(view: Memo<SetupView>) -> impl IntoView {
    let page = use_page();
    let words = say().setup;
    let kept = part(view, |view| view.numbering.clone());
    let form = RwSignal::new(kept.get_untracked());
    let refused = RwSignal::new(Vec::<String>::new());
    Effect::new(move |_| form.set(kept.get()));
    let changed = move || form.with(|form| kept.with(|kept| form != kept));
    let next = narrowed(move || page.logbook.with(|logbook| form.with(|form| logbook.preview(form))));
    let read = move |of: fn(&NumberingForm) -> &String| field::read(form, of);
    let write = move |of: fn(&mut NumberingForm, String)| field::write(form, of);
    let habits = Signal::derive(move || {
        let unsaid = kept.with(|kept| kept.habit.is_empty()).then(|| (String::new(), words.habit_none().to_owned()));
        let said = logbook::codes::HABITS.iter().map(|code| ((*code).to_owned(), say().codes.habit(code)));
        unsaid.into_iter().chain(said).collect::<Vec<_>>()
    });
    let choose_habit = Callback::new(move |habit: String| {
        let settled = page.make(|logbook, _, ids| logbook.set_habit(&habit, year(page), ids));
        page.settle(Some(settled), || {});
    });
    let keep = move |_| match page.make(|logbook, _, ids| form.with_untracked(|form| logbook.set_numbering(form, ids)))
    {
        Ok(settled) => {
            refused.set(Vec::new());
            page.settle(Some(settled), || {});
        }
        Err(why) => refused.set(why.iter().map(explain::refused).collect()),
    };
    let proposes = move || form.with(|form| matches!(form.habit.as_str(), "one" | "letters" | ""));
    let faults = move || refused.get().into_iter().map(|why| view! { <p class="mark fault">{why}</p> }).collect_view();
    let second = part(view, |view| view.second.as_ref().map(|second| second.person.clone()));
    view! {
        <section class="part pin" aria-label=words.numbers()>
            {move || second.get().map(|person| view! {
                <Row name=words.numbers()><p class="caution">{words.second(&person)}</p><a class="button quiet" href=page.to(Screen::Habit)>{words.second_do()}</a></Row>
            })}
            <Row of="s-habit" name=words.habit()>
                <Pick id="s-habit" options=habits chosen=read(|form| &form.habit) choose=choose_habit/>
            </Row>
            <div hidden=move || !proposes()>
                <Row of="s-prefix" name=words.prefix()>
                    <Line id="s-prefix" class="measure" capitals="characters" value=read(|form| &form.prefix) change=write(|form, typed| form.prefix = typed)/>
                </Row>
                <Row name=words.width()>
                    <WithUnit id="s-width" name=words.width() unit=words.width_unit() figure="few" value=read(|form| &form.width) change=write(|form, typed| form.width = typed)/>
                </Row>
<More words=words.own_numbers()>
                <Row of="s-letter" name=words.letter()>
                    <Line id="s-letter" class="measure few" capitals="characters" value=read(|form| &form.letter) change=write(|form, typed| form.letter = typed)/>
                </Row>
                <Row name=words.range()>
                    <div class="together range">
                        <WithUnit id="s-from" name=words.range() unit=words.range_to() figure="few" value=read(|form| &form.from) change=write(|form, typed| form.from = typed)/>
                        <WithUnit id="s-to" name=words.range_to() unit="" figure="few" value=read(|form| &form.to) change=write(|form, typed| form.to = typed)/>
                    </div>
                </Row>
</More>
            </div>
            <Row name=words.next()>{move || next_view(next.get())}</Row>
            <div class="row" hidden=move || !changed()><span></span><div class="row-value">
                {faults}
                <p class="note">{words.numbers_new()}</p>
                <button class="button" type="button" on:click=keep>{words.keep_numbers()}</button>
            </div></div>
        </section>
    }
    .into_any()
}

fn next_view(next: Next) -> AnyView {
    let words = say().setup;
    match next {
        Next::Number(plate) => view! { <PlateView plate/> }.into_any(),
        Next::None | Next::Unasked => view! { <p class="note">{words.next_none()}</p> }.into_any(),
        Next::RangeFull => view! { <p class="note">{words.next_full()}</p> }.into_any(),
    }
}
