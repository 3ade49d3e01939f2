//! The main job through the driver, over ports answered from memory: every name and place is invented.

mod world;

use logbook::form::ContentForm;
use logbook::view::{Mark, Next};
use logbook::{SaveFault, Selection};
use ports::files::Left;
use ports::memory::block_on;
use ports::store::StoreFault;
use world::{Tab, ids, saving};

fn content(group: &str, count: &str) -> ContentForm {
    ContentForm { group: group.into(), count_kind: "exact".into(), count: count.into(), ..ContentForm::default() }
}

/// A first catch: Tarn Abbot, three hover flies in the first vial.
fn first_catch(tab: &Tab) -> logbook::form::CatchForm {
    let mut form = tab.read(|book| book.new_catch(tab.now()));
    form.site = "Mill Meadow".into();
    form.method = "hand_net".into();
    form.open = false;
    form.place.latitude = Some(47.613_84);
    form.place.longitude = Some(12.304_27);
    form.place.radius = "8".into();
    form.containers[0].contents = vec![content("Hover flies", "3")];
    form
}

fn save(tab: &Tab, form: &logbook::form::CatchForm) -> logbook::Saved {
    let deed = tab.read(|book| book.save_catch(form, &saving(tab), &mut ids(tab))).expect("the span can be read");
    block_on(tab.driver.save(deed)).expect("saved")
}

#[test]
fn a_catch_is_there_after_the_page_was_killed() {
    let phone = world::phone(1);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    drop(tab);
    let again = Tab::open(&phone);
    let start = again.read(|book| book.start(again.now()));
    assert_eq!((start.events, start.only_here), (1, 1));
    let today = again.read(|book| book.today(again.now()));
    assert_eq!(today.tally.containers, 1);
    let line = &today.newest[0];
    assert_eq!((line.site.as_str(), line.numbers[0].first.as_str()), ("Mill Meadow", "0001"));
    assert_eq!(line.collectors, ["I. Varga"]);
}

#[test]
fn a_repeat_catch_is_filled_but_for_its_host() {
    let phone = world::phone(2);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    let mut form = first_catch(&tab);
    form.host.relation = "flower".into();
    form.host.thing = "Heracleum sphondylium".into();
    save(&tab, &form);
    phone.clock.advance(20 * 60_000);
    let next = tab.read(|book| book.new_catch(tab.now()));
    assert_eq!((next.site.as_str(), next.method.as_str()), ("Mill Meadow", "hand_net"));
    assert_eq!(next.containers[0].first, "IV27-0002");
    assert!(next.host.is_empty());
    assert!(next.collectors[0].there);
    let offers = tab.read(|book| book.offers(&next));
    assert_eq!(offers.groups[0].text, "Hover flies");
}

#[test]
fn a_full_disk_is_told_and_nothing_is_lost() {
    let phone = world::phone(3);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    phone.disk.fail(ports::memory::store::Fault::Full);
    let form = first_catch(&tab);
    let deed = tab.read(|book| book.save_catch(&form, &saving(&tab), &mut ids(&tab))).expect("the span can be read");
    assert_eq!(block_on(tab.driver.save(deed)).err(), Some(SaveFault::Store(StoreFault::Full)));
    assert_eq!(tab.read(|book| book.start(tab.now()).events), 0);
    phone.disk.heal();
    save(&tab, &form);
    assert_eq!(tab.read(|book| book.start(tab.now()).events), 1);
}

#[test]
fn a_deleted_event_comes_back_with_its_containers() {
    let phone = world::phone(4);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let id = tab.read(|book| book.today(tab.now()).newest[0].id);
    let gone = block_on(tab.driver.save(tab.read(|book| book.delete_event(id)))).expect("deleted");
    assert_eq!(tab.read(|book| book.start(tab.now()).events), 0);
    block_on(tab.driver.save(gone.undo)).expect("undone");
    let tally = tab.read(|book| book.today(tab.now()).tally);
    assert_eq!((tally.events, tally.containers), (1, 1));
}

