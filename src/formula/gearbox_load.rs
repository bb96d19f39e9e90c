//! What the duty does to a planetary gearbox: starts, heat, the bearing under an overhung pinion, its life.
//!
//! Method: the lever of an overhung pinion on two bearings; losses of load and of turning without load; a housing that
//! gives its heat to still air. Limits: bearings at a fixed span, heat and life as rough as practice knows them.

use super::extremes::larger;
use super::gear_geometry::PRESSURE_ANGLE;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

/// How much more than its size a torque counts where an axis starts often. Up to 1000 starts an hour 1; 2500: 1.4.
pub static SHOCK_FACTOR: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "shock-factor",
        title: "how much more a torque counts where an axis starts often",
        equation: "f_s = 1 up to 1000 starts an hour, 1.2 to 2000, 1.4 to 3000, 1.8 to 6000, 2 above",
        inputs: &[("N_h", "moves-per-hour")],
        validity: "Each move is a start. Acceleration torques of gearboxes are stated for up to 1000 starts an hour.",
        sources: &[Source::practice("steps of planetary gearboxes; makers differ")],
    },
    apply: |starts| {
        let starts = starts.si();
        Ratio::of_si(match starts {
            starts if starts <= 1000.0 => 1.0,
            starts if starts <= 2000.0 => 1.2,
            starts if starts <= 3000.0 => 1.4,
            starts if starts <= 6000.0 => 1.8,
            starts if starts > 6000.0 => 2.0,
            _ => f64::NAN,
        })
    },
};

/// Mean ratio of one stage. 35 in two stages: 5.916.
pub static STAGE_RATIO: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "stage-ratio",
        title: "mean ratio of one stage of the gearbox",
        equation: "i_st = i^(1/k)",
        inputs: &[("i", "reduction"), ("k", "gearbox-stages")],
        validity: "geometric mean; stages of one gearbox differ by their teeth",
        sources: &[Source::derived("ratios of stages multiply")],
    },
    apply: |reduction, stages| Ratio::of_si(reduction.si().powf(1.0 / stages.si()) + 0.0 * stages.si()),
};

/// Torque at the gearbox output with the factor for frequent starts. 100 N·m, 1.4: 140 N·m.
pub static SHOCK_TORQUE: Formula<fn(Torque, Ratio) -> Torque> = Formula {
    note: Note {
        id: "shock-torque",
        title: "largest torque at the gearbox output, counted for frequent starts",
        equation: "T_2s = f_s·T_2",
        inputs: &[("T_2", "output-torque"), ("f_s", "shock-factor")],
        validity: "as the factor",
        sources: &[Source::practice("torque times shock factor against the acceleration torque")],
    },
    apply: |torque, factor| Torque::of_si(torque.si() * factor.si()),
};

/// Drag of a gearbox at its output at a speed. 1.2 N·m at 2500 1/min, 8:1, 625 1/min: 4.8 N·m.
pub static DRAG_AT_SPEED: Formula<fn(Torque, Ratio, AngularVelocity, AngularVelocity) -> Torque> = Formula {
    note: Note {
        id: "gearbox-drag-at-speed",
        title: "drag of the gearbox at its output",
        equation: "T_d = T_02·i·√(n_1/n_nom)",
        inputs: &[
            ("T_02", "no-load-torque"),
            ("i", "reduction"),
            ("n_1", "input-speed"),
            ("n_nom", "gearbox-nominal-speed"),
        ],
        validity: "T_02 at nominal speed, warm; a cold gearbox drags two to three times as much. Taken at top speed for every phase (safe).",
        sources: &[Source::practice("churning grows with the root of the speed")],
    },
    apply: |no_load, reduction, speed, nominal| {
        Torque::of_si(no_load.si() * reduction.si() * (speed.si().abs() / nominal.si()).sqrt())
    },
};

/// Efficiency of a gearbox at part load. 0.97, 100 N·m, drag 10 N·m: 100/(100/0.97 + 10) = 0.884.
pub static EFFICIENCY_AT_LOAD: Formula<fn(Ratio, Torque, Torque) -> Ratio> = Formula {
    note: Note {
        id: "gearbox-efficiency-at-load",
        title: "efficiency of the gearbox at its mean torque, drag included",
        equation: "η_L = T_2m/(T_2m/η_g + T_d)",
        inputs: &[("η_g", "reduction-efficiency"), ("T_2m", "mean-output-torque"), ("T_d", "drag-torque")],
        validity: "driving; no torque gives zero",
        sources: &[Source::derived("balance of torques at the output")],
    },
    apply: |efficiency, torque, drag| {
        let torque = torque.si();
        let asked = torque / efficiency.si() + drag.si();
        Ratio::of_si(if asked == 0.0 { 0.0 } else { torque / asked })
    },
};

