//! Whose turn it is: of several questions that are under way, the last one asked counts.

use leptos::prelude::*;

/// Counts questions.
#[derive(Clone, Copy)]
pub struct Turn(StoredValue<u32>);

impl Turn {
    /// Nothing asked yet.
    pub fn new() -> Self {
        Self(StoredValue::new(0))
    }

    /// Begins the next turn; whoever had one before is too late.
    pub fn next(self) -> u32 {
        self.0.update_value(|turn| *turn = turn.wrapping_add(1));
        self.0.get_value()
    }

    /// Whether it is still this one; never again once the screen was left.
    pub fn is(self, mine: u32) -> bool {
        self.0.try_get_value() == Some(mine)
    }
}

impl Default for Turn {
    fn default() -> Self {
        Self::new()
    }
}
