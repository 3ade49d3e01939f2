//! Where somebody was at an instant, by a recorded track.
//!
//! In go fixes with their times, how far the clocks differ and how fast somebody may have moved; out comes a position
//! with a circle that holds every place which the fixes and the speed allow, and what it rests on. Reading files, and
//! accepting what is offered, is left to others.

use crate::distance::{destination, distance, leg};
use crate::instant::Instant;
use crate::position::Position;
use core::time::Duration;
use units::Metres;

/// One fix of a track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Where, with its radius where one was reported.
    pub position: Position,
    /// When, by the clock of the track.
    pub at: Instant,
}

/// A speed.
///
/// **Shape**: from 0, finite.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Speed(f64);

impl Speed {
    /// A speed in metres a second.
    ///
    /// **Errors**: `None` below zero, for NaN and the infinities.
    pub const fn metres_per_second(speed: f64) -> Option<Self> {
        if speed >= 0.0 && speed.is_finite() { Some(Self(speed)) } else { None }
    }
}

/// What is assumed when a position is taken from a track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Assumed {
    /// Milliseconds by which the clock of the events is ahead of that of the track, as the person set it.
    pub clock_ahead_ms: i64,
    /// By how much an event's time may be off, either way: half a minute where it was noted to the minute.
    pub time_error: Duration,
    /// The radius of a fix that has none.
    pub radius: Metres,
    /// How fast somebody moves at most.
    pub speed: Speed,
}

impl Default for Assumed {
    /// Clocks that agree, half a minute, 30 m for a receiver of which nothing is known (Wieczorek 2001, MaNIS
    /// guidelines, from memory), 2 m/s for somebody on foot (common practice).
    fn default() -> Self {
        Self {
            clock_ahead_ms: 0,
            time_error: Duration::from_secs(30),
            radius: Metres::new(30.0).expect("a finite number"),
            speed: Speed(2.0),
        }
    }
}

/// What a position rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// Two fixes, one before and one after.
    Between {
        /// The time from one to the other.
        gap: Duration,
        /// The way from one to the other.
        distance: Metres,
    },
    /// The first fix, so long after the instant.
    Before(Duration),
    /// The last fix, so long before the instant.
    After(Duration),
}

/// A position taken from a track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Where, with the radius that holds every place which is allowed.
    pub position: Position,
    /// What it rests on.
    pub basis: Basis,
    /// True where the fixes themselves show a greater speed than was assumed.
    pub faster: bool,
}

/// A recorded track, in the order of time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Track {
    fixes: Vec<Fix>,
}

/// The way that somebody could have gone between two fixes may be this long, metres; the plane triangles of the bound
/// are no measure beyond, and nobody is helped by such a circle.
const WAY_MOST_M: f64 = 1_000_000.0;
/// The least that the speed is taken above what two fixes show by themselves: nobody goes as straight as they lie.
const SPEED_MARGIN: f64 = 1.5;

/// A receiver that says nothing for so long, while it moves by [`APART`], has recorded no way: common practice.
const SILENCE: Duration = Duration::from_secs(300);
/// See [`SILENCE`].
const APART: Metres = Metres::whole(200);

impl Track {
    /// A track from fixes in any order.
    pub fn new(mut fixes: Vec<Fix>) -> Self {
        fixes.sort_by_key(|fix| fix.at);
        Self { fixes }
    }

    /// How many fixes it has.
    pub fn len(&self) -> usize {
        self.fixes.len()
    }

    /// Whether it has none.
    pub fn is_empty(&self) -> bool {
        self.fixes.is_empty()
    }

    /// The first and the last instant, by the clock of the track.
    pub fn span(&self) -> Option<(Instant, Instant)> {
        Some((self.fixes.first()?.at, self.fixes.last()?.at))
    }

    /// The fixes, in the order of time.
    pub fn fixes(&self) -> &[Fix] {
        &self.fixes
    }

    /// The track as a clock shows it that is ahead of its own by so many milliseconds.
    ///
    /// **Errors**: `None` where a fix would lie outside what an [`Instant`] holds.
    pub fn later(&self, ahead_ms: i64) -> Option<Self> {
        let later = |fix: &Fix| Some(Fix { at: Instant::new(fix.at.unix_ms().checked_add(ahead_ms)?)?, ..*fix });
        Some(Self { fixes: self.fixes.iter().map(later).collect::<Option<_>>()? })
    }

    /// The track without the fixes that lie nearer than so far to the last one that stays; its first and its last stay.
    /// No fix that goes was further than that from one that stays.
    pub fn thinned(&self, least: Metres) -> Self {
        let mut fixes: Vec<Fix> = Vec::new();
        let end = self.fixes.len().saturating_sub(1);
        for (at, fix) in self.fixes.iter().enumerate() {
            let near = fixes.last().is_some_and(|last| distance(last.position, fix.position) < least);
            if !near || at == end {
                fixes.push(*fix);
            }
        }
        Self { fixes }
    }

    /// The fixes from one instant until another, by the clock of the track, as pieces between which the receiver was
    /// silent: for longer than [`SILENCE`] and further than [`APART`]. A line between the two ends of such a gap would
    /// show a way that nobody has recorded.
    pub fn pieces(&self, from: Instant, until: Instant) -> Vec<&[Fix]> {
        let first = self.fixes.partition_point(|fix| fix.at < from);
        let past = self.fixes.partition_point(|fix| fix.at <= until);
        let shown = self.fixes.get(first..past).unwrap_or_default();
        let goes_on = |one: &Fix, next: &Fix| {
            let gap = apart(one.at.unix_ms(), next.at.unix_ms());
            gap <= SILENCE || distance(one.position, next.position) <= APART
        };
        shown.chunk_by(goes_on).filter(|piece| piece.len() > 1).collect()
    }

