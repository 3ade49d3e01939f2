//! The position row.

use super::dates::{plain, way};
use super::{English, counted};
use crate::sentences::say;

say! { English says Place {
    waiting: "Waiting for the first fix. You can type on.";
    slow: "No fix yet. It goes on looking; you can type it.";
    unavailable: "The phone cannot tell where it is. Type it, or take the site’s point.";
    denied: "Position is not allowed for this page. Type it, or take the site’s point.";
    radius: "Radius in metres";
    radius_unit: "m";
    keep: "Keep this";
    kept: "kept as it was";
    type_it: "Type it";
    typed: "Coordinates as you have them";
    datum: "Datum";
    datum_hint: "WGS84";
    datum_wgs84: "WGS84, as receivers and map sites give it.";
    datum_known(code: &str, metres: f64): format!("{code}, kept as written and not converted: up to {} m more.", plain(metres.ceil()));
    datum_unknown(metres: f64): format!("A datum that is not known here, kept as written: up to {} m more.", plain(metres.ceil()));
    typed_hint: "47.6138 12.3043";
    take_site_point: "Take the site’s point";
    take_here: "Take here";
    confirm_here: "I caught it here";
    detached: "Another time or place was chosen, so “here” was let go.";
    site_point: "the site’s own point";
    none: "No position";
    fixes(fixes: u32, seconds: u32): format!("{} in {seconds} s", counted(fixes as usize, "fix", "fixes"));
    rings(radii: &[f64]): rings(radii);
    scale(metres: f64): way(metres);
    notation(code: &str): format!("read as {}", notation(code));
    pick: "This one";
    pick_says: "It can be read in several ways. Which one is it?";
    problem(code: &str, value: &str): problem(code, value);
} }

fn rings(radii: &[f64]) -> String {
    match radii {
        [] => "No accuracy known".into(),
        [now] => format!("Accuracy circle: {} metres", plain(*now)),
        [first, now] => format!("Accuracy circle: first {} metres, now {} metres", plain(*first), plain(*now)),
        [first, between, .., now] => {
            format!(
                "Accuracy circle: first {} metres, then {}, now {} metres",
                plain(*first),
                plain(*between),
                plain(*now)
            )
        }
    }
}

fn notation(code: &str) -> &str {
    match code {
        "decimal" => "degrees",
        "minutes" => "degrees and minutes",
        "seconds" => "degrees, minutes and seconds",
        "iso6709" => "a string of ISO 6709",
        "geo_uri" => "a geo address",
        "utm" => "UTM",
        "mgrs" => "MGRS",
        other => other,
    }
}

/// What is odd about coordinates as typed; a problem without words of its own is said by its code.
fn problem(code: &str, value: &str) -> String {
    match code {
        "nothing" => "This cannot be read as a position. It is kept as typed.".into(),
        "one_number" => "Only one of the two is there.".into(),
        "too_many_numbers" => "There are more numbers than two coordinates have.".into(),
        "latitude_range" => format!("{value}° is beyond the pole."),
        "longitude_range" => format!("{value}° is beyond half a turn."),
        "minutes" => format!("{value} minutes: there are not more than 60."),
        "seconds" => format!("{value} seconds: there are not more than 60."),
        "fraction_before" => "A fraction stands before a smaller unit.".into(),
        "sign_and_letter" => "Sign and letter say different things.".into(),
        "order" => "Latitude and longitude may stand in either order.".into(),
        "swapped" => "It makes sense only with latitude and longitude the other way round.".into(),
        "sign" => "The other events lie near with the other sign.".into(),
        "far" => format!(
            "The event before it lies {} away.",
            value.parse::<u32>().map_or_else(|_| value.to_owned(), |metres| way(metres.into()))
        ),
        "zero_zero" => "Both are zero: more often a device’s mistake than a place.".into(),
        "letter_o" => "O is east in some languages and west in others.".into(),
        "comma" => "A comma may part two numbers or be a decimal comma.".into(),
        "zone_letter" => format!("The letter {value} may be a hemisphere or a band."),
        "zone_hemisphere" => "The zone has no letter: the northing may count north or south of the equator.".into(),
        "grid" => "There is no such zone or square.".into(),
        "iso6709_digits" => "A string of ISO 6709 has other numbers of digits.".into(),
        "iso6709_end" => "A string of ISO 6709 ends with a stroke; it was read without.".into(),
        "datum" => format!(
            "{value} is another datum: the numbers were not converted, and the point may lie some hundred metres off."
        ),
        "height" => format!("A height of {value} m came with it; type it as elevation."),
        "not_understood" => format!("Not understood: {value}"),
        other => other.to_owned(),
    }
}
