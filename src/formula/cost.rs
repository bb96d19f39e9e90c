//! What a drive costs: parts, fitting, energy, and the whole life discounted.
//!
//! Method: prices by size and length; yearly sums by annuity, exchanges one by one. Limits: one currency, no inflation; the prices
//! themselves come from the catalogue.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Length, Measure, Money, Power, Ratio, Time};

const SHAPE: Source = Source::practice("price by size and length; the magnitudes are the catalogue's");
/// Seconds in an hour.
const HOUR: f64 = 3600.0;
/// Seconds in a year (365.25 days).
const YEAR: f64 = 31_557_600.0;
/// Joules in a kilowatt-hour.
const KILOWATT_HOUR: f64 = 3.6e6;

/// Price of a screw with its nut.
///
/// Pass nominal diameter, length, longest screw made, factors of grade and nut, base price and price a metre of
/// a 32 mm screw. Above 60 % of the longest length the metre costs 1.4 times as much.
/// Check: 32 mm, 1 m of 5 m, factors 1, 220 and 260 → 480.
pub static SCREW_PRICE: Formula<fn(Length, Length, Length, Ratio, Ratio, Ratio, Money, Money) -> Money> = Formula {
    note: Note {
        id: "screw-price",
        title: "price of a screw with its nut",
        equation: "K = K_g·K_d·(K_0·K_n + K_m·L_s·φ)·(d_0/32 mm)^1.5, φ = 1.4 for L_s > 0.6·L_max, else 1",
        inputs: &[
            ("d_0", "nominal-diameter"),
            ("L_s", "length"),
            ("L_max", "length-limit"),
            ("K_g", "grade-factor"),
            ("K_d", "size-factor"),
            ("K_n", "nut-factor"),
            ("K_0", "base"),
            ("K_m", "per-metre"),
        ],
        validity: "screws that can be made, up to the longest length",
        sources: &[SHAPE],
    },
    apply: screw_price,
};

/// See [`SCREW_PRICE`].
#[inline]
pub fn screw_price(
    nominal_diameter: Length,
    length: Length,
    length_limit: Length,
    grade_factor: Ratio,
    size_factor: Ratio,
    nut_factor: Ratio,
    base: Money,
    per_metre: Money,
) -> Money {
    let length = length.si();
    let longest = length_limit.si();
    let rise = if longest.is_nan() {
        f64::NAN
    } else if length > 0.6 * longest {
        1.4
    } else {
        1.0
    };
    let size = nominal_diameter.si() / 0.032;
    let plain = base.si() * nut_factor.si() + per_metre.si() * length * rise;
    Money(grade_factor.si() * size_factor.si() * plain * size * size.sqrt())
}

/// Five amounts together.
pub static SUM_5: Formula<fn(Money, Money, Money, Money, Money) -> Money> = Formula {
    note: Note {
        id: "sum-of-five",
        title: "five amounts together",
        equation: "K = K_1 + K_2 + K_3 + K_4 + K_5",
        inputs: &[("K_1", "first"), ("K_2", "second"), ("K_3", "third"), ("K_4", "fourth"), ("K_5", "fifth")],
        validity: "one currency",
        sources: &[Source::derived("sum")],
    },
    apply: sum_5,
};

/// See [`SUM_5`].
#[inline]
pub fn sum_5(first: Money, second: Money, third: Money, fourth: Money, fifth: Money) -> Money {
    Money(first.0 + second.0 + third.0 + fourth.0 + fifth.0)
}

/// So many of one price.
pub static TIMES: Formula<fn(Ratio, Money) -> Money> = Formula {
    note: Note {
        id: "price-of-many",
        title: "price of so many pieces",
        equation: "K = n·K_1",
        inputs: &[("n", "count"), ("K_1", "each")],
        validity: "no discount for quantity",
        sources: &[Source::derived("product")],
    },
    apply: times,
};

/// See [`TIMES`].
#[inline]
pub fn times(count: Ratio, each: Money) -> Money {
    Money(count.si() * each.0)
}

