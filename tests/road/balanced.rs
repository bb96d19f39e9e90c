//! A weight that is balanced, and what is left when the balance is lost, swings or hangs loose.
//!
//! Every property is derived here, no source.

use crate::small::{self, VERTICAL};
use axiswright::characteristic as ch;
use axiswright::drive::FAMILIES;
use axiswright::ledger::{Characteristic, Figures, Worksheet};
use axiswright::pipeline::Inputs;
use axiswright::search::work_out;
use axiswright::units::*;

/// A gentle axis, so that the weight is most of what its drive feels.
fn balanced(balance: &str) -> Inputs {
    let gentle = VERTICAL.replace("500 N", "50 N").replace("2 m/s²", "0.2 m/s²").replace("120 kg", "400 kg");
    small::inputs(&gentle.replace("    people-below", &format!("    counterbalance: {balance}\n    people-below")))
}

/// The first configuration of a family in the small catalogue.
fn sheet(inputs: &Inputs, family: &str) -> Worksheet {
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    let path = [0; axiswright::search::MOST_STAGES];
    work_out(family, &path, &demand, &setting).expect("the configuration exists").sheet
}

fn value<Q: Measure>(sheet: &Worksheet, characteristic: Characteristic<Q>) -> f64 {
    sheet.read(characteristic).si()
}

/// With all of the weight balanced the duty asks for little torque, but the limit still has to stop the slide.
#[test]
fn the_torque_limit_holds_the_whole_weight_with_its_margin() {
    let mut below = 0;
    for share in ["60 %", "100 %"] {
        let inputs = balanced(&format!("{{ kind: gas, share: {share}, ripple: 10 % }}"));
        for family in FAMILIES {
            let sheet = sheet(&inputs, family);
            let (set, hold) = (value(&sheet, ch::SET_TORQUE), value(&sheet, ch::HOLDING_TORQUE));
            let (peak, largest) = (value(&sheet, ch::MOTOR_PEAK_TORQUE), value(&sheet, ch::PEAK_TORQUE));
            let least = f64::min(peak, 1.5 * f64::max(hold, largest));
            assert!((set - least).abs() <= 1e-12 * least, "{family}: {set} N·m, at least {least}");
            if peak > hold {
                assert!(value(&sheet, ch::STOP_DECELERATION) > 0.0, "{family} stops downward");
            }
            below += usize::from(largest < hold && hold < peak);
        }
    }
    assert!(below > 0, "no drive whose duty asks for less than its weight");
}

/// Equation of motion of the slide alone and of the weight in free flight: the rope hangs loose where the slide, without
/// any pull of the rope, slows down harder than g.
#[test]
fn the_rope_hangs_loose_where_slide_and_weight_part_on_their_own() {
    let mut both = [0, 0];
    for (mass, share) in [(120.0, 100.0), (20.0, 100.0), (20.0, 50.0), (5.0, 100.0)] {
        let text = VERTICAL.replace("120 kg", &format!("{mass} kg"));
        let hung = format!("    counterbalance: {{ kind: weight, share: {share} % }}\n    people-below");
        let inputs = small::inputs(&text.replace("    people-below", &hung));
        for family in FAMILIES {
            let sheet = sheet(&inputs, family);
            let arm = value(&sheet, ch::TRAVEL_PER_TURN) / (std::f64::consts::TAU * value(&sheet, ch::REDUCTION));
            let torque = f64::max(value(&sheet, ch::SET_TORQUE), value(&sheet, ch::BRAKE_TORQUE));
            let slide = value(&sheet, ch::DRIVEN_MASS) + value(&sheet, ch::ROTATING_INERTIA) / (arm * arm);
            let parting = (torque / arm - value(&sheet, ch::GRAVITY_FORCE)) / slide - 9.80665;
            let slackening = value(&sheet, ch::STOP_ROPE_SLACKENING);
            assert_eq!(parting > 0.0, slackening > 1.0, "{family}: {parting} m/s², {slackening}");
            both[usize::from(parting > 0.0)] += 1;
        }
    }
    assert!(both[0] > 0 && both[1] > 0, "tight and loose: {both:?}");
    assert!(value(&sheet(&balanced("{ kind: gas, share: 80 % }"), FAMILIES[0]), ch::STOP_ROPE_SLACKENING).is_nan());
}

/// Every force of the duty meets the weakest and the strongest balance at its own speed; so does standing.
#[test]
fn both_ends_of_a_gas_spring_meet_every_force_of_the_duty() {
    let fast =
        VERTICAL.replace("speed: 4 m/min, force: 500 N, stroke: 0.2 m", "speed: 20 m/min, force: 500 N, stroke: 0.2 m");
    let short = fast.replace("0.2 m }", "4 mm }");
    let distances = "moves:\n      - { distance: -0.2 m, speed: 20 m/min, force: 500 N, count-per-hour: 300 }\n      - { distance: 0.2 m, count-per-hour: 300 }\n";
    let moves = format!("{}{distances}", &fast[..fast.find("duty:").expect("a duty")]);
    for (what, text) in [("cruise", &fast), ("short stroke", &short), ("signed move", &moves)] {
        let hung = "    counterbalance: { kind: gas, share: 80 %, ripple: 50 % }\n    people-below";
        let inputs = small::inputs(&text.replace("    people-below", hung));
        let phases = small::demand(&inputs, 0).phases.clone();
        let mut seen = 0;
        let forced =
            phases.iter().filter(|phase| phase.share > 0.0 && (phase.process == 500.0 || phase.direction == 0.0));
        for phase in forced {
            // one that is pushed up is worst with the weakest spring, one that is pushed down with the strongest
            for (balance, sign) in [(0.4, 1.0), (1.2, -1.0)] {
                let met = phases.iter().any(|other| {
                    other.balance > balance - 1e-9
                        && other.balance < balance + 1e-9
                        && other.direction == phase.direction
                        && other.process == phase.process
                        && other.top_speed >= phase.top_speed
                        && sign * (other.acceleration - phase.acceleration) >= 0.0
                });
                assert!(met, "{what}: {phase:?} at {balance}");
                seen += 1;
            }
        }
        assert!(seen >= 4, "{what}: {seen}");
    }
}
