use super::*;
use crate::format::{Notation as Printed, iso6709, written};
use crate::grid::{mgrs, utm};
use proptest::prelude::*;

fn codes(text: &str) -> Vec<&'static str> {
    parse(text).problems.iter().map(Problem::code).collect()
}

/// One reading, near enough: 1e-9 degrees is a tenth of a millimetre.
fn check(text: &str, latitude: f64, longitude: f64) {
    let understood = parse(text);
    let reading = understood.only().unwrap_or_else(|| panic!("one reading of {text}: {understood:?}"));
    let off = (reading.latitude.degrees() - latitude).abs() + (reading.longitude.degrees() - longitude).abs();
    assert!(off < 1e-9, "{text}: {reading:?}");
}

/// Several readings in this order, with this problem.
fn unclear(text: &str, readings: &[(f64, f64)], problem: &str) {
    let understood = parse(text);
    let found: Vec<(f64, f64)> =
        understood.readings.iter().map(|r| (r.latitude.degrees(), r.longitude.degrees())).collect();
    assert_eq!(found, readings, "{text}");
    assert!(codes(text).contains(&problem), "{text}: {understood:?}");
}

fn refused(text: &str, problem: &str) {
    assert_eq!(parse(text).readings, [], "{text}");
    assert!(codes(text).contains(&problem), "{text}: {:?}", parse(text).problems);
}

#[test]
fn decimal_degrees_are_read_with_letters_and_signs() {
    for text in [
        "47.6138 N 12.3043 E",
        "47.6138N, 12.3043E",
        "N47.6138 E12.3043",
        "N 47.6138° E 12.3043°",
        "12.3043° E, 47.6138° N",
        "47.6138° N 12.3043° E ±9 m",
        "lat 47.6138 lon 12.3043",
        "Longitude: 12.3043, Latitude: 47.6138",
        "47,6138 N; 12,3043 E",
        "47,6138° n 12,3043° e",
        "４７．６１３８ N １２．３０４３ E",
        "47.6138 N 12.3043 E (WGS84)",
        "47.6138° Nord, 12.3043° Ost",
        "47.6138 N\n12.3043 E",
        "geo:47.6138,12.3043",
        "geo:47.6138,12.3043;u=9",
        "+47.6138+012.3043/",
    ] {
        check(text, 47.6138, 12.3043);
    }
    check("-33.85678, 151.21530", -33.85678, 151.2153);
    check("41.45063, -120.50763", 41.45063, -120.50763);
    check("33.5 S 151.2 W", -33.5, -151.2);
    check("S33.5 W151.2", -33.5, -151.2);
    check("-33.5 S, 151.2 E", -33.5, 151.2);
    check("47.6138 N, 12.3043", 47.6138, 12.3043);
    check("12.3043, 47.6138 N", 47.6138, 12.3043);
}

#[test]
fn minutes_and_seconds_are_read_with_every_mark() {
    let (latitude, longitude) = (47.0 + 36.828 / 60.0, 12.0 + 18.258 / 60.0);
    for text in [
        "47°36.828'N 12°18.258'E",
        "47° 36.828′ N, 12° 18.258′ E",
        "N 47 36.828 E 12 18.258",
        "47 36.828 N 12 18.258 E",
        "47d36.828m N 12d18.258m E",
        "47º36,828’ N 12º18,258’ E",
        "lat 47 36.828 long 12 18.258",
        "47°-36.828' N, 12°-18.258' E",
    ] {
        check(text, latitude, longitude);
    }
    let (latitude, longitude) = (47.0 + 36.0 / 60.0 + 49.7 / 3600.0, 12.0 + 18.0 / 60.0 + 15.5 / 3600.0);
    for text in [
        "47°36'49.7\"N 12°18'15.5\"E",
        "47° 36′ 49.7″ N 12° 18′ 15.5″ E",
        "47°36’49.7”N, 12°18’15.5”E",
        "47˚36´49.7´´N 12˚18´15.5´´E",
        "47°36'49.7''N 12°18'15.5''E",
        "47d36m49.7s N 12d18m15.5s E",
        "47d36m49.7sN 12d18m15.5sE",
        "47 36 49.7 N 12 18 15.5 E",
        "47-36-49.7 N, 12-18-15.5 E",
    ] {
        check(text, latitude, longitude);
    }
    check("41 05 54S 121d 10' 34\" W", -(41.0 + 5.0 / 60.0 + 54.0 / 3600.0), -(121.0 + 10.0 / 60.0 + 34.0 / 3600.0));
    check("S 0°30' W 0°15'", -0.5, -0.25);
    check("47.36.50 N 12.18.15 E", 47.0 + 36.0 / 60.0 + 50.0 / 3600.0, 12.0 + 18.0 / 60.0 + 15.0 / 3600.0);
    check("-0 30 0, 100 15 0", -0.5, 100.25);
    check("47°36' 100°15'", 47.6, 100.25);
}

