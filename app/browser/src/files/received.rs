//! Files that come without being asked for: dropped on the page, opened with it, sent from another app.
//!
//! The service worker keeps a file that another app shared in the cache `received`, under
//! `received/file` below the scope, with its name in the header `x-name`.

use super::read;
use crate::js;
use crate::listener::Listener;
use js_sys::{Array, Function, Promise, Reflect};
use ports::files::File;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Cache, CacheStorage, DataTransfer, DragEvent, Event, Response};

const CACHE: &str = "received";
const PLACE: &str = "received/file";

type Dropped = Rc<dyn Fn(File)>;
type Launched = Closure<dyn Fn(JsValue)>;

/// Files that the system opened the page with, until somebody takes them.
#[derive(Default)]
pub struct Inbox {
    waiting: RefCell<Vec<File>>,
    forward: RefCell<Vec<Dropped>>,
    launched: RefCell<Option<Launched>>,
}

impl Inbox {
    /// Listens to the launch queue, where there is one.
    pub fn open(self: &Rc<Self>) {
        let Some(queue) = js::get(&js::window(), "launchQueue") else { return };
        let inbox = Rc::downgrade(self);
        let launched = Closure::<dyn Fn(JsValue)>::new(move |launch: JsValue| {
            let (Some(inbox), Some(handles)) = (inbox.upgrade(), js::get(&launch, "files")) else { return };
            for handle in handles.unchecked_into::<Array>().iter() {
                spawn_local(inbox.clone().arrived(handle));
            }
        });
        if call(&queue, "setConsumer", launched.as_ref()).is_ok() {
            self.launched.replace(Some(launched));
        }
    }

    async fn arrived(self: Rc<Self>, handle: JsValue) {
        let Ok(file) = file_of(&handle).await else { return };
        let file = read(file).await;
        let forward = self.forward.borrow().clone();
        if forward.is_empty() {
            self.waiting.borrow_mut().push(file);
        } else {
            forward.iter().for_each(|dropped| dropped(file.clone()));
        }
    }

    /// From now on hands files on as if they had been dropped, those that wait first.
    pub fn forward(&self, dropped: Dropped) {
        self.waiting.take().into_iter().for_each(|file| dropped(file));
        self.forward.borrow_mut().push(dropped);
    }

    /// The file that waits here or in the service worker's cache.
    pub async fn take(&self) -> Option<File> {
        let waiting = self.waiting.borrow_mut().pop();
        match waiting {
            Some(file) => Some(file),
            None => stashed().await.ok().flatten(),
        }
    }
}

/// The file of a handle, as it is now.
pub async fn file_of(handle: &JsValue) -> Result<web_sys::File, JsValue> {
    let file: Promise = call(handle, "getFile", &JsValue::UNDEFINED)?.dyn_into()?;
    Ok(JsFuture::from(file).await?.unchecked_into())
}

/// Calls a method that web-sys does not have.
pub fn call(object: &JsValue, method: &str, argument: &JsValue) -> Result<JsValue, JsValue> {
    let function: Function = Reflect::get(object, &method.into())?.dyn_into()?;
    function.call1(object, argument)
}

async fn stashed() -> Result<Option<File>, JsValue> {
    let Some(caches) = js::get(&js::window(), "caches") else { return Ok(None) };
    let opened = JsFuture::from(caches.unchecked_into::<CacheStorage>().open(CACHE)).await?;
    let (cache, place): (Cache, String) = (opened.unchecked_into(), js::address(PLACE));
    let found = JsFuture::from(cache.match_with_str(&place)).await?;
    let Ok(response) = found.dyn_into::<Response>() else { return Ok(None) };
    let file = unwrapped(&response).await?;
    JsFuture::from(cache.delete_with_str(&place)).await?;
    Ok(Some(file))
}

async fn unwrapped(response: &Response) -> Result<File, JsValue> {
    let header = |name| response.headers().get(name).map(Option::unwrap_or_default);
    let (name, media) = (header("x-name")?, header("content-type")?);
    let name = js_sys::decode_uri_component(&name).map_or(name, String::from);
    let bytes = js::bytes(&JsFuture::from(response.array_buffer()?).await?);
    Ok(File { name, media, bytes })
}

/// Takes files dropped anywhere on the page, so that the browser does not open them in its place. Text
/// dragged into a field is left alone.
pub fn drops(dropped: Dropped) -> [Listener; 2] {
    let window = js::window();
    [
        Listener::new(&window, "dragover", |event| drop(carried(event))),
        Listener::new(&window, "drop", move |event| {
            let Some(files) = carried(event).and_then(|data| data.files()) else { return };
            for file in (0..files.length()).filter_map(|at| files.get(at)) {
                let dropped = dropped.clone();
                spawn_local(async move { dropped(read(file).await) });
            }
        }),
    ]
}

/// What is dragged, when it is files; then the browser is told that we take them.
fn carried(event: Event) -> Option<DataTransfer> {
    let event: DragEvent = event.unchecked_into();
    let data = event.data_transfer()?;
    data.types().includes(&"Files".into(), 0).then(|| event.prevent_default())?;
    Some(data)
}
