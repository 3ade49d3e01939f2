//! The rows of a catch: each writes one thing into the form that is kept as it is typed. The form of a new catch,
//! a saved event that is changed in place and a trap share them.

mod caught;
mod collectors;
mod device_height;
mod elevation;
mod host;
mod method;
mod permit;
mod place;
mod rings;
mod site;
mod text;
mod typed;
mod until;

pub use caught::CaughtRow;
pub use collectors::CollectorsRow;
pub use device_height::DeviceHeightOffer;
pub use elevation::ElevationRow;
pub use host::{HostFields, HostMore, HostRow, WriteHost};
pub use method::{MethodRow, OpenRow, Particulars};
pub use permit::PermitRow;
pub use place::{PlaceFields, PlaceRow};
pub use rings::Rings;
pub use site::SiteRow;
pub use text::{HeightRow, MicrohabitatRow, NotesRow, StationRow, WeatherRow};
pub use typed::TypedPlace;
pub use until::UntilRow;

use crate::draft::Draft;
use leptos::prelude::*;
use logbook::form::{CatchForm, Row};

/// The form of a catch, kept as it is typed.
pub type CatchDraft = Draft<CatchForm>;

/// Whether a row is marked as unknown, and what marks it.
fn unknown(draft: CatchDraft, row: Row) -> (Signal<bool>, Callback<bool>) {
    let marked = draft.part(move |form| form.unknown.contains(&row));
    (marked, draft.on(move |form: &mut CatchForm, unknown: bool| form.mark_unknown(row, unknown)))
}
