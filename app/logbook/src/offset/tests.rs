use super::*;
use crate::invented::Table;
use crate::places::distance_m;
use record::event::Place;

/// A book with the invented Tarn Abbot at 47° N 12° E, ± 90 m.
fn book() -> Table {
    let mut table = Table::new();
    let id = table.site("Tarn Abbot");
    let site = table.book.record(id).expect("saved");
    table.change(&site, |edit| {
        let place = Place { latitude: 47.0, longitude: 12.0, radius_m: Some(90.0), ..Place::default() };
        edit.put(&site::PLACE, &place);
    });
    table
}

fn point(offset: &str) -> Option<OffsetPoint> {
    let form = SiteForm { offset: offset.to_owned(), ..SiteForm::default() };
    book().book.offset_point(&form)
}

#[test]
fn the_words_make_a_point_and_its_circle() {
    let found = point("10 km NE of Tarn Abbot").expect("a known place");
    let away = distance_m((47.0, 12.0), found.coordinates);
    assert!((away - 10_000.0).abs() < 0.01, "{away}");
    // Source: Chapman & Wieczorek (2020), "Uncertainty Related to Heading": NE is sure to 22.5° either way, which at 10 km
    // alone is worth 3.90 km; the distance's own half kilometre and the 90 m of the start come on top.
    assert!(found.radius_m > 3_900.0 + 90.0 && found.radius_m < 4_400.0, "{}", found.radius_m);
    assert_eq!(found.shares.iter().map(|(code, _)| *code).collect::<Vec<_>>(), ["coordinates", "offset"]);
    let sum: f64 = found.shares.iter().map(|(_, metres)| metres).sum();
    assert!((sum - found.radius_m).abs() < 1e-6);
    let form = found.taken(SiteForm { offset: "10 km NE of Tarn Abbot".into(), ..SiteForm::default() });
    assert_eq!((form.place.source, form.place.typed.as_str()), (Source::Typed, "10 km NE of Tarn Abbot"));
    assert_eq!(form.place.coordinates(), Some(found.coordinates));
}

#[test]
fn what_is_no_offset_from_a_known_place_makes_no_point() {
    for text in
        ["", "left bank", "2 km NE of Nowhere", "2 km of Tarn Abbot", "far NE of Tarn Abbot", "2 km up of Tarn Abbot"]
    {
        assert_eq!(point(text), None, "{text}");
    }
}
