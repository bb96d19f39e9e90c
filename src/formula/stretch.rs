//! A screw whose ends are both held along its axis: stretch, what warming leaves of it, forces on the ends.
//!
//! Method: screw and both ends are springs in series between rigid housings; a temperature that differs from that of the
//! bed by ΔT asks for α·ΔT·L, which the springs share. Limits: the bed keeps its temperature and does not give; the mean
//! temperature over the free length counts for the force, that of the travelled zone for the position. Screw and bed of
//! another material swing in temperature together.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Expansion, Force, Length, Measure, Ratio, Stiffness, TemperatureInterval};
use std::f64::consts::FRAC_PI_4;

const SPRINGS: Source = Source::derived("screw and both ends as springs in series between rigid housings");

/// Axial force in a screw held at both ends that is colder than its mounting length by so much, N; tension positive.
///
/// Pass core diameter, bore, free length, stiffness of one end, expansion, the temperature that is missing, and how many
/// ends take thrust; with one end there is no force. Check: 26.5 mm, 3 K, rigid ends → 3920 N.
pub static HELD_FORCE: Formula<fn(Length, Length, Length, Stiffness, Expansion, TemperatureInterval, Ratio) -> Force> =
    Formula {
        note: Note {
            id: "held-force",
            title: "axial force of a screw held at both ends, from the temperature that it lacks",
            equation: "F = α·ΔT·L/(L/(E·A) + 2/k_b), A = π/4·(d_c² − d_h²); 0 with one thrust end",
            inputs: &[
                ("d_c", "core-diameter"),
                ("d_h", "bore"),
                ("L", "free-length"),
                ("k_b", "end-stiffness"),
                ("α", "expansion"),
                ("ΔT", "temperature"),
                ("n_t", "thrust-ends"),
            ],
            validity: "steel, E 206 GPa; rigid housings, bed at constant temperature; negative is compression",
            sources: &[SPRINGS],
        },
        apply: held_force,
    };

/// See [`HELD_FORCE`].
#[inline]
pub fn held_force(
    core_diameter: Length,
    bore: Length,
    free_length: Length,
    end_stiffness: Stiffness,
    expansion: Expansion,
    temperature: TemperatureInterval,
    thrust_ends: Ratio,
) -> Force {
    if thrust_ends.si() < 1.5 {
        return Force::of_si(0.0);
    }
    let strength = STEEL_YOUNG * FRAC_PI_4 * (core_diameter.si().powi(2) - bore.si().powi(2));
    let length = free_length.si();
    let give = length / strength + 2.0 / end_stiffness.si();
    Force::of_si(expansion.si() * temperature.si() * length / give + 0.0 * thrust_ends.si())
}

/// How a bed that expands otherwise stretches or presses a held screw, as the warming of the screw alone that would do the
/// same, K; it counts both ways, since the temperature swings both ways.
///
/// Pass the expansions of screw and bed and the swing. Check: 11.5 and 6.5 µm/(m·K), 10 K → 4.348 K.
pub static BED_SHIFT: Formula<fn(Expansion, Expansion, TemperatureInterval) -> TemperatureInterval> = Formula {
    note: Note {
        id: "bed-shift",
        title: "warming of a held screw alone that would strain it as its bed does",
        equation: "ΔT_b = |α_s − α_b|/α_s·ΔT",
        inputs: &[("α_s", "screw-expansion"), ("α_b", "bed-expansion"), ("ΔT", "temperature-swing")],
        validity: "screw and bed at one temperature, the swing either way; the bed does not give",
        sources: &[Source::derived("two bars of one length and one temperature that expand differently")],
    },
    apply: |screw, bed, swing| {
        TemperatureInterval::of_si((screw.si() - bed.si()).abs() / screw.si() * swing.si().abs())
    },
};

/// Most stretch that a cold screw gets, K. Pass the stretch when mounted and what the bed adds. 3 K, 4.35 K → 7.35 K.
pub static COLD_STRETCH: Formula<fn(TemperatureInterval, TemperatureInterval) -> TemperatureInterval> = Formula {
    note: Note {
        id: "cold-stretch",
        title: "most stretch of the cold screw, the bed at the worst end of its swing",
        equation: "ΔT_c = ΔT_v + ΔT_b",
        inputs: &[("ΔT_v", "stretch"), ("ΔT_b", "bed-shift")],
        validity: "both ends held along the axis; the axis at rest, not warmed by its work",
        sources: &[Source::derived("sum of two temperatures")],
    },
    apply: |stretch, bed| TemperatureInterval::of_si(stretch.si() + bed.si()),
};

