//! A crossover against the full recommendation at single values, and its pictures as sound XML.

use crate::small;
use axiswright::brief::Limits;
use axiswright::inquiry::Requirement;
use axiswright::pipeline::{self, Inputs, Ranges};
use axiswright::record::{CrossoverRecord, NodeRecord, Outcome};
use axiswright::report::crossover::{chart, markdown, table};
use axiswright::units::{UnitSystem, print};
use std::sync::LazyLock;

const TRAY_LOADER: &str = include_str!("../../docs/examples/tray-loader.yaml");

/// The tray loader on the small catalogue, without limits of the whole machine, which a crossover does not look at.
fn loader() -> Inputs {
    let mut inputs = small::inputs(TRAY_LOADER);
    inputs.brief.limits = Limits::default();
    inputs
}

fn crossover(inputs: &Inputs, over: &str, and: Option<&str>, steps: usize) -> CrossoverRecord {
    let ranges = Ranges::read(over, and, Some(steps)).expect("ranges");
    pipeline::crossover(inputs, 0, &ranges, &|_, _| {})
}

static TRAVEL: LazyLock<CrossoverRecord> = LazyLock::new(|| crossover(&loader(), "travel=0.5m..40m", None, 8));
static BOTH: LazyLock<CrossoverRecord> =
    LazyLock::new(|| crossover(&loader(), "travel=0.5m..20m", Some("speed=10m/min..60m/min"), 4));

/// What the whole road recommends with these values in place of those of the brief.
fn recommended(values: &[(Requirement, f64)]) -> Option<(String, f64)> {
    let mut inputs = loader();
    for &(requirement, value) in values {
        let (_, unit) = requirement.unit().expect("a unit");
        inputs.brief = requirement.with(&inputs.brief, 0, value * unit.si);
    }
    let record = pipeline::recommend(&inputs, false);
    let chosen = record.axes[0].chosen.as_ref();
    assert_eq!(record.outcome == Outcome::Chosen, chosen.is_some());
    chosen.map(|drive| (drive.family.clone(), drive.merit))
}

fn best(node: &NodeRecord) -> Option<(String, f64)> {
    node.family.clone().map(|family| (family, node.merit))
}

#[test]
fn every_node_has_the_drive_that_the_full_recommendation_chooses() {
    for node in TRAVEL.nodes.iter().step_by(2) {
        let x = node.x.expect("a value");
        assert_eq!(best(node), recommended(&[(Requirement::Travel, x)]), "{x} m");
    }
    for node in BOTH.nodes.iter().step_by(7) {
        let (x, y) = (node.x.expect("a value"), node.y.expect("a value"));
        assert_eq!(best(node), recommended(&[(Requirement::Travel, x), (Requirement::Speed, y)]), "{x} m, {y} m/min");
    }
    assert_eq!(best(&TRAVEL.present), recommended(&[]));
}

#[test]
fn boundaries_are_narrow_and_hold_on_both_sides() {
    assert!(TRAVEL.boundaries.len() >= 2, "a rack beyond the screws, and nothing beyond the racks: {TRAVEL:?}");
    for boundary in &TRAVEL.boundaries {
        assert!(boundary.low < boundary.at && boundary.at < boundary.high);
        assert!(boundary.high - boundary.low <= 0.001 * boundary.high);
        let family = |travel: f64| recommended(&[(Requirement::Travel, travel)]).map(|(family, _)| family);
        assert_eq!((family(boundary.low), family(boundary.high)), (boundary.from.clone(), boundary.to.clone()));
    }
    for boundary in BOTH.boundaries.iter().take(3) {
        assert!(boundary.high - boundary.low <= 0.01 * boundary.high);
        let y = boundary.y.expect("a value");
        let family = |travel: f64| {
            recommended(&[(Requirement::Travel, travel), (Requirement::Speed, y)]).map(|(family, _)| family)
        };
        assert_eq!((family(boundary.low), family(boundary.high)), (boundary.from.clone(), boundary.to.clone()));
    }
}

#[test]
fn the_families_of_neighbouring_nodes_and_the_boundaries_between_them_make_one_chain() {
    let mut family = TRAVEL.nodes[0].family.clone();
    for pair in TRAVEL.nodes.windows(2) {
        let between = |at: f64| pair[0].x.is_some_and(|x| x <= at) && pair[1].x.is_some_and(|x| at < x);
        for boundary in TRAVEL.boundaries.iter().filter(|boundary| between(boundary.at)) {
            assert_eq!(boundary.from, family);
            family = boundary.to.clone();
        }
        assert_eq!(pair[1].family, family);
    }
}

/// What is best at a node before it is a guess that only bounds the search.
#[test]
fn the_nodes_before_a_node_do_not_change_its_drive() {
    let alone = crossover(&loader(), "travel=4.4721359549995794m..40m", None, 1);
    let coarse = crossover(&loader(), "travel=0.5m..40m", None, 2);
    assert_eq!(best(&alone.nodes[0]), best(&TRAVEL.nodes[4]), "the middle of both ranges");
    for (node, other) in coarse.nodes.iter().zip(TRAVEL.nodes.iter().step_by(4)) {
        assert_eq!(node, other);
    }
}

