//! The lines of one label.

use crate::arrangement::{Arrangement, Item, Part};
use crate::bind::bind;
use crate::date::written;
use crate::latin::latin_split;
use crate::line::{Line, Run, SOFT_BREAK, plain};
use crate::parts::{Host, Parts};

/// Letters beyond these do not decide which part is meant.
const LETTERS_MOST: usize = 500;

/// One part of a label in its words, without those around it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The part.
    pub part: Part,
    /// Its words, as [`crate::plain`] writes them.
    pub text: String,
}

/// What the label says, top to bottom; lines and parts of which nothing is known are left out.
///
/// **Shape**: an arrangement's own words ([`Part::Words`]) alone make no label.
pub fn lines(parts: &Parts, arrangement: &Arrangement) -> Vec<Line> {
    if said_parts(parts, arrangement).is_empty() {
        return Vec::new();
    }
    arrangement.lines.iter().map(|items| line(items, parts, arrangement)).filter(|line| !line.is_empty()).collect()
}

/// The parts of which something is known, in the order in which the label says them.
pub fn said_parts(parts: &Parts, arrangement: &Arrangement) -> Vec<Said> {
    let mut all = Vec::new();
    for items in &arrangement.lines {
        let mut before = None;
        for item in items.iter().filter(|item| item.part != Part::Words) {
            let text = plain(&said(item, before, parts, arrangement));
            if !text.is_empty() {
                all.push(Said { part: item.part, text });
                before = Some(item.part);
            }
        }
    }
    all
}

/// The part to which words of the label belong: the one that has most letters in a row in common with them.
pub fn part_of<'s>(words: &str, said: &'s [Said]) -> Option<&'s Said> {
    let words = letters(words);
    let shared = |said: &&Said| in_common(&words, &letters(&said.text));
    said.iter().rev().max_by_key(shared).filter(|best| shared(best) > 0)
}

/// The first letters of a text, more than any label holds.
fn letters(text: &str) -> Vec<char> {
    text.chars().take(LETTERS_MOST).collect()
}

/// The length of the longest row of letters that stands in both.
fn in_common(a: &[char], b: &[char]) -> usize {
    let mut longest = 0;
    let mut row = vec![0; b.len() + 1];
    for letter in a {
        for place in (1..=b.len()).rev() {
            row[place] = if b[place - 1] == *letter { row[place - 1] + 1 } else { 0 };
            longest = longest.max(row[place]);
        }
    }
    longest
}

fn line(items: &[Item], parts: &Parts, arrangement: &Arrangement) -> Line {
    let mut line = Line::new();
    let mut then = "";
    let mut before = None;
    for item in items {
        let said = said(item, before, parts, arrangement);
        if said.is_empty() && item.part != Part::Words {
            continue;
        }
        if !line.is_empty() {
            append(&mut line, joint(then));
        }
        append(&mut line, Run::upright(item.before.clone()));
        said.into_iter().for_each(|run| append(&mut line, run));
        append(&mut line, Run::upright(item.after.clone()));
        then = &item.then;
        before = Some(item.part);
    }
    line.iter_mut().for_each(|run| run.text = bind(&run.text, run.italic));
    line
}

/// Between two parts a line breaks gladly, if there is a space; a colon leans on what follows.
fn joint(then: &str) -> Run {
    let breaks = then.ends_with(' ') && !then.trim_end().ends_with(':');
    let mark = if breaks { SOFT_BREAK.to_string() } else { String::new() };
    Run::upright(format!("{then}{mark}"))
}

fn append(line: &mut Line, run: Run) {
    match line.last_mut() {
        _ if run.text.is_empty() => {}
        Some(last) if last.italic == run.italic => last.text.push_str(&run.text),
        _ => line.push(run),
    }
}

/// What an item says, empty when nothing is known.
fn said(item: &Item, before: Option<Part>, parts: &Parts, arrangement: &Arrangement) -> Line {
    match item.part {
        Part::Thing => return thing(parts.host.as_ref()),
        Part::Name => return latin_split(&parts.determination.name),
        _ => {}
    }
    let text = abbreviated(&text(item.part, before, parts, arrangement), arrangement);
    let text = if item.capitals { text.to_uppercase() } else { text };
    if text.is_empty() { Line::new() } else { vec![Run::upright(text)] }
}

