//! Fixes of a device while a form is open, made into one position.
//!
//! In go the fixes as the device gave them and when the form was opened; out comes one position with the number of
//! fixes and the seconds that it rests on. What share of positions the device's radius encloses is left open: it is
//! kept as reported.

use crate::local::Plane;
use crate::position::Position;
use geo_types::Coord;

/// Fixes this much older than the form are still taken: a watch that runs already answers at once.
const STALE_MS: f64 = 10_000.0;
/// A fix with a radius of more than so many times the best one's adds nothing.
const POOR: f64 = 4.0;
/// A fix further from the middle than so many times its own and the best radius together is an outlier.
const OUTLIER: f64 = 2.0;

/// One fix.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// The radius as reported, metres.
    pub accuracy_m: f64,
    /// When it was made, milliseconds since 1970 UTC by the device's clock.
    pub at_ms: f64,
}

/// Fixes combined.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combined {
    /// The position; its radius is never below that of the best single fix, since errors of one receiver in one place
    /// are not independent.
    pub position: Position,
    /// How many fixes it rests on.
    pub fixes: u32,
    /// Seconds from the first to the last of them.
    pub seconds: u32,
}

/// A fix that can be used, with its place on the plane.
#[derive(Clone, Copy)]
struct Used {
    place: Coord<f64>,
    accuracy_m: f64,
    at_ms: f64,
}

/// The position that the fixes made since the form was opened give together.
///
/// Fixes from before it (ten seconds allowed) and impossible ones are passed over; so are those with more than four
/// times the best radius, and those that lie further from the weighted median than twice their own and the best
/// radius together. The rest is averaged with the weights 1/accuracy². The radius is the best one's, or the spread of
/// the fixes where that is greater: somebody who walks while typing is not more certain than that.
///
/// **Errors**: `None` while there is no usable fix.
///
/// **Source**: weights: the usual weighted mean; limits: common practice.
pub fn combine(fixes: &[Fix], opened_ms: f64) -> Option<Combined> {
    let fresh: Vec<(Position, &Fix)> = fixes
        .iter()
        .filter(|fix| fix.at_ms >= opened_ms - STALE_MS && fix.accuracy_m > 0.0)
        .filter_map(|fix| Some((Position::new(fix.latitude, fix.longitude, Some(fix.accuracy_m))?, fix)))
        .collect();
    let (best, best_fix) = fresh.iter().min_by(|(_, a), (_, b)| a.accuracy_m.total_cmp(&b.accuracy_m))?;
    let plane = Plane::at(*best);
    let used: Vec<Used> = fresh
        .iter()
        .filter(|(_, fix)| fix.accuracy_m <= best_fix.accuracy_m * POOR)
        .map(|(position, fix)| Used { place: plane.place(*position), accuracy_m: fix.accuracy_m, at_ms: fix.at_ms })
        .collect();
    let used = without_outliers(used, best_fix.accuracy_m);
    let mean = mean(&used);
    let best_m = used.iter().map(|fix| fix.accuracy_m).fold(f64::INFINITY, f64::min);
    let radius_m = best_m.max(spread_m(&used, mean));
    let position = plane.position(mean)?;
    let position = Position::new(position.latitude.degrees(), position.longitude.degrees(), Some(radius_m))?;
    let first = used.iter().map(|fix| fix.at_ms).fold(f64::INFINITY, f64::min);
    let last = used.iter().map(|fix| fix.at_ms).fold(f64::NEG_INFINITY, f64::max);
    Some(Combined {
        position,
        fixes: u32::try_from(used.len()).unwrap_or(u32::MAX),
        // Fractions of a second and what is longer than a century are of no use to anybody.
        seconds: libm::round((last - first) / 1000.0) as u32,
    })
}

/// The fixes near the weighted median; all of them where none is.
fn without_outliers(used: Vec<Used>, best_m: f64) -> Vec<Used> {
    let middle = Coord { x: median(&used, |fix| fix.place.x), y: median(&used, |fix| fix.place.y) };
    let near = |fix: &Used| between_m(fix.place, middle) <= OUTLIER * (fix.accuracy_m + best_m);
    if used.iter().any(near) { used.into_iter().filter(near).collect() } else { used }
}

fn weight(fix: &Used) -> f64 {
    1.0 / (fix.accuracy_m * fix.accuracy_m)
}

/// The value on both sides of which lies half of the weight.
fn median(used: &[Used], value: fn(&Used) -> f64) -> f64 {
    let mut values: Vec<(f64, f64)> = used.iter().map(|fix| (value(fix), weight(fix))).collect();
    values.sort_by(|(a, _), (b, _)| a.total_cmp(b));
    let half = values.iter().map(|(_, weight)| weight).sum::<f64>() / 2.0;
    let mut sum = 0.0;
    let past = values.iter().find(|(_, weight)| {
        sum += weight;
        sum >= half
    });
    past.map_or(0.0, |(value, _)| *value)
}

