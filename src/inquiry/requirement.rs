//! The requirements of a brief that can be turned: what each is now, and the brief with another value in its place.
//!
//! Method: what the brief ties to a requirement follows it, so that the brief stays one that could be written: moves at
//! full speed keep going at full speed, strokes stay within the travel, the share of work with the full cutting force
//! keeps it. Limits: what an assumption took from another value when the brief was read, such as the jerk, stays as it was.

use crate::brief::{Axis, Brief};
use crate::units::{Acceleration, Dimension, Force, Length, Mass, Measure, Money, TemperatureInterval, Unit, Velocity};

/// A requirement that can be turned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Requirement {
    /// Usable travel.
    Travel,
    /// Highest speed.
    Speed,
    /// Acceleration.
    Acceleration,
    /// Moved mass.
    MovedMass,
    /// Largest cutting force.
    CuttingForce,
    /// Positioning over the full travel.
    Accuracy,
    /// Positioning on any 2 m section.
    SectionAccuracy,
    /// Repeatability.
    Repeatability,
    /// Reversal value.
    Reversal,
    /// Years in service, of the whole machine.
    YearsInService,
    /// Temperature swing, of the whole machine.
    TemperatureSwing,
    /// Limit of the purchase price, of the whole machine.
    Purchase,
}

impl Requirement {
    /// All of them, in the order in which they are told.
    pub const ALL: [Requirement; 12] = [
        Requirement::Travel,
        Requirement::Speed,
        Requirement::Acceleration,
        Requirement::MovedMass,
        Requirement::CuttingForce,
        Requirement::Accuracy,
        Requirement::SectionAccuracy,
        Requirement::Repeatability,
        Requirement::Reversal,
        Requirement::YearsInService,
        Requirement::TemperatureSwing,
        Requirement::Purchase,
    ];

    /// The key in the brief.
    pub fn key(self) -> &'static str {
        match self {
            Requirement::Travel => "travel",
            Requirement::Speed => "speed",
            Requirement::Acceleration => "acceleration",
            Requirement::MovedMass => "moved-mass",
            Requirement::CuttingForce => "cutting-force",
            Requirement::Accuracy => "accuracy",
            Requirement::SectionAccuracy => "section-accuracy",
            Requirement::Repeatability => "repeatability",
            Requirement::Reversal => "reversal",
            Requirement::YearsInService => "years-in-service",
            Requirement::TemperatureSwing => "temperature-swing",
            Requirement::Purchase => "purchase",
        }
    }

    /// The requirement with this key.
    pub fn named(key: &str) -> Option<Requirement> {
        Requirement::ALL.into_iter().find(|requirement| requirement.key() == key)
    }

    /// Its dimension, and the unit in which it is told; none for plain numbers and money.
    pub fn unit(self) -> Option<(Dimension, &'static Unit)> {
        let (dimension, name) = match self {
            Requirement::Travel => (Dimension::Length, "m"),
            Requirement::Speed => (Dimension::Velocity, "m/min"),
            Requirement::Acceleration => (Dimension::Acceleration, "m/s²"),
            Requirement::MovedMass => (Dimension::Mass, "kg"),
            Requirement::CuttingForce => (Dimension::Force, "N"),
            Requirement::Accuracy
            | Requirement::SectionAccuracy
            | Requirement::Repeatability
            | Requirement::Reversal => (Dimension::Length, "mm"),
            Requirement::TemperatureSwing => (Dimension::Temperature, "K"),
            Requirement::YearsInService | Requirement::Purchase => return None,
        };
        dimension.units().find(|unit| unit.name == name).map(|unit| (dimension, unit))
    }

    /// Whether it only limits what drives reach, and no figure of a drive hangs on it.
    pub fn only_a_limit(self) -> bool {
        match self {
            Requirement::Accuracy
            | Requirement::SectionAccuracy
            | Requirement::Repeatability
            | Requirement::Reversal
            | Requirement::Purchase => true,
            Requirement::Travel
            | Requirement::Speed
            | Requirement::Acceleration
            | Requirement::MovedMass
            | Requirement::CuttingForce
            | Requirement::YearsInService
            | Requirement::TemperatureSwing => false,
        }
    }

    /// The word after a plain number; nothing after an amount of money.
    pub fn plain_unit(self) -> &'static str {
        if self == Requirement::YearsInService { "years" } else { "" }
    }

    /// What the brief asks, in SI units; none where it does not state it.
    pub fn of(self, brief: &Brief, axis: usize) -> Option<f64> {
        let wanted = &brief.axes[axis];
        let length = |length: Option<Length>| length.map(Measure::si);
        match self {
            Requirement::Travel => Some(wanted.travel.si()),
            Requirement::Speed => Some(wanted.speed.si()),
            Requirement::Acceleration => Some(wanted.acceleration.si()),
            Requirement::MovedMass => Some(wanted.moved_mass.si()),
            Requirement::CuttingForce => Some(wanted.cutting_force.value.si()).filter(|&force| force > 0.0),
            Requirement::Accuracy => length(wanted.accuracy),
            Requirement::SectionAccuracy => length(wanted.section_accuracy),
            Requirement::Repeatability => length(wanted.repeatability),
            Requirement::Reversal => length(wanted.reversal),
            Requirement::YearsInService => Some(brief.years_in_service.value),
            Requirement::TemperatureSwing => Some(brief.temperature_swing.value.si()).filter(|&swing| swing > 0.0),
            Requirement::Purchase => brief.limits.purchase.map(|limit| limit.0),
        }
    }

    /// The brief with this value, in SI units, in place of what it asks of the axis.
    pub fn with(self, brief: &Brief, axis: usize, value: f64) -> Brief {
        let mut changed = brief.clone();
        let wanted = &mut changed.axes[axis];
        match self {
            Requirement::Travel => travel(wanted, value),
            Requirement::Speed => speed(wanted, value),
            Requirement::Acceleration => acceleration(wanted, value),
            Requirement::MovedMass => wanted.moved_mass = Mass::of_si(value),
            Requirement::CuttingForce => force(wanted, value),
            Requirement::Accuracy => wanted.accuracy = Some(Length::of_si(value)),
            Requirement::SectionAccuracy => wanted.section_accuracy = Some(Length::of_si(value)),
            Requirement::Repeatability => wanted.repeatability = Some(Length::of_si(value)),
            Requirement::Reversal => wanted.reversal = Some(Length::of_si(value)),
            Requirement::YearsInService => changed.years_in_service.value = value,
            Requirement::TemperatureSwing => changed.temperature_swing.value = TemperatureInterval::of_si(value),
            Requirement::Purchase => changed.limits.purchase = Some(Money(value)),
        }
        changed
    }
}

