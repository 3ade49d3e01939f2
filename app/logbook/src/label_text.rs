//! What a label says: from the records of a catch to the lines that the press sets.
//!
//! In go a container (or an event) and the kind of label, out come lines in runs. The words of codes come from the
//! arrangement, never from the language of the page. An elevation stands on a label only when a person typed or
//! confirmed it; coordinates and radius are written as everywhere. Where lines break is left to the press.

use crate::book::Logbook;
use crate::codes;
use crate::moment::{self, Known};
use crate::view::Facts;
use ports::press;
use record::event::{self, Host, Method, When};
use record::{Id, Kind, Record, arrangement, container, site};
use serde::{Deserialize, Serialize};
use wording::{Arrangement, Parts, Span};

/// Which label.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum LabelKind {
    /// Where, when and by whom.
    Collection,
    /// On what and how.
    Host,
}

/// Particulars that the date of the label says already, or that belong in the log alone.
const UNSAID: [&str; 4] = ["lamp_on", "lamp_off", "set", "taken_up"];

impl LabelKind {
    /// Both, in the order in which they go on the pin.
    pub const BOTH: [Self; 2] = [Self::Collection, Self::Host];

    /// The code under which it is stored.
    pub fn code(self) -> &'static str {
        match self {
            Self::Collection => "collection",
            Self::Host => "host",
        }
    }

    fn wording(self) -> wording::Kind {
        match self {
            Self::Collection => wording::Kind::Collection,
            Self::Host => wording::Kind::Host,
        }
    }
}

impl Logbook {
    /// The lines of a label by the rules alone, whatever a person made of them; none when there is nothing that
    /// this kind of label says.
    pub(crate) fn usual_lines(&self, of: Id, kind: LabelKind) -> Vec<wording::Line> {
        let Some((container, event)) = self.catch_behind(of) else { return Vec::new() };
        let arrangement = self.arrangement(kind);
        let parts = self.parts(container.as_ref(), event.as_ref(), &arrangement);
        if kind == LabelKind::Host && !says_more(&parts) { Vec::new() } else { wording::lines(&parts, &arrangement) }
    }

    /// The container, if it is one, and the event behind a label.
    pub(crate) fn catch_behind(&self, of: Id) -> Option<(Option<Record>, Option<Record>)> {
        let record = self.living(of)?;
        match record.kind {
            Kind::Container => {
                let event = record.get(&container::EVENT).and_then(|event| self.living(event));
                Some((Some(record), event))
            }
            Kind::Event => Some((None, Some(record))),
            _ => None,
        }
    }

    /// The arrangement of a kind of label: the newest that somebody made, or the usual one.
    fn arrangement(&self, kind: LabelKind) -> Arrangement {
        let arrangements = self.all(&Kind::Arrangement);
        let own = arrangements.iter().rev();
        let mut own = own.filter(|record| record.get(&arrangement::LABEL).as_deref() == Some(kind.code()));
        let own = own.find_map(|record| serde_json::from_value(record.get(&arrangement::PARTS)?).ok());
        own.unwrap_or_else(|| wording::defaults::arrangement(kind.wording()))
    }

    fn parts(&self, container: Option<&Record>, event: Option<&Record>, arrangement: &Arrangement) -> Parts {
        let facts = event.map(|event| self.facts(event)).unwrap_or_default();
        let own_collector =
            container.and_then(|record| record.get(&container::COLLECTOR)).and_then(|id| self.person_name(id));
        let when = container.and_then(|record| record.get(&container::CAUGHT));
        let when = when.or_else(|| event.and_then(|event| event.get(&event::CAUGHT)));
        let own_host = container.and_then(|record| record.get(&container::HOST));
        let site = facts.site.and_then(|id| self.record(id));
        Parts {
            habitat: site.and_then(|site| site.get(&site::HABITAT)).unwrap_or_default(),
            caught: when.as_ref().and_then(span),
            collectors: own_collector.map_or_else(|| facts.collectors.clone(), |name| vec![name]),
            method: facts.method.as_ref().map(|method| method_words(method, arrangement)).unwrap_or_default(),
            particulars: facts.method.as_ref().map(|method| particulars(method, arrangement)).unwrap_or_default(),
            host: own_host.or_else(|| facts.host.clone()).map(host),
            number: container
                .and_then(|record| record.get(&container::NUMBER))
                .map(|number| number.text)
                .unwrap_or_default(),
            ..place_parts(facts)
        }
    }
}

