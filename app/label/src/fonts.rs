//! The fonts of the labels: bytes in, faces out that shape and that a PDF embeds.

use rustybuzz::Face;
use std::sync::Arc;

/// A font that cannot be read; its place in the list, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FontFault(pub usize);

/// The bytes of the fonts, checked once.
///
/// **Shape**: regular, italic, then those that fill the gaps of both, in the order in which they are tried.
#[derive(Clone, Debug)]
pub struct Fonts {
    files: Vec<Arc<Vec<u8>>>,
}

/// Where the face of upright text stands in the list.
const REGULAR: usize = 0;
/// Where the face of italic text stands in the list.
const ITALIC: usize = 1;
/// Where the faces that fill gaps begin.
const FURTHER: usize = 2;

impl Fonts {
    /// Takes the files of the fonts.
    ///
    /// **Errors**: the first file that is no font of letters with outlines.
    pub fn new(regular: Vec<u8>, italic: Vec<u8>, further: Vec<Vec<u8>>) -> Result<Self, FontFault> {
        let files: Vec<_> = [regular, italic].into_iter().chain(further).map(Arc::new).collect();
        for (index, file) in files.iter().enumerate() {
            Face::from_slice(file, 0).ok_or(FontFault(index))?;
            krilla::text::Font::new(Arc::clone(file).into(), 0).ok_or(FontFault(index))?;
        }
        Ok(Self { files })
    }

    /// Whether a file holds an italic face; `None` for what is no font.
    pub fn is_italic(file: &[u8]) -> Option<bool> {
        Face::from_slice(file, 0).map(|face| face.is_italic() || face.is_oblique())
    }

    pub(crate) fn faces(&self) -> Vec<Face<'_>> {
        self.files.iter().map(|file| Face::from_slice(file, 0).expect("the fonts were read before")).collect()
    }

    pub(crate) fn embedded(&self) -> Vec<krilla::text::Font> {
        let font = |file: &Arc<Vec<u8>>| krilla::text::Font::new(Arc::clone(file).into(), 0);
        self.files.iter().map(|file| font(file).expect("the fonts were read before")).collect()
    }
}

/// Which faces are tried for a text, the best first.
pub(crate) fn chain(italic: bool, faces: usize) -> impl Iterator<Item = usize> {
    let (first, second) = if italic { (ITALIC, REGULAR) } else { (REGULAR, ITALIC) };
    [first].into_iter().chain(FURTHER..faces).chain([second])
}
