//! Sun and moon over an event: when its night is dark, and what stood in the sky at each of its hours.
//!
//! In go a saved event and, for a lamp that burns, the hour that it is now; out come clock times, minutes and codes. An
//! event without a position or without an hour has no sky.

use crate::book::Logbook;
use crate::moment::{self, Day, Known};
use chrono::{Days, NaiveDateTime, NaiveTime, Timelike};
use place::Position;
use place::instant::{Day as SkyDay, Instant, UtcOffset};
use place::sky::{Hour, Light, Phase, Sky, SunDay, sky_at, sun_day};
use ports::device::Moment;
use record::{Id, event};
use serde_json::{Map, Value, json};

/// The sky over an event.
#[derive(Clone, Debug, PartialEq)]
pub struct SkyView {
    /// The evening to which it belongs; the hours before dawn belong to the day before.
    pub evening: Day,
    /// Sunset of that evening and sunrise of the morning after, local.
    pub sun: (Option<String>, Option<String>),
    /// How the dark of that night lies.
    pub dark: Dark,
    /// The sky when it began, when it ended, and now where it is still open; each hour once.
    pub at: Vec<SkyAt>,
}

/// The dark of a night: the sun more than 6° below the horizon.
#[derive(Clone, Debug, PartialEq)]
pub enum Dark {
    /// From and until, local, and the same in minutes after noon.
    Between((String, String), (f64, f64)),
    /// It does not get so dark; true where the sun does not even set.
    Never(bool),
    /// It does not get lighter.
    Always,
}

/// The sky at one hour.
#[derive(Clone, Debug, PartialEq)]
pub struct SkyAt {
    /// The hour, local.
    pub clock: String,
    /// Which hour of the event it is.
    pub when: Which,
    /// How it lies to sunset or sunrise, whichever is nearer; nothing where the sun neither rose nor set for a day.
    pub sun: Option<FromSun>,
    /// How dark it is.
    pub light: Light,
    /// The share of the moon's disc that is lit, percent.
    pub moon_percent: u32,
    /// Where the moon stands in its month.
    pub phase: Phase,
    /// Whether the moon is up.
    pub moon_up: bool,
}

/// Which hour of an event.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// When it began.
    Began,
    /// When it ended.
    Ended,
    /// Now.
    Now,
}

/// Minutes from sunset or sunrise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FromSun {
    /// Minutes before the sun sets.
    BeforeSunset(u64),
    /// Minutes after it has set.
    AfterSunset(u64),
    /// Minutes before it rises.
    BeforeSunrise(u64),
    /// Minutes after it has risen.
    AfterSunrise(u64),
}

impl Logbook {
    /// The sky over an event, with that of `now` where it is still open.
    pub fn sky(&self, id: Id, now: Moment) -> Option<SkyView> {
        let record = self.living(id)?;
        let place = record.get(&event::PLACE)?;
        let position = Position::new(place.latitude, place.longitude, None)?;
        let when = record.get(&event::CAUGHT)?;
        let offset = UtcOffset::new(when.offset_minutes?)?;
        let began = Known::read(&when.from)?.minute()?;
        let ended = when.until.as_deref().and_then(Known::read).and_then(Known::minute);
        let open = (record.get(&event::OPEN) == Some(true)).then(|| moment::local(now));
        let mut hours = vec![(Which::Began, began)];
        hours.extend(ended.map(|ended| (Which::Ended, ended)));
        hours.extend(open.filter(|open| *open > began).map(|now| (Which::Now, now)));
        hours.dedup_by_key(|(_, hour)| *hour);
        let seen = |(which, hour)| Some(seen(which, hour, &sky_at(position, instant(hour, offset)?)));
        let at: Vec<SkyAt> = hours.into_iter().filter_map(seen).collect();
        let first = at.first().filter(|at| at.when == Which::Began)?;
        let evening = evening(began, first.light)?;
        Some(SkyView { at, ..night(position, evening, offset)? })
    }
}

/// The sky over events as a log file tells it beside them: worked out, never read back.
pub(crate) fn told(book: &Logbook, events: impl Iterator<Item = Id>, now: Moment) -> Map<String, Value> {
    let told = |id: Id| Some((id.to_string(), book.sky(id, now).as_ref().map(told_of)?));
    events.filter_map(told).collect()
}

fn told_of(sky: &SkyView) -> Value {
    let dark = match &sky.dark {
        Dark::Between((from, until), _) => json!([from, until]),
        Dark::Never(_) => json!([]),
        Dark::Always => json!("always"),
    };
    let at = sky.at.iter().filter(|at| at.when != Which::Now).map(|at| {
        let (from, minutes) = at.sun.map(|sun| (sun.code(), sun.minutes())).unzip();
        json!({
            "clock": at.clock, "from_sun": from, "minutes": minutes, "light": at.light.code(),
            "moon_percent": at.moon_percent, "moon_phase": at.phase.code(), "moon_up": at.moon_up,
        })
    });
    json!({ "sunset": sky.sun.0, "dark": dark, "sunrise": sky.sun.1, "at": at.collect::<Vec<_>>() })
}

