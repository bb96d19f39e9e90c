//! The quantity types of the trade and the trait that ties each to its dimension.

use super::table::Dimension;
use uom::si::{ISQ, Quantity, SI};
use uom::typenum::{N1, N2, N3, P1, P2, Z0};

pub use uom::si::f64::{
    Acceleration, Angle, AngularAcceleration, AngularVelocity, Area, Energy, Force, Frequency, Jerk, Length,
    LinearMassDensity, Mass, MomentOfInertia, Power, Pressure, Ratio, TemperatureInterval, Time, Torque, Velocity,
};

/// Kinds keep quantities apart that share base units: a spring rate is not a surface tension.
pub mod kind {
    /// Marks a linear spring rate.
    pub trait Spring: uom::Kind {}
    /// Marks a torsional spring rate.
    pub trait TorsionSpring: uom::Kind {}
    /// Marks a count of revolutions.
    pub trait Turns: uom::Kind {}
    /// Marks a ball circulation speed, nominal diameter times turns a time.
    pub trait Circulation: uom::Kind {}
    /// Marks the gain of a position loop.
    pub trait Gain: uom::Kind {}
    /// Marks a coefficient of thermal expansion.
    pub trait Expansion: uom::Kind {}
    /// Marks a temperature counted from the ice point.
    pub trait Celsius: uom::Kind {}
    /// Marks a force spread over a width.
    pub trait Line: uom::Kind {}
    /// Marks a coefficient of heat transfer.
    pub trait HeatTransfer: uom::Kind {}
}

/// Linear stiffness, N/m.
pub type Stiffness = Quantity<ISQ<Z0, P1, N2, Z0, Z0, Z0, Z0, dyn kind::Spring>, SI<f64>, f64>;
/// Torsional stiffness, N·m/rad.
pub type TorsionalStiffness = Quantity<ISQ<P2, P1, N2, Z0, Z0, Z0, Z0, dyn kind::TorsionSpring>, SI<f64>, f64>;
/// A count of revolutions, rev.
pub type Revolutions = Quantity<ISQ<Z0, Z0, Z0, Z0, Z0, Z0, Z0, dyn kind::Turns>, SI<f64>, f64>;
/// Ball circulation speed: nominal screw diameter times turns a time, m·rev/s.
pub type CirculationSpeed = Quantity<ISQ<P1, Z0, N1, Z0, Z0, Z0, Z0, dyn kind::Circulation>, SI<f64>, f64>;
/// Gain of a position loop, 1/s.
pub type LoopGain = Quantity<ISQ<Z0, Z0, N1, Z0, Z0, Z0, Z0, dyn kind::Gain>, SI<f64>, f64>;
/// Coefficient of thermal expansion, 1/K.
pub type Expansion = Quantity<ISQ<Z0, Z0, Z0, Z0, N1, Z0, Z0, dyn kind::Expansion>, SI<f64>, f64>;
/// A temperature in degrees Celsius: kelvins above 273.15 K. Not a difference of two temperatures.
pub type CelsiusTemperature = Quantity<ISQ<Z0, Z0, Z0, Z0, P1, Z0, Z0, dyn kind::Celsius>, SI<f64>, f64>;
/// A force spread over a width, N/m; of a belt also its stiffness, as force at unit strain for each width.
pub type LineLoad = Quantity<ISQ<Z0, P1, N2, Z0, Z0, Z0, Z0, dyn kind::Line>, SI<f64>, f64>;
/// Electric potential difference, V.
pub use uom::si::f64::ElectricPotential as Voltage;

/// Coefficient of heat transfer, W/(m²·K).
pub type HeatTransfer = Quantity<ISQ<Z0, P1, N3, Z0, N1, Z0, Z0, dyn kind::HeatTransfer>, SI<f64>, f64>;

/// An amount of money in the currency of the brief; catalogue prices are in neutral units worth one of it.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Money(pub f64);

/// A quantity that knows its dimension and can be taken to and from its SI value.
pub trait Measure: Copy + 'static {
    /// The dimension whose units this quantity is written in.
    const DIMENSION: Dimension;
    /// The value in SI base units (radians for angles, revolutions for counts of turns).
    fn si(self) -> f64;
    /// The quantity whose SI value this is.
    fn of_si(value: f64) -> Self;
}

impl Measure for Money {
    const DIMENSION: Dimension = Dimension::Money;
    #[inline(always)]
    fn si(self) -> f64 {
        self.0
    }
    #[inline(always)]
    fn of_si(value: f64) -> Self {
        Money(value)
    }
}

macro_rules! measures {
    ($($quantity:ident => $dimension:ident),* $(,)?) => {$(
        impl Measure for $quantity {
            const DIMENSION: Dimension = Dimension::$dimension;
            #[inline(always)]
            fn si(self) -> f64 {
                self.value
            }
            #[inline(always)]
            fn of_si(value: f64) -> Self {
                Quantity { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value }
            }
        }
    )*};
}

measures! {
    Length => Length, Area => Area, Angle => Angle, Ratio => Ratio, Time => Time, Mass => Mass,
    Velocity => Velocity, Acceleration => Acceleration, Jerk => Jerk,
    AngularVelocity => AngularVelocity, AngularAcceleration => AngularAcceleration,
    Force => Force, Torque => Torque, Energy => Energy, Power => Power, Pressure => Pressure,
    MomentOfInertia => MomentOfInertia, LinearMassDensity => LinearMassDensity, Frequency => Frequency,
    TemperatureInterval => Temperature, Stiffness => Stiffness, TorsionalStiffness => TorsionalStiffness,
    Revolutions => Revolutions, CirculationSpeed => CirculationSpeed, LoopGain => LoopGain,
    Expansion => Expansion, Voltage => Voltage, CelsiusTemperature => Celsius, LineLoad => LineLoad,
    HeatTransfer => HeatTransfer,
}
