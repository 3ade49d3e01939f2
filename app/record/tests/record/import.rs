//! Imports through the courier: planned, written, planned again, taken back.

use crate::sessions::{Session, id, play, records, replica, step};
use proptest::prelude::*;
use record::marks::Marks;
use record::packed::pack;
use record::parcel::{Answer, Garbled, Parcel, Question, answer};
use record::plan::{Plan, Tally};
use record::shelf::{Fold, Selection, Shelf};
use record::wire::{Refusal, read, write};
use record::{Dot, Id, Kind, Record, merge};
use serde_json::json;
use std::collections::BTreeMap;

const MOST: usize = 3;

fn ask(shelf: &Shelf, question: Question) -> Answer {
    Answer::read(answer(question.about(shelf))).expect("the courier answers what it is asked")
}

fn plan(shelf: &Shelf, file: &[u8]) -> Plan {
    let question = Question::Plan { book: "own".to_owned(), file: file.to_vec(), most: MOST };
    match ask(shelf, question) {
        Answer::Plan(plan) => *plan,
        other => panic!("{other:?}"),
    }
}

fn apply(shelf: &mut Shelf, fold: Fold) {
    shelf.apply_fold(fold).expect("the courier's blocks open");
}

fn take_back(shelf: &Shelf, plan: &Plan) -> (Fold, record::undo::Undone) {
    let dot = Dot { replica: replica(77), number: 1 };
    let question =
        Question::Undo { undo: plan.undo.pack(), dot, entered: "2027-06-21T09:00:00+02:00".to_owned(), most: MOST };
    match ask(shelf, question) {
        Answer::Undone(fold, undone) => (fold, undone),
        other => panic!("{other:?}"),
    }
}

fn all(shelf: &Shelf) -> BTreeMap<Id, Record> {
    shelf.entries().map(|entry| (entry.id, shelf.get(entry.id).expect("the directory names it"))).collect()
}

fn shelf_of(records: impl IntoIterator<Item = Record>) -> Shelf {
    let mut shelf = Shelf::default();
    for (number, record) in (1..).zip(records) {
        shelf.put(record, Some(("a".to_owned(), number)));
        if number % 3 == 0 {
            let fold = shelf.fold_plan(MOST);
            apply(&mut shelf, fold);
        }
    }
    shelf
}

proptest! {
    #[test]
    fn an_import_merges_and_a_second_one_changes_nothing(steps in prop::collection::vec(step(), 1..40)) {
        let last = play(&steps).pop().expect("there is a last state");
        let (own, other) = (&last[0].copies, &last[1].copies);
        let mut shelf = shelf_of(own.values().cloned());
        let file = write(&crate::wire::header(), &other.values().cloned().collect::<Vec<_>>());
        let plan_of_it = plan(&shelf, &file);
        let touched: usize = plan_of_it.summary.kinds.values().map(|tally| tally.added + tally.changed + tally.deleted).sum();
        let before = all(&shelf);
        if !plan_of_it.summary.is_idle() {
            prop_assert!(shelf.stands_on(&plan_of_it.fold));
            apply(&mut shelf, plan_of_it.fold.clone());
        }
        let mut expected = own.clone();
        for (id, record) in other {
            let both = expected.get(id).map_or_else(|| record.clone(), |own| merge(own, record));
            expected.insert(*id, both);
        }
        prop_assert_eq!(all(&shelf), expected.clone());
        prop_assert_eq!(expected.iter().filter(|(id, record)| before.get(id) != Some(record)).count(), touched);
        let again = plan(&shelf, &file);
        prop_assert!(again.summary.is_idle());
        prop_assert!(again.fold.blocks_in.is_empty());
        // Taken back, all stands as it did.
        if touched > 0 {
            let (fold, undone) = take_back(&shelf, &plan_of_it);
            prop_assert_eq!(undone.kept, 0);
            apply(&mut shelf, fold);
            prop_assert_eq!(all(&shelf), before);
            prop_assert_eq!(&plan(&shelf, &file).summary, &plan_of_it.summary);
        }
    }

    #[test]
    fn an_import_into_an_empty_book_is_the_file(records in records()) {
        let mut shelf = Shelf::default();
        let file = write(&crate::wire::header(), &records);
        let plan = plan(&shelf, &file);
        apply(&mut shelf, plan.fold);
        let marks = plan.marks;
        prop_assert!(shelf.entries().all(|entry| marks.has(&entry)));
        let question = Question::Write { header: crate::wire::header(), selection: Selection::All, marks: Marks::default() };
        let Answer::Written { file: written, marks: left, .. } = ask(&shelf, question) else { panic!("no file") };
        prop_assert_eq!(read(&written).expect("it was just written").records, read(&file).expect("so was this").records);
        prop_assert_eq!(left, marks);
    }

    #[test]
    fn garbled_questions_are_answered_and_never_a_panic(parts in prop::collection::vec(prop::collection::vec(any::<u8>(), 0..40), 0..5)) {
        for kind in ["plan/1", "write/1", "fold/1", "undo/1", "sing/1", "garbled/1", "refused/1"] {
            let parcel = Parcel { kind: kind.to_owned(), parts: parts.clone() };
            prop_assert_eq!(Answer::read(answer(parcel.clone())), Err(Garbled));
            prop_assert_eq!(Answer::read(parcel), Err(Garbled));
        }
    }
}

