//! Which screen the address names, and the address of each screen.
//!
//! In goes the hash of the address, out comes a [`Route`]; and the way back. An address that names nothing leads
//! to the field page. The browser's own history is the history: links are real links.

use crate::percent;
use logbook::Id;
use logbook::book::Book;
use logbook::labels::LabelKind;
use logbook::moment::{self, Day};

/// A book and a screen of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Route {
    /// Whose records.
    pub book: Book,
    /// Which screen.
    pub screen: Screen,
}

/// A screen, with the record that it shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Screen {
    /// The field page.
    #[default]
    Start,
    /// The questions before the first catch.
    First,
    /// How this device numbers.
    Habit,
    /// The form of a new catch.
    NewCatch,
    /// A container of a catch that is being typed: the one at this place in the form, or one more.
    FormContainer(FormOf, Option<usize>),
    /// A saved event; one group of its rows may be open for change.
    Event(Id, Option<Group>),
    /// One more container of a saved event.
    EventContainer(Id),
    /// A saved container, to be changed.
    Container(Id),
    /// A lamp that burns, or anything else left open.
    Open(Id),
    /// Setting a trap.
    SetTrap,
    /// A trap in the ground.
    Trap(Id),
    /// A site, or a new one.
    Site(Option<Id>),
    /// All days.
    Days,
    /// One day.
    Day(Day),
    /// The bench, with the number typed.
    Bench(String),
    /// The labels to be printed.
    Labels,
    /// What stands on a kind of label.
    Arrange(LabelKind),
    /// Setup.
    Setup,
    /// Search, with what is sought.
    Search(String),
    /// What leaves the phone.
    Export(Export),
    /// What comes in.
    Import,
    /// Values of two people, side by side.
    Conflict(Id),
}

/// A form that holds containers while it is typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FormOf {
    /// The new catch.
    Catch,
    /// The service of a trap.
    Trap(Id),
}

/// A group of rows of a saved event.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Group {
    /// On what.
    Host,
    /// Where.
    Where,
    /// When and how.
    When,
    /// With whom.
    Whom,
}

/// What is to leave the phone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Export {
    /// What has not left it yet.
    #[default]
    NotExported,
    /// One day.
    Day(Day),
    /// Everything.
    All,
}

const GROUPS: [(&str, Group); 4] =
    [("host", Group::Host), ("where", Group::Where), ("when", Group::When), ("whom", Group::Whom)];

impl Route {
    /// The route that a hash names; `None` when it is an anchor within the page and no route.
    pub fn read(hash: &str) -> Option<Self> {
        if hash.is_empty() || hash == "#" {
            return Some(Self::default());
        }
        let path = hash.strip_prefix("#/")?;
        let (path, question) = path.split_once('?').unwrap_or((path, ""));
        let mut steps: Vec<String> = path.split('/').filter(|step| !step.is_empty()).map(percent::decoded).collect();
        let book = if steps.first().is_some_and(|step| step == Book::Sample.name()) {
            steps.remove(0);
            Book::Sample
        } else {
            Book::Own
        };
        let steps: Vec<&str> = steps.iter().map(String::as_str).collect();
        Some(Self { book, screen: screen(&steps, question).unwrap_or_default() })
    }

    /// The hash that names it.
    pub fn hash(&self) -> String {
        let book = match self.book {
            Book::Own => String::new(),
            Book::Sample => format!("{}/", Book::Sample.name()),
        };
        format!("#/{book}{}", self.screen.path())
    }
}

fn screen(steps: &[&str], question: &str) -> Option<Screen> {
    Some(match steps {
        [] => Screen::Start,
        ["first"] => Screen::First,
        ["habit"] => Screen::Habit,
        ["catch"] => Screen::NewCatch,
        ["catch", "container", at @ ..] => Screen::FormContainer(FormOf::Catch, at_place(at)?),
        ["event", id] => Screen::Event(id.parse().ok()?, None),
        ["event", id, "container"] => Screen::EventContainer(id.parse().ok()?),
        ["event", id, group] => Screen::Event(id.parse().ok()?, Some(named_group(group)?)),
        ["container", id] => Screen::Container(id.parse().ok()?),
        ["open", id] => Screen::Open(id.parse().ok()?),
        ["trap"] => Screen::SetTrap,
        ["trap", id, "container", at @ ..] => Screen::FormContainer(FormOf::Trap(id.parse().ok()?), at_place(at)?),
        ["trap", id] => Screen::Trap(id.parse().ok()?),
        ["site"] => Screen::Site(None),
        ["site", id] => Screen::Site(Some(id.parse().ok()?)),
        ["days"] => Screen::Days,
        ["day", day] => Screen::Day(moment::read_day(day)?),
        ["bench"] => Screen::Bench(String::new()),
        ["bench", number] => Screen::Bench((*number).to_owned()),
        ["labels"] => Screen::Labels,
        ["labels", kind] => Screen::Arrange(LabelKind::of_code(kind)?),
        ["setup"] => Screen::Setup,
        ["search"] => Screen::Search(part(question, "q").unwrap_or_default()),
        ["export"] => Screen::Export(export(question)),
        ["import"] => Screen::Import,
        ["conflict", id] => Screen::Conflict(id.parse().ok()?),
        _ => return None,
    })
}

fn at_place(steps: &[&str]) -> Option<Option<usize>> {
    match steps {
        [] => Some(None),
        [at] => Some(Some(at.parse().ok()?)),
        _ => None,
    }
}

