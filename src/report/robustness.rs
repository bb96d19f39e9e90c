//! How often drives stay admissible when what the brief states is off: a sentence an axis, and a table for the reviewer.

use super::figure;
use super::view::View;
use super::words;
use crate::record::*;
use serde::Serialize;

/// The section for the reviewer.
#[derive(Serialize)]
pub struct Robustness {
    how: String,
    lines: Vec<Line>,
}

#[derive(Serialize)]
struct Line {
    axis: String,
    drive: String,
    probability: String,
    fails: String,
    utilisation: String,
}

/// The uncertain quantities with their standard deviations: "moved mass 5 %, cutting force 15 %".
fn spreads(robustness: &RobustnessRecord) -> String {
    let named = |uncertainty: &UncertaintyRecord| {
        format!("{} {} %", words::spaced(&uncertainty.quantity), figure::figure(uncertainty.deviation, 3))
    };
    let above = robustness.uncertainties.iter().filter(|uncertainty| uncertainty.deviation > 0.0);
    words::list(&above.map(named).collect::<Vec<_>>())
}

/// A share of cases: whole percents, more digits near all and none, and never all where it is not all.
fn share(value: f64) -> String {
    let percent = value * 100.0;
    let text = match percent {
        percent if percent > 99.0 && percent < 100.0 => format!("{:.1}", (percent * 10.0).floor() / 10.0),
        percent if percent > 0.0 && percent < 1.0 => format!("{:.1}", (percent * 10.0).ceil() / 10.0),
        percent => format!("{percent:.0}"),
    };
    format!("{text} %")
}

fn odds(drive: &OddsRecord) -> String {
    format!("{} ({} to {})", share(drive.probability), share(drive.low), share(drive.high))
}

/// A drive that stays admissible less often than this is told beside one that does so more often.
const SURE: f64 = 0.95;

/// What is off, in a sentence, and one sentence an axis on the drive that was chosen; none where nothing is uncertain.
#[derive(Serialize)]
pub struct Sentences {
    what: String,
    axes: Vec<String>,
}

/// The sentences for the customer.
pub fn sentences(view: &View) -> Option<Sentences> {
    let tried = || view.record.axes.iter().filter_map(|axis| Some((axis, axis.robustness.as_ref()?)));
    let (_, first) = tried().next()?;
    let spreads = spreads(first);
    if spreads.is_empty() {
        return None;
    }
    let what = format!(
        "Masses, forces and the like are never quite as stated. These standard deviations are taken, all at once ({}): {spreads}.",
        origin(first)
    );
    let sentence = |(axis, robustness): (&AxisRecord, &RobustnessRecord)| {
        let drive = robustness.drives.iter().find(|drive| drive.chosen)?;
        let fails = match &drive.fails_first {
            Some(rule) => format!("; what fails first is mostly “{}”", view.rule_title(rule)),
            None => String::new(),
        };
        let surer = robustness.drives.iter().find(|rival| !rival.chosen && drive.low < SURE && rival.low >= SURE);
        let surer = surer.map_or_else(String::new, |rival| {
            format!(
                " Of the next-best drives this one is surer, {}: {}, {}.",
                share(rival.probability),
                words::family(&rival.family),
                view.sizes_of(&rival.family, &rival.parameters)
            )
        });
        Some(format!("Axis {}: the drive stays admissible in {} of cases{fails}.{surer}", axis.name, odds(drive)))
    };
    Some(Sentences { what, axes: tried().filter_map(sentence).collect() })
}

fn origin(robustness: &RobustnessRecord) -> &'static str {
    match robustness.uncertainties.iter().filter(|uncertainty| uncertainty.stated).count() {
        0 => "assumed, since the brief states none",
        count if count == robustness.uncertainties.len() => "as the brief states them",
        _ => "partly stated by the brief, partly assumed",
    }
}

/// The table of all drives that were tried; none where no axis has a drive.
pub fn collect(view: &View) -> Option<Robustness> {
    let tried = || view.record.axes.iter().filter_map(|axis| Some((axis, axis.robustness.as_ref()?)));
    let (_, first) = tried().next()?;
    let how = format!(
        "{} samples (seed {}), the same for all drives of all axes. Standard deviations, {}: {}. Factors are lognormal about \
         the value of the brief and cut at three standard deviations. In brackets the interval that holds the probability with \
         95 % (Wilson). The utilisation is the worst of the rules that these values move: below it are 5 %, 50 % and 95 % of the samples.",
        figure::count(first.samples),
        first.seed,
        origin(first),
        spreads(first)
    );
    let line = |axis: &AxisRecord, drive: &OddsRecord| Line {
        axis: axis.name.clone(),
        drive: {
            let sizes = view.sizes_of(&drive.family, &drive.parameters);
            let chosen = if drive.chosen { " (chosen)" } else { "" };
            format!("{}{chosen}: {sizes}", words::family(&drive.family))
        },
        probability: odds(drive),
        fails: drive.fails_first.as_ref().map_or_else(|| "–".into(), |rule| view.rule_title(rule)),
        utilisation: drive.utilisation.as_ref().map_or_else(
            || "no rule moves".into(),
            |worst| {
                let told = |value: f64| figure::utilisation(Some(value));
                format!("{} / {} / {}", told(worst.low), told(worst.median), told(worst.high))
            },
        ),
    };
    let lines = tried().flat_map(|(axis, robustness)| robustness.drives.iter().map(move |drive| line(axis, drive)));
    Some(Robustness { how, lines: lines.collect() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_never_reads_all_or_none_where_it_is_not() {
        for (value, text) in [
            (1.0, "100 %"),
            (0.9999, "99.9 %"),
            (0.996, "99.6 %"),
            (0.98, "98 %"),
            (0.5, "50 %"),
            (0.0001, "0.1 %"),
            (0.0, "0 %"),
        ] {
            assert_eq!(share(value), text, "{value}");
        }
    }
}
