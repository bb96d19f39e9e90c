//! The gearbox between motor and pinion: its spring along the travel, its torques, its output bearing.
//!
//! Method: torsion and bending seen at the reference circle of the pinion; torques from the balance of
//! inertias. Limits: play and no-load torque are not in the stiffness; bearing life by one exponent.

use super::constants::STEEL_YOUNG;
use super::extremes::smaller;
use super::gear_geometry::{Mesh, PRESSURE_ANGLE};
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, MomentOfInertia, Ratio, Stiffness, Torque, TorsionalStiffness};
use std::f64::consts::PI;

/// Stiffness of the gearbox, seen along the travel. 9 N·m/arcmin on 42.44 mm: 68.7 N/µm.
pub static GEARBOX_LINEAR_STIFFNESS: Formula<fn(TorsionalStiffness, Length) -> Stiffness> = Formula {
    note: Note {
        id: "gearbox-linear-stiffness",
        title: "stiffness of the gearbox, seen along the travel",
        equation: "k_g = 4·c_g/d²",
        inputs: &[("c_g", "torsional-stiffness"), ("d", "pinion-diameter")],
        validity: "Play taken up; c_g at the output, 1 N·m/arcmin = 3437.75 N·m/rad.",
        sources: &[Source::derived("force and way at the reference circle")],
    },
    apply: gearbox_linear_stiffness,
};
/// Linear stiffness from torsional stiffness at the output and pinion diameter.
#[inline]
pub fn gearbox_linear_stiffness(torsional: TorsionalStiffness, pinion_diameter: Length) -> Stiffness {
    let radius = pinion_diameter.si() / 2.0;
    Stiffness::of_si(torsional.si() / (radius * radius))
}

/// Torque at the gearbox output. 6.32 kN on 42.44 mm, η 0.99: 135.5 N·m.
pub static OUTPUT_TORQUE: Formula<fn(Force, Length, Ratio) -> Torque> = Formula {
    note: Note {
        id: "output-torque",
        title: "torque at the gearbox output",
        equation: "T_2 = F·d/(2·η_m)",
        inputs: &[("F", "force"), ("d", "pinion-diameter"), ("η_m", "mesh-efficiency")],
        validity: "Driving; the acceleration of the pinion itself is not in it.",
        sources: &[Source::derived("moment of the tooth force about the pinion axis")],
    },
    apply: output_torque,
};
/// Output torque from tooth force, pinion diameter and mesh efficiency.
#[inline]
pub fn output_torque(force: Force, pinion_diameter: Length, mesh_efficiency: Ratio) -> Torque {
    Torque::of_si(force.si() * pinion_diameter.si() / (2.0 * mesh_efficiency.si()))
}

/// Stiffness of the overhung output shaft at the pinion, along the travel.
///
/// Overhang 35 mm, shaft 32 mm, bearing without tilt, metric helix: 646 N/µm; with 5e5 N·m/rad of tilt: 229 N/µm.
pub static OUTPUT_SHAFT_STIFFNESS: Formula<fn(Length, Length, TorsionalStiffness, Angle) -> Stiffness> = Formula {
    note: Note {
        id: "output-shaft-stiffness",
        title: "stiffness of the gearbox output shaft at the pinion, along the travel",
        equation: "1/k_sh = (l³/(3·E·I) + l²/c_t)·(1 + tan²α_t), I = π·d_s⁴/64",
        inputs: &[("l", "overhang"), ("d_s", "shaft-diameter"), ("c_t", "tilt-stiffness"), ("β", "helix")],
        validity: "Solid steel shaft, E = 206 GPa; l from pinion middle to front bearing; c_t is the tilt stiffness of the output bearing.",
        sources: &[Source::derived(
            "cantilever on a tilting bearing; the separating force moves the pinion out of mesh as well",
        )],
    },
    apply: output_shaft_stiffness,
};
/// Shaft stiffness at the pinion from overhang, shaft diameter, tilt stiffness of the bearing and helix angle.
#[inline]
pub fn output_shaft_stiffness(
    overhang: Length,
    shaft_diameter: Length,
    tilt_stiffness: TorsionalStiffness,
    helix: Angle,
) -> Stiffness {
    let l = overhang.si();
    let second_moment = PI * shaft_diameter.si().powi(4) / 64.0;
    let tan = PRESSURE_ANGLE.tan() / helix.si().cos();
    let give = l * l * l / (3.0 * STEEL_YOUNG * second_moment) + l * l / tilt_stiffness.si();
    Stiffness::of_si(1.0 / (give * (1.0 + tan * tan)))
}

