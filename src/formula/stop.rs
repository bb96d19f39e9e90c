//! Emergency stop, the pinion's seat, and what a drive takes from the supply.
//!
//! Method: a stop is taken at the torque limit that is set in the drive electronics, with all inertia in
//! play; the share of the load's inertia in the whole decides what gearbox, teeth or belt see of it.
//! Limits: no crash into a stop, no play taken up at speed.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

const BALANCE: &[Source] = &[Source::derived("balance of torques on motor and load joined by a stiff shaft")];
const BEAM: &[Source] =
    &[Source::derived("cantilever of the half face width; von Mises stress of bending and torsion")];

/// Torque limit set in the drive: a margin times the largest of the duty or the whole weight, the motor's peak at most.
/// 35 N·m, 1.5, 8.2 N·m, weight 3 N·m: 12.3 N·m; weight 10 N·m: 15 N·m.
pub static SET_TORQUE: Formula<fn(Torque, Ratio, Torque, Torque) -> Torque> = Formula {
    note: Note {
        id: "set-torque",
        title: "torque limit to set in the drive electronics",
        equation: "T_set = min(T_pk, x_m·max(T_max, T_hold))",
        inputs: &[
            ("T_pk", "motor-peak-torque"),
            ("x_m", "torque-margin"),
            ("T_max", "peak-torque"),
            ("T_hold", "holding-torque"),
        ],
        validity: "The limit must really be set; a drive left at its peak stops harder. A counterbalance may be lost, so \
                   the limit holds the whole weight with the same margin.",
        sources: &[Source::practice("limiting a servo drive to what its duty needs, with a margin")],
    },
    apply: |peak, margin, largest, holding| {
        // so that a missing value stays missing
        let (least, rest) = (holding.si(), 0.0 * holding.si());
        let wanted = margin.si() * if least > largest.si() { least } else { largest.si() + rest };
        Torque::of_si(if wanted > peak.si() { peak.si() } else { wanted + 0.0 * peak.si() })
    },
};

/// Torque at the gearbox output when the motor stops with its set torque, weight included.
/// 20 N·m, 2e-3 and 4.5e-3 kg·m², i 10, no weight: 138.5 N·m.
pub static STOP_TORQUE_WITH_WEIGHT: Formula<fn(Torque, MomentOfInertia, MomentOfInertia, Ratio, Torque) -> Torque> =
    Formula {
        note: Note {
            id: "stop-torque-with-weight",
            title: "torque at the gearbox output in an emergency stop",
            equation: "T_2s = i·(T_set·J_m + T_hold·J_rot)/(J_rot + J_m)",
            inputs: &[
                ("T_set", "set-torque"),
                ("J_rot", "rotating-inertia"),
                ("J_m", "mass-inertia"),
                ("i", "reduction"),
                ("T_hold", "holding-torque"),
            ],
            validity: "All inertia at the motor shaft; losses neglected.",
            sources: BALANCE,
        },
        apply: |set, rotating, mass, reduction, holding| {
            let all = rotating.si() + mass.si();
            Torque::of_si(reduction.si() * (set.si() * mass.si() + holding.si() * rotating.si()) / all)
        },
    };

/// Torque that coupling or belt hands on in an emergency stop, at the screw.
/// 30 N·m, load 2e-3, motor 1e-3 kg·m², i 2, weight 3 N·m: 42 N·m.
pub static REDUCTION_STOP_TORQUE: Formula<fn(Torque, MomentOfInertia, MomentOfInertia, Ratio, Torque) -> Torque> =
    Formula {
        note: Note {
            id: "reduction-stop-torque",
            title: "torque through coupling or belt in an emergency stop, at the screw",
            equation: "T_1s = i·(T_set·J_L + T_hold·J_M)/(J_L + J_M)",
            inputs: &[
                ("T_set", "set-torque"),
                ("J_L", "load-inertia"),
                ("J_M", "rotor-inertia"),
                ("i", "reduction"),
                ("T_hold", "holding-torque"),
            ],
            validity: "All inertia at the motor shaft; losses neglected.",
            sources: BALANCE,
        },
        apply: |set, load, rotor, reduction, holding| {
            let all = load.si() + rotor.si();
            Torque::of_si(reduction.si() * (set.si() * load.si() + holding.si() * rotor.si()) / all)
        },
    };

