//! Entries of `calc` on pinion and rack: geometry, mesh, accuracy, gearbox.
//!
//! Method: `helix` is a word or an angle; the word `metric` stands for the helix whose transverse pitch is 10/3
//! of the module. Limits: undercut and pointed teeth are worked out all the same, and said to lie outside validity.

use super::Entry;
use super::argument::{Argument, Kind};
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::{gear_accuracy, gear_geometry, gearbox, mesh};
use crate::units::Dimension as D;
use crate::units::{Angle, Force, Length, Measure, Ratio};
use std::f64::consts::PI;

pub(super) const HELIX: Argument = Argument::new("helix", Kind::WordOr(&["straight", "metric"], D::Angle));
pub(super) const MODULE: Argument = Argument::positive("module", D::Length);
pub(super) const TEETH: Argument = Argument::positive("teeth", D::Ratio);
pub(super) const FACE_WIDTH: Argument = Argument::positive("face-width", D::Length);
pub(super) const SHIFT: Argument = Argument::value("profile-shift", D::Ratio).or("0");
const DIAMETER: Argument = Argument::positive("pinion-diameter", D::Length);

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    let mut entries = geometry();
    entries.extend(drive());
    entries
}

fn geometry() -> Vec<Entry> {
    let optional_width = FACE_WIDTH.unless("the transverse contact ratio does not depend on it");
    let optional_teeth = TEETH.unless("the overlap ratio does not depend on it");
    let ratio = (D::Ratio, "1");
    vec![
        Entry::own(&gear_geometry::PINION_DIAMETER.note, &[MODULE, TEETH, HELIX], (D::Length, "mm"), |given| {
            let value = gear_geometry::pinion_diameter(given.get("module"), given.get("teeth"), helix(given)?);
            Ok(whole_teeth(given, Outcome::of(value)))
        }),
        Entry::own(
            &gear_geometry::TRANSVERSE_CONTACT_RATIO.note,
            &[MODULE, TEETH, HELIX, optional_width, SHIFT],
            ratio,
            |given| {
                let tooth = Tooth::of(given)?;
                Ok(tooth.judge(given, Outcome::of(tooth.transverse())))
            },
        ),
        Entry::own(
            &gear_geometry::OVERLAP_RATIO.note,
            &[MODULE, optional_teeth, HELIX, FACE_WIDTH, SHIFT],
            ratio,
            |given| Ok(Outcome::of(Tooth::of(given)?.overlap())),
        ),
        Entry::own(
            &gear_geometry::TOTAL_CONTACT_RATIO.note,
            &[MODULE, TEETH, HELIX, FACE_WIDTH, SHIFT],
            ratio,
            |given| {
                let tooth = Tooth::of(given)?;
                let (transverse, overlap) = (tooth.transverse(), tooth.overlap());
                let total = gear_geometry::total_contact_ratio(transverse, overlap);
                let outcome = Outcome::of(total).step("ε_α", transverse).step("ε_β", overlap);
                Ok(tooth.judge(given, outcome))
            },
        ),
        Entry::own(&gear_geometry::LEAST_TEETH.note, &[HELIX, SHIFT], ratio, |given| {
            Ok(Outcome::of(gear_geometry::least_teeth(helix(given)?, given.get("profile-shift"))))
        }),
        Entry::own(&gear_geometry::LEAST_PROFILE_SHIFT.note, &[TEETH, HELIX], ratio, |given| {
            Ok(Outcome::of(gear_geometry::least_profile_shift(given.get("teeth"), helix(given)?)))
        }),
        Entry::own(&gear_geometry::TIP_THICKNESS.note, &[TEETH, HELIX, SHIFT], ratio, |given| {
            let tooth = Tooth::of(given)?;
            let value = gear_geometry::tip_thickness(tooth.teeth, tooth.helix, tooth.shift);
            Ok(tooth.judge(given, Outcome::of(value)))
        }),
        Entry::own(
            &gear_geometry::RADIAL_LOAD.note,
            &[Argument::value("tangential-force", D::Force), HELIX],
            (D::Force, "N"),
            |given| Ok(Outcome::of(gear_geometry::radial_load(given.get("tangential-force"), helix(given)?))),
        ),
    ]
}

