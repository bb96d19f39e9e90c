//! Dropping columns that no optimal machine can hold.
//!
//! Method: for prices put on the limited quantities, the sum over the axes of the least priced merit, less
//! the price of the limits, is a bound from below. A column whose own priced merit lifts that bound above a
//! machine already found cannot be in a better one. Exact for any prices; ties stay in.

use super::{Machine, needs};
use crate::search::Attributes;
use crate::units::Measure;

/// Prices tried on each limited quantity, as shares of the spread of merits.
const STEPS: i32 = 24;

struct Limited {
    use_of: fn(&Attributes) -> f64,
    limit: f64,
}

/// The columns of each axis that may be in an optimal machine, in their order.
pub fn reduce(machine: &Machine<'_>) -> Vec<Vec<usize>> {
    let everything: Vec<Vec<usize>> = machine.offers.iter().map(|offer| (0..offer.len()).collect()).collect();
    if everything.iter().any(Vec::is_empty) {
        return everything;
    }
    let limits = &machine.limits;
    let limited: Vec<Limited> = [
        limits.purchase.map(|limit| Limited { use_of: |attributes| attributes.purchase, limit: limit.0 }),
        limits.tool_point_error.map(|limit| Limited {
            use_of: |attributes| attributes.error * attributes.error,
            limit: limit.si() * limit.si(),
        }),
        limits.supply_power.map(|limit| Limited { use_of: |attributes| attributes.power, limit: limit.si() }),
    ]
    .into_iter()
    .flatten()
    .collect();
    let prices = price_list(machine, &limited);
    let mut found = f64::INFINITY;
    let priced: Vec<Priced> = prices.iter().map(|prices| Priced::new(machine, &limited, prices)).collect();
    for priced in &priced {
        for picks in priced.greedy(machine) {
            if needs(machine, &picks).keep_all() {
                let objective = machine.objective(&picks);
                if objective < found {
                    found = objective;
                }
            }
        }
    }
    let slack = found + 1e-9 * found.abs();
    let stays = |axis: usize, column: usize| {
        !priced.iter().any(|priced| priced.bound - priced.least[axis] + priced.merits[axis][column] > slack)
    };
    (0..machine.offers.len())
        .map(|axis| everything[axis].iter().copied().filter(|&column| stays(axis, column)).collect())
        .collect()
}

fn price_list(machine: &Machine<'_>, limited: &[Limited]) -> Vec<Vec<f64>> {
    let mut list = vec![vec![0.0; limited.len()]];
    let spread: f64 = machine
        .offers
        .iter()
        .map(|offer| {
            let merits = offer.iter().map(|column| column.found.attributes.merit).filter(|merit| merit.is_finite());
            let (least, most) = merits.fold((f64::INFINITY, 0.0), |(least, most): (f64, f64), merit| {
                (if merit < least { merit } else { least }, if merit > most { merit } else { most })
            });
            if least.is_finite() { most - least } else { 0.0 }
        })
        .sum();
    for index in 0..limited.len() {
        for step in 0..STEPS {
            let mut prices = vec![0.0; limited.len()];
            prices[index] = spread * 0.01 * 1.6_f64.powi(step);
            list.push(prices);
        }
    }
    list
}

struct Priced {
    merits: Vec<Vec<f64>>,
    least: Vec<f64>,
    bound: f64,
}

impl Priced {
    fn new(machine: &Machine<'_>, limited: &[Limited], prices: &[f64]) -> Priced {
        let priced = |attributes: &Attributes| {
            let charge: f64 = limited
                .iter()
                .zip(prices)
                .map(
                    |(limited, price)| {
                        if *price > 0.0 { price * (limited.use_of)(attributes) / limited.limit } else { 0.0 }
                    },
                )
                .sum();
            attributes.merit + charge
        };
        let merits: Vec<Vec<f64>> = machine
            .offers
            .iter()
            .map(|offer| offer.iter().map(|column| priced(&column.found.attributes)).collect())
            .collect();
        let least: Vec<f64> = merits
            .iter()
            .map(|merits| merits.iter().copied().fold(f64::INFINITY, |a, b| if b < a { b } else { a }))
            .collect();
        let bound = least.iter().sum::<f64>() - prices.iter().sum::<f64>();
        Priced { merits, least, bound }
    }

    /// Choices that take the best priced column of each axis: with any interval of carried mass, and with one
    /// that holds whatever is carried.
    fn greedy(&self, machine: &Machine<'_>) -> Vec<Vec<usize>> {
        let widest = |axis: usize| {
            machine.offers[axis].iter().map(|column| column.most).fold(0.0, |a: f64, b| if b > a { b } else { a })
        };
        let pick = |axis: usize, sturdy: bool| {
            let most = widest(axis);
            (0..self.merits[axis].len())
                .filter(|&column| !sturdy || machine.offers[axis][column].most >= most)
                .min_by(|&a, &b| self.merits[axis][a].total_cmp(&self.merits[axis][b]))
                .unwrap_or(0)
        };
        [false, true]
            .into_iter()
            .map(|sturdy| (0..machine.offers.len()).map(|axis| pick(axis, sturdy)).collect())
            .collect()
    }
}
