//! Merging: the laws, and what they mean for people.

use crate::sessions::{RECORDS, Session, copies, id, play, step};
use proptest::prelude::*;
use record::{Change, Outcome, Record, merge};
use serde_json::{Value, json};

proptest! {
    #[test]
    fn merging_is_commutative_associative_and_idempotent(steps in prop::collection::vec(step(), 1..40)) {
        let states = play(&steps);
        for record in 0..RECORDS {
            let copies = copies(&states, record);
            for a in &copies {
                prop_assert_eq!(&merge(a, a), a);
                for b in &copies {
                    let both = merge(a, b);
                    prop_assert_eq!(&both, &merge(b, a));
                    prop_assert_eq!(&both, &merge(&both, a));
                    for c in copies.iter().rev().take(6) {
                        prop_assert_eq!(merge(&both, c), merge(a, &merge(b, c)));
                    }
                }
            }
        }
    }

    #[test]
    fn nothing_that_nobody_replaced_is_lost(steps in prop::collection::vec(step(), 1..40)) {
        let states = play(&steps);
        for record in 0..RECORDS {
            let copies = copies(&states, record);
            let Some(all) = copies.iter().cloned().reduce(|a, b| merge(&a, &b)) else { continue };
            for copy in &copies {
                for (field, versions) in &copy.fields {
                    for version in versions {
                        // Gone from the whole only if some copy had seen it and holds it no more.
                        let kept = all.fields.get(field).is_some_and(|all| all.contains(version));
                        let replaced = copies.iter().any(|other| {
                            other.seen.of(&version.dot.replica) >= version.dot.number
                                && !other.fields.get(field).is_some_and(|others| others.contains(version))
                        });
                        prop_assert_eq!(kept, !replaced);
                    }
                }
            }
        }
    }
}

/// Two sessions that share one record with a site name in it.
fn two_phones() -> (Session, Session) {
    let (mut one, mut other) = (Session::new(0), Session::new(1));
    one.edit(id(0), None, "notes", json!("old"));
    other.take(&one.copies[&id(0)]);
    (one, other)
}

fn write(session: &mut Session, field: &str, value: Value) {
    let shown = session.copies.get(&id(0)).cloned();
    session.edit(id(0), shown.as_ref(), field, value);
}

fn copy(session: &Session) -> &Record {
    &session.copies[&id(0)]
}

#[test]
fn a_later_edit_that_saw_the_other_value_wins() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "notes", json!("new"));
    other.take(copy(&one));
    write(&mut other, "notes", json!("newest"));
    let both = merge(copy(&one), copy(&other));
    assert_eq!(both.shown("notes"), Some(&json!("newest")));
    assert_eq!(both.conflicts().count(), 0);
}

#[test]
fn unseen_edits_of_one_field_both_stay_and_are_marked() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "notes", json!("mine"));
    write(&mut other, "notes", json!("yours"));
    let both = merge(copy(&one), copy(&other));
    let values: Vec<&Value> = both.fields["notes"].iter().map(|version| &version.value).collect();
    assert_eq!(values.len(), 2);
    assert!(values.contains(&&json!("mine")) && values.contains(&&json!("yours")));
    assert_eq!(both.conflicts().collect::<Vec<_>>(), ["notes"]);
    let outcome = Outcome::of(Some(copy(&one)), &both);
    assert_eq!(outcome, Outcome { change: Change::Changed, conflicts: vec!["notes".to_owned()] });
    one.take(copy(&other));
    write(&mut one, "notes", json!("agreed"));
    assert_eq!(merge(copy(&one), copy(&other)).conflicts().count(), 0);
}

#[test]
fn equal_values_written_twice_are_no_conflict() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "notes", json!("same"));
    write(&mut other, "notes", json!("same"));
    let both = merge(copy(&one), copy(&other));
    assert_eq!(both.conflicts().count(), 0);
    assert_eq!(Outcome::of(Some(copy(&one)), &both).conflicts, Vec::<String>::new());
}

#[test]
fn edits_of_different_fields_are_both_there() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "notes", json!("mine"));
    write(&mut other, "host", json!("thistle"));
    let both = merge(copy(&one), copy(&other));
    assert_eq!(both.shown("notes"), Some(&json!("mine")));
    assert_eq!(both.shown("host"), Some(&json!("thistle")));
}

#[test]
fn a_deletion_shows_beside_an_edit_that_had_not_seen_it() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "deleted", json!(true));
    write(&mut other, "notes", json!("more to say"));
    let both = merge(copy(&one), copy(&other));
    assert!(both.is_deleted());
    assert_eq!(both.shown("notes"), Some(&json!("more to say")));
    // Bringing it back is an edit like any other.
    one.take(copy(&other));
    write(&mut one, "deleted", Value::Null);
    assert!(!merge(copy(&one), copy(&other)).is_deleted());
}

#[test]
fn emptying_a_field_is_an_edit() {
    let (mut one, mut other) = two_phones();
    write(&mut one, "notes", Value::Null);
    let both = merge(copy(&other), copy(&one));
    assert_eq!(both.shown("notes"), None);
    write(&mut other, "notes", json!("still"));
    let both = merge(copy(&one), copy(&other));
    assert_eq!(both.conflicts().collect::<Vec<_>>(), ["notes"]);
}

#[test]
fn a_merge_that_comes_in_while_a_form_is_open_is_not_overwritten() {
    let (mut one, mut other) = two_phones();
    let shown = copy(&one).clone();
    write(&mut other, "notes", json!("theirs"));
    one.take(copy(&other));
    one.edit(id(0), Some(&shown), "notes", json!("mine"));
    let values: Vec<&Value> = copy(&one).fields["notes"].iter().map(|version| &version.value).collect();
    assert!(values.contains(&&json!("theirs")) && values.contains(&&json!("mine")));
}

#[test]
fn an_unknown_record_is_added_and_a_known_one_is_the_same() {
    let (one, _) = two_phones();
    assert_eq!(Outcome::of(None, copy(&one)).change, Change::Added);
    assert_eq!(Outcome::of(Some(copy(&one)), &merge(copy(&one), copy(&one))).change, Change::Same);
}

#[test]
fn a_field_that_was_seen_and_is_gone_stays_gone() {
    let (mut one, _) = two_phones();
    write(&mut one, "host", json!("thistle"));
    let mut without = copy(&one).clone();
    without.fields.remove("host");
    for both in [merge(copy(&one), &without), merge(&without, copy(&one))] {
        assert_eq!(both, without);
    }
}
