//! Stand-ins for the workers: a test says how they answer.

use crate::Later;
use crate::courier::{Courier as CourierPort, CourierFault, Parcel};
use crate::press::{Answer, Press as PressPort, PressFault, Request};
use std::cell::RefCell;

type Answers<Q, A> = RefCell<Option<Box<dyn Fn(Q) -> A>>>;

/// Stands in for the press; gone until a test says how it answers.
#[derive(Default)]
pub struct Press {
    answers: Answers<Request, Result<Answer, PressFault>>,
}

impl Press {
    /// From now on answers so.
    pub fn answer(&self, answer: impl Fn(Request) -> Result<Answer, PressFault> + 'static) {
        self.answers.replace(Some(Box::new(answer)));
    }
}

impl PressPort for Press {
    fn ask(&self, request: Request) -> Later<'_, Result<Answer, PressFault>> {
        Box::pin(async move {
            match self.answers.borrow().as_ref() {
                Some(answer) => answer(request),
                None => Err(PressFault::Gone("no press".into())),
            }
        })
    }
}

/// Stands in for the courier; gone until a test says how it answers.
#[derive(Default)]
pub struct Courier {
    answers: Answers<Parcel, Result<Parcel, CourierFault>>,
}

impl Courier {
    /// From now on answers so.
    pub fn answer(&self, answer: impl Fn(Parcel) -> Result<Parcel, CourierFault> + 'static) {
        self.answers.replace(Some(Box::new(answer)));
    }
}

impl CourierPort for Courier {
    fn send(&self, parcel: Parcel) -> Later<'_, Result<Parcel, CourierFault>> {
        Box::pin(async move {
            match self.answers.borrow().as_ref() {
                Some(answer) => answer(parcel),
                None => Err(CourierFault::Gone("no courier".into())),
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::memory::block_on;

    #[test]
    fn a_courier_is_gone_until_it_is_told_how_to_answer() {
        let courier = Courier::default();
        let parcel = Parcel { kind: "fold 1".into(), parts: vec![vec![1, 2]] };
        assert!(matches!(block_on(courier.send(parcel.clone())), Err(CourierFault::Gone(_))));
        courier.answer(Ok);
        assert_eq!(block_on(courier.send(parcel.clone())), Ok(parcel));
    }
}
