//! The term that is likeliest behind a misfit, and the cause that feeds it most.
//!
//! Method: A is M + B + 4s where reversal and scatter are the same everywhere; the term that exceeds its prediction by
//! most takes the blame. Without a prediction, or where no term exceeds it, the largest term does. Limits: a misfit is a
//! requirement that is not met, or a term more than 15 % above its prediction (the reserve that extremes of a finite
//! test need, by simulation).

use super::diagnose::share_words;
use super::result::{CheckRecord, DiagnosisRecord, Likeliest, PredictionRecord};
use super::words::Words;

/// How far a measured term may lie above its prediction.
const RESERVE: f64 = 0.15;

struct Share {
    term: &'static str,
    words: &'static str,
    /// How often it stands in A.
    times: f64,
    causes: &'static [&'static str],
}

const SHARES: [Share; 3] = [
    Share {
        term: "position-error",
        words: "the range of the mean deviation M",
        times: 1.0,
        causes: &[
            "slope",
            "bow",
            "period-screw-turn",
            "period-pinion-turn",
            "period-tooth",
            "period-rack-segment",
            "period-other",
            "jumps",
            "form-rest",
        ],
    },
    Share {
        term: "reversal-error",
        words: "the reversal B",
        times: 1.0,
        causes: &["reversal-step", "reversal-growth", "reversal-rest"],
    },
    Share { term: "scatter", words: "four times the scatter s", times: 4.0, causes: &["drift", "scatter"] },
];

/// Names the term; `measured`: M, B and s in µm, as the terms of the prediction are.
pub(super) fn likeliest(
    measured: [f64; 3],
    prediction: &PredictionRecord,
    checks: &[CheckRecord],
    diagnosis: &DiagnosisRecord,
    words: Words,
) -> Option<Likeliest> {
    let fails = checks.iter().any(|check| check.verdict == "fail");
    let predicted = |share: &Share| {
        let term = prediction.terms.iter().find(|term| term.id == share.term);
        term.and_then(|term| term.predicted).unwrap_or(f64::NAN)
    };
    let all: Vec<(&Share, f64, f64)> =
        SHARES.iter().zip(measured).map(|(share, value)| (share, value, predicted(share))).collect();
    let exceeds = all.iter().any(|(_, value, predicted)| *value > predicted * (1.0 + RESERVE));
    if !fails && !exceeds {
        return None;
    }
    let known = all.iter().filter(|(_, value, _)| value.is_finite());
    let excess = |(share, value, predicted): &(&Share, f64, f64)| share.times * (value - predicted);
    let size = |(share, value, _): &(&Share, f64, f64)| share.times * value;
    let over = known.clone().filter(|each| excess(each) > 0.0).max_by(|a, b| excess(a).total_cmp(&excess(b)));
    let (chosen, by_excess) = match over {
        Some(over) => (over, true),
        None => (known.max_by(|a, b| size(a).total_cmp(&size(b)))?, false),
    };
    let (share, value, predicted) = chosen;
    let cause =
        diagnosis.causes.iter().find(|cause| cause.state == "found" && share.causes.contains(&cause.id.as_str()));
    let shown = |micrometres: f64| words.deviation(micrometres * 1e-6);
    let against = if by_excess {
        format!("{} against {} predicted", shown(share.times * value), shown(share.times * predicted))
    } else {
        format!("the largest part of A, {}", shown(share.times * value))
    };
    let by = cause.map_or_else(String::new, |cause| {
        let share = cause.share.map(share_words).unwrap_or_default();
        format!(" What feeds it most: {}, {share}.", cause.title)
    });
    let head = if fails { "Likeliest behind the misfit" } else { "No limit is missed; furthest from the prediction" };
    Some(Likeliest {
        term: share.term.into(),
        cause: cause.map(|cause| cause.id.clone()),
        text: format!("{head} is {}: {against}.{by}", share.words),
    })
}
