//! The causes in words, with their numbers and what the drive was expected to show.
//!
//! Method: `causes` takes the variance apart; here each part gets its share, its size and its reading, the largest
//! share first, and the term that is likeliest behind a misfit is named. Limits: a reading names what such a
//! deviation usually comes from; it proves nothing.

use super::causes::{Parts, Period};
use super::evaluate::{AxisValues, TargetValues};
use super::measured::Measurement;
use super::predict::{Worksheet, typical_scatter};
use super::result::{CauseRecord, DiagnosisRecord, micrometres};
use super::words::{Words, percent};
use crate::record::Amount;
use crate::units::{Dimension, Measure};

/// What the periods of a drive are, from its worksheet.
pub(super) fn periods(sheet: Worksheet<'_>) -> Vec<Period> {
    let turn = sheet.length("travel-per-turn");
    let teeth = sheet.value(Dimension::Ratio, "teeth");
    let rack = teeth.is_finite();
    let all = [
        if rack {
            Period { id: "period-pinion-turn", words: "one turn of the pinion", length: turn }
        } else {
            Period { id: "period-screw-turn", words: "one turn of the screw or nut, its lead", length: turn }
        },
        Period { id: "period-tooth", words: "one tooth", length: turn / teeth },
        Period { id: "period-rack-segment", words: "one rack segment", length: sheet.length("segment-length") },
    ];
    all.into_iter().filter(|period| period.length.is_finite() && period.length > 0.0).collect()
}

/// What a diagnosis reads.
pub(super) struct Patient<'a> {
    pub measurement: &'a Measurement,
    pub targets: &'a [TargetValues],
    pub whole: &'a AxisValues,
    pub parts: &'a Parts,
    pub periods: &'a [Period],
    pub sheet: Worksheet<'a>,
    /// How far the temperature may stray, K.
    pub swing: f64,
    pub words: Words,
}

/// A cause while it is put into words.
pub(super) struct Cause {
    id: String,
    title: String,
    looks_like: &'static str,
    /// Share and size, where it was found.
    found: Option<(f64, Amount)>,
    resolvable: bool,
    reading: String,
}

