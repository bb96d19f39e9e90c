//! Present value of a uniform series.
//!
//! Source: tables of compound interest factors for discrete compounding (P/A), as printed at the end of texts on
//! engineering economy: 0.25 % and 10 periods read in a public copy of such a table (9.8639), the others from memory.

use super::{near, ratio};
use axiswright::formula::cost::{annuity, discounted_exchanges, energy_cost, whole_life_cost};
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
    let whole = whole_life_cost(Money(1000.0), Money(300.0), Money(50.0), ratio(factor(0.06, 10.0)), Money(0.0));
    near("whole life", whole.0, 1000.0 + year_by_year, 1e-9);
}

/// Single payments (P/F) of the same tables, from memory: 8 %, 6 years 0.6302, 7 years 0.5835; 10 %, 5 years 0.6209.
#[test]
fn a_part_that_is_exchanged_once_costs_its_printed_present_value() {
    let exchanges = |life: f64, years: f64, rate: f64| {
        let hours = |hours: f64| Time::of_si(hours * 3600.0);
        discounted_exchanges(hours(life * 2000.0), hours(2000.0), Time::of_si(years * YEAR), ratio(rate)).si()
    };
    near("8 %, 6", exchanges(6.0, 10.0, 0.08), 0.6302, 0.00005);
    near("8 %, 7", exchanges(7.0, 10.0, 0.08), 0.5835, 0.00005);
    near("10 %, 5", exchanges(5.0, 9.0, 0.10), 0.6209, 0.00005);
    // year by year, at several lives and rates; a life that ends with the service asks none
    for (life, years, rate) in
        [(1.0, 10.0, 0.06), (2.5, 10.0, 0.06), (0.7, 12.0, 0.15), (3.0, 9.0, 0.0), (12.0, 10.0, 0.06)]
    {
        let mut sum = 0.0;
        let mut at = life;
        while at < years * (1.0 - 1e-6) {
            sum += (1.0_f64 + rate).powf(-at);
            at += life;
        }
        near("exchanges", exchanges(life, years, rate), sum, 1e-9);
    }
    assert!(exchanges(f64::NAN, 10.0, 0.08).is_nan(), "what is not known costs what is not known");
}

/// The worked case of a drive over its life: 12.00 to buy, 0.30 a year, one exchange of 6.0 after six years, 8 %, 10 years.
#[test]
fn a_drive_with_one_exchange_costs_the_sum_of_its_payments() {
    let exchange = 6.0
        * discounted_exchanges(
            Time::of_si(6.0 * 2000.0 * 3600.0),
            Time::of_si(2000.0 * 3600.0),
            Time::of_si(10.0 * YEAR),
            ratio(0.08),
        )
        .si();
    let whole = whole_life_cost(Money(12.0), Money(0.2), Money(0.1), ratio(factor(0.08, 10.0)), Money(exchange));
    near("whole life", whole.0, 12.0 + 0.3 * 6.7101 + 6.0 * 0.6302, 0.0005);
}

#[test]
fn two_kilowatts_over_3500_hours_at_a_quarter_cost_1750() {
    near("energy", energy_cost(Power::of_si(2000.0), Time::of_si(3500.0 * 3600.0), Money(0.25)).0, 1750.0, 1e-9);
}
