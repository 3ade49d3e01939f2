use super::*;
use crate::deed::What;
use crate::invented::Table;
use crate::labels::LabelKind;
use crate::view::Next;
use record::{Id, Kind, numbering, person};

fn settle(table: &mut Table, settled: &Settled) {
    table.save(&settled.deed);
    table.book.set_device(settled.device.clone());
}

fn name(table: &mut Table, name: &str) {
    let settled = table.with_ids(|book, ids| book.name_oneself(name, ids)).expect("a name");
    settle(table, &settled);
}

fn number_by(table: &mut Table, habit: &str) {
    let settled = table.with_ids(|book, ids| book.set_habit(habit, 2027, ids));
    settle(table, &settled);
}

fn take(table: &mut Table, own: &Own) -> Result<(), Refused> {
    let settled = table.with_ids(|book, ids| book.take_own(own, ids))?;
    settle(table, &settled);
    Ok(())
}

fn next(table: &Table) -> String {
    match table.book.next_number() {
        Next::Number(plate) => format!("{}{}", plate.prefix, plate.run),
        other => format!("{other:?}"),
    }
}

/// A desk that has the log of I. Varga's phone, and was told that it is hers too.
fn second_of_varga() -> (Table, Id) {
    let mut table = Table::new();
    let varga = table.person("I. Varga");
    let phone = table.numbering(varga, "IV27-", |_| {});
    let event = table.event("2027-06-19T14:32", varga, |_| {});
    for run in [1, 153, 154] {
        table.vial(event, &format!("IV27-{run:04}"), "Flies", None);
    }
    name(&mut table, "i. varga");
    (table, phone)
}

#[test]
fn a_prefix_is_proposed_from_initials_and_year() {
    for (name, prefix) in [
        ("I. Varga", "IV27-"),
        ("Varga, I.", "IV27-"),
        ("maria del mar", "MDM27-"),
        ("Jan van der Berg", "JB27-"),
        ("J.-P. Östlund", "JPÖ27-"),
        ("", ""),
    ] {
        assert_eq!(default_prefix(name, 2027), prefix, "{name}");
    }
    assert_eq!(default_prefix("I. Varga", 2003), "IV03-");
    assert_eq!(examples("one", "I. Varga", 2027)[2], "IV27-0003");
}

#[test]
fn two_answers_are_enough_for_the_first_number() {
    let mut table = Table::new();
    let first = table.book.first_run(2027).expect("nothing was asked yet");
    assert_eq!((first.name.as_str(), first.habit.as_str(), first.second), ("", "", false));
    name(&mut table, " I.  Varga ");
    number_by(&mut table, "one");
    assert_eq!(next(&table), "IV27-0001");
    let asked = table.book.asked();
    table.book.set_device(asked);
    assert_eq!(table.book.first_run(2027), None);
}

#[test]
fn the_questions_can_wait() {
    let mut table = Table::new();
    let asked = table.book.asked();
    table.book.set_device(asked);
    assert_eq!(table.book.first_run(2027), None);
    assert_eq!(table.book.next_number(), Next::Unasked);
    assert!(table.with_ids(|book, ids| book.name_oneself("  ", ids)).is_err());
}

#[test]
fn engraved_vials_and_no_numbers_propose_none() {
    for habit in ["engraved", "none"] {
        let mut table = Table::new();
        name(&mut table, "I. Varga");
        number_by(&mut table, habit);
        assert_eq!(table.book.next_number(), Next::None, "{habit}");
    }
}

#[test]
fn writing_ones_name_differently_keeps_the_old_spelling() {
    let mut table = Table::new();
    name(&mut table, "I. Varga");
    name(&mut table, "Ilona Varga");
    let persons = table.book.all(&Kind::Person);
    assert_eq!(persons.len(), 1);
    assert_eq!(persons[0].get(&person::SPELLINGS), Some(vec!["I. Varga".to_owned()]));
    name(&mut table, "I. Varga");
    let persons = table.book.all(&Kind::Person);
    assert_eq!(persons[0].get(&person::NAME).as_deref(), Some("I. Varga"));
    assert_eq!(persons[0].get(&person::SPELLINGS), Some(vec!["Ilona Varga".to_owned()]));
}

