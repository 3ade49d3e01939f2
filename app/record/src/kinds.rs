//! The fields of every other kind.

/// A named place, used again.
pub mod site {
    use crate::event::Place;
    use crate::{Field, Id};

    /// Its name.
    pub const NAME: Field<String> = Field::new("name");
    /// Country.
    pub const COUNTRY: Field<String> = Field::new("country");
    /// Province or state.
    pub const PROVINCE: Field<String> = Field::new("province");
    /// Locality in words.
    pub const LOCALITY: Field<String> = Field::new("locality");
    /// Offset from a named place: `2 km NE of …`.
    pub const OFFSET: Field<String> = Field::new("offset");
    /// Habitat.
    pub const HABITAT: Field<String> = Field::new("habitat");
    /// The suggested point.
    pub const PLACE: Field<Place> = Field::new("place");
    /// The permit that covers it.
    pub const PERMIT: Field<Id> = Field::new("permit");
}

/// A vial, envelope, jar or bag, or what was seen and let go.
pub mod container {
    use crate::event::{Host, When};
    use crate::{Field, Id, Lines};
    use serde::{Deserialize, Serialize};

    /// A number: one field.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Number {
        /// The whole number with prefix, as written on it.
        pub text: String,
        /// The numbering it belongs to.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub numbering: Option<Id>,
    }

    /// A fluid or other means, with its strength.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Fluid {
        /// A stable code (`ethanol`, `ethyl_acetate`, `cold`, `dry`, …); empty where only words are known.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub code: String,
        /// The person's own words.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub text: String,
        /// Strength in per cent by volume, as typed.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub strength: String,
    }

    /// One line of contents.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Content {
        /// Position in the list, from 0.
        pub order: u32,
        /// The group as typed.
        pub group: String,
        /// The group's code, where it is one of our list.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub group_code: String,
        /// `female`, `male`, `both`; empty for not looked at.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub sex: String,
        /// `egg`, `larva`, `pupa`, `nymph`, `adult`; empty for not said.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub stage: String,
        /// `exact`, `about`, `least`, `uncounted`.
        pub count_kind: String,
        /// The count, where counted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub count: Option<u32>,
    }

    /// A link to another container.
    #[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Link {
        /// The other one.
        pub to: Id,
        /// `pair`, `prey_of`, `same_nest`.
        pub relation: String,
    }

    /// Its event.
    pub const EVENT: Field<Id> = Field::new("event");
    /// `vial`, `envelope`, `jar`, `bag`, or `none` for observed and released.
    pub const VESSEL: Field<String> = Field::new("vessel");
    /// Its number, or none yet.
    pub const NUMBER: Field<Number> = Field::new("number");
    /// How the catch was killed.
    pub const KILLED: Field<Fluid> = Field::new("killed");
    /// In what it is kept.
    pub const KEPT: Field<Fluid> = Field::new("kept");
    /// Kept alive, for rearing.
    pub const ALIVE: Field<bool> = Field::new("alive");
    /// Observed and released.
    pub const RELEASED: Field<bool> = Field::new("released");
    /// Its collector, where it differs from the event's.
    pub const COLLECTOR: Field<Id> = Field::new("collector");
    /// Its host, where it differs from the event's.
    pub const HOST: Field<Host> = Field::new("host");
    /// Its hour, where it differs from the event's.
    pub const CAUGHT: Field<When> = Field::new("caught");
    /// Contents.
    pub const CONTENTS: Lines<Content> = Lines::new("content");
    /// Links to other containers.
    pub const LINKS: Lines<Link> = Lines::new("link");
    /// The container it was sorted from.
    pub const SORTED_FROM: Field<Id> = Field::new("sorted_from");
    /// When it was emptied, ISO 8601 local.
    pub const EMPTIED: Field<String> = Field::new("emptied");
    /// From when until when what was reared in it emerged.
    pub const EMERGED: Field<When> = Field::new("emerged");
    /// Its place among the containers of its event, from 0.
    pub const ORDER: Field<u32> = Field::new("order");
    /// Notes as typed.
    pub const NOTES: Field<String> = Field::new("notes");
}

/// A trap in the ground: each service is an event that names it.
pub mod trap {
    use crate::event::{Method, Place, When};
    use crate::{Field, Id, Lines};

