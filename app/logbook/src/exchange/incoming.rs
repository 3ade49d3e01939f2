//! What comes in: a file read and compared by the courier, shown before anything is written, then written whole.

use super::ExchangeFault;
use super::outgoing::LEFT;
use crate::book::{Logbook, author_name, to_json};
use crate::driver::{Driver, Held, SaveFault};
use crate::moment::{self, Day};
use crate::view::{EventLine, Plate};
use ports::courier::Parcel as Sent;
use ports::files::File;
use ports::store::{StoreFault, Swap};
use record::packed::Block;
use record::parcel::{Answer, Garbled, Parcel, Question};
use record::plan::Plan;
use record::wire::Author;
use record::{Id, Kind, Record, container, event, site};
use serde_json::Value;
use std::collections::BTreeSet;

/// Records in a block.
const BLOCK: usize = 1_000;
/// How many of each are listed in a preview.
const LISTED: usize = 50;
/// Where what is needed to take the last import back is kept.
const UNDO: &str = "undo/last";

/// How many records an import touches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// New here.
    pub added: usize,
    /// Something is new in them.
    pub changed: usize,
    /// Deleted by the import.
    pub deleted: usize,
    /// Nothing new in them.
    pub known: usize,
}

/// A field that an import would change, as it stands here and in the file.
#[derive(Clone, Debug, PartialEq)]
pub struct Difference {
    /// The record.
    pub id: Id,
    /// What it is.
    pub kind: Kind,
    /// The site's name of the event, the site's own name, the container's number, the person's name …
    pub title: String,
    /// The day and hour of its event, where it has one.
    pub when: Option<(Day, String)>,
    /// The field's name.
    pub field: String,
    /// The value here; `None` for empty.
    pub here: Option<Value>,
    /// The value after the import, or, in a conflict, the file's.
    pub there: Option<Value>,
}

/// A number that would stand twice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Doubled {
    /// The number as it stands on the carrier.
    pub plate: Plate,
}

/// What an import would do.
#[derive(Clone, Debug)]
pub struct Preview {
    /// The file's name.
    pub name: String,
    /// Who wrote it.
    pub author: Author,
    /// When, as that device's clock said.
    pub written: String,
    /// Records in it.
    pub records: usize,
    /// First and last day of its events.
    pub days: Option<(Day, Day)>,
    /// All counts.
    pub counts: Counts,
    /// Counts of events alone.
    pub events: Counts,
    /// Counts of containers alone.
    pub containers: Counts,
    /// Events that would be added, the first fifty.
    pub added: Vec<EventLine>,
    /// Fields that would change, the first fifty.
    pub changed: Vec<Difference>,
    /// Fields on which people did not agree.
    pub conflicts: Vec<Difference>,
    /// Numbers that would stand twice where that is a fault.
    pub twice: Vec<Doubled>,
    plan: Box<Plan>,
    file: Vec<u8>,
}

/// An import that was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Imported {
    /// How many records it touched.
    pub counts: Counts,
    /// Who wrote the file.
    pub person: String,
    /// Conflicts waiting for a person.
    pub conflicts: Vec<(Id, String)>,
}

impl<H: Held> Driver<H> {
    /// Works out what an import would do. Nothing is changed.
    ///
    /// **Errors**: as [`ExchangeFault`].
    pub async fn plan_import(&self, file: File) -> Result<Preview, ExchangeFault> {
        let plan = self.planned(&file.bytes).await?;
        Ok(self.held.read(|book| book.import_preview(file.name, file.bytes, plan)))
    }

    async fn planned(&self, file: &[u8]) -> Result<Box<Plan>, ExchangeFault> {
        let ask = |book: &Logbook| {
            Question::Plan { book: book.book().name().to_owned(), file: file.to_vec(), most: BLOCK }.about(&book.shelf)
        };
        match self.ask(self.held.read(ask)).await? {
            Answer::Plan(plan) => Ok(plan),
            Answer::Refused(refusal) => Err(ExchangeFault::Refused(refusal)),
            _ => Err(ExchangeFault::Garbled),
        }
    }

    pub(crate) async fn ask(&self, question: Parcel) -> Result<Answer, ExchangeFault> {
        let sent = Sent { kind: question.kind, parts: question.parts };
        let back = self.ports.courier.send(sent).await.map_err(ExchangeFault::Courier)?;
        Answer::read(Parcel { kind: back.kind, parts: back.parts }).map_err(|Garbled| ExchangeFault::Garbled)
    }

    /// Writes an import in one transaction. If the book has changed since the preview, what it does is worked out anew:
    /// merging gives the same in any order.
    ///
    /// **Errors**: as [`ExchangeFault`]; nothing is changed.
    pub async fn accept(&self, preview: Preview) -> Result<Imported, ExchangeFault> {
        self.enter().await;
        let accepted = self.accept_in_turn(preview).await;
        self.leave();
        accepted
    }

