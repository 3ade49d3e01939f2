use super::*;
use crate::distance::{destination, distance};
use crate::instant::Instant;
use crate::track::{Fix, Track};
use proptest::prelude::*;
use units::Degrees;

fn at(latitude: f64, longitude: f64, radius_m: Option<f64>) -> Position {
    Position::new(latitude, longitude, radius_m).expect("a position")
}

fn ground(positions: &[Position]) -> Ground {
    Ground::new(positions).expect("positions")
}

fn whole(ground: &Ground) -> Frame {
    ground.whole(358.0, 286.0).expect("room")
}

fn unit(x: f64, y: f64) -> Coord<f64> {
    Coord { x, y }
}

#[test]
fn one_position_lies_in_the_middle_with_its_circle() {
    let ground = ground(&[at(47.6, 12.3, Some(9.0))]);
    let frame = whole(&ground);
    let spots = spots(&ground, step(frame));
    let place = frame.place(spots[0].place);
    assert!(between(place, unit(179.0, 143.0)) < 1e-6, "{place:?}");
    assert_eq!(spots[0].widest.map(|(_, radius)| radius), Some(9.0));
    assert_eq!(ground.extent().metres(), 0.0);
}

#[test]
fn north_is_up_and_east_is_right_across_the_antimeridian() {
    let ground = ground(&[at(-17.0, 179.99, None), at(-16.99, -179.99, None)]);
    let frame = whole(&ground);
    let [west, east] = [0, 1].map(|at| frame.place(ground.places()[at]));
    assert!(west.x < east.x && west.y > east.y);
    // 0.02° of longitude and 0.01° of latitude at 17° S: 2,129 m and 1,107 m; tolerance one per cent.
    assert!((ground.extent().metres() - 2_400.0).abs() < 24.0, "{:?}", ground.extent());
    let lines = graticule(&ground, frame);
    assert!(lines.meridians.iter().any(|line| line.degrees == -180.0), "{:?}", lines.meridians);
    assert!(lines.meridians.iter().all(|line| (-180.0..180.0).contains(&line.degrees)));
}

#[test]
fn a_sheet_round_a_pole_has_meridians_all_round() {
    let ground = ground(&[at(89.9, 0.0, None), at(89.9, 120.0, None), at(89.9, -120.0, None)]);
    let lines = graticule(&ground, whole(&ground));
    let degrees: Vec<f64> = lines.meridians.iter().map(|line| line.degrees).collect();
    let mut sorted = degrees.clone();
    sorted.sort_by(f64::total_cmp);
    assert_eq!(sorted, [-180.0, -90.0, 0.0, 90.0]);
    assert!(!lines.parallels.is_empty());
}

#[test]
fn a_vague_position_does_not_shrink_the_others() {
    let ground = ground(&[at(47.6, 12.3, Some(2e7)), at(47.61, 12.3, Some(5.0))]);
    assert!(whole(&ground).across_m() < 5_000.0);
    assert_eq!(spots(&ground, step(whole(&ground))).len(), 2);
}

#[test]
fn without_positions_or_room_there_is_no_map() {
    assert_eq!(Ground::new(&[]), None);
    let ground = ground(&[at(47.6, 12.3, None)]);
    assert_eq!(ground.whole(358.0, 64.0), None);
    assert_eq!(ground.whole(f64::NAN, 240.0), None);
}

#[test]
fn what_a_pinch_holds_stays_below_the_fingers() {
    let ground = ground(&[at(47.6, 12.3, None), at(47.62, 12.33, None)]);
    let frame = whole(&ground);
    let finger = unit(100.0, 80.0);
    let zoomed = ground.zoomed(frame, 2.0, finger);
    assert!((frame.metres_per_unit() / zoomed.metres_per_unit() - 2.0).abs() < 1e-9);
    assert!(between(zoomed.place(frame.ground(finger)), finger) < 1e-6);
    assert_eq!(ground.zoomed(frame, f64::NAN, finger), frame);
    assert_eq!(ground.zoomed(frame, 0.0, finger), frame);
}

#[test]
fn a_drag_moves_the_ground_with_the_finger_and_never_loses_it() {
    let ground = ground(&[at(47.6, 12.3, None), at(47.62, 12.33, None)]);
    let frame = whole(&ground);
    let dragged = ground.dragged(frame, unit(30.0, -12.0));
    let (before, after) = (frame.place(ground.places()[0]), dragged.place(ground.places()[0]));
    assert!(between(unit(before.x + 30.0, before.y - 12.0), after) < 1e-6);
    let lonely = Ground::new(&[at(47.6, 12.3, None)]).expect("a position");
    let far = lonely.dragged(whole(&lonely), unit(1e9, -1e9));
    assert!(far.shows(far.place(lonely.places()[0]), -10.0));
}

