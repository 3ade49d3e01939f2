//! Where lines break: widths in, the cheapest breaks into a given number of lines out.
//!
//! Every way of breaking is weighed (dynamic programming over the number of lines), so the answer is the best one.
//! A piece that is wider than the label is no answer, unless [`Width::Soft`] asks which one is least too wide.

/// The price of a break after a comma, and of one between two words that belong together.
const GLAD: f32 = 3.0;
const LOTH: f32 = 20.0;
/// The price of one em of overhang: more than any way of breaking without it.
const OVERHANG: f32 = 10_000.0;

/// One word as the breaking sees it, em.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Block {
    /// Ink left of the pen.
    pub(crate) left: f32,
    /// From the pen to the end of the word or of its ink, whichever is further.
    pub(crate) right: f32,
    /// From the pen to the pen after the word.
    pub(crate) advance: f32,
    /// The space after it.
    pub(crate) space: f32,
    /// True where a line breaks gladly after it.
    pub(crate) glad: bool,
}

/// The width of a label, em.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Width {
    /// Nothing may be wider.
    Hard(f32),
    /// Wider is allowed and costs more than anything else.
    Soft(f32),
}

/// A way of breaking: its price, and after which word each line ends.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Breaks {
    pub(crate) cost: f32,
    pub(crate) ends: Vec<usize>,
}

/// The width of the words `from..until` on one line.
pub(crate) fn width(words: &[Block], from: usize, until: usize) -> f32 {
    let inner: f32 = words[from..until - 1].iter().map(|word| word.advance + word.space).sum();
    words[from].left + inner + words[until - 1].right
}

/// Words and how far the pen has moved before each of them, so that every width is one subtraction.
struct Row<'w> {
    words: &'w [Block],
    moved: Vec<f64>,
}

impl<'w> Row<'w> {
    fn new(words: &'w [Block]) -> Self {
        let mut pen = 0.0;
        let moved = words.iter().map(|word| {
            let before = pen;
            pen += f64::from(word.advance) + f64::from(word.space);
            before
        });
        Self { words, moved: moved.collect() }
    }

    fn width(&self, from: usize, until: usize) -> f32 {
        let inner = self.moved[until - 1] - self.moved[from];
        self.words[from].left + inner as f32 + self.words[until - 1].right
    }
}

/// The best way of breaking a line into exactly 1, 2, … `most` lines; `None` where there is none.
pub(crate) fn ways(words: &[Block], limit: Width, most: usize) -> Vec<Option<Breaks>> {
    let row = Row::new(words);
    let whole = line_cost(width(words, 0, words.len()), limit, 1);
    let mut ways = vec![whole.map(|cost| Breaks { cost, ends: vec![words.len()] })];
    if most < 2 || ways.first().is_some_and(|way| way.as_ref().is_some_and(|way| way.cost == 0.0)) {
        return ways;
    }
    // best[end]: the cheapest breaking of the first `end` words into as many lines as rows were made.
    let mut best: Vec<Option<Breaks>> = vec![None; words.len() + 1];
    best[0] = Some(Breaks::default());
    for lines in 1..=most.min(words.len()) {
        best = (0..=words.len()).map(|end| extended(&row, &best, end, limit)).collect();
        if lines > 1 {
            ways.push(best[words.len()].clone());
        }
    }
    ways
}

fn extended(row: &Row<'_>, best: &[Option<Breaks>], end: usize, limit: Width) -> Option<Breaks> {
    let mut cheapest: Option<Breaks> = None;
    for (start, before) in best[..end].iter().enumerate().rev() {
        // A line that begins still earlier is no narrower.
        let Some(line) = line_cost(row.width(start, end), limit, 2) else { break };
        let Some(before) = before else { continue };
        let cost = before.cost + line + break_cost(row.words, start);
        if cheapest.as_ref().is_none_or(|known| cost < known.cost) {
            let ends = before.ends.iter().copied().chain([end]).collect();
            cheapest = Some(Breaks { cost, ends });
        }
    }
    cheapest
}

/// The price of beginning a line with this word.
fn break_cost(words: &[Block], start: usize) -> f32 {
    match start.checked_sub(1) {
        None => 0.0,
        Some(last) if words[last].glad => GLAD,
        Some(_) => LOTH,
    }
}

/// The price of a line of this width: unevenness counts only where there are several.
fn line_cost(width: f32, limit: Width, lines: usize) -> Option<f32> {
    let (Width::Hard(most) | Width::Soft(most)) = limit;
    let over = width - most;
    match limit {
        _ if over <= 0.0 && lines == 1 => Some(0.0),
        _ if over <= 0.0 => Some((over / most) * (over / most)),
        Width::Hard(_) => None,
        Width::Soft(_) => Some(over * OVERHANG),
    }
}

/// Shares out at most `most` lines among several texts so that the whole is cheapest.
///
/// **Shape**: `ways[text][lines - 1]`; the answer has one way for each text, and exactly `total` lines in all.
pub(crate) fn shared(ways: &[Vec<Option<Breaks>>], total: usize) -> Option<(f32, Vec<&Breaks>)> {
    let mut best: Vec<Option<(f32, Vec<&Breaks>)>> = vec![None; total + 1];
    best[0] = Some((0.0, Vec::new()));
    for text in ways {
        best = (0..=total).map(|lines| with_text(text, &best, lines)).collect();
    }
    best.pop().flatten()
}

