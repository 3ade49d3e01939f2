//! The service worker: the template with its list, policy and version filled in.

use serde_json::json;

use crate::staged::{Listed, digest};

/// Its file name; it stays at the root, because its place decides what it serves.
pub const NAME: &str = "sw.js";

const TEMPLATE: &str = include_str!("sw.js");

/// What only a header can say: who may frame the page.
const ONLY_HEADER: &str = "; frame-ancestors 'none'";

/// The service worker's script.
///
/// The version is the digest of all that is filled in and of the template, so that any difference is a new version.
pub fn render(files: &[Listed], policy: &str) -> String {
    let list: Vec<(&str, &str, &str)> =
        files.iter().map(|file| (file.path.as_str(), file.digest.as_str(), media(&file.path))).collect();
    let whole = TEMPLATE
        .replace("\"__POLICY__\"", &json!(format!("{policy}{ONLY_HEADER}")).to_string())
        .replace("\"__FILES__\"", &json!(list).to_string());
    let version = digest(whole.as_bytes());
    whole.replace("__VERSION__", &version[..16])
}

/// The media type by the end of the name.
fn media(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, end)| end) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("json") => "application/json",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("jpg") => "image/jpeg",
        Some("ttf") => "font/ttf",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn listed(path: &str) -> Vec<Listed> {
        vec![Listed { path: path.into(), digest: digest(b"x") }]
    }

    #[test]
    fn the_header_says_who_may_frame_the_page() {
        assert!(render(&[], "default-src 'none'").contains(r#""default-src 'none'; frame-ancestors 'none'""#));
    }

    #[test]
    fn another_policy_is_another_version() {
        let version = |policy: &str| render(&listed("a.js"), policy).lines().nth(4).map(str::to_owned);
        assert_ne!(version("default-src 'none'"), version("default-src 'self'"));
    }

    #[test]
    fn every_kind_of_file_has_its_media_type() {
        assert_eq!(media("a/shell_bg.wasm"), "application/wasm");
        assert_eq!(media("manifest.webmanifest"), "application/manifest+json");
        assert_eq!(media("LICENSE"), "application/octet-stream");
    }

    #[test]
    fn the_template_stays_short() {
        assert!(TEMPLATE.lines().count() <= 120);
    }
}
