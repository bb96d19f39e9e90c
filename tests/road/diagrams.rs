//! The curves that pictures are drawn from, and the pictures: held to what mechanics says of them and read as XML.

use crate::small::{self, MACHINE};
use axiswright::pipeline::recommend;
use axiswright::record::{AxisRecord, CandidateRecord, DecisionRecord, DiagramsRecord, DriveOverTravel};
use axiswright::report::{CHARTS, report};
use axiswright::units::UnitSystem;
use std::collections::BTreeSet;
use std::sync::LazyLock;

static RECORD: LazyLock<DecisionRecord> = LazyLock::new(|| recommend(&small::inputs(MACHINE), false));

fn diagrams(axis: &AxisRecord) -> &DiagramsRecord {
    axis.diagrams.as_ref().expect("every axis has its curves")
}

fn value(drive: &CandidateRecord, id: &str) -> f64 {
    drive.value(id).unwrap_or_else(|| panic!("{id} is worked out"))
}

/// The value of a curve between its points.
fn between(x: &[f64], y: &[f64], at: f64) -> f64 {
    let index = x.iter().position(|&one| one >= at).expect("within the curve").max(1);
    let share = (at - x[index - 1]) / (x[index] - x[index - 1]);
    y[index - 1] + share * (y[index] - y[index - 1])
}

/// Kinematics: the area under the speed is the travel, that under the acceleration is the speed; trapezoids, so about 1 %.
#[test]
fn a_move_covers_its_travel_and_ends_at_rest() {
    for axis in &RECORD.axes {
        let curve = &diagrams(axis).rapid_move;
        let chosen = axis.chosen.as_ref().expect("a drive");
        let area = |y: &[f64]| -> f64 {
            curve.time.windows(2).zip(y.windows(2)).map(|(t, y)| 0.5 * (t[1] - t[0]) * (y[0] + y[1])).sum()
        };
        let travel = area(&curve.speed) / 60.0;
        assert!((travel / curve.travel - 1.0).abs() < 0.01, "{travel} m of {} m", curve.travel);
        assert!(curve.travel <= value(chosen, "travel") / 1e3 * (1.0 + 1e-12));
        let top = curve.speed.iter().copied().fold(0.0, f64::max);
        let asked = value(chosen, "speed");
        assert!(top <= asked * (1.0 + 1e-9));
        let rising = curve.acceleration.iter().map(|a| if *a > 0.0 { *a } else { 0.0 }).collect::<Vec<_>>();
        assert!((area(&rising) * 60.0 / top - 1.0).abs() < 0.02, "speed from the acceleration");
        assert_eq!((curve.speed[0], *curve.speed.last().expect("a point")), (0.0, 0.0));
        assert!(curve.time.windows(2).all(|pair| pair[0] < pair[1]));
    }
}

/// The corners that define the two curves: standstill, rated point, knee, and nothing at the speed limit.
#[test]
fn the_torque_of_the_motor_passes_its_corners() {
    for axis in &RECORD.axes {
        let drive = axis.chosen.as_ref().expect("a drive");
        let curve = diagrams(axis).motor.as_ref().expect("the curve of its motor");
        let near = |one: f64, other: f64, within: f64| (one / other - 1.0).abs() < within;
        assert!(near(curve.continuous[0], value(drive, "standstill-torque"), 1e-9));
        let rated = between(&curve.speed, &curve.continuous, value(drive, "rated-speed"));
        assert!(near(rated, value(drive, "rated-torque"), 0.005), "{rated}");
        let knee = between(&curve.speed, &curve.peak, value(drive, "knee-speed"));
        assert!(near(knee, value(drive, "motor-peak-torque"), 1e-9), "{knee}");
        assert!(near(*curve.speed.last().expect("a point"), value(drive, "motor-speed-limit"), 1e-9));
        assert!(curve.peak.last().expect("a point").abs() < 1e-6 * curve.peak[0], "a motor without field weakening");
    }
}

fn tightest_here(drive: &DriveOverTravel, over: &[f64], travel: f64) -> f64 {
    let speeds: Vec<f64> = drive.at.iter().map(|at| at.speed).collect();
    between(over, &speeds, travel)
}

