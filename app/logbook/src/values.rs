//! From what was typed to the values that are stored: forms in, field values out. Nothing typed is lost: what
//! cannot be read stays in the verbatim part of its value.

use crate::form::{CatchForm, CaughtForm, ContainerForm, ContentForm, FluidForm, HostForm, PlaceForm, Row, Source};
use crate::kept;
use crate::moment;
use chrono::NaiveDateTime;
use ports::device::Platform;
use record::container::{Content, Fluid};
use record::event::{Elevation, Host, Method, Place, When};
use std::collections::BTreeMap;

/// The UTC offset in minutes at a local wall time.
pub type OffsetAt<'a> = &'a dyn Fn(NaiveDateTime) -> i32;

/// The code of a platform.
pub fn platform_code(platform: Platform) -> &'static str {
    match platform {
        Platform::Ios => "ios",
        Platform::Android => "android",
        Platform::Other => "other",
    }
}

/// A number as people type it, with a decimal comma or point.
pub fn read_number(text: &str) -> Option<f64> {
    let plain = text.trim().replace(',', ".").replace('\u{2212}', "-");
    let (sign, size) = match plain.strip_prefix('-') {
        Some(size) => ("-", size),
        None => ("", plain.strip_prefix('+').unwrap_or(&plain)),
    };
    let (whole, fraction) = size.split_once('.').unwrap_or((size, ""));
    let mut digits = whole.bytes().chain(fraction.bytes()).peekable();
    if digits.peek().is_none() || !digits.all(|sign| sign.is_ascii_digit()) {
        return None;
    }
    // Written as stored values are, for their reader is in the page already and exact; the standard library's has a
    // large table of its own.
    kept::read(format!("{sign}{:0>1}.{fraction:0<1}", whole.trim_start_matches('0')).as_bytes())
}

