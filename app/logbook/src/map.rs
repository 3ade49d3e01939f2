//! The map of a day's events: which event lies where, and what a tap on it leads to.
//!
//! In go events with their positions and where a finger was; out come the events there, or a closer look. How ground comes
//! onto a sheet is left to [`place::frame`].

use crate::view::{EventLine, Mark};
pub use geo_types::Coord;
use place::Position;
pub use place::country::Kind;
use place::distance::leg;
pub use place::frame::{
    Bar, Coast, Frame, Graticule, GridLine, Ground, Spot, Trail, bar, graticule, nearest, north, spots, step,
};
use place::instant::Instant;
pub use place::outline::Outline;
use place::track::Track;
use record::Id;

/// The way from event to event is drawn up to so many events: beyond that it is a tangle.
const WAY_MOST: usize = 300;
/// Metres across the sheet from which on coasts and borders, which are only so sure, say where on Earth it lies.
const COAST_FROM_M: f64 = 20_000.0;
/// So many events of one spot are named at most; a spot of more is looked at closer.
pub const NAMED_MOST: usize = 12;

/// An event on the map.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    /// The record.
    pub id: Id,
    /// Its number in the order of the day, from 1.
    pub order: usize,
    /// The site's name, or empty.
    pub site: String,
    /// Still going on.
    pub open: bool,
}

/// Where the events of a day lie.
#[derive(Clone, Debug, PartialEq)]
pub struct DayMap {
    ground: Ground,
    events: Vec<Placed>,
}

/// Events drawn as one, as a sentence names them.
#[derive(Clone, Debug, PartialEq)]
pub struct Whereabouts {
    /// The site's name of the first.
    pub site: String,
    /// Orders of the events.
    pub orders: Vec<usize>,
    /// Metres from the first spot, and the direction in eighths of a turn from north by east; `None` for the first.
    pub from_first: Option<(f64, usize)>,
}

/// What a tap leads to.
#[derive(Clone, Debug, PartialEq)]
pub enum Tapped {
    /// One event, to be opened.
    Event(Placed),
    /// Several that lie apart: a closer look, and their places in the list where they are few.
    Closer(Frame, Vec<usize>),
    /// Several that no look would tell apart, by their places in the list.
    Here(Vec<usize>),
}

impl Placed {
    /// An event as its line says it.
    pub fn new(line: &EventLine) -> Self {
        Self { id: line.id, order: line.order, site: line.site.clone(), open: line.marks.contains(&Mark::Open) }
    }
}

impl DayMap {
    /// The map of these events. `None` without one.
    pub fn new(placed: Vec<(Placed, Position)>) -> Option<Self> {
        let (events, positions): (Vec<Placed>, Vec<Position>) = placed.into_iter().unzip();
        Some(Self { ground: Ground::new(&positions)?, events })
    }

    /// The ground.
    pub fn ground(&self) -> &Ground {
        &self.ground
    }

    /// The events, in the order in which [`Spot::members`] counts them.
    pub fn events(&self) -> &[Placed] {
        &self.events
    }

    /// The spots from event to event, by their places in the list; empty for very many events.
    pub fn way(&self, spots: &[Spot]) -> Vec<usize> {
        if self.events.len() > WAY_MOST {
            return Vec::new();
        }
        let mut spot_of = vec![0; self.events.len()];
        for (index, spot) in spots.iter().enumerate() {
            spot.members.iter().for_each(|member| spot_of[*member] = index);
        }
        spot_of.dedup();
        spot_of
    }

    /// A track laid on the ground of this map, as far as it was recorded between two instants.
    pub fn trail(&self, track: &Track, span: (Instant, Instant)) -> Option<Trail> {
        Trail::new(track, span, &self.ground)
    }

    /// How many events a frame shows.
    pub fn shown(&self, frame: Frame) -> usize {
        self.ground.places().iter().filter(|place| frame.shows(frame.place(**place), 0.0)).count()
    }

    /// The spots as a sentence names them: way and direction from the first one.
    pub fn whereabouts(&self, spots: &[Spot]) -> Vec<Whereabouts> {
        let position = |spot: &Spot| self.ground.plane().position(spot.place);
        let first = spots.first().and_then(position);
        let from_first = |spot: &Spot| {
            let leg = leg(first?, position(spot)?);
            Some((leg.distance.metres(), eighth(leg.bearing.degrees())))
        };
        let named = |(index, spot): (usize, &Spot)| Whereabouts {
            site: self.events[spot.members[0]].site.clone(),
            orders: spot.members.iter().map(|member| self.events[*member].order).collect(),
            from_first: from_first(spot).filter(|_| index > 0),
        };
        spots.iter().enumerate().map(named).collect()
    }

