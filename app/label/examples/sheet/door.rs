//! Facts in, the PDF and what became of each label out.

use crate::facts::{Facts, facts};
use label::{
    Cell, Fonts, Format, Gathering, Job, Layout, Line, Outcome, Over, Paper, PinAt, Run, Setter, Share, Wanted,
};
use serde_json::{Value, json};
use units::Millimetres;
use wording::defaults::{arrangement, size};
use wording::{Kind, Said, lines, part_of, said_parts};

/// More labels than this are not made in one go.
const LABELS_MOST: usize = 100_000;

/// The PDF and a line for each label.
pub struct Answer {
    /// The file.
    pub pdf: Vec<u8>,
    /// What became of each label.
    pub told: Vec<Value>,
}

/// One label on the way.
struct Label {
    fact: usize,
    kind: Kind,
    said: Vec<Said>,
    lines: Vec<Line>,
    outcome: Outcome,
    /// The labels that stand for one that does not fit.
    shares: Vec<Share>,
    copies: usize,
    problems: Vec<Value>,
    printed: bool,
}

/// Answers a JSON array of facts.
pub fn answer(text: &str, fonts: &Fonts) -> Result<Answer, String> {
    let array: Vec<Value> = serde_json::from_str(text).map_err(|fault| format!("no JSON array of facts: {fault}"))?;
    let mut setter = Setter::new(fonts);
    let mut labels: Vec<Label> = Vec::new();
    let mut room = LABELS_MOST;
    for (index, value) in array.iter().enumerate() {
        labels.extend(of_facts(&mut setter, index, facts(value), &mut room));
    }
    let wanted: Vec<Wanted> = labels.iter().filter(|label| label.printed).flat_map(wanted).collect();
    let layout = Layout::fresh(Paper::A4);
    let sizes: Vec<_> = wanted
        .iter()
        .flat_map(|one| std::iter::repeat_n((one.format.width, one.format.height), one.copies as usize))
        .collect();
    let plan = label::plan(&sizes, &layout).map_err(|by| format!("{} mm too large for the sheet", by.millimetres()))?;
    let job = Job {
        labels: wanted,
        gathering: Gathering::AsGiven,
        layout,
        title: "Labels".into(),
        words: vec!["This bar must measure 50 mm.".into(), "Print at 100 %, on heavy acid-free paper.".into()],
        made: (2027, 6, 19, 12, 0, 0),
    };
    let printed = label::print(&mut setter, job).map_err(|refused| format!("{refused:?}"))?;
    let mut cells = plan.cells.into_iter();
    let told = labels.iter().map(|label| told(label, &mut cells)).collect();
    Ok(Answer { pdf: printed.bytes, told })
}

/// The collection label of facts, and the host label if they have what it says; at least one, to be told.
fn of_facts(setter: &mut Setter<'_>, fact: usize, facts: Facts, room: &mut usize) -> Vec<Label> {
    let mut labels: Vec<Label> = Vec::new();
    for kind in [Kind::Collection, Kind::Host] {
        let mut arrangement = arrangement(kind);
        let mut parts = facts.parts.clone();
        if let Some(words) = arrangement.methods.get(&parts.method) {
            parts.method.clone_from(words);
        }
        if let Some(host) = &mut parts.host {
            let words = host.relation.replace('_', " ");
            if words == "reared from" {
                "reared".clone_into(&mut host.relation);
            }
            arrangement.relations.entry(host.relation.clone()).or_insert(words);
        }
        let said = said_parts(&parts, &arrangement);
        if said.is_empty() && (kind == Kind::Host || !is_bare(&facts)) {
            continue;
        }
        let lines = for_label(&lines(&parts, &arrangement));
        labels.push(set(setter, (fact, kind), (lines, said), &facts, room));
    }
    labels
}

/// True when no label says anything.
fn is_bare(facts: &Facts) -> bool {
    said_parts(&facts.parts, &arrangement(Kind::Host)).is_empty()
}

fn set(
    setter: &mut Setter<'_>,
    (fact, kind): (usize, Kind),
    (lines, said): (Vec<Line>, Vec<Said>),
    facts: &Facts,
    room: &mut usize,
) -> Label {
    let format = format(kind);
    let outcome = setter.frame(&lines, &format);
    let shares = if outcome.fits() { Vec::new() } else { setter.shares(&lines, &format) };
    let problem = |(field, why): &(String, String)| json!({ "field": field, "why": why });
    let mut problems: Vec<Value> = facts.problems.iter().map(problem).collect();
    let mut copies = facts.count.unwrap_or(0) as usize;
    let needed = copies.saturating_mul(shares.len().max(1));
    if needed > *room {
        problems
            .push(json!({ "field": "count", "why": format!("is more than the {room} labels left of {LABELS_MOST}") }));
        copies = 0;
    }
    let complete = !outcome.over.iter().any(|over| matches!(over, Over::Glyph(_)));
    let printed = copies > 0 && complete && !said.is_empty() && (outcome.fits() || !shares.is_empty());
    *room -= if printed { needed } else { 0 };
    Label { fact, kind, said, lines, outcome, shares, copies, problems, printed }
}

