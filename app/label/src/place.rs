//! Where the baselines of a label stand: inks in, heights out, so that the pin passes between two lines.
//!
//! **Units**: millimetres from the upper edge of the label; em for what grows with the type.

use crate::area::clear;
use crate::measure::Ink;

/// What no ink may come nearer to the upper and lower edge, mm.
pub(crate) const EDGE_Y_MM: f64 = 0.3;
/// What no ink may come nearer to the left and right edge, mm. Labels are cut close to their words: common practice.
pub(crate) const EDGE_X_MM: f64 = 0.25;
/// Baselines are at least this far apart, em.
/// **Source**: line spacing exactly as large as the type, Schiefer & MacGown 2016, Mississippi Entomological Museum Report 2016-01.
const PITCH_LEAST: f64 = 1.0;
/// Where there is room, lines move apart by at most this, em. Common practice.
const LEADING_MOST: f64 = 0.2;
/// White between the ink of two lines, em.
const WHITE: f64 = 0.04;

/// The room of a label.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Room {
    /// Height of the label, mm.
    pub(crate) height: f64,
    /// Diameter of the disc kept clear for the pin, mm; 0 for no pin.
    pub(crate) pin: f64,
    /// Type size, mm.
    pub(crate) size: f64,
}

/// Where the lines of a label stand.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Placed {
    /// Heights of the baselines, mm.
    pub(crate) baselines: Vec<f64>,
    /// How many lines are above the pin.
    pub(crate) above: usize,
}

/// Places lines, top to bottom.
///
/// **Errors**: by how many millimetres the label is too low.
pub(crate) fn place(inks: &[Ink], room: Room) -> Result<Placed, f64> {
    if room.pin > 0.0 { around_pin(inks, room) } else { without_pin(inks, room) }
}

fn without_pin(inks: &[Ink], room: Room) -> Result<Placed, f64> {
    let slack = room.height - 2.0 * EDGE_Y_MM - block(inks) * room.size;
    if slack < 0.0 {
        return Err(-slack);
    }
    let leading = leading(inks.len(), slack / room.size);
    let used = (block(inks) + gaps(inks.len()) * leading) * room.size;
    let top = (room.height - used) / 2.0;
    Ok(Placed { baselines: downwards(inks, top, leading, room.size), above: inks.len() })
}

fn around_pin(inks: &[Ink], room: Room) -> Result<Placed, f64> {
    let clear = clear(room.pin);
    let half = room.height / 2.0 - clear - EDGE_Y_MM;
    let need = |above: usize| block(&inks[..above]).max(block(&inks[above..])) * room.size;
    let above = most_even(inks.len(), |above| need(above) <= half).ok_or_else(|| {
        let least = (0..=inks.len()).map(need).fold(f64::INFINITY, f64::min);
        2.0 * (least - half)
    })?;
    let (upper, lower) = inks.split_at(above);
    let slack = |lines: &[Ink]| (half - block(lines) * room.size) / room.size;
    let leading = leading(upper.len(), slack(upper)).min(leading(lower.len(), slack(lower)));
    // What is left moves the blocks away from the pin, by the same leading at most.
    let apart = |lines: &[Ink]| (slack(lines) - gaps(lines.len()) * leading).clamp(0.0, LEADING_MOST / 2.0) * room.size;
    let tall = (block(upper) + gaps(upper.len()) * leading) * room.size;
    let middle = room.height / 2.0;
    let mut baselines = downwards(upper, middle - clear - apart(upper) - tall, leading, room.size);
    baselines.extend(downwards(lower, middle + clear + apart(lower), leading, room.size));
    Ok(Placed { baselines, above })
}

/// The split nearest to even halves that fits, with the odd line above.
fn most_even(lines: usize, fits: impl Fn(usize) -> bool) -> Option<usize> {
    let uneven = |above: usize| (2 * above).abs_diff(lines) * 2 + usize::from(2 * above < lines);
    (0..=lines).filter(|above| fits(*above)).min_by_key(|above| uneven(*above))
}

/// From the highest to the lowest ink of lines that stand as close as they may, em.
fn block(inks: &[Ink]) -> f64 {
    let (Some(first), Some(last)) = (inks.first(), inks.last()) else {
        return 0.0;
    };
    f64::from(first.up) + inks.windows(2).map(pitch).sum::<f64>() + f64::from(last.down)
}

fn pitch(pair: &[Ink]) -> f64 {
    (f64::from(pair[0].down) + f64::from(pair[1].up) + WHITE).max(PITCH_LEAST)
}

fn gaps(lines: usize) -> f64 {
    lines.saturating_sub(1) as f64
}

fn leading(lines: usize, slack_em: f64) -> f64 {
    if lines < 2 { LEADING_MOST } else { (slack_em / gaps(lines)).min(LEADING_MOST) }
}

fn downwards(inks: &[Ink], top: f64, leading: f64, size: f64) -> Vec<f64> {
    let mut baselines: Vec<f64> = inks.first().map(|ink| top + f64::from(ink.up) * size).into_iter().collect();
    for pair in inks.windows(2) {
        let last = baselines[baselines.len() - 1];
        baselines.push(last + (pitch(pair) + leading) * size);
    }
    baselines
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLAIN: Ink = Ink { left: 0.0, right: 1.0, up: 0.74, down: 0.2 };

    fn check(lines: usize, height: f64) -> Placed {
        let room = Room { height, pin: 0.7, size: 1.411 };
        place(&vec![PLAIN; lines], room).expect("the label is high enough")
    }

    #[test]
    fn the_pin_passes_between_lines_odd_and_even() {
        for lines in 1..=7 {
            let height = 3.0 + 3.2 * f64::from(u32::try_from(lines).expect("few lines"));
            let placed = check(lines, height);
            assert_eq!(placed.baselines.len(), lines);
            assert_eq!(placed.above, lines.div_ceil(2), "the odd line is above");
            for baseline in placed.baselines {
                let (top, bottom) = (baseline - 0.74 * 1.411, baseline + 0.2 * 1.411);
                assert!(top >= EDGE_Y_MM - 1e-9 && bottom <= height - EDGE_Y_MM + 1e-9);
                assert!(bottom <= height / 2.0 - 0.55 + 1e-9 || top >= height / 2.0 + 0.55 - 1e-9);
            }
        }
    }

    #[test]
    fn four_lines_of_four_points_stand_on_a_label_of_eight_millimetres() {
        assert_eq!(check(4, 8.0).above, 2);
    }

    #[test]
    fn a_low_label_says_by_how_much() {
        let room = Room { height: 8.0, pin: 0.7, size: 1.411 };
        let over = place(&[PLAIN; 5], room).expect_err("five lines are too many");
        let higher = Room { height: 8.0 + over + 1e-9, ..room };
        assert!(place(&[PLAIN; 5], higher).is_ok());
        assert!(place(&[PLAIN; 5], Room { height: 8.0 + over - 0.01, ..room }).is_err());
    }

    #[test]
    fn without_a_pin_lines_stand_in_the_middle() {
        let placed = place(&[PLAIN; 5], Room { height: 8.0, pin: 0.0, size: 1.411 }).expect("five lines fit");
        let (top, bottom) = (placed.baselines[0] - 0.74 * 1.411, placed.baselines[4] + 0.2 * 1.411);
        // Inks are single precision: a ten-thousandth of a millimetre is nothing on paper.
        assert!((top - (8.0 - bottom)).abs() < 1e-4);
    }
}
