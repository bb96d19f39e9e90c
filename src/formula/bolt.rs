//! Assembly preload and tightening torque of a screw after VDI 2230.
//!
//! Method: combined tension and torsion in the stress section up to 90 % of the yield point. Limits: shank
//! as thick as the thread, equal friction in thread (head friction enters the torque only).

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Force, Length, Measure, Pressure, Ratio, Torque};
use std::f64::consts::PI;

const VDI_2230: Source = Source::publication(
    "VDI 2230 part 1:2003, assembly preload at 90 % of yield, as reproduced in a fastener distributor's handbook, p. 685",
);

/// Assembly preload of a screw at 90 % of its yield point. M8 × 1.25, 1100 MPa, µ 0.12: 32.0 kN.
pub static BOLT_PRELOAD: Formula<fn(Length, Length, Pressure, Ratio) -> Force> = Formula {
    note: Note {
        id: "bolt-preload",
        title: "assembly preload of a screw",
        equation: "F_M = 0.9·R_p0.2·A_S/√(1 + 3·(1.5·(d_2/d_S)·tan(φ + ρ′))²), tan φ = P/(π·d_2), tan ρ′ = µ/cos 30°, A_S = π·d_S²/4, d_S = (d_2 + d_3)/2, d_2 = d − 0.64952·P, d_3 = d − 1.22687·P",
        inputs: &[("d", "nominal-diameter"), ("P", "thread-pitch"), ("R_p0.2", "yield-strength"), ("µ", "friction")],
        validity: "Metric ISO thread, shank not thinner than the thread; yield 640 MPa (8.8 up to M16), 660 MPa (8.8 above), 940 MPa (10.9), 1100 MPa (12.9).",
        sources: &[VDI_2230],
    },
    apply: bolt_preload,
};
/// Preload from nominal diameter, thread pitch, yield strength and thread friction.
pub fn bolt_preload(nominal: Length, pitch: Length, strength: Pressure, friction: Ratio) -> Force {
    let (d, p) = (nominal.si(), pitch.si());
    let d2 = pitch_diameter(d, p);
    let d3 = d - 1.22687 * p;
    let ds = (d2 + d3) / 2.0;
    // tan(φ + ρ′); the sum of the two tangents, often written instead, gives 0.2 % too much
    let rise = p / (PI * d2);
    let friction = friction.si() / (PI / 6.0).cos();
    let torsion = 1.5 * d2 / ds * (rise + friction) / (1.0 - rise * friction);
    Force::of_si(0.9 * strength.si() * PI / 4.0 * ds * ds / (1.0 + 3.0 * torsion * torsion).sqrt())
}

#[inline]
fn pitch_diameter(nominal: f64, pitch: f64) -> f64 {
    nominal - 0.64952 * pitch
}

/// Torque that tightens a screw to a preload. M8 × 1.25, 32.0 kN, µ 0.12: 42.4 N·m.
pub static TIGHTENING_TORQUE: Formula<fn(Length, Length, Force, Ratio) -> Torque> = Formula {
    note: Note {
        id: "tightening-torque",
        title: "tightening torque of a screw",
        equation: "T = F_M·(0.16·P + 0.58·d_2·µ + 0.65·d·µ)",
        inputs: &[("d", "nominal-diameter"), ("P", "thread-pitch"), ("F_M", "preload"), ("µ", "friction")],
        validity: "Same friction in thread and under the head; mean head diameter 1.3·d.",
        sources: &[VDI_2230],
    },
    apply: tightening_torque,
};
/// Tightening torque from nominal diameter, thread pitch, preload and friction.
pub fn tightening_torque(nominal: Length, pitch: Length, preload: Force, friction: Ratio) -> Torque {
    let (d, p, mu) = (nominal.si(), pitch.si(), friction.si());
    Torque::of_si(preload.si() * (0.16 * p + 0.58 * pitch_diameter(d, p) * mu + 0.65 * d * mu))
}
