//! What is on each pin, where a person keeps pins apart: how it is mounted, and a code of its own.

use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::names::Ids;
use number::Number;
use record::{Edit, Id, Kind, Record, mount};
use std::collections::BTreeSet;

/// Most pins that are added in one go; more is a slip of the hand.
const AT_ONCE: u64 = 500;

/// One pin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MountView {
    /// The record.
    pub id: Id,
    /// Its code; empty for none.
    pub code: String,
    /// How it is mounted, one of [`codes::ROUTES`](crate::codes::ROUTES), or one that this version does not know.
    pub route: String,
}

/// Pins as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct MountForm {
    /// How they are mounted, one of [`codes::ROUTES`](crate::codes::ROUTES).
    pub route: String,
    /// The code of the first; empty for none.
    pub code: String,
    /// How many pins.
    pub count: String,
}

/// Why no pin was added.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MountFault {
    /// How many is no number from 1 to so many.
    Count(u64),
    /// The code has no digits that could be counted up.
    NoDigits,
    /// Another pin has this code already.
    Taken(String),
}

impl Logbook {
    /// The pins of a container that are kept apart, in the order in which they were added.
    pub fn mounts(&self, of: Id) -> Vec<MountView> {
        let view = |record: &Record| MountView {
            id: record.id,
            code: record.get(&mount::CODE).unwrap_or_default(),
            route: record.get(&mount::ROUTE).unwrap_or_default(),
        };
        self.children(of, &Kind::Mount).iter().map(view).collect()
    }

    /// The container of the pin with this code, however it is written; `None` where no pin or several have it.
    pub(super) fn container_of_pin(&self, typed: &str) -> Option<Id> {
        let typed = typed.trim();
        let key = Number::read(typed).map(|number| number.key());
        let same = |record: &&Record| {
            record.get(&mount::CODE).is_some_and(|code| {
                code == typed || key.is_some() && Number::read(&code).map(|number| number.key()) == key
            })
        };
        let all = self.all(&Kind::Mount);
        let mut called = all.iter().filter(same);
        let one = called.next().filter(|_| called.next().is_none())?;
        one.get(&mount::CONTAINER)
    }

    /// What the form of further pins begins with: mounted as the last one of the book, its code counted up.
    pub fn new_mount(&self) -> MountForm {
        let all = self.all(&Kind::Mount);
        let usual = || crate::codes::ROUTES[0].to_owned();
        let Some(last) = all.last() else {
            return MountForm { route: usual(), count: "1".to_owned(), ..MountForm::default() };
        };
        let taken = codes_of(&all);
        let after = last.get(&mount::CODE).and_then(|code| Number::read(&code));
        let next = after.and_then(|after| (1..=AT_ONCE).map(|by| later(&after, by)).find(|code| !taken.contains(code)));
        MountForm {
            route: last.get(&mount::ROUTE).unwrap_or_else(usual),
            code: next.unwrap_or_default(),
            count: "1".to_owned(),
        }
    }

    /// The deed that adds pins to a container, their codes counted up from the first.
    ///
    /// **Errors**: as [`MountFault`].
    pub fn add_mounts(&self, of: Id, form: &MountForm, ids: Ids<'_>) -> Result<Deed, MountFault> {
        let codes = codes(form)?;
        let taken = codes_of(&self.all(&Kind::Mount));
        if let Some(code) = codes.iter().flatten().find(|code| taken.contains(*code)) {
            return Err(MountFault::Taken(code.clone()));
        }
        let route = Some(&form.route).filter(|route| !route.is_empty());
        let edits: Vec<Edit> = codes.iter().map(|code| edit(ids(), of, route, code.as_ref())).collect();
        Ok(Deed::new(What::Mounts(edits.len()), edits))
    }

    /// The deed that takes a pin out again.
    pub fn take_mount_out(&self, id: Id) -> Deed {
        Deed::new(What::MountOut, [self.deletion(id, Kind::Mount)])
    }
}

fn edit(id: Id, of: Id, route: Option<&String>, code: Option<&String>) -> Edit {
    let mut edit = Edit::of(&Record::new(id, Kind::Mount));
    edit.put(&mount::CONTAINER, &of);
    edit.put_or_empty(&mount::ROUTE, route);
    edit.put_or_empty(&mount::CODE, code);
    edit
}

