//! Sums, shares and shaft quantities that join the parts of a drive.
//!
//! Method: each is a line an engineer writes without looking anything up; it stands here so that the
//! worksheet has it. All are derived; a check value stands beside each.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

const DERIVED: &[Source] = &[Source::derived("sum or ratio of the quantities named")];

/// Both journals of a screw: 4·d_0 (common practice). Check: 40 mm → 160 mm.
pub static JOURNAL_LENGTH: Formula<fn(Length) -> Length> = Formula {
    note: Note {
        id: "journal-length",
        title: "length of both screw journals",
        equation: "L_j = 4·d_0",
        inputs: &[("d_0", "nominal-diameter")],
        validity: "a first estimate for bearing seats, lock nuts and coupling seat; the drawing decides",
        sources: &[Source::practice("two seats of about 2·d_0 each")],
    },
    apply: |nominal_diameter| Length::of_si(4.0 * nominal_diameter.si()),
};

/// Nuts and supports that ride on the slide, all drives: m_r = n_d·(m_n + m_v). Check: 2·(1.3 + 0.7) kg → 4 kg.
pub static RIDING_NUTS: Formula<fn(Mass, Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "riding-nuts",
        title: "mass of nuts and supports that ride on the slide",
        equation: "m_r = n_d·(m_n + m_v)",
        inputs: &[("m_n", "nut-mass"), ("m_v", "support-mass"), ("n_d", "drives")],
        validity: "screw turns and stands still along the axis; the motor does not ride; supports counted in full, though \
                   they move at half the speed",
        sources: DERIVED,
    },
    apply: |nut, support, drives| Mass::of_si((nut.si() + support.si()) * drives.si()),
};

/// Drive units that ride on the slide, all drives: m_r = n_d·(m_M + m_g + m_p). Check: 2·(10 + 8 + 1) → 38 kg.
pub static RIDING_UNITS: Formula<fn(Mass, Mass, Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "riding-units",
        title: "mass of motor, gearbox and pinion that ride on the slide",
        equation: "m_r = n_d·(m_M + m_g + m_p)",
        inputs: &[("m_M", "motor-mass"), ("m_g", "gearbox-mass"), ("m_p", "pinion-mass"), ("n_d", "drives")],
        validity: "the rack stands on the bed, the drive unit rides on the slide",
        sources: DERIVED,
    },
    apply: |motor, gearbox, pinion, drives| Mass::of_si(drives.si() * (motor.si() + gearbox.si() + pinion.si())),
};

/// Driven nuts with all that rides, all drives: m_r = n_d·(m_M + m_g + m_n + m_u + m_v).
/// Check: 2·(10 + 4 + 1 + 7 + 1) → 46 kg.
pub static RIDING_NUT_DRIVES: Formula<fn(Mass, Mass, Mass, Mass, Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "riding-nut-drives",
        title: "mass of motor, belt, nut, nut unit and supports that ride on the slide",
        equation: "m_r = n_d·(m_M + m_g + m_n + m_u + m_v)",
        inputs: &[
            ("m_M", "motor-mass"),
            ("m_g", "reduction-mass"),
            ("m_n", "nut-mass"),
            ("m_u", "nut-unit-mass"),
            ("m_v", "support-mass"),
            ("n_d", "drives"),
        ],
        validity: "the screw stands on the bed, the nut and what turns it ride on the slide",
        sources: DERIVED,
    },
    apply: |motor, reduction, nut, unit, support, drives| {
        Mass::of_si(drives.si() * (motor.si() + reduction.si() + nut.si() + unit.si() + support.si()))
    },
};

/// How far two diameters differ: |d_u − d_0|. Check: 40 mm, 32 mm → 8 mm.
pub static NUT_UNIT_MISFIT: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "nut-unit-misfit",
        title: "by how much the nut unit is made for another diameter of screw",
        equation: "Δd_u = |d_u − d_0|",
        inputs: &[("d_u", "nut-unit-diameter"), ("d_0", "nominal-diameter")],
        validity: "a unit takes the nuts of one nominal diameter",
        sources: DERIVED,
    },
    apply: |unit, screw| Length::of_si((unit.si() - screw.si()).abs()),
};