#[test]
fn events_of_one_spot_come_apart_when_looked_at_closer() {
    let ground = ground(&[at(47.6, 12.3, None), at(47.6001, 12.3001, None), at(47.7, 12.5, None)]);
    let frame = whole(&ground);
    let first = spots(&ground, step(frame));
    assert_eq!(first.len(), 2);
    let closer = ground.closer(&first[0].members, frame);
    assert_eq!(spots(&ground, step(closer)).len(), 3);
    assert_eq!(ground.closer(&[], frame), frame);
}

#[test]
fn the_graticule_steps_are_read_at_a_glance() {
    let ground = ground(&[at(47.6, 12.3, None), at(47.62, 12.33, None)]);
    let lines = graticule(&ground, whole(&ground));
    let degrees: Vec<f64> = lines.parallels.iter().map(|line| (line.degrees * 1e5).round() / 1e5).collect();
    assert!(degrees.windows(2).all(|pair| (pair[1] - pair[0] - 0.01).abs() < 1e-9), "{degrees:?}");
    assert_eq!(lines.decimals.0, 2);
    for line in lines.parallels.iter().filter(|line| line.label.is_some()) {
        let label = line.label.expect("filtered");
        assert!(label.x == 0.0 && (0.0..=286.0).contains(&label.y));
    }
}

#[test]
fn coasts_are_cut_to_the_sheet() {
    use crate::arcs::{Arc, Arcs};
    let coast = |points: &[[i32; 2]]| Arc { one: 0, other: None, points: points.to_vec() };
    let arcs = Arcs::new(10, vec![coast(&[[0, 480], [120, 480], [240, 480]]), coast(&[[-1790, 0], [1790, 0]])]);
    let ground = ground(&[at(47.6, 11.0, None), at(48.2, 13.0, None)]);
    let coast = Coast::new(&crate::outline::Outline::new(arcs.expect("lines")), &ground);
    let frame = whole(&ground);
    let lines = coast.lines(frame);
    assert_eq!(lines.len(), 1, "the far one is not drawn");
    assert_eq!(lines[0].points.len(), 3);
    let closer = ground.zoomed(frame, 50.0, frame.place(ground.places()[0]));
    assert_eq!(coast.lines(closer), []);
}

proptest! {
    #[test]
    fn spots_keep_every_event_once(
        list in prop::collection::vec((-0.2..0.2, -0.2..0.2, 0.0..500.0), 1..80),
        lat in -89.7..89.7, lon in -180.0..180.0, closer in 0.1..500.0
    ) {
        let positions: Vec<Position> =
            list.iter().map(|(north, east, radius)| at(lat + north, lon + east, Some(*radius))).collect();
        let ground = ground(&positions);
        let frame = ground.zoomed(whole(&ground), closer, unit(179.0, 143.0));
        let spots = spots(&ground, step(frame));
        let mut members: Vec<usize> = spots.iter().flat_map(|spot| spot.members.clone()).collect();
        members.sort_unstable();
        prop_assert_eq!(members, (0..positions.len()).collect::<Vec<_>>());
        for spot in &spots {
            let place = frame.place(spot.place);
            for member in &spot.members {
                // Less than a step of the scale from what it grew round, and so is the middle.
                prop_assert!(between(frame.place(ground.places()[*member]), place) < 2.0 * MERGE * 1.415);
            }
        }
    }

    #[test]
    fn all_that_is_known_is_shown_at_first(
        list in prop::collection::vec((-0.2..0.2, -0.2..0.2), 1..60), lat in -89.7..89.7, lon in -180.0..180.0
    ) {
        let positions: Vec<Position> = list.iter().map(|(north, east)| at(lat + north, lon + east, None)).collect();
        let ground = ground(&positions);
        let frame = whole(&ground);
        for place in ground.places() {
            prop_assert!(frame.shows(frame.place(*place), -31.9));
        }
    }

    #[test]
    fn a_tap_finds_the_nearest_event_within_reach(
        list in prop::collection::vec((0.0..0.05, 0.0..0.05), 1..60), x in 0.0..358.0, y in 0.0..286.0
    ) {
        let positions: Vec<Position> = list.iter().map(|(north, east)| at(47.0 + north, 12.0 + east, None)).collect();
        let ground = ground(&positions);
        let frame = whole(&ground);
        let spots = spots(&ground, step(frame));
        let away = |spot: &Spot| between(frame.place(spot.place), unit(x, y));
        let least = spots.iter().map(away).fold(f64::INFINITY, f64::min);
        match nearest(&spots, frame, unit(x, y), 70.0) {
            Some(spot) => prop_assert!(away(&spots[spot]) <= 70.0 && away(&spots[spot]) == least),
            None => prop_assert!(least > 70.0),
        }
    }

    #[test]
    fn the_scale_bar_is_as_long_as_the_ground(
        lat in -89.0..89.0, lon in -180.0..180.0, wide in 1.0_f64..6.5, right in -150.0..150.0, down in -120.0..120.0
    ) {
        let ground = ground(&[at(lat, lon, None)]);
        let metres = libm::pow(10.0, wide);
        let start = whole(&ground);
        let scaled = ground.zoomed(start, start.across_m() / metres, unit(179.0, 143.0));
        let frame = ground.dragged(scaled, unit(right, down));
        let bar = bar(&ground, frame).expect("a bar for less than the Earth");
        prop_assert!(bar.length > 20.0 && bar.length < 190.0, "{:?}", bar);
        let end = |side: f64| ground.plane().position(frame.ground(unit(179.0 + side * bar.length / 2.0, 143.0)));
        let (west, east) = (end(-1.0).expect("finite"), end(1.0).expect("finite"));
        let real = distance(west, east).metres();
        prop_assert!((real / bar.metres - 1.0).abs() < 0.01, "{} {:?}", real, bar);
    }

    #[test]
    fn nothing_a_finger_does_makes_it_stumble(
        lat in -90.0..90.0, lon in -180.0..180.0, other in -90.0..90.0, away in -180.0..180.0,
        deeds in prop::collection::vec((-400.0..400.0, -400.0..400.0, -3.0..3.0), 1..12)
    ) {
        let ground = ground(&[at(lat, lon, Some(5.0)), at(other, away, None)]);
        let mut frame = whole(&ground);
        for (x, y, closer) in deeds {
            frame = ground.zoomed(ground.dragged(frame, unit(x, y)), libm::pow(10.0, closer), unit(x, y));
            prop_assert!(frame.metres_per_unit() > 0.0 && frame.across_m() <= 4.01e7 && frame.across_m() >= 9.9);
            prop_assert!(frame.middle().x.is_finite() && frame.middle().y.is_finite());
            let lines = graticule(&ground, frame);
            for line in lines.parallels.iter().chain(&lines.meridians) {
                prop_assert!(line.points.iter().all(|point| point.x.is_finite() && point.y.is_finite()));
            }
            prop_assert!(lines.parallels.len() < 40 && lines.meridians.len() < 40);
            prop_assert!(north(&ground, frame).is_finite());
            let _ = bar(&ground, frame);
        }
    }
}

