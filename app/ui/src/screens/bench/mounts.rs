//! Pins that are kept apart: how each is mounted, and its code.

use super::proofs::Copies;
use crate::context::{say, use_page};
use crate::explain;
use crate::narrow::narrowed;
use crate::parts::{Line, More, Pick, Row, Stepper, field};
use leptos::prelude::*;
use logbook::Id;
use logbook::bench::{MountForm, MountView};

/// The pins of a container, and the form of further ones.
#[component]
pub fn Mounts(id: Id, copies: Copies) -> impl IntoView {
    let page = use_page();
    let words = say().bench;
    let known = narrowed(move || page.logbook.with(|logbook| logbook.mounts(id)));
    let open = known.with_untracked(|known| !known.is_empty());
    let fresh = move || page.logbook.with_untracked(|logbook| logbook.new_mount());
    let (form, fault) = (RwSignal::new(fresh()), RwSignal::new(None));
    let read = move |of: fn(&MountForm) -> &String| field::read(form, of);
    let write = move |of: fn(&mut MountForm, String)| field::write(form, of);
    let follow = move || {
        copies.follow_pins(page);
        page.when_undone(move || copies.follow_pins(page));
    };
    let add = move |_| match page.make(|logbook, _, ids| logbook.add_mounts(id, &form.get_untracked(), ids)) {
        Ok(deed) => {
            fault.set(None);
            page.save(deed, move |_| {
                form.set(fresh());
                follow();
            });
        }
        Err(why) => fault.set(Some(why)),
    };
    let out = move |mount: Id| {
        page.save(page.make(|logbook, _, _| logbook.take_mount_out(mount)), move |_| follow());
    };
    let line = move |mount: MountView| {
        let says = words.mount_of(&mount.code, &mount.route);
        let name = words.mount_out_which(&says);
        view! {
            <li class="container-line">
                <span class="what"><span class="measure">{mount.code.clone()}</span>" "<span class="ink">{words.route(&mount.route)}</span></span>
                <button class="button quiet" type="button" aria-label=name on:click=move |_| out(mount.id)>{words.mount_out()}</button>
            </li>
        }
    };
    let routes = Signal::stored(logbook::codes::ROUTES.map(|code| (code.to_owned(), words.route(code))).to_vec());
    let count = move || form.with(|form| form.count.trim().parse().unwrap_or(0));
    view! {
        <More words=words.mounts() open>
            <ul>{move || known.get().into_iter().map(line).collect_view()}</ul>
            <div class="pin">
                <Row of="m-route" name=words.mount_route()>
                    <Pick id="m-route" options=routes chosen=read(|form| &form.route) choose=write(|form, route| form.route = route)/>
                </Row>
                <Row of="m-code" name=words.mount_code()>
                    <Line id="m-code" class="measure" value=read(|form| &form.code) change=write(|form, typed| form.code = typed)/>
                </Row>
                <Row name=words.mount_count()>
                    <Stepper name=words.mount_count() value=read(|form| &form.count) change=write(|form, typed| form.count = typed)/>
                </Row>
            </div>
            <p class="note">{words.mounts_say()}</p>
            <div role="status">{move || fault.get().map(|why| view! { <p class="mark fault">{explain::mount_fault(&why)}</p> })}</div>
            <div class="commands"><button class="button" type="button" on:click=add>{move || words.mount_add(count())}</button></div>
        </More>
    }
    .into_any()
}
