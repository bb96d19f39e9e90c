//! The slide between the flanks of a drive with play, by the balance of forces.

use super::close;
use axiswright::formula::stiffness::{CUTTING_SHIFT, DEFLECTION};
use axiswright::units::*;

/// Where a slide stands that a force presses against springy flanks half a play to either side: halving where forces balance.
fn stand(force: f64, stiffness: f64, play: f64) -> f64 {
    let spring = |place: f64| {
        let beyond = (place.abs() - 0.5 * play).max(0.0);
        stiffness * beyond * place.signum()
    };
    let (mut below, mut above) = (-1.0, 1.0);
    for _ in 0..200 {
        let middle = 0.5 * (below + above);
        if spring(middle) < force { below = middle } else { above = middle }
    }
    0.5 * (below + above)
}

fn shift(give: f64, play: f64, both: f64, force: f64, weight: f64, balance: f64) -> f64 {
    (CUTTING_SHIFT.apply)(
        Length::of_si(give),
        Length::of_si(play),
        Ratio::of_si(both),
        Force::of_si(force),
        Force::of_si(weight),
        Ratio::of_si(balance),
    )
    .si()
}

#[test]
fn a_force_that_turns_round_moves_the_slide_from_flank_to_flank_unless_its_weight_is_larger() {
    for (force, stiffness, play) in
        [(900.0, 76e6, 115e-6), (1200.0, 30e6, 40e-6), (700.0, 110e6, 0.0), (5.0, 200e6, 3e-3)]
    {
        let give = (DEFLECTION.apply)(Force::of_si(force), Stiffness::of_si(stiffness)).si();
        for (weight, balance) in [(0.0, 0.0), (0.4 * force, 0.0), (1.7 * force, 0.0), (1.7 * force, 0.7)] {
            let down = -weight * (1.0 - balance);
            let half = 0.5 * (stand(down + force, stiffness, play) - stand(down - force, stiffness, play));
            let told = shift(give, play, 1.0, force, weight, balance);
            close(&format!("{force} N and {down} N"), told, half, 1e-9);
            // one way only: from where it lies on its flank without the force
            let one = stand(down - force, stiffness, play) - stand(down - 1e-6, stiffness, play);
            close("one way", shift(give, play, 0.0, force, weight, balance), -one, 1e-6);
        }
    }
}

#[test]
fn without_a_force_no_play_is_crossed_and_what_is_not_known_stays_so() {
    assert_eq!(shift(0.0, 1e-4, 1.0, 0.0, 0.0, 0.0), 0.0);
    let nan = f64::NAN;
    for [give, play, both, force, weight, balance] in [
        [nan, 1e-4, 1.0, 900.0, 0.0, 0.0],
        [1e-5, nan, 1.0, 900.0, 0.0, 0.0],
        [1e-5, 1e-4, nan, 900.0, 0.0, 0.0],
        [1e-5, 1e-4, 1.0, nan, 0.0, 0.0],
        [1e-5, 1e-4, 1.0, 900.0, nan, 0.0],
        [1e-5, 1e-4, 1.0, 900.0, 1500.0, nan],
    ] {
        assert!(shift(give, play, both, force, weight, balance).is_nan());
    }
}
