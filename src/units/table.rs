//! The table of units: what each is called and how many SI units it holds.
//!
//! Factors are exact where the unit is defined exactly (inch 25.4 mm, pound 0.453 592 37 kg, standard
//! gravity 9.806 65 m/s²; source: the SI Brochure of the BIPM and NIST Special Publication 811).

use std::f64::consts::PI;

/// What kind of quantity a value is; decides which units fit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs)]
pub enum Dimension {
    Length,
    Area,
    Angle,
    Ratio,
    Time,
    Mass,
    Velocity,
    Acceleration,
    Jerk,
    AngularVelocity,
    AngularAcceleration,
    Force,
    Torque,
    Energy,
    Power,
    Pressure,
    MomentOfInertia,
    LinearMassDensity,
    Frequency,
    Temperature,
    Stiffness,
    TorsionalStiffness,
    Revolutions,
    CirculationSpeed,
    LoopGain,
    Expansion,
    Voltage,
    Celsius,
    LineLoad,
    HeatTransfer,
    Money,
}

impl Dimension {
    /// The dimension in words, with its article: "a length".
    pub fn words(self) -> &'static str {
        match self {
            Dimension::Length => "a length",
            Dimension::Area => "an area",
            Dimension::Angle => "an angle",
            Dimension::Ratio => "a plain number or share",
            Dimension::Time => "a time",
            Dimension::Mass => "a mass",
            Dimension::Velocity => "a speed",
            Dimension::Acceleration => "an acceleration",
            Dimension::Jerk => "a jerk (change of acceleration a time)",
            Dimension::AngularVelocity => "a speed of rotation",
            Dimension::AngularAcceleration => "an angular acceleration",
            Dimension::Force => "a force",
            Dimension::Torque => "a torque",
            Dimension::Energy => "an energy",
            Dimension::Power => "a power",
            Dimension::Pressure => "a stress or pressure",
            Dimension::MomentOfInertia => "a moment of inertia",
            Dimension::LinearMassDensity => "a mass a length",
            Dimension::Frequency => "a frequency",
            Dimension::Temperature => "a temperature difference",
            Dimension::Stiffness => "a stiffness",
            Dimension::TorsionalStiffness => "a torsional stiffness",
            Dimension::Revolutions => "a number of revolutions",
            Dimension::CirculationSpeed => "a ball circulation speed (diameter times speed of rotation)",
            Dimension::LoopGain => "a loop gain",
            Dimension::Expansion => "a coefficient of thermal expansion",
            Dimension::Voltage => "a voltage",
            Dimension::Celsius => "a temperature in degrees Celsius",
            Dimension::LineLoad => "a force a width",
            Dimension::HeatTransfer => "a coefficient of heat transfer",
            Dimension::Money => "an amount of money",
        }
    }

    /// The units that fit, canonical spellings, most usual first.
    pub fn units(self) -> impl Iterator<Item = &'static Unit> {
        UNITS.iter().filter(move |unit| unit.dimension == self)
    }
}

/// One unit: its canonical spelling, other accepted spellings, and its size in SI units.
#[derive(Debug, PartialEq)]
pub struct Unit {
    /// The dimension it measures.
    pub dimension: Dimension,
    /// How it is printed.
    pub name: &'static str,
    /// Other spellings that are read, after normalising (see `text::normalise`).
    pub spellings: &'static [&'static str],
    /// SI units in one of this unit.
    pub si: f64,
}

