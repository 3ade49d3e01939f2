//! The country and the first-level region of a position, to be offered.
//!
//! In go a position and the borders as their file has them; out come names, the nearest first. Several mean that a border
//! is nearer than the position is sure. Nothing is written by itself.

use crate::form::PlaceForm;
use crate::values::read_number;
use place::Position;
pub use place::country::Regions;

/// At most so many are offered: three countries may meet.
const MOST: usize = 4;

/// Names that a site may take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Land {
    /// The country.
    pub country: String,
    /// Its first-level region; empty where there is none.
    pub region: String,
    /// Whether the position lies inside; else its border is within reach.
    pub inside: bool,
}

/// Where a form's position lies, or may lie.
pub fn lands(form: &PlaceForm, regions: &Regions) -> Vec<Land> {
    let Some((latitude, longitude)) = form.coordinates() else { return Vec::new() };
    let radius = read_number(&form.radius).filter(|radius| *radius >= 0.0);
    let Some(position) = Position::new(latitude, longitude, radius) else { return Vec::new() };
    let mut lands: Vec<Land> = Vec::new();
    for candidate in regions.at(position) {
        let land = Land {
            country: candidate.country.name.clone(),
            region: candidate.area.region.clone(),
            inside: candidate.away.metres() == 0.0,
        };
        if !lands.iter().any(|known| known.country == land.country && known.region == land.region) {
            lands.push(land);
        }
    }
    lands.truncate(MOST);
    lands
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(latitude: f64, longitude: f64, radius: &str) -> Vec<Land> {
        let regions =
            Regions::read(include_bytes!("../../../public/geo/regions.bin")).expect("the file that is served");
        let form = PlaceForm {
            latitude: Some(latitude),
            longitude: Some(longitude),
            radius: radius.to_owned(),
            ..PlaceForm::default()
        };
        lands(&form, &regions)
    }

    #[test]
    fn a_position_well_inside_has_one_country() {
        // Innsbruck, 47.27° N 11.39° E, lies in Tyrol (from memory).
        let found = at(47.27, 11.39, "10");
        assert_eq!((found[0].country.as_str(), found[0].inside), ("Austria", true));
        assert!(found[0].region == "Tirol" || found[0].region == "Tyrol", "{}", found[0].region);
        assert!(found.iter().all(|land| land.country == "Austria"));
    }

    #[test]
    fn near_a_border_both_sides_are_offered() {
        // Where Basel, Weil am Rhein and Huningue meet, 47.590° N 7.589° E (from memory): Switzerland, Germany, France.
        let found = at(47.59, 7.589, "500");
        let countries: Vec<&str> = found.iter().map(|land| land.country.as_str()).collect();
        assert!(countries.contains(&"Switzerland") && countries.contains(&"Germany"), "{countries:?}");
    }

    #[test]
    fn at_sea_and_without_a_position_nothing_is_offered() {
        assert!(at(0.0, -30.0, "10").is_empty());
        let regions =
            Regions::read(include_bytes!("../../../public/geo/regions.bin")).expect("the file that is served");
        assert!(lands(&PlaceForm::default(), &regions).is_empty());
    }
}
