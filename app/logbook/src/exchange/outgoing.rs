//! What goes out, and when it counts as having left the device.

use super::{ExchangeFault, Selection};
use crate::book::Logbook;
use crate::driver::{Driver, Held};
use crate::moment::{self, day_text};
use crate::sky;
use crate::values::read_number;
use place::generalise::Coarseness;
use ports::courier::Parcel as Sent;
use ports::device::Moment;
use ports::files::{File, Left};
use ports::share_copy::{self, Coarse};
use ports::store::{StoreFault, Swap};
use record::marks::Marks;
use record::parcel::{Answer, Question};
use record::wire::Header;
use record::{Id, Kind};
use serde_json::{Map, Value};

/// How many of what go out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct OutCounts {
    /// Living events.
    pub events: usize,
    /// Living containers.
    pub containers: usize,
    /// Deleted records that go along, so that they stay deleted elsewhere.
    pub deleted: usize,
    /// Sites.
    pub sites: usize,
    /// Persons.
    pub persons: usize,
    /// Numberings.
    pub numberings: usize,
    /// Permits.
    pub permits: usize,
    /// Everything else.
    pub others: usize,
}

/// A file ready to leave.
#[derive(Clone, Debug)]
pub struct Outgoing {
    /// The file.
    pub file: File,
    /// What is in it.
    pub counts: OutCounts,
    marks: Marks,
}

impl Outgoing {
    /// A share copy, which does not count as having left.
    pub fn is_share_copy(&self) -> bool {
        self.marks.is_empty()
    }
}

/// A radius for coarser positions as typed, in metres. `None` unless it is a number that may be chosen.
pub fn coarse_radius(typed: &str) -> Option<Coarse> {
    read_number(typed).filter(|metres| Coarseness::within(*metres).is_some()).map(Coarse::Radius)
}

/// A download of which nobody has said yet that a copy lies elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waiting {
    /// The file's name.
    pub name: String,
    /// Records in it.
    pub records: usize,
}

/// The row of what has left the device.
pub(crate) const LEFT: &str = "left";
/// For at most so many events the sky goes along.
const SKIES_MOST: usize = 1_000;
/// So many are worked out before the page is heard again: some milliseconds on a slow phone.
const SKIES_AT_ONCE: usize = 8;
/// Rows of downloads, by the file's name.
const WAITING: &str = "waiting/";

impl Logbook {
    fn counted(&self, ids: &[Id]) -> OutCounts {
        let mut counts = OutCounts::default();
        for entry in ids.iter().filter_map(|id| self.shelf.entry(*id)) {
            let place = match entry.kind {
                _ if entry.deleted => &mut counts.deleted,
                Kind::Event => &mut counts.events,
                Kind::Container => &mut counts.containers,
                Kind::Site => &mut counts.sites,
                Kind::Person => &mut counts.persons,
                Kind::Numbering => &mut counts.numberings,
                Kind::Permit => &mut counts.permits,
                _ => &mut counts.others,
            };
            *place += 1;
        }
        counts
    }

    /// How many of what a selection takes along.
    pub fn outgoing_counts(&self, selection: &Selection) -> OutCounts {
        self.counted(&self.shelf.selected(&selection.of_shelf(), &self.marks))
    }

    /// The header of a log file written now.
    pub fn header(&self, now: Moment) -> Header {
        let own = self.own_author();
        Header {
            written: moment::stamp(now),
            device: own.device,
            person: own.person,
            app: own.app,
            book: self.book().name().to_owned(),
            replicas: self.authors().clone(),
            ..Header::default()
        }
    }

    /// The selection's events, where they are not too many to tell the sky over each.
    fn under_the_sky(&self, selection: &Selection) -> Vec<Id> {
        let ids = self.shelf.selected(&selection.of_shelf(), &self.marks);
        let living = |id: &Id| self.shelf.entry(*id).is_some_and(|entry| *entry.kind == Kind::Event && !entry.deleted);
        let events: Vec<Id> = ids.into_iter().filter(living).collect();
        if events.len() <= SKIES_MOST { events } else { Vec::new() }
    }

    /// The name of a log file: the prefix of this device's numbers and the day. Share sheets refuse `.json` but take a
    /// text file.
    pub fn file_name(&self, selection: &Selection, now: Moment) -> String {
        let prefix = self.numbering().map(|numbering| numbering.prefix.trim_end_matches(['-', ' ']).to_owned());
        let whose = prefix.filter(|prefix| !prefix.is_empty()).unwrap_or_else(|| "glassine".to_owned());
        let today = day_text(moment::today(now));
        let what = match selection {
            Selection::Day(day) => day_text(*day),
            Selection::Chosen(_) => format!("{today} chosen"),
            Selection::NotExported => format!("{today} new"),
            Selection::All => format!("{today} all"),
        };
        let safe = |letter: char| if letter.is_alphanumeric() || " -_.".contains(letter) { letter } else { '_' };
        format!("{whose} {what}.json.txt").chars().map(safe).collect()
    }
}

impl<H: Held> Driver<H> {
    /// Makes the file of a selection, ready before the tap that sends it.
    ///
    /// **Errors**: as [`ExchangeFault`].
    pub async fn prepare(&self, selection: Selection) -> Result<Outgoing, ExchangeFault> {
        let now = self.ports.time.now();
        let skies = self.skies(&selection, now).await;
        self.written(selection, now, skies).await
    }

