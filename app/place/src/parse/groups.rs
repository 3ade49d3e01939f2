//! Pieces of a text gathered into two coordinates, and each coordinate made into degrees.

use super::tokens::{Compass, Mark, Number, Token};
use super::uris::decimal_step;
use super::{Notation, Problem};
use units::Degrees;

/// The numbers of one coordinate with what says which one it is.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Group {
    pub(super) numbers: Vec<Number>,
    pub(super) letter: Option<Compass>,
    /// `Some(true)` for a latitude by word.
    pub(super) word: Option<bool>,
}

impl Group {
    /// Whether it is a latitude, by letter or word; `None` where nothing says so.
    pub(super) fn is_latitude(&self) -> Option<bool> {
        match self.letter {
            Some(Compass::North | Compass::South) => Some(true),
            Some(Compass::East | Compass::West | Compass::O) => Some(false),
            None => self.word,
        }
    }
}

/// The two coordinates of a text. `None` when its pieces make no two.
pub(super) fn pair(tokens: &[Token]) -> Option<(Group, Group)> {
    let by_letters = by_letters(tokens);
    let by_separators = || split(tokens, |_, token| matches!(token, Token::Separator));
    let by_words = || split(tokens, |_, token| matches!(token, Token::Axis(_)));
    let by_numbers = || split(tokens, begins_coordinate);
    by_letters.or_else(by_words).or_else(by_separators).or_else(by_numbers).or_else(|| halves(tokens))
}

/// A pair is one when both have one to three numbers, beginning with degrees.
fn two(groups: Vec<Group>) -> Option<(Group, Group)> {
    let mut groups: Vec<Group> = groups.into_iter().filter(|group| *group != Group::default()).collect();
    let degrees = |group: &Group| group.numbers.first().is_some_and(|number| number.mark <= Some(Mark::Degree));
    let fits = groups.len() == 2 && groups.iter().all(|group| group.numbers.len() <= 3 && degrees(group));
    let second = groups.pop().filter(|_| fits)?;
    Some((groups.pop()?, second))
}

/// With two letters, each belongs to the numbers before it, or to those after it where a letter comes first.
fn by_letters(tokens: &[Token]) -> Option<(Group, Group)> {
    let letters = tokens.iter().filter(|token| matches!(token, Token::Letter(_))).count();
    let first = tokens.iter().find(|token| matches!(token, Token::Letter(_) | Token::Number(_)))?;
    if letters != 2 {
        return None;
    }
    let before = matches!(first, Token::Letter(_));
    let mut groups = vec![Group::default()];
    for token in tokens {
        let letter = matches!(token, Token::Letter(_));
        if letter && before {
            groups.push(Group::default());
        }
        add(groups.last_mut()?, token);
        if letter && !before {
            groups.push(Group::default());
        }
    }
    two(groups)
}

/// Cut wherever something begins or separates.
fn split(tokens: &[Token], cuts: impl Fn(&Group, &Token) -> bool) -> Option<(Group, Group)> {
    let mut groups = vec![Group::default()];
    for token in tokens {
        if cuts(groups.last()?, token) && !groups.last()?.numbers.is_empty() {
            groups.push(Group::default());
        }
        add(groups.last_mut()?, token);
    }
    two(groups)
}

/// A number with its own sign, or with degrees after there were some, begins the second coordinate.
fn begins_coordinate(group: &Group, token: &Token) -> bool {
    let Token::Number(number) = token else { return false };
    number.negative.is_some() || (number.mark == Some(Mark::Degree) && !group.numbers.is_empty())
}

/// Two, four or six numbers in a row are two coordinates.
fn halves(tokens: &[Token]) -> Option<(Group, Group)> {
    let count = tokens.iter().filter(|token| matches!(token, Token::Number(_))).count();
    if count % 2 == 1 {
        return None;
    }
    split(tokens, |group, token| matches!(token, Token::Number(_)) && group.numbers.len() == count / 2)
}

fn add(group: &mut Group, token: &Token) {
    match token {
        Token::Number(number) => group.numbers.push(*number),
        Token::Letter(letter) => group.letter = Some(*letter),
        Token::Axis(latitude) => group.word = Some(*latitude),
        Token::Height(_) | Token::Separator | Token::Word(_) => {}
    }
}

/// A coordinate in degrees, with every value that sign and letter allow.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Angle {
    pub(super) values: Vec<f64>,
    pub(super) step: Degrees,
    pub(super) notation: Notation,
    pub(super) problems: Vec<Problem>,
}

/// The degrees of a coordinate.
///
/// **Errors**: what makes it unreadable: a fraction before a smaller unit, more than 60 minutes or seconds, marks out
/// of order.
pub(super) fn angle(group: &Group) -> Result<Angle, Problem> {
    let slots = slots(&group.numbers)?;
    let mut problems = Vec::new();
    for (value, problem) in [(slots[1], Problem::Minutes as fn(f64) -> Problem), (slots[2], Problem::Seconds)] {
        match value {
            // 60 itself is a minute too many, carried wrongly; what is meant is plain.
            Some(value) if value == 60.0 => problems.push(problem(value)),
            Some(value) if value > 60.0 => return Err(problem(value)),
            _ => {}
        }
    }
    let part = |slot: usize| slots[slot].unwrap_or(0.0);
    let degrees = part(0) + part(1) / 60.0 + part(2) / 3600.0;
    let (unit, notation) = match slots {
        [_, None, None] => (1.0, Notation::Decimal),
        [_, _, None] => (60.0, Notation::Minutes),
        _ => (3600.0, Notation::Seconds),
    };
    let decimals = group.numbers.last().map_or(0, |number| number.decimals);
    let step = Degrees::new(decimal_step(decimals).degrees() / unit).ok_or(Problem::Nothing)?;
    let values = values(group, degrees, &mut problems);
    Ok(Angle { values, step, notation, problems })
}

/// Degrees, minutes and seconds by their marks, and by their order where there are none.
fn slots(numbers: &[Number]) -> Result<[Option<f64>; 3], Problem> {
    let mut slots = [None; 3];
    let mut next = 0;
    for (at, number) in numbers.iter().enumerate() {
        let slot = number.mark.map_or(next, |mark| mark as usize);
        // The first number is degrees, each other a smaller unit than the one before.
        if slot < next
            || slot > 2
            || (at == 0 && slot != 0)
            || (at > 0 && number.negative.is_some())
            || !number.value.is_finite()
        {
            return Err(Problem::NotUnderstood(number.value.to_string()));
        }
        if at + 1 < numbers.len() && number.value.fract() != 0.0 {
            return Err(Problem::FractionBefore);
        }
        slots[slot] = Some(number.value);
        next = slot + 1;
    }
    Ok(slots)
}

/// The values that sign and letter allow, the letter's first.
fn values(group: &Group, degrees: f64, problems: &mut Vec<Problem>) -> Vec<f64> {
    let sign = group.numbers.first().and_then(|number| number.negative);
    let by_letter = match group.letter {
        Some(Compass::North | Compass::East) => Some(false),
        Some(Compass::South | Compass::West) => Some(true),
        Some(Compass::O) => {
            problems.push(Problem::LetterO);
            return vec![degrees, -degrees];
        }
        None => None,
    };
    let signed = |negative: bool| if negative { -degrees } else { degrees };
    match (by_letter, sign) {
        (Some(letter), Some(sign)) if letter != sign => {
            problems.push(Problem::SignAndLetter);
            vec![signed(letter), signed(sign)]
        }
        (Some(negative), _) | (None, Some(negative)) => vec![signed(negative)],
        (None, None) => vec![degrees],
    }
}
