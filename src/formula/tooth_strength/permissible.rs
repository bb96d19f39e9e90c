//! The tangential force that flanks and roots of pinion and rack bear.
//!
//! Method: allowable stress over stress of one newton gives the effective force; the factors that depend
//! on the force are undone by bisection. Each force falls, or stays, when cycles, quality number, speed or
//! face load factor rise.

use super::bending::{LoadPoint, ToothForm, notch_sensitivity, pinion_form, rack_form_in, stress_per_force};
use super::contact::stress_squared_per_force;
use super::factors::{LoadFactors, contact_life_factor, root_life_factor};
use crate::formula::gear_geometry::{Mesh, larger, overlap_ratio, smaller};
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Pressure, Ratio, Velocity};

/// Lubricant, speed and roughness factors together: greased open drive, ground flanks.
const LUBRICATION: f64 = 0.92;

const PITTING_VALIDITY: &str = "Teeth not undercut; grade 5 to 10 (finer counts as 5, coarser gives no number); helix up to 30°; greased steel teeth, Z_L·Z_v·Z_R = 0.92; load sharing factors of surface-hardened steel, which through-hardened steel meets; no pitting allowed. Application factor and safety factor 1. Below 100 N/mm the load sharing factor is at its worst and force times factor is kept from falling above.";
const ROOT_VALIDITY: &str = "Teeth not undercut; grade 5 to 10 (finer counts as 5, coarser gives no number); helix up to 30°; life, size and load sharing factors of surface-hardened steel, which through-hardened steel meets or exceeds (its notch factor may be 1 % lower); solid body under the root. Application factor and safety factor 1. Below 100 N/mm the load sharing factor is at its worst and force times factor is kept from falling above.";
const SOURCES: &[Source] = &[
    Source::memory("ISO 6336-1, -2 and -3:2006 with the 2008 correction of Z_β; factor tables"),
    Source::derived("rack as a wheel of infinitely many teeth; checked against Hertz's line contact and 200 000 teeth"),
    Source::practice("grease factor 0.92"),
];

type PittingFn = fn(Length, Ratio, Angle, Ratio, Length, Pressure, Ratio, Ratio, Velocity, Ratio) -> Force;
type RootFn = fn(Length, Ratio, Angle, Ratio, Length, Pressure, Ratio, Ratio, Velocity, Ratio, Ratio) -> Force;

/// Tooth force that the pinion flanks bear.
///
/// Module 2 mm, 20 teeth, metric helix, 24 mm, 1500 MPa, 1e8 cycles, grade 6, 1 m/s, K_Hβ 1.3: 9.56 kN.
pub static PINION_PITTING_FORCE: Formula<PittingFn> = Formula {
    note: Note {
        id: "pinion-pitting-force",
        title: "tangential force that the pinion flanks bear",
        equation: "F_t·K_v·K_Hβ·K_Hα = d·b·(σ_Hlim1·Z_NT·0.92/(Z_B·Z_H·Z_E·Z_ε·Z_β))²",
        inputs: &[
            ("m_n", "module"),
            ("z", "teeth"),
            ("β", "helix"),
            ("x", "profile-shift"),
            ("b", "face-width"),
            ("σ_Hlim1", "pinion-contact-limit"),
            ("N_1", "pinion-cycles"),
            ("Q", "quality"),
            ("v", "speed"),
            ("K_Hβ", "face-load-factor"),
        ],
        validity: PITTING_VALIDITY,
        sources: SOURCES,
    },
    apply: pinion_pitting_force,
};

