//! Stiffness of the drive train along the axis, give under force, first resonance.
//!
//! Method: springs in series and parallel; torsional springs are seen along the axis through the travel for
//! one turn. Limits: linear springs; the worst place of the nut is taken where said.

use super::constants::{STEEL_SHEAR, STEEL_YOUNG};
use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Force, Frequency, Length, Mass, Measure, Ratio, Stiffness, TorsionalStiffness};
use std::f64::consts::{FRAC_1_SQRT_2, FRAC_PI_4, PI, TAU};

const SPRINGS: Source = Source::derived("springs in series and parallel");

/// Diameter of a screw that carries axial load, m.
///
/// Pass ball circle diameter and ball diameter. Check: 41 mm, 6.35 mm → 36.510 mm.
pub static CORE_DIAMETER: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "core-diameter",
        title: "diameter of the screw that carries axial load",
        equation: "d_c = D_pw − D_w·cos 45°",
        inputs: &[("D_pw", "ball-circle-diameter"), ("D_w", "ball-diameter")],
        validity: "contact angle 45°",
        sources: &[Source::memory("ISO 3408-4:2006, static axial rigidity")],
    },
    apply: core_diameter,
};

/// See [`CORE_DIAMETER`].
#[inline]
pub fn core_diameter(ball_circle_diameter: Length, ball_diameter: Length) -> Length {
    Length::of_si(ball_circle_diameter.si() - ball_diameter.si() * FRAC_1_SQRT_2)
}

/// Axial stiffness of a steel screw at one place of the nut, N/m.
///
/// Pass core diameter, distance from the thrust bearing to the nut, length between the thrust bearings (read
/// for two only), and the number of thrust ends, 1 or 2.
/// Check: 34.5 mm, 1 m, one end → 192.57 N/µm; 1.2 m, nut at 0.6 m, both ends → 641.9 N/µm.
pub static SCREW_STIFFNESS: Formula<fn(Length, Length, Length, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "screw-stiffness",
        title: "axial stiffness of the screw",
        equation: "one thrust end: k = E·A/x; both: k = E·A·L/(x·(L − x)); A = π/4·d_c²",
        inputs: &[("d_c", "core-diameter"), ("x", "position"), ("L", "length"), ("n_t", "thrust-ends")],
        validity: "solid steel, E 206 GPa, bearings rigid, nut between the bearings; infinite with the nut at a thrust end",
        sources: &[Source::publication("University of Utah, ME EN 7960, Ball Screw Calculations (mirror excerpt)")],
    },
    apply: screw_stiffness,
};

/// See [`SCREW_STIFFNESS`].
#[inline]
pub fn screw_stiffness(core_diameter: Length, position: Length, length: Length, thrust_ends: Ratio) -> Stiffness {
    let strength = STEEL_YOUNG * FRAC_PI_4 * core_diameter.si().powi(2);
    let (x, whole) = (position.si(), length.si());
    let ends = thrust_ends.si();
    Stiffness::of_si(if ends < 1.5 { strength / x } else { strength / x / (1.0 - x / whole) + 0.0 * ends })
}

