//! Keeps the relocations in the module: `pack` needs them to take it apart.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_FAMILY").as_deref() == Ok("wasm") {
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
    }
}
