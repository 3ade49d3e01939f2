//! Times a deed and prints it as a line of a table.

use std::time::{Duration, Instant};

/// How often each deed is repeated; the best time counts, the one least disturbed by others.
const REPEATS: usize = 5;

/// The best of several times, and the last result.
pub fn best<T>(mut deed: impl FnMut() -> T) -> (Duration, T) {
    let (mut best, mut result) = timed(&mut deed);
    for _ in 1..REPEATS {
        let (time, again) = timed(&mut deed);
        best = best.min(time);
        result = again;
    }
    (best, result)
}

/// Longer deeds are interrupted by whatever else runs: of those the time on the processor counts, where the system
/// tells it.
const LONG: Duration = Duration::from_millis(50);

fn timed<T>(deed: &mut impl FnMut() -> T) -> (Duration, T) {
    let (start, on_processor) = (Instant::now(), processor_time());
    let result = std::hint::black_box(deed());
    let passed = start.elapsed();
    let worked = processor_time().zip(on_processor).map(|(now, before)| now.saturating_sub(before));
    (worked.filter(|_| passed > LONG).unwrap_or(passed), result)
}

/// How long this process has run on a processor (Linux).
fn processor_time() -> Option<Duration> {
    let text = std::fs::read_to_string("/proc/self/schedstat").ok()?;
    Some(Duration::from_nanos(text.split_whitespace().next()?.parse().ok()?))
}

/// One line: what was done, how long it took, and a remark.
pub fn line(what: &str, time: Duration, remark: &str) -> String {
    format!("| {what:<62} | {:>9.2} ms | {remark} |", time.as_secs_f64() * 1e3)
}