/// Axial stiffness of screw and thrust bearings at the worst place of the nut, N/m.
///
/// Pass core diameter, bore, free length, number of thrust ends (1 or 2), and the stiffness of one thrust bearing.
/// The worst place is the far end with one thrust end, mid length with two.
/// Check: 34.5 mm, no bore, 1 m, 1, 700 N/µm → 151.0 N/µm; 2 → 496.9 N/µm.
pub static SCREW_END_STIFFNESS: Formula<fn(Length, Length, Length, Ratio, Stiffness) -> Stiffness> = Formula {
    note: Note {
        id: "screw-end-stiffness",
        title: "axial stiffness of screw and thrust bearings at the worst place",
        equation: "one thrust end: 1/k = 1/k_b + L/(E·A); both: k = 2/(1/k_b + L/(2·E·A)); A = π/4·(d_c² − d_h²)",
        inputs: &[
            ("d_c", "core-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("n_t", "thrust-ends"),
            ("k_b", "bearing-stiffness"),
        ],
        validity: "steel, E 206 GPa; no bearing stiffness gives none",
        sources: &[SPRINGS],
    },
    apply: screw_end_stiffness,
};

/// See [`SCREW_END_STIFFNESS`].
#[inline]
pub fn screw_end_stiffness(
    core_diameter: Length,
    bore: Length,
    free_length: Length,
    thrust_ends: Ratio,
    bearing_stiffness: Stiffness,
) -> Stiffness {
    let strength = STEEL_YOUNG * FRAC_PI_4 * (core_diameter.si().powi(2) - bore.si().powi(2));
    let (give, whole) = (1.0 / bearing_stiffness.si(), free_length.si() / strength);
    let ends = thrust_ends.si();
    Stiffness::of_si(if ends < 1.5 { 1.0 / (give + whole) } else { 2.0 / (give + whole / 2.0) + 0.0 * ends })
}

/// Torsional stiffness of a steel screw, seen along the axis, N/m.
///
/// Pass diameter, length between motor end and nut, and lead. Check: 34.5 mm, 1.1 m, 10 mm → 3955 N/µm.
pub static SCREW_TORSION: Formula<fn(Length, Length, Length) -> Stiffness> = Formula {
    note: Note {
        id: "screw-torsional-stiffness-linear",
        title: "torsional stiffness of the screw, seen along the axis",
        equation: "k = G·π/32·d⁴/l·(2π/P_h)²",
        inputs: &[("d", "core-diameter"), ("l", "length"), ("P_h", "lead")],
        validity: "solid steel, G = E/2(1+ν) = 79.2 GPa; the root diameter is the right one to pass",
        sources: &[Source::derived("Saint-Venant torsion of a round bar")],
    },
    apply: screw_torsion,
};

/// See [`SCREW_TORSION`].
#[inline]
pub fn screw_torsion(root_diameter: Length, length: Length, lead: Length) -> Stiffness {
    let torsional = STEEL_SHEAR * PI / 32.0 * root_diameter.si().powi(4) / length.si();
    linear_of_torsional(TorsionalStiffness::of_si(torsional), lead)
}

/// Torsional stiffness of a bored steel screw held against turning at one or both ends, seen along the axis, N/m.
///
/// Pass root diameter, bore, free length, lead and the ends that hold it against turning; the worst place of the nut is
/// the far end with one, mid length with two. Check: 34.5 mm, no bore, 1.1 m, 10 mm, 1 → 3955 N/µm; 2 → 15 820 N/µm.
pub static BORED_TORSION: Formula<fn(Length, Length, Length, Length, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "bored-torsional-stiffness-linear",
        title: "torsional stiffness of a bored screw, seen along the axis",
        equation: "k = n_h²·G·π/32·(d_r⁴ − d_h⁴)/L·(2π/P_h)²",
        inputs: &[
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("P_h", "lead"),
            ("n_h", "held-ends"),
        ],
        validity: "steel, G = E/2(1+ν) = 79.2 GPa; one held end (the motor) or two (the clamps of a standing screw)",
        sources: &[Source::derived("Saint-Venant torsion of a round bar")],
    },
    apply: bored_torsion,
};

/// See [`BORED_TORSION`].
#[inline]
pub fn bored_torsion(root_diameter: Length, bore: Length, length: Length, lead: Length, held_ends: Ratio) -> Stiffness {
    let fourth_powers = root_diameter.si().powi(4) - bore.si().powi(4);
    let torsional = held_ends.si().powi(2) * STEEL_SHEAR * PI / 32.0 * fourth_powers / length.si();
    linear_of_torsional(TorsionalStiffness::of_si(torsional), lead)
}

/// A torsional stiffness seen along the axis, N/m.
///
/// Pass the torsional stiffness and the travel for one turn. Check: 15 kN·m/rad, 10 mm → 5921.8 N/µm.
pub static LINEAR_OF_TORSIONAL: Formula<fn(TorsionalStiffness, Length) -> Stiffness> = Formula {
    note: Note {
        id: "linear-of-torsional",
        title: "torsional stiffness, seen along the axis",
        equation: "k = c·(2π/p)²",
        inputs: &[("c", "torsional-stiffness"), ("p", "travel-per-turn")],
        validity: "the travel for one turn is not zero",
        sources: &[Source::derived("energy balance")],
    },
    apply: linear_of_torsional,
};

