//! What the trade knows, asked of the whole catalogue but for gearboxes.
//!
//! Every statement here is common practice, no source.

use crate::small;
use axiswright::catalog::{self, Catalog};
use axiswright::characteristic as ch;
use axiswright::drive::{BallScrewDrive, Demand, Family};
use axiswright::ledger::{Figures, Known};
use axiswright::pipeline::{self, Inputs, recommend};
use axiswright::record::{DecisionRecord, FamilyRecord, Outcome};
use axiswright::search::MOST_STAGES;
use axiswright::units::Measure;
use std::sync::LazyLock;

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| catalog::load(&[]).expect("the built-in catalogue loads"));

/// The built-in catalogue with four ratios of the gearboxes of standard play, so that a test takes seconds.
fn inputs(text: &str) -> Inputs {
    let mut catalog = CATALOG.clone();
    let wanted =
        |name: &str| name.contains("standard") && ["-i5", "-i7", "-i10", "-i20"].iter().any(|end| name.ends_with(end));
    catalog.gearboxes.retain(|gearbox| wanted(&gearbox.designation));
    assert_eq!(catalog.gearboxes.len(), 24);
    let inputs = Inputs { brief: small::brief(text), catalog, rulebook: small::rules() };
    pipeline::check(inputs).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn family_of(record: &DecisionRecord) -> &str {
    assert_eq!(record.outcome, Outcome::Chosen);
    &record.axes[0].chosen.as_ref().expect("a drive").family
}

/// Every screw without supports with every way to hold its ends in the stiffest bearing whose journal its root leaves,
/// worked out as far as these decide: designation of the screw, of the ends, and the sheet.
fn screws<'c>(demand: &Demand<'_>, catalog: &'c Catalog) -> Vec<(&'c str, &'c str, Known)> {
    const BEARING: usize = 4;
    const ENDS: usize = 5;
    let family = BallScrewDrive::new(demand, catalog);
    let mut all = Vec::new();
    assert_eq!(catalog.screw_supports[0].pairs, 0);
    for (size, screw) in catalog.ball_screws.iter().enumerate() {
        let fits = |bore: f64| bore <= 0.95 * screw.root_diameter.value;
        let fitting = catalog.screw_bearings.iter().enumerate().filter(|(_, bearing)| fits(bearing.bore.value));
        let stiffest = fitting.max_by(|a, b| a.1.tilt_stiffness.value.total_cmp(&b.1.tilt_stiffness.value));
        let bearing = stiffest.expect("a bearing that fits").0;
        for (place, ends) in catalog.end_arrangements.iter().enumerate() {
            let mut path = [0; MOST_STAGES];
            (path[0], path[BEARING], path[ENDS]) = (size as u16, bearing as u16, place as u16);
            let mut sheet = Known::default();
            demand.enter(&mut sheet);
            for stage in 0..=ENDS {
                family.enter(stage, &path, &mut sheet);
            }
            all.push((screw.designation.as_str(), ends.designation.as_str(), sheet));
        }
    }
    all
}

fn gantry(travel: &str) -> String {
    format!(
        "
machine: Long gantry
axes:
  gantry:
    direction: horizontal
    travel: {travel}
    moved-mass: 1200 kg
    drives: 2
    drive-spacing: 2.5 m
    speed: 40 m/min
    acceleration: 2 m/s²
    cutting-force: 1 kN
    section-accuracy: 0.2 mm
    reversal: 0.16 mm
    ripple: 0.02 mm
    feedback: motor
"
    )
}

/// Common practice, no source: a long gantry at 40 m/min runs on helical racks, for every screw of such a length whips.
#[test]
fn a_long_gantry_gets_a_helical_rack_and_no_screw_passes_the_whip_rule() {
    for travel in ["4 m", "8 m", "12 m"] {
        let inputs = inputs(&gantry(travel));
        let whip = inputs.rulebook.find("screw-whip").expect("the rule on whip");
        let demand = small::demand(&inputs, 0);
        for (screw, ends, sheet) in screws(&demand, &inputs.catalog) {
            assert!(!whip.passed(&sheet), "{screw}, {ends}, {travel}: {}", whip.utilisation(&sheet));
        }
        let record = recommend(&inputs, false);
        assert_eq!(family_of(&record), "helical-rack", "{travel}");
        let family =
            |id: &str| record.axes[0].families.iter().find(|family| family.family == id).expect("all families");
        assert_eq!(family("ball-screw").admissible, 0, "{travel}");
        assert!(family("straight-rack").admissible > 0 && family("helical-rack").admissible > 0, "{travel}");
    }
}