    /// The sky over each event, a few at a time: the page stays awake in between.
    async fn skies(&self, selection: &Selection, now: Moment) -> Map<String, Value> {
        let events = self.held.read(|book| book.under_the_sky(selection));
        let mut skies = Map::new();
        for few in events.chunks(SKIES_AT_ONCE) {
            skies.extend(self.held.read(|book| sky::told(book, few.iter().copied(), now)));
            self.ports.time.wait(0).await;
        }
        skies
    }

    async fn written(
        &self,
        selection: Selection,
        now: Moment,
        skies: Map<String, Value>,
    ) -> Result<Outgoing, ExchangeFault> {
        let (counts, name, question) = self.held.read(|book| {
            let mut header = book.header(now);
            if !skies.is_empty() {
                header.more.insert("sky".to_owned(), skies.into());
            }
            let ask = Question::Write { header, selection: selection.of_shelf(), marks: book.marks.clone() };
            (book.outgoing_counts(&selection), book.file_name(&selection, now), ask.about(&book.shelf))
        });
        let Answer::Written { file, marks, .. } = self.ask(question).await? else { return Err(ExchangeFault::Garbled) };
        if marks.is_empty() {
            return Err(ExchangeFault::Empty);
        }
        let file = File { name, media: "text/plain".to_owned(), bytes: file };
        Ok(Outgoing { file, counts, marks })
    }

    /// Makes a share copy of a selection: positions are coarser, words for the place are left out. It never counts as
    /// having left: what it lacks exists only here.
    ///
    /// **Errors**: as [`ExchangeFault`].
    pub async fn prepare_share(&self, selection: Selection, coarse: Coarse) -> Result<Outgoing, ExchangeFault> {
        let Outgoing { file, counts, .. } = self.written(selection, self.ports.time.now(), Map::new()).await?;
        let asked = Sent { kind: share_copy::KIND.to_owned(), parts: vec![crate::book::to_json(&coarse), file.bytes] };
        let back = self.ports.courier.send(asked).await.map_err(ExchangeFault::Courier)?;
        let bytes = back.parts.into_iter().next().ok_or(ExchangeFault::Garbled)?;
        let name = file.name.replace(".json.txt", " share copy.json.txt");
        Ok(Outgoing { file: File { name, bytes, ..file }, counts, marks: Marks::default() })
    }

    /// Takes note of how a file left. True when it counts: the sheet said that it was sent, or it was read back whole.
    /// A download counts only once a person says that a copy lies elsewhere.
    ///
    /// **Errors**: the mark could not be written; the file is then counted as still only here.
    pub async fn has_left(&self, outgoing: &Outgoing, left: &Left) -> Result<bool, StoreFault> {
        if outgoing.is_share_copy() {
            return Ok(false);
        }
        match left {
            Left::Shared | Left::ReadBack => self.mark_left(&outgoing.marks, None).await.map(|()| true),
            Left::Downloaded => {
                let waiting = (format!("{WAITING}{}", outgoing.file.name), outgoing.marks.pack());
                let swap = Swap { marks_in: vec![waiting], ..Swap::default() };
                self.ports.store.swap(swap).await.map(|()| false)
            }
            Left::Cancelled | Left::Refused(_) => Ok(false),
        }
    }

    /// The downloads of which nobody has said yet that a copy lies elsewhere.
    pub async fn downloads_waiting(&self) -> Result<Vec<Waiting>, StoreFault> {
        let marks = self.ports.store.marks().await?;
        let waiting = |(name, bytes): (String, Vec<u8>)| {
            let name = name.strip_prefix(WAITING)?.to_owned();
            Some(Waiting { name, records: Marks::open(&bytes).ok()?.len() })
        };
        Ok(marks.into_iter().filter_map(waiting).collect())
    }

    /// A person says that a copy of a downloaded file lies elsewhere: from now on it counts.
    ///
    /// **Errors**: the mark could not be written; nothing has changed.
    pub async fn copy_is_elsewhere(&self, name: &str) -> Result<(), StoreFault> {
        let kept = format!("{WAITING}{name}");
        let marks = self.ports.store.marks().await?;
        let Some((_, bytes)) = marks.into_iter().find(|(known, _)| *known == kept) else { return Ok(()) };
        match Marks::open(&bytes) {
            Ok(left) => self.mark_left(&left, Some(kept)).await,
            Err(_) => Ok(()),
        }
    }

    /// Writes down what has left the device, in one row with all that had left before.
    async fn mark_left(&self, left: &Marks, waiting: Option<String>) -> Result<(), StoreFault> {
        // Another tab may have exported meanwhile.
        for (name, bytes) in self.ports.store.marks().await? {
            self.held.change(|book| book.take_mark(&name, &bytes));
        }
        let mut all = self.held.read(|book| book.marks.clone());
        all.merge(left);
        let row = (LEFT.to_owned(), all.pack());
        let swap = Swap { marks_in: vec![row.clone()], marks_out: waiting.into_iter().collect(), ..Swap::default() };
        self.ports.store.swap(swap).await?;
        self.held.change(|book| book.take_mark(&row.0, &row.1));
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_radius_for_a_share_copy_is_read_or_there_is_none() {
        assert_eq!(coarse_radius("2500"), Some(Coarse::Radius(2_500.0)));
        assert_eq!(coarse_radius(" 2,5 "), Some(Coarse::Radius(2.5)));
        for typed in ["", "0", "0.5", "-3", "far", "2000001"] {
            assert_eq!(coarse_radius(typed), None, "{typed}");
        }
    }
}
