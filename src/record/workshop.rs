//! The lists for the workshop as the catalogue words them: what fitting a drive asks, and what keeping it asks.
//!
//! Method: every line of the catalogue whose condition the drive meets, with the value of a worksheet line or of a part.
//! Limits: a line without a value is left out; the drawing and the makers' instructions take precedence.

use super::has::Has;
use super::lines::List;
use super::{CandidateRecord, InstallationLine};
use crate::brief::{Axis, Brief};
use crate::catalog::{Catalog, KINDS, Kind, WorkshopLine, says_absent};
use crate::characteristic as ch;
use crate::formula::mounting::{RESTRAINED_FORCE, THREAD_DEPTH};
use crate::ledger::Figures;
use crate::search::Worked;
use crate::units::*;
use crate::yaml::nearest;
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// What the lists are made from.
pub struct Sources<'h, 's> {
    /// The brief.
    pub brief: &'h Brief,
    /// The axis.
    pub axis: &'h Axis,
    /// The catalogue.
    pub catalog: &'h Catalog,
    /// The drive worked out.
    pub worked: &'h Worked<'s>,
    /// The drive as it stands in the record.
    pub chosen: &'h CandidateRecord,
}

impl<'h, 's> Sources<'h, 's> {
    /// What the drive has.
    pub fn has(&self) -> Has<'h, 's> {
        Has { axis: self.axis, worked: self.worked, chosen: self.chosen }
    }

    /// The designations of a kind that belong to this drive and brief, each with the word it stands for.
    fn designations(&self, kind: &str) -> Vec<(String, String)> {
        let bed = self.axis.bed.value.word();
        match kind {
            "bed-material" => vec![(format!("bed-{bed}"), bed.replace('-', " "))],
            "lubrication" => {
                let of = if self.has().part("rack") { "rack" } else { "screw" };
                let found = self.catalog.lubrications.iter().find(|entry| entry.of == of);
                found.map(|entry| (entry.designation.clone(), String::new())).into_iter().collect()
            }
            "surroundings" => {
                let named = self.catalog.surroundings.iter();
                let named = named.filter_map(|entry| Some((entry, entry.named_by(&self.brief.environment)?)));
                named.map(|(entry, written)| (entry.designation.clone(), written.clone())).collect()
            }
            role => {
                let parts = self.chosen.components.iter().filter(|part| part.role == role);
                parts.map(|part| (part.designation.clone(), String::new())).collect()
            }
        }
    }

    /// The words of the brief's environment that the catalogue does not know.
    fn unknown_surroundings(&self) -> impl Iterator<Item = &String> {
        unknown_surroundings(&self.brief.environment, self.catalog)
    }
}

/// The texts of a brief's environment that name nothing that the catalogue knows, nor say that something is not there.
pub fn unknown_surroundings<'b>(environment: &'b [String], catalog: &Catalog) -> impl Iterator<Item = &'b String> {
    environment.iter().filter(|written| {
        let alone = std::slice::from_ref(*written);
        !says_absent(written) && !catalog.surroundings.iter().any(|entry| entry.named_by(alone).is_some())
    })
}

/// The value of a key of a catalogue entry, as the catalogue prints it.
fn entry_value(catalog: &Catalog, kind: &str, designation: &str, key: &str) -> Option<String> {
    let kind = KINDS.iter().find(|known| known.name == kind)?;
    let place = kind.fields.iter().position(|field| field.name.replace('_', "-") == key)?;
    (kind.find_row)(catalog, designation)?.values.into_iter().nth(place)?
}

/// A value with its unit, where the text is one; the text otherwise.
fn measured(text: &str) -> Result<(f64, &str), &str> {
    let (number, unit) = text.split_once(' ').unwrap_or((text, "1"));
    number.parse().map(|value| (value, unit)).map_err(|_| text)
}

/// Adds the lines of one list in their order.
pub fn add(name: &str, from: &Sources<'_, '_>, list: &mut List<'_, '_>) {
    let mut entries: Vec<&WorkshopLine> = from.catalog.workshop_lines.iter().filter(|line| line.list == name).collect();
    entries.sort_by(|one, other| one.place.cmp(&other.place).then_with(|| one.designation.cmp(&other.designation)));
    for entry in entries {
        match entry.of.as_str() {
            "unknown-surroundings" => {
                for written in from.unknown_surroundings() {
                    plain(entry, written, "brief", list);
                }
            }
            "no-surroundings" if from.brief.environment.is_empty() => plain(entry, "", "", list),
            "no-surroundings" => {}
            of if of == "named-surroundings" || from.has().part(of) => line(entry, from, list),
            _ => {}
        }
    }
}