/// Torque at the gearbox output when motor or brake pulls against the load's inertia.
///
/// 20 N·m, ratio 10, turning parts 2e-3 kg·m², driven mass 4.503e-3 kg·m² at the motor: 138.5 N·m.
pub static STOP_TORQUE: Formula<fn(Torque, MomentOfInertia, MomentOfInertia, Ratio) -> Torque> = Formula {
    note: Note {
        id: "stop-torque",
        title: "torque at the gearbox output in an emergency stop",
        equation: "T_2s = T_M·i·J_m/(J_rot + J_m)",
        inputs: &[("T_M", "motor-torque"), ("J_rot", "rotating-inertia"), ("J_m", "mass-inertia"), ("i", "reduction")],
        validity: "J_rot and J_m at the motor. The gearbox passes only the load's share of the torque; losses, weight and the jolt when play is taken up are not in it.",
        sources: &[Source::derived("balance of inertias")],
    },
    apply: stop_torque,
};
/// Stop torque at the output from motor or brake torque, turning inertia, driven inertia and ratio.
#[inline]
pub fn stop_torque(
    motor_torque: Torque,
    rotating_inertia: MomentOfInertia,
    mass_inertia: MomentOfInertia,
    reduction: Ratio,
) -> Torque {
    let load_share = mass_inertia.si() / (rotating_inertia.si() + mass_inertia.si());
    Torque::of_si(motor_torque.si() * reduction.si() * load_share)
}

/// Turns for which the radial limit of a gearbox is stated: 100 1/min for 20 000 h.
const REFERENCE_TURNS: f64 = 100.0 * 60.0 * 20_000.0;
/// How far above the stated limit a short life may go.
const CAPACITY_CAP: f64 = 1.6;

/// Radial force that the gearbox output bears over the service life. 4200 N for 3e7 turns: 6366 N.
pub static RADIAL_CAPACITY: Formula<fn(Force, Length, Length) -> Force> = Formula {
    note: Note {
        id: "radial-capacity",
        title: "radial force that the gearbox output bears over the service life",
        equation: "F_perm = F_lim·min(1.6, (1.2·10⁸/N)^0.3), N = s_life/(π·d)",
        inputs: &[("F_lim", "gearbox-radial-limit"), ("s_life", "service-distance"), ("d", "pinion-diameter")],
        validity: "F_lim stated at the pinion for 100 1/min and 20 000 h; roller bearings. Held at 1.6 times the limit for short lives, so that shaft and housing stay out of question.",
        sources: &[
            Source::memory("ISO 281, life exponent 10/3 of roller bearings"),
            Source::practice("cap of 1.6 for the static strength of shaft and bearing"),
        ],
    },
    apply: radial_capacity,
};
/// Radial capacity from the stated limit, distance run and pinion diameter.
#[inline]
pub fn radial_capacity(limit: Force, service_distance: Length, pinion_diameter: Length) -> Force {
    let turns = service_distance.si() / (PI * pinion_diameter.si());
    Force::of_si(limit.si() * smaller(CAPACITY_CAP, (REFERENCE_TURNS / turns).powf(0.3)))
}

/// Efficiency of the mesh of pinion and rack. 20 teeth, metric helix, friction 0.09: 0.9895.
pub static MESH_EFFICIENCY: Formula<fn(Length, Ratio, Angle, Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "mesh-efficiency",
        title: "efficiency of the mesh",
        equation: "η_m = 1 − µ·π/(z·cos β_b)·(1 − ε_α + ε_1² + ε_2²), ε_1 and ε_2 the parts of ε_α on either side of the pitch point",
        inputs: &[("m_n", "module"), ("z", "teeth"), ("β", "helix"), ("x", "profile-shift"), ("µ", "friction")],
        validity: "Greased teeth, friction 0.08 to 0.10 at feed speeds; wipers and gearbox not in it. Does not depend on the module.",
        sources: &[Source::derived("loss factor of a gear pair, rack as a wheel of infinitely many teeth")],
    },
    apply: mesh_efficiency,
};
/// Mesh efficiency from tooth data and friction coefficient.
#[inline]
pub fn mesh_efficiency(module: Length, teeth: Ratio, helix: Angle, profile_shift: Ratio, friction: Ratio) -> Ratio {
    let mesh = Mesh::of(teeth, helix, profile_shift);
    let (e1, e2) = (mesh.tip_part, mesh.rack_part);
    let loss = PI / (mesh.teeth * mesh.cos_base_helix) * (1.0 - e1 - e2 + e1 * e1 + e2 * e2);
    Ratio::of_si(if module.si() > 0.0 { 1.0 - friction.si() * loss } else { f64::NAN })
}
