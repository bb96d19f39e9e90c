//! The one place of all defaults that a brief takes when it leaves a value out.
//!
//! Each says what it rests on: common practice, or the memory of a standard.

use crate::source::Source;
use crate::units::{Measure, Unit};

/// A default: its value in the unit in which it is told, and why it is that.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Preset {
    /// The value, in `unit`.
    pub value: f64,
    /// The unit; empty for plain numbers.
    pub unit: &'static str,
    /// Why this value.
    pub source: Source,
}

impl Preset {
    /// The default as a quantity.
    pub fn quantity<Q: Measure>(&self) -> Q {
        Q::of_si(self.value * unit_named::<Q>(self.unit).map_or(1.0, |unit| unit.si))
    }
}

/// The unit of a quantity's dimension that is printed so.
pub(super) fn unit_named<Q: Measure>(name: &str) -> Option<&'static Unit> {
    Q::DIMENSION.units().find(|unit| unit.name == name)
}

const fn preset(value: f64, unit: &'static str, why: &'static str) -> Preset {
    Preset { value, unit, source: Source::practice(why) }
}

/// `years-in-service`.
pub const YEARS_IN_SERVICE: Preset = preset(10.0, "years", "usual planning time of a machine tool");
/// `hours-per-year`.
pub const HOURS_PER_YEAR: Preset = preset(4000.0, "h", "two shifts on 250 days a year");
/// `discount-rate`.
pub const DISCOUNT_RATE: Preset = preset(6.0, "%", "usual rate for plant investment");
/// `energy-price`, a kilowatt-hour.
pub const ENERGY_PRICE: Preset = preset(0.25, "", "size of an industrial price of a kWh; take your contract's");
/// `downtime-cost`, an hour.
pub const DOWNTIME_COST: Preset = preset(
    100.0,
    "",
    "an hour of a machine that stands for an exchange, of a size that is often reckoned; take your own",
);
/// `temperature-swing`.
pub const TEMPERATURE_SWING: Preset = preset(5.0, "K", "closed workshop without air conditioning");
/// `supply-voltage`.
pub const SUPPLY_VOLTAGE: Preset = preset(400.0, "V", "three-phase low voltage, a standard value of IEC 60038");
/// `supply-tolerance`.
pub const SUPPLY_TOLERANCE: Preset = Preset {
    value: 10.0,
    unit: "%",
    source: Source::memory("sag of ±10 % that IEC 60038 allows a supply and IEC 60204-1 asks a machine to work with"),
};
/// `altitude`.
pub const ALTITUDE: Preset =
    Preset { value: 1000.0, unit: "m", source: Source::memory("site for which IEC 60034-1 rates motors") };
/// `ambient-temperature`.
pub const AMBIENT_TEMPERATURE: Preset =
    Preset { value: 40.0, unit: "°C", source: Source::memory("air for which IEC 60034-1 rates motors") };
/// `reliability` of nuts and bearings.
pub const RELIABILITY: Preset = preset(90.0, "%", "the share at which lives and ratings are stated");
/// `uncertainty.moved-mass`, a standard deviation as the others below it.
pub const MASS_SPREAD: Preset = preset(5.0, "%", "masses off a drawing, before anything is weighed");
/// `uncertainty.guide-friction`.
pub const FRICTION_SPREAD: Preset =
    preset(30.0, "%", "friction of rolling guides and seals differs with preload, grease and age");
/// `uncertainty.cutting-force`.
pub const FORCE_SPREAD: Preset = preset(15.0, "%", "forces by formula, tools that wear and stock that differs");
/// `uncertainty.temperature-swing`.
pub const SWING_SPREAD: Preset = preset(20.0, "%", "the swing of a workshop is rarely measured over a year");
/// `uncertainty.stiffness`.
pub const STIFFNESS_SPREAD: Preset = preset(15.0, "%", "joints, seats and brackets give more or less than reckoned");
/// `overtravel`, at each end.
pub const OVERTRAVEL: Preset = preset(50.0, "mm", "room for limit switches and end stops");
/// `drives`.
pub const DRIVES: Preset = preset(1.0, "", "one drive in the middle of the axis");
/// `mass-offset`, of an axis with two drives.
pub const MASS_OFFSET: Preset = preset(0.0, "mm", "the mass of the axis lies in the middle of its drives");
/// `guide-base`.
pub const GUIDE_BASE: Preset = preset(1.0, "m", "carriages a metre apart along the travel; measure it on the drawing");
/// Stiffness across of one carriage, for `yaw-stiffness`.
pub const CARRIAGE_STIFFNESS: Preset =
    preset(200.0, "N/µm", "four carriages of 200 N/µm across, half the guide base off the middle");
