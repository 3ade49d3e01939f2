//! Instants, local days and the way they are written, without a clock and without a time zone's rules.
//!
//! In go milliseconds since 1970 or a date with an offset from UTC, out come instants, the days that hold them and
//! texts of ISO 8601. The calendar is the Gregorian one throughout, leap seconds are not counted. What time it is now
//! and which offset holds where is left to others.

const MINUTE_MS: i64 = 60_000;
const HOUR_MS: i64 = 60 * MINUTE_MS;
const DAY_MS: i64 = 24 * HOUR_MS;

/// A point in time.
///
/// **Shape**: any of the years 1 to 9999 at Greenwich, to the millisecond.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Instant(i64);

impl Instant {
    /// An instant by the milliseconds since 1970-01-01T00:00Z.
    ///
    /// **Errors**: `None` before the year 1 and after the year 9999.
    pub fn new(unix_ms: i64) -> Option<Self> {
        let (first, past) = (days_before(1, 1, 1) * DAY_MS, days_before(10_000, 1, 1) * DAY_MS);
        (first..past).contains(&unix_ms).then_some(Self(unix_ms))
    }

    /// Milliseconds since 1970-01-01T00:00Z.
    pub const fn unix_ms(self) -> i64 {
        self.0
    }

    /// The instant so many milliseconds later, or earlier where negative.
    ///
    /// **Errors**: as [`Self::new`].
    pub fn later(self, ms: i64) -> Option<Self> {
        Self::new(self.0.checked_add(ms)?)
    }

    /// The local time to the second, cut off: `2026-06-21T04:29:03+01:00`.
    pub fn text(self, offset: UtcOffset) -> String {
        let local_s = (self.0 + offset.ms()).div_euclid(1000);
        let (year, month, day) = date(local_s.div_euclid(86_400));
        let second = local_s.rem_euclid(86_400);
        let (hour, minute, second) = (second / 3600, second / 60 % 60, second % 60);
        format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}{}", offset.text())
    }
}

/// How far local time is ahead of UTC.
///
/// **Shape**: whole minutes, less than a day either way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct UtcOffset(i16);

impl UtcOffset {
    /// An offset in minutes, negative to the west.
    ///
    /// **Errors**: `None` for a day or more.
    pub fn new(minutes: i32) -> Option<Self> {
        i16::try_from(minutes).ok().filter(|minutes| minutes.unsigned_abs() < 24 * 60).map(Self)
    }

    /// Minutes ahead of UTC.
    pub const fn minutes(self) -> i32 {
        self.0 as i32
    }

    fn ms(self) -> i64 {
        i64::from(self.0) * MINUTE_MS
    }

    /// `+01:00`.
    fn text(self) -> String {
        let sign = if self.0 < 0 { '-' } else { '+' };
        format!("{sign}{:02}:{:02}", self.0.abs() / 60, self.0.abs() % 60)
    }
}

/// A day by local time, from midnight to midnight at one offset.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Day {
    start: Instant,
    offset: UtcOffset,
}

impl Day {
    /// A day of the calendar.
    ///
    /// **Errors**: `None` for a date that does not exist, and where an instant of the day is beyond what an [`Instant`]
    /// holds.
    pub fn new(year: i32, month: u32, day: u32, offset: UtcOffset) -> Option<Self> {
        let days = days_before(i64::from(year), i64::from(month), i64::from(day));
        let real = (1..=12).contains(&month) && date(days) == (i64::from(year), i64::from(month), i64::from(day));
        Self::starting(days.checked_mul(DAY_MS).filter(|_| real)?, offset)
    }

    /// The day to which an instant belongs.
    ///
    /// **Errors**: `None` at the ends of what an [`Instant`] holds.
    pub fn holding(instant: Instant, offset: UtcOffset) -> Option<Self> {
        Self::starting((instant.0 + offset.ms()).div_euclid(DAY_MS) * DAY_MS, offset)
    }

    fn starting(local_ms: i64, offset: UtcOffset) -> Option<Self> {
        let start = Instant::new(local_ms - offset.ms())?;
        start.later(DAY_MS)?;
        Some(Self { start, offset })
    }

    /// Midnight at its beginning.
    pub const fn start(self) -> Instant {
        self.start
    }

    /// Midnight at its end, which belongs to the next day.
    pub const fn end(self) -> Instant {
        Instant(self.start.0 + DAY_MS)
    }

    /// A whole hour of the day; past 24, that of the days after.
    ///
    /// **Errors**: as [`Instant::new`].
    pub fn at(self, hour: u8) -> Option<Instant> {
        self.start.later(i64::from(hour) * HOUR_MS)
    }

