//! The keys of a brief as the guide to the brief explains them, and the nearest spelling of an unknown name.
//!
//! Method: the tables of `docs/brief.md` are read, so that `explain` and the guide cannot differ; a test of
//! the guide holds its tables to what the loader accepts.

/// One key of the brief.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// The key.
    pub name: String,
    /// The heading of the guide under which it stands.
    pub place: String,
    /// What may be written, its default if the table has one, and what it means.
    pub columns: Vec<(String, String)>,
}

const GUIDE: &str = include_str!("../../docs/brief.md");

/// Every key of the guide, in its order; a key that stands in two groups comes twice.
pub fn keys() -> Vec<Key> {
    let (mut keys, mut heads, mut place) = (Vec::new(), Vec::new(), String::new());
    for line in GUIDE.lines() {
        if let Some(heading) = line.strip_prefix('#') {
            place = heading.trim_start_matches('#').trim().replace('`', "");
        }
        let Some(cells) = cells(line) else {
            heads.clear();
            continue;
        };
        if heads.is_empty() {
            heads = cells;
        } else if heads[0] == "key" || heads[0] == "`key`" {
            let name = cells[0].trim_matches('`').to_string();
            if cells[0].starts_with('`') {
                let columns =
                    heads.iter().cloned().zip(cells).skip(1).map(|(head, cell)| (head, cell.replace('`', "")));
                keys.push(Key { name, place: place.clone(), columns: columns.collect() });
            }
        }
    }
    keys
}

/// The cells of a table row.
fn cells(line: &str) -> Option<Vec<String>> {
    let row = line.trim().strip_prefix('|')?.strip_suffix('|')?;
    Some(row.split('|').map(|cell| cell.trim().to_string()).collect())
}

/// So many names may hold a word for all to be told.
const FEW: usize = 6;

/// The message for a name that nothing has, with the nearest spelling and where to look.
pub fn unknown<'a>(what: &str, name: &str, known: impl Iterator<Item = &'a str>, look: &str) -> String {
    let known: Vec<&str> = known.collect();
    // a word that is part of a few names is meant for one of them
    let holding: Vec<&str> = known.iter().copied().filter(|known| name.len() > 2 && known.contains(name)).collect();
    let near = crate::yaml::nearest(name, known.iter().copied());
    let meant: Vec<String> = match (holding.as_slice(), near) {
        ([], near) => near.iter().map(|known| format!("`{known}`")).collect(),
        (few, _) if few.len() <= FEW => few.iter().map(|known| format!("`{known}`")).collect(),
        (_, near) => near.iter().map(|known| format!("`{known}`")).collect(),
    };
    let nearest = (!meant.is_empty()).then(|| format!("; did you mean {}?", meant.join(" or ")));
    format!("no {what} is called `{name}`{}\n`axiswright {look}` tells what there is", nearest.unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_keys_of_the_guide_are_found_with_their_meaning() {
        let keys = keys();
        let travel = keys.iter().find(|key| key.name == "travel").expect("the key travel");
        assert!(travel.columns.iter().any(|(head, cell)| head == "meaning" && cell.contains("travel")));
        for name in ["machine", "carries", "duty", "share", "waivers", "families", "purchase"] {
            assert!(keys.iter().any(|key| key.name == name), "{name}");
        }
        assert!(keys.iter().all(|key| !key.name.contains('`') && !key.place.is_empty()));
    }

    #[test]
    fn an_unknown_name_gets_the_nearest_spelling() {
        let message = unknown("rule", "screw-wip", ["screw-whip", "brake"].into_iter(), "explain");
        assert!(message.contains("did you mean `screw-whip`?"), "{message}");
        let message = unknown("kind", "motor", ["servo-motor", "rack"].into_iter(), "catalog list");
        assert!(message.contains("did you mean `servo-motor`?"), "{message}");
        let message = unknown("kind", "screw", ["ball-screw", "screw-grade"].into_iter(), "catalog list");
        assert!(message.contains("did you mean `ball-screw` or `screw-grade`?"), "{message}");
        assert!(!unknown("rule", "zzzzzzzz", ["screw-whip"].into_iter(), "explain").contains("did you mean"));
    }
}
