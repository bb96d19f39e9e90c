//! The accuracy budget of an axis, in the quantities of ISO 230-2.
//!
//! Method: ranges that are independent add as root of sum of squares; reversal adds linearly; scatter enters
//! with four standard deviations. Where reversal B and scatter s are the same along the travel and M is the
//! range of the mean deviation, R = B + 4s, E = M + B and A = M + B + 4s hold exactly. Limits: the extremes of
//! a finite test lie somewhat above (about 10 to 15 % on R and B).

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Angle, Force, Length, Measure, Ratio, Stiffness};

const SQUARES: Source =
    Source::memory("root sum of squares of independent errors; A. Slocum, Precision Machine Design");
const ISO230: Source =
    Source::derived("definitions of ISO 230-2 (from memory) for equal reversal and scatter along the travel");

/// Root of the sum of squares of two errors, m. Check: 3 and 4 µm → 5 µm.
pub static ROOT_SUM_SQUARE_2: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "root-sum-square-2",
        title: "two independent errors together",
        equation: "e = √(e_1² + e_2²)",
        inputs: &[("e_1", "first"), ("e_2", "second")],
        validity: "independent errors, stated alike",
        sources: &[SQUARES],
    },
    apply: root_sum_square_2,
};

/// See [`ROOT_SUM_SQUARE_2`].
#[inline]
pub fn root_sum_square_2(first: Length, second: Length) -> Length {
    Length::of_si((first.si().powi(2) + second.si().powi(2)).sqrt())
}

/// Root of the sum of squares of three errors, m. Check: 2, 3, 6 µm → 7 µm.
pub static ROOT_SUM_SQUARE_3: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "root-sum-square-3",
        title: "three independent errors together",
        equation: "e = √(e_1² + e_2² + e_3²)",
        inputs: &[("e_1", "first"), ("e_2", "second"), ("e_3", "third")],
        validity: "independent errors, stated alike",
        sources: &[SQUARES],
    },
    apply: root_sum_square_3,
};

/// See [`ROOT_SUM_SQUARE_3`].
#[inline]
pub fn root_sum_square_3(first: Length, second: Length, third: Length) -> Length {
    Length::of_si((first.si().powi(2) + second.si().powi(2) + third.si().powi(2)).sqrt())
}

/// Root of the sum of squares of four errors, m. Check: 1, 1, 1, 1 µm → 2 µm.
pub static ROOT_SUM_SQUARE_4: Formula<fn(Length, Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "root-sum-square-4",
        title: "four independent errors together",
        equation: "e = √(e_1² + e_2² + e_3² + e_4²)",
        inputs: &[("e_1", "first"), ("e_2", "second"), ("e_3", "third"), ("e_4", "fourth")],
        validity: "independent errors, stated alike",
        sources: &[SQUARES],
    },
    apply: root_sum_square_4,
};

/// See [`ROOT_SUM_SQUARE_4`].
#[inline]
pub fn root_sum_square_4(first: Length, second: Length, third: Length, fourth: Length) -> Length {
    Length::of_si((first.si().powi(2) + second.si().powi(2) + third.si().powi(2) + fourth.si().powi(2)).sqrt())
}

/// Lost motion from friction, m.
///
/// Pass friction and the stiffness between measuring element and tool. Check: 200 N, 100 N/µm → 4 µm.
pub static LOST_MOTION: Formula<fn(Force, Stiffness) -> Length> = Formula {
    note: Note {
        id: "lost-motion",
        title: "friction lost motion",
        equation: "u_f = 2·F_f/k",
        inputs: &[("F_f", "friction"), ("k", "stiffness")],
        validity: "stiffness between the measuring element and the tool",
        sources: &[Source::derived("friction turns its sign at reversal")],
    },
    apply: lost_motion,
};

