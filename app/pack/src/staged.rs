//! The staged files: their digests, and the move of the code into one folder named after its bytes.

use std::io::Result;
use std::path::Path;

use sha2::{Digest, Sha256};

/// A file as the service worker lists it.
pub struct Listed {
    /// Path below the app's root, with `/` between its parts.
    pub path: String,
    /// SHA-256 of its final bytes, in hexadecimal.
    pub digest: String,
}

/// Moves scripts, modules and styles into `code-<digest>/` and returns that folder's name.
///
/// Paths below the folder stay as they were, so that relative imports stay whole.
pub fn move_code(folder: &Path) -> Result<String> {
    let code: Vec<Listed> = files(folder)?.into_iter().filter(|file| is_code(&file.path)).collect();
    let name = format!("code-{}", &digest_of_list(&code)[..16]);
    for file in &code {
        let target = folder.join(&name).join(&file.path);
        std::fs::create_dir_all(target.parent().expect("a joined path has a parent"))?;
        std::fs::rename(folder.join(&file.path), target)?;
    }
    remove_empty(folder)?;
    Ok(name)
}

/// Every file below the folder, ordered by path.
pub fn files(folder: &Path) -> Result<Vec<Listed>> {
    let mut found = Vec::new();
    walk(folder, "", &mut found)?;
    found.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(found)
}

/// One digest over paths and digests.
pub fn digest_of_list(files: &[Listed]) -> String {
    let lines: String = files.iter().map(|file| format!("{} {}\n", file.digest, file.path)).collect();
    digest(lines.as_bytes())
}

/// SHA-256 in hexadecimal.
pub fn digest(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

fn is_code(path: &str) -> bool {
    [".js", ".wasm", ".css"].iter().any(|end| path.ends_with(end))
}

fn walk(folder: &Path, prefix: &str, found: &mut Vec<Listed>) -> Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let path = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            walk(&entry.path(), &format!("{path}/"), found)?;
        } else {
            found.push(Listed { path, digest: digest(&std::fs::read(entry.path())?) });
        }
    }
    Ok(())
}

/// Removes the folders that hold nothing; true when this one is empty itself.
fn remove_empty(folder: &Path) -> Result<bool> {
    let mut empty = true;
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_type()?.is_dir() && remove_empty(&entry.path())? {
            std::fs::remove_dir(entry.path())?;
        } else {
            empty = false;
        }
    }
    Ok(empty)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digest_is_sha_256() {
        // FIPS 180-2, appendix B.1, the one-block message "abc".
        assert_eq!(digest(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    #[test]
    fn a_moved_file_changes_the_digest_of_the_list() {
        let list = |path: &str| digest_of_list(&[Listed { path: path.into(), digest: digest(b"x") }]);
        assert_ne!(list("a.js"), list("b.js"));
    }

    #[test]
    fn code_is_scripts_modules_and_styles() {
        assert!(["boot.js", "shell_bg.wasm", "look/a.css"].iter().all(|path| is_code(path)));
        assert!(!["index.html", "icon.svg", "survey.json", "manifest.webmanifest"].iter().any(|path| is_code(path)));
    }
}
