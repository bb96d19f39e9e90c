//! Faults of a brief at the fields that they speak of.
//!
//! Method: the key path of a fault is turned into the name of the field, group, row or axis whose text is at fault; what no
//! field of the form can show is kept for the top of the page.

use super::draft::{Draft, RIDES_ON, Values, rows};
use crate::yaml::{Fault, Faults, key_path};
use std::collections::BTreeMap;

/// Faults by the names of their fields.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Placed {
    /// What is told at a field.
    pub at: BTreeMap<String, Vec<String>>,
}

impl Placed {
    /// The faults of the brief that this draft makes.
    pub fn of(faults: &Faults, draft: &Draft) -> Placed {
        let mut placed = Placed::default();
        for (path, told) in faults.iter().flat_map(Fault::at_keys) {
            let list = placed.at.entry(name_of(&path, draft)).or_default();
            if !list.contains(&told) {
                list.push(told);
            }
        }
        placed
    }

    /// Takes what is told at a field.
    pub fn take(&mut self, name: &str) -> Vec<String> {
        self.at.remove(name).unwrap_or_default()
    }
}

/// The name of the field at a key path.
fn name_of(path: &str, draft: &Draft) -> String {
    for axis in 0..draft.axes.len() {
        let own = key_path("axes", draft.name(axis));
        let Some(rest) = path.strip_prefix(&own) else { continue };
        if let Some(rest) = rest.strip_prefix('.') {
            return match rest.strip_prefix("carries") {
                Some(item) => format!("axes.{}.{RIDES_ON}", rider(draft, axis, item)),
                None => format!("axes.{axis}.{}", dotted(rest, &draft.axes[axis])),
            };
        }
        if rest.is_empty() {
            return format!("axes.{axis}");
        }
    }
    dotted(path, &draft.machine)
}

/// The axis that stands at this place of what another one carries.
fn rider(draft: &Draft, carrier: usize, item: &str) -> usize {
    let place = item.trim_matches(['[', ']']).parse().unwrap_or(0);
    draft.riders(carrier).nth(place).unwrap_or(carrier)
}

/// "duty[1].speed" as "duty.2.speed", where the first row of the form is empty and so not in the brief.
fn dotted(path: &str, values: &Values) -> String {
    let plain = || path.replace('[', ".").replace(']', "");
    let Some((key, rest)) = path.split_once('[') else { return plain() };
    let Some((item, rest)) = rest.split_once(']') else { return plain() };
    let filled = |row: &usize| {
        let before = format!("{key}.{row}.");
        values.iter().any(|(name, text)| name.starts_with(&before) && !text.is_empty())
    };
    let mut rows = rows(values, &format!("{key}.")).into_iter().filter(filled);
    match item.parse::<usize>().ok().and_then(|item| rows.nth(item)) {
        Some(row) => format!("{key}.{row}{}", rest.replace('[', ".").replace(']', "")),
        None => plain(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::brief;

    #[test]
    fn faults_stand_at_their_fields() {
        let text = "
machine: Slide
limits: { purchase: 0 }
axes:
  x 1:
    direction: horizontal
    travel: 3
    speed: 10 m/min
    acceleration: 1 m/s²
    carries: [y, z]
    duty: [{ share: 50 %, speed: 4 kg }]
  z: { direction: vertical, travel: 1 m, moved-mass: 1 kg, speed: 1 m/min, acceleration: 1 m/s² }
  y: { direction: up, travel: 1 m, moved-mass: 1 kg, speed: 1 m/min, acceleration: 1 m/s², carries: [x 1] }
";
        let draft = Draft::of_brief("brief.yaml", text).expect("a draft");
        let faults = brief::load("brief.yaml", &draft.text()).expect_err("faults");
        let placed = Placed::of(&faults, &draft);
        let names: Vec<&str> = placed.at.keys().map(String::as_str).collect();
        for name in ["axes.0.travel", "axes.0.moved-mass", "axes.0.duty.0.speed", "axes.2.direction", "limits.purchase"]
        {
            assert!(names.contains(&name), "{name} among {names:?}");
        }
        assert!(placed.at["axes.0.travel"][0].contains("`3` has no unit"), "{placed:?}");
    }
}