/// Every sign that is used for minutes with every sign that is used for seconds, on either side of the letters.
#[test]
fn every_usual_quote_mark_is_read() {
    let (latitude, longitude) = (47.0 + 36.0 / 60.0 + 49.7 / 3600.0, -(12.0 + 18.0 / 60.0 + 15.5 / 3600.0));
    for degree in ["°", "º", "˚", "∘", "d", " deg ", "* "] {
        for minute in ["'", "′", "’", "‘", "‛", "ʹ", "ʼ", "`", "´", "＇", "ˈ", "‵", "m", " min "] {
            for second in ["\"", "″", "”", "“", "‟", "ʺ", "＂", "˝", "''", "′′", "’’", "´´", "s", " sec", ""]
            {
                let north = format!("47{degree}36{minute}49.7{second}");
                let west = format!("12{degree}18{minute}15.5{second}");
                check(&format!("{north} N, {west} W"), latitude, longitude);
                check(&format!("N {north} W {west}"), latitude, longitude);
                check(&format!("{west} W {north} N").replace('.', ","), latitude, longitude);
            }
        }
    }
}

/// Source: RFC 5870, examples of its section 6 and rules of 3.3 and 3.4; the last two are ours.
#[test]
fn geo_uris_are_read() {
    check("geo:13.4125,103.8667", 13.4125, 103.8667);
    check("geo:90,-22.43", 90.0, -22.43);
    check("geo:66,30;u=6.500;FOo=this%2dthat", 66.0, 30.0);
    check("geo:48.198634,-16.371648;crs=wgs84;u=40", 48.198_634, -16.371_648);
    check("GEO:48.198634,16.371648;CRS=WGS84", 48.198_634, 16.371_648);
    let height = parse("geo:48.2010,16.3695,183");
    assert_eq!((height.readings.len(), height.problems), (1, vec![Problem::Height(183.0)]));
    assert_eq!(codes("geo:48.198634,16.371648;crs=wgs84;u=40"), Vec::<&str>::new());
    assert_eq!(parse("geo:48.2,16.4;crs=NAD27").problems, [Problem::Datum("NAD27".to_owned())]);
    assert_eq!(parse("geo:323482,4306480;crs=EPSG:32618;u=20").problems[0], Problem::Datum("EPSG:32618".to_owned()));
    refused("geo:48.2,190", "longitude_range");
    refused("geo:48.2", "one_number");
}

#[test]
fn nan_and_infinities_cannot_be_made() {
    for text in ["NaN, NaN", "inf N inf E", "geo:nan,inf", "geo:1e999,2", "geo:47,12;u=inf", "+inf+0nan/"] {
        assert_eq!(parse(text).readings.iter().filter(|reading| !reading.radius.metres().is_finite()).count(), 0);
    }
    refused("NaN, NaN", "not_understood");
    refused("geo:nan,inf", "not_understood");
    // Digits beyond what a number holds.
    let long = "9".repeat(400);
    for text in
        [format!("{long} N 7 E"), format!("7 N {long}.5 E"), format!("33T {long} 5277300"), format!("geo:{long},7")]
    {
        assert_eq!(parse(&text).readings, [], "{text}");
        assert!(!parse(&text).problems.is_empty());
    }
}

#[test]
fn a_zone_that_does_not_fit_is_said() {
    for text in
        ["0T 297500 5277300", "61T 297500 5277300", "33Z 297500 5277300", "33I 297500 5277300", "61TTN9750077300"]
    {
        refused(text, "grid");
    }
    // The northing lies in another band, and is read in the hemisphere that the letter says.
    assert_eq!(codes("33T 297500 9277300"), ["zone_letter"]);
    assert_eq!(codes("32T 5277300 297500"), ["swapped"]);
}

