//! An answer in plain sentences.

use super::{Answer, Figure, Miss, Side, Stand};
use crate::units::significant;

/// How many rules of a list are told.
const TOLD: usize = 8;

/// The answer as text.
pub fn words(answer: &Answer) -> String {
    let mut out = String::new();
    let mut line = |text: String| {
        out.push_str(&text);
        out.push('\n');
    };
    line(first(answer));
    for remark in &answer.remarks {
        line(format!("Note: {remark}."));
    }
    if !answer.ruled_out_by.is_empty() {
        line("\nRules that none keeps, with the best that any reaches:".into());
        for miss in answer.ruled_out_by.iter().take(TOLD) {
            line(format!("- {}", missed(miss)));
        }
        rest(&mut line, answer.ruled_out_by.len());
    }
    if let Some(nearest) = &answer.nearest {
        line(format!("\nThe nearest miss: {}. It fails:", drive(nearest)));
        for miss in nearest.fails.iter().take(TOLD) {
            line(format!("- {}", missed(miss)));
        }
        rest(&mut line, nearest.fails.len());
    }
    if let (Some(best), Some(chosen)) = (&answer.best, &answer.chosen)
        && answer.standing != Stand::Chosen
    {
        line(format!("\nIts best drive: {}.", drive(best)));
        line(format!("The drive chosen: {}.", drive(chosen)));
        line(format!("\n{:<28} {:>14} {:>14}", "", "its best", "chosen"));
        let currency = &answer.currency;
        line(row(&format!("price to buy, {currency}"), best.purchase, chosen.purchase));
        line(row(&format!("price over its life, {currency}"), best.whole_life, chosen.whole_life));
        line(row("merit, less is better", best.merit, chosen.merit));
        for figure in &best.figures {
            let other = chosen.figures.iter().find(|other| other.id == figure.id).and_then(|other| other.value);
            line(row(&name(figure), figure.value, other));
        }
        line(format!("\nMerit: {}.", answer.objective.replace("currency", currency)));
    }
    if answer.standing != Stand::Chosen && !answer.excluded_by.is_empty() {
        line("\nConfigurations by the first rule that excluded them:".into());
        for excluded in answer.excluded_by.iter().take(TOLD) {
            line(format!("- {}: {}", excluded.configurations, rule(&excluded.title, &excluded.rule)));
        }
        rest(&mut line, answer.excluded_by.len());
    }
    out
}

fn rest(line: &mut impl FnMut(String), count: usize) {
    if count > TOLD {
        line(format!("- … and {} more; `--json` lists them all.", count - TOLD));
    }
}

fn first(answer: &Answer) -> String {
    let (asked, axis) = (&answer.asked, &answer.axis);
    let of = match (answer.admissible, answer.configurations) {
        (Some(admissible), Some(all)) => format!("{admissible} of {all} configurations are admissible"),
        _ => String::new(),
    };
    match answer.standing {
        Stand::Chosen => format!("Axis {axis}: {asked} is in the drive that was chosen."),
        Stand::NotConsidered => format!("Axis {axis}: {asked} was not considered."),
        Stand::NotAdmissible => {
            let all = answer.configurations.unwrap_or(0);
            format!("Axis {axis}: no drive with {asked} is admissible, of {all} configurations.")
        }
        Stand::NextBest => format!("Axis {axis}: {asked} is in a next-best drive; {of}{}.", place(answer)),
        Stand::Beaten => {
            let by = match (&answer.best, &answer.chosen) {
                (Some(best), Some(chosen)) => compared(best, chosen, &answer.currency),
                _ => "no drive was chosen on the axis".into(),
            };
            format!("Axis {axis}: {asked} was possible and another is better: {of}{}; {by}.", place(answer))
        }
    }
}

fn place(answer: &Answer) -> String {
    answer.rank.filter(|(_, all)| *all > 1).map_or_else(String::new, |(place, all)| {
        format!(", and by its best drive it takes place {place} among the {all} parts of its kind")
    })
}

fn compared(best: &Side, chosen: &Side, currency: &str) -> String {
    let change = |one: Option<f64>, other: Option<f64>, what: &str| match (one, other) {
        (Some(one), Some(other)) if one >= other => {
            format!("{} {currency} more {what}", significant(one - other, 4))
        }
        (Some(one), Some(other)) => format!("{} {currency} less {what}", significant(other - one, 4)),
        _ => format!("an unknown price {what}"),
    };
    format!(
        "its best drive costs {} and {} than the one chosen",
        change(best.purchase, chosen.purchase, "to buy"),
        change(best.whole_life, chosen.whole_life, "over its life")
    )
}

fn drive(side: &Side) -> String {
    format!("{} ({})", side.family, side.components.join(", "))
}

fn name(figure: &Figure) -> String {
    match figure.unit.as_str() {
        "" | "1" => figure.id.replace('-', " "),
        unit => format!("{}, {unit}", figure.id.replace('-', " ")),
    }
}

fn number(value: Option<f64>) -> String {
    value.map_or_else(|| "not known".into(), |value| significant(value, 5))
}

fn row(name: &str, one: Option<f64>, other: Option<f64>) -> String {
    format!("{name:<28} {:>14} {:>14}", number(one), number(other))
}

/// "The screw stays below its whip speed (screw-whip): `screw-speed` reaches 1250 1/min, at most 106 1/min is allowed; 1180 % of
/// the limit".
fn missed(miss: &Miss) -> String {
    let quantity = |value: Option<f64>| match miss.finding.unit.as_str() {
        "" | "1" => number(value),
        unit => format!("{} {unit}", number(value)),
    };
    let (wanted, is) = if miss.finding.sense == "at-least" { ("at least", "needed") } else { ("at most", "allowed") };
    let times = match miss.finding.utilisation {
        Some(utilisation) => format!("; {} of the limit", percent(utilisation)),
        None => "; it cannot be worked out".into(),
    };
    format!(
        "{}: `{}` reaches {}, {wanted} {} is {is}{times}",
        rule(&miss.title, &miss.finding.rule),
        miss.finding.characteristic,
        quantity(miss.finding.demand),
        quantity(miss.finding.limit)
    )
}

/// What a rule asks, with its id; the id alone where the record does not tell the rule.
fn rule(title: &str, id: &str) -> String {
    if title == id { format!("rule {id}") } else { format!("{} ({id})", title.trim_end_matches('.')) }
}

fn percent(utilisation: f64) -> String {
    format!("{} %", significant(utilisation * 100.0, 3))
}
