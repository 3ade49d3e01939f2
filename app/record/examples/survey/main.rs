//! Writes the invented sample survey as a log file: `cargo run -p record --example survey > demo/sample.json`.
//!
//! Everything in it is invented: the country and its places, the people, what they caught. The output is the same
//! every time. What it shows on purpose is listed in `demo/README.md`.

mod land;
mod nights;
mod oddities;
mod scribe;
mod traps;
mod walks;

use record::wire::write;
use scribe::Scribe;
use std::io::Write;
use std::process::ExitCode;

fn main() -> ExitCode {
    let mut scribe = Scribe::default();
    let land = land::survey(&mut scribe);
    walks::survey(&mut scribe, &land);
    nights::survey(&mut scribe, &land);
    traps::survey(&mut scribe, &land);
    oddities::survey(&mut scribe, &land);
    let file = write(&scribe.header(), &scribe.records());
    match std::io::stdout().write_all(&file) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::from(2),
    }
}