/// Least stretch that a warm screw has left, K; below zero it is pressed together.
///
/// Pass the stretch when mounted, the mean warming over the free length and what the bed takes.
/// Check: 3 K, 4.2 K, 0 K → −1.2 K.
pub static STRETCH_LEFT: Formula<
    fn(TemperatureInterval, TemperatureInterval, TemperatureInterval) -> TemperatureInterval,
> = Formula {
    note: Note {
        id: "stretch-left",
        title: "stretch that the warm screw has left, the bed at the worst end of its swing",
        equation: "ΔT_l = ΔT_v − ΔT_L − ΔT_b",
        inputs: &[("ΔT_v", "stretch"), ("ΔT_L", "length-warming"), ("ΔT_b", "bed-shift")],
        validity: "both ends held along the axis; below zero the screw is pressed together",
        sources: &[Source::derived("difference of temperatures")],
    },
    apply: stretch_left,
};

/// See [`STRETCH_LEFT`].
#[inline]
pub fn stretch_left(
    stretch: TemperatureInterval,
    warming: TemperatureInterval,
    bed: TemperatureInterval,
) -> TemperatureInterval {
    TemperatureInterval::of_si(stretch.si() - warming.si() - bed.si())
}

/// Compression of a warm screw between two held ends, N; none while stretch is left.
///
/// Pass the axial force of the warm screw, tension positive. Check: −3 kN → 3 kN.
pub static THERMAL_COMPRESSION: Formula<fn(Force) -> Force> = Formula {
    note: Note {
        id: "thermal-compression",
        title: "compression of the warm screw between its ends",
        equation: "F_th = max(0, −F_w)",
        inputs: &[("F_w", "warm-axial-force")],
        validity: "any",
        sources: &[Source::derived("the pressing part of a force")],
    },
    apply: thermal_compression,
};

/// See [`THERMAL_COMPRESSION`].
#[inline]
pub fn thermal_compression(warm_axial_force: Force) -> Force {
    let force = -warm_axial_force.si();
    Force::of_si(if force < 0.0 { 0.0 } else { force })
}

/// Force that both ends hold without any load, N.
///
/// Pass the stretch force and the thermal compression. Check: 4 kN, 1 kN → 4 kN.
pub static STANDING_FORCE: Formula<fn(Force, Force) -> Force> = Formula {
    note: Note {
        id: "standing-force",
        title: "force that each held end bears without any load",
        equation: "F_0 = max(F_v, F_th)",
        inputs: &[("F_v", "stretch-force"), ("F_th", "thermal-compression")],
        validity: "cold and stretched, or warm and pressed together, whichever is more; never both at once",
        sources: &[Source::derived("worse of two states")],
    },
    apply: standing_force,
};

/// See [`STANDING_FORCE`].
#[inline]
pub fn standing_force(stretch_force: Force, thermal_compression: Force) -> Force {
    let (cold, warm) = (stretch_force.si(), thermal_compression.si());
    Force::of_si(if cold > warm || cold.is_nan() { cold } else { warm })
}

/// Rise of temperature of the travelled zone that still shows as growth, K.
///
/// Pass the warming of the zone, the mean warming over the free length and the stretch.
/// Check: 6 K, 4 K, 3 K → 3 K; 6 K, 2 K, 3 K → 4 K.
pub static RISE_LEFT: Formula<
    fn(TemperatureInterval, TemperatureInterval, TemperatureInterval) -> TemperatureInterval,
> = Formula {
    note: Note {
        id: "rise-left",
        title: "rise of the travelled zone that shows as growth",
        equation: "ΔT_r = ΔT_s − min(ΔT_L, ΔT_v)",
        inputs: &[("ΔT_s", "screw-warming"), ("ΔT_L", "length-warming"), ("ΔT_v", "stretch")],
        validity: "a stretched screw gives its tension up over the whole free length, so a zone that is warmer than \
                       the mean grows at the cost of the rest; no stretch, no relief",
        sources: &[Source::derived("elastic relief of a bar between rigid ends with a warmer zone")],
    },
    apply: rise_left,
};

/// See [`RISE_LEFT`].
#[inline]
pub fn rise_left(
    zone: TemperatureInterval,
    whole: TemperatureInterval,
    stretch: TemperatureInterval,
) -> TemperatureInterval {
    let relief = if whole.si() < stretch.si() || whole.si().is_nan() { whole.si() } else { stretch.si() };
    TemperatureInterval::of_si(zone.si() - relief)
}

