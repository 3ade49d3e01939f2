//! A memo whose machinery is compiled once for each type of value, not once for each place that makes one: there are
//! hundreds, and the page has to be loaded over a poor connection.

use leptos::prelude::*;

/// What a closure says, worked out again only when something that it reads has changed.
pub fn narrowed<T: PartialEq + Send + Sync + 'static>(look: impl Fn() -> T + Send + Sync + 'static) -> Memo<T> {
    boxed(Box::new(look))
}

fn boxed<T: PartialEq + Send + Sync + 'static>(look: Box<dyn Fn() -> T + Send + Sync>) -> Memo<T> {
    Memo::new(move |_| look())
}
