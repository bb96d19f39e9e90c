//! An emergency stop under control, and the run into the end stop.
//!
//! Method: the drive brakes with the torque limit that is set in its electronics; after that the buffer takes up what all
//! moving and turning parts hold at full speed, while the drive still pushes. Limits: nothing is credited for friction; the
//! force of a rigid stop is that of a spring without mass between the turning parts and the slide.

use super::constants::GRAVITY;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;
use std::f64::consts::TAU;

const MOTION: &[Source] = &[Source::derived("equation of motion of load and turning parts joined stiffly")];
const BALANCE: &[Source] = &[Source::derived("energy balance over the stroke; stepped in the tests")];

/// Force at the slide of the torque limit that is set. 12 N·m, 10 mm, 1: 7540 N.
pub static DRIVE_PUSH: Formula<fn(Torque, Length, Ratio) -> Force> = Formula {
    note: Note {
        id: "drive-push",
        title: "force of the set torque limit at the slide",
        equation: "F_d = T_set·2π·i/p",
        inputs: &[("T_set", "set-torque"), ("p", "travel-per-turn"), ("i", "reduction")],
        validity: "losses neglected: the upper value",
        sources: &[Source::derived("energy balance over one turn")],
    },
    apply: |torque, travel_per_turn, reduction| Force::of_si(torque.si() * TAU * reduction.si() / travel_per_turn.si()),
};

/// Deceleration of a stop under control, downward where there is a down.
/// 7540 N against 2942 N, 300 and 3158 kg: 1.3297 m/s².
pub static STOP_DECELERATION: Formula<fn(Force, Force, Mass, Mass) -> Acceleration> = Formula {
    note: Note {
        id: "stop-deceleration",
        title: "deceleration of an emergency stop at the set torque limit, downward where there is a down",
        equation: "a_e = (F_d − F_g)/(m_d + m_red)",
        inputs: &[("F_d", "drive-push"), ("F_g", "gravity-force"), ("m_d", "driven-mass"), ("m_red", "reduced-mass")],
        validity: "no friction, no loss credited; not above zero: the drive does not stop the load",
        sources: MOTION,
    },
    apply: |push, gravity, driven, reduced| {
        Acceleration::of_si((push.si() - gravity.si()) / (driven.si() + reduced.si()))
    },
};

/// Deceleration of a stop under control upward, where the weight that is not hung up helps to brake.
/// 7540 N with 2942 N, no counterweight, 300 and 3158 kg: 3.0309 m/s².
pub static GREATEST_STOP_DECELERATION: Formula<fn(Force, Force, Mass, Mass, Mass) -> Acceleration> = Formula {
    note: Note {
        id: "greatest-stop-deceleration",
        title: "deceleration of an emergency stop at the set torque limit; of an inclined axis while it runs upward",
        equation: "a_eu = (F_d + F_g − m_cb·g)/(m_a + m_red)",
        inputs: &[
            ("F_d", "drive-push"),
            ("F_g", "gravity-force"),
            ("m_cb", "counterweight-mass"),
            ("m_a", "accelerated-mass"),
            ("m_red", "reduced-mass"),
        ],
        validity: "no friction, no loss, no gas counterbalance credited; a rope stays tight in a stop upward",
        sources: MOTION,
    },
    apply: |push, gravity, hanging, accelerated, reduced| {
        let force = push.si() + gravity.si() - hanging.si() * GRAVITY;
        Acceleration::of_si(force / (accelerated.si() + reduced.si()))
    },
};

/// Way of an emergency stop from full speed. 0.3 m/s, 40 ms, 1.5 m/s²: 12 + 30 = 42 mm.
pub static EMERGENCY_STOP_DISTANCE: Formula<fn(Velocity, Time, Acceleration) -> Length> = Formula {
    note: Note {
        id: "emergency-stop-distance",
        title: "way of an emergency stop from full speed",
        equation: "s_e = v·t_r + v²/(2·a_e)",
        inputs: &[("v", "speed"), ("t_r", "stop-reaction"), ("a_e", "stop-deceleration")],
        validity: "the drive keeps its speed until it reacts; a deceleration not above zero: a way without end",
        sources: MOTION,
    },
    apply: |speed, reaction, deceleration| {
        let (v, a) = (speed.si(), deceleration.si());
        let way = v * reaction.si() + v * v / (2.0 * a);
        // a stop that cannot be made has no end; what is not known stays so
        Length::of_si(if a <= 0.0 { f64::INFINITY + 0.0 * (v + reaction.si()) } else { way })
    },
};

/// Energy of all moving and turning parts at full speed. 300 and 3158 kg at 0.3 m/s: 155.6 J.
pub static END_STOP_ENERGY: Formula<fn(Mass, Mass, Velocity) -> Energy> = Formula {
    note: Note {
        id: "end-stop-energy",
        title: "energy of all moving and turning parts at full speed",
        equation: "E_k = ½·(m_d + m_red)·v²",
        inputs: &[("m_d", "driven-mass"), ("m_red", "reduced-mass"), ("v", "speed")],
        validity: "one drive with its share of the mass",
        sources: &[Source::derived("kinetic energy")],
    },
    apply: |driven, reduced, speed| Energy::of_si(0.5 * (driven.si() + reduced.si()) * speed.si() * speed.si()),
};

