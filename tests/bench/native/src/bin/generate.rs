//! Writes a log file of generated records: `generate EVENTS [CONTAINERS_EACH] > FILE`.

use bench_native::made;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut numbers = std::env::args().skip(1).map(|argument| argument.parse::<usize>());
    let (Some(Ok(events)), containers) = (numbers.next(), numbers.next().unwrap_or(Ok(0))) else { return usage() };
    let Ok(containers) = containers else { return usage() };
    let file = record::wire::write(&made::header(), &made::book(events, containers));
    match std::io::stdout().write_all(&file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::from(2),
    }
}

fn usage() -> ExitCode {
    let _ = writeln!(std::io::stderr(), "usage: generate EVENTS [CONTAINERS_EACH] > FILE");
    ExitCode::from(2)
}
