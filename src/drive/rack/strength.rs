//! Strength of the teeth: what they bear, and what the duty does to them.
//!
//! Method: what the steels bear is known with the quality, what the teeth bear evenly loaded with the pinion, what they
//! bear as mounted with the gearbox; the force of the duty that does the same damage at every pass is worked out last, on
//! the few drives that are left. Limits: as the formulas.

use super::{GradeWithSteels, PINION_FLANK, PINION_ROOT, Pinions, RACK_FLANK, RackDrive};
use crate::characteristic as ch;
use crate::drive::defaults::parts;
use crate::formula::tooth_strength::SteelClass;
use crate::formula::{gantry, tooth_strength, twin};
use crate::ledger::{Characteristic, Figures, Known, Ledger, Origin};
use crate::units::{Force, Measure, Pressure, Ratio};

/// What of a tooth root goes by the class of its steel: limit, size, surface, strength.
type RootLines =
    (Characteristic<Pressure>, Characteristic<Ratio>, Characteristic<Ratio>, Characteristic<Pressure>, SteelClass);

impl RackDrive<'_> {
    /// Steels and finish: limits, factors and what flanks and roots bear as stress; module and quality are known.
    pub(super) fn steels<L: Ledger>(&self, picked: &GradeWithSteels<'_>, sheet: &mut L) {
        let (catalog, assumed) = (Origin::Catalog, Origin::Assumed);
        let (grade, rack, pinion) = (picked.grade, &picked.rack, &picked.pinion);
        sheet.given(ch::RACK_CONTACT_LIMIT, rack.steel.contact_limit, catalog);
        sheet.given(ch::RACK_BENDING_LIMIT, rack.steel.bending_limit, catalog);
        sheet.given(ch::PINION_CONTACT_LIMIT, pinion.steel.contact_limit, catalog);
        sheet.given(ch::PINION_BENDING_LIMIT, pinion.steel.bending_limit, catalog);
        sheet.given(ch::RACK_SLIP_LAYER, rack.class.slip_layer(), catalog);
        sheet.given(ch::PINION_SLIP_LAYER, pinion.class.slip_layer(), catalog);
        sheet.given(ch::RACK_ROOT_STATIC_CYCLES, rack.class.root_static_cycles(), catalog);
        sheet.given(ch::PINION_ROOT_STATIC_CYCLES, pinion.class.root_static_cycles(), catalog);
        sheet.given(ch::FILM_FACTOR, grade.film_factor, catalog);
        sheet.given(ch::ROOT_ROUGHNESS, grade.root_roughness, catalog);
        sheet.given(ch::GRADE_FACE_LOAD_FACTOR, grade.face_load_factor, catalog);
        sheet.given(ch::MISALIGNMENT_SHARE, grade.misalignment_share, catalog);
        let said = |stated: bool| if stated { catalog } else { assumed };
        let (square, seat) = (grade.pinion_squareness, grade.seat_straightness);
        sheet.given(ch::PINION_SQUARENESS, square.unwrap_or(parts::pinion_squareness()), said(square.is_some()));
        sheet.given(ch::SEAT_STRAIGHTNESS, seat.unwrap_or(parts::seat_straightness()), said(seat.is_some()));
        let tolerances = (ch::PINION_SQUARENESS, ch::SEAT_STRAIGHTNESS, ch::MISALIGNMENT_SHARE);
        sheet.computed(ch::MOUNTING_SLOPE, &tooth_strength::MOUNTING_SLOPE, tolerances);
        for (limit, strength) in
            [(ch::PINION_CONTACT_LIMIT, ch::PINION_FLANK_STRENGTH), (ch::RACK_CONTACT_LIMIT, ch::RACK_FLANK_STRENGTH)]
        {
            sheet.computed(strength, &tooth_strength::FLANK_STRENGTH, (limit, ch::FILM_FACTOR));
        }
        let roots: [RootLines; 2] = [
            (
                ch::PINION_BENDING_LIMIT,
                ch::PINION_SIZE_FACTOR,
                ch::PINION_SURFACE_FACTOR,
                ch::PINION_ROOT_STRENGTH,
                pinion.class,
            ),
            (ch::RACK_BENDING_LIMIT, ch::RACK_SIZE_FACTOR, ch::RACK_SURFACE_FACTOR, ch::RACK_ROOT_STRENGTH, rack.class),
        ];
        for (limit, size, surface, strength, class) in roots {
            let (by_size, by_surface) = match class {
                SteelClass::CaseHardened | SteelClass::InductionHardened => {
                    (&tooth_strength::ROOT_SIZE_FACTOR_HARDENED, &tooth_strength::ROOT_SURFACE_FACTOR)
                }
                SteelClass::ThroughHardened => {
                    (&tooth_strength::ROOT_SIZE_FACTOR, &tooth_strength::ROOT_SURFACE_FACTOR)
                }
                SteelClass::Soft => (&tooth_strength::ROOT_SIZE_FACTOR, &tooth_strength::ROOT_SURFACE_FACTOR_SOFT),
            };
            sheet.computed(size, by_size, (ch::MODULE,));
            sheet.computed(surface, by_surface, (ch::ROOT_ROUGHNESS,));
            sheet.computed(strength, &tooth_strength::ROOT_STRENGTH, (limit, size, surface, ch::REVERSAL_FACTOR));
        }
    }

    /// How often the teeth are met, what they feel of a force, and what they bear of that evenly loaded; the pinion is known.
    pub(super) fn strength<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(ch::PINION_CYCLES, &tooth_strength::PINION_CYCLES, (ch::SERVICE_DISTANCE, ch::PINION_DIAMETER));
        // every pinion passes over every tooth of the rack
        let passes = match self.layout {
            Pinions::One => ch::RACK_CYCLES,
            Pinions::Two => ch::PINION_PASSES,
        };
        sheet.computed(passes, &tooth_strength::RACK_CYCLES, (ch::MOVES_PER_HOUR, ch::SERVICE_HOURS));
        if self.layout == Pinions::Two {
            sheet.computed(ch::RACK_CYCLES, &twin::RACK_PASSES, (ch::PINION_PASSES, ch::PINIONS));
        }
        sheet.given(ch::FLANK_STATIC_CYCLES, parts::flank_static_cycles(), Origin::Assumed);
        let first = (ch::PINION_ROOT_STATIC_CYCLES, ch::RACK_ROOT_STATIC_CYCLES);
        for (life, cycles, first) in [
            (ch::PINION_ROOT_LIFE, ch::PINION_CYCLES, first.0),
            (ch::RACK_ROOT_LIFE, ch::RACK_CYCLES, first.1),
            (ch::ROOT_STATIC_LIFE, first.0, first.0),
        ] {
            sheet.computed(life, &tooth_strength::ROOT_LIFE_FACTOR, (cycles, first));
        }
        let (m, z, h, x, b) = (ch::MODULE, ch::TEETH, ch::HELIX_ANGLE, ch::PROFILE_SHIFT, ch::FACE_WIDTH);
        let mesh = (m, z, h, x, b, ch::QUALITY, ch::SPEED);
        sheet.computed(ch::LOAD_SLOPE, &tooth_strength::LOAD_SLOPE, mesh);
        sheet.computed(ch::LOAD_OFFSET, &tooth_strength::LOAD_OFFSET, mesh);
        sheet.computed(ch::LIGHT_LOAD_FACTOR, &tooth_strength::LIGHT_LOAD_FACTOR, mesh);
        let flank = |strength| (m, z, h, x, b, strength);
        let root = |strength, slip_layer| (m, z, h, x, b, strength, slip_layer);
        sheet.computed(
            ch::PINION_FLANK_ENDURANCE,
            &tooth_strength::PINION_FLANK_ENDURANCE,
            flank(ch::PINION_FLANK_STRENGTH),
        );
        sheet.computed(ch::RACK_FLANK_ENDURANCE, &tooth_strength::RACK_FLANK_ENDURANCE, flank(ch::RACK_FLANK_STRENGTH));
        sheet.computed(
            ch::PINION_ROOT_ENDURANCE,
            &tooth_strength::PINION_ROOT_ENDURANCE,
            root(ch::PINION_ROOT_STRENGTH, ch::PINION_SLIP_LAYER),
        );
        sheet.computed(
            ch::RACK_ROOT_ENDURANCE,
            &tooth_strength::RACK_ROOT_ENDURANCE,
            root(ch::RACK_ROOT_STRENGTH, ch::RACK_SLIP_LAYER),
        );
        sheet.computed(
            ch::ALIGNMENT_FORCE,
            &tooth_strength::ALIGNMENT_FORCE,
            (
                ch::PINION_FLANK_ENDURANCE,
                ch::RACK_FLANK_ENDURANCE,
                ch::PINION_ROOT_ENDURANCE,
                ch::RACK_ROOT_ENDURANCE,
                ch::LOAD_SLOPE,
                ch::LOAD_OFFSET,
                ch::LIGHT_LOAD_FACTOR,
                ch::FACE_WIDTH,
            ),
        );
    }

    /// What flanks and roots bear as mounted, once the shaft is known that the pinion hangs on.
    pub(super) fn mounted<L: Ledger>(&self, sheet: &mut L) {
        sheet.computed(
            ch::ALIGNMENT_FACE_LOAD_FACTOR,
            &tooth_strength::ALIGNMENT_FACE_LOAD_FACTOR,
            (
                ch::ALIGNMENT_FORCE,
                ch::HELIX_ANGLE,
                ch::PINION_OVERHANG,
                ch::OUTPUT_SHAFT_DIAMETER,
                ch::TILT_STIFFNESS,
                ch::FACE_WIDTH,
                ch::MOUNTING_SLOPE,
                ch::MESH_STIFFNESS,
            ),
        );
        let both = (ch::GRADE_FACE_LOAD_FACTOR, ch::ALIGNMENT_FACE_LOAD_FACTOR);
        sheet.computed(ch::FACE_LOAD_FACTOR, &tooth_strength::FACE_LOAD_FACTOR, both);
        let of_flank = (ch::FACE_LOAD_FACTOR, ch::FACE_WIDTH, ch::MODULE);
        sheet.computed(ch::ROOT_FACE_LOAD_FACTOR, &tooth_strength::ROOT_FACE_LOAD_FACTOR, of_flank);
        let felt = |endurance, count| {
            (endurance, count, ch::LOAD_SLOPE, ch::LOAD_OFFSET, ch::LIGHT_LOAD_FACTOR, ch::FACE_WIDTH)
        };
        let flanks = [
            (
                ch::PINION_FLANK_ENDURANCE,
                ch::PINION_FLANK_MOUNTED,
                (ch::PINION_PITTING_FORCE, ch::PINION_CYCLES),
                ch::PINION_FLANK_STATIC_FORCE,
            ),
            (
                ch::RACK_FLANK_ENDURANCE,
                ch::RACK_FLANK_MOUNTED,
                (ch::RACK_PITTING_FORCE, ch::RACK_CYCLES),
                ch::RACK_FLANK_STATIC_FORCE,
            ),
        ];
        for (even, mounted, (force, cycles), seldom) in flanks {
            sheet.computed(mounted, &tooth_strength::MOUNTED_ENDURANCE, (even, ch::FACE_LOAD_FACTOR));
            sheet.computed(force, &tooth_strength::FLANK_FORCE, felt(mounted, cycles));
            sheet.computed(seldom, &tooth_strength::FLANK_FORCE, felt(mounted, ch::FLANK_STATIC_CYCLES));
        }
        let roots = [
            (
                ch::PINION_ROOT_ENDURANCE,
                ch::PINION_ROOT_MOUNTED,
                (ch::PINION_ROOT_FORCE, ch::PINION_ROOT_LIFE),
                ch::PINION_ROOT_STATIC_FORCE,
            ),
            (
                ch::RACK_ROOT_ENDURANCE,
                ch::RACK_ROOT_MOUNTED,
                (ch::RACK_ROOT_FORCE, ch::RACK_ROOT_LIFE),
                ch::RACK_ROOT_STATIC_FORCE,
            ),
        ];
        for (even, mounted, (force, life), seldom) in roots {
            sheet.computed(mounted, &tooth_strength::MOUNTED_ENDURANCE, (even, ch::ROOT_FACE_LOAD_FACTOR));
            sheet.computed(force, &tooth_strength::ROOT_FORCE, felt(mounted, life));
            sheet.computed(seldom, &tooth_strength::ROOT_FORCE, felt(mounted, ch::ROOT_STATIC_LIFE));
        }
        sheet.computed(
            ch::TOOTH_FORCE,
            &tooth_strength::LEAST_4,
            (ch::PINION_PITTING_FORCE, ch::RACK_PITTING_FORCE, ch::PINION_ROOT_FORCE, ch::RACK_ROOT_FORCE),
        );
    }

    /// The force of equal damage on flanks or roots, once the forces of the phases are known; each is a stage of its own.
    #[inline(always)]
    pub(super) fn damage<L: Ledger>(&self, stage: usize, sheet: &mut L) {
        let count = self.demand.phases.len();
        let (forces, shares, speeds) =
            (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count), ch::PHASE_SPEED.all(count));
        let (accelerations, moves, all) =
            (ch::PHASE_ACCELERATION.all(count), ch::PHASE_MOVES.all(count), ch::MOVES_PER_HOUR);
        let (slope, offset, light, b) = (ch::LOAD_SLOPE, ch::LOAD_OFFSET, ch::LIGHT_LOAD_FACTOR, ch::FACE_WIDTH);
        // what two sides or two pinions press against each other comes on top of every force
        let on_top = self.on_top();
        let (with, duty) = equal_forces(stage);
        let equal = if on_top.is_some() { duty } else { with };
        match stage {
            PINION_FLANK => {
                let felt = (forces, shares, speeds, ch::PINION_FLANK_MOUNTED, slope, offset, light, b);
                sheet.computed(equal, &tooth_strength::PINION_FLANK_EQUIVALENT_FORCE, felt);
            }
            PINION_ROOT => {
                let (mounted, first) = (ch::PINION_ROOT_MOUNTED, ch::PINION_ROOT_STATIC_CYCLES);
                let felt = (forces, shares, speeds, mounted, first, slope, offset, light, b);
                sheet.computed(equal, &tooth_strength::PINION_ROOT_EQUIVALENT_FORCE, felt);
            }
            RACK_FLANK => {
                let felt = (forces, accelerations, moves, all, ch::RACK_FLANK_MOUNTED, slope, offset, light, b);
                sheet.computed(equal, &tooth_strength::RACK_FLANK_EQUIVALENT_FORCE, felt);
            }
            _ => {
                let (mounted, first) = (ch::RACK_ROOT_MOUNTED, ch::RACK_ROOT_STATIC_CYCLES);
                let felt = (forces, accelerations, moves, all, mounted, first, slope, offset, light, b);
                sheet.computed(equal, &tooth_strength::RACK_ROOT_EQUIVALENT_FORCE, felt);
            }
        }
        if let Some(on_top) = on_top {
            sheet.computed(with, &gantry::FORCE_SUM, (duty, on_top));
        }
    }

    /// No force of equal damage is greater than the largest of the duty.
    pub(super) fn damage_at_most(&self, stage: usize, sheet: &mut Known) {
        let on_top = self.on_top();
        let largest = on_top.map_or(ch::PEAK_FORCE, |_| ch::MOTION_PEAK_FORCE);
        let largest = sheet.read(largest);
        // a hair more, for forces are added up in another order
        let hair = 1.0 + 1e-9;
        let more = on_top.map_or(0.0, |force| sheet.read(force).si());
        // a duty whose felt forces are not known has no force of equal damage
        let felt = [ch::LOAD_SLOPE.slot, ch::LOAD_OFFSET.slot, ch::LIGHT_LOAD_FACTOR.slot, ch::FACE_WIDTH.slot];
        let known = felt.iter().all(|&slot| sheet.value(slot).is_finite());
        let most = Force::of_si(if known { hair * (largest.si() + more) } else { f64::NAN });
        sheet.given(equal_forces(stage).0, most, Origin::Formula);
    }
}

/// The force of equal damage that a stage enters, with what comes on top of every force and without.
#[inline(always)]
fn equal_forces(stage: usize) -> (Characteristic<Force>, Characteristic<Force>) {
    match stage {
        PINION_FLANK => (ch::PINION_FLANK_EQUIVALENT_FORCE, ch::PINION_FLANK_DUTY_FORCE),
        PINION_ROOT => (ch::PINION_ROOT_EQUIVALENT_FORCE, ch::PINION_ROOT_DUTY_FORCE),
        RACK_FLANK => (ch::RACK_FLANK_EQUIVALENT_FORCE, ch::RACK_FLANK_DUTY_FORCE),
        _ => (ch::RACK_ROOT_EQUIVALENT_FORCE, ch::RACK_ROOT_DUTY_FORCE),
    }
}
