//! The rack with two pinions through the whole road: no play within its range, halves and bias, parts counted twice.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, Family, WithFamily, with_family};
use axiswright::ledger::{Characteristic, Figures, Worksheet};
use axiswright::units::Measure;
use proptest::prelude::*;

struct Halves<'h> {
    demand: &'h Demand<'h>,
    seeds: &'h [u16],
}

fn near(what: &str, value: f64, other: f64) {
    assert!((value - other).abs() <= 1e-9 * (1.0 + other.abs()), "{what}: {value} and {other}");
}

impl WithFamily for Halves<'_> {
    type Output = ();
    fn with<F: Family>(self, family: &F) {
        let path = small::path_of(&family.stages(), self.seeds);
        let mut sheet = Worksheet::default();
        self.demand.enter(&mut sheet);
        for stage in 0..family.stages().len() {
            family.enter(stage, &path, &mut sheet);
        }
        fn si<Q: Measure>(sheet: &Worksheet, characteristic: Characteristic<Q>) -> f64 {
            sheet.read(characteristic).si()
        }
        let bias = si(&sheet, ch::BIAS_FORCE);
        let range = si(&sheet, ch::PLAY_FREE_FORCE);
        near("range", range, 2.0 * bias);
        let needed = si(&sheet, ch::PLAY_FREE_DEMAND);
        let play = si(&sheet, ch::PLAY);
        if needed <= range {
            assert_eq!(play, 0.0, "no play is crossed within the range");
        } else {
            assert!(play > 0.0, "beyond the range the play of a pinion counts");
        }
        near("both springs", si(&sheet, ch::BOTH_STIFFNESS), 2.0 * si(&sheet, ch::TOTAL_STIFFNESS));
        let racking = si(&sheet, ch::RACKING_FORCE);
        let racking = if racking.is_nan() { 0.0 } else { racking };
        let mut largest: f64 = 0.0;
        for phase in 0..self.demand.phases.len() {
            let half = si(&sheet, ch::PHASE_FORCE.phase(phase));
            let first = si(&sheet, ch::PHASE_FIRST_FORCE.phase(phase));
            let second = si(&sheet, ch::PHASE_SECOND_FORCE.phase(phase));
            near("both together", first + second, 2.0 * half);
            near("apart by the bias", first - second, 2.0 * bias);
            for force in [first, second] {
                largest = if force.abs() > largest { force.abs() } else { largest };
            }
            let pair = si(&sheet, ch::PHASE_PAIR_TORQUE.phase(phase));
            let own = si(&sheet, ch::PHASE_OWN_TORQUE.phase(phase));
            assert!(own >= pair.abs(), "no motor of a pair does less than the mean of both");
        }
        // a lost counterbalance may count for more than any phase
        assert!(si(&sheet, ch::PEAK_FORCE) >= (largest + racking) * (1.0 - 1e-12), "the peak holds every phase");
        near("half of the mass", si(&sheet, ch::DRIVEN_MASS), 0.5 * si(&sheet, ch::SIDE_MASS));
        let drives = si(&sheet, ch::DRIVES);
        near("two motors a drive", si(&sheet, ch::MOTOR_COST), 2.0 * drives * si(&sheet, ch::MOTOR_PRICE));
        for part in family.parts(&path, &sheet) {
            if ["pinion", "gearbox", "servo-motor"].contains(&part.role) {
                near(part.role, part.count, 2.0 * drives);
            }
        }
    }
}

proptest! {
    #![proptest_config(small::cases(24))]

    #[test]
    fn two_pinions_are_two_halves_with_a_bias(seeds in prop::collection::vec(any::<u16>(), 12)) {
        let two = HORIZONTAL.replace("    speed:", "    drives: 2\n    drive-spacing: 2 m\n    speed:");
        for text in [HORIZONTAL, VERTICAL, two.as_str()] {
            let inputs = small::inputs(text);
            let demand = small::demand(&inputs, 0);
            with_family("twin-pinion", &demand, &inputs.catalog, Halves { demand: &demand, seeds: &seeds }).expect("a family");
        }
    }
}
