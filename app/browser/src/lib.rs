//! The ports, answered by web APIs.
//!
//! In go the questions of `ports`, out come plain values or a port's own fault: a `JsValue` becomes
//! one on the line where it appears. Knows no screen and no record; never panics because a browser
//! lacks something, since each port has an answer for that.

use ports::Ports;
use std::rc::Rc;

mod assets;
mod clock;
mod courier;
mod device;
mod draft;
mod files;
mod js;
mod listener;
mod position;
mod press;
mod slot;
mod store;
mod tabs;
mod timer;
mod worker;

/// All ports of the page that runs this. Registers the service worker once the page has loaded.
pub fn ports() -> Ports {
    let store = Rc::new(store::BookStore::default());
    Ports {
        store: store.clone(),
        tabs: Rc::new(tabs::BookTabs::default()),
        draft: Rc::new(draft::LocalDraft),
        position: Rc::new(position::DevicePosition),
        files: Rc::new(files::PageFiles::new()),
        assets: Rc::new(assets::AppAssets),
        time: Rc::new(clock::DeviceClock),
        chance: Rc::new(clock::DeviceChance),
        device: Rc::new(device::ThisDevice::new()),
        press: Rc::new(press::PressWorker::new(store)),
        courier: Rc::new(courier::CourierWorker::new()),
    }
}
