//! Makes a share copy of a log file.

use exchange::share_copy::share_copy;
use place::generalise::Coarseness;
use ports::share_copy::{Coarse, KIND};
use record::parcel::Parcel;

/// The copy; no part where the question cannot be read.
pub fn answer(question: Parcel) -> Parcel {
    let copy = match &question.parts[..] {
        [coarse, file] => {
            let coarse = serde_json::from_slice(coarse).ok().and_then(coarseness);
            coarse.and_then(|coarse| share_copy(file, coarse).ok())
        }
        _ => None,
    };
    Parcel { kind: KIND.to_owned(), parts: copy.into_iter().collect() }
}

fn coarseness(coarse: Coarse) -> Option<Coarseness> {
    Some(match coarse {
        Coarse::Thousandth => Coarseness::Thousandth,
        Coarse::Hundredth => Coarseness::Hundredth,
        Coarse::Tenth => Coarseness::Tenth,
        Coarse::Whole => Coarseness::Whole,
        Coarse::Radius(metres) => Coarseness::within(metres)?,
    })
}
