//! Text in an address: bytes that would be misread are written as `%` and two digits.
//!
//! **Source**: RFC 3986, section 2.1; unreserved characters of section 2.3 stand as they are.

/// The text as it may stand in an address.
pub fn encoded(text: &str) -> String {
    let mut out = String::new();
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || b"-._~".contains(&byte) {
            out.push(char::from(byte));
        } else {
            out.push_str(&format!("%{byte:02X}"));
        }
    }
    out
}

/// The text that was written so; what is no such writing stays as it is.
pub fn decoded(text: &str) -> String {
    let bytes = text.as_bytes();
    let mut out = Vec::with_capacity(bytes.len());
    let mut at = 0;
    while at < bytes.len() {
        let pair = text.get(at + 1..at + 3).filter(|_| bytes[at] == b'%');
        match pair.and_then(|pair| u8::from_str_radix(pair, 16).ok()) {
            Some(byte) => {
                out.push(byte);
                at += 3;
            }
            None => {
                out.push(bytes[at]);
                at += 1;
            }
        }
    }
    String::from_utf8_lossy(&out).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn any_text_goes_through_an_address() {
        for text in ["147", "IV27-0147", "a b/c?d=e&f", "Grüner Weg", "100 %"] {
            assert_eq!(decoded(&encoded(text)), text);
        }
    }

    #[test]
    fn what_is_no_such_writing_stays() {
        assert_eq!(decoded("50%"), "50%");
        assert_eq!(decoded("%zz"), "%zz");
    }
}
