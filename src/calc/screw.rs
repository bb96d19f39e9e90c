//! Entries of `calc` on the screw: efficiency, torque, whip, buckling, stiffness, lead accuracy.

use super::Entry;
use super::argument::{Argument, Kind};
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::{column, lead_accuracy, screw, shaft, stiffness};
use crate::units::Dimension as D;
use crate::units::{Angle, Length, Measure, Ratio};

/// Ways to hold both ends of a screw.
const ENDS: &[&str] = &["fixed-free", "supported-supported", "fixed-supported", "fixed-fixed"];
/// Squared eigenvalues of these ends: roots of cos λ·cosh λ = −1, sin λ = 0, tan λ = tanh λ, cos λ·cosh λ = 1.
const EIGENVALUES_SQUARED: [f64; 4] =
    [3.516_015_268_5, std::f64::consts::PI * std::f64::consts::PI, 15.418_205_716_98, 22.373_285_448_06];
/// Buckling factors of these ends; the third is (4.493 409 46/π)².
const BUCKLING_FACTORS: [f64; 4] = [0.25, 1.0, 2.045_748_515_94, 4.0];

const LEAD: Argument = Argument::positive("lead", D::Length).symbol("P_h");
const CIRCLE: Argument = Argument::positive("ball-circle-diameter", D::Length).symbol("D_pw");
const FRICTION: Argument = Argument::not_negative("friction", D::Ratio);

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    vec![
        Entry::own(&screw::SCREW_EFFICIENCY.note, &[LEAD, CIRCLE, FRICTION], (D::Ratio, "1"), efficiency),
        Entry::own(&screw::BACK_DRIVING_EFFICIENCY.note, &[LEAD, CIRCLE, FRICTION], (D::Ratio, "1"), back_driving),
        Entry::own(
            &screw::SCREW_TORQUE.note,
            &[Argument::value("axial-force", D::Force), LEAD, Argument::positive("efficiency", D::Ratio)],
            (D::Torque, "N·m"),
            torque,
        ),
        Entry::own(
            &screw::PRELOAD_DRAG.note,
            &[Argument::not_negative("preload", D::Force), LEAD, CIRCLE],
            (D::Torque, "N·m"),
            preload_drag,
        ),
        Entry::own(
            &shaft::WHIP_SPEED.note,
            &[
                Argument::positive("root-diameter", D::Length),
                Argument::positive("free-length", D::Length),
                Argument::word("ends", ENDS),
                Argument::not_negative("bore", D::Length).or("0mm").symbol("d_b"),
                Argument::value("axial-tension", D::Force).or("0N").symbol("F"),
            ],
            (D::AngularVelocity, "1/min"),
            whip,
        ),
        Entry::own(
            &column::COLUMN_LOAD.note,
            &[
                Argument::positive("root-diameter", D::Length),
                Argument::positive("loaded-length", D::Length),
                Argument::word("ends", ENDS),
                Argument::not_negative("bore", D::Length).or("0mm").symbol("d_h"),
                Argument::positive("yield-strength", D::Pressure).unless("Euler alone"),
            ],
            (D::Force, "N"),
            column_load,
        ),
        Entry::own(
            &stiffness::SCREW_STIFFNESS.note,
            &[
                Argument::positive("core-diameter", D::Length),
                Argument::positive("position", D::Length),
                Argument::positive("length", D::Length).unless("one thrust end needs none"),
                Argument::word("thrust-ends", &["one", "both"]),
            ],
            (D::Stiffness, "N/µm"),
            axial_stiffness,
        ),
        Entry::own(
            &stiffness::SCREW_TORSION.note,
            &[Argument::positive("core-diameter", D::Length), Argument::positive("length", D::Length), LEAD],
            (D::Stiffness, "N/µm"),
            |given| {
                Ok(Outcome::of(stiffness::screw_torsion(
                    given.get("core-diameter"),
                    given.get("length"),
                    given.get("lead"),
                )))
            },
        ),
        Entry::own(
            &lead_accuracy::MEAN_TRAVEL_DEVIATION.note,
            &[Argument::new("grade", Kind::Text("P3|T7")), Argument::positive("travel", D::Length)],
            (D::Length, "µm"),
            mean_travel_deviation,
        ),
    ]
}

/// The place of the given ends in the tables.
fn ends(given: &Given) -> usize {
    ENDS.iter().position(|word| *word == given.word("ends")).unwrap_or(0)
}

fn lead_angle(given: &Given) -> Angle {
    screw::lead_angle(given.get("lead"), given.get("ball-circle-diameter"))
}

fn efficiency(given: &Given) -> Result<Outcome, Fault> {
    let angle = lead_angle(given);
    Ok(Outcome::of(screw::screw_efficiency(angle, given.get("friction"))).step("β", angle))
}

fn back_driving(given: &Given) -> Result<Outcome, Fault> {
    let angle = lead_angle(given);
    let locks = given.value("friction") >= angle.si().tan();
    Ok(Outcome::of(screw::back_driving_efficiency(angle, given.get("friction"))).step("β", angle).valid_if(
        !locks,
        "the lead angle is not above the friction angle: the screw locks itself, which is not to be relied on",
    ))
}

fn torque(given: &Given) -> Result<Outcome, Fault> {
    let efficiency = given.value("efficiency");
    if efficiency > 1.0 {
        return Err(Fault::OutOfRange {
            name: "efficiency".into(),
            text: efficiency.to_string(),
            why: "must not exceed 1".into(),
        });
    }
    Ok(Outcome::of(screw::screw_torque(given.get("axial-force"), given.get("lead"), given.get("efficiency"))))
}

