//! What the device is, what its browser promises about our storage, and new versions of the app.

use crate::{js, timer};
use agent::Agent;
use js_sys::{Function, Promise};
use ports::device::{Platform, Storage};
use ports::{Device, Later};
use std::rc::Rc;
use update::Update;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{StorageEstimate, StorageManager};

mod agent;
mod update;

/// How long the browser may think about our storage before we go on without its answer.
const ANSWER_MS: u32 = 2_000;

/// Long enough to be felt through a glove.
const BUZZ_MS: u32 = 30;

/// The device that the page runs on.
pub struct ThisDevice {
    update: Rc<Update>,
}

impl ThisDevice {
    /// Registers the service worker once the page has loaded.
    pub fn new() -> Self {
        Self { update: Update::start() }
    }
}

impl Device for ThisDevice {
    fn platform(&self) -> Platform {
        described(|agent| agent.platform())
    }

    fn describe(&self) -> String {
        described(|agent| agent.describe())
    }

    fn installed(&self) -> bool {
        let standalone = js::window().match_media("(display-mode: standalone)").ok().flatten();
        // Safari on iPhones says it in a member of its own.
        let member = js::get(&js::navigator(), "standalone").is_some_and(|value| value.is_truthy());
        member || standalone.is_some_and(|query| query.matches())
    }

    fn storage(&self) -> Later<'_, Storage> {
        Box::pin(async {
            let Some(manager) = manager() else { return Storage::default() };
            // Both are asked before either is awaited, so that two seconds are the most in all.
            let (estimate, promised) = (manager.estimate(), manager.persisted());
            let both = async { (used(estimate).await, yes_or_no(promised).await) };
            let (used, promised) = timer::within(ANSWER_MS, both).await.unwrap_or_default();
            Storage { used, promised }
        })
    }

    fn ask_promise(&self) -> Later<'_, Option<bool>> {
        Box::pin(async { timer::within(ANSWER_MS, yes_or_no(manager()?.persist())).await.flatten() })
    }

    fn on_update(&self, waiting: Box<dyn Fn()>) {
        self.update.call(waiting.into());
    }

    fn use_update(&self) {
        self.update.switch();
    }

    fn buzz(&self) {
        let navigator = js::navigator();
        let vibrate = js::get(&navigator, "vibrate").and_then(|member| member.dyn_into::<Function>().ok());
        if let Some(vibrate) = vibrate {
            // A device that will not is no fault.
            let _ = vibrate.call1(&navigator, &BUZZ_MS.into());
        }
    }
}

fn described<T>(read: impl FnOnce(&Agent<'_>) -> T) -> T {
    let navigator = js::navigator();
    let says = navigator.user_agent().unwrap_or_default();
    read(&Agent { says: &says, fingers: navigator.max_touch_points() })
}

/// The storage manager, which WebKitGTK and insecure pages lack.
fn manager() -> Option<StorageManager> {
    js::get(&js::navigator(), "storage").map(JsCast::unchecked_into)
}

async fn used(estimate: Result<Promise, JsValue>) -> Option<f64> {
    JsFuture::from(estimate.ok()?).await.ok()?.unchecked_into::<StorageEstimate>().get_usage()
}

async fn yes_or_no(answer: Result<Promise, JsValue>) -> Option<bool> {
    JsFuture::from(answer.ok()?).await.ok()?.as_bool()
}
