//! Which demands stand in each other's way, and which would have to give: by asking what is possible without some of them.
//!
//! Method: a conflict is found by deletion: one demand after the other is dropped for good where nothing becomes possible
//! by it; what remains cannot be kept together, and without any one of it something is possible. A correction is found by
//! addition: from none in force, one demand after the other is taken up where something stays possible; the rest has to
//! give. The order of the demands decides which conflict and which correction is found where there are several.
//! Limits: exact where a demand that is dropped makes nothing impossible; one conflict of several.

/// The demands of a conflict that cannot be made smaller, as places; none where something is possible with all in force, or
/// nothing with none. `possible` says whether something is possible with those in force that are marked.
pub fn conflict(count: usize, possible: &mut dyn FnMut(&[bool]) -> bool) -> Option<Vec<usize>> {
    if possible(&vec![true; count]) || !possible(&vec![false; count]) {
        return None;
    }
    let mut active = vec![true; count];
    for place in 0..count {
        active[place] = false;
        if possible(&active) {
            active[place] = true;
        }
    }
    Some((0..count).filter(|&place| active[place]).collect())
}

/// The demands that have to give so that something is possible with all others, as places; none where nothing is possible
/// even with none. Those that come first in `order` are kept first.
pub fn correction(count: usize, order: &[usize], possible: &mut dyn FnMut(&[bool]) -> bool) -> Option<Vec<usize>> {
    let mut active = vec![false; count];
    if !possible(&active) {
        return None;
    }
    for &place in order {
        active[place] = true;
        if !possible(&active) {
            active[place] = false;
        }
    }
    Some((0..count).filter(|&place| !active[place]).collect())
}
