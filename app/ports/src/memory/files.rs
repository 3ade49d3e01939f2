//! Files in and out, as a test sets them; and the app's own files in a map.

use crate::files::{File, Left, Ways};
use crate::{Assets, Files, Later};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;

/// Which way a file went out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Through the share sheet.
    Share,
    /// Into a chosen file.
    Save,
    /// As a download.
    Download,
    /// Shown in the viewer.
    Show,
}

type Dropped = Box<dyn Fn(File)>;

/// The person's hands: what they pick and drop, and what they do with what they are given.
#[derive(Default)]
pub struct Hands {
    ways: Cell<Ways>,
    answers: RefCell<BTreeMap<u8, Left>>,
    out: RefCell<Vec<(Way, File)>>,
    picked: RefCell<Option<File>>,
    received: RefCell<Option<File>>,
    dropped: RefCell<Vec<Dropped>>,
}

impl Hands {
    /// Sets which ways out the device has.
    pub fn set_ways(&self, ways: Ways) {
        self.ways.set(ways);
    }

    /// Sets what becomes of files that go this way. Unset, they are shared, read back or downloaded.
    pub fn set_answer(&self, way: Way, left: Left) {
        self.answers.borrow_mut().insert(way as u8, left);
    }

    /// Everything that was handed out, in order, refused or not.
    pub fn out(&self) -> Vec<(Way, File)> {
        self.out.borrow().clone()
    }

    /// Sets the file that the next picker gives; it is picked once.
    pub fn set_picked(&self, file: Option<File>) {
        self.picked.replace(file);
    }

    /// Sets the file that another app has sent; it is taken once.
    pub fn set_received(&self, file: Option<File>) {
        self.received.replace(file);
    }

    /// Drops a file on the page.
    pub fn drop_file(&self, file: &File) {
        for dropped in self.dropped.borrow().iter() {
            dropped(file.clone());
        }
    }

    fn hand(&self, way: Way, file: File, usual: Left) -> Left {
        self.out.borrow_mut().push((way, file));
        self.answers.borrow().get(&(way as u8)).cloned().unwrap_or(usual)
    }
}

impl Files for Hands {
    fn ways(&self, _file: &File) -> Ways {
        self.ways.get()
    }

    fn share(&self, file: File) -> Later<'_, Left> {
        Box::pin(async move { self.hand(Way::Share, file, Left::Shared) })
    }

    fn save(&self, file: File) -> Later<'_, Left> {
        Box::pin(async move { self.hand(Way::Save, file, Left::ReadBack) })
    }

    fn download(&self, file: File) -> Left {
        self.hand(Way::Download, file, Left::Downloaded)
    }

    fn pick(&self) -> Later<'_, Option<File>> {
        Box::pin(async { self.picked.take() })
    }

    fn received(&self) -> Later<'_, Option<File>> {
        Box::pin(async { self.received.take() })
    }

    fn on_drop(&self, dropped: Box<dyn Fn(File)>) {
        self.dropped.borrow_mut().push(dropped);
    }

    fn show(&self, file: File) -> Left {
        self.hand(Way::Show, file, Left::Downloaded)
    }
}

/// The files of the app by path.
#[derive(Default)]
pub struct Shelf {
    files: RefCell<BTreeMap<String, Vec<u8>>>,
}

impl Shelf {
    /// Puts a file on the shelf.
    pub fn put(&self, path: &str, bytes: Vec<u8>) {
        self.files.borrow_mut().insert(path.into(), bytes);
    }
}

impl Assets for Shelf {
    fn bytes(&self, path: &str) -> Later<'_, Result<Vec<u8>, String>> {
        let found = self.files.borrow().get(path).cloned().ok_or_else(|| path.to_owned());
        Box::pin(async { found })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::memory::block_on;

    fn file(name: &str) -> File {
        File { name: name.into(), media: "text/plain".into(), bytes: vec![1] }
    }

    #[test]
    fn what_goes_out_is_kept_with_its_way_and_the_answer_set_is_given() {
        let hands = Hands::default();
        hands.set_answer(Way::Share, Left::Cancelled);
        assert_eq!(block_on(hands.share(file("a"))), Left::Cancelled);
        assert_eq!(hands.download(file("b")), Left::Downloaded);
        assert_eq!(hands.out(), [(Way::Share, file("a")), (Way::Download, file("b"))]);
    }

    #[test]
    fn a_picked_and_a_received_file_are_given_once() {
        let hands = Hands::default();
        hands.set_picked(Some(file("a")));
        hands.set_received(Some(file("b")));
        assert_eq!(block_on(hands.pick()), Some(file("a")));
        assert_eq!(block_on(hands.pick()), None);
        assert_eq!(block_on(hands.received()), Some(file("b")));
        assert_eq!(block_on(hands.received()), None);
    }

    #[test]
    fn a_file_that_is_not_of_the_app_is_named() {
        let shelf = Shelf::default();
        shelf.put("a", vec![2]);
        assert_eq!(block_on(shelf.bytes("a")), Ok(vec![2]));
        assert_eq!(block_on(shelf.bytes("b")), Err("b".into()));
    }
}
