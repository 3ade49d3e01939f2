//! How high insect and labels stand on the pin, drawn by the numbers of Setup.
//!
//! Order of the labels: Schauff 2001 (Collecting and preserving insects and mites), Ross 1962 (Illinois Natural History
//! Survey Circular 39). The heights are a setting.

use crate::context::{say, use_page};
use crate::narrow::narrowed;
use crate::parts::More;
use leptos::prelude::*;

/// Units of the drawing in a millimetre.
const SCALE: f64 = 7.0;
/// Where the point of the pin stands in the drawing.
const POINT: f64 = 300.0;
/// The highest that is drawn, millimetres: a pin is 38 mm long.
const HIGHEST: f64 = 34.0;

/// The drawing.
#[component]
pub fn Heights() -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let heights = narrowed(move || page.logbook.with(|logbook| logbook.rules().heights_mm));
    let says = move || {
        let [insect, first, second] = heights.get().map(|height| height.to_string());
        words.heights_says(&insect, &first, &second)
    };
    view! {
        <More words=words.heights()>
            <svg class="drawing label-stack" viewBox="0 0 240 320" role="img" aria-labelledby="heights-title"
                fill="none" stroke="currentColor" stroke-width="2.2" stroke-linecap="round" stroke-linejoin="round">
                <title id="heights-title">{says}</title>
                {move || drawing(heights.get())}
            </svg>
            <p class="note">{says}</p>
        </More>
    }
    .into_any()
}

fn level(height_mm: f64) -> f64 {
    POINT - SCALE * height_mm.clamp(0.0, HIGHEST)
}

fn drawing([insect, first, second]: [f64; 3]) -> AnyView {
    let scale = [insect, first, second].into_iter().map(dimension).collect_view();
    view! {
        <path stroke-width="1.4" d=format!("M66 300V{}", level(insect))/>
        <path stroke-width="1.4" stroke-dasharray="2 4" d="M54 300H156"/>
        {scale}
        <text x="50" y="305" class="figure">"mm"</text>
        <g class="shaft"><path d="M152 36V290"/><path class="filled" d="M150.7 290H153.3L152 300Z"/><ellipse class="filled" cx="152" cy="34" rx="4.5" ry="3.5"/></g>
        {label(second)}
        {label(first)}
        <g transform=format!("translate(152 {})", level(insect))>
            <path stroke-width="2" d="M26-2L36 6L42 22L50 24M10-1L18 8L16 25L24 27M-14-2L-26 6L-34 23L-42 26M50-20C58-30 66-33 76-31"/>
            <g class="sheet-of">
                <path d="M40-2C46 2 56 0 58-6C60-14 56-20 46-22"/>
                <path d="M14-1C16-14 18-22 20-26C32-28 44-24 46-14C47-8 44-2 38 0C30 1 22 1 14-1Z"/>
                <path d="M20-24C8-30-14-31-32-24C-46-18-54-10-58-4C-40-4-6-6 18-6C20-12 21-18 20-24Z"/>
                <path d="M-56-4C-40 2-10 2 16-1L18-6C-6-6-40-4-56-4Z"/>
            </g>
            <circle cx="51" cy="-14" r="2.6" fill="currentColor"/>
        </g>
    }
    .into_any()
}

fn dimension(height_mm: f64) -> AnyView {
    let y = level(height_mm);
    view! {
        <path stroke-width="1.4" stroke-dasharray="2 4" d=format!("M70 {y}H98")/>
        <path stroke-width="1.4" class="figure" d=format!("M62 {}L66 {y}L70 {}Z", y + 9.0, y + 9.0)/>
        <text x="56" y=(y + 6.0).to_string() class="figure">{height_mm.to_string()}</text>
    }
    .into_any()
}

fn label(height_mm: f64) -> AnyView {
    view! {
        <g transform=format!("translate(152 {})", level(height_mm))>
            <path class="sheet-of" d="M-71 6H51L71-6H-51Z"/>
            <path stroke-width="2.6" stroke-opacity=".45" d="M-42-2H-8M10-2H48M-50 3H-8M10 3H36"/>
            <path class="shaft" d="M0-8V0"/>
        </g>
    }
    .into_any()
}
