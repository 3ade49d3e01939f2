use crate::context::{say, use_page};
use crate::parts::{Chooser, Options, TimeLine};
use crate::route::Screen;
use leptos::prelude::*;
use logbook::Id;
use logbook::moment;
use logbook::view::OpenLine;

/// The lamp off, now or at an earlier hour.
#[component]
pub fn Off(id: Id, line: Memo<Option<OpenLine>>, lamp: Memo<bool>) -> impl IntoView {
    let page = use_page();
    let words = say().open;
    let when = RwSignal::new("now".to_owned());
    let clock = RwSignal::new(String::new());
    let now = move || moment::clock_text(moment::local(page.now.get()).time());
    let earlier = move || when.with(|when| when == "earlier");
    let hour = move || if earlier() && !clock.with(String::is_empty) { clock.get() } else { now() };
    let options = Signal::derive(move || -> Options {
        vec![("now".into(), words.off_now(&now())), ("earlier".into(), words.off_earlier().into())]
    });
    let put_out = move |_| {
        let at = if earlier() { moment::read_clock(&clock.get_untracked()) } else { None };
        let deed = page.make(|logbook, saving, _| logbook.lamp_off(id, logbook::open::at_clock(saving.now, at)));
        page.save(deed, move |_| page.go(Screen::Start));
    };
    let closes = move || line.with(|line| line.as_ref().map(|line| words.closes_at(line.minutes)));
    let name = move || if lamp.get() { words.lamp_off_at(&hour()) } else { words.close_at(&hour()) };
    view! {
        <section class="part" id="off" aria-labelledby="off-head">
            <h2 id="off-head">{move || if lamp.get() { words.lamp_off() } else { words.close() }}</h2>
            <Chooser name="off" legend=words.when_off() options chosen=when choose=Callback::new(move |code| when.set(code))/>
            <div class="together" hidden=move || !earlier()>
                <label class="note fit" for="off-clock">{words.off_hour()}</label>
                <TimeLine id="off-clock" value=clock change=Callback::new(move |text| clock.set(text))/>
            </div>
            <div class="commands off-command"><button class="button grow" type="button" on:click=put_out>{name}</button></div>
            <p class="note" hidden=earlier>{closes}</p>
        </section>
    }
    .into_any()
}