/// Mean heat of a gearbox. 60 N·m all the time at 300 1/min (d 42 mm: 2857 N, 0.6597 m/s), 0.95, drag 1.2732 N·m: 99.2 + 40 W.
pub static GEARBOX_HEAT: Formula<
    fn(Series<Force>, Series<Ratio>, Series<Velocity>, Ratio, Torque, Velocity, Length) -> Power,
> = Formula {
    note: Note {
        id: "gearbox-heat",
        title: "mean heat of one gearbox while working",
        equation: "P_g = Σ q_k·|F_k·v_k|·(1/η_g − 1) + T_d·2π·v_m/p",
        inputs: &[
            ("F_k", "phase-force"),
            ("q_k", "phase-share"),
            ("v_k", "phase-speed"),
            ("η_g", "reduction-efficiency"),
            ("T_d", "drag-torque"),
            ("v_m", "mean-speed"),
            ("p", "travel-per-turn"),
        ],
        validity: "mean over the whole duty; a long spell of hard work is hotter; losses of the mesh stay at the rack",
        sources: &[Source::derived("lost power of load and drag")],
    },
    apply: |forces, shares, speeds, efficiency, drag, mean_speed, travel_per_turn| {
        let load: f64 = forces
            .si()
            .iter()
            .zip(shares.si())
            .zip(speeds.si())
            .map(|((force, share), speed)| share * (force * speed).abs())
            .sum();
        let turning = drag.si() * 2.0 * PI * mean_speed.si() / travel_per_turn.si();
        Power::of_si(load * (1.0 / efficiency.si() - 1.0) + turning)
    },
};

/// The same with a force on top that is there all the time. 500 and −500 N half of the time each at 0.5 m/s, 900 N on top, 0.95, no drag: 23.7 W.
pub static STEADY_GEARBOX_HEAT: Formula<
    fn(Series<Force>, Series<Ratio>, Series<Velocity>, Ratio, Torque, Velocity, Length, Force) -> Power,
> = Formula {
    note: Note {
        id: "steady-gearbox-heat",
        title: "mean heat of one gearbox while working, with a force that is there all the time",
        equation: "P_g = max over ± of Σ q_k·|(F_k ± F_sy)·v_k|·(1/η_g − 1) + T_d·2π·v_m/p",
        inputs: &[
            ("F_k", "phase-force"),
            ("q_k", "phase-share"),
            ("v_k", "phase-speed"),
            ("η_g", "reduction-efficiency"),
            ("T_d", "drag-torque"),
            ("v_m", "mean-speed"),
            ("p", "travel-per-turn"),
            ("F_sy", "steady-force"),
        ],
        validity: "F_sy is the bias of two pinions, the racking of two sides, or both, whole at every place (safe); the hotter gearbox",
        sources: &[Source::derived("lost power of load and drag")],
    },
    apply: |forces, shares, speeds, efficiency, drag, mean_speed, travel_per_turn, steady| {
        let heat = |steady: f64| {
            let phases = forces.si().iter().zip(shares.si()).zip(speeds.si());
            phases.map(|((force, share), speed)| share * ((force + steady) * speed).abs()).sum::<f64>()
        };
        let turning = drag.si() * 2.0 * PI * mean_speed.si() / travel_per_turn.si();
        let load = larger(heat(steady.si()), heat(-steady.si()));
        Power::of_si(load * (1.0 / efficiency.si() - 1.0) + turning)
    },
};

/// Surface of a gearbox that gives off heat. Frame 110 mm, one stage: 0.0968 m²; two: 0.1331 m².
pub static GEARBOX_SURFACE: Formula<fn(Length, Ratio) -> Area> = Formula {
    note: Note {
        id: "gearbox-surface",
        title: "surface of the gearbox that gives off heat",
        equation: "A_g = a²·(8 + 3·(k − 1))",
        inputs: &[("a", "frame-size"), ("k", "stages")],
        validity: "A block a·a·1.5·a with one stage, 0.75·a more with each further one; heat into motor and slide not counted.",
        sources: &[Source::derived("six faces of a block"), Source::practice("length of 1.5 frames")],
    },
    apply: |frame, stages| Area::of_si(frame.si() * frame.si() * (8.0 + 3.0 * (stages.si() - 1.0))),
};

/// Heat transfer of a housing in still air with some motion and radiation, W/(m²·K).
const HOUSING_TRANSFER: f64 = 20.0;

