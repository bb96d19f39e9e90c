//! Blocks of drives against each drive entered by itself: what falls, what stands, and every figure to the last bit.
#![cfg(test)]

use super::{Block, Outcome, Standing};
use crate::drive::{Demand, Family, Merit};
use crate::ledger::{Figures, Known, LANES};
use crate::search::tests::{Trial, entered_at, every_path, on_all};
use crate::search::{Attributes, Path, Plan, Setting};
use std::collections::BTreeMap;

/// What comes out: how many fall by each rule, and the figures of those that stand.
#[derive(Debug, Default, PartialEq)]
struct Result {
    fallen: BTreeMap<usize, u64>,
    standing: BTreeMap<Path, Vec<u64>>,
}

/// The bits of the merit, with the attributes that are compared and what the last two stages enter.
fn figures(plain: &Attributes, sheet: &impl Figures, slots: &[usize]) -> Vec<u64> {
    let attributes =
        [plain.merit, plain.error, plain.mass, plain.purchase, plain.power, plain.whole_life, plain.lead_time];
    let entered = slots.iter().map(|&slot| sheet.value(slot));
    // no NaN is like another, but all mean the same
    attributes.into_iter().chain(entered).map(|value| if value.is_nan() { u64::MAX } else { value.to_bits() }).collect()
}

struct Collected<'c> {
    result: Result,
    slots: &'c [usize],
}

impl Outcome for Collected<'_> {
    fn fall(&mut self, rule: usize, configurations: u64) {
        *self.result.fallen.entry(rule).or_default() += configurations;
    }
    fn stand(&mut self, drives: &Standing<'_>) {
        for lane in (0..LANES).filter(|&lane| drives.marks[lane] > 0) {
            let sheet = drives.drive(lane);
            let plain = Attributes::with_merit(drives.merits[lane], &sheet);
            let before = self.result.standing.insert(drives.path(lane), figures(&plain, &sheet, self.slots));
            assert!(before.is_none(), "{:?} stands twice", drives.path(lane));
        }
    }
}

struct Blocks;

impl Trial for Blocks {
    /// How many fall and how many stand.
    type Output = [u64; 2];
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> [u64; 2] {
        let plan = Plan::new(family, demand, setting);
        let (last, merit) = (plan.order.len() - 1, &setting.merit);
        let slots: Vec<usize> = entered_at(family, demand)
            .iter()
            .enumerate()
            .filter_map(|(slot, at)| at.is_some_and(|at| at >= last).then_some(slot))
            .collect();
        let (mut axis, mut choices) = (Known::default(), family.stages());
        demand.enter(&mut axis);
        (choices[plan.order[last - 1]], choices[plan.order[last]]) = (1, 1);
        let mut sheet = axis.clone();
        sheet.leave_out(plan.left_out);
        let mut block = Block::new(family, demand, &plan, merit, &axis);
        let mut collected = Collected { result: Result::default(), slots: &slots };
        let mut alone = Result::default();
        // every other branch, whatever its rules say
        for path in every_path(&choices).iter().step_by(2) {
            plan.order[..last - 1].iter().for_each(|&stage| family.enter(stage, path, &mut sheet));
            if block.gather(path, &sheet) {
                block.work_out(family, &plan, merit, &mut collected);
            }
            one_by_one(family, &plan, merit, (path, &mut sheet), &slots, &mut alone);
        }
        block.work_out(family, &plan, merit, &mut collected);
        assert_eq!(collected.result, alone, "{}", family.id());
        [alone.fallen.values().sum(), alone.standing.len() as u64]
    }
}

/// Every choice of the last two stages of one drive, on one sheet.
fn one_by_one<F: Family>(
    family: &F,
    plan: &Plan,
    merit: &Merit,
    (path, sheet): (&Path, &mut Known),
    slots: &[usize],
    result: &mut Result,
) {
    let (mut path, last) = (*path, plan.order.len() - 1);
    for scale in 0..plan.stages[last - 1] as u16 {
        path[plan.order[last - 1]] = scale;
        path[plan.order[last]] = 0;
        family.enter(plan.order[last - 1], &path, sheet);
        if let Some(rule) = plan.first_failed(last - 1, sheet) {
            *result.fallen.entry(rule).or_default() += plan.behind[last - 1];
            continue;
        }
        for table in 0..plan.stages[last] as u16 {
            path[plan.order[last]] = table;
            family.enter(plan.order[last], &path, sheet);
            match plan.first_failed(last, sheet) {
                Some(rule) => *result.fallen.entry(rule).or_default() += 1,
                None => {
                    result.standing.insert(path, figures(&Attributes::plain(sheet, merit), sheet, slots));
                }
            }
        }
    }
}

#[test]
fn a_block_is_its_drives_one_by_one() {
    let all = on_all(&Blocks);
    let [fallen, standing] = [0, 1].map(|kind| all.iter().map(|of_family| of_family[kind]).sum::<u64>());
    assert!(fallen > 1_000 && standing > 1_000, "{fallen} fall, {standing} stand");
}