/// Price of a length.
pub static LENGTH_PRICE: Formula<fn(Length, Money) -> Money> = Formula {
    note: Note {
        id: "length-price",
        title: "price of a length",
        equation: "K = L·K_m",
        inputs: &[("L", "length"), ("K_m", "per-metre")],
        validity: "price proportional to length",
        sources: &[SHAPE],
    },
    apply: length_price,
};

/// See [`LENGTH_PRICE`].
#[inline]
pub fn length_price(length: Length, per_metre: Money) -> Money {
    Money(length.si() * per_metre.0)
}

/// Price of fitting and aligning a drive, datums machined.
///
/// Pass fixed hours, hours a metre, travel, and rate an hour. Check: 10 h, 2 h/m, 4 m, 60 an hour → 1080.
pub static FITTING_PRICE: Formula<fn(Time, Time, Length, Money) -> Money> = Formula {
    note: Note {
        id: "fitting-price",
        title: "price of fitting and alignment",
        equation: "K_h = (t_0 + t_m·s)·k_h",
        inputs: &[("t_0", "fixed-hours"), ("t_m", "hours-per-metre"), ("s", "travel"), ("k_h", "rate-per-hour")],
        validity: "work grows linearly with travel",
        sources: &[SHAPE],
    },
    apply: fitting_price,
};

/// See [`FITTING_PRICE`].
#[inline]
pub fn fitting_price(fixed_hours: Time, hours_per_metre: Time, travel: Length, rate_per_hour: Money) -> Money {
    let hours = (fixed_hours.si() + hours_per_metre.si() * travel.si()) / HOUR;
    Money(hours * rate_per_hour.0)
}

/// Price of the energy of a year.
///
/// Pass mean power while working, working hours a year, and price of a kilowatt-hour.
/// Check: 2 kW, 3500 h, 0.25 → 1750.
pub static ENERGY_COST: Formula<fn(Power, Time, Money) -> Money> = Formula {
    note: Note {
        id: "energy-cost",
        title: "price of the energy of a year",
        equation: "K_E = P_m·t_a·k_E",
        inputs: &[("P_m", "mean-power"), ("t_a", "hours-per-year"), ("k_E", "price-per-kwh")],
        validity: "one price of energy",
        sources: &[Source::derived("energy times price")],
    },
    apply: energy_cost,
};

/// See [`ENERGY_COST`].
#[inline]
pub fn energy_cost(mean_power: Power, hours_per_year: Time, price_per_kwh: Money) -> Money {
    Money(mean_power.si() * hours_per_year.si() / KILOWATT_HOUR * price_per_kwh.0)
}

/// Present value of one unit a year, paid at the end of each year, 1.
///
/// Pass discount rate and years. A rate of zero gives the number of years. Check: 8 %, 10 years → 6.7101.
pub static ANNUITY: Formula<fn(Ratio, Time) -> Ratio> = Formula {
    note: Note {
        id: "annuity",
        title: "present value of one unit a year",
        equation: "b = (1 − (1 + r)^(−n))/r; r = 0: b = n",
        inputs: &[("r", "rate"), ("n", "years")],
        validity: "rate above −100 %, payment at the end of each year",
        sources: &[Source::derived(
            "geometric series of discounted payments; checked against printed tables of interest factors",
        )],
    },
    apply: annuity,
};

/// See [`ANNUITY`].
#[inline]
pub fn annuity(rate: Ratio, years: Time) -> Ratio {
    let (rate, years) = (rate.si(), years.si() / YEAR);
    Ratio::of_si(if rate == 0.0 { years } else { -(-years * rate.ln_1p()).exp_m1() / rate })
}

/// Exchanges of a part within the years of service, each counted at its present value.
///
/// Pass the life of the part, working hours a year, years of service, and discount rate. The part is exchanged whenever
/// its life has passed, and not at the very end of the service. Check: 8000 h, 4000 h a year, 10 years, 8 % → exchanges
/// after 2, 4, 6 and 8 years: 0.8573 + 0.7350 + 0.6302 + 0.5403 = 2.7628.
pub static DISCOUNTED_EXCHANGES: Formula<fn(Time, Time, Time, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "discounted-exchanges",
        title: "exchanges of a part within the years of service, each at its present value",
        equation: "b_x = Σ (1 + r)^(−k·L/t_a), k = 1 … N, N the largest with N·L < t_y·t_a",
        inputs: &[("L", "life"), ("t_a", "hours-per-year"), ("t_y", "service-years"), ("r", "rate")],
        validity: "exchange at the stated life, which is the one that 90 % reach unless a part says otherwise; the mean life of rolling parts is four times as long and more",
        sources: &[Source::derived("single payments discounted; checked against printed tables of interest factors")],
    },
    apply: discounted_exchanges,
};

