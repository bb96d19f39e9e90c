//! Offers any formula of the library to `calc`, with the arguments it has.
//!
//! Method: the type of a formula says the dimension of each argument, its note says the name. Limits: ranges and
//! validity are not judged; the answer says so.

use super::argument::{Argument, Kind};
use super::error::Fault;
use super::given::{Given, Outcome};
use super::{Entry, Run};
use crate::formula::{Formula, Note, Series};
use crate::units::*;

/// A formula without its types.
pub trait Plain: Sync {
    /// What a reader is told of it.
    fn note(&'static self) -> &'static Note;
    /// The dimension of each argument, and whether it is a list.
    fn arguments(&self) -> Vec<(Dimension, bool)>;
    /// The dimension of the result.
    fn result(&self) -> Dimension;
    /// The result in SI units, from the arguments in SI units.
    fn apply(&self, arguments: &[&[f64]]) -> f64;
}

/// Something a formula takes as an argument.
trait Operand {
    const DIMENSION: Dimension;
    const LIST: bool;
    fn of_values(values: &[f64]) -> Self;
}

macro_rules! operands {
    ($($quantity:ident),*) => {$(
        impl Operand for $quantity {
            const DIMENSION: Dimension = <$quantity as Measure>::DIMENSION;
            const LIST: bool = false;
            fn of_values(values: &[f64]) -> Self {
                Self::of_si(values.first().copied().unwrap_or(f64::NAN))
            }
        }
        impl Operand for Series<$quantity> {
            const DIMENSION: Dimension = <$quantity as Measure>::DIMENSION;
            const LIST: bool = true;
            fn of_values(values: &[f64]) -> Self {
                Series::of_si(values)
            }
        }
    )*};
}

operands!(
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
    TemperatureInterval,
    Stiffness,
    TorsionalStiffness,
    Revolutions,
    CirculationSpeed,
    LoopGain,
    Expansion,
    Voltage,
    CelsiusTemperature,
    LineLoad,
    HeatTransfer,
    Money
);

macro_rules! plain {
    ($($operand:ident $index:tt),*) => {
        impl<R: Measure, $($operand: Operand + 'static),*> Plain for Formula<fn($($operand),*) -> R> {
            fn note(&'static self) -> &'static Note {
                &self.note
            }
            fn arguments(&self) -> Vec<(Dimension, bool)> {
                vec![$(($operand::DIMENSION, $operand::LIST)),*]
            }
            fn result(&self) -> Dimension {
                R::DIMENSION
            }
            fn apply(&self, arguments: &[&[f64]]) -> f64 {
                let at = |index: usize| arguments.get(index).copied().unwrap_or(&[]);
                (self.apply)($($operand::of_values(at($index))),*).si()
            }
        }
    };
}

plain!(A 0);
plain!(A 0, B 1);
plain!(A 0, B 1, C 2);
plain!(A 0, B 1, C 2, D 3);
plain!(A 0, B 1, C 2, D 3, E 4);
plain!(A 0, B 1, C 2, D 3, E 4, F 5);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8, J 9);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8, J 9, K 10);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8, J 9, K 10, L 11);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8, J 9, K 10, L 11, M 12);
plain!(A 0, B 1, C 2, D 3, E 4, F 5, G 6, H 7, I 8, J 9, K 10, L 11, M 12, N 13);

/// The entry of a formula as it stands.
pub(super) fn entry(formula: &'static dyn Plain) -> Entry {
    let note = formula.note();
    let arguments = note.inputs.iter().zip(formula.arguments()).map(|((_, name), (dimension, list))| {
        Argument::new(name, if list { Kind::List(dimension) } else { Kind::Value(dimension) })
    });
    let dimension = formula.result();
    let unit = dimension.units().next().map_or("", |unit| unit.name);
    Entry { note, arguments: arguments.collect(), dimension, unit, run: Run::Plain(formula) }
}

/// Works a formula out on what was given.
pub(super) fn run(formula: &'static dyn Plain, given: &Given) -> Result<Outcome, Fault> {
    let values: Vec<Vec<f64>> = formula
        .note()
        .inputs
        .iter()
        .zip(formula.arguments())
        .map(|((_, name), (_, list))| if list { given.values(name).to_vec() } else { vec![given.value(name)] })
        .collect();
    let lists = values.iter().zip(formula.arguments()).filter(|(_, (_, list))| *list).map(|(values, _)| values.len());
    if lists.clone().min() != lists.max() {
        return Err(Fault::Together { why: "the lists must be of the same length".into() });
    }
    let slices: Vec<&[f64]> = values.iter().map(Vec::as_slice).collect();
    Ok(Outcome {
        value: formula.apply(&slices),
        outside: Vec::new(),
        remarks: vec!["the inputs were not checked against the validity".into()],
        steps: Vec::new(),
    })
}
