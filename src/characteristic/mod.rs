//! The named quantities that rules and reports speak of, one typed slot of the ledger each.
//!
//! An id here is the word for the thing everywhere: rule files, records, reports, tests. The unit is the
//! one it is shown in; values are kept in SI. The list itself stands in `list`.

#[macro_use]
mod slots;
mod list;

pub use list::*;

use crate::formula::MOST_PHASES;
use crate::ledger::About;

/// What a reader is told of the characteristic in this slot, and the phase it stands for (from 1).
pub fn about(slot: usize) -> (&'static About, Option<usize>) {
    if slot < list::SINGLES {
        (&list::ABOUT[slot], None)
    } else {
        let index = slot - list::SINGLES;
        (&list::ABOUT[list::SINGLES + index / MOST_PHASES], Some(index % MOST_PHASES + 1))
    }
}

/// The id of the characteristic in this slot; phases are numbered from 1: "phase-force.3".
pub fn id(slot: usize) -> String {
    match about(slot) {
        (about, None) => about.id.into(),
        (about, Some(phase)) => format!("{}.{phase}", about.id),
    }
}

/// The slot of the single-valued characteristic with this id, and what is told of it.
pub fn find(id: &str) -> Option<(usize, &'static About)> {
    list::ABOUT.iter().enumerate().find(|(_, about)| !about.phased && about.id == id)
}

/// Every characteristic, singles first.
pub fn all() -> &'static [About] {
    list::ABOUT
}
