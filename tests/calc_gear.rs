//! `calc` on pinion, rack, gearbox and fasteners: arguments, defaults, units, validity and refusals.
//!
//! Expected values are those of the reference and method tests, and of standards named beside them.

use axiswright::calc::{Answer, calculate, find};
use std::f64::consts::PI;

fn call(id: &str, arguments: &str) -> Result<Answer, String> {
    let pairs: Vec<(String, String)> = arguments
        .split(' ')
        .filter(|text| !text.is_empty())
        .map(|text| text.split_once('=').expect("name=value"))
        .map(|(name, value)| (name.into(), value.into()))
        .collect();
    calculate(id, &pairs).map_err(|error| error.to_string())
}

fn answer(id: &str, arguments: &str) -> Answer {
    call(id, arguments).unwrap_or_else(|error| panic!("{id} {arguments}: {error}"))
}

#[test]
fn each_formula_gives_its_value_in_its_unit() {
    let pair = "module=2mm teeth=20 helix=metric face-width=24mm";
    let plain = "module=2mm teeth=20 helix=straight face-width=24mm";
    for (id, arguments, value, tolerance, unit) in [
        ("pinion-diameter", "module=2mm teeth=20 helix=straight".to_string(), 40.0, 1e-12, "mm"),
        ("pinion-diameter", "module=2mm teeth=20 helix=metric".into(), 400.0 / 3.0 / PI, 1e-11, "mm"),
        ("pinion-diameter", "module=2mm teeth=20 helix=19.52808deg".into(), 42.441, 5e-4, "mm"),
        ("transverse-contact-ratio", pair.into(), 1.615, 5e-4, "1"),
        ("transverse-contact-ratio", "module=2mm teeth=20 helix=straight".into(), 1.769, 5e-4, "1"),
        ("transverse-contact-ratio", format!("{plain} profile-shift=0.5"), 1.582, 5e-4, "1"),
        ("overlap-ratio", pair.into(), 1.277, 5e-4, "1"),
        ("overlap-ratio", plain.into(), 0.0, 0.0, "1"),
        ("total-contact-ratio", pair.into(), 2.892, 5e-4, "1"),
        ("tip-form-factor", "teeth=20".into(), 2.80, 5e-3, "1"),
        ("tip-form-factor", "teeth=rack".into(), 2.06, 5e-3, "1"),
        ("tip-stress-correction", "teeth=20".into(), 1.55, 5e-3, "1"),
        ("tip-stress-correction", "teeth=rack".into(), 1.97, 5e-3, "1"),
        ("permissible-tooth-force", pair.into(), 6.32, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} rack-cycles=1e7"), 5.42, 5e-3, "kN"),
        ("permissible-tooth-force", plain.into(), 5.68, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} rack-material=through-hardened"), 4.33, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} rack-material=case-hardened"), 6.88, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} grade=8"), 4.73, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} speed=3m/s"), 6.05, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} face-load-factor=1.15"), 7.00, 5e-3, "kN"),
        ("permissible-tooth-force", format!("{pair} reversal-factor=1"), 9.08, 5e-3, "kN"),
        ("contact-line-minimum", "transverse-contact-ratio=1.615 overlap-ratio=1.277".into(), 1.4816, 5e-5, "1"),
        ("contact-line-maximum", "transverse-contact-ratio=1.615 overlap-ratio=1.277".into(), 1.6985, 5e-5, "1"),
        ("contact-line-minimum", "transverse-contact-ratio=1.769 overlap-ratio=0".into(), 1.0, 0.0, "1"),
        ("mesh-ripple", format!("force=1kN {plain}"), 1.66, 5e-3, "µm"),
        ("mesh-ripple", format!("force=1kN {pair}"), 0.30, 5e-3, "µm"),
        ("mesh-ripple", format!("force=1kN {plain} pitch-deviation=12.24um"), 12.4, 5e-2, "µm"),
        ("mesh-ripple", format!("force=1kN {pair} pitch-deviation=12.24um"), 7.2, 5e-2, "µm"),
        ("mesh-stiffness", pair.into(), 417.0, 0.5, "N/µm"),
        ("total-pitch-deviation", "diameter=42.44mm module=2mm class=6".into(), 24.1, 5e-2, "µm"),
        ("single-pitch-deviation", "diameter=42.44mm module=2mm class=6".into(), 8.3, 5e-2, "µm"),
        ("backlash-at-rack", "angle=1arcmin pinion-diameter=42.44mm".into(), 6.17, 5e-3, "µm"),
        (
            "gearbox-linear-stiffness",
            "torsional-stiffness=9Nm/arcmin pinion-diameter=42.44mm".into(),
            68.7,
            5e-2,
            "N/µm",
        ),
        // VDI 2230 part 1:2003, table A1 from memory, and a handbook page for M8x1
        ("bolt-preload", "thread=M8 class=12.9".into(), 32.0, 5e-2, "kN"),
        ("bolt-preload", "thread=M12 class=8.8 friction=0.14".into(), 41.9, 5e-2, "kN"),
        ("bolt-preload", "thread=M8x1 class=10.9".into(), 29.7, 5e-2, "kN"),
        ("bolt-preload", "thread=M20x1.5 class=8.8".into(), 148.0, 0.5, "kN"),
        ("least-teeth", "helix=metric".into(), 14.52, 5e-3, "1"),
        ("least-profile-shift", "teeth=12 helix=straight".into(), 0.298, 5e-4, "1"),
        ("tip-thickness", "teeth=20 helix=straight profile-shift=0.5".into(), 0.473, 5e-4, "1"),
        ("radial-load", "tangential-force=1kN helix=metric".into(), 1072.0, 5e-2, "N"),
        ("mesh-efficiency", "module=2mm teeth=20 helix=metric friction=0.09".into(), 0.9895, 5e-5, "1"),
    ] {
        let found = answer(id, &arguments);
        assert_eq!(found.unit, unit, "{id}");
        assert!((found.value - value).abs() <= tolerance, "{id} {arguments}: {} {unit}, expected {value}", found.value);
        assert!(found.within_validity, "{id} {arguments}: {:?}", found.remarks);
    }
}

