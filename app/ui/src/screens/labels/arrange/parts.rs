//! The parts of a label, line by line, with the words around them.

use super::Editing;
use crate::context::{Context, say, use_page};
use crate::jump;
use crate::narrow::narrowed;
use crate::parts::{Check, Line, More, Pick, Row};
use leptos::prelude::*;
use logbook::labels::{At, Item, PARTS, Part, part_code};

/// The lines, and what can be added.
#[component]
pub fn PartLines(editing: Editing) -> impl IntoView {
    let words = say().labels;
    let structure = narrowed(move || {
        let part = |item: &Item| item.part;
        let lines = |lines: &Vec<Vec<Item>>| {
            lines.iter().map(|line| line.iter().map(part).collect()).collect::<Vec<Vec<Part>>>()
        };
        editing.that.with(|that| lines(&that.arrangement.lines))
    });
    let line = move |(line, parts): (usize, Vec<Part>)| {
        let item = move |(item, part): (usize, Part)| view! { <PartRow editing at=At { line, item } part/> };
        view! { <li><ul>{parts.into_iter().enumerate().map(item).collect_view()}</ul></li> }
    };
    let lines = move || structure.get().into_iter().enumerate().map(line).collect_view();
    view! {
        <section class="part" aria-labelledby="parts">
            <h2 id="parts">{words.arrange()}</h2>
            <ol class="label-lines">{lines}</ol>
            <AddPart editing/>
        </section>
    }
    .into_any()
}

fn id_of(at: At, what: &str) -> String {
    format!("part-{}-{}-{what}", at.line, at.item)
}

/// Moves a part and lets the focus go with it.
fn moved(
    page: Context,
    editing: Editing,
    what: &'static str,
    change: impl FnOnce(&mut logbook::labels::Arrangement) -> At,
) {
    let mut now = None;
    editing.change(page, |that| now = Some(change(&mut that.arrangement)));
    if let Some(at) = now {
        request_animation_frame(move || jump::focus_still(&id_of(at, what)));
    }
}

#[component]
fn PartRow(editing: Editing, at: At, part: Part) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let name = words.part(&part_code(part));
    let earlier = move |_| moved(page, editing, "earlier", |arrangement| arrangement.earlier(at));
    let later = move |_| moved(page, editing, "later", |arrangement| arrangement.later(at));
    let new_line = move |_| {
        moved(page, editing, "join", |arrangement| {
            arrangement.break_before(at);
            At { line: at.line + 1, item: 0 }
        });
    };
    let join = move |_| {
        let before =
            editing.that.with_untracked(|that| that.arrangement.lines.get(at.line.wrapping_sub(1)).map(Vec::len));
        moved(page, editing, "new-line", |arrangement| {
            arrangement.join_to_previous(at.line);
            At { line: at.line.saturating_sub(1), item: before.unwrap_or(0) }
        });
    };
    let out = move |_| {
        moved(page, editing, "earlier", |arrangement| {
            arrangement.remove(at);
            At { item: at.item.saturating_sub(1), ..at }
        });
    };
    let break_or_join = if at.item > 0 {
        view! { <button class="button quiet" type="button" id=id_of(at, "new-line") aria-label=words.break_before(&name) on:click=new_line>{words.new_line_word()}</button> }.into_any()
    } else {
        view! { <button class="button quiet" type="button" id=id_of(at, "join") aria-label=words.join_line(&name) disabled=at.line == 0 on:click=join>{words.join_word()}</button> }.into_any()
    };
    let named = name.clone();
    view! {
        <li class="label-part">
            <span class="name">{name.clone()}</span>
            <div class="commands">
                <button class="button quiet" type="button" id=id_of(at, "earlier") aria-label=words.earlier(&name) on:click=earlier>{words.earlier_word()}</button>
                <button class="button quiet" type="button" id=id_of(at, "later") aria-label=words.later(&name) on:click=later>{words.later_word()}</button>
                {break_or_join}
                <button class="button quiet" type="button" aria-label=words.take_part_out(&name) on:click=out>{words.out_word()}</button>
            </div>
            <More words=words.words_word()><WordsOf editing at named/></More>
        </li>
    }
    .into_any()
}

/// The words before and after a part, and what stands between it and the next.
#[component]
fn WordsOf(editing: Editing, at: At, named: String) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let item = move || editing.that.with(|that| that.arrangement.lines.get(at.line)?.get(at.item).cloned());
    let read = move |read: fn(&Item) -> &String| {
        Signal::derive(move || item().map(|item| read(&item).clone()).unwrap_or_default())
    };
    let write = move |write: fn(&mut Item, String)| {
        Callback::new(move |typed: String| {
            editing.change(page, |that| {
                if let Some(item) = that.arrangement.item_mut(at) {
                    write(item, typed);
                }
            });
        })
    };
    let capitals = Signal::derive(move || item().is_some_and(|item| item.capitals));
    let set_capitals = Callback::new(move |ticked: bool| {
        editing.change(page, |that| {
            if let Some(item) = that.arrangement.item_mut(at) {
                item.capitals = ticked;
            }
        });
    });
    view! {
        <label class="with-unit"><span>{words.before_word()}</span>
            <Line id="" named=words.part_before(&named) value=read(|item| &item.before) change=write(|item, typed| item.before = typed)/></label>
        <label class="with-unit"><span>{words.after_word()}</span>
            <Line id="" named=words.part_after(&named) value=read(|item| &item.after) change=write(|item, typed| item.after = typed)/></label>
        <label class="with-unit"><span>{words.then_word()}</span>
            <Line id="" named=words.part_then(&named) value=read(|item| &item.then) change=write(|item, typed| item.then = typed)/></label>
        <Check ticked=capitals change=set_capitals>{words.capitals()}</Check>
    }
    .into_any()
}

#[component]
fn AddPart(editing: Editing) -> impl IntoView {
    let page = use_page();
    let words = say().labels;
    let options = PARTS.map(|part| (part_code(part), words.part(&part_code(part)))).to_vec();
    let chosen = RwSignal::new(part_code(Part::Habitat));
    let add = move |_| {
        let part = PARTS.into_iter().find(|part| chosen.with_untracked(|chosen| part_code(*part) == *chosen));
        let Some(part) = part else { return };
        editing.change(page, |that| {
            let line = that.arrangement.lines.len();
            that.arrangement.insert(At { line, item: 0 }, Item::new(part));
        });
    };
    view! {
        <div class="pin"><Row of="add-part" name=words.add_part()>
            <div class="together">
                <Pick id="add-part" options=Signal::stored(options) chosen choose=Callback::new(move |code| chosen.set(code))/>
                <button class="button fit" type="button" on:click=add>{words.add_it()}</button>
            </div>
        </Row></div>
    }
    .into_any()
}
