//! Mounting and lubrication of racks and screws: counts, tightening torque, what a segment holds, grease.
//!
//! Method: each function is called in the stage that knows what it needs. Limits: those of the formulas; what the catalogue
//! does not state of lubrication is absent.

use crate::brief::Bed;
use crate::catalog::{Catalog, Lubrication, Rack};
use crate::characteristic as ch;
use crate::formula::{bolt, mounting};
use crate::ledger::{Characteristic, Ledger, Origin};
use crate::units::*;

/// The bed that rack or screw is fixed to; one that is not known holds neither.
pub fn bed<L: Ledger>(bed: Bed, catalog: &Catalog, sheet: &mut L) {
    let designation = format!("bed-{}", bed.word());
    match catalog.bed_materials.iter().find(|material| material.designation == designation) {
        Some(material) => {
            sheet.given(ch::BED_EXPANSION, material.expansion, Origin::Catalog);
        }
        None => sheet.absent(ch::BED_EXPANSION),
    }
}

fn lubrication<'a>(catalog: &'a Catalog, of: &str) -> Option<&'a Lubrication> {
    catalog.lubrications.iter().find(|lubrication| lubrication.of == of)
}

/// Pins and tightening torque, once the rack is known.
pub fn rack<L: Ledger>(rack: &Rack, catalog: &Catalog, sheet: &mut L) {
    let from = Origin::Catalog;
    sheet.given(ch::PINS_PER_SEGMENT, Ratio::of_si(f64::from(rack.pins_per_segment)), from);
    // a pin of unknown size holds nothing
    sheet.given(ch::PIN_DIAMETER, rack.pin_diameter.unwrap_or(Length::of_si(0.0)), from);
    sheet.given(ch::PIN_STRENGTH, rack.pin_strength.unwrap_or(Pressure::of_si(0.0)), from);
    sheet.computed(
        ch::FASTENER_TORQUE,
        &bolt::TIGHTENING_TORQUE,
        (ch::FASTENER_DIAMETER, ch::FASTENER_THREAD_PITCH, ch::FASTENER_PRELOAD, ch::THREAD_FRICTION),
    );
    match lubrication(catalog, "rack").and_then(|found| found.grease_per_distance.zip(found.grease_width)) {
        Some((rate, width)) => {
            sheet.given(ch::GREASE_PER_DISTANCE, rate, from);
            sheet.given(ch::GREASE_WIDTH, width, from);
            let use_of_it =
                (ch::GREASE_PER_DISTANCE, ch::FACE_WIDTH, ch::GREASE_WIDTH, ch::SERVICE_DISTANCE, ch::SERVICE_YEARS);
            sheet.computed(ch::GREASE_PER_YEAR, &mounting::GREASE_PER_YEAR, use_of_it);
            let need = (ch::GREASE_PER_YEAR, ch::SURROUNDINGS_SHARE);
            sheet.computed(ch::GREASE_NEED, &mounting::RACK_GREASE_NEED, need);
        }
        None => {
            sheet.absent(ch::GREASE_PER_YEAR);
            sheet.absent(ch::GREASE_NEED);
        }
    }
    match lubrication(catalog, "rack").and_then(|found| found.lubricator_speed_limit) {
        Some(limit) => {
            sheet.given(ch::LUBRICATOR_SPEED_LIMIT, limit, from);
        }
        None => sheet.absent(ch::LUBRICATOR_SPEED_LIMIT),
    }
}

/// What a whole segment holds, once its length is known.
pub fn segment<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::SEGMENT_FASTENERS, &mounting::SEGMENT_FASTENERS, (ch::SEGMENT_LENGTH, ch::FASTENER_PITCH));
    sheet.computed(
        ch::SEGMENT_HOLDING_FORCE,
        &mounting::SEGMENT_HOLDING_FORCE,
        (
            ch::SEGMENT_FASTENERS,
            ch::FASTENER_PRELOAD,
            ch::SEAT_FRICTION,
            ch::TIGHTENING_FACTOR,
            ch::EMBEDDING_LOSS,
            ch::PINS_PER_SEGMENT,
            ch::PIN_DIAMETER,
            ch::PIN_STRENGTH,
        ),
    );
}

/// Joints and pins, once the number of segments is known.
pub fn line<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::JOINTS, &mounting::JOINTS, (ch::SEGMENTS,));
    sheet.computed(ch::PINS, &mounting::PINS, (ch::SEGMENTS, ch::PINS_PER_SEGMENT));
}

/// Force in the seat of the rack in an emergency stop.
#[inline(always)]
pub fn stop<L: Ledger>(force: Characteristic<Force>, sheet: &mut L) {
    sheet.computed(ch::STOP_SEAT_FORCE, &mounting::SEAT_FORCE, (force, ch::HELIX_ANGLE));
}

/// Grease of a nut, once its screw is known.
pub fn screw<L: Ledger>(catalog: &Catalog, sheet: &mut L) {
    let found = lubrication(catalog, "screw");
    match found.and_then(|found| found.relubrication_distance) {
        Some(distance) => {
            sheet.given(ch::RELUBRICATION_DISTANCE, distance, Origin::Catalog);
            let pace = (ch::RELUBRICATION_DISTANCE, ch::MEAN_SPEED);
            sheet.computed(ch::RELUBRICATION_HOURS, &mounting::RELUBRICATION_HOURS, pace);
            let here = (ch::SURROUNDINGS_SHARE, ch::RELUBRICATION_HOURS);
            sheet.computed(ch::LUBRICATION_INTERVAL, &mounting::LUBRICATION_INTERVAL, here);
        }
        None => {
            sheet.absent(ch::RELUBRICATION_HOURS);
            sheet.absent(ch::LUBRICATION_INTERVAL);
        }
    }
    match found.and_then(|found| found.grease_per_diameter) {
        Some(rate) => {
            sheet.given(ch::GREASE_PER_DIAMETER, rate, Origin::Catalog);
            sheet.computed(ch::GREASE_DOSE, &mounting::GREASE_DOSE, (ch::GREASE_PER_DIAMETER, ch::NOMINAL_DIAMETER));
        }
        None => sheet.absent(ch::GREASE_DOSE),
    }
    if found.is_some_and(|found| found.relubrication_distance.is_some() && found.grease_per_diameter.is_some()) {
        let need = (ch::GREASE_DOSE, ch::HOURS_PER_YEAR, ch::LUBRICATION_INTERVAL);
        sheet.computed(ch::GREASE_NEED, &mounting::NUT_GREASE_NEED, need);
    } else {
        sheet.absent(ch::GREASE_NEED);
    }
}
