//! A toothed belt between motor and screw or driven nut: geometry, pull, pretension, stiffness, first tone of its span.
//!
//! Method: two pulleys at their pitch circles, open belt, two free spans that both work once the belt is pretensioned.
//! Limits: teeth are taken rigid and shafts stiff; the spans' own resonance is told for a belt at rest.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::{PI, TAU};

const GEOMETRY: &[Source] = &[Source::derived("common outer tangent of two circles; drawn numerically in the tests")];
const STATICS: &[Source] = &[Source::derived("balance of forces on a pulley")];

/// Pitch diameter of the pulley on the motor. 8 mm, 24 teeth: 61.115 mm.
pub static DRIVING_PULLEY: Formula<fn(Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "driving-pulley",
        title: "pitch diameter of the pulley on the motor",
        equation: "d_1 = p_B·z_1/π",
        inputs: &[("p_B", "pitch"), ("z_1", "teeth")],
        validity: "any pitch",
        sources: GEOMETRY,
    },
    apply: |pitch, teeth| Length::of_si(pitch.si() * teeth.si() / PI),
};

/// Pitch diameter of the pulley on screw or nut. 61.115 mm, 2: 122.23 mm.
pub static DRIVEN_PULLEY: Formula<fn(Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "driven-pulley",
        title: "pitch diameter of the pulley on screw or nut",
        equation: "d_2 = i·d_1",
        inputs: &[("d_1", "driving-pulley"), ("i", "reduction")],
        validity: "whole numbers of teeth on both",
        sources: GEOMETRY,
    },
    apply: |driving, reduction| Length::of_si(driving.si() * reduction.si()),
};

/// Length of one free span. 61.115 and 122.23 mm, 300 mm apart: 298.44 mm.
pub static BELT_SPAN: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "belt-span",
        title: "length of one free span of the belt",
        equation: "l_B = √(a_B² − ((d_2 − d_1)/2)²)",
        inputs: &[("d_1", "driving-pulley"), ("d_2", "driven-pulley"), ("a_B", "centre-distance")],
        validity: "pulleys that do not overlap",
        sources: GEOMETRY,
    },
    apply: |driving, driven, distance| {
        let step = (driven.si() - driving.si()) / 2.0;
        Length::of_si((distance.si() * distance.si() - step * step).sqrt())
    },
};

/// Teeth that mesh on the smaller pulley. 24 teeth, 61.115 and 122.23 mm, 300 mm apart: 11.22.
pub static TEETH_IN_MESH: Formula<fn(Ratio, Length, Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "teeth-in-mesh",
        title: "teeth of the belt that mesh on the smaller pulley",
        equation: "z_m = z_s·(π − 2·arcsin(|d_2 − d_1|/(2·a_B)))/(2π), z_s the teeth of the smaller pulley",
        inputs: &[
            ("z_1", "driving-teeth"),
            ("d_1", "driving-pulley"),
            ("d_2", "driven-pulley"),
            ("a_B", "centre-distance"),
        ],
        validity: "pulleys that do not overlap",
        sources: GEOMETRY,
    },
    apply: |teeth, driving, driven, distance| {
        let ratio = driven.si() / driving.si();
        let small = if ratio < 1.0 { teeth.si() * ratio } else { teeth.si() };
        let tilt = ((driven.si() - driving.si()).abs() / (2.0 * distance.si())).asin();
        Ratio::of_si(small * (PI - 2.0 * tilt) / TAU)
    },
};

/// Torsional stiffness of the belt at screw or nut.
///
/// Pass force at unit strain for each width, width, free span, and pulley on screw or nut.
/// Check: 20 kN/mm, 30 mm, 298.44 mm, 122.23 mm → 15 019 N·m/rad.
pub static BELT_STIFFNESS: Formula<fn(LineLoad, Length, Length, Length) -> TorsionalStiffness> = Formula {
    note: Note {
        id: "belt-stiffness",
        title: "torsional stiffness of the belt at screw or nut",
        equation: "c_g = 2·c_sp·b_B/l_B·(d_2/2)²",
        inputs: &[
            ("c_sp", "specific-stiffness"),
            ("b_B", "belt-width"),
            ("l_B", "belt-span"),
            ("d_2", "driven-pulley"),
        ],
        validity: "both spans tight: pretension above half the pull",
        sources: &[Source::derived("two springs in parallel at the pitch circle")],
    },
    apply: |specific, width, span, driven| {
        let radius = driven.si() / 2.0;
        TorsionalStiffness::of_si(2.0 * specific.si() * width.si() / span.si() * radius * radius)
    },
};

