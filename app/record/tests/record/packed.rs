//! Packed blocks: what is packed comes back, what is damaged is an error.

use crate::sessions::{Session, id, records};
use proptest::prelude::*;
use record::packed::{Block, Damage, pack};
use record::{Kind, Record};
use serde_json::json;

fn open(bytes: Vec<u8>) -> Block {
    Block::open(bytes).expect("it was just packed")
}

#[test]
fn a_number_that_looks_like_an_id_is_still_a_number() {
    let number = id(7).to_string();
    let mut edit = record::Edit::of(&Record::new(id(1), Kind::Container));
    edit.set("number", json!({ "text": number }));
    let dot = record::Dot { replica: record::Replica::new("a"), number: 1 };
    let block = open(pack(&[edit.apply(None, &dot, "2026-06-19T14:33:03+02:00")]));
    assert_eq!(block.entries().next().expect("one record").number, Some(number.as_str()));
}

proptest! {
    #[test]
    fn what_is_packed_comes_back(mut records in records()) {
        let block = open(pack(&records));
        records.sort_by_key(|record| record.id);
        prop_assert_eq!(block.len(), records.len());
        prop_assert_eq!(block.records().collect::<Vec<_>>(), records.clone());
        for (entry, record) in block.entries().zip(&records) {
            prop_assert_eq!(entry.id, record.id);
            prop_assert_eq!(entry.kind, &record.kind);
            prop_assert_eq!(entry.deleted, record.is_deleted());
            prop_assert_eq!(entry.digest, record.seen.digest());
            let facts = record::facts::Facts::of(record);
            prop_assert_eq!(entry.number, facts.number.as_deref());
        }
        let living = records.iter().filter(|record| record.kind == Kind::Event && !record.is_deleted()).count();
        prop_assert_eq!(block.count(&Kind::Event), living);
        records.reverse();
        let packed_anew = pack(&records);
        prop_assert_eq!(packed_anew.as_slice(), block.bytes());
    }

    #[test]
    fn damage_of_any_kind_is_an_error(records in records(), place in any::<prop::sample::Index>(), bit in 0..8_u8) {
        let whole = pack(&records);
        let mut flipped = whole.clone();
        let place = place.index(whole.len());
        flipped[place] ^= 1_u8 << bit;
        prop_assert!(Block::open(flipped).is_err());
        prop_assert!(Block::open(whole[..place].to_vec()).is_err());
        prop_assert!(Block::open([&whole[..], &[0]].concat()).is_err());
    }

    #[test]
    fn foreign_bytes_are_an_error(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        prop_assert!(Block::open(bytes).is_err());
    }

    #[test]
    fn a_block_with_a_forged_checksum_is_never_a_panic(
        records in records(), places in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..8)
    ) {
        let mut bytes = pack(&records);
        for (place, byte) in places {
            let place = 16 + place.index(bytes.len() - 16);
            bytes[place] = byte;
        }
        forge(&mut bytes);
        if let Ok(block) = Block::open(bytes) {
            let _ = block.records().count() + block.entries().count() + block.days().count();
            let _ = block.find(id(1)).into_iter().chain(block.children(id(1))).chain(block.of_day(20_988)).count();
        }
    }
}

fn forge(bytes: &mut [u8]) {
    let mut hasher = crc32fast::Hasher::new();
    hasher.update(&bytes[4..8]);
    hasher.update(&bytes[12..]);
    let sum = hasher.finalize();
    bytes[8..12].copy_from_slice(&sum.to_le_bytes());
}

#[test]
fn huge_counts_set_nothing_aside() {
    let mut bytes = pack(&[event(0)]);
    for place in (16..56).step_by(4) {
        let mut huge = bytes.clone();
        huge[place..place + 4].copy_from_slice(&[0xff; 4]);
        forge(&mut huge);
        assert_eq!(Block::open(huge).err(), Some(Damage::Content));
    }
    let rows = bytes.len() - 4;
    bytes[rows..].copy_from_slice(&[0xff; 4]);
    forge(&mut bytes);
    assert_eq!(Block::open(bytes).map(|block| block.record(0)).ok(), Some(None));
}

#[test]
fn a_newer_format_is_told_from_damage() {
    let mut bytes = pack(&[event(0)]);
    bytes[4] = 2;
    assert_eq!(Block::open(bytes.clone()).err(), Some(Damage::Checksum));
    forge(&mut bytes);
    assert_eq!(Block::open(bytes).err(), Some(Damage::Newer(2)));
    assert_eq!(Block::open(b"PK\x03\x04".to_vec()).err(), Some(Damage::Foreign));
    assert_eq!(Block::open(b"GLSP".to_vec()).err(), Some(Damage::Length));
}

fn event(number: usize) -> Record {
    let mut session = Session::new(number);
    session.edit(id(number), None, "caught", json!({"from": "2027-06-20T01:10", "night": true}));
    session.copies.remove(&id(number)).expect("it was just made")
}

/// A block that format 1 wrote stays readable for good.
#[test]
fn the_sample_of_format_1_reads() {
    let block = open(include_bytes!("../../samples/block-1.bin").to_vec());
    let log =
        record::wire::read(include_bytes!("../../samples/log-1.json")).expect("the log of the same records reads");
    let mut records = log.records;
    records.sort_by_key(|record| record.id);
    assert_eq!(block.records().collect::<Vec<_>>(), records);
    assert_eq!(block.count(&Kind::Event), 2);
    assert_eq!(block.entries().filter_map(|entry| entry.number).collect::<Vec<_>>(), ["IV27-0147"]);
    assert_eq!(block.days().map(|(day, _)| day).collect::<Vec<_>>(), [20_988, 20_989]);
}
