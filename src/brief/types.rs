//! What a brief holds once it is read; every quantity typed, every default marked.

use super::along::Along;
use super::bed::Bed;
use super::doubt::Doubt;
use super::measuring::{Feedback, Mapping, Tilt};
use super::servo::{Contour, Settling};
use super::uncertainty::Uncertainty;
use crate::formula::s_curve::Profile;
use crate::units::{
    Acceleration, Angle, CelsiusTemperature, Force, Frequency, Jerk, Length, LinearMassDensity, Mass, Measure, Money,
    Power, Ratio, TemperatureInterval, Time, TorsionalStiffness, Velocity, Voltage,
};

/// A value together with who set it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry<T> {
    /// The value to use.
    pub value: T,
    /// Whether the brief states it; otherwise it is a default and listed as an assumption where it is used.
    pub stated: bool,
}

/// A default that was used because the brief does not state the value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assumption {
    /// The key it stands for, such as `axes.long.guide-friction`.
    pub key: String,
    /// The value, without unit.
    pub value: String,
    /// The unit; empty for words and plain numbers.
    pub unit: String,
    /// Why this value, and how far to trust it.
    pub source: String,
}

/// What is wanted of a machine.
#[derive(Debug, Clone, PartialEq)]
pub struct Brief {
    /// The file name, without folders.
    pub name: String,
    /// The text of the file, as it was read.
    pub text: String,
    /// What the machine is called.
    pub machine: String,
    /// The currency of all amounts.
    pub currency: Entry<String>,
    /// Planned years in service.
    pub years_in_service: Entry<f64>,
    /// Working hours a year.
    pub hours_per_year: Entry<f64>,
    /// Yearly rate by which later costs count less.
    pub discount_rate: Entry<Ratio>,
    /// Price of a kilowatt-hour.
    pub energy_price: Entry<Money>,
    /// What an hour costs in which the machine stands for an exchange.
    pub downtime_cost: Entry<Money>,
    /// What surrounds the machine, in the customer's words.
    pub environment: Vec<String>,
    /// How far the temperature strays to either side of that of the calibration.
    pub temperature_swing: Entry<TemperatureInterval>,
    /// Supply and site of the motors.
    pub site: Site,
    /// Share of like nuts and bearings that are to reach their life.
    pub reliability: Entry<Ratio>,
    /// How far what is stated may be off.
    pub uncertainty: Uncertainty,
    /// Limits of the whole machine.
    pub limits: Limits,
    /// What counts how much when several drives are admissible.
    pub prefer: Prefer,
    /// The axes, in the order of the file.
    pub axes: Vec<Axis>,
    /// Rules that someone takes the responsibility to leave unmet.
    pub waivers: Vec<Waiver>,
    /// The defaults that were used.
    pub assumptions: Vec<Assumption>,
    /// What is stated and may not be what was meant.
    pub doubts: Vec<Doubt>,
}

/// Supply and site of the motors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Site {
    /// Nominal voltage of the supply.
    pub supply_voltage: Entry<Voltage>,
    /// By how much that voltage may sag while the machine works.
    pub supply_tolerance: Entry<Ratio>,
    /// Altitude.
    pub altitude: Entry<Length>,
    /// Highest temperature of the air around the motors.
    pub ambient_temperature: Entry<CelsiusTemperature>,
}

/// Limits of the whole machine; what is not stated is not limited.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Limits {
    /// Purchase price of all drives together.
    pub purchase: Option<Money>,
    /// Position error at the tool, all axes together.
    pub tool_point_error: Option<Length>,
    /// Power drawn at once.
    pub supply_power: Option<Power>,
    /// Number of different motors.
    pub motor_models: Option<u32>,
    /// Number of different gearboxes.
    pub gearbox_models: Option<u32>,
    /// Longest time of delivery.
    pub lead_time: Option<Time>,
}

/// Weights between admissible drives; only their ratios count.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prefer {
    /// Weight of purchase, energy and upkeep over the years in service.
    pub whole_life_cost: f64,
    /// Weight of accuracy.
    pub accuracy: f64,
    /// Weight of stiffness.
    pub stiffness: f64,
    /// Weight of little upkeep.
    pub upkeep: f64,
    /// Whether the brief states the weights.
    pub stated: bool,
}