#[test]
fn somebody_known_by_the_name_is_taken_as_that_person() {
    let mut table = Table::new();
    let okoro = table.person("D. Okoro");
    name(&mut table, "I. Varga");
    number_by(&mut table, "one");
    name(&mut table, "d. okoro");
    assert_eq!(table.book.device().person, Some(okoro));
    assert_eq!(table.book.device().numbering, None, "the numbering is another person's");
    assert_eq!(table.book.all(&Kind::Person).len(), 2);
}

#[test]
fn a_changed_prefix_leaves_old_numbers_their_numbering() {
    let mut table = Table::new();
    name(&mut table, "I. Varga");
    number_by(&mut table, "one");
    let form = |table: &Table, prefix: &str| NumberingForm { prefix: prefix.into(), ..table.book.numbering_form(2028) };
    let unused = form(&table, "IVA-");
    let settled = table.with_ids(|book, ids| book.set_numbering(&unused, ids)).expect("readable");
    settle(&mut table, &settled);
    assert_eq!(table.book.all(&Kind::Numbering).len(), 1);
    let varga = table.book.device().person.expect("named");
    let event = table.event("2027-06-19", varga, |_| {});
    table.vial(event, "IVA-0009", "Flies", None);
    let newer = form(&table, "IVB-");
    let settled = table.with_ids(|book, ids| book.set_numbering(&newer, ids)).expect("readable");
    settle(&mut table, &settled);
    assert_eq!(next(&table), "IVB-0001");
    let prefixes: Vec<_> =
        table.book.all(&Kind::Numbering).iter().filter_map(|record| record.get(&numbering::PREFIX)).collect();
    assert_eq!(prefixes, ["IVA-", "IVB-"]);
    let back = form(&table, "IVA-");
    let settled = table.with_ids(|book, ids| book.set_numbering(&back, ids)).expect("readable");
    settle(&mut table, &settled);
    assert_eq!(next(&table), "IVA-0010");
    assert_eq!(table.book.all(&Kind::Numbering).len(), 2);
    assert_eq!(table.book.second_device(), None);
}

#[test]
fn what_cannot_be_a_numbering_is_refused_with_all_reasons() {
    let form = NumberingForm {
        habit: "one".into(),
        prefix: "IV27".into(),
        width: "12".into(),
        letter: "BB".into(),
        from: "9".into(),
        to: "3".into(),
    };
    let all = [
        Refused::PrefixEndsInDigit,
        Refused::TooLarge { field: "width", most: 9 },
        Refused::NotALetter,
        Refused::NotARange,
    ];
    assert_eq!(form.read(), Err(all.to_vec()));
}

#[test]
fn a_second_device_must_first_take_numbers_of_its_own() {
    let (table, _) = second_of_varga();
    let second = table.book.second_device().expect("the phone counts already");
    assert_eq!((second.person.as_str(), second.letter.as_str()), ("I. Varga", "B"));
    assert_eq!((second.from.as_str(), second.to.as_str()), ("0500", "0999"));
    let phone = &second.others[0];
    assert!(matches!(&phone.next, Next::Number(plate) if plate.run == "0155"));
    assert_eq!(phone.highest.as_ref().map(|plate| plate.run.as_str()), Some("0154"));
    assert_eq!(phone.entered, "2027-06-19T14:32:05+02:00");
    assert!(table.book.first_run(2027).is_some_and(|first| first.second));
}

#[test]
fn with_a_letter_both_devices_can_count() {
    let (mut table, _) = second_of_varga();
    assert!(
        matches!(table.book.own_preview(&Own::Letter("b".into())), Ok(Next::Number(plate)) if plate.run == "B0001")
    );
    assert_eq!(take(&mut table, &Own::Letter("b".into())), Ok(()));
    assert_eq!(next(&table), "IV27-B0001");
    assert_eq!(table.book.second_device(), None);
}

