//! Entries of `calc` on the strength of teeth: form and stress correction, permissible force.
//!
//! Method: steels are named; a safety factor divides the stress limit. Limits: one hardness a steel.

use super::argument::{Argument, Kind};
use super::error::Fault;
use super::gear::{FACE_WIDTH, HELIX, MODULE, SHIFT, TEETH, Tooth};
use super::generic::{self, Plain};
use super::given::{Given, Outcome};
use super::{Entry, Run};
use crate::formula::Note;
use crate::formula::tooth_strength::{
    self, MATERIALS, PINION_FLANK_ENDURANCE, PINION_ROOT_ENDURANCE, RACK_FLANK_ENDURANCE, RACK_ROOT_ENDURANCE,
    ToothMaterial,
};
use crate::source::Source;
use crate::units::Dimension as D;
use crate::units::{Angle, Length, Measure, Pressure, Ratio, Velocity};

const STEELS: &[&str] = &["case-hardened", "induction-hardened", "through-hardened", "soft"];

/// The permissible force of a pair of pinion and rack, over all its flanks and roots.
static PERMISSIBLE_TOOTH_FORCE: Note = Note {
    id: "permissible-tooth-force",
    title: "tangential force that pinion and rack bear",
    equation: "F_perm = least of F_H1, F_H2 (flanks, at σ_Hlim/S_H) and F_F1, F_F2 (roots, at σ_Flim/S_F)",
    inputs: &[
        ("m_n", "module"),
        ("z", "teeth"),
        ("β", "helix"),
        ("b", "face-width"),
        ("x", "profile-shift"),
        ("N_1", "pinion-cycles"),
        ("N_2", "rack-cycles"),
        ("Q", "grade"),
        ("v", "speed"),
        ("K_Hβ", "face-load-factor"),
        ("S_H", "flank-safety"),
        ("S_F", "root-safety"),
        ("Y_M", "reversal-factor"),
    ],
    validity: "Teeth not undercut, helix up to 30°, grade 5 to 10, v·z/100 up to 10 m/s; greased steel teeth, Z_L·Z_v·Z_R = 0.92; the force is the true peak (K_A = 1). Below 100 N/mm of line load the teeth are taken to share at their worst.",
    sources: &[
        Source::memory("ISO 6336-1, -2 and -3:2006 with the 2008 correction of Z_β; ISO 6336-5:2003"),
        Source::derived("rack as a wheel of infinitely many teeth; least of the four forces"),
    ],
};

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    let teeth = Argument { kind: Kind::WordOr(&["rack"], D::Ratio), ..TEETH };
    let helix = HELIX.or("straight");
    let positive = |name, default| Argument::positive(name, D::Ratio).or(default);
    let shown = |formula, run| Entry { run: Run::Own(run), ..generic::entry(formula) };
    vec![
        shown(&PINION_FLANK_ENDURANCE, |given| flank_endurance(&PINION_FLANK_ENDURANCE, given, true)),
        shown(&RACK_FLANK_ENDURANCE, |given| flank_endurance(&RACK_FLANK_ENDURANCE, given, false)),
        shown(&PINION_ROOT_ENDURANCE, |given| root_endurance(&PINION_ROOT_ENDURANCE, given, true)),
        shown(&RACK_ROOT_ENDURANCE, |given| root_endurance(&RACK_ROOT_ENDURANCE, given, false)),
        Entry::own(&tooth_strength::TIP_FORM_FACTOR.note, &[teeth, helix, SHIFT], (D::Ratio, "1"), |given| {
            tip(given, tooth_strength::tip_form_factor, |rack| rack.form_factor)
        }),
        Entry::own(&tooth_strength::TIP_STRESS_CORRECTION.note, &[teeth, helix, SHIFT], (D::Ratio, "1"), |given| {
            tip(given, tooth_strength::tip_stress_correction, |rack| rack.stress_correction())
        }),
        Entry::own(
            &PERMISSIBLE_TOOTH_FORCE,
            &[
                MODULE,
                TEETH,
                HELIX,
                FACE_WIDTH,
                SHIFT,
                Argument::word("pinion-material", STEELS).or("case-hardened"),
                Argument::word("rack-material", STEELS).or("induction-hardened"),
                positive("pinion-cycles", "1e8"),
                positive("rack-cycles", "1e6"),
                positive("grade", "6"),
                Argument::not_negative("speed", D::Velocity).or("1 m/s"),
                positive("face-load-factor", "1.3"),
                positive("flank-safety", "1.0"),
                positive("root-safety", "1.4"),
                positive("reversal-factor", "0.7"),
            ],
            (D::Force, "kN"),
            permissible,
        ),
    ]
}

/// The mesh of the arguments of a formula on endurance.
fn mesh(given: &Given) -> (Length, Ratio, Angle, Ratio, Length) {
    (given.get("module"), given.get("teeth"), given.get("helix"), given.get("profile-shift"), given.get("face-width"))
}

