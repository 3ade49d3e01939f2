//! What is worked out once and kept until the book changes.

use crate::search::Links;
use record::{Kind, Record};
use std::cell::{OnceCell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

/// Everything that is worked out lazily.
#[derive(Default)]
pub struct Caches {
    /// The living records of kinds of which there are few.
    pub(crate) few: RefCell<BTreeMap<Kind, Rc<Vec<Record>>>>,
    /// How many containers wait at the bench.
    pub(crate) waiting: OnceCell<usize>,
    /// What hangs on what, for searching.
    pub(crate) links: OnceCell<Rc<Links>>,
}
