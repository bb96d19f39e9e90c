//! What a brief asks of an axis that may be relaxed: what it asks now, the brief with another value, and the brief without.
//!
//! Method: "without" drops what is optional. What a brief must state takes a value so easy that it no longer decides:
//! travel at most 0.3 m, speed at most 1 m/min, acceleration at most 0.1 m/s², moved mass at most 1 kg, no cutting force,
//! half a year in service, no temperature swing. Where moves are listed, speed and acceleration fall only as far as the
//! moves of an hour still fit into it. Limits: what else the brief says of the axis stays: direction, drives, bed, duty.

use super::Requirement;
use crate::brief::{Axis, Brief, Feedback, Mapping};
use crate::units::{Dimension, Frequency, Length, Measure, Time, Unit};

/// What may be relaxed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Condition {
    /// A requirement that can be turned.
    Turned(Requirement),
    /// How far the cutting force may move the tool.
    CuttingDeflection,
    /// Ripple of the position.
    Ripple,
    /// Lowest natural frequency.
    FirstMode,
    /// The error on a circle.
    Contour,
    /// The time in which it comes to rest.
    Settling,
    /// The longest time of delivery.
    LeadTime,
    /// Where the position is measured.
    Feedback,
    /// Whether a table corrects the position.
    Mapping,
    /// The families that are considered.
    Families,
}

/// How a condition is relaxed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Relaxed {
    /// By less.
    Down,
    /// By more.
    Up,
    /// Only by dropping it.
    Dropped,
}

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

impl Condition {
    /// All of them; those that one would rather give up come first.
    pub const ALL: [Condition; 20] = [
        Condition::LeadTime,
        Condition::Mapping,
        Condition::Feedback,
        Condition::Turned(Requirement::YearsInService),
        Condition::Turned(Requirement::TemperatureSwing),
        Condition::Settling,
        Condition::Contour,
        Condition::Ripple,
        Condition::CuttingDeflection,
        Condition::FirstMode,
        Condition::Turned(Requirement::Reversal),
        Condition::Turned(Requirement::Repeatability),
        Condition::Turned(Requirement::SectionAccuracy),
        Condition::Turned(Requirement::Accuracy),
        Condition::Families,
        Condition::Turned(Requirement::CuttingForce),
        Condition::Turned(Requirement::MovedMass),
        Condition::Turned(Requirement::Acceleration),
        Condition::Turned(Requirement::Travel),
        Condition::Turned(Requirement::Speed),
    ];

    /// Those that the brief states for an axis.
    pub fn stated(brief: &Brief, axis: usize) -> Vec<Condition> {
        Condition::ALL.into_iter().filter(|condition| condition.is_stated(brief, axis)).collect()
    }

