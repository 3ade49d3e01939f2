//! Files out: the share sheet, a chosen file that is read back, a download, the browser's viewer.

use super::received::{call, file_of};
use crate::js;
use crate::timer;
use js_sys::{Promise, Uint8Array};
use ports::files::{File, Left};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{BlobPropertyBag, FilePropertyBag, HtmlAnchorElement, ShareData, Url};

/// How long a download may take to begin before its bytes are let go.
const DOWNLOAD_MS: u32 = 60_000;

/// How long the viewer may ask for a file's bytes again, to save or print it.
const VIEW_MS: u32 = 1_800_000;

fn share_data(file: &File) -> Result<ShareData, JsValue> {
    let options = FilePropertyBag::new();
    options.set_type(&file.media);
    let parts = js::list([Uint8Array::from(file.bytes.as_slice())]);
    let file = web_sys::File::new_with_u8_array_sequence_and_options(&parts, &file.name, &options)?;
    let data = ShareData::new();
    data.set_files(&js::list([file]));
    Ok(data)
}

/// Whether the share sheet takes this very file: browsers go by name and type.
pub fn can_share(file: &File) -> bool {
    let navigator = js::navigator();
    let there = js::get(&navigator, "share").is_some() && js::get(&navigator, "canShare").is_some();
    there && share_data(file).is_ok_and(|data| navigator.can_share_with_data(&data))
}

/// Opens the share sheet.
pub fn begin_share(file: &File) -> Result<Promise, JsValue> {
    call(&js::navigator(), "share", share_data(file)?.as_ref())?.dyn_into()
}

/// What became of the share sheet.
pub async fn shared(begun: Result<Promise, JsValue>) -> Left {
    let answer = async { JsFuture::from(begun?).await }.await;
    answer.map_or_else(|error| stopped(&error), |_| Left::Shared)
}

/// Opens the picker for a file to write into.
pub fn begin_save(name: &str) -> Result<Promise, JsValue> {
    let options = js::object([("suggestedName", name.into())]);
    call(&js::window(), "showSaveFilePicker", &options)?.dyn_into()
}

/// What became of the picker: the file is written, closed and read again.
pub async fn saved(begun: Result<Promise, JsValue>, file: File) -> Left {
    match async { written(&JsFuture::from(begun?).await?, &file.bytes).await }.await {
        Ok(kept) if kept == file.bytes => Left::ReadBack,
        Ok(_) => Left::Refused("read back with other bytes".into()),
        Err(error) => stopped(&error),
    }
}

/// Writes into a file and gives what it then holds.
async fn written(handle: &JsValue, bytes: &[u8]) -> Result<Vec<u8>, JsValue> {
    let stream = promised(handle, "createWritable", &JsValue::UNDEFINED).await?;
    promised(&stream, "write", &Uint8Array::from(bytes)).await?;
    promised(&stream, "close", &JsValue::UNDEFINED).await?;
    let kept = file_of(handle).await?;
    Ok(js::bytes(&JsFuture::from(kept.array_buffer()).await?))
}

async fn promised(object: &JsValue, method: &str, argument: &JsValue) -> Result<JsValue, JsValue> {
    JsFuture::from(call(object, method, argument)?.dyn_into::<Promise>()?).await
}

/// A person who closes a sheet or picker aborts it; anything else was refused.
fn stopped(error: &JsValue) -> Left {
    match js::name(error).as_str() {
        "AbortError" => Left::Cancelled,
        _ => Left::Refused(js::reason(error)),
    }
}

/// Hands the file to the browser as a download.
pub fn download(file: &File) -> Left {
    match offered(file, DOWNLOAD_MS).and_then(|address| anchor(&address, &file.name)) {
        Ok(anchor) => {
            anchor.click();
            Left::Downloaded
        }
        Err(error) => stopped(&error),
    }
}

fn anchor(address: &str, name: &str) -> Result<HtmlAnchorElement, JsValue> {
    let anchor: HtmlAnchorElement = js::document().create_element("a")?.unchecked_into();
    anchor.set_href(address);
    anchor.set_download(name);
    Ok(anchor)
}

/// Opens the file in the browser's viewer; as a download where no window may be opened.
pub fn show(file: &File) -> Left {
    let window = offered(file, VIEW_MS).and_then(|address| js::window().open_with_url_and_target(&address, "_blank"));
    match window {
        Ok(Some(_)) => Left::Downloaded,
        _ => download(file),
    }
}

/// An address for the file's bytes, good for a while.
fn offered(file: &File, ms: u32) -> Result<String, JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(&file.media);
    let parts = js::list([Uint8Array::from(file.bytes.as_slice())]);
    let blob = web_sys::Blob::new_with_u8_array_sequence_and_options(&parts, &options)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let late = address.clone();
    spawn_local(async move {
        timer::wait(ms).await;
        // An address that is gone already needs no letting go.
        let _ = Url::revoke_object_url(&late);
    });
    Ok(address)
}
