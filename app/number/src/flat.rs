//! A number laid out for comparing many: its signs in a fixed row, without asking for memory.

use crate::signs::{compared, plain};

/// Most signs of a number that are compared; longer ones are codes of another kind.
pub(crate) const SIGNS_MOST: usize = 24;

/// The signs of a number as compared: separators out, letters as capitals.
#[derive(Clone, Copy)]
pub(crate) struct Flat {
    signs: [char; SIGNS_MOST],
    len: usize,
    digits: (usize, usize),
    /// One bit for each sign that occurs.
    pub(crate) mask: u64,
}

impl Flat {
    /// Lays out a text. `None` when it has nothing to compare, or more than [`SIGNS_MOST`] signs.
    pub(crate) fn of(text: &str) -> Option<Self> {
        let mut flat = Self { signs: ['\0'; SIGNS_MOST], len: 0, digits: (0, 0), mask: 0 };
        let mut after_digit = false;
        for raw in text.chars() {
            let Some(sign) = compared(raw) else {
                // A soft or invisible separator ends a run of digits like any other.
                after_digit = false;
                continue;
            };
            let at = flat.len;
            *flat.signs.get_mut(at)? = sign;
            flat.len += 1;
            flat.mask |= 1 << bit(sign);
            let digit = plain(raw).is_ascii_digit();
            if digit {
                flat.digits = if after_digit { (flat.digits.0, at + 1) } else { (at, at + 1) };
            }
            after_digit = digit;
        }
        // Without digits everything stands before the running part.
        if flat.digits == (0, 0) {
            flat.digits = (flat.len, flat.len);
        }
        (flat.len > 0).then_some(flat)
    }

    /// All signs.
    pub(crate) fn whole(&self) -> &[char] {
        &self.signs[..self.len]
    }

    /// Prefix and device letter.
    pub(crate) fn head(&self) -> &[char] {
        &self.signs[..self.digits.0]
    }

    /// Digits as written and what follows.
    pub(crate) fn run(&self) -> &[char] {
        &self.signs[self.digits.0..self.len]
    }

    /// Digits without leading zeros (one stays) and what follows.
    pub(crate) fn core(&self) -> &[char] {
        &self.signs[self.first_counting()..self.len]
    }

    /// The digits of [`Flat::core`].
    pub(crate) fn figure(&self) -> &[char] {
        &self.signs[self.first_counting()..self.digits.1]
    }

    /// What follows the digits.
    pub(crate) fn letters(&self) -> &[char] {
        &self.signs[self.digits.1..self.len]
    }

    /// True when it has a running part.
    pub(crate) fn has_digits(&self) -> bool {
        self.digits.0 < self.digits.1
    }

    /// The running number; 0 where there are no digits.
    pub(crate) fn running(&self) -> u64 {
        let digit = |sign: &char| u64::from(sign.to_digit(10).unwrap_or(0));
        self.figure().iter().fold(0_u64, |sum, sign| sum.wrapping_mul(10).wrapping_add(digit(sign)))
    }

    /// True when no sign is a digit outside the running part, nor a letter before it.
    pub(crate) fn head_is_digits(&self) -> bool {
        self.head().iter().all(char::is_ascii_digit)
    }

    fn first_counting(&self) -> usize {
        let (start, end) = self.digits;
        let zeros = self.signs[start..end].iter().take_while(|sign| **sign == '0').count();
        start + zeros.min((end - start).saturating_sub(1))
    }
}

/// The bit of a sign in a mask: digits, capitals, and the rest folded into what is left.
fn bit(sign: char) -> u32 {
    match sign {
        '0'..='9' => sign as u32 - '0' as u32,
        'A'..='Z' => sign as u32 - 'A' as u32 + 10,
        _ => 36 + sign as u32 % 28,
    }
}
