//! Measures the typesetter natively and prints a table: `cargo run --profile bench -p bench-native --bin labels`.
//!
//! 5,000 labels of five lines of 1,000 invented events, fitted and shaped; with words remembered from label to label,
//! and with none. Then 10,000 different labels in one file, and the memory that took (`VmHWM` of Linux).

use bench_native::table::{best, line};
use label::{Fonts, Format, Gathering, Job, Layout, Line, Paper, PinAt, Run, Setter, Wanted, print};
use std::io::Write;
use std::time::Duration;
use units::{Millimetres, Points};

const EVENTS: usize = 1000;
const COPIES: u32 = 5;
const MANY: usize = 10_000;

fn main() {
    let fonts = fonts();
    say(&format!("| {:<62} | {:>12} | |", "labels of five lines, best of five", "time"));
    say("|---|---:|---|");
    let labels: Vec<Wanted> = (0..EVENTS).map(|event| wanted(event, COPIES)).collect();
    let set = || labels.iter().flat_map(|label| std::iter::repeat_n(label, COPIES as usize));
    let (time, _) = best(|| {
        let mut setter = Setter::new(&fonts);
        set().map(|label| setter.frame(&label.lines, &label.format).frame.lines.len()).sum::<usize>()
    });
    tell("5,000 set, words remembered", time, "");
    let (time, _) = best(|| {
        set().map(|label| Setter::new(&fonts).frame(&label.lines, &label.format).frame.lines.len()).sum::<usize>()
    });
    tell("5,000 set, each label shaped anew", time, "");
    let (time, printed) = best(|| print(&mut Setter::new(&fonts), job(labels.clone())).expect("they fit"));
    tell(
        "5,000 of 1,000 events to PDF",
        time,
        &format!("{} KB, {} sheets", printed.bytes.len() / 1000, printed.sheets),
    );
    let before = peak_mb();
    let many: Vec<Wanted> = (0..MANY).map(|event| wanted(event, 1)).collect();
    let (time, printed) = best(|| print(&mut Setter::new(&fonts), job(many.clone())).expect("they fit"));
    let memory = peak_mb().zip(before).map(|(after, before)| format!(", {after} MB at the most, {before} MB before"));
    let remark = format!("{} KB{}", printed.bytes.len() / 1000, memory.unwrap_or_default());
    tell("10,000 different ones to PDF", time, &remark);
}

fn tell(what: &str, time: Duration, remark: &str) {
    say(&line(what, time, remark));
}

fn say(line: &str) {
    writeln!(std::io::stdout(), "{line}").expect("the table can be printed");
}

fn fonts() -> Fonts {
    let read = |name: &str| {
        let path = format!("{}/../../../public/fonts/{name}", env!("CARGO_MANIFEST_DIR"));
        std::fs::read(path).expect("the fonts are part of the project")
    };
    let further = vec![read("DejaVuSansCondensed-gaps.ttf")];
    Fonts::new(read("FiraSansCondensed-Regular.ttf"), read("FiraSansCondensed-Italic.ttf"), further)
        .expect("the fonts of the project can be read")
}

/// An invented event: words come again, numbers do not.
fn wanted(event: usize, copies: u32) -> Wanted {
    const PLACES: [&str; 7] = ["Tarn Abbot", "Mill Meadow", "Saltmarsh", "Old Sluice", "Marl Pit", "Fen End", "Ridge"];
    const PEOPLE: [&str; 5] = ["I. Varga", "D. Okoro", "C. Novak", "J. Roux", "M. Lind"];
    let texts = [
        format!("ORRELAND: Sallow {}", event % 40),
        format!("{}, {} m", PLACES[event % 7], 100 + event % 900),
        format!("47.{:04}°\u{a0}N 12.{:04}°\u{a0}E ±8\u{a0}m", event % 10_000, event * 7 % 10_000),
        format!("{}.vi.20{}", 1 + event % 30, 10 + event % 17),
        format!("leg.\u{a0}{}", PEOPLE[event % 5].replace(' ', "\u{a0}")),
    ];
    let line = |text: String| -> Line { vec![Run { text, italic: false }] };
    Wanted { lines: texts.map(line).to_vec(), code: None, format: format(), copies }
}

fn format() -> Format {
    Format {
        width: Millimetres::whole(18),
        height: Millimetres::whole(10),
        largest: Points::whole(5),
        least: Points::whole(4),
        pin: Millimetres::ZERO,
        pin_at: PinAt::Middle,
    }
}

fn job(labels: Vec<Wanted>) -> Job {
    Job {
        labels,
        gathering: Gathering::EqualTogether,
        layout: Layout::fresh(Paper::A4),
        title: "Labels".into(),
        words: vec!["This bar must measure 50 mm.".into()],
        made: (2027, 6, 19, 12, 0, 0),
    }
}

/// The most memory this process ever had, where the system says so.
fn peak_mb() -> Option<u64> {
    let status = std::fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    line.split_whitespace().next()?.parse::<u64>().ok().map(|kilobytes| kilobytes / 1000)
}
