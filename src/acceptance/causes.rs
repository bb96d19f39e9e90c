//! What the deviations look like: the variance of all of them, taken apart.
//!
//! Method: with the same number of runs everywhere, the sum of squares of all deviations about their mean falls apart
//! exactly into scatter of the runs, reversal, and form of the mean deviation. Each is taken further by least squares:
//! scatter into a drift over the runs and the rest; reversal into a constant step, one that grows along the travel, and
//! the rest; form as `shape` says. A term counts as found where its gain has a chance below 1 % of coming from the rest
//! alone (see `fit`). Limits: causes that look alike (wrong lead and temperature, play and friction) are not told apart
//! by these data.

use super::evaluate::TargetValues;
use super::fit::{dot, fit, log_chance};
use super::measured::Measurement;
use super::plan;
use super::shape::Shape;
use crate::units::{Length, Measure};

/// The chance below which a term counts as found (judgement: the usual 1 %).
pub(super) const CHANCE: f64 = 0.01;
/// A rest below this part of the whole is rounding.
const ROUNDING: f64 = 1e-18;

/// A period that the drive has.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Period {
    /// Id of the cause.
    pub id: &'static str,
    /// What repeats: "one turn of the screw".
    pub words: &'static str,
    /// Its length along the travel, m.
    pub length: f64,
}

/// What a term of the form is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Term {
    /// Slope of the mean deviation, m/m.
    Slope { slope: f64 },
    /// A bow over the measured length; its height between the ends, m.
    Bow { height: f64 },
    /// A wave of a period of the drive; peak to valley, m.
    Wave { period: usize, range: f64 },
    /// A wave of a period that the drive is not known to have, m; peak to valley, m.
    OtherWave { length: f64, range: f64 },
    /// A jump between neighbouring targets: the first of them, and its height, m.
    Jump { after: usize, height: f64 },
}

/// Why a wave cannot be judged.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Unresolvable {
    /// Too few targets.
    FewTargets,
    /// The measured length holds less than one period.
    TooShort,
    /// All targets stand at nearly the same place of the period.
    SamePhase,
    /// On these targets it looks like the wave of another period of the drive.
    LooksLike(usize),
}

/// The variance of all deviations, taken apart; sums of squares in m².
#[derive(Debug, Clone)]
pub(super) struct Parts {
    /// All of it.
    pub whole: f64,
    /// Number of deviations.
    pub count: usize,
    /// Scatter of the runs without drift.
    pub scatter: f64,
    /// Drift over the runs, and its height from the first run to the last, m; `None` where none stands out.
    pub drift: Option<(f64, f64)>,
    /// Constant reversal and its size with sign, m.
    pub step: Option<(f64, f64)>,
    /// Growth of the reversal along the travel, and its slope, m/m.
    pub growth: Option<(f64, f64)>,
    /// Reversal that changes otherwise.
    pub reversal_rest: f64,
    /// Terms of the form with the sum of squares each explains, surest first.
    pub form: Vec<(Term, f64)>,
    /// What is left of the form.
    pub form_rest: f64,
    /// How alike neighbouring targets are in what is left, −1 to 1; NaN where nothing is left.
    pub rest_likeness: f64,
    /// For each period why it cannot be judged.
    pub unresolvable: Vec<Option<Unresolvable>>,
}

impl Parts {
    /// The slope that was found, m/m.
    pub fn slope(&self) -> Option<f64> {
        self.form.iter().find_map(|(term, _)| match term {
            Term::Slope { slope } => Some(*slope),
            Term::Bow { .. } | Term::Wave { .. } | Term::OtherWave { .. } | Term::Jump { .. } => None,
        })
    }
}