fn text(part: Part, before: Option<Part>, parts: &Parts, arrangement: &Arrangement) -> String {
    let host = parts.host.as_ref().filter(|host| !host.thing.trim().is_empty());
    let text = match part {
        Part::Country => &parts.country,
        Part::Province => &parts.province,
        Part::Locality => &parts.locality,
        Part::Offset => return offset(before, parts),
        Part::Site => return site(parts),
        Part::Habitat => &parts.habitat,
        Part::Coordinates => &parts.coordinates,
        Part::Radius if parts.coordinates.trim().is_empty() => return String::new(),
        Part::Radius => &parts.radius,
        Part::Elevation => &parts.elevation,
        Part::Date => return parts.caught.map(|span| written(&span, arrangement)).unwrap_or_default(),
        Part::Emerged => return parts.emerged.map(|span| written(&span, arrangement)).unwrap_or_default(),
        Part::Collectors => return listed(&parts.collectors),
        Part::Method => &parts.method,
        Part::Particulars => return listed(&parts.particulars),
        Part::Relation => return relation(host, arrangement),
        Part::ThingPart => return host.map(|host| single_spaced(&host.part)).unwrap_or_default(),
        Part::Thing | Part::Name | Part::Words => return String::new(),
        Part::Number => &parts.number,
        Part::Station => &parts.station,
        Part::Microhabitat => &parts.microhabitat,
        Part::Height => &parts.height,
        Part::Contents => &parts.contents,
        Part::Author => &parts.determination.author,
        Part::DeterminedBy => &parts.determination.by,
        Part::DeterminedIn => &parts.determination.year,
        Part::Sex => &parts.sex,
        Part::Code => &parts.code,
        Part::Piece => &parts.piece,
        Part::Linked => &parts.linked,
        Part::Preservative => &parts.preservative,
        Part::Count => &parts.count,
    };
    single_spaced(text)
}

fn single_spaced(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn listed(names: &[String]) -> String {
    names.iter().map(|name| single_spaced(name)).filter(|name| !name.is_empty()).collect::<Vec<_>>().join(", ")
}

/// A site that carries the name of its place is not said twice.
fn site(parts: &Parts) -> String {
    let site = single_spaced(&parts.site);
    if site == single_spaced(&parts.locality) { String::new() } else { site }
}

/// "2 km NE of Tarn Abbot" right after "Tarn Abbot" is "2 km NE".
fn offset(before: Option<Part>, parts: &Parts) -> String {
    let offset = single_spaced(&parts.offset);
    let locality = single_spaced(&parts.locality);
    match offset.strip_suffix(&locality).and_then(|rest| rest.strip_suffix(" of ")) {
        Some(rest) if before == Some(Part::Locality) && !locality.is_empty() => rest.to_owned(),
        _ => offset,
    }
}

fn relation(host: Option<&Host>, arrangement: &Arrangement) -> String {
    host.and_then(|host| arrangement.relations.get(&host.relation)).cloned().unwrap_or_default()
}

fn thing(host: Option<&Host>) -> Line {
    let Some(host) = host.filter(|host| !host.thing.trim().is_empty()) else {
        return Line::new();
    };
    if host.latin { latin_split(&host.thing) } else { vec![Run::upright(single_spaced(&host.thing))] }
}

/// Longer abbreviated texts go before shorter ones; a mark after a word stays.
fn abbreviated(text: &str, arrangement: &Arrangement) -> String {
    if arrangement.abbreviations.is_empty() {
        return text.to_owned();
    }
    let words: Vec<&str> = text.split(' ').collect();
    let mut said = Vec::with_capacity(words.len());
    let mut at = 0;
    while at < words.len() {
        let (taken, short) = short(&words[at..], arrangement);
        said.push(short);
        at += taken;
    }
    said.retain(|word| !word.is_empty());
    said.join(" ")
}

/// How many words are said shorter, and how.
fn short(words: &[&str], arrangement: &Arrangement) -> (usize, String) {
    for count in (1..=words.len()).rev() {
        let full = words[..count].join(" ");
        let stem = full.trim_end_matches([',', ';', ':']);
        if let Some(short) = arrangement.abbreviations.get(stem) {
            return (count, format!("{short}{}", &full[stem.len()..]));
        }
    }
    (1, words[0].to_owned())
}
