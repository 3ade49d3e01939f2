//! Sun and moon.

use super::English;
use crate::sentences::say;

say! { English says Sky {
    sky: "Sky";
    sunset(clock: &str): format!("sunset {clock}");
    sunrise(clock: &str): format!("sunrise {clock}");
    dark(from: &str, until: &str): format!("dark {from} to {until}");
    no_dark: "twilight all night";
    sun_stays_up: "the sun does not set";
    sun_stays_down: "dark all day";
    now: "now";
    before_sunset(minutes: u64): format!("{} before sunset", lasting(minutes));
    after_sunset(minutes: u64): format!("{} after sunset", lasting(minutes));
    before_sunrise(minutes: u64): format!("{} before sunrise", lasting(minutes));
    after_sunrise(minutes: u64): format!("{} after sunrise", lasting(minutes));
    moon(percent: u32, phase: &str, up: bool): format!("moon {percent} %, {}, {}", phase_words(phase), if up { "up" } else { "down" });
    dark_says: "Dark: the sun is more than 6° below a free horizon at sea level. Worked out, not seen: hills and clouds are not in it.";
} }

fn lasting(minutes: u64) -> String {
    match (minutes / 60, minutes % 60) {
        (0, rest) => format!("{rest} min"),
        (hours, 0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest} min"),
    }
}

fn phase_words(code: &str) -> &str {
    match code {
        "new" => "new",
        "waxing_crescent" => "waxing crescent",
        "first_quarter" => "first quarter",
        "waxing_gibbous" => "waxing, over half",
        "full" => "full",
        "waning_gibbous" => "waning, over half",
        "last_quarter" => "last quarter",
        "waning_crescent" => "waning crescent",
        other => other,
    }
}
