//! The recorded tracks of a day: fetched from where this device keeps them, laid on the map, named below it.

use super::Shared;
use crate::context::{Context, say, use_page};
use crate::desk::NotStored;
use crate::narrow::narrowed;
use crate::turn::Turn;
use leptos::prelude::*;
use leptos::task::spawn_local;
use logbook::map::Trail;
use logbook::track::KeptTrack;
use logbook::view::DayView;
use ports::store::StoreFault;
use std::sync::Arc;

/// A track on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Laid {
    kept: Arc<KeptTrack>,
    /// Its way.
    pub trail: Trail,
}

/// The tracks of the day.
#[derive(Clone, Copy)]
pub struct Trails {
    kept: RwSignal<Vec<Arc<KeptTrack>>>,
    laid: Memo<Arc<Vec<Laid>>>,
    gone: RwSignal<Option<Arc<KeptTrack>>>,
    fault: RwSignal<Option<StoreFault>>,
    page: Context,
}

impl Trails {
    /// Those of a day, as soon as they are fetched.
    pub fn new(view: Memo<DayView>, map: Memo<Option<Shared>>) -> Self {
        let page = use_page();
        let (kept, gone, fault) = (RwSignal::new(Vec::new()), RwSignal::new(None), RwSignal::new(None));
        let span = narrowed(move || page.logbook.with(|logbook| logbook.span_of(view.with(|view| view.day))));
        let turn = Turn::new();
        Effect::new(move || {
            let Some(span) = span.get() else { return kept.set(Vec::new()) };
            let mine = turn.next();
            spawn_local(async move {
                let found = page.driver().kept_tracks(span).await;
                if turn.is(mine) {
                    match found {
                        Ok(tracks) => drop(kept.try_set(tracks.into_iter().map(Arc::new).collect())),
                        Err(why) => drop(fault.try_set(Some(why))),
                    }
                }
            });
        });
        let laid = narrowed(move || {
            let lay = |(map, span): (Shared, _)| {
                let lay =
                    |kept: &Arc<KeptTrack>| Some(Laid { trail: map.trail(&kept.track, span)?, kept: kept.clone() });
                kept.with(|kept| kept.iter().filter_map(lay).collect())
            };
            Arc::new(map.get().zip(span.get()).map(lay).unwrap_or_default())
        });
        Self { kept, laid, gone, fault, page }
    }

    /// Those that the day's map shows.
    pub fn laid(self) -> Arc<Vec<Laid>> {
        self.laid.get()
    }

    fn take_away(self, track: Arc<KeptTrack>) {
        self.change(async move |page: Context| {
            page.driver().forget_track(&track.key).await?;
            self.kept.update(|kept| kept.retain(|other| other.key != track.key));
            self.gone.set(Some(track));
            Ok(())
        });
    }

    fn keep_again(self, track: Arc<KeptTrack>) {
        self.change(async move |page: Context| {
            page.driver().keep_track(&track).await?;
            self.gone.set(None);
            self.kept.update(|kept| kept.push(track));
            Ok(())
        });
    }

    fn change(self, change: impl AsyncFnOnce(Context) -> Result<(), StoreFault> + 'static) {
        self.fault.set(None);
        spawn_local(async move {
            if let Err(why) = change(self.page).await {
                let _ = self.fault.try_set(Some(why));
            }
        });
    }
}

/// The tracks in words, each with the way to take it away, and the way back.
#[component]
pub fn Tracks(trails: Trails) -> impl IntoView {
    let words = say().day;
    let line = move |laid: &Laid| {
        let kept = laid.kept.clone();
        let says = words.map_track(&kept.name, laid.trail.length().metres());
        let away = move |_| trails.take_away(kept.clone());
        view! { <p class="note">{says}" "<button class="button quiet" type="button" on:click=away>{words.map_track_away()}</button></p> }
    };
    let gone = move || {
        trails.gone.get().map(|kept| {
            let says = words.map_track_gone(&kept.name);
            let again = move |_| trails.keep_again(kept.clone());
            view! { <p class="note">{says}" "<button class="button quiet" type="button" on:click=again>{words.map_track_again()}</button></p> }
        })
    };
    view! {
        {move || trails.laid().iter().map(line).collect_view()}
        <div role="status">{gone}</div>
        <NotStored fault=trails.fault/>
    }
    .into_any()
}
