//! Label paper, sizes and pins, spare labels and limits.

use super::Refused;
use crate::book::Logbook;
use crate::deed::{Deed, What};
use crate::labels::{LabelKind, is_pinned};
use crate::names::Ids;
use crate::values::read_number;
use number::symbol::{Shape, symbol};
use ports::press;
use record::rules::{self, Card, Paper, Pinned, Size};
use record::{Edit, Kind, Record};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use units::PinSize;

/// Paper and limits as they hold now.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    /// The label sheet, and the size of labels that stand on pins.
    pub paper: Paper,
    /// A card of one's own, and the margins of any sheet.
    pub card: Card,
    /// Type and pin of labels that stand on pins.
    pub pinned: Pinned,
    /// Sizes of the others, by kind, where a person has set them.
    pub sizes: BTreeMap<String, Size>,
    /// Heights on the pin from its point, millimetres: insect, first, second label.
    pub heights_mm: [f64; 3],
    /// Radius in metres above which a position counts as too vague.
    pub radius_limit_m: f64,
    /// Spare labels of each kind.
    pub spares: u32,
}

/// Paper and limits as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct RulesForm {
    /// `a4`, `letter`, `card`.
    pub sheet: String,
    /// Width of a label on a pin, millimetres.
    pub width: String,
    /// Height of a label on a pin, millimetres.
    pub height: String,
    /// Width of a card of one's own, millimetres.
    pub card_width: String,
    /// Its height, millimetres.
    pub card_height: String,
    /// White at all four sides of a sheet, millimetres.
    pub margin: String,
    /// Largest type, points.
    pub largest: String,
    /// Least type, points.
    pub least: String,
    /// Size of the pin, one of [`codes::PINS`](crate::codes::PINS).
    pub pin: String,
    /// `middle`, `end`.
    pub pin_at: String,
    /// The Data Matrix on code labels: `square`, `slim`; empty for none.
    pub code: String,
    /// Width and height of labels that lie loose, by kind, millimetres.
    pub sizes: Vec<(LabelKind, String, String)>,
    /// Heights on the pin, millimetres: insect, first, second label.
    pub heights: [String; 3],
    /// Metres.
    pub radius_limit: String,
    /// Spare labels of each kind.
    pub spares: String,
}

/// White on both sides of a pin, millimetres: common practice.
const BESIDE_PIN_MM: f64 = 0.3;

/// 18 by 8 mm on A4 with margins of 10 mm, a pin No. 3 in the middle, type from 5 down to 4 pt, the three steps of a
/// block, one spare of each, positions good to 100 m: common practice.
impl Default for Rules {
    fn default() -> Self {
        let paper = Paper { sheet: "a4".to_owned(), width_mm: 18.0, height_mm: 8.0 };
        let card = Card { width_mm: 148.0, height_mm: 105.0, margin_mm: 10.0 };
        let pinned = Pinned {
            largest_pt: 5.0,
            least_pt: 4.0,
            pin: "3".to_owned(),
            at: "middle".to_owned(),
            code: String::new(),
        };
        let sizes = BTreeMap::new();
        Self { paper, card, pinned, sizes, heights_mm: [25.0, 16.0, 12.0], radius_limit_m: 100.0, spares: 1 }
    }
}

impl Rules {
    /// As the Setup screen shows them.
    pub fn form(&self) -> RulesForm {
        let loose = LabelKind::ALL.into_iter().filter(|kind| !is_pinned(*kind)).map(|kind| {
            let size = self.size(kind);
            (kind, size.width_mm.to_string(), size.height_mm.to_string())
        });
        RulesForm {
            sheet: self.paper.sheet.clone(),
            width: self.paper.width_mm.to_string(),
            height: self.paper.height_mm.to_string(),
            card_width: self.card.width_mm.to_string(),
            card_height: self.card.height_mm.to_string(),
            margin: self.card.margin_mm.to_string(),
            largest: self.pinned.largest_pt.to_string(),
            least: self.pinned.least_pt.to_string(),
            pin: self.pinned.pin.clone(),
            pin_at: self.pinned.at.clone(),
            code: self.pinned.code.clone(),
            sizes: loose.collect(),
            heights: self.heights_mm.map(|height| height.to_string()),
            radius_limit: self.radius_limit_m.to_string(),
            spares: self.spares.to_string(),
        }
    }

