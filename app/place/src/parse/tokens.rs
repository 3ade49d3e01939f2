//! A plain text cut into numbers with their marks, letters and separators.

use super::Problem;

/// What a number is marked as.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Mark {
    Degree,
    Minute,
    Second,
}

/// A letter of the compass as written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Compass {
    North,
    South,
    East,
    West,
    /// `O`: east in German and Dutch, west in French, Italian and Spanish.
    O,
}

/// A number as written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number {
    /// Without its sign.
    pub(super) value: f64,
    pub(super) decimals: usize,
    /// `Some(true)` for minus, `Some(false)` for plus.
    pub(super) negative: Option<bool>,
    pub(super) mark: Option<Mark>,
}

/// A piece of the text.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Token {
    Number(Number),
    Letter(Compass),
    /// `lat` or `lon`: true for latitude.
    Axis(bool),
    /// A height in metres that stands beside the coordinates.
    Height(f64),
    Separator,
    Word(String),
}

/// Words that announce a height.
const HEIGHTS: [&str; 6] = ["elev", "elevation", "alt", "altitude", "height", "asl"];

/// The pieces of a text, and whether a comma in it may be read in two ways.
pub(super) fn tokens(text: &str) -> (Vec<Token>, Option<Problem>) {
    let signs: Vec<char> = text.chars().collect();
    let (roles, unclear) = roles(&signs);
    let mut tokens: Vec<Token> = Vec::with_capacity(12);
    let mut at = 0;
    while at < signs.len() {
        at = match signs[at] {
            '0'..='9' => number(&signs, &roles, at, None, &mut tokens),
            '.' if next_digit(&signs, at) && !previous_digit(&signs, at) => {
                number(&signs, &roles, at, None, &mut tokens)
            }
            '+' | '-' => sign(&signs, &roles, at, &mut tokens),
            '°' => mark(&mut tokens, Mark::Degree, at),
            '\'' => mark(&mut tokens, Mark::Minute, at),
            '"' => mark(&mut tokens, Mark::Second, at),
            ',' | ';' | '/' => {
                tokens.push(Token::Separator);
                at + 1
            }
            letter if letter.is_alphabetic() => word(&signs, at, &mut tokens),
            _ => at + 1,
        };
    }
    (tokens, unclear)
}

fn next_digit(signs: &[char], at: usize) -> bool {
    signs.get(at + 1).is_some_and(char::is_ascii_digit)
}

fn previous_digit(signs: &[char], at: usize) -> bool {
    at > 0 && signs[at - 1].is_ascii_digit()
}

/// Reads a number that starts here; `negative` is the sign before it.
fn number(signs: &[char], roles: &[bool], start: usize, negative: Option<bool>, tokens: &mut Vec<Token>) -> usize {
    let mut at = start;
    let mut text = String::with_capacity(24);
    let mut decimals = None;
    while at < signs.len() {
        match signs[at] {
            digit @ '0'..='9' => {
                text.push(digit);
                decimals = decimals.map(|count: usize| count + 1);
            }
            '.' | ',' if decimals.is_none() && roles[at] => {
                text.push('.');
                decimals = Some(0);
            }
            _ => break,
        }
        at += 1;
    }
    // A point at the end belongs to the sentence.
    let value = text.trim_end_matches('.').parse().unwrap_or(f64::INFINITY);
    let announced = matches!(tokens.last(), Some(Token::Word(word)) if HEIGHTS.contains(&word.to_lowercase().as_str()));
    if announced {
        tokens.pop();
        tokens.push(Token::Height(if negative == Some(true) { -value } else { value }));
    } else {
        tokens.push(Token::Number(Number { value, decimals: decimals.unwrap_or(0), negative, mark: None }));
    }
    at.max(start + 1)
}

/// Reads a plus or minus: a sign before a number, or a dash between two.
fn sign(signs: &[char], roles: &[bool], at: usize, tokens: &mut Vec<Token>) -> usize {
    let negative = Some(signs[at] == '-');
    let starts = |at: usize| {
        signs.get(at).is_some_and(char::is_ascii_digit) || (signs.get(at) == Some(&'.') && next_digit(signs, at))
    };
    let attached = at > 0 && signs[at - 1].is_alphanumeric();
    if starts(at + 1) && !attached {
        let end = number(signs, roles, at + 1, negative, tokens);
        // Between degrees and minutes a dash only joins: 47°-36'.
        let joins = at > 0 && "°'".contains(signs[at - 1]) && signs.get(end).is_some_and(|sign| "'\"".contains(*sign));
        if let (true, Some(Token::Number(number))) = (joins, tokens.last_mut()) {
            number.negative = None;
        }
        return end;
    }
    // A minus with a blank behind it counts where a coordinate begins.
    let begins = matches!(tokens.last(), None | Some(Token::Separator | Token::Axis(_)));
    let blanks = signs[at + 1..].iter().take_while(|sign| **sign == ' ').count();
    if begins && starts(at + 1 + blanks) {
        return number(signs, roles, at + 1 + blanks, negative, tokens);
    }
    at + 1
}

/// Marks the number before.
fn mark(tokens: &mut [Token], mark: Mark, at: usize) -> usize {
    if let Some(Token::Number(number)) = tokens.last_mut() {
        number.mark = number.mark.or(Some(mark));
    }
    at + 1
}