/// What flanks bear, with the factors on the way.
fn flank_endurance(formula: &'static dyn Plain, given: &Given, on_pinion: bool) -> Result<Outcome, Fault> {
    let factors = tooth_strength::flank_factors(mesh(given), on_pinion);
    let steps = [
        ("Z_B", factors.single_contact),
        ("Z_H", factors.zone),
        ("Z_E in √MPa", factors.elasticity / 1e3),
        ("Z_ε", factors.contact_ratio_squared.sqrt()),
        ("Z_β", 1.0 / factors.cos_helix.sqrt()),
    ];
    generic::run(formula, given).map(|outcome| outcome.factors(steps))
}

/// What a root bears, with the factors on the way.
fn root_endurance(formula: &'static dyn Plain, given: &Given, on_pinion: bool) -> Result<Outcome, Fault> {
    let factors = tooth_strength::root_factors(mesh(given), given.get("slip-layer"), on_pinion);
    let steps =
        [("Y_F", factors.form), ("Y_S", factors.stress_correction), ("Y_β", factors.helix), ("Y_δ", factors.notch)];
    generic::run(formula, given).map(|outcome| outcome.factors(steps))
}

/// A factor for tip load of a pinion or a rack tooth.
fn tip(
    given: &Given,
    pinion: fn(Ratio, Angle, Ratio) -> Ratio,
    rack: fn(&tooth_strength::ToothForm) -> f64,
) -> Result<Outcome, Fault> {
    if given.word("teeth") == "rack" {
        if given.value("profile-shift") != 0.0 {
            return Err(Fault::Together { why: "a rack tooth has no `profile-shift`".into() });
        }
        return Ok(Outcome::of(Ratio::of_si(rack(&tooth_strength::rack_tooth_at_tip()))));
    }
    let tooth = Tooth::of(given)?;
    Ok(tooth.judge(given, Outcome::of(pinion(tooth.teeth, tooth.helix, tooth.shift))))
}

/// The steel that an argument names.
fn steel(given: &Given, name: &str) -> &'static ToothMaterial {
    tooth_strength::material(given.word(name)).unwrap_or(&MATERIALS[0])
}

fn permissible(given: &Given) -> Result<Outcome, Fault> {
    let tooth = Tooth::of(given)?;
    let (quality, speed): (Ratio, Velocity) = (given.get("grade"), given.get("speed"));
    if quality.si() > 10.0 {
        let why = "must not exceed 10";
        return Err(Fault::OutOfRange { name: "grade".into(), text: quality.si().to_string(), why: why.into() });
    }
    let (n1, n2): (Ratio, Ratio) = (given.get("pinion-cycles"), given.get("rack-cycles"));
    let (face, reversal) = (given.get("face-load-factor"), given.get("reversal-factor"));
    let over = |limit: Pressure, safety: &str| Pressure::of_si(limit.si() / given.value(safety));
    let (pinion, rack) = (steel(given, "pinion-material"), steel(given, "rack-material"));
    let (m, z, h, x, b) = (tooth.module, tooth.teeth, tooth.helix, tooth.shift, tooth.face_width);
    let flank = |limit| over(limit, "flank-safety");
    let root = |limit| over(limit, "root-safety");
    use tooth_strength::{least_4, pinion_pitting_force, pinion_root_force, rack_pitting_force, rack_root_force};
    let parts = [
        (
            "F_H1",
            "pinion flanks",
            pinion_pitting_force(m, z, h, x, b, flank(pinion.contact_limit()), n1, quality, speed, face),
        ),
        (
            "F_F1",
            "pinion roots",
            pinion_root_force(
                m,
                z,
                h,
                x,
                b,
                (pinion.class, root(pinion.bending_limit())),
                n1,
                quality,
                speed,
                face,
                reversal,
            ),
        ),
        (
            "F_H2",
            "rack flanks",
            rack_pitting_force(m, z, h, x, b, flank(rack.contact_limit()), n2, quality, speed, face),
        ),
        (
            "F_F2",
            "rack roots",
            rack_root_force(
                m,
                z,
                h,
                x,
                b,
                (rack.class, root(rack.bending_limit())),
                n2,
                quality,
                speed,
                face,
                reversal,
            ),
        ),
    ];
    let least = least_4(parts[0].2, parts[1].2, parts[2].2, parts[3].2);
    let mut outcome = Outcome::of(least);
    for (symbol, words, force) in parts {
        outcome = outcome.step(symbol, force);
        if force == least {
            outcome = outcome.remark(format!("the {words} govern"));
        }
    }
    outcome = outcome.remark(format!("pinion {}; rack {}", pinion.words, rack.words));
    if least.si() / b.si() < 100e3 {
        outcome = outcome.remark("below 100 N/mm of line load: load sharing taken at its worst");
    }
    Ok(tooth
        .judge(given, outcome)
        .valid_if(h.si().abs() <= 30f64.to_radians() + 1e-12, "the helix is above 30°")
        .valid_if(quality.si() >= 5.0, "a grade finer than 5 counts as 5")
        .valid_if(speed.si() * z.si() / 100.0 <= 10.0, "v·z/100 is above 10 m/s")
        .valid_if(face.si() >= 1.0, "the face load factor is below 1")
        .valid_if(reversal.si() <= 1.0, "the reversal factor is above 1"))
}
