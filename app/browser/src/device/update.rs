//! The service worker: registered, asked for new versions, switched when the person says so.
//!
//! A new version waits until it is told to switch. The page then reloads once, when the new version
//! has taken over. A page whose version another tab has switched reloads when nobody looks at it: its
//! workers have left the cache, but nobody is to lose what stands before them.

use crate::js;
use crate::listener::Listener;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    RegistrationOptions, ServiceWorker, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerUpdateViaCache,
    VisibilityState,
};

/// What the page knows of its service worker.
pub struct Update {
    container: Option<ServiceWorkerContainer>,
    registration: RefCell<Option<ServiceWorkerRegistration>>,
    calls: RefCell<Vec<Rc<dyn Fn()>>>,
    listeners: RefCell<Vec<Listener>>,
    /// Which listener hears the worker that is being installed; the last one only.
    installing: RefCell<Option<Listener>>,
    asked: Cell<bool>,
    overtaken: Cell<bool>,
    reloading: Cell<bool>,
}

impl Update {
    /// Registers the service worker once the page has loaded, where there can be one.
    pub fn start() -> Rc<Self> {
        let container = js::get(&js::navigator(), "serviceWorker").map(JsCast::unchecked_into);
        let update = Rc::new(Self {
            container,
            registration: RefCell::default(),
            calls: RefCell::default(),
            listeners: RefCell::default(),
            installing: RefCell::default(),
            asked: Cell::new(false),
            overtaken: Cell::new(false),
            reloading: Cell::new(false),
        });
        if let Some(container) = &update.container {
            update.watch(container);
            update.register_when_loaded();
        }
        update
    }

    /// Calls back when a new version stands ready, at once when one does already.
    pub fn call(&self, waiting: Rc<dyn Fn()>) {
        self.calls.borrow_mut().push(waiting.clone());
        if self.waiting().is_some() {
            waiting();
        }
    }

    /// Switches to the new version; without one the page reloads as it is.
    pub fn switch(&self) {
        self.asked.set(true);
        let told = self.waiting().map(|worker| worker.post_message(&js::object([("type", "switch".into())])));
        if !matches!(told, Some(Ok(()))) {
            self.reload();
        }
    }

    fn watch(self: &Rc<Self>, container: &ServiceWorkerContainer) {
        let had = container.controller().is_some();
        let (changed, seen) = (self.clone(), self.clone());
        let mut listeners = self.listeners.borrow_mut();
        listeners.push(Listener::new(container, "controllerchange", move |_| changed.taken_over(had)));
        listeners.push(Listener::new(&js::document(), "visibilitychange", move |_| seen.looked_at()));
    }

    fn register_when_loaded(self: &Rc<Self>) {
        if js::document().ready_state() == "complete" {
            return self.register();
        }
        let loaded = self.clone();
        let listener = Listener::new(&js::window(), "load", move |_| loaded.register());
        self.listeners.borrow_mut().push(listener);
    }

    fn register(self: &Rc<Self>) {
        let Some(container) = self.container.clone() else { return };
        let update = self.clone();
        spawn_local(async move {
            let options = RegistrationOptions::new();
            options.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
            let address = js::address("sw.js");
            // A host that has none serves a page that needs the network, and works otherwise.
            if let Ok(made) = JsFuture::from(container.register_with_options(&address, &options)).await {
                update.registered(made.unchecked_into());
            }
        });
    }

    fn registered(self: &Rc<Self>, registration: ServiceWorkerRegistration) {
        let found = self.clone();
        let listener = Listener::new(&registration, "updatefound", move |_| found.installing());
        self.listeners.borrow_mut().push(listener);
        self.registration.replace(Some(registration));
        self.installing();
        self.tell();
    }

    fn installing(self: &Rc<Self>) {
        let worker = self.registration.borrow().as_ref().and_then(ServiceWorkerRegistration::installing);
        let Some(worker) = worker else { return };
        let update = self.clone();
        let listener = Listener::new(&worker, "statechange", move |_| update.tell());
        self.installing.replace(Some(listener));
    }

    /// The version that waits, when another one serves this page.
    fn waiting(&self) -> Option<ServiceWorker> {
        self.container.as_ref()?.controller()?;
        self.registration.borrow().as_ref()?.waiting()
    }

    fn tell(&self) {
        if self.waiting().is_some() {
            let calls = self.calls.borrow().clone();
            calls.iter().for_each(|call| call());
        }
    }

    /// Another version serves the page from now on; `had` says whether one did when it started.
    fn taken_over(&self, had: bool) {
        self.overtaken.set(had);
        if self.asked.get() || (had && hidden()) {
            self.reload();
        }
    }

    /// The page came to the front or went to the back.
    fn looked_at(&self) {
        match hidden() {
            true if self.overtaken.get() => self.reload(),
            true => {}
            false => self.check(),
        }
    }

    fn check(&self) {
        if let Some(Ok(asked)) = self.registration.borrow().as_ref().map(ServiceWorkerRegistration::update) {
            // Without a network there is nothing new.
            spawn_local(async { drop(JsFuture::from(asked).await) });
        }
    }

    fn reload(&self) {
        if !self.reloading.replace(true) {
            // A page that is being left cannot reload, and need not.
            let _ = js::window().location().reload();
        }
    }
}

fn hidden() -> bool {
    js::document().visibility_state() == VisibilityState::Hidden
}
