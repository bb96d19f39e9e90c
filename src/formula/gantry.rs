//! Two drives on one axis: how they share the load, what makes the two sides differ, and what that does to guides and drives.
//!
//! Method: the beam is rigid and lies on the springs of the two drives and on the yaw spring of the guides that hold it
//! square. What one side wants to stand apart from the other is taken up by these springs; what the masses ask of each
//! side follows from the lever. Limits: linear springs, no play; each side holds its own position; the guides take no
//! part of the masses' moment about the middle, which is the worse for the drives.

use super::constants::GRAVITY;
use super::duty::level_share;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

const LEVER: &[Source] = &[Source::derived("lever: forces and moments on a rigid beam")];

/// Share of the moving mass on the most loaded of two drives.
/// 1200 kg in the middle, 400 kg at 0.32 of 2.5 m: 0.58; with the 1200 kg 0.1 m off the middle: 0.61.
pub static NEAR_SHARE: Formula<fn(Mass, Mass, Length, Length, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "near-share",
        title: "share of the moving mass on the most loaded of two drives",
        equation: "x_d = 1/2 + (m_0·|e_b|/B_d + m_c·y/B)/(m_0 + m_c)",
        inputs: &[
            ("m_0", "moved-mass"),
            ("m_c", "carried-mass"),
            ("e_b", "mass-offset"),
            ("B_d", "drive-spacing"),
            ("y/B", "carriage-reach"),
        ],
        validity: "two drives; what is carried stands on the side of the offset; the guides take none of the moment",
        sources: LEVER,
    },
    apply: |own, carried, offset, spacing, reach| {
        let (own, carried) = (own.si(), carried.si());
        let lever = own * offset.si().abs() / spacing.si() + carried * reach.si();
        let total = own + carried;
        Ratio::of_si(if total == 0.0 { 0.5 + 0.0 * lever } else { 0.5 + lever / total })
    },
};

/// Moving mass on the other of two drives. 1600 kg, of which 928 kg on the most loaded: 672 kg.
pub static FAR_MASS: Formula<fn(Mass, Mass) -> Mass> = Formula {
    note: Note {
        id: "far-mass",
        title: "moving mass on the less loaded of two drives",
        equation: "m_f = m − m_d",
        inputs: &[("m", "moving-mass"), ("m_d", "driven-mass")],
        validity: "two drives",
        sources: LEVER,
    },
    apply: |all, near| Mass::of_si(all.si() - near.si()),
};

/// Force that one side needs to speed up. 928 kg, 2 m/s², level, no friction: 1856 N; 672 kg: 1344 N.
pub static SIDE_FORCE: Formula<fn(Mass, Acceleration, Angle, Ratio, Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "side-force",
        title: "force of one side while the axis speeds up",
        equation: "F = m·(a + g·sin θ·(1 − c_b) + µ·g·|cos θ|) + F_w",
        inputs: &[
            ("m", "mass"),
            ("a", "acceleration"),
            ("θ", "inclination"),
            ("µ", "guide-friction"),
            ("F_w", "drive-wiper-force"),
            ("c_b", "counterbalance-share"),
        ],
        validity: "upward or forward, no cutting force, no racking force",
        sources: &[Source::derived("Newton's second law along the axis")],
    },
    apply: |mass, acceleration, angle, friction, wiper, balance| {
        let weight = GRAVITY * angle.si().sin() * (1.0 - balance.si());
        let drag = friction.si() * GRAVITY * level_share(angle);
        Force::of_si(mass.si() * (acceleration.si() + weight + drag) + wiper.si())
    },
};

