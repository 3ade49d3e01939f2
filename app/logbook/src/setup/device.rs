//! What belongs to this device only, kept as JSON through the draft port.

use crate::book::Book;
use crate::kept;
use ports::Draft;
use record::Id;
use serde::{Deserialize, Serialize};

/// How large a millimetre is on this screen.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Calibration {
    /// CSS pixels in one true millimetre, as a person measured them.
    pub pixels_per_mm: f64,
}

/// What belongs to this device only.
#[derive(Clone, Debug, PartialEq)]
pub struct DeviceSettings {
    /// Who uses it.
    pub person: Option<Id>,
    /// The numbering from which it gives numbers.
    pub numbering: Option<Id>,
    /// Every numbering from which it ever gave numbers.
    pub numberings: Vec<Id>,
    /// The first-run questions were answered or put off.
    pub asked: bool,
    /// The language of the page, a code.
    pub language: String,
    /// The theme; `None` for the system's.
    pub theme: Option<String>,
    /// Advice on installing was seen.
    pub install_seen: bool,
    /// How large a millimetre is on this screen, where it was measured.
    pub calibration: Option<Calibration>,
    /// What its altitudes are counted from, a code, where a person has said so.
    pub altitude_zero: Option<String>,
}

/// The part that goes with a book.
#[derive(Default, Serialize, Deserialize, PartialEq, Eq)]
#[serde(default)]
struct InBook {
    person: Option<Id>,
    numbering: Option<Id>,
    numberings: Vec<Id>,
    asked: bool,
}

/// The part that is the same whatever book is open.
#[derive(Serialize, Deserialize)]
#[serde(default)]
struct Everywhere {
    language: String,
    theme: Option<String>,
    install_seen: bool,
    calibration: Option<Calibration>,
    altitude_zero: Option<String>,
}

impl Default for Everywhere {
    fn default() -> Self {
        Self { language: "en".to_owned(), theme: None, install_seen: false, calibration: None, altitude_zero: None }
    }
}

impl Default for DeviceSettings {
    fn default() -> Self {
        Self::join(InBook::default(), Everywhere::default())
    }
}

const EVERYWHERE: &str = "glassine/device";

fn in_book(book: Book) -> String {
    format!("glassine/{}/device", book.name())
}

impl DeviceSettings {
    /// Reads the settings that go with a book; what cannot be read is as on a new device.
    pub fn load(draft: &dyn Draft, book: Book) -> Self {
        Self::join(read(draft, &in_book(book)), read(draft, EVERYWHERE))
    }

    /// Keeps the settings; false when the device refused.
    pub fn keep(&self, draft: &dyn Draft, book: Book) -> bool {
        let everywhere = Everywhere {
            language: self.language.clone(),
            theme: self.theme.clone(),
            install_seen: self.install_seen,
            calibration: self.calibration,
            altitude_zero: self.altitude_zero.clone(),
        };
        write(draft, &in_book(book), &self.own()) && write(draft, EVERYWHERE, &everywhere)
    }

    /// What goes with the book, as bytes for the book's own storage: small texts may be a few seconds behind when a
    /// device dies.
    pub(crate) fn with_book(&self) -> Vec<u8> {
        crate::book::to_json(&self.own())
    }

    /// The same, with what goes with the book read from its storage, where the small texts know nothing of it.
    pub(crate) fn or_with_book(self, bytes: &[u8]) -> Self {
        match kept::read::<InBook>(bytes) {
            Some(own) if self.own() == InBook::default() => Self {
                person: own.person,
                numbering: own.numbering,
                numberings: own.numberings,
                asked: own.asked,
                ..self
            },
            _ => self,
        }
    }

    fn own(&self) -> InBook {
        InBook {
            person: self.person,
            numbering: self.numbering,
            numberings: self.numberings.clone(),
            asked: self.asked,
        }
    }

    /// The same with numbers given from this numbering.
    pub(super) fn numbering_from(&self, numbering: Id) -> Self {
        let mut device = Self { numbering: Some(numbering), ..self.clone() };
        if !device.numberings.contains(&numbering) {
            device.numberings.push(numbering);
        }
        device
    }

    fn join(own: InBook, everywhere: Everywhere) -> Self {
        Self {
            person: own.person,
            numbering: own.numbering,
            numberings: own.numberings,
            asked: own.asked,
            language: everywhere.language,
            theme: everywhere.theme,
            install_seen: everywhere.install_seen,
            calibration: everywhere.calibration,
            altitude_zero: everywhere.altitude_zero,
        }
    }
}

fn read<T: Default + for<'de> Deserialize<'de>>(draft: &dyn Draft, name: &str) -> T {
    draft.get(name).and_then(|text| kept::read(text.as_bytes())).unwrap_or_default()
}

fn write<T: Serialize>(draft: &dyn Draft, name: &str, value: &T) -> bool {
    draft.put(name, &serde_json::to_string(value).expect("settings are plain data"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;

    fn paper() -> Rc<dyn Draft> {
        ports::memory::Phone::new(1).page().ports().draft
    }

    #[test]
    fn settings_read_back_and_the_theme_goes_with_every_book() {
        let paper = paper();
        let own = DeviceSettings {
            person: Some(Id::from_bytes([1; 16])),
            asked: true,
            theme: Some("lamp".into()),
            calibration: Some(Calibration { pixels_per_mm: 3.9 }),
            ..DeviceSettings::default()
        };
        assert!(own.keep(&*paper, Book::Own));
        assert_eq!(DeviceSettings::load(&*paper, Book::Own), own);
        let sample = DeviceSettings::load(&*paper, Book::Sample);
        assert_eq!((sample.person, sample.asked, sample.theme.as_deref()), (None, false, Some("lamp")));
    }

    #[test]
    fn settings_that_cannot_be_read_are_those_of_a_new_device() {
        let paper = paper();
        paper.put("glassine/own/device", "{\"person\":7}");
        paper.put("glassine/device", "not JSON");
        assert_eq!(DeviceSettings::load(&*paper, Book::Own), DeviceSettings::default());
    }
}