/// See [`DISCOUNTED_EXCHANGES`].
#[inline]
pub fn discounted_exchanges(life: Time, hours_per_year: Time, service_years: Time, rate: Ratio) -> Ratio {
    let years = life.si() / hours_per_year.si();
    let lives = service_years.si() / YEAR / years;
    // a life that ends with the service asks no exchange
    let count = (lives * (1.0 - 1e-9)).floor();
    // a rate that is not known leaves the sum unknown
    Ratio::of_si(if count < 1.0 {
        0.0 * rate.si()
    } else if rate.si() == 0.0 {
        count
    } else {
        let each = -years * rate.si().ln_1p();
        each.exp() * (count * each).exp_m1() / each.exp_m1()
    })
}

/// Price of one exchange of a part, on all drives.
///
/// Pass how many there are, the price of one, hours of work, rate of an hour of work, hours that the machine stands, and
/// what such an hour costs. Check: 2, 500, 4 h, 60, 8 h, 100 → 2·(500 + 240 + 800) = 3080.
pub static EXCHANGE_PRICE: Formula<fn(Ratio, Money, Time, Money, Time, Money) -> Money> = Formula {
    note: Note {
        id: "exchange-price",
        title: "price of exchanging a part on all drives",
        equation: "K_x = n·(k_x + h_x·k_L + h_s·k_s)",
        inputs: &[
            ("n", "count"),
            ("k_x", "part-price"),
            ("h_x", "work"),
            ("k_L", "labour-rate"),
            ("h_s", "standstill"),
            ("k_s", "downtime-price"),
        ],
        validity: "one part after the other; generic hours",
        sources: &[SHAPE],
    },
    apply: |count, price, work, rate, standstill, downtime| {
        Money(count.si() * (price.0 + work.si() / HOUR * rate.0 + standstill.si() / HOUR * downtime.0))
    },
};

/// Exchanges of a part over the years of service at their present value. 2.7628 · 1000 → 2762.8.
pub static REPLACEMENT_COST: Formula<fn(Ratio, Money) -> Money> = Formula {
    note: Note {
        id: "replacement-cost",
        title: "exchanges of a part over the years of service, at their present value",
        equation: "K_R = b_x·K_x",
        inputs: &[("b_x", "exchanges"), ("K_x", "exchange-price")],
        validity: "price of the exchange as today",
        sources: &[Source::derived("present value of single payments")],
    },
    apply: |exchanges, price| Money(exchanges.si() * price.0),
};

/// Price over the whole life, discounted.
///
/// Pass purchase, energy and upkeep a year, annuity, and exchanges at their present value.
/// Check: 1000, 50, 50, 6.7101, 300 → 1971.01.
pub static WHOLE_LIFE_COST: Formula<fn(Money, Money, Money, Ratio, Money) -> Money> = Formula {
    note: Note {
        id: "whole-life-cost",
        title: "price, energy, upkeep and exchanges over the years of service, discounted",
        equation: "K_L = K_0 + (K_E + K_U)·b + K_R",
        inputs: &[("K_0", "purchase"), ("K_E", "energy"), ("K_U", "upkeep"), ("b", "annuity"), ("K_R", "replacement")],
        validity: "parts whose life ends within the years of service are in the last term; faults before that are not",
        sources: &[Source::derived("present value of equal yearly sums and of single payments")],
    },
    apply: whole_life_cost,
};

/// See [`WHOLE_LIFE_COST`].
#[inline]
pub fn whole_life_cost(purchase: Money, energy: Money, upkeep: Money, annuity: Ratio, replacement: Money) -> Money {
    Money(purchase.0 + (energy.0 + upkeep.0) * annuity.si() + replacement.0)
}
