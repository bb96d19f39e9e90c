//! What keeping a drive asks: running in, lubrication, inspection, what wears, when parts are exchanged, what is kept in store.
//!
//! Method: lines of the worksheet and entries of the catalogue that fit the parts of the drive, each with its source. Limits: the
//! instructions of the makers and the risk assessment take precedence.

use super::lines::{List, part};
use super::{CandidateRecord, InstallationLine};
use crate::brief::{Axis, Brief, CounterbalanceKind};
use crate::catalog::Catalog;
use crate::characteristic as ch;
use crate::ledger::{Characteristic, Ledger};
use crate::search::Worked;
use crate::units::*;

/// The lines for one drive that was chosen.
pub fn lines(
    brief: &Brief,
    axis: &Axis,
    catalog: &Catalog,
    worked: &Worked<'_>,
    chosen: &CandidateRecord,
) -> Vec<InstallationLine> {
    let mut list = List::new(worked);
    let has = Has { axis, worked, chosen };
    of_group("run-in", "running in", catalog, &has, &mut list);
    lubrication(catalog, &has, &mut list);
    of_group("inspection", "inspection", catalog, &has, &mut list);
    exchanges(brief, catalog, &has, &mut list);
    list.lines
}

/// What a drive has of what the entries of the catalogue are for.
struct Has<'h, 's> {
    axis: &'h Axis,
    worked: &'h Worked<'s>,
    chosen: &'h CandidateRecord,
}

impl Has<'_, '_> {
    fn above(&self, slot: usize, level: f64) -> bool {
        self.worked.sheet.value(slot) > level
    }

    fn kind(&self) -> Option<CounterbalanceKind> {
        self.axis.counterbalance.as_ref().map(|by| by.kind)
    }

    /// Whether the drive has what an entry is for.
    fn part(&self, of: &str) -> bool {
        let rack = part(self.chosen, "rack").is_some();
        let nut_unit = part(self.chosen, "nut-unit").is_some();
        match of {
            "any" | "motor" => true,
            "screw" => !rack,
            "screw-bearing" => !rack && !nut_unit,
            "nut-unit" | "turning-nut" => nut_unit,
            "rack" | "pinion" => rack,
            "gearbox" => part(self.chosen, "gearbox").is_some(),
            "belt" => self.above(ch::BELTS.slot, 0.0),
            "coupling" => self.above(ch::COUPLINGS.slot, 0.0),
            "two-pinions" => self.above(ch::PINIONS.slot, 1.5),
            "two-drives" => self.axis.drives.value > 1,
            "brake" => self.above(ch::BRAKE_TORQUE.slot, 0.0),
            "gas-counterbalance" => self.kind() == Some(CounterbalanceKind::Gas),
            "weight-counterbalance" => self.kind() == Some(CounterbalanceKind::Weight),
            "scale" => part(self.chosen, "linear-scale").is_some(),
            _ => false,
        }
    }
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

fn lubrication(catalog: &Catalog, has: &Has<'_, '_>, list: &mut List<'_, '_>) {
    let group = "lubrication";
    list.sheet(group, "interval over that in clean air", ch::SURROUNDINGS_SHARE);
    list.sheet(
        group,
        "working time between two lubrications of a nut, and once a year at least",
        ch::LUBRICATION_INTERVAL,
    );
    list.sheet(group, "grease of one lubrication of a nut", ch::GREASE_DOSE);
    list.sheet(group, "grease of one drive in a year", ch::GREASE_NEED);
    let of = if has.part("rack") { "rack" } else { "screw" };
    if let Some(found) = catalog.lubrications.iter().find(|lubrication| lubrication.of == of) {
        list.words(group, "lubricant", &found.lubricant, &found.designation);
    }
}

/// Part of the catalogue, and where its life stands; none where it is sized for the service or taken to last.
const LIVES: [(&str, &str, Option<Characteristic<Time>>); 10] = [
    ("screw", "screw with nut", Some(ch::SCREW_LIFE_HOURS)),
    ("screw-bearing", "screw bearings", Some(ch::BEARING_LIFE_HOURS)),
    ("nut-unit", "bearing of the turning nut", Some(ch::BEARING_LIFE_HOURS)),
    ("rack", "rack", None),
    ("pinion", "pinion", None),
    ("belt", "belt", Some(ch::BELT_LIFE)),
    ("coupling", "coupling", None),
    ("gearbox", "gearbox", Some(ch::GEARBOX_LIFE)),
    ("motor", "motor and brake", None),
    ("scale", "scale", None),
];

/// What wears, when it is exchanged, and what is kept in store.
fn exchanges(brief: &Brief, catalog: &Catalog, has: &Has<'_, '_>, list: &mut List<'_, '_>) {
    let entries = || {
        LIVES.iter().filter(|(of, ..)| has.part(of)).filter_map(|(of, name, life)| {
            Some((catalog.exchanges.iter().find(|entry| entry.of == *of)?, *name, *life))
        })
    };
    for (entry, name, _) in entries() {
        list.words("wear", name, &entry.notice, &entry.designation);
    }
    for (entry, name, life) in entries() {
        let life = life.map(|life| has.worked.sheet.value(life.slot) / HOUR).filter(|life| life.is_finite());
        let words = when(brief, has, entry.of == "rack" || entry.of == "pinion", life);
        let source = format!("catalogue: {}, and the life worked out or stated", entry.designation);
        list.add("exchange", name, life, if life.is_some() { "h" } else { "" }, &words, source);
        let work = format!("work of exchanging the {name}");
        let standstill = format!("the machine stands for {} h", significant(entry.standstill.si() / HOUR, 3));
        let source = format!("catalogue: {}", entry.designation);
        list.add("exchange", &work, Some(entry.work.si() / HOUR), "h", &standstill, source);
    }
    list.sheet("exchange", "stops from full speed without power that the brake bears", ch::BRAKE_STOPS);
    for (entry, name, _) in entries() {
        list.words("spares", name, &entry.spare, &entry.designation);
    }
}

/// When a part of this life is exchanged, in words.
fn when(brief: &Brief, has: &Has<'_, '_>, teeth: bool, life: Option<f64>) -> String {
    let service = has.worked.sheet.value(ch::SERVICE_HOURS.slot) / HOUR;
    let (hours, reliability) = (brief.hours_per_year.value, brief.reliability.value.si() * 100.0);
    match life {
        None if teeth => format!("sized for all {} h of service; exchange by what is seen", significant(service, 6)),
        None => "no life stated; exchange by what is seen".into(),
        Some(life) => {
            let years = life / hours;
            let lives = service / life;
            let count = (lives * (1.0 - 1e-9)).floor();
            let shown = significant(years, 3);
            if count < 1.0 {
                format!("{shown} years of work; lasts the years of service, {} % reach it", significant(reliability, 3))
            } else {
                let times = if count < 1.5 { "once".into() } else { format!("{} times", significant(count, 3)) };
                format!("exchange every {shown} years of work, {times} within the years of service")
            }
        }
    }
}
