//! What drives cost: part by part, over the life, and where hours or discount rate differ.
//!
//! Method: lines of the record; sums over the axes are made here of figures that the record holds. Limits: those of the record.

use super::figure;
use super::view::View;
use super::words;
use crate::record::*;
use serde::Serialize;

/// One line of the cost of a drive.
#[derive(Serialize)]
pub struct CostRow {
    name: String,
    value: String,
    note: String,
}

/// The cost of a drive part by part.
pub fn rows(view: &View, drive: &CandidateRecord) -> Vec<CostRow> {
    let cost = &drive.cost;
    let line =
        |name: &str, amount: f64, note: String| CostRow { name: name.into(), value: view.money(Some(amount)), note };
    let share = |amount: f64| match cost.purchase > 0.0 {
        true => format!("{} %", figure::figure(amount / cost.purchase * 100.0, 2)),
        false => "–".into(),
    };
    let rows = cost.lines.iter().map(|part| {
        let note = match part.kind.as_str() {
            "yearly" => "each year".into(),
            "exchange" => "over the years of service, discounted".into(),
            // records of earlier versions have no kinds
            _ if part.item.contains("a year") => "each year".into(),
            _ => share(part.amount),
        };
        line(&part.item, part.amount, note)
    });
    let mut rows: Vec<CostRow> = rows.collect();
    rows.push(line("to buy and fit, together", cost.purchase, share(cost.purchase)));
    rows.push(line("over the years of service, discounted", cost.whole_life, share(cost.whole_life)));
    rows
}

/// Which lives the exchanges rest on; empty for a record without them.
pub fn basis(view: &View, drive: &CandidateRecord) -> String {
    if !drive.cost.lines.iter().any(|line| line.kind == "exchange") {
        return String::new();
    }
    let life = |part: &str, id: &str| view.value_of(drive, id).map(|life| format!("{part} {life}"));
    let bearings = if drive.family == "driven-nut" { "bearing of the nut" } else { "screw bearings" };
    let lives = [
        life("screw with nut", "screw-life-hours"),
        life(bearings, "bearing-life-hours"),
        life("belt", "belt-life"),
        life("gearbox", "gearbox-life"),
    ];
    let lives: Vec<String> = lives.into_iter().flatten().collect();
    let service = view.value_of(drive, "service-hours").unwrap_or_else(|| figure::NOT_KNOWN.into());
    let mut sentences = vec![format!(
        "A part is exchanged whenever its life has passed within the {service} of service: {}.",
        lives.join(", ")
    )];
    if drive.value("screw-life-hours").is_some() {
        let share = view.value_of(drive, "reliability").unwrap_or_else(|| "90 %".into());
        sentences.push(format!(
            "The life of screw and bearings is the one that {share} reach; the mean is four times as long and more."
        ));
    }
    if drive.value("gearbox-life").is_some() {
        sentences.push("That of the gearbox follows its bearings. Rack and pinion are sized for all the years.".into());
    }
    if drive.value("belt-life").is_some() {
        sentences.push("That of the belt is the catalogue's.".into());
    }
    sentences.push("What else there is, is taken to last; faults before the end of a life are not counted.".into());
    sentences.join(" ")
}

/// What drives cost where hours or discount rate differ.
#[derive(Serialize)]
pub struct Cases {
    heads: Vec<String>,
    rows: Vec<Vec<String>>,
}

/// The cases of an axis; none if the record holds none.
pub fn cases(view: &View, axis: &AxisRecord) -> Option<Cases> {
    let now = axis.cost_cases.first()?;
    let head = |(index, drive): (usize, &CostOfDrive)| {
        let family = words::family(&drive.family);
        if index == 0 { format!("{family}, chosen") } else { family }
    };
    let heads = now.drives.iter().enumerate().map(head).collect();
    let row = |case: &CostCase| {
        let least = case.drives.iter().filter(|drive| drive.fails.is_empty()).map(|drive| drive.whole_life);
        let least = least.fold(f64::INFINITY, |least, cost| if cost < least { cost } else { least });
        let name = match case.value {
            None => "as in the brief".to_string(),
            Some(value) => {
                format!("{} {}", words::spaced(&case.key), figure::quantity(Some(value), &case.unit, view.units, 4))
            }
        };
        let cell = |drive: &CostOfDrive| {
            let amount = view.money(Some(drive.whole_life));
            match drive.fails.first() {
                Some(rule) => format!("{amount}, fails “{}”", view.rule_title(rule)),
                None if drive.whole_life <= least => format!("{amount} ◂ least"),
                None => amount,
            }
        };
        std::iter::once(name).chain(case.drives.iter().map(cell)).collect()
    };
    Some(Cases { heads, rows: axis.cost_cases.iter().map(row).collect() })
}

/// What every axis and the machine cost to buy, a year, and over the life: head, then rows.
pub fn machine(view: &View) -> Vec<Vec<String>> {
    let chosen: Vec<(&str, &CostRecord)> =
        view.record.axes.iter().filter_map(|axis| Some((axis.name.as_str(), &axis.chosen.as_ref()?.cost))).collect();
    let yearly = |cost: &CostRecord, begin: &str| -> f64 {
        cost.lines
            .iter()
            .filter(|line| line.kind == "yearly" && line.item.starts_with(begin))
            .map(|line| line.amount)
            .sum()
    };
    let exchange = |cost: &CostRecord| -> f64 {
        cost.lines.iter().filter(|line| line.kind == "exchange").map(|line| line.amount).sum()
    };
    let figures = |cost: &CostRecord| {
        [
            cost.purchase,
            yearly(cost, "energy"),
            yearly(cost, "lubricant"),
            yearly(cost, "lubrication and inspection"),
            exchange(cost),
            cost.whole_life,
        ]
    };
    if chosen.is_empty() || !chosen.iter().any(|(_, cost)| cost.lines.iter().any(|line| line.kind == "yearly")) {
        return Vec::new();
    }
    let row = |name: &str, amounts: [f64; 6]| -> Vec<String> {
        std::iter::once(name.to_string()).chain(amounts.map(|amount| view.money(Some(amount)))).collect()
    };
    let mut rows: Vec<Vec<String>> = chosen.iter().map(|(name, cost)| row(name, figures(cost))).collect();
    let mut sums = [0.0; 6];
    for (_, cost) in &chosen {
        for (sum, amount) in sums.iter_mut().zip(figures(cost)) {
            *sum += amount;
        }
    }
    if chosen.len() > 1 {
        rows.push(row("together", sums));
    }
    rows
}