/// See [`LOST_MOTION`].
#[inline]
pub fn lost_motion(friction: Force, stiffness: Stiffness) -> Length {
    Length::of_si(2.0 * friction.si() / stiffness.si())
}

/// Reversal error, m.
///
/// Pass play, friction lost motion, and the share of play that the control compensates.
/// Check: 40 µm, 8 µm, 0.75 → 18 µm.
pub static REVERSAL_ERROR: Formula<fn(Length, Length, Ratio) -> Length> = Formula {
    note: Note {
        id: "reversal-error",
        title: "reversal error B",
        equation: "B = j·(1 − x_c) + u_f",
        inputs: &[("j", "play"), ("u_f", "lost-motion"), ("x_c", "compensated")],
        validity: "play and lost motion act together",
        sources: &[Source::derived("both act in the same event and sense")],
    },
    apply: reversal_error,
};

/// See [`REVERSAL_ERROR`].
#[inline]
pub fn reversal_error(play: Length, lost_motion: Length, compensated: Ratio) -> Length {
    Length::of_si(play.si() * (1.0 - compensated.si()) + lost_motion.si())
}

/// Bidirectional repeatability R, m.
///
/// Pass reversal error and standard deviation of a position. Check: 3 µm, 0.6 µm → 5.4 µm.
pub static REPEATABILITY: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "repeatability",
        title: "bidirectional repeatability R",
        equation: "R = B + 4·s",
        inputs: &[("B", "reversal"), ("s", "scatter")],
        validity: "equal reversal and scatter along the travel",
        sources: &[ISO230],
    },
    apply: repeatability,
};

/// See [`REPEATABILITY`].
#[inline]
pub fn repeatability(reversal: Length, scatter: Length) -> Length {
    Length::of_si(reversal.si() + 4.0 * scatter.si())
}

/// Bidirectional accuracy A, m.
///
/// Pass range of the mean deviation, reversal error and standard deviation. Check: 8, 3, 0.6 µm → 13.4 µm.
pub static BIDIRECTIONAL_ACCURACY: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "bidirectional-accuracy",
        title: "bidirectional accuracy A",
        equation: "A = M + B + 4·s",
        inputs: &[("M", "position-error"), ("B", "reversal"), ("s", "scatter")],
        validity: "equal reversal and scatter along the travel; ISO 230-2 defines A up to 2 m of travel",
        sources: &[ISO230],
    },
    apply: bidirectional_accuracy,
};

/// See [`BIDIRECTIONAL_ACCURACY`].
#[inline]
pub fn bidirectional_accuracy(position_error: Length, reversal: Length, scatter: Length) -> Length {
    Length::of_si(position_error.si() + reversal.si() + 4.0 * scatter.si())
}

/// Bidirectional systematic deviation E, m.
///
/// Pass range of the mean deviation and reversal error. Check: 8 µm, 3 µm → 11 µm.
pub static SYSTEMATIC_DEVIATION: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "systematic-deviation",
        title: "bidirectional systematic deviation E",
        equation: "E = M + B",
        inputs: &[("M", "position-error"), ("B", "reversal")],
        validity: "equal reversal along the travel",
        sources: &[ISO230],
    },
    apply: systematic_deviation,
};

/// See [`SYSTEMATIC_DEVIATION`].
#[inline]
pub fn systematic_deviation(position_error: Length, reversal: Length) -> Length {
    Length::of_si(position_error.si() + reversal.si())
}

/// Half band that an axis adds at the tool, m.
///
/// Pass range of the mean deviation, reversal error and standard deviation. Check: 8, 3, 0.6 µm → 6.7 µm.
pub static TOOL_ERROR: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "tool-error",
        title: "half band that the axis adds at the tool",
        equation: "e_t = (M + B + 4·s)/2",
        inputs: &[("M", "position-error"), ("B", "reversal"), ("s", "scatter")],
        validity: "equal reversal and scatter along the travel; no tilt of the slide",
        sources: &[ISO230],
    },
    apply: tool_error,
};

