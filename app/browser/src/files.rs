//! Files in and out: share sheet, pickers, downloads, drops, and what other apps send.

use crate::js;
use crate::slot::Teller;
use ports::files::{File, Left, Ways};
use ports::{Files, Later};
use std::cell::RefCell;
use std::rc::Rc;

mod out;
mod pick;
mod received;

use crate::listener::Listener;
use received::Inbox;

/// The files port of the page.
pub struct PageFiles {
    picking: RefCell<Option<Teller<Option<web_sys::File>>>>,
    inbox: Rc<Inbox>,
    drops: RefCell<Vec<Listener>>,
}

impl PageFiles {
    /// Takes what the system hands over when the page was opened with a file.
    pub fn new() -> Self {
        let inbox = Rc::new(Inbox::default());
        inbox.open();
        Self { picking: RefCell::default(), inbox, drops: RefCell::default() }
    }
}

impl Files for PageFiles {
    fn ways(&self, file: &File) -> Ways {
        Ways { share: out::can_share(file), save: js::get(&js::window(), "showSaveFilePicker").is_some() }
    }

    fn share(&self, file: File) -> Later<'_, Left> {
        // Begun here and not in the future: a share sheet opens only inside a tap.
        let begun = out::begin_share(&file);
        Box::pin(out::shared(begun))
    }

    fn save(&self, file: File) -> Later<'_, Left> {
        let begun = out::begin_save(&file.name);
        Box::pin(out::saved(begun, file))
    }

    fn download(&self, file: File) -> Left {
        out::download(&file)
    }

    fn pick(&self) -> Later<'_, Option<File>> {
        let picking = pick::begin();
        // A picker that an older browser closed without a word is answered by the next one.
        if let Some(before) = self.picking.replace(Some(picking.teller())) {
            before.tell(None);
        }
        Box::pin(picking.file())
    }

    fn received(&self) -> Later<'_, Option<File>> {
        Box::pin(self.inbox.take())
    }

    fn on_drop(&self, dropped: Box<dyn Fn(File)>) {
        let dropped: Rc<dyn Fn(File)> = dropped.into();
        self.inbox.forward(dropped.clone());
        self.drops.borrow_mut().extend(received::drops(dropped));
    }

    fn show(&self, file: File) -> Left {
        out::show(&file)
    }
}

/// A file that the browser gave us, with its bytes. One that cannot be read (gone since, or in a cloud
/// out of reach) has none, and whoever parses it says so by its name.
async fn read(file: web_sys::File) -> File {
    let bytes = wasm_bindgen_futures::JsFuture::from(file.array_buffer()).await;
    let bytes = bytes.map(|buffer| js::bytes(&buffer)).unwrap_or_default();
    File { name: file.name(), media: file.type_(), bytes }
}
