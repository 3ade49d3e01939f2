//! The typesetter's door from the shell: `sheet [FONT.ttf …] < facts.json > labels.pdf`
//!
//! In goes a JSON array of facts, each an object of `country`, `province`, `locality`, `latitude`, `longitude`,
//! `radius_m`, `elevation`, `from`, `until`, `night_of`, `collectors`, `method`, `host` (`relation`, `thing`),
//! `emerged` and `count`, all optional. Days are ISO 8601, collectors a list, the count is 1 where it is not given.
//! A collection label is made of each, and a host label where a host, a method or days of emergence are known.
//!
//! Out come the PDF on standard output and on standard error one JSON line a label: of which fact and which kind it is,
//! its lines, type size, millimetres, where each copy lies, where the pin passes, what did not fit and on which
//! further labels it stands instead, glyphs that no font has, and what of the facts was not understood. A label with
//! such a glyph, or with a word that no label holds, is told and not printed.
//!
//! The fonts named are used first, in the order given, an italic one for italics; the project's own fill what they
//! lack. What cannot be read at all is told as one JSON line with a `fault`, without a PDF.

#[path = "sheet/door.rs"]
mod door;
#[path = "sheet/facts.rs"]
mod facts;
#[path = "sheet/fonts.rs"]
mod fonts;

use serde_json::json;
use std::io::{Read, Write};
use std::process::ExitCode;

fn main() -> ExitCode {
    match opened() {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            // With standard error closed there is nobody left to tell.
            let _ = writeln!(std::io::stderr(), "{}", json!({ "fault": fault }));
            ExitCode::FAILURE
        }
    }
}

fn opened() -> Result<(), String> {
    let files: Vec<String> = std::env::args().skip(1).collect();
    let fonts = fonts::fonts(&files)?;
    let mut bytes = Vec::new();
    std::io::stdin().read_to_end(&mut bytes).map_err(|fault| fault.to_string())?;
    let text = String::from_utf8(bytes).map_err(|fault| fault.to_string())?;
    let answer = door::answer(&text, &fonts)?;
    let told: String = answer.told.iter().map(|label| format!("{label}\n")).collect();
    std::io::stderr().write_all(told.as_bytes()).map_err(|fault| fault.to_string())?;
    std::io::stdout().write_all(&answer.pdf).map_err(|fault| fault.to_string())
}