/// See [`LINEAR_OF_TORSIONAL`].
#[inline]
pub fn linear_of_torsional(torsional: TorsionalStiffness, travel_per_turn: Length) -> Stiffness {
    Stiffness::of_si(torsional.si() * (TAU / travel_per_turn.si()).powi(2))
}

/// Stiffness of a nut at its preload, N/m.
///
/// Pass the stiffness at a preload of 5 % of the dynamic rating, and the preload over the rating. Below 1 %
/// the nut is taken at 1 %, about what a working load gives an unloaded nut.
/// Check: 800 N/µm, 0.08 → 935.7 N/µm.
pub static NUT_STIFFNESS: Formula<fn(Stiffness, Ratio) -> Stiffness> = Formula {
    note: Note {
        id: "nut-stiffness",
        title: "stiffness of the nut at its preload",
        equation: "k_n = R_n·∛(x_pr/0.05), x_pr at least 0.01",
        inputs: &[("R_n", "rated-nut-stiffness"), ("x_pr", "preload-share")],
        validity: "Hertzian contact, stiffness rated at 5 % of the dynamic rating; below 1 % taken at 1 %",
        sources: &[
            Source::derived("Hertzian stiffness grows with the cube root of load"),
            Source::practice("an unpreloaded nut is judged at a load of 1 % of its rating"),
        ],
    },
    apply: nut_stiffness,
};

/// See [`NUT_STIFFNESS`].
#[inline]
pub fn nut_stiffness(rated: Stiffness, preload_share: Ratio) -> Stiffness {
    let share = preload_share.si();
    let share = if share < 0.01 { 0.01 } else { share };
    Stiffness::of_si(rated.si() * (share / 0.05).cbrt())
}

/// Four springs in series, N/m; a spring without stiffness gives none.
///
/// Check: 192.57, 700, 600, 900 N/µm → 106.39 N/µm.
pub static SERIES_4: Formula<fn(Stiffness, Stiffness, Stiffness, Stiffness) -> Stiffness> = Formula {
    note: Note {
        id: "stiffness-of-four",
        title: "four springs in series",
        equation: "1/k = 1/k_1 + 1/k_2 + 1/k_3 + 1/k_4",
        inputs: &[("k_1", "first"), ("k_2", "second"), ("k_3", "third"), ("k_4", "fourth")],
        validity: "linear springs",
        sources: &[SPRINGS],
    },
    apply: series_4,
};

/// See [`SERIES_4`].
#[inline]
pub fn series_4(first: Stiffness, second: Stiffness, third: Stiffness, fourth: Stiffness) -> Stiffness {
    Stiffness::of_si(1.0 / (1.0 / first.si() + 1.0 / second.si() + 1.0 / third.si() + 1.0 / fourth.si()))
}

/// Five springs in series, N/m; a spring without stiffness gives none.
///
/// Check: five of 100 N/µm → 20 N/µm.
pub static SERIES_5: Formula<fn(Stiffness, Stiffness, Stiffness, Stiffness, Stiffness) -> Stiffness> = Formula {
    note: Note {
        id: "stiffness-of-five",
        title: "five springs in series",
        equation: "1/k = 1/k_1 + 1/k_2 + 1/k_3 + 1/k_4 + 1/k_5",
        inputs: &[("k_1", "first"), ("k_2", "second"), ("k_3", "third"), ("k_4", "fourth"), ("k_5", "fifth")],
        validity: "linear springs",
        sources: &[SPRINGS],
    },
    apply: series_5,
};

/// See [`SERIES_5`].
#[inline]
pub fn series_5(
    first: Stiffness,
    second: Stiffness,
    third: Stiffness,
    fourth: Stiffness,
    fifth: Stiffness,
) -> Stiffness {
    let give = 1.0 / first.si() + 1.0 / second.si() + 1.0 / third.si() + 1.0 / fourth.si() + 1.0 / fifth.si();
    Stiffness::of_si(1.0 / give)
}

