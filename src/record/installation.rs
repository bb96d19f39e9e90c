//! What fitting a drive asks: loads of both sides, counts, torques, alignment, lubrication and covers.
//!
//! Method: lines of the worksheet and entries of the catalogue, each with its source; threads and restrained growth are told
//! for the bed of the axis. Limits: the drawing and the makers' instructions take precedence.

use super::lines::{List, part};
use super::{CandidateRecord, InstallationLine};
use crate::brief::{Axis, Brief};
use crate::catalog::Catalog;
use crate::characteristic as ch;
use crate::formula::mounting::{RESTRAINED_FORCE, THREAD_DEPTH};
use crate::ledger::Ledger;
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
    sides(axis, &mut list);
    if part(chosen, "rack").is_some() {
        rack(axis, catalog, chosen, &mut list);
    } else {
        screw(catalog, chosen, &mut list);
    }
    travelling(&mut list);
    corrections(catalog, chosen, &mut list);
    surroundings(brief, catalog, &mut list);
    list.lines
}

fn sides(axis: &Axis, list: &mut List<'_, '_>) {
    if axis.drives.value != 2 {
        return;
    }
    let group = "two sides";
    let twin = list.worked.sheet.line(ch::SIDE_MASS.slot).is_some();
    let mass = if twin { ch::SIDE_MASS } else { ch::DRIVEN_MASS };
    list.sheet(group, "moving mass of the most loaded side", mass);
    list.sheet(group, "moving mass of the other side", ch::FAR_MASS);
    list.sheet(group, "force of the most loaded side while speeding up", ch::NEAR_FORCE);
    list.sheet(group, "force of the other side while speeding up", ch::FAR_FORCE);
    list.sheet(group, "by how much the sides may stand apart", ch::SIDE_DIFFERENCE);
    list.sheet(group, if twin { "racking force, each pinion" } else { "racking force" }, ch::RACKING_FORCE);
    list.sheet(
        group,
        if twin {
            "largest force of one pinion with racking and bias"
        } else {
            "largest force of one side with racking"
        },
        ch::PEAK_FORCE,
    );
    list.sheet(group, "yaw at the tool in service", ch::YAW_AT_TOOL);
    list.sheet(group, "moment on the guides when one side is lost", ch::LOST_SIDE_MOMENT);
    list.sheet(group, "yaw when one side is lost", ch::LOST_SIDE_YAW);
}

fn rack(axis: &Axis, catalog: &Catalog, chosen: &CandidateRecord, list: &mut List<'_, '_>) {
    let group = "rack, each line";
    list.sheet(group, "length of the line", ch::RACK_LENGTH);
    list.sheet(group, "segments", ch::SEGMENTS);
    list.sheet(group, "joints, set with the counter gauge", ch::JOINTS);
    list.sheet(group, "fasteners", ch::FASTENERS);
    list.sheet(group, "tightening torque of a fastener, oiled thread, torque wrench", ch::FASTENER_TORQUE);
    list.sheet(group, "pins, drilled and reamed in place after alignment", ch::PINS);
    list.sheet(group, "diameter of a pin", ch::PIN_DIAMETER);
    list.sheet(group, "a whole segment holds", ch::SEGMENT_HOLDING_FORCE);
    let found = part(chosen, "rack").and_then(|name| catalog.racks.iter().find(|rack| rack.designation == name));
    if let Some(found) = found {
        list.words(group, "thread of the fasteners", &found.fastener_thread, &found.designation);
        let worked = list.worked;
        let area = worked.sheet.read(ch::SECTION_AREA);
        let steel = Expansion::of_si(crate::drive::defaults::STEEL_EXPANSION);
        let swing = worked.sheet.read(ch::TEMPERATURE_SWING);
        let word = axis.bed.value.word();
        let of_axis = |designation: &str| designation.trim_start_matches("bed-") == word;
        for bed in catalog.bed_materials.iter().filter(|bed| of_axis(&bed.designation)) {
            let name = word.replace('-', " ");
            let depth = (THREAD_DEPTH.apply)(found.fastener_diameter, bed.thread_depth_factor);
            list.demand("bed", &format!("thread that bears in {name}"), Some(depth), &bed.threads, &bed.designation);
            let force = (RESTRAINED_FORCE.apply)(area, steel, bed.expansion, swing).si() / 1e3;
            let item = format!("force in the rack on {name} at the swing of temperature");
            let source = format!("worked out: restrained-force, {}", bed.designation);
            list.add("bed", &item, Some(force), "kN", "", source);
        }
    }
    let group = "alignment";
    let name = part(chosen, "rack-grade").unwrap_or_default();
    if let Some(grade) = catalog.rack_grades.iter().find(|grade| grade.designation == name) {
        list.demand(
            group,
            "flatness of the seat and straightness of the shoulder",
            grade.seat_straightness,
            "on a metre",
            name,
        );
        list.demand(group, "shoulder parallel to the guide", grade.guide_parallelism, "over the whole length", name);
        list.demand(group, "pinion axis square to the rack", grade.pinion_squareness, "on 100 mm, skew and tilt", name);
        list.demand(group, "step at a joint, by ground pin and dial", Some(grade.joint_step), "", name);
    }
    list.sheet(group, "play of the mesh, at the tightest place", ch::MESH_PLAY);
    list.words(group, "seat", "clean, no paint, free of oil", "");
    let group = "lubrication";
    list.sheet(group, "grease of one line in a year", ch::GREASE_PER_YEAR);
    list.sheet(group, "highest speed of the lubricating pinion", ch::LUBRICATOR_SPEED_LIMIT);
    lubricant(catalog, "rack", list);
}

