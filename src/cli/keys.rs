//! The nearest spelling of an unknown name.

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
