//! Pins that are kept apart, and the labels that follow them.

use super::*;

#[test]
fn mounts_are_counted_and_have_a_code_each() {
    let mut caught = caught();
    for code in ["GLS 001", "GLS 002"] {
        caught.table.make(record::Kind::Mount, |edit| {
            edit.put(&record::mount::CONTAINER, &caught.flies);
            edit.put(&record::mount::CODE, &code.to_owned());
        });
    }
    assert_eq!(caught.table.book.insects(caught.flies).at_least, 2);
    let which = caught.table.book.labels_of(caught.flies).into_iter();
    let codes: Vec<String> = which
        .filter(|which| which.kind == LabelKind::Code)
        .map(|which| caught.table.book.label_lines(caught.flies, which).text)
        .collect();
    assert_eq!(codes, ["GLS 002", "GLS 001"]);
    let code = |table: &Table| {
        let wanted = table.book.wanted(caught.flies).into_iter().find(|wanted| wanted.which.kind == LabelKind::Code);
        wanted.and_then(|wanted| wanted.code)
    };
    assert_eq!(code(&caught.table), None, "only where wished");
    let form = crate::setup::RulesForm { code: "slim".into(), ..caught.table.book.rules().form() };
    let deed = caught.table.with_ids(|book, ids| book.set_rules(&form, ids)).expect("within reason");
    caught.table.save(&deed);
    let drawn = code(&caught.table).expect("wished");
    assert_eq!((drawn.text.as_str(), drawn.modules.len() % drawn.columns), ("GLS 002", 0));
}

#[test]
fn what_is_queued_follows_the_pins() {
    let mut caught = caught();
    let of = caught.flies;
    let mut queue = Queue::default();
    caught.table.book.queue_in(&mut queue, of);
    let before = queue.clone();
    let form = crate::bench::MountForm { route: "card".into(), code: "GLS 001".into(), count: "2".into() };
    let deed = caught.table.with_ids(|book, ids| book.add_mounts(of, &form, ids)).expect("free codes");
    caught.table.save(&deed);
    queue.change(of, |queued| queued.follow_pins(&caught.table.book.wanted(of)));
    let copies = |queue: &Queue, kind: LabelKind| -> u32 {
        let copies = &queue.of(of).expect("queued").copies;
        copies.iter().filter(|(which, _)| which.kind == kind).map(|(_, copies)| copies).sum()
    };
    let spare = caught.table.book.rules().spares;
    assert_eq!((copies(&queue, LabelKind::Code), copies(&queue, LabelKind::Collection)), (2, 2 + spare));
    for pin in caught.table.book.mounts(of) {
        let deed = caught.table.book.take_mount_out(pin.id);
        caught.table.save(&deed);
    }
    queue.change(of, |queued| queued.follow_pins(&caught.table.book.wanted(of)));
    assert_eq!(queue.of(of).expect("queued").labels(), before.of(of).expect("queued").labels());
}