/// Six springs in series, N/m; a spring without stiffness gives none.
///
/// Check: six of 120 N/µm → 20 N/µm.
pub static SERIES_6: Formula<fn(Stiffness, Stiffness, Stiffness, Stiffness, Stiffness, Stiffness) -> Stiffness> =
    Formula {
        note: Note {
            id: "stiffness-of-six",
            title: "six springs in series",
            equation: "1/k = 1/k_1 + 1/k_2 + 1/k_3 + 1/k_4 + 1/k_5 + 1/k_6",
            inputs: &[
                ("k_1", "first"),
                ("k_2", "second"),
                ("k_3", "third"),
                ("k_4", "fourth"),
                ("k_5", "fifth"),
                ("k_6", "sixth"),
            ],
            validity: "linear springs",
            sources: &[SPRINGS],
        },
        apply: |first, second, third, fourth, fifth, sixth| {
            let five = series_5(first, second, third, fourth, fifth);
            Stiffness::of_si(1.0 / (1.0 / five.si() + 1.0 / sixth.si()))
        },
    };

/// First resonance of a mass on a spring, Hz.
///
/// Pass stiffness and mass; no mass gives infinity. Check: 101.8 N/µm, 600 kg → 65.56 Hz.
pub static NATURAL_FREQUENCY: Formula<fn(Stiffness, Mass) -> Frequency> = Formula {
    note: Note {
        id: "natural-frequency",
        title: "first resonance of the axis on its drive, motor held",
        equation: "f_1 = √(k/m)/(2π)",
        inputs: &[("k", "stiffness"), ("m", "mass")],
        validity: "motor held, mass rigid, spring without mass",
        sources: &[Source::derived("single mass on a spring")],
    },
    apply: natural_frequency,
};

/// See [`NATURAL_FREQUENCY`].
#[inline]
pub fn natural_frequency(stiffness: Stiffness, mass: Mass) -> Frequency {
    Frequency::of_si((stiffness.si() / mass.si()).sqrt() / TAU)
}

/// Give of a spring under a force, m.
///
/// Pass force and stiffness. Check: 900 N, 100 N/µm → 9 µm.
pub static DEFLECTION: Formula<fn(Force, Stiffness) -> Length> = Formula {
    note: Note {
        id: "deflection",
        title: "give under a force",
        equation: "u = F/k",
        inputs: &[("F", "force"), ("k", "stiffness")],
        validity: "linear spring",
        sources: &[Source::derived("Hooke's law")],
    },
    apply: deflection,
};

/// See [`DEFLECTION`].
#[inline]
pub fn deflection(force: Force, stiffness: Stiffness) -> Length {
    Length::of_si(force.si() / stiffness.si())
}

/// Half of the way by which a cutting force moves the slide, m: give, and half of the play where the force can turn it over.
///
/// Pass give under the force, play of the drive, 1 for a force either way and 0 for one way, the force, the weight along
/// the axis and the largest share of it that is balanced. Check: 9 µm, 40 µm, 1, 900 N, 0 N, 0 → 29 µm; 1500 N of weight → 9 µm.
pub static CUTTING_SHIFT: Formula<fn(Length, Length, Ratio, Force, Force, Ratio) -> Length> = Formula {
    note: Note {
        id: "cutting-shift",
        title: "half of the way by which a cutting force moves the slide",
        equation: "u_s = u_c + w·j/2 where F_c > |1 − c|·F_g, else u_c",
        inputs: &[
            ("u_c", "deflection"),
            ("j", "play"),
            ("w", "both-ways"),
            ("F_c", "cutting-force"),
            ("F_g", "gravity-force"),
            ("c", "balance"),
        ],
        validity: "a weight that is not balanced keeps the slide on its flank; friction is not credited; a change so slow \
                   that the loop follows is less",
        sources: &[Source::derived("the slide goes from one flank to the other, and gives on both: 2·u_c + j in all")],
    },
    apply: cutting_shift,
};

/// See [`CUTTING_SHIFT`].
#[inline]
pub fn cutting_shift(
    deflection: Length,
    play: Length,
    both_ways: Ratio,
    force: Force,
    weight: Force,
    balance: Ratio,
) -> Length {
    let hold = (1.0 - balance.si()).abs() * weight.si();
    // a force or weight that is not known leaves the result unknown
    let turned = if force.si() <= hold { 0.0 } else { 1.0 + 0.0 * (force.si() - hold) };
    Length::of_si(deflection.si() + 0.5 * both_ways.si() * turned * play.si())
}
