//! Entries of `calc` on the nut: life, preloaded life, ratings from geometry.

use super::Entry;
use super::argument::Argument;
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::rolling_life;
use crate::units::Dimension as D;
use crate::units::{Force, Measure, Ratio};

const GEOMETRY: &[Argument] = &[
    Argument::positive("ball-circle-diameter", D::Length),
    Argument::positive("ball-diameter", D::Length),
    Argument::positive("lead", D::Length),
    Argument::positive("turns", D::Ratio),
    Argument::positive("conformity", D::Ratio).or("0.54"),
];

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    vec![
        Entry::own(
            &rolling_life::NUT_LIFE.note,
            &[
                Argument::positive("dynamic-rating", D::Force),
                Argument::positive("mean-load", D::Force),
                Argument::positive("load-factor", D::Ratio).or("1"),
                Argument::positive("reliability", D::Ratio).or("90%"),
            ],
            (D::Revolutions, "Mrev"),
            nut_life,
        ),
        Entry::own(
            &rolling_life::PRELOADED_NUT_LIFE.note,
            &[
                Argument::positive("dynamic-rating", D::Force),
                Argument::not_negative("preload", D::Force),
                Argument::value("load", D::Force),
            ],
            (D::Revolutions, "Mrev"),
            preloaded_nut_life,
        ),
        Entry::own(&rolling_life::DYNAMIC_RATING.note, GEOMETRY, (D::Force, "kN"), |given| {
            rating(given, rolling_life::dynamic_rating)
        }),
        Entry::own(&rolling_life::STATIC_RATING.note, GEOMETRY, (D::Force, "kN"), |given| {
            rating(given, rolling_life::static_rating)
        }),
    ]
}

fn nut_life(given: &Given) -> Result<Outcome, Fault> {
    // 95, 95 % and 0.95 all mean ninety-five of a hundred
    let stated = given.value("reliability");
    let reliability = Ratio::of_si(if stated > 1.0 { stated / 100.0 } else { stated });
    let factor = rolling_life::nut_reliability_factor(reliability);
    if factor.si().is_nan() {
        return Err(Fault::OutOfRange {
            name: "reliability".into(),
            text: format!("{} %", reliability.si() * 100.0),
            why: "must lie between 90 % and 99 %".into(),
        });
    }
    let (rating, load, shock): (Force, Force, Ratio) =
        (given.get("dynamic-rating"), given.get("mean-load"), given.get("load-factor"));
    Ok(Outcome::of(rolling_life::nut_life(rating, load, shock, factor))
        .step("a_1", factor)
        .valid_if(load.si() * shock.si() <= 0.5 * rating.si(), "the load exceeds half of the dynamic rating"))
}

fn preloaded_nut_life(given: &Given) -> Result<Outcome, Fault> {
    let (rating, preload, load): (Force, Force, Force) =
        (given.get("dynamic-rating"), given.get("preload"), given.get("load"));
    let half = rolling_life::half_load(load, preload);
    if half.si() == 0.0 {
        return Err(Fault::Together { why: "`preload` and `load` must not both be zero".into() });
    }
    Ok(Outcome::of(rolling_life::preloaded_nut_life(rating, preload, load))
        .step("F_1", half)
        .step("F_2", Force::of_si(half.si() - load.si().abs()))
        .valid_if(half.si() <= 0.5 * rating.si(), "the loaded half carries more than half of the dynamic rating"))
}

type Rating = fn(crate::units::Length, crate::units::Length, crate::units::Length, Ratio, Ratio) -> Force;

fn rating(given: &Given, formula: Rating) -> Result<Outcome, Fault> {
    let (circle, ball, conformity) =
        (given.value("ball-circle-diameter"), given.value("ball-diameter"), given.value("conformity"));
    if ball >= circle {
        return Err(Fault::Together { why: "`ball-diameter` must be smaller than `ball-circle-diameter`".into() });
    }
    if conformity <= 0.5 {
        return Err(Fault::OutOfRange {
            name: "conformity".into(),
            text: conformity.to_string(),
            why: "must be above 0.5, or the groove is narrower than the ball".into(),
        });
    }
    let value = formula(
        given.get("ball-circle-diameter"),
        given.get("ball-diameter"),
        given.get("lead"),
        given.get("turns"),
        given.get("conformity"),
    );
    Ok(Outcome::of(value)
        .valid_if(ball <= 0.0254, "balls above 25.4 mm")
        .valid_if(conformity <= 0.58, "a conformity above 0.58 is not used in ball screws"))
}
