//! What teeth feel of a force, and what they bear of that at the knee of the life line.
//!
//! Method: the dynamic factor and the load sharing factor of ISO 6336-1 make the effective force a straight line over
//! the force above 100 N/mm and a proportional one below, with a step between that is filled by a level stretch (see
//! `factors`). Three numbers say it all, so that the duty can be summed without working the mesh out again. The face
//! factor is that of one force and is taken into what the teeth bear as mounted.
//! A force that stands for a duty is found by more than the way back: on the level stretch that way is not one.
//! Limits: as the permissible forces.

use super::bending::RootFactors;
use super::contact::FlankFactors;
use super::factors::LEAST_LINE_LOAD;
use super::permissible::Tooth;
use crate::formula::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Pressure, Ratio, Velocity};

type MeshInputs<R> = fn(Length, Ratio, Angle, Ratio, Length, Ratio, Velocity) -> R;

const MESH_NAMES: &[(&str, &str)] = &[
    ("m_n", "module"),
    ("z", "teeth"),
    ("β", "helix"),
    ("x", "profile-shift"),
    ("b", "face-width"),
    ("Q", "quality"),
    ("v", "speed"),
];
const LOAD_FACTORS: &[Source] = &[
    Source::memory("ISO 6336-1:2006, dynamic factor method C and load sharing factor"),
    Source::derived("force times factors as a straight line over the force"),
];
/// The factors that a reader needs to work the three lines below out again; `$range` is the line load they hold for.
macro_rules! load_validity {
    ($range:literal) => {
        concat!(
            $range,
            " Grade 5 to 10 (finer counts as 5); surface-hardened steel. K_1 in N/mm by grade 5, 6, 7, 8, 9, 10: straight \
             7.5, 14.9, 26.8, 39.1, 52.8, 76.6, helical 6.7, 13.3, 23.9, 34.8, 47.0, 68.2; K_2 straight 0.0193, helical 0.0087; \
             between straight and helical by ε_β, up to 1. s in m/s; s·K_3: 2·s up to 0.2 m/s, then s·(2.071 − 0.357·s), at \
             least 0.4, held from 2.9 m/s. K_α: straight 1.0 up to grade 6, 1.1 at 7, 1.2 at 8; helical 1.0 at 5, 1.1 at 6, \
             1.2 at 7, 1.4 at 8; else K_α,worst = max(1.2, 3/(4 − ε_α)) straight, max(1.4, ε_αn) helical."
        )
    };
}

/// What a newton more adds to the effective force: K_v and K_α above 100 N/mm.
pub static LOAD_SLOPE: Formula<MeshInputs<Ratio>> = Formula {
    note: Note {
        id: "tooth-load-slope",
        title: "what a newton more adds to the force that teeth feel",
        equation: "κ = (1 + K_2·s·K_3)·K_α, s = v·z/100",
        inputs: MESH_NAMES,
        validity: load_validity!("Line load from 100 N/mm."),
        sources: LOAD_FACTORS,
    },
    apply: |module, teeth, helix, profile_shift, face_width, quality, speed| {
        let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
        Ratio::of_si(tooth.factors(1.0).slope())
    },
};

/// What teeth feel of pitch errors at speed whatever the force.
pub static LOAD_OFFSET: Formula<MeshInputs<Force>> = Formula {
    note: Note {
        id: "tooth-load-offset",
        title: "force that teeth feel at speed whatever the load",
        equation: "F_o = K_1·b·s·K_3·K_α, s = v·z/100",
        inputs: MESH_NAMES,
        validity: load_validity!("Line load from 100 N/mm."),
        sources: LOAD_FACTORS,
    },
    apply: |module, teeth, helix, profile_shift, face_width, quality, speed| {
        let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
        Force::of_si(tooth.factors(1.0).offset())
    },
};

/// Effective force over force below 100 N/mm, where load sharing is at its worst.
pub static LIGHT_LOAD_FACTOR: Formula<MeshInputs<Ratio>> = Formula {
    note: Note {
        id: "light-load-factor",
        title: "force that teeth feel over the force, below 100 N/mm of line load",
        equation: "K_l = (1 + (K_1/(100 N/mm) + K_2)·s·K_3)·K_α,worst, s = v·z/100",
        inputs: MESH_NAMES,
        validity: load_validity!("Line load up to 100 N/mm."),
        sources: LOAD_FACTORS,
    },
    apply: |module, teeth, helix, profile_shift, face_width, quality, speed| {
        let tooth = Tooth::of(module, teeth, helix, profile_shift, face_width, quality, speed);
        Ratio::of_si(tooth.factors(1.0).light())
    },
};