/// Which way the cutting force acts along the axis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CuttingDirection {
    /// Either way.
    Both,
    /// It lifts the slide of an inclined axis.
    Up,
    /// It presses the slide of an inclined axis down.
    Down,
    /// It pushes the slide towards larger positions.
    Forward,
    /// It pushes the slide towards smaller positions.
    Back,
}

impl CuttingDirection {
    /// The words of a brief.
    pub const WORDS: [(&'static str, CuttingDirection); 5] = [
        ("both", CuttingDirection::Both),
        ("up", CuttingDirection::Up),
        ("down", CuttingDirection::Down),
        ("forward", CuttingDirection::Forward),
        ("back", CuttingDirection::Back),
    ];
}

/// What carries part of the weight of an inclined axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Counterbalance {
    /// By what means.
    pub kind: CounterbalanceKind,
    /// The share of the weight that it carries.
    pub share: Ratio,
    /// How far the force of a gas counterbalance varies over the stroke, to either side of its mean; 0 of a weight.
    pub ripple: Entry<Ratio>,
}

/// The cable chain that runs along with an axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CableChain {
    /// Mass of chain and cables, a length.
    pub mass_per_metre: LinearMassDensity,
    /// Friction coefficient between the run that moves and what it lies on.
    pub friction: Entry<Ratio>,
}

/// The means of a counterbalance.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CounterbalanceKind {
    /// Gas cylinders; they add no moved mass.
    Gas,
    /// A counterweight on a rope; it is accelerated as well.
    Weight,
}

impl CounterbalanceKind {
    /// The words of a brief.
    pub const WORDS: [(&'static str, CounterbalanceKind); 2] =
        [("gas", CounterbalanceKind::Gas), ("weight", CounterbalanceKind::Weight)];
}

/// The two sides of an axis and the guides that hold it square.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sides {
    /// Centre of the moved mass off the middle of two drives.
    pub mass_offset: Entry<Length>,
    /// Stiffness of the guides against yaw; counts with two drives.
    pub yaw_stiffness: Entry<TorsionalStiffness>,
    /// By how much one side is warmer than the other; counts with two drives.
    pub temperature_difference: Entry<TemperatureInterval>,
    /// Part of the difference of the sides that a table of corrections takes out; counts with two drives.
    pub correction: Entry<Ratio>,
    /// Distance of the guides across the travel.
    pub guide_spacing: Option<Length>,
    /// Distance of the carriages along the travel.
    pub guide_base: Entry<Length>,
}

/// What one axis must do.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// Its name, the key in the brief.
    pub name: String,
    /// What it is for.
    pub purpose: Option<String>,
    /// Angle between the direction of travel and the horizontal, 0 to 90°.
    pub inclination: Angle,
    /// Usable travel.
    pub travel: Length,
    /// Further travel at each end.
    pub overtravel: Entry<Length>,
    /// Moved mass without what it carries and without its own drive.
    pub moved_mass: Mass,
    /// The axes it carries directly, as places in [`Brief::axes`].
    pub carries: Vec<usize>,
    /// The axis that carries it, as place in [`Brief::axes`].
    pub carried_by: Option<usize>,
    /// Drives side by side, 1 or 2.
    pub drives: Entry<u32>,
    /// Distance between two drives.
    pub drive_spacing: Option<Length>,
    /// What makes the sides of the axis differ, and the guides that hold it square.
    pub sides: Sides,
    /// Highest speed.
    pub speed: Velocity,
    /// Acceleration that is wanted.
    pub acceleration: Acceleration,
    /// Jerk that is wanted.
    pub jerk: Entry<Jerk>,
    /// Largest cutting force along the axis; 0 if it does not cut.
    pub cutting_force: Entry<Force>,
    /// Which way the cutting force acts.
    pub cutting_force_direction: Entry<CuttingDirection>,
    /// Speed while cutting.
    pub cutting_speed: Entry<Velocity>,
    /// What guides, racks and screws are fixed to.
    pub bed: Entry<Bed>,
    /// Friction coefficient of the guides.
    pub guide_friction: Entry<Ratio>,
    /// Force of seals, wipers and covers together.
    pub wiper_force: Entry<Force>,
    /// What carries part of the weight.
    pub counterbalance: Option<Counterbalance>,
    /// The cable chain.
    pub cable_chain: Option<CableChain>,
    /// Whether people can come below a raised axis.
    pub people_below: Entry<bool>,
    /// Positioning over the full travel: A by ISO 230-2 up to 2 m, E above.
    pub accuracy: Option<Length>,
    /// A by ISO 230-2 on any 2 m section.
    pub section_accuracy: Option<Length>,
    /// R by ISO 230-2, on a 2 m section where the travel is longer.
    pub repeatability: Option<Length>,
    /// B by ISO 230-2.
    pub reversal: Option<Length>,
    /// How far the cutting force may move the tool along the axis.
    pub cutting_deflection: Option<Length>,
    /// Position ripple within one tooth or one turn at cutting speed; `None` is not judged.
    pub ripple: Entry<Option<Length>>,
    /// Lowest natural frequency with the drive locked.
    pub first_mode: Option<Frequency>,
    /// A circle that it has to follow.
    pub contour: Option<Contour>,
    /// How soon it has to stand still after a move.
    pub settling: Option<Settling>,
    /// Along which direction of the machine it moves the tool.
    pub along: Entry<Along>,
    /// Where the position is measured.
    pub feedback: Feedback,
    /// Whether the control corrects the position by a table that was measured.
    pub mapping: Mapping,
    /// Tilt of the slide on its guides, where the brief states any.
    pub tilt: Option<Tilt>,
    /// The drive families to consider; `None` for any.
    pub families: Option<Vec<String>>,
    /// How working time is shared; empty where moves are listed.
    pub duty: Vec<DutyShare>,
    /// The moves of an hour; empty where shares of time are listed.
    pub moves: Vec<Move>,
    /// Whether the brief states duty or moves.
    pub duty_stated: bool,
}

