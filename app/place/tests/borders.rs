//! Countries, regions and coasts in `public/geo` against places from elsewhere.

#[path = "../../../tests/reference/table.rs"]
mod table;

use place::Position;
use place::arcs::Bounds;
use place::country::{Kind, Regions};
use place::outline::Outline;
use units::Degrees;

fn regions() -> Regions {
    Regions::read(include_bytes!("../../../public/geo/regions.bin")).expect("a whole file")
}

fn outline() -> Outline {
    Outline::read(include_bytes!("../../../public/geo/outline.bin")).expect("a whole file")
}

/// Natural Earth has the line that is held in Western Sahara, and no Tokelau.
const COUNTED_OTHERWISE: [&str; 2] = ["EH", "TK"];

/// Source: `country_places.csv`: the largest place of each country, sixty within about a kilometre of a border and a
/// hundred more, from GeoNames; the names of their regions by the codes of GeoNames in Natural Earth. Each place's country
/// must be among those offered; in first place it may be another only where the place lies at a border.
#[test]
fn places_lie_in_their_countries() {
    let regions = regions();
    let rows = table::table("country_places.csv");
    assert_eq!(rows.len(), 406);
    let (mut first, mut region, mut region_rows) = (0, 0, 0);
    for row in rows.iter().filter(|row| !COUNTED_OTHERWISE.contains(&row["country"].as_str())) {
        let number = |column: &str| row[column].parse().expect("a number");
        let found = regions.at(Position::new(number("latitude"), number("longitude"), Some(0.0)).expect("a position"));
        assert!(found.iter().any(|it| it.country.code == row["country"]), "{row:?} {found:?}");
        first += usize::from(found[0].country.code == row["country"]);
        if row["country"] != found[0].country.code {
            assert!(found.len() > 1, "{row:?} {found:?}");
        }
        if !row["regions"].is_empty() {
            let named = |name: &str| row["regions"].split('|').any(|region| region == name);
            region_rows += 1;
            region += usize::from(found.iter().any(|it| named(&it.area.region) || named(&it.area.part)));
        }
    }
    assert!(first >= 370, "{first}");
    // Regions that were redrawn between the two sources.
    assert!(region * 100 >= region_rows * 95, "{region} of {region_rows}");
}

#[test]
fn crossing_a_border_is_seen_and_the_middle_of_a_country_is_sure() {
    let regions = regions();
    let codes = |latitude, longitude, radius_m| {
        let found = regions.at(Position::new(latitude, longitude, Some(radius_m)).expect("a position"));
        let mut codes: Vec<String> = found.iter().map(|it| it.country.code.clone()).collect();
        codes.dedup();
        codes
    };
    assert_eq!(codes(46.9, 2.4, 100.0), ["FR"]);
    // The bridge over the Rhine at Kehl.
    let mut rhine = codes(48.5738, 7.8008, 100.0);
    rhine.sort();
    assert_eq!(rhine, ["DE", "FR"]);
    assert!(codes(0.0, -30.0, 1_000.0).is_empty());
    // Both sides of the antimeridian on Taveuni, Fiji.
    assert_eq!((codes(-16.85, 179.98, 100.0), codes(-16.85, -179.98, 100.0)), (vec!["FJ".into()], vec!["FJ".into()]));
    assert_eq!(codes(-89.9, 10.0, 100.0), ["AQ"]);
}

#[test]
fn coasts_and_borders_come_for_a_box() {
    let side = |degrees| Degrees::new(degrees).expect("finite");
    let bounds = Bounds::new(side(-3.0), side(42.0), side(0.0), side(45.0)).expect("a box");
    for lines in [outline().lines(bounds), regions().lines(bounds)] {
        assert!(lines.iter().any(|(kind, _)| *kind == Kind::Coast));
        assert!(lines.iter().any(|(kind, _)| *kind == Kind::Country));
        for coordinate in lines.iter().flat_map(|(_, line)| &line.0) {
            // A micrometre for the last bits.
            assert!((-3.0 - 1e-11..=1e-11).contains(&coordinate.x), "{coordinate:?}");
            assert!((42.0 - 1e-11..=45.0 + 1e-11).contains(&coordinate.y), "{coordinate:?}");
        }
    }
    assert!(regions().lines(bounds).iter().any(|(kind, _)| *kind == Kind::Region));
}

/// The files are fetched over slow lines: their sizes are part of what is promised.
#[test]
fn the_files_stay_small() {
    assert!(include_bytes!("../../../public/geo/regions.bin").len() < 700_000);
    assert!(include_bytes!("../../../public/geo/outline.bin").len() < 100_000);
    assert!(include_bytes!("../../../public/geo/egm96.bin").len() < 270_000);
}