/// Warming of a gearbox over its surroundings. 134.2 W on 0.09 m²: 74.6 K.
pub static GEARBOX_WARMING: Formula<fn(Power, Area) -> TemperatureInterval> = Formula {
    note: Note {
        id: "gearbox-warming",
        title: "warming of the gearbox over its surroundings",
        equation: "ΔT_g = P_g/(h·A_g), h = 20 W/(m²·K)",
        inputs: &[("P_g", "gearbox-heat"), ("A_g", "gearbox-surface")],
        validity: "steady, ±40 %; no heat of the motor",
        sources: &[Source::practice("15 to 25 W/(m²·K) for housings in workshop air")],
    },
    apply: |heat, surface| TemperatureInterval::of_si(heat.si() / (HOUSING_TRANSFER * surface.si())),
};

/// From the front bearing to the middle of a pinion that may be wide. 35 mm stated, 49 mm wide, 8 mm gap: 35 mm; 79 mm wide: 47.5 mm.
pub static PINION_OVERHANG: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "pinion-overhang",
        title: "pinion middle to the front bearing of the gearbox",
        equation: "l_p = max(l, g + b/2)",
        inputs: &[("l", "overhang"), ("b", "face-width"), ("g", "bearing-gap")],
        validity: "a pinion wider than the shaft was meant for stands farther out",
        sources: &[Source::derived("half the pinion and the gap to the bearing")],
    },
    apply: |overhang, width, gap| Length::of_si(larger(overhang.si(), gap.si() + 0.5 * width.si())),
};

/// Force across the shaft at the pinion that stands for separating force and the couple of the axial force as well.
///
/// 6 kN, metric helix, d 42.441 mm, l 40 mm, bearings 60 mm apart: 6.608 kN, so 11.01 kN on the front bearing.
pub static OVERHUNG_LOAD: Formula<fn(Force, Angle, Length, Length, Length) -> Force> = Formula {
    note: Note {
        id: "overhung-load",
        title: "force across the shaft at the pinion, with the couple of the axial force",
        equation: "F_rad = F·√(1 + (tan α_t + tan β·d/(2·(l_p + s_b)))²); front bearing F_rad·(l_p + s_b)/s_b",
        inputs: &[
            ("F", "force"),
            ("β", "helix-angle"),
            ("d", "pinion-diameter"),
            ("l_p", "pinion-overhang"),
            ("s_b", "bearing-span"),
        ],
        validity: "Two bearings; the axial force reverses with the tooth force, so its couple is taken to add.",
        sources: &[Source::derived("moments about the rear bearing")],
    },
    apply: |force, helix, diameter, overhang, span| {
        let (sin, cos) = helix.si().abs().sin_cos();
        let separating = PRESSURE_ANGLE.tan() / cos;
        let couple = sin / cos * diameter.si() / (2.0 * (overhang.si() + span.si()));
        let across = separating + couple;
        Force::of_si(force.si() * (1.0 + across * across).sqrt())
    },
};

/// Radial limit where the pinion stands. 4200 N stated at 35 mm, bearings 50 mm apart, pinion at 47.5 mm: 3661.5 N.
pub static RADIAL_LIMIT_AT: Formula<fn(Force, Length, Length, Length) -> Force> = Formula {
    note: Note {
        id: "radial-limit-at-pinion",
        title: "radial force that the output bears at the pinion, at its reference life",
        equation: "F_lim,p = F_lim·(l + s_b)/(l_p + s_b)",
        inputs: &[
            ("F_lim", "gearbox-radial-limit"),
            ("l", "overhang"),
            ("s_b", "bearing-span"),
            ("l_p", "pinion-overhang"),
        ],
        validity: "the front bearing decides; the limit is stated at l",
        sources: &[Source::derived("moments about the rear bearing")],
    },
    apply: |limit, stated, span, overhang| {
        Force::of_si(limit.si() * (stated.si() + span.si()) / (overhang.si() + span.si()))
    },
};

/// Axial force of helical teeth on the output shaft. 6 kN, metric helix: 2128 N.
pub static AXIAL_LOAD: Formula<fn(Force, Angle) -> Force> = Formula {
    note: Note {
        id: "axial-load",
        title: "axial force of helical teeth on the output shaft",
        equation: "F_ax = F·tan β",
        inputs: &[("F", "force"), ("β", "helix-angle")],
        validity: "straight teeth give none",
        sources: &[Source::memory("ISO 21771, geometry of cylindrical involute gears")],
    },
    apply: |force, helix| Force::of_si(force.si() * helix.si().abs().tan()),
};

