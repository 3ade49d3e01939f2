//! Which letters of a text were asked for.

use leptos::prelude::*;

/// The text with what was asked for underlined.
pub fn marked(text: &str, words: &[String]) -> AnyView {
    let part = |(said, found): (String, bool)| {
        if found { view! { <mark>{said}</mark> }.into_any() } else { said.into_any() }
    };
    parts(text, words).into_iter().map(part).collect_view().into_any()
}

/// The text in parts, each with whether it was asked for. Capitals do not matter.
fn parts(text: &str, words: &[String]) -> Vec<(String, bool)> {
    let letters: Vec<char> = text.chars().collect();
    let small: Vec<char> = letters.iter().map(|letter| letter.to_lowercase().next().unwrap_or(*letter)).collect();
    let mut found = vec![false; letters.len()];
    for word in words.iter().map(|word| word.chars().flat_map(char::to_lowercase).collect::<Vec<char>>()) {
        if word.is_empty() {
            continue;
        }
        for at in (0..small.len()).filter(|at| small[*at..].starts_with(&word)) {
            found[at..at + word.len()].fill(true);
        }
    }
    let mut parts: Vec<(String, bool)> = Vec::new();
    for (letter, found) in letters.into_iter().zip(found) {
        match parts.last_mut() {
            Some((said, same)) if *same == found => said.push(letter),
            _ => parts.push((letter.to_string(), found)),
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::parts;

    fn check(text: &str, words: &[&str], expected: &[(&str, bool)]) {
        let words: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
        let found = parts(text, &words);
        let found: Vec<(&str, bool)> = found.iter().map(|(said, found)| (said.as_str(), *found)).collect();
        assert_eq!(found, expected);
    }

    #[test]
    fn what_was_asked_for_is_found_wherever_it_stands() {
        check("D. Okoro", &["okoro"], &[("D. ", false), ("Okoro", true)]);
        check("Mill Meadow", &["m", "ea"], &[("M", true), ("ill ", false), ("Mea", true), ("dow", false)]);
        check("Grüner Weg", &["GRÜN"], &[("Grün", true), ("er Weg", false)]);
        check("Tarn", &["x", ""], &[("Tarn", false)]);
        check("", &["x"], &[]);
    }
}
