//! Runs a port's answer to its end without an executor.
//!
//! In goes a future, out comes its value. Nothing sleeps: whatever is not ready is asked again.

use std::future::Future;
use std::pin::Pin;
use std::task::{Context, Poll, Waker};

/// How often [`block_on`] asks before it calls a future stuck.
const PATIENCE: usize = 100_000;

/// Runs a future to its end.
///
/// Panics when the future waits for something that nobody here will ever do: use [`Started`] to
/// take a step in the middle.
pub fn block_on<T>(future: impl Future<Output = T>) -> T {
    let mut started = Started::new(future);
    for _ in 0..PATIENCE {
        if let Some(value) = started.poke() {
            return value;
        }
    }
    panic!("stuck: the future waits for a step that the test has not taken")
}

/// A future that the test moves on by hand.
pub struct Started<'a, T> {
    future: Pin<Box<dyn Future<Output = T> + 'a>>,
}

impl<'a, T> Started<'a, T> {
    /// Takes a future without asking it for anything yet.
    pub fn new(future: impl Future<Output = T> + 'a) -> Self {
        Self { future: Box::pin(future) }
    }

    /// Asks the future once; its value when it has one. Never ask again after that.
    pub fn poke(&mut self) -> Option<T> {
        match self.future.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
            Poll::Ready(value) => Some(value),
            Poll::Pending => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_ready_future_gives_its_value() {
        assert_eq!(block_on(async { 3 }), 3);
    }

    #[test]
    #[should_panic(expected = "stuck")]
    fn a_future_that_never_ends_is_called_stuck() {
        block_on(std::future::pending::<()>());
    }
}
