//! The ball screw itself: lengths, mass, lead angle, efficiency, torque, preload.
//!
//! Method: inclined plane with an apparent friction coefficient of the loaded nut. Limits: drag that does not
//! grow with load is a torque of its own (see [`PRELOAD_DRAG`]).

use super::constants::STEEL_DENSITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Angle, AngularVelocity, CirculationSpeed, Force, Length, Mass, Measure, Ratio, Torque};
use std::f64::consts::{FRAC_PI_4, PI, TAU};

const PLANE: Source = Source::derived("inclined plane with friction angle ρ = atan µ");

/// Free length of the screw between its bearings, m.
///
/// Pass travel, overtravel at each end, gap at each end, nut length, and room for supports that travel along.
/// Check: 1000, 30, 20, 100, 0 mm → 1200 mm.
pub static FREE_LENGTH: Formula<fn(Length, Length, Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "free-length",
        title: "free length of the screw, bearing to bearing",
        equation: "L = s + 2·s_o + 2·s_g + L_n + L_v",
        inputs: &[
            ("s", "travel"),
            ("s_o", "overtravel"),
            ("s_g", "end-gap"),
            ("L_n", "nut-length"),
            ("L_v", "support-room"),
        ],
        validity: "one nut",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: free_length,
};

/// See [`FREE_LENGTH`].
#[inline]
pub fn free_length(
    travel: Length,
    overtravel: Length,
    end_gap: Length,
    nut_length: Length,
    support_room: Length,
) -> Length {
    let ends = 2.0 * overtravel.si() + 2.0 * end_gap.si();
    Length::of_si(travel.si() + ends + nut_length.si() + support_room.si())
}

/// Length of the screw with its journals, m.
///
/// Pass the free length and the length of both journals. Check: 1200 mm, 150 mm → 1350 mm.
pub static SCREW_LENGTH: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "screw-length",
        title: "length of the screw",
        equation: "L_s = L + L_j",
        inputs: &[("L", "free-length"), ("L_j", "journal-length")],
        validity: "everywhere",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: screw_length,
};

/// See [`SCREW_LENGTH`].
#[inline]
pub fn screw_length(free_length: Length, journal_length: Length) -> Length {
    Length::of_si(free_length.si() + journal_length.si())
}

/// Ball circulation speed, nominal diameter × turns a time, m·rev/s.
///
/// Pass the nominal diameter and the speed of the screw. Check: 40 mm, 3000 1/min → 120 000 mm/min.
pub static CIRCULATION_SPEED: Formula<fn(Length, AngularVelocity) -> CirculationSpeed> = Formula {
    note: Note {
        id: "circulation-speed",
        title: "ball circulation speed",
        equation: "DN = d_0·n_s",
        inputs: &[("d_0", "nominal-diameter"), ("n_s", "screw-speed")],
        validity: "limits must be stated for the nominal diameter too, not for the ball circle",
        sources: &[Source::practice("usual measure of ball circulation")],
    },
    apply: circulation_speed,
};

/// See [`CIRCULATION_SPEED`].
#[inline]
pub fn circulation_speed(nominal_diameter: Length, screw_speed: AngularVelocity) -> CirculationSpeed {
    CirculationSpeed::of_si(nominal_diameter.si() * screw_speed.si() / TAU)
}

/// Lead angle on the ball circle, rad.
///
/// Pass lead and ball circle diameter. Check: 10 mm on 33 mm → 5.509 57°.
pub static LEAD_ANGLE: Formula<fn(Length, Length) -> Angle> = Formula {
    note: Note {
        id: "lead-angle",
        title: "lead angle on the ball circle",
        equation: "β = atan(P_h/(π·D_pw))",
        inputs: &[("P_h", "lead"), ("D_pw", "ball-circle-diameter")],
        validity: "everywhere",
        sources: &[Source::derived("development of the helix")],
    },
    apply: lead_angle,
};

/// See [`LEAD_ANGLE`].
#[inline]
pub fn lead_angle(lead: Length, ball_circle_diameter: Length) -> Angle {
    Angle::of_si((lead.si() / (PI * ball_circle_diameter.si())).atan())
}

