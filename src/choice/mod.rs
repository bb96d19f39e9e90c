//! A choice of drives that someone proposes: for axes of a brief the family and the parts, by designation or given in place.
//!
//! Method: what is named restricts what an axis may have; what is left open is chosen. Components given in place stand in the
//! file as a file of the catalogue would hold them. Every name is checked against brief and catalogue, all faults at once.
//! Limits: one part of a kind for each axis.

use crate::brief::{Brief, FAMILIES, Feedback, Mapping};
use crate::catalog::{self, Catalog, KINDS, Kind};
use crate::yaml::{Document, Fault, Faults, Node, Purpose, nearest, read_text};
use std::path::{Path, PathBuf};

/// The word for a part that the drive does without.
pub const NONE: &str = "none";

/// Kinds of parts that a screw, a driven nut, a rack and a rack with two pinions are joined from.
const OF_SCREW: [&str; 10] = [
    "ball-screw",
    "screw-grade",
    "preload-class",
    "screw-support",
    "end-arrangement",
    "screw-bearing",
    "screw-reduction",
    "servo-motor",
    "linear-scale",
    "error-table",
];
const OF_NUT: [&str; 9] = [
    "ball-screw",
    "screw-grade",
    "preload-class",
    "screw-support",
    "nut-unit",
    "screw-reduction",
    "servo-motor",
    "linear-scale",
    "error-table",
];
const OF_TWIN: [&str; 8] =
    ["rack", "rack-grade", "pinion", "gearbox", "servo-motor", "pinion-bias", "linear-scale", "error-table"];
const OF_RACK: [&str; 7] = ["rack", "rack-grade", "pinion", "gearbox", "servo-motor", "linear-scale", "error-table"];

/// The kinds of parts that a drive of this family is joined from.
pub fn kinds_of(family: &str) -> &'static [&'static str] {
    match family {
        "ball-screw" => &OF_SCREW,
        "driven-nut" => &OF_NUT,
        "twin-pinion" => &OF_TWIN,
        _ => &OF_RACK,
    }
}

/// One part that is named.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Name of its kind.
    pub kind: &'static str,
    /// Its designation; [`NONE`] where the drive does without.
    pub designation: String,
    /// Whether the file itself gives its data.
    pub own: bool,
}

/// What is proposed for one axis.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposal {
    /// The axis, as place in the brief.
    pub axis: usize,
    /// Id of the family.
    pub family: String,
    /// The parts that are named.
    pub parts: Vec<Named>,
}

impl Proposal {
    /// The kinds of parts that are left open.
    pub fn open(&self) -> Vec<&'static str> {
        let named = |kind: &&str| self.parts.iter().any(|part| part.kind == *kind);
        kinds_of(&self.family).iter().copied().filter(|kind| !named(kind)).collect()
    }

    /// The brief and the catalogue that leave the axis nothing but what is proposed.
    pub fn restrict(&self, brief: &mut Brief, catalog: &mut Catalog) {
        let axis = &mut brief.axes[self.axis];
        axis.families = Some(vec![self.family.clone()]);
        for part in &self.parts {
            let without = part.designation == NONE;
            match part.kind {
                "linear-scale" => axis.feedback = if without { Feedback::Motor } else { Feedback::Scale },
                "error-table" => axis.mapping = if without { Mapping::None } else { Mapping::Table },
                _ => {}
            }
            if let Some(kind) = Kind::find(part.kind).filter(|_| !without) {
                (kind.keep_only)(catalog, &part.designation);
            }
        }
    }
}

/// A choice as it was read, with the catalogue that holds its own components too.
#[derive(Debug, Clone)]
pub struct Choice {
    /// Name of the file.
    pub name: String,
    /// Its text.
    pub text: String,
    /// Designations of the components that the file gives in place.
    pub own: Vec<String>,
    /// What is odd about those components: figures that hardly go together, a name that takes the place of a built-in part.
    pub remarks: Vec<String>,
    /// The proposals, in the order of the brief.
    pub proposals: Vec<Proposal>,
    /// The catalogue with the components of the file as its last layer.
    pub catalog: Catalog,
}

impl Choice {
    /// Adds a fault of what is named for an axis.
    pub fn fault_at(&self, axis: &str, message: String, help: &str, faults: &mut Faults) {
        let document = Document::parse(&self.name, &self.text, &mut Faults::default());
        let entry = document.as_ref().and_then(|document| document.root().get("axes")?.get(axis));
        match entry.and_then(|entry| entry.get("parts").or(Some(entry))) {
            Some(node) => node.fault(faults, message, Some(help.into())),
            None => faults.push(Fault::of_file(&self.name, message, Some(help.into()))),
        }
    }
}

/// Reads a choice for this brief; the folders are those of the catalogue beside the built-in one.
pub fn load(path: &Path, brief: &Brief, folders: &[PathBuf]) -> Result<Choice, Faults> {
    let mut faults = Faults::default();
    match text_of(path, &mut faults) {
        Some((name, text)) => load_text(&name, &text, brief, folders),
        None => Err(faults),
    }
}

/// The same of a text; the name is the one by which faults call it.
pub fn load_text(name: &str, text: &str, brief: &Brief, folders: &[PathBuf]) -> Result<Choice, Faults> {
    let mut faults = Faults::default();
    let names: Vec<String> = brief.axes.iter().map(|axis| axis.name.clone()).collect();
    let read = read(name, text, &names, folders, &mut faults);
    let Some((mut choice, here)) = read.filter(|_| faults.is_empty()) else { return Err(faults) };
    // without components of its own there is nothing odd about them
    if here.is_empty() {
        return Ok(choice);
    }
    let odd = catalog::check_some(&choice.catalog, &|_, designation, _| here.iter().any(|own| own == designation));
    choice.remarks = odd.iter().map(ToString::to_string).collect();
    let others = catalog::load(folders)?;
    let replaces = |name: &&String| KINDS.iter().any(|kind| (kind.find_row)(&others, name).is_some());
    choice.remarks.extend(here.iter().filter(replaces).map(|name| {
        format!("{name}: takes the place of a part of the catalogue with the same designation, in the proposal alone")
    }));
    choice.own = here;
    Ok(choice)
}