fn with_text<'w>(
    text: &'w [Option<Breaks>],
    best: &[Option<(f32, Vec<&'w Breaks>)>],
    lines: usize,
) -> Option<(f32, Vec<&'w Breaks>)> {
    let mut cheapest: Option<(f32, Vec<&Breaks>)> = None;
    for way in text.iter().flatten().filter(|way| way.ends.len() <= lines) {
        let Some((cost, before)) = &best[lines - way.ends.len()] else {
            continue;
        };
        let cost = cost + way.cost;
        if cheapest.as_ref().is_none_or(|(known, _)| cost < *known) {
            cheapest = Some((cost, before.iter().copied().chain([way]).collect()));
        }
    }
    cheapest
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Words of the given widths with spaces of 1 between; a negative width is one after which lines break gladly.
    fn blocks(widths: &[f32]) -> Vec<Block> {
        widths
            .iter()
            .map(|w| Block { left: 0.0, right: w.abs(), advance: w.abs(), space: 1.0, glad: *w < 0.0 })
            .collect()
    }

    fn check(widths: &[f32], limit: f32, lines: usize, expected: Option<&[usize]>) {
        let ways = ways(&blocks(widths), Width::Hard(limit), lines);
        let ends = ways.get(lines - 1).and_then(Option::as_ref).map(|way| way.ends.as_slice());
        assert_eq!(ends, expected);
    }

    #[test]
    fn what_fits_is_not_broken() {
        check(&[3.0, 3.0], 7.0, 1, Some(&[2]));
        check(&[3.0, 3.0], 6.0, 1, None);
        check(&[3.0, 3.0], 6.0, 2, Some(&[1, 2]));
    }

    #[test]
    fn a_comma_is_preferred_to_an_even_edge() {
        check(&[-2.0, 3.0, 3.0, 3.0], 12.0, 2, Some(&[1, 4]));
        check(&[2.0, 3.0, 3.0, 3.0], 12.0, 2, Some(&[2, 4]));
    }

    #[test]
    fn a_word_wider_than_the_label_has_no_way() {
        check(&[8.0], 7.0, 1, None);
        let soft = ways(&blocks(&[8.0, 2.0]), Width::Soft(7.0), 2);
        assert_eq!(soft[1].as_ref().map(|way| way.ends.as_slice()), Some(&[1, 2][..]));
    }

    /// Every subset of the gaps, tried one by one.
    fn brute_force(words: &[Block], limit: f32, lines: usize) -> Option<f32> {
        let gaps = words.len() - 1;
        (0_u32..1 << gaps)
            .filter(|set| set.count_ones() as usize + 1 == lines)
            .filter_map(|set| {
                let ends = (1..=gaps).filter(|gap| set & (1 << (gap - 1)) != 0).chain([words.len()]);
                let (mut start, mut cost) = (0, 0.0);
                for end in ends {
                    cost += line_cost(width(words, start, end), Width::Hard(limit), lines)? + break_cost(words, start);
                    start = end;
                }
                Some(cost)
            })
            .min_by(f32::total_cmp)
    }

    #[test]
    fn breaks_are_as_cheap_as_brute_force_finds() {
        let mut seed = 20_271_u32;
        let mut next = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (seed >> 16) as f32 / 65_536.0
        };
        for _ in 0..400 {
            let count = 2 + (next() * 8.0) as usize;
            let widths: Vec<f32> =
                (0..count).map(|_| (1.0 + next() * 6.0) * if next() < 0.3 { -1.0 } else { 1.0 }).collect();
            let (words, limit) = (blocks(&widths), 7.0 + next() * 12.0);
            let ways = ways(&words, Width::Hard(limit), 5);
            for (index, way) in ways.iter().enumerate() {
                let found = way.as_ref().map(|way| way.cost);
                match (found, brute_force(&words, limit, index + 1)) {
                    (Some(found), Some(best)) => {
                        assert!((found - best).abs() < 1e-4, "{widths:?} {limit}: {found} {best}")
                    }
                    (found, best) => assert_eq!(found, best, "{widths:?} {limit}"),
                }
            }
        }
    }

    /// Every number of lines for every text, tried one by one.
    fn every_share(texts: &[Vec<Option<Breaks>>], total: usize) -> Option<f32> {
        let Some((first, rest)) = texts.split_first() else { return (total == 0).then_some(0.0) };
        let with = |way: &Breaks| Some(way.cost + every_share(rest, total.checked_sub(way.ends.len())?)?);
        first.iter().flatten().filter_map(with).min_by(f32::total_cmp)
    }

    #[test]
    fn sharing_is_as_cheap_as_brute_force_finds() {
        let mut seed = 11_u32;
        let mut next = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            (seed >> 16) as f32 / 65_536.0
        };
        for _ in 0..200 {
            let limit = 8.0 + next() * 8.0;
            let texts: Vec<_> = (0..1 + (next() * 4.0) as usize)
                .map(|_| {
                    let widths: Vec<f32> = (0..1 + (next() * 5.0) as usize)
                        .map(|_| (1.0 + next() * 5.0) * if next() < 0.4 { -1.0 } else { 1.0 })
                        .collect();
                    ways(&blocks(&widths), Width::Hard(limit), 5)
                })
                .collect();
            for total in 0..8 {
                match (shared(&texts, total).map(|(cost, _)| cost), every_share(&texts, total)) {
                    (Some(found), Some(best)) => assert!((found - best).abs() < 1e-3, "{found} {best}"),
                    (found, best) => assert_eq!(found, best),
                }
            }
        }
    }

    #[test]
    fn lines_are_shared_where_they_save_most() {
        let long = ways(&blocks(&[-4.0, 4.0]), Width::Hard(7.0), 3);
        let short = ways(&blocks(&[4.0]), Width::Hard(7.0), 3);
        let texts = [short.clone(), long];
        let (_, chosen) = shared(&texts, 3).expect("three lines hold it");
        assert_eq!(chosen.iter().map(|way| way.ends.len()).collect::<Vec<_>>(), [1, 2]);
        assert!(shared(&texts, 2).is_none());
    }
}