fn of(session: &Session, number: usize) -> Record {
    session.copies[&id(number)].clone()
}

#[test]
fn a_preview_counts_what_would_happen() {
    let (mut mine, mut theirs) = (Session::new(0), Session::new(1));
    for number in 0..4 {
        mine.edit(id(number * 5), None, "notes", json!("x"));
        theirs.take(&of(&mine, number * 5));
    }
    let change = |session: &mut Session, number: usize, field: &str, value| {
        let shown = session.copies.get(&id(number)).cloned();
        session.edit(id(number), shown.as_ref(), field, value);
    };
    change(&mut theirs, 5, "notes", json!("theirs"));
    change(&mut mine, 5, "notes", json!("mine"));
    change(&mut theirs, 10, "deleted", json!(true));
    change(&mut theirs, 6, "number", json!({"text": "B-7"}));
    change(&mut theirs, 20, "caught", json!({"from": "2027-06-19"}));
    let shelf = shelf_of(mine.copies.values().cloned());
    let file = write(&crate::wire::header(), &theirs.copies.values().cloned().collect::<Vec<_>>());
    let plan = plan(&shelf, &file);
    let summary = &plan.summary;
    assert_eq!(summary.kinds["event"], Tally { added: 1, changed: 1, deleted: 1, same: 2 });
    assert_eq!(summary.kinds["container"], Tally { added: 1, changed: 0, deleted: 0, same: 0 });
    assert_eq!(summary.conflicts, [(id(5), "notes".to_owned())]);
    assert_eq!(summary.numbers, ["B-7"]);
    assert_eq!(summary.days, BTreeMap::from([(20_988, 1)]));
    assert_eq!(summary.header.person, "Ada Quill");
    // What is in conflict here is not what the file holds: it has yet to leave.
    assert!(!plan.marks.knows(id(5)) && plan.marks.knows(id(10)) && plan.marks.knows(id(20)));
}

#[test]
fn an_import_taken_back_keeps_what_was_edited_since() {
    let (mut mine, mut theirs) = (Session::new(0), Session::new(1));
    mine.edit(id(0), None, "notes", json!("old"));
    theirs.take(&of(&mine, 0));
    let shown = of(&theirs, 0);
    theirs.edit(id(0), Some(&shown), "notes", json!("theirs"));
    theirs.edit(id(5), None, "notes", json!("an event of theirs"));
    theirs.edit(id(10), None, "notes", json!("another"));
    theirs.edit(id(15), None, "notes", json!("one that goes again"));
    let mut shelf = shelf_of([of(&mine, 0)]);
    let file = write(&crate::wire::header(), &theirs.copies.values().cloned().collect::<Vec<_>>());
    let plan = plan(&shelf, &file);
    apply(&mut shelf, plan.fold.clone());
    // Since then: a host for the own event, a note on one of theirs, a container of the own in another of theirs.
    let mut later = Session::new(2);
    for (number, field, value) in
        [(0, "host", json!("thistle")), (5, "host", json!("oak")), (11, "event", json!(id(10)))]
    {
        if let Some(now) = shelf.get(id(number)) {
            later.take(&now);
        }
        let shown = later.copies.get(&id(number)).cloned();
        later.edit(id(number), shown.as_ref(), field, value);
        shelf.put(
            Record { kind: if number == 11 { Kind::Container } else { Kind::Event }, ..of(&later, number) },
            Some(("l".to_owned(), 1)),
        );
    }
    let (fold, undone) = take_back(&shelf, &plan);
    assert_eq!((undone.restored, undone.removed, undone.kept), (1, 1, 2));
    apply(&mut shelf, fold);
    let own = shelf.get(id(0)).expect("it is there");
    assert_eq!(own.shown("notes"), Some(&json!("old")));
    assert_eq!(own.shown("host"), Some(&json!("thistle")));
    assert_eq!(own.seen.of(&replica(1)), 0, "what they wrote counts as never seen");
    assert_eq!(own.fields["host"][0].dot, Dot { replica: replica(77), number: 1 });
    assert!(shelf.get(id(5)).is_some() && shelf.get(id(10)).is_some() && shelf.get(id(15)).is_none());
}

