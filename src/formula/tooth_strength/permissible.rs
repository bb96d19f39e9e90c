//! The tangential force that flanks and roots of pinion and rack bear.
//!
//! Method: allowable stress over stress of one newton gives the effective force; the factors that depend
//! on the force are undone by bisection. Each force falls, or stays, when cycles, quality number, speed or
//! face load factor rise.

use super::bending::{LoadPoint, RootFactors, ToothForm, pinion_form, rack_form_in};
use super::contact::FlankFactors;
use super::endurance::Felt;
use super::factors::{LoadFactors, contact_life_factor, root_life_factor};
use super::material::SteelClass;
use super::steel::{ROOT_SIZE_FACTOR, ROOT_SIZE_FACTOR_HARDENED, root_face_load_factor, root_strength};
use crate::formula::extremes::smaller;
use crate::formula::gear_geometry::{Mesh, overlap_ratio};
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Pressure, Ratio, Velocity};

/// Lubricant, speed and roughness factors together: greased open drive, ground flanks.
const LUBRICATION: f64 = 0.92;

type ForceFn = fn(Force, Ratio, Ratio, Force, Ratio, Length) -> Force;

const VALIDITY: &str = "As what teeth feel of a force. Below 100 N/mm the load sharing factor is at its worst, and force times factor is kept from falling above. Application factor and safety factor 1.";
const SOURCES: &[Source] = &[
    Source::memory("ISO 6336-1, -2 and -3:2006 with the 2008 correction of Z_β; factor tables"),
    Source::derived("rack as a wheel of infinitely many teeth; checked against Hertz's line contact and 200 000 teeth"),
];

/// Tooth force that flanks bear so often. 8 kN at the knee, 1e8 cycles, κ 1.1, 100 N: 8·0.979²/1.1 − 0.091 = 6.879 kN.
pub static FLANK_FORCE: Formula<ForceFn> = Formula {
    note: Note {
        id: "flank-force",
        title: "tangential force that flanks bear so often",
        equation: "F = f⁻¹(E·Z_NT²); Z_NT on straight lines in logarithms through (10⁵, 1.6), (5·10⁷, 1.0), (10¹⁰, 0.85), held beyond; f = κ·F + F_o, at least K_l·b·100 N/mm (K_l·F below 100 N/mm)",
        inputs: &[
            ("E", "mounted-endurance"),
            ("N", "cycles"),
            ("κ", "tooth-load-slope"),
            ("F_o", "tooth-load-offset"),
            ("K_l", "light-load-factor"),
            ("b", "face-width"),
        ],
        validity: VALIDITY,
        sources: SOURCES,
    },
    apply: |endurance, cycles, slope, offset, light, face_width| {
        let life = contact_life_factor(cycles.si());
        borne(endurance.si() * life * life, Felt::of(slope, offset, light, face_width))
    },
};

/// Tooth force that roots bear so often. 8 kN at the knee, Y_NT 1.134, κ 1.1, 100 N: 8.156 kN.
pub static ROOT_FORCE: Formula<ForceFn> = Formula {
    note: Note {
        id: "root-force",
        title: "tangential force that roots bear so often",
        equation: "F = f⁻¹(E·Y_NT); f = κ·F + F_o, at least K_l·b·100 N/mm (K_l·F below 100 N/mm)",
        inputs: &[
            ("E", "mounted-endurance"),
            ("Y_NT", "root-life-factor"),
            ("κ", "tooth-load-slope"),
            ("F_o", "tooth-load-offset"),
            ("K_l", "light-load-factor"),
            ("b", "face-width"),
        ],
        validity: VALIDITY,
        sources: SOURCES,
    },
    apply: |endurance, life, slope, offset, light, face_width| {
        borne(endurance.si() * life.si(), Felt::of(slope, offset, light, face_width))
    },
};

/// The force of which so much is felt; a force is zero or more.
fn borne(effective: f64, felt: Felt) -> Force {
    Force::of_si(felt.force(effective) + 0.0 * felt.effective(effective))
}

/// Force that the pinion flanks bear, from the mesh, the allowable contact stress number, cycles, quality, speed and
/// face load factor; ground flanks. Undone by bisection, so that it checks [`FLANK_FORCE`].
///
/// Module 2 mm, 20 teeth, metric helix, 24 mm, 1500 MPa, 1e8 cycles, grade 6, 1 m/s, K_Hβ 1.3: 9.56 kN.
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

