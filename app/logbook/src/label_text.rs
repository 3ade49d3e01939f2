//! What a label says: from the records of a catch to the lines that the press sets.
//!
//! In go a container (or an event) and which of its labels, out come lines in runs. The words of codes come from the
//! arrangement, never from the language of the page. An elevation stands on a label only when a person typed or
//! confirmed it; coordinates and radius are written as everywhere. Where lines break is left to the press.

use crate::book::Logbook;
use crate::codes;
use crate::labels::{Insects, LabelKind, Which};
use crate::moment::{self, Known};
use crate::view::{ContentView, Facts};
use ports::press;
use record::container::Fluid;
use record::event::{self, Host, Method, When};
use record::{Id, Kind, Record, container, determination, individual, mount, site};
use wording::{Arrangement, Determination, Parts, Span};

/// Particulars that the date of the label says already, or that belong in the log alone.
const UNSAID: [&str; 4] = ["lamp_on", "lamp_off", "set", "taken_up"];
/// Means of keeping that are no fluid.
const DRY: [&str; 2] = ["dry", "papered"];

impl Logbook {
    /// The lines of a label by the rules alone, whatever a person made of them; none when there is nothing that
    /// this kind of label says.
    pub(crate) fn usual_lines(&self, of: Id, which: Which) -> Vec<wording::Line> {
        let arrangement = self.arrangement(which.kind);
        let parts = self.label_parts(of, which, &arrangement);
        parts.map(|parts| lines_of(which.kind, &parts, &arrangement)).unwrap_or_default()
    }

    /// All that is known of what a label may say.
    pub(crate) fn label_parts(&self, of: Id, which: Which, arrangement: &Arrangement) -> Option<Parts> {
        let (container, event) = self.catch_behind(of)?;
        let mut parts = self.parts(container.as_ref(), event.as_ref(), arrangement);
        if let Some(item) = which.item {
            self.put_item(&mut parts, &self.living(item)?);
        }
        Some(parts)
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

    fn parts(&self, container: Option<&Record>, event: Option<&Record>, arrangement: &Arrangement) -> Parts {
        let facts = event.map(|event| self.facts(event)).unwrap_or_default();
        let own_collector =
            container.and_then(|record| record.get(&container::COLLECTOR)).and_then(|id| self.person_name(id));
        let when = container.and_then(|record| record.get(&container::CAUGHT));
        let when = when.or_else(|| event.and_then(|event| event.get(&event::CAUGHT)));
        let own_host = container.and_then(|record| record.get(&container::HOST));
        let site = facts.site.and_then(|id| self.record(id));
        let parts = Parts {
            habitat: site.and_then(|site| site.get(&site::HABITAT)).unwrap_or_default(),
            caught: when.as_ref().and_then(span),
            collectors: own_collector.map_or_else(|| facts.collectors.clone(), |name| vec![name]),
            method: facts.method.as_ref().map(|method| method_words(method, arrangement)).unwrap_or_default(),
            particulars: facts.method.as_ref().map(|method| particulars(method, arrangement)).unwrap_or_default(),
            host: own_host.or_else(|| facts.host.clone()).map(host),
            ..place_parts(facts)
        };
        container.map_or(parts.clone(), |container| in_container(container, parts))
    }

    /// What a determination, a mount or an individual adds.
    fn put_item(&self, parts: &mut Parts, item: &Record) {
        match item.kind {
            Kind::Determination => parts.determination = self.determination_parts(item),
            Kind::Mount => parts.code = item.get(&mount::CODE).unwrap_or_default(),
            Kind::Individual => {
                let piece = item.get(&individual::PIECE).unwrap_or_default();
                (parts.piece, parts.linked) = (piece.what, piece.number);
            }
            _ => {}
        }
    }

    fn determination_parts(&self, record: &Record) -> Determination {
        let named = record.get(&determination::NAMED).unwrap_or_default();
        Determination {
            name: crate::bench::full_name(&named),
            author: named.author,
            by: record.get(&determination::BY).and_then(|person| self.person_name(person)).unwrap_or_default(),
            year: record.get(&determination::YEAR).unwrap_or_default(),
        }
    }
}

/// The lines of a kind of label, none where it would say nothing that it is for.
pub(crate) fn lines_of(kind: LabelKind, parts: &Parts, arrangement: &Arrangement) -> Vec<wording::Line> {
    let says = match kind {
        LabelKind::Host => says_more(parts),
        LabelKind::Determination => !parts.determination.name.is_empty(),
        LabelKind::Rearing => parts.emerged.is_some(),
        LabelKind::Code => !parts.code.is_empty(),
        LabelKind::Parts => !parts.piece.is_empty() || !parts.linked.is_empty(),
        LabelKind::Slip => !parts.number.is_empty(),
        LabelKind::Collection | LabelKind::Fluid | LabelKind::Envelope => true,
    };
    if says { wording::lines(parts, arrangement) } else { Vec::new() }
}

fn in_container(record: &Record, parts: Parts) -> Parts {
    let contents = crate::lines::contents(record);
    let number = record.get(&container::NUMBER).map(|number| number.text).unwrap_or_default();
    Parts {
        code: number.clone(),
        number,
        contents: contents.iter().map(content_words).filter(|words| !words.is_empty()).collect::<Vec<_>>().join(", "),
        sex: sex_sign(&contents),
        preservative: record
            .get(&container::KEPT)
            .filter(is_fluid)
            .map(|fluid| fluid_words(&fluid))
            .unwrap_or_default(),
        count: count_words(&contents),
        emerged: record.get(&container::EMERGED).as_ref().and_then(span),
        ..parts
    }
}

/// Contents as labels say them, in no language: `Hover flies ♀ 3`.
fn content_words(line: &ContentView) -> String {
    let stage = if line.stage == "adult" { "" } else { &line.stage };
    let said = [line.group.trim(), sign(&line.sex), stage, &counted(&line.count_kind, line.count)];
    said.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

fn counted(kind: &str, count: Option<u32>) -> String {
    count.map_or_else(String::new, |count| match kind {
        "about" => format!("ca. {count}"),
        "least" => format!("≥ {count}"),
        _ => count.to_string(),
    })
}

fn count_words(contents: &[ContentView]) -> String {
    let insects = Insects::of(contents);
    match (insects.exact, contents.iter().any(|line| line.count.is_some())) {
        (true, _) => insects.at_least.to_string(),
        (false, true) => format!("≥ {}", insects.at_least),
        (false, false) => String::new(),
    }
}

fn sign(sex: &str) -> &'static str {
    match sex {
        "female" => "♀",
        "male" => "♂",
        "both" => "♀♂",
        _ => "",
    }
}

/// The sex of all that is in a container, where it is the same.
fn sex_sign(contents: &[ContentView]) -> String {
    let first = contents.first().map(|line| line.sex.as_str()).unwrap_or_default();
    if contents.iter().all(|line| line.sex == first) { sign(first).to_owned() } else { String::new() }
}

/// True for what the insects lie in, wet.
pub(crate) fn is_fluid(fluid: &Fluid) -> bool {
    !(DRY.contains(&fluid.code.as_str()) || fluid.code.is_empty() && fluid.text.trim().is_empty())
}

fn fluid_words(fluid: &Fluid) -> String {
    let name = if fluid.text.trim().is_empty() { fluid.code.replace('_', " ") } else { fluid.text.trim().to_owned() };
    if fluid.strength.trim().is_empty() { name } else { format!("{name} {} %", fluid.strength.trim()) }
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
