//! The press port: the fonts once, then `{id, request}` to the worker and `{id, answer, pdf?}` back.
//!
//! Request and answer are JSON; the bytes of a PDF travel beside it and are put back here.

use crate::assets::AppAssets;
use crate::js;
use crate::worker::{Desk, Running, parcel};
use js_sys::Array;
use ports::press::{Answer, Press, PressFault, Request};
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

    async fn answer(&self, request: &Request) -> Result<Answer, String> {
        let request = serde_json::to_vec(request).map_err(|error| error.to_string())?;
        let (request, buffer) = parcel(&request);
        let question = js::object([("request", request.into())]);
        read(&self.desk.ask(question, Array::of1(&buffer)).await?)
    }
}

impl Press for PressWorker {
    fn ask(&self, request: Request) -> Later<'_, Result<Answer, PressFault>> {
        Box::pin(async move { self.answer(&request).await.map_err(PressFault::Gone) })
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

fn read(message: &JsValue) -> Result<Answer, String> {
    let answer = js::get(message, "answer").ok_or("no answer")?;
    let answer = serde_json::from_slice(&js::bytes(&answer)).map_err(|error| error.to_string())?;
    Ok(match (answer, js::get(message, "pdf")) {
        (Answer::Pdf { sheets, labels, .. }, Some(pdf)) => Answer::Pdf { bytes: js::bytes(&pdf), sheets, labels },
        (answer, _) => answer,
    })
}