/// Efficiency of a screw that turns rotation into thrust, 1.
///
/// Pass lead angle and apparent friction of the nut. Check: 5.509 57°, 0.005 → 0.950 260.
pub static SCREW_EFFICIENCY: Formula<fn(Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "screw-efficiency",
        title: "efficiency of the screw, rotation into thrust",
        equation: "η_1 = tan β/tan(β + ρ), ρ = atan µ",
        inputs: &[("β", "lead-angle"), ("µ", "friction")],
        validity: "friction that grows with load; the drag of preload and wipers is separate",
        sources: &[PLANE],
    },
    apply: screw_efficiency,
};

/// See [`SCREW_EFFICIENCY`].
#[inline]
pub fn screw_efficiency(lead_angle: Angle, friction: Ratio) -> Ratio {
    let tangent = lead_angle.si().tan();
    let mu = friction.si();
    Ratio::of_si(if mu == 0.0 { 1.0 + 0.0 * tangent } else { tangent * (1.0 - mu * tangent) / (tangent + mu) })
}

/// Efficiency of a screw that turns thrust into rotation, 1; zero when it locks itself.
///
/// Pass lead angle and apparent friction of the nut. Check: 5.509 57°, 0.005 → 0.947 707.
pub static BACK_DRIVING_EFFICIENCY: Formula<fn(Angle, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "back-driving-efficiency",
        title: "efficiency of the screw, thrust into rotation",
        equation: "η_2 = tan(β − ρ)/tan β, ρ = atan µ",
        inputs: &[("β", "lead-angle"), ("µ", "friction")],
        validity: "β > ρ; zero below, where the screw locks itself (never to be relied on)",
        sources: &[PLANE],
    },
    apply: back_driving_efficiency,
};

/// See [`BACK_DRIVING_EFFICIENCY`].
#[inline]
pub fn back_driving_efficiency(lead_angle: Angle, friction: Ratio) -> Ratio {
    let tangent = lead_angle.si().tan();
    let mu = friction.si();
    let efficiency = if mu == 0.0 { 1.0 + 0.0 * tangent } else { (tangent - mu) / ((1.0 + mu * tangent) * tangent) };
    Ratio::of_si(if efficiency < 0.0 { 0.0 } else { efficiency })
}

/// Preload of a nut, N.
///
/// Pass the share of the dynamic rating and the rating. Check: 0.05, 40 kN → 2 kN.
pub static PRELOAD: Formula<fn(Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "preload",
        title: "preload of the nut",
        equation: "F_pr = x_pr·C_a",
        inputs: &[("x_pr", "preload-share"), ("C_a", "dynamic-rating")],
        validity: "usual shares lie between 0 and 0.10",
        sources: &[Source::practice("preload is stated as a share of the dynamic rating")],
    },
    apply: preload,
};

/// See [`PRELOAD`].
#[inline]
pub fn preload(share: Ratio, dynamic_rating: Force) -> Force {
    Force::of_si(share.si() * dynamic_rating.si())
}

/// Drag torque of a preloaded nut, N·m.
///
/// Pass preload, lead and lead angle. Check: 3 kN, 10 mm, 5.509 57° → 0.768 68 N·m.
pub static PRELOAD_DRAG: Formula<fn(Force, Length, Angle) -> Torque> = Formula {
    note: Note {
        id: "preload-drag-torque",
        title: "drag torque of the preload",
        equation: "T_p = 0.05·(tan β)^(−1/2)·F_pr·P_h/(2π)",
        inputs: &[("F_pr", "preload"), ("P_h", "lead"), ("β", "lead-angle")],
        validity: "double or four-point nuts with oil, wipers not included; a supplied nut scatters by 20 to 50 %",
        sources: &[Source::memory("JIS B 1192, basic drag torque of preload")],
    },
    apply: preload_drag,
};

/// See [`PRELOAD_DRAG`].
#[inline]
pub fn preload_drag(preload: Force, lead: Length, lead_angle: Angle) -> Torque {
    Torque::of_si(0.05 / lead_angle.si().tan().sqrt() * preload.si() * lead.si() / TAU)
}

