//! Writes log files.

use super::header::{FORMAT, Header, VERSION};
use crate::checksum::checksum;
use crate::{Record, Version};
use serde::Serialize;
use serde_json::json;

/// A log file of these records, in canonical order: by kind, then by id, each on one line.
///
/// **Shape**: each id once.
pub fn write(header: &Header, records: &[Record]) -> Vec<u8> {
    let mut sorted: Vec<&Record> = records.iter().collect();
    sorted.sort_by(|a, b| (&a.kind, a.id).cmp(&(&b.kind, b.id)));
    let mut writer = Writer::new(header);
    for record in sorted {
        writer.push(record);
    }
    writer.end()
}

/// A log file being written record by record, in canonical order.
pub struct Writer {
    out: Vec<u8>,
    records: usize,
}

impl Writer {
    /// Writes the header.
    pub fn new(header: &Header) -> Self {
        let mut writer = Self { out: Vec::new(), records: 0 };
        writer.header(header);
        writer
    }

    /// Writes one record.
    pub fn push(&mut self, record: &Record) {
        self.text(if self.records == 0 { "\n" } else { ",\n" });
        self.records += 1;
        self.record(record);
    }

    /// Writes the end mark.
    pub fn end(mut self) -> Vec<u8> {
        self.text("\n],\n");
        let checksum = checksum(&self.out);
        self.text(&format!("\"end\":{{\"records\":{},\"checksum\":\"{checksum:08x}\"}}}}\n", self.records));
        self.out
    }

    fn header(&mut self, header: &Header) {
        self.text(&format!("{{\"format\":\"{FORMAT}\",\"version\":{VERSION}"));
        let fixed = [
            ("written", &header.written),
            ("device", &header.device),
            ("person", &header.person),
            ("app", &header.app),
            ("book", &header.book),
        ];
        for (name, value) in fixed {
            self.text(",");
            self.member(name, value);
        }
        if let Some(share_copy) = &header.share_copy {
            self.text(",");
            self.member("share_copy", share_copy);
        }
        for (name, value) in &header.more {
            self.text(",");
            self.member(name, value);
        }
        self.text(",\n\"replicas\":{");
        for (index, (replica, author)) in header.replicas.iter().enumerate() {
            self.text(if index == 0 { "\n" } else { ",\n" });
            self.member(replica.name(), author);
        }
        self.text("\n},\n\"records\":[");
    }

    fn record(&mut self, record: &Record) {
        debug_assert!(!Record::RESERVED.iter().any(|name| record.fields.contains_key(*name)), "a reserved name");
        self.text("{\"kind\":");
        self.json(record.kind.name());
        self.text(",\"id\":");
        self.json(&record.id);
        for (field, versions) in &record.fields {
            self.text(",");
            self.member(field, &shown(versions).value);
        }
        self.text(",\"versions\":{\"seen\":");
        self.json(&record.seen.0);
        self.text(",\"at\":{");
        for (index, (field, versions)) in record.fields.iter().enumerate() {
            let Version { dot, entered, .. } = shown(versions);
            self.comma(index);
            self.member(field, &(dot.replica.name(), dot.number, entered));
        }
        self.text("}");
        self.further(record);
        self.text("}}");
    }

    /// The further versions of fields on which people have not agreed.
    fn further(&mut self, record: &Record) {
        let several = record.fields.iter().filter(|(_, versions)| versions.len() > 1);
        for (index, (field, versions)) in several.enumerate() {
            self.text(if index == 0 { ",\"other\":{" } else { "," });
            let first = &shown(versions).dot;
            let rest: Vec<_> = versions
                .iter()
                .filter(|version| version.dot != *first)
                .map(|Version { value, dot, entered }| json!([value, dot.replica.name(), dot.number, entered]))
                .collect();
            self.member(field, &rest);
        }
        if record.fields.values().any(|versions| versions.len() > 1) {
            self.text("}");
        }
    }

    fn comma(&mut self, index: usize) {
        if index > 0 {
            self.text(",");
        }
    }

    fn member<T: Serialize + ?Sized>(&mut self, name: &str, value: &T) {
        self.json(name);
        self.text(":");
        self.json(value);
    }

    fn json<T: Serialize + ?Sized>(&mut self, value: &T) {
        serde_json::to_writer(&mut self.out, value).expect("plain data can be written into memory");
    }

    fn text(&mut self, text: &str) {
        self.out.extend_from_slice(text.as_bytes());
    }
}

fn shown(versions: &[Version]) -> &Version {
    Version::shown(versions).expect("a field has at least one version")
}