    async fn accept_in_turn(&self, preview: Preview) -> Result<Imported, ExchangeFault> {
        self.hold_the_lock().await.map_err(ExchangeFault::Save)?;
        let stands = self.held.read(|book| {
            let fold = &preview.plan.fold;
            book.shelf.stands_on(fold) && book.shelf.rows().eq(&fold.journal_out)
        });
        let plan = if stands { preview.plan } else { self.planned(&preview.file).await? };
        let authors =
            plan.summary.header.replicas.iter().map(|(replica, author)| (author_name(replica), to_json(author)));
        let mut marks: Vec<(String, Vec<u8>)> = authors.collect();
        let mut left = self.held.read(|book| book.marks.clone());
        left.merge(&plan.marks);
        marks.push((LEFT.to_owned(), left.pack()));
        marks.push((UNDO.to_owned(), plan.undo.pack()));
        let imported = Imported {
            counts: preview.counts,
            person: plan.summary.header.person.clone(),
            conflicts: plan.summary.conflicts.clone(),
        };
        self.write_fold(plan.fold, marks).await.map_err(saved)?;
        Ok(imported)
    }

    /// True when there is an import that can be taken back.
    pub async fn can_undo_import(&self) -> bool {
        self.ports.store.marks().await.is_ok_and(|marks| marks.iter().any(|(name, _)| name == UNDO))
    }

    /// Takes the last import back: what stood before is there again, with what was edited since.
    ///
    /// **Errors**: as [`ExchangeFault`]; nothing is changed.
    pub async fn undo_import(&self) -> Result<(), ExchangeFault> {
        self.enter().await;
        let undone = self.undo_in_turn().await;
        self.leave();
        undone
    }

    async fn undo_in_turn(&self) -> Result<(), ExchangeFault> {
        // What was edited since is written anew under a session of its own.
        self.held.change(Logbook::end_session);
        self.hold_the_lock().await.map_err(ExchangeFault::Save)?;
        let marks = self.ports.store.marks().await.map_err(saved)?;
        let Some((_, undo)) = marks.into_iter().find(|(name, _)| name == UNDO) else {
            return Err(ExchangeFault::Empty);
        };
        let now = self.ports.time.now();
        let question = self.held.change(|book| {
            let dot = book.next_dot();
            Question::Undo { undo, dot, entered: moment::stamp(now), most: BLOCK }.about(&book.shelf)
        });
        let Answer::Undone(fold, _) = self.ask(question).await? else { return Err(ExchangeFault::Garbled) };
        let author = self.held.read(Logbook::unannounced);
        self.write_fold(fold, author.into_iter().collect()).await.map_err(saved)?;
        let forget = Swap { marks_out: vec![UNDO.to_owned()], ..Swap::default() };
        self.ports.store.swap(forget).await.map_err(saved)
    }
}

fn saved(fault: StoreFault) -> ExchangeFault {
    ExchangeFault::Save(SaveFault::Store(fault))
}

impl Logbook {
    fn import_preview(&self, name: String, file: Vec<u8>, plan: Box<Plan>) -> Preview {
        let summary = &plan.summary;
        let header = &summary.header;
        let mut counts = Counts::default();
        for tally in summary.kinds.values() {
            counts.add(*tally);
        }
        let of = |kind: Kind| {
            let mut counts = Counts::default();
            counts.add(summary.kinds.get(kind.name()).copied().unwrap_or_default());
            counts
        };
        let after = After::of(&plan);
        let day = |number: Option<&i32>| number.and_then(|number| moment::day_from_number(*number));
        let days = day(summary.days.keys().next()).zip(day(summary.days.keys().next_back()));
        Preview {
            author: Author {
                device: header.device.clone(),
                person: header.person.clone(),
                app: header.app.clone(),
                ..Author::default()
            },
            written: header.written.clone(),
            records: counts.added + counts.changed + counts.deleted + counts.known,
            days,
            events: of(Kind::Event),
            containers: of(Kind::Container),
            added: self.added_lines(&plan, &after),
            changed: self.differences(&plan, &after),
            conflicts: self.conflicting(&plan, &after),
            twice: self.doubled(&plan),
            counts,
            name,
            file,
            plan,
        }
    }

