//! Shares of an uncertainty, datums and coarse positions against published and independently computed values; each file
//! says where every row comes from.

#[path = "../../../tests/reference/table.rs"]
mod table;

use place::Position;
use place::combine::{Offset, Share, combine};
use place::generalise::{Coarseness, generalise};
use place::uncertainty::{self, Confidence, FEATURES, written};
use std::collections::BTreeMap;
use units::{Degrees, Latitude, Metres};

type Row = BTreeMap<String, String>;

fn rows(kind: &str) -> Vec<Row> {
    let rows = table::table("uncertainty_worked_examples.csv");
    rows.into_iter().filter(|row| row["id"].starts_with(kind)).collect()
}

fn value(row: &Row, column: &str) -> f64 {
    row[column].parse().unwrap_or_else(|_| panic!("{column} of {row:?} is a number"))
}

fn metres(value: f64) -> Metres {
    Metres::new(value).expect("finite")
}

fn row(id: &str) -> Row {
    rows(id).into_iter().find(|row| row["id"] == id).expect("a row of that name")
}

/// Source: Chapman & Wieczorek (2020), P1 and P2. Tolerance: half the last digit published.
#[test]
fn coordinate_precision_is_the_published_one() {
    for (id, latitude, step) in [("P1", 10.27, 0.01), ("P2", 10.0, 0.5)] {
        let latitude = Latitude::new(latitude).expect("a latitude");
        let step = Degrees::new(step).expect("finite");
        let km = uncertainty::precision(latitude, step, step).metres() / 1000.0;
        assert!((km - value(&row(id), "recomputed_here")).abs() < 6e-5, "{id} {km}");
        assert!((km - value(&row(id), "result")).abs() < 6e-3, "{id} {km}");
    }
}

/// Source: Chapman & Wieczorek (2020), table of heading precision, H1 to H3, and P3: 10 km NE. Exact; P3 half of its last
/// digit.
#[test]
fn winds_are_as_sure_as_published() {
    for row in rows("H") {
        let error = written::direction(&row["inputs"]).expect("a wind").1;
        assert_eq!(error.degrees(), value(&row, "result"), "{row:?}");
    }
    let (bearing, bearing_error) = written::direction("NE").expect("a wind");
    let offset = Offset { distance: metres(10_000.0), distance_error: Metres::ZERO, bearing, bearing_error };
    let start = Position::new(10.0, 20.0, None).expect("a position");
    let km = combine(start, &[], Some(offset)).position.radius_m().expect("a radius") / 1000.0;
    assert!((km - value(&row("P3"), "result")).abs() < 5e-3, "{km}");
}

/// Source: Chapman & Wieczorek (2020), table of offset precision, D1 to D14. Exact but for the last bits. For "30 mi" other
/// printings of the table say 5 mi, which its own rule does not give.
#[test]
fn distances_are_as_sure_as_published() {
    let rows = rows("D");
    assert_eq!(rows.len(), 14);
    for row in rows {
        let (length, error) = written::distance(&row["inputs"]).expect("a distance");
        let number: f64 = row["inputs"].split(' ').next().and_then(|number| number.parse().ok()).expect("a number");
        let unit_m = length.metres() / number;
        assert!((error.metres() / unit_m - value(&row, "result")).abs() < 1e-9, "{row:?}");
    }
}

/// Source: Zermoglio et al. (2020), table of default geographic radials, R1 to R7 and F1 to F5. Tolerance: a metre, by
/// which the guide rounds. R8 gives a whole diagonal where the other rows give half of one, and is left out.
#[test]
fn cells_and_small_features_have_the_published_radii() {
    let mile_m = 1609.344;
    let sides_m = [1.0, 10.0, 100.0, 1_000.0, 6.0 * mile_m, mile_m, mile_m / 2.0];
    for (at, side_m) in sides_m.into_iter().enumerate() {
        let radius_m = uncertainty::cell(metres(side_m)).metres();
        let row = row(&format!("R{}", at + 1));
        assert!((radius_m - value(&row, "result")).abs() <= 1.02, "{radius_m} {row:?}");
        assert!((radius_m - value(&row, "recomputed_here")).abs() < 0.006, "{radius_m} {row:?}");
    }
    for (at, (code, radius)) in FEATURES.into_iter().enumerate() {
        assert_eq!(radius.metres(), value(&row(&format!("F{}", at + 1)), "result"), "{code}");
    }
}

