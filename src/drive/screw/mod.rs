//! What every ball screw has, whether the screw turns or the nut: size, supports, grade, preload, loads of the nut, belt.
//!
//! Method: each function enters lines that are the same for both; a family calls it in the stage where it knows what
//! the lines need. Limits: those of the families.

pub mod held;

use super::demand::Demand;
use super::sides::Errors;
use super::{Part, Size, defaults, feedback, mapping, price};
use crate::catalog::*;
use crate::characteristic as ch;
use crate::formula::{
    budget, cost, layout, lead_accuracy, mesh_motion, motion, pricing, rating, rolling_life, screw, shaft, stiffness,
    stop, turn_motion,
};
use crate::ledger::{Aside, Characteristic, Ledger, Origin};
use crate::units::*;

/// First stage of both families: size.
pub const SIZE: usize = 0;
/// Second stage of both families: what holds a long screw up between nut and ends.
pub const SUPPORT: usize = 1;
/// Third stage of both families: grade.
pub const GRADE: usize = 2;
/// Fourth stage of both families: preload.
pub const PRELOAD: usize = 3;

/// The errors that a screw alone leaves.
pub const ERRORS: Errors = [ch::MEAN_TRAVEL_DEVIATION, ch::TRAVEL_VARIATION, ch::TURN_VARIATION];

/// The screw that a path picks.
pub fn picked_size<'a>(catalog: &'a Catalog, path: &[u16]) -> &'a BallScrew {
    &catalog.ball_screws[usize::from(path[SIZE])]
}

/// The supports that a path picks.
pub fn picked_support<'a>(catalog: &'a Catalog, path: &[u16]) -> &'a ScrewSupport {
    &catalog.screw_supports[usize::from(path[SUPPORT])]
}

/// The manufacture that a path picks.
pub fn picked_grade<'a>(catalog: &'a Catalog, path: &[u16]) -> &'a ScrewGrade {
    &catalog.screw_grades[usize::from(path[GRADE])]
}

/// The preload that a path picks.
pub fn picked_class<'a>(catalog: &'a Catalog, path: &[u16]) -> &'a PreloadClass {
    &catalog.preload_classes[usize::from(path[PRELOAD])]
}

/// Enters what the size decides.
pub fn size<L: Ledger>(size: &BallScrew, prices: &PriceBasis, sheet: &mut L) {
    let catalog = Origin::Catalog;
    sheet.given(ch::NOMINAL_DIAMETER, size.nominal_diameter, catalog);
    sheet.given(ch::LEAD, size.lead, catalog);
    sheet.given(ch::BALL_CIRCLE_DIAMETER, size.ball_circle_diameter, catalog);
    sheet.given(ch::BALL_DIAMETER, size.ball_diameter, catalog);
    sheet.given(ch::ROOT_DIAMETER, size.root_diameter, catalog);
    sheet.given(ch::SCREW_BORE, size.bore, catalog);
    sheet.given(ch::NUT_LENGTH, size.nut_length, catalog);
    sheet.given(ch::NUT_MASS, size.nut_mass, catalog);
    sheet.given(ch::NUT_ACCELERATION_LIMIT, size.acceleration_limit, catalog);
    ratings(size, sheet);
    sheet.given(ch::RATED_NUT_STIFFNESS, size.nut_stiffness, catalog);
    sheet.given(ch::SIZE_PRICE_FACTOR, size.price_factor, catalog);
    sheet.given(ch::SCREW_YIELD_STRENGTH, defaults::parts::screw_yield_strength(), Origin::Assumed);
    sheet.given(ch::SCREW_EXPANSION, Expansion::of_si(defaults::STEEL_EXPANSION), Origin::Assumed);
    sheet.given(ch::TRAVEL_PER_TURN, size.lead, catalog);
    sheet.computed(ch::JOURNAL_LENGTH, &layout::JOURNAL_LENGTH, (ch::NOMINAL_DIAMETER,));
    sheet.computed(ch::SCREW_SPEED, &motion::SHAFT_SPEED, (ch::SPEED, ch::LEAD));
    sheet.computed(ch::CIRCULATION_SPEED, &screw::CIRCULATION_SPEED, (ch::NOMINAL_DIAMETER, ch::SCREW_SPEED));
    sheet.computed(ch::CORE_DIAMETER, &stiffness::CORE_DIAMETER, (ch::BALL_CIRCLE_DIAMETER, ch::BALL_DIAMETER));
    sheet.computed(ch::LEAD_ANGLE, &screw::LEAD_ANGLE, (ch::LEAD, ch::BALL_CIRCLE_DIAMETER));
    sheet.computed(ch::NUT_LIFE_FACTOR, &rolling_life::NUT_RELIABILITY_FACTOR, (ch::RELIABILITY,));
    sheet.computed(ch::BEARING_LIFE_FACTOR, &rolling_life::BEARING_RELIABILITY_FACTOR, (ch::RELIABILITY,));
    sheet.given(ch::SCREW_BASE_PRICE, prices.screw_base, catalog);
    sheet.given(ch::SCREW_METRE_PRICE, prices.screw_per_metre, catalog);
    sheet.given(ch::SUPPORT_PRICE_SHARE, prices.support_price_share, catalog);
    sheet.given(ch::ENDS_PRICE, prices.screw_ends, catalog);
    price::enter_kind(prices, price::Kind::Screw, sheet);
}

