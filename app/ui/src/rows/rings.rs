use crate::context::say;
use leptos::prelude::*;

/// Rings of accuracy: the first, one in between, the present one, all to one scale. The present one shrinks as fixes
/// come in.
#[component]
pub fn Rings(
    /// Radii in metres in the order in which they came; the last holds.
    #[prop(into)]
    radii: Signal<Vec<f64>>,
) -> impl IntoView {
    let scale = move || 52.0 / radii.with(|radii| widest(radii));
    let ring = move |metres: f64| format!("{:.1}", (metres * scale()).max(3.0));
    let before = move || {
        let all = radii.get();
        let drawn = |radius: &f64| view! { <circle class="faint dash" cx="60" cy="57" r=ring(*radius)/> };
        all.iter().take(all.len().saturating_sub(1)).map(drawn).collect_view()
    };
    let now = move || ring(radii.with(|radii| radii.last().copied().unwrap_or(0.0)));
    let bar = move || radii.with(|radii| bar_metres(widest(radii)));
    view! {
        <svg class="drawing" viewBox="0 0 120 132" role="img" aria-label=move || radii.with(|radii| say().place.rings(radii))>
            <path class="faint" d="M60 2v8M60 104v8M4 57h8M108 57h8"/>
            {before}
            <circle class="heavy accent ring" cx="60" cy="57" r=now/>
            <circle class="solid" cx="60" cy="57" r="2.2"/>
            <path class="stroke" d=move || format!("M8 122v5h{:.1}v-5", bar() * scale())/>
            <text x=move || format!("{:.0}", 14.0 + bar() * scale()) y="131">{move || say().place.scale(bar())}</text>
        </svg>
    }
    .into_any()
}

fn widest(radii: &[f64]) -> f64 {
    radii.iter().copied().fold(1.0_f64, f64::max)
}

/// A round length that fits under the rings: 1, 2 or 5 times a power of ten.
fn bar_metres(widest: f64) -> f64 {
    let most = widest * 0.9;
    let steps = [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1_000.0, 2_000.0, 5_000.0, 10_000.0];
    steps.into_iter().rfind(|step| *step <= most).unwrap_or(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_round_and_fits() {
        assert_eq!([1.0, 8.0, 65.0, 240.0, 3_000.0].map(bar_metres), [1.0, 5.0, 50.0, 200.0, 2_000.0]);
    }
}