/// What a drive allows at the travel of the brief is what its findings say of it; a whip speed falls as the square of the
/// length between the bearings (Euler and Bernoulli's beam), so more travel never allows more speed.
#[test]
fn the_speed_that_drives_allow_agrees_with_their_findings_and_never_grows_with_travel() {
    let mut whips = 0;
    for axis in &RECORD.axes {
        let over = &diagrams(axis).over_travel;
        let chosen = axis.chosen.as_ref().expect("a drive");
        let (travel, speed) = (value(chosen, "travel") / 1e3, value(chosen, "speed"));
        assert_eq!(over.drives[0].family, chosen.family);
        for drive in &over.drives {
            let rules: BTreeSet<&str> = drive.at.iter().map(|at| at.rule.as_str()).collect();
            let worked = axis.families.iter().find(|family| family.family == drive.family).expect("a family");
            let of_family = if drive.family == chosen.family {
                Some(chosen)
            } else {
                worked.best.as_ref().or(worked.nearest.as_ref())
            };
            let findings = &of_family.expect("a drive").findings;
            let here = findings.iter().filter(|finding| rules.contains(finding.rule.as_str()));
            let worst = here.filter_map(|finding| finding.utilisation).fold(0.0, f64::max);
            let allowed = tightest_here(drive, &over.travel, travel);
            assert!((allowed * worst / speed - 1.0).abs() < 0.02, "{}: {allowed} m/min at {worst}", drive.family);
            for pair in drive.at.windows(2) {
                assert!(pair[1].speed <= pair[0].speed * (1.0 + 1e-9), "{}", drive.family);
                assert!(pair[1].stiffness <= pair[0].stiffness * (1.0 + 1e-9), "{}", drive.family);
            }
            let places: Vec<_> = drive.at.iter().zip(&over.travel).collect();
            for pair in places.windows(2).filter(|pair| pair.iter().all(|(at, _)| at.rule == "screw-whip")) {
                whips += 1;
                let ratio = pair[1].0.speed / pair[0].0.speed;
                let longer = pair[1].1 / pair[0].1;
                // the length between the bearings is longer than the travel by something that stays as it is
                assert!(ratio > longer.powi(-2) && ratio < 1.0 / longer, "{ratio} for {longer} times the travel");
            }
        }
    }
    assert!(whips > 0, "no ball screw of the machine meets its whip speed");
}

#[test]
fn within_a_family_more_accuracy_costs_more() {
    for axis in &RECORD.axes {
        for front in &diagrams(axis).cost_of_accuracy {
            assert_eq!(front.tool_error.len(), front.whole_life.len());
            assert!(front.tool_error.windows(2).all(|pair| pair[1] < pair[0]), "{}", front.family);
            assert!(front.whole_life.windows(2).all(|pair| pair[1] >= pair[0]), "{}", front.family);
        }
    }
}

#[test]
fn every_picture_is_xml_with_a_name_and_numbers_inside_its_frame() {
    for units in [UnitSystem::Metric, UnitSystem::Inch] {
        let charts = report(&RECORD, units).charts;
        assert!(charts.len() >= 7 * RECORD.axes.len(), "{}", charts.len());
        let names: BTreeSet<&str> = charts.iter().map(|chart| chart.file.as_str()).collect();
        assert_eq!(names.len(), charts.len(), "every picture has a file of its own");
        for chart in &charts {
            let picture =
                roxmltree::Document::parse(&chart.svg).unwrap_or_else(|error| panic!("{}: {error}", chart.file));
            let root = picture.root_element();
            let text = |tag: &str| root.children().find(|child| child.has_tag_name(tag)).and_then(|child| child.text());
            let has = |tag: &str| {
                root.descendants()
                    .any(|node| node.tag_name().name() == tag && node.text().is_some_and(|text| !text.is_empty()))
            };
            assert!(has("title") && has("desc"), "{} {:?}", chart.file, text("title"));
            assert!(!chart.svg.contains("NaN") && !chart.svg.contains("inf\""), "{}", chart.file);
            let size = |name: &str| root.attribute(name).and_then(|value| value.parse::<f64>().ok()).expect("a size");
            let (wide, high) = (size("width"), size("height"));
            for node in root.descendants().filter(|node| node.is_element()) {
                for (name, most) in [("x", wide), ("y", high), ("x1", wide), ("y1", high), ("cx", wide), ("cy", high)] {
                    let Some(place) = node.attribute(name).and_then(|value| value.parse::<f64>().ok()) else {
                        continue;
                    };
                    assert!((-1.0..=most + 1.0).contains(&place), "{}: {name} = {place}", chart.file);
                }
            }
        }
    }
}

#[test]
fn the_report_shows_each_picture_once_and_the_page_holds_it_whole() {
    let whole = report(&RECORD, UnitSystem::Metric);
    for chart in &whole.charts {
        let image = format!("]({CHARTS}/{})", chart.file);
        assert_eq!(whole.markdown.matches(&image).count(), 1, "{}", chart.file);
        assert!(whole.html.contains(&chart.svg), "{}", chart.file);
    }
    assert!(!whole.html.contains("<img"));
    let ids: Vec<&str> = whole.html.split(" id=\"").skip(1).filter_map(|rest| rest.split('"').next()).collect();
    let different: BTreeSet<&str> = ids.iter().copied().collect();
    let twice: Vec<_> = different.iter().filter(|id| ids.iter().filter(|other| other == id).count() > 1).collect();
    assert!(twice.is_empty(), "{twice:?}");
    assert_eq!(report(&RECORD, UnitSystem::Metric), whole, "the same record gives the same bytes");
}
