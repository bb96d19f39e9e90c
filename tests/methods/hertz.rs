//! The preloaded pair and the static rating against Hertzian contact solved directly.
//!
//! Method: both halves are springs of deflection ∝ load^(2/3); the loads follow from equilibrium and from the
//! approach that preload fixes, by bisection. Contact pressure: Hertz's point contact with elliptic integrals by the
//! arithmetic–geometric mean.

use super::close;
use axiswright::formula::Series;
use axiswright::formula::rolling_life::{LIFT_OFF, half_load, pair_life, preloaded_nut_life, static_rating};
use axiswright::units::{Force, Length, Measure, Ratio, Velocity};
use proptest::prelude::*;
use std::f64::consts::PI;

/// The load on the loaded half, by direct solution.
fn direct(load: f64, preload: f64) -> f64 {
    let give = |force: f64| force.powf(2.0 / 3.0);
    if load >= LIFT_OFF * preload {
        return load;
    }
    let (mut low, mut high) = (load.max(preload), preload + load);
    for _ in 0..200 {
        let middle = (low + high) / 2.0;
        if give(middle) + give(middle - load) > 2.0 * give(preload) { high = middle } else { low = middle }
    }
    (low + high) / 2.0
}

fn formula(load: f64, preload: f64) -> f64 {
    half_load(Force::of_si(load), Force::of_si(preload)).si()
}

#[test]
fn the_split_of_load_is_exact_at_no_load_and_at_lift_off_and_beyond() {
    for share in [0.0, LIFT_OFF, 3.0, 10.0] {
        close("loaded half", formula(share * 3000.0, 3000.0), direct(share * 3000.0, 3000.0), 1e-9);
    }
}

#[test]
fn between_the_split_lies_at_most_2_5_percent_high() {
    let mut most = 0.0_f64;
    for step in 1..100 {
        let load = f64::from(step) / 100.0 * LIFT_OFF * 3000.0;
        let excess = formula(load, 3000.0) / direct(load, 3000.0) - 1.0;
        assert!(excess >= -1e-9, "low by {excess} at {load} N");
        most = most.max(excess);
    }
    assert!(most <= 0.025 && most > 0.02, "{most}");
}

/// Life of two rows by their Weibull survivals of slope 10/9, solved for the common survival of 90 %.
fn life_of_rows(rating: f64, loads: [f64; 2]) -> f64 {
    let lives = loads.map(|load| (rating / load).powi(3) * 1e6);
    let survival = |turns: f64| lives.iter().map(|life| 0.9_f64.powf((turns / life).powf(10.0 / 9.0))).product::<f64>();
    let (mut low, mut high) = (0.0, lives[0].min(lives[1]));
    for _ in 0..200 {
        let middle = (low + high) / 2.0;
        if survival(middle) > 0.9 { low = middle } else { high = middle }
    }
    (low + high) / 2.0
}

#[test]
fn the_life_of_a_pair_is_that_of_two_rows_that_must_both_survive() {
    let life = |load: f64| preloaded_nut_life(Force::of_si(36e3), Force::of_si(3e3), Force::of_si(load)).si();
    close("without load", life(0.0), life_of_rows(36e3, [3e3, 3e3]), 1e-9);
    let lift_off = LIFT_OFF * 3e3;
    close("at lift-off", life(lift_off), (36e3 / lift_off).powi(3) * 1e6, 1e-9);
    close("beyond", life(1.5 * lift_off), (36e3 / (1.5 * lift_off)).powi(3) * 1e6, 1e-9);
    let loaded = direct(4e3, 3e3);
    let exact = life_of_rows(36e3, [loaded, loaded - 4e3]);
    assert!(life(4e3) < exact && life(4e3) > 0.92 * exact, "{} against {exact}", life(4e3));
}

#[test]
fn a_duty_that_presses_both_halves_alike_outlasts_one_that_presses_one() {
    let life = |forces: [f64; 2]| {
        let series = Series::of_si(&forces);
        let (rating, preload) = (Force::of_si(36e3), Force::of_si(2e3));
        pair_life(
            rating,
            preload,
            series,
            Series::of_si(&[0.5, 0.5]),
            Series::<Velocity>::of_si(&[0.1, 0.1]),
            Ratio::of_si(1.0),
        )
        .si()
    };
    assert!(life([4e3, -4e3]) > life([4e3, 4e3]));
    close("mirror", life([4e3, -1e3]), life([-4e3, 1e3]), 1e-12);
    let constant = preloaded_nut_life(Force::of_si(36e3), Force::of_si(2e3), Force::of_si(4e3)).si();
    close("constant load", life([4e3, 4e3]), constant, 1e-12);
}