    /// The offset of its local time.
    pub const fn offset(self) -> UtcOffset {
        self.offset
    }
}

/// Days from 1970-01-01 to a date of the Gregorian calendar; a day or month past its end counts on.
///
/// **Source**: the calendar's own rules, years counted from March so that the leap day comes last (common practice).
fn days_before(year: i64, month: i64, day: i64) -> i64 {
    let march = (month + 9) % 12;
    let year = year - i64::from(month <= 2);
    let leaps = year.div_euclid(4) - year.div_euclid(100) + year.div_euclid(400);
    // Months from March on begin after so many days; 719,468 days lie between 0000-03-01 and 1970-01-01.
    year * 365 + leaps + (153 * march + 2) / 5 + day - 1 - 719_468
}

/// Year, month and day so many days after 1970-01-01.
fn date(days: i64) -> (i64, i64, i64) {
    // The mean year is at most a day off the real one, and the loop mends that.
    let mut year = (days * 400).div_euclid(146_097) + 1970;
    while days_before(year, 1, 1) > days {
        year -= 1;
    }
    while days_before(year + 1, 1, 1) <= days {
        year += 1;
    }
    let begins = |month: &i64| days_before(year, *month, 1) <= days;
    let month = (1..=12).rev().find(begins).unwrap_or(1);
    (year, month, days - days_before(year, month, 1) + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn offset(minutes: i32) -> UtcOffset {
        UtcOffset::new(minutes).expect("less than a day")
    }

    /// Source: Meeus (1998), example 7.a and chapter 7, as Julian days; 2,440,587.5 is 1970-01-01, from memory.
    #[test]
    fn days_are_counted_as_published() {
        // 1957 October 4.81 is 2,436,116.31; 2000 January 1.5 is 2,451,545.0.
        assert_eq!(days_before(1957, 10, 4) as f64 + 2_440_587.5, 2_436_115.5);
        assert_eq!(days_before(2000, 1, 1) as f64 + 2_440_587.5, 2_451_544.5);
    }

    #[test]
    fn each_day_has_its_date_and_follows_the_day_before() {
        let mut last = date(days_before(1895, 12, 31));
        for days in days_before(1896, 1, 1)..days_before(2405, 1, 1) {
            let (year, month, day) = date(days);
            assert_eq!(days_before(year, month, day), days);
            let next = (year, month, day) == (last.0, last.1, last.2 + 1)
                || (day == 1
                    && ((year, month) == (last.0, last.1 + 1) || (year, month, last.1) == (last.0 + 1, 1, 12)));
            assert!(next, "{last:?} {year} {month} {day}");
            last = (year, month, day);
        }
    }

    #[test]
    fn dates_that_do_not_exist_are_refused() {
        for (year, month, day) in
            [(2027, 2, 29), (1900, 2, 29), (2026, 13, 1), (2026, 0, 1), (2026, 4, 31), (2026, 1, 0), (0, 1, 1)]
        {
            assert_eq!(Day::new(year, month, day, offset(0)), None, "{year} {month} {day}");
        }
        for (year, month, day) in [(i32::MIN, 1, 1), (i32::MAX, 12, 31), (2026, u32::MAX, 1), (2026, 1, u32::MAX)] {
            assert_eq!(Day::new(year, month, day, offset(0)), None, "{year} {month} {day}");
        }
        assert!(Day::new(2028, 2, 29, offset(0)).is_some());
        assert_eq!(UtcOffset::new(24 * 60), None);
        assert_eq!(Instant::new(i64::MAX), None);
        assert_eq!(Instant::new(0).and_then(|start| start.later(i64::MIN)), None);
    }

    #[test]
    fn local_days_hold_their_instants() {
        let day = Day::new(2026, 6, 21, offset(-570)).expect("a day");
        assert_eq!(day.start().text(day.offset()), "2026-06-21T00:00:00-09:30");
        assert_eq!(day.start().text(offset(0)), "2026-06-21T09:30:00+00:00");
        assert_eq!(Day::holding(day.start(), offset(-570)), Some(day));
        assert_eq!(Day::holding(day.end(), offset(-570)), Day::new(2026, 6, 22, offset(-570)));
        let before = day.start().later(-1).expect("an instant");
        assert_eq!(Day::holding(before, offset(-570)), Day::new(2026, 6, 20, offset(-570)));
        assert_eq!(day.at(22).map(|hour| hour.text(offset(345))), Some("2026-06-22T13:15:00+05:45".to_owned()));
    }
}