#[test]
fn with_a_range_both_devices_can_count() {
    let (mut table, phone) = second_of_varga();
    assert_eq!(table.book.range_size("0500", "0999"), Ok(500));
    assert_eq!(take(&mut table, &Own::Range("150".into(), "200".into())), Err(Refused::RangeUsed(2)));
    assert_eq!(take(&mut table, &Own::Range("0500".into(), "0999".into())), Ok(()));
    assert_eq!(next(&table), "IV27-0500");
    assert_eq!(table.book.second_device(), None);
    let varga = table.book.device().person.expect("named");
    let event = table.event("2027-07-02", varga, |_| {});
    table.vial(event, "IV27-0500", "Flies", None);
    assert_eq!(next(&table), "IV27-0501");
    let on_the_phone =
        DeviceSettings { numbering: Some(phone), numberings: vec![phone], ..table.book.device().clone() };
    table.book.set_device(on_the_phone);
    assert_eq!(table.book.second_device(), None);
    assert_eq!(next(&table), "IV27-0155", "the phone passes over the desk's range");
}

#[test]
fn letters_and_ranges_of_others_are_refused() {
    let (mut table, _) = second_of_varga();
    let varga = table.book.device().person.expect("named");
    table.numbering(varga, "IV27-", |edit| {
        edit.put(&numbering::LETTER, &"B".to_owned());
    });
    table.numbering(varga, "IV27-", |edit| {
        edit.put(&numbering::RANGE, &(500_u32, 999_u32));
    });
    assert_eq!(take(&mut table, &Own::Letter("B".into())), Err(Refused::LetterTaken));
    assert_eq!(take(&mut table, &Own::Letter("7".into())), Err(Refused::NotALetter));
    assert_eq!(take(&mut table, &Own::Range("900".into(), "1200".into())), Err(Refused::RangeTaken));
    assert_eq!(take(&mut table, &Own::Range("9".into(), "1".into())), Err(Refused::NotARange));
    let second = table.book.second_device().expect("still to be taken");
    assert_eq!((second.letter.as_str(), second.from.as_str()), ("C", "1000"));
}

#[test]
fn a_device_for_reading_takes_no_numbers_and_a_new_phone_goes_on_for_the_old() {
    let (mut table, phone) = second_of_varga();
    assert_eq!(take(&mut table, &Own::Nothing), Ok(()));
    assert_eq!((table.book.next_number(), table.book.second_device()), (Next::None, None));
    let (mut table, _) = second_of_varga();
    assert_eq!(take(&mut table, &Own::InItsPlace), Ok(()));
    assert_eq!(table.book.device().numbering, Some(phone));
    assert_eq!(next(&table), "IV27-0155");
    assert_eq!(table.book.second_device(), None);
}

#[test]
fn of_two_devices_that_began_alike_the_later_one_gives_way() {
    let mut table = Table::new();
    let varga = table.person("I. Varga");
    let earlier = table.numbering(varga, "IV27-", |_| {});
    let later = table.numbering(varga, "IV27-", |_| {});
    let mut gives_way = |own: Id| {
        let device = DeviceSettings { person: Some(varga), numbering: Some(own), ..DeviceSettings::default() };
        table.book.set_device(device);
        table.book.second_device().is_some()
    };
    assert!(!gives_way(earlier));
    assert!(gives_way(later));
}

#[test]
fn rules_are_kept_and_what_is_out_of_reason_is_refused() {
    let mut table = Table::new();
    name(&mut table, "I. Varga");
    assert_eq!(table.book.rules(), Rules::default());
    let form = RulesForm {
        sheet: "letter".into(),
        radius_limit: "30".into(),
        spares: "2".into(),
        ..table.book.rules().form()
    };
    let deed = table.with_ids(|book, ids| book.set_rules(&form, ids)).expect("within reason");
    assert_eq!(deed.what, What::Setup);
    table.save(&deed);
    let rules = table.book.rules();
    assert_eq!((rules.card((0, 0)).size_mm, rules.radius_limit_m, rules.spares), ((215.9, 279.4), 30.0, 2));
    assert_eq!(table.book.setup(2027).rules, form);
    let form = RulesForm { width: "2".into(), spares: "500".into(), radius_limit: "far".into(), ..form };
    let refused = table.with_ids(|book, ids| book.set_rules(&form, ids)).expect_err("out of reason");
    assert_eq!(refused.len(), 3);
    assert_eq!(table.book.all(&Kind::Rules).len(), 1);
}

