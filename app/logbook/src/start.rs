//! The start screen and what is still open.

use crate::book::{Logbook, State};
use crate::moment::{self, Day, Known, day_number};
use crate::view::{EventLine, Next, OpenKind, OpenLine, Start, Tally, Today};
use chrono::{Days, NaiveDateTime, NaiveTime};
use ports::device::Moment;
use record::event::{self, When};
use record::order::sort_by_key;
use record::{Id, Kind, Record, container, site, trap};
use std::collections::BTreeSet;

impl Logbook {
    /// The start screen. While the book is being opened it leaves out what only the whole book can say: what exists
    /// only here, and the next number.
    pub fn start(&self, now: Moment) -> Start {
        let whole = !matches!(self.state, State::Opening { .. });
        Start {
            today: moment::today(now),
            empty: self.shelf.count(&Kind::Event) == 0,
            events: self.shelf.count(&Kind::Event),
            only_here: if whole { self.only_here().len() } else { 0 },
            next: if whole { self.next_number() } else { Next::None },
            aside: self.aside,
        }
    }

    /// What goes on today, below the start screen's commands.
    pub fn today(&self, now: Moment) -> Today {
        let mut lines = self.lines_of(moment::today(now));
        let tally = self.tally(&lines);
        lines.reverse();
        lines.truncate(3);
        Today { open: self.open_lines(now), tally, newest: lines }
    }

    /// The events that have not left the device as they are now; worked out once and kept up with each change.
    pub(crate) fn only_here(&self) -> &BTreeSet<Id> {
        self.only_here.get_or_init(|| self.shelf.unexported_events(&self.marks).into_iter().collect())
    }

    /// The events of a day in the order of its lines.
    pub(crate) fn ids_of(&self, day: Day) -> Vec<Id> {
        let mut events: Vec<(String, Id)> = self
            .shelf
            .events_on(day_number(day))
            .into_iter()
            .filter_map(|id| self.living(id))
            .map(|event| (begin(&event), event.id))
            .collect();
        sort_by_key(&mut events, Clone::clone);
        events.into_iter().map(|(_, id)| id).collect()
    }

    /// The events of a day as lines, in order of their hour; those without an hour come last.
    pub(crate) fn lines_of(&self, day: Day) -> Vec<EventLine> {
        let mut events: Vec<Record> =
            self.shelf.events_on(day_number(day)).into_iter().filter_map(|id| self.living(id)).collect();
        sort_by_key(&mut events, |event| (begin(event), event.id));
        events.iter().enumerate().map(|(index, event)| self.line(event, index + 1)).collect()
    }

    /// Counts over lines.
    pub(crate) fn tally(&self, lines: &[EventLine]) -> Tally {
        let marks = || lines.iter().flat_map(|line| &line.marks);
        Tally {
            events: lines.len(),
            containers: lines.iter().map(|line| line.containers).sum(),
            missing: marks().filter(|mark| mark.is_missing()).count(),
            twice: marks().filter(|mark| matches!(mark, crate::view::Mark::Twice(_))).count(),
        }
    }

    /// What is open: lamps that burn, traps that are out.
    pub fn open_lines(&self, now: Moment) -> Vec<OpenLine> {
        let recent = self.recent();
        let events = recent
            .events
            .iter()
            .filter(|lately| lately.event.get(&event::OPEN) == Some(true))
            .map(|lately| self.open_event(&lately.event, now));
        let traps = self.all(&Kind::Trap);
        let traps =
            traps.iter().filter(|trap| trap.get(&trap::TAKEN_UP) != Some(true)).map(|trap| self.open_trap(trap, now));
        events.chain(traps).collect()
    }

    pub(crate) fn open_event(&self, event: &Record, now: Moment) -> OpenLine {
        let when = event.get(&event::CAUGHT).unwrap_or_default();
        let method = event.get(&event::METHOD).unwrap_or_default();
        let containers = self.containers_of(event.id);
        let what = if method.code == "light" { OpenKind::Lamp } else { OpenKind::Other };
        let filled = containers.iter().filter_map(|record| record.get(&container::CAUGHT)).collect::<Vec<When>>();
        let mut line = self.open_line(event, &when, what, now);
        let noon = moment::day_of(&When { night: true, ..when.clone() }).unwrap_or_else(|| moment::today(now));
        line.filled =
            filled.iter().filter_map(|when| minutes_after_noon(noon, Known::read(&when.from)?.minute()?)).collect();
        line.containers = containers.len();
        line
    }

