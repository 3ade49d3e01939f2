//! Naming oneself, and those who usually come along.

use super::DeviceSettings;
use super::{Refused, Settled};
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::names::{Ids, same};
use record::event::Collector;
use record::{Edit, Id, Kind, Record, person, rules};

impl Logbook {
    /// The name of this device's person as labels say it; empty while nobody was named.
    pub fn own_name(&self) -> String {
        self.device().person.and_then(|id| self.person_name(id)).unwrap_or_default()
    }

    /// Names the person of this device.
    ///
    /// Somebody known by that name is taken as that person. Otherwise the device's person is written
    /// differently from now on, the old name kept as another spelling; on a new device a person is made.
    ///
    /// **Errors**: [`Refused::NoName`].
    pub fn name_oneself(&self, name: &str, ids: Ids<'_>) -> Result<Settled, Refused> {
        let name = name.split_whitespace().collect::<Vec<_>>().join(" ");
        if name.is_empty() {
            return Err(Refused::NoName);
        }
        let own = self.device().person.and_then(|id| self.living(id));
        let (id, edits) = match (self.person_named(&name), own) {
            (Some(known), own) if own.as_ref().is_none_or(|own| own.id != known.id) => (known.id, Vec::new()),
            (_, Some(own)) => (own.id, vec![renamed(&own, &name)]),
            (_, None) => {
                let mut edit = Edit::of(&Record::new(ids(), Kind::Person));
                edit.put(&person::NAME, &name);
                (edit.id(), vec![edit])
            }
        };
        let device = DeviceSettings { person: Some(id), ..self.device().clone() };
        let device = if self.device().person == Some(id) { device } else { self.numbering_of_new_person(id, device) };
        Ok(Settled { deed: Deed::new(What::Setup, edits), device })
    }

    /// The numbering given from so far goes on, unless it is another person's.
    fn numbering_of_new_person(&self, id: Id, device: DeviceSettings) -> DeviceSettings {
        let whose = device.numbering.and_then(|numbering| self.living(numbering)?.get(&record::numbering::PERSON));
        let numbering = device.numbering.filter(|_| whose.is_none_or(|whose| whose == id));
        DeviceSettings { numbering, ..device }
    }

    /// The names of those who usually come along.
    pub fn team(&self) -> Vec<String> {
        let mut lines = self.own_rules().map(|record| record.lines(&rules::TEAM)).unwrap_or_default();
        lines.sort_by_key(|(line, along): &(Id, Collector)| (along.order, *line));
        lines.into_iter().filter_map(|(_, along)| self.person_name(along.person)).collect()
    }

    /// Says who usually comes along, by name; new names become persons.
    pub fn set_team(&self, names: &[String], ids: Ids<'_>) -> Deed {
        let mut edits = Vec::new();
        let mut persons: Vec<Id> = Vec::new();
        for name in names.iter().map(|name| name.trim()).filter(|name| !name.is_empty()) {
            let id = self.person_or_new(name, ids, &mut edits);
            if !persons.contains(&id) && Some(id) != self.device().person {
                persons.push(id);
            }
        }
        let mut edit = self.edit_rules(ids);
        let lines = self.own_rules().map(|record| record.lines(&rules::TEAM)).unwrap_or_default();
        for (line, _) in lines.iter().filter(|(_, along)| !persons.contains(&along.person)) {
            edit.drop_line(&rules::TEAM, *line);
        }
        for (order, person) in persons.iter().enumerate() {
            let line =
                lines.iter().find(|(_, along)| along.person == *person).map_or_else(&mut *ids, |(line, _)| *line);
            let order = u32::try_from(order).unwrap_or(u32::MAX);
            edit.put_line(&rules::TEAM, line, &Collector { person: *person, order });
        }
        edits.push(edit);
        Deed::new(What::Setup, edits)
    }
}

fn renamed(own: &Record, name: &str) -> Edit {
    let mut edit = Edit::of(own);
    let before: String = own.get(&person::NAME).unwrap_or_default();
    let mut spellings: Vec<String> = own.get(&person::SPELLINGS).unwrap_or_default();
    spellings.retain(|known| !same(known, name));
    if !before.is_empty() && !same(&before, name) && !spellings.contains(&before) {
        spellings.push(before);
    }
    edit.put(&person::NAME, &name.to_owned());
    edit.put_or_empty(&person::SPELLINGS, Some(&spellings).filter(|spellings| !spellings.is_empty()));
    edit
}
