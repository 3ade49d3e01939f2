//! Runs after the build: takes the page's module apart, versions every file by its bytes and writes the service worker.
//!
//! In goes the staging folder that Trunk names in `TRUNK_STAGING_DIR`. Out comes the same folder with the modules as they
//! are served, scripts, modules and styles moved into `code-<digest>/`, the page pointing there, and `sw.js` holding the
//! digest of every file.

use std::path::PathBuf;
use std::process::ExitCode;

mod modules;
mod page;
mod staged;
mod worker;

fn main() -> ExitCode {
    let Some(folder) = std::env::var_os("TRUNK_STAGING_DIR").map(PathBuf::from) else {
        eprintln!("pack: TRUNK_STAGING_DIR is not set; Trunk sets it when it calls its hooks");
        return ExitCode::FAILURE;
    };
    match modules(&folder).and_then(|()| pack(&folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(fault) => {
            eprintln!("pack: {}: {fault}", folder.display());
            ExitCode::FAILURE
        }
    }
}

/// The modules as they are served; a build for trying things out is not made small.
fn modules(folder: &std::path::Path) -> std::io::Result<()> {
    let profile = std::env::var("TRUNK_PROFILE").unwrap_or_else(|_| "release".to_owned());
    let module = modules::built(&std::env::current_exe()?, &profile)
        .ok_or_else(|| std::io::Error::other("this program does not lie in a target folder"))?;
    modules::take_apart(&module, folder)?;
    if profile == "release" { modules::optimise(folder) } else { Ok(()) }
}

/// Versions the folder and writes its service worker.
///
/// **Errors**: the folder cannot be read or written, or the page lacks its policy or its links to `./code/`;
/// the folder may then be half done, and Trunk throws it away.
fn pack(folder: &std::path::Path) -> std::io::Result<()> {
    let code = staged::move_code(folder)?;
    let page_path = folder.join("index.html");
    let page = page::point_at(&std::fs::read_to_string(&page_path)?, &code)?;
    std::fs::write(&page_path, &page)?;
    let files = staged::files(folder)?;
    std::fs::write(folder.join(worker::NAME), worker::render(&files, &page::policy(&page)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r#"<meta http-equiv="Content-Security-Policy" content="default-src 'none'">
        <link rel="stylesheet" href="./code/look/a.css"><script type="module" src="./code/boot.js"></script>"#;

    fn stage(name: &str, script: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("glassine-pack-{}-{name}", std::process::id()));
        let _ = std::fs::remove_dir_all(&folder);
        std::fs::create_dir_all(folder.join("look")).expect("the temporary folder can be made");
        for (path, text) in [("index.html", PAGE), ("boot.js", script), ("look/a.css", "a{}"), ("icon.svg", "<svg/>")] {
            std::fs::write(folder.join(path), text).expect("the temporary folder can be written");
        }
        folder
    }

    fn packed(name: &str, script: &str) -> (PathBuf, String, String) {
        let folder = stage(name, script);
        pack(&folder).expect("a whole folder can be packed");
        let page = std::fs::read_to_string(folder.join("index.html")).expect("the page is there");
        let worker = std::fs::read_to_string(folder.join("sw.js")).expect("the worker is there");
        (folder, page, worker)
    }

    #[test]
    fn every_file_is_listed_and_the_code_moved() {
        let (folder, page, worker) = packed("listed", "1");
        let start = page.find("code-").expect("the page points at the code");
        let code = &page[start..start + "code-0123456789abcdef".len()];
        for path in [format!("{code}/boot.js"), format!("{code}/look/a.css"), "icon.svg".into(), "index.html".into()] {
            assert!(folder.join(&path).is_file(), "{path} is staged");
            assert!(worker.contains(&format!("[\"{path}\",")), "{path} is listed");
        }
        assert!(!folder.join("look").exists(), "the emptied folder is gone");
        assert!(!worker.contains("\"sw.js\""), "the worker does not list itself");
        assert!(!worker.contains("__"), "no blank is left in the worker");
    }

    #[test]
    fn new_bytes_under_the_same_names_make_a_new_version() {
        let (_, page_before, worker_before) = packed("before", "1");
        let (_, page_after, worker_after) = packed("after", "2");
        let (_, page_again, worker_again) = packed("again", "1");
        assert_ne!(page_before, page_after);
        assert_ne!(worker_before, worker_after);
        assert_eq!((page_before, worker_before), (page_again, worker_again));
    }

    #[test]
    fn a_page_without_policy_is_refused() {
        let folder = stage("bare", "1");
        std::fs::write(folder.join("index.html"), "<script src=\"./code/boot.js\"></script>").expect("writable");
        assert!(pack(&folder).is_err());
    }
}