    fn open_trap(&self, record: &Record, now: Moment) -> OpenLine {
        let out = record.get(&trap::OUT).unwrap_or_default();
        let method = record.get(&trap::METHOD).unwrap_or_default();
        let count = method.particulars.get("traps").and_then(|text| text.trim().parse().ok()).unwrap_or(1);
        let due = record.get(&trap::DUE_DAYS).zip(self.last_service(record)).map(|(days, last)| {
            let due = last + Days::new(u64::from(days));
            (due - moment::today(now)).num_days()
        });
        let mut line = self.open_line(record, &out, OpenKind::Traps(count, due), now);
        line.containers =
            self.children(record.id, &Kind::Event).iter().map(|event| self.containers_of(event.id).len()).sum();
        line
    }

    /// The day of the last service of a trap, or that on which it was set.
    pub(crate) fn last_service(&self, record: &Record) -> Option<Day> {
        let out = record.get(&trap::OUT).and_then(|out| Known::read(&out.from)?.date());
        let services = self.children(record.id, &Kind::Event);
        let until = |event: &Record| {
            let when = event.get(&event::CAUGHT)?;
            Known::read(when.until.as_deref().unwrap_or(&when.from))?.date()
        };
        services.iter().filter_map(until).chain(out).max()
    }

    fn open_line(&self, record: &Record, when: &When, what: OpenKind, now: Moment) -> OpenLine {
        let site = record.get(&event::SITE).and_then(|id| self.record(id)).and_then(|site| site.get(&site::NAME));
        let began = Known::read(&when.from);
        let local = moment::local(now);
        let minute = began.and_then(|began| began.minute().or_else(|| Some(began.date()?.and_time(NaiveTime::MIN))));
        let noon = moment::day_of(&When { night: true, ..when.clone() }).unwrap_or_else(|| local.date());
        OpenLine {
            id: record.id,
            site: site.or_else(|| record.get(&event::STATION)).unwrap_or_default(),
            what,
            method: record.get(&event::METHOD).map(|method| method.code).unwrap_or_default(),
            since: began
                .and_then(|began| Some((began.date()?, began.clock.map(moment::clock_text).unwrap_or_default()))),
            minutes: minute.map_or(0, |minute| (local - minute).num_minutes().max(0)),
            containers: 0,
            filled: Vec::new(),
            span: (
                minute.and_then(|minute| minutes_after_noon(noon, minute)).unwrap_or(0.0),
                minutes_after_noon(noon, local).unwrap_or(0.0),
            ),
        }
    }
}

/// Where a time lies on a line from noon of a day to the next noon, in minutes; `None` outside of it.
fn minutes_after_noon(day: Day, time: NaiveDateTime) -> Option<f64> {
    let noon = day.and_hms_opt(12, 0, 0)?;
    let minutes = (time - noon).num_minutes();
    (0..=24 * 60).contains(&minutes).then_some(minutes as f64)
}

/// When an event began, for sorting; without an hour it sorts last.
pub(crate) fn begin(event: &Record) -> String {
    let from = event.get(&event::CAUGHT).map(|when| when.from).unwrap_or_default();
    if from.contains('T') { from } else { format!("{from}~") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::invented::{NOW, Table};
    use record::marks::Marks;

    fn only_here(table: &Table) -> usize {
        assert_eq!(table.book.only_here().len(), table.book.shelf.unexported(&table.book.marks), "as counted anew");
        table.book.start(NOW).only_here
    }

    #[test]
    fn what_exists_only_here_is_kept_up_with_each_change() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        let meadow = table.event("2027-06-19T14:32", varga, |_| {});
        let vial = table.vial(meadow, "IV27-0147", "Flies", None);
        assert_eq!(only_here(&table), 1);
        let left = Marks::of(table.book.shelf.entries()).pack();
        table.book.take_mark(crate::exchange::LEFT, &left);
        assert_eq!(only_here(&table), 0);
        let wood = table.event("2027-06-19T16:05", varga, |_| {});
        assert_eq!(only_here(&table), 1);
        let delete = |table: &mut Table, id: Id| {
            let record = table.book.record(id).expect("saved");
            table.change(&record, |edit| {
                edit.delete();
            });
        };
        delete(&mut table, vial);
        assert_eq!(only_here(&table), 2, "an event whose vial was deleted");
        delete(&mut table, wood);
        assert_eq!(only_here(&table), 1, "an event that never left and is gone");
        delete(&mut table, meadow);
        assert_eq!(only_here(&table), 1, "a deletion of which nobody else knows");
    }

    #[test]
    fn a_book_that_is_being_opened_says_nothing_that_only_the_whole_book_can_say() {
        let mut table = Table::new();
        let varga = table.own("I. Varga", "IV27-");
        table.event("2027-06-19T14:32", varga, |_| {});
        table.book.state = State::Opening { done: 1, of: 2 };
        let start = table.book.start(NOW);
        assert_eq!((start.events, start.only_here, start.next), (1, 0, Next::None));
    }
}
