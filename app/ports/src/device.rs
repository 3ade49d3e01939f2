//! The clock, chance, and what the device is.

use crate::Later;

/// A moment as the device's own clock tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    /// Milliseconds since 1970 UTC.
    pub unix_ms: i64,
    /// Minutes by which local wall time is ahead of UTC at that moment.
    pub offset_minutes: i32,
}

/// The time port.
pub trait Time {
    /// Now.
    fn now(&self) -> Moment;
    /// The UTC offset, in minutes, that the device's zone has at this local wall time
    /// (year, month 1-12, day, hour, minute).
    fn offset_at(&self, local: (i32, u32, u32, u32, u32)) -> i32;
    /// Resolves after so many milliseconds.
    fn wait(&self, ms: u32) -> Later<'_, ()>;
}

/// The chance port.
pub trait Chance {
    /// Sixteen random bytes.
    fn bytes16(&self) -> [u8; 16];
}

/// What kind of system the page runs on, as far as it matters to heights and installing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Platform {
    /// iPhone or iPad.
    Ios,
    /// Android.
    Android,
    /// Anything else.
    Other,
}

/// What the browser says of our storage.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Storage {
    /// Bytes used, where it says.
    pub used: Option<f64>,
    /// Whether it promised to keep them; `None` where it cannot say or has not answered yet.
    pub promised: Option<bool>,
}

/// The device port.
pub trait Device {
    /// The platform.
    fn platform(&self) -> Platform;
    /// A short plain description for the log file's header ("Android, Chrome 156").
    fn describe(&self) -> String;
    /// True when the page runs as an installed app.
    fn installed(&self) -> bool;
    /// What the browser says of our storage. Never waits longer than two seconds.
    fn storage(&self) -> Later<'_, Storage>;
    /// Asks the browser to promise to keep our storage. Never waits longer than two seconds for the answer.
    fn ask_promise(&self) -> Later<'_, Option<bool>>;
    /// Calls `waiting` when a new version of the app stands ready.
    fn on_update(&self, waiting: Box<dyn Fn()>);
    /// Switches to the new version: the page reloads.
    fn use_update(&self);
    /// A short sign that can be felt, where the device has one.
    fn buzz(&self);
}
