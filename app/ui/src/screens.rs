//! The screens: each answers one question, and narrows the one logbook to it with memos.

mod catch;
mod container;
mod event;
mod event_line;
mod first;
mod habit;
mod lost;
mod open_night;
mod site;
mod start;
mod traps;

pub use catch::NewCatch;
pub use container::{ChangeContainer, EventContainer, FormContainer};
pub use event::Event;
pub use event_line::{EventItem, HostWords, MethodWords};
pub use first::First;
pub use habit::Habit;
pub use lost::Lost;
pub use open_night::OpenNight;
pub use site::Site;
pub use start::Start;
pub use traps::{SetTrap, Trap};
