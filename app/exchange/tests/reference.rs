//! What is read of GPX against the rows of `format_check_strings.csv`, which name their source: the GPX 1.1 schema.

#[path = "../../../tests/reference/table.rs"]
mod table;

use exchange::gpx::{Gpx, Reason, read};
use place::Position;
use place::instant::UtcOffset;
use units::Metres;

/// The string of a row.
fn row(id: &str) -> String {
    let rows = table::table("format_check_strings.csv");
    let row = rows.into_iter().find(|row| row["id"] == id).expect("a row of that name");
    let written = if row["direction"] == "read" { &row["input"] } else { &row["expected"] };
    written.clone()
}

/// A file with one point.
fn file(attributes: &str, inside: &str) -> Gpx {
    let root = row("P01");
    read(format!("{root}<trk><trkseg><trkpt {attributes}>{inside}</trkpt></trkseg></trk></gpx>").as_bytes())
}

#[test]
fn strings_of_the_format_are_read() {
    let waypoint = row("P02").replace("wpt", "trkpt");
    let gpx = read(format!("{}<trk><trkseg>{waypoint}</trkseg></trk></gpx>", row("P01")).as_bytes());
    let point = gpx.tracks[0].segments[0][0];
    assert_eq!(Some(point.position), Position::new(46.302_15, 7.583_94, None));
    assert_eq!(point.elevation, Metres::new(560.0));
    assert_eq!(point.at.map(|at| at.text(UtcOffset::default())).as_deref(), Some("2026-06-12T19:30:00+00:00"));

    let antimeridian = file(&format!("lat=\"90\" {}", row("P03")), "");
    assert_eq!(Some(antimeridian.tracks[0].segments[0][0].position), Position::new(90.0, -180.0, None));

    let evening = file("lat=\"46\" lon=\"7\"", &format!("<time>{}</time>", row("P04")));
    let offset = UtcOffset::new(120).expect("less than a day");
    assert_eq!(evening.fixes()[0].at.text(offset), "2026-06-12T21:30:00+02:00");

    let exponent = file(&format!("{} lon=\"7\"", row("P05")), "");
    assert_eq!(exponent.faults[0].reason, Reason::Latitude("4.63E1".to_owned()));
    assert_eq!(exponent.fixes(), []);
}
