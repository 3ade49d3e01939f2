//! The order to print that the tests of documents share.

use label::{Gathering, Job, Layout, Paper, Wanted};

/// The order to print labels on a fresh sheet.
pub fn job(labels: Vec<Wanted>, paper: Paper) -> Job {
    Job {
        labels,
        gathering: Gathering::AsGiven,
        layout: Layout::fresh(paper),
        title: "Labels of an invented survey".into(),
        words: vec!["This bar must measure 50 mm.".into()],
        made: (2027, 6, 19, 12, 0, 0),
    }
}
