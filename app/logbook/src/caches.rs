//! What is worked out once and kept until the book changes.

use crate::search::Links;
use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::rc::Rc;

/// Everything that is worked out lazily.
#[derive(Default)]
pub struct Caches {
    /// Numbers that stand twice where that is a fault.
    pub(crate) twice: OnceCell<Rc<BTreeSet<String>>>,
    /// How many containers wait at the bench.
    pub(crate) waiting: OnceCell<usize>,
    /// What hangs on what, for searching.
    pub(crate) links: OnceCell<Rc<Links>>,
}
