//! Load ratings of a ball nut worked out from its geometry.
//!
//! Method: Lundberg–Palmgren for the dynamic rating, permanent indentation of 10⁻⁴ ball diameters for the
//! static one, both rows at 45° contact angle with equal conformities. Limits: full hardness, ordinary steel,
//! ball diameter up to 25.4 mm; an estimate of ±25 %, to be replaced by a stated rating where there is one.

use super::{Formula, Note};
use crate::source::Source;
use crate::units::{Force, Length, Measure, Ratio};
use std::f64::consts::{FRAC_1_SQRT_2, PI};

const ISO: Source =
    Source::memory("ISO 3408-5:2006, basic axial load ratings; constants derived again from Lundberg and Palmgren");

/// Cosine of the lead angle, and whole balls in one turn.
fn turn(circle: f64, ball: f64, lead: f64) -> (f64, f64) {
    let cosine = (lead / (PI * circle)).atan().cos();
    (cosine, (PI * circle / (ball * cosine) + 1e-9).floor())
}

/// Basic dynamic axial load rating of one nut from its geometry, N.
///
/// Pass ball circle diameter, ball diameter, lead, loaded turns and conformity (groove radius over ball
/// diameter). A conformity of 0.5 or less gives NaN. Check: 33, 6.35, 10 mm, 4 turns, 0.54 → 36.17 kN.
pub static DYNAMIC_RATING: Formula<fn(Length, Length, Length, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "dynamic-rating",
        title: "basic dynamic axial load rating from geometry",
        equation: "C_a = C_i·i^0.86, C_i = C_s·(1 + (C_s/C_n)^(10/3))^(−0.3), \
                   C_s = f_c·(cos α)^0.86·Z_1^(2/3)·D_w^1.8·tan α·(cos φ)^1.3, \
                   f_c = 93.2·(1 − sin α/3)·γ^0.3·(1−γ)^1.39/(1+γ)^(1/3)·(1 − 1/(2f))^(−0.41), \
                   C_s/C_n = ((1−γ)/(1+γ))^1.723, γ = D_w·cos α/D_pw, Z_1 = ⌊π·D_pw/(D_w·cos φ)⌋, α = 45°",
        inputs: &[
            ("D_pw", "ball-circle-diameter"),
            ("D_w", "ball-diameter"),
            ("P_h", "lead"),
            ("i", "turns"),
            ("f", "conformity"),
        ],
        validity: "contact angle 45°, conformity above 0.5, full hardness, ball diameter up to 25.4 mm; ±25 %",
        sources: &[ISO],
    },
    apply: dynamic_rating,
};

/// See [`DYNAMIC_RATING`].
pub fn dynamic_rating(
    ball_circle_diameter: Length,
    ball_diameter: Length,
    lead: Length,
    turns: Ratio,
    conformity: Ratio,
) -> Force {
    let (circle, ball) = (ball_circle_diameter.si() * 1e3, ball_diameter.si() * 1e3);
    let (cosine, balls) = turn(circle, ball, lead.si() * 1e3);
    let (sin_contact, cos_contact) = (FRAC_1_SQRT_2, FRAC_1_SQRT_2);
    let gamma = ball * cos_contact / circle;
    let groove = (1.0 / (1.0 - 1.0 / (2.0 * conformity.si()))).powf(0.41);
    let shape = gamma.powf(0.3) * (1.0 - gamma).powf(1.39) / (1.0 + gamma).cbrt();
    let f_c = 9.32 * 10.0 * (1.0 - sin_contact / 3.0) * shape * groove;
    let screw = f_c
        * cos_contact.powf(0.86)
        * balls.powf(2.0 / 3.0)
        * ball.powf(1.8)
        * (sin_contact / cos_contact)
        * cosine.powf(1.3);
    let screw_over_nut = ((1.0 - gamma) / (1.0 + gamma)).powf(1.723);
    let one_turn = screw * (1.0 + screw_over_nut.powf(10.0 / 3.0)).powf(-0.3);
    Force::of_si(one_turn * turns.si().powf(0.86))
}

/// Basic static axial load rating of one nut from its geometry, N.
///
/// Pass ball circle diameter, ball diameter, lead, loaded turns and conformity. A conformity of 0.5 or less
/// gives NaN. Check: 33, 6.35, 10 mm, 4 turns, 0.54 → 86.04 kN.
pub static STATIC_RATING: Formula<fn(Length, Length, Length, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "static-rating",
        title: "basic static axial load rating from geometry",
        equation: "C_0a = k_0·Z_1·i·D_w²·sin α·cos φ, k_0 = 27.74/(D_w·√(σ_1·σ_2)), σ_1 = 2/D_w − 1/(f·D_w), \
                   σ_2 = 2/D_w + cos α/(D_pw/2 − D_w·cos α/2), α = 45°",
        inputs: &[
            ("D_pw", "ball-circle-diameter"),
            ("D_w", "ball-diameter"),
            ("P_h", "lead"),
            ("i", "turns"),
            ("f", "conformity"),
        ],
        validity: "contact angle 45°, conformity above 0.5, full hardness; all balls bear alike, so a safety is needed",
        sources: &[ISO],
    },
    apply: static_rating,
};

