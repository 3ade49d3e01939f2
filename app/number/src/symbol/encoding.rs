//! Text in, data codewords for a symbol that holds so many out.

/// Begins capitals, three in two codewords.
const LATCH: u8 = 230;
/// Ends them.
const UNLATCH: u8 = 254;
/// The next codeword is a letter above 127.
const UPPER: u8 = 235;
/// The letters are UTF-8: the mark for an interpretation, and number 26 plus one.
const UTF_8: [u8; 2] = [241, 27];
const PAD: u8 = 129;

/// The codewords of a text, filled up to `room`; `None` where there is not enough.
pub(super) fn encoded(text: &str, room: usize) -> Option<Vec<u8>> {
    let mut codewords = Vec::new();
    if !text.is_ascii() {
        codewords.extend(UTF_8);
    }
    let left = room.checked_sub(codewords.len())?;
    let plain = plain(text.as_bytes());
    let best = if plain.len() <= left { Some(plain) } else { capitals(text, left) };
    codewords.extend(best?);
    Some(padded(codewords, room))
}

/// Two digits in one codeword, any other byte in one or two.
fn plain(mut bytes: &[u8]) -> Vec<u8> {
    let mut codewords = Vec::with_capacity(bytes.len());
    while let Some((first, rest)) = bytes.split_first() {
        match rest.first() {
            Some(second) if first.is_ascii_digit() && second.is_ascii_digit() => {
                codewords.push(130 + (first - b'0') * 10 + (second - b'0'));
                bytes = &rest[1..];
                continue;
            }
            _ if first.is_ascii() => codewords.push(first + 1),
            _ => codewords.extend([UPPER, first - 127]),
        }
        bytes = rest;
    }
    codewords
}

/// The beginning of a text as capitals, the rest plain; the longest beginning that makes it fit.
fn capitals(text: &str, room: usize) -> Option<Vec<u8>> {
    if !text.is_ascii() {
        return None;
    }
    let bytes = text.as_bytes();
    (1..=bytes.len()).rev().find_map(|count| {
        let values: Vec<u8> = bytes[..count].iter().flat_map(|byte| values(*byte)).collect();
        ended(&values, &bytes[count..], room)
    })
}

/// What ends the capitals depends on how much room is left.
fn ended(values: &[u8], rest: &[u8], room: usize) -> Option<Vec<u8>> {
    let (whole, last) = values.split_at(values.len() / 3 * 3);
    let mut codewords: Vec<u8> = [LATCH].into_iter().chain(whole.chunks(3).flat_map(packed)).collect();
    let left = room.checked_sub(codewords.len())?;
    match (last, rest) {
        ([], []) if left == 0 => {}
        ([first, second], []) if left == 2 => codewords.extend(packed(&[*first, *second, 0])),
        ([], [only]) if left == 1 && only.is_ascii() => codewords.push(only + 1),
        ([], rest) => {
            codewords.push(UNLATCH);
            codewords.extend(plain(rest));
        }
        _ => return None,
    }
    (codewords.len() <= room).then_some(codewords)
}

fn packed(values: &[u8]) -> [u8; 2] {
    let number = values.iter().fold(0_u16, |number, value| number * 40 + u16::from(*value)) + 1;
    number.to_be_bytes()
}

/// A letter as one value, or as a shift and one.
fn values(byte: u8) -> Vec<u8> {
    match byte {
        b' ' => vec![3],
        b'0'..=b'9' => vec![byte - b'0' + 4],
        b'A'..=b'Z' => vec![byte - b'A' + 14],
        0..=31 => vec![0, byte],
        b'!'..=b'/' => vec![1, byte - b'!'],
        b':'..=b'@' => vec![1, byte - b':' + 15],
        b'['..=b'_' => vec![1, byte - b'[' + 22],
        _ => vec![2, byte - b'`'],
    }
}

/// After the first pad each is shuffled by its place.
fn padded(mut codewords: Vec<u8>, room: usize) -> Vec<u8> {
    if codewords.len() < room {
        codewords.push(PAD);
    }
    while codewords.len() < room {
        let place = codewords.len() + 1;
        let shuffled = usize::from(PAD) + (149 * place) % 253 + 1;
        let shuffled = if shuffled > 254 { shuffled - 254 } else { shuffled };
        codewords.push(u8::try_from(shuffled).expect("at most 254"));
    }
    codewords
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_go_in_pairs() {
        assert_eq!(encoded("123456", 3), Some(vec![142, 164, 186]));
        assert_eq!(encoded("123456", 2), None);
        assert_eq!(encoded("1A", 5), Some(vec![50, 66, 129, 220, 115]));
    }

    #[test]
    fn capitals_go_three_in_two_where_that_is_needed() {
        assert_eq!(encoded("AAAAAA", 5), Some(vec![230, 89, 191, 89, 191]));
        assert_eq!(encoded("AAAAAA", 6), Some(vec![66, 66, 66, 66, 66, 66]));
    }

    #[test]
    fn what_is_not_ascii_says_that_it_is_utf_8() {
        assert_eq!(encoded("ł", 12).map(|codewords| codewords[..6].to_vec()), Some(vec![241, 27, 235, 70, 235, 3]));
    }
}
