//! The screw between ends that give: whip, column and sag against finite elements.
//!
//! The formulas solve transcendental equations; here the same beam is cut into elements, its ends get rotational springs,
//! supports become pins, and the smallest eigenvalue is found numerically.

use super::beam::{Beam, End, buckling_of, deepest, eigenvalue_squared_of};
use super::{close, mm, ratio};
use axiswright::formula::column::{column_load, held_column_use};
use axiswright::formula::constants::{GRAVITY, STEEL_DENSITY, STEEL_YOUNG};
use axiswright::formula::held_beam::{
    euler_load, held_buckling, held_eigenvalue, rooted_buckling, rooted_eigenvalue, rooted_sag, screw_sag,
};
use axiswright::formula::shaft::tension_whip_factor;
use axiswright::units::{Angle, Force, Length, Measure, Pressure};
use std::f64::consts::PI;

const ELEMENTS: usize = 16;
const FIXITIES: [f64; 5] = [0.0, 0.5, 3.0, 12.0, 1000.0];

/// Every pair of fixities, the softer first.
fn pairs() -> impl Iterator<Item = (f64, f64)> {
    FIXITIES
        .into_iter()
        .flat_map(|first| FIXITIES.into_iter().map(move |second| (first, second)))
        .filter(|(a, b)| a <= b)
}

fn beam(first: f64, second: f64) -> Beam<'static> {
    Beam { elements: ELEMENTS, ends: (End::Sprung(first), End::Sprung(second)), pins: &[] }
}

#[test]
fn eigenvalue_and_buckling_factor_agree_with_finite_elements_for_ends_that_give() {
    for (first, second) in pairs() {
        let what = format!("{first} and {second}");
        let eigenvalue = held_eigenvalue(ratio(first), ratio(second), ratio(1.0)).si();
        close(&what, eigenvalue, eigenvalue_squared_of(beam(first, second), 0.0), 2e-5);
        let factor = held_buckling(ratio(first), ratio(second), ratio(1.0)).si();
        close(&what, factor, buckling_of(beam(first, second)) / (PI * PI), 5e-5);
        let turned = held_eigenvalue(ratio(second), ratio(first), ratio(1.0)).si();
        close(&what, eigenvalue, turned, 1e-12);
    }
}

#[test]
fn a_free_end_on_a_root_that_gives_agrees_with_finite_elements() {
    for fixity in [0.3, 2.0, 8.0, 30.0, 1000.0] {
        let free = Beam { elements: ELEMENTS, ends: (End::Sprung(fixity), End::Free), pins: &[] };
        let what = format!("root of {fixity}");
        close(&what, rooted_eigenvalue(ratio(fixity)).si(), eigenvalue_squared_of(free, 0.0), 1e-5);
        close(&what, rooted_buckling(ratio(fixity)).si(), buckling_of(free) / (PI * PI), 1e-5);
    }
}

/// Thomson, Appendix D (eigenvalues), and Euler's cases: the limits of rigid and of loose ends.
#[test]
fn rigid_and_loose_ends_are_the_cases_of_the_books() {
    let rigid = f64::INFINITY;
    let cases = [(0.0, 0.0, 9.8696, 1.0), (rigid, 0.0, 15.4182, 2.0457), (rigid, rigid, 22.3733, 4.0)];
    for (first, second, eigenvalue, factor) in cases {
        close("λ²", held_eigenvalue(ratio(first), ratio(second), ratio(1.0)).si(), eigenvalue, 3e-6);
        close("N", held_buckling(ratio(first), ratio(second), ratio(1.0)).si(), factor, 3e-5);
    }
    close("free λ²", rooted_eigenvalue(ratio(rigid)).si(), 3.5160, 1e-5);
    close("free N", rooted_buckling(ratio(rigid)).si(), 0.25, 1e-12);
    assert!(held_eigenvalue(ratio(f64::NAN), ratio(1.0), ratio(1.0)).si().is_nan());
    assert!(held_buckling(ratio(1.0), ratio(f64::NAN), ratio(1.0)).si().is_nan());
}