fn screw(catalog: &Catalog, chosen: &CandidateRecord, list: &mut List<'_, '_>) {
    let group = "alignment";
    let name = part(chosen, "screw-grade").unwrap_or_default();
    if let Some(grade) = catalog.screw_grades.iter().find(|grade| grade.designation == name) {
        list.demand(
            group,
            "screw parallel to the guide",
            grade.guide_parallelism,
            "over the travel, both planes",
            name,
        );
        list.demand(group, "seats of bearings and nut off one line", grade.seat_alignment, "at most", name);
        list.demand(group, "seats of bearings and nut square to the screw", grade.seat_squareness, "on 100 mm", name);
    }
    let order = "bearing at the driven end, nut loose; travel to each end, then tighten nut and far bearing there";
    list.words(group, "order of fitting", order, "");
    if list.worked.sheet.value(ch::STRETCH.slot) > 0.0 {
        let group = "stretched screw";
        list.sheet(group, "stretch when mounted, as the warming that would undo it", ch::STRETCH);
        list.sheet(group, "tension that the ends hold then", ch::STRETCH_FORCE);
        list.sheet(group, "travel compensation to order", ch::LEAD_COMPENSATION);
    }
    let group = "lubrication";
    list.sheet(group, "way between two lubrications", ch::RELUBRICATION_DISTANCE);
    list.sheet(group, "working time between two lubrications", ch::RELUBRICATION_HOURS);
    list.sheet(group, "grease of one lubrication", ch::GREASE_DOSE);
    lubricant(catalog, "screw", list);
}

/// What is set or hung up before the axis travels.
fn travelling(list: &mut List<'_, '_>) {
    let group = "belt";
    list.sheet(group, "pretension of each span", ch::BELT_PRETENSION);
    list.sheet(group, "frequency of the span that is plucked, at that tension", ch::SPAN_FREQUENCY);
    list.sheet(group, "force on the shafts from the tension", ch::BELT_SHAFT_LOAD);
    let group = "ends of the travel";
    list.sheet(group, "force of the end buffer of one drive", ch::BUFFER_FORCE);
    list.sheet(group, "stroke of the end buffer", ch::END_STOP_STROKE);
    list.sheet(group, "torque limit to set in the drive electronics before the first move", ch::SET_TORQUE);
    if list.worked.sheet.value(ch::COUNTERWEIGHT_MASS.slot) > 0.0 {
        list.sheet("counterbalance", "hanging counterweight of the most loaded drive", ch::COUNTERWEIGHT_MASS);
    }
}

fn lubricant(catalog: &Catalog, of: &str, list: &mut List<'_, '_>) {
    if let Some(found) = catalog.lubrications.iter().find(|lubrication| lubrication.of == of) {
        list.words("lubrication", "lubricant", &found.lubricant, &found.designation);
    }
}

/// The table of corrections, if the drive has one.
fn corrections(catalog: &Catalog, chosen: &CandidateRecord, list: &mut List<'_, '_>) {
    let table =
        part(chosen, "error-table").and_then(|name| catalog.error_tables.iter().find(|it| it.designation == name));
    if let Some(table) = table {
        let words =
            "measured on the finished axis, warm, and entered in the control; measured anew when a part is exchanged";
        list.demand(
            "control",
            "table of corrections, distance of its points",
            Some(table.spacing),
            words,
            &table.designation,
        );
    }
}

fn surroundings(brief: &Brief, catalog: &Catalog, list: &mut List<'_, '_>) {
    for entry in &catalog.surroundings {
        let Some(written) = entry.named_by(&brief.environment) else { continue };
        let item = format!("covers, for “{written}”");
        list.words("covers", &item, &entry.cover, &entry.designation);
        let item = format!("lubrication, for “{written}”");
        list.words("covers", &item, &entry.lubrication, &entry.designation);
        let share = Some(entry.interval_share.si() * 100.0);
        let source = format!("catalogue: {}", entry.designation);
        list.add("covers", "interval of lubrication over that in clean air", share, "%", "", source);
    }
    for written in &brief.environment {
        let alone = std::slice::from_ref(written);
        if !catalog.surroundings.iter().any(|entry| entry.named_by(alone).is_some()) {
            let words = "the catalogue knows no cover for it; ask the makers of cover and drive";
            list.add("covers", &format!("“{written}”"), None, "", words, "brief".into());
        }
    }
    if brief.environment.is_empty() {
        let words = "a plain cover against what falls and against fingers; the brief names nothing that asks for more";
        list.words("covers", "covers", words, "");
    }
}
