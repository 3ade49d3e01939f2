use super::VialDraft;
use crate::context::say;
use crate::parts::{Line, Options, Pick};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::{ContainerForm, LinkForm};

/// A pair, prey of, from the same nest.
#[component]
pub fn Links(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    let count = draft.part(|form| form.links.len());
    let add = move |_: web_sys::MouseEvent| {
        draft.change(|form| {
            form.links.push(LinkForm { line: None, number: String::new(), relation: codes::LINKS[0].to_owned() })
        });
    };
    view! {
        <div role="group" aria-label=words.links()>
            {move || (0..count.get().min(IDS.len())).map(|at| view! { <LinkLine draft at/> }).collect_view()}
            <button class="button quiet" type="button" hidden={move || IDS.len() <= count.get()} on:click=add>{words.link_add()}</button>
        </div>
    }
    .into_any()
}

/// Ids of the lines: the relation and the number.
const IDS: [(&str, &str); 4] = [("link-0", "to-0"), ("link-1", "to-1"), ("link-2", "to-2"), ("link-3", "to-3")];

#[component]
fn LinkLine(draft: VialDraft, at: usize) -> impl IntoView {
    let words = say().container;
    let (relation_id, number_id) = IDS[at];
    let part =
        move |part: fn(&LinkForm) -> String| draft.part(move |form| form.links.get(at).map(part).unwrap_or_default());
    let on = move |write: fn(&mut LinkForm, String)| {
        draft.on(move |form: &mut ContainerForm, text: String| {
            if let Some(link) = form.links.get_mut(at) {
                write(link, text);
            }
        })
    };
    let options: Options = codes::LINKS.iter().map(|code| ((*code).to_owned(), say().codes.link(code))).collect();
    let number = part(|link| link.number.clone());
    view! {
        <div class="together">
            <Pick id=relation_id name=words.link_how() options=Signal::stored(options) chosen=part(|link| link.relation.clone())
                choose=on(|link, code| link.relation = code)/>
            <Line id=number_id class="measure" named=words.link_number() hint=words.link_number() capitals="characters" value=number
                change=on(|link, text| link.number = text)/>
            <button class="button quiet fit" type="button" on:click=move |_| draft.change(|form| drop(form.links.remove(at)))>
                {move || words.link_drop(&number.get())}
            </button>
        </div>
    }
    .into_any()
}
