//! Label paper, spare labels and limits.

use super::Refused;
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::names::Ids;
use crate::values::read_number;
use ports::press;
use record::rules::{self, Paper};
use record::{Edit, Kind, Record};
use serde::{Deserialize, Serialize};

/// Paper and limits as they hold now.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    /// The label sheet.
    pub paper: Paper,
    /// Radius in metres above which a position counts as too vague.
    pub radius_limit_m: f64,
    /// Spare labels of each kind.
    pub spares: u32,
}

/// Paper and limits as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct RulesForm {
    /// `a4`, `letter`.
    pub sheet: String,
    /// Width of a label, millimetres.
    pub width: String,
    /// Height of a label, millimetres.
    pub height: String,
    /// Metres.
    pub radius_limit: String,
    /// Spare labels of each kind.
    pub spares: String,
}

/// 18 by 8 mm on A4, one spare of each, positions good to 100 m: common practice.
impl Default for Rules {
    fn default() -> Self {
        let paper = Paper { sheet: "a4".to_owned(), width_mm: 18.0, height_mm: 8.0 };
        Self { paper, radius_limit_m: 100.0, spares: 1 }
    }
}

impl Rules {
    /// As the Setup screen shows them.
    pub fn form(&self) -> RulesForm {
        RulesForm {
            sheet: self.paper.sheet.clone(),
            width: self.paper.width_mm.to_string(),
            height: self.paper.height_mm.to_string(),
            radius_limit: self.radius_limit_m.to_string(),
            spares: self.spares.to_string(),
        }
    }

    /// The sheet for the press.
    pub fn sheet(&self) -> press::Paper {
        if self.paper.sheet == "letter" { press::Paper::Letter } else { press::Paper::A4 }
    }

    /// The label's size and type for the press: type from 4.5 pt down to 3.5 pt, the middle kept clear for a pin
    /// (common practice).
    pub fn format(&self) -> press::Format {
        press::Format {
            width_mm: self.paper.width_mm,
            height_mm: self.paper.height_mm,
            type_largest_pt: 4.5,
            type_least_pt: 3.5,
            pin_mm: 1.1,
        }
    }
}

impl Logbook {
    /// Paper and limits as they hold now.
    pub fn rules(&self) -> Rules {
        let record = self.own_rules();
        let usual = Rules::default();
        let record = record.as_ref();
        Rules {
            paper: record.and_then(|record| record.get(&rules::PAPER)).unwrap_or(usual.paper),
            radius_limit_m: record.and_then(|record| record.get(&rules::RADIUS_LIMIT)).unwrap_or(usual.radius_limit_m),
            spares: record.and_then(|record| record.get(&rules::SPARES)).unwrap_or(usual.spares),
        }
    }

    /// Saves paper and limits.
    ///
    /// **Errors**: all that cannot be taken; nothing is saved then.
    pub fn set_rules(&self, form: &RulesForm, ids: Ids<'_>) -> Result<Deed, Vec<Refused>> {
        let mut refused = Vec::new();
        let mut number = |field, text: &str, least: u32, most: u32| {
            let read = read_number(text).ok_or(Refused::TooSmall { field, least });
            let kept = read.and_then(|value| match value {
                value if value < f64::from(least) => Err(Refused::TooSmall { field, least }),
                value if value > f64::from(most) => Err(Refused::TooLarge { field, most }),
                value => Ok(value),
            });
            kept.map_err(|why| refused.push(why)).unwrap_or_default()
        };
        let width_mm = number("width", &form.width, 5, 60);
        let height_mm = number("height", &form.height, 4, 40);
        let radius_limit = number("radius_limit", &form.radius_limit, 1, 100_000);
        let spares = number("spares", &form.spares, 0, 20);
        if !refused.is_empty() {
            return Err(refused);
        }
        let sheet = if form.sheet == "letter" { "letter" } else { "a4" }.to_owned();
        let mut edit = self.edit_rules(ids);
        edit.put(&rules::PAPER, &Paper { sheet, width_mm, height_mm });
        edit.put(&rules::RADIUS_LIMIT, &radius_limit);
        edit.put(&rules::SPARES, &(spares as u32));
        Ok(Deed::new(What::Setup, [edit]))
    }

    /// The rules of this device's person, or those that are nobody's: the oldest record where there are several.
    pub(super) fn own_rules(&self) -> Option<Record> {
        let all = self.all(&Kind::Rules);
        let of = |person| {
            all.iter().filter(move |record| record.get(&rules::PERSON) == person).min_by_key(|record| record.id)
        };
        let person = self.device().person;
        of(person).or_else(|| of(None)).cloned()
    }

    pub(super) fn edit_rules(&self, ids: Ids<'_>) -> Edit {
        let own = self.own_rules();
        let mut edit = own.as_ref().map_or_else(|| Edit::of(&Record::new(ids(), Kind::Rules)), Edit::of);
        if let Some(person) = self.device().person {
            edit.put(&rules::PERSON, &person);
        }
        edit
    }
}
