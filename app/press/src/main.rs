//! The press, a web worker: questions in, labels out.
//!
//! It takes fonts and questions as bytes and answers with bytes; how they travel is written in `ports::press`.
//! It opens no storage, asks no clock and loads nothing.

mod terms;
mod work;

use js_sys::{Array, Object, Reflect, Uint8Array};
use label::Fonts;
use ports::press::{Work, Worked};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};
use work::Desk;

fn main() {
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let press = Rc::new(RefCell::new(Press { scope: scope.clone(), fonts: None, desk: Desk::default() }));
    let take =
        Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| press.borrow_mut().take(&event.data()));
    scope.set_onmessage(Some(take.as_ref().unchecked_ref()));
    take.forget();
    post(&scope, &"ready".into(), &[]);
}

struct Press {
    scope: DedicatedWorkerGlobalScope,
    fonts: Option<Fonts>,
    desk: Desk,
}

impl Press {
    fn take(&mut self, message: &JsValue) {
        let fonts = field(message, "fonts");
        let (id, font) = (field(message, "id"), field(message, "font"));
        let outcome = match (fonts.is_undefined(), font.is_undefined()) {
            (false, _) => self.set(&fonts),
            (_, false) => self.judge(&id, &font),
            (true, true) => self.ask(&id, message),
        };
        if let Err(reason) = outcome {
            let fault = object(&[("id", &id), ("fault", &reason.into())]);
            post(&self.scope, &fault, &[]);
        }
    }

    fn set(&mut self, fonts: &JsValue) -> Result<(), String> {
        let list = Array::from(fonts);
        let mut files = list.iter().map(|file| Uint8Array::new(&file).to_vec());
        let (Some(regular), Some(italic)) = (files.next(), files.next()) else {
            return Err("fewer than two fonts".to_owned());
        };
        let fonts = Fonts::new(regular, italic, files.collect()).map_err(|fault| format!("font {}", fault.0))?;
        self.fonts = Some(fonts);
        // Words shaped in other fonts are of no use, and a print half made in them is none.
        self.desk = Desk::default();
        post(&self.scope, &"set".into(), &[]);
        Ok(())
    }

    fn judge(&self, id: &JsValue, font: &JsValue) -> Result<(), String> {
        let says = terms::font_says(Fonts::about(Uint8Array::new(font).to_vec()));
        let text = serde_json::to_vec(&says).map_err(|fault| fault.to_string())?;
        let text = Uint8Array::from(text.as_slice());
        post(&self.scope, &object(&[("id", id), ("answer", &text)]), &[text.buffer().into()]);
        Ok(())
    }

    fn ask(&mut self, id: &JsValue, message: &JsValue) -> Result<(), String> {
        let fonts = self.fonts.as_ref().ok_or("no fonts yet")?;
        let bytes = Uint8Array::new(&field(message, "request")).to_vec();
        let work: Work = serde_json::from_slice(&bytes).map_err(|fault| fault.to_string())?;
        let mut worked = self.desk.work(fonts, work).map_err(|fault| format!("{fault:?}"))?;
        let file = if let Worked::Pdf { bytes, .. } = &mut worked { Some(std::mem::take(bytes)) } else { None };
        let text = serde_json::to_vec(&worked).map_err(|fault| fault.to_string())?;
        let pdf = file.map_or(JsValue::UNDEFINED, |bytes| Uint8Array::from(bytes.as_slice()).into());
        let text = Uint8Array::from(text.as_slice());
        let reply = object(&[("id", id), ("answer", &text), ("pdf", &pdf)]);
        let buffers: Vec<JsValue> =
            [text.into(), pdf].iter().filter(|part| !part.is_undefined()).map(|part| field(part, "buffer")).collect();
        post(&self.scope, &reply, &buffers);
        Ok(())
    }
}

/// A field of a message; undefined where there is none.
fn field(message: &JsValue, name: &str) -> JsValue {
    Reflect::get(message, &name.into()).unwrap_or(JsValue::UNDEFINED)
}

fn object(fields: &[(&str, &JsValue)]) -> JsValue {
    let object = Object::new();
    for (name, value) in fields {
        Reflect::set(&object, &(*name).into(), value).expect("a new object takes any field");
    }
    object.into()
}

fn post(scope: &DedicatedWorkerGlobalScope, message: &JsValue, buffers: &[JsValue]) {
    let transfer: Array = buffers.iter().collect();
    scope.post_message_with_transfer(message, &transfer).expect("bytes and numbers can be posted");
}
