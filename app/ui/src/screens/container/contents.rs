use super::VialDraft;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Chooser, Line, Offer, Offers, Options, Pick, Stepper};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::{ContainerForm, ContentForm};
use phrases::groups;

/// What is in a container that is being typed, in words.
#[component]
pub fn FormContents(container: ContainerForm) -> impl IntoView {
    let lines: Vec<ContentForm> = container.contents.into_iter().filter(|line| !line.group.trim().is_empty()).collect();
    if lines.is_empty() {
        return view! { {say().container.nothing_in_it()} }.into_any();
    }
    let groups: Vec<String> = lines.iter().map(|line| group_words(&line.group, &line.sex, &line.stage)).collect();
    let counts: Vec<String> =
        lines.iter().map(|line| say().codes.counted(&line.count_kind, line.count.trim())).collect();
    view! { {groups.join(", ")}<br/><span class="note">{counts.join(", ")}</span> }.into_any()
}

/// A group with its sex and stage: `Hover flies ♀`, `Hover flies, larvae`.
pub fn group_words(group: &str, sex: &str, stage: &str) -> String {
    let sex = if sex.is_empty() { String::new() } else { format!(" {}", say().codes.sex_sign(sex)) };
    let stage =
        if stage.is_empty() || stage == "adult" { String::new() } else { format!(", {}", say().codes.stages(stage)) };
    format!("{group}{sex}{stage}")
}

/// Contents of a saved container in words, and below them the counts.
#[component]
pub fn ContentWords(contents: Vec<logbook::view::ContentView>) -> impl IntoView {
    let words: Vec<String> = contents.iter().map(|line| group_words(&line.group, &line.sex, &line.stage)).collect();
    if words.is_empty() { say().container.nothing_in_it().into_any() } else { words.join(", ").into_any() }
}

/// The counts of a saved container in words.
pub fn count_words(contents: &[logbook::view::ContentView]) -> String {
    let count = |line: &logbook::view::ContentView| line.count.map(|count| count.to_string()).unwrap_or_default();
    contents.iter().map(|line| say().codes.counted(&line.count_kind, &count(line))).collect::<Vec<_>>().join(", ")
}

/// The contents lines of a container.
#[component]
pub fn Contents(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    if draft.form.with_untracked(|form| form.contents.is_empty()) {
        draft.change_unkept(|form| form.contents.push(new_line()));
    }
    let count = draft.part(|form| form.contents.len());
    let span = draft.part(|form| {
        !form.last.trim().is_empty() || form.first.is_empty() && form.unnumbered.trim().parse().unwrap_or(1) > 1
    });
    let add = move |_| draft.change(|form| form.contents.push(new_line()));
    let lines = move || (0..count.get()).map(|at| view! { <ContentLine draft at span/> }).collect_view();
    view! {
        <section class="part" aria-labelledby="contents">
            <div class="part-head">
                <h2 id="contents">{move || if span.get() { words.in_each() } else { words.in_it() }}</h2>
                <button class="button quiet" type="button" on:click=add>{words.add_line()}</button>
            </div>
            {lines}
        </section>
    }
    .into_any()
}

fn new_line() -> ContentForm {
    ContentForm { count_kind: "uncounted".into(), ..ContentForm::default() }
}