/// Force at the teeth in an emergency stop: 2·T_2s/d. 138.5 N·m at 42.44 mm: 6527 N.
pub static STOP_FORCE: Formula<fn(Torque, Length) -> Force> = Formula {
    note: Note {
        id: "stop-force",
        title: "tooth force in an emergency stop",
        equation: "F_s = 2·T_2s/d",
        inputs: &[("T_2s", "stop-torque"), ("d", "pinion-diameter")],
        validity: "Mesh losses neglected.",
        sources: BALANCE,
    },
    apply: |torque, diameter| Force::of_si(2.0 * torque.si() / diameter.si()),
};

/// Diameter of the shaft under the pinion: the gearbox shaft, or what the root leaves: d − 2m(1.25 − x) − 5m.
/// d 63.662 mm, m 3 mm, x 0, shaft 45 mm: 41.16 mm.
pub static SEAT_DIAMETER: Formula<fn(Length, Length, Ratio, Length) -> Length> = Formula {
    note: Note {
        id: "seat-diameter",
        title: "diameter of the shaft under the pinion",
        equation: "d_se = min(d_sh, d − 2·m_n·(1.25 − x) − 5·m_n)",
        inputs: &[
            ("d", "pinion-diameter"),
            ("m_n", "module"),
            ("x", "profile-shift"),
            ("d_sh", "output-shaft-diameter"),
        ],
        validity: "2.5 modules of rim between bore and root; a pinion cut from the shaft may be taken the same.",
        sources: &[Source::practice("rim of 2.5 modules under the root")],
    },
    apply: |diameter, module, shift, shaft| {
        let bore = diameter.si() - 2.0 * module.si() * (1.25 - shift.si()) - 5.0 * module.si();
        Length::of_si(if bore > shaft.si() { shaft.si() } else { bore + 0.0 * shaft.si() })
    },
};

/// Stress in that seat. 3.1 kN, metric helix, b 24 mm, seat 17 mm, d 31.83 mm: 121.0 MPa.
pub static SEAT_STRESS: Formula<fn(Force, Angle, Length, Length, Length) -> Pressure> = Formula {
    note: Note {
        id: "seat-stress",
        title: "stress in the shaft under the pinion",
        equation: "σ = 32/(π·d_se³)·√(M² + 0.75·T²), M = F·√(1 + (tan 20°/cos β)²)·b/2, T = F·d/2",
        inputs: &[
            ("F", "peak-force"),
            ("β", "helix-angle"),
            ("b", "face-width"),
            ("d_se", "seat-diameter"),
            ("d", "pinion-diameter"),
        ],
        validity: "The pinion stands against the shoulder of the shaft; notches are left to the limit.",
        sources: BEAM,
    },
    apply: |force, helix, width, seat, diameter| {
        let radial = force.si() * radial_factor(helix);
        let (bending, torsion) = (radial * width.si() / 2.0, force.si() * diameter.si() / 2.0);
        let equivalent = (bending * bending + 0.75 * torsion * torsion).sqrt();
        let cube = seat.si() * seat.si() * seat.si();
        Pressure::of_si(if cube > 0.0 { 32.0 * equivalent / (PI * cube) } else { f64::NAN })
    },
};

fn radial_factor(helix: Angle) -> f64 {
    let tangent = 20_f64.to_radians().tan() / helix.si().cos();
    (1.0 + tangent * tangent).sqrt()
}

/// Stiffness of that seat along the travel. b 24 mm, seat 17 mm, straight: 1294 N/µm.
pub static SEAT_STIFFNESS: Formula<fn(Length, Length, Angle) -> Stiffness> = Formula {
    note: Note {
        id: "seat-stiffness",
        title: "stiffness of the shaft under the pinion, along the travel",
        equation: "k_se = 3·E·(π·d_se⁴/64)/((b/2)³·(1 + (tan 20°/cos β)²))",
        inputs: &[("b", "face-width"), ("d_se", "seat-diameter"), ("β", "helix-angle")],
        validity: "A cantilever of half the face width.",
        sources: BEAM,
    },
    apply: |width, seat, helix| {
        let arm = width.si() / 2.0;
        let inertia = PI * seat.si() * seat.si() * seat.si() * seat.si() / 64.0;
        let factor = radial_factor(helix);
        let stiffness = 3.0 * STEEL_YOUNG * inertia / (arm * arm * arm * factor * factor);
        Stiffness::of_si(if seat.si() > 0.0 { stiffness } else { f64::NAN })
    },
};