/// By how much the two sides of an axis may stand apart. 36 µm, nothing corrected, 11.5 µm/(m·K), 1 K, 5 m:
/// √2·36 + 57.5 = 108.41 µm.
pub static SIDE_DIFFERENCE: Formula<fn(Length, Ratio, Expansion, TemperatureInterval, Length) -> Length> = Formula {
    note: Note {
        id: "side-difference",
        title: "by how much the two sides of an axis may stand apart",
        equation: "Δx = √2·e·(1 − c_s) + α·ΔT_12·s",
        inputs: &[
            ("e", "drive-error"),
            ("c_s", "side-correction"),
            ("α", "expansion"),
            ("ΔT_12", "side-temperature-difference"),
            ("s", "travel"),
        ],
        validity: "two independent sides, each led by its own rack or screw, set square at one end of the travel; linear \
                   scales on both sides leave less",
        sources: &[Source::derived("independent errors add by squares, a steady difference of temperature adds whole")],
    },
    apply: |error, corrected, expansion, temperature, travel| {
        let left = 2f64.sqrt() * error.si() * (1.0 - corrected.si());
        Length::of_si(left + expansion.si() * temperature.si() * travel.si())
    },
};

/// Force by which the two sides rack against each other. 60 µm, 54 N/µm, 2.5 m, 2e8 N·m/rad: 879 N.
pub static RACKING_FORCE: Formula<fn(Length, Stiffness, Length, TorsionalStiffness) -> Force> = Formula {
    note: Note {
        id: "racking-force",
        title: "force by which the two sides of an axis rack against each other",
        equation: "F_r = Δx/(2/k + B_d²/k_ψ)",
        inputs: &[
            ("Δx", "side-difference"),
            ("k", "drive-stiffness"),
            ("B_d", "drive-spacing"),
            ("k_ψ", "yaw-stiffness"),
        ],
        validity: "rigid beam, linear springs, no play; each side holds its own position",
        sources: &[Source::derived("two springs of the drives and the yaw spring of the guides in series")],
    },
    apply: |difference, stiffness, spacing, yaw| {
        let give = 2.0 / stiffness.si() + spacing.si() * spacing.si() / yaw.si();
        Force::of_si(difference.si() / give)
    },
};

/// Angle by which the beam stands askew. 879 N, 2.5 m, 2e8 N·m/rad: 10.99 µrad.
pub static YAW_ANGLE: Formula<fn(Force, Length, TorsionalStiffness) -> Angle> = Formula {
    note: Note {
        id: "yaw-angle",
        title: "angle by which the beam stands askew",
        equation: "ψ = F_r·B_d/k_ψ",
        inputs: &[("F_r", "racking-force"), ("B_d", "drive-spacing"), ("k_ψ", "yaw-stiffness")],
        validity: "small angles, rigid beam",
        sources: &[Source::derived("moment over yaw stiffness")],
    },
    apply: |force, spacing, yaw| Angle::of_si(force.si() * spacing.si() / yaw.si()),
};

/// How far yaw moves the tool along the travel at the end of the beam. 10.99 µrad, 2.5 m: 13.7 µm.
pub static YAW_AT_TOOL: Formula<fn(Angle, Length) -> Length> = Formula {
    note: Note {
        id: "yaw-at-tool",
        title: "how far yaw moves the tool along the travel, at a drive",
        equation: "u_ψ = ψ·B_d/2",
        inputs: &[("ψ", "yaw-angle"), ("B_d", "drive-spacing")],
        validity: "the tool in the line of a drive, half the spacing off the middle",
        sources: &[Source::derived("small angle times arm")],
    },
    apply: |angle, spacing| Length::of_si(angle.si() * spacing.si() / 2.0),
};

/// Sum of two forces that may come together. 1856 N and 879 N: 2735 N.
pub static FORCE_SUM: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "force-sum",
        title: "largest force on one drive, the racking force on top",
        equation: "F_max = F_ph + F_r",
        inputs: &[("F_ph", "motion-peak-force"), ("F_r", "racking-force")],
        validity: "the racking force may point either way, so it is added to the largest",
        sources: &[Source::derived("worse of both signs")],
    },
    apply: |motion, racking| Force::of_si(motion.si() + racking.si()),
};