/// See [`TOOL_ERROR`].
#[inline]
pub fn tool_error(position_error: Length, reversal: Length, scatter: Length) -> Length {
    Length::of_si(bidirectional_accuracy(position_error, reversal, scatter).si() / 2.0)
}

/// Standard deviation of a position, m.
///
/// Pass encoder step, friction, stiffness, and the share of friction that scatters.
/// Check: 0.0763 µm, 200 N, 100 N/µm, 0.1 → 0.2012 µm.
pub static SCATTER: Formula<fn(Length, Force, Stiffness, Ratio) -> Length> = Formula {
    note: Note {
        id: "scatter",
        title: "standard deviation of a position",
        equation: "s = √((q/√12)² + (x·F_f/k)²)",
        inputs: &[("q", "encoder-step"), ("F_f", "friction-force"), ("k", "stiffness"), ("x", "share")],
        validity: "uniform rounding of the encoder, friction scatter independent of it",
        sources: &[
            Source::derived("variance of a uniform band"),
            Source::practice("a tenth of friction scatters or so"),
        ],
    },
    apply: scatter,
};

/// See [`SCATTER`].
#[inline]
pub fn scatter(encoder_step: Length, friction_force: Force, stiffness: Stiffness, share: Ratio) -> Length {
    let give = share.si() * friction_force.si() / stiffness.si();
    Length::of_si((encoder_step.si().powi(2) / 12.0 + give * give).sqrt())
}

/// Error band of a linear scale over the travel, m.
///
/// Pass error a length, least error, and travel. Check: 5 µm/m, 3 µm, 2 m → 10 µm.
pub static SCALE_ERROR: Formula<fn(Ratio, Length, Length) -> Length> = Formula {
    note: Note {
        id: "scale-error",
        title: "error band of the linear scale",
        equation: "e_sc = max(e'·s, e_0)",
        inputs: &[("e'", "error-per-length"), ("e_0", "least"), ("s", "travel")],
        validity: "everywhere",
        sources: &[Source::practice("accuracy classes of scales are stated a metre")],
    },
    apply: scale_error,
};

/// See [`SCALE_ERROR`].
#[inline]
pub fn scale_error(error_per_length: Ratio, least: Length, travel: Length) -> Length {
    let grown = error_per_length.si() * travel.si();
    let least = least.si();
    Length::of_si(if grown < least || least.is_nan() { least } else { grown })
}

/// What a table of corrections leaves of an error, m.
///
/// Pass the error, the travel, the share left between the points, uncertainty (k = 2) fixed and a metre, and drift.
/// Check: 40 µm, 2.4 m, 0.2, 0.6 µm, 1 µm/m, 0 → √(8² + 3²) = 8.544 µm.
pub static MAPPED_ERROR: Formula<fn(Length, Length, Ratio, Length, Ratio, Length) -> Length> = Formula {
    note: Note {
        id: "mapped-error",
        title: "what a table of corrections leaves of an error",
        equation: "M_left = √((x_map·M_raw)² + (U_0 + U_1·s)² + d_map²)",
        inputs: &[
            ("M_raw", "error"),
            ("s", "travel"),
            ("x_map", "residual"),
            ("U_0", "uncertainty"),
            ("U_1", "uncertainty-rate"),
            ("d_map", "drift"),
        ],
        validity: "errors that repeat over more than two points of the table; what is left may be more than the error was",
        sources: &[Source::derived("share left, uncertainty of the measurement and drift are independent")],
    },
    apply: mapped_error,
};

/// See [`MAPPED_ERROR`].
#[inline]
pub fn mapped_error(
    error: Length,
    travel: Length,
    residual: Ratio,
    uncertainty: Length,
    uncertainty_rate: Ratio,
    drift: Length,
) -> Length {
    let measured = uncertainty.si() + uncertainty_rate.si() * travel.si();
    let left = residual.si() * error.si();
    Length::of_si((left.powi(2) + measured.powi(2) + drift.si().powi(2)).sqrt())
}