fn drive() -> Vec<Entry> {
    let lines =
        [Argument::positive("transverse-contact-ratio", D::Ratio), Argument::not_negative("overlap-ratio", D::Ratio)];
    let pitch = [Argument::positive("diameter", D::Length), MODULE, Argument::value("class", D::Ratio)];
    vec![
        Entry::own(&mesh::CONTACT_LINE_MINIMUM.note, &lines, (D::Ratio, "1"), |given| {
            contact_line(given, mesh::contact_line_minimum)
        }),
        Entry::own(&mesh::CONTACT_LINE_MAXIMUM.note, &lines, (D::Ratio, "1"), |given| {
            contact_line(given, mesh::contact_line_maximum)
        }),
        Entry::own(
            &mesh::MESH_STIFFNESS.note,
            &[MODULE, TEETH, HELIX, FACE_WIDTH, SHIFT],
            (D::Stiffness, "N/µm"),
            |given| {
                let tooth = Tooth::of(given)?;
                let value = mesh::mesh_stiffness(tooth.module, tooth.teeth, tooth.helix, tooth.face_width, tooth.shift);
                Ok(tooth.judge(given, Outcome::of(value)))
            },
        ),
        Entry::own(
            &mesh::MESH_RIPPLE.note,
            &[
                Argument::not_negative("force", D::Force),
                MODULE,
                TEETH,
                HELIX,
                FACE_WIDTH,
                Argument::not_negative("pitch-deviation", D::Length).or("0 µm"),
                SHIFT,
            ],
            (D::Length, "µm"),
            ripple,
        ),
        Entry::own(&gear_accuracy::TOTAL_PITCH_DEVIATION.note, &pitch, (D::Length, "µm"), |given| {
            pitch_deviation(given, gear_accuracy::total_pitch_deviation)
        }),
        Entry::own(&gear_accuracy::SINGLE_PITCH_DEVIATION.note, &pitch, (D::Length, "µm"), |given| {
            pitch_deviation(given, gear_accuracy::single_pitch_deviation)
        }),
        Entry::own(
            &gear_accuracy::BACKLASH_AT_RACK.note,
            &[Argument::not_negative("angle", D::Angle), DIAMETER],
            (D::Length, "µm"),
            |given| Ok(Outcome::of(gear_accuracy::backlash_at_rack(given.get("angle"), given.get("pinion-diameter")))),
        ),
        Entry::own(
            &gearbox::GEARBOX_LINEAR_STIFFNESS.note,
            &[Argument::positive("torsional-stiffness", D::TorsionalStiffness), DIAMETER],
            (D::Stiffness, "N/µm"),
            |given| {
                let (torsional, diameter) = (given.get("torsional-stiffness"), given.get("pinion-diameter"));
                Ok(Outcome::of(gearbox::gearbox_linear_stiffness(torsional, diameter)))
            },
        ),
        Entry::own(
            &gearbox::MESH_EFFICIENCY.note,
            &[MODULE, TEETH, HELIX, SHIFT, Argument::not_negative("friction", D::Ratio)],
            (D::Ratio, "1"),
            |given| {
                let tooth = Tooth::of(given)?;
                let friction = given.get("friction");
                let value = gearbox::mesh_efficiency(tooth.module, tooth.teeth, tooth.helix, tooth.shift, friction);
                Ok(tooth.judge(given, Outcome::of(value)))
            },
        ),
    ]
}

/// The helix angle that was given as a word or a value.
fn helix(given: &Given) -> Result<Angle, Fault> {
    match given.word("helix") {
        "straight" => return Ok(Angle::of_si(0.0)),
        "metric" => return Ok(gear_geometry::metric_helix()),
        _ => {}
    }
    let angle: Angle = given.get("helix");
    if angle.si().abs() < PI / 4.0 {
        return Ok(angle);
    }
    let text = format!("{:.4} deg", angle.si().to_degrees());
    Err(Fault::OutOfRange { name: "helix".into(), text, why: "must lie below 45 deg".into() })
}