/// `side-temperature-difference`.
pub const SIDE_TEMPERATURE_DIFFERENCE: Preset = preset(1.0, "K", "both sides in the same hall, no sun on one of them");
/// `side-correction`.
pub const SIDE_CORRECTION: Preset = preset(0.0, "%", "no table of corrections between the two sides in the control");
/// Why no tilt of the guides counts.
pub const GUIDE_TILT: Source = Source::practice(
    "the brief states no tilt of the guides; what it adds at the tool is not counted, ask the maker of the guides",
);
/// `tool-to-scale`.
pub const TOOL_TO_SCALE: Source = Source::practice("a scale beside the drive; nearer to the tool is better");
/// Why an axis moves along a direction.
pub const ALONG: Source =
    Source::practice("upright axes are z, the horizontal one that carries the others is x, the next y");
/// `contour.feed-forward`.
pub const FEED_FORWARD: Preset =
    preset(0.0, "%", "a plain position loop; controls that feed the speed forward lag less");
/// Jerk over acceleration, for `jerk`: the acceleration is built up in a twentieth of a second.
pub const JERK_PER_ACCELERATION: Preset = preset(20.0, "1/s", "acceleration built up in 50 ms");
/// Why a bed is of steel.
pub const STEEL_BED: Source = Source::practice("welded steel or cast iron, which expand about as a rack does");
/// `guide-friction`.
pub const GUIDE_FRICTION: Preset = preset(0.005, "", "rolling guides with preload, seals counted apart");
/// `wiper-force`.
pub const WIPER_FORCE: Preset = preset(40.0, "N", "seals and wipers of four carriages");
/// `cable-chain.friction`.
pub const CABLE_CHAIN_FRICTION: Preset =
    preset(0.05, "", "a chain that carries itself or rolls; take 0.3 where it glides");
/// `counterbalance.ripple` of a gas counterbalance.
pub const COUNTERBALANCE_RIPPLE: Preset =
    preset(10.0, "%", "force of a gas counterbalance over the stroke, to either side; 18 % with a small reservoir");
/// `cutting-force`, when no share of the duty has a force either.
pub const CUTTING_FORCE: Preset = preset(0.0, "N", "the brief names no process force");
/// Cutting speed over axis speed, for `cutting-speed`.
pub const CUTTING_SPEED_SHARE: Preset = preset(0.25, "", "a quarter of the axis speed");
/// `ripple` of an axis that cuts.
pub const RIPPLE: Preset = preset(10.0, "µm", "waviness that is just visible on a milled face");
/// Stroke over travel, for moves of the duty whose share states no stroke.
pub const STROKE_SHARE: f64 = 0.5;
/// Speed over axis speed of the middle share of the default duty, when no cutting speed is known.
pub const MIDDLE_SPEED_SHARE: f64 = 0.5;
/// Shares of the default duty: at full speed, at cutting speed, standing.
pub const DUTY_SHARES: [f64; 3] = [0.2, 0.5, 0.3];
/// Why the default duty is as it is.
pub const DUTY: Source = Source::practice("a fifth rapid moves, half process, the rest standing");
/// Why the usual stroke is half the travel.
pub const STROKE: Source = Source::practice("moves over half the travel");
/// Why words and choices that are left open stay open.
pub const LEFT_OPEN: Source = Source::practice("the brief leaves it open");
/// Why a force without direction is taken both ways.
pub const EITHER_WAY: Source = Source::practice("the worse of both ways is taken");
/// Why nobody is taken to be below.
pub const NOBODY_BELOW: Source =
    Source::practice("the brief does not say that people come below; state it if they can");
/// Why the whole-life cost decides.
pub const COST_DECIDES: Source = Source::practice("among admissible drives the cheaper over its life");
