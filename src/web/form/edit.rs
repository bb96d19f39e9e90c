//! What the buttons of the form do to a draft: axes and rows that are added, copied and taken out.

use super::draft::{Draft, MOST_ROWS, NAME, RIDES_ON, Values, rows};
use crate::brief::MOST_AXES;

/// Where rows stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// In the machine.
    Machine,
    /// In this axis.
    Axis(usize),
}

/// One change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Edit {
    /// A new axis at the end.
    AddAxis,
    /// A copy of this axis behind it.
    CopyAxis(usize),
    /// Takes this axis out.
    RemoveAxis(usize),
    /// A new row below this key.
    AddRow(Place, String),
    /// Takes this row out.
    RemoveRow(Place, String, usize),
}

impl Edit {
    /// Reads what a button says: "add-axis", "copy-axis 1", "add-row axes.0.duty", "remove-row waivers 2".
    pub fn read(text: &str) -> Option<Edit> {
        let words: Vec<&str> = text.split(' ').collect();
        let number = |text: &str| text.parse::<usize>().ok();
        match words.as_slice() {
            ["add-axis"] => Some(Edit::AddAxis),
            ["copy-axis", axis] => Some(Edit::CopyAxis(number(axis)?)),
            ["remove-axis", axis] => Some(Edit::RemoveAxis(number(axis)?)),
            ["add-row", key] => place(key).map(|(place, key)| Edit::AddRow(place, key)),
            ["remove-row", key, row] => {
                let (place, key) = place(key)?;
                Some(Edit::RemoveRow(place, key, number(row)?))
            }
            _ => None,
        }
    }
}

fn place(key: &str) -> Option<(Place, String)> {
    match key.strip_prefix("axes.") {
        Some(rest) => {
            let (axis, key) = rest.split_once('.')?;
            Some((Place::Axis(axis.parse().ok()?), key.into()))
        }
        None => Some((Place::Machine, key.into())),
    }
}

impl Draft {
    /// Makes a change; the name of the field to go on at. What points nowhere changes nothing.
    pub fn edit(&mut self, edit: &Edit) -> String {
        match edit {
            Edit::AddAxis => {
                let axis = Values::from([(NAME.to_string(), self.free_name("axis"))]);
                self.insert(self.axes.len(), axis)
            }
            Edit::CopyAxis(from) => match self.axes.get(*from).cloned() {
                Some(mut axis) => {
                    axis.insert(NAME.into(), self.free_name(self.name(*from)));
                    self.insert(from + 1, axis)
                }
                None => String::new(),
            },
            Edit::RemoveAxis(axis) => {
                if *axis < self.axes.len() {
                    self.axes.remove(*axis);
                    self.renumber(|on| match on.cmp(axis) {
                        std::cmp::Ordering::Less => Some(on),
                        std::cmp::Ordering::Equal => None,
                        std::cmp::Ordering::Greater => Some(on - 1),
                    });
                }
                "add-axis".into()
            }
            Edit::AddRow(place, key) => {
                let before = format!("{key}.");
                let Some(values) = self.values(*place) else { return String::new() };
                let row = rows(values, &before).last().map_or(0, |last| last + 1);
                if row < MOST_ROWS
                    && let Some(first) = super::shape::first_field(*place, key)
                {
                    values.insert(format!("{key}.{row}.{first}"), String::new());
                    return format!("{}{key}.{row}.{first}", prefix(*place));
                }
                String::new()
            }
            Edit::RemoveRow(place, key, row) => {
                let before = format!("{key}.{row}.");
                if let Some(values) = self.values(*place) {
                    values.retain(|name, _| !name.starts_with(&before));
                }
                format!("add-row {}{key}", prefix(*place))
            }
        }
    }

    fn insert(&mut self, at: usize, axis: Values) -> String {
        if self.axes.len() >= MOST_AXES {
            return String::new();
        }
        self.renumber(|on| Some(if on >= at { on + 1 } else { on }));
        self.axes.insert(at, axis);
        format!("axes.{at}.{NAME}")
    }

    /// Lets what axes ride on follow the numbers of the axes.
    fn renumber(&mut self, to: impl Fn(usize) -> Option<usize>) {
        for axis in &mut self.axes {
            if let Some(on) = axis.get_mut(RIDES_ON) {
                *on = on.parse().ok().and_then(&to).map_or(String::new(), |on| on.to_string());
            }
        }
    }

    fn values(&mut self, place: Place) -> Option<&mut Values> {
        match place {
            Place::Machine => Some(&mut self.machine),
            Place::Axis(axis) => self.axes.get_mut(axis),
        }
    }

    /// A name like this one that no axis has.
    fn free_name(&self, like: &str) -> String {
        let taken = |name: &str| (0..self.axes.len()).any(|axis| self.name(axis) == name);
        let numbered = (1..).map(|number| if number == 1 { like.to_string() } else { format!("{like} {number}") });
        numbered.take(MOST_AXES + 1).find(|name| !name.is_empty() && !taken(name)).unwrap_or_default()
    }
}

fn prefix(place: Place) -> String {
    match place {
        Place::Machine => String::new(),
        Place::Axis(axis) => format!("axes.{axis}."),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(names: &[(&str, &str)]) -> Draft {
        let axis = |(name, on): &(&str, &str)| {
            Values::from([(NAME.to_string(), name.to_string()), (RIDES_ON.to_string(), on.to_string())])
        };
        Draft { machine: Values::new(), axes: names.iter().map(axis).collect() }
    }

    fn on(draft: &Draft) -> Vec<&str> {
        draft.axes.iter().map(|axis| axis.get(RIDES_ON).map_or("", String::as_str)).collect()
    }

    #[test]
    fn what_axes_ride_on_follows_when_axes_come_and_go() {
        let mut some = draft(&[("x", ""), ("y", "0"), ("z", "1")]);
        assert_eq!(some.edit(&Edit::CopyAxis(0)), "axes.1.name");
        assert_eq!(on(&some), ["", "", "0", "2"]);
        assert_eq!(some.name(1), "x 2");
        some.edit(&Edit::RemoveAxis(0));
        assert_eq!(on(&some), ["", "", "1"]);
        some.edit(&Edit::AddAxis);
        assert_eq!(some.axes.len(), 4);
        assert_eq!(some.edit(&Edit::CopyAxis(9)), "");
    }

    #[test]
    fn rows_are_added_and_taken_out() {
        let mut some = draft(&[("x", "")]);
        let add = Edit::read("add-row axes.0.duty").expect("an edit");
        assert_eq!(some.edit(&add), "axes.0.duty.0.share");
        assert_eq!(some.edit(&add), "axes.0.duty.1.share");
        some.edit(&Edit::read("remove-row axes.0.duty 0").expect("an edit"));
        assert_eq!(rows(&some.axes[0], "duty."), [1]);
        for nothing in ["", "add-row axes.9.duty", "remove-row", "add-row axes.0.colour", "copy-axis x"] {
            let before = some.clone();
            if let Some(edit) = Edit::read(nothing) {
                some.edit(&edit);
            }
            assert_eq!(before, some, "{nothing}");
        }
    }
}
