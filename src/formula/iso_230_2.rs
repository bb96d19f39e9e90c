//! The quantities of an axis test by ISO 230-2: what is worked out from measured deviations.
//!
//! Method: a deviation is the actual position minus the target. At each target the runs of one direction give a
//! mean and a standard deviation; the axis is described by the extremes of these over the targets. Limits:
//! definitions of ISO 230-2:2014 from memory, the text was not at hand; at most 64 runs a target.

use super::{Formula, Note, Series};
use crate::source::Source;
use crate::units::{Expansion, Length, Measure, Ratio, TemperatureInterval};

const ISO230: Source = Source::memory("ISO 230-2:2014, definitions");
const ISO14253: Source = Source::memory("ISO 14253-1, decision rules for proving that a limit is kept");

/// Longest travel on which R and A are stated for the whole, m (ISO 230-2, from memory).
pub const LONGEST_WHOLE: f64 = 2.0;
/// Fewest targets a metre, and in all, up to 2 m of travel (ISO 230-2, from memory).
pub const LEAST_TARGETS: f64 = 5.0;
/// Greatest mean distance of targets above 2 m of travel, m (ISO 230-2, from memory).
pub const GREATEST_SPACING: f64 = 0.25;
/// Runs in each direction up to 2 m of travel, and on a section of 2 m (ISO 230-2, from memory).
pub const RUNS: usize = 5;

/// Mean deviation at a target in one direction, m.
///
/// Pass the deviations of the runs. Check: 1, 2, 6 µm → 3 µm.
pub static MEAN_DEVIATION: Formula<fn(Series<Length>) -> Length> = Formula {
    note: Note {
        id: "mean-deviation",
        title: "mean deviation at a target in one direction",
        equation: "x̄ = Σx_j/n",
        inputs: &[("x_j", "deviations")],
        validity: "at least one run",
        sources: &[ISO230],
    },
    apply: mean_deviation,
};

/// See [`MEAN_DEVIATION`].
pub fn mean_deviation(deviations: Series<Length>) -> Length {
    let values = deviations.si();
    Length::of_si(values.iter().sum::<f64>() / values.len() as f64)
}

/// Estimated standard deviation of a position at a target in one direction, m.
///
/// Pass the deviations of the runs; one run gives no number. Check: −2, −1, 0, 1, 2 µm → √2.5 µm.
pub static DEVIATION_SCATTER: Formula<fn(Series<Length>) -> Length> = Formula {
    note: Note {
        id: "deviation-scatter",
        title: "scatter of the runs at a target in one direction",
        equation: "s = √(Σ(x_j − x̄)²/(n − 1))",
        inputs: &[("x_j", "deviations")],
        validity: "at least two runs; few runs give it with a wide uncertainty",
        sources: &[ISO230],
    },
    apply: deviation_scatter,
};

/// See [`DEVIATION_SCATTER`].
pub fn deviation_scatter(deviations: Series<Length>) -> Length {
    let mean = mean_deviation(deviations.clone()).si();
    let values = deviations.si();
    let squares: f64 = values.iter().map(|value| (value - mean) * (value - mean)).sum();
    Length::of_si((squares / (values.len() as f64 - 1.0)).sqrt())
}

/// Mean bidirectional deviation at a target, m. Check: 5 and 2 µm → 3.5 µm.
pub static BIDIRECTIONAL_MEAN: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "bidirectional-mean",
        title: "mean bidirectional deviation at a target",
        equation: "x̄_i = (x̄_↑ + x̄_↓)/2",
        inputs: &[("x̄_↑", "mean-up"), ("x̄_↓", "mean-down")],
        validity: "everywhere",
        sources: &[ISO230],
    },
    apply: bidirectional_mean,
};

/// See [`BIDIRECTIONAL_MEAN`].
pub fn bidirectional_mean(mean_up: Length, mean_down: Length) -> Length {
    Length::of_si((mean_up.si() + mean_down.si()) / 2.0)
}

/// Reversal at a target with its sign, m. Check: 5 and 2 µm → 3 µm.
pub static REVERSAL_AT_TARGET: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "reversal-at-target",
        title: "reversal at a target",
        equation: "B_i = x̄_↑ − x̄_↓",
        inputs: &[("x̄_↑", "mean-up"), ("x̄_↓", "mean-down")],
        validity: "everywhere; the axis is stated by the largest amount",
        sources: &[ISO230],
    },
    apply: reversal_at_target,
};

/// See [`REVERSAL_AT_TARGET`].
pub fn reversal_at_target(mean_up: Length, mean_down: Length) -> Length {
    Length::of_si(mean_up.si() - mean_down.si())
}

/// Repeatability at a target in one direction, m. Check: 1.5 µm → 6 µm.
pub static UNIDIRECTIONAL_REPEATABILITY: Formula<fn(Length) -> Length> = Formula {
    note: Note {
        id: "unidirectional-repeatability",
        title: "repeatability at a target in one direction",
        equation: "R_↑ = 4·s_↑",
        inputs: &[("s_↑", "scatter")],
        validity: "everywhere; the axis is stated by the largest of its targets",
        sources: &[ISO230],
    },
    apply: unidirectional_repeatability,
};

/// See [`UNIDIRECTIONAL_REPEATABILITY`].
pub fn unidirectional_repeatability(scatter: Length) -> Length {
    Length::of_si(4.0 * scatter.si())
}