/// A line of words alone.
fn plain(entry: &WorkshopLine, word: &str, source: &str, list: &mut List<'_, '_>) {
    let source = if source.is_empty() { format!("catalogue: {}", entry.designation) } else { source.into() };
    let how = entry.how.as_deref().unwrap_or_default();
    list.add(&entry.group, &entry.item.replace("{word}", word), None, "", how, source);
}

/// A line with the value of the worksheet, of a part, or of both.
fn line(entry: &WorkshopLine, from: &Sources<'_, '_>, list: &mut List<'_, '_>) {
    let how = entry.how.as_deref().unwrap_or_default();
    let item = |word: &str| entry.item.replace("{word}", word);
    match (entry.figure.as_deref(), entry.part.as_deref()) {
        (Some(figure), _) if OWN_FIGURES.contains(&figure) => bed(figure, entry, from, list),
        (Some(figure), _) => list.figure(&entry.group, &item(""), figure, how),
        (None, Some(part)) => {
            let Some((kind, key)) = part.split_once('.') else { return };
            for (designation, word) in from.designations(kind) {
                let Some(text) = entry_value(from.catalog, kind, &designation, key) else { continue };
                let source = format!("catalogue: {designation}");
                match measured(&text) {
                    Ok((value, unit)) => list.add(&entry.group, &item(&word), Some(value), unit, how, source),
                    Err(text) => list.add(&entry.group, &item(&word), None, "", text, source),
                }
            }
        }
        (None, None) => plain(entry, "", "", list),
    }
}

/// Figures that are worked out for the list alone.
const OWN_FIGURES: [&str; 2] = ["thread-depth", "restrained-force"];

/// What a line of the catalogue names that nothing here knows, with the nearest name.
pub fn unknown(entry: &WorkshopLine) -> Option<(String, Option<String>)> {
    if let Some(figure) = entry.figure.as_deref().filter(|figure| !OWN_FIGURES.contains(figure))
        && !FIGURES.contains(figure)
    {
        return Some((figure.into(), nearest(figure, FIGURES.iter().copied()).map(String::from)));
    }
    let part = entry.part.as_deref()?;
    if KEYS.contains(part) {
        return None;
    }
    Some((part.into(), nearest(part, KEYS.iter().map(String::as_str)).map(String::from)))
}

/// The id of every characteristic that a line may name.
static FIGURES: LazyLock<BTreeSet<&'static str>> =
    LazyLock::new(|| crate::characteristic::all().filter(|about| !about.phased).map(|about| about.id).collect());

/// Every key of every kind, as `kind.key`; each brief that is read is checked against them and [`FIGURES`].
static KEYS: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
    let keys =
        |kind: &'static Kind| kind.fields.iter().map(|field| format!("{}.{}", kind.name, field.name.replace('_', "-")));
    KINDS.iter().flat_map(keys).collect()
});

/// What rack and bed of the axis make of each other.
fn bed(figure: &str, entry: &WorkshopLine, from: &Sources<'_, '_>, list: &mut List<'_, '_>) {
    let racks = from.designations("rack");
    let rack = from.catalog.racks.iter().find(|rack| racks.iter().any(|(name, _)| rack.designation == *name));
    let beds = from.designations("bed-material");
    for bed in &from.catalog.bed_materials {
        let (Some(rack), Some((_, word))) = (rack, beds.iter().find(|(name, _)| bed.designation == *name)) else {
            continue;
        };
        let item = entry.item.replace("{word}", word);
        let source = format!("catalogue: {}", bed.designation);
        if figure == "thread-depth" {
            let depth = (THREAD_DEPTH.apply)(rack.fastener_diameter, bed.thread_depth_factor).si() * 1e3;
            list.add(&entry.group, &item, Some(depth), "mm", &bed.threads, source);
        } else {
            let sheet = &from.worked.sheet;
            let steel = Expansion::of_si(crate::drive::defaults::STEEL_EXPANSION);
            let (area, swing) = (sheet.read(ch::SECTION_AREA), sheet.read(ch::TEMPERATURE_SWING));
            let force = (RESTRAINED_FORCE.apply)(area, steel, bed.expansion, swing).si() / 1e3;
            let source = format!("worked out: restrained-force, {}", bed.designation);
            list.add(&entry.group, &item, Some(force), "kN", "", source);
        }
    }
}

/// What fitting the drive asks.
pub fn installation(from: &Sources<'_, '_>) -> Vec<InstallationLine> {
    let mut list = List::new(from.worked);
    add("installation", from, &mut list);
    list.lines
}