/// A pin in the middle: exact for equal ends (2.757 times, not 4 times, between rigid ends), a lower bound for others.
#[test]
fn a_support_in_the_middle_agrees_with_finite_elements() {
    let pinned = |first: f64, second: f64| Beam { elements: 2 * ELEMENTS, pins: &[ELEMENTS], ..beam(first, second) };
    for fixity in FIXITIES {
        // half the span has half the fixity
        let half = held_eigenvalue(ratio(fixity / 2.0), ratio(0.0), ratio(2.0)).si();
        close(&format!("ends of {fixity}"), half, eigenvalue_squared_of(pinned(fixity, fixity), 0.0), 2e-5);
        let column = held_buckling(ratio(fixity / 2.0), ratio(0.0), ratio(2.0)).si();
        close(&format!("column of {fixity}"), column, buckling_of(pinned(fixity, fixity)) / (PI * PI), 2e-5);
    }
    let gain = held_eigenvalue(ratio(f64::INFINITY), ratio(0.0), ratio(2.0)).si() / 22.3733;
    close("rigid ends", gain, 2.757, 2e-4);
    // fixed and supported: the weaker half has two pins
    let bound = held_eigenvalue(ratio(0.0), ratio(0.0), ratio(2.0)).si();
    let exact = eigenvalue_squared_of(pinned(1e6, 0.0), 0.0);
    assert!(bound < exact && bound > 0.7 * exact, "{bound} against {exact}");
}

/// Stretched or pressed together: √(1 + F/F_E) with the Euler load of the same ends, within 2.2 % from −0.5 to +1.
#[test]
fn axial_force_on_ends_that_give_changes_the_whip_speed_as_finite_elements_say() {
    for (first, second) in [(12.0, 12.0), (20.0, 0.0), (3.0, 8.0)] {
        let plain = eigenvalue_squared_of(beam(first, second), 0.0);
        let euler = buckling_of(beam(first, second));
        for share in [-0.5, -0.2, 0.3, 1.0] {
            let exact = eigenvalue_squared_of(beam(first, second), share * euler) / plain;
            let formula = tension_whip_factor(Force::of_si(share * 1e4), Force::of_si(1e4), ratio(plain)).si();
            close(&format!("{first}, {second} at {share}"), formula, exact, 0.022);
        }
    }
}

/// Sag against the elements; under axial force the factor 1/(1 + F/F_E) is a rule, within 2 % up to half the Euler load.
#[test]
fn sag_agrees_with_finite_elements_for_ends_that_give() {
    let (d, bore, length) = (0.0551_f64, 0.025_f64, 3.0_f64);
    let area = PI / 4.0 * (d * d - bore * bore);
    let unit = STEEL_DENSITY * area * GRAVITY * length.powi(4) / (STEEL_YOUNG * PI / 64.0 * (d.powi(4) - bore.powi(4)));
    let (bar, hole, long) = (Length::of_si(d), Length::of_si(bore), Length::of_si(length));
    let (level, euler) = (Angle::of_si(0.0), Force::of_si(1e4));
    for (first, second) in pairs() {
        let sag = |force: f64| {
            let force = Force::of_si(force);
            screw_sag(bar, hole, long, ratio(first), ratio(second), ratio(1.0), force, euler, level).si() / unit
        };
        let what = format!("{first} and {second}");
        // the deepest node lies at most half an element, 1/160, from the deepest point: ½·16·(1/160)² of it at most
        let fine = Beam { elements: 80, ..beam(first, second) };
        close(&what, sag(0.0), deepest(fine, 0.0), 3.2e-4);
        let load = buckling_of(beam(first, second));
        close(&what, sag(0.5e4), deepest(fine, 0.5 * load), 0.02);
        close(&what, sag(-0.3e4), deepest(fine, -0.3 * load), 0.02);
    }
    let rooted = rooted_sag(bar, hole, long, ratio(8.0), level).si() / unit;
    let free = Beam { elements: ELEMENTS, ends: (End::Sprung(8.0), End::Free), pins: &[] };
    close("free end", rooted, deepest(free, 0.0), 1e-6);
    // a support in the middle, equal ends: a real beam goes on over it and sags less
    let pinned = Beam { elements: 2 * ELEMENTS, pins: &[ELEMENTS], ..beam(16.0, 16.0) };
    let force = Force::of_si(0.0);
    let bound = screw_sag(bar, hole, long, ratio(8.0), ratio(0.0), ratio(2.0), force, euler, level).si() / unit;
    let exact = deepest(pinned, 0.0);
    assert!(bound > exact && bound < 2.2 * exact, "{bound} against {exact}");
}