/// Largest force of the side that is left when the other is lost and the drive brakes at its torque limit.
/// 20 N·m, ratio 10 on 133.33 mm a turn, turning parts 20 kg·cm², 1600 kg: 9424.8·1600/(1600 + 444.1) = 7377 N.
pub static LOST_SIDE_FORCE: Formula<fn(Torque, Length, Ratio, MomentOfInertia, Mass) -> Force> = Formula {
    note: Note {
        id: "lost-side-force",
        title: "force of the side that is left when it brakes at its torque limit alone",
        equation: "F_l = T_set·2π·i/p·m/(m + J_rot·(2π·i/p)²)",
        inputs: &[
            ("T_set", "set-torque"),
            ("p", "travel-per-turn"),
            ("i", "reduction"),
            ("J_rot", "rotating-inertia"),
            ("m", "moving-mass"),
        ],
        validity: "the whole mass on one drive, losses neglected; motor and gearbox keep their own share",
        sources: &[Source::derived("balance of torques on motor and load joined by a stiff shaft")],
    },
    apply: |torque, travel, reduction, rotating, mass| {
        let turns = TAU * reduction.si() / travel.si();
        let reduced = rotating.si() * turns * turns;
        Force::of_si(torque.si() * turns * mass.si() / (mass.si() + reduced))
    },
};

/// Moment that the guides carry while one side alone drives or brakes. 3 kN, 2.5 m: 3750 N·m.
pub static LOST_SIDE_MOMENT: Formula<fn(Force, Length) -> Torque> = Formula {
    note: Note {
        id: "lost-side-moment",
        title: "moment on the guides while one side brakes alone",
        equation: "M_l = F_l·B_d/2",
        inputs: &[("F_l", "lost-side-force"), ("B_d", "drive-spacing")],
        validity: "centre of mass in the middle; a force that comes suddenly is felt up to twice",
        sources: LEVER,
    },
    apply: |force, spacing| Torque::of_si(force.si() * spacing.si() / 2.0),
};

/// Largest way by which a side leaves its place when the other is lost in a stop. 3 kN, 2.5 m, 2e8 N·m/rad: 46.9 µm (23.4 µm at rest).
pub static LOST_SIDE_LEAD: Formula<fn(Force, Length, TorsionalStiffness) -> Length> = Formula {
    note: Note {
        id: "lost-side-lead",
        title: "way by which the lost side runs ahead of the middle of the beam",
        equation: "u_l = 2·(F_l·B_d/2)·(B_d/2)/k_ψ",
        inputs: &[("F_l", "lost-side-force"), ("B_d", "drive-spacing"), ("k_ψ", "yaw-stiffness")],
        validity: "guides carry the moment; a force that comes suddenly counts twice; damping left out",
        sources: &[Source::derived("moment on the yaw spring, doubled for a step")],
    },
    apply: |force, spacing, yaw| Length::of_si(2.0 * force.si() * spacing.si() * spacing.si() / (4.0 * yaw.si())),
};

/// Angle of the beam at that moment. 46.9 µm, 2.5 m: 37.5 µrad.
pub static LOST_SIDE_YAW: Formula<fn(Length, Length) -> Angle> = Formula {
    note: Note {
        id: "lost-side-yaw",
        title: "angle by which the beam stands askew when one side is lost in a stop",
        equation: "ψ_l = 2·u_l/B_d",
        inputs: &[("u_l", "lost-side-lead"), ("B_d", "drive-spacing")],
        validity: "small angles, rigid beam",
        sources: &[Source::derived("way over half the spacing")],
    },
    apply: |lead, spacing| Angle::of_si(2.0 * lead.si() / spacing.si()),
};

