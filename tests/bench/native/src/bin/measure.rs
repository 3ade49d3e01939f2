//! Measures the pure crates natively and prints a table: `cargo run --release -p bench-native --bin measure [EVENTS]`.

use bench_native::{made, table::best, table::line};
use bench_places::written;
use record::parcel::{Question, answer};
use record::plan::plan;
use record::shelf::Shelf;
use record::wire::{read, write};
use record::{Kind, Record, merge, packed};
use std::io::Write;

/// Records a block holds.
const MOST: usize = 1000;

fn main() {
    let events = std::env::args().nth(1).and_then(|events| events.parse().ok()).unwrap_or(100_000);
    print(&format!("| {:<62} | {:>12} | |", format!("{events} events, best of five"), "time"));
    print("|---|---:|---|");
    let book = made::book(events, 0);
    merging(&book);
    files(&book);
    drop(book);
    shelves(events);
    numbers(events);
    positions(events);
}

fn print(line: &str) {
    writeln!(std::io::stdout(), "{line}").expect("the table can be printed");
}

fn merging(book: &[Record]) {
    let other = made::other(book);
    let mut copies: Vec<Vec<Record>> = (0..5).map(|_| book.to_vec()).collect();
    let merge_all = || {
        let mut copy = copies.pop().expect("a copy for each repeat");
        copy.iter_mut().zip(&other).for_each(|(own, other)| own.absorb(other));
        copy
    };
    let (time, merged) = best(merge_all);
    print(&line("merge two copies, record by record", time, &format!("{} records, one in ten changed", merged.len())));
    let (time, _) = best(|| book.iter().zip(&other).map(|(a, b)| merge(a, b)).collect::<Vec<Record>>());
    print(&line("the same into a third copy", time, ""));
}

fn files(book: &[Record]) {
    let (time, file) = best(|| write(&made::header(), book));
    let megabytes = format!("{:.1} MB", file.len() as f64 / 1e6);
    print(&line("write a log file", time, &megabytes));
    let (time, _) = best(|| read(&file).expect("it was just written").records.len());
    print(&line("read a log file", time, &megabytes));
    let other = write(&made::header(), &made::other(book));
    let (time, _) = best(|| plan(Shelf::default(), &file, "own", MOST).expect("it can be imported"));
    print(&line("plan its import into an empty book, blocks and all", time, &megabytes));
    let shelf = shelf(&blocks(book));
    let (time, planned) = best(|| plan(shelf.clone(), &other, "own", MOST).expect("it can be imported"));
    let remark = format!("{} records changed", planned.summary.changed.len());
    print(&line("plan the import of the other copy into a full book", time, &remark));
    let question = || {
        let selection = record::shelf::Selection::All;
        Question::Write { header: made::header(), selection, marks: record::marks::Marks::default() }.about(&shelf)
    };
    let (time, _) = best(|| answer(question()));
    print(&line("export everything through the courier", time, ""));
}

fn blocks(book: &[Record]) -> Vec<Vec<u8>> {
    book.chunks(MOST).map(packed::pack).collect()
}

fn shelf(blocks: &[Vec<u8>]) -> Shelf {
    let mut shelf = Shelf::default();
    for (key, bytes) in (1..).zip(blocks) {
        shelf.add_block(key, bytes.clone()).expect("it was just packed");
    }
    shelf
}

fn shelves(events: usize) {
    for containers in [0, 2] {
        let book = made::book(events, containers);
        let (time, blocks) = best(|| blocks(&book));
        let bytes: usize = blocks.iter().map(Vec::len).sum();
        let remark = format!("{} records, {:.1} MB in {} blocks", book.len(), bytes as f64 / 1e6, blocks.len());
        print(&line("pack blocks", time, &remark));
        opening(&blocks);
        let shelf = shelf(&blocks);
        looking(&shelf, &book);
    }
}

fn opening(blocks: &[Vec<u8>]) {
    let mut copies: Vec<Vec<Vec<u8>>> = (0..5).map(|_| blocks.to_vec()).collect();
    let open = || {
        let mut shelf = Shelf::default();
        for (key, bytes) in (1..).zip(copies.pop().expect("a copy for each repeat")) {
            shelf.add_block(key, bytes).expect("it was just packed");
        }
        (shelf.count(&Kind::Event), shelf)
    };
    let (time, (count, _)) = best(open);
    print(&line("open them and count", time, &format!("{count} events")));
}

fn looking(shelf: &Shelf, book: &[Record]) {
    let (time, days) = best(|| shelf.clone().days().len());
    print(&line("days (and a copy of the shelf)", time, &format!("{days} days")));
    let (time, found) = best(|| shelf.search("plot 2017-04-01", 20));
    print(&line("search two words, of which one is rare", time, &format!("{} found", found.total)));
    for text in ["ditch", "a", "nowhere"] {
        let (time, found) = best(|| shelf.search(text, 20));
        print(&line(&format!("search \"{text}\""), time, &format!("{} found", found.total)));
    }
    let ids: Vec<_> = book.iter().step_by(97).map(|record| record.id).collect();
    let (time, _) = best(|| ids.iter().filter_map(|id| shelf.get(*id)).count());
    print(&line("look up and decode one record", time / ids.len() as u32, ""));
    let (time, _) = best(|| ids.iter().map(|id| shelf.children(*id).len()).sum::<usize>());
    print(&line("children of one record", time / ids.len() as u32, ""));
    let (time, count) = best(|| shelf.unexported(&record::marks::Marks::default()));
    print(&line("count what was never exported", time, &format!("{count} events")));
    let (time, _) = best(|| shelf.by_kind(&Kind::Site).len());
    print(&line("all sites", time, ""));
    let (time, _) = best(|| shelf.newest(&Kind::Event, 200).len());
    print(&line("the newest 200 events", time, ""));
}

fn numbers(events: usize) {
    let texts: Vec<String> = (0..events).map(|event| made::number(event, 1)).collect();
    let (time, near) = best(|| number::nearest("AM20-04728", texts.iter().map(String::as_str), 10).len());
    print(&line("nearest numbers to one that does not exist", time, &format!("{near} offered")));
    let (time, _) = best(|| number::matches("am20-4729", texts.iter().map(String::as_str)));
    print(&line("a number as typed, among as many", time, ""));
}

fn positions(count: usize) {
    let positions = written::positions(count);
    let texts = written::texts(&positions);
    let (time, read) = best(|| texts.iter().filter(|text| place::parse::parse(text).only().is_some()).count());
    print(&line("read coordinates in ten notations", time, &format!("{read} without a second reading")));
    let grid = || positions.iter().filter_map(|position| place::grid::utm(*position).ok()?.position()).count();
    let (time, _) = best(grid);
    print(&line("positions to UTM and back", time, ""));
    let pairs =
        || positions.windows(2).map(|pair| place::distance::leg(pair[0], pair[1]).distance.metres()).sum::<f64>();
    let (time, _) = best(pairs);
    print(&line("distance and bearing of as many pairs", time, ""));
    let instant = place::instant::Instant::new(1_782_069_974_000).expect("an instant of 2026");
    let few = &positions[..count.min(1_000)];
    let (time, _) = best(|| few.iter().map(|position| place::sky::sky_at(*position, instant)).collect::<Vec<_>>());
    print(&line("sun and moon of one position at an instant", time / few.len() as u32, ""));
}
