//! The word that was meant: the nearest of some names, by letters that are changed, left out, added or swapped.
//!
//! Method: Damerau-Levenshtein distance; of names that are equally near the first by the alphabet. Letters that only one of two words
//! has give the least that the distance can be: a name that this alone keeps farther away than another one is not compared.
//! A file may hold a thousand slips, and a register hundreds of names.

/// The longest word that is compared with others, bytes; a longer one is no slip, and to compare it would take long.
const LONGEST: usize = 200;

/// The nearest of some names to what was written, if it is near enough at its distance.
/// Each name comes with its shape, which is compared with that of the word.
pub(crate) fn nearest<'n, S: AsRef<str>>(
    written: &str,
    shaped: &str,
    names: impl IntoIterator<Item = (&'n str, S)>,
    near: impl Fn(&str, usize) -> bool,
) -> Option<&'n str> {
    if written.len() > LONGEST {
        return None;
    }
    let word = Letters::of(shaped);
    let mut names: Vec<(usize, &str, S)> =
        names.into_iter().map(|(name, shape)| (word.least(&Letters::of(shape.as_ref())), name, shape)).collect();
    if !names.iter().any(|(least, name, _)| near(name, *least)) {
        return None;
    }
    names.sort_unstable_by_key(|(least, name, _)| (*least, *name));
    let mut best: Option<(usize, &str)> = None;
    for (least, name, shape) in &names {
        // all that follow are farther away too
        if best.is_some_and(|best| (*least, *name) > best) {
            break;
        }
        let found = (strsim::damerau_levenshtein(shape.as_ref(), shaped), *name);
        if best.is_none_or(|best| found < best) {
            best = Some(found);
        }
    }
    best.filter(|(distance, name)| near(name, *distance)).map(|(_, name)| name)
}

/// How often each letter stands in a word; letters that agree in their last five bits count as one.
struct Letters([u8; 32]);

impl Letters {
    /// The letters of a word of at most [`LONGEST`] bytes, or somewhat more after it was made small.
    fn of(word: &str) -> Letters {
        let mut counts = [0_u8; 32];
        for letter in word.chars() {
            let count = &mut counts[letter as usize % 32];
            *count = count.saturating_add(1);
        }
        Letters(counts)
    }

    /// The least that two words can be apart: a step changes, adds or takes one letter, or swaps two.
    fn least(&self, other: &Letters) -> usize {
        let more = |one: &Letters, other: &Letters| -> usize {
            one.0.iter().zip(&other.0).map(|(one, other)| usize::from(one.saturating_sub(*other))).sum()
        };
        more(self, other).max(more(other, self))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_left_out_of_the_comparison_is_never_the_nearest() {
        let names =
            ["travel", "travel-per-hour", "speed", "spindle", "mass", "moved-mass", "a", "ab", "abc", "µm", "N·m"];
        let words =
            ["travle", "sped", "moved_mass", "mas", "b", "", "xyzxyz", "travel-per", "ac", "um", "Nm", "ünknöwn"];
        for limit in 0..8 {
            let near = |name: &str, distance: usize| distance <= limit.min(1 + name.chars().count() / 4);
            for word in words {
                let all = names.iter().map(|name| (strsim::damerau_levenshtein(name, word), *name)).min();
                let plain = all.filter(|(distance, name)| near(name, *distance)).map(|(_, name)| name);
                assert_eq!(nearest(word, word, names.map(|name| (name, name)), near), plain, "{word} within {limit}");
            }
        }
        let long = "x".repeat(LONGEST + 1);
        assert_eq!(nearest(&long, &long, [(long.as_str(), long.as_str())], |_, _| true), None);
    }
}
