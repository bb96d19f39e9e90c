//! Entries of `calc` on motion and duty: moves, forces, equivalent values, inertia, buffer and brake.

use super::Entry;
use super::argument::{Argument, Kind, Range};
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::{brake, duty, inertia, motion, motor, thermal};
use crate::units::Dimension as D;
use crate::units::{Measure, Ratio};

const ANGLE: Kind = Kind::WordOr(&["horizontal", "vertical"], D::Angle);

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    vec![
        Entry::own(
            &motion::MOVE_TIME.note,
            &[
                Argument::not_negative("travel", D::Length),
                Argument::positive("speed", D::Velocity),
                Argument::positive("acceleration", D::Acceleration),
                Argument::positive("jerk", D::Jerk).unless("no jerk limit, the trapezoid"),
            ],
            (D::Time, "s"),
            move_time,
        ),
        Entry::own(
            &duty::AXIAL_FORCE.note,
            &[
                Argument::positive("mass", D::Mass),
                Argument::value("acceleration", D::Acceleration),
                Argument::new("angle", ANGLE),
                Argument::not_negative("friction", D::Ratio),
                Argument::value("process-force", D::Force).or("0N"),
                Argument::not_negative("wiper-force", D::Force).or("0N"),
                Argument::value("direction", D::Ratio),
                Argument::share("counterbalance-share").or("0"),
            ],
            (D::Force, "N"),
            axial_force,
        ),
        Entry::own(
            &duty::MEAN_LOAD.note,
            &[Argument::list("forces", D::Force), Argument::list("turns", D::Ratio).within(Range::NotNegative)],
            (D::Force, "N"),
            mean_load,
        ),
        Entry::own(
            &motor::RMS_TORQUE.note,
            &[
                Argument::list("torques", D::Torque),
                Argument::list("times", D::Time).symbol("q_k").within(Range::NotNegative),
            ],
            (D::Torque, "N·m"),
            rms_torque,
        ),
        Entry::own(
            &inertia::MASS_INERTIA.note,
            &[
                Argument::not_negative("mass", D::Mass),
                Argument::positive("travel-per-turn", D::Length),
                Argument::positive("ratio", D::Ratio).or("1").symbol("i"),
            ],
            (D::MomentOfInertia, "kg·m²"),
            reflected_inertia,
        ),
        Entry::own(
            &brake::BUFFER_STROKE.note,
            &[
                Argument::positive("mass", D::Mass),
                Argument::not_negative("speed", D::Velocity),
                Argument::positive("buffer-force", D::Force),
                Argument::value("drive-force", D::Force).or("0N"),
                Argument::new("angle", ANGLE).or("0deg"),
                Argument::positive("buffer-efficiency", D::Ratio).or("0.8"),
            ],
            (D::Length, "mm"),
            buffer_stroke,
        ),
        Entry::own(
            &brake::BRAKE_HOLDING_TORQUE.note,
            &[
                Argument::positive("mass", D::Mass),
                Argument::new("angle", ANGLE),
                Argument::positive("travel-per-turn", D::Length),
                Argument::positive("ratio", D::Ratio).or("1").symbol("i"),
                Argument::positive("safety", D::Ratio).or("1"),
            ],
            (D::Torque, "N·m"),
            brake_holding_torque,
        ),
        Entry::own(
            &thermal::THERMAL_GROWTH.note,
            &[
                Argument::not_negative("length", D::Length),
                Argument::value("temperature-rise", D::Temperature),
                Argument::value("expansion", D::Expansion).or("11.5µm/(m·K)"),
            ],
            (D::Length, "µm"),
            |given| {
                Ok(Outcome::of(thermal::thermal_growth(
                    given.get("length"),
                    given.get("temperature-rise"),
                    given.get("expansion"),
                )))
            },
        ),
    ]
}

/// The angle of an axis, where words may stand for it.
fn angle(given: &Given) -> crate::units::Angle {
    match given.word("angle") {
        "horizontal" => Measure::of_si(0.0),
        "vertical" => Measure::of_si(std::f64::consts::FRAC_PI_2),
        _ => given.get("angle"),
    }
}

fn same_length(given: &Given, first: &str, second: &str) -> Result<(), Fault> {
    let (one, other) = (given.values(first).len(), given.values(second).len());
    if one == other {
        Ok(())
    } else {
        Err(Fault::Together { why: format!("`{first}` has {one} values and `{second}` has {other}; they must match") })
    }
}

fn not_all_zero(given: &Given, name: &str) -> Result<(), Fault> {
    if given.values(name).iter().sum::<f64>() > 0.0 {
        Ok(())
    } else {
        Err(Fault::Together { why: format!("`{name}` must not all be zero") })
    }
}

fn move_time(given: &Given) -> Result<Outcome, Fault> {
    let time = motion::move_time(
        given.get("travel"),
        given.get("speed"),
        given.get("acceleration"),
        given.get_or("jerk", f64::INFINITY),
    );
    let outcome = Outcome::of(time);
    Ok(if given.has("jerk") { outcome } else { outcome.remark("no jerk given: constant acceleration (trapezoid)") })
}

fn axial_force(given: &Given) -> Result<Outcome, Fault> {
    let direction = given.value("direction");
    if ![-1.0, 0.0, 1.0].contains(&direction) {
        return Err(Fault::OutOfRange {
            name: "direction".into(),
            text: direction.to_string(),
            why: "must be +1, −1, or 0 at rest".into(),
        });
    }
    Ok(Outcome::of(duty::axial_force(
        given.get("mass"),
        given.get("acceleration"),
        angle(given),
        given.get("friction"),
        given.get("process-force"),
        given.get("wiper-force"),
        given.get("direction"),
        given.get("counterbalance-share"),
    )))
}

fn mean_load(given: &Given) -> Result<Outcome, Fault> {
    same_length(given, "forces", "turns")?;
    not_all_zero(given, "turns")?;
    let forces = given.values("forces");
    let both = forces.iter().any(|force| *force > 0.0) && forces.iter().any(|force| *force < 0.0);
    Ok(Outcome::of(duty::mean_load(given.series("forces"), given.series("turns")))
        .valid_if(!both, "the loads have both signs: a preloaded nut needs each sign summed for its own half"))
}

fn rms_torque(given: &Given) -> Result<Outcome, Fault> {
    same_length(given, "torques", "times")?;
    not_all_zero(given, "times")?;
    Ok(Outcome::of(motor::rms_torque(given.series("torques"), given.series::<Ratio>("times"))))
}

fn reflected_inertia(given: &Given) -> Result<Outcome, Fault> {
    let inertia = inertia::mass_inertia(given.get("mass"), given.get("travel-per-turn"), given.get("ratio"));
    Ok(Outcome::of(inertia))
}

fn buffer_stroke(given: &Given) -> Result<Outcome, Fault> {
    let stroke = brake::buffer_stroke(
        given.get("mass"),
        given.get("speed"),
        given.get("buffer-force"),
        given.get("drive-force"),
        angle(given),
        given.get("buffer-efficiency"),
    );
    if stroke.si().is_nan() {
        let why = "drive force and weight exceed what the buffer takes; it does not stop the axis";
        return Err(Fault::NoResult { why: why.into() });
    }
    Ok(Outcome::of(stroke))
}

fn brake_holding_torque(given: &Given) -> Result<Outcome, Fault> {
    Ok(Outcome::of(brake::brake_holding_torque(
        given.get("mass"),
        angle(given),
        given.get("travel-per-turn"),
        given.get("ratio"),
        given.get("safety"),
    )))
}
