//! What a reader must know of the data: departures from the usual plan of the test, and doubtful values.
//!
//! Method: the plan of ISO 230-2 from memory: up to 2 m of travel 5 targets a metre and at least 5, 5 runs in each
//! direction; above 2 m a mean spacing of 250 mm at most and one run, and 5 runs on a section of 2 m where R and A are
//! wanted. Limits: departures are told, never refused; whether a target hits every segment of a scale is not seen.

use super::causes::{Period, Unresolvable};
use super::evaluate::Section;
use super::measured::{Measurement, Stretch};
use super::result::Remark;
use super::words::{Words, several};
use crate::formula::{iso_230_2 as iso, test_plan};
use crate::units::Measure;

/// A deviation above this is hardly one, m: a wrong unit, or positions in place of deviations (judgement, no source).
const DOUBTFUL: f64 = 1e-3;
/// Spacings that differ by less than this part are even (judgement, no source).
const EVEN: f64 = 0.01;
/// A gap above so many mean spacings is told (judgement, no source).
const WIDE: f64 = 2.0;

/// Whether the travel is too long for R and A of the whole.
pub(super) fn is_long(stretch: &Stretch<'_>) -> bool {
    test_plan::is_long(stretch.travel)
}

/// The greatest distance of targets that the plan has, m.
fn planned_spacing(stretch: &Stretch<'_>) -> f64 {
    test_plan::spacing(stretch.travel)
}

/// Whether neighbouring targets have the same distance everywhere.
pub(super) fn even(measurement: &Measurement) -> bool {
    let gaps = measurement.gaps();
    let mean = measurement.span().si() / gaps.len() as f64;
    gaps.iter().all(|gap| (gap - mean).abs() <= EVEN * mean)
}

/// How much of the travel before the first and behind the last target was not measured, m.
pub(super) fn left_out(measurement: &Measurement, stretch: &Stretch<'_>) -> [f64; 2] {
    let first = measurement.targets.first().map_or(f64::NAN, |target| target.position.si());
    let last = measurement.targets.last().map_or(f64::NAN, |target| target.position.si());
    [first, stretch.travel.si() - last]
}

/// Whether the targets reach both ends of the travel, as near as one spacing of the plan.
pub(super) fn covers(measurement: &Measurement, stretch: &Stretch<'_>) -> bool {
    left_out(measurement, stretch).iter().all(|end| *end <= planned_spacing(stretch) * (1.0 + 1e-9))
}

