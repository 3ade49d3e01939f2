use super::*;
use crate::distance::distance;
use proptest::prelude::*;
use units::Degrees;

fn at(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Position {
    Position::new(latitude, longitude, radius_m).expect("a position")
}

fn instant(second: i64) -> Instant {
    Instant::new(1_782_000_000_000 + second * 1000).expect("an instant")
}

fn fix(metres_north: f64, radius_m: Option<f64>, second: i64) -> Fix {
    Fix { position: at(47.0 + metres_north / 111_177.0, 12.0, radius_m), at: instant(second) }
}

fn exact(speed: f64) -> Assumed {
    Assumed { clock_ahead_ms: 0, time_error: Duration::ZERO, radius: Metres::ZERO, speed: Speed(speed) }
}

fn radius_m(placed: &Placed) -> f64 {
    placed.position.radius_m().expect("a radius")
}

#[test]
fn the_position_is_the_share_of_the_way() {
    let track = Track::new(vec![fix(1000.0, None, 400), fix(0.0, None, 0)]);
    let placed = track.place(instant(100), &exact(10.0)).expect("within the track");
    let north_m = distance(placed.position, track.fixes[0].position).metres();
    // Tolerance: a centimetre, the degree of the fixes is rounded; of the radius a tenth of a metre.
    let way_m = distance(track.fixes[0].position, track.fixes[1].position).metres();
    assert!((north_m - way_m / 4.0).abs() < 0.01, "{north_m}");
    let expected = (0.25_f64 * 0.75 * (4000.0 * 4000.0 - way_m * way_m)).sqrt();
    assert!((radius_m(&placed) - expected).abs() < 0.1, "{placed:?} {expected}");
    let Basis::Between { gap, distance } = placed.basis else { panic!("between: {placed:?}") };
    assert_eq!(gap, Duration::from_secs(400));
    assert!((distance.metres() - way_m).abs() < 1e-6 && !placed.faster);
}

#[test]
fn radii_and_the_error_of_the_time_are_added() {
    let fixes = vec![fix(0.0, Some(8.0), 0), fix(0.0, None, 100)];
    let assumed =
        Assumed { time_error: Duration::from_secs(5), radius: Metres::new(20.0).expect("finite"), ..exact(2.0) };
    let placed = Track::new(fixes).place(instant(50), &assumed).expect("within the track");
    // 8 and 20 m alike, 100 m straying to and fro at half time, 10 m in 5 s.
    assert!((radius_m(&placed) - (14.0 + 100.0 + 10.0)).abs() < 0.01, "{placed:?}");
}

#[test]
fn at_a_fix_only_its_own_radius_counts() {
    let track = Track::new(vec![fix(0.0, Some(8.0), 0), fix(100.0, Some(5.0), 60)]);
    for (second, radius) in [(0, 8.0), (60, 5.0)] {
        let placed = track.place(instant(second), &exact(3.0)).expect("within the track");
        assert_eq!(radius_m(&placed), radius);
    }
}

#[test]
fn the_clock_of_the_person_is_set_by_the_person() {
    let track = Track::new(vec![fix(0.0, None, 0), fix(100.0, None, 100)]);
    let ahead = Assumed { clock_ahead_ms: 3_600_000, ..exact(2.0) };
    assert_eq!(track.place(instant(3_650), &ahead), track.place(instant(50), &exact(2.0)));
    assert_eq!(track.place(instant(50), &Assumed { clock_ahead_ms: i64::MIN, ..ahead }), None);
}

#[test]
fn outside_the_track_the_nearest_fix_stands_with_its_gap() {
    let track = Track::new(vec![fix(0.0, Some(5.0), 0), fix(100.0, Some(5.0), 100)]);
    let late = track.place(instant(160), &exact(2.0)).expect("a fix");
    assert_eq!((late.basis, radius_m(&late)), (Basis::After(Duration::from_secs(60)), 125.0));
    let early = track.place(instant(-30), &exact(2.0)).expect("a fix");
    assert_eq!((early.basis, radius_m(&early)), (Basis::Before(Duration::from_secs(30)), 65.0));
    let both = track.places(&[instant(160), instant(-30)], &exact(2.0));
    assert_eq!(both, [Some(late), Some(early)]);
    assert_eq!((track.len(), track.is_empty()), (2, false));
    assert_eq!(track.span(), Some((instant(0), instant(100))));
    assert_eq!(Track::default().place(instant(0), &exact(2.0)), None);
    // A month at 2 m/s is 5,000 km.
    assert_eq!(track.place(instant(2_592_000), &exact(2.0)), None);
}

#[test]
fn whoever_is_faster_than_assumed_is_seen() {
    let track = Track::new(vec![fix(0.0, None, 0), fix(1000.0, None, 100)]);
    let placed = track.place(instant(50), &exact(2.0)).expect("within the track");
    // Half of the root of 1.5² − 1, times the kilometre.
    assert!(placed.faster && (radius_m(&placed) - 559.0).abs() < 1.0, "{placed:?}");
    let drive = track.place(instant(50), &exact(11.0)).expect("within the track");
    assert!(!drive.faster && radius_m(&drive) < 250.0, "{drive:?}");
}

/// A place somebody may have been at: within reach of both true fixes, which lie within the radii of the recorded.
fn reached(from: Position, way_m: f64, bearing: f64, share: f64) -> Position {
    let bearing = Degrees::new(bearing).expect("finite");
    destination(from, bearing, Metres::new(way_m * share).expect("finite"))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    /// Brute force: whatever lies within reach of both ends lies in the circle, from paces to 900 km and at any
    /// latitude.
    #[test]
    fn the_circle_holds_every_place_that_the_speed_allows(
        lat in -85.0..85.0, lon in -180.0..180.0, bearing in 0.0..360.0, straight in 0.0..1.0,
        share in 0.01..0.99, size in 1.0..5.95, turns in prop::array::uniform3(0.0..360.0),
        radii in prop::array::uniform2(0.0..0.2)
    ) {
        // A day, and the speed that makes the way as long as wanted.
        const SECONDS: i64 = 86_400;
        let way_m = libm::pow(10.0, size);
        let seconds = (share * SECONDS as f64) as i64;
        let share = seconds as f64 / SECONDS as f64;
        let speed = way_m / SECONDS as f64;
        let ends_m = radii.map(|radius| radius * way_m);
        let one = at(lat, lon, Some(ends_m[0]));
        let other = Position { radius: Metres::new(ends_m[1]), ..reached(one, way_m, bearing, straight) };
        let track = Track::new(vec![Fix { position: one, at: instant(0) }, Fix { position: other, at: instant(SECONDS) }]);
        let placed = track.place(instant(seconds), &exact(speed)).expect("a short enough way");
        let mut held = 0;
        for turn in 0..24 {
            let turn = f64::from(turn) * 15.0;
            // The true ends, on the edge of their circles, and the edge of what is reached from the one of them.
            let true_one = reached(one, ends_m[0], turns[0] + turn, 1.0);
            let true_other = reached(other, ends_m[1], turns[1] - turn, 1.0);
            // Tried from the end that is nearer in time, whose reach lies mostly within the other's.
            let (near, far, reach_m, left_m) = if share < 0.5 {
                (true_one, true_other, share * way_m, (1.0 - share) * way_m)
            } else {
                (true_other, true_one, (1.0 - share) * way_m, share * way_m)
            };
            for step in 0..72 {
                for part in [1.0, 0.97, 0.5] {
                    let there = reached(near, reach_m, turns[2] + f64::from(step) * 5.0, part);
                    if distance(there, far).metres() <= left_m {
                        held += 1;
                        let off_m = distance(there, placed.position).metres();
                        prop_assert!(off_m <= radius_m(&placed) + 1e-6, "{} {:?}", off_m, placed);
                    }
                }
            }
        }
        prop_assert!(held > 0 || straight > 0.5, "nothing was tried");
    }
}

/// The place that is as far from both ends as can be reached lies on the circle: no smaller one would do, and on the
/// Earth the plane's would be too small.
#[test]
fn the_circle_is_as_large_as_it_must_be() {
    for way_m in [10_000.0, 300_000.0, 900_000.0] {
        for (share, straight) in [(0.5, 0.1), (0.3, 0.6), (0.9, 0.85), (0.5, 0.95)] {
            for latitude in [0.0, 47.0, 80.0] {
                let one = at(latitude, 12.0, None);
                let other = reached(one, way_m, 60.0, straight);
                // Turned away from the other end until just as much of the way is left as may be.
                let turned = |turn: f64| reached(one, way_m, 60.0 + turn, share);
                let (mut near, mut far) = (0.0, 180.0);
                for _ in 0..60 {
                    let turn = f64::midpoint(near, far);
                    let left = distance(turned(turn), other).metres() <= (1.0 - share) * way_m;
                    if left { near = turn } else { far = turn }
                }
                let straight_m = distance(one, other).metres();
                let off_m = distance(turned(near), reached(one, straight_m, 60.0, share)).metres();
                let strayed = strayed_m(share, way_m, straight_m);
                // 2 % is (L/R)² at the longest way.
                assert!((0.98..=1.0).contains(&(off_m / strayed)), "{off_m} {strayed}");
                let flat = (share * (1.0 - share) * (way_m * way_m - straight_m * straight_m)).sqrt();
                assert!(off_m > flat || way_m < 300_000.0, "{off_m} {flat}");
            }
        }
    }
}

#[test]
fn a_thinned_track_stays_within_what_was_said() {
    let start = at(47.6, 12.3, None);
    let fix = |step: i32| Fix {
        position: crate::distance::destination(start, units::Degrees::new(40.0).expect("a turn"), Metres::whole(step)),
        at: instant(i64::from(step)),
    };
    let track = Track::new((0..=1_001).map(fix).collect());
    let thin = track.thinned(Metres::thousandths(9_500));
    assert_eq!(thin.len(), 102, "one in ten, the first and the last");
    assert_eq!(thin.span(), track.span());
    for one in track.fixes() {
        let near = thin.fixes().iter().map(|kept| distance(kept.position, one.position).metres());
        assert!(near.fold(f64::INFINITY, f64::min) < 10.0);
    }
    assert!(Track::default().thinned(Metres::whole(10)).is_empty());
}
