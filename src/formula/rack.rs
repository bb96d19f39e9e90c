//! The rack line: how long, how many segments and fasteners, how true, how firm on its seat.
//!
//! Method: segments of equal length screwed to the bed; pitch errors of segments and joints as
//! independent, evenly spread bands; the rack as a bar on a row of springs, its fasteners.
//! Limits: a bed that does not give; no thermal force between rack and bed.

use super::constants::STEEL_YOUNG;
use super::extremes::larger;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Area, Force, Length, LinearMassDensity, Mass, Measure, Ratio, Stiffness};

/// Length of the rack line. Travel 8 m, overtravel 60 mm, pinion 64 mm: 8.184 m.
pub static RACK_LENGTH: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "rack-length",
        title: "length of the rack line",
        equation: "L_r = s + 2·s_o + d",
        inputs: &[("s", "travel"), ("s_o", "overtravel"), ("d", "pinion-diameter")],
        validity: "One pinion diameter covers the length of contact and rounding at both ends.",
        sources: &[Source::practice("one pinion diameter of allowance")],
    },
    apply: rack_length,
};
/// Rack length from travel, overtravel at each end and pinion diameter.
#[inline]
pub fn rack_length(travel: Length, overtravel: Length, pinion_diameter: Length) -> Length {
    Length::of_si(travel.si() + 2.0 * overtravel.si() + pinion_diameter.si())
}

/// Rack segments in the line. 8.184 m of 1 m segments: 9.
pub static SEGMENTS: Formula<fn(Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "rack-segments",
        title: "rack segments in the line",
        equation: "n_s = ⌈L_r/l_s⌉",
        inputs: &[("L_r", "rack-length"), ("l_s", "segment-length")],
        validity: "Whole segments; the last one may be cut.",
        sources: &[Source::derived("count")],
    },
    apply: segments,
};
/// Number of segments from rack length and segment length.
#[inline]
pub fn segments(rack_length: Length, segment_length: Length) -> Ratio {
    Ratio::of_si(whole_segments(rack_length.si(), segment_length.si()))
}

/// Segments that a length takes; a length that fits but for rounding takes no further one.
#[inline]
fn whole_segments(length: f64, segment: f64) -> f64 {
    (length / segment - 1e-9).ceil()
}

/// Fasteners of the rack line. 12 segments of 1 m at 62.5 mm: 192.
pub static FASTENERS: Formula<fn(Ratio, Length, Length) -> Ratio> = Formula {
    note: Note {
        id: "rack-fasteners",
        title: "fasteners of the rack line",
        equation: "n_f = n_s·round(l_s/p_f)",
        inputs: &[("n_s", "segments"), ("l_s", "segment-length"), ("p_f", "fastener-pitch")],
        validity: "One row; the first fastener sits half a pitch from the joint.",
        sources: &[Source::practice("fastener pitch of 60 to 125 mm")],
    },
    apply: fasteners,
};
/// Number of fasteners from segments, segment length and fastener pitch.
#[inline]
pub fn fasteners(segments: Ratio, segment_length: Length, fastener_pitch: Length) -> Ratio {
    Ratio::of_si(segments.si() * (segment_length.si() / fastener_pitch.si()).round())
}

/// Pitch error of the rack line over a travel, 95 % of lines. 6 m of 1 m segments, 36 µm, joints 20 µm: 69.6 µm.
pub static CUMULATIVE_PITCH_ERROR: Formula<fn(Length, Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "cumulative-pitch-error",
        title: "pitch error of the rack line over the travel",
        equation: "F_pk = max(e_s, 2.44·√((n·e_s² + (n − 1)·e_j²)/12)), n = ⌈s/l_s⌉; within one segment e_s·√(s/l_s)",
        inputs: &[("s", "travel"), ("l_s", "segment-length"), ("e_s", "segment-pitch-error"), ("e_j", "joint-step")],
        validity: "e_s and e_j are full bands, evenly spread and independent: σ = e/√12. 2.44·√(Σσ²) holds 95 % of the ranges of a random walk; with few steps it is on the safe side. Makers who pair segments do better, a slope common to all segments is worse.",
        sources: &[
            Source::derived("range of a random walk; 2.44 is the 95 % point for many steps"),
            Source::practice("the error within a segment grows with the root of the length"),
        ],
    },
    apply: cumulative_pitch_error,
};
/// Pitch error over a travel from segment length, band of one segment and band of one joint.
#[inline]
pub fn cumulative_pitch_error(
    travel: Length,
    segment_length: Length,
    segment_error: Length,
    joint_step: Length,
) -> Length {
    let e = segment_error.si();
    let share = travel.si() / segment_length.si();
    if share <= 1.0 {
        return Length::of_si(e * share.sqrt());
    }
    let n = whole_segments(travel.si(), segment_length.si());
    let variance = (n * e * e + (n - 1.0) * joint_step.si() * joint_step.si()) / 12.0;
    Length::of_si(larger(e, 2.44 * variance.sqrt()))
}