type FlankInputs = fn(Length, Ratio, Angle, Ratio, Length, Pressure) -> Force;
type RootInputs = fn(Length, Ratio, Angle, Ratio, Length, Pressure, Length) -> Force;

const FLANK_NAMES: &[(&str, &str)] = &[
    ("m_n", "module"),
    ("z", "teeth"),
    ("β", "helix"),
    ("x", "profile-shift"),
    ("b", "face-width"),
    ("σ_H0", "flank-strength"),
];
const ROOT_NAMES: &[(&str, &str)] = &[
    ("m_n", "module"),
    ("z", "teeth"),
    ("β", "helix"),
    ("x", "profile-shift"),
    ("b", "face-width"),
    ("σ_F0", "root-strength"),
    ("ρ′", "slip-layer"),
];
const FLANK_EQUATION: &str = "E_H = σ_H0²·d·b/(Z_B·Z_H·Z_E·Z_ε·Z_β)²";
const ROOT_EQUATION: &str =
    "E_F = σ_F0·Y_δ·b·m_n/(Y_F·Y_S·Y_β), Y_δ = (1 + √(ρ′·(1 + 2·q_s)/5))/(1 + √(1.2·ρ′)), ρ′ in mm";
const FLANK_VALIDITY: &str = "Life factor 1, so 5·10⁷ cycles, spread evenly over the width; teeth not undercut, helix up to 30°; Z_β = 1/√cos β (2008 correction). Safety 1.";
const ROOT_VALIDITY: &str = "Life factor 1, so 3·10⁶ cycles, spread evenly over the width; teeth not undercut, helix up to 30°; solid body under the root; Y_β = 1 − ε_β·β/120° (2006 edition). Safety 1.";
const FLANK_SOURCES: &[Source] =
    &[Source::memory("ISO 6336-2:2006 with the 2008 correction of Z_β"), Source::derived("rack as the limit u → ∞")];
const ROOT_SOURCES: &[Source] = &[Source::memory("ISO 6336-3:2006"), Source::derived("rack as the limit z → ∞")];

/// A mesh at no speed; what its teeth bear at the knee does not depend on grade or speed.
fn still(module: Length, teeth: Ratio, helix: Angle, profile_shift: Ratio, face_width: Length) -> Tooth {
    Tooth::of(module, teeth, helix, profile_shift, face_width, Ratio::of_si(5.0), Velocity::of_si(0.0))
}

/// The factors that make stress of a force on the flanks of pinion or rack, from module, teeth, helix angle, profile shift and
/// face width.
pub fn flank_factors(
    (module, teeth, helix, profile_shift, face_width): (Length, Ratio, Angle, Ratio, Length),
    on_pinion: bool,
) -> FlankFactors {
    still(module, teeth, helix, profile_shift, face_width).flank_factors(on_pinion)
}

/// The same for a root, of a steel with this slip layer.
pub fn root_factors(
    (module, teeth, helix, profile_shift, face_width): (Length, Ratio, Angle, Ratio, Length),
    slip_layer: Length,
    on_pinion: bool,
) -> RootFactors {
    still(module, teeth, helix, profile_shift, face_width).root_factors(on_pinion, slip_layer)
}

macro_rules! flank_endurance {
    ($name:ident, $id:literal, $title:literal, $on_pinion:literal, $doc:literal) => {
        #[doc = $doc]
        pub static $name: Formula<FlankInputs> = Formula {
            note: Note {
                id: $id,
                title: $title,
                equation: FLANK_EQUATION,
                inputs: FLANK_NAMES,
                validity: FLANK_VALIDITY,
                sources: FLANK_SOURCES,
            },
            apply: |module, teeth, helix, profile_shift, face_width, strength| {
                let tooth = still(module, teeth, helix, profile_shift, face_width);
                Force::of_si(tooth.flank_endurance($on_pinion, strength))
            },
        };
    };
}

flank_endurance!(
    PINION_FLANK_ENDURANCE,
    "pinion-flank-endurance",
    "force felt that the pinion flanks bear at the knee of their life line, evenly loaded",
    true,
    "What pinion flanks bear 5·10⁷ times, dynamic and sharing factor inside the load."
);
flank_endurance!(
    RACK_FLANK_ENDURANCE,
    "rack-flank-endurance",
    "force felt that the rack flanks bear at the knee of their life line, evenly loaded",
    false,
    "What rack flanks bear 5·10⁷ times, dynamic and sharing factor inside the load."
);