fn preload_drag(given: &Given) -> Result<Outcome, Fault> {
    let angle = lead_angle(given);
    Ok(Outcome::of(screw::preload_drag(given.get("preload"), given.get("lead"), angle)).step("β", angle))
}

fn whip(given: &Given) -> Result<Outcome, Fault> {
    let (root, bore, length): (Length, Length, Length) =
        (given.get("root-diameter"), given.get("bore"), given.get("free-length"));
    if bore.si() >= root.si() {
        return Err(Fault::Together { why: "`bore` must be smaller than `root-diameter`".into() });
    }
    let eigenvalue = Ratio::of_si(EIGENVALUES_SQUARED[ends(given)]);
    let plain = shaft::hollow_whip_speed(root, bore, length, eigenvalue);
    let tension = given.get("axial-tension");
    let mut outcome = Outcome::of(plain).step("λ²", eigenvalue);
    if tension != Measure::of_si(0.0) {
        let buckling = column::column_load(
            root,
            bore,
            length,
            Ratio::of_si(BUCKLING_FACTORS[ends(given)]),
            Measure::of_si(f64::INFINITY),
        );
        let factor = shaft::tension_whip_factor(tension, buckling, eigenvalue);
        if factor.si() <= 0.0 {
            let why = format!("the screw buckles at {:.4} kN of compression", buckling.si() / 1e3);
            return Err(Fault::NoResult { why });
        }
        let share = tension.si() / buckling.si();
        outcome.value *= factor.si();
        outcome = outcome
            .step("F_cr", buckling)
            .step("n/n_0", factor)
            .remark("with axial force: n_cr·√(1 + F/F_cr), corrected for a free end")
            .valid_if((-0.5..=2.0).contains(&share), "the axial force lies beyond −0.5 to +2 Euler loads");
    }
    Ok(outcome.valid_if(length.si() >= 20.0 * root.si(), "the length is below 20 root diameters"))
}

fn column_load(given: &Given) -> Result<Outcome, Fault> {
    let factor = BUCKLING_FACTORS[ends(given)];
    let (root, bore, length): (Length, Length, Length) =
        (given.get("root-diameter"), given.get("bore"), given.get("loaded-length"));
    if bore.si() >= root.si() {
        return Err(Fault::Together { why: "`bore` must be smaller than `root-diameter`".into() });
    }
    let strength = given.get_or("yield-strength", f64::INFINITY);
    let load = column::column_load(root, bore, length, Ratio::of_si(factor), strength);
    let slenderness = length.si() / factor.sqrt() / (root.si().hypot(bore.si()) / 4.0);
    let outcome = Outcome::of(load).step("N", Ratio::of_si(factor)).step("λ_s", Ratio::of_si(slenderness));
    if given.has("yield-strength") {
        return Ok(outcome);
    }
    Ok(outcome.remark("no yield strength given: Euler alone").valid_if(
        slenderness >= 105.0,
        "slenderness below 105, where ordinary steel yields before it buckles by Euler; give the yield strength",
    ))
}

fn axial_stiffness(given: &Given) -> Result<Outcome, Fault> {
    let both = given.word("thrust-ends") == "both";
    if both && !given.has("length") {
        let why = "`thrust-ends=both` needs `length`, the distance of the thrust bearings";
        return Err(Fault::Together { why: why.into() });
    }
    let beyond = given.has("length") && given.value("position") > given.value("length");
    if beyond || (both && given.value("position") == given.value("length")) {
        return Err(Fault::Together { why: "`position` must lie between the bearings".into() });
    }
    Ok(Outcome::of(stiffness::screw_stiffness(
        given.get("core-diameter"),
        given.get("position"),
        given.get_or("length", f64::INFINITY),
        Ratio::of_si(if both { 2.0 } else { 1.0 }),
    )))
}

fn mean_travel_deviation(given: &Given) -> Result<Outcome, Fault> {
    let text = given.word("grade");
    let (positioning, number) = grade(text)?;
    let travel: Length = given.get("travel");
    let variation = lead_accuracy::variation_300_of_grade(Ratio::of_si(number));
    let kind = Ratio::of_si(if positioning { 1.0 } else { 0.0 });
    let outcome = Outcome::of(lead_accuracy::mean_travel_deviation(Ratio::of_si(number), kind, variation, travel))
        .step("v_300p", variation);
    if !positioning {
        return Ok(outcome);
    }
    Ok(outcome
        .valid_if(travel.si() <= 6.3, "travel beyond 6.3 m, where the table ends")
        .valid_if(number > 0.0 || travel.si() <= 1.6, "grade P0 beyond 1.6 m, where its table ends"))
}

/// Reads a grade: "P3", "T7", or a plain number (0 to 5 positioning, 7 and 10 transport).
fn grade(text: &str) -> Result<(bool, f64), Fault> {
    let refused = |why: &str| Fault::OutOfRange { name: "grade".into(), text: format!("`{text}`"), why: why.into() };
    let upper = text.to_uppercase();
    if upper.starts_with('C') {
        return Err(refused("must be an ISO grade such as P3 or T7; the C grades of JIS differ at the same number"));
    }
    let (letter, digits) = match upper.strip_prefix('P') {
        Some(rest) => (Some(true), rest),
        None => upper.strip_prefix('T').map_or((None, upper.as_str()), |rest| (Some(false), rest)),
    };
    let number: f64 = match digits {
        "0" | "1" | "2" | "3" | "4" | "5" | "7" | "10" => digits.parse().unwrap_or(f64::NAN),
        _ => return Err(refused("must be P0 to P5 or T0 to T5, T7 or T10")),
    };
    match letter.unwrap_or(number <= 5.0) {
        true if number > 5.0 => Err(refused("must be P0 to P5; 7 and 10 are transport grades, T7 and T10")),
        positioning => Ok((positioning, number)),
    }
}
