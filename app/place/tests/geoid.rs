//! The undulation of the geoid against published values and against the grid that the small one was made from.

#[path = "../../../tests/reference/table.rs"]
mod table;

use place::Position;
use place::geoid::{ERROR_MOST, Geoid};

fn read(bytes: &[u8]) -> Geoid {
    Geoid::read(bytes).expect("a whole file")
}

fn small() -> Geoid {
    read(include_bytes!("../../../public/geo/egm96.bin"))
}

/// The 15-minute grid of NIMA to the centimetre, in the same kind of file (`examples/make_geoid.rs` says how it is
/// made).
fn fine() -> Geoid {
    read(include_bytes!("../../../tests/reference/egm96_15min.bin"))
}

fn undulation_m(geoid: &Geoid, latitude: f64, longitude: f64) -> f64 {
    geoid.undulation(Position::new(latitude, longitude, None).expect("a position")).metres()
}

/// Source: `geoid_undulation.csv`, test points published by NIMA/NGA for EGM96 (grid and harmonic program). Tolerance:
/// for the fine grid 0.03 m, because the published program puts a spline through it where we put a cubic; for the small
/// one what it promises, and 0.25 m at these places, of which none is rough.
#[test]
fn published_points_are_met() {
    let rows = table::table("geoid_undulation.csv");
    let (small, fine) = (small(), fine());
    let mut checked = 0;
    for row in rows.iter().filter(|row| row["model_method"].starts_with("EGM96")) {
        let value = |column: &str| row[column].parse::<f64>().expect("a number");
        for longitude in ["lon_deg_as_published", "lon_deg_pm180"] {
            let published_m = value("N_published_m");
            let fine_m = undulation_m(&fine, value("lat_deg"), value(longitude));
            let small_m = undulation_m(&small, value("lat_deg"), value(longitude));
            assert!((fine_m - published_m).abs() < 0.03, "{fine_m} {row:?}");
            assert!((small_m - published_m).abs() < 0.25, "{small_m} {row:?}");
            checked += 1;
        }
    }
    assert_eq!(checked, 24);
}

/// Every node of the 15-minute grid, and the middle between each and the next to the south-east.
#[test]
fn the_small_grid_is_never_further_off_than_it_says() {
    let (small, fine) = (small(), fine());
    let (mut most, mut squares, mut shares) = ((0.0, 0.0, 0.0), 0.0, 0.0);
    for row in 0..1_441 {
        let latitude = 90.0 - f64::from(row) * 0.125;
        // Two neighbouring rows hold the nodes and the middles.
        let start = f64::from(row % 2) * 0.125;
        let share = latitude.to_radians().cos();
        for column in 0..1_440 {
            let longitude = start + f64::from(column) * 0.25;
            let off = (undulation_m(&small, latitude, longitude) - undulation_m(&fine, latitude, longitude)).abs();
            if off > most.0 {
                most = (off, latitude, longitude);
            }
            squares += off * off * share;
            shares += share;
        }
    }
    let mean = (squares / shares).sqrt();
    assert!(most.0 <= ERROR_MOST.metres(), "{most:?}, mean {mean}");
    assert!(mean < 0.075, "{mean}, most {most:?}");
}
