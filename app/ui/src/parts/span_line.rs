use leptos::prelude::*;

/// Minutes from noon to noon.
const DAY: f64 = 1440.0;

/// A night drawn from noon to noon: the time the lamp has burnt, each container, and the dark below it.
#[component]
pub fn Night(
    /// Minutes after noon at which it began, and now.
    span: (f64, f64),
    /// Minutes after noon at which containers were filled.
    filled: Vec<f64>,
    /// Minutes after noon between which it is dark.
    dark: Option<(f64, f64)>,
    /// The sentence that says the same.
    #[prop(into)]
    says: String,
) -> impl IntoView {
    let x = |minutes: f64| format!("{:.1}", minutes.clamp(0.0, DAY) / DAY * 240.0);
    let (on, now) = span;
    let ticks = filled.iter().map(|at| format!("M{} 6v9", x(*at))).collect::<String>();
    view! {
        <figure class="span-line">
            <svg class="drawing" viewBox="0 0 240 32" preserveAspectRatio="none" aria-hidden="true">
                <path class="faint still" d="M0 15h240M0 11v8M60 11v8M120 11v8M180 11v8M240 11v8"/>
                {dark.map(|(from, until)| view! { <path class="stroke still" d=format!("M{} 20H{}", x(from), x(until))/> })}
                <path class="heavy still" d=format!("M{} 15H{}", x(on), x(now))/>
                <path class="stroke still" d=ticks/>
                <path class="heavy accent still" d=format!("M{} 3v24", x(now))/>
            </svg>
            <p class="span-words" aria-hidden="true"><span>12</span><span>18</span><span>24</span><span>6</span><span>12</span></p>
            <figcaption class="unseen">{says}</figcaption>
        </figure>
    }
    .into_any()
}

/// Traps sunk into the ground, in walking order; at most twenty-four are drawn.
#[component]
pub fn TrapRow(
    /// How many.
    count: u32,
    /// The sentence that says the same.
    #[prop(into)]
    says: String,
) -> impl IntoView {
    let count = count.clamp(1, 24);
    let step = 240.0 / f64::from(count);
    let cup = |index: u32| {
        let from = step * (f64::from(index) + 0.5) - 4.5;
        format!("H{from:.1}v12h9v-12")
    };
    let ground = format!("M0 10{}H240", (0..count).map(cup).collect::<String>());
    view! {
        <figure class="span-line">
            <svg class="drawing" viewBox="0 0 240 30" preserveAspectRatio="none" aria-hidden="true"><path class="stroke still" d=ground/></svg>
            <figcaption class="unseen">{says}</figcaption>
        </figure>
    }
    .into_any()
}