fn lesser(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// Strokes and distances stay within the travel; those over all of it follow it.
fn travel(axis: &mut Axis, value: f64) {
    let before = axis.travel.si();
    let follow = |length: f64| {
        if length.abs() >= before { value.copysign(length) } else { lesser(length.abs(), value).copysign(length) }
    };
    for line in &mut axis.duty {
        line.stroke = line.stroke.map(|stroke| Length::of_si(follow(stroke.si())));
    }
    for line in &mut axis.moves {
        line.distance = Length::of_si(follow(line.distance.si()));
    }
    axis.travel = Length::of_si(value);
}

/// Moves at full speed follow it; slower ones stay as long as they are slower.
fn speed(axis: &mut Axis, value: f64) {
    let before = axis.speed.si();
    let follow =
        |speed: Velocity| Velocity::of_si(if speed.si() >= before { value } else { lesser(speed.si(), value) });
    for line in &mut axis.duty {
        line.speed = line.speed.map(follow);
    }
    for line in &mut axis.moves {
        line.speed = follow(line.speed);
    }
    axis.cutting_speed.value = follow(axis.cutting_speed.value);
    axis.speed = Velocity::of_si(value);
}

fn acceleration(axis: &mut Axis, value: f64) {
    let before = axis.acceleration.si();
    for line in &mut axis.moves {
        let own = line.acceleration.si();
        line.acceleration = Acceleration::of_si(if own >= before { value } else { lesser(own, value) });
    }
    axis.acceleration = Acceleration::of_si(value);
}

fn force(axis: &mut Axis, value: f64) {
    let before = axis.cutting_force.value.si();
    let follow = |force: Force| Force::of_si(if force.si() >= before { value } else { lesser(force.si(), value) });
    for line in &mut axis.duty {
        line.force = follow(line.force);
    }
    for line in &mut axis.moves {
        line.force = follow(line.force);
    }
    axis.cutting_force.value = Force::of_si(value);
}
