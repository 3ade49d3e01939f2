//! The country and its first-level region at a position.
//!
//! In go the bytes of a file of borders and a position with its circle; out come the areas in which it may lie, the
//! likeliest first. It is a suggestion: what a person writes stands above it. Loading the bytes, and accepting what is
//! offered, are left to others. Borders are Natural Earth's, who draw what is held in fact, countries as in ISO 3166
//! where that differs; neither is a statement of ours.
//!
//! A file holds the mark `RGN1`, the countries (code and name), the areas (number of the country, name of the region,
//! name of the part or nothing), and the lines between them ([`crate::arcs`]).

use crate::arcs::{Arc, Arcs, Bounds};
use crate::ellipsoid::metres_per_degree;
use crate::position::Position;
use crate::stream::{Reader, Writer};
use geo_types::LineString;
use units::Metres;

const MARK: &[u8] = b"RGN1";

/// How far the borders of the file in `public/geo` may lie from those of its source.
/// **Source**: up to 960 m come of making the file (the tolerances that `examples/make_borders` gives, and half a step of
/// its grid). For the rest: of about 450 places of GeoNames so far from a country's border 39 % were in the other country
/// at 0 to 0.5 km, 14 % at 1 to 1.5, 4.5 % at 2 to 2.5, 1.8 % at 2.5 to 3 and 0.5 % beyond, their own positions being
/// good to about a kilometre.
pub const ERROR_BORDER: Metres = Metres::whole(2_500);
/// How far the coasts of the file may lie from those of its source; so near, both land and sea are meant.
pub const ERROR_COAST: Metres = Metres::whole(2_160);

/// How far out at sea the nearest area is still offered: the source leaves out many a small island, and draws others
/// kilometres off.
const OFFSHORE: Metres = Metres::whole(25_000);

/// A country.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Country {
    /// Two letters of ISO 3166-1; empty where it has none.
    pub code: String,
    /// Its name in English.
    pub name: String,
}

/// The smallest piece of land that the file knows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Area {
    /// Which of the countries.
    pub country: usize,
    /// The first-level region: state, province, canton, …; empty where there is none.
    pub region: String,
    /// A part of the region, where the source has only parts: department, province, county; else empty.
    pub part: String,
}

/// An area in which a position may lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Candidate<'a> {
    /// Its country.
    pub country: &'a Country,
    /// The area.
    pub area: &'a Area,
    /// How far its border is, as the file has it; zero where the position lies inside.
    pub away: Metres,
}

/// All countries and regions with their borders.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Regions {
    countries: Vec<Country>,
    areas: Vec<Area>,
    arcs: Arcs,
}

impl Regions {
    /// Regions from their parts.
    ///
    /// **Errors**: `None` where an area names a country, or a line an area, that is not there.
    pub fn new(countries: Vec<Country>, areas: Vec<Area>, arcs: Arcs) -> Option<Self> {
        let known = |arc: &Arc| arc.one < areas.len() && arc.other.is_none_or(|other| other < areas.len());
        let fits = areas.iter().all(|area| area.country < countries.len()) && arcs.arcs().all(known);
        fits.then_some(Self { countries, areas, arcs })
    }

    /// The regions that a file holds.
    ///
    /// **Errors**: `None` where the bytes are not a whole file of this kind.
    pub fn read(bytes: &[u8]) -> Option<Self> {
        let mut reader = Reader::new(bytes, MARK)?;
        let (mut countries, mut areas) = (Vec::new(), Vec::new());
        for _ in 0..reader.count()? {
            countries.push(Country { code: reader.word()?.to_owned(), name: reader.word()?.to_owned() });
        }
        for _ in 0..reader.count()? {
            let country = reader.number()? as usize;
            areas.push(Area { country, region: reader.word()?.to_owned(), part: reader.word()?.to_owned() });
        }
        let arcs = Arcs::read(&mut reader)?;
        if reader.ended() { Self::new(countries, areas, arcs) } else { None }
    }

    /// The bytes of a file.
    pub fn bytes(&self) -> Vec<u8> {
        let mut writer = Writer::new(MARK);
        writer.count(self.countries.len());
        for country in &self.countries {
            writer.word(&country.code);
            writer.word(&country.name);
        }
        writer.count(self.areas.len());
        for area in &self.areas {
            writer.count(area.country);
            writer.word(&area.region);
            writer.word(&area.part);
        }
        self.arcs.write(&mut writer);
        writer.bytes()
    }

