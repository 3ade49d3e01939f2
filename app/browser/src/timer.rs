//! Waiting, and giving up waiting.

use crate::js;
use crate::slot::slot;
use std::future::{Future, poll_fn};
use std::pin::pin;
use std::task::Poll;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Calls back once after a while, unless it is dropped before.
pub struct Timer {
    id: i32,
    _rings: Closure<dyn Fn()>,
}

impl Timer {
    /// Calls `rings` after so many milliseconds.
    pub fn new(ms: u32, rings: impl Fn() + 'static) -> Self {
        let rings = Closure::<dyn Fn()>::new(rings);
        let ms = i32::try_from(ms).unwrap_or(i32::MAX);
        let id = js::window()
            .set_timeout_with_callback_and_timeout_and_arguments_0(rings.as_ref().unchecked_ref(), ms)
            .expect("setting a timer never throws");
        Self { id, _rings: rings }
    }
}

impl Drop for Timer {
    fn drop(&mut self) {
        js::window().clear_timeout_with_handle(self.id);
    }
}

/// Resolves after so many milliseconds.
pub async fn wait(ms: u32) {
    let (teller, told) = slot();
    let _timer = Timer::new(ms, move || teller.tell(()));
    told.await;
}

/// The value of a future, unless it takes longer than so many milliseconds.
pub async fn within<T>(ms: u32, future: impl Future<Output = T>) -> Option<T> {
    let (mut future, mut late) = (pin!(future), pin!(wait(ms)));
    poll_fn(|context| {
        if let Poll::Ready(value) = future.as_mut().poll(context) {
            return Poll::Ready(Some(value));
        }
        late.as_mut().poll(context).map(|()| None)
    })
    .await
}
