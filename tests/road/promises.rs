//! What a family promises of its stages, so that the search may leave work out: held to random configurations.

use crate::small::{self, Entered, HORIZONTAL, VERTICAL};
use axiswright::characteristic::PEAK_TORQUE_USE;
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::ledger::{Figures, Known};
use axiswright::search::Path;
use axiswright::units::{Length, Measure};
use proptest::prelude::*;

struct Promises<'p> {
    demand: &'p Demand<'p>,
    seeds: [[u16; 18]; 2],
}

impl Promises<'_> {
    /// The sheet of a path in the order of the search, and a glimpse of the peak torque wherever one is given.
    fn glimpsed<F: Family>(&self, family: &F, path: &Path) -> (Known, Vec<f64>) {
        let mut sheet = Known::default();
        self.demand.enter(&mut sheet);
        let mut told = Vec::new();
        for stage in family.order() {
            family.enter(stage, path, &mut sheet);
            let mut beside = sheet.clone();
            if family.glimpse(stage, path, &mut beside) {
                told.push(beside.value(PEAK_TORQUE_USE.slot));
            }
        }
        (sheet, told)
    }
}

/// The slots that a stage enters.
fn slots<F: Family>(family: &F, demand: &Demand<'_>, path: &Path, stage: usize) -> Vec<usize> {
    let place = family.order().iter().position(|&other| other == stage).expect("every stage is in the order");
    let entered = Entered::of(family, demand, path);
    let own = entered.stage.iter().enumerate().filter(|(_, at)| **at == Some(place + 1));
    own.map(|(slot, _)| slot).collect()
}

fn same(one: f64, other: f64) -> bool {
    one.to_bits() == other.to_bits() || one.is_nan() && other.is_nan()
}

impl WithFamily for Promises<'_> {
    /// How many stages something is promised of.
    type Output = usize;
    fn with<F: Family>(self, family: &F) -> usize {
        let (id, stages, order) = (family.id(), family.stages(), family.order());
        let [path, other] = self.seeds.map(|seeds| small::path_of(&stages, &seeds));
        let (sheet, told) = self.glimpsed(family, &path);
        let real = sheet.value(PEAK_TORQUE_USE.slot);
        for least in &told {
            assert!(*least <= real || least.is_nan(), "{id}: a glimpse of {least} is above the peak torque use {real}");
        }
        let mut promised = told.len();
        for &stage in order.iter().skip(2) {
            let own = || slots(family, self.demand, &path, stage);
            if family.apart(stage) {
                promised += 1;
                let mut alone = Known::default();
                self.demand.enter(&mut alone);
                family.enter(stage, &path, &mut alone);
                for slot in own() {
                    assert!(
                        same(alone.value(slot), sheet.value(slot)),
                        "{id}: stage {stage} hangs on more than the axis"
                    );
                }
            }
            if let Some([anew, by]) = family.remembered(stage) {
                promised += 1;
                let mut like = other;
                for kept in [order[0], order[1], anew, by] {
                    like[kept] = path[kept];
                }
                let like = self.glimpsed(family, &like).0;
                for slot in own() {
                    assert!(
                        same(like.value(slot), sheet.value(slot)),
                        "{id}: stage {stage} hangs on more than it says"
                    );
                }
            }
        }
        promised
    }
}

/// A brief of one axis with two drives, a distance apart.
fn two_sided(text: &str) -> String {
    text.replace("    moved-mass:", "    drives: 2\n    drive-spacing: 1.2 m\n    moved-mass:")
}

proptest! {
    #![proptest_config(small::cases(48))]

    #[test]
    fn what_a_family_says_of_its_stages_holds(
        seeds in prop::array::uniform2(prop::array::uniform18(0_u16..1000)),
        travel in 0.3..2.0_f64,
        which in 0..4_usize,
    ) {
        let text = [HORIZONTAL.into(), VERTICAL.into(), two_sided(HORIZONTAL), two_sided(VERTICAL)][which].clone();
        let mut inputs = small::paired_inputs(&text);
        inputs.brief.axes[0].travel = Length::of_si(travel);
        let demand = small::demand(&inputs, 0);
        for id in FAMILIES {
            let promised = with_family(id, &demand, &inputs.catalog, Promises { demand: &demand, seeds });
            prop_assert!(promised.is_some_and(|promised| promised > 0), "{id} promises something of its stages");
        }
    }
}
