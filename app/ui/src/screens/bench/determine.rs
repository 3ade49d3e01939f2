//! What the catch in the hand was determined as, and the form of one more determination.

use super::proofs::Copies;
use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::{Chooser, Line, More, Row, field};
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::{DeterminationForm, DeterminationView};
use logbook::labels::{LabelKind, Which};

/// Determinations, the newest last, and the form.
#[component]
pub fn DeterminedAs(id: Id, copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let known = narrowed(move || page.logbook.with(|logbook| logbook.determinations(id)));
    let line = |view: DeterminationView| {
        let says = words_of(&view);
        let run = |run: ports::press::Run| {
            if run.italic { view! { <i>{run.text}</i> }.into_any() } else { run.text.into_any() }
        };
        let name = view.name.into_iter().map(run).collect_view();
        view! { <li><span class="ink">{name}" "{view.author}</span>" "<span class="note">{says}</span></li> }
    };
    view! {
        <section class="part" aria-labelledby="determined">
            <h2 id="determined">{words.determined()}</h2>
            <ul class="determined">{move || known.get().into_iter().map(line).collect_view()}</ul>
            <More words=words.determine()><Form id copies/></More>
        </section>
    }
    .into_any()
}

fn words_of(view: &DeterminationView) -> String {
    say().bench.determined_as(&view.by, &view.year)
}

#[component]
fn Form(id: Id, copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let fresh = move || page.logbook.with_untracked(|logbook| logbook.new_determination(page.moment()));
    let form = RwSignal::new(fresh());
    let read = move |of: fn(&DeterminationForm) -> &String| field::read(form, of);
    let write = move |of: fn(&mut DeterminationForm, String)| field::write(form, of);
    let doubts = Signal::stored(
        std::iter::once((String::new(), words.no_doubt().to_owned()))
            .chain(logbook::codes::QUALIFIERS.map(|code| (code.to_owned(), code.to_owned())))
            .collect::<Vec<_>>(),
    );
    let add = move |_| {
        let deed = page.make(|logbook, _, ids| logbook.determine(id, &form.get_untracked(), ids));
        let Some(deed) = deed else { return };
        page.save(deed, move |_| {
            form.set(fresh());
            let newest = page.logbook.with_untracked(|logbook| {
                let which = logbook.labels_of(id).into_iter().find(|which| which.kind == LabelKind::Determination);
                which.map(|which: Which| (which, logbook.insects(id).at_least))
            });
            if let Some((which, insects)) = newest {
                copies.set(page, which, insects);
            }
        });
    };
    let nothing = move || form.with(|form| form.name.trim().is_empty());
    view! {
        <div class="pin">
            <Row of="d-name" name=words.determined_name()>
                <Line id="d-name" capitals="sentences" value=read(|form| &form.name) change=write(|form, typed| form.name = typed)/>
            </Row>
            <Row name=words.determined_doubt()>
                <Chooser name="d-doubt" legend=words.determined_doubt().to_owned() options=doubts chosen=read(|form| &form.qualifier)
                    choose=write(|form, typed| form.qualifier = typed)/>
            </Row>
            <Row of="d-author" name=words.determined_author()>
                <Line id="d-author" capitals="words" value=read(|form| &form.author) change=write(|form, typed| form.author = typed)/>
            </Row>
            <Row of="d-by" name=words.determined_by()>
                <Line id="d-by" capitals="words" value=read(|form| &form.by) change=write(|form, typed| form.by = typed)/>
            </Row>
            <Row of="d-year" name=words.determined_year()>
                <Line id="d-year" class="measure" mode="numeric" value=read(|form| &form.year) change=write(|form, typed| form.year = typed)/>
            </Row>
        </div>
        <p class="note">{words.determine_says()}</p>
        <div class="commands"><button class="button" type="button" disabled=nothing on:click=add>{words.add_determination()}</button></div>
    }
    .into_any()
}