/// Tooth force that the rack flanks bear.
///
/// Module 2 mm, 20 teeth, metric helix, 24 mm, 1196 MPa, 1e6 cycles, grade 6, 1 m/s, K_Hβ 1.3: 11.48 kN.
pub static RACK_PITTING_FORCE: Formula<PittingFn> = Formula {
    note: Note {
        id: "rack-pitting-force",
        title: "tangential force that the rack flanks bear",
        equation: "F_t·K_v·K_Hβ·K_Hα = d·b·(σ_Hlim2·Z_NT·0.92/(Z_H·Z_E·Z_ε·Z_β))²",
        inputs: &[
            ("m_n", "module"),
            ("z", "teeth"),
            ("β", "helix"),
            ("x", "profile-shift"),
            ("b", "face-width"),
            ("σ_Hlim2", "rack-contact-limit"),
            ("N_2", "rack-cycles"),
            ("Q", "quality"),
            ("v", "speed"),
            ("K_Hβ", "face-load-factor"),
        ],
        validity: PITTING_VALIDITY,
        sources: SOURCES,
    },
    apply: rack_pitting_force,
};

/// Tooth force that the pinion roots bear.
///
/// Module 2 mm, 20 teeth, metric helix, 24 mm, 461/1.4 MPa, 1e8 cycles, grade 6, 1 m/s, K_Hβ 1.3, Y_M 0.7: 6.88 kN.
pub static PINION_ROOT_FORCE: Formula<RootFn> = Formula {
    note: Note {
        id: "pinion-root-force",
        title: "tangential force that the pinion roots bear",
        equation: "F_t·K_v·K_Fβ·K_Fα = b·m_n·2·σ_Flim1·Y_NT·Y_δ·Y_X·Y_M/(Y_F·Y_S·Y_β)",
        inputs: &[
            ("m_n", "module"),
            ("z", "teeth"),
            ("β", "helix"),
            ("x", "profile-shift"),
            ("b", "face-width"),
            ("σ_Flim1", "pinion-bending-limit"),
            ("N_1", "pinion-cycles"),
            ("Q", "quality"),
            ("v", "speed"),
            ("K_Hβ", "face-load-factor"),
            ("Y_M", "reversal-factor"),
        ],
        validity: ROOT_VALIDITY,
        sources: SOURCES,
    },
    apply: pinion_root_force,
};

/// Tooth force that the rack roots bear.
///
/// Module 2 mm, 20 teeth, metric helix, 24 mm, 369/1.4 MPa, 1e6 cycles, grade 6, 1 m/s, K_Hβ 1.3, Y_M 0.7: 6.32 kN.
pub static RACK_ROOT_FORCE: Formula<RootFn> = Formula {
    note: Note {
        id: "rack-root-force",
        title: "tangential force that the rack roots bear",
        equation: "F_t·K_v·K_Fβ·K_Fα = b·m_n·2·σ_Flim2·Y_NT·Y_δ·Y_X·Y_M/(Y_F·Y_S·Y_β)",
        inputs: &[
            ("m_n", "module"),
            ("z", "teeth"),
            ("β", "helix"),
            ("x", "profile-shift"),
            ("b", "face-width"),
            ("σ_Flim2", "rack-bending-limit"),
            ("N_2", "rack-cycles"),
            ("Q", "quality"),
            ("v", "speed"),
            ("K_Hβ", "face-load-factor"),
            ("Y_M", "reversal-factor"),
        ],
        validity: ROOT_VALIDITY,
        sources: SOURCES,
    },
    apply: rack_root_force,
};

/// Force that the pinion flanks bear; arguments as in [`PINION_PITTING_FORCE`].
pub fn pinion_pitting_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    contact_limit: Pressure,
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.pitting_force(true, contact_limit, cycles, face_load_factor)
}

/// Force that the rack flanks bear; arguments as in [`RACK_PITTING_FORCE`].
pub fn rack_pitting_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    contact_limit: Pressure,
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.pitting_force(false, contact_limit, cycles, face_load_factor)
}

/// Force that the pinion roots bear; arguments as in [`PINION_ROOT_FORCE`].
pub fn pinion_root_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    bending_limit: Pressure,
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
    reversal_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.root_force(true, bending_limit, cycles, face_load_factor, reversal_factor)
}

/// Force that the rack roots bear; arguments as in [`RACK_ROOT_FORCE`].
pub fn rack_root_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    bending_limit: Pressure,
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
    reversal_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.root_force(false, bending_limit, cycles, face_load_factor, reversal_factor)
}