/// What is wrong with a choice beside a brief that could not be read: only the names of its axes are known, if any.
pub fn faults_of(path: &Path, axes: &[String], folders: &[PathBuf]) -> Faults {
    let mut faults = Faults::default();
    if let Some((name, text)) = text_of(path, &mut faults) {
        read(&name, &text, axes, folders, &mut faults);
    }
    faults
}

fn text_of(path: &Path, faults: &mut Faults) -> Option<(String, String)> {
    let name = path.file_name().map_or(String::new(), |name| name.to_string_lossy().into_owned());
    let text = read_text(path, &name, faults)?;
    Some((name, text))
}

/// The choice without remarks, and the designations of its own components.
fn read(
    name: &str,
    text: &str,
    names: &[String],
    folders: &[PathBuf],
    faults: &mut Faults,
) -> Option<(Choice, Vec<String>)> {
    let document = Document::parse(name, text, faults)?;
    let root = document.root();
    if !root.is_for(Purpose::Choice, faults) {
        return None;
    }
    root.only_keys(&["axes", "components"], faults);
    let own = root.get("components").map(|list| list.list(faults)).unwrap_or_default();
    let catalog = catalog::load_with(folders, &own).map_err(|found| faults.merge(found)).ok();
    let here = own_designations(&own);
    let mut proposals = Vec::new();
    let wanted = "with the axes by name, and below each its family and parts";
    let axes = root.need_as("axes", wanted, faults).map(|axes| axes.entries(faults)).unwrap_or_default();
    for (axis, node) in &axes {
        let place = names.iter().position(|name| name == axis);
        if place.is_none() && !names.is_empty() {
            let help = nearest(axis, names.iter().map(String::as_str))
                .map_or_else(|| format!("the axes are {}", names.join(", ")), |near| format!("did you mean `{near}`?"));
            node.fault(faults, format!("the brief has no axis `{axis}`"), Some(help));
        }
        let proposal = proposal(place.unwrap_or(0), node, catalog.as_ref(), &here, faults);
        proposals.extend(proposal.filter(|_| place.is_some()));
    }
    if axes.is_empty() && faults.is_empty() {
        let help = "write `axes:` with the name of an axis and its `family` below";
        root.fault(faults, "no drive is proposed for any axis", Some(help.into()));
    }
    proposals.sort_by_key(|proposal| proposal.axis);
    let choice = Choice {
        name: name.into(),
        text: text.into(),
        own: Vec::new(),
        remarks: Vec::new(),
        proposals,
        catalog: catalog?,
    };
    Some((choice, here))
}

/// The designations that the components of the file have.
fn own_designations(own: &[Node<'_>]) -> Vec<String> {
    // what is wrong with them was told when the catalogue was joined
    let mut told = Faults::default();
    let entries =
        own.iter().filter_map(|group| group.get("entries")).flat_map(|list| list.list(&mut Faults::default()));
    entries.filter_map(|entry| entry.get("designation")?.text(&mut told)).collect()
}

fn proposal(
    axis: usize,
    node: &Node<'_>,
    catalog: Option<&Catalog>,
    own: &[String],
    faults: &mut Faults,
) -> Option<Proposal> {
    node.only_keys(&["family", "parts"], faults);
    let known: Vec<(&str, &str)> = FAMILIES.iter().map(|id| (*id, *id)).collect();
    let family = node.need_choice("family", &known, faults)?;
    let mut parts = Vec::new();
    if let Some(list) = node.get("parts") {
        let mut known = kinds_of(family).to_vec();
        for (key, value) in list.entries(faults) {
            let Some(kind) = KINDS.iter().find(|kind| kind.name == key) else { continue };
            if kinds_of(family).contains(&kind.name) {
                parts.extend(part(kind, &value, catalog, own, faults));
            } else {
                known.push(kind.name);
                let help = format!("its parts are {}", kinds_of(family).join(", "));
                value.fault(faults, format!("a drive of the family {family} has no {key}"), Some(help));
            }
        }
        list.only_keys(&known, faults);
    }
    Some(Proposal { axis, family: family.into(), parts })
}

/// One part; without a catalogue it is not known which there are.
fn part(
    kind: &Kind,
    value: &Node<'_>,
    catalog: Option<&Catalog>,
    own: &[String],
    faults: &mut Faults,
) -> Option<Named> {
    let designation = value.text(faults)?;
    if designation == NONE && matches!(kind.name, "linear-scale" | "error-table") {
        return Some(Named { kind: kind.name, designation, own: false });
    }
    let catalog = catalog?;
    if (kind.find_row)(catalog, &designation).is_some() {
        let own = own.contains(&designation);
        return Some(Named { kind: kind.name, designation, own });
    }
    let other = KINDS.iter().find(|other| (other.find_row)(catalog, &designation).is_some());
    let rows = (kind.rows)(catalog);
    let near = nearest(&designation, rows.iter().map(|row| row.designation.as_str()));
    let help = match (other, near) {
        (Some(other), _) => format!("there is a `{}` of this name", other.name),
        (None, Some(near)) => format!("did you mean `{near}`?"),
        (None, None) => {
            format!("`axiswright catalog list {}` names those there are; others go below `components`", kind.name)
        }
    };
    value.fault(faults, format!("the catalogue has no {} `{designation}`", kind.name), Some(help));
    None
}
