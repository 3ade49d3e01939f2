//! The areas of what is written in the field: forms, open nights, traps and sites.

use crate::sentences::area;
use chrono::NaiveDate;

area! {
    /// Containers and what is in them.
    Container {
        title_add;
        title_change;
        number;
        kind;
        span_label(prefix: &str);
        number_label(prefix: &str);
        first_number;
        last_number;
        to;
        says_count(vessel: &str, count: usize);
        says_free;
        says_taken(numbers: &str, count: usize);
        says_backwards;
        says_first;
        says_last;
        says_prefix;
        says_letters;
        says_too_many(most: usize);
        number_later;
        number_now;
        unnumbered;
        unnumbered_slip;
        no_number;
        how_many;
        in_it;
        in_each;
        add_line;
        drop_line(group: &str);
        group;
        group_other;
        groups_offered;
        sex;
        sex_none;
        stage;
        stage_none;
        count_is(group: &str);
        count;
        nothing_in_it;
        fluids;
        killed;
        kept;
        fluid_none;
        fluid_other;
        fluid_words;
        strength;
        strength_unit;
        alive;
        released;
        released_says;
        own;
        own_collector;
        own_hour;
        own_host;
        own_host_none;
        own_host_says;
        own_from_event;
        links;
        link_add;
        link_number;
        link_how;
        link_drop(number: &str);
        notes;
        add(vessel: &str, count: usize);
        add_plain;
        keep;
        delete;
        deleted;
        changed;
        added(count: usize);
        killed_with(fluid: &str);
        kept_in(fluid: &str);
        fluid_of(fluid: &str, numbers: &str);
        caution_ethyl_acetate;
        caution_cyanide;
        caution_ethanol;
        how_1;
        how_2;
        how_3;
    }
}

area! {
    /// A site.
    Site {
        title_new;
        title;
        names;
        name;
        offset;
        offset_hint;
        offset_from(name: &str);
        take_offset;
        share(code: &str, metres: f64);
        usual(metres: f64);
        locality;
        province;
        country;
        lands;
        land_near;
        habitat;
        point;
        point_says;
        take_here;
        type_it;
        drop;
        near;
        near_line(metres: f64, events: usize);
        says;
        save;
        saved;
        missing_name;
        missing_country;
        missing_locality;
        how_1;
        how_2;
    }
}

area! {
    /// What is still going on: lamps and traps.
    Open {
        add_container;
        lamp_off;
        lamp_off_at(clock: &str);
        service;
        lamp_since(clock: &str, day: Option<NaiveDate>);
        open_since(clock: &str, day: Option<NaiveDate>);
        containers(count: usize);
        due(days: i64);
        lamp_on_for;
        night;
        night_span(on: &str, containers: usize, now: &str);
        traps_span(count: u32);
        next_container;
        caught_at;
        ago(minutes: i64);
        free;
        own_host_says;
        tonight;
        none_yet;
        when_off;
        off_now(clock: &str);
        off_earlier;
        off_hour;
        closes_at(minutes: i64);
        closed;
        close;
        close_at(clock: &str);
        whole_event;
        off_done;
        add(vessel: &str);
        night_how_1;
        night_how_2;
        trap_title;
        trap_in_ground;
        trap_up;
        trap_up_day;
        trap_found;
        trap_set;
        trap_set_day;
        trap_kind;
        trap_own;
        trap_bait;
        trap_fluid;
        trap_opening;
        trap_opening_unit;
        trap_count;
        trap_due;
        trap_due_unit;
        trap_empty;
        trap_empty_says;
        trap_services;
        trap_take_up;
        trap_set_title;
        trap_set_do;
        trap_where;
        trap_stands;
        trap_caution;
        trap_set_done;
        trap_up_done;
        trap_how_1;
        trap_how_2;
    }
}

area! {
    /// A saved event.
    Event {
        untitled;
        order(order: usize, of: usize);
        turn;
        event(order: usize);
        containers;
        no_containers;
        add_container;
        host_head;
        host_change;
        where_head;
        where_change;
        when_head;
        when_change;
        whom_head;
        whom_change;
        nothing_written;
        marked_unknown;
        site;
        position;
        radius_reading(share: u8, most: Option<u64>);
        radius;
        elevation;
        altitude;
        altitude_says;
        height(metres: &str);
        by_device(fixes: u32, seconds: u32);
        caught;
        night_of;
        keep_host;
        keep_where;
        keep_when;
        keep_whom;
        leave;
        who;
        who_line(device: &str, fields: &str);
        clocks;
        picked;
        placed(count: usize);
        pinned(count: usize);
        labelled(count: usize);
        printed(count: usize);
        determined;
        emerged;
        piece;
        mounts(count: usize);
        mount_out;
        arrangement;
        wording;
        setup;
        undone;
        delete;
        deleted_says;
        bring_back;
        bench;
        twice;
        conflicts(count: usize);
        settle;
        own_host;
        released;
        alive;
        emptied(day: &str);
        field(name: &str);
        how_1;
        how_2;
    }
}

area! {
    /// Sun and moon over an event.
    Sky {
        sky;
        sunset(clock: &str);
        sunrise(clock: &str);
        dark(from: &str, until: &str);
        no_dark;
        sun_stays_up;
        sun_stays_down;
        now;
        before_sunset(minutes: u64);
        after_sunset(minutes: u64);
        before_sunrise(minutes: u64);
        after_sunrise(minutes: u64);
        moon(percent: u32, phase: &str, up: bool);
        dark_says;
    }
}
