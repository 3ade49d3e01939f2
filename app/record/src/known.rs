//! Which fields of which kinds this version knows, and whether a value has the form that they ask for.

use crate::event::{self, Collector};
use crate::{
    Field, Kind, Lines, arrangement, container, determination, field, individual, mount, numbering, permit, person,
    printing, rules, site, step, trap,
};
use serde::de::DeserializeOwned;
use serde_json::Value;

/// False when the field is one that this version knows and the value is not of its type. Null and the mark for
/// "unknown" are right everywhere, and so is anything in fields that are not known.
pub(crate) fn is_readable(kind: &Kind, field: &str, value: &Value) -> bool {
    value.is_null() || *value == field::unknown() || Asked { field, value }.of_kind(kind).unwrap_or(true)
}

/// A field by name and a value for it.
#[derive(Clone, Copy)]
struct Asked<'a> {
    field: &'a str,
    value: &'a Value,
}

impl Asked<'_> {
    fn one<T: DeserializeOwned>(self, field: &Field<T>) -> Option<bool> {
        (field.name() == self.field).then(|| T::deserialize(self.value).is_ok())
    }

    fn line<T: DeserializeOwned>(self, lines: &Lines<T>) -> Option<bool> {
        lines.line_of(self.field).map(|_| T::deserialize(self.value).is_ok())
    }

    fn of_kind(self, kind: &Kind) -> Option<bool> {
        self.one(&field::DELETED).or(self.one(&crate::deletion::DELETED_SEEN)).or_else(|| match kind {
            Kind::Event => self.event(),
            Kind::Container => self.container(),
            Kind::Site => self.site(),
            Kind::Trap => self.trap(),
            Kind::Mount => self.first(&[&mount::ROUTE, &mount::CODE]).or(self.one(&mount::CONTAINER)),
            Kind::Permit => {
                self.first(&[&permit::NUMBER, &permit::AUTHORITY, &permit::FROM, &permit::UNTIL, &permit::AREA])
            }
            Kind::Person => self.one(&person::NAME).or(self.one(&person::SPELLINGS)),
            Kind::Numbering => self.numbering(),
            Kind::Arrangement => self.first(&[&arrangement::NAME, &arrangement::LABEL]),
            Kind::Individual => self.one(&individual::CONTAINER).or(self.one(&individual::PIECE)),
            Kind::Printing => self.one(&printing::OF).or(self.one(&printing::PRINTED)).or(self.one(&printing::ITEM)),
            Kind::Step => self.one(&step::OF).or(self.one(&step::BY)).or(self.one(&step::DONE)),
            Kind::Rules => self.rules(),
            Kind::Determination => self.determination(),
            Kind::Lot | Kind::Keeping | Kind::Photo | Kind::Other(_) => None,
        })
    }

    fn determination(self) -> Option<bool> {
        self.one(&determination::OF)
            .or(self.one(&determination::BY))
            .or(self.one(&determination::YEAR))
            .or(self.one(&determination::NAMED))
    }

    fn first(self, fields: &[&Field<String>]) -> Option<bool> {
        fields.iter().find_map(|field| self.one(field))
    }

    fn event(self) -> Option<bool> {
        let texts = [&event::HEIGHT, &event::MICROHABITAT, &event::STATION, &event::WEATHER, &event::NOTES];
        self.first(&texts)
            .or(self.one(&event::CAUGHT))
            .or(self.one(&event::PLACE))
            .or(self.one(&event::SITE))
            .or(self.one(&event::ELEVATION))
            .or(self.one(&event::METHOD))
            .or(self.one(&event::HOST))
            .or(self.line::<Collector>(&event::COLLECTORS))
            .or(self.one(&event::PERMIT))
            .or(self.one(&event::NOTHING))
            .or(self.one(&event::OPEN))
            .or(self.one(&event::TRAP))
            .or(self.one(&event::COLLECTION_WORDING))
            .or(self.one(&event::HOST_WORDING))
    }

    fn container(self) -> Option<bool> {
        self.first(&[&container::VESSEL, &container::EMPTIED, &container::NOTES])
            .or(self.one(&container::EVENT))
            .or(self.one(&container::NUMBER))
            .or(self.one(&container::KILLED))
            .or(self.one(&container::KEPT))
            .or(self.one(&container::ALIVE))
            .or(self.one(&container::RELEASED))
            .or(self.one(&container::COLLECTOR))
            .or(self.one(&container::HOST))
            .or(self.one(&container::CAUGHT))
            .or(self.line(&container::CONTENTS))
            .or(self.line(&container::LINKS))
            .or(self.one(&container::SORTED_FROM))
            .or(self.one(&container::EMERGED))
            .or(self.one(&container::ORDER))
            .or(self.one(&event::COLLECTION_WORDING))
            .or(self.one(&event::HOST_WORDING))
    }

    fn site(self) -> Option<bool> {
        let texts = [&site::NAME, &site::COUNTRY, &site::PROVINCE, &site::LOCALITY, &site::OFFSET, &site::HABITAT];
        self.first(&texts).or(self.one(&site::PLACE)).or(self.one(&site::PERMIT))
    }

    fn trap(self) -> Option<bool> {
        self.one(&trap::NAME)
            .or(self.one(&trap::SITE))
            .or(self.one(&trap::PLACE))
            .or(self.one(&trap::METHOD))
            .or(self.one(&trap::OUT))
            .or(self.one(&trap::TAKEN_UP))
            .or(self.one(&trap::DUE_DAYS))
            .or(self.line(&trap::COLLECTORS))
    }

    fn numbering(self) -> Option<bool> {
        self.first(&[&numbering::HABIT, &numbering::PREFIX, &numbering::LETTER])
            .or(self.one(&numbering::PERSON))
            .or(self.one(&numbering::WIDTH))
            .or(self.one(&numbering::RANGE))
    }

    fn rules(self) -> Option<bool> {
        self.one(&rules::PERSON)
            .or(self.one(&rules::PAPER))
            .or(self.one(&rules::RADIUS_LIMIT))
            .or(self.one(&rules::SPARES))
            .or(self.line(&rules::TEAM))
            .or(self.one(&rules::CARD))
            .or(self.one(&rules::SIZES))
            .or(self.one(&rules::PINNED))
            .or(self.one(&rules::HEIGHTS))
            .or(self.one(&rules::ARRANGEMENTS))
    }
}