impl Axis {
    /// Whether the axis takes a cutting force.
    pub fn cuts(&self) -> bool {
        self.cutting_force.value.si() > 0.0
    }

    /// Whether the moves have a way of their own each; otherwise half of each goes either way.
    pub fn signed_moves(&self) -> bool {
        self.moves.iter().any(|line| line.distance.si() < 0.0)
    }

    /// The stroke of moves whose share states none: half the travel.
    pub fn usual_stroke(&self) -> Length {
        Length::of_si(self.travel.si() * super::defaults::STROKE_SHARE)
    }
}

/// A part of working time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DutyShare {
    /// The share of working time, above 0 and up to 1.
    pub share: Ratio,
    /// Whether the axis stands still.
    pub stand: bool,
    /// The speed of the moves; `None` while it stands.
    pub speed: Option<Velocity>,
    /// The process force; 0 if the brief states none.
    pub force: Force,
    /// The stroke of the moves; `None` for [`Axis::usual_stroke`].
    pub stroke: Option<Length>,
}

/// A move that is done so many times an hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Move {
    /// How far, positive upward or forward. Where no move of an axis is negative, half of each goes either way.
    pub distance: Length,
    /// Its highest speed.
    pub speed: Velocity,
    /// Its acceleration.
    pub acceleration: Acceleration,
    /// Its jerk.
    pub jerk: Jerk,
    /// The process force; 0 if the brief states none.
    pub force: Force,
    /// How often an hour of work; both ways together where the distances have no sign.
    pub count_per_hour: f64,
    /// How long the axis stands after it.
    pub dwell: Time,
}

impl Move {
    /// The move, segment by segment.
    pub fn profile(&self) -> Profile {
        Profile::new(Length::of_si(self.distance.si().abs()), self.speed, self.acceleration, self.jerk)
    }
}

/// A rule that someone takes the responsibility to leave unmet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Waiver {
    /// The id of the rule.
    pub rule: String,
    /// The axis it is for; `None` for all.
    pub axis: Option<String>,
    /// Why.
    pub reason: String,
    /// Who answers for it.
    pub by: String,
    /// Until when, as YYYY-MM-DD.
    pub until: Option<String>,
}

impl Brief {
    /// The place of the axis of this name.
    pub fn axis(&self, name: &str) -> Option<usize> {
        self.axes.iter().position(|axis| axis.name == name)
    }
}