/// Torque at the motor that holds a force on its drive. 879 N, 133.33 mm, ratio 10, efficiency 0.95: 1.963 N·m.
pub static RACKING_TORQUE: Formula<fn(Force, Length, Ratio, Ratio) -> Torque> = Formula {
    note: Note {
        id: "racking-torque",
        title: "torque at the motor against the racking force",
        equation: "T_r = F_r·p/(2π·i·η)",
        inputs: &[("F_r", "racking-force"), ("p", "travel-per-turn"), ("i", "reduction"), ("η", "total-efficiency")],
        validity: "the motor drives against it; while the load drives it is less",
        sources: &[Source::derived("energy balance")],
    },
    apply: |force, travel, reduction, efficiency| {
        Torque::of_si(force.si() * travel.si() / (TAU * reduction.si() * efficiency.si()))
    },
};

/// Largest torque of one phase with the racking torque on top. −4 N·m and 2 N·m: 6 N·m.
pub static RACKED_TORQUE: Formula<fn(Torque, Torque) -> Torque> = Formula {
    note: Note {
        id: "racked-torque",
        title: "largest torque of one phase, the racking torque on top",
        equation: "T = |T_k| + T_r",
        inputs: &[("T_k", "phase-torque"), ("T_r", "racking-torque")],
        validity: "the racking torque may point either way",
        sources: &[Source::derived("worse of both signs")],
    },
    apply: |torque, racking| Torque::of_si(torque.si().abs() + racking.si()),
};

/// Root mean square torque with the racking torque, which grows along the travel.
/// 3 and 4 N·m, half of the time each, and 2 N·m: √(12.5 + 4/3 + 3.5·2) = 4.564 N·m.
pub static RACKED_RMS_TORQUE: Formula<fn(Series<Torque>, Series<Ratio>, Torque) -> Torque> = Formula {
    note: Note {
        id: "racked-rms-torque",
        title: "root mean square torque, with a racking torque that grows along the travel",
        equation: "T_rms = √(T̄² + T_r²/3 + |Σ T_k·q_k/Σ q_k|·T_r), T̄² = Σ T_k²·q_k/Σ q_k",
        inputs: &[("T_k", "torques"), ("q_k", "shares"), ("T_r", "racking-torque")],
        validity: "the racking torque grows from nothing where the sides were set square to T_r at the far end, all \
                   places used alike; the worse of both signs",
        sources: &[Source::derived("mean of the square of a sum; a ramp has the mean 1/2 and the mean square 1/3")],
    },
    apply: |torques, shares, racking| {
        let (mut square, mut mean, mut total) = (0.0, 0.0, 0.0);
        for (torque, share) in torques.si().iter().zip(shares.si()) {
            square += torque * torque * share;
            mean += torque * share;
            total += share;
        }
        let racking = racking.si();
        let ramp = racking * racking / 3.0;
        let sum = if total == 0.0 { 0.0 * square } else { square / total + (mean / total).abs() * racking };
        Torque::of_si((sum + ramp).sqrt())
    },
};

/// Mean heat into the screw of one of two drives, racking included. 100 W, 2 kN, 10 m/min, 0.95: 100 + 8.77 = 108.77 W.
pub static RACKED_NUT_HEAT: Formula<fn(Power, Force, Velocity, Ratio) -> Power> = Formula {
    note: Note {
        id: "racked-nut-heat",
        title: "mean heat that goes into the screw, with a racking force that grows along the travel",
        equation: "P_n = P_n0 + F_r/2·v_m·(1/η_1 − 1)",
        inputs: &[
            ("P_n0", "motion-nut-heat"),
            ("F_r", "racking-force"),
            ("v_m", "mean-speed"),
            ("η_1", "screw-efficiency"),
        ],
        validity: "the racking force grows from nothing to F_r at the far end, all places used alike; counted against every \
                   motion, the safe side",
        sources: &[Source::derived("friction power; a ramp has the mean 1/2")],
    },
    apply: |heat, racking, speed, efficiency| {
        Power::of_si(heat.si() + 0.5 * racking.si().abs() * speed.si().abs() * (1.0 / efficiency.si() - 1.0))
    },
};