#[test]
fn a_bare_pair_is_shown_in_both_orders() {
    unclear("47.6138, 12.3043", &[(47.6138, 12.3043), (12.3043, 47.6138)], "order");
    unclear("47,6138 12,3043", &[(47.6138, 12.3043), (12.3043, 47.6138)], "order");
    unclear("47,6138,12,3043", &[(47.6138, 12.3043), (12.3043, 47.6138)], "order");
    unclear("47 12", &[(47.0, 12.0), (12.0, 47.0)], "order");
    unclear("151.2153, -33.85678", &[(-33.85678, 151.2153)], "swapped");
    unclear("47,12", &[(47.0, 12.0), (12.0, 47.0)], "comma");
}

#[test]
fn what_is_wrong_is_said_beside_the_best_reading() {
    unclear("46°60'N 7°30'E", &[(47.0, 7.5)], "minutes");
    unclear("-46 N 7 E", &[(46.0, 7.0), (-46.0, 7.0)], "sign_and_letter");
    unclear("46 N 7 O", &[(46.0, 7.0), (46.0, -7.0)], "letter_o");
    unclear("121 N 47 E", &[(47.0, 121.0)], "swapped");
    unclear("0 N 0 E", &[(0.0, 0.0)], "zero_zero");
    unclear("47.6 N 12.3 E by the barn", &[(47.6, 12.3)], "not_understood");
    unclear("47.6 N 12.3 E NAD27", &[(47.6, 12.3)], "datum");
    unclear("geo:47.6,12.3,560", &[(47.6, 12.3)], "height");
    for text in
        ["47.6 N 12.3 E, 560 m", "47.6° N, 12.3° E, elev. 560 m", "47.6 N 12.3 E 560 m asl", "alt 560, N47.6 E12.3"]
    {
        unclear(text, &[(47.6, 12.3)], "height");
        assert!(parse(text).problems.contains(&Problem::Height(560.0)) && parse(text).problems.len() == 1, "{text}");
    }
    unclear("+46.30215+007.58394", &[(46.30215, 7.58394)], "iso6709_end");
}

#[test]
fn what_has_no_honest_reading_is_refused() {
    refused("", "nothing");
    refused("by the barn", "nothing");
    refused("46°75'N 7°E", "minutes");
    refused("46°30'75\"N 7°E", "seconds");
    refused("46.5°30'N 7°E", "fraction_before");
    refused("91.0 N", "latitude_range");
    refused("46,30215", "one_number");
    refused("95 N 190 E", "latitude_range");
    refused("95 N 190 E", "longitude_range");
    refused("47 N 190 E", "longitude_range");
    refused("1 2 3 4 5 6 7 8", "too_many_numbers");
    refused("+7.58+46.30/", "iso6709_digits");
    refused("33TVA0000000000", "grid");
    refused("geo:91,0", "latitude_range");
    refused("47 N 12 N", "one_number");
}

#[test]
fn grid_references_are_read() {
    let position = Position::new(47.6138, 12.3043, None).expect("a position");
    let grid = utm(position).expect("within the zones");
    for text in [
        format!("33T {:.3} {:.3}", grid.easting_m, grid.northing_m),
        format!("UTM zone 33 T {:.3}mE {:.3}mN", grid.easting_m, grid.northing_m),
        format!("33N {:.3} {:.3}", grid.easting_m, grid.northing_m),
        format!("{:.3} {:.3} 33T", grid.easting_m, grid.northing_m),
    ] {
        let understood = parse(&text);
        let reading = understood.only().unwrap_or_else(|| panic!("one reading of {text}: {understood:?}"));
        // A millimetre: three decimals were written.
        assert!(crate::distance::distance(reading.position(), position).metres() < 2e-3, "{text}");
        assert_eq!(understood.problems, [], "{text}");
    }
    // A place on the equator has a short northing.
    let reading = parse("166021.443 mE 0.000 mN zone 31 N").only().copied().expect("one reading");
    assert!(reading.latitude.degrees().abs() + reading.longitude.degrees().abs() < 1e-7, "{reading:?}");
    let reference = mgrs(position, 5).expect("within the zones");
    for text in [reference.clone(), format!("MGRS {} {} {}", &reference[..3], &reference[3..5], &reference[5..])] {
        let understood = parse(&text);
        let reading = understood.only().unwrap_or_else(|| panic!("one reading of {text}: {understood:?}"));
        assert!(crate::distance::distance(reading.position(), position).metres() < reading.radius.metres() * 1.001);
    }
}

