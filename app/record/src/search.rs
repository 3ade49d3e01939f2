//! Words looked for in texts, whatever their case and their accents.
//!
//! In go the words that a person typed and the texts of records, out come the places where they stand. `Pořín` is
//! found by `porin`, and `porin` by `Pořín`. What a record is, and which of its texts may be found, is decided
//! elsewhere.

use std::ops::Range;

/// One word of a question, folded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Word {
    folded: String,
}

/// The words of a question; none when nothing was typed.
pub fn words(text: &str) -> Vec<Word> {
    text.split_whitespace().map(|word| Word { folded: fold(word) }).filter(|word| !word.folded.is_empty()).collect()
}

impl Word {
    /// True when the word stands somewhere in the text.
    pub fn is_in(&self, text: &str) -> bool {
        fold(text).contains(&self.folded)
    }

    /// Tells which of many ASCII texts, one after the other in `bytes`, hold the word.
    pub(crate) fn find_in_ascii(
        &self,
        bytes: &[u8],
        end_of: impl Fn(usize) -> Option<usize>,
        texts: usize,
        found: &mut impl FnMut(usize),
    ) {
        let needle = self.folded.as_bytes();
        let (first, rest) = needle.split_first().expect("a word has a letter");
        let mut from = 0;
        while let Some(offset) = find_letter(&bytes[from..], *first) {
            let at = from + offset;
            let stop = at + needle.len();
            from = at + 1;
            let Some(tail) = bytes.get(at + 1..stop) else { return };
            if !tail.eq_ignore_ascii_case(rest) {
                continue;
            }
            let Some(place) = text_at(at, &end_of, texts) else { return };
            let end = end_of(place).unwrap_or(bytes.len());
            if stop <= end {
                found(place);
                from = end.max(from);
            }
        }
    }
}

fn find_letter(bytes: &[u8], lower: u8) -> Option<usize> {
    memchr::memchr2(lower, lower.to_ascii_uppercase(), bytes)
}

/// The text in which a byte lies: the first that ends behind it.
fn text_at(at: usize, end_of: &impl Fn(usize) -> Option<usize>, texts: usize) -> Option<usize> {
    let (mut low, mut high) = (0, texts);
    while low < high {
        let middle = low.midpoint(high);
        if end_of(middle)? <= at { low = middle + 1 } else { high = middle }
    }
    (low < texts).then_some(low)
}

/// Texts beyond ASCII as a search compares them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Folded {
    text: String,
    ends: Vec<usize>,
}

impl Folded {
    pub(crate) fn of<'a>(texts: impl Iterator<Item = &'a str>) -> Self {
        let mut folded = Self::default();
        for text in texts {
            fold_into(text, &mut folded.text);
            folded.ends.push(folded.text.len());
        }
        folded
    }

    fn range(&self, place: usize) -> Range<usize> {
        let start = place.checked_sub(1).map_or(0, |before| self.ends[before]);
        start..self.ends[place]
    }

    /// Tells the places of the texts that hold a word.
    pub(crate) fn find(&self, word: &Word, found: &mut dyn FnMut(usize)) {
        (0..self.ends.len()).filter(|place| self.text[self.range(*place)].contains(&word.folded)).for_each(found);
    }
}

/// Small letters without their accents.
pub fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    fold_into(text, &mut folded);
    folded
}

fn fold_into(text: &str, out: &mut String) {
    for letter in text.chars() {
        if letter.is_ascii() {
            out.push(letter.to_ascii_lowercase());
        } else {
            letter.to_lowercase().for_each(|letter| plain(letter, out));
        }
    }
}

/// Latin letters and what they are without accents, ligatures taken apart.
const PLAIN: [(&str, &str); 31] = [
    ("àáâãäåāăąǎǻ", "a"),
    ("çćĉċč", "c"),
    ("ďđð", "d"),
    ("èéêëēĕėęě", "e"),
    ("ĝğġģǧ", "g"),
    ("ĥħ", "h"),
    ("ìíîïĩīĭįıǐ", "i"),
    ("ĵ", "j"),
    ("ķ", "k"),
    ("ĺļľŀł", "l"),
    ("ñńņňŋ", "n"),
    ("òóôõöøōŏőǒǿ", "o"),
    ("ŕŗř", "r"),
    ("śŝşšș", "s"),
    ("ţťŧț", "t"),
    ("ùúûüũūŭůűųǔ", "u"),
    ("ŵ", "w"),
    ("ýÿŷ", "y"),
    ("źżž", "z"),
    ("æǽ", "ae"),
    ("œ", "oe"),
    ("ß", "ss"),
    ("þ", "th"),
    ("ĳ", "ij"),
    ("ά", "α"),
    ("έ", "ε"),
    ("ή", "η"),
    ("ίϊΐ", "ι"),
    ("ό", "ο"),
    ("ύϋΰ", "υ"),
    ("ώ", "ω"),
];

fn plain(letter: char, out: &mut String) {
    if ('\u{300}'..='\u{36f}').contains(&letter) {
        return;
    }
    match PLAIN.iter().find(|(letters, _)| letters.contains(letter)) {
        Some((_, plain)) => out.push_str(plain),
        None => out.push(letter),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn case_and_accents_make_no_difference() {
        for (text, folded) in [
            ("Pořín", "porin"),
            ("Porˇi\u{301}n", "porˇin"),
            ("ØSTERBY", "osterby"),
            ("Weißenfels", "weissenfels"),
            ("Œuf", "oeuf"),
            ("Ёлка", "ёлка"),
            ("Άνω", "ανω"),
            ("İzmir", "izmir"),
        ] {
            assert_eq!(fold(text), folded);
        }
    }

    #[test]
    fn blank_questions_have_no_words() {
        assert!(words("  ").is_empty());
        assert_eq!(words(" light  TRAP ").len(), 2);
    }

    #[test]
    fn a_word_across_the_border_of_two_texts_is_not_found() {
        let ends = [3, 6, 12];
        let found = |word: &str| {
            let mut places = Vec::new();
            words(word)[0]
                .find_in_ascii(b"bigcatCATbig", |place| ends.get(place).copied(), 3, &mut |at| places.push(at));
            places
        };
        assert_eq!(found("cat"), [1, 2]);
        assert_eq!(found("gc"), [0_usize; 0]);
        assert_eq!(found("big"), [0, 2]);
        assert_eq!(found("bigc"), [0_usize; 0]);
    }
}