    /// What a tap on a spot leads to.
    pub fn tapped(&self, spot: &Spot, frame: Frame) -> Tapped {
        if let [only] = spot.members[..] {
            return Tapped::Event(self.events[only].clone());
        }
        let closer = self.ground.closer(&spot.members, frame);
        if closer.is_closest() || closer == frame {
            return Tapped::Here(spot.members.clone());
        }
        let few = spot.members.len() <= NAMED_MOST;
        Tapped::Closer(closer, if few { spot.members.clone() } else { Vec::new() })
    }
}

/// True when a frame shows so much of the Earth that coasts and borders say where it lies.
pub fn wants_coast(frame: Frame) -> bool {
    frame.across_m() > COAST_FROM_M
}

/// The spot nearest to the middle of a frame, if it is shown.
pub fn in_the_middle(spots: &[Spot], frame: Frame) -> Option<usize> {
    let middle = Coord { x: frame.width() / 2.0, y: frame.height() / 2.0 };
    let near = nearest(spots, frame, middle, f64::INFINITY)?;
    frame.shows(frame.place(spots[near].place), 0.0).then_some(near)
}

/// A direction in eighths of a turn, from north by east.
fn eighth(bearing: f64) -> usize {
    (bearing / 45.0).round() as usize % 8
}

#[cfg(test)]
mod tests {
    use super::*;

    fn map(places: &[(f64, f64)]) -> DayMap {
        let placed = |(index, (north, east)): (usize, &(f64, f64))| {
            let event = Placed { id: Id::new(0, [index as u8; 16]), order: index + 1, site: "S".into(), open: false };
            (event, Position::new(*north, *east, None).expect("a position"))
        };
        DayMap::new(places.iter().enumerate().map(placed).collect()).expect("events")
    }

    fn whole(map: &DayMap) -> (Frame, Vec<Spot>) {
        let frame = map.ground().whole(358.0, 286.0).expect("room");
        (frame, spots(map.ground(), step(frame)))
    }

    #[test]
    fn directions_are_eighths_of_a_turn() {
        assert_eq!([0.0, 22.0, 23.0, 90.0, 181.0, 337.0, 338.0, 359.9].map(eighth), [0, 0, 1, 2, 4, 7, 0, 0]);
    }

    #[test]
    fn the_sentence_measures_from_the_first_spot() {
        let map = map(&[(47.6, 12.3), (47.609, 12.3133)]);
        let (_, spots) = whole(&map);
        let places = map.whereabouts(&spots);
        assert_eq!((places[0].from_first, &places[1].orders), (None, &vec![2]));
        let (metres, direction) = places[1].from_first.expect("it is not the first");
        // 0.009° north and 0.0133° east at 47.6° N are 1,001 m and 1,000 m.
        assert!((metres - 1_415.0).abs() < 5.0, "{metres}");
        assert_eq!(direction, 1);
    }

    #[test]
    fn a_tap_opens_one_event_and_looks_closer_at_several() {
        let map = map(&[(47.6, 12.3), (47.60001, 12.30001), (47.7, 12.5), (47.65, 12.4), (47.6502, 12.4003)]);
        let (frame, spots) = whole(&map);
        assert_eq!(spots.len(), 3);
        assert_eq!(map.tapped(&spots[1], frame), Tapped::Event(map.events()[2].clone()));
        assert_eq!(map.tapped(&spots[0], frame), Tapped::Here(vec![0, 1]));
        let Tapped::Closer(closer, few) = map.tapped(&spots[2], frame) else { panic!("they lie 30 m apart") };
        assert!(closer.across_m() < 100.0 && few == [3, 4]);
        assert_eq!(map.shown(closer), 2);
    }

    #[test]
    fn the_way_leads_from_spot_to_spot() {
        let map = map(&[(47.6, 12.3), (47.60001, 12.3), (47.7, 12.5), (47.6, 12.3)]);
        let (_, spots) = whole(&map);
        assert_eq!(map.way(&spots), [0, 1, 0]);
        let many = vec![(47.6, 12.3); WAY_MOST + 1];
        let many = super::tests::map(&many);
        assert_eq!(many.way(&whole(&many).1), Vec::<usize>::new());
    }

    #[test]
    fn what_lies_nearest_the_middle_is_named_while_it_is_shown() {
        let map = map(&[(47.6, 12.3), (47.7, 12.5)]);
        let (frame, spots) = whole(&map);
        let near = map.ground().dragged(frame, Coord { x: 60.0, y: -40.0 });
        assert_eq!(in_the_middle(&spots, near), Some(0));
        let between = map.ground().zoomed(frame, 8.0, Coord { x: 179.0, y: 143.0 });
        assert_eq!(in_the_middle(&spots, between), None);
        assert!(!wants_coast(between) && wants_coast(map.ground().zoomed(frame, 0.1, Coord { x: 0.0, y: 0.0 })));
    }
}