/// A pinion tooth as it was given; what the entry does not ask for is NaN.
pub(super) struct Tooth {
    pub module: Length,
    pub teeth: Ratio,
    pub helix: Angle,
    pub face_width: Length,
    pub shift: Ratio,
}

impl Tooth {
    pub(super) fn of(given: &Given) -> Result<Tooth, Fault> {
        let teeth = given.value("teeth");
        if teeth < 4.0 {
            let why = "must be at least 4";
            return Err(Fault::OutOfRange { name: "teeth".into(), text: teeth.to_string(), why: why.into() });
        }
        Ok(Tooth {
            module: given.get("module"),
            teeth: given.get("teeth"),
            helix: helix(given)?,
            face_width: given.get("face-width"),
            shift: given.get("profile-shift"),
        })
    }

    fn transverse(&self) -> Ratio {
        gear_geometry::transverse_contact_ratio(self.module, self.teeth, self.helix, self.shift)
    }

    fn overlap(&self) -> Ratio {
        gear_geometry::overlap_ratio(self.module, self.helix, self.face_width)
    }

    /// Says what makes the tooth unfit for the formulas.
    pub(super) fn judge(&self, given: &Given, outcome: Outcome) -> Outcome {
        let least = gear_geometry::least_profile_shift(self.teeth, self.helix).si();
        let undercut = format!(
            "the pinion is undercut: with {} teeth the profile shift must be at least {least:.3}",
            self.teeth.si()
        );
        let thin = gear_geometry::tip_thickness(self.teeth, self.helix, self.shift).si() < 0.0;
        whole_teeth(given, outcome)
            .valid_if(self.shift.si() >= least - 1e-9, undercut)
            .valid_if(!thin, "the pinion teeth are pointed: the profile shift is too large")
    }
}

fn whole_teeth(given: &Given, outcome: Outcome) -> Outcome {
    outcome.valid_if(given.value("teeth").fract() == 0.0, "the number of teeth is not whole")
}

fn contact_line(given: &Given, line: fn(Ratio, Ratio) -> Ratio) -> Result<Outcome, Fault> {
    let transverse: Ratio = given.get("transverse-contact-ratio");
    let outcome = Outcome::of(line(transverse, given.get("overlap-ratio")));
    Ok(outcome.valid_if(transverse.si() >= 1.0, "a transverse contact ratio below 1: the teeth let go of each other"))
}

fn ripple(given: &Given) -> Result<Outcome, Fault> {
    let tooth = Tooth::of(given)?;
    let force: Force = given.get("force");
    let (transverse, overlap) = (tooth.transverse(), tooth.overlap());
    let value = mesh::mesh_ripple(
        force,
        tooth.module,
        tooth.teeth,
        tooth.helix,
        tooth.face_width,
        tooth.shift,
        given.get("pitch-deviation"),
    );
    let outcome = Outcome::of(value)
        .step("Λ_min", mesh::contact_line_minimum(transverse, overlap))
        .step("Λ_max", mesh::contact_line_maximum(transverse, overlap));
    Ok(tooth.judge(given, outcome))
}

fn pitch_deviation(given: &Given, tolerance: fn(Length, Length, Ratio) -> Length) -> Result<Outcome, Fault> {
    let (diameter, module, class): (Length, Length, Ratio) =
        (given.get("diameter"), given.get("module"), given.get("class"));
    let value = tolerance(diameter, module, class);
    Ok(Outcome::of(value)
        .step("rounded as the standard prints", gear_accuracy::rounded_tolerance(value))
        .valid_if((0.005..=15.0).contains(&diameter.si()), "the diameter lies outside 5 mm to 15 m")
        .valid_if((0.5e-3..=70e-3).contains(&module.si()), "the module lies outside 0.5 to 70 mm")
        .valid_if((1.0..=11.0).contains(&class.si()), "the class lies outside 1 to 11"))
}