#[test]
fn a_day_travels_to_the_desk_and_back_without_change() {
    let phone = world::phone(5);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let day = tab.read(|book| book.start(tab.now()).today);
    let out = block_on(tab.driver.prepare(Selection::Day(day))).expect("a day with one event");
    assert_eq!((out.counts.events, out.counts.containers, out.counts.persons), (1, 1, 1));
    assert!(block_on(tab.driver.has_left(&out, &Left::Shared)).expect("noted"));
    assert_eq!(tab.read(|book| book.start(tab.now()).only_here), 0);

    let desk = Tab::open(&world::phone(6));
    let preview = block_on(desk.driver.plan_import(out.file.clone())).expect("a whole file");
    assert_eq!((preview.events.added, preview.counts.changed), (1, 0));
    block_on(desk.driver.accept(preview)).expect("imported");
    let there = desk.read(|book| book.day(day));
    assert_eq!(there.events[0].numbers[0].first, "0001");
    let again = block_on(desk.driver.plan_import(out.file)).expect("the same file");
    assert_eq!((again.counts.added, again.counts.changed), (0, 0));
    assert_eq!(desk.read(|book| book.start(desk.now()).only_here), 0, "what came in a file is not only here");
}

#[test]
fn a_download_counts_only_once_a_copy_is_elsewhere() {
    let phone = world::phone(7);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let out = block_on(tab.driver.prepare(Selection::All)).expect("one event");
    assert!(!block_on(tab.driver.has_left(&out, &Left::Downloaded)).expect("noted"));
    assert_eq!(tab.read(|book| book.start(tab.now()).only_here), 1);
    let waiting = block_on(tab.driver.downloads_waiting()).expect("read");
    block_on(tab.driver.copy_is_elsewhere(&waiting[0].name)).expect("noted");
    assert_eq!(tab.read(|book| book.start(tab.now()).only_here), 0);
}

#[test]
fn an_import_can_be_taken_back_and_what_was_edited_since_stays() {
    let phone = world::phone(8);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let out = block_on(tab.driver.prepare(Selection::All)).expect("one event");
    let desk = Tab::open(&world::phone(9));
    desk.name("D. Okoro");
    let mut own = first_catch(&desk);
    own.site = "Kestrel Wood".into();
    save(&desk, &own);
    let preview = block_on(desk.driver.plan_import(out.file)).expect("whole");
    block_on(desk.driver.accept(preview)).expect("imported");
    assert_eq!(desk.read(|book| book.start(desk.now()).events), 2);
    block_on(desk.driver.undo_import()).expect("taken back");
    let today = desk.read(|book| book.today(desk.now()));
    assert_eq!((today.tally.events, today.newest[0].site.as_str()), (1, "Kestrel Wood"));
}

#[test]
fn two_tabs_never_write_under_one_session() {
    let phone = world::phone(10);
    let first = Tab::open(&phone);
    first.name("I. Varga");
    save(&first, &first_catch(&first));
    let second = Tab::open(&phone);
    save(&second, &first_catch(&second));
    phone.hall.pump();
    assert_eq!(first.read(|book| book.start(first.now()).events), 2, "the first tab follows");
    save(&first, &first_catch(&first));
    phone.hall.pump();
    assert_eq!(second.read(|book| book.start(second.now()).events), 3);
    let numbers: Vec<String> = second
        .read(|book| book.day(book.start(second.now()).today))
        .events
        .iter()
        .map(|line| line.numbers[0].first.clone())
        .collect();
    assert_eq!(numbers.len(), 3);
}

#[test]
fn many_saves_are_folded_and_nothing_is_lost() {
    let phone = world::phone(11);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    for _ in 0..450 {
        let mut form = tab.read(|book| book.new_catch(tab.now()));
        form.site = "Mill Meadow".into();
        save(&tab, &form);
        if tab.driver.should_fold() {
            block_on(tab.driver.fold());
        }
    }
    assert!(phone.disk.with("own", |book| book.journal.len()) < 400, "the journal was folded");
    let again = Tab::open(&phone);
    assert_eq!(again.read(|book| book.start(again.now()).events), 450);
    let Next::Number(next) = again.read(logbook::Logbook::next_number) else { panic!("a number is proposed") };
    assert_eq!(next.run, "0451");
}

