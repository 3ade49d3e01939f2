//! Stand-ins for the workers: a test says how they answer.

use crate::Later;
use crate::courier::{Courier as CourierPort, CourierFault, Parcel};
use crate::press::{FontSays, Press as PressPort, PressFault, Reply};
use std::cell::{Cell, RefCell};

type Answers<Q, A> = RefCell<Option<Box<dyn Fn(Q) -> A>>>;

/// Stands in for the press; gone until a test says how it answers.
#[derive(Default)]
pub struct Press {
    answers: Answers<Vec<u8>, Result<Reply, PressFault>>,
    says: Answers<Vec<u8>, Result<Option<FontSays>, PressFault>>,
    changes: Cell<u32>,
}

impl Press {
    /// From now on answers so.
    pub fn answer(&self, answer: impl Fn(Vec<u8>) -> Result<Reply, PressFault> + 'static) {
        self.answers.replace(Some(Box::new(answer)));
    }

    /// From now on says so of font files.
    pub fn say_of_fonts(&self, says: impl Fn(Vec<u8>) -> Result<Option<FontSays>, PressFault> + 'static) {
        self.says.replace(Some(Box::new(says)));
    }

    /// How often it heard that the fonts have changed.
    pub fn changes(&self) -> u32 {
        self.changes.get()
    }
}

impl PressPort for Press {
    fn carry(&self, request: Vec<u8>) -> Later<'_, Result<Reply, PressFault>> {
        Box::pin(async move {
            match self.answers.borrow().as_ref() {
                Some(answer) => answer(request),
                None => Err(PressFault::Gone("no press".into())),
            }
        })
    }

    fn carry_font(&self, font: Vec<u8>) -> Later<'_, Result<Vec<u8>, PressFault>> {
        Box::pin(async move {
            let says = self.says.borrow().as_ref().map(|says| says(font));
            let says = says.unwrap_or_else(|| Err(PressFault::Gone("no press".into())))?;
            Ok(serde_json::to_vec(&says).expect("words and numbers are plain data"))
        })
    }

    fn fonts_changed(&self) {
        self.changes.set(self.changes.get() + 1);
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
    use crate::press::{Work, Worked};

    #[test]
    fn the_file_of_a_reply_is_put_back_into_the_answer() {
        let press = Press::default();
        let ask = || block_on((&press as &dyn PressPort).work(Work::Continue));
        assert_eq!(ask(), Err(PressFault::Gone("no press".into())));
        let expected = serde_json::to_vec(&Work::Continue).unwrap();
        press.answer(move |asked| {
            assert_eq!(asked, expected);
            let answer = serde_json::to_vec(&Worked::Pdf { bytes: Vec::new(), sheets: 1, labels: 2 }).unwrap();
            Ok(Reply { answer, pdf: Some(vec![37, 80]) })
        });
        assert_eq!(ask(), Ok(Worked::Pdf { bytes: vec![37, 80], sheets: 1, labels: 2 }));
        press.answer(|_| Ok(Reply { answer: b"{".to_vec(), pdf: None }));
        assert!(matches!(ask(), Err(PressFault::Gone(_))));
    }

    #[test]
    fn a_courier_is_gone_until_it_is_told_how_to_answer() {
        let courier = Courier::default();
        let parcel = Parcel { kind: "fold 1".into(), parts: vec![vec![1, 2]] };
        assert!(matches!(block_on(courier.send(parcel.clone())), Err(CourierFault::Gone(_))));
        courier.answer(Ok);
        assert_eq!(block_on(courier.send(parcel.clone())), Ok(parcel));
    }
}
