//! The datums by name, each with how far its positions lie from those of the same numbers on WGS84.
//!
//! **Source**: shifts are up to so many metres, by the published parameters of the EPSG dataset, plus the accuracy that it
//! states for them, rounded up to ten metres (to one below ten); `tests/reference/datum_shifts.csv` has each with its
//! transformation. Spellings are common practice. Longitudes from Paris, Ferro or another old meridian are another
//! matter and not in here.

use super::Datum;
use units::Metres;

const fn known(code: &'static str, epsg: u16, shift_m: i32, names: &'static [&'static str]) -> Datum {
    Datum { code, epsg, shift: Metres::whole(shift_m), names }
}

#[rustfmt::skip]
pub(super) static KNOWN: [Datum; 59] = [
    known("NAD27", 4_267, 300, &["nad27", "nad1927", "northamericandatum1927", "northamericandatumof1927", "northamerican1927"]),
    known("NAD83", 4_269, 10, &["nad83", "nad1983", "northamericandatum1983", "northamericandatumof1983", "northamerican1983"]),
    known("ED50", 4_230, 210, &["ed50", "europeandatum1950", "european1950", "europaischesdatum1950", "eur50"]),
    known("Tokyo", 4_301, 700, &["tokyo", "tokyodatum", "tokyo1918", "tokio"]),
    known("OSGB36", 4_277, 170, &["osgb36", "osgb1936", "osgb", "ordnancesurveyofgreatbritain1936", "ordnancesurveygreatbritain1936"]),
    known("Pulkovo 1942", 4_284, 180, &["pulkovo1942", "pulkovo", "pulkowo1942", "sk42", "s42", "ck42", "krassovsky1942", "krasovsky1942"]),
    known("Pulkovo 1942(58)", 4_179, 150, &["pulkovo194258", "s4258", "pulkovo4258"]),
    known("AGD66", 4_202, 220, &["agd66", "agd1966", "australiangeodeticdatum1966", "australiangeodetic1966"]),
    known("AGD84", 4_203, 220, &["agd84", "agd1984", "australiangeodeticdatum1984", "australiangeodetic1984"]),
    known("SAD69", 4_618, 110, &["sad69", "sad1969", "southamericandatum1969", "southamerican1969"]),
    known("PSAD56", 4_248, 530, &["psad56", "psad1956", "provisionalsouthamericandatum1956", "provisionalsouthamerican1956", "provsamerican1956"]),
    known("DHDN", 4_314, 230, &["dhdn", "potsdam", "potsdamdatum", "rauenberg", "deutscheshauptdreiecksnetz"]),
    known("MGI", 4_312, 130, &["mgi", "militargeographischesinstitut", "hermannskogel", "austrianmgi"]),
    known("NTF", 4_275, 80, &["ntf", "nouvelletriangulationfrancaise", "nouvelletriangulationdelafrance"]),
    known("Amersfoort", 4_289, 140, &["amersfoort", "rd", "rijksdriehoek", "rijksdriehoeksmeting"]),
    known("BD72", 4_313, 130, &["bd72", "belgedatum1972", "belge1972", "reseaunationalbelge1972", "belgiandatum1972"]),
    known("CH1903", 4_149, 200, &["ch1903", "ch03", "swissdatum", "bern1903", "swissch1903"]),
    known("Monte Mario", 4_265, 130, &["montemario", "rome1940", "roma40", "rome40", "roma1940"]),
    known("Arc 1950", 4_209, 270, &["arc1950", "arc50"]),
    known("Arc 1960", 4_210, 400, &["arc1960", "arc60"]),
    known("Cape", 4_222, 130, &["cape", "capedatum", "southafricancape"]),
    known("Adindan", 4_201, 220, &["adindan"]),
    known("Minna", 4_263, 170, &["minna"]),
    known("Kertau", 4_245, 250, &["kertau", "kertau1948", "kertau1968", "malayanrevisedtriangulation"]),
    known("Timbalai 1948", 4_298, 490, &["timbalai1948", "timbalai"]),
    known("Indian 1954", 4_239, 530, &["indian1954"]),
    known("Indian 1975", 4_240, 680, &["indian1975"]),
    known("Kalianpur 1975", 4_146, 470, &["kalianpur1975", "kalianpur"]),
    known("Luzon 1911", 4_253, 280, &["luzon1911", "luzon"]),
    known("NZGD49", 4_272, 220, &["nzgd49", "nzgd1949", "newzealandgeodeticdatum1949", "geodeticdatum1949", "geodetic1949"]),
    known("Old Hawaiian", 4_135, 510, &["oldhawaiian", "oldhawaiiandatum"]),
    known("Beijing 1954", 4_214, 100, &["beijing1954", "beijing54", "bj54", "peking1954"]),
    known("Corrego Alegre", 4_225, 120, &["corregoalegre", "corregoalegre1961", "corregoalegre197072"]),
    known("TM65", 4_299, 100, &["tm65", "ireland1965", "ireland65", "irish", "geodeticdatumof1965"]),
    known("Lisbon", 4_207, 260, &["lisbon", "lisboa", "lisbon1937", "lisboa1937", "datumlisboa"]),
    known("Datum 73", 4_274, 140, &["datum73", "d73"]),
    known("Greek", 4_120, 210, &["greek", "greekdatum"]),
    known("GGRS87", 4_121, 330, &["ggrs87", "egsa87", "greekgeodeticreferencesystem1987"]),
    known("S-JTSK", 4_156, 190, &["sjtsk", "jtsk", "krovak"]),
    known("RT90", 4_124, 280, &["rt90", "swedishrt90"]),
    known("KKJ", 4_123, 210, &["kkj", "kartastokoordinaattijarjestelma"]),
    known("HD72", 4_237, 100, &["hd72", "hungariandatum1972", "eov"]),
    known("Hjorsey 1955", 4_658, 60, &["hjorsey1955", "hjorsey"]),
    known("Campo Inchauspe", 4_221, 150, &["campoinchauspe", "inchauspe", "campoinchauspe1969"]),
    known("Bogota 1975", 4_218, 530, &["bogota1975", "bogota", "bogotaobservatory"]),
    known("Schwarzeck", 4_293, 240, &["schwarzeck"]),
    known("Puerto Rico", 4_139, 240, &["puertorico", "puertorican", "puertoricodatum"]),
    known("La Canoa", 4_247, 440, &["lacanoa"]),
    known("Batavia", 4_211, 340, &["batavia", "djakarta", "jakarta", "genuk"]),
    known("Hu Tzu Shan 1950", 4_236, 890, &["hutzushan1950", "hutzushan", "tw67", "twd67"]),
    known("Tananarive", 4_297, 180, &["tananarive", "tananarive1925", "antananarivo", "antananarivo1925"]),
    known("WGS72", 4_322, 20, &["wgs72", "wgs1972", "worldgeodeticsystem1972"]),
    known("GDA94", 4_283, 5, &["gda94", "gda1994", "geocentricdatumofaustralia1994"]),
    known("ETRS89", 4_258, 1, &["etrs89", "etrs1989", "etrf89", "europeanterrestrialreferencesystem1989"]),
    known("SIRGAS 2000", 4_674, 1, &["sirgas2000", "sirgas"]),
    known("JGD2000", 4_612, 1, &["jgd2000", "japanesegeodeticdatum2000"]),
    known("NZGD2000", 4_167, 1, &["nzgd2000", "newzealandgeodeticdatum2000"]),
    known("GDA2020", 7_844, 5, &["gda2020", "geocentricdatumofaustralia2020"]),
    known("JGD2011", 6_668, 1, &["jgd2011", "japanesegeodeticdatum2011"]),
];

/// The datum of a plain name, or of `epsg` and a number.
pub(super) fn known_by(name: &str) -> Option<&'static Datum> {
    let number: Option<u16> = name.strip_prefix("epsg").and_then(|digits| digits.parse().ok());
    KNOWN.iter().find(|datum| Some(datum.epsg) == number || datum.names.contains(&name))
}
