//! The questions before the first catch: at most two, both can wait.

use crate::context::{Context, say, use_page};
use crate::frame::Page;
use crate::parts::{How, Mark, Sign};
use crate::route::{Route, Screen};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::book::Book;
use logbook::setup::FirstRun;
use ports::device::Platform;

/// Before the first catch.
#[component]
pub fn First() -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let asks = page.logbook.with_untracked(|logbook| logbook.first_run(year(page)));
    let name = RwSignal::new(asks.as_ref().map(|asks| asks.name.clone()).unwrap_or_default());
    let habit = RwSignal::new(
        asks.as_ref().map(|asks| asks.habit.clone()).filter(|habit| !habit.is_empty()).unwrap_or_else(|| "one".into()),
    );
    let submit = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        begin(page, name.get_untracked(), habit.get_untracked());
    };
    let device = page.ports().device;
    let install = device.platform() == Platform::Ios && !device.installed();
    view! {
        <Page title=words.title() form=true bar=move || view! { <Bar/> }>
            <header class="head"><h1>{words.title()}</h1><p class="note">{words.note()}</p></header>
            <How screen="first" says=vec![words.how_1(), words.how_2()]/>
            <form class="columns two" id="first" autocomplete="off" novalidate on:submit=submit>
                <div class="column">
                    {install.then(|| view! { <Install/> })}
                    <section class="part">
                        <h2><label for="me">{words.name()}</label></h2>
                        <input class="line" id="me" autocapitalize="words" {..leptos::attr::custom::custom_attribute("autocorrect", "off")} spellcheck="false" autocomplete="name"
                            prop:value=name on:input=move |event| name.set(event_target_value(&event))/>
                        <p class="note">{words.name_field()}</p>
                    </section>
                </div>
                <div class="column"><Habits asks name habit/><Keeping/></div>
            </form>
        </Page>
    }
    .into_any()
}

fn year(page: Context) -> i32 {
    use chrono::Datelike;
    logbook::moment::today(page.moment()).year()
}

/// Both answers are kept, then the form of the first catch opens. An empty name waits.
fn begin(page: Context, name: String, habit: String) {
    let year = year(page);
    let settled =
        if name.trim().is_empty() { None } else { page.make(|logbook, _, ids| logbook.name_oneself(&name, ids)).ok() };
    page.settle(settled, move || {
        let settled = page.make(|logbook, _, ids| logbook.set_habit(&habit, year, ids));
        page.settle(Some(settled), move || go_on(page));
    });
}

fn go_on(page: Context) {
    page.asked();
    page.done.set(None);
    page.go(Screen::NewCatch);
}

#[component]
fn Bar() -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let sample = Route { book: Book::Sample, screen: Screen::Start }.hash();
    view! {
        <div class="bar">
            <a class="button quiet" href=sample>{say().start.load_sample()}</a>
            <button class="button quiet" type="button" on:click=move |_| go_on(page)>{words.can_wait()}</button>
            <button class="button main" type="submit" form="first" data-key="ctrl+enter">{words.begin()}" "<kbd class="key">"Ctrl ⏎"</kbd></button>
        </div>
    }
    .into_any()
}

/// On an iPhone: installed first, because what a tab holds does not move into the installed app.
#[component]
fn Install() -> impl IntoView {
    let words = say().first;
    view! {
        <section class="part" aria-labelledby="install">
            <h2 id="install">{words.install()}</h2>
            <p>{words.install_says()}</p>
            <details class="more">
                <summary><span>{words.install_show()}</span></summary>
                <ol class="stack"><li>{words.install_step_1()}</li><li>{words.install_step_2()}</li><li>{words.install_step_3()}</li></ol>
            </details>
        </section>
    }
    .into_any()
}

/// How one numbers, with examples that carry the name just typed.
#[component]
fn Habits(asks: Option<FirstRun>, name: RwSignal<String>, habit: RwSignal<String>) -> impl IntoView {
    let page = use_page();
    let year = year(page);
    let examples = move |code: &'static str| {
        move || {
            let said = logbook::setup::examples(code, &name.get(), year).join(", ");
            if said.is_empty() { say().first.habit_none().to_owned() } else { said }
        }
    };
    let choice = move |code: &'static str| {
        view! {
            <label class="candidate">
                <input type="radio" name="habit" prop:checked=move || habit.with(|habit| habit == code) on:change=move |_| habit.set(code.into())/>
                <span><span class="top">{say().codes.habit(code)}</span><span class="measure note">{examples(code)}</span></span>
            </label>
        }
    };
    let second = asks.is_some_and(|asks| asks.second);
    view! {
        <fieldset class="part">
            <legend><h2>{say().first.habits()}</h2></legend>
            {second.then(|| view! { <p><a href=page.to(Screen::Habit)>{say().first.own_title()}</a></p> })}
            {logbook::codes::HABITS.into_iter().map(choice).collect_view()}
        </fieldset>
    }
    .into_any()
}

/// Whether the browser promised to keep what is logged. The promise is asked for by a tap and never waited for.
#[component]
fn Keeping() -> impl IntoView {
    let page = use_page();
    let words = say().first;
    let promised = RwSignal::new(None::<Option<bool>>);
    spawn_local(async move {
        let storage = page.ports().device.storage().await;
        let _ = promised.try_set(Some(storage.promised));
    });
    let ask = move |_| {
        spawn_local(async move {
            let answer = page.ports().device.ask_promise().await;
            let _ = promised.try_set(Some(answer));
        });
    };
    let says = move || match promised.get() {
        None => ().into_any(),
        Some(Some(true)) => view! { <p><Mark sign=Sign::Tick words=words.promised()/></p> }.into_any(),
        Some(answer) => {
            let sentence = if answer.is_some() { words.not_promised() } else { words.not_said() };
            view! { <p>{sentence}</p><button class="button quiet" type="button" on:click=ask>{words.ask_promise()}</button> }.into_any()
        }
    };
    view! {
        <section class="part" aria-labelledby="keep">
            <h2 id="keep">{words.storage()}</h2>
            <div role="status">{says}</div>
            <p class="note">{words.no_backup()}</p>
        </section>
    }
    .into_any()
}
