//! The fonts of the labels: bytes in, faces out that shape and that a PDF embeds.

use rustybuzz::Face;
use rustybuzz::ttf_parser::{Permissions, name_id};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A font that cannot be read; its place in the list, from 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FontFault(pub usize);

/// What a font file says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct About {
    /// Its family; empty where it has no name that can be read.
    pub family: String,
    /// How many characters it has.
    pub characters: usize,
    /// Whether its licence lets a part of it travel in a document.
    ///
    /// **Source**: OpenType 1.9.1, OS/2 table, fsType: restricted licence embedding (bit 1), no subsetting (bit 8),
    /// bitmap embedding only (bit 9). A font without that table forbids nothing.
    pub may_embed: bool,
}

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
            read(file).ok_or(FontFault(index))?;
        }
        Ok(Self { files })
    }

    /// What a font file says of itself; `None` for what is no font of letters with outlines. Of a collection of fonts
    /// the first is meant.
    pub fn about(file: Vec<u8>) -> Option<About> {
        let file = Arc::new(file);
        let face = read(&file)?;
        let mut characters = BTreeSet::new();
        for table in face.tables().cmap.into_iter().flat_map(|map| map.subtables).filter(|table| table.is_unicode()) {
            table.codepoints(|code| {
                if table.glyph_index(code).is_some_and(|glyph| glyph.0 > 0) {
                    characters.insert(code);
                }
            });
        }
        let os2 = face.tables().os2;
        let may_embed = os2.is_none_or(|os2| {
            let allowed = os2.permissions().is_some_and(|allowed| allowed != Permissions::Restricted);
            allowed && os2.is_subsetting_allowed() && os2.is_outline_embedding_allowed()
        });
        Some(About { family: family(&face), characters: characters.len(), may_embed })
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

/// The face of a file that both the shaper and the writer of documents can read.
fn read(file: &Arc<Vec<u8>>) -> Option<Face<'_>> {
    krilla::text::Font::new(Arc::clone(file).into(), 0)?;
    Face::from_slice(file, 0)
}

/// The name of the family, the one of all its styles before the one of this one.
fn family(face: &Face<'_>) -> String {
    let named =
        |id: u16| face.names().into_iter().filter(move |name| name.name_id == id).find_map(|name| name.to_string());
    named(name_id::TYPOGRAPHIC_FAMILY).or_else(|| named(name_id::FAMILY)).unwrap_or_default()
}

/// Which faces are tried for a text, the best first.
pub(crate) fn chain(italic: bool, faces: usize) -> impl Iterator<Item = usize> {
    let (first, second) = if italic { (ITALIC, REGULAR) } else { (REGULAR, ITALIC) };
    [first].into_iter().chain(FURTHER..faces).chain([second])
}
