//! The areas: which sentences there are. What they say stands with each language.

pub use crate::bench::{Bench, Labels, Setup};
pub use crate::desk::{Conflict, Day, Desk, Export, Import, Search};
pub use crate::field::{Container, Event, Open, Site, Sky};
use crate::sentences::area;
use chrono::NaiveDate;

area! {
    /// The frame of every screen.
    Frame {
        title(screen: &str);
        skip;
        places;
        field;
        days;
        bench;
        labels;
        setup;
        back;
        undo;
        later;
        save;
        cancel;
        delete;
        change;
        add;
        use_this;
        unknown;
        unknown_of(row: &str);
        more;
        missing;
        how;
        kept_as_typed;
        set_aside;
        update_waits;
        update_now;
        update_after;
        update_calm_now;
        opening(done: usize, of: usize);
        fetching;
        not_found;
        not_found_says;
        to_field;
        which_book;
        sample_name;
        sample_says;
        own_book;
        throw_away;
        throw_away_says(events: usize);
        throw_away_do;
        keep_sample;
        number_keys;
        rub_out;
        key_to;
        key_now;
        one_fewer;
        one_more;
        more_rows(left: usize);
    }
}

area! {
    /// Dates, hours and counts.
    Dates {
        long(day: NaiveDate);
        middle(day: NaiveDate);
        short(day: NaiveDate);
        roman(day: NaiveDate);
        roman_short(day: NaiveDate);
        known(year: i32, month: Option<u32>, day: Option<u32>);
        number(count: usize);
        way(metres: f64);
        minutes_long(minutes: i64);
        hour_unit;
        minute_unit;
        day_unit(days: i64);
        to;
        until(day: NaiveDate);
        megabytes(bytes: f64);
    }
}

area! {
    /// Words for stored codes. A code that is not known is said as it stands.
    Codes {
        method(code: &str);
        method_with(code: &str, particulars: &[(String, String)]);
        particular(code: &str);
        particular_unit(code: &str);
        relation(code: &str);
        relation_option(code: &str);
        thing(code: &str);
        vessel(code: &str);
        vessel_option(code: &str);
        vessels(code: &str, count: usize);
        killed(code: &str);
        kept(code: &str);
        fluid(code: &str, strength: &str);
        sex(code: &str);
        sex_sign(code: &str);
        stage(code: &str);
        stages(code: &str);
        count_kind(code: &str);
        counted(kind: &str, count: &str);
        link(code: &str);
        habit(code: &str);
        theme(code: &str);
        place_how(code: &str);
        found(code: &str);
    }
}

area! {
    /// What is missing from an event, or to be known.
    Marks {
        open;
        nothing;
        site;
        coordinates;
        radius(metres: f64, limit: f64);
        caught;
        method;
        host;
        collector;
        elevation;
        catch;
        unnumbered(count: usize);
        twice(number: &str);
        conflicts(count: usize);
        write_site;
        write_coordinates;
        write_radius;
        write_caught;
        write_method;
        write_host;
        write_collector;
        write_elevation;
        write_catch;
        write_unnumbered(count: usize);
        stay_on_list;
    }
}

area! {
    /// What went wrong: fact first, then what is safe, then what to do.
    Faults {
        full;
        full_do;
        refused;
        refused_do(reason: &str);
        newer;
        newer_do(found: u32);
        outdated;
        outdated_do;
        taken;
        taken_do;
        cut;
        cut_do(reason: &str);
        opening;
        opening_do;
        not_ours;
        not_ours_do;
        open_failed;
        draft_refused;
        save_again;
        reload;
        read_only_newer;
        read_only_outdated;
        aside(blocks: u32);
        aside_do;
        not_fetched;
        not_fetched_do;
        fetch_again;
        nothing_changed;
        sample;
        sample_do;
    }
}

area! {
    /// The start screen.
    Start {
        title;
        open_now;
        open_for;
        today;
        events;
        containers;
        missing;
        twice;
        whole_day;
        only_here(events: usize);
        only_here_where;
        export;
        new_catch;
        go_on;
        next;
        first;
        next_none;
        next_full;
        empty;
        empty_says;
        no_catch_today;
        load_sample;
        loading_sample;
        import_log;
        set_trap;
        search;
        go_on_site;
        how_1;
        how_2;
        how_3;
    }
}

area! {
    /// The first run, and how a device numbers.
    First {
        title;
        note;
        install;
        install_says;
        install_show;
        install_step_1;
        install_step_2;
        install_step_3;
        name;
        name_field;
        habits;
        storage;
        promised;
        not_promised;
        not_said;
        ask_promise;
        no_backup;
        begin;
        can_wait;
        how_1;
        how_2;
        own_title;
        own_note(person: &str);
        own_says;
        own_legend;
        own_letter;
        own_letter_field;
        own_from;
        own_range;
        own_range_to;
        own_range_count(count: usize);
        own_range_taken(count: usize);
        own_none;
        own_none_says;
        own_both;
        own_both_says;
        own_other;
        own_other_says(number: &str);
        own_this;
        own_take_letter(letter: &str);
        own_take_range(first: &str, last: &str);
        own_take_none;
        own_how;
        own_alone;
        own_place;
        own_place_says;
        own_take_place;
        habit_none;
        refused_name;
        refused_small(least: u32);
        refused_large(most: u32);
        refused_prefix;
        refused_letter;
        refused_letter_taken;
        refused_range;
        refused_range_taken;
    }
}

area! {
    /// The form of a catch.
    Catch {
        title;
        title_change;
        containers;
        add_container;
        nothing_caught;
        nothing_undo;
        nothing_says;
        offered;
        where_when;
        whom;
        site;
        site_here(metres: f64);
        site_new;
        site_make;
        sites_offered;
        position;
        caught;
        caught_now;
        caught_day;
        caught_detaches;
        caught_night;
        night_of;
        until;
        until_day;
        method;
        method_words;
        method_other;
        method_none;
        host;
        host_how;
        host_none;
        host_thing;
        host_hint;
        host_what;
        host_part;
        host_voucher;
        host_named_by;
        host_more;
        hosts_offered;
        collectors;
        collector_more;
        collector_add;
        weather;
        permit;
        permit_until(day: NaiveDate);
        permit_says;
        notes;
        notes_hint;
        elevation;
        elevation_unit;
        elevation_raw(metres: f64);
        elevation_take(metres: i64);
        elevation_sea(metres: i64, plus_minus: Option<u64>);
        elevation_from_sea;
        elevation_from_ellipsoid(raw: f64, undulation: f64);
        elevation_unsure;
        elevation_said;
        elevation_taken;
        height;
        height_unit;
        microhabitat;
        microhabitat_hint;
        station;
        stays_open;
        stays_open_lamp;
        save;
        save_nothing;
        saved(containers: usize);
        saved_nothing;
        saved_changes;
        deleted_event;
        go_on_draft;
        throw_draft;
        lamp_caution;
        how_1;
        how_2;
        how_3;
        how_4;
    }
}

area! {
    /// The position row.
    Place {
        waiting;
        slow;
        unavailable;
        denied;
        radius;
        radius_unit;
        keep;
        kept;
        type_it;
        typed;
        datum;
        datum_hint;
        datum_wgs84;
        datum_known(code: &str, metres: f64);
        datum_unknown(metres: f64);
        typed_hint;
        take_site_point;
        take_here;
        confirm_here;
        detached;
        site_point;
        none;
        fixes(fixes: u32, seconds: u32);
        rings(radii: &[f64]);
        scale(metres: f64);
        notation(code: &str);
        pick;
        pick_says;
        problem(code: &str, value: &str);
    }
}
