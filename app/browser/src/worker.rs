//! A worker that is started when first asked, and again when it has died.
//!
//! In go numbered questions, out come the answers under the same numbers, or `{id, fault}` where the worker
//! cannot answer; a fault without a number is one of getting ready. Questions asked before the worker is ready
//! wait here: words sent to a worker that has not said "ready" are lost.

use crate::js;
use crate::listener::Listener;
use crate::slot::{Teller, slot};
use js_sys::{Array, Object, Reflect, Uint8Array};
use ports::Later;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::{Event, MessageEvent, Url, Worker, WorkerOptions, WorkerType};

#[wasm_bindgen]
extern "C" {
    /// `import.meta` of the script that runs this.
    type Meta;

    #[wasm_bindgen(thread_local_v2, js_namespace = import, js_name = meta)]
    static META: Meta;

    #[wasm_bindgen(method, getter, structural)]
    fn url(this: &Meta) -> String;
}

/// What a worker needs between its "ready" and the first question.
pub type Prepare = Rc<dyn Fn(Rc<Running>) -> Later<'static, Result<(), String>>>;

/// Starts a worker and keeps its questions.
pub struct Desk {
    script: &'static str,
    prepare: Prepare,
    running: Rc<RefCell<Option<Rc<Running>>>>,
    asked: Cell<u32>,
}