#[test]
fn the_metric_helix_gives_round_travel_to_twelve_digits() {
    for (module, travel) in [("1.5mm", 100.0), ("3mm", 200.0), ("6mm", 400.0), ("12mm", 800.0)] {
        let diameter = answer("pinion-diameter", &format!("module={module} teeth=20 helix=metric")).value;
        assert!((diameter * PI / travel - 1.0).abs() < 1e-14, "module {module}: {}", diameter * PI);
    }
}

#[test]
fn safety_divides_the_stress_limit_and_the_governing_part_is_named() {
    let pair = "module=2mm teeth=20 helix=metric face-width=24mm";
    let usual = answer("permissible-tooth-force", pair);
    assert!(usual.remarks.iter().any(|remark| remark == "the rack roots govern"), "{:?}", usual.remarks);
    assert_eq!(usual.steps.iter().map(|step| step.symbol).collect::<Vec<_>>(), ["F_H1", "F_F1", "F_H2", "F_F2"]);
    // stress goes with the root of the force on flanks: S_H 1.3 leaves 1/1.69, less the dynamic factor
    let flank = answer("permissible-tooth-force", &format!("{pair} flank-safety=1.3"));
    let share = flank.steps[0].value / usual.steps[0].value;
    assert!(share > 0.58 && share < 1.0 / 1.69, "share {share}");
    assert_eq!(flank.steps[1], usual.steps[1]);
    let root = answer("permissible-tooth-force", &format!("{pair} root-safety=1.8"));
    let share = root.steps[3].value / usual.steps[3].value;
    assert!(share > 0.765 && share < 1.4 / 1.8, "share {share}");
}

#[test]
fn teeth_that_no_cutter_makes_lie_outside_validity() {
    for (id, arguments) in [
        ("transverse-contact-ratio", "module=2mm teeth=12 helix=straight"),
        ("total-contact-ratio", "module=2mm teeth=12 helix=straight face-width=24mm"),
        ("tip-form-factor", "teeth=12"),
        ("tip-thickness", "teeth=12 helix=straight profile-shift=1.5"),
        ("pinion-diameter", "module=2mm teeth=20.5 helix=metric"),
        ("permissible-tooth-force", "module=2mm teeth=12 helix=straight face-width=24mm"),
        ("permissible-tooth-force", "module=2mm teeth=20 helix=35deg face-width=24mm"),
        ("permissible-tooth-force", "module=2mm teeth=20 helix=metric face-width=24mm speed=60m/s"),
        ("permissible-tooth-force", "module=2mm teeth=20 helix=metric face-width=24mm grade=4"),
        ("total-pitch-deviation", "diameter=42mm module=2mm class=12"),
        ("contact-line-minimum", "transverse-contact-ratio=0.9 overlap-ratio=1"),
    ] {
        let found = answer(id, arguments);
        assert!(!found.within_validity && !found.remarks.is_empty(), "{id} {arguments}");
        assert!(found.value.is_finite());
    }
}

