//! What would change the answer, asked of the machine that was chosen.

use super::Inputs;
use crate::inquiry::{AxisInPlace, Room, TurningPoint, turning_points};
use crate::search::{AxisSearch, Found, Setting};
use crate::select::{Choice, Machine, needs};

/// How many of the best of each family are known from the start.
const KNOWN_OF_FAMILY: usize = 3;

/// The turning points of every axis; none of an axis that gave way to the machine.
pub(super) fn turning(
    inputs: &Inputs,
    searches: &[AxisSearch],
    settings: &[Setting<'_>],
    machine: &Machine<'_>,
    choice: &Choice,
) -> Vec<Option<Vec<TurningPoint>>> {
    let picks = &choice.picks;
    let purchase = needs(machine, picks).purchase;
    let of_axis = |axis: usize| {
        let search = &searches[axis];
        let best = search.families.iter().flat_map(|family| family.walk.best.iter().take(KNOWN_OF_FAMILY));
        let mut known: Vec<Found> = best.chain(search.offers.iter().map(|offer| &offer.found)).cloned().collect();
        known.sort_by(Found::order);
        known.dedup_by(|a, b| a.family == b.family && a.path == b.path);
        turning_points(&AxisInPlace {
            brief: &inputs.brief,
            axis,
            carried: machine.carried(axis, picks),
            setting: Setting { exhaustive: false, ..settings[axis] },
            chosen: machine.offers[axis][picks[axis]].found.clone(),
            known,
            room: Room::of(machine, picks, axis),
            machine_purchase: purchase,
        })
    };
    (0..searches.len()).map(of_axis).collect()
}