/// What the four forces have in common, in SI units.
pub(super) struct Tooth {
    mesh: Mesh,
    overlap: f64,
    module: f64,
    face_width: f64,
    quality: f64,
    speed: f64,
}

impl Tooth {
    pub(super) fn of(
        module: Length,
        teeth: Ratio,
        helix: Angle,
        profile_shift: Ratio,
        face_width: Length,
        quality: Ratio,
        speed: Velocity,
    ) -> Tooth {
        Tooth {
            mesh: Mesh::of(teeth, helix, profile_shift),
            overlap: overlap_ratio(module, helix, face_width).si(),
            module: module.si(),
            face_width: face_width.si(),
            quality: quality.si(),
            speed: speed.si(),
        }
    }

    pub(super) fn factors(&self, face: f64) -> LoadFactors {
        LoadFactors::of(&self.mesh, self.overlap, self.face_width, self.quality, self.speed, face)
    }

    /// Effective force that flanks bear at a life factor of 1.
    pub(super) fn flank_endurance(&self, on_pinion: bool, limit: Pressure) -> f64 {
        let allowed = limit.si() * LUBRICATION;
        let per_force = stress_squared_per_force(&self.mesh, self.overlap, self.module, self.face_width, on_pinion);
        allowed * allowed / per_force
    }

    fn pitting_force(&self, on_pinion: bool, limit: Pressure, cycles: Ratio, face: Ratio) -> Force {
        let life = contact_life_factor(cycles.si());
        let factors = self.factors(face.si());
        Force::of_si(factors.force_for(self.flank_endurance(on_pinion, limit) * life * life))
    }

    /// Face factor of the root K_Fβ from that of the flank.
    pub(super) fn root_face(&self, face: Ratio) -> f64 {
        let slimness = self.face_width / (2.25 * self.module);
        let exponent = slimness * slimness / (1.0 + slimness + slimness * slimness);
        face.si().powf(exponent)
    }

    /// Root of the pinion tooth, or of the rack tooth, loaded at its outer point of single contact.
    pub(super) fn form(&self, on_pinion: bool) -> ToothForm {
        if on_pinion { pinion_form(&self.mesh, LoadPoint::SingleContact) } else { rack_form_in(&self.mesh) }
    }

    /// Effective force that a root bears at a life factor of 1.
    pub(super) fn root_endurance(&self, form: &ToothForm, limit: Pressure, reversal: Ratio) -> f64 {
        let module_mm = self.module * 1e3;
        // Y_X of surface-hardened steel
        let size = if module_mm <= 5.0 { 1.0 } else { larger(1.05 - 0.01 * module_mm, 0.8) };
        let allowed = 2.0 * limit.si() * notch_sensitivity(form) * size * reversal.si();
        allowed / stress_per_force(form, &self.mesh, self.overlap, self.module, self.face_width)
    }

    fn root_force(&self, on_pinion: bool, limit: Pressure, cycles: Ratio, face: Ratio, reversal: Ratio) -> Force {
        let factors = self.factors(self.root_face(face));
        let endurance = self.root_endurance(&self.form(on_pinion), limit, reversal);
        Force::of_si(factors.force_for(endurance * root_life_factor(cycles.si())))
    }
}

/// The least of four forces: what governs the teeth.
pub static LEAST_4: Formula<fn(Force, Force, Force, Force) -> Force> = Formula {
    note: Note {
        id: "permissible-tooth-force-least",
        title: "least of the forces that flanks and roots bear",
        equation: "F_perm = min(F_H1, F_H2, F_F1, F_F2)",
        inputs: &[
            ("F_H1", "pinion-pitting-force"),
            ("F_H2", "rack-pitting-force"),
            ("F_F1", "pinion-root-force"),
            ("F_F2", "rack-root-force"),
        ],
        validity: "As its parts; no number if one of them has none.",
        sources: &[Source::derived("the weakest part governs")],
    },
    apply: least_4,
};
/// The least of four forces.
#[inline]
pub fn least_4(a: Force, b: Force, c: Force, d: Force) -> Force {
    Force::of_si(smaller(smaller(a.si(), b.si()), smaller(c.si(), d.si())))
}
