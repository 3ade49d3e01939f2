//! The device's clock and zone, and its random bytes.

use crate::{js, timer};
use js_sys::Date;
use ports::device::Moment;
use ports::{Chance, Later, Time};

/// The clock as the device has it, wrong or right.
pub struct DeviceClock;

impl Time for DeviceClock {
    fn now(&self) -> Moment {
        let date = Date::new_0();
        Moment { unix_ms: date.get_time() as i64, offset_minutes: offset(&date) }
    }

    fn offset_at(&self, (year, month, day, hour, minute): (i32, u32, u32, u32, u32)) -> i32 {
        // Years below 100 would be taken for 19xx: the offset of the year 100 is as good for them.
        let year = u32::try_from(year).unwrap_or(100).max(100);
        let (month, day) = (month as i32 - 1, day as i32);
        offset(&Date::new_with_year_month_day_hr_min(year, month, day, hour as i32, minute as i32))
    }

    fn wait(&self, ms: u32) -> Later<'_, ()> {
        Box::pin(timer::wait(ms))
    }
}

/// Minutes that local time is ahead of UTC; the browser counts the other way round.
fn offset(date: &Date) -> i32 {
    -date.get_timezone_offset() as i32
}

/// The browser's random source.
pub struct DeviceChance;

impl Chance for DeviceChance {
    fn bytes16(&self) -> [u8; 16] {
        let mut bytes = [0; 16];
        js::window()
            .crypto()
            .and_then(|crypto| crypto.get_random_values_with_u8_array(&mut bytes))
            .expect("every browser gives sixteen random bytes");
        bytes
    }
}
