//! How the figures of one drive answer to a change of what is asked of it, or of what measures it.
//!
//! Every property is derived here from the mechanics, no source. Drives are the best of each family on random axes of the small
//! catalogue.

use crate::ask::{Ask, ask, search};
use crate::small;
use axiswright::characteristic as ch;
use axiswright::drive::{Demand, Family, WithFamily, with_family};
use axiswright::ledger::{Figures, Known};
use axiswright::pipeline::Inputs;
use axiswright::search::Path;
use proptest::prelude::*;

/// The plain numbers of a drive.
fn sheet(inputs: &Inputs, id: &str, path: &Path) -> Known {
    struct Numbers<'n>(&'n Demand<'n>, &'n Path);
    impl WithFamily for Numbers<'_> {
        type Output = Known;
        fn with<F: Family>(self, family: &F) -> Known {
            small::numbers(family, self.0, self.1)
        }
    }
    let demand = small::demand(inputs, 0);
    with_family(id, &demand, &inputs.catalog, Numbers(&demand, path)).expect("a family")
}

/// The best drives of each family, with their stages.
fn best(inputs: &Inputs) -> Vec<(&'static str, Vec<usize>, Path)> {
    let searched = search(inputs).into_iter();
    searched
        .flat_map(|(id, stages, walk)| walk.best.into_iter().map(move |found| (id, stages.clone(), found.path)))
        .collect()
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs()
}

/// The springs of the chain from motor to slide that a family may have.
const SPRINGS: [axiswright::ledger::Characteristic<axiswright::units::Stiffness>; 4] =
    [ch::SCREW_STIFFNESS, ch::NUT_STIFFNESS, ch::MESH_STIFFNESS, ch::BRACKET_STIFFNESS];

proptest! {
    #![proptest_config(small::cases(8))]

    #[test]
    fn a_chain_is_softer_than_its_softest_spring_and_a_heavier_slide_swings_slower_by_the_root(
        ask in ask(), more in 1.1..3.0_f64,
    ) {
        let heavier = Ask { mass: ask.mass * more, ..ask.clone() };
        let (light, heavy) = (ask.inputs(), heavier.inputs());
        for (id, _, path) in best(&light) {
            let (light, heavy) = (sheet(&light, id, &path), sheet(&heavy, id, &path));
            let total = light.value(ch::TOTAL_STIFFNESS.slot);
            let springs = SPRINGS.map(|spring| light.value(spring.slot));
            prop_assert!(springs.iter().any(|spring| spring.is_finite()), "{id}: a spring is known");
            for spring in springs.iter().filter(|spring| !spring.is_nan()) {
                prop_assert!(total < *spring, "{id}: {total} of {springs:?}");
            }
            // the same springs under another mass: the square of the resonance times the mass stays
            let energy = |sheet: &Known| sheet.value(ch::FIRST_MODE.slot).powi(2) * sheet.value(ch::DRIVEN_MASS.slot);
            prop_assert!(near(energy(&light), energy(&heavy)), "{id}: {} {}", energy(&light), energy(&heavy));
            prop_assert!(heavy.value(ch::FIRST_MODE.slot) < light.value(ch::FIRST_MODE.slot), "{id}");
        }
    }

    #[test]
    fn twice_the_speed_makes_four_times_the_energy_and_two_to_four_times_the_way_to_rest(ask in ask()) {
        let faster = Ask { speed: ask.speed * 2.0, ..ask.clone() };
        let (slow, fast) = (ask.inputs(), faster.inputs());
        for (id, _, path) in best(&slow) {
            let (slow, fast) = (sheet(&slow, id, &path), sheet(&fast, id, &path));
            let energy = |sheet: &Known| sheet.value(ch::END_STOP_ENERGY.slot);
            prop_assert!(near(4.0 * energy(&slow), energy(&fast)), "{id}: {} {}", energy(&slow), energy(&fast));
            let way = |sheet: &Known| sheet.value(ch::COASTING_DISTANCE.slot);
            // until the torque is off the way goes with the speed, then with its square
            let times = way(&fast) / way(&slow);
            prop_assert!((2.0..=4.0 * (1.0 + 1e-9)).contains(&times), "{id}: {} {}", way(&slow), way(&fast));
        }
    }

    #[test]
    fn a_scale_takes_the_play_of_the_drive_out_of_the_reversal(ask in ask()) {
        let inputs = ask.inputs();
        for (id, stages, path) in best(&inputs) {
            let (feedback, table) = (stages.len() - 2, stages.len() - 1);
            let with = |choice: usize| {
                let mut path = path;
                (path[feedback], path[table]) = (choice as u16, 0);
                sheet(&inputs, id, &path)
            };
            let sheets: Vec<Known> = (0..stages[feedback]).map(with).collect();
            let (scales, motors): (Vec<&Known>, Vec<&Known>) =
                sheets.iter().partition(|sheet| sheet.value(ch::FEEDBACK_KIND.slot) > 0.0);
            prop_assert!(!scales.is_empty() && !motors.is_empty(), "{id}");
            for scale in scales {
                let reversal = |sheet: &Known| sheet.value(ch::REVERSAL_ERROR.slot);
                // what a scale cannot see is its own step and the scatter of friction
                let own = scale.value(ch::MEASURING_STEP.slot);
                prop_assert!(reversal(scale) <= reversal(motors[0]) + own, "{id}: {} {}", reversal(scale), reversal(motors[0]));
            }
        }
    }

    #[test]
    fn rest_that_is_added_cools_by_the_root_of_its_share(ask in ask(), work in 0.2..0.9_f64) {
        // friction and force hold still while a level axis stands, and its motor gives no torque
        let duty = |work: f64| vec![
            (60.0 * work, ask.speed, false, 0.3),
            (40.0 * work, 0.1, true, 0.3),
            (100.0 - 100.0 * work, 0.0, false, 0.0),
        ];
        let busy = Ask { duty: duty(0.9), ..ask.clone() }.inputs();
        let rested = Ask { duty: duty(0.9 * work), ..ask.clone() }.inputs();
        for (id, _, path) in best(&busy) {
            let (busy, rested) = (sheet(&busy, id, &path), sheet(&rested, id, &path));
            let torque = |sheet: &Known| sheet.value(ch::LOAD_RMS_TORQUE.slot);
            prop_assert!(near(torque(&rested), torque(&busy) * work.sqrt()), "{id}: {} {}", torque(&busy), torque(&rested));
        }
    }
}
