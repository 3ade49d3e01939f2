//! What is missing from an event, or to be known.

use super::dates::plain;
use super::{English, counted};
use crate::sentences::say;

say! { English says Marks {
    open: "open";
    nothing: "nothing caught";
    site: "site";
    coordinates: "coordinates";
    radius(metres: f64, limit: f64): format!("±{} m, over your limit of {} m", plain(metres), plain(limit));
    caught: "time of catch";
    method: "method";
    host: "host";
    collector: "collector";
    elevation: "elevation";
    catch: "containers, or “nothing caught”";
    unnumbered(count: usize): counted(count, "container number", "container numbers");
    twice(number: &str): format!("{number} twice");
    conflicts(count: usize): counted(count, "value written by two people", "values written by two people");
    write_site: "Write site";
    write_coordinates: "Write coordinates";
    write_radius: "Better the position";
    write_caught: "Write time of catch";
    write_method: "Write method";
    write_host: "Write host";
    write_collector: "Write collector";
    write_elevation: "Write elevation";
    write_catch: "Add containers";
    write_unnumbered(count: usize): format!("Number {}", counted(count, "container", "containers"));
    stay_on_list: "You can save without them. They stay on the day’s list.";
} }
