//! The fonts of the door: those named first, then the project's own.

use label::Fonts;

const OWN: [&str; 3] =
    ["FiraSansCondensed-Regular.ttf", "FiraSansCondensed-Italic.ttf", "DejaVuSansCondensed-gaps.ttf"];

/// Reads fonts: the first upright and the first italic one lead, all others fill gaps.
pub fn fonts(files: &[String]) -> Result<Fonts, String> {
    let read = |path: &str| std::fs::read(path).map_err(|fault| format!("{path}: {fault}"));
    let mut given = Vec::new();
    for path in files {
        let bytes = read(path)?;
        let italic = Fonts::is_italic(&bytes).ok_or_else(|| format!("{path}: not a font"))?;
        given.push((bytes, italic));
    }
    for name in OWN {
        let bytes = read(&format!("{}/../../public/fonts/{name}", env!("CARGO_MANIFEST_DIR")))?;
        given.push((bytes, name.contains("Italic")));
    }
    let mut first = |italic: bool| {
        let at = given.iter().position(|(_, slanted)| *slanted == italic).expect("the project has both");
        given.remove(at).0
    };
    let (regular, italic) = (first(false), first(true));
    let further = given.into_iter().map(|(bytes, _)| bytes).collect();
    Fonts::new(regular, italic, further).map_err(|fault| format!("font {} cannot be used", fault.0))
}
