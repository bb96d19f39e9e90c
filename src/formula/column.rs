//! Strength of the screw: buckling of the pressed part, stress of force and torque.
//!
//! Method: Euler's load for slender columns, Johnson's parabola below the slenderness at which Euler's stress
//! is half the yield strength; a screw held at both ends is judged at the worst place of its nut. Limits: central load,
//! straight bar; no safety inside.

use super::constants::STEEL_YOUNG;
use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Acceleration, Angle, Force, Length, Mass, Measure, Pressure, Ratio, Torque};
use std::f64::consts::{FRAC_PI_4, PI, TAU};

/// Compressive force at which a steel screw buckles, N.
///
/// Pass root diameter, bore, loaded length, buckling factor (¼ fixed–free, 1 supported–supported, 2.0457
/// fixed–supported, 4 fixed–fixed) and yield strength; an infinite yield strength gives Euler alone.
/// Check: 34.5 mm, no bore, 1.5 m, 2.0457, no yield → 128 553 N.
pub static COLUMN_LOAD: Formula<fn(Length, Length, Length, Ratio, Pressure) -> Force> = Formula {
    note: Note {
        id: "column-load",
        title: "buckling load of the screw",
        equation: "F_cr = N·π²·E·I/L², I = π·(d_r⁴ − d_h⁴)/64; for λ_s = 4·L/√(N·(d_r² + d_h²)) < √(2π²·E/S_y): \
                   F_cr = A·(S_y − (S_y·λ_s/2π)²/E), A = π/4·(d_r² − d_h²)",
        inputs: &[
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "loaded-length"),
            ("N", "buckling-factor"),
            ("S_y", "yield-strength"),
        ],
        validity: "steel, E 206 GPa, straight and centrally loaded; no safety inside",
        sources: &[
            Source::derived("Euler's column; checked by a finite-element model"),
            Source::memory("J. E. Shigley, Mechanical Engineering Design, Johnson's parabola"),
        ],
    },
    apply: column_load,
};

/// See [`COLUMN_LOAD`].
#[inline]
pub fn column_load(
    root_diameter: Length,
    bore: Length,
    loaded_length: Length,
    buckling_factor: Ratio,
    yield_strength: Pressure,
) -> Force {
    let (d, b, strength) = (root_diameter.si(), bore.si(), yield_strength.si());
    let (area, gyration) = section(d, b);
    let slenderness = loaded_length.si() / buckling_factor.si().sqrt() / gyration;
    let limit = (2.0 * PI * PI * STEEL_YOUNG / strength).sqrt();
    let stress = if slenderness >= limit {
        PI * PI * STEEL_YOUNG / (slenderness * slenderness)
    } else {
        strength - (strength * slenderness / TAU).powi(2) / STEEL_YOUNG
    };
    Force::of_si(area * stress)
}

/// Area and radius of gyration of a bored round bar.
#[inline]
fn section(root: f64, bore: f64) -> (f64, f64) {
    let area = if bore < root { FRAC_PI_4 * (root * root - bore * bore) } else { f64::NAN };
    (area, (root * root + bore * bore).sqrt() / 4.0)
}

/// Largest force that presses the screw together, N, over every state of the cutting force.
///
/// Pass accelerated mass, accelerations, weight along the axis, shares of it that are balanced, friction, directions and
/// cutting forces of all phases (positive against upward or forward motion), 1 if the cutting force acts either way, and
/// the angle of the axis. On an inclined axis the thrust bearing is on top: what lifts pulls, only what pushes down presses; a
/// tool that pushes up harder than the weight presses. Check, upright: 100 kg, standing, 1 kN, no balance, no friction,
/// −3 kN → 2 kN; with +3 kN that act one way 0, either way 2 kN; level, 4 kN → 4 kN.
pub static PRESSING_FORCE: Formula<
    fn(Mass, Series<Acceleration>, Force, Series<Ratio>, Force, Series<Ratio>, Series<Force>, Ratio, Angle) -> Force,