/// Force that the rack flanks bear; arguments as in [`pinion_pitting_force`]. The same mesh, 1196 MPa, 1e6 cycles: 11.48 kN.
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

/// Force that the pinion roots bear, from the mesh, class of steel and bending limit, cycles, quality, speed, face load
/// and reversal factor; smooth roots.
///
/// The mesh of [`pinion_pitting_force`], 461/1.4 MPa, 1e8 cycles, Y_M 0.7: 6.88 kN.
pub fn pinion_root_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    (class, bending_limit): (SteelClass, Pressure),
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
    reversal_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.root_force(true, class, bending_limit, cycles, face_load_factor, reversal_factor)
}

/// Force that the rack roots bear; arguments as in [`pinion_root_force`]. 369/1.4 MPa, 1e6 cycles: 6.32 kN.
pub fn rack_root_force(
    module: Length,
    teeth: Ratio,
    helix: Angle,
    profile_shift: Ratio,
    face_width: Length,
    (class, bending_limit): (SteelClass, Pressure),
    cycles: Ratio,
    quality: Ratio,
    speed: Velocity,
    face_load_factor: Ratio,
    reversal_factor: Ratio,
) -> Force {
    let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
    tooth.root_force(false, class, bending_limit, cycles, face_load_factor, reversal_factor)
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

    /// What makes stress of a force on flanks.
    pub(super) fn flank_factors(&self, on_pinion: bool) -> FlankFactors {
        FlankFactors::of(&self.mesh, self.overlap, on_pinion)
    }

    /// What makes stress of a force on a root of a steel with this slip layer.
    pub(super) fn root_factors(&self, on_pinion: bool, slip_layer: Length) -> RootFactors {
        RootFactors::of(&self.form(on_pinion), &self.mesh, self.overlap, slip_layer.si())
    }

    /// Effective force that flanks bear at a life factor of 1, spread evenly over the width.
    pub(super) fn flank_endurance(&self, on_pinion: bool, strength: Pressure) -> f64 {
        let area = self.mesh.diameter * self.module * self.face_width;
        strength.si() * strength.si() / self.flank_factors(on_pinion).stress_squared_per_force(area)
    }

    fn pitting_force(&self, on_pinion: bool, limit: Pressure, cycles: Ratio, face: Ratio) -> Force {
        let life = contact_life_factor(cycles.si());
        let strength = Pressure::of_si(limit.si() * LUBRICATION);
        let factors = self.factors(face.si());
        Force::of_si(factors.force_for(self.flank_endurance(on_pinion, strength) * life * life))
    }

    /// Root of the pinion tooth, or of the rack tooth, loaded at its outer point of single contact.
    pub(super) fn form(&self, on_pinion: bool) -> ToothForm {
        if on_pinion { pinion_form(&self.mesh, LoadPoint::SingleContact) } else { rack_form_in(&self.mesh) }
    }

    /// Effective force that a root bears at a life factor of 1, spread evenly over the width.
    pub(super) fn root_endurance(&self, on_pinion: bool, strength: Pressure, slip_layer: Length) -> f64 {
        let factors = self.root_factors(on_pinion, slip_layer);
        strength.si() * factors.notch / factors.stress_per_force(self.face_width * self.module)
    }

    fn root_force(
        &self,
        on_pinion: bool,
        class: SteelClass,
        limit: Pressure,
        cycles: Ratio,
        face: Ratio,
        reversal: Ratio,
    ) -> Force {
        let module = Length::of_si(self.module);
        let by_size = if class.surface_hardened() { &ROOT_SIZE_FACTOR_HARDENED } else { &ROOT_SIZE_FACTOR };
        let size = (by_size.apply)(module);
        let strength = root_strength(limit, size, Ratio::of_si(1.0), reversal);
        let factors = self.factors(root_face_load_factor(face, Length::of_si(self.face_width), module).si());
        let endurance = self.root_endurance(on_pinion, strength, class.slip_layer());
        let life = root_life_factor(cycles.si(), class.root_static_cycles().si());
        Force::of_si(factors.force_for(endurance * life))
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
