//! The screw between its ends through the whole working out of a drive: stretch, reliability, bores, missing ratings.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::catalog::{self, Catalog, Part};
use axiswright::characteristic as ch;
use axiswright::ledger::{Characteristic, Figures, Worksheet};
use axiswright::pipeline::{Inputs, check, recommend};
use axiswright::search::{MOST_STAGES, work_out};
use axiswright::units::*;
use std::sync::LazyLock;

static CATALOG: LazyLock<Catalog> = LazyLock::new(|| catalog::load(&[]).expect("the built-in catalogue loads"));

fn inputs(text: &str) -> Inputs {
    let inputs = Inputs { brief: small::brief(text), catalog: CATALOG.clone(), rulebook: small::rules() };
    check(inputs).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn place<P: Part>(parts: &[P], name: &str) -> u16 {
    let found = parts.iter().position(|part| part.designation() == name);
    u16::try_from(found.unwrap_or_else(|| panic!("no {name}"))).expect("few parts")
}

/// A turning screw of the whole catalogue, rolled to grade 7 with light preload: size, supports, bearing, ends.
fn screw(inputs: &Inputs, names: [&str; 4]) -> Worksheet {
    let catalog = &inputs.catalog;
    let mut path = [0; MOST_STAGES];
    path[0] = place(&catalog.ball_screws, names[0]);
    path[1] = place(&catalog.screw_supports, names[1]);
    path[2] = place(&catalog.screw_grades, "rolled-t7");
    path[3] = place(&catalog.preload_classes, "light");
    path[4] = place(&catalog.screw_bearings, names[2]);
    path[5] = place(&catalog.end_arrangements, names[3]);
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    work_out("ball-screw", &path, &demand, &setting).expect("the configuration exists").sheet
}

fn si<Q: Measure>(sheet: &Worksheet, characteristic: Characteristic<Q>) -> f64 {
    sheet.read(characteristic).si()
}

#[test]
fn stretched_ends_pull_the_screw_and_load_its_bearings_and_leave_less_growth() {
    let inputs = inputs(HORIZONTAL);
    let with = |ends: &str| screw(&inputs, ["screw-40x20", "no-supports", "axial-bearing-30-triple", ends]);
    let (plain, stretched) = (with("fixed-fixed"), with("fixed-fixed-stretched"));
    assert_eq!(si(&plain, ch::STRETCH_FORCE), 0.0);
    assert!(si(&stretched, ch::STRETCH_FORCE) > 1e3);
    assert!(si(&stretched, ch::WHIP_SPEED) > si(&plain, ch::WHIP_SPEED));
    assert!(si(&stretched, ch::COLUMN_USE) < si(&plain, ch::COLUMN_USE));
    assert!(si(&stretched, ch::RISE_LEFT) < si(&plain, ch::RISE_LEFT));
    // whichever end bears more without load lives shorter: the stretched one cold, the plain one once it is warm
    let standing = [&plain, &stretched].map(|sheet| si(sheet, ch::BEARING_STANDING_FORCE));
    let lives = [&plain, &stretched].map(|sheet| si(sheet, ch::BEARING_LIFE_HOURS));
    assert!(standing[1] >= si(&stretched, ch::STRETCH_FORCE) && standing[0] != standing[1]);
    assert_eq!(standing[0] > standing[1], lives[0] < lives[1], "{standing:?} {lives:?}");
    assert!(si(&plain, ch::THERMAL_COMPRESSION) > si(&stretched, ch::THERMAL_COMPRESSION));
    // the warm screw: plain ends are pressed by as much as the stretch would have taken
    let difference = si(&stretched, ch::WARM_AXIAL_FORCE) - si(&plain, ch::WARM_AXIAL_FORCE);
    assert!((difference / si(&stretched, ch::STRETCH_FORCE) - 1.0).abs() < 1e-9);
    // one thrust end: free to grow, so nothing stands
    let free = with("fixed-supported");
    assert_eq!((si(&free, ch::STANDING_FORCE), si(&free, ch::END_SHARE)), (0.0, 1.0));
    assert_eq!(si(&free, ch::RISE_LEFT).to_bits(), si(&free, ch::SCREW_WARMING).to_bits());
}

/// On an upright axis that only lifts, nothing presses a screw that hangs from its thrust bearing.
#[test]
fn a_hanging_screw_is_pressed_only_by_what_pushes_down() {
    let lifting =
        VERTICAL.replace("    cutting-force: 500 N\n    cutting-speed: 4 m/min\n", "").replace(", force: 500 N", "");
    let names = ["screw-32x20", "no-supports", "axial-bearing-25-pair", "fixed-supported"];
    let hanging = screw(&inputs(&lifting), names);
    assert_eq!(si(&hanging, ch::COLUMN_USE), 0.0);
    // a tool that may push up with 5 kN, more than the weight: the drive has to push the rest down
    let pushed =
        screw(&inputs(&lifting.replace("    people-below", "    cutting-force: 5 kN\n    people-below")), names);
    let weight = si(&pushed, ch::GRAVITY_FORCE);
    let pressing = si(&pushed, ch::PRESSING_FORCE);
    let friction = si(&pushed, ch::FRICTION_FORCE);
    assert!((pressing - (5000.0 - weight + friction)).abs() < 1e-6, "{pressing} at {weight}, {friction}");
    assert!((si(&pushed, ch::COLUMN_USE) * si(&pushed, ch::COLUMN_LOAD) - pressing).abs() < 1e-6);
    assert!(si(&hanging, ch::SCREW_SAG).abs() < 1e-12, "an upright screw does not sag");
}

#[test]
fn lives_fall_by_the_factors_of_the_reliability_asked() {
    let names = ["screw-40x20", "no-supports", "axial-bearing-30-pair", "fixed-supported"];
    let usual = screw(&inputs(HORIZONTAL), names);
    let sure = screw(&inputs(&format!("reliability: 99 %{HORIZONTAL}")), names);
    // ISO 3408-5 and ISO 281:2007, from memory
    for (life, factor) in [(ch::SCREW_LIFE_HOURS, 0.21), (ch::BEARING_LIFE_HOURS, 0.25)] {
        let ratio = si(&sure, life) / si(&usual, life);
        assert!((ratio / factor - 1.0).abs() < 1e-9, "{ratio} and {factor}");
    }
}

#[test]
fn a_bored_screw_weighs_less_whips_later_and_bears_less() {
    let inputs = inputs(HORIZONTAL);
    let with = |size: &str| screw(&inputs, [size, "no-supports", "axial-bearing-40-pair", "fixed-supported"]);
    let (solid, bored) = (with("screw-63x40"), with("screw-63x40-bored"));
    for (quantity, solid, bored) in [
        ("mass", si(&solid, ch::SCREW_MASS), si(&bored, ch::SCREW_MASS)),
        ("inertia", si(&solid, ch::SCREW_INERTIA), si(&bored, ch::SCREW_INERTIA)),
        ("column", si(&solid, ch::COLUMN_LOAD), si(&bored, ch::COLUMN_LOAD)),
        ("stiffness", si(&solid, ch::SCREW_STIFFNESS), si(&bored, ch::SCREW_STIFFNESS)),
        ("torsion", si(&solid, ch::SCREW_TORSION), si(&bored, ch::SCREW_TORSION)),
        ("sag", si(&solid, ch::SCREW_SAG), si(&bored, ch::SCREW_SAG)),
    ] {
        assert!(bored < solid, "{quantity}: {bored}, solid {solid}");
    }
    assert!(si(&bored, ch::WHIP_SPEED) > si(&solid, ch::WHIP_SPEED));
    assert!(si(&bored, ch::SCREW_STRESS) > si(&solid, ch::SCREW_STRESS));
}

#[test]
fn a_pair_of_supports_parts_the_screw_and_rides_along() {
    let inputs =
        inputs(&HORIZONTAL.replace("travel: 0.9 m", "travel: 3 m").replace("speed: 36 m/min", "speed: 20 m/min"));
    let with = |support: &str, ends: &str| screw(&inputs, ["screw-40x40", support, "axial-bearing-30-pair", ends]);
    for ends in ["fixed-fixed", "fixed-supported"] {
        let (none, pair) = (with("no-supports", ends), with("support-pair", ends));
        let gain = si(&pair, ch::WHIP_SPEED) / si(&none, ch::WHIP_SPEED);
        assert!((2.0..4.0).contains(&gain), "{ends}: {gain}");
        assert!(si(&pair, ch::SCREW_SAG) < 0.25 * si(&none, ch::SCREW_SAG), "{ends}");
        assert!(si(&pair, ch::SCREW_WEIGHT_ON_NUT) < 0.6 * si(&none, ch::SCREW_WEIGHT_ON_NUT), "{ends}");
        assert!(si(&pair, ch::RIDING_MASS) > si(&none, ch::RIDING_MASS), "{ends}");
        assert!(si(&pair, ch::SUPPORT_PRICE) > si(&none, ch::SUPPORT_PRICE), "{ends}");
    }
    // a free end gets no credit
    let (none, pair) = (with("no-supports", "fixed-free"), with("support-pair", "fixed-free"));
    assert!(si(&pair, ch::WHIP_SPEED) < si(&none, ch::WHIP_SPEED));
}

/// A size of one's own without ratings: they are worked out, the advice says so, and so does the list of assumptions.
#[test]
fn a_rating_that_is_left_out_is_estimated_and_told() {
    let own = "kind: ball-screw
basis: drawing
series: none
lead-time: 0 weeks
entries:
  - { designation: own-32x10, nominal-diameter: 32 mm, lead: 10 mm, starts: 1, recirculation: deflector,
      acceleration-limit: 15 m/s², turns: 4, ball-diameter: 6.35 mm, ball-circle-diameter: 33 mm, root-diameter: 26.5 mm,
      bore: 0 mm, nut-diameter: 51 mm, nut-length: 74 mm, nut-mass: 0.97 kg, nut-stiffness: 566 N/µm, price-factor: 1 }
";
    let layers = vec![catalog::built_in(), vec![("own.yaml".to_string(), own.to_string())]];
    let mut slow = inputs(&HORIZONTAL.replace("36 m/min", "12 m/min"));
    slow.catalog = small::cut_with(catalog::load_layers(layers).expect("it loads"), "own-32x10");
    let names = ["own-32x10", "no-supports", "axial-bearing-25-pair", "fixed-supported"];
    let sheet = screw(&slow, names);
    assert_eq!(si(&sheet, ch::RATING_ESTIMATED), 1.0);
    // 36.17 and 86.04 kN by the formulas of ISO 3408-5 (from memory)
    assert!((si(&sheet, ch::SIZE_DYNAMIC_RATING) / 36.17e3 - 1.0).abs() < 1e-3);
    assert!((si(&sheet, ch::SIZE_STATIC_RATING) / 86.04e3 - 1.0).abs() < 1e-3);
    let record = recommend(&slow, false);
    let told = record.assumptions.iter().find(|assumption| assumption.key == "screws.rating-estimated");
    assert!(told.expect("told").value.contains("own-32x10"));
    let rule = slow.rulebook.find("rating-stated").expect("the advice");
    assert!(!rule.passed(&sheet));
    let stated = screw(&inputs(HORIZONTAL), ["screw-32x10", names[1], names[2], names[3]]);
    assert!(rule.passed(&stated) && si(&stated, ch::RATING_ESTIMATED) == 0.0);
    let usual = recommend(&small::inputs(HORIZONTAL), false);
    assert!(usual.assumptions.iter().all(|assumption| assumption.key != "screws.rating-estimated"));
}

/// A driven nut of the whole catalogue on this size, rolled to grade 7 with light preload, with the first of everything else.
fn driven_nut(inputs: &Inputs, size: &str) -> Worksheet {
    let catalog = &inputs.catalog;
    let mut path = [0; MOST_STAGES];
    path[0] = place(&catalog.ball_screws, size);
    path[1] = place(&catalog.screw_supports, "no-supports");
    path[2] = place(&catalog.screw_grades, "rolled-t7");
    path[3] = place(&catalog.preload_classes, "light");
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    work_out("driven-nut", &path, &demand, &setting).expect("the configuration exists").sheet
}

/// Granite grows by 5 µm/(m·K) less than steel, aluminium by 12.3 more; the swing of 10 K goes both ways.
#[test]
fn a_bed_of_another_expansion_presses_and_stretches_a_screw_held_at_both_ends() {
    let on = |bed: &str| {
        inputs(
            &format!("temperature-swing: 10 K{HORIZONTAL}")
                .replace("    speed:", &format!("    bed: {bed}\n    speed:")),
        )
    };
    let turning =
        |bed: &str, ends: &str| screw(&on(bed), ["screw-40x20", "no-supports", "axial-bearing-30-pair", ends]);
    let standing = |bed: &str| driven_nut(&on(bed), "screw-40x20");
    for (bed, apart) in [("granite", 5.0), ("aluminium", 12.3)] {
        for (steel, other, springs) in [
            (turning("steel", "fixed-fixed-stretched"), turning(bed, "fixed-fixed-stretched"), ch::BEARING_STIFFNESS),
            (standing("steel"), standing(bed), ch::CLAMP_STIFFNESS),
        ] {
            let length = si(&other, ch::FREE_LENGTH);
            let area = std::f64::consts::FRAC_PI_4 * si(&other, ch::CORE_DIAMETER).powi(2);
            let force = apart * 1e-6 * 10.0 * length / (length / (206e9 * area) + 2.0 / si(&other, springs));
            assert_eq!(si(&steel, ch::COLD_AXIAL_FORCE), si(&steel, ch::STRETCH_FORCE));
            let warmer = si(&steel, ch::WARM_AXIAL_FORCE) - si(&other, ch::WARM_AXIAL_FORCE);
            assert!((warmer / force - 1.0).abs() < 1e-9, "{bed}: {warmer}, by hand {force}");
            let colder = si(&other, ch::COLD_AXIAL_FORCE) - si(&steel, ch::COLD_AXIAL_FORCE);
            assert!((colder / force - 1.0).abs() < 1e-9, "{bed}: {colder}, by hand {force}");
            assert!(si(&other, ch::STANDING_FORCE) > si(&steel, ch::STANDING_FORCE));
            assert!(si(&other, ch::SCREW_STRESS) > si(&steel, ch::SCREW_STRESS));
            assert!(si(&other, ch::COLUMN_USE) > si(&steel, ch::COLUMN_USE));
        }
        let held = [turning("steel", "fixed-fixed"), turning(bed, "fixed-fixed")];
        let [steel, other] = &held;
        assert!(si(other, ch::WHIP_SPEED) < si(steel, ch::WHIP_SPEED));
        assert!(si(other, ch::BEARING_LIFE_HOURS) < si(steel, ch::BEARING_LIFE_HOURS));
        assert!(si(&standing(bed), ch::WARM_WHIP_SPEED) < si(&standing("steel"), ch::WARM_WHIP_SPEED));
        // an end that lets the screw grow takes no harm
        let free = [turning("steel", "fixed-supported"), turning(bed, "fixed-supported")];
        for quantity in [ch::STANDING_FORCE, ch::WARM_AXIAL_FORCE, ch::COLD_AXIAL_FORCE] {
            assert_eq!(si(&free[0], quantity), si(&free[1], quantity));
        }
    }
}

/// What racks the sides harder wears nut and bearings more and warms the screw, on top of the same motion.
#[test]
fn racking_counts_in_the_lives_and_the_heat_of_two_screws() {
    let with = |apart: &str| {
        let two =
            format!("    drives: 2\n    drive-spacing: 2 m\n    side-temperature-difference: {apart}\n    speed:");
        inputs(&HORIZONTAL.replace("    speed:", &two))
    };
    let turning = |apart: &str| {
        screw(&with(apart), ["screw-40x20", "no-supports", "axial-bearing-30-pair", "fixed-fixed-stretched"])
    };
    let standing = |apart: &str| driven_nut(&with(apart), "screw-40x20");
    for (little, much) in [(turning("1 K"), turning("6 K")), (standing("1 K"), standing("6 K"))] {
        let racking = si(&much, ch::RACKING_FORCE) - si(&little, ch::RACKING_FORCE);
        assert!(racking > 100.0, "{racking}");
        for life in [ch::SCREW_LIFE_HOURS, ch::BEARING_LIFE_HOURS] {
            assert!(si(&much, life) < si(&little, life), "{} and {}", si(&much, life), si(&little, life));
        }
        let friction = 1.0 / si(&much, ch::SCREW_EFFICIENCY) - 1.0;
        let heat = 0.5 * racking * si(&much, ch::MEAN_SPEED) * friction;
        let more = si(&much, ch::NUT_HEAT) - si(&little, ch::NUT_HEAT);
        assert!((more / heat - 1.0).abs() < 1e-9, "{more} and {heat}");
        assert!(si(&much, ch::WARM_AXIAL_FORCE) < si(&little, ch::WARM_AXIAL_FORCE));
    }
}