const fn unit(dimension: Dimension, name: &'static str, si: f64, spellings: &'static [&'static str]) -> Unit {
    Unit { dimension, name, spellings, si }
}

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const POUND: f64 = 0.453_592_37;
const G: f64 = 9.806_65;
const LBF: f64 = POUND * G;
const REV: f64 = 2.0 * PI;

use Dimension as D;
/// Every unit; within a dimension the first is the one reports use by default.
pub static UNITS: &[Unit] = &[
    unit(D::Length, "mm", 1e-3, &[]),
    unit(D::Length, "m", 1.0, &[]),
    unit(D::Length, "µm", 1e-6, &["um", "micron"]),
    unit(D::Length, "nm", 1e-9, &[]),
    unit(D::Length, "cm", 1e-2, &[]),
    unit(D::Length, "km", 1e3, &[]),
    unit(D::Length, "in", INCH, &["inch", "inches", "\"", "″"]),
    unit(D::Length, "ft", FOOT, &["foot", "feet"]),
    unit(D::Length, "mil", INCH * 1e-3, &["thou"]),
    unit(D::Area, "mm²", 1e-6, &[]),
    unit(D::Area, "m²", 1.0, &[]),
    unit(D::Area, "in²", INCH * INCH, &[]),
    unit(D::Angle, "deg", PI / 180.0, &["°", "degree", "degrees"]),
    unit(D::Angle, "rad", 1.0, &[]),
    unit(D::Angle, "mrad", 1e-3, &[]),
    unit(D::Angle, "arcmin", PI / 10_800.0, &["'", "′"]),
    unit(D::Angle, "arcsec", PI / 648_000.0, &["\"", "″"]),
    unit(D::Ratio, "1", 1.0, &[""]),
    unit(D::Ratio, "%", 1e-2, &["percent"]),
    unit(D::Ratio, "µm/m", 1e-6, &["um/m", "ppm"]),
    unit(D::Ratio, "mm/m", 1e-3, &[]),
    unit(D::Time, "s", 1.0, &["sec", "second", "seconds"]),
    unit(D::Time, "ms", 1e-3, &[]),
    unit(D::Time, "min", 60.0, &["minute", "minutes"]),
    unit(D::Time, "h", 3600.0, &["hour", "hours", "hr", "hrs"]),
    unit(D::Time, "days", 86_400.0, &["day", "d"]),
    unit(D::Time, "weeks", 604_800.0, &["week", "wk"]),
    unit(D::Time, "years", 31_557_600.0, &["year", "yr", "a"]),
    unit(D::Mass, "kg", 1.0, &[]),
    unit(D::Mass, "t", 1e3, &["tonne", "tonnes"]),
    unit(D::Mass, "lb", POUND, &["lbs", "lbm", "pound", "pounds"]),
    unit(D::Velocity, "m/min", 1.0 / 60.0, &[]),
    unit(D::Velocity, "m/s", 1.0, &[]),
    unit(D::Velocity, "mm/s", 1e-3, &[]),
    unit(D::Velocity, "mm/min", 1e-3 / 60.0, &[]),
    unit(D::Velocity, "in/min", INCH / 60.0, &["ipm", "inch/min", "inches/min"]),
    unit(D::Velocity, "in/s", INCH, &["ips"]),
    unit(D::Velocity, "ft/min", FOOT / 60.0, &["fpm"]),
    unit(D::Acceleration, "m/s²", 1.0, &["m/s/s"]),
    unit(D::Acceleration, "mm/s²", 1e-3, &["mm/s/s"]),
    unit(D::Acceleration, "g", G, &[]),
    unit(D::Acceleration, "in/s²", INCH, &["in/s/s"]),
    unit(D::Acceleration, "ft/s²", FOOT, &["ft/s/s"]),
    unit(D::Jerk, "m/s³", 1.0, &[]),
    unit(D::Jerk, "mm/s³", 1e-3, &[]),
    unit(D::Jerk, "in/s³", INCH, &[]),
    unit(D::Jerk, "g/s", G, &[]),
    unit(D::AngularVelocity, "1/min", REV / 60.0, &["rpm", "rev/min", "/min", "min^-1", "min-1"]),
    unit(D::AngularVelocity, "1/s", REV, &["rev/s", "rps", "/s", "s^-1", "s-1"]),
    unit(D::AngularVelocity, "rad/s", 1.0, &[]),
    unit(D::AngularVelocity, "deg/s", PI / 180.0, &[]),
    unit(D::AngularAcceleration, "rad/s²", 1.0, &[]),
    unit(D::Force, "N", 1.0, &[]),
    unit(D::Force, "kN", 1e3, &[]),
    unit(D::Force, "lbf", LBF, &["lb", "lbs"]),
    unit(D::Force, "kgf", G, &[]),
    unit(D::Torque, "N·m", 1.0, &["Nm"]),
    unit(D::Torque, "kN·m", 1e3, &["kNm"]),
    unit(D::Torque, "N·mm", 1e-3, &["Nmm"]),
    unit(D::Torque, "lbf·in", LBF * INCH, &["lbfin", "inlbf", "inlb", "lbin", "lbf-in", "in-lbf", "in-lb", "lb-in"]),
    unit(D::Torque, "lbf·ft", LBF * FOOT, &["lbfft", "ftlbf", "ftlb", "lbft", "lbf-ft", "ft-lbf", "ft-lb", "lb-ft"]),
    unit(D::Energy, "J", 1.0, &[]),
    unit(D::Energy, "kJ", 1e3, &[]),
    unit(D::Energy, "kWh", 3.6e6, &[]),
    unit(D::Energy, "Wh", 3.6e3, &[]),
    unit(D::Power, "kW", 1e3, &[]),
    unit(D::Power, "W", 1.0, &[]),
    unit(D::Power, "hp", 550.0 * FOOT * LBF, &[]),
    unit(D::Pressure, "MPa", 1e6, &["N/mm^2"]),
    unit(D::Pressure, "GPa", 1e9, &[]),
    unit(D::Pressure, "Pa", 1.0, &["N/m^2"]),
    unit(D::Pressure, "bar", 1e5, &[]),
    unit(D::Pressure, "psi", LBF / (INCH * INCH), &[]),
    unit(D::Pressure, "ksi", 1e3 * LBF / (INCH * INCH), &[]),
    unit(D::MomentOfInertia, "kg·m²", 1.0, &["kgm^2"]),
    unit(D::MomentOfInertia, "kg·cm²", 1e-4, &["kgcm^2", "kg cm2", "kgcm2"]),
    unit(D::MomentOfInertia, "g·m²", 1e-3, &["gm^2"]),
    unit(D::MomentOfInertia, "lb·in²", POUND * INCH * INCH, &["lbin^2"]),
    unit(D::LinearMassDensity, "kg/m", 1.0, &[]),
    unit(D::LinearMassDensity, "g/km", 1e-6, &[]),
    unit(D::LinearMassDensity, "lb/ft", POUND / FOOT, &[]),
    unit(D::Frequency, "Hz", 1.0, &[]),
    unit(D::Frequency, "kHz", 1e3, &[]),
    unit(D::Temperature, "K", 1.0, &["°C", "degC", "C"]),
    unit(D::Temperature, "°F", 5.0 / 9.0, &["degF", "F"]),
    unit(D::Stiffness, "N/µm", 1e6, &["N/um"]),
    unit(D::Stiffness, "N/m", 1.0, &[]),
    unit(D::Stiffness, "N/mm", 1e3, &[]),
    unit(D::Stiffness, "kN/mm", 1e6, &[]),
    unit(D::Stiffness, "lbf/in", LBF / INCH, &[]),
    unit(D::TorsionalStiffness, "N·m/rad", 1.0, &["Nm/rad"]),
    unit(D::TorsionalStiffness, "kN·m/rad", 1e3, &["kNm/rad"]),
    unit(D::TorsionalStiffness, "N·m/arcmin", 10_800.0 / PI, &["Nm/arcmin"]),
    unit(D::Revolutions, "Mrev", 1e6, &[]),
    unit(D::Revolutions, "rev", 1.0, &["revolutions", "turns"]),
    unit(D::Revolutions, "krev", 1e3, &[]),
    unit(D::CirculationSpeed, "mm/min", 1e-3 / 60.0, &["mm·1/min", "mm*rpm", "mmrpm", "mm1/min"]),
    unit(D::LoopGain, "1/s", 1.0, &["/s", "s^-1", "s-1"]),
    unit(D::LoopGain, "(m/min)/mm", 1000.0 / 60.0, &["m/min/mm"]),
    unit(D::Expansion, "µm/(m·K)", 1e-6, &["um/mK", "um/(mK)", "um/m/K"]),
    unit(D::Expansion, "1/K", 1.0, &["/K"]),
    unit(D::Voltage, "V", 1.0, &["volt", "volts"]),
    unit(D::Voltage, "kV", 1e3, &[]),
    unit(D::Celsius, "°C", 1.0, &["degC", "C"]),
    unit(D::LineLoad, "N/mm", 1e3, &[]),
    unit(D::LineLoad, "kN/mm", 1e6, &[]),
    unit(D::LineLoad, "N/m", 1.0, &[]),
    unit(D::LineLoad, "lbf/in", LBF / INCH, &[]),
    unit(D::HeatTransfer, "W/(m²·K)", 1.0, &["W/m2K", "W/(m2K)"]),
    unit(D::Money, "", 1.0, &[]),
];