    /// The areas in which a position may lie: first the one that it lies in, then all that its circle touches, the
    /// nearest first. The circle is widened by how far the file's borders may be off ([`ERROR_BORDER`]; at the coast
    /// [`ERROR_COAST`]). Several mean: near a border, let the person choose. Where there is no land that near, the nearest
    /// area within 25 km is offered alone, as of an island that the file leaves out. None means: at sea.
    pub fn at(&self, position: Position) -> Vec<Candidate<'_>> {
        let place = [position.longitude.degrees(), position.latitude.degrees()];
        let mut inside = vec![false; self.areas.len()];
        for arc in self.arcs.crossed(place) {
            inside[arc.one] ^= true;
            arc.other.into_iter().for_each(|other| inside[other] ^= true);
        }
        let radius_m = position.radius_m().unwrap_or(0.0);
        let mut away = self.borders_within(position, radius_m);
        away.extend(inside.iter().enumerate().filter(|(_, inside)| **inside).map(|(at, _)| (at, 0.0)));
        let nearest = away.is_empty();
        if nearest {
            away = self.borders_within(position, OFFSHORE.metres());
        }
        away.sort_by(|a, b| a.1.total_cmp(&b.1).then(a.0.cmp(&b.0)));
        away.truncate(if nearest { 1 } else { away.len() });
        self.candidates(&away)
    }

    /// Areas with their distances as candidates, each area once.
    fn candidates(&self, away: &[(usize, f64)]) -> Vec<Candidate<'_>> {
        let mut found: Vec<Candidate<'_>> = Vec::new();
        for (at, metres) in away {
            let area = &self.areas[*at];
            if !found.iter().any(|candidate| candidate.area == area) {
                let away = Metres::new(*metres).unwrap_or(Metres::ZERO);
                found.push(Candidate { country: &self.countries[area.country], area, away });
            }
        }
        found
    }

    /// Coasts (`None`) and borders of countries and regions inside a box, for drawing.
    pub fn lines(&self, bounds: Bounds) -> Vec<(Kind, LineString<f64>)> {
        let kind = |arc: &Arc| match arc.other {
            None => Kind::Coast,
            Some(other) if self.areas[arc.one].country != self.areas[other].country => Kind::Country,
            Some(_) => Kind::Region,
        };
        let lines = self.arcs.clipped(bounds);
        lines.flat_map(|(arc, pieces)| pieces.into_iter().map(move |piece| (kind(arc), piece))).collect()
    }

    /// The areas on either side of every line that comes within a radius, with its distance in metres.
    fn borders_within(&self, position: Position, radius_m: f64) -> Vec<(usize, f64)> {
        let (north_m, east_m) = metres_per_degree(position.latitude);
        let east_m = east_m.max(1.0);
        let place = [position.longitude.degrees(), position.latitude.degrees()];
        let most_m = radius_m + ERROR_BORDER.max(ERROR_COAST).metres();
        let reach = [(most_m / east_m).min(360.0), (most_m / north_m).min(180.0)];
        let mut found = Vec::new();
        // The same place also a turn away, for lines beyond the antimeridian.
        for turn in [-360.0, 0.0, 360.0] {
            let place = [place[0] + turn, place[1]];
            for arc in self.arcs.near(place, reach) {
                let error = if arc.other.is_some() { ERROR_BORDER } else { ERROR_COAST };
                let metres = self.distance_m(arc, place, [east_m, north_m]);
                if metres <= radius_m + error.metres() {
                    found.push((arc.one, metres));
                    found.extend(arc.other.map(|other| (other, metres)));
                }
            }
        }
        found
    }

    /// From a place to the nearest point of a line, on a plane round the place.
    fn distance_m(&self, arc: &Arc, place: [f64; 2], metres: [f64; 2]) -> f64 {
        let on_plane = |point: [i32; 2]| {
            let degrees = self.arcs.degrees(point);
            [(degrees[0] - place[0]) * metres[0], (degrees[1] - place[1]) * metres[1]]
        };
        let pieces = arc.points.windows(2).map(|ends| from_middle_m(on_plane(ends[0]), on_plane(ends[1])));
        pieces.fold(f64::INFINITY, f64::min)
    }
}

/// What a line parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Land and sea.
    Coast,
    /// Two countries.
    Country,
    /// Two regions of a country.
    Region,
}