/// The code of each pin of a form; none for pins without.
fn codes(form: &MountForm) -> Result<Vec<Option<String>>, MountFault> {
    let count = form.count.trim().parse().ok().filter(|count| (1..=AT_ONCE).contains(count));
    let count: u64 = count.ok_or(MountFault::Count(AT_ONCE))?;
    let code = form.code.trim();
    match (code.is_empty(), count) {
        (true, count) => Ok((0..count).map(|_| None).collect()),
        (false, 1) => Ok(vec![Some(code.to_owned())]),
        (false, count) => {
            let first = Number::read(code).ok_or(MountFault::NoDigits)?;
            let further = (1..count).map(|by| Some(later(&first, by)));
            Ok([Some(code.to_owned())].into_iter().chain(further).collect())
        }
    }
}

/// The code so many later, with zeros as this one has them.
fn later(first: &Number, by: u64) -> String {
    first.with_running(first.running.saturating_add(by)).text()
}

fn codes_of(mounts: &[Record]) -> BTreeSet<String> {
    mounts.iter().filter_map(|record| record.get(&mount::CODE)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::invented::Table;

    fn form(code: &str, count: &str) -> MountForm {
        MountForm { route: "point".to_owned(), code: code.to_owned(), count: count.to_owned() }
    }

    fn vial(table: &mut Table) -> Id {
        let person = table.own("I. Varga", "IV26-");
        let event = table.event("2026-06-19T14:05", person, |_| {});
        table.vial(event, "IV26-0147", "Weevils", Some(7))
    }

    fn add(table: &mut Table, of: Id, form: &MountForm) -> Result<(), MountFault> {
        let deed = table.with_ids(|book, ids| book.add_mounts(of, form, ids))?;
        table.save(&deed);
        Ok(())
    }

    fn codes_on(table: &Table, of: Id) -> Vec<String> {
        table.book.mounts(of).into_iter().map(|mount| mount.code).collect()
    }

    #[test]
    fn codes_count_up_from_the_first_and_the_next_is_proposed() {
        let mut table = Table::new();
        let of = vial(&mut table);
        assert_eq!(table.book.new_mount(), MountForm { route: "direct".into(), code: "".into(), count: "1".into() });
        add(&mut table, of, &form("GLS-0098", "3")).expect("added");
        assert_eq!(codes_on(&table, of), ["GLS-0098", "GLS-0099", "GLS-0100"]);
        assert_eq!(table.book.new_mount(), form("GLS-0101", "1"));
        assert_eq!(table.book.insects(of).at_least, 3, "labels count pins");
    }

    #[test]
    fn a_code_stands_on_one_pin() {
        let mut table = Table::new();
        let of = vial(&mut table);
        add(&mut table, of, &form("GLS-7", "1")).expect("added");
        assert_eq!(add(&mut table, of, &form("GLS-5", "4")), Err(MountFault::Taken("GLS-7".to_owned())));
        assert_eq!(codes_on(&table, of), ["GLS-7"], "none of them was added");
        let pin = table.book.mounts(of)[0].id;
        let deed = table.book.take_mount_out(pin);
        table.save(&deed);
        assert_eq!(codes_on(&table, of), Vec::<String>::new());
        add(&mut table, of, &form("GLS-5", "4")).expect("free again");
    }

    #[test]
    fn a_pin_in_the_hand_leads_to_its_container() {
        let mut table = Table::new();
        let of = vial(&mut table);
        add(&mut table, of, &form("GLS-0098", "2")).expect("added");
        for typed in ["GLS-0099", "gls 99", " gls-0099 "] {
            let found = match table.book.bench(typed) {
                crate::bench::BenchView::One(on_bench) => Some(on_bench.container.id),
                _ => None,
            };
            assert_eq!(found, Some(of), "{typed}");
        }
        assert!(matches!(table.book.bench("GLS-0097"), crate::bench::BenchView::None { .. }));
    }

    #[test]
    fn what_cannot_be_read_adds_nothing() {
        let mut table = Table::new();
        let of = vial(&mut table);
        for count in ["", "0", "-1", "501", "two"] {
            assert_eq!(add(&mut table, of, &form("GLS-1", count)), Err(MountFault::Count(500)), "{count}");
        }
        assert_eq!(add(&mut table, of, &form("Type", "2")), Err(MountFault::NoDigits));
        add(&mut table, of, &form("Type", "1")).expect("one needs no digits");
        add(&mut table, of, &form("", "2")).expect("pins may have no code");
        assert_eq!(codes_on(&table, of), ["Type", "", ""]);
    }
}
