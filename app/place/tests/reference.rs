//! Uncertainties and geodesics against published and independently computed values; each file says where every row
//! comes from.

#[path = "../../../tests/reference/table.rs"]
mod table;

use place::Position;
use place::distance::leg;
use place::uncertainty::precision;
use std::collections::BTreeMap;
use units::{Degrees, Latitude};

type Row = BTreeMap<String, String>;

fn value(row: &Row, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{column} of {row:?} is a number"))
}

fn at(latitude: f64, longitude: f64) -> Position {
    Position::new(latitude, longitude, None).expect("a position")
}

/// Source: Chapman & Wieczorek (2020), table of metric uncertainty, and the same formula computed apart.
/// Tolerance: 0.06 mm plus 1e-9 of the value, the rounding of the file; the printed column one metre, because five of
/// its cells are printed a metre too low though the caption says that all are rounded up.
#[test]
fn coordinate_precision_agrees_with_the_published_table() {
    let rows = table::table("coordinate_precision_uncertainty.csv");
    assert_eq!(rows.len(), 52);
    for row in rows {
        let step = Degrees::new(value(&row, "precision_deg")).expect("finite");
        let latitude = Latitude::new(value(&row, "latitude_deg")).expect("a latitude");
        let metres = precision(latitude, step, step).metres();
        let computed = value(&row, "uncertainty_m_computed");
        assert!((metres - computed).abs() < 6e-5 + computed * 1e-9, "{metres} {row:?}");
        let printed = metres.ceil() - value(&row, "published_uncertainty_m");
        assert!((0.0..=1.0).contains(&printed), "{metres} {row:?}");
    }
}

/// Source: GeographicLib 2.1 by its Python package. Tolerance: 0.06 mm, the rounding of the file; azimuths 1e-6
/// degrees where the points are a metre or more apart.
#[test]
fn distances_and_bearings_agree_with_geographiclib() {
    let rows = table::table("geodesic_wgs84.csv");
    assert_eq!(rows.len(), 64);
    for row in rows {
        let from = at(value(&row, "lat1_deg"), value(&row, "lon1_deg"));
        let to = at(value(&row, "lat2_deg"), value(&row, "lon2_deg"));
        let leg = leg(from, to);
        assert!((leg.distance.metres() - value(&row, "distance_m")).abs() < 6e-5, "{leg:?} {row:?}");
        let turned = (leg.bearing.degrees() - value(&row, "azimuth1_deg_0_360")).rem_euclid(360.0);
        assert!(turned.min(360.0 - turned) < 1e-6, "{leg:?} {row:?}");
    }
}

/// Source: Karney (2013) and the GeographicLib documentation, rows on WGS84. Tolerance: one unit of the last digit
/// published, at most 1 mm.
#[test]
fn published_geodesics_are_met() {
    let rows = table::table("geodesic_published_examples.csv");
    let rows: Vec<Row> = rows.into_iter().filter(|r| r["ellipsoid"] == "WGS84" && r["problem"] == "inverse").collect();
    assert_eq!(rows.len(), 4);
    for row in rows {
        let from = at(value(&row, "lat1"), value(&row, "lon1"));
        let to = at(value(&row, "lat2_or_azi1"), value(&row, "lon2_or_s12"));
        let metres = leg(from, to).distance.metres();
        assert!((metres - value(&row, "published_1_s12_m")).abs() < 1e-3, "{metres} {row:?}");
    }
}

