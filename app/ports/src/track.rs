//! A recorded track as it travels from the courier: `track/1`.
//!
//! The question has one part, the bytes of a GPX file. The answer has two: the fixes, 24 bytes each (latitude and
//! longitude in degrees as `f64`, milliseconds since 1970 as `i64`, little-endian), and a [`Told`] as JSON. A file that
//! holds no track at all answers with no fixes and says why.

use serde::{Deserialize, Serialize};

/// The kind of question and answer.
pub const KIND: &str = "track/1";

const SIZE: usize = 24;

/// One fix of a track.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fix {
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// Milliseconds since 1970-01-01T00:00Z by the clock of the track.
    pub unix_ms: i64,
}

/// What a file says besides its fixes.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Told {
    /// The names of its tracks.
    pub names: Vec<String>,
    /// Points in all, those without a time too.
    pub points: usize,
    /// What is wrong with it: line and stable code.
    pub faults: Vec<(u64, String)>,
    /// It could not be read to its end.
    pub ends_early: bool,
}

/// The fixes as bytes, one after another.
pub fn as_bytes(fixes: &[Fix]) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(fixes.len() * SIZE);
    for fix in fixes {
        bytes.extend(fix.latitude.to_le_bytes());
        bytes.extend(fix.longitude.to_le_bytes());
        bytes.extend(fix.unix_ms.to_le_bytes());
    }
    bytes
}

/// Reads fixes.
///
/// **Errors**: `None` where a part of one is missing.
pub fn of_bytes(bytes: &[u8]) -> Option<Vec<Fix>> {
    let (fixes, rest) = bytes.as_chunks::<SIZE>();
    let number = |bytes: &[u8]| bytes.try_into().map(f64::from_le_bytes).unwrap_or_default();
    let fix = |fix: &[u8; SIZE]| Fix {
        latitude: number(&fix[..8]),
        longitude: number(&fix[8..16]),
        unix_ms: fix[16..].try_into().map(i64::from_le_bytes).unwrap_or_default(),
    };
    rest.is_empty().then(|| fixes.iter().map(fix).collect())
}

/// The parts of an answer.
pub fn pack(fixes: &[Fix], told: &Told) -> Vec<Vec<u8>> {
    vec![as_bytes(fixes), serde_json::to_vec(told).expect("names and numbers are plain data")]
}

/// Reads the parts of an answer.
///
/// **Errors**: `None` where they are no such answer.
pub fn read(parts: &[Vec<u8>]) -> Option<(Vec<Fix>, Told)> {
    let [bytes, told] = parts else { return None };
    Some((of_bytes(bytes)?, serde_json::from_slice(told).ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_packed_is_read() {
        let fixes = [
            Fix { latitude: 47.61384, longitude: -12.30427, unix_ms: 1_782_000_000_123 },
            Fix { latitude: -0.0, longitude: 180.0, unix_ms: -1 },
        ];
        let told =
            Told { names: vec!["Mill Meadow".into()], points: 3, faults: vec![(7, "time".into())], ends_early: true };
        let parts = pack(&fixes, &told);
        assert_eq!(read(&parts), Some((fixes.to_vec(), told)));
        assert_eq!(read(&parts[..1]), None);
        assert_eq!(read(&[parts[0][1..].to_vec(), parts[1].clone()]), None);
    }
}
