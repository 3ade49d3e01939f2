//! Positions from a recorded track, for events that were logged without one.
//!
//! In go a GPX file, which the courier reads, and by how much the clocks differ; out come offers, each with its circle and
//! what it rests on, and the deed that writes those which a person took. An event with a position is left alone, and so
//! is one whose hour is not known.

mod kept;

pub use kept::KeptTrack;

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::driver::{Driver, Held};
use crate::exchange::ExchangeFault;
use crate::moment::{Day, Known};
use crate::places::{WrittenPlace, written};
use crate::view::EventLine;
use place::Position;
use place::instant::Instant;
use place::track::{Assumed, Basis, Fix, Track};
use ports::courier::Parcel;
use ports::files::File;
use ports::track::{KIND, Told};
use record::event::{self, Place};
use record::{Id, Kind};

/// A track that was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Read {
    /// The file's name.
    pub file: String,
    /// The track.
    pub track: Track,
    /// What the file says besides.
    pub told: Told,
}

/// A position that the track gives an event.
#[derive(Clone, Debug, PartialEq)]
pub struct TrackOffer {
    /// The event.
    pub line: EventLine,
    /// The position as screens write it.
    pub written: WrittenPlace,
    /// What it rests on.
    pub rests_on: RestsOn,
    /// The track shows a greater speed than that of somebody on foot.
    pub faster: bool,
    place: Place,
}

/// What a position of a track rests on, in minutes and metres.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RestsOn {
    /// Two fixes, so many minutes and metres apart.
    Between(u64, u64),
    /// The first fix, so many minutes later.
    Before(u64),
    /// The last fix, so many minutes earlier.
    After(u64),
}

impl TrackOffer {
    /// The event.
    pub fn id(&self) -> Id {
        self.line.id
    }

    /// Whether it stands on fixes before and after; what lies outside the track is not taken unasked.
    pub fn sure(&self) -> bool {
        matches!(self.rests_on, RestsOn::Between(..))
    }
}

/// Whether a file is a GPX file, by its beginning.
pub fn is_track(file: &File) -> bool {
    let beginning = &file.bytes[..file.bytes.len().min(2_000)];
    String::from_utf8_lossy(beginning).contains("<gpx")
}

impl<H: Held> Driver<H> {
    /// Reads a GPX file. Nothing is changed.
    ///
    /// **Errors**: as [`ExchangeFault`].
    pub async fn read_track(&self, file: File) -> Result<Read, ExchangeFault> {
        let sent = Parcel { kind: KIND.to_owned(), parts: vec![file.bytes] };
        let back = self.ports.courier.send(sent).await.map_err(ExchangeFault::Courier)?;
        let (fixes, told) = ports::track::read(&back.parts).ok_or(ExchangeFault::Garbled)?;
        Ok(Read { file: file.name, track: track(&fixes), told })
    }
}

fn track(fixes: &[ports::track::Fix]) -> Track {
    let fix = |fix: &ports::track::Fix| {
        Some(Fix { position: Position::new(fix.latitude, fix.longitude, None)?, at: Instant::new(fix.unix_ms)? })
    };
    Track::new(fixes.iter().filter_map(fix).collect())
}

impl Logbook {
    /// What the track gives the events without a position; the device's clock is ahead of the track's by so many seconds.
    pub fn track_offers(&self, track: &Track, clock_ahead_s: i64) -> Vec<TrackOffer> {
        let assumed = Assumed { clock_ahead_ms: clock_ahead_s * 1_000, ..Assumed::default() };
        let Some((first, last)) = track.span() else { return Vec::new() };
        let near = |at: Instant, days: i64| day_of(at).checked_add_signed(chrono::TimeDelta::days(days));
        let (Some(from), Some(until)) = (near(first, -1), near(last, 1)) else { return Vec::new() };
        let days = self.days().into_iter().map(|(day, _)| day).filter(|day| (from..=until).contains(day));
        days.flat_map(|day| self.lines_of(day)).filter_map(|line| self.track_offer(line, track, &assumed)).collect()
    }

    fn track_offer(&self, line: EventLine, track: &Track, assumed: &Assumed) -> Option<TrackOffer> {
        let event = self.living(line.id).filter(|event| event.get(&event::PLACE).is_none())?;
        let placed = track.place(instant(&event.get(&event::CAUGHT)?)?, assumed)?;
        let minutes = |lasting: std::time::Duration| lasting.as_secs().div_ceil(60);
        let rests_on = match placed.basis {
            Basis::Between { gap, distance } => {
                RestsOn::Between(minutes(gap), distance.metres().round().max(0.0) as u64)
            }
            Basis::Before(gap) => RestsOn::Before(minutes(gap)),
            Basis::After(gap) => RestsOn::After(minutes(gap)),
        };
        let place = Place {
            latitude: placed.position.latitude.degrees(),
            longitude: placed.position.longitude.degrees(),
            datum: "WGS84".to_owned(),
            radius_m: placed.position.radius.map(|radius| radius.metres().ceil()),
            how: "track".to_owned(),
            ..Place::default()
        };
        Some(TrackOffer { line, written: written(&place), rests_on, faster: placed.faster, place })
    }

    /// The deed that writes positions of a track.
    pub fn take_track(&self, offers: &[TrackOffer]) -> Deed {
        let edits = offers.iter().map(|offer| {
            let mut edit = self.edit(offer.id(), Kind::Event, None);
            edit.put(&event::PLACE, &offer.place);
            edit
        });
        Deed::new(What::Placed(offers.len()), edits)
    }
}

/// The day at Greenwich.
fn day_of(at: Instant) -> Day {
    chrono::DateTime::from_timestamp_millis(at.unix_ms()).unwrap_or_default().date_naive()
}

fn instant(when: &event::When) -> Option<Instant> {
    let local = Known::read(&when.from)?.minute()?;
    let ms = local.and_utc().timestamp_millis() - i64::from(when.offset_minutes?) * 60_000;
    Instant::new(ms)
}

#[cfg(test)]
mod tests;