#[test]
fn the_best_of_all_is_the_best_of_the_families() {
    for (index, node) in TRAVEL.nodes.iter().enumerate() {
        let merits = TRAVEL.curves.iter().map(|curve| curve.nodes[index].merit).filter(|merit| merit.is_finite());
        assert_eq!(merits.fold(f64::INFINITY, f64::min), node.merit_or_infinite());
    }
}

trait Merit {
    fn merit_or_infinite(&self) -> f64;
}

impl Merit for NodeRecord {
    fn merit_or_infinite(&self) -> f64 {
        if self.merit.is_finite() { self.merit } else { f64::INFINITY }
    }
}

#[test]
fn both_pictures_are_sound_and_say_what_they_show() {
    for record in [&*TRAVEL, &*BOTH] {
        for units in [UnitSystem::Metric, UnitSystem::Inch] {
            let svg = chart(record, units).expect("a picture");
            let document = roxmltree::Document::parse(&svg).expect("sound XML");
            assert!(!svg.contains("NaN") && !svg.contains("inf"), "every number is one");
            let words = |tag: &str| {
                let node = document.descendants().find(|node| node.has_tag_name(tag)).expect(tag);
                node.text().unwrap_or_default().to_string()
            };
            assert_eq!(words("title"), "Which drive where: axis lift of Tray loader");
            assert!(words("desc").contains("ball screw"), "{}", words("desc"));
            let texts: Vec<&str> = document.descendants().filter_map(|node| node.text()).map(str::trim).collect();
            assert!(texts.contains(&"the brief as it stands"), "{texts:?}");
            assert!(texts.contains(&"ball screw"), "regions carry their names: {texts:?}");
        }
    }
}

#[test]
fn the_page_tells_boundaries_resolution_and_what_was_taken_for_granted() {
    let page = markdown(&TRAVEL, UnitSystem::Metric, None);
    for told in
        ["The brief asks travel 1.4 m", "Travel up to", "narrowed to 0.1 % of the value", "The axis is decided alone"]
    {
        assert!(page.contains(told), "{told}\n{page}");
    }
    let first = &TRAVEL.boundaries[0];
    let (_, metre) = Requirement::Travel.unit().expect("a unit");
    let at = print((first.at * 100.0).round() / 100.0, metre);
    assert!(page.contains(&format!("Travel up to {at}: a ")), "{at}\n{page}");
    let both = markdown(&BOTH, UnitSystem::Metric, Some("crossover.svg"));
    assert!(both.contains("](crossover.svg)") && both.contains("| 10 m/min |"), "{both}");
    assert!(
        markdown(&BOTH, UnitSystem::Metric, None).contains("```text"),
        "a map in letters where there is no picture"
    );
}

#[test]
fn the_table_has_a_line_for_every_family_that_was_sought() {
    let text = table(&TRAVEL).expect("a table");
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    assert_eq!(&reader.headers().expect("a head")[0], "travel [m]");
    let lines: Vec<csv::StringRecord> = reader.records().map(|line| line.expect("a line")).collect();
    let best = lines.iter().filter(|line| &line[2] == "yes").count();
    assert_eq!(best, TRAVEL.nodes.len());
    let admissible: usize =
        TRAVEL.curves.iter().map(|curve| curve.nodes.iter().filter(|node| node.family.is_some()).count()).sum();
    let none = TRAVEL.nodes.iter().filter(|node| node.family.is_none()).count();
    assert_eq!(lines.len(), admissible + none);
}

#[test]
fn a_map_that_is_coarse_first_has_the_families_of_a_map_that_is_decided_at_every_node() {
    let inputs = loader();
    let (over, and) = ("travel=0.5m..20m", Some("speed=10m/min..60m/min"));
    let mut ranges = Ranges::read(over, and, Some(20)).expect("ranges");
    let adaptive = pipeline::crossover(&inputs, 0, &ranges, &|_, _| {});
    ranges.every_node = true;
    let whole = pipeline::crossover(&inputs, 0, &ranges, &|_, _| {});
    let (some, all) = (&adaptive.resolution, &whole.resolution);
    assert_eq!((all.nodes_in_full, all.nodes_among_known), (441, 0));
    assert!(some.nodes_among_known > 100 && some.nodes_in_full + some.nodes_among_known == 441, "{some:?}");
    let families: std::collections::BTreeSet<_> = whole.nodes.iter().map(|node| node.family.clone()).collect();
    assert!(families.len() > 1, "a map of one family would show nothing");
    for (node, exact) in adaptive.nodes.iter().zip(&whole.nodes) {
        assert_eq!(node.family, exact.family, "{:?}, {:?}", node.x, node.y);
        // what is known from elsewhere is at best as good
        let same = node.merit == exact.merit || (node.merit.is_nan() && exact.merit.is_nan());
        assert!(same || (node.among_known && node.merit > exact.merit), "{:?}, {:?}", node.x, node.y);
    }
    assert_eq!(adaptive.boundaries, whole.boundaries);
    let page = |record: &CrossoverRecord| markdown(record, UnitSystem::Metric, None);
    assert!(page(&adaptive).contains("among the drives that are best elsewhere on the map"));
    assert!(page(&whole).contains("All 441 places were decided by a search of the whole catalogue."));
}