#[test]
fn without_preload_each_half_carries_one_sign() {
    let life = |forces: &[f64], shares: &[f64]| {
        let speeds = vec![0.1; forces.len()];
        let (rating, preload) = (Force::of_si(36e3), Force::of_si(0.0));
        let speeds = Series::<Velocity>::of_si(&speeds);
        pair_life(rating, preload, Series::of_si(forces), Series::of_si(shares), speeds, Ratio::of_si(1.0)).si()
    };
    // half of the turns each: the cubic mean of a half over all turns is F/∛2
    let half = 4e3 / 2_f64.cbrt();
    close("both signs", life(&[4e3, -4e3], &[0.5, 0.5]), life_of_rows(36e3, [half, half]), 1e-9);
    close("one sign", life(&[4e3], &[1.0]), 729e6, 1e-9);
}

proptest! {
    #[test]
    fn more_load_never_means_more_life(load in 0.0_f64..2e4, more in 0.0_f64..1e4, preload in 0.0_f64..4e3) {
        let life = |load: f64| {
            preloaded_nut_life(Force::of_si(4e4), Force::of_si(preload), Force::of_si(load)).si()
        };
        prop_assert!(life(load + more) <= life(load) * (1.0 + 1e-9));
        prop_assert_eq!(life(load), life(-load));
    }
}

/// Complete elliptic integrals of the first and second kind, by the arithmetic–geometric mean.
fn elliptic(modulus_squared: f64) -> (f64, f64) {
    let (mut a, mut g, mut c, mut power, mut sum) =
        (1.0_f64, (1.0 - modulus_squared).sqrt(), modulus_squared.sqrt(), 0.5, 0.0);
    while c.abs() > 1e-15 {
        sum += power * c * c;
        power *= 2.0;
        c = (a - g) / 2.0;
        (a, g) = ((a + g) / 2.0, (a * g).sqrt());
    }
    let first = PI / (2.0 * a);
    (first, first * (1.0 - sum))
}

/// Hertz's largest pressure in MPa of a steel point contact with these curvatures (1/mm) under a load in N.
fn hertz_pressure(load: f64, along: f64, across: f64) -> f64 {
    let (large, small) = (along.max(across), along.min(across));
    // a/b = 1/κ from B/A = (E/κ'² − K)/(K − E) with κ'² = 1 − e²; bisect on e²
    let ratio = large / small;
    let (mut low, mut high) = (1e-12, 1.0 - 1e-12);
    for _ in 0..200 {
        let e2 = (low + high) / 2.0;
        let (k, e) = elliptic(e2);
        if (e / (1.0 - e2) - k) / (k - e) > ratio { high = e2 } else { low = e2 }
    }
    let e2 = (low + high) / 2.0;
    let (_, e) = elliptic(e2);
    let effective = 206e3 / (2.0 * (1.0 - 0.09));
    // A + B = (Σ of curvatures)/2; a³ = 3·Q·E/(2·E*·(A + B)·2·(1 − e²))·…, Johnson, Contact Mechanics, eq. 4.26 ff.
    let sum = (large + small) / 2.0;
    let major = (3.0 * load * e / (2.0 * PI * effective * sum * (1.0 - e2))).cbrt();
    3.0 * load / (2.0 * PI * major * major * (1.0 - e2).sqrt())
}

/// A sphere on a plane: p = (6·Q·E*²/(π³·R²))^(1/3).
#[test]
fn the_contact_solution_itself_is_right_for_a_sphere() {
    let (load, radius, effective) = (400.0, 3.175, 206e3 / (2.0 * 0.91));
    let sphere = (6.0 * load * f64::powi(effective, 2) / (PI.powi(3) * f64::powi(radius, 2))).cbrt();
    close("sphere", hertz_pressure(load, 1.0 / radius, (1.0 + 1e-7) / radius), sphere, 1e-5);
}

/// ISO 76 (from memory) takes 4200 MPa as the pressure that dents a ball contact by 10⁻⁴ ball diameters; the rating
/// here follows from the dent itself, so its pressure must come near.
#[test]
fn the_static_rating_presses_the_balls_with_about_4200_mpa() {
    for (circle, ball, lead, turns, balls) in [(33.0, 6.35, 10.0, 4.0, 16.0), (41.0, 6.35, 10.0, 5.0, 20.0)] {
        let mm = |value: f64| Length::of_si(value * 1e-3);
        let rating = static_rating(mm(circle), mm(ball), mm(lead), Ratio::of_si(turns), Ratio::of_si(0.54)).si();
        let lead_angle = f64::atan(lead / (PI * circle));
        let contact = std::f64::consts::FRAC_1_SQRT_2;
        let load = rating / (balls * turns * contact * lead_angle.cos());
        let along = 2.0 / ball - 1.0 / (0.54 * ball);
        let across = 2.0 / ball + contact / (circle / 2.0 - ball * contact / 2.0);
        close("pressure", hertz_pressure(load, along, across), 4200.0, 0.04);
    }
}