fn format(kind: Kind) -> Format {
    let size = size(kind);
    Format {
        width: size.width,
        height: size.height,
        largest: size.largest,
        least: size.least,
        pin: Millimetres::thousandths(700),
        pin_at: PinAt::Middle,
    }
}

fn for_label(lines: &[wording::Line]) -> Vec<Line> {
    let run = |run: &wording::Run| Run { text: run.text.clone(), italic: run.italic };
    lines.iter().map(|line| line.iter().map(run).collect()).collect()
}

/// What is printed for a label, copy by copy of each that it takes.
fn wanted(label: &Label) -> Vec<Wanted> {
    let copies = u32::try_from(label.copies).expect("counts are limited");
    let format = format(label.kind);
    let one = |lines: &Vec<Line>| Wanted { lines: lines.clone(), code: None, format, copies };
    if label.shares.is_empty() {
        vec![one(&label.lines)]
    } else {
        label.shares.iter().map(|share| one(&share.lines)).collect()
    }
}

fn told(label: &Label, cells: &mut impl Iterator<Item = Cell>) -> Value {
    let outcomes: Vec<&Outcome> = match label.shares.as_slice() {
        [] => vec![&label.outcome],
        shares => shares.iter().map(|share| &share.outcome).collect(),
    };
    let mut each = outcomes.into_iter().map(|outcome| {
        let copies = if label.printed { label.copies } else { 0 };
        set_as(outcome, cells.by_ref().take(copies))
    });
    let mut value = each.next().unwrap_or_default();
    let mut further: std::collections::VecDeque<Value> = each.collect();
    value["fact"] = json!(label.fact);
    value["kind"] = json!(label.kind.code());
    value["printed"] = json!(label.printed);
    value["copies"] = json!(label.copies);
    value["did_not_fit"] = json!(too_large(label));
    value["missing_glyphs"] = label.outcome.over.iter().filter_map(missing).collect();
    value["second_label"] = json!(further.pop_front());
    value["further_labels"] = json!(further);
    value["problems"] = json!(label.problems);
    value
}

fn set_as(outcome: &Outcome, cells: impl Iterator<Item = Cell>) -> Value {
    let frame = &outcome.frame;
    let at = |cell: Cell| json!({ "sheet": cell.sheet, "x_mm": cell.x.millimetres(), "y_mm": cell.y.millimetres() });
    json!({
        "lines": frame.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>(),
        "type_pt": frame.size.points(),
        "width_mm": frame.width.millimetres(),
        "height_mm": frame.height.millimetres(),
        "pin": {
            "x_mm": frame.pin_x.millimetres(),
            "y_mm": frame.height.half().millimetres(),
            "clear_mm": frame.clear().millimetres(),
        },
        "lines_above_pin": frame.above,
        "at": cells.map(at).collect::<Vec<_>>(),
    })
}

/// The parts of the label that are too long, each once, and by how much.
fn too_large(label: &Label) -> Vec<Value> {
    let mut parts: Vec<(Option<&Said>, &str, f64)> = Vec::new();
    for over in &label.outcome.over {
        let (part, way, by) = match over {
            Over::Long { text, by } => (part_of(text, &label.said), "width", by.millimetres()),
            Over::High { by } => {
                (label.said.iter().max_by_key(|said| said.text.chars().count()), "height", by.millimetres())
            }
            Over::Code { .. } | Over::Glyph(_) => continue,
        };
        match parts.iter_mut().find(|known| (known.0, known.1) == (part, way)) {
            Some(known) => known.2 = known.2.max(by),
            None => parts.push((part, way, by)),
        }
    }
    let value = |(part, way, by): (Option<&Said>, &str, f64)| json!({ "part": part.map(|said| said.part), "text": part.map(|said| &said.text), "way": way, "by_mm": by });
    parts.into_iter().map(value).collect()
}

fn missing(over: &Over) -> Option<Value> {
    if let Over::Glyph(letter) = over { Some(json!(letter.to_string())) } else { None }
}
