//! The lines of one label.

use crate::arrangement::{Arrangement, Item, Part};
use crate::bind::bind;
use crate::date::date;
use crate::latin::latin_split;
use crate::line::{Line, Run, SOFT_BREAK};
use crate::parts::{Host, Parts};

/// What the label says, top to bottom; lines and parts of which nothing is known are left out.
pub fn lines(parts: &Parts, arrangement: &Arrangement) -> Vec<Line> {
    arrangement.lines.iter().map(|items| line(items, parts, arrangement)).filter(|line| !line.is_empty()).collect()
}

fn line(items: &[Item], parts: &Parts, arrangement: &Arrangement) -> Line {
    let mut line = Line::new();
    let mut then = "";
    let mut before = None;
    for item in items {
        let said = said(item, before, parts, arrangement);
        if said.is_empty() {
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
    if item.part == Part::Thing {
        return thing(parts.host.as_ref());
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
        Part::Date => return parts.caught.map(|span| date(&span, arrangement.month)).unwrap_or_default(),
        Part::Emerged => return parts.emerged.map(|span| date(&span, arrangement.month)).unwrap_or_default(),
        Part::Collectors => return listed(&parts.collectors),
        Part::Method => &parts.method,
        Part::Particulars => return listed(&parts.particulars),
        Part::Relation => return relation(host, arrangement),
        Part::ThingPart => return host.map(|host| single_spaced(&host.part)).unwrap_or_default(),
        Part::Thing => return String::new(),
        Part::Number => &parts.number,
        Part::Station => &parts.station,
        Part::Microhabitat => &parts.microhabitat,
        Part::Height => &parts.height,
        Part::Contents => &parts.contents,
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

fn abbreviated(text: &str, arrangement: &Arrangement) -> String {
    if arrangement.abbreviations.is_empty() {
        return text.to_owned();
    }
    text.split(' ').map(|word| short(word, arrangement)).collect::<Vec<_>>().join(" ")
}

fn short(word: &str, arrangement: &Arrangement) -> String {
    let stem = word.trim_end_matches([',', ';', ':']);
    match arrangement.abbreviations.get(stem) {
        Some(short) => format!("{short}{}", &word[stem.len()..]),
        None => word.to_owned(),
    }
}
