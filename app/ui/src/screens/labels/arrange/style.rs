//! How dates are written, and a person's own abbreviations.

use super::Editing;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Chooser, Line, More, Options, Row};
use leptos::prelude::*;
use logbook::labels::{Arrangement, DASHES, JOINTS, MONTHS, date_examples};

/// Month, joints and dashes, each with an example.
#[component]
pub fn Dates(editing: Editing) -> impl IntoView {
    let words = say().labels;
    let chooser = move |name: &'static str, legend: &'static str, codes: Vec<&'static str>, choice: Choosing| {
        view! { <Style editing name legend codes choice/> }
    };
    view! {
        <section class="part" aria-labelledby="dates">
            <h2 id="dates">{words.dates()}</h2>
            {chooser("month", words.month(), codes(&MONTHS), Choosing {
                code: |that| code(&MONTHS, that.month), choose: |that, code| that.month = value(&MONTHS, code), of_two: false })}
            {chooser("joint", words.joint(), codes(&JOINTS), Choosing {
                code: |that| code(&JOINTS, that.joint), choose: |that, code| that.joint = value(&JOINTS, code), of_two: false })}
            {chooser("dash", words.dash(), codes(&DASHES), Choosing {
                code: |that| code(&DASHES, that.dash), choose: |that, code| that.dash = value(&DASHES, code), of_two: true })}
        </section>
    }
    .into_any()
}

/// One thing to choose of the style of dates.
#[derive(Clone, Copy)]
struct Choosing {
    code: fn(&Arrangement) -> &'static str,
    choose: fn(&mut Arrangement, &str),
    /// The example has two days.
    of_two: bool,
}

#[component]
fn Style(
    editing: Editing,
    name: &'static str,
    legend: &'static str,
    codes: Vec<&'static str>,
    choice: Choosing,
) -> impl IntoView {
    let page = use_page();
    let options = narrowed(move || -> Options {
        editing.that.with(|that| {
            let example = |code: &&'static str| {
                let mut arrangement = that.arrangement.clone();
                (choice.choose)(&mut arrangement, code);
                let (one, two) = date_examples(&arrangement);
                ((*code).to_owned(), if choice.of_two { two } else { one })
            };
            codes.iter().map(example).collect()
        })
    });
    let chosen = Signal::derive(move || editing.that.with(|that| (choice.code)(&that.arrangement).to_owned()));
    let choose = Callback::new(move |code: String| {
        editing.change(page, |that| (choice.choose)(&mut that.arrangement, &code));
    });
    view! { <p class="note" aria-hidden="true">{legend}</p><Chooser name legend=legend.to_owned() options chosen choose/> }.into_any()
}

fn codes<T>(table: &[(&'static str, T)]) -> Vec<&'static str> {
    table.iter().map(|(code, _)| *code).collect()
}

fn code<T: PartialEq>(table: &[(&'static str, T)], value: T) -> &'static str {
    table.iter().find(|(_, known)| *known == value).map_or("", |(code, _)| code)
}

fn value<T: Copy + Default>(table: &[(&'static str, T)], code: &str) -> T {
    table.iter().find(|(known, _)| *known == code).map(|(_, value)| *value).unwrap_or_default()
}

/// Words of the book, and what stands for them on the label.
#[component]
pub fn Abbreviations(editing: Editing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let known = narrowed(move || {
        editing.that.with(|that| that.arrangement.abbreviations.clone().into_iter().collect::<Vec<(String, String)>>())
    });
    let (full, short) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let line = move |(text, short): (String, String)| {
        let named = words.take_abbreviation_out(&text);
        let gone = text.clone();
        let out = move |_| editing.change(page, |that| drop(that.arrangement.abbreviations.remove(&gone)));
        view! {
            <li class="together"><span class="ink">{text}" → "{short}</span>
                <button class="button quiet fit" type="button" aria-label=named on:click=out>{words.out_word()}</button></li>
        }
    };
    let add = move |_| {
        let text = full.get_untracked().split_whitespace().collect::<Vec<_>>().join(" ");
        let stands = short.get_untracked().trim().to_owned();
        editing.change(page, |that| drop(that.arrangement.abbreviations.insert(text, stands)));
        full.set(String::new());
        short.set(String::new());
    };
    view! {
        <section class="part">
            <More words=words.abbreviations() open={known.with_untracked(|known| !known.is_empty())}>
                <p class="note">{words.abbreviations_says()}</p>
                <ul>{move || known.get().into_iter().map(line).collect_view()}</ul>
                <div class="pin">
                    <Row of="ab-full" name=words.abbreviated()><Line id="ab-full" value=full change=Callback::new(move |typed| full.set(typed))/></Row>
                    <Row of="ab-short" name=words.short()><Line id="ab-short" value=short change=Callback::new(move |typed| short.set(typed))/></Row>
                </div>
                <div class="commands"><button class="button" type="button" disabled=move || full.with(|full| full.trim().is_empty()) on:click=add>{words.add_abbreviation()}</button></div>
            </More>
        </section>
    }
    .into_any()
}
