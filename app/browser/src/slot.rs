//! A value that somebody waits for.

use std::cell::RefCell;
use std::future::Future;
use std::pin::Pin;
use std::rc::Rc;
use std::task::{Context, Poll, Waker};

struct Slot<T> {
    value: Option<T>,
    waker: Option<Waker>,
}

/// Puts the value in.
pub struct Teller<T>(Rc<RefCell<Slot<T>>>);

/// Waits for the value.
pub struct Told<T>(Rc<RefCell<Slot<T>>>);

/// The two ends of one value.
pub fn slot<T>() -> (Teller<T>, Told<T>) {
    let slot = Rc::new(RefCell::new(Slot { value: None, waker: None }));
    (Teller(slot.clone()), Told(slot))
}

impl<T> Clone for Teller<T> {
    fn clone(&self) -> Self {
        Self(self.0.clone())
    }
}

impl<T> Teller<T> {
    /// Puts the value in; a later one takes its place until it is read.
    pub fn tell(&self, value: T) {
        let mut slot = self.0.borrow_mut();
        slot.value = Some(value);
        if let Some(waker) = slot.waker.take() {
            waker.wake();
        }
    }
}

impl<T> Future for Told<T> {
    type Output = T;

    fn poll(self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<T> {
        let mut slot = self.0.borrow_mut();
        match slot.value.take() {
            Some(value) => Poll::Ready(value),
            None => {
                slot.waker = Some(context.waker().clone());
                Poll::Pending
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use ports::memory::{Started, block_on};

    #[test]
    fn the_value_arrives_whether_told_before_or_after_it_is_awaited() {
        let (teller, told) = slot();
        teller.tell(1);
        assert_eq!(block_on(told), 1);
        let (teller, told) = slot();
        let mut waiting = Started::new(told);
        assert_eq!(waiting.poke(), None);
        teller.tell(2);
        assert_eq!(waiting.poke(), Some(2));
    }
}
