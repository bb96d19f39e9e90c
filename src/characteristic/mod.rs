//! The named quantities that rules and reports speak of, one typed slot of the ledger each.
//!
//! An id here is the word for the thing everywhere: rule files, records, reports, tests. The unit is the
//! one it is shown in; values are kept in SI. The list itself stands in one file a subject.

#[macro_use]
mod slots;
mod accuracy;
mod demand;
mod driven_nut;
mod energy;
mod exchange;
mod force;
mod money;
mod motor;
mod mounting;
mod phase;
mod rack;
mod reduction;
mod safety;
mod screw;
mod screw_ends;
mod servo;
mod sides;
mod stiffness;
mod twin;

pub use accuracy::*;
pub use demand::*;
pub use driven_nut::*;
pub use energy::*;
pub use exchange::*;
pub use force::*;
pub use money::*;
pub use motor::*;
pub use mounting::*;
pub use phase::END as SLOTS;
pub use phase::*;
pub use rack::*;
pub use reduction::*;
pub use safety::*;
pub use screw::*;
pub use screw_ends::*;
pub use servo::*;
pub use sides::*;
pub use stiffness::*;
pub use twin::*;

use crate::formula::MOST_PHASES;
use crate::ledger::About;

/// The single-valued characteristics, subject by subject, in the order of their slots.
const SUBJECTS: [&[About]; 18] = [
    demand::ABOUT,
    force::ABOUT,
    screw::ABOUT,
    screw_ends::ABOUT,
    driven_nut::ABOUT,
    reduction::ABOUT,
    rack::ABOUT,
    stiffness::ABOUT,
    motor::ABOUT,
    accuracy::ABOUT,
    money::ABOUT,
    sides::ABOUT,
    energy::ABOUT,
    mounting::ABOUT,
    twin::ABOUT,
    safety::ABOUT,
    exchange::ABOUT,
    servo::ABOUT,
];

/// What a reader is told of the characteristic in this slot, and the phase it stands for (from 1).
pub fn about(slot: usize) -> (&'static About, Option<usize>) {
    let mut index = slot;
    for subject in SUBJECTS {
        if index < subject.len() {
            return (&subject[index], None);
        }
        index -= subject.len();
    }
    (&phase::ABOUT[index / MOST_PHASES], Some(index % MOST_PHASES + 1))
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
    SUBJECTS.into_iter().flatten().enumerate().find(|(_, about)| about.id == id)
}

/// Every characteristic, singles first.
pub fn all() -> impl Iterator<Item = &'static About> {
    SUBJECTS.into_iter().flatten().chain(phase::ABOUT)
}