fn place_parts(facts: Facts) -> Parts {
    let metres = |text: String| {
        if text.trim().is_empty() { String::new() } else { format!("{} m", text.trim().trim_end_matches([' ', 'm'])) }
    };
    Parts {
        country: facts.country,
        province: facts.province,
        locality: facts.locality,
        offset: facts.offset,
        site: facts.site_name,
        coordinates: facts.coordinates.map(|(north, east)| with_datum(&north, &east, &facts.datum)).unwrap_or_default(),
        radius: metres(facts.radius.unwrap_or_default()),
        elevation: metres(facts.elevation.unwrap_or_default()),
        station: facts.station,
        microhabitat: facts.microhabitat,
        height: metres(facts.height),
        ..Parts::default()
    }
}

/// A host label is worth its paper for a host, or for particulars of how it was caught; not for a method alone.
fn says_more(parts: &Parts) -> bool {
    parts.host.is_some() || !parts.particulars.is_empty() || !parts.microhabitat.is_empty() || !parts.height.is_empty()
}

/// A method in words: the person's own, or the arrangement's for its code.
fn method_words(method: &Method, arrangement: &Arrangement) -> String {
    let own = method.text.trim();
    let known = || arrangement.methods.get(&method.code).cloned().unwrap_or_else(|| method.code.replace('_', " "));
    if own.is_empty() { known() } else { own.to_owned() }
}

/// What was recorded of a method, in the order in which it is asked, then what this version does not know.
fn particulars(method: &Method, arrangement: &Arrangement) -> Vec<String> {
    let known = codes::particulars(&method.code);
    let asked = known.iter().filter_map(|code| method.particulars.get_key_value(*code));
    let others = method.particulars.iter().filter(|(code, _)| !known.contains(&code.as_str()));
    let said = asked.chain(others).filter(|(code, value)| !UNSAID.contains(&code.as_str()) && !value.trim().is_empty());
    said.map(|(code, value)| match arrangement.particulars.get(code) {
        Some(form) => form.replace('#', value.trim()),
        None => value.trim().to_owned(),
    })
    .collect()
}

fn host(host: Host) -> wording::Host {
    let latin = wording::looks_latin(&host.thing);
    wording::Host { relation: host.relation, thing: host.thing, latin, part: host.part }
}

/// From when until when, in days; the small hours of a night count for its evening.
fn span(when: &When) -> Option<Span> {
    let known = Known::read(&when.from)?;
    let evening = moment::day_of(when).map(moment::day_text).as_deref().and_then(Known::read);
    let from = label_day(evening.unwrap_or(known));
    let until = when.until.as_deref().and_then(Known::read).map(label_day).filter(|until| *until > from);
    Some(Span { from, until, night: when.night })
}

fn label_day(known: Known) -> wording::Day {
    let small = |number: u32| u8::try_from(number).ok();
    let month = known.month.and_then(small);
    wording::Day { year: known.year, month, day: known.day.and_then(small).filter(|_| month.is_some()) }
}

/// Lines as the press takes them.
pub(crate) fn for_press(lines: &[wording::Line]) -> Vec<press::Line> {
    let run = |run: &wording::Run| press::Run { text: run.text.clone(), italic: run.italic };
    lines.iter().map(|line| line.iter().map(run).collect()).collect()
}

/// Coordinates on a datum of their own say so: read as WGS84 they would lead astray.
fn with_datum(north: &str, east: &str, datum: &str) -> String {
    if datum.is_empty() { format!("{north} {east}") } else { format!("{north} {east} ({datum})") }
}
