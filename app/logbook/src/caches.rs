//! What is worked out once and kept until the book changes.

use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::rc::Rc;

/// Everything that is worked out lazily.
#[derive(Default)]
pub struct Caches {
    /// Numbers that stand twice where that is a fault.
    pub(crate) twice: OnceCell<Rc<BTreeSet<String>>>,
}
