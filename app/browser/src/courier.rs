//! The courier port: `{id, kind, parts}` to the worker and back.

use crate::js;
use crate::worker::{Desk, parcel};
use js_sys::Array;
use ports::Later;
use ports::courier::{Courier, CourierFault, Parcel};
use wasm_bindgen::{JsCast, JsValue};

/// The worker that reads, merges and writes large files.
pub struct CourierWorker {
    desk: Desk,
}

impl CourierWorker {
    /// Not started yet.
    pub fn new() -> Self {
        Self { desk: Desk::new("courier_loader.js", |_| Box::pin(async { Ok(()) })) }
    }
}

impl Courier for CourierWorker {
    fn send(&self, sent: Parcel) -> Later<'_, Result<Parcel, CourierFault>> {
        Box::pin(async move {
            let (parts, moved) = packed(sent.parts);
            let question = js::object([("kind", sent.kind.into()), ("parts", parts.into())]);
            let answer = self.desk.ask(question, moved).await.map_err(CourierFault::Gone)?;
            unpacked(&answer).ok_or_else(|| CourierFault::Gone("no parcel".into()))
        })
    }
}

fn packed(parts: Vec<Vec<u8>>) -> (Array, Array) {
    let (list, moved) = (Array::new(), Array::new());
    for part in parts {
        let (array, buffer) = parcel(&part);
        list.push(&array);
        moved.push(&buffer);
    }
    (list, moved)
}

fn unpacked(answer: &JsValue) -> Option<Parcel> {
    let parts: Array = js::get(answer, "parts")?.dyn_into().ok()?;
    let parts = parts.iter().map(|part| js::bytes(&part)).collect();
    Some(Parcel { kind: js::text(answer, "kind")?, parts })
}