/// Enters the ratings of the size: those that the catalogue states, and estimates from geometry for those it does not.
fn ratings<L: Ledger>(size: &BallScrew, sheet: &mut L) {
    let catalog = Origin::Catalog;
    sheet.given(ch::LOADED_TURNS, size.turns, catalog);
    sheet.given(ch::CONFORMITY, defaults::parts::conformity(), Origin::Assumed);
    let geometry = (ch::BALL_CIRCLE_DIAMETER, ch::BALL_DIAMETER, ch::LEAD, ch::LOADED_TURNS, ch::CONFORMITY);
    match size.dynamic_rating {
        Some(rating) => sheet.given(ch::SIZE_DYNAMIC_RATING, rating, catalog),
        None => sheet.computed(ch::SIZE_DYNAMIC_RATING, &rolling_life::DYNAMIC_RATING, geometry),
    };
    match size.static_rating {
        Some(rating) => sheet.given(ch::SIZE_STATIC_RATING, rating, catalog),
        None => sheet.computed(ch::SIZE_STATIC_RATING, &rolling_life::STATIC_RATING, geometry),
    };
    sheet.given(ch::RATING_ESTIMATED, Ratio::of_si(if size.rating_is_estimated() { 1.0 } else { 0.0 }), catalog);
}

/// Enters the supports that travel with the nut, and what follows from the travel.
pub fn support<L: Ledger>(support: &ScrewSupport, sheet: &mut L) {
    let catalog = Origin::Catalog;
    sheet.given(ch::SUPPORT_PAIRS, Ratio::of_si(f64::from(support.pairs)), catalog);
    sheet.given(ch::SUPPORT_SPEED_LIMIT, support.speed_limit, catalog);
    sheet.given(ch::SUPPORT_SIZE_MASS, support.mass, catalog);
    sheet.given(ch::SUPPORT_ROOM_SHARE, support.room, catalog);
    sheet.given(ch::SUPPORT_SIZE_PRICE, support.price, catalog);
    sheet.computed(ch::SUPPORT_MASS, &screw::SUPPORT_MASS, (ch::SUPPORT_SIZE_MASS, ch::NOMINAL_DIAMETER));
    sheet.computed(ch::SUPPORT_ROOM, &screw::SUPPORT_ROOM, (ch::SUPPORT_ROOM_SHARE, ch::NOMINAL_DIAMETER));
    sheet.computed(
        ch::SUPPORT_PAIR_PRICE,
        &pricing::SUPPORT_PAIR_PRICE,
        (ch::SUPPORT_SIZE_PRICE, ch::NOMINAL_DIAMETER),
    );
    sheet.computed(
        ch::FREE_LENGTH,
        &screw::FREE_LENGTH,
        (ch::TRAVEL, ch::OVERTRAVEL, ch::END_GAP, ch::NUT_LENGTH, ch::SUPPORT_ROOM),
    );
    sheet.computed(ch::SLENDERNESS, &screw::SLENDERNESS, (ch::FREE_LENGTH, ch::NOMINAL_DIAMETER));
    sheet.computed(ch::SCREW_LENGTH, &screw::SCREW_LENGTH, (ch::FREE_LENGTH, ch::JOURNAL_LENGTH));
    sheet.computed(ch::SCREW_MASS, &screw::SCREW_MASS, (ch::NOMINAL_DIAMETER, ch::SCREW_BORE, ch::SCREW_LENGTH));
}