/// Torque that drives a screw against an axial force, N·m.
///
/// Pass force, lead and efficiency. Check: 5 kN, 10 mm, 0.950 260 → 8.3743 N·m.
pub static SCREW_TORQUE: Formula<fn(Force, Length, Ratio) -> Torque> = Formula {
    note: Note {
        id: "screw-torque",
        title: "torque that drives the screw against an axial force",
        equation: "T = F·P_h/(2π·η_1)",
        inputs: &[("F", "axial-force"), ("P_h", "lead"), ("η_1", "efficiency")],
        validity: "the screw drives the load; where the load drives the screw the efficiency multiplies instead",
        sources: &[Source::derived("energy balance over one turn")],
    },
    apply: screw_torque,
};

/// See [`SCREW_TORQUE`].
#[inline]
pub fn screw_torque(axial_force: Force, lead: Length, efficiency: Ratio) -> Torque {
    Torque::of_si(axial_force.si() * lead.si() / (TAU * efficiency.si()))
}

/// Mass of a steel screw taken as a bored round bar, kg.
///
/// Pass nominal diameter, bore and length. Check: 40 mm, no bore, 1.3 m → 12.824 kg.
pub static SCREW_MASS: Formula<fn(Length, Length, Length) -> Mass> = Formula {
    note: Note {
        id: "screw-mass",
        title: "mass of the screw",
        equation: "m_s = ρ·π/4·(d_0² − d_h²)·L_s",
        inputs: &[("d_0", "nominal-diameter"), ("d_h", "bore"), ("L_s", "length")],
        validity: "steel, 7850 kg/m³; the nominal diameter makes it an upper value",
        sources: &[Source::derived("volume times density")],
    },
    apply: screw_mass,
};

/// See [`SCREW_MASS`].
#[inline]
pub fn screw_mass(nominal_diameter: Length, bore: Length, length: Length) -> Mass {
    let squares = nominal_diameter.si().powi(2) - bore.si().powi(2);
    Mass::of_si(STEEL_DENSITY * FRAC_PI_4 * squares * length.si())
}

/// Length of screw that the supports which travel with the nut take up. Check: 2 · 63 mm → 126 mm.
pub static SUPPORT_ROOM: Formula<fn(Ratio, Length) -> Length> = Formula {
    note: Note {
        id: "support-room",
        title: "length of screw that the supports take up",
        equation: "L_v = x_v·d_0",
        inputs: &[("x_v", "support-room-share"), ("d_0", "nominal-diameter")],
        validity: "both supports of a pair together, at one end of the travel; zero without supports",
        sources: &[Source::practice("each support about one diameter long")],
    },
    apply: |share, diameter| Length::of_si(share.si() * diameter.si()),
};

/// Mass of the supports that travel with the nut of one screw. Check: 0.7 kg at 32 mm, 63 mm → 1.378 kg.
pub static SUPPORT_MASS: Formula<fn(Mass, Length) -> Mass> = Formula {
    note: Note {
        id: "support-mass",
        title: "mass of the supports that travel with the nut",
        equation: "m_v = m_15·d_0/32 mm",
        inputs: &[("m_15", "support-size-mass"), ("d_0", "nominal-diameter")],
        validity: "supports of one screw; zero without supports",
        sources: &[Source::practice("grows with the diameter")],
    },
    apply: |mass, diameter| Mass::of_si(mass.si() * diameter.si() / 0.032),
};

/// Free length over nominal diameter, 1. Check: 1.6 m, 40 mm → 40.
pub static SLENDERNESS: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "screw-slenderness",
        title: "free length of the screw over its nominal diameter",
        equation: "Λ = L/d_0",
        inputs: &[("L", "free-length"), ("d_0", "nominal-diameter")],
        validity: "any",
        sources: &[Source::derived("ratio of two lengths")],
    },
    apply: |length, diameter| Ratio::of_si(length.si() / diameter.si()),
};
