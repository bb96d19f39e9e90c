//! The keys of a brief as the guide to the brief explains them.
//!
//! Method: the tables of `docs/brief.md` are read, so that what `explain` tells and the schema of the brief cannot differ from
//! the guide; a test of the guide holds its tables to what the loader accepts.
//! Limits: a table belongs to the group that its heading, or the line with a colon above it, names first.

/// One key of the brief.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// The key.
    pub name: String,
    /// The heading of the guide under which it stands.
    pub place: String,
    /// The key whose group or list it belongs to; [`MACHINE`] and [`AXIS`] of the keys of the machine and of an axis.
    pub group: String,
    /// What may be written, its default if the table has one, and what it means: head and cell, with the marks of the guide.
    pub columns: Vec<(String, String)>,
}

/// The group of the keys of the machine.
pub const MACHINE: &str = "";
/// The group of the keys of an axis.
pub const AXIS: &str = "axes";

const GUIDE: &str = include_str!("../../docs/brief.md");
const HEADING_OF_AXES: &str = "An axis";

impl Key {
    /// The cell below a head; empty if the table has no such column.
    pub fn cell(&self, head: &str) -> &str {
        self.columns.iter().find(|(name, _)| name == head).map_or("", |(_, cell)| cell)
    }

    /// What the key means, which is the last column.
    pub fn meaning(&self) -> &str {
        self.columns.last().map_or("", |(_, cell)| cell)
    }

    /// Heads and cells without the marks of the guide.
    pub fn plainly(&self) -> Vec<(String, String)> {
        self.columns.iter().map(|(head, cell)| (head.clone(), cell.replace('`', ""))).collect()
    }

    /// Whether its group must have it.
    pub fn required(&self) -> bool {
        self.cell("default") == "required" || self.cell("value").ends_with(", required")
    }
}

/// Every key of the guide, in its order; a key that stands in two groups comes twice.
pub fn keys() -> Vec<Key> {
    let (mut keys, mut heads, mut place, mut group) = (Vec::new(), Vec::new(), String::new(), MACHINE.to_string());
    let mut below_axes = false;
    for line in GUIDE.lines() {
        if let Some(heading) = line.strip_prefix('#') {
            let heading = heading.trim_start_matches('#').trim();
            if line.starts_with("## ") {
                below_axes = heading == HEADING_OF_AXES;
            }
            group = first_marked(heading).unwrap_or(if below_axes { AXIS } else { MACHINE }).into();
            place = heading.replace('`', "");
        } else if line.ends_with(':')
            && let Some(told) = first_marked(line)
        {
            group = told.into();
        }
        let Some(cells) = cells(line) else {
            heads.clear();
            continue;
        };
        if heads.is_empty() {
            heads = cells;
        } else if heads.first().is_some_and(|head| head == "key")
            && let Some(name) = cells.first().and_then(|cell| first_marked(cell))
        {
            let name = name.to_string();
            let columns = heads.iter().cloned().zip(cells).skip(1).collect();
            keys.push(Key { name, place: place.clone(), group: group.clone(), columns });
        }
    }
    keys
}

/// The first word between the marks of code.
fn first_marked(line: &str) -> Option<&str> {
    line.split('`').nth(1)
}

/// The cells of a table row.
fn cells(line: &str) -> Option<Vec<String>> {
    let row = line.trim().strip_prefix('|')?.strip_suffix('|')?;
    Some(row.split('|').map(|cell| cell.trim().to_string()).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_keys_of_the_guide_are_found_with_their_meaning() {
        let keys = keys();
        let travel = keys.iter().find(|key| key.name == "travel").expect("the key travel");
        assert!(travel.meaning().contains("travel") && travel.required());
        for name in ["machine", "carries", "duty", "share", "waivers", "families", "purchase"] {
            assert!(keys.iter().any(|key| key.name == name), "{name}");
        }
        assert!(keys.iter().all(|key| !key.name.contains('`') && !key.place.is_empty()));
    }

    #[test]
    fn a_key_belongs_to_the_group_that_the_guide_names_above_its_table() {
        let keys = keys();
        for (name, group) in [
            ("machine", MACHINE),
            ("purchase", "limits"),
            ("upkeep", "prefer"),
            ("travel", AXIS),
            ("ripple", "counterbalance"),
            ("friction", "cable-chain"),
            ("duty", AXIS),
            ("stand", "duty"),
            ("dwell", "moves"),
            ("ripple", AXIS),
            ("radius", "contour"),
            ("window", "settling"),
            ("height", "guide-waviness"),
            ("families", AXIS),
            ("stiffness", "uncertainty"),
            ("until", "waivers"),
        ] {
            assert!(keys.iter().any(|key| (key.name.as_str(), key.group.as_str()) == (name, group)), "{name}, {group}");
        }
    }
}