/// A screw held at both ends shares the force of its nut between two springs in parallel: at x the part of length x takes
/// 1 − x/L of it as compression, and the thermal force on top. The nut is tried at 20 000 places, each with Euler's load
/// or Johnson's parabola; the fixity of the end grows with the length of its part.
#[test]
fn a_screw_held_at_both_ends_buckles_at_the_worst_place_of_its_nut() {
    let strength = Pressure::of_si(350e6);
    for diameter in [0.0174, 0.0345, 0.0695, 0.1113] {
        for length in [0.2, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0] {
            for (force, thermal) in [(1e4, 0.0), (1e4, 2e3), (1e4, 2e4), (2e3, 1e4)] {
                let d = Length::of_si(diameter);
                let factor = ratio(2.0457);
                let used = |place: f64| {
                    let part = Length::of_si(place * length);
                    (force * (1.0 - place) + thermal) / column_load(d, mm(0.0), part, factor, strength).si()
                };
                let searched = (1..=20_000).map(|step| used(f64::from(step) / 20_000.0)).fold(0.0, f64::max);
                let formula = held_column_use(
                    Force::of_si(force),
                    Force::of_si(thermal),
                    d,
                    mm(0.0),
                    Length::of_si(length),
                    factor,
                    strength,
                );
                // the nut at the very end, where the stocky part only yields, is missed by one step
                close(&format!("{diameter} m, {length} m, {thermal} N"), formula.si(), searched, 1e-4);
            }
        }
    }
}

/// The buckling factor is taken for two thirds of the length; a search with the factor of every place differs little, and
/// where it does the formula is the safe one or within 2 %.
#[test]
fn one_buckling_factor_stands_for_every_place_of_the_nut() {
    let bending = STEEL_YOUNG * PI / 64.0 * 0.0345_f64.powi(4);
    for (length, fixity) in [(1.5_f64, 2.0), (1.5, 12.0), (3.0, 12.0), (3.0, 40.0)] {
        let factor = |place: f64| held_buckling(ratio(fixity * place), ratio(0.0), ratio(1.0));
        let exact = (1..=2000)
            .map(|step| f64::from(step) / 2000.0)
            .map(|place| {
                let euler = factor(place).si() * PI * PI * bending / (place * length).powi(2);
                1e4 * (1.0 - place) / euler
            })
            .fold(0.0, f64::max);
        let strong = Pressure::of_si(1e13);
        let formula = held_column_use(
            Force::of_si(1e4),
            Force::of_si(0.0),
            mm(34.5),
            mm(0.0),
            Length::of_si(length),
            factor(2.0 / 3.0),
            strong,
        );
        close(&format!("{length} m, {fixity}"), formula.si(), exact, 0.02);
    }
}

/// Twice the length, a quarter of the Euler load; a bore takes the fourth power of itself.
#[test]
fn the_euler_load_falls_with_the_square_of_the_length() {
    let load = |length: f64, bore: f64| euler_load(mm(40.0), mm(bore), Length::of_si(length), ratio(2.0)).si();
    close("twice as long", load(2.0, 0.0), load(1.0, 0.0) / 4.0, 1e-12);
    close("bored", load(1.0, 20.0) / load(1.0, 0.0), 1.0 - 0.5_f64.powi(4), 1e-12);
}
