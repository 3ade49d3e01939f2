//! Maps for strings and ids of our own making, which need no guard against chosen collisions.
//!
//! Blocks are packed on the device from its own records; a file that was made to collide would only pack slowly.

use std::collections::{HashMap, HashSet};
use std::hash::{BuildHasherDefault, Hasher};

/// A map with a quick hash.
pub(crate) type Map<K, V> = HashMap<K, V, BuildHasherDefault<Quick>>;
/// A set with a quick hash.
pub(crate) type Set<K> = HashSet<K, BuildHasherDefault<Quick>>;

/// Multiplies and folds eight bytes at a time.
#[derive(Default)]
pub(crate) struct Quick(u64);

impl Quick {
    fn mix(&mut self, word: u64) {
        let product = u128::from(self.0 ^ word) * 0x9e37_79b9_7f4a_7c15_u128;
        self.0 = (product as u64) ^ (product >> 64) as u64;
    }
}

impl Hasher for Quick {
    fn write(&mut self, bytes: &[u8]) {
        let (words, rest) = bytes.as_chunks::<8>();
        words.iter().for_each(|word| self.mix(u64::from_le_bytes(*word)));
        let mut last = [0; 8];
        last[..rest.len()].copy_from_slice(rest);
        last[7] = rest.len() as u8;
        self.mix(u64::from_le_bytes(last));
    }

    fn write_u8(&mut self, byte: u8) {
        self.0 ^= u64::from(byte);
    }

    fn finish(&self) -> u64 {
        self.0
    }
}
