//! A form over time: "now" follows the clock while it is open, and no longer once it was set aside.

use crate::form::{CatchForm, PlaceForm, Source};
use crate::moment::{self, day_text, read_clock, read_day};
use ports::device::Moment;

/// A form that was left for longer than so many minutes is no longer about now.
const STALE_MIN: i64 = 10;

impl CatchForm {
    /// The clock has gone on while the form is open.
    pub fn tick(&mut self, now: Moment) {
        if self.caught.now {
            let local = moment::local(now);
            self.caught.day = day_text(local.date());
            self.caught.clock = moment::clock_text(local.time());
        }
    }

    /// The form is opened again. One that was left for a while is still about the moment at which it was left: its
    /// time stays, and so does the position it had; the device must not write the evening's place into it.
    pub fn resume(&mut self, now: Moment) {
        if !self.caught.now || self.minutes_since(now).is_some_and(|minutes| (0..=STALE_MIN).contains(&minutes)) {
            return;
        }
        self.caught.now = false;
        if self.place.source == Source::Here {
            let found = self.place.coordinates().is_some();
            self.place = if found {
                PlaceForm { source: Source::Kept, ..std::mem::take(&mut self.place) }
            } else {
                PlaceForm::default()
            };
        }
    }

    fn minutes_since(&self, now: Moment) -> Option<i64> {
        let left = read_day(&self.caught.day)?.and_time(read_clock(&self.caught.clock)?);
        Some((moment::local(now) - left).num_minutes())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prefill::caught_now;

    const AFTERNOON: Moment = Moment { unix_ms: 1_813_408_325_000, offset_minutes: 120 };

    fn later(minutes: i64) -> Moment {
        Moment { unix_ms: AFTERNOON.unix_ms + minutes * 60_000, ..AFTERNOON }
    }

    fn form() -> CatchForm {
        let place =
            PlaceForm { source: Source::Here, latitude: Some(47.0), longitude: Some(12.0), ..PlaceForm::default() };
        CatchForm { caught: caught_now(AFTERNOON), place, ..CatchForm::default() }
    }

    #[test]
    fn now_follows_the_clock() {
        let mut form = form();
        form.tick(later(3));
        assert_eq!(form.caught.clock, "14:35");
    }

    #[test]
    fn a_form_left_for_hours_keeps_its_time_and_its_place() {
        let mut form = form();
        form.resume(later(300));
        assert!(!form.caught.now);
        assert_eq!((form.caught.clock.as_str(), form.place.source), ("14:32", Source::Kept));
        assert_eq!(form.place.coordinates(), Some((47.0, 12.0)));
    }

    #[test]
    fn a_form_left_without_a_fix_gets_none_later() {
        let mut form = CatchForm { place: PlaceForm { source: Source::Here, ..PlaceForm::default() }, ..form() };
        form.resume(later(300));
        assert_eq!(form.place.source, Source::None);
    }

    #[test]
    fn a_form_opened_again_at_once_is_still_about_now() {
        let mut form = form();
        form.resume(later(2));
        assert!(form.caught.now);
        assert_eq!(form.place.source, Source::Here);
    }

    #[test]
    fn a_clock_that_went_back_does_not_make_it_now() {
        let mut form = form();
        form.resume(later(-300));
        assert!(!form.caught.now);
    }
}
