//! The words of a line: where it may break, and which letters count.
//!
//! In go runs, out come [`Token`]s that never break. A space is a place to break, gladly after a comma or where a
//! zero-width space says so; a no-break space is none. A break takes the place of a comma before it, as on printed
//! labels: common practice. Letters without ink of their own (joiners, variation
//! selectors, controls) are dropped, since no font needs to have them.

/// A stretch of text in one face.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct Run {
    /// The words.
    pub text: String,
    /// True for italics.
    pub italic: bool,
}

/// One line that starts on a line of its own; it may be broken further.
pub type Line = Vec<Run>;

/// What holds together, and how the line goes on after it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Token {
    /// The text in its faces, no-break spaces as plain ones.
    pub(crate) runs: Vec<Run>,
    /// The space after it.
    pub(crate) gap: Gap,
}

/// The space between two tokens.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Gap {
    /// The face of the space.
    pub(crate) italic: bool,
    /// True where a line breaks gladly.
    pub(crate) glad: bool,
    /// True where a break takes the place of the comma before it.
    pub(crate) instead: bool,
    /// True where there is no space at all: between two letters of a script that breaks anywhere.
    pub(crate) tight: bool,
}

const ZERO_WIDTH_SPACE: char = '\u{200b}';

/// Cuts a line into tokens.
pub(crate) fn tokens(line: &[Run]) -> Vec<Token> {
    let mut cutter = Cutter::default();
    for run in line {
        run.text.chars().for_each(|letter| cutter.take(letter, run.italic));
    }
    cutter.finish()
}

#[derive(Default)]
struct Cutter {
    done: Vec<Token>,
    open: Token,
}

impl Cutter {
    fn take(&mut self, letter: char, italic: bool) {
        match letter {
            ZERO_WIDTH_SPACE => self.mark_glad(),
            '\u{a0}' | '\u{202f}' | '\u{2007}' => self.push(' ', italic),
            space if space.is_whitespace() => self.close(italic),
            inkless if is_inkless(inkless) => {}
            letter => self.letter(letter, italic),
        }
    }

    /// Between two letters of a script without spaces a line breaks anywhere but before a closing mark.
    fn letter(&mut self, letter: char, italic: bool) {
        let last = self.open.runs.last().and_then(|run| run.text.chars().next_back());
        if is_spaceless(letter) && last.is_some_and(|last| is_spaceless(last) || is_closing(last)) {
            self.open.gap = Gap { italic, tight: true, ..Gap::default() };
            self.done.push(std::mem::take(&mut self.open));
        }
        self.push(letter, italic);
    }

    /// Directly after a space: that space is a good place to break.
    fn mark_glad(&mut self) {
        if let Some(last) = self.done.last_mut().filter(|_| self.open.runs.is_empty()) {
            last.gap.glad = true;
        }
    }

    fn push(&mut self, letter: char, italic: bool) {
        match self.open.runs.last_mut() {
            Some(run) if run.italic == italic => run.text.push(letter),
            _ => self.open.runs.push(Run { text: letter.to_string(), italic }),
        }
    }

    fn close(&mut self, italic: bool) {
        if self.open.is_blank() {
            self.open = Token::default();
            return;
        }
        let end = self.open.runs.last().map_or("", |run| run.text.as_str());
        let (glad, instead) = (end.ends_with([',', ';']), end.len() > 1 && end.ends_with(','));
        self.open.gap = Gap { italic, glad, instead, tight: false };
        self.done.push(std::mem::take(&mut self.open));
    }

    fn finish(mut self) -> Vec<Token> {
        self.close(false);
        self.done
    }
}

impl Token {
    /// The text at the end of a line that is broken here.
    pub(crate) fn at_break(&self) -> Vec<Run> {
        let mut runs = self.runs.clone();
        if let Some(last) = runs.last_mut().filter(|_| self.gap.instead) {
            last.text.pop();
        }
        runs
    }

    fn is_blank(&self) -> bool {
        self.runs.iter().all(|run| run.text.trim().is_empty())
    }
}

/// A line of runs that is cut into these tokens again.
pub(crate) fn line_of(tokens: &[Token]) -> Line {
    let mut line = Line::new();
    let mut push = |text: &str, italic: bool| match line.last_mut() {
        Some(Run { text: known, italic: face }) if *face == italic => known.push_str(text),
        _ => line.push(Run { text: text.to_owned(), italic }),
    };
    for (index, token) in tokens.iter().enumerate() {
        let last = index + 1 == tokens.len();
        let runs = if last { token.at_break() } else { token.runs.clone() };
        runs.iter().for_each(|run| push(&run.text.replace(' ', "\u{a0}"), run.italic));
        if !last && !token.gap.tight {
            push(if token.gap.glad { " \u{200b}" } else { " " }, token.gap.italic);
        }
    }
    line
}

