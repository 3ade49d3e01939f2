//! Names written like a question that found nothing.

use super::Like;
use crate::book::Logbook;
use record::search::fold;
use record::{Id, Kind, person, site};

/// How many of each kind are shown.
const SHOWN: usize = 3;

impl Logbook {
    /// Sites and persons whose names are written like the question, the likest first.
    pub(super) fn like(&self, text: &str) -> Like {
        let asked: Vec<Vec<char>> = text.split_whitespace().map(|word| fold(word).chars().collect()).collect();
        let named = |kind: &Kind, field| {
            let named =
                self.all(kind).to_vec().into_iter().filter_map(move |record| Some((record.id, record.get(field)?)));
            likest(&asked, named)
        };
        Like {
            sites: named(&Kind::Site, &site::NAME).into_iter().filter_map(|id| self.site_hit(id)).collect(),
            persons: named(&Kind::Person, &person::NAME).into_iter().filter_map(|id| self.person_hit(id)).collect(),
        }
    }
}

fn likest(asked: &[Vec<char>], named: impl Iterator<Item = (Id, String)>) -> Vec<Id> {
    let mut near: Vec<(usize, Id)> = named.filter_map(|(id, name)| Some((slips(asked, &name)?, id))).collect();
    near.sort_unstable();
    near.into_iter().take(SHOWN).map(|(_, id)| id).collect()
}

/// How many slips turn the words asked into words of the name; `None` when a word is like none of them.
fn slips(asked: &[Vec<char>], name: &str) -> Option<usize> {
    let words: Vec<Vec<char>> =
        name.split(|sign: char| !sign.is_alphanumeric()).map(|word| fold(word).chars().collect()).collect();
    let nearest = |word: &Vec<char>| {
        words.iter().map(|known| distance(word, known)).min().filter(|slips| *slips <= word.len() / 3)
    };
    if asked.is_empty() { None } else { asked.iter().map(nearest).sum() }
}

/// Letters left out, put in or exchanged for others, at least.
///
/// **Source**: Wagner & Fischer, The String-to-String Correction Problem, 1974.
fn distance(a: &[char], b: &[char]) -> usize {
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, letter) in a.iter().enumerate() {
        let mut corner = row[0];
        row[0] = i + 1;
        for (j, other) in b.iter().enumerate() {
            let changed = corner + usize::from(letter != other);
            corner = row[j + 1];
            row[j + 1] = changed.min(row[j] + 1).min(corner + 1);
        }
    }
    row[b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(asked: &str, name: &str, expected: Option<usize>) {
        let asked: Vec<Vec<char>> = asked.split_whitespace().map(|word| fold(word).chars().collect()).collect();
        assert_eq!(slips(&asked, name), expected, "{name}");
    }

    #[test]
    fn a_name_is_like_a_question_when_each_word_is_like_one_of_its_words() {
        check("tarm abot", "Tarn Abbot", Some(2));
        check("tarm abot", "Tarn Beck, gravel bar", None);
        check("tarm", "Tarn Beck, gravel bar", Some(1));
        check("okro", "D. Okoro", Some(1));
        check("xx", "D. Okoro", None);
        check("", "D. Okoro", None);
    }
}