#[test]
fn writing_up_later_stamps_neither_place_nor_hour() {
    let phone = world::phone(12);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    let mut form = first_catch(&tab);
    form.caught_otherwise();
    form.caught.clock = "10:05".into();
    assert!(form.place.coordinates().is_none());
    save(&tab, &form);
    let line = tab.read(|book| book.today(tab.now()).newest[0].clone());
    assert_eq!(line.clock, "10:05");
    assert!(line.marks.contains(&Mark::Coordinates));
}

#[test]
fn only_what_was_changed_is_written() {
    let phone = world::phone(13);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let id = tab.read(|book| book.today(tab.now()).newest[0].id);
    let mut form = tab.read(|book| book.catch_of(id)).expect("a saved event");
    form.weather = "sunny".into();
    let saved = save(&tab, &form);
    assert_eq!(saved.records.len(), 1, "the containers and the site were not touched");
    let record = tab.read(|book| book.record(id)).expect("there");
    let newest = record
        .fields
        .values()
        .flatten()
        .filter(|version| version.dot.number == saved.records[0].seen.of(&version.dot.replica))
        .count();
    assert_eq!(newest, 1);
}

#[test]
fn an_import_is_worked_out_once_unless_the_book_has_changed() {
    let phone = world::phone(14);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let out = block_on(tab.driver.prepare(Selection::All)).expect("one event");
    let desk = Tab::open(&world::phone(15));
    desk.name("D. Okoro");
    let asked = desk.questions();
    let preview = block_on(desk.driver.plan_import(out.file.clone())).expect("whole");
    block_on(desk.driver.accept(preview)).expect("imported");
    assert_eq!(desk.questions() - asked, 1, "nothing had changed between preview and import");
    block_on(desk.driver.undo_import()).expect("taken back");
    let preview = block_on(desk.driver.plan_import(out.file)).expect("whole");
    save(&desk, &first_catch(&desk));
    let asked = desk.questions();
    block_on(desk.driver.accept(preview)).expect("imported on top of what was saved meanwhile");
    assert_eq!(desk.questions() - asked, 1);
    assert_eq!(desk.read(|book| book.start(desk.now()).events), 2);
}

#[test]
fn who_uses_the_device_is_known_even_when_its_small_texts_are_lost() {
    let phone = world::phone(16);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    for name in tab.driver.ports.draft.names("glassine/") {
        tab.driver.ports.draft.remove(&name);
    }
    let again = Tab::open(&phone);
    let form = again.read(|book| book.new_catch(again.now()));
    assert_eq!((form.containers[0].first.as_str(), form.collectors[0].name.as_str()), ("IV27-0001", "I. Varga"));
}

#[test]
fn a_tab_that_slept_never_writes_over_what_another_wrote() {
    let out = |seed: u64, person: &str| {
        let tab = Tab::open(&world::phone(seed));
        tab.name(person);
        save(&tab, &first_catch(&tab));
        block_on(tab.driver.prepare(Selection::All)).expect("one event").file
    };
    let (one, other) = (out(21, "D. Okoro"), out(22, "S. Thorne"));
    let phone = world::phone(20);
    let first = Tab::open(&phone);
    first.name("I. Varga");
    let preview = block_on(first.driver.plan_import(one.clone())).expect("whole");
    save(&first, &first_catch(&first));
    let second = Tab::open(&phone);
    let look = phone.clone();
    first.meanwhile(move || {
        let preview = block_on(second.driver.plan_import(other)).expect("whole");
        block_on(second.driver.accept(preview)).expect("the sleeper's lock is taken");
    });
    assert!(block_on(first.driver.accept(preview)).is_err(), "blocks were written since this tab last looked");
    let events = || {
        let tab = Tab::open(&look);
        tab.read(|book| book.start(tab.now()).events)
    };
    assert_eq!(events(), 2, "what the second tab wrote stands");
    let preview = block_on(first.driver.plan_import(one)).expect("whole");
    block_on(first.driver.accept(preview)).expect("on top of what the other wrote");
    assert_eq!(events(), 3);
}

/// A walk of half an hour, a fix a second and metre: invented.
fn walk(from_ms: i64) -> logbook::track::Read {
    let step = |second: i64| place::track::Fix {
        position: place::Position::new(47.6 + second as f64 / 111_195.0, 12.3, None).expect("a position"),
        at: place::instant::Instant::new(from_ms + second * 1_000).expect("a time of this century"),
    };
    let track = place::track::Track::new((0..1_800).map(step).collect());
    logbook::track::Read { file: "walk.gpx".to_owned(), track, ..logbook::track::Read::default() }
}