    /// Where somebody was at each of these instants, by the clock of the events; each as [`Self::place`].
    pub fn places(&self, instants: &[Instant], assumed: &Assumed) -> Vec<Option<Placed>> {
        instants.iter().map(|instant| self.place(*instant, assumed)).collect()
    }

    /// Where somebody was at an instant, by the clock of the events.
    ///
    /// Between two fixes, a time T and a way d apart, the position lies on the geodesic from one to the other, in the
    /// share s of it that the instant has of the time. Whoever moves no faster than v went L = v T at most; then the
    /// place at the instant is within s L of the first fix and (1 − s) L of the second. By Stewart's theorem on the
    /// triangle of both fixes and that place, its distance from the position squared is the mean of those two
    /// squared, weighted 1 − s and s, less s (1 − s) d²: at most s (1 − s) (L² − d²), and no smaller circle would do.
    /// Half the distance between the fixes, the usual guess, is what this gives at half time for L = √2 d. Added are the
    /// radii of the fixes, weighted alike, and what their errors can take from d; and v times the error of the time.
    /// Outside the track it is the nearest fix, with its radius and v times the gap.
    ///
    /// Where the fixes show more than v, half as much again as they show is taken for it.
    ///
    /// **Errors**: `None` for a track without fixes, and where the gap allows a way of more than 1,000 km.
    ///
    /// **Accuracy**: triangles on the Earth are fatter than in the plane; the bound is enlarged by (L/R)², which brute
    /// force over the allowed places confirms.
    pub fn place(&self, instant: Instant, assumed: &Assumed) -> Option<Placed> {
        let at_ms = instant.unix_ms().checked_sub(assumed.clock_ahead_ms)?;
        let past = self.fixes.partition_point(|fix| fix.at.unix_ms() <= at_ms);
        let before = past.checked_sub(1).and_then(|last| self.fixes.get(last));
        match (before, self.fixes.get(past)) {
            (Some(before), _) if before.at.unix_ms() == at_ms => exactly(before, assumed),
            (Some(before), Some(after)) => between(before, after, at_ms, assumed),
            (Some(last), None) => {
                let gap = apart(last.at.unix_ms(), at_ms);
                outside(last, gap, Basis::After(gap), assumed)
            }
            (None, Some(first)) => {
                let gap = apart(first.at.unix_ms(), at_ms);
                outside(first, gap, Basis::Before(gap), assumed)
            }
            (None, None) => None,
        }
    }
}

fn apart(one_ms: i64, other_ms: i64) -> Duration {
    Duration::from_millis(one_ms.abs_diff(other_ms))
}

fn radius_m(fix: &Fix, assumed: &Assumed) -> f64 {
    fix.position.radius.unwrap_or(assumed.radius).metres()
}

/// A position with a radius; `None` where that cannot be written.
fn placed(position: Position, radius_m: f64, basis: Basis, faster: bool) -> Option<Placed> {
    Some(Placed { position: Position { radius: Some(Metres::new(radius_m)?), ..position }, basis, faster })
}

fn exactly(fix: &Fix, assumed: &Assumed) -> Option<Placed> {
    let basis = Basis::Between { gap: Duration::ZERO, distance: Metres::ZERO };
    let moved_m = assumed.speed.0 * assumed.time_error.as_secs_f64();
    placed(fix.position, radius_m(fix, assumed) + moved_m, basis, false)
}

fn outside(fix: &Fix, gap: Duration, basis: Basis, assumed: &Assumed) -> Option<Placed> {
    let way_m = assumed.speed.0 * (gap + assumed.time_error).as_secs_f64();
    placed(fix.position, radius_m(fix, assumed) + way_m, basis, false).filter(|_| way_m <= WAY_MOST_M)
}

fn between(before: &Fix, after: &Fix, at_ms: i64, assumed: &Assumed) -> Option<Placed> {
    let gap = apart(before.at.unix_ms(), after.at.unix_ms());
    let share = apart(before.at.unix_ms(), at_ms).as_secs_f64() / gap.as_secs_f64();
    let leg = leg(before.position, after.position);
    let (one_m, other_m) = (radius_m(before, assumed), radius_m(after, assumed));
    // The fixes may be nearer to each other than they seem, by both their errors.
    let least_m = (leg.distance.metres() - one_m - other_m).max(0.0);
    let shown = least_m / gap.as_secs_f64();
    let speed = if shown > assumed.speed.0 { shown * SPEED_MARGIN } else { assumed.speed.0 };
    let way_m = speed * gap.as_secs_f64();
    if way_m > WAY_MOST_M {
        return None;
    }
    let radius_m = (1.0 - share) * one_m
        + share * other_m
        + strayed_m(share, way_m, least_m)
        + speed * assumed.time_error.as_secs_f64();
    let along = Metres::new(leg.distance.metres() * share)?;
    let position = destination(before.position, leg.bearing, along);
    placed(position, radius_m, Basis::Between { gap, distance: leg.distance }, shown > assumed.speed.0)
}

/// How far from the share of the straight way between two places somebody can be who goes a longer way.
fn strayed_m(share: f64, way_m: f64, straight_m: f64) -> f64 {
    const RADIUS_M: f64 = 6_371_008.8;
    let fatter = 1.0 + (way_m / RADIUS_M) * (way_m / RADIUS_M);
    fatter * (share * (1.0 - share) * (way_m * way_m - straight_m * straight_m)).max(0.0).sqrt()
}

#[cfg(test)]
mod tests;
