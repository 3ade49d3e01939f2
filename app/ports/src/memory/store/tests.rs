use super::*;
use crate::memory::{Started, block_on};

fn opened() -> (Rc<Disk>, Connection) {
    let disk = Rc::new(Disk::default());
    let connection = Connection::new(disk.clone());
    block_on(connection.open("own")).unwrap();
    (disk, connection)
}

fn key(number: u32) -> JournalKey {
    JournalKey { replica: "r".into(), number }
}

fn saved(number: u32) -> Swap {
    Swap { journal_in: vec![(key(number), vec![number as u8])], ..Swap::default() }
}

/// Saves row 1, then meets the fault with row 2: what was said, and the rows kept.
fn met(fault: Fault) -> (Result<(), StoreFault>, usize) {
    let (disk, connection) = opened();
    block_on(connection.swap(saved(1))).unwrap();
    disk.fail(fault);
    let said = block_on(connection.swap(saved(2)));
    (said, disk.with("own", |book| book.journal.len()))
}

#[test]
fn a_swap_folds_the_journal_into_a_segment() {
    let (disk, connection) = opened();
    block_on(connection.swap(saved(1))).unwrap();
    block_on(connection.swap(saved(2))).unwrap();
    let fold = Swap {
        segments_in: vec![(2, vec![9])],
        segments_out: vec![1],
        journal_out: vec![key(1), key(2)],
        marks_in: vec![("day".into(), vec![3])],
        ..Swap::default()
    };
    disk.with("own", |book| book.segments.insert(1, vec![8]));
    block_on(connection.swap(fold)).unwrap();
    assert_eq!(block_on(connection.segment_keys()), Ok(vec![2]));
    assert_eq!(block_on(connection.segments(vec![1, 2])), Ok(vec![(2, vec![9])]));
    assert_eq!(block_on(connection.journal(None)), Ok(vec![]));
    assert_eq!(block_on(connection.marks()), Ok(vec![("day".into(), vec![3])]));
}

#[test]
fn a_taken_key_fails_the_whole_swap() {
    let (disk, connection) = opened();
    block_on(connection.swap(saved(1))).unwrap();
    let swap = Swap { segments_in: vec![(1, vec![1])], ..saved(1) };
    assert_eq!(block_on(connection.swap(swap)), Err(StoreFault::Taken));
    assert!(disk.with("own", |book| book.segments.is_empty()));
}

#[test]
fn each_fault_says_its_name_and_keeps_what_it_says() {
    let cut = || Err(StoreFault::Cut("switched on".into()));
    assert_eq!(met(Fault::Full), (Err(StoreFault::Full), 1));
    assert_eq!(met(Fault::CutOnce), (cut(), 1));
    assert_eq!(met(Fault::Cut), (cut(), 1));
    assert_eq!(met(Fault::CutAfterWrite), (cut(), 2));
    assert_eq!(met(Fault::Newer(2)), (Err(StoreFault::Newer { found: 2 }), 1));
    assert_eq!(met(Fault::Outdated), (Err(StoreFault::Outdated), 1));
    assert_eq!(met(Fault::Taken), (Err(StoreFault::Taken), 1));
}

#[test]
fn a_cut_for_once_is_over_and_a_cut_for_good_is_not() {
    let (disk, connection) = opened();
    disk.fail(Fault::CutOnce);
    assert!(block_on(connection.marks()).is_err());
    assert!(block_on(connection.marks()).is_ok());
    disk.fail(Fault::Cut);
    assert!(block_on(connection.marks()).is_err());
    assert!(block_on(connection.marks()).is_err());
    disk.heal();
    assert!(block_on(connection.marks()).is_ok());
}

#[test]
fn a_write_lost_before_its_commit_leaves_nothing_and_says_nothing() {
    let (disk, connection) = opened();
    disk.fail(Fault::LostBeforeCommit);
    let mut write = Started::new(connection.swap(saved(1)));
    assert!(write.poke().is_none() && write.poke().is_none());
    drop(write);
    assert!(disk.with("own", |book| book.journal.is_empty()));
    assert_eq!(block_on(connection.swap(saved(1))), Ok(()));
}

#[test]
fn a_newer_format_can_be_read() {
    let disk = Rc::new(Disk::default());
    disk.with("own", |book| book.segments.insert(1, vec![1]));
    disk.fail(Fault::Newer(2));
    let connection = Connection::new(disk);
    assert_eq!(block_on(connection.open("own")), Err(StoreFault::Newer { found: 2 }));
    assert_eq!(block_on(connection.segment_keys()), Ok(vec![1]));
}

#[test]
fn held_writes_happen_in_the_order_of_the_steps() {
    let (disk, connection) = opened();
    disk.hold();
    let mut first = Started::new(connection.swap(saved(1)));
    let mut second = Started::new(connection.swap(saved(1)));
    assert!(first.poke().is_none() && second.poke().is_none());
    disk.step();
    assert_eq!(second.poke(), Some(Ok(())));
    assert_eq!(first.poke(), None);
    disk.go();
    assert_eq!(first.poke(), Some(Err(StoreFault::Taken)));
}

#[test]
fn what_is_set_aside_is_neither_read_nor_lost() {
    let (disk, connection) = opened();
    block_on(connection.swap(saved(1))).unwrap();
    block_on(connection.set_aside(Damaged::Journal(key(1)))).unwrap();
    block_on(connection.set_aside(Damaged::Segment(5))).unwrap();
    assert_eq!(block_on(connection.journal_keys()), Ok(vec![]));
    assert_eq!(block_on(connection.aside_count()), Ok(1));
    assert_eq!(disk.with("own", |book| book.aside[0].1.clone()), [1]);
}

#[test]
fn an_erased_book_is_gone_and_the_other_is_not() {
    let (disk, connection) = opened();
    block_on(connection.swap(saved(1))).unwrap();
    disk.with("sample", |book| book.segments.insert(1, vec![1]));
    block_on(connection.erase("sample")).unwrap();
    assert!(disk.with("sample", |book| book.segments.is_empty()));
    assert_eq!(block_on(connection.journal_keys()), Ok(vec![key(1)]));
}
