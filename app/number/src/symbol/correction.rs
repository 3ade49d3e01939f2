//! Codewords for correction: Reed-Solomon over the field of 256 with the polynomial 301.

const POLYNOMIAL: u16 = 301;

/// So many codewords for correction of this data, in one block.
pub(super) fn corrected(data: &[u8], count: usize) -> Vec<u8> {
    let generator = generator(count);
    let mut rest = vec![0_u8; count];
    for byte in data {
        let factor = byte ^ rest[0];
        rest.rotate_left(1);
        rest[count - 1] = 0;
        for (place, coefficient) in rest.iter_mut().zip(&generator) {
            *place ^= times(*coefficient, factor);
        }
    }
    rest
}

/// The product of (x - 2^1) … (x - 2^count) without its leading 1, highest power first.
fn generator(count: usize) -> Vec<u8> {
    let mut product = vec![1_u8];
    let mut root = 1;
    for _ in 0..count {
        root = times(root, 2);
        let mut next = product.clone();
        next.push(0);
        for (place, coefficient) in product.iter().enumerate() {
            next[place + 1] ^= times(*coefficient, root);
        }
        product = next;
    }
    product.split_off(1)
}

fn times(a: u8, b: u8) -> u8 {
    let (mut a, mut product) = (u16::from(a), 0);
    for bit in 0..8 {
        if b >> bit & 1 == 1 {
            product ^= a;
        }
        a <<= 1;
        if a > 255 {
            a ^= POLYNOMIAL;
        }
    }
    u8::try_from(product).expect("the field has 256 elements")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// **Source**: the worked example "123456" of ISO/IEC 16022, Annex O, from memory.
    #[test]
    fn the_standards_example_is_corrected_as_there() {
        assert_eq!(corrected(&[142, 164, 186], 5), [114, 25, 5, 88, 102]);
    }
}