/// Common practice, no source: a spindle on a short vertical axis hangs on a ball screw.
#[test]
fn a_short_vertical_axis_gets_a_ball_screw() {
    let text = "
machine: Short ram
axes:
  ram:
    direction: vertical
    travel: 300 mm
    moved-mass: 120 kg
    people-below: false
    speed: 15 m/min
    acceleration: 2 m/s²
    cutting-force: 600 N
    accuracy: 0.05 mm
    reversal: 0.02 mm
    feedback: motor
";
    assert_eq!(family_of(&recommend(&inputs(text), false)), "ball-screw");
}

fn table(travel: f64) -> String {
    format!(
        "
machine: Table
axes:
  table:
    direction: horizontal
    travel: {travel:?} m
    moved-mass: 300 kg
    speed: 60 m/min
    acceleration: 3 m/s²
"
    )
}

/// Travel at which a screw with this nut is free over this length.
fn travel_for(free: f64, screw: &str) -> f64 {
    let inputs = inputs(&table(1.0));
    let all = screws(&small::demand(&inputs, 0), &inputs.catalog);
    let (_, _, sheet) = all.iter().find(|(name, _, _)| *name == screw).expect("the screw");
    1.0 + free - sheet.value(ch::FREE_LENGTH.slot)
}

/// Common practice, no source: twice the free length, a quarter of the whip speed. Ends that give hold a longer screw
/// relatively better, so a little more than a quarter is left.
#[test]
fn doubling_the_free_length_of_a_screw_quarters_its_whip_speed() {
    for screw in ["screw-16x5", "screw-40x20", "screw-125x25"] {
        let at = |free: f64| {
            let inputs = inputs(&table(travel_for(free, screw)));
            let all = screws(&small::demand(&inputs, 0), &inputs.catalog);
            let mine = all.into_iter().filter(|(name, _, _)| *name == screw);
            mine.map(|(_, ends, sheet)| {
                (ends, sheet.read(ch::FREE_LENGTH).value, sheet.read(ch::BARE_WHIP_SPEED).value)
            })
            .map(|(ends, free, whip)| (ends.to_string(), free, whip))
            .collect::<Vec<_>>()
        };
        let (short, long) = (at(1.1), at(2.2));
        assert_eq!(short.len(), 4);
        for ((ends, free, whip), (_, twice, quarter)) in short.iter().zip(&long) {
            assert!((twice / free - 2.0).abs() < 1e-12, "{screw}: {free}, {twice}");
            let fall = whip / quarter;
            assert!(fall > 3.0 && fall < 4.0 + 1e-9, "{screw}, {ends}: {whip}, {quarter}");
        }
    }
}

/// Common practice, no source: a screw of 96 in (2.44 m), held firmly at both ends, is out at 60 m/min with any lead up
/// to 20 mm; a rack does not notice that speed.
#[test]
fn a_screw_of_2_44_m_is_out_at_a_speed_that_a_rack_does_not_notice() {
    let mut tried = 0;
    for screw in &CATALOG.ball_screws {
        if screw.lead.value > 0.0201 {
            continue;
        }
        let inputs = inputs(&table(travel_for(2.44, &screw.designation)));
        let whip = inputs.rulebook.find("screw-whip").expect("the rule on whip");
        let all = screws(&small::demand(&inputs, 0), &inputs.catalog);
        let (_, _, sheet) = all
            .iter()
            .find(|(name, ends, _)| *name == screw.designation && *ends == "fixed-fixed")
            .expect("held firmly at both ends");
        assert!((sheet.value(ch::FREE_LENGTH.slot) - 2.44).abs() < 1e-12);
        assert!(!whip.passed(sheet), "{}: {}", screw.designation, whip.utilisation(sheet));
        tried += 1;
    }
    assert!(tried >= 15, "only {tried} screws");
    // the same table on the cut-down catalogue, which has racks of common size
    let inputs = small::inputs(&table(2.1));
    let record = recommend(&inputs, false);
    for family in ["straight-rack", "helical-rack"] {
        let family = record.axes[0].families.iter().find(|searched| searched.family == family).expect("racks");
        assert!(family.admissible > 100, "{}: {}", family.family, family.admissible);
        assert!(family.excluded_by.iter().all(|exclusion| exclusion.rule != "rack-speed"), "{:?}", family.excluded_by);
    }
}

