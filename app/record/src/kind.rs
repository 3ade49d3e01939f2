//! The kinds of records.

/// What a record is. Kinds that this version does not know keep their name and survive.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A named place, used again.
    Site,
    /// One collecting event.
    Event,
    /// A trap in the ground.
    Trap,
    /// A vial, envelope, jar or bag.
    Container,
    /// What stays together for good without a pin.
    Lot,
    /// What is on one pin.
    Mount,
    /// An insect that needs its own data.
    Individual,
    /// A name given to something, by whom, when.
    Determination,
    /// A collecting permit.
    Permit,
    /// A person, as labels should say the name.
    Person,
    /// How somebody numbers containers.
    Numbering,
    /// Which parts go on a label, in what order.
    Arrangement,
    /// Labels that were printed.
    Printing,
    /// What was done to a mount or a batch.
    Step,
    /// Where something is, and where it went.
    Keeping,
    /// A photo.
    Photo,
    /// Label paper and limits, as a person set them.
    Rules,
    /// A kind from a newer version.
    Other(String),
}

const NAMES: [(&str, Kind); 17] = [
    ("site", Kind::Site),
    ("event", Kind::Event),
    ("trap", Kind::Trap),
    ("container", Kind::Container),
    ("lot", Kind::Lot),
    ("mount", Kind::Mount),
    ("individual", Kind::Individual),
    ("determination", Kind::Determination),
    ("permit", Kind::Permit),
    ("person", Kind::Person),
    ("numbering", Kind::Numbering),
    ("arrangement", Kind::Arrangement),
    ("printing", Kind::Printing),
    ("step", Kind::Step),
    ("keeping", Kind::Keeping),
    ("photo", Kind::Photo),
    ("rules", Kind::Rules),
];

impl Kind {
    /// The kind's name in the log file.
    pub fn name(&self) -> &str {
        match self {
            Self::Other(name) => name,
            known => NAMES
                .iter()
                .find(|(_, kind)| kind == known)
                .map(|(name, _)| *name)
                .expect("every known kind is in the table"),
        }
    }

    /// The kind with this name.
    pub fn from_name(name: &str) -> Self {
        NAMES
            .iter()
            .find(|(known, _)| *known == name)
            .map_or_else(|| Self::Other(name.to_owned()), |(_, kind)| kind.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_name_leads_to_its_kind_and_back() {
        for (name, kind) in NAMES {
            assert_eq!(Kind::from_name(name), kind);
            assert_eq!(kind.name(), name);
        }
    }

    #[test]
    fn an_unknown_kind_keeps_its_name() {
        assert_eq!(Kind::from_name("hologram").name(), "hologram");
    }
}
