//! A site.

use super::dates::{plain, way};
use super::{English, counted};
use crate::sentences::say;

say! { English says Site {
    title_new: "New site";
    title: "Site";
    names: "Names";
    name: "Site";
    offset: "From a named place";
    offset_hint: "2 km NE of …";
    offset_from(name: &str): format!("Measured from the point of {name}:");
    take_offset: "Take this point";
    share(code: &str, metres: f64): format!("{} {} m", share(code), plain(metres.ceil()));
    usual(metres: f64): format!("The circle holds every place that the words allow; the usual rule, one cosine for all, gives {} m.", plain(metres.ceil()));
    locality: "Locality in words";
    province: "Province";
    country: "Country";
    lands: "Country and province by the point";
    land_near: "border near";
    habitat: "Habitat";
    point: "Sug\u{ad}gested point";
    point_says: "Offered to a catch here, and marked as offered. Each catch keeps its own position.";
    take_here: "Take here";
    type_it: "Type it";
    drop: "None";
    near: "Near it already";
    near_line(metres: f64, events: usize): format!("{}, {}", way(metres), counted(events, "event", "events"));
    says: "What a label will say";
    save: "Save site";
    saved: "Site saved.";
    missing_name: "name of the site";
    missing_country: "country";
    missing_locality: "locality in words";
    how_1: "A site lends its words to every catch made there: country, province, locality. Writing them once is enough.";
    how_2: "Its point is only a suggestion. Each catch keeps its own position.";
} }

fn share(code: &str) -> &str {
    match code {
        "coordinates" => "its own radius",
        "offset" => "distance and direction",
        other => other,
    }
}