    /// The same rules with the smallest type that is ever set, where they stop above it.
    pub fn with_smallest_type(&self) -> Option<RulesForm> {
        (self.pinned.least_pt > LEAST_PT).then(|| RulesForm { least: LEAST_PT.to_string(), ..self.form() })
    }

    /// The sheet for the press, of which so many rows of labels on pins, and places in the next row, are used already.
    pub fn card(&self, (rows, places): (u32, u32)) -> press::Card {
        let usual =
            press::Card::fresh(if self.paper.sheet == "letter" { press::Paper::Letter } else { press::Paper::A4 });
        let own = (self.card.width_mm, self.card.height_mm);
        press::Card {
            size_mm: if self.paper.sheet == "card" { own } else { usual.size_mm },
            margin_mm: self.card.margin_mm,
            used_down_mm: f64::from(rows) * self.paper.height_mm,
            used_across_mm: f64::from(places) * self.paper.width_mm,
        }
    }

    /// Size, type and pin of a kind of label for the press.
    pub fn style(&self, kind: LabelKind) -> press::Style {
        let at_end = is_pinned(kind) && self.pinned.at == "end";
        press::Style {
            format: self.format(kind),
            pin_at: if at_end { press::PinAt::Left } else { press::PinAt::Middle },
        }
    }

    /// The Data Matrix of a code, in the shape that a person chose.
    pub(crate) fn code(&self, text: &str) -> Option<press::Code> {
        let shape = match self.pinned.code.as_str() {
            "square" => Shape::Square,
            "slim" => Shape::Slim,
            _ => return None,
        };
        let symbol = symbol(text, shape)?;
        let modules = symbol.modules.iter().map(|ink| if *ink { '1' } else { '0' }).collect();
        Some(press::Code { text: text.to_owned(), columns: symbol.columns, modules })
    }

    /// The size of a kind of label.
    pub fn size(&self, kind: LabelKind) -> Size {
        let usual = wording::defaults::size(kind);
        match self.sizes.get(kind.code()) {
            Some(own) => *own,
            None if is_pinned(kind) => Size { width_mm: self.paper.width_mm, height_mm: self.paper.height_mm },
            None => Size { width_mm: usual.width.millimetres(), height_mm: usual.height.millimetres() },
        }
    }

    /// A label's size and type, with the disc that is kept clear for the pin.
    pub fn format(&self, kind: LabelKind) -> press::Format {
        let Size { width_mm, height_mm } = self.size(kind);
        if is_pinned(kind) {
            return press::Format {
                width_mm,
                height_mm,
                type_largest_pt: self.pinned.largest_pt,
                type_least_pt: self.pinned.least_pt,
                pin_mm: pin_diameter_mm(&self.pinned.pin) + 2.0 * BESIDE_PIN_MM,
            };
        }
        let usual = wording::defaults::size(kind);
        press::Format {
            width_mm,
            height_mm,
            type_largest_pt: usual.largest.points(),
            type_least_pt: usual.least.points(),
            pin_mm: 0.0,
        }
    }
}

/// The diameter of a pin by its size; of No. 3 where the size is not known.
fn pin_diameter_mm(size: &str) -> f64 {
    [size, "3"].into_iter().find_map(PinSize::named).map_or(0.0, |size| size.diameter().millimetres())
}

impl Logbook {
    /// Paper and limits as they hold now.
    pub fn rules(&self) -> Rules {
        let record = self.own_rules();
        let usual = Rules::default();
        let record = record.as_ref();
        let held = |record: Option<&Record>| Rules {
            paper: record.and_then(|record| record.get(&rules::PAPER)).unwrap_or(usual.paper),
            card: record.and_then(|record| record.get(&rules::CARD)).unwrap_or(usual.card),
            pinned: record.and_then(|record| record.get(&rules::PINNED)).unwrap_or(usual.pinned),
            sizes: record.and_then(|record| record.get(&rules::SIZES)).unwrap_or_default(),
            heights_mm: record.and_then(|record| record.get(&rules::HEIGHTS)).unwrap_or(usual.heights_mm),
            radius_limit_m: record.and_then(|record| record.get(&rules::RADIUS_LIMIT)).unwrap_or(usual.radius_limit_m),
            spares: record.and_then(|record| record.get(&rules::SPARES)).unwrap_or(usual.spares),
        };
        held(record)
    }