    /// Its name on the line: `3`, `P7`.
    pub const NAME: Field<String> = Field::new("name");
    /// Its site.
    pub const SITE: Field<Id> = Field::new("site");
    /// Where it stands.
    pub const PLACE: Field<Place> = Field::new("place");
    /// What it is.
    pub const METHOD: Field<Method> = Field::new("method");
    /// Set when, taken up when.
    pub const OUT: Field<When> = Field::new("out");
    /// Taken up for good.
    pub const TAKEN_UP: Field<bool> = Field::new("taken_up");
    /// Days after which it is due for service, as typed.
    pub const DUE_DAYS: Field<u32> = Field::new("due_days");
    /// Its people.
    pub const COLLECTORS: Lines<crate::event::Collector> = Lines::new("collector");
}

/// What is on one pin.
pub mod mount {
    use crate::{Field, Id};

    /// The container it came from.
    pub const CONTAINER: Field<Id> = Field::new("container");
    /// `direct`, `point`, `card`, `minuten`, `spread`.
    pub const ROUTE: Field<String> = Field::new("route");
    /// Its specimen code.
    pub const CODE: Field<String> = Field::new("code");
}

/// An insect that needs data of its own.
pub mod individual {
    use crate::{Field, Id};
    use serde::{Deserialize, Serialize};

    /// A part of it that is kept elsewhere.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Piece {
        /// What it is, as typed: `genitalia`, `leg, DNA`.
        pub what: String,
        /// The number under which it is kept.
        pub number: String,
    }

    /// The container that it came from.
    pub const CONTAINER: Field<Id> = Field::new("container");
    /// The part of it that is kept elsewhere.
    pub const PIECE: Field<Piece> = Field::new("piece");
}

/// A name given to insects; added, never replaced.
pub mod determination {
    use crate::{Field, Id};
    use serde::{Deserialize, Serialize};

    /// The name: one field.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Named {
        /// The name without its author, as typed: `Andrena bicolor`.
        pub name: String,
        /// Doubt, or what stands in place of an epithet: `cf.`, `aff.`, `sp.`; empty for none.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub qualifier: String,
        /// Its author, brackets and year as they are.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub author: String,
    }

    /// Of what.
    pub const OF: Field<Id> = Field::new("of");
    /// The name.
    pub const NAMED: Field<Named> = Field::new("named");
    /// Who says so.
    pub const BY: Field<Id> = Field::new("by");
    /// In which year, as typed.
    pub const YEAR: Field<String> = Field::new("year");
}

/// A collecting permit.
pub mod permit {
    use crate::Field;

    /// Its number.
    pub const NUMBER: Field<String> = Field::new("number");
    /// Who issued it.
    pub const AUTHORITY: Field<String> = Field::new("authority");
    /// First day, ISO 8601.
    pub const FROM: Field<String> = Field::new("from");
    /// Last day, ISO 8601.
    pub const UNTIL: Field<String> = Field::new("until");
    /// Area in words.
    pub const AREA: Field<String> = Field::new("area");
}

/// A person.
pub mod person {
    use crate::Field;

    /// The name as labels should say it.
    pub const NAME: Field<String> = Field::new("name");
    /// Other spellings.
    pub const SPELLINGS: Field<Vec<String>> = Field::new("spellings");
}

/// How somebody numbers containers.
pub mod numbering {
    use crate::{Field, Id};

    /// Whose numbers.
    pub const PERSON: Field<Id> = Field::new("person");
    /// `one`, `letters`, `engraved`, `none`.
    pub const HABIT: Field<String> = Field::new("habit");
    /// What stands before the running number: `IV27-`.
    pub const PREFIX: Field<String> = Field::new("prefix");
    /// Digits of the running number.
    pub const WIDTH: Field<u32> = Field::new("width");
    /// The letter of a second device.
    pub const LETTER: Field<String> = Field::new("letter");
    /// The range of a second device: first and last.
    pub const RANGE: Field<(u32, u32)> = Field::new("range");
}

/// Which parts go on a label, in what order, as the wording crate reads it.
pub mod arrangement {
    use crate::Field;

    /// Its name.
    pub const NAME: Field<String> = Field::new("name");
    /// The kind of label: `collection`, `host`, `determination` …
    pub const LABEL: Field<String> = Field::new("label");
    /// The arrangement itself.
    pub const PARTS: Field<serde_json::Value> = Field::new("parts");
}