/// Takes the variance apart.
pub(super) fn take_apart(measurement: &Measurement, targets: &[TargetValues], periods: &[Period]) -> Parts {
    let runs = measurement.runs as f64;
    let count = 2 * measurement.runs * targets.len();
    let means: Vec<f64> = targets.iter().map(|target| target.mean.si()).collect();
    let reversals: Vec<f64> = targets.iter().map(|target| target.reversal.si()).collect();
    let at: Vec<f64> = targets.iter().map(|target| target.position.si()).collect();
    let (scatter, drift) = scatter_parts(measurement, targets);
    let grand = means.iter().sum::<f64>() / means.len() as f64;
    let form_whole: f64 = 2.0 * runs * means.iter().map(|mean| (mean - grand).powi(2)).sum::<f64>();
    let reversal_whole: f64 = 0.5 * runs * dot(&reversals, &reversals);
    let whole = scatter + drift.map_or(0.0, |(part, _)| part) + form_whole + reversal_whole;
    let (step, growth, reversal_rest) = reversal_parts(&at, &reversals, 0.5 * runs, whole);
    let even = plan::even(measurement);
    let shape = Shape { at: &at, means: &means, periods, even, rounding: ROUNDING * whole / (2.0 * runs) };
    let unresolvable: Vec<Option<Unresolvable>> = (0..periods.len()).map(|which| shape.unresolvable(which)).collect();
    let (form, rest) = shape.terms(&unresolvable);
    let form = form.into_iter().map(|(term, part)| (term, part * 2.0 * runs)).collect();
    Parts {
        whole,
        count,
        scatter,
        drift,
        step,
        growth,
        reversal_rest,
        form,
        form_rest: dot(&rest, &rest) * 2.0 * runs,
        rest_likeness: dot(&rest[1..], &rest[..rest.len().saturating_sub(1)]) / dot(&rest, &rest),
        unresolvable,
    }
}

/// Scatter without drift, and drift with its height.
fn scatter_parts(measurement: &Measurement, targets: &[TargetValues]) -> (f64, Option<(f64, f64)>) {
    let runs = measurement.runs;
    let middle = (runs as f64 - 1.0) / 2.0;
    let (mut whole, mut along, mut lever) = (0.0, 0.0, 0.0);
    for (target, values) in measurement.targets.iter().zip(targets) {
        for (deviations, mean) in [(&target.up, values.mean_up), (&target.down, values.mean_down)] {
            for (run, deviation) in deviations.iter().enumerate() {
                let (from_mean, order) = (deviation.si() - mean.si(), run as f64 - middle);
                whole += from_mean * from_mean;
                along += from_mean * order;
                lever += order * order;
            }
        }
    }
    let slope = along / lever;
    let part = along * slope;
    let left = (2 * targets.len() * (runs - 1)).saturating_sub(1);
    if runs > 1 && part > ROUNDING * whole && log_chance(whole, whole - part, left, 1) < CHANCE.ln() {
        ((whole - part).max(0.0), Some((part, slope * (runs as f64 - 1.0))))
    } else {
        (whole, None)
    }
}

type Found = Option<(f64, f64)>;

/// Constant step, growth along the travel, and the rest, as sums of squares with their weight.
fn reversal_parts(at: &[f64], reversals: &[f64], weight: f64, whole: f64) -> (Found, Found, f64) {
    let count = reversals.len();
    let middle = at.iter().sum::<f64>() / count as f64;
    let one = vec![1.0; count];
    let from_middle: Vec<f64> = at.iter().map(|at| at - middle).collect();
    let all = dot(reversals, reversals);
    if weight * all <= ROUNDING * whole {
        return (None, None, 0.0);
    }
    let constant = fit(std::slice::from_ref(&one), reversals);
    let line = fit(&[one, from_middle], reversals);
    let sure = |before: f64, after: f64, left: usize| log_chance(before, after, left, 1) < CHANCE.ln();
    let grows = count > 3 && constant.rest > ROUNDING * all && sure(constant.rest, line.rest, count - 2);
    // where the reversal grows, what is left about the line says how sure the constant part is
    let (rest, left) = if grows { (line.rest, count - 2) } else { (constant.rest, count - 1) };
    let step = all - constant.rest;
    let stands = sure(rest + step, rest, left);
    let growth = grows.then(|| (weight * (constant.rest - line.rest), line.coefficients[1]));
    let other = weight * if stands { rest } else { rest + step };
    (stands.then(|| (weight * step, constant.coefficients[0])), growth, other)
}

/// For a period shorter than two even spacings of the targets: the length of the slow wave that it looks like, m.
pub(super) fn looks_slow(measurement: &Measurement, period: &Period) -> Option<Length> {
    let spacing = measurement.span().si() / (measurement.targets.len() as f64 - 1.0);
    if !plan::even(measurement) || period.length >= 2.0 * spacing {
        return None;
    }
    let turns = spacing / period.length;
    let apart = (turns - turns.round()).abs();
    Some(Length::of_si(spacing / apart))
}