/// Share of the cutting force on the most loaded drive: 1, or 1/2 + y/B with two. Check: y/B 0.3 → 0.8.
pub static CUTTING_SHARE: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "cutting-share",
        title: "share of the cutting force on the most loaded drive",
        equation: "x_c = 1 (one drive), 1/2 + y/B (two drives)",
        inputs: &[("n_d", "drives"), ("y/B", "carriage-reach")],
        validity: "levers about the middle between two drives; at most the whole force",
        sources: &[Source::derived("balance of moments on a beam held at two places")],
    },
    apply: |drives, reach| {
        let share = 0.5 + reach.si();
        Ratio::of_si(if drives.si() < 1.5 || share > 1.0 { 1.0 } else { share })
    },
};

/// A force times a share. Check: 900 N × 0.8 → 720 N.
pub static SHARED_FORCE: Formula<fn(Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "shared-force",
        title: "part of a force on one drive",
        equation: "F_d = F·x",
        inputs: &[("F", "force"), ("x", "share")],
        validity: "any",
        sources: DERIVED,
    },
    apply: |force, share| Force::of_si(force.si() * share.si()),
};

/// Longest screw of a size and grade: the lesser of ratio·d_0 and the blank. Check: 60·32 mm, 12 m → 1920 mm.
pub static LENGTH_LIMIT: Formula<fn(Length, Ratio, Length) -> Length> = Formula {
    note: Note {
        id: "screw-length-limit",
        title: "longest screw made in this size and grade",
        equation: "L_max = min(L/d_0·d_0, L_b)",
        inputs: &[("d_0", "nominal-diameter"), ("L/d_0", "length-per-diameter"), ("L_b", "blank-length")],
        validity: "limits of manufacture as the catalogue states them",
        sources: &[Source::practice("slenderness that can be ground or rolled straight")],
    },
    apply: |nominal_diameter, ratio, blank| {
        let slender = nominal_diameter.si() * ratio.si();
        Length::of_si(if slender < blank.si() || slender.is_nan() { slender } else { blank.si() })
    },
};

/// Product of two efficiencies. Check: 0.95 × 0.97 → 0.9215.
pub static PRODUCT: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "efficiency-product",
        title: "efficiency of two elements in line",
        equation: "η = η_1·η_2",
        inputs: &[("η_1", "first"), ("η_2", "second")],
        validity: "power flows through both",
        sources: DERIVED,
    },
    apply: |first, second| Ratio::of_si(first.si() * second.si()),
};

/// Drag of so many bearing sets. Check: 2 × 0.3 → 0.6 N·m.
pub static SETS_DRAG: Formula<fn(Torque, Ratio) -> Torque> = Formula {
    note: Note {
        id: "bearing-drag",
        title: "drag of all screw bearings",
        equation: "T_b = n_t·T_b1",
        inputs: &[("T_b1", "bearing-set-drag"), ("n_t", "thrust-ends")],
        validity: "greased bearing sets at their preload; radial supports neglected",
        sources: DERIVED,
    },
    apply: |each, count| Torque::of_si(each.si() * count.si()),
};

/// Sum of two torques. Check: 0.8 + 0.3 → 1.1 N·m.
pub static TORQUE_SUM: Formula<fn(Torque, Torque) -> Torque> = Formula {
    note: Note {
        id: "torque-sum",
        title: "drag at the screw",
        equation: "T_d = T_p + T_b",
        inputs: &[("T_p", "preload-drag-torque"), ("T_b", "bearing-drag-torque")],
        validity: "drag does not grow with load",
        sources: DERIVED,
    },
    apply: |first, second| Torque::of_si(first.si() + second.si()),
};