/// Enters what the manufacture decides for a screw of this size.
pub fn grade<L: Ledger>(grade: &ScrewGrade, size: &BallScrew, sheet: &mut L) {
    let catalog = Origin::Catalog;
    let positioning = Ratio::of_si(if grade.positioning { 1.0 } else { 0.0 });
    sheet.given(ch::GRADE_NUMBER, Ratio::of_si(f64::from(grade.grade)), catalog);
    sheet.given(ch::POSITIONING, positioning, catalog);
    sheet.given(ch::VARIATION_300, grade.variation_300, catalog);
    sheet.given(ch::TURN_VARIATION, grade.turn_variation, catalog);
    sheet.given(ch::RATING_FACTOR, grade.rating_factor, catalog);
    sheet.given(ch::CIRCULATION_LIMIT, grade.circulation_limit(size), catalog);
    sheet.given(ch::SURFACE_HARDNESS, grade.surface_hardness, catalog);
    sheet.given(ch::MELT_FACTOR, grade.melt_factor, catalog);
    sheet.given(ch::TEMPERATURE_FACTOR, grade.temperature_factor, catalog);
    sheet.given(ch::LENGTH_PER_DIAMETER, grade.length_per_diameter, catalog);
    sheet.given(ch::BLANK_LENGTH, grade.length_limit, catalog);
    sheet.given(ch::DIAMETER_LIMIT, grade.diameter_limit, catalog);
    sheet.given(ch::GRADE_PRICE_FACTOR, grade.price_factor, catalog);
    sheet.given(ch::SCREW_FRICTION, grade.friction, catalog);
    sheet.computed(
        ch::SCREW_LENGTH_LIMIT,
        &layout::LENGTH_LIMIT,
        (ch::NOMINAL_DIAMETER, ch::LENGTH_PER_DIAMETER, ch::BLANK_LENGTH),
    );
    sheet.computed(ch::HARDNESS_FACTOR, &rating::HARDNESS_FACTOR, (ch::SURFACE_HARDNESS,));
    sheet.computed(ch::STATIC_HARDNESS_FACTOR, &rating::STATIC_HARDNESS_FACTOR, (ch::SURFACE_HARDNESS,));
    sheet.computed(
        ch::DYNAMIC_RATING,
        &rating::EFFECTIVE_DYNAMIC_RATING,
        (ch::SIZE_DYNAMIC_RATING, ch::RATING_FACTOR, ch::HARDNESS_FACTOR, ch::MELT_FACTOR, ch::TEMPERATURE_FACTOR),
    );
    sheet.computed(
        ch::STATIC_RATING,
        &rating::EFFECTIVE_STATIC_RATING,
        (ch::SIZE_STATIC_RATING, ch::RATING_FACTOR, ch::STATIC_HARDNESS_FACTOR),
    );
    sheet.computed(ch::SCREW_EFFICIENCY, &screw::SCREW_EFFICIENCY, (ch::LEAD_ANGLE, ch::SCREW_FRICTION));
    sheet.computed(ch::BACK_DRIVING_EFFICIENCY, &screw::BACK_DRIVING_EFFICIENCY, (ch::LEAD_ANGLE, ch::SCREW_FRICTION));
    let lead_inputs = |length| (ch::GRADE_NUMBER, ch::POSITIONING, ch::VARIATION_300, length);
    sheet.computed(ch::MEAN_TRAVEL_DEVIATION, &lead_accuracy::MEAN_TRAVEL_DEVIATION, lead_inputs(ch::TRAVEL));
    sheet.computed(ch::TRAVEL_VARIATION, &lead_accuracy::TRAVEL_VARIATION, lead_inputs(ch::TRAVEL));
    sheet.computed(
        ch::SECTION_TRAVEL_DEVIATION,
        &lead_accuracy::MEAN_TRAVEL_DEVIATION,
        lead_inputs(ch::SECTION_LENGTH),
    );
    sheet.computed(ch::SECTION_TRAVEL_VARIATION, &lead_accuracy::TRAVEL_VARIATION, lead_inputs(ch::SECTION_LENGTH));
    sheet.computed(ch::RIPPLE, &layout::SAME_LENGTH, (ch::TURN_VARIATION,));
}