/// Ideographs, syllables and marks of scripts that are written without spaces.
/// **Source**: Unicode 17 code charts, the blocks of East Asian scripts.
fn is_spaceless(letter: char) -> bool {
    matches!(letter, '\u{2e80}'..='\u{2fff}' | '\u{3005}'..='\u{3007}' | '\u{3021}'..='\u{30ff}' | '\u{3100}'..='\u{9fff}')
        || matches!(letter, '\u{f900}'..='\u{faff}' | '\u{20000}'..='\u{3ffff}')
}

/// Commas, stops and closing brackets of those scripts.
fn is_closing(letter: char) -> bool {
    matches!(letter, '、' | '。' | '〉' | '》' | '」' | '』' | '】' | '〕' | '\u{ff01}'..='\u{ff0f}')
}

/// Letters of scripts that run from right to left.
/// **Source**: Unicode 17 code charts: Hebrew to Arabic Extended-A, and their presentation forms.
pub(crate) fn is_leftwards(letter: char) -> bool {
    matches!(letter, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefe}')
        && !matches!(letter, '\u{660}'..='\u{669}' | '\u{6f0}'..='\u{6f9}')
}

/// Letters that shape or hide others and have no ink.
fn is_inkless(letter: char) -> bool {
    letter.is_control()
        || matches!(letter, '\u{ad}' | '\u{200c}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}')
        || matches!(letter, '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{e0100}'..='\u{e01ef}')
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Tokens in brackets, `!` after one where the line breaks gladly.
    fn check(text: &str, expected: &str) {
        let tokens = tokens(&[Run { text: text.to_owned(), italic: false }]);
        let said = |token: &Token| {
            let words: String = token.runs.iter().map(|run| run.text.as_str()).collect();
            format!("[{words}]{}", if token.gap.glad { "!" } else { "" })
        };
        assert_eq!(tokens.iter().map(said).collect::<String>(), expected);
    }

    #[test]
    fn spaces_part_and_commas_part_gladly() {
        check("Upper Saltmarsh, old sluice", "[Upper][Saltmarsh,]![old][sluice]");
        check("ORRELAND: Sallow; Tarn", "[ORRELAND:][Sallow;]![Tarn]");
        check("  a   b ", "[a][b]");
        check("", "");
        check("\u{a0}", "");
    }

    #[test]
    fn no_break_spaces_hold() {
        check("leg.\u{a0}I.\u{a0}Varga", "[leg. I. Varga]");
        check("of \u{200b}Salix", "[of]![Salix]");
    }

    #[test]
    fn a_break_takes_the_place_of_a_comma() {
        let ends = |text: &str| tokens(&[Run { text: text.to_owned(), italic: false }])[0].at_break()[0].text.clone();
        assert_eq!(ends("Sallow, Tarn"), "Sallow");
        assert_eq!(ends("Sallow; Tarn"), "Sallow;");
        assert_eq!(ends(", Tarn"), ",");
        assert_eq!(ends("of \u{200b}Salix"), "of");
    }

    #[test]
    fn scripts_without_spaces_break_anywhere_but_before_a_closing_mark() {
        check("日本、東京 x", "[日][本、][東][京][x]");
        check("Tokyo東京", "[Tokyo東][京]");
    }

    #[test]
    fn tokens_make_the_line_again() {
        for text in ["Upper Saltmarsh, \u{200b}old\u{a0}sluice 東京", "leg.\u{a0}I.\u{a0}Varga", ""] {
            let cut = tokens(&[Run { text: text.to_owned(), italic: false }]);
            assert_eq!(tokens(&line_of(&cut)), cut);
        }
    }

    #[test]
    fn letters_without_ink_are_dropped() {
        check("♀\u{fe0f} a\u{ad}b\u{200d}\u{7}", "[♀][ab]");
    }

    #[test]
    fn a_change_of_face_is_no_place_to_break() {
        let line =
            [("(", false), ("Salix", true), (") x", false)].map(|(text, italic)| Run { text: text.into(), italic });
        let tokens = tokens(&line);
        assert_eq!(tokens.len(), 2);
        assert_eq!(tokens[0].runs.len(), 3);
    }
}
