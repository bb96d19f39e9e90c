//! A rack on a bed of another material: what temperature does to the screws that hold it.
//!
//! Method: the segment as a bar on a row of springs, its fasteners, that would grow otherwise than the bed. Limits: same
//! temperature of rack and bed, a bed that is far stiffer than the rack, no slip.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::*;

const BAR: Source = Source::derived("bar on elastic supports that would grow otherwise than its bed");

/// Growth of the rack against its bed, were it free. Steel on aluminium, 3 m, 10 K: 369 µm.
pub static BED_GROWTH: Formula<fn(Expansion, Expansion, TemperatureInterval, Length) -> Length> = Formula {
    note: Note {
        id: "bed-growth",
        title: "growth of the bed against the rack over the travel, were both free",
        equation: "ΔL_b = |α_b − α_r|·ΔT·s",
        inputs: &[("α_b", "bed-expansion"), ("α_r", "rack-expansion"), ("ΔT", "temperature-swing"), ("s", "travel")],
        validity: "Rack and bed at one temperature. Segments that are screwed on follow the bed for the most part, and slip at their ends if the screws do not hold.",
        sources: &[Source::derived("definition of the coefficient of expansion")],
    },
    apply: |bed, rack, swing, travel| Length::of_si((bed.si() - rack.si()).abs() * swing.si() * travel.si()),
};

/// Force on the last fastener of a segment whose bed grows otherwise.
///
/// 456 mm², 250 N/µm at 62.5 mm, 1 m, steel on aluminium by 10 K: decay length 153 mm, 4.71 kN; on steel none.
pub static END_FASTENER_FORCE: Formula<
    fn(Expansion, Expansion, TemperatureInterval, Area, Stiffness, Length, Length) -> Force,
> = Formula {
    note: Note {
        id: "end-fastener-force",
        title: "force of temperature on the last fastener of a rack segment",
        equation: "F_te = k_f·|α_b − α_r|·ΔT·λ·tanh(l_s/(2·λ)), λ = √(E·A_r·p_f/k_f)",
        inputs: &[
            ("α_b", "bed-expansion"),
            ("α_r", "rack-expansion"),
            ("ΔT", "temperature-swing"),
            ("A_r", "section-area"),
            ("k_f", "fastener-stiffness"),
            ("p_f", "fastener-pitch"),
            ("l_s", "segment-length"),
        ],
        validity: "Fasteners close together against λ; the last one stands half a pitch from the end and bears a little less (safe).",
        sources: &[BAR],
    },
    apply: |bed, rack, swing, area, stiffness, pitch, length| {
        let decay = (STEEL_YOUNG * area.si() * pitch.si() / stiffness.si()).sqrt();
        let way = (bed.si() - rack.si()).abs() * swing.si() * decay * (0.5 * length.si() / decay).tanh();
        Force::of_si(stiffness.si() * way)
    },
};

/// What is left of the slip force once temperature has taken its part. 7.9 kN, 1 kN on each of three: 4.9 kN.
pub static SLIP_RESERVE: Formula<fn(Force, Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "slip-reserve",
        title: "force at which the rack slips on its seat, temperature taken off",
        equation: "F_S,r = max(F_S − n_e·F_te, 0)",
        inputs: &[("F_S", "slip-force"), ("F_te", "end-fastener-force"), ("n_e", "sharing-fasteners")],
        validity: "All fasteners that share take as much of temperature as the last one (safe).",
        sources: &[Source::derived("friction that one force has taken is lost for another")],
    },
    apply: |slip, end, sharing| {
        let left = slip.si() - sharing.si() * end.si();
        Force::of_si(if left < 0.0 { 0.0 } else { left })
    },
};

/// Force of two pinions on the end of a rack segment, the first at the end and the second behind it.
///
/// 3574 N with a bias of 542 N, 140 mm apart on 468 mm², 250 N/µm at 62.5 mm: decay length 155.2 mm, 4585 N.
pub static SEGMENT_END_FORCE: Formula<fn(Force, Force, Length, Area, Stiffness, Length) -> Force> = Formula {
    note: Note {
        id: "segment-end-force",
        title: "force of two pinions on the fasteners at the end of a rack segment",
        equation: "F_re = F_max + max(F_max − 2·F_bi, 0)·e^(−a_P/λ), λ = √(E·A_r·p_f/k_f)",
        inputs: &[
            ("F_max", "peak-force"),
            ("F_bi", "bias-force"),
            ("a_P", "pinion-spacing"),
            ("A_r", "section-area"),
            ("k_f", "fastener-stiffness"),
            ("p_f", "fastener-pitch"),
        ],
        validity: "Both pinions on one segment, the more loaded one at its end, both at their largest force; a force at a_P from the end of a long bar moves the end by e^(−a_P/λ) of what it would move it at the end. A second pinion that pulls the other way is left out (safe).",
        sources: &[Source::derived("long bar on elastic supports with a free end")],
    },
    apply: |peak, bias, spacing, area, stiffness, pitch| {
        let decay = (STEEL_YOUNG * area.si() * pitch.si() / stiffness.si()).sqrt();
        let second = peak.si() - 2.0 * bias.si();
        let pushing = if second < 0.0 { 0.0 } else { second };
        Force::of_si(peak.si() + pushing * (-spacing.si() / decay).exp())
    },
};
