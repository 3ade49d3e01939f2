//! Files of the app, fetched below the page's own address.

use crate::js;
use ports::{Assets, Later};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::Response;

/// Fetches from the app's own folder; offline the service worker answers.
pub struct AppAssets;

impl Assets for AppAssets {
    fn bytes(&self, path: &str) -> Later<'_, Result<Vec<u8>, String>> {
        let address = js::address(path);
        Box::pin(async move { fetched(&address).await.map_err(|error| js::reason(&error)) })
    }
}

async fn fetched(address: &str) -> Result<Vec<u8>, JsValue> {
    let response: Response = JsFuture::from(js::window().fetch_with_str(address)).await?.unchecked_into();
    if !response.ok() {
        return Err(format!("{} {address}", response.status()).into());
    }
    Ok(js::bytes(&JsFuture::from(response.array_buffer()?).await?))
}