    /// The events that would be added, in order of time; their containers and sites are not here yet.
    fn added_lines(&self, plan: &Plan, after: &After) -> Vec<EventLine> {
        let events =
            plan.summary.added.iter().filter_map(|id| after.record(*id)).filter(|record| record.kind == Kind::Event);
        let mut events: Vec<Record> = events.take(LISTED).collect();
        events.sort_by_key(crate::start::begin);
        let containers: Vec<Record> = plan
            .summary
            .added
            .iter()
            .filter_map(|id| after.record(*id))
            .filter(|record| record.kind == Kind::Container)
            .collect();
        let line = |(index, record): (usize, &Record)| {
            let mut line = self.line(record, index + 1);
            let site = record.get(&event::SITE).and_then(|id| after.record(id)).and_then(|site| site.get(&site::NAME));
            line.site = site.unwrap_or(line.site);
            let own: Vec<&Record> =
                containers.iter().filter(|container| container.get(&container::EVENT) == Some(record.id)).collect();
            let numbers: Vec<String> =
                own.iter().filter_map(|container| Some(container.get(&container::NUMBER)?.text)).collect();
            line.numbers = self.spans(&numbers);
            line.containers = own.len();
            line.marks.retain(|mark| matches!(mark, crate::view::Mark::Nothing | crate::view::Mark::Open));
            line
        };
        events.iter().enumerate().map(line).collect()
    }

    fn differences(&self, plan: &Plan, after: &After) -> Vec<Difference> {
        let in_conflict: BTreeSet<(Id, &str)> =
            plan.summary.conflicts.iter().map(|(id, field)| (*id, field.as_str())).collect();
        let mut found = Vec::new();
        for id in &plan.summary.changed {
            let (Some(here), Some(there)) = (self.record(*id), after.record(*id)) else { continue };
            for field in there.fields.keys().filter(|field| {
                here.shown(field) != there.shown(field) && !in_conflict.contains(&(*id, field.as_str()))
            }) {
                found.push(self.difference(&here, field, there.shown(field).cloned()));
            }
            if found.len() >= LISTED {
                break;
            }
        }
        found
    }

    fn conflicting(&self, plan: &Plan, after: &After) -> Vec<Difference> {
        let difference = |(id, field): &(Id, String)| {
            let here = self.record(*id)?;
            let there = after.record(*id)?;
            let own: Vec<&Value> = here.fields.get(field).into_iter().flatten().map(|version| &version.value).collect();
            let theirs =
                there.fields.get(field)?.iter().map(|version| &version.value).find(|value| !own.contains(value));
            Some(self.difference(&here, field, theirs.filter(|value| !value.is_null()).cloned()))
        };
        plan.summary.conflicts.iter().take(LISTED).filter_map(difference).collect()
    }

    fn difference(&self, here: &Record, field: &str, there: Option<Value>) -> Difference {
        let event = match here.kind {
            Kind::Event => Some(here.clone()),
            Kind::Container => here.get(&container::EVENT).and_then(|id| self.record(id)),
            _ => None,
        };
        let line = event.map(|event| self.line(&event, 1));
        Difference {
            id: here.id,
            kind: here.kind.clone(),
            title: line.as_ref().map_or_else(|| self.title(here), |line| line.site.clone()),
            when: line.and_then(|line| Some((line.day?, line.clock))),
            field: field.to_owned(),
            here: here.shown(field).cloned(),
            there,
        }
    }

    /// What a record is called in a list.
    pub fn title(&self, record: &Record) -> String {
        let name = match record.kind {
            Kind::Site => record.get(&site::NAME),
            Kind::Person => record.get(&record::person::NAME),
            Kind::Numbering => record.get(&record::numbering::PREFIX),
            Kind::Permit => record.get(&record::permit::NUMBER),
            Kind::Container => record.get(&container::NUMBER).map(|number| number.text),
            _ => None,
        };
        name.unwrap_or_default()
    }

    /// Numbers that would stand twice where that is a fault.
    fn doubled(&self, plan: &Plan) -> Vec<Doubled> {
        let numbering = self.numbering();
        let faulty = |text: &&String| {
            let prefix = number::Number::read(text).map(|number| number.prefix).unwrap_or_default();
            numbering.as_ref().is_none_or(|own| own.prefix != prefix || own.habit == number::Habit::OnePerContainer)
        };
        let numbers: Vec<String> = plan.summary.numbers.iter().filter(faulty).cloned().collect();
        let taken = number::taken(&numbers, self.number_texts());
        taken.into_iter().map(|text| Doubled { plate: crate::numbers::plate_of("vial", &text) }).collect()
    }
}

impl Counts {
    fn add(&mut self, tally: record::plan::Tally) {
        self.added += tally.added;
        self.changed += tally.changed;
        self.deleted += tally.deleted;
        self.known += tally.same;
    }
}

/// The blocks that a plan would write, opened.
struct After(Vec<Block>);

impl After {
    fn of(plan: &Plan) -> Self {
        Self(plan.fold.blocks_in.iter().filter_map(|(_, bytes)| Block::open(bytes.clone()).ok()).collect())
    }

    fn record(&self, id: Id) -> Option<Record> {
        self.0.iter().find_map(|block| block.record(block.find(id)?))
    }
}