/// The evening of an hour: before noon and not yet light, it is that of the day before.
fn evening(began: NaiveDateTime, light: Light) -> Option<Day> {
    let before = began.hour() < 12 && light != Light::Day;
    if before { began.date().checked_sub_days(Days::new(1)) } else { Some(began.date()) }
}

fn night(position: Position, evening: Day, offset: UtcOffset) -> Option<SkyView> {
    let days = [evening, evening.checked_add_days(Days::new(1))?];
    let suns = days.map(|day| Some(sun_day(position, sky_day(day, offset)?)));
    let [Some(today), Some(tomorrow)] = suns else { return None };
    let noon = instant(evening.and_time(NaiveTime::from_hms_opt(12, 0, 0)?), offset)?;
    let within = |of: fn(&SunDay) -> &[Instant]| {
        let after_noon = |at: &Instant| (*at, (at.unix_ms() - noon.unix_ms()) as f64 / 60_000.0);
        let all = of(&today).iter().chain(of(&tomorrow)).map(after_noon);
        all.filter(|(_, minutes)| (0.0..1440.0).contains(minutes)).collect::<Vec<_>>().into_iter()
    };
    let clock = |at: Instant| at.text(offset)[11..16].to_owned();
    let sunset = within(|day| &day.sunset).next().map(|(at, _)| clock(at));
    let sunrise = within(|day| &day.sunrise).last().map(|(at, _)| clock(at));
    let dusk = within(|day| &day.dusk[0]).next();
    let dawn = within(|day| &day.dawn[0]).last();
    let dark = match (dusk, dawn) {
        (Some((from, begins)), Some((until, ends))) if begins < ends => {
            Dark::Between((clock(from), clock(until)), (begins, ends))
        }
        _ if today.brightest < Light::Civil => Dark::Always,
        _ => Dark::Never(today.darkest == Light::Day),
    };
    Some(SkyView { evening, sun: (sunset, sunrise), dark, at: Vec::new() })
}

fn seen(when: Which, hour: NaiveDateTime, sky: &Sky) -> SkyAt {
    let minutes = |lasting: std::time::Duration| lasting.as_secs() / 60;
    let nearer = |past: Option<FromSun>, to_come: Option<FromSun>| match (past, to_come) {
        (Some(past), Some(to_come)) => Some(if past.minutes() <= to_come.minutes() { past } else { to_come }),
        (past, to_come) => past.or(to_come),
    };
    let sun = match sky.hour {
        Hour::Day { since_sunrise, before_sunset } => nearer(
            since_sunrise.map(|lasting| FromSun::AfterSunrise(minutes(lasting))),
            before_sunset.map(|lasting| FromSun::BeforeSunset(minutes(lasting))),
        ),
        Hour::Night { since_sunset, before_sunrise } => nearer(
            since_sunset.map(|lasting| FromSun::AfterSunset(minutes(lasting))),
            before_sunrise.map(|lasting| FromSun::BeforeSunrise(minutes(lasting))),
        ),
    };
    let moon_percent = (sky.moon.fraction * 100.0).round().clamp(0.0, 100.0) as u32;
    SkyAt {
        clock: moment::clock_text(hour.time()),
        when,
        sun,
        light: sky.light,
        moon_percent,
        phase: sky.moon.phase,
        moon_up: sky.moon.up,
    }
}

impl FromSun {
    /// A stable code.
    pub fn code(self) -> &'static str {
        match self {
            Self::BeforeSunset(_) => "before_sunset",
            Self::AfterSunset(_) => "after_sunset",
            Self::BeforeSunrise(_) => "before_sunrise",
            Self::AfterSunrise(_) => "after_sunrise",
        }
    }

    /// The minutes.
    pub fn minutes(self) -> u64 {
        match self {
            Self::BeforeSunset(minutes)
            | Self::AfterSunset(minutes)
            | Self::BeforeSunrise(minutes)
            | Self::AfterSunrise(minutes) => minutes,
        }
    }
}

fn instant(local: NaiveDateTime, offset: UtcOffset) -> Option<Instant> {
    let day = sky_day(local.date(), offset)?;
    day.start().later(i64::from(local.time().num_seconds_from_midnight()) * 1000)
}

fn sky_day(day: Day, offset: UtcOffset) -> Option<SkyDay> {
    use chrono::Datelike;
    SkyDay::new(day.year(), day.month(), day.day(), offset)
}

#[cfg(test)]
mod tests;
