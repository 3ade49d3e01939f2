//! Fonts of a person's own, for letters that those of the labels lack. This device keeps them beside the records; they
//! hang on no record and leave with no file.

use crate::driver::{Driver, Held};
use ports::files::File;
use ports::press::{FontSays, OWN_FONT, PressFault};
use ports::store::StoreFault;

/// A font that a person has added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OwnFont {
    /// The name under which it is kept.
    pub key: String,
    /// Its family, or the name of its file where that has none.
    pub family: String,
    /// How many characters it has.
    pub characters: usize,
}

/// Why a font was not added. Nothing was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FontRefused {
    /// The file of this name is no TrueType or OpenType font, or could not be read.
    NoFont(String),
    /// The licence of this family does not let a part of it travel in a document.
    Shut(String),
    /// The press gave no answer.
    Press(PressFault),
    /// It could not be kept.
    Store(StoreFault),
}

impl OwnFont {
    fn new(file: &File, says: FontSays) -> Self {
        let family = if says.family.trim().is_empty() { file.name.clone() } else { says.family };
        Self { key: format!("{OWN_FONT}{}/{family}", says.characters), family, characters: says.characters }
    }

    fn of_key(key: &str) -> Option<Self> {
        let (characters, family) = key.strip_prefix(OWN_FONT)?.split_once('/')?;
        Some(Self { key: key.to_owned(), family: family.to_owned(), characters: characters.parse().ok()? })
    }
}

impl<H: Held> Driver<H> {
    /// The fonts that a person has added.
    ///
    /// **Errors**: as [`StoreFault`].
    pub async fn own_fonts(&self) -> Result<Vec<OwnFont>, StoreFault> {
        let names = self.ports.store.kept_names().await?;
        Ok(names.iter().filter_map(|name| OwnFont::of_key(name)).collect())
    }

    /// Adds a font file, once the press has said that it is one and may be used.
    ///
    /// **Errors**: as [`FontRefused`].
    pub async fn add_font(&self, file: File) -> Result<OwnFont, FontRefused> {
        let says = self.ports.press.judge(file.bytes.clone()).await.map_err(FontRefused::Press)?;
        let says = says.ok_or_else(|| FontRefused::NoFont(file.name.clone()))?;
        let may_embed = says.may_embed;
        let font = OwnFont::new(&file, says);
        if !may_embed {
            return Err(FontRefused::Shut(font.family));
        }
        self.ports.store.keep(font.key.clone(), Some(file.bytes)).await.map_err(FontRefused::Store)?;
        self.ports.press.fonts_changed();
        Ok(font)
    }

    /// Takes a font away again.
    ///
    /// **Errors**: as [`StoreFault`]; it is kept then.
    pub async fn take_font_away(&self, key: &str) -> Result<(), StoreFault> {
        self.ports.store.keep(key.to_owned(), None).await?;
        self.ports.press.fonts_changed();
        Ok(())
    }
}