/// Statics: an upright axis that stands while a force pushes it holds its weight and, either way being possible, the
/// force on top of it.
#[test]
fn a_standing_axis_holds_the_force_that_pushes_it() {
    let brief = "
machine: Ram that stands in the cut
axes:
  ram:
    direction: vertical
    travel: 0.5 m
    moved-mass: 100 kg
    speed: 20 m/min
    acceleration: 2 m/s²
    cutting-force: 2 kN
    duty:
      - { share: 20 %, speed: 20 m/min, stroke: 0.4 m }
      - { share: 80 %, stand: true, force: 2 kN }
";
    let inputs = inputs(brief);
    let demand = small::demand(&inputs, 0);
    let standing = demand.phases.iter().position(|phase| phase.direction == 0.0).expect("one share stands");
    let family = BallScrewDrive::new(&demand, &inputs.catalog);
    let mut sheet = Known::default();
    demand.enter(&mut sheet);
    for stage in 0..2 {
        family.enter(stage, &[0; MOST_STAGES], &mut sheet);
    }
    let held = sheet.read(ch::PHASE_FORCE.phase(standing)).si();
    let weight = sheet.read(ch::GRAVITY_FORCE).si();
    assert!((held - weight - 2000.0).abs() < 1e-9, "{held} N held at a weight of {weight} N");
}

fn long_axis(travel: &str, speed: &str) -> String {
    format!(
        "
machine: Long table
axes:
  table:
    direction: horizontal
    travel: {travel}
    moved-mass: 800 kg
    speed: {speed}
    acceleration: 1.5 m/s²
    cutting-force: 1 kN
"
    )
}

fn family<'r>(record: &'r DecisionRecord, id: &str) -> &'r FamilyRecord {
    record.axes[0].families.iter().find(|searched| searched.family == id).expect("all families are searched")
}

/// Common practice, no source: near 4 m and 45 m/min a turning screw whips; with a driven nut it still serves, dearer
/// than the rack.
#[test]
fn near_4_m_at_45_m_per_minute_a_driven_nut_serves_where_a_turning_screw_whips() {
    let record = recommend(&inputs(&long_axis("3.8 m", "45 m/min")), false);
    assert_eq!(family(&record, "ball-screw").admissible, 0);
    let (nut, rack) = (family(&record, "driven-nut"), family(&record, "helical-rack"));
    assert!(nut.admissible > 0 && rack.admissible > 0);
    let cost = |family: &FamilyRecord| family.best.as_ref().expect("admissible").cost.whole_life;
    assert!(cost(nut) > cost(rack), "{} and {}", cost(nut), cost(rack));
    let best = nut.best.as_ref().expect("admissible");
    assert!(best.components.iter().any(|part| part.role == "nut-unit"));
    assert!(best.cost.lines.iter().any(|line| line.item == "ball screws with nuts and nut units"));
}

/// Common practice, no source: at 6 m a screw of any size sags more than 1.5 mm between its clamps; with supports that
/// travel with the nut it serves, and is told with its cost beside the rack.
#[test]
fn a_6_m_axis_lists_an_admissible_driven_nut_with_its_cost_beside_the_rack() {
    let record = recommend(&inputs(&long_axis("6 m", "15 m/min")), false);
    let (nut, rack) = (family(&record, "driven-nut"), family(&record, "helical-rack"));
    assert!(nut.admissible > 0);
    let (driven, best) = (nut.best.as_ref().expect("admissible"), rack.best.as_ref().expect("admissible"));
    assert!(driven.components.iter().any(|part| part.role == "screw-support"), "{:?}", driven.components);
    assert!(driven.cost.whole_life.is_finite() && driven.cost.purchase > 0.0 && best.cost.purchase > 0.0);
    // without supports every screw of that length sags too far
    let mut bare = inputs(&long_axis("6 m", "15 m/min"));
    bare.catalog.screw_supports.retain(|support| support.pairs == 0);
    let record = recommend(&bare, false);
    let nut = family(&record, "driven-nut");
    assert_eq!(nut.admissible, 0);
    assert!(nut.ruled_out_by.iter().any(|finding| finding.rule == "screw-sag-limit"), "{:?}", nut.ruled_out_by);
}

/// Common practice, no source: over people no belt may part the brake from the load, so no driven nut either.
#[test]
fn no_driven_nut_hangs_over_people() {
    let ram = |people: bool| {
        let text = "
machine: Ram
axes:
  ram:
    direction: vertical
    travel: 1.5 m
    moved-mass: 150 kg
    people-below: PEOPLE
    speed: 30 m/min
    acceleration: 2 m/s²
    families: [driven-nut]
";
        let record = recommend(&inputs(&text.replace("PEOPLE", if people { "true" } else { "false" })), false);
        family(&record, "driven-nut").admissible
    };
    assert_eq!(ram(true), 0);
    assert!(ram(false) > 0);
}
