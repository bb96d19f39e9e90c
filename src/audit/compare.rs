//! A record against the one that the same inputs give now, field by field.
//!
//! Method: both are walked as JSON side by side. Entries of lists are told apart by their names, so that one that is added
//! or moved does not make all others differ. Every number is compared to its last bit. Where a drive is made of
//! other components, what is below it follows from that and is marked so.
//! Limits: a field that one of the two does not have is a difference where one version of the program wrote both; else it is
//! told as not compared.

use super::fault::relative;
use super::keys::{Step, of_list, path, words};
use serde::Serialize;
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};

/// How much a difference weighs, the heaviest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Weight {
    /// Another drive is chosen, or another outcome.
    Choice,
    /// A verdict turns.
    Verdict,
    /// Another drive is next-best, best or nearest of its family.
    Alternative,
    /// A price, a cost or a merit.
    Price,
    /// Another number.
    Number,
    /// A text, an order, an entry.
    Text,
}

/// One difference.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Difference {
    /// Where: `axes[long].chosen.worksheet[screw-speed].value`.
    pub path: String,
    /// Where, in words.
    pub place: String,
    /// How much it weighs.
    pub weight: Weight,
    /// What stands in the record.
    pub recorded: Value,
    /// What comes out now.
    pub now: Value,
    /// The new number less the old, over the old.
    pub relative: Option<f64>,
    /// Whether it only follows from another drive that is told on its own.
    pub follows: bool,
}

/// Below this share a difference may be the rounding of another processor or system library.
pub const ROUNDING: f64 = 1e-12;

impl Difference {
    /// Whether another processor or system library alone may make it.
    pub fn may_be_rounding(&self) -> bool {
        self.relative.is_some_and(|share| share.abs() < ROUNDING)
    }
}

/// What comes of the comparison.
#[derive(Debug, Default)]
pub struct Comparison {
    /// The differences, the heaviest first.
    pub differences: Vec<Difference>,
    /// Fields that one version writes and the other does not, each with how often.
    pub not_compared: BTreeMap<String, usize>,
    /// How many values were compared.
    pub values: u64,
}

/// Compares a record with the one that comes out now; `one_version` says whether one version of the program wrote both.
pub fn compare(recorded: &Value, now: &Value, one_version: bool) -> Comparison {
    let mut walk = Walk { one_version, follows: false, steps: Vec::new(), found: Comparison::default() };
    walk.value(recorded, now);
    let mut found = walk.found;
    let size = |difference: &Difference| difference.relative.map_or(0.0, f64::abs);
    found
        .differences
        .sort_by(|a, b| (a.follows, a.weight).cmp(&(b.follows, b.weight)).then_with(|| size(b).total_cmp(&size(a))));
    found
}

struct Walk {
    one_version: bool,
    follows: bool,
    steps: Vec<Step>,
    found: Comparison,
}

impl Walk {
    fn within(&mut self, step: Step, recorded: &Value, now: &Value) {
        self.steps.push(step);
        self.value(recorded, now);
        self.steps.pop();
    }

    fn value(&mut self, recorded: &Value, now: &Value) {
        match (recorded, now) {
            (Value::Object(old), Value::Object(new)) => self.object(old, new),
            (Value::Array(old), Value::Array(new)) => self.list(old, new),
            (Value::Number(old), Value::Number(new)) => {
                self.found.values += 1;
                // 1 and 1.0 are one number
                let whole = old.is_f64() == new.is_f64();
                if old != new && (whole || old.as_f64() != new.as_f64()) {
                    let share = old.as_f64().zip(new.as_f64()).and_then(|(old, new)| relative(new, old));
                    self.differs(recorded, now, share, None);
                }
            }
            _ => {
                self.found.values += 1;
                if recorded != now {
                    self.differs(recorded, now, None, None);
                }
            }
        }
    }

    fn object(&mut self, old: &Map<String, Value>, new: &Map<String, Value>) {
        let before = self.follows;
        if let (Some(was), Some(is)) = (drive(old), drive(new))
            && was != is
        {
            let weight = if self.in_chosen() { Weight::Choice } else { Weight::Alternative };
            self.differs(&was.into(), &is.into(), None, Some(weight));
            self.follows = true;
        }
        let fields: BTreeSet<&String> = old.keys().chain(new.keys()).collect();
        for field in fields {
            // the version that wrote it is told on its own
            if self.steps.is_empty() && field == "tool" {
                continue;
            }
            self.steps.push(Step::Field(field.clone()));
            match (old.get(field), new.get(field)) {
                (Some(old), Some(new)) => self.value(old, new),
                (old, new) => self.lacking(old, new),
            }
            self.steps.pop();
        }
        self.follows = before;
    }

