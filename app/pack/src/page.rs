//! The page: where its links point, and its policy.

use std::io::{Error, ErrorKind, Result};

const LINK: &str = "./code/";
const POLICY: (&str, &str) = (r#"http-equiv="Content-Security-Policy" content=""#, "\"");

/// The page with its links to `./code/` pointing at the folder `code`.
///
/// **Errors**: there is no such link, so the page would start nothing.
pub fn point_at(page: &str, code: &str) -> Result<String> {
    if !page.contains(LINK) {
        return Err(Error::new(ErrorKind::InvalidData, "index.html links to nothing in ./code/"));
    }
    Ok(page.replace(LINK, &format!("./{code}/")))
}

/// The policy of the page's meta tag.
///
/// **Errors**: there is none, so the first visit would be unguarded.
pub fn policy(page: &str) -> Result<String> {
    page.split_once(POLICY.0)
        .and_then(|(_, rest)| rest.split_once(POLICY.1))
        .map(|(policy, _)| policy.to_owned())
        .ok_or_else(|| Error::new(ErrorKind::InvalidData, "index.html has no Content-Security-Policy"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_link_is_pointed_at_the_code() {
        let page = r#"<link href="./code/a.css"><script src="./code/boot.js">"#;
        let expected = r#"<link href="./code-1/a.css"><script src="./code-1/boot.js">"#;
        assert_eq!(point_at(page, "code-1").expect("it has links"), expected);
        assert!(point_at("<p>", "code-1").is_err());
    }

    #[test]
    fn policy_is_read_from_the_page() {
        let page = r#"<meta http-equiv="Content-Security-Policy" content="default-src 'none'"><p class="a">"#;
        assert_eq!(policy(page).expect("it has one"), "default-src 'none'");
        assert!(policy("<p>").is_err());
    }

    #[test]
    fn the_real_page_has_links_and_a_policy_without_remote_origins() {
        let page = include_str!("../../shell/index.html");
        let policy = policy(page).expect("the page has a policy");
        assert!(policy.starts_with("default-src 'none'; script-src 'self' 'wasm-unsafe-eval';"));
        assert!(!policy.contains("://") && !policy.contains("unsafe-inline") && !policy.contains('*'));
        assert!(point_at(page, "code-1").is_ok());
        assert!(!page.contains("<style") && !page.contains(" style=") && !page.contains("://"));
    }
}