/// Stiffness of the rack on its fasteners at a segment end, its softest place.
///
/// 24 × 19 mm left of the bar, 250 N/µm a fastener, 62.5 mm pitch: 613 N/µm; inside a segment twice that.
pub static MOUNT_STIFFNESS: Formula<fn(Stiffness, Length, Area) -> Stiffness> = Formula {
    note: Note {
        id: "mount-stiffness",
        title: "stiffness of the rack on its fasteners at a segment end",
        equation: "k_r = √(E·A·k_f/p_f)",
        inputs: &[("k_f", "fastener-stiffness"), ("p_f", "fastener-pitch"), ("A", "section-area")],
        validity: "Bar on a bed of springs, load at the free end of a segment; inside a segment the line is twice as stiff. Segment several times longer than √(E·A·p_f/k_f), bed rigid, no slip.",
        sources: &[Source::derived("half-infinite bar on elastic supports, E = 206 GPa")],
    },
    apply: mount_stiffness,
};
/// Mount stiffness at a segment end from one fastener's stiffness, fastener pitch and rack section.
#[inline]
pub fn mount_stiffness(fastener_stiffness: Stiffness, fastener_pitch: Length, section_area: Area) -> Stiffness {
    Stiffness::of_si((STEEL_YOUNG * section_area.si() * fastener_stiffness.si() / fastener_pitch.si()).sqrt())
}

/// Force at which the rack begins to slip on its seat. M8 12.9 at 32.0 kN, µ 0.15, α_A 1.6, 7.5 %, 3 sharing: 7.9 kN, no safety inside.
pub static SLIP_FORCE: Formula<fn(Force, Ratio, Ratio, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "slip-force",
        title: "force at which the rack slips on its seat",
        equation: "F_S = n·µ_T·F_M·(1/α_A − f_Z)",
        inputs: &[
            ("F_M", "fastener-preload"),
            ("µ_T", "friction"),
            ("α_A", "tightening-factor"),
            ("f_Z", "embedding"),
            ("n", "bolts-sharing"),
        ],
        validity: "f_Z is the share of the preload lost by embedding. n is how many fasteners share a force before any slips: 3 at a segment end, 5 inside. Pins not counted; no safety inside. Zero where embedding eats the least preload.",
        sources: &[
            Source::memory("VDI 2230 part 1, tightening factor, embedding and slip"),
            Source::derived("sharing along a bar on springs"),
        ],
    },
    apply: slip_force,
};
/// Slip force from preload, friction, tightening factor, embedding share, fasteners sharing and safety.
#[inline]
pub fn slip_force(
    fastener_preload: Force,
    friction: Ratio,
    tightening_factor: Ratio,
    embedding: Ratio,
    bolts_sharing: Ratio,
) -> Force {
    let least = larger(0.0, fastener_preload.si() * (1.0 / tightening_factor.si() - embedding.si()));
    Force::of_si(bolts_sharing.si() * friction.si() * least)
}

/// Mass of the rack line. 4.1 kg/m, 8 m: 32.8 kg.
pub static RACK_MASS: Formula<fn(LinearMassDensity, Length) -> Mass> = Formula {
    note: Note {
        id: "rack-mass",
        title: "mass of the rack line",
        equation: "m_r = m'_r·L_r",
        inputs: &[("m'_r", "rack-mass-per-length"), ("L_r", "rack-length")],
        validity: "Fasteners and pins not counted.",
        sources: &[Source::derived("mass a length times length")],
    },
    apply: rack_mass,
};
/// Mass of a rack from its mass a length and its length.
#[inline]
pub fn rack_mass(mass_per_length: LinearMassDensity, length: Length) -> Mass {
    Mass::of_si(mass_per_length.si() * length.si())
}

/// Cumulative pitch error of one segment: e_s = e_m·√(l_s/1 m). 36 µm in one metre, 0.5 m: 25.5 µm.
pub static SEGMENT_PITCH_ERROR: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "segment-pitch-error",
        title: "cumulative pitch error of one rack segment",
        equation: "e_s = e_m·√(l_s/1 m)",
        inputs: &[("e_m", "pitch-error-per-metre"), ("l_s", "segment-length")],
        validity: "Independent pitch errors within a segment; qualities are quoted for one metre.",
        sources: &[Source::derived("independent steps add by squares")],
    },
    apply: segment_pitch_error,
};
/// Pitch error of a segment from that of one metre.
#[inline]
pub fn segment_pitch_error(per_metre: Length, segment_length: Length) -> Length {
    Length::of_si(per_metre.si() * segment_length.si().sqrt())
}

/// Mass of a steel pinion taken as a disc of its reference diameter. 63.662 mm, 29 mm: 0.725 kg.
pub static PINION_MASS: Formula<fn(Length, Length) -> Mass> = Formula {
    note: Note {
        id: "pinion-mass",
        title: "mass of the pinion",
        equation: "m_p = ρ·π/4·d²·b",
        inputs: &[("d", "pinion-diameter"), ("b", "face-width")],
        validity: "A solid steel disc; the bore is neglected, the hub as well.",
        sources: &[Source::derived("volume times density")],
    },
    apply: pinion_mass,
};
/// Mass of a pinion from its reference diameter and face width.
#[inline]
pub fn pinion_mass(diameter: Length, face_width: Length) -> Mass {
    let area = std::f64::consts::FRAC_PI_4 * diameter.si() * diameter.si();
    Mass::of_si(super::constants::STEEL_DENSITY * area * face_width.si())
}
