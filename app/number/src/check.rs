//! Check characters for the codes of specimens: one more sign that gives a misread code away.
//!
//! In goes a code without its check character, out comes the character; or a whole code, and whether it is right.
//! Which codes carry one is left to the caller.

/// The two sets of signs for which there is a check character.
///
/// **Source**: ISO/IEC 7064:2003, hybrid systems (MOD 11,10 and MOD 37,36).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Signs {
    /// Digits: MOD 11,10. Finds every single wrong digit and 97.8 % of exchanged neighbours.
    Digits,
    /// Digits and capitals: MOD 37,36. Finds every single wrong sign and 99.8 % of exchanged neighbours.
    Capitals,
}

impl Signs {
    fn count(self) -> u32 {
        match self {
            Self::Digits => 10,
            Self::Capitals => 36,
        }
    }

    fn value(self, sign: char) -> Option<u32> {
        sign.to_digit(self.count())
    }

    /// The check character of a code; small letters count as capitals.
    ///
    /// **Errors**: `None` for an empty code, and for one with other signs: separators are to be taken out first.
    pub fn character(self, code: &str) -> Option<char> {
        let count = self.count();
        let product = self.product(code)?;
        let value = (count + 1 - product) % count;
        char::from_digit(value, count).map(|sign| sign.to_ascii_uppercase())
    }

    /// Whether a code that ends in its check character is right.
    pub fn holds(self, whole: &str) -> bool {
        let Some(last) = whole.chars().next_back() else { return false };
        let code = &whole[..whole.len() - last.len_utf8()];
        self.character(code) == Some(last.to_ascii_uppercase())
    }

    /// The running product of the standard after all signs, doubled and reduced once more.
    fn product(self, code: &str) -> Option<u32> {
        if code.is_empty() {
            return None;
        }
        let count = self.count();
        code.chars().try_fold(count, |product, sign| {
            let sum = (product + self.value(sign)?) % count;
            let sum = if sum == 0 { count } else { sum };
            Some(sum * 2 % (count + 1))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn separators_and_nothing_have_no_check_character() {
        assert_eq!(Signs::Capitals.character(""), None);
        assert_eq!(Signs::Capitals.character("IV27-0147"), None);
        assert_eq!(Signs::Digits.character("A1"), None);
        assert!(!Signs::Digits.holds(""));
        assert!(!Signs::Digits.holds("ß"));
    }

    #[test]
    fn small_letters_count_as_capitals() {
        assert_eq!(Signs::Capitals.character("k260143"), Signs::Capitals.character("K260143"));
        assert!(Signs::Capitals.holds("k260143d"));
    }

    proptest! {
        #[test]
        fn every_single_wrong_sign_is_found(code in "[0-9A-Z]{1,12}", at in 0_usize..12, other in "[0-9A-Z]") {
            let check = Signs::Capitals.character(&code).expect("only digits and capitals");
            let mut whole = format!("{code}{check}");
            prop_assert!(Signs::Capitals.holds(&whole));
            let at = at % whole.len();
            if whole[at..=at] != other {
                whole.replace_range(at..=at, &other);
                prop_assert!(!Signs::Capitals.holds(&whole));
            }
        }
    }
}
