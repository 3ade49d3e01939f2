//! What slips of eye and hand cost: how far what was typed lies from what may be meant.

use crate::flat::Sign;

/// Costs in hundredths of one wrong sign.
pub(crate) mod cost {
    /// Neighbours exchanged.
    pub(crate) const EXCHANGED: u16 = 50;
    /// Signs that look much alike in pencil.
    pub(crate) const ALIKE: u16 = 40;
    /// Signs that look somewhat alike.
    pub(crate) const RATHER_ALIKE: u16 = 60;
    /// One of a doubled sign left out, or a sign doubled.
    pub(crate) const DOUBLED: u16 = 65;
    /// One sign left out, or one too many.
    pub(crate) const LENGTH: u16 = 80;
    /// Any other sign.
    pub(crate) const OTHER: u16 = 100;
    /// Added as soon as there are two slips: one is likelier.
    pub(crate) const SECOND: u16 = 50;
    /// No more than this is looked at.
    pub(crate) const MOST: u16 = 220;
}

/// What happened on the way from glass to key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Slip {
    None,
    Exchanged,
    Alike,
    LeftOut,
    TooMany,
    Other,
    Several,
}

/// Signs that are taken for each other in handwriting, as pairs one after the other: the first row much, the second
/// somewhat. Common practice; letters are capitals because small ones are folded to them (`l` is in the pair `1L`).
const ALIKE: &str = "17 06 56 38 49 0O 1I 1L 2Z 5S 8B 6B 6G 9G 9Q 0Q 0D IL OD OQ UV";
const RATHER_ALIKE: &str = "35 27 79 14 08 09 89 58 68 7T 4A 7Z CG EF MN PR VY IJ 1J 4Y HN KX";

/// What one sign for another costs, digits and capitals.
const SUBSTITUTIONS: [[u8; 36]; 36] = {
    let mut table = [[cost::OTHER as u8; 36]; 36];
    set(&mut table, RATHER_ALIKE, cost::RATHER_ALIKE as u8);
    set(&mut table, ALIKE, cost::ALIKE as u8);
    table
};

/// Sets the cost of pairs in both directions.
const fn set(table: &mut [[u8; 36]; 36], pairs: &str, cost: u8) {
    let pairs = pairs.as_bytes();
    let mut at = 0;
    while at < pairs.len() {
        let (a, b) = (place(pairs[at]), place(pairs[at + 1]));
        table[a][b] = cost;
        table[b][a] = cost;
        at += 3;
    }
}

/// The place of a digit or capital among the signs.
const fn place(sign: u8) -> usize {
    (if sign <= b'9' { sign - b'0' } else { sign - b'A' + 10 }) as usize
}

/// What one sign for another costs.
fn substitution(typed: Sign, meant: Sign) -> u16 {
    if typed == meant {
        return 0;
    }
    let row = SUBSTITUTIONS.get(usize::from(typed));
    row.and_then(|row| row.get(usize::from(meant))).map_or(cost::OTHER, |cost| u16::from(*cost))
}

/// The cheapest way from what was typed to what may be meant. `None` when it costs more than `most`.
pub(crate) fn slip(typed: &[Sign], meant: &[Sign], most: u16) -> Option<(u16, Slip)> {
    if typed.len().abs_diff(meant.len()) > 2 {
        return None;
    }
    let start = typed.iter().zip(meant).take_while(|(a, b)| a == b).count();
    let (a, b) = (&typed[start..], &meant[start..]);
    let end = a.iter().rev().zip(b.iter().rev()).take_while(|(a, b)| a == b).count();
    let (a, b) = (&a[..a.len() - end], &b[..b.len() - end]);
    let doubled =
        |sign: Sign, row: &[Sign]| row[..start].last() == Some(&sign) || row[row.len() - end..].first() == Some(&sign);
    let length = |sign: Sign, row: &[Sign]| if doubled(sign, row) { cost::DOUBLED } else { cost::LENGTH };
    let found = match (a, b) {
        ([], []) => (0, Slip::None),
        ([typed], [meant]) => match substitution(*typed, *meant) {
            cost::OTHER => (cost::OTHER, Slip::Other),
            alike => (alike, Slip::Alike),
        },
        ([], [sign]) => (length(*sign, meant), Slip::LeftOut),
        ([sign], []) => (length(*sign, typed), Slip::TooMany),
        ([a0, a1], [b0, b1]) if a0 == b1 && a1 == b0 => (cost::EXCHANGED, Slip::Exchanged),
        _ => (several(a, b, most)?, Slip::Several),
    };
    (found.0 <= most).then_some(found)
}

