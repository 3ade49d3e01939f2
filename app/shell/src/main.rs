//! Chooses the ports and mounts the screens.
//!
//! In goes nothing, out comes a running page. What the page does belongs to `ui`; how it reaches
//! the device belongs to `browser`.

fn main() {
    ui::mount(browser::ports());
}
