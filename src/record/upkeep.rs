//! What keeping a drive asks: running in, lubrication, inspection, what wears, when parts are exchanged, what is kept in store.
//!
//! Method: lines of the worksheet and entries of the catalogue that fit the parts of the drive, each with its source. Limits: the
//! instructions of the makers and the risk assessment take precedence.

use super::InstallationLine;
use super::has::Has;
use super::lines::List;
use super::workshop::{self, Sources};
use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::characteristic as ch;
use crate::ledger::{Characteristic, Figures};
use crate::units::*;

/// The lines for one drive that was chosen.
pub fn lines(from: &Sources<'_, '_>) -> Vec<InstallationLine> {
    let mut list = List::new(from.worked);
    let (has, catalog) = (from.has(), from.catalog);
    of_group("run-in", "running in", catalog, &has, &mut list);
    workshop::add("upkeep", from, &mut list);
    of_group("inspection", "inspection", catalog, &has, &mut list);
    exchanges(from.brief, catalog, &has, &mut list);
    list.lines
}

/// The entries of the catalogue of one group that fit.
fn of_group(of: &str, group: &str, catalog: &Catalog, has: &Has<'_, '_>, list: &mut List<'_, '_>) {
    // what is looked at most often comes first; what comes at no hour stays as the catalogue has it
    let mut entries: Vec<_> = catalog.upkeeps.iter().filter(|entry| entry.group == of && has.part(&entry.of)).collect();
    let hours = |interval: Option<Time>| interval.map_or(0.0, |interval| interval.si());
    entries.sort_by(|one, other| hours(one.interval).total_cmp(&hours(other.interval)));
    for entry in entries {
        let value = entry.interval.map(|interval| interval.si() / HOUR);
        let source = format!("catalogue: {}", entry.designation);
        list.add(group, &entry.item, value, if value.is_some() { "h" } else { "" }, &entry.how, source);
    }
}

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

/// Part of the catalogue, in the order of the list, and where its life stands; none where it is sized for the service or taken
/// to last.
const LIVES: [(&str, Option<Characteristic<Time>>); 10] = [
    ("screw", Some(ch::SCREW_LIFE_HOURS)),
    ("screw-bearing", Some(ch::BEARING_LIFE_HOURS)),
    ("nut-unit", Some(ch::BEARING_LIFE_HOURS)),
    ("rack", None),
    ("pinion", None),
    ("belt", Some(ch::BELT_LIFE)),
    ("coupling", None),
    ("gearbox", Some(ch::GEARBOX_LIFE)),
    ("motor", None),
    ("scale", None),
];

/// The words of the catalogue for a case, with what is worked out put in.
fn phrase(catalog: &Catalog, of: &str, put_in: &[(&str, String)]) -> String {
    let words = catalog.exchange_phrases.iter().find(|phrase| phrase.of == of).map(|phrase| phrase.phrase.clone());
    put_in.iter().fold(words.unwrap_or_default(), |words, (name, value)| words.replace(name, value))
}

/// What wears, when it is exchanged, and what is kept in store.
fn exchanges(brief: &Brief, catalog: &Catalog, has: &Has<'_, '_>, list: &mut List<'_, '_>) {
    let entries = || {
        LIVES
            .iter()
            .filter(|(of, _)| has.part(of))
            .filter_map(|(of, life)| Some((catalog.exchanges.iter().find(|entry| entry.of == *of)?, *life)))
    };
    for (entry, _) in entries() {
        list.words("wear", &entry.name, &entry.notice, &entry.designation);
    }
    for (entry, life) in entries() {
        let life = life.map(|life| has.worked.sheet.value(life.slot) / HOUR).filter(|life| life.is_finite());
        let words = when(brief, catalog, has, &entry.of, life);
        let source = format!("catalogue: {}", entry.designation);
        list.add("exchange", &entry.name, life, if life.is_some() { "h" } else { "" }, &words, source.clone());
        let standstill = phrase(catalog, "work", &[("{hours}", significant(entry.standstill.si() / HOUR, 3))]);
        list.add("exchange", &entry.name, Some(entry.work.si() / HOUR), "h", &standstill, source);
    }
    for (entry, _) in entries() {
        list.words("spares", &entry.name, &entry.spare, &entry.designation);
    }
}

/// The parts whose life is worked out for a reliability.
const RATED: [&str; 3] = ["screw", "screw-bearing", "nut-unit"];

/// When a part of this life is exchanged, in the words of the catalogue.
fn when(brief: &Brief, catalog: &Catalog, has: &Has<'_, '_>, part: &str, life: Option<f64>) -> String {
    let service = has.worked.sheet.value(ch::SERVICE_HOURS.slot) / HOUR;
    let (hours, reliability) = (brief.hours_per_year.value, brief.reliability.value.si() * 100.0);
    let Some(life) = life else {
        let of = if part == "rack" || part == "pinion" { "sized" } else { "unknown" };
        return phrase(catalog, of, &[("{hours}", significant(service, 6))]);
    };
    let count = (service / life * (1.0 - 1e-9)).floor();
    let put_in = [
        ("{years}", significant(life / hours, 3)),
        ("{share}", significant(reliability, 3)),
        ("{times}", significant(count, 3)),
    ];
    let of = match count {
        none if none < 1.0 && RATED.contains(&part) => "lasts-rated",
        none if none < 1.0 => "lasts",
        one if one < 1.5 => "exchanged-once",
        _ => "exchanged",
    };
    phrase(catalog, of, &put_in)
}
