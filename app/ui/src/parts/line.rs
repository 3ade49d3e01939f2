use super::typed;
use leptos::prelude::*;

/// What is written on a line.
#[component]
pub fn Line(
    /// Its id, by which its label finds it.
    id: &'static str,
    /// Class besides `line`.
    #[prop(optional)]
    class: &'static str,
    /// What the keyboard should offer.
    #[prop(optional, default = "text")]
    mode: &'static str,
    /// How the keyboard begins words.
    #[prop(optional, default = "off")]
    capitals: &'static str,
    /// An example of what belongs here.
    #[prop(optional, into)]
    hint: String,
    /// What is heard as its name, where no label stands beside it.
    #[prop(optional, into)]
    named: String,
    /// Id of the note that says more.
    #[prop(optional)]
    described: &'static str,
    /// Cannot be written at the moment.
    #[prop(optional, into)]
    still: Signal<bool>,
    /// What stands there.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what is typed.
    change: Callback<String>,
) -> impl IntoView {
    let described = Some(described).filter(|id| !id.is_empty());
    let hint = Some(hint).filter(|hint| !hint.is_empty());
    let named = Some(named).filter(|name| !name.is_empty());
    view! {
        <input class=format!("line {class}") id=id inputmode=mode autocapitalize=capitals autocomplete="off" {..leptos::attr::custom::custom_attribute("autocorrect", "off")}
            spellcheck="false" placeholder=hint aria-label=named aria-describedby=described readonly=still prop:value=value
            on:input=move |event| change.run(typed(&event))/>
    }
    .into_any()
}

/// A figure with its unit.
#[component]
pub fn WithUnit(
    /// Its id.
    id: &'static str,
    /// What is heard as its name, where no visible label stands beside it.
    #[prop(optional, into)]
    name: String,
    /// The unit, or words behind the figure.
    #[prop(into)]
    unit: String,
    /// A sign before the figure.
    #[prop(optional)]
    sign: &'static str,
    /// Class of the whole besides `with-unit`.
    #[prop(optional)]
    class: &'static str,
    /// Class of the figure besides `line measure`.
    #[prop(optional)]
    figure: &'static str,
    /// What stands there.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what is typed.
    change: Callback<String>,
) -> impl IntoView {
    view! {
        <label class=format!("with-unit {class}") for=id>
            {(!name.is_empty()).then(|| view! { <span class="unseen">{name}</span> })}
            {(!sign.is_empty()).then(|| view! { <span class="measure" aria-hidden="true">{sign}</span> })}
            <input class=format!("line measure {figure}") id=id inputmode="decimal" autocomplete="off" prop:value=value
                on:input=move |event| change.run(typed(&event))/>
            <span>{unit}</span>
        </label>
    }
    .into_any()
}

/// An hour, in the system's own field.
#[component]
pub fn TimeLine(
    /// Its id.
    id: &'static str,
    /// Id of the note that says more.
    #[prop(optional)]
    described: &'static str,
    /// `14:32`, or empty.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what is chosen.
    change: Callback<String>,
) -> impl IntoView {
    let described = Some(described).filter(|id| !id.is_empty());
    view! {
        <input class="line measure" id=id type="time" aria-describedby=described prop:value=value
            on:input=move |event| change.run(typed(&event))/>
    }
    .into_any()
}

/// A day, in the system's own field.
#[component]
pub fn DayLine(
    /// Its id.
    id: &'static str,
    /// What is heard as its name.
    #[prop(into)]
    name: String,
    /// `2027-06-19`, or empty.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what is chosen.
    change: Callback<String>,
) -> impl IntoView {
    view! {
        <label class="unseen" for=id>{name}</label>
        <input class="line measure day" id=id type="date" prop:value=value on:input=move |event| change.run(typed(&event))/>
    }
    .into_any()
}
