//! Fixes fed by a test to every running watch.

use crate::Position;
use crate::position::{Fix, NoFix, Watch};
use std::cell::RefCell;
use std::rc::{Rc, Weak};

type Heard = dyn Fn(Result<Fix, NoFix>);

/// Feeds fixes to the watches of one page.
#[derive(Default)]
pub struct Sky {
    watches: RefCell<Vec<Weak<Heard>>>,
}

impl Sky {
    /// Gives a fix, or the lack of one, to every running watch.
    pub fn feed(&self, fix: Result<Fix, NoFix>) {
        for heard in self.running() {
            heard(fix);
        }
    }

    /// How many watches run.
    pub fn watches(&self) -> usize {
        self.running().len()
    }

    fn running(&self) -> Vec<Rc<Heard>> {
        let mut watches = self.watches.borrow_mut();
        watches.retain(|watch| watch.strong_count() > 0);
        watches.iter().filter_map(Weak::upgrade).collect()
    }
}

struct Held {
    _heard: Rc<Heard>,
}

impl Watch for Held {}

impl Position for Sky {
    fn watch(&self, heard: Box<dyn Fn(Result<Fix, NoFix>)>) -> Box<dyn Watch> {
        let heard: Rc<Heard> = heard.into();
        self.watches.borrow_mut().push(Rc::downgrade(&heard));
        Box::new(Held { _heard: heard })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::cell::Cell;

    #[test]
    fn a_dropped_watch_hears_nothing_more() {
        let (sky, count) = (Sky::default(), Rc::new(Cell::new(0)));
        let counted = count.clone();
        let watch = sky.watch(Box::new(move |_| counted.set(counted.get() + 1)));
        sky.feed(Err(NoFix::Slow));
        assert_eq!((count.get(), sky.watches()), (1, 1));
        drop(watch);
        sky.feed(Err(NoFix::Slow));
        assert_eq!((count.get(), sky.watches()), (1, 0));
    }
}
