//! The last two stages, what measures and what corrects, for some dozen drives at once.
//!
//! Method: drives that come as far as these stages are gathered, one a lane, whatever branch they stem from. For every choice of the two
//! stages all lanes are worked out and judged together, each with the arithmetic of one drive alone, so that every bit is the same.
//! Limits: what families enter in these stages hangs on the two choices and on the sheet alone.

mod tests;

use super::front::with_unmet;
use super::{Attributes, MOST_STAGES, Path, Plan};
use crate::drive::{Demand, Family, Merit};
use crate::ledger::{Columns, Figures, Known, LANES, Lane, Watched};
use pulp::{Arch, Simd, WithSimd};

/// A number a lane: 1 where something holds, 0 elsewhere.
pub type Marks = [u64; LANES];

/// How many lanes are marked.
#[inline(always)]
pub(super) fn count(marks: &Marks) -> u64 {
    marks.iter().sum()
}

/// Drives gathered before the last two stages.
#[derive(Debug, Clone)]
pub struct Block {
    columns: Columns,
    /// What these stages, their rules and the merit read of the branch.
    read: Vec<usize>,
    paths: [Path; LANES],
    filled: usize,
    arch: Arch,
}

/// What becomes of the drives of a block.
pub trait Outcome {
    /// So many configurations fall by this rule.
    fn fall(&mut self, rule: usize, configurations: u64);
    /// The marked ones of these configurations pass every rule.
    fn stand(&mut self, drives: &Standing<'_>);
}

/// Configurations that differ in no choice of the last two stages, worked out to the end.
#[derive(Debug)]
pub struct Standing<'b> {
    /// Those that pass every rule.
    pub marks: Marks,
    /// Their merits, but for advice that is not followed.
    pub merits: [f64; LANES],
    /// No more than their merits with all advice that they do not follow.
    pub at_least: [f64; LANES],
    block: &'b Block,
    /// The last two stages with their choices.
    last: [(usize, u16); 2],
}

impl Standing<'_> {
    /// The choices of a drive.
    #[inline]
    pub fn path(&self, lane: usize) -> Path {
        let mut path = self.block.paths[lane];
        self.last.iter().for_each(|&(stage, choice)| path[stage] = choice);
        path
    }

    /// The column of a slot.
    #[inline(always)]
    pub fn column(&self, slot: usize) -> &[f64; LANES] {
        self.block.columns.column(slot)
    }

    /// The figures of a drive.
    #[inline]
    pub fn drive(&self, lane: usize) -> Lane<'_> {
        self.block.columns.lane(lane)
    }
}

impl Block {
    /// Room for drives of this family; the sheet holds what the axis demands.
    pub fn new<F: Family>(family: &F, demand: &Demand<'_>, plan: &Plan, merit: &Merit, axis: &Known) -> Block {
        let columns = Columns::like(axis, plan.left_out);
        let read = read_late(family, demand, plan, merit);
        Block { columns, read, paths: [[0; MOST_STAGES]; LANES], filled: 0, arch: Arch::new() }
    }

    /// Takes in a drive; says whether the block is full.
    #[inline]
    pub fn gather(&mut self, path: &Path, sheet: &Known) -> bool {
        self.columns.fill(self.filled, &self.read, sheet);
        self.paths[self.filled] = *path;
        self.filled += 1;
        self.filled == LANES
    }

    /// Works out every choice of the last two stages for all that were gathered, and empties the block.
    pub fn work_out<F: Family>(&mut self, family: &F, plan: &Plan, merit: &Merit, outcome: &mut impl Outcome) {
        let last = plan.order.len() - 1;
        let gathered: Marks = std::array::from_fn(|lane| u64::from(lane < self.filled));
        let unmet = self.arch.dispatch(Advised { plan, columns: &self.columns });
        for scale in 0..plan.stages[last - 1] as u16 {
            let columns = &mut self.columns;
            let measured = Measured { family, plan, columns, scale, standing: gathered, unmet, outcome };
            let (standing, unmet) = self.arch.dispatch(measured);
            if count(&standing) == 0 {
                continue;
            }
            for table in 0..plan.stages[last] as u16 {
                let columns = &mut self.columns;
                let corrected = Corrected { family, plan, merit, columns, scale, table, standing, unmet, outcome };
                let (marks, merits, at_least) = self.arch.dispatch(corrected);
                let last = [(plan.order[last - 1], scale), (plan.order[last], table)];
                outcome.stand(&Standing { marks, merits, at_least, block: self, last });
            }
        }
        self.filled = 0;
    }
}

/// The advice that is known before these stages.
struct Advised<'b> {
    plan: &'b Plan,
    columns: &'b Columns,
}

