//! The columns of a supplier's table: which key each gives, in which unit, and what a cell of it comes to.

use super::map::{self, Column, Map};
use super::number::{self, Decimal, Unclear};
use crate::catalog::{Field, Kind};
use crate::cells::{Cell, Sheet};
use crate::units::{Dimension, parse_as};
use crate::yaml::{Fault, Faults, nearest};

/// A table with its map.
pub struct Table<'t> {
    /// Where the cells stand.
    pub sheet: &'t Sheet<'t>,
    /// How it is read.
    pub map: &'t Map,
    /// Its headings.
    pub head: &'t [Cell],
    /// The units below them, if there are any.
    pub units: &'t [Cell],
    /// Its rows.
    pub lines: &'t [Vec<Cell>],
}

/// A column that gives a key.
pub struct Placed<'m> {
    /// The key.
    pub key: String,
    /// The place of the column.
    pub index: usize,
    /// Whether an entry may do without it.
    pub optional: bool,
    /// What its values are.
    gives: Gives,
    /// The unit of its bare numbers.
    unit: Option<String>,
    /// What the map says of it.
    mapped: Option<&'m Column>,
}

/// What the values of a key are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Gives {
    Quantity(Dimension),
    Count,
    Flag,
    Text,
    Designation,
}

impl Table<'_> {
    /// The columns that give a key, in the order of the kind, and the headings that no key was found for.
    pub fn place<'m>(&'m self, kind: &Kind, faults: &mut Faults) -> (Vec<Placed<'m>>, Vec<String>) {
        let mut placed: Vec<Placed<'m>> = Vec::new();
        let mut missing = Vec::new();
        for key in map::keys(kind) {
            let field = kind.fields.iter().find(|field| field.key() == key);
            let optional = field.is_some_and(|field| field.optional);
            let mapped = self.map.columns.iter().find(|(known, _)| *known == key).map(|(_, column)| column);
            let index = match mapped {
                Some(column) => match self.heading(&column.heading).as_slice() {
                    [index] => Some(*index),
                    [_, second, ..] => {
                        faults.push(self.twice(*second));
                        continue;
                    }
                    [] => {
                        faults.push(self.not_there(&column.heading));
                        continue;
                    }
                },
                None => {
                    let mut found = self.head.iter().enumerate().filter(|(_, cell)| self.is_key(&cell.text, &key));
                    let first = found.next().map(|(index, _)| index);
                    if let Some((second, _)) = found.next() {
                        faults.push(self.twice(second));
                    }
                    first
                }
            };
            let Some(index) = index else {
                if !optional && !self.map.values.iter().any(|(known, _)| *known == key) {
                    missing.push(format!("`{key}`"));
                }
                continue;
            };
            let gives = gives(&key, field);
            let usual = field.map_or("weeks", |field| field.unit);
            let unit = self.unit((index, usual), gives, mapped, &key, faults);
            placed.push(Placed { key, index, optional, gives, unit, mapped });
        }
        if !missing.is_empty() {
            let message = format!("no column and no value of the map gives {}", missing.join(", "));
            let help = "name their columns under `columns` of a map (--map), or what all parts share under `values`; \
                        lines before the headings are counted by `skip-lines`";
            let place = self.head.first().map_or(0..0, |cell| cell.place.clone());
            faults.push(self.sheet.fault(place, "the headings", message, Some(help.into())));
        }
        let used = |index: usize| placed.iter().any(|column| column.index == index);
        let known = |text: &str| self.map.leave_out.iter().any(|heading| same(heading, text));
        let unplaced = self.head.iter().enumerate().filter(|(index, cell)| !used(*index) && !cell.text.is_empty());
        let unplaced = unplaced.filter(|(_, cell)| !known(&cell.text)).map(|(_, cell)| cell.text.clone()).collect();
        (placed, unplaced)
    }

    /// The columns with this heading; where there are none, those that have it without their unit.
    fn heading(&self, wanted: &str) -> Vec<usize> {
        let all = |is: &dyn Fn(&str) -> bool| -> Vec<usize> {
            self.head.iter().enumerate().filter(|(_, cell)| is(&cell.text)).map(|(index, _)| index).collect()
        };
        let exact = all(&|text| same(text, wanted));
        if exact.is_empty() { all(&|text| same(parts(text).0, wanted)) } else { exact }
    }

    fn twice(&self, second: usize) -> Fault {
        let cell = self.head.get(second).cloned().unwrap_or(Cell { text: String::new(), place: 0..0 });
        let message = format!("two columns have the heading `{}`", cell.text);
        let help = "give them different headings, or name the one that is meant with its unit in the map";
        self.sheet.fault(cell.place, "a second time here", message, Some(help.into()))
    }

    fn is_key(&self, heading: &str, key: &str) -> bool {
        let word = parts(heading).0.to_lowercase().replace([' ', '_'], "-");
        self.map.columns.is_empty() && word == key
    }

    fn not_there(&self, heading: &str) -> Fault {
        let names = self.head.iter().map(|cell| cell.text.as_str());
        let help = nearest(heading, names.clone()).map_or_else(
            || format!("the headings are {}", names.filter(|name| !name.is_empty()).collect::<Vec<_>>().join(" | ")),
            |near| format!("did you mean `{near}`?"),
        );
        let place = self.head.first().map_or(0..0, |cell| cell.place.clone());
        let message = format!("the table has no column `{heading}`");
        self.sheet.fault(place, "the headings", message, Some(help))
    }

    /// The unit of the bare numbers of a column: of the map, of the line below the headings, or of the heading.
    fn unit(
        &self,
        (index, usual): (usize, &str),
        gives: Gives,
        mapped: Option<&Column>,
        key: &str,
        faults: &mut Faults,
    ) -> Option<String> {
        let Gives::Quantity(dimension) = gives else { return None };
        if dimension == Dimension::Money {
            return None;
        }
        let cell = self.head.get(index)?;
        let below = self.units.get(index).map(|cell| cell.text.as_str()).filter(|unit| !self.map.is_missing(unit));
        let stated = mapped.and_then(|column| column.unit.as_deref()).or(below);
        let (_, of_heading) = parts(&cell.text);
        let reads = |unit: &&str| parse_as(dimension, &format!("1 {unit}")).is_ok();
        let unit = stated.or_else(|| of_heading.iter().copied().find(reads));
        if let Some(unit) = unit {
            if let Err(error) = parse_as(dimension, &format!("1 {unit}")) {
                faults.push(self.sheet.fault(cell.place.clone(), "this column", format!("`{key}`: {error}"), None));
            }
            return Some(unit.into());
        }
        if dimension == Dimension::Ratio {
            return None;
        }
        let bare = |cells: &Vec<Cell>| {
            let cell = cells.get(index).filter(|cell| !self.map.is_missing(&cell.text));
            cell.and_then(|cell| number::split(&cell.text)).is_some_and(|(_, rest)| rest.is_empty())
        };
        if self.lines.iter().any(bare) {
            let message = format!("the column `{}` has numbers without a unit", cell.text);
            let help = format!("say it in the map: `{key}: {{ column: {}, unit: {usual} }}`", map::quoted(&cell.text));
            faults.push(self.sheet.fault(cell.place.clone(), "no unit", message, Some(help)));
        }
        None
    }

    /// The decimal mark of the table.
    pub fn decimal(&self, placed: &[Placed<'_>], faults: &mut Faults) -> Option<Decimal> {
        if self.map.decimal.is_some() {
            return self.map.decimal;
        }
        let numeric = |column: &&Placed<'_>| matches!(column.gives, Gives::Quantity(_) | Gives::Count);
        let cells: Vec<(&str, &Cell)> = placed
            .iter()
            .filter(numeric)
            .flat_map(|column| self.lines.iter().filter_map(|cells| cells.get(column.index)))
            .filter_map(|cell| Some((number::split(&cell.text)?.0, cell)))
            .collect();
        match number::decimal(cells.iter().map(|(number, _)| *number)) {
            Ok(decimal) => Some(decimal),
            Err(unclear) => {
                let help = "say `decimal: comma` or `decimal: point` in the map";
                let (Unclear::Both(_, number) | Unclear::Either(number)) = &unclear;
                let found = cells.iter().find(|(known, _)| known == number);
                let place = found.map_or(0..0, |(_, cell)| cell.place.clone());
                faults.push(self.sheet.fault(place, "this cell", unclear.to_string(), Some(help.into())));
                None
            }
        }
    }

    /// What a cell comes to, as YAML; else what is wrong with it.
    pub fn value(&self, column: &Placed<'_>, cell: &Cell, decimal: Decimal) -> Result<String, String> {
        let text = cell.text.split_whitespace().collect::<Vec<_>>().join(" ");
        let words = column.mapped.map_or(&[][..], |mapped| mapped.words.as_slice());
        if let Some((_, value)) = words.iter().find(|(word, _)| same(word, &text)) {
            return Ok(value.clone());
        }
        match column.gives {
            Gives::Designation => Ok(map::quoted(&text.replace(' ', "-"))),
            Gives::Text => Ok(map::quoted(&text)),
            Gives::Flag => match text.to_lowercase().as_str() {
                "true" | "yes" => Ok("true".into()),
                "false" | "no" => Ok("false".into()),
                _ => Err(format!("`{text}` is neither yes nor no; give its meaning under `words` of the map")),
            },
            Gives::Count => self.number(column, &text, decimal).and_then(|(number, rest)| match rest.as_str() {
                "" => Ok(number),
                rest => Err(format!("a count has no unit, but this has `{rest}`")),
            }),
            Gives::Quantity(Dimension::Money) => {
                let amount = text.trim_matches(|letter: char| "€$£¥".contains(letter) || letter.is_whitespace());
                let (number, rest) = self.number(column, amount, decimal)?;
                let currency = rest.len() == 3 && rest.bytes().all(|letter| letter.is_ascii_uppercase());
                if rest.is_empty() || currency { Ok(number) } else { Err(format!("`{rest}` is no currency")) }
            }
            Gives::Quantity(dimension) => {
                let (number, own) = self.number(column, &text, decimal)?;
                let unit = if own.is_empty() { column.unit.clone().unwrap_or_default() } else { own };
                let told = format!("{number} {unit}");
                let told = told.trim();
                match parse_as(dimension, told) {
                    Ok(_) if unit.is_empty() => Ok(number),
                    Ok(_) => Ok(map::quoted(told)),
                    Err(error) => Err(error.to_string()),
                }
            }
        }
    }

    /// The number of a cell with a decimal point, times the factor of its column, and what stands behind it.
    fn number(&self, column: &Placed<'_>, text: &str, decimal: Decimal) -> Result<(String, String), String> {
        let wrong = || format!("`{text}` is not a number");
        let (number, rest) = number::split(text).ok_or_else(wrong)?;
        let plain = number::plain(number, decimal).ok_or_else(wrong)?;
        let times = column.mapped.map_or(1.0, |mapped| mapped.times);
        let plain = match times == 1.0 {
            true => plain,
            false => (plain.parse::<f64>().map_err(|_| wrong())? * times).to_string(),
        };
        Ok((plain, rest.to_string()))
    }
}

