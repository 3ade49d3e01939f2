//! Two coordinates made into readings: which is the latitude.

use super::groups::{Angle, Group, angle, pair};
use super::tokens::{Token, tokens};
use super::{Notation, Problem, Work};
use units::{Latitude, Longitude};

/// Reads degrees in any of their notations.
pub(super) fn read(work: &mut Work, text: &str) {
    let (tokens, unclear) = tokens(text);
    for token in &tokens {
        match token {
            Token::Word(word) => work.words_left(word),
            Token::Height(height) => work.problem(Problem::Height(*height)),
            Token::Number(_) | Token::Letter(_) | Token::Axis(_) | Token::Separator => {}
        }
    }
    let numbers = tokens.iter().filter(|token| matches!(token, Token::Number(_))).count();
    let Some((first, second)) = pair(&tokens) else {
        return match numbers {
            0 => work.problem(Problem::Nothing),
            1..=3 => single(work, &tokens),
            _ => work.problem(Problem::TooManyNumbers),
        };
    };
    if let Some(problem) = unclear {
        work.problem(problem);
    }
    if let (Some(one), Some(two)) = (angle_or_problem(work, &first), angle_or_problem(work, &second)) {
        in_order(work, (&first, &one), (&second, &two));
    }
}

/// One coordinate alone: nothing to read, but what is wrong with it is said.
fn single(work: &mut Work, tokens: &[Token]) {
    work.problem(Problem::OneNumber);
    let mut group = Group::default();
    for token in tokens {
        match token {
            Token::Number(number) => group.numbers.push(*number),
            Token::Letter(letter) => group.letter = Some(*letter),
            Token::Axis(latitude) => group.word = Some(*latitude),
            Token::Height(_) | Token::Separator | Token::Word(_) => {}
        }
    }
    if let Some(angle) = angle_or_problem(work, &group) {
        let value = angle.values[0];
        match group.is_latitude() {
            Some(true) if value.abs() > 90.0 => work.problem(Problem::LatitudeRange(value)),
            _ if value.abs() > 180.0 => work.problem(Problem::LongitudeRange(value)),
            _ => {}
        }
    }
}

fn angle_or_problem(work: &mut Work, group: &Group) -> Option<Angle> {
    match angle(group) {
        Ok(angle) => {
            for problem in &angle.problems {
                work.problem(problem.clone());
            }
            Some(angle)
        }
        Err(problem) => {
            work.problem(problem);
            None
        }
    }
}

/// Adds the readings in the order that letters and words say, or in both.
fn in_order(work: &mut Work, first: (&Group, &Angle), second: (&Group, &Angle)) {
    let latitude_first = match (first.0.is_latitude(), second.0.is_latitude()) {
        (Some(one), Some(two)) if one == two => {
            // Two latitudes, or two longitudes: the letters say nothing that can be followed.
            return work.problem(Problem::OneNumber);
        }
        (Some(one), _) => Some(one),
        (None, Some(two)) => Some(!two),
        (None, None) => None,
    };
    let (usual, other) = ((first.1, second.1), (second.1, first.1));
    match latitude_first {
        Some(true) => said(work, usual),
        Some(false) => said(work, other),
        None => either(work, usual, other),
    }
}

/// The order is said; where it cannot be, the other is offered with the suspicion.
fn said(work: &mut Work, (latitude, longitude): (&Angle, &Angle)) {
    if fits(latitude, longitude) {
        return readings(work, latitude, longitude);
    }
    out_of_range(work, latitude, longitude);
    if fits(longitude, latitude) {
        work.problem(Problem::Swapped);
        readings(work, longitude, latitude);
    }
}

/// Nothing says the order: latitude first is usual, the other is shown too where it is possible.
fn either(work: &mut Work, usual: (&Angle, &Angle), other: (&Angle, &Angle)) {
    match (fits(usual.0, usual.1), fits(other.0, other.1)) {
        (true, true) if usual.0.values != usual.1.values => {
            work.problem(Problem::Order);
            readings(work, usual.0, usual.1);
            readings(work, other.0, other.1);
        }
        (true, _) => readings(work, usual.0, usual.1),
        (false, true) => {
            work.problem(Problem::Swapped);
            readings(work, other.0, other.1);
        }
        (false, false) => out_of_range(work, usual.0, usual.1),
    }
}

/// Whether every value can be what it is taken for.
fn fits(latitude: &Angle, longitude: &Angle) -> bool {
    latitude.values.iter().all(|value| value.abs() <= 90.0) && longitude.values.iter().all(|value| value.abs() <= 180.0)
}

fn out_of_range(work: &mut Work, latitude: &Angle, longitude: &Angle) {
    if let Some(value) = latitude.values.iter().find(|value| value.abs() > 90.0) {
        work.problem(Problem::LatitudeRange(*value));
    }
    if let Some(value) = longitude.values.iter().find(|value| value.abs() > 180.0) {
        work.problem(Problem::LongitudeRange(*value));
    }
}

fn readings(work: &mut Work, latitude: &Angle, longitude: &Angle) {
    let notation = finest(latitude.notation, longitude.notation);
    for north in latitude.values.iter().copied().filter_map(Latitude::new) {
        for east in longitude.values.iter().copied().filter_map(Longitude::new) {
            work.reading((north, latitude.step), (east, longitude.step), notation);
        }
    }
}

/// The notation with the smaller unit.
fn finest(one: Notation, other: Notation) -> Notation {
    let rank = |notation| match notation {
        Notation::Seconds => 2,
        Notation::Minutes => 1,
        _ => 0,
    };
    if rank(one) >= rank(other) { one } else { other }
}