/// Labels that were printed; only ever added.
pub mod printing {
    use crate::{Field, Id};
    use serde::{Deserialize, Serialize};

    /// What was printed, word for word.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Printed {
        /// The kind of label: `collection`, `host`, `determination` …
        pub label: String,
        /// The lines as they stood on the label.
        pub lines: Vec<String>,
        /// How many copies.
        pub copies: u32,
        /// When, local ISO 8601 with offset.
        pub at: String,
    }

    /// The container or event of which.
    pub const OF: Field<Id> = Field::new("of");
    /// What was printed.
    pub const PRINTED: Field<Printed> = Field::new("printed");
    /// The determination, mount or individual of which, where there are several of a kind.
    pub const ITEM: Field<Id> = Field::new("item");
    /// What was known then of all that may stand on a label, so that a later correction is seen.
    pub const KNOWN: Field<serde_json::Value> = Field::new("known");
}

/// What was done to a container's catch or a mount; only ever added.
pub mod step {
    use crate::{Field, Id};
    use serde::{Deserialize, Serialize};

    /// What was done.
    #[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
    pub struct Done {
        /// `pinned`, `labelled`.
        pub deed: String,
        /// How many.
        pub count: u32,
        /// When, local ISO 8601 with offset.
        pub at: String,
    }

    /// To what.
    pub const OF: Field<Id> = Field::new("of");
    /// What was done.
    pub const DONE: Field<Done> = Field::new("done");
    /// By whom.
    pub const BY: Field<Id> = Field::new("by");
}

/// Label paper and limits, as a person set them.
pub mod rules {
    use crate::{Field, Id, Lines};
    use serde::{Deserialize, Serialize};

    /// The label sheet.
    #[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
    pub struct Paper {
        /// `a4`, `letter`, `card` for one's own.
        pub sheet: String,
        /// Width of a label, millimetres.
        pub width_mm: f64,
        /// Height of a label, millimetres.
        pub height_mm: f64,
    }

    /// A card of the person's own, and the white of any sheet.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
    pub struct Card {
        /// Width of the card, millimetres.
        pub width_mm: f64,
        /// Height of the card, millimetres.
        pub height_mm: f64,
        /// White at all four sides, millimetres.
        pub margin_mm: f64,
    }

    /// The size of a kind of label and of its type.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
    pub struct Size {
        /// Width, millimetres.
        pub width_mm: f64,
        /// Height, millimetres.
        pub height_mm: f64,
    }

    /// Type and pin of labels that stand on pins.
    #[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
    pub struct Pinned {
        /// Largest type, points.
        pub largest_pt: f64,
        /// Least type, points.
        pub least_pt: f64,
        /// Size of the pin: `000` to `7`.
        pub pin: String,
        /// `middle`, or `end` for insects on points.
        pub at: String,
        /// The shape of the Data Matrix on code labels: `square`, `slim`; empty for none.
        #[serde(default, skip_serializing_if = "String::is_empty")]
        pub code: String,
    }

    /// Whose.
    pub const PERSON: Field<Id> = Field::new("person");
    /// The label sheet.
    pub const PAPER: Field<Paper> = Field::new("paper");
    /// A card of one's own, and the margins.
    pub const CARD: Field<Card> = Field::new("card");
    /// Sizes of the labels that are not as large as those on pins, by kind.
    pub const SIZES: Field<std::collections::BTreeMap<String, Size>> = Field::new("label_sizes");
    /// Type and pin.
    pub const PINNED: Field<Pinned> = Field::new("pinned");
    /// Heights on the pin from its point, millimetres: insect, first, second label.
    pub const HEIGHTS: Field<[f64; 3]> = Field::new("heights_mm");
    /// Which arrangement is used, by kind of label; the usual one where there is none.
    pub const ARRANGEMENTS: Field<std::collections::BTreeMap<String, Id>> = Field::new("arrangements");
    /// Radius in metres above which a position counts as too vague.
    pub const RADIUS_LIMIT: Field<f64> = Field::new("radius_limit_m");
    /// Spare labels of each kind.
    pub const SPARES: Field<u32> = Field::new("spares");
    /// Those who usually come along.
    pub const TEAM: Lines<crate::event::Collector> = Lines::new("team");
}