/// Most signs between the first and the last slip.
const SPREAD_MOST: usize = 8;

/// The cost of more than one slip: optimal string alignment with the costs above.
///
/// **Source**: the recurrence of Damerau (1964) and Levenshtein (1966) with neighbours exchanged at most once.
fn several(a: &[Sign], b: &[Sign], most: u16) -> Option<u16> {
    let most = most.checked_sub(cost::SECOND).filter(|most| *most >= 2 * cost::ALIKE)?;
    if a.len() > SPREAD_MOST || b.len() > SPREAD_MOST {
        return None;
    }
    let mut table = [[0_u16; SPREAD_MOST + 1]; SPREAD_MOST + 1];
    for j in 1..=b.len() {
        table[0][j] = table[0][j - 1] + cost::LENGTH;
    }
    for i in 1..=a.len() {
        table[i][0] = table[i - 1][0] + cost::LENGTH;
        let mut least = table[i][0];
        for j in 1..=b.len() {
            let mut cell = table[i - 1][j - 1] + substitution(a[i - 1], b[j - 1]);
            cell = cell.min(table[i - 1][j] + cost::LENGTH).min(table[i][j - 1] + cost::LENGTH);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                cell = cell.min(table[i - 2][j - 2] + cost::EXCHANGED);
            }
            table[i][j] = cell;
            least = least.min(cell);
        }
        // Two rows back an exchange can still come out cheaper, by no more than its own cost.
        if least > most + cost::EXCHANGED {
            return None;
        }
    }
    let total = table[a.len()][b.len()];
    (total <= most).then_some(total + cost::SECOND)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(typed: &str, meant: &str, expected: Option<(u16, Slip)>) {
        let signs = |text: &str| text.bytes().map(|sign| place(sign) as Sign).collect::<Vec<_>>();
        assert_eq!(slip(&signs(typed), &signs(meant), cost::MOST), expected, "{typed} for {meant}");
    }

    #[test]
    fn each_slip_has_its_cost() {
        check("147", "147", Some((0, Slip::None)));
        check("174", "147", Some((cost::EXCHANGED, Slip::Exchanged)));
        check("747", "147", Some((cost::ALIKE, Slip::Alike)));
        check("127", "147", Some((cost::OTHER, Slip::Other)));
        check("47", "147", Some((cost::LENGTH, Slip::LeftOut)));
        check("1347", "147", Some((cost::LENGTH, Slip::TooMany)));
        check("1447", "147", Some((cost::DOUBLED, Slip::TooMany)));
        check("147", "1477", Some((cost::DOUBLED, Slip::LeftOut)));
        check("741", "147", Some((2 * cost::ALIKE + cost::SECOND, Slip::Several)));
        check("12", "98", None);
        check("", "", Some((0, Slip::None)));
        check("1", "1234", None);
    }

    #[test]
    fn pairs_are_pairs() {
        for pair in ALIKE.split(' ').chain(RATHER_ALIKE.split(' ')) {
            let signs: Vec<Sign> = pair.bytes().map(|sign| place(sign) as Sign).collect();
            assert_eq!(signs.len(), 2, "{pair}");
            assert!(substitution(signs[0], signs[1]) < cost::OTHER);
            assert_eq!(substitution(signs[0], signs[1]), substitution(signs[1], signs[0]));
        }
    }
}