fn named_group(name: &str) -> Option<Group> {
    GROUPS.iter().find(|(known, _)| *known == name).map(|(_, group)| *group)
}

fn export(question: &str) -> Export {
    match part(question, "day").and_then(|day| moment::read_day(&day)) {
        Some(day) => Export::Day(day),
        None if question == "all" => Export::All,
        None => Export::NotExported,
    }
}

fn part(question: &str, name: &str) -> Option<String> {
    let value = question.split('&').find_map(|part| part.strip_prefix(name)?.strip_prefix('='))?;
    Some(percent::decoded(value))
}

impl Screen {
    /// Whether going on to another screen leaves the page where it is: a group of the same event is opened in place.
    pub fn stays_for(&self, next: &Self) -> bool {
        matches!((self, next), (Self::Event(shown, _), Self::Event(next, _)) if shown == next)
    }

    fn path(&self) -> String {
        match self {
            Self::Start => String::new(),
            Self::First => "first".into(),
            Self::Habit => "habit".into(),
            Self::NewCatch => "catch".into(),
            Self::FormContainer(of, at) => {
                format!("{}/container{}", of.path(), at.map(|at| format!("/{at}")).unwrap_or_default())
            }
            Self::Event(id, None) => format!("event/{id}"),
            Self::Event(id, Some(group)) => format!("event/{id}/{}", group.name()),
            Self::EventContainer(id) => format!("event/{id}/container"),
            Self::Container(id) => format!("container/{id}"),
            Self::Open(id) => format!("open/{id}"),
            Self::SetTrap => "trap".into(),
            Self::Trap(id) => format!("trap/{id}"),
            Self::Site(None) => "site".into(),
            Self::Site(Some(id)) => format!("site/{id}"),
            Self::Days => "days".into(),
            Self::Day(day) => format!("day/{}", moment::day_text(*day)),
            Self::Bench(number) if number.is_empty() => "bench".into(),
            Self::Bench(number) => format!("bench/{}", percent::encoded(number)),
            Self::Labels => "labels".into(),
            Self::Arrange(kind) => format!("labels/{}", kind.code()),
            Self::Setup => "setup".into(),
            Self::Search(sought) if sought.is_empty() => "search".into(),
            Self::Search(sought) => format!("search?q={}", percent::encoded(sought)),
            Self::Export(Export::NotExported) => "export".into(),
            Self::Export(Export::Day(day)) => format!("export?day={}", moment::day_text(*day)),
            Self::Export(Export::All) => "export?all".into(),
            Self::Import => "import".into(),
            Self::Conflict(id) => format!("conflict/{id}"),
        }
    }

    /// The place of the foot under which it stands.
    pub fn place(&self) -> Place {
        match self {
            Self::Days | Self::Day(_) | Self::Search(_) | Self::Export(_) | Self::Import | Self::Conflict(_) => {
                Place::Days
            }
            Self::Bench(_) => Place::Bench,
            Self::Labels | Self::Arrange(_) => Place::Labels,
            Self::Setup | Self::Habit => Place::Setup,
            _ => Place::Field,
        }
    }
}

impl FormOf {
    fn path(self) -> String {
        match self {
            Self::Catch => "catch".into(),
            Self::Trap(id) => format!("trap/{id}"),
        }
    }

    /// The screen of the form itself.
    pub fn screen(self) -> Screen {
        match self {
            Self::Catch => Screen::NewCatch,
            Self::Trap(id) => Screen::Trap(id),
        }
    }

    /// The name under which the form is kept while it is typed.
    pub fn draft(self) -> String {
        self.path()
    }
}

impl Group {
    fn name(self) -> &'static str {
        GROUPS.iter().find(|(_, group)| *group == self).map(|(name, _)| *name).expect("every group is in the table")
    }
}

/// The places of the foot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The field.
    Field,
    /// The days.
    Days,
    /// The bench.
    Bench,
    /// The labels.
    Labels,
    /// Setup.
    Setup,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(hash: &str) {
        assert_eq!(Route::read(hash).map(|route| route.hash()).as_deref(), Some(hash));
    }

    #[test]
    fn every_address_leads_to_its_screen_and_back() {
        let id = "01979a3e-5b7c-7000-8000-000000000001";
        for path in [
            "",
            "first",
            "habit",
            "catch",
            "catch/container",
            "catch/container/2",
            "trap",
            "site",
            "days",
            "bench",
            "bench/147",
            "labels",
            "labels/collection",
            "labels/slip",
            "setup",
            "search",
            "search?q=hover%20flies",
            "export",
            "export?all",
            "export?day=2027-06-19",
            "import",
            "day/2027-06-19",
        ] {
            check(&format!("#/{path}"));
            check(&format!("#/sample/{path}"));
        }
        for path in ["event/", "container/", "open/", "trap/", "site/", "conflict/"] {
            check(&format!("#/{path}{id}"));
        }
        check(&format!("#/event/{id}/host"));
        check(&format!("#/event/{id}/container"));
        check(&format!("#/trap/{id}/container/3"));
    }

    #[test]
    fn an_address_that_names_nothing_leads_to_the_field() {
        for hash in ["#/nowhere", "#/event/not-an-id", "#/day/2027-13-40", "#/catch/a/b/c"] {
            assert_eq!(Route::read(hash), Some(Route::default()), "{hash}");
        }
    }

    #[test]
    fn an_anchor_is_no_route() {
        assert_eq!(Route::read("#main"), None);
    }
}
