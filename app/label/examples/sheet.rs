//! Sets and prints labels from the shell: `sheet OUT.pdf [REGULAR.ttf ITALIC.ttf FURTHER.ttf …] < orders.json`
//!
//! Orders are a JSON array of `{"lines": ["text with _italics_", …], "copies": 2}`. On standard error comes one JSON
//! line a label: its lines as broken, type size, millimetres, what did not fit. With anything over, no PDF is written.
//! `LABEL_WIDTH`, `LABEL_HEIGHT`, `LABEL_PIN` (mm), `TYPE_LARGEST`, `TYPE_LEAST` (pt) and `PAPER` (a4, letter) change
//! the defaults of 18, 8, 0.7, 5, 4 and a4.

use label::{Fonts, Format, Job, Line, Outcome, Over, Paper, Run, Setter, print};
use serde_json::{Value, json};
use std::io::Read;
use units::{Millimetres, Points};

type Failure = Box<dyn std::error::Error>;

fn main() -> Result<(), Failure> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let Some((out, files)) = arguments.split_first() else {
        return Err("usage: sheet OUT.pdf [REGULAR.ttf ITALIC.ttf FURTHER.ttf …] < orders.json".into());
    };
    let fonts = fonts(files)?;
    let mut setter = Setter::new(&fonts);
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let orders: Vec<Value> = serde_json::from_str(&text)?;
    let labels: Vec<(Vec<Line>, u32)> = orders.iter().map(order).collect::<Result<_, _>>()?;
    let format = format()?;
    for (lines, _) in &labels {
        eprintln!("{}", told(&setter.frame(lines, &format)));
    }
    let paper = if std::env::var("PAPER").is_ok_and(|paper| paper == "letter") { Paper::Letter } else { Paper::A4 };
    let job = Job {
        labels: &labels,
        format,
        paper,
        title: "Labels",
        check_words: "This bar must measure 50 mm.",
        made: (2027, 6, 19, 12, 0, 0),
    };
    let printed = print(&mut setter, &job).map_err(|refused| format!("{refused:?}"))?;
    std::fs::write(out, printed.bytes)?;
    Ok(())
}

fn fonts(files: &[String]) -> Result<Fonts, Failure> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../public/fonts/");
    let own = ["FiraSansCondensed-Regular.ttf", "FiraSansCondensed-Italic.ttf", "DejaVuSansCondensed-gaps.ttf"];
    let own: Vec<String> = own.iter().map(|name| format!("{folder}{name}")).collect();
    let files = if files.len() < 2 { &own } else { files };
    let mut bytes = files.iter().map(std::fs::read).collect::<Result<Vec<_>, _>>()?.into_iter();
    let (regular, italic) = (bytes.next().unwrap_or_default(), bytes.next().unwrap_or_default());
    Ok(Fonts::new(regular, italic, bytes.collect()).map_err(|fault| format!("font {} cannot be read", fault.0))?)
}

fn format() -> Result<Format, Failure> {
    let number = |name: &str, default: f64| match std::env::var(name) {
        Ok(text) => text.parse::<f64>().map_err(|fault| format!("{name}: {fault}")),
        Err(_) => Ok(default),
    };
    let mm = |value: f64| Millimetres::new(value).ok_or("a size must be finite");
    let pt = |value: f64| Points::new(value).ok_or("a size must be finite");
    Ok(Format {
        width: mm(number("LABEL_WIDTH", 18.0)?)?,
        height: mm(number("LABEL_HEIGHT", 8.0)?)?,
        largest: pt(number("TYPE_LARGEST", 5.0)?)?,
        least: pt(number("TYPE_LEAST", 4.0)?)?,
        pin: mm(number("LABEL_PIN", 0.7)?)?,
    })
}

fn order(order: &Value) -> Result<(Vec<Line>, u32), Failure> {
    let lines = order["lines"].as_array().ok_or("an order has lines")?;
    let lines =
        lines.iter().map(|line| Ok(marked(line.as_str().ok_or("a line is text")?))).collect::<Result<_, Failure>>()?;
    Ok((lines, order["copies"].as_u64().and_then(|copies| u32::try_from(copies).ok()).unwrap_or(1)))
}

fn marked(text: &str) -> Line {
    let run = |(index, text): (usize, &str)| Run { text: text.to_owned(), italic: index % 2 == 1 };
    text.split('_').enumerate().map(run).filter(|run| !run.text.is_empty()).collect()
}

fn told(outcome: &Outcome) -> Value {
    let frame = &outcome.frame;
    json!({
        "lines": frame.lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>(),
        "type_pt": frame.size.points(),
        "width_mm": frame.width.millimetres(),
        "height_mm": frame.height.millimetres(),
        "lines_above_pin": frame.above,
        "over": outcome.over.iter().map(over).collect::<Vec<_>>(),
    })
}

fn over(over: &Over) -> Value {
    match over {
        Over::Long { text, by } => json!({"long": text, "by_mm": by.millimetres()}),
        Over::High { by } => json!({"high_by_mm": by.millimetres()}),
        Over::Glyph(letter) => json!({"letter": letter}),
    }
}