> = Formula {
    note: Note {
        id: "pressing-force",
        title: "largest force that presses the screw together",
        equation: "F_0 = m_a·a_k + F_g·(1 − c_k) + σ_k·F_f; F = F_0, F_0 + F_c,k, F_0 − w·F_c,k; level: F_p = max |F|; inclined: F_p = max(0, −F)",
        inputs: &[
            ("m_a", "accelerated-mass"),
            ("a_k", "phase-acceleration"),
            ("F_g", "gravity-force"),
            ("c_k", "phase-balance"),
            ("F_f", "friction-force"),
            ("σ_k", "phase-direction"),
            ("F_c,k", "phase-cutting-force"),
            ("w", "both-ways"),
            ("θ", "inclination"),
        ],
        validity: "one thrust bearing; on an inclined axis at the upper end, on a level one at either end; with and without the cutting force",
        sources: &[Source::derived("sign of the force between thrust bearing and nut")],
    },
    apply: pressing_force,
};

/// See [`PRESSING_FORCE`].
#[inline]
pub fn pressing_force(
    mass: Mass,
    accelerations: Series<Acceleration>,
    weight: Force,
    balances: Series<Ratio>,
    friction: Force,
    directions: Series<Ratio>,
    cutting_forces: Series<Force>,
    both_ways: Ratio,
    inclination: Angle,
) -> Force {
    let level = inclination.si() <= 0.0;
    let mut largest = 0.0 * inclination.si();
    let motion = accelerations.si().iter().zip(balances.si()).zip(directions.si()).zip(cutting_forces.si());
    for (((acceleration, balance), direction), cutting) in motion {
        let air = mass.si() * acceleration + weight.si() * (1.0 - balance) + direction * friction.si();
        for force in [air, air + cutting, air - both_ways.si() * cutting] {
            let pressing = if level { force.abs() } else { -force };
            if pressing > largest || pressing.is_nan() {
                largest = pressing;
            }
        }
    }
    Force::of_si(largest)
}

/// Length of the screw that a single thrust bearing presses together, nut at the far end, m.
///
/// Pass free length, end gap and nut length. Check: 1.2 m, 40 mm, 100 mm → 1.11 m.
pub static PRESSED_LENGTH: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "pressed-length",
        title: "length of the screw between thrust bearing and far place of the nut",
        equation: "L_c = L − s_g − L_n/2",
        inputs: &[("L", "free-length"), ("s_g", "end-gap"), ("L_n", "nut-length")],
        validity: "overtravel included; the nut counted at its middle",
        sources: &[Source::derived("sum of the parts")],
    },
    apply: pressed_length,
};

/// See [`PRESSED_LENGTH`].
#[inline]
pub fn pressed_length(free_length: Length, end_gap: Length, nut_length: Length) -> Length {
    Length::of_si(free_length.si() - end_gap.si() - nut_length.si() / 2.0)
}

/// Length of the pressed part of a screw held at both ends at which it buckles first, m. Check: 1.2 m → 0.8 m.
pub static HELD_PRESSED_LENGTH: Formula<fn(Length) -> Length> = Formula {
    note: Note {
        id: "held-pressed-length",
        title: "pressed part of a screw held at both ends, nut at its worst place",
        equation: "L_c = 2/3·L",
        inputs: &[("L", "free-length")],
        validity: "slender screw without warming: a nut at x presses with 1 − x/L of its force on the part of length x",
        sources: &[Source::derived("largest value of x²·(1 − x/L)")],
    },
    apply: |length| Length::of_si(2.0 / 3.0 * length.si()),
};

/// Largest share of the buckling load in the pressed part of a screw held at both ends, 1, over all places of the nut.
///
/// Pass the largest force, the thermal compression, root diameter, bore, free length, buckling factor of the part between
/// end and nut, and yield strength. Check: 10 kN, none, 34.5 mm, 4 m, 2.0457, 350 MPa → 0.0820.
pub static HELD_COLUMN_USE: Formula<fn(Force, Force, Length, Length, Length, Ratio, Pressure) -> Ratio> = Formula {
    note: Note {
        id: "held-column-use",
        title: "share of the buckling load in the pressed part of a screw held at both ends",
        equation: "x_c = max over x of (F·(1 − x/L) + F_th)/F_cr(x), F_cr(x) by Euler or Johnson for the length x",
        inputs: &[
            ("F", "peak-force"),
            ("F_th", "thermal-compression"),
            ("d_r", "root-diameter"),
            ("d_h", "bore"),
            ("L", "free-length"),
            ("N", "buckling-factor"),
            ("S_y", "yield-strength"),
        ],
        validity: "steel, E 206 GPa, ends rigid along the axis; the largest value lies at the end, where Johnson's \
                   parabola ends, or at x = 2/3·L·(1 + F_th/F), at most L; no safety inside",
        sources: &[
            Source::derived("share of force by stiffness of the two parts, worst over all places of the nut"),
            Source::memory("J. E. Shigley, Mechanical Engineering Design, Johnson's parabola"),
        ],
    },
    apply: held_column_use,
};