/// From the middle of a plane to the nearest point of the way from a to b.
fn from_middle_m(a: [f64; 2], b: [f64; 2]) -> f64 {
    let way = [b[0] - a[0], b[1] - a[1]];
    let length2 = way[0] * way[0] + way[1] * way[1];
    let share = if length2 > 0.0 { (-(a[0] * way[0] + a[1] * way[1]) / length2).clamp(0.0, 1.0) } else { 0.0 };
    libm::hypot(a[0] + share * way[0], a[1] + share * way[1])
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Two invented lands side by side, the eastern with two regions; the sea around. A step is 0.1 degrees.
    fn small() -> Regions {
        let country = |code: &str| Country { code: code.into(), name: format!("Land {code}") };
        let area = |country, region: &str| Area { country, region: region.into(), part: String::new() };
        let arc = |one, other, points: &[[i32; 2]]| Arc { one, other, points: points.to_vec() };
        let arcs = vec![
            arc(0, None, &[[0, 10], [-20, 10], [-20, -10], [0, -10]]),
            arc(0, Some(1), &[[0, 0], [0, 10]]),
            arc(0, Some(2), &[[0, 0], [0, -10]]),
            arc(1, Some(2), &[[0, 0], [20, 0]]),
            arc(1, None, &[[0, 10], [20, 10], [20, 0]]),
            arc(2, None, &[[0, -10], [20, -10], [20, 0]]),
        ];
        let areas = vec![area(0, ""), area(1, "North"), area(1, "South")];
        Regions::new(vec![country("A"), country("B")], areas, Arcs::new(10, arcs).expect("lines")).expect("regions")
    }

    fn check(latitude: f64, longitude: f64, radius_m: f64, expected: &[(&str, &str)]) {
        let regions = small();
        let found = regions.at(Position::new(latitude, longitude, Some(radius_m)).expect("a position"));
        let found: Vec<_> = found.iter().map(|it| (it.country.code.as_str(), it.area.region.as_str())).collect();
        assert_eq!(found, expected, "{latitude} {longitude} {radius_m}");
    }

    #[test]
    fn inside_one_area_there_is_one_candidate() {
        check(0.5, -1.0, 100.0, &[("A", "")]);
        check(0.5, 1.0, 100.0, &[("B", "North")]);
        check(-0.5, 1.0, 100.0, &[("B", "South")]);
    }

    #[test]
    fn near_a_border_both_are_offered_the_likelier_first() {
        // 0.03 degrees are 3.3 km.
        check(0.5, -0.03, 1_000.0, &[("A", ""), ("B", "North")]);
        check(0.5, 0.03, 1_000.0, &[("B", "North"), ("A", "")]);
        check(0.5, 0.03, 100.0, &[("B", "North")]);
        // The file's own error: 0.02 degrees are 2.2 km.
        check(0.5, 0.02, 0.0, &[("B", "North"), ("A", "")]);
        check(-0.03, 1.0, 2_000.0, &[("B", "South"), ("B", "North")]);
    }

    #[test]
    fn at_sea_there_is_none_but_near_the_coast_there_is() {
        check(5.0, 5.0, 100.0, &[]);
        check(0.5, 2.3, 10.0, &[]);
        check(0.5, 2.005, 10.0, &[("B", "North")]);
        check(0.5, 2.2, 10.0, &[("B", "North")]);
        check(0.01, 2.2, 10.0, &[("B", "North")]);
        check(0.01, 2.2, 40_000.0, &[("B", "North"), ("B", "South")]);
    }

    #[test]
    fn land_beyond_the_antimeridian_is_near() {
        let island = Arc { one: 0, other: None, points: vec![[-1_799, 0], [-1_790, 0], [-1_790, 9], [-1_799, 0]] };
        let country = Country { code: "A".into(), name: "Land A".into() };
        let area = Area { country: 0, region: String::new(), part: String::new() };
        let regions = Regions::new(vec![country], vec![area], Arcs::new(10, vec![island]).expect("lines"));
        let regions = regions.expect("regions");
        let position = Position::new(0.0, 179.99, Some(10.0)).expect("a position");
        let found = regions.at(position);
        // 0.11 degrees on the equator are 12,245 m.
        assert!((found[0].away.metres() - 12_245.0).abs() < 1.0, "{found:?}");
    }

    #[test]
    fn lines_say_what_they_part() {
        let side = |degrees| units::Degrees::new(degrees).expect("finite");
        let bounds = Bounds::new(side(-0.5), side(-0.5), side(0.5), side(0.5)).expect("a box");
        let mut kinds: Vec<Kind> = small().lines(bounds).into_iter().map(|(kind, _)| kind).collect();
        kinds.dedup();
        assert_eq!(kinds, [Kind::Country, Kind::Region]);
    }

    #[test]
    fn a_file_goes_there_and_back() {
        let regions = small();
        let bytes = regions.bytes();
        let back = Regions::read(&bytes).expect("a whole file");
        assert_eq!(back.bytes(), bytes);
        assert_eq!(Regions::read(&bytes[..bytes.len() - 1]), None);
        assert_eq!(Regions::read(b"RGN1"), None);
    }

    proptest! {
        #[test]
        fn no_position_makes_it_stumble(lat in -90.0..=90.0, lon in -180.0..180.0, radius in 0.0..=f64::MAX) {
            let regions = small();
            let _ = regions.at(Position::new(lat, lon, Some(radius)).expect("a position"));
        }

        #[test]
        fn no_bytes_make_it_stumble(bytes: Vec<u8>) {
            let _ = Regions::read(&[MARK, &bytes].concat());
        }
    }
}