/// A walk: 1 km north with a fix every 10 m and 10 s, half an hour of silence, 1 km east. Invented.
fn walk() -> Track {
    let start = at(47.6, 12.3, None);
    let north = |step: i64| destination(start, degrees(0.0), Metres::whole(step as i32 * 10));
    let corner = at(47.62, 12.3, None);
    let east = |step: i64| destination(corner, degrees(90.0), Metres::whole(step as i32 * 10));
    let fix = |position: Position, seconds: i64| Fix { position, at: second(seconds) };
    let there = (0..=100).map(|step| fix(north(step), step * 10));
    let onwards = (0..=100).map(|step| fix(east(step), 2_800 + step * 10));
    Track::new(there.chain(onwards).collect())
}

fn degrees(turn: f64) -> Degrees {
    Degrees::new(turn).expect("a turn")
}

fn second(seconds: i64) -> Instant {
    Instant::new(1_782_000_000_000 + seconds * 1_000).expect("a time of this century")
}

#[test]
fn a_track_is_drawn_where_it_was_recorded() {
    let ground = ground(&[at(47.6, 12.3, None), at(47.62, 12.32, None)]);
    let frame = whole(&ground);
    let trail = Trail::new(&walk(), (second(0), second(9_999)), &ground).expect("a walk");
    // Twice 1 km; the gap of 1.2 km is no way.
    assert!((trail.length().metres() - 2_000.0).abs() < 0.1, "{:?}", trail.length());
    let lines = trail.lines(frame);
    assert_eq!(lines.len(), 2, "no line leads over the silence");
    let ends = [lines[0][0], *lines[0].last().expect("points")];
    assert!((ends[0].x - ends[1].x).abs() < 0.5 && ends[0].y > ends[1].y, "it leads north: {ends:?}");
    let units = between(ends[0], ends[1]) * frame.metres_per_unit();
    assert!((units - 1_000.0).abs() < 1.0, "{units}");
    assert!(lines[0].len() < 100, "what nobody could see is left out");
}

#[test]
fn only_what_was_recorded_then_is_drawn() {
    let ground = ground(&[at(47.6, 12.3, None)]);
    let morning = Trail::new(&walk(), (second(0), second(500)), &ground).expect("half of a walk");
    assert!((morning.length().metres() - 500.0).abs() < 0.1);
    assert_eq!(Trail::new(&walk(), (second(-900), second(-1)), &ground), None);
    assert_eq!(Trail::new(&Track::default(), (second(0), second(9)), &ground), None);
}

#[test]
fn a_track_far_from_the_sheet_draws_nothing() {
    let ground = ground(&[at(-30.0, 20.0, None)]);
    let trail = Trail::new(&walk(), (second(0), second(9_999)), &ground).expect("a walk");
    assert!(trail.lines(whole(&ground)).is_empty());
}
