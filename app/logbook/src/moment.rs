//! Local dates and times, from a device's moment and from what is stored.

use chrono::{DateTime, Datelike, Days, FixedOffset, NaiveDate, NaiveDateTime, NaiveTime, Timelike};
use ports::device::Moment;
use record::event::When;

/// A local calendar day.
pub type Day = NaiveDate;

/// The local wall time of a moment.
pub fn local(moment: Moment) -> NaiveDateTime {
    with_offset(moment).naive_local()
}

/// The local day of a moment.
pub fn today(moment: Moment) -> Day {
    local(moment).date()
}

/// A moment as stored beside an edit: local ISO 8601 with offset.
pub fn stamp(moment: Moment) -> String {
    with_offset(moment).format_iso()
}

trait IsoFormat {
    fn format_iso(&self) -> String;
}

impl IsoFormat for DateTime<FixedOffset> {
    fn format_iso(&self) -> String {
        let minutes = self.offset().local_minus_utc() / 60;
        let sign = if minutes < 0 { '-' } else { '+' };
        let (hours, rest) = (minutes.abs() / 60, minutes.abs() % 60);
        format!("{}:{:02}{sign}{hours:02}:{rest:02}", minute_text(self.naive_local()), self.second())
    }
}

fn with_offset(moment: Moment) -> DateTime<FixedOffset> {
    let offset = FixedOffset::east_opt(moment.offset_minutes * 60).expect("a zone is less than a day from UTC");
    DateTime::from_timestamp_millis(moment.unix_ms).unwrap_or_default().with_timezone(&offset)
}

/// A wall time to the minute: `2027-06-19T14:32`.
pub fn minute_text(time: NaiveDateTime) -> String {
    format!("{}T{}", day_text(time.date()), clock_text(time.time()))
}

/// A day: `2027-06-19`.
pub fn day_text(day: Day) -> String {
    format!("{:04}-{:02}-{:02}", day.year(), day.month(), day.day())
}

/// An hour: `14:32`.
pub fn clock_text(time: NaiveTime) -> String {
    format!("{:02}:{:02}", time.hour(), time.minute())
}

/// Reads a day.
pub fn read_day(text: &str) -> Option<Day> {
    let mut parts = text.get(..10)?.split('-');
    let mut part = || parts.next()?.parse::<u32>().ok();
    let (year, month, day) = (part()?, part()?, part()?);
    NaiveDate::from_ymd_opt(i32::try_from(year).ok()?, month, day)
}

/// Reads an hour: `14:32`.
pub fn read_clock(text: &str) -> Option<NaiveTime> {
    let (hour, rest) = text.split_once(':')?;
    NaiveTime::from_hms_opt(hour.parse().ok()?, rest.get(..2)?.parse().ok()?, 0)
}

/// A stored time of catch, as far as it was known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Known {
    /// The year.
    pub year: i32,
    /// The month, 1 to 12.
    pub month: Option<u32>,
    /// The day of the month.
    pub day: Option<u32>,
    /// The hour.
    pub clock: Option<NaiveTime>,
}

impl Known {
    /// Reads ISO 8601 local time of any precision.
    pub fn read(text: &str) -> Option<Self> {
        let (date, clock) = text.split_once('T').map_or((text, None), |(date, clock)| (date, read_clock(clock)));
        let mut parts = date.split('-');
        let year = parts.next()?.parse().ok()?;
        let month = parts.next().and_then(|part| part.parse().ok());
        let day = parts.next().and_then(|part| part.parse().ok());
        Some(Self { year, month, day, clock })
    }

    /// The whole day, where known to the day.
    pub fn date(self) -> Option<Day> {
        NaiveDate::from_ymd_opt(self.year, self.month?, self.day?)
    }

    /// The minute, where known.
    pub fn minute(self) -> Option<NaiveDateTime> {
        Some(self.date()?.and_time(self.clock?))
    }
}

/// The day to which an event belongs: a night counts for its evening, so the hours before noon go to the day before.
pub fn day_of(when: &When) -> Option<Day> {
    let known = Known::read(&when.from)?;
    let date = known.date()?;
    let after_midnight = when.night && known.clock.is_some_and(|clock| clock.hour() < 12);
    if after_midnight { date.checked_sub_days(Days::new(1)) } else { Some(date) }
}

/// Days since 1970-01-01.
pub fn day_number(day: Day) -> i32 {
    day.num_days_from_ce() - 719_163
}

/// The day with this number.
pub fn day_from_number(number: i32) -> Option<Day> {
    NaiveDate::from_num_days_from_ce_opt(number.checked_add(719_163)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moment() -> Moment {
        Moment { unix_ms: 1_813_408_325_000, offset_minutes: 120 }
    }

    #[test]
    fn a_moment_is_stamped_in_local_time_with_offset() {
        assert_eq!(stamp(moment()), "2027-06-19T14:32:05+02:00");
        assert_eq!(stamp(Moment { offset_minutes: -570, ..moment() }), "2027-06-19T03:02:05-09:30");
    }

    #[test]
    fn the_small_hours_of_a_night_count_for_its_evening() {
        let night = When { from: "2027-06-20T01:10".into(), night: true, ..When::default() };
        assert_eq!(day_of(&night).map(day_text).as_deref(), Some("2027-06-19"));
        let day = When { night: false, ..night };
        assert_eq!(day_of(&day).map(day_text).as_deref(), Some("2027-06-20"));
    }

    #[test]
    fn partial_dates_stay_partial() {
        assert_eq!(Known::read("2027-06").map(|known| (known.month, known.day)), Some((Some(6), None)));
        assert_eq!(Known::read("2027").and_then(Known::date), None);
        assert_eq!(Known::read("no date"), None);
    }

    #[test]
    fn the_first_day_is_number_zero() {
        assert_eq!(read_day("1970-01-01").map(day_number), Some(0));
        assert_eq!(day_from_number(20_988).map(day_text).as_deref(), Some("2027-06-19"));
    }
}