/// Reads a word.
fn word(signs: &[char], start: usize, tokens: &mut Vec<Token>) -> usize {
    let end = signs[start..].iter().position(|sign| !sign.is_alphabetic()).map_or(signs.len(), |length| start + length);
    let text: String = signs[start..end].iter().collect();
    if !known(&text, tokens) {
        // Seconds and letter in one: 50sN.
        let (first, rest) = text.split_at(text.chars().next().map_or(0, char::len_utf8));
        let before = tokens.clone();
        if !(known(first, tokens) && !rest.is_empty() && known(rest, tokens)) {
            *tokens = before;
            tokens.push(Token::Word(text));
        }
    }
    end
}

/// Takes up a word that belongs to coordinates; false for any other.
fn known(text: &str, tokens: &mut Vec<Token>) -> bool {
    let lower = text.to_lowercase();
    if let Some(mark) = word_mark(text, &lower, tokens) {
        if let Some(Token::Number(number)) = tokens.last_mut() {
            number.mark = Some(mark);
        }
        return true;
    }
    if let ("m" | "metres" | "meters" | "masl", Some(height)) = (lower.as_str(), height_before(tokens)) {
        tokens.pop();
        tokens.push(Token::Height(height));
        return true;
    }
    // What follows a height says what it is above.
    if matches!(tokens.last(), Some(Token::Height(_))) && (lower == "m" || HEIGHTS.contains(&lower.as_str())) {
        return true;
    }
    let token = match lower.as_str() {
        "n" | "north" | "nord" | "norte" => Token::Letter(Compass::North),
        "s" | "south" | "sud" | "süd" | "sur" => Token::Letter(Compass::South),
        "e" | "east" | "est" | "ost" | "este" => Token::Letter(Compass::East),
        "w" | "west" | "ouest" | "oeste" | "ovest" => Token::Letter(Compass::West),
        "o" => Token::Letter(Compass::O),
        "lat" | "latitude" | "breite" => Token::Axis(true),
        "lon" | "long" | "lng" | "longitude" | "länge" => Token::Axis(false),
        _ => return false,
    };
    tokens.push(token);
    true
}

/// The number before a unit of length, when it is no part of an angle.
fn height_before(tokens: &[Token]) -> Option<f64> {
    match tokens.last() {
        Some(Token::Number(Number { value, negative, mark: None, .. })) => {
            Some(if *negative == Some(true) { -value } else { *value })
        }
        _ => None,
    }
}

/// The mark that a word or letter sets on the number before it. Single letters count only in their order, so that
/// the `S` of south is not taken for seconds.
fn word_mark(text: &str, lower: &str, tokens: &[Token]) -> Option<Mark> {
    let mut numbers = tokens.iter().rev();
    let Some(Token::Number(Number { mark: None, .. })) = numbers.next() else { return None };
    let before = match numbers.next() {
        Some(Token::Number(number)) => number.mark,
        _ => None,
    };
    match lower {
        "d" | "deg" | "degree" | "degrees" | "grad" => Some(Mark::Degree),
        "min" | "minute" | "minutes" => Some(Mark::Minute),
        "sec" | "second" | "seconds" => Some(Mark::Second),
        "m" if before == Some(Mark::Degree) => Some(Mark::Minute),
        _ if text == "s" && before == Some(Mark::Minute) => Some(Mark::Second),
        _ => None,
    }
}

/// For every sign whether it is a decimal point or comma, and whether that is unclear.
fn roles(signs: &[char]) -> (Vec<bool>, Option<Problem>) {
    let mut roles = vec![false; signs.len()];
    let between = |at: usize| previous_digit(signs, at) && next_digit(signs, at);
    let of = |sign: char| -> Vec<usize> { (0..signs.len()).filter(|at| signs[*at] == sign).collect() };
    let (inner, outer): (Vec<usize>, Vec<usize>) = of('.').into_iter().partition(|at| between(*at));
    let mut points = false;
    // A point is decimal unless it is one of several in a row of digits: 47.36.50.
    for cluster in clusters(signs, &inner) {
        roles[cluster[0]] = cluster.len() == 1;
        points |= cluster.len() == 1;
    }
    // A point that begins or ends a number: .5 and 47.
    for at in outer {
        roles[at] = previous_digit(signs, at) || next_digit(signs, at);
    }
    if points {
        return (roles, None);
    }
    let commas = clusters(signs, &of(',').into_iter().filter(|at| between(*at)).collect::<Vec<_>>());
    match commas.as_slice() {
        // 47,6138,12,3043
        [only] if only.len() == 3 => {
            roles[only[0]] = true;
            roles[only[2]] = true;
            (roles, None)
        }
        // 47,12: two whole numbers, or one with a decimal comma.
        [only] if only.len() == 1 && numbers_in(signs) == 2 => {
            let decimals = signs[only[0] + 1..].iter().take_while(|sign| sign.is_ascii_digit()).count();
            roles[only[0]] = decimals > 3;
            (roles, Some(Problem::Comma))
        }
        clusters => {
            for cluster in clusters.iter().filter(|cluster| cluster.len() == 1) {
                roles[cluster[0]] = true;
            }
            (roles, None)
        }
    }
}

/// Places gathered where only digits lie between them.
fn clusters(signs: &[char], places: &[usize]) -> Vec<Vec<usize>> {
    let mut clusters: Vec<Vec<usize>> = Vec::new();
    for &place in places {
        match clusters.last_mut() {
            Some(cluster) if signs[cluster[cluster.len() - 1] + 1..place].iter().all(char::is_ascii_digit) => {
                cluster.push(place);
            }
            _ => clusters.push(vec![place]),
        }
    }
    clusters
}

/// How many rows of digits there are.
fn numbers_in(signs: &[char]) -> usize {
    (0..signs.len()).filter(|at| signs[*at].is_ascii_digit() && !previous_digit(signs, *at)).count()
}