    /// Saves paper and limits.
    ///
    /// **Errors**: all that cannot be taken; nothing is saved then.
    pub fn set_rules(&self, form: &RulesForm, ids: Ids<'_>) -> Result<Deed, Vec<Refused>> {
        let mut reading = Reading::default();
        let sheet = crate::codes::SHEETS.into_iter().find(|code| *code == form.sheet).unwrap_or("a4").to_owned();
        let paper = Paper {
            sheet,
            width_mm: reading.number("width", &form.width, 5, 60),
            height_mm: reading.number("height", &form.height, 4, 40),
        };
        let card = Card {
            width_mm: reading.number("card_width", &form.card_width, 60, 450),
            height_mm: reading.number("card_height", &form.card_height, 40, 450),
            margin_mm: reading.number("margin", &form.margin, 3, 40),
        };
        let pinned = Pinned {
            largest_pt: reading.type_size("largest", &form.largest),
            least_pt: reading.type_size("least", &form.least),
            pin: form.pin.clone(),
            at: form.pin_at.clone(),
            code: form.code.clone(),
        };
        let mut sizes = self.rules().sizes;
        for (kind, width, height) in &form.sizes {
            let size = Size {
                width_mm: reading.number("width", width, 8, 150),
                height_mm: reading.number("height", height, 4, 150),
            };
            sizes.insert(kind.code().to_owned(), size);
        }
        let heights_mm = [0, 1, 2].map(|at| reading.number("heights", &form.heights[at], 1, 50));
        let radius_limit = reading.number("radius_limit", &form.radius_limit, 1, 100_000);
        let spares = reading.number("spares", &form.spares, 0, 20);
        if !reading.refused.is_empty() {
            return Err(reading.refused);
        }
        let usual = Rules::default();
        sizes.retain(|code, size| LabelKind::of_code(code).is_none_or(|kind| usual.size(kind) != *size));
        let mut edit = self.edit_rules(ids);
        edit.put(&rules::PAPER, &paper);
        edit.put_or_empty(&rules::CARD, Some(&card).filter(|card| **card != usual.card));
        let pinned = Pinned { largest_pt: pinned.largest_pt.max(pinned.least_pt), ..pinned };
        edit.put_or_empty(&rules::PINNED, Some(&pinned).filter(|pinned| **pinned != usual.pinned));
        edit.put_or_empty(&rules::SIZES, Some(&sizes).filter(|sizes| !sizes.is_empty()));
        edit.put_or_empty(&rules::HEIGHTS, Some(&heights_mm).filter(|heights| **heights != usual.heights_mm));
        edit.put(&rules::RADIUS_LIMIT, &radius_limit);
        edit.put(&rules::SPARES, &(spares as u32));
        Ok(Deed::new(What::Setup, [edit]))
    }

    /// The rules of this device's person, or those that are nobody's: the oldest record where there are several.
    pub(crate) fn own_rules(&self) -> Option<Record> {
        let all = self.all(&Kind::Rules);
        let of = |person| {
            all.iter().filter(move |record| record.get(&rules::PERSON) == person).min_by_key(|record| record.id)
        };
        let person = self.device().person;
        of(person).or_else(|| of(None)).cloned()
    }

    pub(crate) fn edit_rules(&self, ids: Ids<'_>) -> Edit {
        let own = self.own_rules();
        let mut edit = own.as_ref().map_or_else(|| Edit::of(&Record::new(ids(), Kind::Rules)), Edit::of);
        if let Some(person) = self.device().person {
            edit.put(&rules::PERSON, &person);
        }
        edit
    }
}

/// Numbers as typed, and which could not be taken.
#[derive(Default)]
struct Reading {
    refused: Vec<Refused>,
}

impl Reading {
    fn number(&mut self, field: &'static str, text: &str, least: u32, most: u32) -> f64 {
        let kept = match read_number(text) {
            None => Err(Refused::TooSmall { field, least }),
            Some(value) if value < f64::from(least) => Err(Refused::TooSmall { field, least }),
            Some(value) if value > f64::from(most) => Err(Refused::TooLarge { field, most }),
            Some(value) => Ok(value),
        };
        kept.map_err(|why| self.refused.push(why)).unwrap_or_default()
    }

    /// Type below 3.5 pt is not used: see the sources of `wording::defaults`.
    fn type_size(&mut self, field: &'static str, text: &str) -> f64 {
        self.number(field, text, 3, 12).max(LEAST_PT)
    }
}

/// No type is smaller, points.
const LEAST_PT: f64 = 3.5;