/// Enters what the preload decides, and as `price` that of the screw with its nut.
#[inline(always)]
pub fn preload<L: Ledger>(class: &PreloadClass, price: Characteristic<Money>, sheet: &mut L) {
    sheet.given(ch::PRELOAD_SHARE, class.share, Origin::Catalog);
    sheet.given(ch::NUT_CLEARANCE, class.clearance, Origin::Catalog);
    sheet.computed(ch::PRELOAD, &screw::PRELOAD, (ch::PRELOAD_SHARE, ch::DYNAMIC_RATING));
    sheet.computed(ch::PRELOAD_DRAG, &screw::PRELOAD_DRAG, (ch::PRELOAD, ch::LEAD, ch::LEAD_ANGLE));
    sheet.computed(ch::NUT_STIFFNESS, &stiffness::NUT_STIFFNESS, (ch::RATED_NUT_STIFFNESS, ch::PRELOAD_SHARE));
    sheet.computed(ch::PLAY, &layout::SAME_LENGTH, (ch::NUT_CLEARANCE,));
    sheet.given(ch::NUT_PRICE_FACTOR, class.nut_price_factor, Origin::Catalog);
    sheet.computed(
        price,
        &cost::SCREW_PRICE,
        (
            ch::NOMINAL_DIAMETER,
            ch::SCREW_LENGTH,
            ch::SCREW_LENGTH_LIMIT,
            ch::GRADE_PRICE_FACTOR,
            ch::SIZE_PRICE_FACTOR,
            ch::NUT_PRICE_FACTOR,
            ch::SCREW_BASE_PRICE,
            ch::SCREW_METRE_PRICE,
        ),
    );
}

/// Works out the life of the nut, once the forces are known.
#[inline(always)]
pub fn nut_loads<L: Ledger>(demand: &Demand<'_>, sheet: &mut L) {
    let count = demand.phases.len();
    let (forces, shares) = (ch::PHASE_FORCE.all(count), ch::PHASE_SHARE.all(count));
    let (rating, preload, speeds) = (ch::DYNAMIC_RATING, ch::PRELOAD, ch::PHASE_SPEED.all(count));
    if demand.two_sided() {
        let racked = (rating, preload, forces, shares, speeds, ch::NUT_LIFE_FACTOR, ch::RACKING_FORCE);
        sheet.computed(ch::SCREW_LIFE, &rolling_life::RACKED_PAIR_LIFE, racked);
    } else {
        let duty = (rating, preload, forces, shares, speeds, ch::NUT_LIFE_FACTOR);
        sheet.computed(ch::SCREW_LIFE, &rolling_life::PAIR_LIFE, duty);
    }
    sheet.computed(
        ch::SCREW_LIFE_HOURS,
        &rolling_life::LIFE_HOURS,
        (ch::SCREW_LIFE, ch::MEAN_SPEED, ch::TRAVEL_PER_TURN),
    );
}

/// Works out how hard the largest force loads the nut.
#[inline(always)]
pub fn nut_peak<L: Ledger>(sheet: &mut L) {
    sheet.computed(ch::LOADED_HALF_PEAK, &rolling_life::HALF_LOAD, (ch::PEAK_FORCE, ch::PRELOAD));
    sheet.computed(ch::STATIC_SAFETY, &rolling_life::STATIC_SAFETY, (ch::STATIC_RATING, ch::LOADED_HALF_PEAK));
}

/// Enters coupling or belt, as far as it needs no force, and the efficiencies with it.
#[inline(always)]
pub fn reduction<L: Ledger>(reduction: &ScrewReduction, sheet: &mut L) {
    super::reduction::given(reduction, sheet);
    sheet.computed(ch::TOTAL_EFFICIENCY, &layout::PRODUCT, (ch::SCREW_EFFICIENCY, ch::REDUCTION_EFFICIENCY));
    sheet.computed(
        ch::TOTAL_BACK_EFFICIENCY,
        &layout::PRODUCT,
        (ch::BACK_DRIVING_EFFICIENCY, ch::REDUCTION_EFFICIENCY),
    );
}

/// Works out the largest torque on the part that turns, whose inertia is named.
#[inline(always)]
pub fn shaft_torque<L: Ledger>(inertia: Characteristic<MomentOfInertia>, sheet: &mut L) {
    sheet.computed(
        ch::SHAFT_TORQUE,
        &layout::SHAFT_TORQUE,
        (ch::PEAK_FORCE, ch::LEAD, ch::SCREW_EFFICIENCY, ch::DRAG_TORQUE, inertia, ch::ACCELERATION),
    );
}

/// Works out what an emergency stop does to coupling or belt.
#[inline(always)]
pub fn stop<L: Ledger>(sheet: &mut L) {
    sheet.computed(
        ch::REDUCTION_STOP_TORQUE,
        &stop::REDUCTION_STOP_TORQUE,
        (ch::SET_TORQUE, ch::LOAD_INERTIA, ch::ROTOR_INERTIA, ch::REDUCTION, ch::HOLDING_TORQUE),
    );
}