/// Tilt of a slide whose carriages ride on a wave, rad, full range.
///
/// Pass height from crest to trough, wavelength, and distance of the carriages along the travel.
/// Check: 10 µm, 600 mm, 300 mm → 2·6.875″ = 13.75″.
pub static WAVINESS_TILT: Formula<fn(Length, Length, Length) -> Angle> = Formula {
    note: Note {
        id: "waviness-tilt",
        title: "tilt of a slide by the waviness of its guides",
        equation: "θ_wg = 2·h_g/l_b·|sin(π·l_b/Λ_g)|",
        inputs: &[("h_g", "height"), ("Λ_g", "wavelength"), ("l_b", "base")],
        validity: "one wave, two carriages on it; full range, from one side to the other",
        sources: &[Source::derived("difference of a wave at two carriages, over their distance")],
    },
    apply: |height, wavelength, base| {
        let turned = (std::f64::consts::PI * base.si() / wavelength.si()).sin().abs();
        Angle::of_si(2.0 * height.si() / base.si() * turned)
    },
};

/// Two independent tilts together, rad. Check: 3″ and 4″ → 5″.
pub static TILT_SUM: Formula<fn(Angle, Angle) -> Angle> = Formula {
    note: Note {
        id: "tilt-sum",
        title: "two independent tilts together",
        equation: "θ_s = √(θ_g² + θ_wg²)",
        inputs: &[("θ_g", "stated"), ("θ_wg", "waviness")],
        validity: "independent tilts, full ranges",
        sources: &[SQUARES],
    },
    apply: |stated, waviness| Angle::of_si((stated.si().powi(2) + waviness.si().powi(2)).sqrt()),
};

/// Error at the tool by tilt of the slide, m (Abbe error).
///
/// Pass the distance from the measuring line across to the tool, and the tilt. Check: 300 mm, 10″ → 14.54 µm.
pub static TILT_ERROR: Formula<fn(Length, Angle) -> Length> = Formula {
    note: Note {
        id: "tilt-error",
        title: "error at the tool by tilt of the slide (Abbe error)",
        equation: "e_θ = h_t·θ_s",
        inputs: &[("h_t", "arm"), ("θ_s", "tilt")],
        validity: "small angles",
        sources: &[Source::derived("E. Abbe's principle: an arm across the measuring line turns tilt into error")],
    },
    apply: |arm, tilt| Length::of_si(arm.si() * tilt.si()),
};

/// Half band at the tool in one direction of the machine, m.
///
/// Pass ranges of the mean deviation, reversals and scatters of the axes that move along it.
/// Check: M 6 and 8 µm, B 2 and 4 µm, s 0 and 0 → 5 + 3 = 8 µm.
pub static DIRECTION_ERROR: Formula<fn(Series<Length>, Series<Length>, Series<Length>) -> Length> = Formula {
    note: Note {
        id: "direction-error",
        title: "half band at the tool in one direction",
        equation: "e_d = √Σ((M + 4·s)/2)² + ΣB/2",
        inputs: &[("M", "position-errors"), ("B", "reversals"), ("s", "scatters")],
        validity: "independent deviations by squares, reversals of one sense in line; small angles between slides",
        sources: &[ISO230, SQUARES],
    },
    apply: direction_error,
};

/// See [`DIRECTION_ERROR`].
pub fn direction_error(errors: Series<Length>, reversals: Series<Length>, scatters: Series<Length>) -> Length {
    let halves = errors.si().iter().zip(scatters.si()).map(|(error, scatter)| 0.5 * (error + 4.0 * scatter));
    let squares: f64 = halves.map(|half| half * half).sum();
    Length::of_si(squares.sqrt() + 0.5 * reversals.si().iter().sum::<f64>())
}
