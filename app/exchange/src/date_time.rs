//! Date and time as XML writes them.

use place::instant::{Day, Instant, UtcOffset};

/// The instant of a text like `2026-06-12T19:30:00Z`, with any number of decimals of a second and any offset.
///
/// **Shape**: without an offset it is taken for UTC, as GPX has it; a 60th second counts as the next one; 24:00 is the
/// end of the day; what is finer than a millisecond is cut off.
///
/// **Errors**: `None` for any other text and for dates and times that do not exist.
///
/// **Source**: XML Schema part 2 (2004), 3.2.7 dateTime; GPX 1.1 schema, times are in UTC.
pub(crate) fn instant(text: &str) -> Option<Instant> {
    let (date, rest) = text.trim().split_once('T')?;
    let (time, offset) = match rest.find(['Z', '+', '-']) {
        Some(at) => (&rest[..at], utc_offset(&rest[at..])?),
        None => (rest, UtcOffset::default()),
    };
    let [year, month, day] = parts(date, '-')?;
    let day = Day::new(number(year, 4)? as i32, number(month, 2)?, number(day, 2)?, offset)?;
    day.start().later(of_day_ms(time)?)
}

fn of_day_ms(time: &str) -> Option<i64> {
    let [hour, minute, second] = parts(time, ':')?;
    let (whole, decimals) = second.split_once('.').unwrap_or((second, "0"));
    let (hour, minute, whole) = (number(hour, 2)?, number(minute, 2)?, number(whole, 2)?);
    if decimals.is_empty() || !decimals.bytes().all(|sign| sign.is_ascii_digit()) {
        return None;
    }
    let ms: i64 = decimals.bytes().chain(*b"000").take(3).fold(0, |sum, sign| sum * 10 + i64::from(sign - b'0'));
    let past = i64::from(hour * 3600 + minute * 60 + whole) * 1000 + ms;
    (minute < 60 && whole <= 60 && (hour < 24 || past == 86_400_000)).then_some(past)
}

fn utc_offset(text: &str) -> Option<UtcOffset> {
    if text == "Z" {
        return Some(UtcOffset::default());
    }
    let sign = if text.starts_with('-') { -1 } else { 1 };
    let (hours, minutes) = text.get(1..)?.split_once(':')?;
    let (hours, minutes) = (number(hours, 2)? as i32, number(minutes, 2).filter(|minutes| *minutes < 60)? as i32);
    UtcOffset::new(sign * (hours * 60 + minutes))
}

/// Three parts between two signs.
fn parts(text: &str, sign: char) -> Option<[&str; 3]> {
    let mut parts = text.split(sign);
    let three = [parts.next()?, parts.next()?, parts.next()?];
    parts.next().is_none().then_some(three)
}

/// A number of so many digits.
fn number(text: &str, digits: usize) -> Option<u32> {
    let right = text.len() == digits && text.bytes().all(|sign| sign.is_ascii_digit());
    text.parse().ok().filter(|_| right)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: &str) {
        let found = instant(text).map(|instant| (instant.text(UtcOffset::default()), instant.unix_ms() % 1000));
        assert_eq!(found, Some((format!("{expected}+00:00"), 0)), "{text}");
    }

    #[test]
    fn one_instant_is_read_in_each_of_its_writings() {
        for text in [
            "2026-06-12T19:30:00Z",
            "2026-06-12T19:30:00",
            "2026-06-12T21:30:00+02:00",
            "2026-06-12T10:00:00-09:30",
            " 2026-06-12T19:30:00.000Z\n",
            "2026-06-12T19:29:60Z",
        ] {
            check(text, "2026-06-12T19:30:00");
        }
        check("2026-06-12T24:00:00Z", "2026-06-13T00:00:00");
        let ms = |text: &str| instant(text).map(|instant| instant.unix_ms() % 1000);
        assert_eq!(ms("2026-06-12T19:30:00.5Z"), Some(500));
        assert_eq!(ms("2026-06-12T19:30:00.1239999999999999999999Z"), Some(123));
    }

    #[test]
    fn what_is_no_time_is_refused() {
        for text in [
            "",
            "T",
            "2026-06-12",
            "2026-06-12 19:30:00Z",
            "2026-02-30T19:30:00Z",
            "2026-06-12T24:00:01Z",
            "2026-06-12T19:60:00Z",
            "2026-06-12T19:30Z",
            "2026-06-12T19:30:00.Z",
            "2026-06-12T19:30:00+2",
            "2026-06-12T19:30:00+02:60",
            "2026-06-12T19:30:00+é:00",
            "26-06-12T19:30:00Z",
            "+026-06-12T19:30:00Z",
        ] {
            assert_eq!(instant(text), None, "{text}");
        }
    }
}