/// One line of contents: group, count and its kind; sex and stage beside.
#[component]
fn ContentLine(draft: VialDraft, at: usize, span: Signal<bool>) -> impl IntoView {
    let words = say().container;
    let line = draft.part(move |form| form.contents.get(at).cloned().unwrap_or_default());
    let on = move |write: fn(&mut ContentForm, String)| {
        draft.on(move |form: &mut ContainerForm, text: String| {
            if let Some(line) = form.contents.get_mut(at) {
                write(line, text);
            }
        })
    };
    let part = move |part: fn(&ContentForm) -> String| Signal::derive(move || line.with(part));
    let count = on(|line, text| {
        if line.count_kind == "uncounted" {
            line.count_kind = "exact".into();
        }
        line.count = text;
    });
    let kind = on(|line, code| {
        if code == "uncounted" {
            line.count.clear();
        }
        line.count_kind = code;
    });
    let several = draft.part(|form| form.contents.len() > 1);
    let drop_line = move |_| draft.change(|form| drop(form.contents.remove(at)));
    let group = part(|line| line.group.clone());
    view! {
        <div class="content-line" role="group" aria-label=move || words.count_is(&group.get())>
            <GroupField draft at/>
            <div class="together">
                <Pick id=id(at, ["sex-0", "sex-1", "sex-2", "sex-3", "sex-4", "sex-5"]) name=words.sex() options=Signal::stored(sexes())
                    chosen=part(|line| line.sex.clone()) choose=on(|line, code| line.sex = code)/>
                <Pick id=id(at, ["stage-0", "stage-1", "stage-2", "stage-3", "stage-4", "stage-5"]) name=words.stage() options=Signal::stored(stages())
                    chosen=part(|line| line.stage.clone()) choose=on(|line, code| line.stage = code)/>
            </div>
            <div hidden=span>
                <Chooser name=id(at, ["count-0", "count-1", "count-2", "count-3", "count-4", "count-5"])
                    legend=Signal::derive(move || words.count_is(&group.get())) class="pairs" options=Signal::stored(counts())
                    chosen=part(|line| line.count_kind.clone()) choose=kind/>
                <div class="proof-line" hidden=move || line.with(|line| line.count_kind == "uncounted")>
                    <span class="ink">{group}</span>
                    <Stepper name=group value=part(|line| line.count.clone()) change=count/>
                </div>
            </div>
            <button class="button quiet" type="button" hidden=move || !several.get() on:click=drop_line>{move || words.drop_line(&group.get())}</button>
        </div>
    }
    .into_any()
}

/// Ids of the same field in different lines; lines beyond the sixth share the last, which only weakens their labels.
fn id(at: usize, ids: [&'static str; 6]) -> &'static str {
    ids[at.min(5)]
}

/// The group as typed, completed from what was caught lately and from the list of orders and families.
#[component]
fn GroupField(draft: VialDraft, at: usize) -> impl IntoView {
    let page = use_page();
    let words = say().container;
    let text = draft.part(move |form| form.contents.get(at).map(|line| line.group.clone()).unwrap_or_default());
    let write = draft.on(move |form: &mut ContainerForm, text: String| {
        if let Some(line) = form.contents.get_mut(at) {
            line.group_code = groups::code_of(say_groups(), &text).unwrap_or_default().to_owned();
            line.group = text;
        }
    });
    let lately = page.logbook.with_untracked(|logbook| logbook.groups_lately());
    let lately = StoredValue::new(lately);
    let offers = narrowed(move || {
        let typed = text.get();
        lately.with_value(|lately| completions(&typed, lately))
    });
    let id = id(at, ["group-0", "group-1", "group-2", "group-3", "group-4", "group-5"]);
    view! {
        <label class="note" for=id>{words.group()}</label>
        <Line id capitals="sentences" value=text change=write/>
        <Offers name=words.groups_offered() offers take=Callback::new(move |offer: Offer| write.run(offer.words))/>
    }
    .into_any()
}

fn say_groups() -> &'static [groups::Group] {
    say().groups
}

/// Empty: what was caught lately. Typed: what begins so, lately first, then of the list.
fn completions(typed: &str, lately: &[logbook::offers::OfferedGroup]) -> Vec<Offer> {
    let wanted = typed.trim().to_lowercase();
    let fits = |name: &str| name.to_lowercase().starts_with(&wanted) && name.to_lowercase() != wanted;
    let mut offers: Vec<Offer> = Vec::new();
    let known = lately.iter().map(|group| group.text.clone());
    let listed = groups::completions(say_groups(), typed, 8).into_iter().map(|(name, _)| name.to_owned());
    for words in known
        .chain(listed)
        .filter(|name| fits(name) || (!wanted.is_empty() && name.to_lowercase().contains(&format!(" {wanted}"))))
    {
        if offers.len() < 6 && !offers.iter().any(|offer| offer.words.eq_ignore_ascii_case(&words)) {
            offers.push(Offer { code: words.clone(), words, ..Offer::default() });
        }
    }
    offers
}

fn sexes() -> Options {
    let none = (String::new(), say().container.sex_none().to_owned());
    std::iter::once(none).chain(codes::SEXES.iter().map(|code| ((*code).to_owned(), say().codes.sex(code)))).collect()
}

fn stages() -> Options {
    let none = (String::new(), say().container.stage_none().to_owned());
    std::iter::once(none)
        .chain(codes::STAGES.iter().map(|code| ((*code).to_owned(), say().codes.stage(code))))
        .collect()
}

/// The kinds of count.
pub fn counts() -> Options {
    codes::COUNTS.iter().map(|code| ((*code).to_owned(), say().codes.count_kind(code))).collect()
}