/// Largest torque at screw or driven nut: F·P_h/(2π·η) + T_d + J_s·2π·a/P_h.
/// Check: 5 kN, 10 mm, 0.95, 1 N·m, 25.6 kg·cm², 5 m/s² → 8.377 + 1 + 8.042 = 17.42 N·m.
pub static SHAFT_TORQUE: Formula<fn(Force, Length, Ratio, Torque, MomentOfInertia, Acceleration) -> Torque> = Formula {
    note: Note {
        id: "shaft-torque",
        title: "largest torque that coupling or belt hands to the screw or the driven nut",
        equation: "T_1 = F_max·P_h/(2π·η_1) + T_d + J_s·2π·a/P_h",
        inputs: &[
            ("F_max", "peak-force"),
            ("P_h", "lead"),
            ("η_1", "screw-efficiency"),
            ("T_d", "drag-torque"),
            ("J_s", "shaft-inertia"),
            ("a", "acceleration"),
        ],
        validity: "all three at once: an upper value",
        sources: &[Source::derived("balance of torques on the part that turns")],
    },
    apply: |force, lead, efficiency, drag, inertia, acceleration| {
        let radius = lead.si() / (2.0 * PI);
        Torque::of_si(force.si() * radius / efficiency.si() + drag.si() + inertia.si() * acceleration.si() / radius)
    },
};

/// Step of the motor encoder at the slide: p/(N_e·i). Check: 10 mm, 2^20, 1 → 9.537 nm.
pub static ENCODER_STEP: Formula<fn(Length, Ratio, Ratio) -> Length> = Formula {
    note: Note {
        id: "encoder-step",
        title: "measuring step of the motor encoder at the slide",
        equation: "q_s = p/(N_e·i)",
        inputs: &[("p", "travel-per-turn"), ("N_e", "encoder-counts"), ("i", "reduction")],
        validity: "an encoder on the motor shaft",
        sources: DERIVED,
    },
    apply: |travel_per_turn, counts, reduction| Length::of_si(travel_per_turn.si() / (counts.si() * reduction.si())),
};

/// Sum of two temperature differences. Check: 5 K + 3 K → 8 K.
pub static TEMPERATURE_SUM: Formula<fn(TemperatureInterval, TemperatureInterval) -> TemperatureInterval> = Formula {
    note: Note {
        id: "temperature-sum",
        title: "temperature of the screw over the reference temperature",
        equation: "ΔT_m = ΔT + ΔT_s",
        inputs: &[("ΔT", "temperature-swing"), ("ΔT_s", "screw-warming")],
        validity: "surroundings at their warmest and the screw warmed up: the worst case",
        sources: DERIVED,
    },
    apply: |first, second| TemperatureInterval::of_si(first.si() + second.si()),
};

/// The lesser of two lengths. Check: 11 m, 2 m → 2 m.
pub static LESSER_LENGTH: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "lesser-length",
        title: "section on which accuracy is stated",
        equation: "s_2 = min(s, 2 m)",
        inputs: &[("s", "travel"), ("2 m", "section")],
        validity: "ISO 230-2 states A and R up to 2 m of travel; longer axes by a section of 2 m",
        sources: &[Source::standard("ISO 230-2, scope for axes above 2 m, as published in GOST ISO 230-2-2016")],
    },
    apply: |first, second| {
        let (first, second) = (first.si(), second.si());
        Length::of_si(if first < second || first.is_nan() { first } else { second })
    },
};

/// Sum of two lengths. Check: 30 µm + 18 µm → 48 µm.
pub static LENGTH_SUM: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "length-sum",
        title: "play of mesh and gearbox",
        equation: "j = j_t + j_g",
        inputs: &[("j_t", "mesh-play"), ("j_g", "backlash-at-rack")],
        validity: "both are passed in one reversal",
        sources: DERIVED,
    },
    apply: |first, second| Length::of_si(first.si() + second.si()),
};

