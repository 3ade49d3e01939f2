//! Sites: made in the field as well.

use crate::book::Logbook;
use crate::catch::{Saving, Values, put};
use crate::deed::{Deed, What};
use crate::form::{PlaceForm, SiteForm};
use crate::names::Ids;
use crate::values;
use record::{Kind, site};

impl Logbook {
    /// The deed that saves a site.
    pub fn save_site(&self, form: &SiteForm, saving: &Saving<'_>, ids: Ids<'_>) -> Deed {
        let id = form.id.unwrap_or_else(ids);
        let mut values = site_values(form, saving);
        if let Some(base) = &form.base {
            let shown = site_values(base, saving);
            values.retain(|field, value| shown.get(field) != Some(value));
        }
        let mut edit = self.edit(id, Kind::Site, form.shown.of(id));
        for (field, value) in values {
            edit.set(&field, value);
        }
        Deed::new(What::Site, [edit])
    }

    /// The point of the site so named, for an event that takes it as its own.
    pub fn site_point(&self, name: &str) -> Option<PlaceForm> {
        let place = self.site_named(name)?.get(&site::PLACE)?;
        Some(PlaceForm { source: crate::form::Source::Site, ..crate::form_of::place_form(Some(place)) })
    }
}

fn site_values(form: &SiteForm, saving: &Saving<'_>) -> Values {
    let mut values = Values::new();
    let texts = [
        (site::NAME.name(), &form.name),
        (site::COUNTRY.name(), &form.country),
        (site::PROVINCE.name(), &form.province),
        (site::LOCALITY.name(), &form.locality),
        (site::OFFSET.name(), &form.offset),
        (site::HABITAT.name(), &form.habitat),
    ];
    for (field, text) in texts {
        put(&mut values, field, values::said(text));
    }
    put(&mut values, site::PLACE.name(), values::place(&form.place, saving.platform));
    values
}
