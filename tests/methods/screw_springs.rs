//! Springs and heat of a held screw by a second method: chains of springs solved as matrices, heat by finite differences.

use super::{close, mm, ratio};
use axiswright::formula::constants::STEEL_YOUNG;
use axiswright::formula::stiffness::{linear_of_torsional, screw_end_stiffness, screw_stiffness};
use axiswright::formula::stretch::{end_share, held_force, mean_end_share, rise_left};
use axiswright::formula::thermal::{fin_length, length_warming, screw_warming};
use axiswright::units::{
    Expansion, HeatTransfer, Length, Measure, Power, Stiffness, TemperatureInterval, TorsionalStiffness,
};
use nalgebra::{DMatrix, DVector};
use std::f64::consts::PI;

const CORE: f64 = 0.0365;
const LENGTH: f64 = 1.5;
const END: f64 = 700e6;
const EXPANSION: f64 = 11.5e-6;
const PARTS: usize = 60;

/// A screw cut into short bars between two end springs; the housings stand. Gives the displacements of all nodes under
/// forces at nodes and a temperature of each part.
fn chain(forces: &[(usize, f64)], temperature: impl Fn(usize) -> f64) -> DVector<f64> {
    let strength = STEEL_YOUNG * PI / 4.0 * CORE * CORE;
    let part = strength / (LENGTH / PARTS as f64);
    let mut stiffness = DMatrix::zeros(PARTS + 1, PARTS + 1);
    let mut load = DVector::zeros(PARTS + 1);
    for index in 0..PARTS {
        for (row, column, sign) in [(0, 0, 1.0), (0, 1, -1.0), (1, 0, -1.0), (1, 1, 1.0)] {
            stiffness[(index + row, index + column)] += sign * part;
        }
        let push = strength * EXPANSION * temperature(index);
        load[index] -= push;
        load[index + 1] += push;
    }
    stiffness[(0, 0)] += END;
    stiffness[(PARTS, PARTS)] += END;
    for &(node, force) in forces {
        load[node] += force;
    }
    stiffness.cholesky().expect("the held chain is stiff").solve(&load)
}

fn stiffness() -> Stiffness {
    Stiffness::of_si(END)
}

#[test]
fn a_screw_between_elastic_ends_is_softest_in_the_middle_and_as_stiff_as_its_formula() {
    let at = |node: usize| 1e3 / chain(&[(node, 1e3)], |_| 0.0)[node];
    let searched = (0..=PARTS).map(at).fold(f64::INFINITY, f64::min);
    let formula =
        screw_end_stiffness(Length::of_si(CORE), mm(0.0), Length::of_si(LENGTH), ratio(2.0), stiffness()).si();
    close("both ends", formula, searched, 1e-9);
    close("worst place", at(PARTS / 2), searched, 1e-9);
}

/// The whole drive as a chain: motor held, coupling, twist of the screw, screw and bearings, nut, bracket. Each torsional
/// spring turns into travel through the lead; the chain is solved with displacements as unknowns.
#[test]
fn the_total_stiffness_of_a_drive_is_that_of_its_chain() {
    let lead = 0.02;
    let [screw, coupling, twist, nut, bracket] = [4e8, 40e3, 9e3, 700e6, 800e6];
    let per_turn = lead / (2.0 * PI);
    // unknowns: angle behind the coupling, angle at the nut, place of the screw at the nut, of the nut body, of the slide
    let mut k = DMatrix::<f64>::zeros(5, 5);
    k[(0, 0)] += coupling;
    for (row, column, sign) in [(0, 0, 1.0), (0, 1, -1.0), (1, 0, -1.0), (1, 1, 1.0)] {
        k[(row, column)] += sign * twist;
    }
    k[(2, 2)] += screw;
    // the nut: its body follows place plus lead times angle through the stiffness of the balls
    let shape = [0.0, per_turn, 1.0, -1.0, 0.0];
    for row in 0..5 {
        for column in 0..5 {
            k[(row, column)] += nut * shape[row] * shape[column];
        }
    }
    for (row, column, sign) in [(3, 3, 1.0), (3, 4, -1.0), (4, 3, -1.0), (4, 4, 1.0)] {
        k[(row, column)] += sign * bracket;
    }
    let mut load = DVector::zeros(5);
    load[4] = 1e3;
    let slide = k.lu().solve(&load).expect("the chain is held")[4];
    let turned = |stiffness: f64| linear_of_torsional(TorsionalStiffness::of_si(stiffness), Length::of_si(lead)).si();
    let give: f64 = [screw, turned(coupling), turned(twist), nut, bracket].iter().map(|spring| 1.0 / spring).sum();
    close("chain", 1e3 / slide, 1.0 / give, 1e-9);
}

#[test]
fn stretch_and_warming_press_on_the_ends_as_a_chain_of_springs_does() {
    // colder than mounted by 3 K all over: the ends pull
    let cold = chain(&[], |_| -3.0);
    let formula = held_force(
        Length::of_si(CORE),
        mm(0.0),
        Length::of_si(LENGTH),
        stiffness(),
        Expansion::of_si(EXPANSION),
        TemperatureInterval::of_si(3.0),
        ratio(2.0),
    );
    close("stretch", formula.si(), END * cold[0], 1e-9);
    // a warm zone in the middle presses as its mean over the length does
    let zone = |index: usize| if (20..32).contains(&index) { 10.0 } else { 0.0 };
    let warm = chain(&[], zone);
    let mean = held_force(
        Length::of_si(CORE),
        mm(0.0),
        Length::of_si(LENGTH),
        stiffness(),
        Expansion::of_si(EXPANSION),
        TemperatureInterval::of_si(-10.0 * 12.0 / PARTS as f64),
        ratio(2.0),
    );
    close("warm zone", mean.si(), END * warm[0], 1e-9);
}

