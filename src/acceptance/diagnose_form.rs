//! The causes of the form of the mean deviation in words: slope, bow, waves, jumps, and the rest.

use super::causes::{Term, Unresolvable, looks_slow};
use super::diagnose::{Cause, Patient};
use super::evaluate::TargetValues;
use super::result::micrometres;
use super::shape::TARGETS_FOR_SEARCH;
use crate::formula::iso_230_2 as iso;
use crate::units::{Dimension, Expansion, Measure, Ratio};

/// Expansion of steel, 1/K, where no drive says what measures (usual value, common practice).
const STEEL_EXPANSION: f64 = 11.5e-6;
/// Neighbours more alike than this make a slow curve of what is left (judgement, no source).
const SLOW: f64 = 0.5;

impl Patient<'_> {
    /// What measures the position, and its expansion.
    fn element(&self) -> (&'static str, f64) {
        let expansion = self.sheet.value(Dimension::Expansion, "expansion");
        if expansion.is_nan() {
            return ("steel, as no drive says what measures", STEEL_EXPANSION);
        }
        let name = if self.sheet.value(Dimension::Ratio, "scale-error-rate").is_finite() {
            "the linear scale"
        } else if self.sheet.value(Dimension::Ratio, "teeth").is_finite() {
            "the rack"
        } else {
            "the screw"
        };
        (name, expansion)
    }

    pub(super) fn slope(&self) -> Cause {
        let looks_like = "a straight line through the mean deviations: a wrong lead, pitch or scale factor, or a measuring \
                          element that is warmer or colder than the reference";
        let term = self.parts.form.iter().find_map(|(term, part)| match term {
            Term::Slope { slope } => Some((*slope, *part)),
            _ => None,
        });
        let words = self.words;
        let Some((slope, part)) = term else {
            let few = self.count() < 3;
            let reading = if few { "two targets make a line in any case" } else { "no slope stands out of the rest" };
            return self.cause("slope", "slope along the travel", looks_like, None, !few, reading.into());
        };
        let (element, expansion) = self.element();
        let kelvin = iso::temperature_of_slope(Ratio::of_si(slope), Expansion::of_si(expansion)).si();
        let longer = if slope > 0.0 { "longer (warmer)" } else { "shorter (colder)" };
        // a drive that warms by itself grows by more than the air lets it
        let rise = self.sheet.value(Dimension::Temperature, "temperature-rise");
        let (most, of_what) = match slope > 0.0 && rise > self.swing * (1.0 + 1e-9) {
            true => (rise, format!("the {} of temperature swing and own warming together", words.kelvin(rise))),
            false => (self.swing, format!("the temperature swing of {}", words.kelvin(self.swing))),
        };
        let within = if kelvin.abs() <= most * (1.0 + 1e-9) {
            format!("that is within {of_what}, so temperature alone can be the reason")
        } else {
            format!(
                "that is more than {of_what}, so temperature alone is hardly the reason and lead, pitch or scale factor are to \
                 be looked at"
            )
        };
        let over = slope * self.whole.last.si() - slope * self.whole.first.si();
        let mut reading = format!(
            "{} or {} over the measured length: the measuring element is {longer} than the control takes it to be. With {} of \
             {element}, {} would explain it; {within}.",
            words.slope(slope),
            words.deviation(over),
            words.expansion(expansion),
            words.kelvin(kelvin.abs()),
        );
        let left = |target: &TargetValues| target.mean.si() - slope * target.position.si();
        let least = self.targets.iter().map(left).fold(f64::INFINITY, f64::min);
        let most = self.targets.iter().map(left).fold(f64::NEG_INFINITY, f64::max);
        reading.push_str(&format!(
            " Taken out, M would be {} in place of {}.",
            words.deviation(most - least),
            words.deviation(self.whole.mean_range.si())
        ));
        let allowed = self.sheet.length("mean-travel-deviation");
        if element == "the screw" && allowed.is_finite() {
            reading.push_str(&format!(" The grade of the screw allows ±{} over the travel.", words.deviation(allowed)));
        }
        self.cause("slope", "slope along the travel", looks_like, Some((part, micrometres(over))), true, reading)
    }

    pub(super) fn bow(&self) -> Cause {
        let looks_like = "a curve of one bow: tilt of the slide on a bent guide with the tool off the measuring line, or a \
                          temperature that changes along the travel";
        let term = self.parts.form.iter().find_map(|(term, part)| match term {
            Term::Bow { height } => Some((*height, *part)),
            _ => None,
        });
        let (found, reading) = match term {
            Some((height, part)) => {
                let reading = format!("{} between the middle and the ends.", self.words.deviation(height));
                (Some((part, micrometres(height))), reading)
            }
            None => (None, if self.count() < 5 { "too few targets" } else { "no bow stands out of the rest" }.into()),
        };
        self.cause("bow", "bow along the travel", looks_like, found, self.count() > 4, reading)
    }

    pub(super) fn wave(&self, which: usize) -> Cause {
        let (period, words) = (&self.periods[which], self.words);
        let title = format!("wave with the period of {}, {}", period.words, words.position(period.length));
        let looks_like = match period.id {
            "period-screw-turn" => "a sine with the lead: wobble of the screw, its bearing or its coupling",
            "period-pinion-turn" => "a sine with the turn of the pinion: run-out or pitch error of the pinion",
            "period-tooth" => "a sine with the tooth pitch: form error of the teeth",
            _ => "a pattern that repeats with each rack segment: a pitch error that all segments share",
        };
        let expected = match period.id {
            "period-screw-turn" => ("turn-variation", "variation within one turn of the grade"),
            "period-pinion-turn" => ("pinion-total-pitch-deviation", "total pitch deviation of the pinion"),
            "period-tooth" => ("pitch-step", "pitch step of two neighbouring teeth"),
            _ => ("segment-pitch-error", "pitch error of one segment"),
        };
        let allowed = self.sheet.length(expected.0);
        let allowed = match allowed.is_finite() {
            true => format!(" The budget of the drive has {} for the {}.", words.deviation(allowed), expected.1),
            false => String::new(),
        };
        let slow = looks_slow(self.measurement, period).map(|slow| {
            if slow.si() > self.measurement.span().si() {
                " At these even distances it can hide as a constant or a slope.".to_string()
            } else {
                format!(" At these even distances it looks like a slow wave of {}.", words.position(slow.si()))
            }
        });
        let slow = slow.unwrap_or_default();
        if let Some(why) = &self.parts.unresolvable[which] {
            let why = match why {
                Unresolvable::FewTargets => {
                    format!("not resolvable: {} targets are too few, 6 are needed", self.count())
                }
                Unresolvable::TooShort => "not resolvable: the measured length holds less than one period".into(),
                Unresolvable::SamePhase => {
                    "not resolvable: all targets stand at nearly the same place of the period; shift \
                                            them by random parts of it"
                        .into()
                }
                Unresolvable::LooksLike(other) => format!(
                    "not resolvable: on these targets it looks like the period of {}; shift them by random parts of it",
                    self.periods[*other].words
                ),
            };
            return self.cause(period.id, &title, looks_like, None, false, format!("{why}.{allowed}"));
        }
        let term = self.parts.form.iter().find_map(|(term, part)| match term {
            Term::Wave { period, range } if *period == which => Some((*range, *part)),
            _ => None,
        });
        match term {
            Some((range, part)) => {
                let reading = format!("{} from crest to trough.{allowed}{slow}", words.deviation(range));
                self.cause(period.id, &title, looks_like, Some((part, micrometres(range))), true, reading)
            }
            None => {
                let reading = format!("no such wave stands out of the rest.{allowed}{slow}");
                self.cause(period.id, &title, looks_like, None, true, reading)
            }
        }
    }

    pub(super) fn other_wave(&self) -> Cause {
        let title = "wave of another period";
        let looks_like = "a sine with a period that the drive of the recommendation does not have: another lead or pinion, a \
                          motor behind a reduction, a scale, or waves of the guide";
        let words = self.words;
        let term = self.parts.form.iter().find_map(|(term, part)| match term {
            Term::OtherWave { length, range } => Some((*length, *range, *part)),
            _ => None,
        });
        if let Some((length, range, part)) = term {
            let reading = format!(
                "{} from crest to trough with a period of {}; look for what turns or repeats once in it.",
                words.deviation(range),
                words.period(length)
            );
            return self.cause("period-other", title, looks_like, Some((part, micrometres(range))), true, reading);
        }
        let enough = self.count() >= TARGETS_FOR_SEARCH;
        let reading = if enough {
            "no other wave stands out of the rest".to_string()
        } else {
            format!("not resolvable: a search of any period needs {TARGETS_FOR_SEARCH} targets")
        };
        self.cause("period-other", title, looks_like, None, enough, reading)
    }

    pub(super) fn jumps(&self) -> Cause {
        let looks_like = "a sudden step between two neighbouring targets: a joint of rack segments or of a scale, or something \
                          that moved during the test";
        let words = self.words;
        let mut largest = 0.0_f64;
        let mut share = 0.0;
        let mut places = Vec::new();
        for (term, part) in &self.parts.form {
            if let Term::Jump { after, height } = term {
                let (from, to) = (self.targets[*after].position.si(), self.targets[after + 1].position.si());
                places.push(format!(
                    "{} between {} and {}",
                    words.deviation(*height),
                    words.position(from),
                    words.position(to)
                ));
                share += part;
                largest = if height.abs() > largest.abs() { *height } else { largest };
            }
        }
        let joint = self.sheet.length("joint-step");
        let expected = match joint.is_finite() {
            true => format!(" The budget of the drive has {} for a joint.", words.deviation(joint)),
            false => String::new(),
        };
        if places.is_empty() {
            let reading = format!("no step between neighbours stands out of the others.{expected}");
            return self.cause(
                "jumps",
                "jumps between neighbouring targets",
                looks_like,
                None,
                self.count() > 4,
                reading,
            );
        }
        let reading = format!("{}.{expected}", places.join("; "));
        let found = Some((share, micrometres(largest)));
        self.cause("jumps", "jumps between neighbouring targets", looks_like, found, true, reading)
    }

    pub(super) fn form_rest(&self) -> Cause {
        let looks_like = "deviations that none of the shapes above explains";
        let size = (self.parts.form_rest / self.parts.count as f64).sqrt();
        let kind = if self.parts.rest_likeness > SLOW {
            "Neighbouring targets deviate alike: a slow curve, as the pitch error that adds up along a rack or screw, tilt of the \
             slide, or drift of the temperature during the test give."
        } else {
            "It changes from target to target: short errors that these targets do not follow, or single disturbances."
        };
        let reading = format!("{} root mean square. {kind}", self.words.deviation(size));
        let found = (self.parts.form_rest > 0.0).then(|| (self.parts.form_rest, micrometres(size)));
        self.cause("form-rest", "other form of the mean deviation", looks_like, found, true, reading)
    }
}
