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
    typed_hint: "47.6138 12.3043";
    take_site_point: "Take the site’s point";
    take_here: "Take here";
    confirm_here: "I caught it here";
    detached: "Another time or place was chosen, so “here” was let go.";
    site_point: "the site’s own point";
    none: "No position";
    drop_point: "None";
    fixes(fixes: u32, seconds: u32): format!("{} in {seconds} s", counted(fixes as usize, "fix", "fixes"));
    rings(radii: &[f64]): rings(radii);
    scale(metres: f64): way(metres);
    understood(notation: &str): format!("read as {notation}");
    problem_nothing: "Nothing is typed.";
    problem_unreadable: "This cannot be read as a position. It is kept as typed.";
    problem_latitude: "A latitude is not above 90°.";
    problem_longitude: "A longitude is not above 180°.";
    problem_swapped: "Latitude and longitude seem to stand the other way round. They were turned.";
    problem_minutes: "Minutes or seconds are not above 60.";
    problem_hemisphere: "North or south, east or west is not said; north and east are taken.";
    problem_one_only: "Only one of the two is there.";
    problem_zone: "The zone letter does not fit the rest.";
    problem_datum(datum: &str): format!("{datum} is another datum: the point may lie some hundred metres off.");
    problem_several: "It can be read in two ways. Look at the point.";
    problem_rough(metres: f64): format!("So few digits fix it only to about {} m.", plain(metres));
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
