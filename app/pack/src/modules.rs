//! The modules: the page's taken apart where its code says so, and each made small.
//!
//! In goes what the compiler left in the target folder and what Trunk staged. Out come, staged, the page's first module
//! with its script, the second with the script that fetches it (`wasm_split_cli_support`), and all modules as
//! `wasm-opt` leaves them. Trunk binds the page's module too, whole; that is replaced. A module keeps its relocations
//! until it is taken apart, so nothing may have been optimised before.

use std::io::{Error, Result};
use std::path::{Path, PathBuf};
use std::process::Command;

/// What browsers of the year have; Rust's code uses it.
const FEATURES: [&str; 6] = [
    "--enable-bulk-memory",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
];

/// Where the compiler left the page's module: the target folder is known by this program, which lies in it.
pub fn built(program: &Path, profile: &str) -> Option<PathBuf> {
    let target = program.parent()?.parent()?;
    Some(target.join("wasm32-unknown-unknown").join(profile).join("shell.wasm"))
}

/// Takes the page's module apart into the staging folder.
///
/// **Errors**: the module is not there, has no relocations, or `wasm-bindgen` fails.
pub fn take_apart(module: &Path, folder: &Path) -> Result<()> {
    let bytes = std::fs::read(module).map_err(|fault| at(module, &fault))?;
    let apart = folder.join("apart");
    let main = apart.join("shell.wasm");
    let mut options = wasm_split_cli_support::Options::new(&bytes);
    options.output_dir = &apart;
    options.main_out_path = &main;
    options.main_module = "./shell.js";
    wasm_split_cli_support::transform(options).map_err(|fault| at(module, &fault))?;
    let bind = ["--target", "web", "--no-typescript", "--keep-lld-exports", "--out-dir"];
    run(Command::new("wasm-bindgen").args(bind).arg(folder).arg(&main))?;
    std::fs::remove_file(&main)?;
    for entry in std::fs::read_dir(&apart)? {
        let entry = entry?;
        std::fs::rename(entry.path(), folder.join(entry.file_name()))?;
    }
    std::fs::remove_dir(apart)
}

/// Makes every staged module small: the page's for the road, the workers' for speed.
///
/// **Errors**: `wasm-opt` fails.
pub fn optimise(folder: &Path) -> Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if let Some(passes) = passes(&name) {
            run(Command::new("wasm-opt").args(passes).args(FEATURES).arg(&path).arg("-o").arg(&path))?;
        }
    }
    Ok(())
}

/// The page's modules are a hundredth smaller on the road so than with `-Oz`, though not before they are compressed.
/// In the lowest kilobyte of memory lies nothing but the last of the stack.
fn passes(name: &str) -> Option<&'static [&'static str]> {
    match name {
        "press_bg.wasm" | "courier_bg.wasm" => Some(&["-O1"]),
        _ if name.ends_with(".wasm") => Some(&["-Os", "--low-memory-unused"]),
        _ => None,
    }
}

fn run(command: &mut Command) -> Result<()> {
    let tool = command.get_program().to_string_lossy().into_owned();
    let status = command.status().map_err(|fault| at(Path::new(&tool), &fault))?;
    if status.success() { Ok(()) } else { Err(Error::other(format!("{tool}: {status}"))) }
}

fn at(path: &Path, fault: &dyn std::fmt::Display) -> Error {
    Error::other(format!("{}: {fault}", path.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_module_lies_beside_the_program_of_its_build() {
        let found = built(Path::new("/t/debug/pack"), "release");
        assert_eq!(found, Some(PathBuf::from("/t/wasm32-unknown-unknown/release/shell.wasm")));
        assert_eq!(built(Path::new("pack"), "release"), None);
    }

    #[test]
    fn only_modules_are_optimised() {
        let page: Option<&[&str]> = Some(&["-Os", "--low-memory-unused"]);
        assert_eq!(passes("shell_bg.wasm"), page);
        assert_eq!(passes("split_far.wasm"), page);
        assert_eq!(passes("press_bg.wasm"), Some(&["-O1"][..]));
        assert_eq!(passes("shell.js"), None);
    }

    #[test]
    fn what_is_no_module_is_refused_by_name() {
        let folder = std::env::temp_dir().join(format!("glassine-modules-{}", std::process::id()));
        std::fs::create_dir_all(&folder).expect("the temporary folder can be made");
        let module = folder.join("shell.wasm");
        let said = |fault: Result<()>| fault.expect_err("it is no module").to_string();
        assert!(said(take_apart(&module, &folder)).contains("shell.wasm"));
        std::fs::write(&module, "text").expect("the temporary folder can be written");
        assert!(said(take_apart(&module, &folder)).contains("shell.wasm"));
    }
}
