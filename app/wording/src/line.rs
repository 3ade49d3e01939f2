//! Lines of runs, and their form as plain text that a person edits.

use crate::bind::bind;
use serde::{Deserialize, Serialize};

/// A space at which a line must not break.
pub const NO_BREAK: char = '\u{a0}';
/// Follows a space at which a line breaks gladly, as after a comma.
pub const SOFT_BREAK: char = '\u{200b}';

/// A stretch of text in one face.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Run {
    /// The words.
    pub text: String,
    /// True for Latin names.
    pub italic: bool,
}

impl Run {
    /// Upright text.
    pub fn upright(text: impl Into<String>) -> Self {
        Self { text: text.into(), italic: false }
    }

    /// Italic text.
    pub fn italic(text: impl Into<String>) -> Self {
        Self { text: text.into(), italic: true }
    }
}

/// One line of a label, in runs.
pub type Line = Vec<Run>;

/// The words of a line as read aloud: plain spaces, no marks.
pub fn plain(line: &[Run]) -> String {
    line.iter().map(|run| cleared(&run.text)).collect()
}

/// A line as a person edits it: plain spaces, `_` on both sides of italics; `__` is one `_`.
pub fn marked(line: &[Run]) -> String {
    line.iter().map(marked_run).collect()
}

fn marked_run(run: &Run) -> String {
    let text = cleared(&run.text).replace('_', "__");
    if run.italic && !text.is_empty() { format!("_{text}_") } else { text }
}

fn cleared(text: &str) -> String {
    text.chars()
        .filter(|letter| *letter != SOFT_BREAK)
        .map(|letter| if letter == NO_BREAK { ' ' } else { letter })
        .collect()
}

/// Reads what [`marked`] wrote and a person changed: a `_` without its partner stays a `_`.
pub fn unmarked(text: &str) -> Line {
    let mut line = Line::new();
    let mut rest = text;
    while let Some((before, inside, after)) = next_italics(rest) {
        push(&mut line, before, false);
        push(&mut line, inside, true);
        rest = after;
    }
    push(&mut line, rest, false);
    line
}

/// Text before, inside and after the next pair of single marks.
fn next_italics(text: &str) -> Option<(&str, &str, &str)> {
    let open = single_mark(text, 0)?;
    let close = single_mark(text, open + 1)?;
    Some((&text[..open], &text[open + 1..close], &text[close + 1..]))
}

/// The next `_` that is not one of a pair.
fn single_mark(text: &str, from: usize) -> Option<usize> {
    let mut at = from;
    loop {
        at += text.get(at..)?.find('_')?;
        if text[at + 1..].starts_with('_') {
            at += 2;
        } else {
            return Some(at);
        }
    }
}

fn push(line: &mut Line, text: &str, italic: bool) {
    if text.is_empty() {
        return;
    }
    line.push(Run { text: bind(&text.replace("__", "_"), italic), italic });
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &[(&str, bool)]) {
        let line = unmarked(text);
        let seen: Vec<(String, bool)> = line.iter().map(|run| (cleared(&run.text), run.italic)).collect();
        let expected: Vec<(String, bool)> =
            expected.iter().map(|(text, italic)| ((*text).to_owned(), *italic)).collect();
        assert_eq!(seen, expected, "{text}");
        assert_eq!(unmarked(&marked(&line)), line, "{text} comes back");
    }

    #[test]
    fn marks_set_italics() {
        check("ex _Salix caprea_ L.", &[("ex ", false), ("Salix caprea", true), (" L.", false)]);
        check("_Salix_", &[("Salix", true)]);
        check("plain", &[("plain", false)]);
        check("", &[]);
    }

    #[test]
    fn lone_and_doubled_marks_are_letters() {
        check("A__7", &[("A_7", false)]);
        check("_a__b_", &[("a_b", true)]);
        assert_eq!(unmarked("plot A_7"), vec![Run::upright("plot A_7")]);
    }

    #[test]
    fn plain_text_has_no_marks_of_breaking() {
        assert_eq!(plain(&[Run::upright("leg.\u{a0}I.\u{a0}Varga, \u{200b}x")]), "leg. I. Varga, x");
    }
}