#[test]
fn the_ends_share_the_force_of_the_nut_as_a_chain_of_springs_does() {
    let travel = 1.2;
    let share = |node: usize| END * chain(&[(node, -1e3)], |_| 0.0)[0] / -1e3;
    let first = ((LENGTH - travel) / 2.0 / LENGTH * PARTS as f64).round() as usize;
    let formula =
        end_share(Length::of_si(CORE), mm(0.0), Length::of_si(LENGTH), Length::of_si(travel), stiffness(), ratio(2.0));
    close("nearest", formula.si(), share(first), 1e-9);
    let places: Vec<f64> = (first..=PARTS - first).map(|node| share(node).powi(3)).collect();
    // trapezium rule over the travel
    let ends = (places[0] + places[places.len() - 1]) / 2.0;
    let mean = ((places.iter().sum::<f64>() - ends) / (places.len() - 1) as f64).cbrt();
    close("mean", mean_end_share(formula, ratio(2.0)).si(), mean, 1e-3);
}

/// Rigid ends, a stretch of 3 K, a zone warmer than the rest: the zone grows by its own rise less the tension given up.
#[test]
fn what_shows_of_a_warm_zone_is_its_rise_less_the_mean() {
    let strength = STEEL_YOUNG * PI / 4.0 * CORE * CORE;
    let (whole, zone, rise) = (1.5, 0.5, 6.0);
    let mean = rise * zone / whole;
    let grown = EXPANSION * zone * rise - strength * EXPANSION * mean * zone / strength;
    let kelvin = TemperatureInterval::of_si;
    let formula = rise_left(kelvin(rise), kelvin(mean), kelvin(3.0)).si();
    close("growth", EXPANSION * zone * formula, grown, 1e-12);
    // without stretch nothing is credited, and never more than the stretch
    close("no stretch", rise_left(kelvin(rise), kelvin(mean), kelvin(0.0)).si(), rise, 1e-12);
    close("more than the stretch", rise_left(kelvin(rise), kelvin(5.0), kelvin(3.0)).si(), 3.0, 1e-12);
}

/// A bar of 12 m in cells of 2 mm that conducts along and sheds heat across, heated evenly over the stroke.
#[test]
fn the_warm_zone_agrees_with_finite_differences() {
    let (d, conductivity, transfer, heat) = (0.04_f64, 45.0, 20.0, 60.0);
    let fin = fin_length(Length::of_si(d), mm(0.0), HeatTransfer::of_si(transfer));
    for stroke in [0.02, 0.1, 0.3, 1.0, 3.0] {
        let (cells, cell) = (6000_usize, 0.002);
        let along = conductivity * PI / 4.0 * d * d / cell;
        let across = transfer * PI * d * cell;
        let half = (stroke / cell / 2.0_f64).round() as usize;
        let heated = |index: usize| (cells / 2 - half..cells / 2 + half).contains(&index);
        // tridiagonal, ends without heat flow: Thomas's algorithm
        let (mut upper, mut right) = (vec![0.0; cells], vec![0.0; cells]);
        for index in 0..cells {
            let neighbours = if index == 0 || index == cells - 1 { 1.0 } else { 2.0 };
            let source = if heated(index) { heat / (2 * half) as f64 } else { 0.0 };
            let diagonal = across + neighbours * along;
            let (before_upper, before_right) =
                if index == 0 { (0.0, 0.0) } else { (upper[index - 1], right[index - 1]) };
            let lower = if index == 0 { 0.0 } else { along };
            let pivot = diagonal - lower * before_upper;
            upper[index] = along / pivot;
            right[index] = (source + lower * before_right) / pivot;
        }
        let mut rise = vec![0.0; cells];
        rise[cells - 1] = right[cells - 1];
        for index in (0..cells - 1).rev() {
            rise[index] = right[index] + upper[index] * rise[index + 1];
        }
        let mean = (0..cells).filter(|&index| heated(index)).map(|index| rise[index]).sum::<f64>() / (2 * half) as f64;
        let none = TemperatureInterval::of_si(0.0);
        let (power, bar, air) = (Power::of_si(heat), Length::of_si(d), HeatTransfer::of_si(transfer));
        let formula = screw_warming(power, bar, Length::of_si(stroke), air, fin, none).si();
        close(&format!("stroke of {stroke} m"), formula, mean, 2e-3);
        let whole = rise.iter().sum::<f64>() / cells as f64;
        close("whole bar", length_warming(power, bar, Length::of_si(cell * cells as f64), air).si(), whole, 1e-9);
    }
}

/// Common practice, no source: twice the length between thrust bearing and nut, half the stiffness of the screw.
#[test]
fn doubling_the_length_halves_the_stiffness_of_the_screw() {
    let stiffness =
        |length: f64| screw_stiffness(Length::of_si(CORE), Length::of_si(length), Length::of_si(10.0), ratio(1.0)).si();
    close("one thrust end", stiffness(2.4), stiffness(1.2) / 2.0, 1e-12);
}