#[test]
fn files_that_may_not_come_in_are_refused_with_the_reason() {
    let shelf = shelf_of([]);
    let refused = |file: Vec<u8>| match ask(&shelf, Question::Plan { book: "own".to_owned(), file, most: MOST }) {
        Answer::Refused(refusal) => refusal,
        other => panic!("{other:?}"),
    };
    assert_eq!(refused(b"{}".to_vec()), Refusal::NotOurs);
    let mut header = crate::wire::header();
    header.book = "sample".to_owned();
    assert_eq!(refused(write(&header, &[])), Refusal::OtherBook { book: "sample".to_owned() });
    header.share_copy = Some(serde_json::Map::new());
    assert_eq!(refused(write(&header, &[])), Refusal::ShareCopy);
}

#[test]
fn a_record_twice_in_a_file_is_imported_once() {
    let (mut a, mut b) = (Session::new(0), Session::new(1));
    a.edit(id(0), None, "notes", json!("mine"));
    b.edit(id(0), None, "host", json!("thistle"));
    let file = write(&crate::wire::header(), &[of(&a, 0), of(&b, 0)]);
    let both = merge(&of(&a, 0), &of(&b, 0));
    for own in [None, Some(of(&a, 0))] {
        let mut shelf = shelf_of(own.clone());
        let plan = plan(&shelf, &file);
        assert_eq!(plan.summary.problems.len(), 1);
        apply(&mut shelf, plan.fold.clone());
        assert_eq!(shelf.get(id(0)), Some(both.clone()));
        let (fold, _) = take_back(&shelf, &plan);
        apply(&mut shelf, fold);
        assert_eq!(shelf.get(id(0)), own);
    }
}

#[test]
fn a_file_of_a_few_records_needs_no_copy_of_the_shelf() {
    let mut session = Session::new(0);
    for number in 0..60 {
        session.edit(id(number), None, "notes", json!(number));
    }
    let shelf = shelf_of(session.copies.values().cloned());
    let question = |selection| Question::Write { header: crate::wire::header(), selection, marks: Marks::default() };
    let parcel = question(Selection::Ids(vec![id(5), id(10)])).about(&shelf);
    assert_eq!(parcel.parts.len(), 3, "no blocks travel");
    let Ok(Answer::Written { file, marks, kinds }) = Answer::read(answer(parcel)) else { panic!("no file") };
    let ids: Vec<Id> = read(&file).expect("it was just written").records.iter().map(|record| record.id).collect();
    assert_eq!(ids, [id(5), id(10)]);
    assert_eq!((marks.len(), kinds["event"]), (2, 2));
    let all = Answer::read(answer(question(Selection::All).about(&shelf)));
    let Ok(Answer::Written { marks, .. }) = all else { panic!("no file") };
    assert_eq!(marks.len(), 60);
}

#[test]
fn a_fold_asked_of_the_courier_is_the_shelf_s_own() {
    let mut session = Session::new(0);
    for number in 0..7 {
        session.edit(id(number), None, "notes", json!(number));
    }
    let mut shelf = Shelf::default();
    shelf
        .add_row(pack(&session.copies.values().cloned().collect::<Vec<_>>()), ("a".to_owned(), 7))
        .expect("it was just packed");
    let Answer::Folded(fold) = ask(&shelf, Question::Fold { most: MOST }) else { panic!("no fold") };
    assert_eq!(fold, shelf.fold_plan(MOST));
    assert_eq!(fold.journal_out, [("a".to_owned(), 7)]);
    assert_eq!(fold.blocks_in.len(), 3);
}
