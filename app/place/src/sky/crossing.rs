//! When a smooth height passes a level.

/// How far apart samples are, milliseconds: dips and peaks between three of them are looked for.
const STEP_MS: i64 = 900_000;
/// The height is known to pass within this, milliseconds.
const ENOUGH_MS: f64 = 20.0;

/// Heights over a span of time.
pub(super) struct Heights<F> {
    height: F,
    samples: Vec<(f64, f64)>,
}

/// The passages of a level.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Passages {
    /// Upwards, in order.
    pub(super) up: Vec<i64>,
    /// Downwards, in order.
    pub(super) down: Vec<i64>,
}

impl<F: Fn(f64) -> f64> Heights<F> {
    /// Samples a height that rises or falls at most twice within an hour, from one time to another in milliseconds.
    pub(super) fn new(from_ms: i64, to_ms: i64, height: F) -> Self {
        let mut times: Vec<i64> = (from_ms..to_ms).step_by(STEP_MS as usize).collect();
        times.push(to_ms);
        let mut samples: Vec<(f64, f64)> = times.into_iter().map(|at| (at as f64, height(at as f64))).collect();
        let turns: Vec<(f64, f64)> = samples.windows(3).filter_map(|three| turn(&height, three)).collect();
        samples.extend(turns);
        samples.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self { height, samples }
    }

    /// The lowest and the highest height.
    pub(super) fn reach(&self) -> (f64, f64) {
        let heights = self.samples.iter().map(|(_, height)| *height);
        heights.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), height| (low.min(height), high.max(height)))
    }

    /// The height at the end.
    pub(super) fn last(&self) -> f64 {
        self.samples.last().map_or(f64::NEG_INFINITY, |(_, height)| *height)
    }

    /// When the height passes a level.
    pub(super) fn passages(&self, level: f64) -> Passages {
        let mut passages = Passages::default();
        for pair in self.samples.windows(2) {
            let above = pair[0].1 >= level;
            if above == (pair[1].1 >= level) {
                continue;
            }
            let at = libm::round(self.passage(level, pair[0], pair[1])) as i64;
            if above { passages.down.push(at) } else { passages.up.push(at) }
        }
        passages
    }

    /// Halves the span until it is short enough.
    fn passage(&self, level: f64, from: (f64, f64), to: (f64, f64)) -> f64 {
        let above = from.1 >= level;
        let (mut from, mut to) = (from.0, to.0);
        while to - from > ENOUGH_MS {
            let middle = f64::midpoint(from, to);
            if ((self.height)(middle) >= level) == above {
                from = middle;
            } else {
                to = middle;
            }
        }
        f64::midpoint(from, to)
    }
}

/// The peak or dip among three samples, when the middle one is the highest or lowest: time and height.
fn turn(height: &impl Fn(f64) -> f64, three: &[(f64, f64)]) -> Option<(f64, f64)> {
    let sign = match three {
        [a, b, c] if b.1 >= a.1 && b.1 >= c.1 => 1.0,
        [a, b, c] if b.1 <= a.1 && b.1 <= c.1 => -1.0,
        _ => return None,
    };
    let (mut from, mut to) = (three[0].0, three[2].0);
    while to - from > ENOUGH_MS {
        let third = (to - from) / 3.0;
        if sign * height(from + third) >= sign * height(to - third) {
            to -= third;
        } else {
            from += third;
        }
    }
    let at = f64::midpoint(from, to);
    Some((at, height(at)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn passages_between_two_samples_are_found() {
        // A parabola whose top, 0.0001 high, lies between samples: it passes 0 a hundred seconds before and after.
        let heights = Heights::new(0, 86_400_000, |at| 1e-4 - libm::pow((at - 40_050_000.0) / 1e7, 2.0));
        let passages = heights.passages(0.0);
        assert_eq!((passages.up.len(), passages.down.len()), (1, 1));
        assert!((passages.up[0] - 39_950_000).abs() < 50, "{passages:?}");
        assert!((passages.down[0] - 40_150_000).abs() < 50, "{passages:?}");
        let (low, high) = heights.reach();
        assert!((high - 1e-4).abs() < 1e-9 && low < -15.0, "{low} {high}");
    }

    #[test]
    fn a_level_that_is_not_reached_is_not_passed() {
        let heights = Heights::new(0, 86_400_000, |at| libm::cos(at / 1e7));
        assert_eq!(heights.passages(1.1), Passages::default());
        assert_eq!(heights.passages(-1.1), Passages::default());
    }
}
