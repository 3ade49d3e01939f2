//! Reads a GPX file.

use exchange::gpx;
use ports::track::{Fix, KIND, Told, pack};
use record::parcel::Parcel;

/// The fixes of the file, and what is wrong with it.
pub fn answer(question: Parcel) -> Parcel {
    let file = question.parts.into_iter().next().unwrap_or_default();
    let read = gpx::read(file.as_slice());
    let fix = |fix: place::track::Fix| Fix {
        latitude: fix.position.latitude.degrees(),
        longitude: fix.position.longitude.degrees(),
        unix_ms: fix.at.unix_ms(),
    };
    let fixes: Vec<Fix> = read.fixes().into_iter().map(fix).collect();
    let told = Told {
        names: read.tracks.iter().filter_map(|track| track.name.clone()).collect(),
        points: read.tracks.iter().flat_map(|track| &track.segments).map(Vec::len).sum(),
        faults: read.faults.iter().map(|fault| (fault.line, fault.reason.code().to_owned())).collect(),
        ends_early: read.faults.iter().any(|fault| fault.reason.ends()),
    };
    Parcel { kind: KIND.to_owned(), parts: pack(&fixes, &told) }
}