#[test]
fn what_cannot_be_is_refused_with_its_name() {
    for (id, arguments, words) in [
        ("pinion-diameter", "module=2mm teeth=20 helix=spiral", "`helix` cannot be `spiral`"),
        ("pinion-diameter", "module=2mm teeth=20 helix=50deg", "`helix` must lie below 45 deg"),
        ("pinion-diameter", "module=2mm teeth=20", "`helix` is missing"),
        ("tip-form-factor", "teeth=3", "`teeth` must be at least 4"),
        ("tip-form-factor", "teeth=rack profile-shift=0.2", "a rack tooth has no `profile-shift`"),
        ("permissible-tooth-force", "module=2mm teeth=20 helix=metric face-width=24mm grade=11", "must not exceed 10"),
        (
            "permissible-tooth-force",
            "module=2mm teeth=20 helix=metric face-width=24mm rack-material=hardened",
            "`rack-material` cannot be `hardened`",
        ),
        ("bolt-preload", "thread=8mm class=12.9", "must be a metric thread"),
        ("bolt-preload", "thread=M8x2 class=12.9", "must not be coarser"),
        ("bolt-preload", "thread=M8 class=5.6", "`class` cannot be `5.6`"),
        ("mesh-stiffness", "module=2mm teeth=20 helix=metric face-width=0mm", "`face-width` must be above zero"),
    ] {
        let error = call(id, arguments).expect_err(arguments);
        assert!(error.contains(words), "{id} {arguments}: {error}");
    }
}

#[test]
fn optional_arguments_are_shown_with_their_defaults() {
    let usage = find("permissible-tooth-force").expect("an entry").usage();
    for part in [
        "[pinion-material=case-hardened]",
        "[rack-material=induction-hardened]",
        "[pinion-cycles=1e8]",
        "[rack-cycles=1e6]",
        "[grade=6]",
        "[speed=1 m/s]",
        "[face-load-factor=1.3]",
        "[flank-safety=1.0]",
        "[root-safety=1.4]",
        "[reversal-factor=0.7]",
    ] {
        assert!(usage.contains(part), "{usage}");
    }
}

#[test]
fn the_factors_on_the_way_re_derive_what_flanks_and_roots_bear() {
    let factor = |answer: &Answer, symbol: &str| {
        let step = answer.steps.iter().find(|step| step.symbol == symbol);
        step.unwrap_or_else(|| panic!("no {symbol} in {answer:?}")).value
    };
    for helix in ["0deg", "19.52808deg"] {
        let mesh = format!("module=2mm teeth=20 profile-shift=0 face-width=24mm helix={helix}");
        let diameter = answer("pinion-diameter", &format!("module=2mm teeth=20 helix={helix}")).value;
        for side in ["pinion", "rack"] {
            let flank = answer(&format!("{side}-flank-endurance"), &format!("{mesh} flank-strength=1380MPa"));
            // ISO 6336-2: Z_E of steel on steel 189.8 √MPa, Z_H of straight teeth 2.495 at 20° (from memory)
            assert!((factor(&flank, "Z_E in √MPa") - 189.8).abs() < 0.05);
            assert!(helix != "0deg" || (factor(&flank, "Z_H") - 2.495).abs() < 5e-4);
            let stress: f64 =
                ["Z_B", "Z_H", "Z_E in √MPa", "Z_ε", "Z_β"].map(|name| factor(&flank, name)).iter().product();
            let force = 1380.0_f64.powi(2) * diameter * 24.0 / (stress * stress);
            assert!((force / flank.value - 1.0).abs() < 1e-9, "{side}: {force} N, {flank:?}");
            let steel = "root-strength=645.4MPa slip-layer=3µm";
            let root = answer(&format!("{side}-root-endurance"), &format!("{mesh} {steel}"));
            let stress = factor(&root, "Y_F") * factor(&root, "Y_S") * factor(&root, "Y_β");
            let force = 645.4 * factor(&root, "Y_δ") * 24.0 * 2.0 / stress;
            assert!((force / root.value - 1.0).abs() < 1e-9, "{side}: {force} N, {root:?}");
        }
    }
}