/// Source: pyproj 3.7.2 (PROJ 9.5.1) and PyPI mgrs 1.6.0. Tolerance: 0.6 mm, the rounding of the file; MGRS cuts off,
/// so one unit where a metre is reached exactly, and then by the reference computed from the pyproj numbers.
#[test]
fn grid_references_agree_with_proj() {
    let rows = table::table("utm_mgrs.csv");
    assert!(rows.len() >= 120);
    for row in rows {
        let position = at(value(&row, "lat_deg"), value(&row, "lon_deg"));
        let found = place::grid::utm(position);
        if row["outside_utm_ups"] == "yes" {
            assert_eq!(found, Err(place::grid::GridProblem::Polar), "{row:?}");
            continue;
        }
        let utm = found.expect("within the zones");
        assert_eq!(utm.zone.to_string(), row["utm_zone"], "{row:?}");
        assert_eq!(utm.hemisphere.code().to_string(), row["hemisphere"], "{row:?}");
        assert!((utm.easting_m - value(&row, "easting_m")).abs() < 6e-4, "{utm:?} {row:?}");
        assert!((utm.northing_m - value(&row, "northing_m")).abs() < 6e-4, "{utm:?} {row:?}");
        let mgrs = place::grid::mgrs(position, 5).expect("within the zones");
        assert!(mgrs == row["mgrs_1m_from_pyproj"] || mgrs == row["mgrs_1m_pypi_mgrs"], "{mgrs} {row:?}");
    }
}

/// Source: ISO 6709 Annex H strings as quoted in public test suites, and the rules of the standard; the table marks
/// which. Tolerance: 1e-9 degrees, a tenth of a millimetre.
#[test]
fn strings_of_iso_6709_are_read() {
    let expected = [
        ("S01", 27.5916, 86.564),
        ("S02", 48.8577, 2.295),
        ("S03", 40.6894, -74.0447),
        ("S04", -90.0, 0.0),
        ("S05", 90.0, 0.0),
        ("S06", 0.0, -25.0),
        ("S07", -33.85678, 151.2153),
        ("S08", -0.5, -78.4),
        ("S09", 46.30215, 7.58394),
        ("S10", 40.0 + 12.0 / 60.0 + 13.0 / 3600.0, -(75.0 + 15.0 / 3600.0)),
    ];
    let rows = table::table("format_check_strings.csv");
    for (id, latitude, longitude) in expected {
        let row = rows.iter().find(|row| row["id"] == id).expect("a row of that name");
        let understood = place::parse::parse(&row["expected"]);
        let reading = understood.only().unwrap_or_else(|| panic!("one reading: {understood:?}"));
        assert!((reading.latitude.degrees() - latitude).abs() < 1e-9, "{reading:?} {row:?}");
        assert!((reading.longitude.degrees() - longitude).abs() < 1e-9, "{reading:?} {row:?}");
        let height = understood.problems.iter().all(|problem| matches!(problem, place::parse::Problem::Height(_)));
        assert!(height, "{understood:?}");
    }
}

/// Source: `format_check_strings.csv`, forms seen in Darwin Core examples and in field practice. Each is one
/// coordinate; a longitude (or a latitude) is put beside it. Tolerance: 1e-6 degrees, the digits of the table.
#[test]
fn single_coordinates_of_the_table_are_read_in_a_pair() {
    let rows = table::table("format_check_strings.csv");
    for id in ["K13", "K14", "K15", "K16", "K17", "K19", "K20"] {
        let row = rows.iter().find(|row| row["id"] == id).expect("a row of that name");
        let value: f64 = value(row, "expected");
        let (latitude, text) = match row["input"].as_str() {
            input if input.ends_with('W') => (false, format!("45°30'00\" N {input}")),
            "46,30215" => (true, "46,30215 N 100,5 E".to_owned()),
            input if input.starts_with('S') => (true, format!("{input} E 100°30'")),
            input => (true, format!("{input} 100°30'00\" E")),
        };
        let understood = place::parse::parse(&text);
        let reading = understood.only().unwrap_or_else(|| panic!("one reading of {text}: {understood:?}"));
        let found = if latitude { reading.latitude.degrees() } else { reading.longitude.degrees() };
        assert!((found - value).abs() < 1e-6, "{text} {found}");
    }
    for (id, code) in [("K21", "minutes"), ("K22", "fraction_before"), ("K24", "latitude_range")] {
        let row = rows.iter().find(|row| row["id"] == id).expect("a row of that name");
        let understood = place::parse::parse(&row["input"]);
        assert!(understood.readings.is_empty(), "{row:?}");
        assert!(understood.problems.iter().any(|problem| problem.code() == code), "{understood:?}");
    }
}