    fn lacking(&mut self, old: Option<&Value>, new: Option<&Value>) {
        if self.one_version {
            self.found.values += 1;
            self.differs(&brief(old), &brief(new), None, None);
            return;
        }
        let fields = self.steps.iter().filter_map(|step| match step {
            Step::Field(name) => Some(name.as_str()),
            Step::Key(_) | Step::Place(_) => None,
        });
        let name = fields.collect::<Vec<_>>().join(".");
        *self.found.not_compared.entry(name).or_default() += 1;
    }

    fn list(&mut self, old: &[Value], new: &[Value]) {
        let name = match self.steps.last() {
            Some(Step::Field(name)) => name.clone(),
            _ => String::new(),
        };
        let (Some(before), Some(after)) = (of_list(&name, old), of_list(&name, new)) else {
            for place in 0..old.len().max(new.len()) {
                let step = Step::Place(place);
                match (old.get(place), new.get(place)) {
                    (Some(old), Some(new)) => self.within(step, old, new),
                    (old, new) => self.alone(step, old, new),
                }
            }
            return;
        };
        let place: BTreeMap<&String, &Value> = after.iter().zip(new).collect();
        for (key, entry) in before.iter().zip(old) {
            match place.get(key) {
                Some(other) => self.within(Step::Key(key.clone()), entry, other),
                None => self.alone(Step::Key(key.clone()), Some(entry), None),
            }
        }
        for (key, entry) in after.iter().zip(new).filter(|(key, _)| !before.contains(key)) {
            self.alone(Step::Key(key.clone()), None, Some(entry));
        }
        let common: Vec<&String> = before.iter().filter(|key| after.contains(key)).collect();
        let order: Vec<&String> = after.iter().filter(|key| before.contains(key)).collect();
        if let Some((was, is)) = common.iter().zip(&order).find(|(was, is)| was != is) {
            self.steps.push(Step::Field("order".into()));
            self.differs(&Value::from(was.as_str()), &Value::from(is.as_str()), None, Some(Weight::Text));
            self.steps.pop();
        }
    }

    /// An entry that only one of the two has.
    fn alone(&mut self, step: Step, old: Option<&Value>, new: Option<&Value>) {
        self.found.values += 1;
        self.steps.push(step);
        self.differs(&brief(old), &brief(new), None, None);
        self.steps.pop();
    }

    fn differs(&mut self, recorded: &Value, now: &Value, share: Option<f64>, weight: Option<Weight>) {
        let weight = weight.unwrap_or_else(|| self.weight(recorded, now));
        self.found.differences.push(Difference {
            path: path(&self.steps),
            place: words(&self.steps),
            weight,
            recorded: recorded.clone(),
            now: now.clone(),
            relative: share,
            follows: self.follows,
        });
    }

    /// Whether the place is the drive chosen on an axis.
    fn in_chosen(&self) -> bool {
        matches!(self.steps.as_slice(), [Step::Field(axes), _, Step::Field(chosen), ..] if axes == "axes" && chosen == "chosen")
    }

    fn weight(&self, recorded: &Value, now: &Value) -> Weight {
        let field = self.steps.iter().rev().find_map(|step| match step {
            Step::Field(name) => Some(name.as_str()),
            Step::Key(_) | Step::Place(_) => None,
        });
        match field.unwrap_or_default() {
            "outcome" | "chosen" => Weight::Choice,
            "family" | "designation" | "components" if self.in_chosen() => Weight::Choice,
            "verdict" | "used" | "findings" | "fails" | "waivers" => Weight::Verdict,
            "best" | "nearest" | "runners-up" | "better-alone" => Weight::Alternative,
            "purchase" | "whole-life" | "whole-life-cost" | "amount" | "merit" | "objective" | "bound" | "reached" => {
                Weight::Price
            }
            _ if recorded.is_number() || now.is_number() => Weight::Number,
            _ => Weight::Text,
        }
    }
}

/// Family and components of a drive in one line; none of anything else.
fn drive(object: &Map<String, Value>) -> Option<String> {
    let (family, components) = (object.get("family")?.as_str()?, object.get("components")?.as_array()?);
    object.get("worksheet")?;
    let parts = components.iter().filter_map(|part| part.get("designation")?.as_str());
    Some(format!("{family}: {}", parts.collect::<Vec<_>>().join(", ")))
}

/// What stands for an entry or a field that is there or not.
fn brief(value: Option<&Value>) -> Value {
    match value {
        None => Value::Null,
        Some(Value::Object(entry)) => match drive(entry) {
            Some(drive) => drive.into(),
            None => ["value", "verdict", "amount", "configurations", "sha256", "title"]
                .iter()
                .find_map(|field| entry.get(*field))
                .filter(|value| !value.is_null())
                .cloned()
                .unwrap_or_else(|| "there".into()),
        },
        Some(Value::Array(list)) => format!("a list of {}", list.len()).into(),
        Some(Value::Null) => "null".into(),
        Some(other) => other.clone(),
    }
}