/// See [`STATIC_RATING`].
pub fn static_rating(
    ball_circle_diameter: Length,
    ball_diameter: Length,
    lead: Length,
    turns: Ratio,
    conformity: Ratio,
) -> Force {
    let (circle, ball, f) = (ball_circle_diameter.si() * 1e3, ball_diameter.si() * 1e3, conformity.si());
    let (cosine, balls) = turn(circle, ball, lead.si() * 1e3);
    let along = if f > 0.5 { 2.0 / ball - 1.0 / (f * ball) } else { f64::NAN };
    let across = 2.0 / ball + FRAC_1_SQRT_2 / (circle / 2.0 - ball * FRAC_1_SQRT_2 / 2.0);
    let k0 = 27.74 / (ball * (along * across).sqrt());
    Force::of_si(k0 * balls * turns.si() * ball * ball * FRAC_1_SQRT_2 * cosine)
}

const HARDNESS: Source =
    Source::memory("ISO 3408-5:2006, corrections of the ratings for hardness, accuracy and material");

/// Factor on the dynamic rating for the hardness of the groove, 1. Check: 600 HV 10 → 0.8417; 700 → 1.
pub static HARDNESS_FACTOR: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "hardness-factor",
        title: "factor on the dynamic rating for the hardness of the groove",
        equation: "f_h = min(1, (HV/654)²)",
        inputs: &[("HV", "surface-hardness")],
        validity: "Vickers hardness HV 10 of the groove; 654 HV is about 58 HRC",
        sources: &[HARDNESS],
    },
    apply: |hardness| at_most_one((hardness.si() / 654.0).powi(2)),
};

/// Factor on the static rating for the hardness of the groove, 1. Check: 600 HV 10 → 0.7722; 700 → 1.
pub static STATIC_HARDNESS_FACTOR: Formula<fn(Ratio) -> Ratio> = Formula {
    note: Note {
        id: "static-hardness-factor",
        title: "factor on the static rating for the hardness of the groove",
        equation: "f_h0 = min(1, (HV/654)³)",
        inputs: &[("HV", "surface-hardness")],
        validity: "Vickers hardness HV 10 of the groove; 654 HV is about 58 HRC",
        sources: &[HARDNESS],
    },
    apply: |hardness| at_most_one((hardness.si() / 654.0).powi(3)),
};

fn at_most_one(value: f64) -> Ratio {
    Ratio::of_si(if value > 1.0 { 1.0 } else { value })
}

/// Dynamic rating that counts. Check: 49.3 kN × 0.9 × 1 × 1.25 × 0.95 → 52.69 kN.
pub static EFFECTIVE_DYNAMIC_RATING: Formula<fn(Force, Ratio, Ratio, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "effective-dynamic-rating",
        title: "dynamic rating of the size with manufacture, hardness, melt and temperature",
        equation: "C_a = C_g·f_C·f_h·f_m·f_t",
        inputs: &[
            ("C_g", "size-rating"),
            ("f_C", "rating-factor"),
            ("f_h", "hardness-factor"),
            ("f_m", "melt-factor"),
            ("f_t", "temperature-factor"),
        ],
        validity: "factors of the manufacture as the catalogue states them; all 1 for a ground screw of ordinary steel",
        sources: &[HARDNESS],
    },
    apply: |rating, accuracy, hardness, melt, temperature| {
        Force::of_si(rating.si() * accuracy.si() * hardness.si() * melt.si() * temperature.si())
    },
};

/// Static rating that counts. Check: 137 kN × 0.9 × 0.7722 → 95.21 kN.
pub static EFFECTIVE_STATIC_RATING: Formula<fn(Force, Ratio, Ratio) -> Force> = Formula {
    note: Note {
        id: "effective-static-rating",
        title: "static rating of the size with manufacture and hardness",
        equation: "C_0a = C_0g·f_C·f_h0",
        inputs: &[("C_0g", "size-rating"), ("f_C", "rating-factor"), ("f_h0", "static-hardness-factor")],
        validity: "factors of the manufacture as the catalogue states them; all 1 for a ground screw of ordinary steel",
        sources: &[HARDNESS],
    },
    apply: |rating, accuracy, hardness| Force::of_si(rating.si() * accuracy.si() * hardness.si()),
};
