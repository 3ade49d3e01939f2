//! What the doors of this crate share: a line in, a line of JSON out, and bad input told with the usage.

use std::fmt::Display;
use std::io::{BufRead, Write};
use std::process::ExitCode;

/// Answers each line of standard input; stops at the first that is refused, and says why.
pub fn answered<T: Display>(usage: &str, answer: impl Fn(&str) -> Result<T, String>) -> ExitCode {
    if std::env::args().count() > 1 {
        return refused(usage);
    }
    let mut out = std::io::stdout().lock();
    for line in std::io::stdin().lock().lines() {
        let line = match line {
            Ok(line) => line,
            Err(error) => return refused(&format!("standard input: {error}\n{usage}")),
        };
        let answer = match answer(&line) {
            Ok(answer) => answer,
            Err(why) => return refused(&format!("{why}\n{usage}")),
        };
        if writeln!(out, "{answer}").is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// Says on standard error what was wrong with the input.
fn refused(why: &str) -> ExitCode {
    // Nobody is left to tell when standard error is closed too.
    let _ = writeln!(std::io::stderr(), "{why}");
    ExitCode::from(2)
}
