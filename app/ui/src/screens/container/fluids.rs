use super::VialDraft;
use crate::context::say;
use crate::parts::{Caution, Line, Options, Pick, WithUnit};
use leptos::prelude::*;
use logbook::codes;
use logbook::form::{ContainerForm, FluidForm};

/// Stands for one's own words.
const OWN: &str = "other";

/// How it was killed and in what it is kept, apart; cautions where the harm could happen.
#[component]
pub fn Fluids(draft: VialDraft) -> impl IntoView {
    let words = say().container;
    let killed = draft.part(|form| form.killed.clone());
    let kept = draft.part(|form| form.kept.clone());
    let on_killed = draft.on(|form: &mut ContainerForm, fluid: FluidForm| form.killed = fluid);
    let on_kept = draft.on(|form: &mut ContainerForm, fluid: FluidForm| form.kept = fluid);
    let without = draft.part(|form| form.alive || form.released);
    let killed_options = options(&codes::KILLED, |code| say().codes.killed(code));
    let kept_options = options(&codes::KEPT, |code| say().codes.kept(code));
    let cautions = move || {
        killed
            .with(|killed| kept.with(|kept| cautions(killed, kept)))
            .into_iter()
            .map(|says| view! { <Caution says/> })
            .collect_view()
    };
    view! {
        <section class="part" aria-label=words.fluids() hidden=without>
            <div class="together">
                <FluidField ids=("killed", "killed-text", "killed-strength") name=words.killed() options=killed_options fluid=killed change=on_killed/>
                <FluidField ids=("kept", "kept-text", "kept-strength") name=words.kept() options=kept_options fluid=kept change=on_kept/>
            </div>
            {cautions}
        </section>
    }
    .into_any()
}

fn options(codes: &[&str], word: impl Fn(&str) -> String) -> Options {
    let words = say().container;
    let known = codes.iter().map(|code| ((*code).to_owned(), word(code)));
    let none = (String::new(), words.fluid_none().to_owned());
    std::iter::once(none).chain(known).chain([(OWN.to_owned(), words.fluid_other().to_owned())]).collect()
}

fn cautions(killed: &FluidForm, kept: &FluidForm) -> Vec<&'static str> {
    let words = say().container;
    let strong = kept.strength.trim().parse().unwrap_or(70.0) >= 40.0;
    let said = [
        (killed.code == "ethyl_acetate", words.caution_ethyl_acetate()),
        (killed.code == "cyanide", words.caution_cyanide()),
        (kept.code == "ethanol" && strong, words.caution_ethanol()),
    ];
    said.into_iter().filter(|(holds, _)| *holds).map(|(_, says)| says).collect()
}

/// One fluid: chosen or in one's own words, with its strength.
#[component]
fn FluidField(
    ids: (&'static str, &'static str, &'static str),
    name: &'static str,
    options: Options,
    fluid: Signal<FluidForm>,
    change: Callback<FluidForm>,
) -> impl IntoView {
    let words = say().container;
    let (id, text_id, strength_id) = ids;
    let set = move |write: fn(&mut FluidForm, String)| {
        Callback::new(move |text: String| {
            let mut now = fluid.get_untracked();
            write(&mut now, text);
            change.run(now);
        })
    };
    let part = move |part: fn(&FluidForm) -> String| Signal::derive(move || fluid.with(part));
    let fluid_has_strength =
        move || fluid.with(|fluid| matches!(fluid.code.as_str(), "ethanol" | "propylene_glycol" | OWN));
    view! {
        <div>
            <label class="note" for=id>{name}</label>
            <Pick id options=Signal::stored(options) chosen=part(|fluid| fluid.code.clone())
                choose=set(|fluid, code| *fluid = FluidForm { strength: usual_strength(&code).into(), code, ..FluidForm::default() })/>
            <div class="together" hidden=move || !fluid_has_strength()>
                <span hidden=move || fluid.with(|fluid| fluid.code != OWN)>
                    <Line id=text_id named=words.fluid_words() hint=words.fluid_words() value=part(|fluid| fluid.text.clone()) change=set(|fluid, text| fluid.text = text)/>
                </span>
                <WithUnit id=strength_id name=words.strength() unit=words.strength_unit() figure="few" class="fit"
                    value=part(|fluid| fluid.strength.clone()) change=set(|fluid, text| fluid.strength = text)/>
            </div>
        </div>
    }
    .into_any()
}

/// The strength that is usual in the field: common practice.
fn usual_strength(code: &str) -> &'static str {
    match code {
        "ethanol" => "80",
        "propylene_glycol" => "50",
        _ => "",
    }
}
