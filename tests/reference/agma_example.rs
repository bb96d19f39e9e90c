//! R. G. Budynas and J. K. Nisbett, *Shigley's Mechanical Engineering Design*, example 14–4: a spur pair of 17 and 52
//! teeth by the AGMA method; numbers read in a public transcription, edition not told there.
//!
//! The two methods differ in their factors, not in the mechanics: contact stress by AGMA is the Hertz pressure at the
//! pitch point, as is the stress of ISO 6336-2 before its factors. The example takes C_p = 2300 √psi, rounded; the
//! stress here is put on that constant before it is compared.

use crate::straight;
use axiswright::formula::gear_geometry::PINION_DIAMETER;
use axiswright::formula::tooth_strength::{elasticity_factor, zone_factor};
use axiswright::units::{Length, Measure, Ratio};
use std::f64::consts::PI;

const INCH: f64 = 0.0254;
const POUND_FORCE: f64 = 4.448_221_615_260_5;
const PSI: f64 = POUND_FORCE / (INCH * INCH);

#[test]
fn contact_stress_of_a_spur_pair_agrees_with_the_agma_example() {
    let (pinion, gear, width): (f64, f64, f64) = (17.0, 52.0, 1.5 * INCH);
    // pitch 10 teeth an inch
    let diameter = (PINION_DIAMETER.apply)(Length::of_si(INCH / 10.0), Ratio::of_si(pinion), straight()).si();
    // 4 hp at 1800 1/min
    let speed = PI * diameter * 1800.0 / 60.0;
    assert!((speed * 60.0 / 0.3048 - 801.1).abs() <= 0.05, "{speed}");
    let force = 4.0 * 550.0 * 0.3048 * POUND_FORCE / speed;
    assert!((force / POUND_FORCE - 164.8).abs() <= 0.05, "{force}");
    let ratio = gear / pinion;
    let printed_constant = 2300.0 * PSI.sqrt();
    for (size, printed) in [(1.043, 70_360.0), (1.052, 70_660.0)] {
        // dynamic, size and load distribution factor as printed
        let felt = force * 1.377 * size * 1.22;
        let stress =
            zone_factor(straight()) * elasticity_factor() * (felt / (diameter * width) * (ratio + 1.0) / ratio).sqrt();
        let stress = stress * printed_constant / elasticity_factor() / PSI;
        // the printed geometry factor of 0.121 is rounded to 0.4 %, its root to 0.2 %
        assert!((stress / printed - 1.0).abs() < 2e-3, "{stress} psi, printed {printed}");
    }
}