/// Source: M1 to M6 and E1 to E3, Chapman & Wieczorek (2020) and Zermoglio et al. (2020); G1 to G4, and Darwin Core.
/// Exact.
#[test]
fn maps_and_devices_are_as_sure_as_published() {
    for row in rows("M") {
        let scale = row["inputs"].trim_start_matches("1:").parse().expect("a scale");
        assert!((uncertainty::map_accuracy(scale).metres() - value(&row, "result")).abs() < 1e-9, "{row:?}");
    }
    assert_eq!(uncertainty::map_reading(24_000).metres(), value(&row("E3"), "result"));
    assert_eq!(uncertainty::contours(metres(20.0)).metres(), 10.0);
    assert_eq!(uncertainty::FIX_UNRECORDED.metres(), value(&row("G1"), "result"));
    assert_eq!(uncertainty::FIX_UNRECORDED_BEFORE_MAY_2000.metres(), value(&row("G2"), "result"));
    assert_eq!(uncertainty::device(metres(8.0), Confidence::Half), Share { code: "device_50", radius: metres(16.0) });
    assert_eq!(uncertainty::cell(metres(100.0)).metres().ceil(), value(&row("G4"), "result"));
}

/// Source: C6 to C8, computed apart. Tolerance: half the last digit. In C7 a second is written as 0.000278°.
#[test]
fn devices_and_digits_add_up() {
    let cases = [
        ("C6", 8.0, Confidence::Most, 1e-5, 47.12345),
        ("C7", 30.0, Confidence::Most, 1.0 / 3600.0, 60.0),
        ("C8", 8.0, Confidence::Half, 1e-4, -33.5),
    ];
    for (id, reported_m, confidence, step, latitude) in cases {
        let latitude = Latitude::new(latitude).expect("a latitude");
        let step = Degrees::new(step).expect("finite");
        let device = uncertainty::device(metres(reported_m), confidence).radius;
        let radius_m = (device + uncertainty::precision(latitude, step, step)).metres();
        assert!((radius_m - value(&row(id), "result")).abs() < 6e-3, "{id} {radius_m}");
    }
}

/// Source: `datum_shifts.csv`, EPSG parameters by PROJ 9.5.1. A shift covers its bound and is at most ten metres more.
#[test]
fn datums_cover_their_shifts() {
    let rows = table::table("datum_shifts.csv");
    assert_eq!(rows.len(), place::datum::all().len());
    for (row, datum) in rows.iter().zip(place::datum::all()) {
        assert_eq!((row["datum"].as_str(), row["epsg"].as_str()), (datum.code, datum.epsg.to_string().as_str()));
        let spare_m = datum.shift.metres() - value(row, "bound_m");
        assert!((0.0..10.0).contains(&spare_m), "{datum:?} {row:?}");
    }
    let worst = place::datum::Reading::of("not recorded").share().radius;
    assert_eq!(worst.metres(), value(&row("U1"), "result"));
}

/// Source: `generalisation_checks.csv`: decimal arithmetic and geographiclib 2.1. Points to 1e-9 degrees; a metre where the
/// distance to the corner lies at a whole one.
#[test]
fn coarse_positions_are_those_of_the_table() {
    let rows = table::table("generalisation_checks.csv");
    assert_eq!(rows.len(), 40);
    for row in rows {
        let radius = Some(value(&row, "original_uncertainty_m"));
        let position = Position::new(value(&row, "lat"), value(&row, "lon"), radius).expect("a position");
        let coarseness = match row["step_deg"].as_str() {
            "1" => Coarseness::Whole,
            "0.1" => Coarseness::Tenth,
            "0.01" => Coarseness::Hundredth,
            _ => Coarseness::Thousandth,
        };
        let coarse = generalise(position, coarseness).expect("a grid");
        let wanted = Position::new(value(&row, "lat_rounded_half_away"), value(&row, "lon_rounded_half_away"), None);
        let wanted = wanted.expect("a position");
        assert!((coarse.position.latitude.degrees() - wanted.latitude.degrees()).abs() < 1e-9, "{coarse:?} {row:?}");
        assert!(coarse.position.longitude.to(wanted.longitude).degrees().abs() < 1e-9, "{coarse:?} {row:?}");
        assert!((coarse.added.metres() - value(&row, "cell_half_diagonal_m")).abs() <= 1.0, "{coarse:?} {row:?}");
        let sum_m = coarse.position.radius_m().expect("a radius");
        assert!((sum_m - value(&row, "coordinateUncertaintyInMeters_sum")).abs() <= 1.0, "{coarse:?} {row:?}");
    }
}

/// Steps and sides beyond all sense make the greatest length, never none.
#[test]
fn nothing_great_turns_into_nothing() {
    let step = Degrees::new(f64::MAX).expect("finite");
    let latitude = Latitude::new(45.0).expect("a latitude");
    assert_eq!(uncertainty::precision(latitude, step, step).metres(), f64::MAX);
    assert_eq!(uncertainty::device(metres(f64::MAX), Confidence::Half).radius.metres(), f64::MAX);
    assert!(uncertainty::cell(metres(f64::MAX)).metres() > 1e308);
    assert!(uncertainty::map_accuracy(u32::MAX).metres() > 2e6);
}