/// How smoothly screw or nut move the slide in the cut; a standing screw has no speed of its own.
#[inline(always)]
pub fn rhythm<L: Ledger>(turns: bool, sheet: &mut L) {
    sheet.aside(Aside::Comparing, |sheet| {
        sheet.computed(ch::TURN_MARKING_SPEED, &turn_motion::TURN_MARKING_SPEED, (ch::FIRST_MODE, ch::LEAD));
    });
    sheet.computed(ch::TURN_FREQUENCY_CUTTING, &turn_motion::TURN_FREQUENCY, (ch::CUTTING_SPEED, ch::LEAD));
    let rhythm = (ch::TURN_FREQUENCY_CUTTING, ch::FIRST_MODE);
    sheet.computed(ch::TURN_RHYTHM_DISTANCE, &mesh_motion::RESONANCE_DISTANCE, rhythm);
    crate::drive::rest::ripple(ch::TURN_FREQUENCY_CUTTING, sheet);
    if turns {
        sheet.computed(ch::CUTTING_SCREW_SPEED, &motion::SHAFT_SPEED, (ch::CUTTING_SPEED, ch::LEAD));
        sheet.aside(Aside::Comparing, |sheet| {
            sheet.given(ch::SCREW_DAMPING, defaults::parts::screw_damping(), Origin::Assumed);
            let bow = (ch::CUTTING_SCREW_SPEED, ch::WHIP_SPEED, ch::SCREW_DAMPING);
            sheet.computed(ch::BOW_IN_CUT, &shaft::BOW_AMPLIFICATION, bow);
        });
    } else {
        sheet.absent(ch::CUTTING_SCREW_SPEED);
        sheet.absent(ch::BOW_IN_CUT);
    }
}

/// What the screw's own errors within one turn add where no scale measures.
pub fn within_turn(scale: Option<&LinearScale>) -> mapping::WithinTurn {
    [scale.is_none().then_some(ch::TURN_VARIATION), None]
}

/// Enters what measures the position.
#[inline(always)]
pub fn feedback<L: Ledger>(demand: &Demand<'_>, scale: Option<&LinearScale>, sheet: &mut L) {
    feedback::enter_reader(demand, scale, defaults::parts::screw_scatter(), sheet);
    if scale.is_none() {
        let whole = (ch::MEAN_TRAVEL_DEVIATION, ch::TRAVEL_VARIATION);
        sheet.computed(ch::LONG_ERROR, &budget::ROOT_SUM_SQUARE_2, whole);
        sheet.aside(Aside::Section, |sheet| {
            let section = (ch::SECTION_TRAVEL_DEVIATION, ch::SECTION_TRAVEL_VARIATION);
            sheet.computed(ch::SECTION_LONG_ERROR, &budget::ROOT_SUM_SQUARE_2, section);
        });
        sheet.computed(ch::TEMPERATURE_RISE, &layout::TEMPERATURE_SUM, (ch::TEMPERATURE_SWING, ch::RISE_LEFT));
    }
    feedback::work_out(demand, scale, sheet);
    price::enter_feedback(scale, sheet);
}

/// The screw with its nut as components of a drive.
pub fn parts(catalog: &Catalog, path: &[u16], drives: f64) -> Vec<Part> {
    let (size, grade, class) = (picked_size(catalog, path), picked_grade(catalog, path), picked_class(catalog, path));
    let mut parts = vec![
        Part::new("ball-screw", &size.designation, drives, size.generic),
        Part::new("screw-grade", &grade.designation, drives, grade.generic),
        Part::new("preload-class", &class.designation, drives, class.generic),
    ];
    let support = picked_support(catalog, path);
    if support.pairs > 0 {
        let pairs = drives * f64::from(support.pairs);
        parts.push(Part::new("screw-support", &support.designation, pairs, support.generic));
    }
    parts
}

/// The main sizes of screw and nut; what lies between grade and preload is handed in.
pub fn sizes(catalog: &Catalog, path: &[u16], between: Option<Size>) -> Vec<Size> {
    let size = picked_size(catalog, path);
    let mut sizes = vec![
        Size::number("diameter", size.nominal_diameter.si() * 1e3, "mm"),
        Size::number("lead", size.lead.si() * 1e3, "mm"),
        Size::word("grade", &picked_grade(catalog, path).designation),
    ];
    let support = picked_support(catalog, path);
    if support.pairs > 0 {
        sizes.push(Size::word("supports", &support.designation));
    }
    sizes.extend(between);
    sizes.push(Size::word("preload", &picked_class(catalog, path).designation));
    sizes
}