impl WithSimd for Advised<'_> {
    type Output = [f64; LANES];
    #[inline(always)]
    fn with_simd<S: Simd>(self, _: S) -> Self::Output {
        let mut unmet = [0.0; LANES];
        for place in 0..self.plan.order.len() - 2 {
            advise(self.plan, place, self.columns, &mut unmet);
        }
        unmet
    }
}

/// One choice of what measures.
struct Measured<'b, F, O> {
    family: &'b F,
    plan: &'b Plan,
    columns: &'b mut Columns,
    scale: u16,
    standing: Marks,
    unmet: [f64; LANES],
    outcome: &'b mut O,
}

impl<F: Family, O: Outcome> WithSimd for Measured<'_, F, O> {
    type Output = (Marks, [f64; LANES]);
    #[inline(always)]
    fn with_simd<S: Simd>(mut self, _: S) -> Self::Output {
        self.family.enter_feedback(self.scale, self.columns);
        let place = self.plan.order.len() - 2;
        judge(self.plan, place, self.columns, &mut self.standing, self.outcome);
        advise(self.plan, place, self.columns, &mut self.unmet);
        (self.standing, self.unmet)
    }
}

/// One choice of what measures with one of what corrects.
struct Corrected<'b, F, O> {
    family: &'b F,
    plan: &'b Plan,
    merit: &'b Merit,
    columns: &'b mut Columns,
    scale: u16,
    table: u16,
    standing: Marks,
    unmet: [f64; LANES],
    outcome: &'b mut O,
}

impl<F: Family, O: Outcome> WithSimd for Corrected<'_, F, O> {
    type Output = (Marks, [f64; LANES], [f64; LANES]);
    #[inline(always)]
    fn with_simd<S: Simd>(mut self, _: S) -> Self::Output {
        self.family.enter_mapping(self.scale, self.table, self.columns);
        let place = self.plan.order.len() - 1;
        judge(self.plan, place, self.columns, &mut self.standing, self.outcome);
        advise(self.plan, place, self.columns, &mut self.unmet);
        let (mut merits, mut at_least) = ([0.0; LANES], [0.0; LANES]);
        for lane in 0..LANES {
            merits[lane] = self.merit.of(&self.columns.lane(lane));
            // a hair less, for weights may be added up in another order
            at_least[lane] = with_unmet(merits[lane], self.unmet[lane]) * (1.0 - 1e-12);
        }
        (self.standing, merits, at_least)
    }
}

/// Judges the rules of a place in their order; a lane falls by the first that it fails.
#[inline(always)]
fn judge(plan: &Plan, place: usize, columns: &Columns, standing: &mut Marks, outcome: &mut impl Outcome) {
    for row in &plan.rows[place] {
        let passes = row.passed_lanes(columns);
        let mut fallen = 0;
        for (stands, passes) in standing.iter_mut().zip(&passes) {
            fallen += *stands & !passes;
            *stands &= passes;
        }
        if fallen > 0 {
            outcome.fall(row.rule, fallen * plan.behind[place]);
        }
    }
}

/// Adds how much worse each drive counts for advice that is known at a place and not followed.
#[inline(always)]
fn advise(plan: &Plan, place: usize, columns: &Columns, unmet: &mut [f64; LANES]) {
    for (row, weight) in &plan.advice_known[place] {
        let passes = row.passed_lanes(columns);
        for (unmet, passes) in unmet.iter_mut().zip(&passes) {
            *unmet += if *passes > 0 { 0.0 } else { *weight };
        }
    }
}

/// The slots that the last two stages, their rules, advice, merit and attributes read and that the stages before enter.
fn read_late<F: Family>(family: &F, demand: &Demand<'_>, plan: &Plan, merit: &Merit) -> Vec<usize> {
    if plan.stages.contains(&0) {
        return Vec::new();
    }
    let mut sheet = Watched::default();
    demand.enter(&mut sheet);
    let of_axis = sheet.known().clone();
    let (path, last) = ([0; MOST_STAGES], plan.order.len() - 1);
    plan.order[..last - 1].iter().for_each(|&stage| family.enter(stage, &path, &mut sheet));
    sheet.were_read();
    for scale in 0..plan.stages[last - 1] as u16 {
        family.enter_feedback(scale, &mut sheet);
        for table in 0..plan.stages[last] as u16 {
            family.enter_mapping(scale, table, &mut sheet);
            Attributes::plain(&sheet, merit);
        }
    }
    let mut read = sheet.were_read();
    let rows = plan.rows[last - 1..].iter().flatten().chain(plan.advice.iter().map(|(row, _)| row));
    read.extend(rows.flat_map(|row| row.slots()));
    read.sort_unstable();
    read.dedup();
    read.retain(|&slot| of_axis.value(slot).is_nan());
    read
}
