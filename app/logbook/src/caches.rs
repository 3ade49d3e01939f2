//! What is worked out once and kept until the book changes.

use crate::labels::Outdated;
use crate::offers::{Asked, Offers};
use crate::outlook::{KnownSite, Outlook};
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
    /// All sites, decoded.
    pub(crate) sites: OnceCell<Rc<Vec<KnownSite>>>,
    /// How things lie as seen from the position that was asked about last.
    pub(crate) outlook: RefCell<Option<Rc<Outlook>>>,
    /// The arrangement in use for each kind of label.
    pub(crate) arrangements: RefCell<BTreeMap<wording::Kind, Rc<wording::Arrangement>>>,
    /// Printed labels that are out of date.
    pub(crate) outdated: OnceCell<Rc<Vec<Outdated>>>,
    /// What was offered last, and to what: each row of a form asks the same.
    pub(crate) offers: RefCell<Option<(Asked, Offers)>>,
}
