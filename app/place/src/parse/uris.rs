//! Notations made for machines: `geo:` URIs and strings of ISO 6709.

use super::{Notation, Problem, Work};
use units::{Degrees, Latitude, Longitude, Metres};

/// Reads a `geo:` URI; false when it is none.
///
/// **Source**: RFC 5870: latitude, longitude, perhaps a height; `crs` names the datum, `u` is the radius in metres.
pub(super) fn geo(work: &mut Work, text: &str) -> bool {
    let Some(rest) = text.get(..4).filter(|start| start.eq_ignore_ascii_case("geo:")).and(text.get(4..)) else {
        return false;
    };
    let mut parts = rest.trim().split([';', '?']);
    let numbers: Vec<&str> = parts.next().unwrap_or("").split(',').map(str::trim).collect();
    for part in parts {
        parameter(work, part);
    }
    match numbers[..] {
        [latitude, longitude, ..] if numbers.len() <= 3 => {
            degrees(work, latitude, longitude);
            if let Some(height) = numbers.get(2) {
                match height.parse::<f64>() {
                    Ok(height) if height.is_finite() => work.problem(Problem::Height(height)),
                    _ => work.words_left(height),
                }
            }
        }
        [_] => work.problem(Problem::OneNumber),
        _ => work.problem(Problem::TooManyNumbers),
    }
    true
}

fn parameter(work: &mut Work, part: &str) {
    match part.split_once('=') {
        Some((name, value)) if name.eq_ignore_ascii_case("u") => {
            match value.parse().ok().filter(|radius: &f64| *radius >= 0.0).and_then(Metres::new) {
                Some(radius) => work.stated = Some(radius),
                None => work.words_left(part),
            }
        }
        Some((name, value)) if name.trim().eq_ignore_ascii_case("crs") => {
            // A datum that is known was taken out before, with what is to be said about it.
            if !value.trim().is_empty() {
                work.problem(Problem::Datum(value.trim().to_owned()));
            }
        }
        _ => work.words_left(part),
    }
}

/// Two plain numbers of degrees.
fn degrees(work: &mut Work, latitude: &str, longitude: &str) {
    let number = |text: &str| text.parse::<f64>().ok().filter(|value| value.is_finite() && plain_number(text));
    let (Some(lat), Some(lon)) = (number(latitude), number(longitude)) else {
        work.words_left(&format!("{latitude},{longitude}"));
        return;
    };
    let step = |text: &str| decimal_step(text.split_once('.').map_or(0, |(_, decimals)| decimals.len()));
    match (Latitude::new(lat), Longitude::new(lon).filter(|_| lon.abs() <= 180.0)) {
        (Some(lat), Some(lon)) => work.reading((lat, step(latitude)), (lon, step(longitude)), Notation::GeoUri),
        (None, _) => work.problem(Problem::LatitudeRange(lat)),
        (_, None) => work.problem(Problem::LongitudeRange(lon)),
    }
}

fn plain_number(text: &str) -> bool {
    text.chars().all(|sign| sign.is_ascii_digit() || "+-.".contains(sign))
}

/// The size of the last of so many decimals.
pub(super) fn decimal_step(decimals: usize) -> Degrees {
    // Powers of ten up to this one are exact, and the quotient of exact numbers is rounded once.
    const EXACT: [f64; 23] = [
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22,
    ];
    let step = EXACT.get(decimals).map_or_else(|| libm::pow(10.0, -(decimals.min(30) as f64)), |power| 1.0 / power);
    Degrees::new(step).expect("a power of ten is finite")
}

