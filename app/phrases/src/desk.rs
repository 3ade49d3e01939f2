//! The areas of looking over and handing on: which sentences there are.

use crate::sentences::area;
use chrono::NaiveDate;

/// Events of a day that are drawn as one spot.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The site's name; empty where none is written.
    pub site: String,
    /// Orders of the events.
    pub orders: Vec<usize>,
    /// Metres from the first spot, and the direction in eighths of a turn from north by east; `None` for the first.
    pub from_first: Option<(f64, usize)>,
}

area! {
    /// What several of these screens say.
    Desk {
        rows_before;
        here;
        empty_value;
        yes;
        no;
        unknown_value;
        deleted_value;
        on_device(device: &str);
        content(count_kind: &str, count: Option<u32>, group: &str, sex: &str, stage: &str);
        no_contents;
        kilobytes(bytes: usize);
        heard_label(kind: &str, lines: &[String], above: usize);
        label_kind(code: &str);
        label_kinds(code: &str);
        label_of(kind: &str, item: &str);
        long(text: &str, by_mm: f64, type_pt: f64);
        high(by_mm: f64);
        glyph(letter: char);
        too_large_for_sheet(by_mm: f64);
        press_gone;
        press_gone_do(reason: &str);
    }
}

area! {
    /// The days, and one day.
    Day {
        days;
        days_events(count: usize);
        days_total(days: usize, events: usize);
        days_none;
        days_none_says;
        month(day: NaiveDate);
        day_of_month(day: NaiveDate);
        go_to;
        import;
        turn;
        in_order;
        where_head;
        map_title;
        map(places: &[Place], extent_m: f64, without: &[usize]);
        map_touch;
        map_keys;
        map_held;
        map_leave;
        map_closer;
        map_wider;
        map_all;
        map_shows(across_m: f64, shown: usize, of: usize);
        map_middle(site: &str, orders: &[usize]);
        map_here(count: usize);
        map_event(order: usize, site: &str);
        map_coast;
        map_track(name: &str, metres: f64);
        map_track_away;
        map_track_gone(name: &str);
        map_track_again;
        parallel(degrees: f64, decimals: usize);
        meridian(degrees: f64, decimals: usize);
        north;
        without(orders: &[usize]);
        none_placed;
        counts;
        by_method;
        by_host;
        no_host;
        bar_count;
        drawn;
        others(count: usize);
        export;
        search;
        empty;
        empty_says;
        nothing_caught;
        from_notes;
        days_how_1;
        days_how_2;
        how_1;
        how_2;
        how_3;
        how_4;
    }
}

area! {
    /// Search.
    Search {
        title;
        label;
        show;
        all;
        events;
        containers;
        sites;
        persons;
        found(count: usize);
        nothing_found;
        count_events(count: usize);
        count_containers(count: usize);
        count_sites(count: usize);
        count_persons(count: usize);
        more_events(count: usize);
        more_containers(count: usize);
        more_sites(count: usize);
        more_persons(count: usize);
        not_shown(count: usize);
        with(names: &str);
        also_written(spellings: &str);
        at_events(count: usize);
        nothing(text: &str);
        looked(events: usize, containers: usize, sites: usize, persons: usize);
        like;
        ask;
        how_1;
        how_2;
    }
}

area! {
    /// What leaves the device.
    Export {
        title;
        only_here(events: usize);
        all_left;
        what;
        day;
        chosen;
        not_exported;
        all;
        which_day;
        goes_day(day: NaiveDate);
        goes_chosen(count: usize);
        goes_not_exported;
        goes_all;
        events;
        containers;
        deleted;
        day_says;
        deleted_says;
        whole_says;
        along;
        along_list(sites: usize, persons: usize, numberings: usize, permits: usize, others: usize);
        along_says;
        file;
        file_says(bytes: usize);
        making;
        opening;
        nothing;
        nothing_new;
        nothing_chosen;
        coarse;
        coarse_not;
        coarse_to(degrees: &str);
        coarse_by_radius;
        coarse_radius;
        coarse_radius_says(metres: f64);
        coarse_no_radius;
        coarse_says;
        copied;
        ways;
        share;
        share_says;
        save;
        save_says;
        save_do;
        download;
        download_says;
        share_main(events: usize);
        save_main(events: usize);
        download_main(events: usize);
        left(events: usize);
        left_says;
        closed;
        refused;
        refused_do(reason: &str);
        unmarked;
        downloaded(name: &str);
        downloaded_says(records: usize);
        elsewhere;
        find;
        choose_shown(count: usize);
        choose_none;
        list;
        how_1;
        how_2;
        how_3;
    }
}

area! {
    /// What comes in.
    Import {
        title;
        drop_here;
        pick_says;
        track_title;
        track_points(points: usize, fixes: usize);
        track_faults(count: usize, line: u64, code: &str, early: bool);
        track_empty;
        track_ahead;
        track_ahead_says;
        track_offers(count: usize);
        track_none;
        track_between(minutes: u64, metres: u64);
        track_before(minutes: u64);
        track_after(minutes: u64);
        track_faster;
        track_take(count: usize, keeps: bool);
        track_keep;
        track_keep_says;
        track_says;
        pick;
        reading(name: &str);
        writing;
        log_of(person: &str);
        unnamed_log;
        nothing_yet;
        added;
        changed;
        known;
        conflicts;
        twice;
        the_file;
        from;
        unnamed;
        on_at(device: &str, day: NaiveDate, clock: &str);
        days;
        days_span(from: NaiveDate, to: NaiveDate);
        file;
        whole(records: usize);
        conflicts_head(count: usize);
        conflicts_says(changed: usize);
        twice_head(count: usize);
        twice_says;
        added_head(count: usize);
        more_added(events: usize, containers: usize, others: usize);
        changed_head(count: usize);
        changed_more;
        deleted_says(count: usize);
        known_says(count: usize);
        all_known;
        refuse;
        accept(count: usize);
        another;
        theirs;
        done(count: usize);
        done_from(person: &str);
        done_nothing;
        done_says;
        waits;
        pick_value;
        compare;
        can_wait;
        nothing_waits;
        undo_head;
        undo_says;
        undo_where;
        undo_strip(added: usize, changed: usize);
        undone;
        undone_says;
        go_on;
        empty_file;
        not_json(line: usize);
        not_ours;
        broken_header(line: usize);
        newer(version: u64);
        cut_off(line: usize);
        checksum;
        count(said: usize, found: usize);
        broken_record(line: usize, why: &str);
        why_not_json(column: usize);
        why_no_kind;
        why_no_id;
        why_no_versions;
        why_twice(field: &str);
        why_alone(field: &str);
        why_seen(field: &str);
        share_copy;
        share_copy_do;
        other_book;
        other_book_do;
        refused_do;
        cut_off_do;
        newer_do;
        courier;
        courier_do(reason: &str);
        garbled;
        garbled_do;
        nothing_to_undo;
        how_1;
        how_2;
        how_3;
    }
}

area! {
    /// Two people's values for one field.
    Conflict {
        title(field: &str);
        index(at: usize, of: usize);
        says;
        the_event;
        values(count: usize);
        keep;
        other_ways;
        write_another;
        later;
        next;
        clocks;
        agrees;
        others(count: usize);
        none;
        none_says;
        unnamed;
        at(day: NaiveDate, clock: &str);
        how_1;
        how_2;
    }
}
