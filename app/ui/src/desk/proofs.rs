use crate::context::{say, use_page};
use crate::parts::Sign;
use leptos::prelude::*;
use logbook::labels::LabelKind;
use ports::press::{Over, Proof};

/// What a label is called.
pub fn kind_name(kind: LabelKind) -> String {
    say().desk.label_kind(kind.code())
}

/// What several of a kind are called, with what they are of where there may be several.
pub fn kinds_name(kind: LabelKind, item: &str) -> String {
    let name = say().desk.label_kinds(kind.code());
    if item.is_empty() { name } else { say().desk.label_of(&name, item) }
}

/// A label as the press set it: its outlines in millimetres, its words as the accessible name. The pin's place is
/// drawn and never printed; what does not fit runs to the cut line, which turns heavy.
#[component]
pub fn ProofView(
    /// The proof.
    proof: Proof,
    /// Width and height, millimetres.
    size: (f64, f64),
    /// Which label.
    kind: LabelKind,
    /// In true size and without a name of its own, in a row that says the words.
    #[prop(optional)]
    life: bool,
) -> impl IntoView {
    let (width, height) = size;
    let name = say().desk.heard_label(&kind_name(kind), &proof.lines, proof.lines_above_pin);
    let (x, y, radius) = proof.pin;
    let drawing = view! {
        <rect class="label-paper" width=width.to_string() height=height.to_string()/>
        <path class="label-ink" d=proof.path/>
        {(radius > 0.0).then(|| view! { <circle class="label-disc" cx=x.to_string() cy=y.to_string() r=radius.to_string()/> })}
        {(!proof.over.is_empty()).then(|| view! { <path class="label-over" d=format!("M{width} 0V{height}")/> })}
    };
    let frame = format!("0 0 {width} {height}");
    if life {
        let (across, down) = (true_size(width), true_size(height));
        view! { <svg class="life sized" width=across height=down viewBox=frame aria-hidden="true">{drawing}</svg> }
            .into_any()
    } else {
        view! { <div class="label-proof"><svg viewBox=frame role="img" aria-label=name>{drawing}</svg></div> }
            .into_any()
    }
}

/// A true length on this screen, where it was measured; else what the browser takes for it.
pub fn true_size(millimetres: f64) -> String {
    let calibration = use_page().logbook.with_untracked(|logbook| logbook.device().calibration);
    calibration
        .map_or_else(|| format!("{millimetres}mm"), |screen| format!("{:.2}", millimetres * screen.pixels_per_mm))
}

/// What does not fit on a label, in words.
pub fn over_words(over: &Over, type_pt: f64) -> String {
    let words = say().desk;
    match over {
        Over::Long { text, by_mm } => words.long(text, *by_mm, type_pt),
        Over::High { by_mm } => words.high(*by_mm),
        Over::Glyph { letter } => words.glyph(*letter),
        Over::Sheet { by_mm } => words.too_large_for_sheet(*by_mm),
    }
}

/// What does not fit on a label, each with its sign.
#[component]
pub fn OverList(
    /// The proof.
    proof: Proof,
) -> impl IntoView {
    let each = |over: &Over| view! { <p class="mark fault">{Sign::Cross.draw()}<span>{over_words(over, proof.type_pt)}</span></p> };
    proof.over.iter().map(each).collect_view().into_any()
}