/// Permissible pull of a belt. 45 N/mm, 30 mm: 1350 N.
pub static BELT_PULL_LIMIT: Formula<fn(LineLoad, Length) -> Force> = Formula {
    note: Note {
        id: "belt-pull-limit",
        title: "permissible pull of the belt",
        equation: "F_B = w_B·b_B",
        inputs: &[("w_B", "pull-per-width"), ("b_B", "belt-width")],
        validity: "six teeth or more in mesh",
        sources: &[Source::derived("definition of the pull for each width")],
    },
    apply: |pull, width| Force::of_si(pull.si() * width.si()),
};

/// Torque of a pull at the pulley on screw or nut. 1350 N, 122.23 mm: 82.5 N·m.
pub static PULL_TORQUE: Formula<fn(Force, Length) -> Torque> = Formula {
    note: Note {
        id: "pull-torque",
        title: "torque of the permissible pull at screw or nut",
        equation: "T_Kn = F_B·d_2/2",
        inputs: &[("F_B", "belt-pull-limit"), ("d_2", "driven-pulley")],
        validity: "everywhere",
        sources: STATICS,
    },
    apply: |pull, driven| Torque::of_si(pull.si() * driven.si() / 2.0),
};

/// Pull of the belt for a torque at screw or nut. 40 N·m on 122.23 mm: 654.5 N.
pub static BELT_PULL: Formula<fn(Torque, Length) -> Force> = Formula {
    note: Note {
        id: "belt-pull",
        title: "largest pull of the belt",
        equation: "F_u = 2·T_1/d_2",
        inputs: &[("T_1", "shaft-torque"), ("d_2", "driven-pulley")],
        validity: "the difference of the forces in the two spans",
        sources: STATICS,
    },
    apply: |torque, driven| Force::of_si(2.0 * torque.si() / driven.si()),
};

/// Pretension of each span. 0.8 of 654.5 N: 523.6 N.
pub static BELT_PRETENSION: Formula<fn(Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "belt-pretension",
        title: "pretension of each span of the belt",
        equation: "F_0 = x_0·F_u",
        inputs: &[("x_0", "pretension-share"), ("F_u", "belt-pull")],
        validity: "a share above one half keeps both spans tight at the largest pull",
        sources: &[
            Source::derived("the slack span carries F_0 − F_u/2"),
            Source::practice("0.6 to 1.0 of the largest pull"),
        ],
    },
    apply: |share, pull| Force::of_si(share.si() * pull.si()),
};

/// Force of the belt on the shaft of the motor. 523.6 N, 298.44 mm of 300 mm: 1041.8 N.
pub static BELT_SHAFT_LOAD: Formula<fn(Force, Length, Length) -> Force> = Formula {
    note: Note {
        id: "belt-shaft-load",
        title: "force of the belt on the shaft of the motor",
        equation: "F_W = 2·F_0·l_B/a_B",
        inputs: &[("F_0", "belt-pretension"), ("l_B", "belt-span"), ("a_B", "centre-distance")],
        validity: "at rest and under load the same, since the spans share the pull about the pretension",
        sources: STATICS,
    },
    apply: |pretension, span, distance| Force::of_si(2.0 * pretension.si() * span.si() / distance.si()),
};

/// Speed of the belt. 3000 1/min on 61.115 mm: 9.6 m/s.
pub static BELT_SPEED: Formula<fn(AngularVelocity, Length) -> Velocity> = Formula {
    note: Note {
        id: "belt-speed",
        title: "speed of the belt at top speed of the axis",
        equation: "v_B = π·n_M·d_1",
        inputs: &[("n_M", "motor-speed"), ("d_1", "driving-pulley")],
        validity: "everywhere",
        sources: GEOMETRY,
    },
    apply: |speed, driving| Velocity::of_si(speed.si() * driving.si() / 2.0),
};

/// First tone of a free span. 500 N, 0.171 kg/m, 298.44 mm: 90.6 Hz.
pub static SPAN_FREQUENCY: Formula<fn(Force, LinearMassDensity, Length) -> Frequency> = Formula {
    note: Note {
        id: "span-frequency",
        title: "first tone of a free span of the belt, by which its pretension is set",
        equation: "f_B = √(F_0/m'_B)/(2·l_B)",
        inputs: &[("F_0", "belt-pretension"), ("m'_B", "belt-mass"), ("l_B", "belt-span")],
        validity: "belt at rest, without bending stiffness",
        sources: &[Source::derived("stretched string between two fixed points")],
    },
    apply: |pretension, mass, span| Frequency::of_si((pretension.si() / mass.si()).sqrt() / (2.0 * span.si())),
};