/// Energy of the whole axis at full speed, all its drives together, J.
///
/// Pass the moving mass, accelerated and driven mass of one drive (their ratio brings in a counterweight), the turning parts of
/// one drive as mass, how many drives or pinions there are, and the speed. Check: 900, 450 and 450 kg, 145 kg, 2, 0.25 m/s →
/// ½·1190·0.0625 = 37.19 J.
pub static WHOLE_END_STOP_ENERGY: Formula<fn(Mass, Mass, Mass, Mass, Ratio, Velocity) -> Energy> = Formula {
    note: Note {
        id: "whole-end-stop-energy",
        title: "energy of the whole axis at full speed",
        equation: "E_t = ½·(m·m_a/m_d + n·m_red)·v²",
        inputs: &[
            ("m", "moving-mass"),
            ("m_a", "accelerated-mass"),
            ("m_d", "driven-mass"),
            ("m_red", "reduced-mass"),
            ("n", "units"),
            ("v", "speed"),
        ],
        validity: "all drives of the axis together; what the drives still push comes on top",
        sources: &[Source::derived("kinetic energy")],
    },
    apply: |moving, accelerated, driven, reduced, units, speed| {
        let mass = moving.si() * accelerated.si() / driven.si() + units.si() * reduced.si();
        Energy::of_si(0.5 * mass * speed.si() * speed.si())
    },
};

/// Force of the end buffer. 3 × 5 kN: 15 kN.
pub static BUFFER_FORCE: Formula<fn(Ratio, Force) -> Force> = Formula {
    note: Note {
        id: "buffer-force",
        title: "force of the end buffer",
        equation: "F_bu = x_bu·F_d",
        inputs: &[("x_bu", "buffer-share"), ("F_d", "drive-push")],
        validity: "a buffer that is chosen by the push of the drive",
        sources: &[Source::practice("buffers of about three times the push of the drive that is set")],
    },
    apply: |share, push| Force::of_si(share.si() * push.si()),
};

/// Stroke of the end buffer while the drive still pushes, downward where there is a down.
/// 155.6 J, 15 kN at 0.8, 5 kN push, 2.942 kN weight: 155.6/4058 = 38.35 mm.
pub static END_STOP_STROKE: Formula<fn(Energy, Force, Ratio, Force, Force) -> Length> = Formula {
    note: Note {
        id: "end-stop-stroke",
        title: "stroke that the end buffer needs from full speed",
        equation: "s_bu = E_k/(η_bu·F_bu − F_d − F_g)",
        inputs: &[
            ("E_k", "end-stop-energy"),
            ("F_bu", "buffer-force"),
            ("η_bu", "buffer-efficiency"),
            ("F_d", "drive-push"),
            ("F_g", "gravity-force"),
        ],
        validity: "the buffer's mean force exceeds push and weight; no stop otherwise, and no value",
        sources: BALANCE,
    },
    apply: |energy, buffer, efficiency, push, gravity| {
        let net = efficiency.si() * buffer.si() - push.si() - gravity.si();
        Length::of_si(if net > 0.0 { energy.si() / net } else { f64::NAN })
    },
};

/// Force in the drive when the slide runs into a rigid stop. 0.5 m/s, 100 N/µm, 493.5 kg, no push: 111.1 kN; with 5 kN of push: 116.2 kN.
pub static CRASH_FORCE: Formula<fn(Velocity, Stiffness, Mass, Force) -> Force> = Formula {
    note: Note {
        id: "crash-force",
        title: "force in the drive when the slide runs into a rigid stop at full speed",
        equation: "F_x = F_d + √(F_d² + k·m_red·v²)",
        inputs: &[("v", "speed"), ("k", "total-stiffness"), ("m_red", "reduced-mass"), ("F_d", "drive-push")],
        validity: "The slide stands at once and gives its energy to the stop; all turning parts at the motor end of the drive's stiffness; no play, no damping, elastic: an upper value.",
        sources: &[Source::derived(
            "energy of the turning parts and work of the drive into the spring of the drive; stepped in the tests",
        )],
    },
    apply: |speed, stiffness, reduced, push| {
        let (v, d) = (speed.si(), push.si());
        Force::of_si(d + (d * d + stiffness.si() * reduced.si() * v * v).sqrt())
    },
};

/// Deceleration of a level axis that friction alone stops. 200 N, 300 and 493.5 kg: 0.252 m/s².
pub static COASTING_DECELERATION: Formula<fn(Force, Mass, Mass) -> Acceleration> = Formula {
    note: Note {
        id: "coasting-deceleration",
        title: "deceleration of a level axis without torque, by the friction of guides and covers alone",
        equation: "a_c = F_f/(m_d + m_red)",
        inputs: &[("F_f", "friction-force"), ("m_d", "driven-mass"), ("m_red", "reduced-mass")],
        validity: "level axes; drag of nut, bearings and gearbox not credited; without friction the axis does not stop",
        sources: MOTION,
    },
    apply: |friction, driven, reduced| Acceleration::of_si(friction.si() / (driven.si() + reduced.si())),
};