/// Two springs in series. 600 and 300 N/µm: 200 N/µm.
pub static SERIES_2: Formula<fn(Stiffness, Stiffness) -> Stiffness> = Formula {
    note: Note {
        id: "series-2",
        title: "two stiffnesses in series",
        equation: "1/k = 1/k_1 + 1/k_2",
        inputs: &[("k_1", "first"), ("k_2", "second")],
        validity: "any",
        sources: &[Source::derived("the same force through both")],
    },
    apply: |first, second| Stiffness::of_si(1.0 / (1.0 / first.si() + 1.0 / second.si())),
};

/// Drag of a gearbox at its output from its no-load torque at the input: T_0·i. 1.2 N·m, 8: 9.6 N·m.
pub static GEARBOX_DRAG: Formula<fn(Torque, Ratio) -> Torque> = Formula {
    note: Note {
        id: "gearbox-drag",
        title: "drag of the gearbox at its output",
        equation: "T_d = T_02·i",
        inputs: &[("T_02", "no-load-torque"), ("i", "reduction")],
        validity: "The no-load torque at nominal speed; lower at lower speed.",
        sources: &[Source::derived("power without load, taken to the output")],
    },
    apply: |no_load, reduction| Torque::of_si(no_load.si() * reduction.si()),
};

/// Heat that the nut gives to the screw: drag of nut and half the bearings, and friction of the load.
/// 0.8 and 0.4 N·m, 10 m/min, 10 mm, 2 kN all the time at 10 m/min, 0.95: 17.45 + 17.54 → 122.3 W by the equation.
pub static NUT_HEAT: Formula<
    fn(Torque, Torque, Velocity, Length, Series<Force>, Series<Ratio>, Series<Velocity>, Ratio) -> Power,
> = Formula {
    note: Note {
        id: "nut-heat",
        title: "mean heat that goes into the screw",
        equation: "P_n = (T_p + T_b/2)·2π·v_m/P_h + Σ q_k·|F_k·v_k|·(1/η_1 − 1)",
        inputs: &[
            ("T_p", "preload-drag-torque"),
            ("T_b", "bearing-drag-torque"),
            ("v_m", "mean-speed"),
            ("P_h", "travel-per-turn"),
            ("F_k", "phase-force"),
            ("q_k", "phase-share"),
            ("v_k", "phase-speed"),
            ("η_1", "screw-efficiency"),
        ],
        validity: "Half of the bearings' heat is taken to go into the screw, half into the housing.",
        sources: &[Source::derived("friction power; the half is common practice, no source")],
    },
    apply: |preload, bearings, mean_speed, lead, forces, shares, speeds, efficiency| {
        let drag = (preload.si() + 0.5 * bearings.si()) * 2.0 * PI * mean_speed.si() / lead.si();
        let load: f64 = forces
            .si()
            .iter()
            .zip(shares.si())
            .zip(speeds.si())
            .map(|((force, share), speed)| share * (force * speed).abs())
            .sum();
        Power::of_si(drag + load * (1.0 / efficiency.si() - 1.0))
    },
};

/// Power from the supply at the mechanical peak. 9.8 kW at 0.85: 11.53 kW.
pub static SUPPLY_POWER: Formula<fn(Power, Ratio) -> Power> = Formula {
    note: Note {
        id: "supply-power",
        title: "largest power that all drives of the axis take from the supply",
        equation: "P_s = P_max/η_s",
        inputs: &[("P_max", "peak-power"), ("η_s", "supply-efficiency")],
        validity: "No energy of braking axes is credited.",
        sources: &[Source::derived("efficiency of motor and drive electronics")],
    },
    apply: |peak, efficiency| Power::of_si(peak.si() / efficiency.si()),
};
