//! Present value of a uniform series.
//!
//! Source: tables of compound interest factors for discrete compounding (P/A), as printed at the end of texts on
//! engineering economy: 0.25 % and 10 periods read in a public copy of such a table (9.8639), the others from memory.

use super::{near, ratio};
use axiswright::formula::cost::{annuity, energy_cost, whole_life_cost};
use axiswright::units::{Measure, Money, Power, Time};

const YEAR: f64 = 31_557_600.0;

fn factor(rate: f64, years: f64) -> f64 {
    annuity(ratio(rate), Time::of_si(years * YEAR)).si()
}

#[test]
fn the_printed_factors_are_met() {
    near("0.25 %, 10", factor(0.0025, 10.0), 9.8639, 0.00005);
    near("5 %, 20", factor(0.05, 20.0), 12.4622, 0.00005);
    near("6 %, 10", factor(0.06, 10.0), 7.3601, 0.00005);
    near("8 %, 10", factor(0.08, 10.0), 6.7101, 0.00005);
    near("10 %, 10", factor(0.10, 10.0), 6.1446, 0.00005);
}

#[test]
fn a_rate_near_nothing_gives_the_number_of_years_without_a_jump() {
    near("none", factor(0.0, 10.0), 10.0, 0.0);
    near("hardly any", factor(1e-12, 10.0), 10.0, 1e-9);
}

#[test]
fn whole_life_is_the_sum_of_discounted_years() {
    let year_by_year: f64 = (1..=10).map(|year| 350.0 / 1.06_f64.powi(year)).sum();
    let whole = whole_life_cost(Money(1000.0), Money(300.0), Money(50.0), ratio(factor(0.06, 10.0)));
    near("whole life", whole.0, 1000.0 + year_by_year, 1e-9);
}

#[test]
fn two_kilowatts_over_3500_hours_at_a_quarter_cost_1750() {
    near("energy", energy_cost(Power::of_si(2000.0), Time::of_si(3500.0 * 3600.0), Money(0.25)).0, 1750.0, 1e-9);
}
