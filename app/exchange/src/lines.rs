//! A source of bytes that knows on which line it is.

use std::io::{BufRead, Read, Result};

/// Counts the line ends that were read through it.
pub(crate) struct Lines<R> {
    source: R,
    ended: u64,
}

impl<R> Lines<R> {
    pub(crate) fn new(source: R) -> Self {
        Self { source, ended: 0 }
    }

    /// The number of the line that is read next, from 1.
    pub(crate) fn line(&self) -> u64 {
        self.ended + 1
    }
}

impl<R: BufRead> Read for Lines<R> {
    fn read(&mut self, buffer: &mut [u8]) -> Result<usize> {
        let length = self.source.read(buffer)?;
        self.ended += ends(&buffer[..length]);
        Ok(length)
    }
}

impl<R: BufRead> BufRead for Lines<R> {
    fn fill_buf(&mut self) -> Result<&[u8]> {
        self.source.fill_buf()
    }

    fn consume(&mut self, length: usize) {
        // What is consumed was filled before, so there is nothing that could fail.
        if let Ok(buffer) = self.source.fill_buf() {
            self.ended += ends(&buffer[..length.min(buffer.len())]);
        }
        self.source.consume(length);
    }
}

fn ends(bytes: &[u8]) -> u64 {
    bytes.iter().map(|byte| u64::from(*byte == b'\n')).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_are_counted_however_they_are_read() {
        let mut lines = Lines::new(&b"one\ntwo\r\nthree"[..]);
        assert_eq!(lines.line(), 1);
        lines.consume(5);
        assert_eq!(lines.line(), 2);
        let mut rest = Vec::new();
        lines.read_to_end(&mut rest).expect("a slice can be read");
        assert_eq!((lines.line(), rest.len()), (3, 9));
    }
}
