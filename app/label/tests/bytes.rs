//! How many bytes a label adds to a file, beyond those of a smaller file, which has the fonts too.

mod common;
#[path = "common/order.rs"]
mod order;

use common::{fonts, format, lines};
use label::{Code, Paper, Setter, Wanted, print};
use number::symbol::{Shape, symbol};
use order::job;

/// An invented event: words come again, numbers do not.
fn wanted(event: u32, copies: u32) -> Wanted {
    let locality = format!("ORRELAND:~Sallow~{}", event % 40);
    let position = format!("47.{:04}°~N 12.{:04}°~E ±8~m", 13 * event, 7 * event);
    let date = format!("{}.vi.20{}, leg.~I.~Varga", 1 + event % 30, 10 + event % 17);
    Wanted { lines: lines(&[&locality, &position, &date]), code: None, format: format(18.0, 8.0), copies }
}

fn bytes(labels: Vec<Wanted>) -> f64 {
    print(&mut Setter::new(&fonts()), job(labels, Paper::A4)).expect("the labels fit").bytes.len() as f64
}

/// Lines placed by themselves on the sheet took 43 and 21, and kerns with seven digits 4 and 2 more.
#[test]
fn a_label_takes_few_bytes_and_its_copies_fewer() {
    let few = bytes((0..300).map(|event| wanted(event, 1)).collect());
    let more = bytes((0..600).map(|event| wanted(event, 1)).collect());
    let again = bytes((0..300).map(|event| wanted(event, 5)).collect());
    let (label, copy) = ((more - few) / 300.0, (again - few) / 1200.0);
    assert!(label < 39.0 && copy < 17.0, "{label:.1} bytes for a label, {copy:.1} for a copy of it");
}

/// With the places of its modules on the sheet a code took 753.
#[test]
fn a_code_takes_few_bytes() {
    let coded = |event: u32| {
        let text = format!("IV27-{:04}", 1000 + 17 * event);
        let symbol = symbol(&text, Shape::Square).expect("it is short");
        let code = Some(Code { text, columns: symbol.columns, modules: symbol.modules });
        Wanted { code, ..wanted(event, 1) }
    };
    let format = format(26.0, 8.0);
    let with = bytes((0..300).map(|event| Wanted { format, ..coded(event) }).collect());
    let without = bytes((0..300).map(|event| Wanted { format, ..wanted(event, 1) }).collect());
    let code = (with - without) / 300.0;
    assert!(code < 120.0, "{code:.1} bytes for a code");
}
