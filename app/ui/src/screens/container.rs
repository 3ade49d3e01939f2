//! Containers: one more for a catch that is being typed, one more for a saved event, or a saved one to be changed.

mod contents;
mod editor;
mod fluids;
mod links;
mod number;
mod own;
mod screens;

pub use contents::{ContentWords, FormContents, count_words, counts};
pub use screens::{ChangeContainer, EventContainer, FormContainer};

use crate::draft::Draft;
use logbook::form::ContainerForm;
use logbook::view::Plate;

/// The form of a container, kept as it is typed.
pub type VialDraft = Draft<ContainerForm>;

/// The plate of a container that is being typed; a span shows its last number behind the first.
pub fn form_plate(form: &ContainerForm) -> Plate {
    let vessel = if form.released { "none" } else { form.vessel.as_str() };
    let mut plate = logbook::numbers::plate_of(vessel, form.first.trim());
    if form.released {
        plate.run.clear();
    } else if !form.last.trim().is_empty() {
        let last = logbook::numbers::plate_of(vessel, form.last.trim());
        plate.run = format!("{}–{}", plate.run, last.run);
    }
    plate
}
