//! The press port: the fonts once, those of the person among them, then `{id, request}` to the worker and
//! `{id, answer, pdf?}` back.

use crate::assets::AppAssets;
use crate::js;
use crate::worker::{Desk, Running, parcel};
use js_sys::Array;
use ports::press::{OWN_FONT, Press, PressFault, Reply};
use ports::store::{Rows, StoreFault};
use ports::{Assets, Later, Store};
use std::rc::Rc;
use wasm_bindgen::JsValue;

/// The fonts in the order that the press expects.
const FONTS: [&str; 3] =
    ["fonts/FiraSansCondensed-Regular.ttf", "fonts/FiraSansCondensed-Italic.ttf", "fonts/DejaVuSansCondensed-gaps.ttf"];

/// The worker that sets labels.
pub struct PressWorker {
    desk: Desk,
}

impl PressWorker {
    /// Not started yet; the person's own fonts lie in this store.
    pub fn new(store: Rc<dyn Store>) -> Self {
        Self { desk: Desk::new("press_loader.js", move |running| Box::pin(inked(running, store.clone()))) }
    }

    async fn reply(&self, request: &[u8]) -> Result<Reply, String> {
        let (request, buffer) = parcel(request);
        let question = js::object([("request", request.into())]);
        read(&self.desk.ask(question, Array::of1(&buffer)).await?)
    }

    async fn says(&self, font: &[u8]) -> Result<Vec<u8>, String> {
        let (font, buffer) = parcel(font);
        let reply = self.desk.ask(js::object([("font", font.into())]), Array::of1(&buffer)).await?;
        Ok(read(&reply)?.answer)
    }
}

impl Press for PressWorker {
    fn carry(&self, request: Vec<u8>) -> Later<'_, Result<Reply, PressFault>> {
        Box::pin(async move { self.reply(&request).await.map_err(PressFault::Gone) })
    }

    fn carry_font(&self, font: Vec<u8>) -> Later<'_, Result<Vec<u8>, PressFault>> {
        Box::pin(async move { self.says(&font).await.map_err(PressFault::Gone) })
    }

    fn fonts_changed(&self) {
        self.desk.renew("other fonts");
    }
}

/// Gives the worker its fonts, the person's own after those of the app.
async fn inked(running: Rc<Running>, store: Rc<dyn Store>) -> Result<(), String> {
    let (fonts, moved) = (Array::new(), Array::new());
    let add = |file: &[u8]| {
        let (font, buffer) = parcel(file);
        fonts.push(&font);
        moved.push(&buffer);
    };
    for path in FONTS {
        add(&AppAssets.bytes(path).await?);
    }
    for (_, file) in own(&*store).await.unwrap_or_default() {
        add(&file);
    }
    running.post(&js::object([("fonts", fonts.into())]), &moved)?;
    running.hear("set").await
}

/// The person's own fonts. Where they cannot be read the labels are set without them, and what they lack is named.
async fn own(store: &dyn Store) -> Result<Rows<String>, StoreFault> {
    let names = store.kept_names().await?;
    store.kept(names.into_iter().filter(|name| name.starts_with(OWN_FONT)).collect()).await
}

fn read(message: &JsValue) -> Result<Reply, String> {
    let answer = js::get(message, "answer").ok_or("no answer")?;
    Ok(Reply { answer: js::bytes(&answer), pdf: js::get(message, "pdf").map(|pdf| js::bytes(&pdf)) })
}
