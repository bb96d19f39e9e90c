//! The word that was meant where another one stands.
//!
//! Method: the nearest spelling; of keys else those that share a word, such as `moved-mass` of `mass`.
//! Limits: what shares a word may be something else; where more than a few do, all known keys are told.

use crate::units;

/// Not more keys than this are told for the word that they share.
const FEW: usize = 3;
/// A word of fewer letters says nothing.
const LEAST_LETTERS: usize = 3;

/// The spelling nearest to a word, if one is near enough to be meant.
pub fn nearest<'b>(word: &str, known: impl IntoIterator<Item = &'b str>) -> Option<&'b str> {
    let near = |name: &str, distance: usize| distance <= 1 + name.chars().count() / 4;
    units::nearest(word, &same_shape(word), known.into_iter().map(|name| (name, same_shape(name))), near)
}

/// Help that names the spelling that seems to be meant.
pub(super) fn meant(near: &str) -> String {
    format!("did you mean `{near}`?")
}

/// Help for a key that is not known: the nearest one, those that share a word with it, or all.
pub(super) fn help_for_unknown(key: &str, known: &[&str]) -> String {
    if let Some(near) = nearest(key, known.iter().copied()) {
        return meant(near);
    }
    match akin(key, known).as_slice() {
        [] => format!("known here: {}", known.join(", ")),
        [one] => meant(one),
        [few @ .., last] => format!("did you mean `{}` or `{last}`?", few.join("`, `")),
    }
}

/// The keys that share a word, those first that end with one; none where it is more than a few.
fn akin<'k>(key: &str, known: &[&'k str]) -> Vec<&'k str> {
    let key = same_shape(key);
    let words: Vec<&str> = key.split('-').filter(|word| word.len() >= LEAST_LETTERS).collect();
    let shares = |name: &&str| name.split('-').any(|word| words.contains(&word));
    let mut found: Vec<&str> = known.iter().copied().filter(shares).collect();
    if found.len() > FEW {
        return Vec::new();
    }
    found.sort_by_key(|name| !name.rsplit('-').next().is_some_and(|last| words.contains(&last)));
    found
}

fn same_shape(text: &str) -> String {
    text.to_lowercase().replace(['_', ' '], "-")
}
