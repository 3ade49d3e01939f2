//! Search.

use super::dates::grouped;
use super::{English, counted};
use crate::sentences::say;

say! { English says Search {
    title: "Search";
    label: "Search events, containers, sites and persons";
    show: "Show";
    all: "All";
    events: "Events";
    containers: "Containers";
    sites: "Sites";
    persons: "Persons";
    found(count: usize): format!("{} found", grouped(count));
    nothing_found: "nothing found";
    count_events(count: usize): counted(count, "event", "events");
    count_containers(count: usize): counted(count, "container", "containers");
    count_sites(count: usize): counted(count, "site", "sites");
    count_persons(count: usize): counted(count, "person", "persons");
    more_events(count: usize): counted(count, "more event", "more events");
    more_containers(count: usize): counted(count, "more container", "more containers");
    more_sites(count: usize): counted(count, "more site", "more sites");
    more_persons(count: usize): counted(count, "more person", "more persons");
    not_shown(count: usize): format!("{} older ones are not listed. One more word narrows it down.", grouped(count));
    with(names: &str): format!("with {names}");
    also_written(spellings: &str): format!("also written {spellings}");
    at_events(count: usize): counted(count, "event", "events");
    nothing(text: &str): format!("Nothing carries “{text}”.");
    looked(events: usize, containers: usize, sites: usize, persons: usize): format!(
        "Looked through {}, {}, {} and {} on this phone.",
        counted(events, "event", "events"),
        counted(containers, "container", "containers"),
        counted(sites, "site", "sites"),
        counted(persons, "person", "persons")
    );
    like: "Written like it";
    ask: "A number, a place, a plant, a name, a word of your notes.";
    how_1: "All words must stand somewhere in an event, in its containers, its site or its people. Their order does not matter.";
    how_2: "Capitals and accents do not matter either. What is found is underlined.";
} }