/// A word that somebody waits to hear.
type Awaited = (&'static str, Teller<Result<(), String>>);

/// The number of a question, and who waits for its answer. They are few: a list finds them quickly.
type Waiting = (u32, Teller<Result<JsValue, String>>);

/// A worker that runs.
pub struct Running {
    worker: Worker,
    open: Cell<bool>,
    queue: RefCell<Vec<(Object, Array)>>,
    answers: RefCell<Vec<Waiting>>,
    word: RefCell<Option<Awaited>>,
    listeners: RefCell<Vec<Listener>>,
}

impl Desk {
    /// A desk whose worker is loaded by a script beside the one that runs this.
    pub fn new(
        script: &'static str,
        prepare: impl Fn(Rc<Running>) -> Later<'static, Result<(), String>> + 'static,
    ) -> Self {
        Self { script, prepare: Rc::new(prepare), running: Rc::default(), asked: Cell::new(0) }
    }

    /// Sends a question and waits for its answer, or for the reason why there will be none.
    pub async fn ask(&self, question: Object, moved: Array) -> Result<JsValue, String> {
        let running = self.running()?;
        let id = self.asked.get().wrapping_add(1);
        self.asked.set(id);
        Reflect::set(&question, &"id".into(), &id.into()).map_err(|error| js::reason(&error))?;
        let (teller, told) = slot();
        running.answers.borrow_mut().push((id, teller));
        match running.open.get() {
            true => running.post(&question, &moved)?,
            false => running.queue.borrow_mut().push((question, moved)),
        }
        told.await
    }

    /// Ends the worker, if one runs: the next question starts another.
    pub fn renew(&self, reason: &str) {
        let running = self.running.borrow().clone();
        if let Some(running) = running {
            running.end(reason, &self.running);
        }
    }

    fn running(&self) -> Result<Rc<Running>, String> {
        if let Some(running) = self.running.borrow().as_ref() {
            return Ok(running.clone());
        }
        let worker = started(self.script).map_err(|error| js::reason(&error))?;
        let running = Running::new(worker, Rc::downgrade(&self.running));
        self.running.replace(Some(running.clone()));
        spawn_local(opened(running.clone(), self.prepare.clone(), self.running.clone()));
        Ok(running)
    }
}

/// The only place where a worker is made.
fn started(script: &str) -> Result<Worker, JsValue> {
    let address = Url::new_with_base(script, &META.with(Meta::url))?.href();
    let options = WorkerOptions::new();
    options.set_type(WorkerType::Module);
    Worker::new_with_options(&address, &options)
}

async fn opened(running: Rc<Running>, prepare: Prepare, desk: Rc<RefCell<Option<Rc<Running>>>>) {
    match prepared(&running, prepare).await {
        Ok(()) => running.open(),
        Err(reason) => running.end(&reason, &desk),
    }
}

async fn prepared(running: &Rc<Running>, prepare: Prepare) -> Result<(), String> {
    running.hear("ready").await?;
    prepare(running.clone()).await
}

impl Running {
    fn new(worker: Worker, desk: Weak<RefCell<Option<Rc<Running>>>>) -> Rc<Self> {
        let running = Rc::new(Self {
            worker,
            open: Cell::new(false),
            queue: RefCell::default(),
            answers: RefCell::default(),
            word: RefCell::default(),
            listeners: RefCell::default(),
        });
        let hears = Rc::downgrade(&running);
        let message = Listener::new(&running.worker, "message", move |event| {
            if let Some(running) = hears.upgrade() {
                running.take(&event.unchecked_into::<MessageEvent>().data());
            }
        });
        let ends = ["error", "messageerror"].map(|kind| {
            let (hears, desk) = (Rc::downgrade(&running), desk.clone());
            Listener::new(&running.worker, kind, move |event: Event| {
                event.prevent_default();
                if let (Some(running), Some(desk)) = (hears.upgrade(), desk.upgrade()) {
                    running.end(&js::text(&event, "message").unwrap_or_else(|| event.type_()), &desk);
                }
            })
        });
        running.listeners.borrow_mut().push(message);
        running.listeners.borrow_mut().extend(ends);
        running
    }

    /// Sends a message; the buffers in `moved` go with it and are empty here afterwards.
    pub fn post(&self, message: &Object, moved: &Array) -> Result<(), String> {
        self.worker.post_message_with_transfer(message, moved).map_err(|error| js::reason(&error))
    }

    /// Waits until the worker says this word. One word is waited for at a time.
    pub async fn hear(&self, word: &'static str) -> Result<(), String> {
        let (teller, told) = slot();
        self.word.replace(Some((word, teller)));
        told.await
    }

    fn take(&self, message: &JsValue) {
        if let Some(said) = message.as_string() {
            return self.take_word(&said);
        }
        let answer = js::text(message, "fault").map_or_else(|| Ok(message.clone()), Err);
        match js::get(message, "id").and_then(|id| id.as_f64()) {
            Some(id) => self.take_answer(id as u32, answer),
            None => self.refuse_word(answer.err().as_deref().unwrap_or("a message without a number")),
        }
    }

    fn take_word(&self, said: &str) {
        let awaited = self.word.borrow_mut().take_if(|(word, _)| *word == said);
        if let Some((_, teller)) = awaited {
            teller.tell(Ok(()));
        }
    }

    fn take_answer(&self, id: u32, answer: Result<JsValue, String>) {
        let mut answers = self.answers.borrow_mut();
        if let Some(at) = answers.iter().position(|(asked, _)| *asked == id) {
            answers.swap_remove(at).1.tell(answer);
        }
    }

    fn refuse_word(&self, reason: &str) {
        if let Some((_, teller)) = self.word.take() {
            teller.tell(Err(reason.to_owned()));
        }
    }

    fn open(&self) {
        self.open.set(true);
        for (question, moved) in self.queue.take() {
            if let Err(reason) = self.post(&question, &moved) {
                self.refuse(&reason);
            }
        }
    }

    /// Ends the worker: whoever waits is told why, and the next question starts another one.
    fn end(self: &Rc<Self>, reason: &str, desk: &RefCell<Option<Rc<Running>>>) {
        desk.borrow_mut().take_if(|running| Rc::ptr_eq(running, self));
        self.worker.terminate();
        self.refuse(reason);
    }

    fn refuse(&self, reason: &str) {
        self.refuse_word(reason);
        for (_, teller) in self.answers.take() {
            teller.tell(Err(reason.to_owned()));
        }
    }
}

/// Bytes as the browser's own array, and the buffer that can be moved to a worker.
pub fn parcel(bytes: &[u8]) -> (Uint8Array, JsValue) {
    let array = Uint8Array::from(bytes);
    let buffer = array.buffer().into();
    (array, buffer)
}