fn mean(used: &[Used]) -> Coord<f64> {
    let total: f64 = used.iter().map(weight).sum();
    let along = |value: fn(&Used) -> f64| used.iter().map(|fix| weight(fix) * value(fix)).sum::<f64>() / total;
    Coord { x: along(|fix| fix.place.x), y: along(|fix| fix.place.y) }
}

/// Root of the weighted mean of the squared distances from the mean.
fn spread_m(used: &[Used], mean: Coord<f64>) -> f64 {
    let total: f64 = used.iter().map(weight).sum();
    let squares = used.iter().map(|fix| weight(fix) * between_m(fix.place, mean) * between_m(fix.place, mean));
    libm::sqrt(squares.sum::<f64>() / total)
}

fn between_m(one: Coord<f64>, other: Coord<f64>) -> f64 {
    libm::hypot(one.x - other.x, one.y - other.y)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::distance::distance;
    use proptest::prelude::*;

    fn fix(north_m: f64, accuracy_m: f64, second: f64) -> Fix {
        Fix { latitude: 47.0 + north_m / 111_177.0, longitude: 12.0, accuracy_m, at_ms: second * 1000.0 }
    }

    fn north_m(combined: &Combined) -> f64 {
        (combined.position.latitude.degrees() - 47.0) * 111_177.0
    }

    fn combined(fixes: &[Fix]) -> Combined {
        combine(fixes, 0.0).expect("usable fixes")
    }

    #[test]
    fn better_fixes_weigh_more() {
        let combined = combined(&[fix(0.0, 5.0, 1.0), fix(6.0, 10.0, 4.0)]);
        // Weights 4 to 1; tolerance: a centimetre, the degree is rounded.
        assert!((north_m(&combined) - 1.2).abs() < 0.01, "{}", north_m(&combined));
        assert_eq!((combined.fixes, combined.seconds, combined.position.radius_m()), (2, 3, Some(5.0)));
    }

    #[test]
    fn many_fixes_are_no_surer_than_the_best() {
        let many: Vec<Fix> = (0..60).map(|second| fix(f64::from(second % 3), 8.0, f64::from(second))).collect();
        assert_eq!(combined(&many).position.radius_m(), Some(8.0));
    }

    #[test]
    fn stale_impossible_and_poor_fixes_are_passed_over() {
        let fixes = [
            fix(500.0, 3.0, -60.0),
            fix(0.0, f64::NAN, 1.0),
            fix(0.0, 0.0, 1.0),
            Fix { latitude: 97.0, ..fix(0.0, 5.0, 1.0) },
            fix(30.0, 65.0, 1.0),
            fix(0.0, 5.0, 2.0),
        ];
        let combined = combined(&fixes);
        assert_eq!(combined.fixes, 1);
        assert!(north_m(&combined).abs() < 0.01);
        assert_eq!(combine(&fixes[..4], 0.0), None);
    }

    #[test]
    fn an_outlier_does_not_pull() {
        let fixes = [fix(0.0, 6.0, 1.0), fix(1.0, 6.0, 2.0), fix(300.0, 6.0, 3.0), fix(2.0, 6.0, 4.0)];
        let combined = combined(&fixes);
        assert_eq!(combined.fixes, 3);
        assert!((north_m(&combined) - 1.0).abs() < 0.05);
    }

    #[test]
    fn who_walks_is_less_sure() {
        let walk: Vec<Fix> = (0..20).map(|second| fix(f64::from(second), 4.0, f64::from(second))).collect();
        let radius_m = combined(&walk).position.radius_m().expect("a radius");
        assert!(radius_m > 4.0, "{radius_m}");
    }

    proptest! {
        #[test]
        fn the_radius_is_never_below_the_best_used(
            list in prop::collection::vec((-20.0..20.0, 3.0..60.0, 0.0..100.0), 1..30)
        ) {
            let fixes: Vec<Fix> = list.iter().map(|(north, accuracy, second)| fix(*north, *accuracy, *second)).collect();
            let combined = combined(&fixes);
            let best = fixes.iter().map(|fix| fix.accuracy_m).fold(f64::INFINITY, f64::min);
            prop_assert!(combined.position.radius_m().expect("a radius") >= best);
            let middle = Position::new(47.0, 12.0, None).expect("a position");
            prop_assert!(distance(combined.position, middle).metres() < 21.0);
        }
    }
}