/// See [`HELD_COLUMN_USE`].
#[inline]
pub fn held_column_use(
    peak_force: Force,
    thermal_compression: Force,
    root_diameter: Length,
    bore: Length,
    free_length: Length,
    buckling_factor: Ratio,
    yield_strength: Pressure,
) -> Ratio {
    let (force, thermal) = (peak_force.si().abs(), thermal_compression.si());
    let length = free_length.si();
    let used = |place: f64| {
        let part = Length::of_si(place * length);
        let load = column_load(root_diameter, bore, part, buckling_factor, yield_strength);
        (force * (1.0 - place) + thermal) / load.si()
    };
    let (_, gyration) = section(root_diameter.si(), bore.si());
    let slender = (2.0 * PI * PI * STEEL_YOUNG / yield_strength.si()).sqrt() * gyration * buckling_factor.si().sqrt();
    let ends_johnson = if slender < length { slender / length } else { 1.0 };
    let by_euler = 2.0 / 3.0 * (1.0 + thermal / force);
    let by_euler = if by_euler > ends_johnson { by_euler } else { ends_johnson };
    let mut largest = used(0.0);
    for place in [ends_johnson, if by_euler < 1.0 { by_euler } else { 1.0 }] {
        let here = used(place);
        if here > largest || here.is_nan() {
            largest = here;
        }
    }
    Ratio::of_si(largest)
}

/// Share of the buckling load that a screw with one thrust bearing uses, 1.
///
/// Pass the pressing force and the column load. Check: 8 kN, 32 kN → 0.25.
pub static COLUMN_USE: Formula<fn(Force, Force) -> Ratio> = Formula {
    note: Note {
        id: "column-use",
        title: "pressing force over buckling load",
        equation: "x_c = F_p/F_cr",
        inputs: &[("F_p", "pressing-force"), ("F_cr", "column-load")],
        validity: "one thrust bearing",
        sources: &[Source::derived("ratio of two forces")],
    },
    apply: |pressing, load| Ratio::of_si(pressing.si() / load.si()),
};

/// Tension, compression and torsion of the screw or its journal together, Pa (von Mises).
///
/// Pass axial force, torque, diameter and bore. Check: 10 kN, 20 N·m, 20 mm, no bore → 38.72 MPa.
pub static COMBINED_STRESS: Formula<fn(Force, Torque, Length, Length) -> Pressure> = Formula {
    note: Note {
        id: "combined-stress",
        title: "stress of axial force and torque together",
        equation: "σ_v = √(σ² + 3·τ²), σ = 4·F/(π·(d² − d_h²)), τ = 16·T·d/(π·(d⁴ − d_h⁴))",
        inputs: &[("F", "axial-force"), ("T", "torque"), ("d", "diameter"), ("d_h", "bore")],
        validity: "nominal stress of a round section: no notch, no bending",
        sources: &[Source::memory("von Mises, as in any text on machine elements")],
    },
    apply: combined_stress,
};

/// See [`COMBINED_STRESS`].
#[inline]
pub fn combined_stress(axial_force: Force, torque: Torque, diameter: Length, bore: Length) -> Pressure {
    let (d, b) = (diameter.si(), bore.si());
    let (area, _) = section(d, b);
    let pull = axial_force.si() / area;
    let twist = 16.0 * torque.si() * d / (PI * (d.powi(4) - b.powi(4)));
    Pressure::of_si((pull * pull + 3.0 * twist * twist).sqrt())
}
