//! A number laid out for comparing many: its signs in a fixed row, without asking for memory.

use crate::signs::compared;

/// Most signs of a number that are compared; longer ones are codes of another kind.
pub(crate) const SIGNS_MOST: usize = 24;

/// A sign as compared: digits are 0 to 9, capitals 10 to 35, any other letter its place in Unicode.
pub(crate) type Sign = u16;

/// Says of a text's sign that it only separates.
const SEPARATOR: Sign = Sign::MAX;

/// Signs of ASCII as compared.
const ASCII: [Sign; 128] = {
    let mut table = [SEPARATOR; 128];
    let mut at = 0_u8;
    while at < 128 {
        table[at as usize] = match at {
            b'0'..=b'9' => (at - b'0') as Sign,
            b'A'..=b'Z' => (at - b'A') as Sign + 10,
            b'a'..=b'z' => (at - b'a') as Sign + 10,
            _ => SEPARATOR,
        };
        at += 1;
    }
    table
};

/// The signs of a number as compared: separators out, letters as capitals.
#[derive(Clone, Copy)]
pub(crate) struct Flat {
    signs: [Sign; SIGNS_MOST],
    len: usize,
    /// Where the last run of digits starts and ends.
    digits: (usize, usize),
    /// Where its zeros end; one stays.
    counting: usize,
    /// One bit for each sign that occurs.
    pub(crate) mask: u64,
    /// The same for [`Flat::core`].
    pub(crate) core_mask: u64,
}

impl Flat {
    /// Lays out a text. `None` when it has nothing to compare, or more than [`SIGNS_MOST`] signs.
    pub(crate) fn of(text: &str) -> Option<Self> {
        let mut flat = Self { signs: [0; SIGNS_MOST], len: 0, digits: (0, 0), counting: 0, mask: 0, core_mask: 0 };
        let mut after_digit = false;
        if text.is_ascii() {
            for byte in text.bytes() {
                after_digit = flat.push(ASCII[usize::from(byte)], after_digit)?;
            }
        } else {
            for sign in text.chars() {
                after_digit = flat.push(code(sign), after_digit)?;
            }
        }
        flat.settle();
        (flat.len > 0).then_some(flat)
    }

    /// Adds a sign; says whether it was a digit. `None` when there is no room.
    fn push(&mut self, sign: Sign, after_digit: bool) -> Option<bool> {
        if sign == SEPARATOR {
            return Some(false);
        }
        let at = self.len;
        *self.signs.get_mut(at)? = sign;
        self.len = at + 1;
        let digit = sign < 10;
        if digit {
            self.digits = (if after_digit { self.digits.0 } else { at }, at + 1);
        }
        Some(digit)
    }

    /// What can only be said once all signs are there.
    fn settle(&mut self) {
        // Without digits everything stands before the running part.
        if self.digits == (0, 0) {
            self.digits = (self.len, self.len);
        }
        let (start, end) = self.digits;
        let zeros = self.signs[start..end].iter().take_while(|sign| **sign == 0).count();
        self.counting = start + zeros.min((end - start).saturating_sub(1));
        self.mask = mask(self.whole());
        self.core_mask = mask(self.core());
    }

    /// All signs.
    pub(crate) fn whole(&self) -> &[Sign] {
        &self.signs[..self.len]
    }

    /// Prefix and device letter.
    pub(crate) fn head(&self) -> &[Sign] {
        &self.signs[..self.digits.0]
    }

    /// Digits as written and what follows.
    pub(crate) fn run(&self) -> &[Sign] {
        &self.signs[self.digits.0..self.len]
    }

    /// Digits without leading zeros (one stays) and what follows.
    pub(crate) fn core(&self) -> &[Sign] {
        &self.signs[self.counting..self.len]
    }

    /// The digits of [`Flat::core`].
    pub(crate) fn figure(&self) -> &[Sign] {
        &self.signs[self.counting..self.digits.1]
    }

    /// What follows the digits.
    pub(crate) fn letters(&self) -> &[Sign] {
        &self.signs[self.digits.1..self.len]
    }

    /// True when it has a running part.
    pub(crate) fn has_digits(&self) -> bool {
        self.digits.0 < self.digits.1
    }

    /// The running number; 0 where there are no digits.
    pub(crate) fn running(&self) -> u64 {
        self.figure().iter().fold(0_u64, |sum, sign| sum.wrapping_mul(10).wrapping_add(u64::from(*sign)))
    }

    /// True when the prefix has nothing but digits.
    pub(crate) fn head_is_digits(&self) -> bool {
        self.head().iter().all(|sign| *sign < 10)
    }
}

/// A sign as compared.
fn code(sign: char) -> Sign {
    match compared(sign) {
        None => SEPARATOR,
        Some(sign) => match u8::try_from(sign).ok().filter(u8::is_ascii) {
            Some(byte) => ASCII[usize::from(byte)],
            // Letters beyond the basic plane are folded into its upper half; nobody numbers vials with them.
            None => Sign::try_from(u32::from(sign)).unwrap_or(u32::from(sign) as Sign | 0x8000),
        },
    }
}

/// One bit for each sign that occurs: digits, capitals, and the rest folded into what is left.
fn mask(signs: &[Sign]) -> u64 {
    signs.iter().fold(0, |mask, sign| mask | 1 << if *sign < 36 { *sign } else { 36 + *sign % 28 })
}