/// By how much the thread has to be ordered short, m; negative.
///
/// Pass expansion, stretch and travel. Check: 11.5 µm/(m·K), 3 K, 1 m → −34.5 µm.
pub static LEAD_COMPENSATION: Formula<fn(Expansion, TemperatureInterval, Length) -> Length> = Formula {
    note: Note {
        id: "lead-compensation",
        title: "travel compensation to order with the screw",
        equation: "c = −α·ΔT_v·l_u",
        inputs: &[("α", "expansion"), ("ΔT_v", "stretch"), ("l_u", "travel")],
        validity: "the stretched screw then has its nominal lead; the useful travel is taken as the travel",
        sources: &[Source::memory("ISO 3408-3:2006, travel compensation c")],
    },
    apply: lead_compensation,
};

/// See [`LEAD_COMPENSATION`].
#[inline]
pub fn lead_compensation(expansion: Expansion, stretch: TemperatureInterval, travel: Length) -> Length {
    Length::of_si(-expansion.si() * stretch.si() * travel.si())
}

/// Tension of the loaded screw at its most, N: what its ends bear and the share of the force.
///
/// Pass the standing force, the largest force and the share of the nearer end. Check: 4 kN, 10 kN, 0.7 → 11 kN.
pub static END_FORCE: Formula<fn(Force, Force, Ratio) -> Force> = Formula {
    note: Note {
        id: "end-force",
        title: "largest axial force on one end",
        equation: "F_e = F_0 + x_e·F",
        inputs: &[("F_0", "standing-force"), ("F", "force"), ("x_e", "end-share")],
        validity: "the nut at the end of its travel, the force away from the end; ends that hold both ways",
        sources: &[SPRINGS],
    },
    apply: end_force,
};

/// See [`END_FORCE`].
#[inline]
pub fn end_force(standing_force: Force, force: Force, end_share: Ratio) -> Force {
    Force::of_si(standing_force.si() + end_share.si() * force.si().abs())
}

/// Share of the nut's force that the nearer of two held ends takes with the nut at the end of its travel, 1.
///
/// Pass core diameter, bore, free length, travel, stiffness of one end and thrust ends; one end takes all of it.
/// Check: 36.5 mm, 1.5 m, 1.2 m, 700 N/µm → 0.788.
pub static END_SHARE: Formula<fn(Length, Length, Length, Length, Stiffness, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "end-share",
        title: "share of the force on the nearer end, nut at the end of its travel",
        equation: "x_e = (1/k_b + (L + s)/(2·E·A))/(2/k_b + L/(E·A)); 1 with one thrust end",
        inputs: &[
            ("d_c", "core-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("s", "travel"),
            ("k_b", "end-stiffness"),
            ("n_t", "thrust-ends"),
        ],
        validity: "equal ends, rigid housings, travel in the middle of the free length",
        sources: &[SPRINGS],
    },
    apply: end_share,
};

/// See [`END_SHARE`].
#[inline]
pub fn end_share(
    core_diameter: Length,
    bore: Length,
    free_length: Length,
    travel: Length,
    end_stiffness: Stiffness,
    thrust_ends: Ratio,
) -> Ratio {
    if thrust_ends.si() < 1.5 {
        return Ratio::of_si(1.0);
    }
    let strength = STEEL_YOUNG * FRAC_PI_4 * (core_diameter.si().powi(2) - bore.si().powi(2));
    let (end, length) = (1.0 / end_stiffness.si(), free_length.si());
    let far = end + (length + travel.si()) / (2.0 * strength);
    Ratio::of_si(far / (2.0 * end + length / strength) + 0.0 * thrust_ends.si())
}

/// Cubic mean over the travel of the share that one end takes, 1.
///
/// Pass the largest share and the thrust ends. Check: 1, two ends → 0.630; 0.788 → 0.556; one end → 1.
pub static MEAN_END_SHARE: Formula<fn(Ratio, Ratio) -> Ratio> = Formula {
    note: Note {
        id: "mean-end-share",
        title: "cubic mean of the share of one end over the travel",
        equation: "x_m = ∛((x_e² + (1 − x_e)²)/4), the cubic mean of a straight line from x_e to 1 − x_e; 1 with \
                   one thrust end",
        inputs: &[("x_e", "end-share"), ("n_t", "thrust-ends")],
        validity: "moves spread evenly over the travel, between which the share falls in a straight line",
        sources: &[Source::derived("cubic mean of a share that is linear in the place of the nut")],
    },
    apply: mean_end_share,
};

/// See [`MEAN_END_SHARE`].
#[inline]
pub fn mean_end_share(end_share: Ratio, thrust_ends: Ratio) -> Ratio {
    if thrust_ends.si() < 1.5 {
        return Ratio::of_si(1.0);
    }
    // (a⁴ − b⁴)/(a − b) = (a + b)·(a² + b²), and a + b = 1
    let (a, b) = (end_share.si(), 1.0 - end_share.si());
    Ratio::of_si(((a * a + b * b) / 4.0).cbrt() + 0.0 * thrust_ends.si())
}
