//! Writes a log file of generated records: `generate EVENTS [CONTAINERS_EACH] [other] > FILE`; `other` is the same book
//! as a second person has it, who changed one record in ten.

use bench_native::made;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut words: Vec<String> = std::env::args().skip(1).collect();
    let other = words.pop_if(|word| word == "other").is_some();
    let numbers: Option<Vec<usize>> = words.iter().map(|word| word.parse().ok()).collect();
    let (events, containers) = match numbers.as_deref() {
        Some([events]) => (*events, 0),
        Some([events, containers]) => (*events, *containers),
        _ => return usage(),
    };
    let book = made::book(events, containers);
    let book = if other { made::other(&book) } else { book };
    match std::io::stdout().write_all(&record::wire::write(&made::header(), &book)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::from(2),
    }
}

fn usage() -> ExitCode {
    let _ = writeln!(std::io::stderr(), "usage: generate EVENTS [CONTAINERS_EACH] [other] > FILE");
    ExitCode::from(2)
}
