//! A day looked over: its events in order, counts, and where they lie.

use crate::book::Logbook;
use crate::moment::Day;
use crate::view::{Bar, DayMap, DayView, EventLine, Spot};
use place::Position;
use record::container;
use record::event::{self, Method};
use std::collections::BTreeMap;

/// Width of the drawing of a day.
const WIDTH: f64 = 358.0;
/// Its height.
const HEIGHT: f64 = 180.0;

impl Logbook {
    /// A day.
    pub fn day(&self, day: Day) -> DayView {
        let events = self.lines_of(day);
        let days = self.days();
        let place = |line: &EventLine| self.position_of(line);
        DayView {
            day,
            before: days.iter().rev().map(|(known, _)| *known).find(|known| *known < day),
            after: days.iter().map(|(known, _)| *known).find(|known| *known > day),
            tally: self.tally(&events),
            by_method: by_method(&events),
            by_host: self.by_host(&events),
            map: self.map_of(&events),
            without_place: events.iter().filter(|line| place(line).is_none()).map(|line| line.order).collect(),
            events,
        }
    }

    fn position_of(&self, line: &EventLine) -> Option<Position> {
        let place = self.record(line.id)?.get(&event::PLACE)?;
        Position::new(place.latitude, place.longitude, place.radius_m.filter(|radius| *radius >= 0.0))
    }

    /// Containers by host: the container's own, else its event's.
    fn by_host(&self, events: &[EventLine]) -> Vec<Bar<Option<String>>> {
        let mut counts: BTreeMap<Option<String>, usize> = BTreeMap::new();
        for line in events {
            for record in self.containers_of(line.id) {
                let own = record.get(&container::HOST).or_else(|| line.host.clone());
                *counts.entry(own.map(|host| host.thing)).or_default() += 1;
            }
        }
        bars(counts)
    }

    fn map_of(&self, events: &[EventLine]) -> Option<DayMap> {
        let placed: Vec<(&EventLine, Position)> =
            events.iter().filter_map(|line| Some((line, self.position_of(line)?))).collect();
        let positions: Vec<Position> = placed.iter().map(|(_, position)| *position).collect();
        let frame = place::frame::frame(&positions, WIDTH, HEIGHT)?;
        let spots = frame.spots.iter().map(|spot| Spot {
            x: spot.place.x,
            y: spot.place.y,
            radius: spot.radius,
            orders: spot.members.iter().map(|member| placed[*member].0.order).collect(),
            site: placed[spot.members[0]].0.site.clone(),
        });
        Some(DayMap {
            height: HEIGHT,
            spots: spots.collect(),
            grid_x: frame.grid_x.clone(),
            grid_y: frame.grid_y.clone(),
            bar: (frame.bar_m, frame.bar),
            extent_m: frame.extent_m,
            way: frame.places.iter().map(|place| (place.x, place.y)).collect(),
        })
    }
}

fn by_method(events: &[EventLine]) -> Vec<Bar<Method>> {
    let mut counts: BTreeMap<(String, String), usize> = BTreeMap::new();
    for method in events.iter().filter_map(|line| line.method.clone()) {
        *counts.entry((method.code, method.text)).or_default() += 1;
    }
    let bars = bars(counts)
        .into_iter()
        .map(|bar| Bar { of: Method { code: bar.of.0, text: bar.of.1, ..Method::default() }, count: bar.count });
    bars.collect()
}

/// The most frequent first.
fn bars<T: Ord>(counts: BTreeMap<T, usize>) -> Vec<Bar<T>> {
    let mut bars: Vec<Bar<T>> = counts.into_iter().map(|(of, count)| Bar { of, count }).collect();
    bars.sort_by_key(|bar| std::cmp::Reverse(bar.count));
    bars
}
