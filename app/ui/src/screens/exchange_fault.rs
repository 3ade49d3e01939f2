//! Why a file was not made or not taken, in words: what happened; what is safe and what to do.

use crate::context::say;
use crate::explain;
use logbook::exchange::{ExchangeFault, Fault, Refusal};
use ports::courier::CourierFault;

/// Why an exchange did not come about.
pub fn exchange_fault(fault: &ExchangeFault) -> (String, String) {
    let words = say().import;
    match fault {
        ExchangeFault::Empty => (words.nothing_to_undo().into(), say().faults.nothing_changed().into()),
        ExchangeFault::Refused(refusal) => refused(refusal),
        ExchangeFault::Courier(CourierFault::Gone(reason)) => (words.courier().into(), words.courier_do(reason)),
        ExchangeFault::Garbled => (words.garbled().into(), words.garbled_do().into()),
        ExchangeFault::Save(fault) => explain::save_fault(fault),
    }
}

/// Why a file is none that this book can take.
fn refused(refusal: &Refusal) -> (String, String) {
    let words = say().import;
    let again = words.refused_do();
    let (what, safe): (String, &str) = match refusal {
        Refusal::Empty => (words.empty_file().into(), again),
        Refusal::NotJson { line } => (words.not_json(*line), again),
        Refusal::NotOurs => (words.not_ours().into(), again),
        Refusal::BrokenHeader { line } => (words.broken_header(*line), again),
        Refusal::Newer { version } => (words.newer(*version), words.newer_do()),
        Refusal::CutOff { line } => (words.cut_off(*line), words.cut_off_do()),
        Refusal::Checksum => (words.checksum().into(), again),
        Refusal::Count { said, found } => (words.count(*said, *found), again),
        Refusal::BrokenRecord { line, fault } => (words.broken_record(*line, &why(fault)), again),
        Refusal::ShareCopy => (words.share_copy().into(), words.share_copy_do()),
        Refusal::OtherBook { .. } => (words.other_book().into(), words.other_book_do()),
    };
    (what, safe.to_owned())
}

fn why(fault: &Fault) -> String {
    let words = say().import;
    match fault {
        Fault::NotJson { column } => words.why_not_json(*column),
        Fault::NoKind => words.why_no_kind().into(),
        Fault::NoId => words.why_no_id().into(),
        Fault::NoVersions => words.why_no_versions().into(),
        Fault::Twice { field } => words.why_twice(field),
        Fault::ValueAlone { field } | Fault::VersionAlone { field } => words.why_alone(field),
        Fault::BeyondSeen { field } | Fault::DotTwice { field } => words.why_seen(field),
    }
}
