//! What holds for every rack drive of the small catalogue, whatever the axis; derived from the mechanics, no source.

use crate::small;
use axiswright::characteristic as ch;
use axiswright::drive::{Family, Pinions, RackDrive};
use axiswright::ledger::Figures;

fn axis(travel: &str, lines: &str) -> String {
    format!(
        "
machine: Table
axes:
  table:
    direction: horizontal
    travel: {travel}
    moved-mass: 300 kg
    speed: 30 m/min
    acceleration: 2 m/s²
    cutting-force: 800 N
    cutting-speed: 6 m/min
{lines}    duty:
      - {{ share: 20 %, speed: 30 m/min, stroke: 0.8 m }}
      - {{ share: 60 %, speed: 6 m/min, force: 800 N, stroke: 0.4 m }}
      - {{ share: 20 %, stand: true }}
"
    )
}

/// No term of the stiffness of a rack holds the travel; a screw gets softer with it.
#[test]
fn stiffness_of_a_rack_does_not_know_the_travel() {
    for helical in [false, true] {
        let mut before: Option<f64> = None;
        for travel in ["1.2 m", "4 m", "11 m"] {
            let inputs = small::inputs(&axis(travel, ""));
            let demand = small::demand(&inputs, 0);
            let family = RackDrive::new(&demand, &inputs.catalog, helical, Pinions::One);
            let path = small::path_of(&family.stages(), &[1, 2, 0, 3, 1, 0, 0, 0, 0]);
            let stiffness = small::numbers(&family, &demand, &path).read(ch::TOTAL_STIFFNESS).value;
            assert!(stiffness > 1e7);
            assert!(before.is_none_or(|before| before.to_bits() == stiffness.to_bits()), "{travel}: {stiffness}");
            before = Some(stiffness);
        }
    }
}

/// The duty does less damage than its largest force at every pass, and some.
#[test]
fn the_force_of_equal_damage_lies_between_nothing_and_the_largest_force() {
    let inputs = small::inputs(&axis("1.2 m", ""));
    let demand = small::demand(&inputs, 0);
    for helical in [false, true] {
        let family = RackDrive::new(&demand, &inputs.catalog, helical, Pinions::One);
        for seeds in [[0, 0, 0, 0, 0, 0, 0, 0, 0], [1, 1, 2, 5, 1, 0, 0, 0, 1], [0, 3, 1, 7, 1, 0, 0, 0, 0]] {
            let path = small::path_of(&family.stages(), &seeds);
            let sheet = small::numbers(&family, &demand, &path);
            let peak = sheet.read(ch::PEAK_FORCE).value;
            for force in [
                ch::PINION_FLANK_EQUIVALENT_FORCE,
                ch::PINION_ROOT_EQUIVALENT_FORCE,
                ch::RACK_FLANK_EQUIVALENT_FORCE,
                ch::RACK_ROOT_EQUIVALENT_FORCE,
            ] {
                let force = sheet.read(force).value;
                assert!(force > 0.2 * peak && force <= peak * (1.0 + 1e-9), "{force} of {peak}");
            }
        }
    }
}

/// The play is crossed where the force may act either way; a bias takes it out as far as it reaches.
#[test]
fn a_cutting_force_either_way_moves_the_slide_through_half_of_the_play() {
    for (way, half) in [("both", 0.5), ("forward", 0.0)] {
        let inputs = small::inputs(&axis("1.2 m", &format!("    cutting-force-direction: {way}\n")));
        let demand = small::demand(&inputs, 0);
        for layout in [Pinions::One, Pinions::Two] {
            let family = RackDrive::new(&demand, &inputs.catalog, true, layout);
            let path = small::path_of(&family.stages(), &[0; 9]);
            let sheet = small::numbers(&family, &demand, &path);
            let [give, play, shift] =
                [ch::CUTTING_DEFLECTION, ch::PLAY, ch::CUTTING_SHIFT].map(|what| sheet.read(what).value);
            assert!((shift - give - half * play).abs() < 1e-15, "{way}: {shift}, {give} and {play}");
            assert!(give > 0.0 && (layout == Pinions::Two || play > 1e-5), "{give} and {play}");
        }
    }
}

/// A bed that expands otherwise takes hold from the rack; one of steel takes none.
#[test]
fn a_bed_of_aluminium_holds_a_steel_rack_less_firmly() {
    let hold = |bed: &str| {
        let inputs = small::inputs(&axis("1.2 m", &format!("    bed: {bed}\n")));
        let demand = small::demand(&inputs, 0);
        let family = RackDrive::new(&demand, &inputs.catalog, true, Pinions::One);
        let path = small::path_of(&family.stages(), &[0; 9]);
        let sheet = small::numbers(&family, &demand, &path);
        (sheet.read(ch::SLIP_RESERVE).value, sheet.read(ch::SLIP_FORCE).value)
    };
    let (steel, slip) = hold("steel");
    assert_eq!(steel, slip);
    let (iron, aluminium) = (hold("cast-iron").0, hold("aluminium").0);
    assert!(iron < steel && iron > 0.8 * steel, "{iron} of {steel}");
    assert!(aluminium < 0.5 * steel, "{aluminium} of {steel}");
}

/// The price basis of the catalogue has a size part for pinions that are not surface-hardened; docs/catalogue.md says which.
#[test]
fn a_pinion_that_is_not_surface_hardened_is_priced_as_a_soft_one() {
    let inputs = small::inputs(&axis("1.2 m", ""));
    let demand = small::demand(&inputs, 0);
    let mut catalog = inputs.catalog.clone();
    let (hard, soft) = (catalog.prices.pinion_factor.0, catalog.prices.pinion_soft_factor.0);
    assert!(soft < hard);
    let steels = [("case-hardened", hard), ("induction-hardened", hard), ("alloy-280", soft), ("carbon-200", soft)];
    for (steel, factor) in steels {
        for grade in &mut catalog.rack_grades {
            grade.pinion_steel = steel.to_owned();
        }
        for layout in [Pinions::One, Pinions::Two] {
            let family = RackDrive::new(&demand, &catalog, true, layout);
            let path = small::path_of(&family.stages(), &[0; 9]);
            let sheet = small::numbers(&family, &demand, &path);
            let (module, teeth) = (sheet.read(ch::MODULE).value * 1e3, sheet.read(ch::TEETH).value);
            let by_hand = catalog.prices.pinion_base.0 + factor * module.powf(1.5) * (teeth / 20.0).powf(1.2);
            let price = sheet.read(ch::PINION_PRICE).0;
            assert!((price / by_hand - 1.0).abs() < 1e-12, "{steel}: {price}, by hand {by_hand}");
        }
    }
}
