//! Mounting: joints, pins and fasteners of a rack, what a whole segment holds, threads in the bed, grease.
//!
//! Method: counts; friction of all fasteners and shear of all pins of a segment at the limit, when every one bears its full
//! share; grease in proportion to way and width. Limits: the holes of the bed are taken to bear what the pins bear.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::PI;

const COUNT: &[Source] = &[Source::derived("count")];

/// Joints of a rack line. 12 segments: 11.
pub static JOINTS: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "rack-joints",
        title: "joints of the rack line",
        equation: "n_j = n_seg − 1",
        inputs: &[("n_seg", "segments")],
        validity: "one line of rack",
        sources: COUNT,
    },
    apply: |segments| Ratio::of_si(segments.si() - 1.0),
};

/// Pins of a rack line. 12 segments with 2 each: 24.
pub static PINS: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "rack-pins",
        title: "locating pins of the rack line",
        equation: "n_pin = n_seg·n_ps",
        inputs: &[("n_seg", "segments"), ("n_ps", "pins-per-segment")],
        validity: "whole segments",
        sources: COUNT,
    },
    apply: |segments, each| Ratio::of_si(segments.si() * each.si()),
};

/// Fasteners of one segment. 1 m at 62.5 mm: 16.
pub static SEGMENT_FASTENERS: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "segment-fasteners",
        title: "fasteners of one rack segment",
        equation: "n_fs = round(l_s/p_f)",
        inputs: &[("l_s", "segment-length"), ("p_f", "fastener-pitch")],
        validity: "the first fastener half a pitch from the joint",
        sources: COUNT,
    },
    apply: |segment, pitch| Ratio::of_si((segment.si() / pitch.si()).round()),
};

/// Force at which a whole segment moves. 16 of 32 kN, µ 0.15, α_A 1.6, 7.5 %: 42.24 kN; with 2 pins of 6 mm at 200 MPa:
/// 53.55 kN.
pub static SEGMENT_HOLDING_FORCE: Formula<fn(Ratio, Force, Ratio, Ratio, Ratio, Ratio, Length, Pressure) -> Force> =
    Formula {
        note: Note {
            id: "segment-holding-force",
            title: "force at which a whole rack segment moves on its seat",
            equation: "F_hs = n_fs·µ_T·F_M·(1/α_A − f_Z) + n_ps·π/4·d_pin²·τ_pin",
            inputs: &[
                ("n_fs", "segment-fasteners"),
                ("F_M", "fastener-preload"),
                ("µ_T", "friction"),
                ("α_A", "tightening-factor"),
                ("f_Z", "embedding"),
                ("n_ps", "pins-per-segment"),
                ("d_pin", "pin-diameter"),
                ("τ_pin", "pin-strength"),
            ],
            validity: "a single force: fasteners at the end slip a little until all bear; pins reamed in place; no safety \
                       inside; nothing where embedding eats the least preload",
            sources: &[
                Source::derived("all fasteners at their friction and all pins at their shear, at once"),
                Source::memory("VDI 2230 part 1, tightening factor, embedding and slip"),
            ],
        },
        apply: |count, preload, friction, tightening, embedding, pins, diameter, strength| {
            let left = 1.0 / tightening.si() - embedding.si();
            let left = if left < 0.0 { 0.0 } else { left };
            let shear = pins.si() * PI / 4.0 * diameter.si() * diameter.si() * strength.si();
            Force::of_si(count.si() * friction.si() * preload.si() * left + shear)
        },
    };

/// Force on the seat of a rack while the teeth bear a force. 6 kN straight: 6 kN; metric helix: 6366 N.
pub static SEAT_FORCE: Formula<fn(Force, Angle) -> Force> = Formula {
    note: Note {
        id: "seat-force",
        title: "force in the seat of the rack",
        equation: "F_se = F/cos β",
        inputs: &[("F", "force"), ("β", "helix-angle")],
        validity: "along the travel and sideways together; the force that presses the rack into its seat is not credited",
        sources: &[Source::derived("tangential and axial force of a helical tooth")],
    },
    apply: |force, helix| Force::of_si(force.si() / helix.si().cos()),
};

/// Length of thread in the bed. M8, 1.5 times: 12 mm.
pub static THREAD_DEPTH: Formula<fn(Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "thread-depth",
        title: "length of thread that bears in the bed",
        equation: "l_t = x_t·d",
        inputs: &[("d", "fastener-diameter"), ("x_t", "thread-depth-factor")],
        validity: "fasteners of class 10.9 and 12.9 at their full preload",
        sources: &[Source::practice("1.5 diameters in cast iron, 2 in aluminium")],
    },
    apply: |diameter, factor| Length::of_si(diameter.si() * factor.si()),
};