#[test]
fn the_s_of_a_zone_may_be_south_or_a_band() {
    // 4,000,000 m in zone 33: 36° N in band S, or 54° S.
    let understood = parse("33S 500000 4000000");
    assert_eq!(understood.readings.len(), 2);
    assert_eq!(understood.problems, [Problem::ZoneLetter('S')]);
    // 1,000,000 m with T: the band does not fit.
    assert_eq!(codes("33T 500000 1000000"), ["zone_letter"]);
}

#[test]
fn a_zone_without_a_letter_may_lie_in_either_hemisphere() {
    let (north, south) = (parse("33N 297500 5277300").readings[0], parse("33M 297500 5277300").readings[0]);
    for text in
        ["33 297500 5277300", "UTM 33, 297500 mE, 5277300 mN", "33 E 297500 N 5277300", "297500 E 5277300 N zone 33"]
    {
        let understood = parse(text);
        assert_eq!(understood.readings, [north, south], "{text}");
        assert_eq!(understood.problems, [Problem::ZoneHemisphere], "{text}");
    }
    // Nowhere in the north does a northing reach so far.
    let far = parse("33 500000 9500000");
    assert!(far.only().is_some_and(|reading| reading.latitude.degrees() < 0.0), "{far:?}");
    assert_eq!(far.problems, []);
    refused("61 297500 5277300", "grid");
    // The last may be a height.
    assert_eq!(parse("297500 5277300 33").readings, []);
}

#[test]
fn the_radius_comes_from_the_digits_or_is_stated() {
    let radius = |text: &str| parse(text).only().map(|reading| (reading.radius.metres(), reading.stated));
    // Chapman & Wieczorek (2020), example: 10.27, −123.6 with 0.01° for both: 1.5568 km; tolerance its last digit.
    let (metres, stated) = radius("10.27 N 123.60 W").expect("one reading");
    assert!((metres - 1_556.8).abs() < 0.1 && !stated, "{metres}");
    assert_eq!(radius("47.6138 N 12.3043 E ± 9 m"), Some((9.0, true)));
    assert_eq!(radius("47.6138 N 12.3043 E +/- 1.5 km"), Some((1_500.0, true)));
    assert_eq!(radius("geo:47.6138,12.3043;u=12"), Some((12.0, true)));
}

#[test]
fn a_position_far_from_the_others_is_odd() {
    let known = Position::new(47.6, 12.3, None).expect("a position");
    let odd = |latitude, longitude| {
        let position = Position::new(latitude, longitude, None).expect("a position");
        beside(position, known).iter().map(Problem::code).collect::<Vec<_>>()
    };
    assert_eq!(odd(47.7, 12.2), Vec::<&str>::new());
    assert_eq!(odd(12.3, 47.6), ["far", "swapped"]);
    assert_eq!(odd(-47.6, 12.3), ["far", "sign"]);
    assert_eq!(odd(47.6, -12.3), ["far", "sign"]);
    assert_eq!(odd(-33.0, 151.0), ["far"]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn anything_can_be_typed(text in ".{0,60}") {
        prop_assert_eq!(parse(&text).text, text);
    }

    #[test]
    fn anything_like_coordinates_can_be_typed(text in "[-0-9 NSEWOdms.,;:/+°′″'\"±geoUTMCRS–−]{0,40}") {
        let understood = parse(&text);
        prop_assert!(!understood.readings.is_empty() || !understood.problems.is_empty());
    }
}

proptest! {
    #[test]
    fn what_we_print_we_read(lat in -80.0..84.0, lon in -180.0..180.0, radius in 0.05..10_000.0) {
        let position = Position::new(lat, lon, Some(radius)).expect("a position");
        let near = |text: &str, allowed_m: f64| {
            let understood = parse(text);
            understood.readings.iter().any(|reading| crate::distance::distance(reading.position(), position).metres() <= allowed_m)
        };
        for notation in [Printed::Decimal, Printed::Minutes, Printed::Seconds] {
            let printed = written(position, notation);
            let text = format!("{}, {}", printed.latitude.text(), printed.longitude.text());
            prop_assert!(parse(&text).only().is_some(), "{}", text);
            prop_assert!(near(&text, radius / 10.0 + 0.01), "{}", text);
        }
        prop_assert!(near(&iso6709(position), radius / 10.0 + 0.01));
        let text = mgrs(position, 5).expect("within the zones");
        prop_assert!(near(&text, 0.709), "{}", text);
        let grid = utm(position).expect("within the zones");
        let text = format!("{}{} {:.3} {:.3}", grid.zone, grid.hemisphere.code(), grid.easting_m, grid.northing_m);
        prop_assert!(near(&text, 0.001), "{}", text);
    }
}
