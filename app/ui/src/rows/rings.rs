use crate::context::say;
use leptos::prelude::*;

/// Rings of accuracy: the first, one in between, the present one, all to one scale.
#[component]
pub fn Rings(
    /// Radii in metres in the order in which they came; the last holds.
    radii: Vec<f64>,
) -> impl IntoView {
    let widest = radii.iter().copied().fold(1.0_f64, f64::max);
    let scale = 52.0 / widest;
    let bar = bar_metres(widest);
    let now = radii.last().copied();
    let before = radii.iter().take(radii.len().saturating_sub(1)).map(|radius| {
        view! { <circle class="faint dash" cx="60" cy="57" r=format!("{:.1}", radius * scale)/> }
    });
    view! {
        <svg class="drawing" viewBox="0 0 120 132" role="img" aria-label=say().place.rings(&radii)>
            <path class="faint" d="M60 2v8M60 104v8M4 57h8M108 57h8"/>
            {before.collect_view()}
            {now.map(|radius| view! { <circle class="heavy accent ring" cx="60" cy="57" r=format!("{:.1}", (radius * scale).max(3.0))/> })}
            <circle class="solid" cx="60" cy="57" r="2.2"/>
            <path class="stroke" d=format!("M8 122v5h{:.1}v-5", bar * scale)/>
            <text x=format!("{:.0}", 14.0 + bar * scale) y="131">{say().place.scale(bar)}</text>
        </svg>
    }
    .into_any()
}

/// A round length that fits under the rings: 1, 2 or 5 times a power of ten.
fn bar_metres(widest: f64) -> f64 {
    let most = widest * 0.9;
    let mut bar = 1.0;
    for step in [2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1_000.0, 2_000.0, 5_000.0, 10_000.0] {
        if step <= most {
            bar = step;
        }
    }
    bar
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bar_is_round_and_fits() {
        assert_eq!([1.0, 8.0, 65.0, 240.0, 3_000.0].map(bar_metres), [1.0, 5.0, 50.0, 200.0, 2_000.0]);
    }
}
