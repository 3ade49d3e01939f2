//! The few things one does with any JavaScript value: read a member that may be missing, set one,
//! and say why something failed.

use js_sys::{Array, Object, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Document, Navigator, Window};

/// The page's window.
pub fn window() -> Window {
    web_sys::window().expect("the ports are made in a page, which has a window")
}

/// The page's document.
pub fn document() -> Document {
    window().document().expect("a window that runs scripts has a document")
}

/// The page's navigator.
pub fn navigator() -> Navigator {
    window().navigator()
}

/// A member, unless it is missing, undefined or null.
pub fn get(object: &JsValue, name: &str) -> Option<JsValue> {
    let value = Reflect::get(object, &name.into()).ok()?;
    (!value.is_undefined() && !value.is_null()).then_some(value)
}

/// A member that is a text.
pub fn text(object: &JsValue, name: &str) -> Option<String> {
    get(object, name)?.as_string()
}

/// An object with these members.
pub fn object<const N: usize>(members: [(&str, JsValue); N]) -> Object {
    let object = Object::new();
    for (name, value) in members {
        Reflect::set(&object, &name.into(), &value).expect("a plain object takes any member");
    }
    object
}

/// A list of these values.
pub fn list<T: Into<JsValue>>(values: impl IntoIterator<Item = T>) -> Array {
    let list = Array::new();
    for value in values {
        list.push(&value.into());
    }
    list
}

/// The bytes of a typed array or buffer.
pub fn bytes(value: &JsValue) -> Vec<u8> {
    match value.dyn_ref::<Uint8Array>() {
        Some(array) => array.to_vec(),
        None => Uint8Array::new(value).to_vec(),
    }
}

/// The name of an error ("QuotaExceededError"), empty for what is not one.
pub fn name(error: &JsValue) -> String {
    text(error, "name").unwrap_or_default()
}

/// Name and message of an error, as the browser said them.
pub fn reason(error: &JsValue) -> String {
    let message = text(error, "message").or_else(|| error.as_string()).unwrap_or_default();
    match name(error).as_str() {
        "" => message,
        name => format!("{name}: {message}"),
    }
}

/// The address of a file of the app by its path below the app's root.
pub fn address(path: &str) -> String {
    let base = document().base_uri().ok().flatten().unwrap_or_default();
    web_sys::Url::new_with_base(path, &base).map_or_else(|_| path.to_owned(), |url| url.href())
}
