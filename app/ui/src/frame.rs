//! The frame of every screen: the sheet that scrolls, the foot that stands still.

mod book;
mod notices;
mod page;
mod places;
mod strip;

pub use book::BookStrip;
pub use page::Page;