/// Force that a rack held along its length takes up when it and its bed grow differently.
/// 24 × 24 mm steel on aluminium, 10 K: 14.6 kN.
pub static RESTRAINED_FORCE: Formula<fn(Area, Expansion, Expansion, TemperatureInterval) -> Force> = Formula {
    note: Note {
        id: "restrained-force",
        title: "force in a rack that its bed keeps from growing",
        equation: "F_th = E·A·|α_b − α_d|·ΔT",
        inputs: &[
            ("A", "section-area"),
            ("α_d", "rack-expansion"),
            ("α_b", "bed-expansion"),
            ("ΔT", "temperature-swing"),
        ],
        validity: "a bed that does not give and as warm as the rack; joints without gaps",
        sources: &[Source::derived("Hooke, strain of the difference of expansion, E = 206 GPa")],
    },
    apply: |area, rack, bed, swing| Force::of_si(STEEL_YOUNG * area.si() * (bed.si() - rack.si()).abs() * swing.si()),
};

/// Grease that the teeth of one rack line ask in a year. 0.04 g/km for 20 mm, face 39 mm, 20 000 km in 10 years: 156 g.
pub static GREASE_PER_YEAR: Formula<fn(LinearMassDensity, Length, Length, Length, Time) -> Mass> = Formula {
    note: Note {
        id: "grease-per-year",
        title: "grease that one rack line asks in a year of service",
        equation: "m_gr = q_gr·b/b_0·s_t/t_y",
        inputs: &[
            ("q_gr", "grease-per-distance"),
            ("b", "face-width"),
            ("b_0", "grease-width"),
            ("s_t", "service-distance"),
            ("t_y", "service-years"),
        ],
        validity: "grease through a lubricating pinion; t_y in years of 8766 h",
        sources: &[Source::practice("0.03 to 0.06 cm³ a kilometre and 20 mm of face width")],
    },
    apply: |rate, width, reference, distance, years| {
        let each_year = distance.si() * 31_557_600.0 / years.si();
        Mass::of_si(rate.si() * width.si() / reference.si() * each_year)
    },
};

/// Working time between two lubrications. 100 km at 6 m/min: 277.8 h.
pub static RELUBRICATION_HOURS: Formula<fn(Length, Velocity) -> Time> = Formula {
    note: Note {
        id: "relubrication-hours",
        title: "working time between two lubrications",
        equation: "t_l = s_l/v_m",
        inputs: &[("s_l", "relubrication-distance"), ("v_m", "mean-speed")],
        validity: "an axis that moves; clean surroundings",
        sources: &[Source::derived("way over mean speed")],
    },
    apply: |distance, speed| Time::of_si(distance.si() / speed.si()),
};

/// Grease of one lubrication of a nut. 0.05 g a millimetre of diameter, 40 mm: 2 g.
pub static GREASE_DOSE: Formula<fn(LinearMassDensity, Length) -> Mass> = Formula {
    note: Note {
        id: "grease-dose",
        title: "grease of one lubrication of a nut",
        equation: "m_l = q_l·d_0",
        inputs: &[("q_l", "grease-per-diameter"), ("d_0", "nominal-diameter")],
        validity: "a first estimate; the nut's maker states it",
        sources: &[Source::practice("half of the free space of the nut, in proportion to its diameter")],
    },
    apply: |rate, diameter| Mass::of_si(rate.si() * diameter.si()),
};

/// Working time between two lubrications in these surroundings. Half of 277.8 h: 138.9 h.
pub static LUBRICATION_INTERVAL: Formula<fn(Ratio, Time) -> Time> = Formula {
    note: Note {
        id: "lubrication-interval",
        title: "working time between two lubrications in these surroundings",
        equation: "t_i = x_s·t_l",
        inputs: &[("x_s", "surroundings-share"), ("t_l", "relubrication-hours")],
        validity: "a share of the catalogue for the surroundings that the brief names; once a year at least, however little the axis runs",
        sources: &[Source::practice("dust, chips and coolant shorten the interval to a half or less")],
    },
    apply: |share, clean| Time::of_si(share.si() * clean.si()),
};

/// Grease that a nut asks in a year in these surroundings. 2 g each 138.9 h, 4000 h: 57.6 g.
pub static NUT_GREASE_NEED: Formula<fn(Mass, Time, Time) -> Mass> = Formula {
    note: Note {
        id: "nut-grease-need",
        title: "grease that a nut asks in a year in these surroundings",
        equation: "m_gn = m_l·t_a/t_i",
        inputs: &[("m_l", "grease-dose"), ("t_a", "hours-per-year"), ("t_i", "lubrication-interval")],
        validity: "one dose at every interval",
        sources: &[Source::derived("count of the intervals")],
    },
    apply: |dose, hours, interval| Mass::of_si(dose.si() * hours.si() / interval.si()),
};

/// Grease that a rack line asks in a year in these surroundings. 156 g in clean air, a share of 0.5: 312 g.
pub static RACK_GREASE_NEED: Formula<fn(Mass, Ratio) -> Mass> = Formula {
    note: Note {
        id: "rack-grease-need",
        title: "grease that a rack line asks in a year in these surroundings",
        equation: "m_gn = m_gr/x_s",
        inputs: &[("m_gr", "grease-per-year"), ("x_s", "surroundings-share")],
        validity: "as much more grease as the interval of a nut would be shorter",
        sources: &[Source::practice("dust, chips and coolant shorten the interval to a half or less")],
    },
    apply: |clean, share| Mass::of_si(clean.si() / share.si()),
};
