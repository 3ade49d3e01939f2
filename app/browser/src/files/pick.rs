//! One file picked by the person.

use super::read;
use crate::js;
use crate::listener::Listener;
use crate::slot::{Teller, Told, slot};
use ports::files::File;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;

/// An open picker: its element leaves the page when this is dropped.
pub struct Picking {
    input: HtmlInputElement,
    teller: Teller<Option<web_sys::File>>,
    told: Option<Told<Option<web_sys::File>>>,
    _listeners: [Listener; 2],
}

/// Opens the picker. Without `accept`: iPhones grey out files by extension when it is there.
pub fn begin() -> Picking {
    let document = js::document();
    let input = document.create_element("input").expect("a page can make an input");
    let input: HtmlInputElement = input.unchecked_into();
    input.set_type("file");
    input.set_hidden(true);
    // Safari forgets an input that is not in the page.
    let _ = document.body().map(|body| body.append_child(&input));
    let (teller, told) = slot();
    let listeners = [hears(&input, "change", &teller), hears(&input, "cancel", &teller)];
    input.click();
    Picking { input, teller, told: Some(told), _listeners: listeners }
}

fn hears(input: &HtmlInputElement, kind: &'static str, teller: &Teller<Option<web_sys::File>>) -> Listener {
    let (chosen, teller) = (input.clone(), teller.clone());
    Listener::new(input, kind, move |_| teller.tell(chosen.files().and_then(|files| files.get(0))))
}

impl Picking {
    /// Ends the picker from outside.
    pub fn teller(&self) -> Teller<Option<web_sys::File>> {
        self.teller.clone()
    }

    /// The file, once it is chosen and read.
    pub async fn file(mut self) -> Option<File> {
        let told = self.told.take().expect("a picker is awaited once");
        let file = told.await;
        drop(self);
        Some(read(file?).await)
    }
}

impl Drop for Picking {
    fn drop(&mut self) {
        self.input.remove();
    }
}