/// Repeatability at a target in both directions, m.
///
/// Pass scatter upward, scatter downward, and reversal. Check: 1, 2, −3 µm → 9 µm; 3, 1, 0 µm → 12 µm.
pub static REPEATABILITY_AT_TARGET: Formula<fn(Length, Length, Length) -> Length> = Formula {
    note: Note {
        id: "repeatability-at-target",
        title: "bidirectional repeatability at a target",
        equation: "R_i = max(2·s_↑ + 2·s_↓ + |B_i|, 4·s_↑, 4·s_↓)",
        inputs: &[("s_↑", "scatter-up"), ("s_↓", "scatter-down"), ("B_i", "reversal")],
        validity: "everywhere; the axis is stated by the largest of its targets",
        sources: &[ISO230],
    },
    apply: repeatability_at_target,
};

/// See [`REPEATABILITY_AT_TARGET`].
pub fn repeatability_at_target(scatter_up: Length, scatter_down: Length, reversal: Length) -> Length {
    // the sum holds all three, so that a value that is not known leaves the whole not known
    let both = 2.0 * scatter_up.si() + 2.0 * scatter_down.si() + reversal.si().abs();
    let up = unidirectional_repeatability(scatter_up).si();
    let down = unidirectional_repeatability(scatter_down).si();
    let most = if up > both { up } else { both };
    Length::of_si(if down > most { down } else { most })
}

/// Upper edge of the band of a direction at a target, m. Check: 5 and 1.5 µm → 8 µm.
pub static BAND_UPPER_EDGE: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "band-upper-edge",
        title: "upper edge of the band of one direction at a target",
        equation: "u_↑ = x̄_↑ + 2·s_↑",
        inputs: &[("x̄_↑", "mean"), ("s_↑", "scatter")],
        validity: "everywhere; A is the greatest upper less the least lower edge",
        sources: &[ISO230],
    },
    apply: band_upper_edge,
};

/// See [`BAND_UPPER_EDGE`].
pub fn band_upper_edge(mean: Length, scatter: Length) -> Length {
    Length::of_si(mean.si() + 2.0 * scatter.si())
}

/// Lower edge of the band of a direction at a target, m. Check: 5 and 1.5 µm → 2 µm.
pub static BAND_LOWER_EDGE: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "band-lower-edge",
        title: "lower edge of the band of one direction at a target",
        equation: "l_↑ = x̄_↑ − 2·s_↑",
        inputs: &[("x̄_↑", "mean"), ("s_↑", "scatter")],
        validity: "everywhere; A is the greatest upper less the least lower edge",
        sources: &[ISO230],
    },
    apply: band_lower_edge,
};

/// See [`BAND_LOWER_EDGE`].
pub fn band_lower_edge(mean: Length, scatter: Length) -> Length {
    Length::of_si(mean.si() - 2.0 * scatter.si())
}

/// Range of the deviations of an axis, m. Check: 5 and −8 µm → 13 µm.
///
/// Of the bidirectional means it is M, of the means of both directions E, of the edges of the bands A.
pub static DEVIATION_RANGE: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "deviation-range",
        title: "range of the deviations of an axis: M of the bidirectional means, E of the means, A of the band edges",
        equation: "w = g − l",
        inputs: &[("g", "greatest"), ("l", "least")],
        validity: "A up to 2 m of travel, or on a section of 2 m",
        sources: &[ISO230],
    },
    apply: deviation_range,
};

/// See [`DEVIATION_RANGE`].
pub fn deviation_range(greatest: Length, least: Length) -> Length {
    Length::of_si(greatest.si() - least.si())
}

/// What is held against a limit: the value and its uncertainty, m. Check: 50 and 2 µm → 52 µm.
pub static GUARDED_VALUE: Formula<fn(Length, Length) -> Length> = Formula {
    note: Note {
        id: "guarded-value",
        title: "measured value with its guard band",
        equation: "v_g = v + U",
        inputs: &[("v", "value"), ("U", "uncertainty")],
        validity: "upper limits, expanded uncertainty (coverage factor 2), unless another rule is agreed",
        sources: &[ISO14253],
    },
    apply: guarded_value,
};

/// See [`GUARDED_VALUE`].
pub fn guarded_value(value: Length, uncertainty: Length) -> Length {
    Length::of_si(value.si() + uncertainty.si())
}

/// Temperature difference that grows a measuring element as a slope of the deviation says, K.
///
/// Pass slope and expansion. Check: 23 µm/m, 11.5 µm/(m·K) → 2 K.
pub static TEMPERATURE_OF_SLOPE: Formula<fn(Ratio, Expansion) -> TemperatureInterval> = Formula {
    note: Note {
        id: "temperature-of-slope",
        title: "temperature difference that would explain a slope of the deviation",
        equation: "ΔT = e'/α",
        inputs: &[("e'", "slope"), ("α", "expansion")],
        validity: "the measuring element grows freely and evenly; a wrong lead looks the same",
        sources: &[Source::derived("definition of the coefficient of expansion")],
    },
    apply: temperature_of_slope,
};

/// See [`TEMPERATURE_OF_SLOPE`].
pub fn temperature_of_slope(slope: Ratio, expansion: Expansion) -> TemperatureInterval {
    TemperatureInterval::of_si(slope.si() / expansion.si())
}
