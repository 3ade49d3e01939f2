//! The courier: a web worker that reads, merges, folds and writes large files.
//!
//! In come questions `{id, kind, parts}`, out go answers of the same form with the same id; the bytes of the parts are
//! handed over, not copied. What the kinds mean is written in `ports::courier`. The courier says "ready" once it
//! listens, and never opens the storage.

mod share_copy;
mod track;

use js_sys::{Array, Object, Reflect, Uint8Array};
use record::parcel::{Parcel, answer};
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

fn main() {
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let port = scope.clone();
    let listen = Closure::<dyn Fn(MessageEvent)>::new(move |message: MessageEvent| {
        let question = message.data();
        let parcel = parcel(&question);
        let answer = match parcel.kind.as_str() {
            ports::track::KIND => track::answer(parcel),
            ports::share_copy::KIND => share_copy::answer(parcel),
            _ => answer(parcel),
        };
        send(&port, &member(&question, "id"), &answer);
    });
    scope.set_onmessage(Some(listen.as_ref().unchecked_ref()));
    listen.forget();
    scope.post_message(&"ready".into()).expect("a text can be posted");
}

fn member(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).unwrap_or_default()
}

/// The question as it came; anything else is a parcel of no kind, to which the answer is that it is garbled.
fn parcel(question: &JsValue) -> Parcel {
    let kind = member(question, "kind").as_string().unwrap_or_default();
    let parts = member(question, "parts").dyn_into::<Array>().unwrap_or_default();
    let parts = parts.iter().filter_map(|part| part.dyn_into::<Uint8Array>().ok()).map(|part| part.to_vec()).collect();
    Parcel { kind, parts }
}

fn send(port: &DedicatedWorkerGlobalScope, id: &JsValue, answer: &Parcel) {
    let parts = Array::new();
    let handed_over = Array::new();
    for part in &answer.parts {
        let bytes = Uint8Array::from(part.as_slice());
        handed_over.push(&bytes.buffer());
        parts.push(&bytes);
    }
    let message = Object::new();
    for (name, value) in [("id", id), ("kind", &answer.kind.as_str().into()), ("parts", &parts)] {
        Reflect::set(&message, &name.into(), value).expect("an object of our own takes members");
    }
    port.post_message_with_transfer(&message, &handed_over).expect("bytes can be handed over");
}
