//! Where an axis is measured: the targets of an axis test by ISO 230-2.
//!
//! Method: targets as far apart as the plan allows, each shifted by a part of the period of the drive, so that an error
//! that repeats cannot hide between them. The parts follow the golden section in place of chance: they fill the period
//! evenly and are the same in every run. Limits: plan of ISO 230-2 from memory; the ends of the travel are met within the shift.

use super::iso_230_2::{GREATEST_SPACING, LEAST_TARGETS, LONGEST_WHOLE};
use crate::units::{Length, Measure};

/// Whether a travel is too long for R and A of the whole.
pub fn is_long(travel: Length) -> bool {
    travel.si() > LONGEST_WHOLE * (1.0 + 1e-9)
}

/// The greatest distance of targets that the plan has on a travel, m. Check: 0.7 m → 140 mm; 1.5 m → 200 mm; 6 m → 250 mm.
pub fn spacing(travel: Length) -> f64 {
    if is_long(travel) {
        return GREATEST_SPACING;
    }
    let by_metre = 1.0 / LEAST_TARGETS;
    let by_count = travel.si() / LEAST_TARGETS;
    if by_count < by_metre { by_count } else { by_metre }
}

/// Targets from `start` on over a stretch, m, in tenths of a millimetre; `period` is that of the drive, one turn of screw or pinion.
///
/// Check: a stretch of 2 m has 11 targets, 200 mm apart in the mean, none shifted by more than a third of that.
pub fn targets(start: Length, stretch: Length, spacing: f64, period: Length) -> Vec<f64> {
    let (start, stretch) = (start.si(), stretch.si());
    let gaps = (stretch / spacing - 1e-9).ceil();
    let step = stretch / gaps;
    let most = step / 3.0;
    let shift = if period.si() < most { period.si() } else { most };
    let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
    let tenths = |value: f64| (value * 1e4).round() / 1e4;
    let last = gaps as usize;
    (0..=last)
        .map(|index| {
            let part = (index as f64 * golden).fract();
            // at the ends inwards only
            let part = match index {
                0 => part.abs(),
                _ if index == last => -part,
                _ => 2.0 * part - 1.0,
            };
            tenths(start + index as f64 * step + part * shift)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_plan_is_kept_and_no_two_gaps_are_alike() {
        for (travel, period) in [(0.1, 0.005), (0.7, 0.02), (2.0, 0.04), (6.0, 0.133), (11.0, 0.12)] {
            let found = targets(
                Length::of_si(0.0),
                Length::of_si(travel),
                spacing(Length::of_si(travel)),
                Length::of_si(period),
            );
            assert!(
                found.len() as f64 >= 5.0_f64.max((if travel > 2.0 { 4.0 } else { 5.0 }) * travel),
                "{travel}: {found:?}"
            );
            assert!(found.windows(2).all(|pair| pair[1] > pair[0]), "{travel}: {found:?}");
            assert!(found[0] >= 0.0 && found[found.len() - 1] <= travel);
            let gaps: Vec<f64> = found.windows(2).map(|pair| pair[1] - pair[0]).collect();
            let mean = gaps.iter().sum::<f64>() / gaps.len() as f64;
            assert!(gaps.iter().any(|gap| (gap - mean).abs() > 0.01 * mean), "{travel}: even gaps");
        }
    }
}