    /// The key in the brief.
    pub fn key(self) -> &'static str {
        match self {
            Condition::Turned(requirement) => requirement.key(),
            Condition::CuttingDeflection => "cutting-deflection",
            Condition::Ripple => "ripple",
            Condition::FirstMode => "first-mode",
            Condition::Contour => "contour",
            Condition::Settling => "settling",
            Condition::LeadTime => "lead-time",
            Condition::Feedback => "feedback",
            Condition::Mapping => "mapping",
            Condition::Families => "families",
        }
    }

    /// The unit in which it is told; none for plain numbers and words.
    pub fn unit(self) -> Option<&'static Unit> {
        let (dimension, name) = match self {
            Condition::Turned(requirement) => return requirement.unit().map(|(_, unit)| unit),
            Condition::CuttingDeflection | Condition::Ripple | Condition::Contour => (Dimension::Length, "mm"),
            Condition::FirstMode => (Dimension::Frequency, "Hz"),
            Condition::Settling => (Dimension::Time, "ms"),
            Condition::LeadTime => (Dimension::Time, "weeks"),
            Condition::Feedback | Condition::Mapping | Condition::Families => return None,
        };
        dimension.units().find(|unit| unit.name == name)
    }

    /// How it is relaxed.
    pub fn relaxed(self) -> Relaxed {
        match self {
            Condition::Turned(requirement) => match requirement {
                Requirement::Travel
                | Requirement::Speed
                | Requirement::Acceleration
                | Requirement::MovedMass
                | Requirement::CuttingForce
                | Requirement::YearsInService
                | Requirement::TemperatureSwing => Relaxed::Down,
                Requirement::Accuracy
                | Requirement::SectionAccuracy
                | Requirement::Repeatability
                | Requirement::Reversal
                | Requirement::Purchase => Relaxed::Up,
            },
            Condition::FirstMode => Relaxed::Down,
            Condition::CuttingDeflection
            | Condition::Ripple
            | Condition::Contour
            | Condition::Settling
            | Condition::LeadTime => Relaxed::Up,
            Condition::Feedback | Condition::Mapping | Condition::Families => Relaxed::Dropped,
        }
    }

    /// What the brief asks, in SI units; none for words and where it asks nothing.
    pub fn of(self, brief: &Brief, axis: usize) -> Option<f64> {
        let wanted = &brief.axes[axis];
        match self {
            Condition::Turned(requirement) => requirement.of(brief, axis),
            Condition::CuttingDeflection => wanted.cutting_deflection.map(Measure::si),
            Condition::Ripple => wanted.ripple.value.map(Measure::si),
            Condition::FirstMode => wanted.first_mode.map(Measure::si),
            Condition::Contour => wanted.contour.map(|contour| contour.error.si()),
            Condition::Settling => wanted.settling.map(|settling| settling.time.si()),
            Condition::LeadTime => brief.limits.lead_time.map(Measure::si),
            Condition::Feedback | Condition::Mapping | Condition::Families => None,
        }
    }

    fn is_stated(self, brief: &Brief, axis: usize) -> bool {
        let wanted = &brief.axes[axis];
        match self {
            Condition::Feedback => wanted.feedback != Feedback::Any,
            Condition::Mapping => wanted.mapping != Mapping::Any,
            Condition::Families => wanted.families.is_some(),
            Condition::Turned(_)
            | Condition::CuttingDeflection
            | Condition::Ripple
            | Condition::FirstMode
            | Condition::Contour
            | Condition::Settling
            | Condition::LeadTime => self.of(brief, axis).is_some(),
        }
    }

    /// The brief with this value, in SI units, in place of what it asks; unchanged for words.
    pub fn with(self, brief: &Brief, axis: usize, value: f64) -> Brief {
        if let Condition::Turned(requirement) = self {
            return requirement.with(brief, axis, value);
        }
        let mut changed = brief.clone();
        let wanted = &mut changed.axes[axis];
        match self {
            Condition::CuttingDeflection => wanted.cutting_deflection = Some(Length::of_si(value)),
            Condition::Ripple => wanted.ripple.value = Some(Length::of_si(value)),
            Condition::FirstMode => wanted.first_mode = Some(Frequency::of_si(value)),
            Condition::Contour => {
                if let Some(contour) = &mut wanted.contour {
                    contour.error = Length::of_si(value);
                }
            }
            Condition::Settling => {
                if let Some(settling) = &mut wanted.settling {
                    settling.time = Time::of_si(value);
                }
            }
            Condition::LeadTime => changed.limits.lead_time = Some(Time::of_si(value)),
            Condition::Turned(_) | Condition::Feedback | Condition::Mapping | Condition::Families => {}
        }
        changed
    }

    /// The brief without it.
    pub fn without(self, brief: &Brief, axis: usize) -> Brief {
        if let Some(easy) = self.easiest(brief, axis) {
            return self.with(brief, axis, easy);
        }
        let mut changed = brief.clone();
        let wanted = &mut changed.axes[axis];
        match self {
            Condition::Turned(Requirement::Accuracy) => wanted.accuracy = None,
            Condition::Turned(Requirement::SectionAccuracy) => wanted.section_accuracy = None,
            Condition::Turned(Requirement::Repeatability) => wanted.repeatability = None,
            Condition::Turned(Requirement::Reversal) => wanted.reversal = None,
            Condition::Turned(Requirement::Purchase) => changed.limits.purchase = None,
            Condition::Turned(
                Requirement::Travel
                | Requirement::Speed
                | Requirement::Acceleration
                | Requirement::MovedMass
                | Requirement::CuttingForce
                | Requirement::YearsInService
                | Requirement::TemperatureSwing,
            ) => {}
            Condition::CuttingDeflection => wanted.cutting_deflection = None,
            Condition::Ripple => wanted.ripple.value = None,
            Condition::FirstMode => wanted.first_mode = None,
            Condition::Contour => wanted.contour = None,
            Condition::Settling => wanted.settling = None,
            Condition::LeadTime => changed.limits.lead_time = None,
            Condition::Feedback => wanted.feedback = Feedback::Any,
            Condition::Mapping => wanted.mapping = Mapping::Any,
            Condition::Families => wanted.families = None,
        }
        changed
    }

    /// The value that stands for none at all, of what a brief must state; none for what can be dropped.
    pub fn easiest(self, brief: &Brief, axis: usize) -> Option<f64> {
        let Condition::Turned(requirement) = self else { return None };
        let easy = match requirement {
            Requirement::Travel => 0.3,
            Requirement::Speed => 1.0 / 60.0,
            Requirement::Acceleration => 0.1,
            Requirement::MovedMass => 1.0,
            Requirement::CuttingForce | Requirement::TemperatureSwing => 0.0,
            Requirement::YearsInService => 0.5,
            Requirement::Accuracy
            | Requirement::SectionAccuracy
            | Requirement::Repeatability
            | Requirement::Reversal
            | Requirement::Purchase => return None,
        };
        let now = self.of(brief, axis)?;
        if easy >= now {
            return Some(now);
        }
        if fits(&self.with(brief, axis, easy).axes[axis]) {
            return Some(easy);
        }
        // the slowest at which the moves still fit into their hour
        let (mut slow, mut fast) = (easy, now);
        for _ in 0..40 {
            let middle = 0.5 * (slow + fast);
            if fits(&self.with(brief, axis, middle).axes[axis]) { fast = middle } else { slow = middle }
        }
        Some(fast)
    }
}

/// Whether the moves of an hour take no longer than an hour.
pub fn fits(axis: &Axis) -> bool {
    let takes = |line: &crate::brief::Move| line.count_per_hour * (line.profile().time() + line.dwell.si());
    axis.moves.iter().map(takes).sum::<f64>() <= HOUR * (1.0 + 1e-9)
}