impl Patient<'_> {
    /// The causes, largest share first.
    pub fn diagnosis(&self) -> DiagnosisRecord {
        let mut causes = vec![self.slope(), self.bow()];
        causes.extend((0..self.periods.len()).map(|period| self.wave(period)));
        causes.extend([
            self.other_wave(),
            self.jumps(),
            self.form_rest(),
            self.step(),
            self.growth(),
            self.reversal_rest(),
        ]);
        causes.extend([self.drift(), self.scatter()]);
        // a stable sort keeps the order above among equals
        causes.sort_by(|a, b| {
            let key = |cause: &Cause| match (&cause.found, cause.resolvable) {
                (Some((share, _)), _) => *share,
                (None, true) => -1.0,
                (None, false) => -2.0,
            };
            key(b).total_cmp(&key(a))
        });
        let causes = causes.into_iter().map(|cause| CauseRecord {
            id: cause.id,
            title: cause.title,
            state: match (&cause.found, cause.resolvable) {
                (Some(_), _) => "found",
                (None, true) => "not-found",
                (None, false) => "not-resolvable",
            }
            .into(),
            share: cause.found.as_ref().map(|(share, _)| *share),
            size: cause.found.map(|(_, size)| size),
            looks_like: cause.looks_like.into(),
            reading: cause.reading,
        });
        DiagnosisRecord {
            spread: micrometres((self.parts.whole / (self.parts.count as f64 - 1.0)).sqrt()),
            causes: causes.collect(),
            likeliest: None,
        }
    }

    fn share(&self, squares: f64) -> f64 {
        squares / self.parts.whole
    }

    /// Number of targets.
    pub(super) fn count(&self) -> usize {
        self.targets.len()
    }

    fn step(&self) -> Cause {
        let looks_like =
            "up and down are apart by the same amount everywhere: play, or friction against the give of the drive";
        let words = self.words;
        let (play, lost) = (self.sheet.length("play"), self.sheet.length("lost-motion"));
        let scale = self.sheet.value(Dimension::Ratio, "scale-error-rate").is_finite();
        let expected = match (lost.is_finite(), scale) {
            (false, _) => String::new(),
            (true, true) => format!(
                " The budget of the drive has {} of lost motion between scale and slide; play lies inside the loop of the scale.",
                words.deviation(lost)
            ),
            (true, false) => format!(
                " The budget of the drive has {} of play and {} of lost motion by friction.",
                words.deviation(play),
                words.deviation(lost)
            ),
        };
        let title = "constant step at reversal";
        match self.parts.step {
            Some((part, size)) => {
                let way = if size < 0.0 {
                    "the slide stops short of the target from both sides, as play and friction do; the two are not told apart \
                     by this test"
                } else {
                    "the slide goes beyond the target from both sides, as a compensation of play that is set too large does, or \
                     exchanged directions in the file"
                };
                let reading = format!("{} in the mean: {way}.{expected}", words.deviation(size));
                self.cause("reversal-step", title, looks_like, Some((part, micrometres(size))), true, reading)
            }
            None => {
                let reading = format!("no constant step stands out of its changes.{expected}");
                self.cause("reversal-step", title, looks_like, None, true, reading)
            }
        }
    }

    fn growth(&self) -> Cause {
        let looks_like = "up and down move apart along the travel: wind-up of a screw or shaft, which grows with the distance \
                          from its held end";
        let title = "reversal that grows along the travel";
        match self.parts.growth {
            Some((part, slope)) => {
                let over = slope * self.measurement.span().si();
                let reading =
                    format!("{}, {} over the measured length.", self.words.slope(slope), self.words.deviation(over));
                self.cause("reversal-growth", title, looks_like, Some((part, micrometres(over))), true, reading)
            }
            None => {
                let few = self.count() < 4;
                let reading = if few { "too few targets" } else { "the reversal does not grow along the travel" };
                self.cause("reversal-growth", title, looks_like, None, !few, reading.into())
            }
        }
    }

    fn reversal_rest(&self) -> Cause {
        let looks_like = "a reversal that changes from place to place: play that varies with the run-out of a pinion, or friction \
                          of guides and covers";
        let part = self.parts.reversal_rest;
        let weight = 0.5 * self.measurement.runs as f64 * self.count() as f64;
        let size = (part / weight).sqrt();
        let reading = format!("{} root mean square.", self.words.deviation(size));
        let found = (part > 0.0).then(|| (part, micrometres(size)));
        self.cause("reversal-rest", "reversal that changes otherwise", looks_like, found, true, reading)
    }

    fn drift(&self) -> Cause {
        let looks_like = "all targets move the same way from run to run: warming up, or a reference that drifts";
        let title = "drift from run to run";
        match self.parts.drift {
            Some((part, height)) => {
                let reading = format!("{} from the first to the last run.", self.words.deviation(height));
                self.cause("drift", title, looks_like, Some((part, micrometres(height))), true, reading)
            }
            None if self.measurement.runs < 2 => {
                self.cause("drift", title, looks_like, None, false, "not resolvable: there is one run".into())
            }
            None => self.cause("drift", title, looks_like, None, true, "no drift stands out of the scatter".into()),
        }
    }

    fn scatter(&self) -> Cause {
        let looks_like =
            "the runs at one target differ without order: friction that varies, measuring step, vibration, air";
        let title = "scatter of the runs";
        if self.measurement.runs < 2 {
            return self.cause("scatter", title, looks_like, None, false, "not resolvable: there is one run".into());
        }
        let size = typical_scatter(self.targets);
        let expected = self.sheet.length("scatter");
        let expected = match expected.is_finite() {
            true => format!(" The budget of the drive has {}.", self.words.deviation(expected)),
            false => String::new(),
        };
        let dominates = if self.share(self.parts.scatter) > 0.5 {
            " It dominates: what is worked out of the means is uncertain by it."
        } else {
            ""
        };
        let reading = format!(
            "{} standard deviation, root mean square over the targets.{dominates}{expected}",
            self.words.deviation(size)
        );
        let found = (self.parts.scatter > 0.0).then(|| (self.parts.scatter, micrometres(size)));
        self.cause("scatter", title, looks_like, found, true, reading)
    }

    /// A cause with its share.
    pub(super) fn cause(
        &self,
        id: &str,
        title: &str,
        looks_like: &'static str,
        found: Option<(f64, Amount)>,
        resolvable: bool,
        reading: String,
    ) -> Cause {
        let found = found.map(|(squares, size)| (self.share(squares), size));
        Cause { id: id.into(), title: title.into(), looks_like, found, resolvable, reading }
    }
}

/// A share as the sentence of the likeliest cause has it.
pub(super) fn share_words(share: f64) -> String {
    format!("{} of the variance", percent(share))
}
