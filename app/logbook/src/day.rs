//! A day looked over: its events in order, counts, and where they lie.

use crate::book::Logbook;
use crate::map::{DayMap, Placed};
use crate::moment::Day;
use crate::view::{Bar, DayView, EventLine};
use place::Position;
use record::container;
use record::event::{self, Method};
use std::collections::BTreeMap;
use std::sync::Arc;

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

    fn map_of(&self, events: &[EventLine]) -> Option<Arc<DayMap>> {
        let placed = events.iter().filter_map(|line| Some((Placed::new(line), self.position_of(line)?)));
        DayMap::new(placed.collect()).map(Arc::new)
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