/// The text without spaces around it, if there is any.
pub fn said(text: &str) -> Option<String> {
    let text = text.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

/// The time of catch.
pub fn when(form: &CaughtForm, offset_at: OffsetAt<'_>) -> Option<When> {
    let day = said(&form.day)?;
    let joined = |day: &str, clock: &str| if clock.is_empty() { day.to_owned() } else { format!("{day}T{clock}") };
    let from = joined(&day, form.clock.trim());
    let until_day = said(&form.until_day);
    let until = match (until_day, said(&form.until_clock)) {
        (None, None) => None,
        (day_until, clock) => Some(joined(
            &day_until.unwrap_or_else(|| after(&day, &form.clock, clock.as_deref())),
            &clock.unwrap_or_default(),
        )),
    };
    let minute = moment::Known::read(&from).and_then(moment::Known::minute);
    Some(When { offset_minutes: minute.map(offset_at), from, until, night: form.night })
}

/// The day of an end given as an hour alone: the next one, when the hour lies before the beginning.
fn after(day: &str, from: &str, until: Option<&str>) -> String {
    let over_midnight = until.is_some_and(|until| !from.is_empty() && until < from);
    let next = moment::read_day(day).and_then(|day| day.succ_opt()).filter(|_| over_midnight);
    next.map_or_else(|| day.to_owned(), moment::day_text)
}

/// The datum of every position of which nothing else is said.
pub(crate) const WGS84: &str = "WGS84";

/// The position.
pub fn place(form: &PlaceForm, platform: Platform) -> Option<Place> {
    let (latitude, longitude) = form.coordinates()?;
    let device = matches!(form.source, Source::Here | Source::Kept);
    let how = match form.source {
        Source::Here | Source::Kept => "device",
        Source::Typed => "typed",
        Source::Site => "site",
        Source::None => return None,
    };
    Some(Place {
        latitude,
        longitude,
        datum: said(&form.datum).filter(|_| !device).unwrap_or_else(|| WGS84.to_owned()),
        radius_m: read_number(&form.radius).filter(|radius| *radius >= 0.0),
        how: how.to_owned(),
        fixes: device.then_some(form.fixes).filter(|fixes| *fixes > 0),
        seconds: device.then_some(form.seconds).filter(|_| form.fixes > 1),
        platform: device.then(|| platform_code(platform).to_owned()),
        typed: said(&form.typed).filter(|_| form.source == Source::Typed),
    })
}

/// The elevation: typed, or the device's altitude, which counts only once a person has confirmed it.
pub fn elevation(form: &CatchForm, platform: Platform) -> Option<Elevation> {
    if let Some(typed) = said(&form.elevation) {
        let metres = read_number(typed.trim_end_matches(['m', ' ']))?;
        let plain = Elevation { metres, how: "typed".to_owned(), typed: Some(typed), ..Elevation::default() };
        if !form.elevation_confirmed {
            return Some(plain);
        }
        return Some(Elevation {
            how: "confirmed".to_owned(),
            accuracy_m: form.place.altitude_accuracy_m,
            platform: Some(platform_code(platform).to_owned()),
            raw_m: form.place.altitude_m,
            zero: said(&form.elevation_zero),
            ..plain
        });
    }
    let metres = form.place.altitude_m.filter(|_| matches!(form.place.source, Source::Here | Source::Kept))?;
    Some(Elevation {
        metres,
        how: "device".to_owned(),
        accuracy_m: form.place.altitude_accuracy_m,
        platform: Some(platform_code(platform).to_owned()),
        ..Elevation::default()
    })
}

/// The method with its particulars.
pub fn method(form: &CatchForm) -> Option<Method> {
    let mut particulars = BTreeMap::new();
    particulars.extend(form.particulars.iter().filter_map(|(code, text)| Some((code.clone(), said(text)?))));
    let method = Method { code: form.method.clone(), text: said(&form.method_text).unwrap_or_default(), particulars };
    (!method.code.is_empty() || !method.text.is_empty()).then_some(method)
}

/// The host: a relation alone says nothing.
pub fn host(form: &HostForm) -> Option<Host> {
    Some(Host {
        thing: said(&form.thing)?,
        relation: form.relation.clone(),
        what: form.what.clone(),
        part: form.part.trim().to_owned(),
        voucher: form.voucher.trim().to_owned(),
        named_by: form.named_by.trim().to_owned(),
    })
}

/// A fluid.
pub fn fluid(form: &FluidForm) -> Option<Fluid> {
    let other = form.code == "other";
    let code = if other { String::new() } else { form.code.clone() };
    let text = if other || code.is_empty() { form.text.trim().to_owned() } else { String::new() };
    (!code.is_empty() || !text.is_empty()).then(|| Fluid { code, text, strength: form.strength.trim().to_owned() })
}

/// One line of contents; in a span counts are not copied, they are counted later.
pub fn content(form: &ContentForm, order: usize, alone: bool) -> Option<Content> {
    let group = said(&form.group)?;
    let count = read_number(&form.count).filter(|count| *count >= 0.0 && alone).map(|count| count.round() as u32);
    let counted = count.is_some() && form.count_kind != "uncounted";
    let count_kind = match (counted, form.count_kind.as_str()) {
        (false, _) => "uncounted",
        (true, "") => "exact",
        (true, kind) => kind,
    };
    Some(Content {
        order: u32::try_from(order).unwrap_or(u32::MAX),
        group,
        group_code: form.group_code.clone(),
        sex: form.sex.clone(),
        stage: form.stage.clone(),
        count_kind: count_kind.to_owned(),
        count: count.filter(|_| counted),
    })
}

/// The hour of a container that has its own, on the day of its event or the morning after.
pub fn container_caught(form: &ContainerForm, event: &CaughtForm, offset_at: OffsetAt<'_>) -> Option<When> {
    let clock = said(&form.clock)?;
    let own = CaughtForm {
        now: false,
        day: after(&event.day, &event.clock, Some(&clock)),
        clock,
        night: event.night,
        ..CaughtForm::default()
    };
    when(&own, offset_at)
}

/// The row of a field that may be marked as unknown.
pub fn row_field(row: Row) -> &'static str {
    use record::event;
    match row {
        Row::Place => event::PLACE.name(),
        Row::Caught => event::CAUGHT.name(),
        Row::Until => "until",
        Row::Method => event::METHOD.name(),
        Row::Host => event::HOST.name(),
        Row::Weather => event::WEATHER.name(),
        Row::Elevation => event::ELEVATION.name(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_read_as_people_type_them() {
        let check = |typed: &str, expected: Option<f64>| assert_eq!(read_number(typed), expected, "{typed}");
        check(" 1204 ", Some(1204.0));
        check("1204,5", Some(1204.5));
        check("\u{2212}12.25", Some(-12.25));
        check("+007", Some(7.0));
        check(".5", Some(0.5));
        check("5.", Some(5.0));
        check("0.1234567890123456789", Some(0.123_456_789_012_345_68));
        check("9007199254740993", Some(9_007_199_254_740_993.0));
        for nothing in ["", "-", ".", "1.2.3", "1 2", "12 m", "1e3", "inf", "NaN", "--1", "\u{0663}"] {
            check(nothing, None);
        }
        check(&"9".repeat(400), None);
    }
}
