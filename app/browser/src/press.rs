//! The press port: the fonts once, then `{id, request}` to the worker and `{id, answer, pdf?}` back.

use crate::assets::AppAssets;
use crate::js;
use crate::worker::{Desk, Running, parcel};
use js_sys::Array;
use ports::press::{Press, PressFault, Reply};
use ports::{Assets, Later};
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
    /// Not started yet.
    pub fn new() -> Self {
        Self { desk: Desk::new("press_loader.js", |running| Box::pin(inked(running))) }
    }

    async fn reply(&self, request: &[u8]) -> Result<Reply, String> {
        let (request, buffer) = parcel(request);
        let question = js::object([("request", request.into())]);
        read(&self.desk.ask(question, Array::of1(&buffer)).await?)
    }
}

impl Press for PressWorker {
    fn carry(&self, request: Vec<u8>) -> Later<'_, Result<Reply, PressFault>> {
        Box::pin(async move { self.reply(&request).await.map_err(PressFault::Gone) })
    }
}

/// Gives the worker its fonts.
async fn inked(running: Rc<Running>) -> Result<(), String> {
    let (fonts, moved) = (Array::new(), Array::new());
    for path in FONTS {
        let (font, buffer) = parcel(&AppAssets.bytes(path).await?);
        fonts.push(&font);
        moved.push(&buffer);
    }
    running.post(&js::object([("fonts", fonts.into())]), &moved)?;
    running.hear("set").await
}

fn read(message: &JsValue) -> Result<Reply, String> {
    let answer = js::get(message, "answer").ok_or("no answer")?;
    Ok(Reply { answer: js::bytes(&answer), pdf: js::get(message, "pdf").map(|pdf| js::bytes(&pdf)) })
}