#[test]
fn a_track_is_kept_on_the_device_until_it_is_let_go_and_leaves_with_no_file() {
    let phone = world::phone(9);
    let tab = Tab::open(&phone);
    tab.name("I. Varga");
    save(&tab, &first_catch(&tab));
    let noon = tab.now().unix_ms - 3_600_000;
    block_on(tab.driver.keep_track(&walk(noon).to_keep(60).expect("a way"))).expect("kept");
    let at = |ms| place::instant::Instant::new(ms).expect("a time of this century");
    let then = (at(noon), at(noon + 7_200_000));
    let again = Tab::open(&phone);
    let kept = block_on(again.driver.kept_tracks(then)).expect("read");
    let [kept] = &kept[..] else { panic!("one track: {}", kept.len()) };
    assert_eq!((kept.name.as_str(), kept.track.span().expect("fixes").0), ("walk.gpx", at(noon + 60_000)));
    assert!((300..=450).contains(&kept.track.len()), "a fix every five metres: {}", kept.track.len());
    let later = (at(noon + 86_400_000), at(noon + 90_000_000));
    assert_eq!(block_on(again.driver.kept_tracks(later)), Ok(Vec::new()));
    let file = block_on(tab.driver.prepare(Selection::All)).expect("a file").file;
    assert!(!String::from_utf8(file.bytes).expect("text").contains("walk.gpx"));
    phone.disk.fail(ports::memory::store::Fault::Full);
    assert_eq!(block_on(tab.driver.forget_track(&kept.key)), Err(StoreFault::Full));
    phone.disk.heal();
    block_on(tab.driver.forget_track(&kept.key)).expect("let go");
    assert_eq!(block_on(again.driver.kept_tracks(then)), Ok(Vec::new()));
}

/// What the stand-in for the press says of a font file: its bytes are its family, and a `!` before them shuts it.
fn font_says(bytes: &[u8]) -> Option<ports::press::FontSays> {
    let text = std::str::from_utf8(bytes).ok().filter(|text| !text.is_empty())?;
    let (family, may_embed) = text.strip_prefix('!').map_or((text, true), |family| (family, false));
    Some(ports::press::FontSays { family: family.trim().to_owned(), characters: 5, may_embed })
}

fn font_file(bytes: &[u8]) -> ports::files::File {
    ports::files::File { name: "own.ttf".to_owned(), media: "font/ttf".to_owned(), bytes: bytes.to_vec() }
}

#[test]
fn a_font_is_added_only_once_the_press_has_said_that_it_may_be() {
    use logbook::fonts::FontRefused;
    let phone = world::phone(10);
    let page = phone.page();
    page.press.say_of_fonts(|bytes| Ok(font_says(&bytes)));
    let tab = Tab::over(&page);
    let add = |bytes: &[u8]| block_on(tab.driver.add_font(font_file(bytes)));
    assert_eq!(add(b""), Err(FontRefused::NoFont("own.ttf".to_owned())));
    assert_eq!(add(b"!Shut Sans"), Err(FontRefused::Shut("Shut Sans".to_owned())));
    phone.disk.fail(ports::memory::store::Fault::Full);
    assert_eq!(add(b"Boxes"), Err(FontRefused::Store(StoreFault::Full)));
    phone.disk.heal();
    assert_eq!((block_on(tab.driver.own_fonts()), page.press.changes()), (Ok(Vec::new()), 0));
    let boxes = add(b"Boxes").expect("added");
    assert_eq!((boxes.family.as_str(), boxes.characters), ("Boxes", 5));
    assert_eq!(add(b" ").expect("added").family, "own.ttf", "what has no name is called as its file");
    assert_eq!(add(b"Boxes"), Ok(boxes.clone()), "the same again stands in its own place");
    assert_eq!(block_on(Tab::open(&phone).driver.own_fonts()).expect("read").len(), 2);
    block_on(tab.driver.take_font_away(&boxes.key)).expect("taken away");
    assert_eq!(block_on(tab.driver.own_fonts()).expect("read").len(), 1);
    assert_eq!(page.press.changes(), 4);
}
