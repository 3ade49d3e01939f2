//! Where the device is: one watch, raw values.

/// One fix as the device gave it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// The radius as reported, metres; what share of positions it encloses differs by platform.
    pub accuracy_m: f64,
    /// Altitude as reported, metres; above what differs by platform.
    pub altitude_m: Option<f64>,
    /// Accuracy of the altitude as reported, metres.
    pub altitude_accuracy_m: Option<f64>,
    /// When the fix was made, milliseconds since 1970 UTC.
    pub at_ms: f64,
}

/// Why there is no fix.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFix {
    /// The person or the system said no.
    Denied,
    /// The device cannot tell at the moment.
    Unavailable,
    /// Nothing came within 30 seconds; the watch goes on.
    Slow,
}

/// A running watch; dropping it ends the watch.
pub trait Watch {}

/// The position port.
pub trait Position {
    /// Starts the watch; `heard` is called with every fix and every failure until the watch is dropped.
    fn watch(&self, heard: Box<dyn Fn(Result<Fix, NoFix>)>) -> Box<dyn Watch>;
}
