//! Areas and their rings out of GeoJSON.

use place::country::{Area, Country};
use serde_json::Value;

/// A corner in steps of 0.00001 degrees, east and north: what the source gives.
pub type Corner = [i32; 2];

/// Each area's rings.
pub type Rings = Vec<Vec<Vec<Corner>>>;

pub struct Areas {
    pub countries: Vec<Country>,
    pub areas: Vec<Area>,
    pub rings: Rings,
}

/// Countries whose areas in the source are parts of their first-level regions, with the property that names those.
const PARTS: [(&str, &str); 5] =
    [("BFA", "region"), ("ESP", "region"), ("FRA", "region"), ("GBR", "geonunit"), ("ITA", "region")];

/// Lands that the source counts to others, with code and name in ISO 3166-1. It puts Crimea and Sevastopol under Russia;
/// their codes in ISO 3166-2 are of Ukraine.
const OWN: [(&str, &str, &str); 13] = [
    ("BVT", "BV", "Bouvet Island"),
    ("CCK", "CC", "Cocos (Keeling) Islands"),
    ("Caribbean Netherlands", "BQ", "Caribbean Netherlands"),
    ("CXR", "CX", "Christmas Island"),
    ("GAZ", "PS", "Palestine"),
    ("GLP", "GP", "Guadeloupe"),
    ("GUF", "GF", "French Guiana"),
    ("MTQ", "MQ", "Martinique"),
    ("MYT", "YT", "Mayotte"),
    ("NSV", "SJ", "Svalbard"),
    ("REU", "RE", "Réunion"),
    ("UKR", "UA", "Ukraine"),
    ("WEB", "PS", "Palestine"),
];

/// The areas of "States, Provinces", those of the same name in a region taken together, sorted by country.
pub fn regions(given: &Value) -> Option<Areas> {
    let mut named: Vec<(Country, String, String, Vec<Vec<Corner>>)> = Vec::new();
    for feature in given["features"].as_array()? {
        let word = |name: &str| feature["properties"][name].as_str().unwrap_or("").trim().to_owned();
        let ukraine = if word("iso_3166_2").starts_with("UA-") { own("UKR") } else { None };
        let own = ukraine.or_else(|| own(&word("gu_a3"))).or_else(|| own(&word("admin")));
        let department = own.is_some() && word("adm0_a3") == "FRA";
        let country = own.unwrap_or_else(|| Country { code: two_letters(word("iso_a2")), name: word("admin") });
        let name =
            ["name", "name_en", "gn_name"].map(word).into_iter().find(|name| !name.is_empty()).unwrap_or_default();
        let above = PARTS.iter().find(|(of, _)| *of == word("adm0_a3")).map(|(_, property)| word(property));
        let (region, part) = match above {
            Some(region) if !region.is_empty() && region != name => (region, name),
            _ => (name, String::new()),
        };
        // A country of one piece has no regions.
        let (region, part) = if region == country.name || department { Default::default() } else { (region, part) };
        named.push((country, region, part, rings(&feature["geometry"])?));
    }
    named.sort_by(|a, b| (&a.0.name, &a.0.code, &a.1, &a.2).cmp(&(&b.0.name, &b.0.code, &b.1, &b.2)));
    let mut areas = Areas { countries: Vec::new(), areas: Vec::new(), rings: Vec::new() };
    for (country, region, part, rings) in named {
        if areas.countries.last() != Some(&country) {
            areas.countries.push(country);
        }
        let area = Area { country: areas.countries.len() - 1, region, part };
        if areas.areas.last() == Some(&area) {
            areas.rings.last_mut()?.extend(rings);
        } else {
            areas.areas.push(area);
            areas.rings.push(rings);
        }
    }
    Some(areas)
}

fn own(code: &str) -> Option<Country> {
    let (_, code, name) = OWN.iter().find(|(of, ..)| *of == code)?;
    Some(Country { code: (*code).to_owned(), name: (*name).to_owned() })
}

/// A code as it is, where it is one.
fn two_letters(code: String) -> String {
    if code.len() == 2 && code.bytes().all(|letter| letter.is_ascii_uppercase()) { code } else { String::new() }
}

/// The rings of each feature.
pub fn countries(given: &Value) -> Option<Rings> {
    given["features"].as_array()?.iter().map(|feature| rings(&feature["geometry"])).collect()
}

fn rings(geometry: &Value) -> Option<Vec<Vec<Corner>>> {
    let coordinates = &geometry["coordinates"];
    let polygons: Vec<&Value> = match geometry["type"].as_str()? {
        "Polygon" => vec![coordinates],
        "MultiPolygon" => coordinates.as_array()?.iter().collect(),
        _ => return None,
    };
    let rings = polygons.into_iter().filter_map(Value::as_array).flatten();
    rings.map(|ring| ring.as_array()?.iter().map(corner).collect()).collect()
}

fn corner(given: &Value) -> Option<Corner> {
    let steps = |at: usize| given[at].as_f64().map(|degrees| (degrees * 100_000.0).round() as i32);
    Some([steps(0)?, steps(1)?])
}