macro_rules! root_endurance {
    ($name:ident, $id:literal, $title:literal, $on_pinion:literal, $doc:literal) => {
        #[doc = $doc]
        pub static $name: Formula<RootInputs> = Formula {
            note: Note {
                id: $id,
                title: $title,
                equation: ROOT_EQUATION,
                inputs: ROOT_NAMES,
                validity: ROOT_VALIDITY,
                sources: ROOT_SOURCES,
            },
            apply: |module, teeth, helix, profile_shift, face_width, strength, slip_layer| {
                let tooth = still(module, teeth, helix, profile_shift, face_width);
                Force::of_si(tooth.root_endurance($on_pinion, strength, slip_layer))
            },
        };
    };
}

root_endurance!(
    PINION_ROOT_ENDURANCE,
    "pinion-root-endurance",
    "force felt that the pinion roots bear at the knee of their life line, evenly loaded",
    true,
    "What pinion roots bear 3·10⁶ times, dynamic and sharing factor inside the load."
);
root_endurance!(
    RACK_ROOT_ENDURANCE,
    "rack-root-endurance",
    "force felt that the rack roots bear at the knee of their life line, evenly loaded",
    false,
    "What rack roots bear 3·10⁶ times, dynamic and sharing factor inside the load."
);

/// What teeth bear as mounted: the end that carries most decides. 10 kN evenly, 1.3: 7.692 kN.
pub static MOUNTED_ENDURANCE: Formula<fn(Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "mounted-endurance",
        title: "force felt that teeth bear at the knee of their life line, as mounted",
        equation: "E_m = E/K_β",
        inputs: &[("E", "endurance"), ("K_β", "face-load-factor")],
        validity: "K_Hβ for flanks, K_Fβ for roots",
        sources: &[Source::memory("ISO 6336-1:2006, face load factors")],
    },
    apply: |endurance, face| Force::of_si(endurance.si() / face.si()),
};

/// What teeth feel of a force: the line of [`LOAD_SLOPE`], [`LOAD_OFFSET`] and [`LIGHT_LOAD_FACTOR`], in SI units.
#[derive(Debug, Clone, Copy)]
pub(super) struct Felt {
    slope: f64,
    offset: f64,
    light: f64,
    /// Force at 100 N/mm of line load.
    light_force: f64,
}

impl Felt {
    pub(super) fn of(slope: Ratio, offset: Force, light: Ratio, face_width: Length) -> Felt {
        // what one of them lacks, all lack
        let known = 0.0 * (slope.si() + offset.si() + light.si() + face_width.si());
        Felt {
            slope: slope.si() + known,
            offset: offset.si(),
            light: light.si() + known,
            light_force: LEAST_LINE_LOAD * 1e3 * face_width.si(),
        }
    }

    /// What is felt of a force; never falling.
    #[inline]
    pub(super) fn effective(&self, force: f64) -> f64 {
        if force < self.light_force {
            return force * self.light;
        }
        let (level, line) = (self.light_force * self.light, force * self.slope + self.offset);
        if line < level { level } else { line }
    }

    /// The least force of which so much is felt.
    #[inline]
    pub(super) fn force(&self, effective: f64) -> f64 {
        let light = effective / self.light;
        if light <= self.light_force {
            return light;
        }
        self.heavy(effective)
    }

    /// The greatest force of which so much is felt, from the level on.
    #[inline]
    fn heavy(&self, effective: f64) -> f64 {
        let line = (effective - self.offset) / self.slope;
        if line < self.light_force { self.light_force } else { line }
    }

    /// The force that stands for forces up to `largest`, once their damage is known as so much felt at every pass.
    ///
    /// Above the level it is the only force of which as much is felt. On and below it the force goes with what is felt, on
    /// the straight line to the largest force, or to the end of the level stretch where that is less. So one force gives
    /// itself wherever it lies, more is never less, and nothing stands above the largest force.
    #[inline]
    pub(super) fn stands_for(&self, effective: f64, largest: f64) -> f64 {
        let level = self.light_force * self.light;
        let force = if effective > level {
            self.heavy(effective)
        } else {
            let end = self.heavy(level);
            let top = if largest < end { largest } else { end };
            let felt = if top < self.light_force { top * self.light } else { level };
            top * effective / felt
        };
        if force > largest { largest } else { force }
    }
}
