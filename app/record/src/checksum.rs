//! The checksum of stored and written bytes.
//!
//! In go bytes, out comes CRC-32 as gzip has it. Its table hardly compresses, so it is worked out when first needed
//! instead of travelling to every phone.

use std::sync::OnceLock;

/// Bytes taken at once; as many rows has the table.
const STRIDE: usize = 16;

type Table = [[u32; 256]; STRIDE];

/// The checksum of some bytes.
///
/// **Source**: CRC-32/ISO-HDLC (ITU-T V.42): the polynomial 0x04C11DB7, reflected, all bits turned before and after.
pub fn checksum(bytes: &[u8]) -> u32 {
    checksum_of(&[bytes])
}

/// The checksum of bytes that lie in several parts.
pub(crate) fn checksum_of(parts: &[&[u8]]) -> u32 {
    static TABLE: OnceLock<Box<Table>> = OnceLock::new();
    let table = TABLE.get_or_init(table);
    !parts.iter().fold(!0, |sum, part| taken(table, sum, part))
}

fn taken(table: &Table, sum: u32, bytes: &[u8]) -> u32 {
    let (blocks, rest) = bytes.as_chunks::<STRIDE>();
    let sum = blocks.iter().fold(sum, |sum, block| {
        let [a, b, c, d] = sum.to_le_bytes();
        let mut block = *block;
        block.iter_mut().zip([a, b, c, d]).for_each(|(byte, of_sum)| *byte ^= of_sum);
        block.iter().zip(table.iter().rev()).fold(0, |sum, (byte, row)| sum ^ row[usize::from(*byte)])
    });
    rest.iter().fold(sum, |sum, byte| (sum >> 8) ^ table[0][usize::from(sum as u8 ^ byte)])
}

/// Row n holds what a byte adds when n bytes follow it.
fn table() -> Box<Table> {
    let mut table = Box::new([[0; 256]; STRIDE]);
    for byte in 0..256 {
        table[0][byte] =
            (0..8).fold(byte as u32, |sum, _| if sum & 1 == 1 { (sum >> 1) ^ 0xEDB8_8320 } else { sum >> 1 });
    }
    for follow in 1..STRIDE {
        for byte in 0..256 {
            let before = table[follow - 1][byte];
            table[follow][byte] = (before >> 8) ^ table[0][usize::from(before as u8)];
        }
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    /// **Source**: the check value in the catalogue of parametrised CRC algorithms, CRC-32/ISO-HDLC.
    #[test]
    fn the_check_value_of_the_standard() {
        assert_eq!(checksum(b"123456789"), 0xCBF4_3926);
    }

    #[test]
    fn as_another_program_has_it_at_every_length_and_cut() {
        let bytes: Vec<u8> = (0..300_u32).map(|at| (at * at % 251) as u8).collect();
        for length in 0..bytes.len() {
            let (head, rest) = bytes[..length].split_at(length / 3);
            assert_eq!(checksum_of(&[head, rest]), crc32fast::hash(&bytes[..length]), "{length} bytes");
        }
    }
}
