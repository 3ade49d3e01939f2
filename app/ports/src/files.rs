//! Files in and out, and the bytes that belong to the app.

use crate::Later;

/// A file that a person gave us or gets from us.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct File {
    /// Its name with extension.
    pub name: String,
    /// Its media type.
    pub media: String,
    /// Its bytes.
    pub bytes: Vec<u8>,
}

/// How a file left, or did not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Left {
    /// The share sheet said that it was sent.
    Shared,
    /// Written to a chosen file and read back with the same bytes.
    ReadBack,
    /// Handed to the browser as a download; where it lies is not known.
    Downloaded,
    /// The person closed the sheet or picker.
    Cancelled,
    /// The system refused; why, as it said.
    Refused(String),
}

/// Which ways out the device has for a file like this.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Ways {
    /// A share sheet takes files of this kind.
    pub share: bool,
    /// A file can be chosen to write into.
    pub save: bool,
}

/// The files port.
pub trait Files {
    /// What the device offers for this file (name and media type matter).
    fn ways(&self, file: &File) -> Ways;
    /// Opens the share sheet. Must run inside a tap, so the bytes are ready before.
    fn share(&self, file: File) -> Later<'_, Left>;
    /// Lets the person choose a file, writes it, reads it back.
    fn save(&self, file: File) -> Later<'_, Left>;
    /// Downloads the file.
    fn download(&self, file: File) -> Left;
    /// Lets the person pick a file to read; `None` when they closed the picker. Must run inside a tap. A file
    /// that cannot be read (gone since, or in a cloud out of reach) comes with its name and no bytes.
    fn pick(&self) -> Later<'_, Option<File>>;
    /// Takes the file that was sent to the app from another one (share target, file handler), if any.
    fn received(&self) -> Later<'_, Option<File>>;
    /// Calls `dropped` for each file dropped on the page, for as long as the page lives; and for a file that the
    /// system opens with the page, unless [`Files::received`] took it before.
    fn on_drop(&self, dropped: Box<dyn Fn(File)>);
    /// Shows a PDF in the browser's own viewer, from which it can be printed; as a download where no window may
    /// be opened. Must run inside a tap. [`Left::Downloaded`] either way: where it ends up is not known.
    fn show(&self, file: File) -> Left;
}

/// Bytes that are part of the app.
pub trait Assets {
    /// The bytes of a file of the app by its path below the app's root ("sample/survey.json").
    fn bytes(&self, path: &str) -> Later<'_, Result<Vec<u8>, String>>;
}
