use crate::context::{say, use_page};
use crate::parts::{Message, Sign};
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::labels::LabelKind;
use ports::press::{Answer, Format, Line, Order, Over, PressFault, Proof, Request};

/// What the press made of some labels.
#[derive(Clone, Debug, PartialEq)]
pub enum Pressed {
    /// It is setting them.
    Waiting,
    /// One proof a label, in their order.
    Set(Vec<Proof>),
    /// It gave no answer; why.
    Gone(String),
}

impl Pressed {
    /// The proof of a label by its place.
    pub fn proof(&self, at: usize) -> Option<&Proof> {
        match self {
            Self::Set(proofs) => proofs.get(at),
            Self::Waiting | Self::Gone(_) => None,
        }
    }
}

/// Asks the press for proofs of these labels, again whenever they change; an answer that comes too late is let go.
pub fn proofs(labels: Signal<Vec<Vec<Line>>>, format: Signal<Format>) -> Signal<Pressed> {
    let page = use_page();
    let pressed = RwSignal::new(Pressed::Waiting);
    let turn = StoredValue::new(0_u32);
    Effect::new(move |_| {
        let (labels, format) = (labels.get(), format.get());
        let mine = turn.with_value(|turn| turn.wrapping_add(1));
        turn.set_value(mine);
        if labels.is_empty() {
            pressed.set(Pressed::Set(Vec::new()));
            return;
        }
        let orders = labels.into_iter().map(|lines| Order { lines, copies: 1 }).collect();
        spawn_local(async move {
            let ports = page.ports();
            let answer = ports.press.ask(Request::Proof { orders, format }).await;
            if turn.try_get_value() == Some(mine) {
                pressed.set(understood(answer));
            }
        });
    });
    pressed.into()
}

fn understood(answer: Result<Answer, PressFault>) -> Pressed {
    match answer {
        Ok(Answer::Proofs(proofs)) => Pressed::Set(proofs),
        Ok(Answer::NotWritten(reason)) | Err(PressFault::Gone(reason)) => Pressed::Gone(reason),
        Ok(Answer::Laid(_) | Answer::Pdf { .. } | Answer::DoesNotFit(_)) => Pressed::Gone(String::new()),
    }
}

/// While the press works, and when it gave no answer.
#[component]
pub fn Setting(
    /// What it made of the labels.
    pressed: Signal<Pressed>,
) -> impl IntoView {
    let late = RwSignal::new(false);
    let page = use_page();
    spawn_local(async move {
        page.ports().time.wait(500).await;
        let _ = late.try_set(true);
    });
    move || match pressed.get() {
        Pressed::Waiting => {
            late.get().then(|| view! { <p class="note" role="status">{say().labels.setting()}</p> }.into_any())
        }
        Pressed::Set(_) => None,
        Pressed::Gone(reason) => {
            Some(view! { <Message what=say().desk.press_gone() safe=say().desk.press_gone_do(&reason)/> }.into_any())
        }
    }
}

/// What a label is called.
pub fn kind_name(kind: LabelKind) -> &'static str {
    match kind {
        LabelKind::Collection => say().desk.collection_label(),
        LabelKind::Host => say().desk.host_label(),
    }
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
    let name = say().desk.heard_label(kind_name(kind), &proof.lines, proof.lines_above_pin);
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
