//! Share copies: a log file whose positions are coarser and whose words for the place are left out.
//!
//! In go the bytes of a log file and how coarse; out comes a log file that says in its header what was done, can be read by
//! anybody, and is never merged back. Dates, names of insects and people, hosts and methods stay.

use place::Position;
use place::generalise::{Coarseness, Generalised, generalise};
use record::Record;
use record::wire::{self, Log, Refusal};
use serde_json::{Map, Value, json};
use units::Metres;

/// Fields that tell where it was, in words or by height; a kind without fields is left out whole.
const LEFT_OUT: [(&str, &[&str]); 7] = [
    ("site", &["name", "locality", "offset"]),
    (
        "event",
        &["elevation", "height_above_ground", "microhabitat", "notes", "station", "collection_wording", "host_wording"],
    ),
    ("container", &["collection_wording", "host_wording", "notes"]),
    ("trap", &["notes", "station"]),
    ("printing", &[]),
    ("permit", &[]),
    ("photo", &[]),
];
/// The field that is a position.
const PLACE: &str = "place";

/// A share copy of a log file.
///
/// **Errors**: as [`Refusal`], where the file is no log file.
///
/// **Source**: Chapman (2020), Current Best Practices for Generalizing Sensitive Species Occurrence Data: what is
/// generalised is said, with the method and the cell, and texts that give the place away are left out.
pub fn share_copy(file: &[u8], coarseness: Coarseness) -> Result<Vec<u8>, Refusal> {
    let Log { mut header, mut records, .. } = wire::read(file)?;
    // The minute of a sunset tells the place as well as coordinates do.
    header.more.remove("sky");
    let mut cell = None;
    records.retain(|record| fields_out(record).is_none_or(|fields| !fields.is_empty()));
    for record in &mut records {
        let fields = fields_out(record).unwrap_or_default();
        record.fields.retain(|name, _| !fields.contains(&name.as_str()));
        for version in record.fields.get_mut(PLACE).into_iter().flatten() {
            let coarse = coarser(&version.value, coarseness);
            cell = cell.or(coarse.as_ref().map(|(_, done)| (done.method, done.cell.degrees())));
            version.value = coarse.map_or(Value::Null, |(value, _)| value);
        }
    }
    let left_out: Map<String, Value> =
        LEFT_OUT.iter().map(|(kind, fields)| ((*kind).to_owned(), json!(fields))).collect();
    let mut said = Map::new();
    said.insert("left_out".to_owned(), Value::Object(left_out));
    if let Some((method, cell_deg)) = cell {
        said.insert("positions".to_owned(), json!({ "method": method, "cell_deg": cell_deg }));
    }
    header.share_copy = Some(said);
    Ok(wire::write(&header, &records))
}

/// What is left out of a record; none of it of the other kinds.
fn fields_out(record: &Record) -> Option<&'static [&'static str]> {
    LEFT_OUT.iter().find(|(kind, _)| *kind == record.kind.name()).map(|(_, fields)| *fields)
}

/// The position of a cell, with the radius that holds the true one; nothing where the value is no position.
fn coarser(value: &Value, coarseness: Coarseness) -> Option<(Value, Generalised)> {
    let number = |name: &str| value.get(name).and_then(Value::as_f64);
    let radius = number("radius_m").filter(|radius| *radius >= 0.0);
    let position = Position::new(number("latitude")?, number("longitude")?, radius)?;
    let done = generalise(position, coarseness)?;
    let mut coarse = json!({
        "latitude": done.position.latitude.degrees(),
        "longitude": done.position.longitude.degrees(),
        "datum": value.get("datum").cloned().unwrap_or_default(),
        "how": "generalised",
        "generalised": { "method": done.method, "cell_deg": done.cell.degrees(), "added_m": done.added.metres() },
    });
    if let Some(radius) = done.position.radius.map(Metres::metres) {
        coarse["radius_m"] = json!(radius);
    }
    Some((coarse, done))
}

#[cfg(test)]
mod tests {
    use super::*;
    use place::distance::distance;

    /// The invented sample survey.
    const SURVEY: &[u8] = include_bytes!("../../../demo/sample.json");

    fn positions(log: &Log) -> Vec<(record::Id, Position)> {
        let mut found = Vec::new();
        for record in &log.records {
            let value = record.fields.get(PLACE).and_then(|versions| versions.first()).map(|version| &version.value);
            let number = |name: &str| value.and_then(|value| value.get(name)).and_then(Value::as_f64);
            if let (Some(latitude), Some(longitude)) = (number("latitude"), number("longitude")) {
                found.extend(Position::new(latitude, longitude, number("radius_m")).map(|at| (record.id, at)));
            }
        }
        found
    }

    #[test]
    fn every_position_is_coarser_and_its_circle_holds_the_true_one() {
        let before = wire::read(SURVEY).expect("the survey is whole");
        let copy = share_copy(SURVEY, Coarseness::Hundredth).expect("a log file");
        let after = wire::read(&copy).expect("the copy is whole");
        let (true_ones, coarse) = (positions(&before), positions(&after));
        assert_eq!(true_ones.len(), coarse.len());
        assert!(true_ones.len() > 70, "most events have a position");
        for ((id, at), (same, cell)) in true_ones.iter().zip(&coarse) {
            assert_eq!(id, same);
            let steps = cell.latitude.degrees() * 100.0;
            assert!((steps - steps.round()).abs() < 1e-9, "{steps}");
            if let (Some(before), Some(now)) = (at.radius, cell.radius) {
                assert!(
                    distance(*at, *cell).metres() + before.metres() <= now.metres(),
                    "the circle holds the true one"
                );
            }
        }
    }

    #[test]
    fn words_for_the_place_are_left_out_and_the_header_says_so() {
        let copy = share_copy(SURVEY, Coarseness::Tenth).expect("a log file");
        let text = String::from_utf8(copy.clone()).expect("text");
        for word in ["Mill Meadow", "Tarn Beck", "Tarn Abbot", "\"typed\":\"4", "elevation\":{"] {
            assert!(!text.contains(word), "{word} is still there");
        }
        let log = wire::read(&copy).expect("whole");
        let said = log.header.share_copy.as_ref().expect("it says that it is one");
        assert_eq!(said["positions"], json!({ "method": "degree_grid", "cell_deg": 0.1 }));
        assert_eq!(log.header.mergeable("sample"), Err(Refusal::ShareCopy), "it can never be merged back");
    }

    #[test]
    fn sunsets_do_not_give_the_place_away() {
        let mut log = wire::read(SURVEY).expect("whole");
        log.header.more.insert("sky".to_owned(), json!({ "an event": { "sunset": "20:26" } }));
        let copy = share_copy(&wire::write(&log.header, &log.records), Coarseness::Whole).expect("a log file");
        assert!(!String::from_utf8(copy).expect("text").contains("sunset"));
    }

    #[test]
    fn what_is_no_log_file_is_refused() {
        assert!(share_copy(b"{}", Coarseness::Whole).is_err());
    }
}
