use crate::explain;
use crate::parts::Message;
use leptos::prelude::*;
use ports::store::StoreFault;

/// Why the storage said no, once it has.
#[component]
pub fn NotStored(
    /// Its fault.
    #[prop(into)]
    fault: Signal<Option<StoreFault>>,
) -> impl IntoView {
    move || {
        fault.get().map(|why| {
            let (what, safe) = explain::store_fault(&why);
            view! { <Message what safe/> }
        })
    }
}