fn gives(key: &str, field: Option<&Field>) -> Gives {
    match (key, field) {
        ("designation", _) => Gives::Designation,
        (_, None) => Gives::Quantity(Dimension::Time),
        (_, Some(field)) => match (field.dimension, field.unit) {
            (Some(dimension), _) => Gives::Quantity(dimension),
            (None, "count") => Gives::Count,
            (None, "flag") => Gives::Flag,
            _ => Gives::Text,
        },
    }
}

/// Whether two texts are the same but for blanks and capitals.
fn same(one: &str, other: &str) -> bool {
    let plain = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    plain(one) == plain(other)
}

/// A heading without its unit, and what may be its unit: what stands in brackets, behind `in`, or behind a stroke.
fn parts(heading: &str) -> (&str, Vec<&str>) {
    let heading = heading.trim();
    for (open, close) in [('[', ']'), ('(', ')')] {
        if let (Some(from), Some(to)) = (heading.rfind(open), heading.rfind(close))
            && from < to
        {
            return (heading[..from].trim(), vec![heading[from + 1..to].trim()]);
        }
    }
    for mark in [" in ", " / "] {
        if let Some((word, unit)) = heading.rsplit_once(mark) {
            return (word.trim(), vec![unit.trim()]);
        }
    }
    (heading, Vec::new())
}
