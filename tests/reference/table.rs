//! Reads the tables beside this file: RFC 4180 with a line of column names. For tests only.

use std::collections::BTreeMap;
use std::path::Path;

/// The rows of a table, each value under the name of its column.
///
/// # Panics
/// When the file is missing or a row has more values than there are columns: then the checks would check nothing.
pub fn table(name: &str) -> Vec<BTreeMap<String, String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference").join(name);
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let mut rows = rows(&text).into_iter();
    let columns = rows.next().expect("a line of column names");
    let named = |row: Vec<String>| {
        assert!(row.len() <= columns.len(), "{name}: more values than columns in {row:?}");
        columns.iter().cloned().zip(row).collect()
    };
    rows.map(named).collect()
}

/// The values of every line, quotes taken off.
fn rows(text: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut value) = (Vec::new(), Vec::new(), String::new());
    let mut quoted = false;
    let mut signs = text.chars().peekable();
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => value.extend(signs.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(std::mem::take(&mut value)),
            '\n' if !quoted => {
                row.push(std::mem::take(&mut value));
                rows.push(std::mem::take(&mut row));
            }
            '\r' if !quoted => {}
            _ => value.push(sign),
        }
    }
    if !value.is_empty() || !row.is_empty() {
        row.push(value);
        rows.push(row);
    }
    rows
}