/// Everything worth telling of the data, in order.
pub(super) fn remarks(
    measurement: &Measurement,
    stretch: &Stretch<'_>,
    sections: &[Section],
    uncertainty_stated: bool,
    words: Words,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    let mut tell = |id: &str, text: String| remarks.push(Remark { id: id.into(), text });
    let count = measurement.targets.len();
    let travel = stretch.travel.si();
    let spacing = measurement.span().si() / (count as f64 - 1.0);
    let long = is_long(stretch);
    if long {
        tell(
            "long-axis",
            format!(
                "The travel is {}, longer than 2 m. ISO 230-2 states R and A up to 2 m only, so E, M and B are given over \
                 the full length, and R and A on the worst stretch of at most 2 m between two targets.",
                words.position(travel)
            ),
        );
    }
    if !uncertainty_stated {
        tell(
            "no-uncertainty",
            "No uncertainty of the measurement was stated, so limits are held without a guard band. A pass close to a \
             limit is not shown then; state the uncertainty by --uncertainty."
                .into(),
        );
    }
    let needed = (iso::LEAST_TARGETS * travel).ceil();
    let needed = if needed < iso::LEAST_TARGETS { iso::LEAST_TARGETS } else { needed };
    if !long && (count as f64) < needed {
        tell(
            "few-targets",
            format!("{}; the plan asks for 5 a metre and at least 5, here {needed}.", several(count, "target")),
        );
    }
    if long && spacing > iso::GREATEST_SPACING * (1.0 + 1e-9) {
        tell(
            "wide-spacing",
            format!(
                "The targets stand {} apart in the mean; above 2 m of travel the plan asks for {} or less.",
                words.position(spacing),
                words.position(iso::GREATEST_SPACING)
            ),
        );
    }
    for (end, name) in left_out(measurement, stretch).iter().zip(["first", "last"]) {
        if *end > planned_spacing(stretch) * (1.0 + 1e-9) {
            tell(
                &format!("{name}-end-left-out"),
                format!(
                    "Beyond the {name} target {} of the travel was not measured. What was measured can miss a limit for the \
                     whole, but cannot show that it is kept.",
                    words.position(*end)
                ),
            );
        }
    }
    let widest = measurement.gaps().into_iter().fold(0.0_f64, f64::max);
    if widest > WIDE * spacing {
        tell(
            "wide-gap",
            format!(
                "The widest gap between targets is {}, the mean {}.",
                words.position(widest),
                words.position(spacing)
            ),
        );
    }
    runs(measurement, long, &mut tell);
    if even(measurement) && count > 2 {
        tell(
            "even-targets",
            format!(
                "The targets stand at even distances of {}. An error that repeats within twice that distance can hide or look \
                 like a slow wave; the plan shifts each target by a random part of such a period.",
                words.position(spacing)
            ),
        );
    }
    let fewest = sections.iter().map(|section| section.values.targets).min();
    let wanted = (iso::LEAST_TARGETS * iso::LONGEST_WHOLE) as usize;
    if let (true, true, Some(fewest)) = (long, measurement.runs > 1, fewest)
        && fewest < wanted
    {
        tell(
            "thin-section",
            format!("A section of 2 m holds {}; the plan asks for {wanted} on 2 m.", several(fewest, "target")),
        );
    }
    let all = measurement.targets.iter().flat_map(|target| target.up.iter().chain(&target.down));
    let largest = all.map(|deviation| deviation.si().abs()).fold(0.0_f64, f64::max);
    if largest > DOUBTFUL {
        tell(
            "doubtful-deviation",
            format!(
                "The largest deviation is {}. Check the unit of the column, and that it holds actual minus target.",
                words.position(largest)
            ),
        );
    }
    remarks
}

/// What the targets cannot show of the periods that the drive has.
pub(super) fn hidden_periods(periods: &[Period], unresolvable: &[Option<Unresolvable>], words: Words) -> Vec<Remark> {
    let remark = |(which, (period, why)): (usize, (&Period, &Option<Unresolvable>))| {
        let what = format!("{} ({})", period.words, words.position(period.length));
        let text = match why.as_ref()? {
            Unresolvable::SamePhase => {
                format!(
                    "All targets stand at nearly the same place of {what}: an error that repeats with it cannot be seen."
                )
            }
            // of two that look alike one remark is enough
            Unresolvable::LooksLike(other) if *other < which => return None,
            Unresolvable::LooksLike(other) => format!(
                "On these targets an error that repeats with {what} looks like one of {}; the two cannot be told apart.",
                periods[*other].words
            ),
            Unresolvable::FewTargets | Unresolvable::TooShort => return None,
        };
        Some(Remark { id: format!("hidden-{}", period.id), text })
    };
    periods.iter().zip(unresolvable).enumerate().filter_map(remark).collect()
}

fn runs(measurement: &Measurement, long: bool, tell: &mut impl FnMut(&str, String)) {
    match measurement.runs {
        1 => tell(
            "one-run",
            format!(
                "There is one run in each direction, so there is no scatter, and no R and A.{}",
                if long {
                    " The plan has one run above 2 m of travel; for R and A a section of 2 m is run 5 times."
                } else {
                    ""
                }
            ),
        ),
        few if few < iso::RUNS => {
            let uncertain = 100.0 / (2.0 * (few as f64 - 1.0)).sqrt();
            tell(
                "few-runs",
                format!(
                    "There are {few} runs in each direction, the plan asks for {}; the scatter at one target is known to some \
                     {uncertain:.0} % only.",
                    iso::RUNS
                ),
            );
        }
        _ => {}
    }
}