/// Reads a string of ISO 6709, `+47.6138+012.3043/`; false when the text is not like one.
///
/// **Source**: ISO 6709:2008, Annex H: D, DM or DMS with 2, 4 or 6 digits before the point for latitudes and 3, 5 or 7
/// for longitudes, a solidus at the end.
pub(super) fn iso6709(work: &mut Work, text: &str) -> bool {
    let compact = text.trim();
    if !compact.starts_with(['+', '-']) {
        return false;
    }
    let (body, ended) = match compact.strip_suffix('/') {
        Some(body) => (body, true),
        None => (compact, false),
    };
    // The datum was taken out before; what is left of its mark goes too.
    let body = body.trim().trim_end_matches("CRS").trim();
    let Some(parts) = signed_parts(body) else { return false };
    let [latitude, longitude, rest @ ..] = parts.as_slice() else { return false };
    let (lat, lon) = (packed(latitude, 2), packed(longitude, 3));
    let ((Some(lat), Some(lon)), true) = ((lat, lon), rest.len() <= 1) else {
        // Two signed decimals in a row are read as such; only the solidus promises a string of the standard.
        if ended {
            work.problem(Problem::Iso6709Digits);
        }
        return ended;
    };
    if !ended {
        work.problem(Problem::Iso6709End);
    }
    if let Some(height) = rest.first().and_then(|height| height.parse::<f64>().ok()) {
        work.problem(Problem::Height(height));
    }
    for problem in [&lat, &lon].into_iter().filter_map(|packed| packed.problem.clone()) {
        work.problem(problem);
    }
    match (Latitude::new(lat.degrees), Longitude::new(lon.degrees).filter(|_| lon.degrees.abs() <= 180.0)) {
        (Some(north), Some(east)) => work.reading((north, lat.step), (east, lon.step), Notation::Iso6709),
        (None, _) => work.problem(Problem::LatitudeRange(lat.degrees)),
        (_, None) => work.problem(Problem::LongitudeRange(lon.degrees)),
    }
    true
}

/// The parts of a text that is nothing but signed numbers without blanks. `None` for any other, and for fewer than two.
fn signed_parts(text: &str) -> Option<Vec<&str>> {
    let mut starts: Vec<usize> = text.match_indices(['+', '-']).map(|(at, _)| at).collect();
    let plain = text.chars().all(|sign| sign.is_ascii_digit() || "+-.".contains(sign));
    if !plain || starts.len() < 2 || starts.first() != Some(&0) {
        return None;
    }
    starts.push(text.len());
    Some(starts.windows(2).map(|ends| &text[ends[0]..ends[1]]).collect())
}

/// An angle packed as the standard packs it.
struct Packed {
    degrees: f64,
    step: Degrees,
    problem: Option<Problem>,
}

/// Unpacks an angle with so many digits for whole degrees. `None` for other numbers of digits.
fn packed(text: &str, digits: usize) -> Option<Packed> {
    let (sign, number) = text.split_at(1);
    let (whole, decimals) = number.split_once('.').unwrap_or((number, ""));
    let extra = whole.len().checked_sub(digits).filter(|extra| [0, 2, 4].contains(extra))?;
    let value = |text: &str| if text.is_empty() { Some(0.0) } else { text.parse::<f64>().ok() };
    let fraction = if decimals.is_empty() { 0.0 } else { format!("0.{decimals}").parse::<f64>().ok()? };
    let degrees = value(&whole[..digits])?;
    let (minutes, seconds, unit) = match extra {
        0 => (0.0, 0.0, 1.0),
        2 => (value(&whole[digits..])? + fraction, 0.0, 60.0),
        _ => (value(&whole[digits..digits + 2])?, value(&whole[digits + 2..])? + fraction, 3600.0),
    };
    let degrees = if extra == 0 { degrees + fraction } else { degrees + minutes / 60.0 + seconds / 3600.0 };
    let problem = match () {
        () if minutes >= 60.0 => Some(Problem::Minutes(minutes)),
        () if seconds >= 60.0 => Some(Problem::Seconds(seconds)),
        () => None,
    };
    let step = Degrees::new(decimal_step(decimals.len()).degrees() / unit)?;
    Some(Packed { degrees: if sign == "-" { -degrees } else { degrees }, step, problem })
}