/// Life for which the continuous torque of a gearbox is stated.
const REFERENCE_LIFE: f64 = 20_000.0 * 3600.0;
/// Longest life that is stated.
const LONGEST_LIFE: f64 = 200_000.0 * 3600.0;

/// Life of a gearbox at a mean torque and speed. 190 N·m continuous, 100 N·m, 2500 and 1000 1/min: 424 660 h, so 200 000 h.
pub static GEARBOX_LIFE: Formula<fn(Torque, Torque, AngularVelocity, AngularVelocity) -> Time> = Formula {
    note: Note {
        id: "gearbox-life",
        title: "life of the gearbox at its mean torque and speed",
        equation: "L_g = 20 000 h·(T_cont/T_2m)^(10/3)·n_nom/n_1m, at most 200 000 h",
        inputs: &[
            ("T_cont", "gearbox-continuous-torque"),
            ("T_2m", "mean-output-torque"),
            ("n_nom", "gearbox-nominal-speed"),
            ("n_1m", "mean-input-speed"),
        ],
        validity: "Continuous torque and nominal speed stated for 20 000 h; roller bearings of the planets decide; seals and grease last less.",
        sources: &[
            Source::memory("ISO 281, life exponent 10/3 of roller bearings"),
            Source::practice("20 000 h at continuous torque and nominal speed"),
        ],
    },
    apply: |continuous, torque, nominal, speed| {
        let known = 0.0 * (continuous.si() + torque.si() + nominal.si() + speed.si());
        let turned = (torque.si() / continuous.si()).powf(10.0 / 3.0) * (speed.si() / nominal.si());
        let life = REFERENCE_LIFE / turned;
        Time::of_si(if life < LONGEST_LIFE { life } else { LONGEST_LIFE } + known)
    },
};

/// Shear modulus of steel over five times the shear stress of a shaft sized for 30 MPa, 1: see [`MOTOR_SIDE_STIFFNESS`].
const SHAFT_TWIST: f64 = super::constants::STEEL_SHEAR / (5.0 * 30e6);

/// Torsion of motor shaft and gearbox input, seen along the travel. 300 N·m, 5:1, d 63.662 mm: 782 N/µm.
pub static MOTOR_SIDE_STIFFNESS: Formula<fn(Torque, Ratio, Length) -> Stiffness> = Formula {
    note: Note {
        id: "motor-side-stiffness",
        title: "torsion of motor shaft and gearbox input, seen along the travel",
        equation: "k_ms = c_m·i²·4/d², c_m = G·T_acc/(i·5·30 MPa)",
        inputs: &[("T_acc", "gearbox-acceleration-torque"), ("i", "reduction"), ("d", "pinion-diameter")],
        validity: "A shaft sized for 30 MPa of shear at the acceleration torque, free over 2.5 diameters: an estimate, since neither shaft is stated.",
        sources: &[
            Source::derived("twist of a round shaft, c = G·π·d⁴/(32·2.5·d), d from the stress"),
            Source::practice("30 MPa, 2.5 diameters"),
        ],
    },
    apply: |torque, reduction, diameter| {
        let radius = 0.5 * diameter.si();
        Stiffness::of_si(SHAFT_TWIST * torque.si() * reduction.si() / (radius * radius))
    },
};

/// Travel at which a screw held at both ends is as stiff as the rack. Core 28 mm, rest 200 N/µm, rack 54 N/µm: 6.86 m.
pub static EQUAL_STIFFNESS_TRAVEL: Formula<fn(Stiffness, Length, Stiffness) -> Length> = Formula {
    note: Note {
        id: "equal-stiffness-travel",
        title: "travel at which a screw held at both ends is as stiff as this rack",
        equation: "L_eq = 4·E·A/k_s, A = π/4·d_c², 1/k_s = 1/k − 1/k_0",
        inputs: &[("k", "total-stiffness"), ("d_c", "reference-core"), ("k_0", "reference-rest")],
        validity: "Nut at mid travel, bearings at the ends of the travel; k_0 is nut, bearings and bracket of the screw. Zero where the rack is stiffer than that at any travel. A longer screw is softer than the rack, a shorter one stiffer.",
        sources: &[Source::derived("springs in series; the rack does not know its travel")],
    },
    apply: |rack, core, rest| {
        let give = 1.0 / rack.si() - 1.0 / rest.si();
        let bar = 4.0 * super::constants::STEEL_YOUNG * PI / 4.0 * core.si() * core.si();
        Length::of_si(if give > 0.0 || give.is_nan() { bar * give } else { 0.0 * bar })
    },
};
