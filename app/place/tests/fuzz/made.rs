//! Texts for the parser, made from coordinates in every notation by cutting, joining and wounding them; the same number
//! always gives the same text.

/// Coordinates as they are and should be written, and some that are wrong.
const SEEDS: [&str; 49] = [
    "47.6138 N 12.3043 E",
    "N47.6138° E12.3043°",
    "47,6138 N; 12,3043 E",
    "-33.85678, 151.21530",
    "47.6138, 12.3043",
    "47,6138,12,3043",
    "47°36.828'N 12°18.258'E",
    "47° 36′ 49.7″ N, 12° 18′ 15.5″ E",
    "47°36’49.7”N 12°18’15.5”E",
    "47˚36´49.7´´N 12˚18´15.5´´E",
    "47d36m49.7sN 12d18m15.5sE",
    "47 36 49.7 N 12 18 15.5 E",
    "47-36-49.7 N, 12-18-15.5 E",
    "47.36.50 N 12.18.15 E",
    "41 05 54S 121d 10' 34\" W",
    "S 0°30' W 0°15'",
    "-0 30 0, 100 15 0",
    "46 N 7 O",
    "-46 N 7 E",
    "91.0 N",
    "46°75'N 7°E",
    "46.5°30'N 7°E",
    "0 N 0 E",
    "121 N 47 E",
    "lat 47.6138 lon 12.3043 ±8 m WGS84",
    "Longitude: 12.3043, Latitude: 47.6138",
    "47.6 N 12.3 E NAD27, elev. 560 m",
    "alt 560, N47.6 E12.3 +/- 1.5 km",
    "47.6138° Nord, 12.3043° Ost",
    "47.6 N 12.3 E by the barn",
    "+47.6138+012.3043/",
    "+46.30215+007.58394+560.1CRSWGS_84/",
    "+401213.1-0750015.1+2.79CRSEPSG/",
    "-0030-07824/",
    "+7.58+46.30/",
    "geo:47.6138,12.3043;u=9",
    "geo:47.6,12.3,560;crs=wgs84;u=-0",
    "GEO:91,0?z=1e400",
    "33T 297500 5277300",
    "UTM zone 33 T 297500.125mE 5277300.5mN",
    "297500 5277300 33N",
    "33S 500000 4000000",
    "33 297500 5277300",
    "61X 1 9999999.999",
    "33TTN 97500 77300",
    "MGRS 33T TN 97500 77300",
    "33TVA0000000000",
    "４７．６１３８ N １２．３０４３ E",
    "47.6138 N\n12.3043 E",
];

/// Pieces that are put in.
const PIECES: [&str; 72] = [
    "0",
    "9",
    "60",
    "90",
    "180",
    "359.999",
    "99999999999999999999",
    "1e9",
    "1e400",
    ".",
    ",",
    "..",
    ",,",
    "-",
    "--",
    "+",
    "±",
    "+/-",
    "°",
    "º",
    "'",
    "''",
    "\"",
    "′",
    "″",
    "’",
    "”",
    "N",
    "S",
    "E",
    "W",
    "O",
    "n",
    "s",
    "m",
    "d",
    "min",
    "sec",
    "deg",
    "km",
    "ft",
    " ",
    "  ",
    "\u{a0}",
    "\t",
    "\n",
    ";",
    "/",
    "|",
    ":",
    "?",
    "=",
    "geo:",
    "u=",
    "crs=",
    "CRS",
    "WGS84",
    "ED 50",
    "UTM",
    "MGRS",
    "zone",
    "asl",
    "lat",
    "lon",
    "ß",
    "ſ",
    "İ",
    "ŉ",
    "٣",
    "é",
    "\u{301}",
    "𝟜",
];

/// A row of numbers that looks random (Steele, Lea & Flood 2014, SplitMix64, from memory).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    fn below(&mut self, most: usize) -> usize {
        (self.next() % most as u64) as usize
    }

    fn of<'a>(&mut self, list: &[&'a str]) -> &'a str {
        list[self.below(list.len())]
    }
}

/// The text of a number.
pub fn text(number: u64) -> String {
    let mut chance = Chance(number);
    let mut signs: Vec<char> = match chance.below(8) {
        0 => (0..chance.below(8)).flat_map(|_| chance.of(&PIECES).chars()).collect(),
        1 => format!("{}{}", chance.of(&SEEDS), chance.of(&SEEDS)).chars().collect(),
        _ => chance.of(&SEEDS).chars().collect(),
    };
    for _ in 0..chance.below(6) {
        wound(&mut signs, &mut chance);
    }
    signs.into_iter().take(200).collect()
}

/// Puts something in, takes something out, doubles, moves or changes it.
fn wound(signs: &mut Vec<char>, chance: &mut Chance) {
    let at = chance.below(signs.len() + 1);
    let end = (at + chance.below(6)).min(signs.len());
    match chance.below(6) {
        0 => drop(signs.drain(at..end)),
        1 => drop(signs.splice(at..end, chance.of(&PIECES).chars())),
        2 => drop(signs.splice(at..at, chance.of(&PIECES).chars())),
        3 => {
            let piece: Vec<char> = signs[at..end].to_vec();
            let to = chance.below(signs.len() + 1);
            drop(signs.splice(to..to, piece));
        }
        4 => {
            for sign in &mut signs[at..end] {
                if sign.is_ascii_digit() {
                    *sign = char::from(b'0' + chance.below(10) as u8);
                }
            }
        }
        _ => {
            // Any sign at all, more often one of the first planes.
            let most = [0x3000, 0x11_0000][chance.below(2)];
            let code = chance.below(most);
            drop(signs.splice(at..end, char::from_u32(code as u32)));
        }
    }
}
