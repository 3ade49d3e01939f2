//! Tracks that this device keeps to draw on the maps of their days. They hang on no record and leave with no file: a
//! track tells more of a person than the places of catches do.

use super::{Read, instant, track};
use crate::book::Logbook;
use crate::driver::{Driver, Held};
use crate::moment::Day;
use chrono::TimeDelta;
use place::instant::Instant;
use place::track::Track;
use ports::store::StoreFault;
use ports::track::{Fix, as_bytes, of_bytes};
use record::event::{self, When};
use units::Metres;

/// What stands before the names of kept tracks.
const TRACK: &str = "track/1/";
/// Fixes nearer to the last one are not kept: less than a receiver in the hand is sure of, and than a map shows.
const LEAST: Metres = Metres::whole(5);

/// A track that this device keeps.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptTrack {
    /// The name under which it is kept.
    pub key: String,
    /// The name that its file gives it, or the file's.
    pub name: String,
    /// The fixes, by the clock of this device.
    pub track: Track,
}

/// The name of a kept track: from when until when, and its own.
fn key(name: &str, (first, last): (i64, i64)) -> String {
    format!("{TRACK}{first}/{last}/{name}")
}

/// From when until when a kept track goes, and its name.
fn of_key(key: &str) -> Option<((i64, i64), &str)> {
    let (first, rest) = key.strip_prefix(TRACK)?.split_once('/')?;
    let (last, name) = rest.split_once('/')?;
    Some(((first.parse().ok()?, last.parse().ok()?), name))
}

impl Read {
    /// Whether there is a way to be drawn: fixes of more than one instant.
    pub fn is_way(&self) -> bool {
        self.track.span().is_some_and(|(first, last)| first < last)
    }

    /// The track as it is kept for the maps of its days, where it has a way to be drawn; the device's clock is ahead of
    /// the track's by so many seconds.
    pub fn to_keep(&self, clock_ahead_s: i64) -> Option<KeptTrack> {
        let track = self.track.thinned(LEAST).later(clock_ahead_s.checked_mul(1_000)?)?;
        let (first, last) = track.span().filter(|_| self.is_way())?;
        let names = self.told.names.join(", ");
        let name = if names.trim().is_empty() { self.file.clone() } else { names };
        Some(KeptTrack { key: key(&name, (first.unix_ms(), last.unix_ms())), name, track })
    }
}

impl<H: Held> Driver<H> {
    /// Keeps a track.
    ///
    /// **Errors**: as [`StoreFault`]; it is not kept then.
    pub async fn keep_track(&self, kept: &KeptTrack) -> Result<(), StoreFault> {
        let fix = |fix: &place::track::Fix| Fix {
            latitude: fix.position.latitude.degrees(),
            longitude: fix.position.longitude.degrees(),
            unix_ms: fix.at.unix_ms(),
        };
        let fixes: Vec<Fix> = kept.track.fixes().iter().map(fix).collect();
        self.ports.store.keep(kept.key.clone(), Some(as_bytes(&fixes))).await
    }

    /// The kept tracks that were recorded between two instants.
    ///
    /// **Errors**: as [`StoreFault`].
    pub async fn kept_tracks(&self, (from, until): (Instant, Instant)) -> Result<Vec<KeptTrack>, StoreFault> {
        let then = |key: &String| {
            of_key(key).is_some_and(|((first, last), _)| first <= until.unix_ms() && last >= from.unix_ms())
        };
        let names = self.ports.store.kept_names().await?.into_iter().filter(then).collect();
        let kept = self.ports.store.kept(names).await?;
        let read = |(key, bytes): (String, Vec<u8>)| {
            let name = of_key(&key)?.1.to_owned();
            Some(KeptTrack { name, track: track(&of_bytes(&bytes)?), key })
        };
        Ok(kept.into_iter().filter_map(read).collect())
    }

    /// Lets a kept track go.
    ///
    /// **Errors**: as [`StoreFault`]; it is kept then.
    pub async fn forget_track(&self, key: &str) -> Result<(), StoreFault> {
        self.ports.store.keep(key.to_owned(), None).await
    }
}

impl Logbook {
    /// From when until when the events of a day were out: the day by their own clock, and on until the last of them ends.
    /// `None` where no hour is known.
    pub fn span_of(&self, day: Day) -> Option<(Instant, Instant)> {
        let times: Vec<When> =
            self.lines_of(day).iter().filter_map(|line| self.living(line.id)?.get(&event::CAUGHT)).collect();
        let ahead = TimeDelta::minutes(times.iter().find_map(|when| when.offset_minutes)?.into());
        let start = day.and_hms_opt(0, 0, 0)?.and_utc().checked_sub_signed(ahead)?;
        let midnight = start.checked_add_signed(TimeDelta::days(1))?.timestamp_millis();
        let ends = times.iter().filter_map(|when| instant(&until(when)).map(Instant::unix_ms));
        Instant::new(start.timestamp_millis()).zip(Instant::new(ends.fold(midnight, i64::max)))
    }
}

/// The end of a time as if it were its beginning.
fn until(when: &When) -> When {
    When { from: when.until.clone().unwrap_or_else(|| when.from.clone()), ..when.clone() }
}