/// Complete mass of the screw drives of an axis: n_d·(m_s + m_n + m_v + m_b·n_t + m_g + m_M).
/// Check: 2·(12 + 1.3 + 0.7 + 2·2 + 0.5 + 10) → 57 kg.
pub static SCREW_DRIVE_MASS: Formula<fn(Mass, Mass, Mass, Mass, Ratio, Mass, Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "screw-drive-mass",
        title: "complete mass of the screw drives of the axis",
        equation: "m_dr = n_d·(m_s + m_n + m_v + n_t·m_b + m_g + m_M)",
        inputs: &[
            ("m_s", "screw-mass"),
            ("m_n", "nut-mass"),
            ("m_v", "support-mass"),
            ("m_b", "bearing-mass"),
            ("n_t", "thrust-ends"),
            ("m_g", "reduction-mass"),
            ("m_M", "motor-mass"),
            ("n_d", "drives"),
        ],
        validity: "brackets and covers belong to the moved mass of the brief",
        sources: DERIVED,
    },
    apply: |screw, nut, support, bearing, sets, reduction, motor, drives| {
        let one = screw.si() + nut.si() + support.si() + sets.si() * bearing.si() + reduction.si() + motor.si();
        Mass::of_si(drives.si() * one)
    },
};

/// Complete mass of drives whose motors ride: n_d·m_st + m_r. Check: 2·60 + 38 → 158 kg.
pub static RIDING_DRIVE_MASS: Formula<fn(Mass, Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "riding-drive-mass",
        title: "complete mass of the drives of the axis, motors riding",
        equation: "m_dr = n_d·m_st + m_r",
        inputs: &[("m_st", "standing-mass"), ("m_r", "riding-mass"), ("n_d", "drives")],
        validity: "rack or screw stands; fasteners and clamps neglected",
        sources: DERIVED,
    },
    apply: |standing, riding, drives| Mass::of_si(drives.si() * standing.si() + riding.si()),
};

/// Torque from force at a pinion or screw without loss. Check: 5 kN at 200 mm a turn → 159.2 N·m.
pub static FORCE_TORQUE: Formula<fn(Force, Length, Ratio) -> Torque> = Formula {
    note: Note {
        id: "mean-output-torque",
        title: "mean torque at the gearbox output",
        equation: "T_2m = F_m·p/(2π·η_m)",
        inputs: &[("F_m", "mean-force"), ("p", "travel-per-turn"), ("η_m", "mesh-efficiency")],
        validity: "the cubic mean force of the duty, motor driving",
        sources: DERIVED,
    },
    apply: |force, travel_per_turn, efficiency| {
        Torque::of_si(force.si() * travel_per_turn.si() / (2.0 * PI * efficiency.si()))
    },
};

/// Working hours over the service life: t_s = t_y·t_a. Check: 10 years × 4000 h → 40 000 h.
pub static SERVICE_HOURS: Formula<fn(Time, Time) -> Time> = Formula {
    note: Note {
        id: "service-hours",
        title: "working hours over the service life",
        equation: "t_s = t_y[years]·t_a",
        inputs: &[("t_y", "service-years"), ("t_a", "hours-per-year")],
        validity: "a year of 365.25 days",
        sources: DERIVED,
    },
    apply: |years, hours_per_year| Time::of_si(years.si() / 31_557_600.0 * hours_per_year.si()),
};

/// A quantity taken over unchanged under another name.
pub static SAME_LENGTH: Formula<fn(Length) -> Length> = Formula {
    note: Note {
        id: "same-length",
        title: "taken over unchanged",
        equation: "y = x",
        inputs: &[("x", "value")],
        validity: "any",
        sources: DERIVED,
    },
    apply: |value| value,
};

/// A force taken over unchanged under another name.
pub static SAME_FORCE: Formula<fn(Force) -> Force> = Formula {
    note: Note {
        id: "same-force",
        title: "taken over unchanged",
        equation: "y = x",
        inputs: &[("x", "value")],
        validity: "any",
        sources: DERIVED,
    },
    apply: |value| value,
};

/// A temperature difference taken over unchanged under another name.
pub static SAME_TEMPERATURE: Formula<fn(TemperatureInterval) -> TemperatureInterval> = Formula {
    note: Note {
        id: "same-temperature",
        title: "taken over unchanged",
        equation: "y = x",
        inputs: &[("x", "value")],
        validity: "any",
        sources: DERIVED,
    },
    apply: |value| value,
};