#[test]
fn cards_pins_and_sizes_of_ones_own_reach_the_press() {
    let mut table = Table::new();
    name(&mut table, "I. Varga");
    let usual = table.book.rules();
    assert_eq!(usual.style(LabelKind::Host).pin_at, ports::press::PinAt::Middle);
    assert_eq!(usual.card((0, 0)), ports::press::Card::fresh(ports::press::Paper::A4));
    let mut form = RulesForm {
        sheet: "card".into(),
        card_width: "120".into(),
        card_height: "80,5".into(),
        margin: "6".into(),
        pin: "000".into(),
        pin_at: "end".into(),
        least: "3".into(),
        heights: ["24", "18", "12"].map(str::to_owned),
        ..usual.form()
    };
    form.sizes[0].1 = "55".into();
    let kind = form.sizes[0].0;
    let deed = table.with_ids(|book, ids| book.set_rules(&form, ids)).expect("within reason");
    table.save(&deed);
    let rules = table.book.rules();
    let card = rules.card((1, 2));
    assert_eq!((card.size_mm, card.margin_mm), ((120.0, 80.5), 6.0));
    assert_eq!((card.used_down_mm, card.used_across_mm), (8.0, 36.0));
    let pinned = rules.style(LabelKind::Collection);
    assert_eq!(pinned.pin_at, ports::press::PinAt::Left);
    assert!((pinned.format.pin_mm - 0.85).abs() < 1e-9, "0.25 mm and 0.3 mm on both sides");
    assert_eq!(pinned.format.type_least_pt, 3.5, "no type is smaller");
    let loose = rules.style(kind);
    assert_eq!((loose.format.width_mm, loose.format.pin_mm, loose.pin_at), (55.0, 0.0, ports::press::PinAt::Middle));
    assert_eq!(rules.heights_mm, [24.0, 18.0, 12.0]);
    assert!(!rules.sizes.contains_key(form.sizes[1].0.code()), "what is as usual is not kept");
}

#[test]
fn those_who_come_along_are_kept_in_order() {
    let mut table = Table::new();
    name(&mut table, "I. Varga");
    let team = |table: &mut Table, names: &[&str]| {
        let names: Vec<String> = names.iter().map(|name| (*name).to_owned()).collect();
        let deed = table.with_ids(|book, ids| book.set_team(&names, ids));
        table.save(&deed);
        table.book.team()
    };
    assert_eq!(team(&mut table, &["D. Okoro", "S. Lind", " "]), ["D. Okoro", "S. Lind"]);
    assert_eq!(team(&mut table, &["S. Lind", "d. okoro", "I. Varga"]), ["S. Lind", "D. Okoro"]);
    assert_eq!(team(&mut table, &["S. Lind"]), ["S. Lind"]);
    assert_eq!(table.book.all(&Kind::Person).len(), 3);
}

#[test]
fn type_can_be_let_go_down_to_the_smallest_once() {
    let mut table = Table::new();
    table.own("I. Varga", "IV26-");
    let form = table.book.rules().with_smallest_type().expect("it stops at 4 pt");
    let deed = table.with_ids(|book, ids| book.set_rules(&form, ids)).expect("within reason");
    table.save(&deed);
    let format = table.book.rules().format(LabelKind::Collection);
    assert_eq!((format.type_largest_pt, format.type_least_pt), (5.0, 3.5));
    assert_eq!(table.book.rules().with_smallest_type(), None);
}
