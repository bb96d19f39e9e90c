//! A handful of parts, and briefs for it, on which the tests of this room try everything.
#![cfg(test)]

use super::best::tests::best_of;
use super::row::Row;
use super::{Coupling, MOST_STAGES, Path, Setting, count_below, nearest, ruled_out, walk};
use crate::brief::{self, Brief};
use crate::catalog::{self, Catalog};
use crate::characteristic::SLOTS;
use crate::drive::{Demand, FAMILIES, Family, Merit, Part, Position, Size, WithFamily, with_family};
use crate::ledger::{Asides, Characteristic, Columns, Discovery, Figures, Known, LANES, Ledger, Origin};
use crate::rule::{self, Rulebook, passes};
use crate::units::{Mass, Measure, Stiffness};
use std::sync::atomic::{AtomicU64, Ordering};

/// A slide, one that lifts and is weighed on four scales, one on two sides that is to be exact, a fast and a heavy one.
pub const BRIEFS: [&str; 5] = [
    include_str!("../../tests/road/slide.yaml"),
    "
machine: Slide that lifts a spindle
prefer: { whole-life-cost: 2, accuracy: 1, stiffness: 1, upkeep: 1 }
axes:
  ram:
    direction: vertical
    travel: 0.5 m
    moved-mass: 120 kg
    speed: 24 m/min
    acceleration: 2 m/s²
    cutting-force: 500 N
    cutting-speed: 4 m/min
    people-below: false
    accuracy: 0.08 mm
    reversal: 0.05 mm
",
    "
machine: Portal on two sides
prefer: { whole-life-cost: 1, accuracy: 3 }
axes:
  portal:
    direction: horizontal
    travel: 1.5 m
    drives: 2
    drive-spacing: 1.4 m
    moved-mass: 500 kg
    speed: 40 m/min
    acceleration: 3 m/s²
    cutting-force: 900 N
    cutting-speed: 8 m/min
    accuracy: 0.12 mm
    reversal: 0.08 mm
    first-mode: 15 Hz
",
    "
machine: Slide that is fast
axes:
  slide:
    direction: horizontal
    travel: 1.2 m
    moved-mass: 30 kg
    speed: 250 m/min
    acceleration: 6 m/s²
    accuracy: 0.2 mm
",
    "
machine: Slide that is heavy
prefer: { whole-life-cost: 3, stiffness: 1 }
axes:
  slide:
    direction: horizontal
    travel: 1.1 m
    moved-mass: 700 kg
    speed: 30 m/min
    acceleration: 4 m/s²
    cutting-force: 2500 N
    cutting-speed: 5 m/min
    accuracy: 0.15 mm
",
];

/// What a search on a handful of parts needs.
pub struct Handful {
    pub brief: Brief,
    pub catalog: Catalog,
    pub rulebook: Rulebook,
}

/// A few parts of every kind: some hundred configurations of each family.
fn handful() -> Catalog {
    fn keep<T>(list: &mut Vec<T>, name: impl Fn(&T) -> &str, wanted: &[&str]) {
        list.retain(|part| wanted.contains(&name(part)));
        assert_eq!(list.len(), wanted.len(), "the built-in catalogue has all of {wanted:?}");
    }
    let mut catalog = catalog::load_texts(catalog::built_in()).expect("the built-in catalogue");
    keep(&mut catalog.ball_screws, |part| &part.designation, &["screw-32x20", "screw-40x20", "screw-50x40"]);
    keep(&mut catalog.screw_grades, |part| &part.designation, &["rolled-t7", "ground-p3"]);
    keep(&mut catalog.preload_classes, |part| &part.designation, &["light"]);
    keep(&mut catalog.end_arrangements, |part| &part.designation, &["fixed-supported", "fixed-fixed-stretched"]);
    keep(&mut catalog.screw_bearings, |part| &part.designation, &["axial-bearing-25-pair", "axial-bearing-30-triple"]);
    keep(&mut catalog.nut_units, |part| &part.designation, &["nut-unit-32", "nut-unit-50"]);
    keep(&mut catalog.screw_reductions, |part| &part.designation, &["coupling-150", "belt-8x50-28-i2"]);
    keep(
        &mut catalog.servo_motors,
        |part| &part.designation,
        &["servo-1.5kw", "servo-2.2kw-brake", "servo-4.5kw", "servo-4.5kw-brake"],
    );
    keep(&mut catalog.rack_grades, |part| &part.designation, &["q5-hardened-ground", "q8-milled-hardened"]);
    let gearboxes = ["planetary-110-standard-i5", "planetary-110-reduced-i10", "planetary-140-reduced-i7"];
    keep(&mut catalog.gearboxes, |part| &part.designation, &gearboxes);
    keep(&mut catalog.linear_scales, |part| &part.designation, &["glass-scale-5"]);
    catalog.racks.retain(|rack| rack.designation.starts_with("rack-2"));
    catalog.pinions.retain(|pinion| [20, 25, 30].contains(&pinion.teeth));
    catalog
}

impl Handful {
    pub fn of(text: &str) -> Handful {
        let brief = brief::load("test.yaml", text).expect("a brief");
        Handful { brief, catalog: handful(), rulebook: rule::load(&[]).expect("the built-in rules") }
    }

    pub fn setting(&self) -> Setting<'_> {
        Setting {
            catalog: &self.catalog,
            rulebook: &self.rulebook,
            merit: Merit::new(&self.brief.prefer),
            coupling: Coupling::default(),
            waived: &[],
            exhaustive: false,
            stop: None,
        }
    }

    pub fn demand(&self) -> Demand<'_> {
        Demand::new(&self.brief, 0, Mass::of_si(0.0))
    }
}

/// What is tried on a family.
pub trait Trial {
    /// What comes out.
    type Output;
    /// Tries it.
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> Self::Output;
}

struct With<'w, 'd, 'a, T> {
    trial: &'w T,
    demand: &'w Demand<'d>,
    setting: &'w Setting<'a>,
}

impl<T: Trial> WithFamily for With<'_, '_, '_, T> {
    type Output = T::Output;
    fn with<F: Family>(self, family: &F) -> T::Output {
        self.trial.on(family, self.demand, self.setting)
    }
}

/// Tries it on every family of every brief; gives what came out of each.
pub fn on_all<T: Trial>(trial: &T) -> Vec<T::Output> {
    let mut all = Vec::new();
    for text in BRIEFS {
        let handful = Handful::of(text);
        let (demand, setting) = (handful.demand(), handful.setting());
        for id in FAMILIES {
            let with = With { trial, demand: &demand, setting: &setting };
            all.push(with_family(id, &demand, &handful.catalog, with).expect("a family"));
        }
    }
    all
}

/// A family that counts how often one of its stages is entered.
pub struct Counted<'f, F> {
    family: &'f F,
    entered: AtomicU64,
}

impl<'f, F: Family> Counted<'f, F> {
    pub fn new(family: &'f F) -> Counted<'f, F> {
        Counted { family, entered: AtomicU64::new(0) }
    }

    /// How often since it was asked last.
    pub fn taken(&self) -> u64 {
        self.entered.swap(0, Ordering::Relaxed)
    }
}

impl<F: Family> Family for Counted<'_, F> {
    fn id(&self) -> &'static str {
        self.family.id()
    }
    fn stages(&self) -> Vec<usize> {
        self.family.stages()
    }
    fn order(&self) -> Vec<usize> {
        self.family.order()
    }
    fn kept(&self, stage: usize) -> bool {
        self.family.kept(stage)
    }
    fn apart(&self, stage: usize) -> bool {
        self.family.apart(stage)
    }
    fn remembered(&self, stage: usize) -> Option<[usize; 2]> {
        self.family.remembered(stage)
    }
    fn to_come(&self, path: &[u16], at_hand: Option<usize>, entered: impl Fn(usize) -> bool) -> f64 {
        self.family.to_come(path, at_hand, entered)
    }
    fn price(&self, stage: usize, choice: u16) -> f64 {
        self.family.price(stage, choice)
    }
    fn springs(&self) -> &'static [Characteristic<Stiffness>] {
        self.family.springs()
    }
    fn position(&self) -> Position<'_> {
        self.family.position()
    }
    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L) {
        self.entered.fetch_add(1, Ordering::Relaxed);
        self.family.enter(stage, path, sheet);
    }
    fn enter_feedback<L: Ledger>(&self, scale: u16, sheet: &mut L) {
        self.entered.fetch_add(1, Ordering::Relaxed);
        self.family.enter_feedback(scale, sheet);
    }
    fn enter_mapping<L: Ledger>(&self, scale: u16, table: u16, sheet: &mut L) {
        self.entered.fetch_add(1, Ordering::Relaxed);
        self.family.enter_mapping(scale, table, sheet);
    }
    fn screen(&self, stage: usize, path: &[u16], sheet: &mut Known) -> bool {
        self.family.screen(stage, path, sheet)
    }
    fn glimpse(&self, stage: usize, path: &[u16], sheet: &mut Known) -> bool {
        self.family.glimpse(stage, path, sheet)
    }
    fn motor_model(&self, path: &[u16]) -> &str {
        self.family.motor_model(path)
    }
    fn gearbox_model(&self, path: &[u16]) -> Option<&str> {
        self.family.gearbox_model(path)
    }
    fn parts(&self, path: &[u16], sheet: &impl Ledger) -> Vec<Part> {
        self.family.parts(path, sheet)
    }
    fn sizes(&self, path: &[u16]) -> Vec<Size> {
        self.family.sizes(path)
    }
}

/// How often the stages are entered by what is done on one thread.
pub fn entered_by<F: Family>(counted: &Counted<'_, F>, work: impl FnOnce(&Counted<'_, F>) + Send) -> u64 {
    let alone = rayon::ThreadPoolBuilder::new().num_threads(1).build().expect("a thread");
    counted.taken();
    alone.install(|| work(counted));
    counted.taken()
}

/// Every path of a family, in rising order.
pub fn every_path(stages: &[usize]) -> Vec<Path> {
    let mut all = vec![[0; MOST_STAGES]];
    for (stage, &choices) in stages.iter().enumerate() {
        let longer = |path: Path| {
            (0..choices as u16).map(move |choice| {
                let mut path = path;
                path[stage] = choice;
                path
            })
        };
        all = all.into_iter().flat_map(longer).collect();
    }
    all
}

/// The place of the order at which each slot is entered, counted from one; none where it is not, nought where it is by the axis.
pub fn entered_at<F: Family>(family: &F, demand: &Demand<'_>) -> Vec<Option<usize>> {
    let mut discovery = Discovery::default();
    demand.enter(&mut discovery);
    for (place, stage) in family.order().into_iter().enumerate() {
        discovery.begin_stage(place + 1);
        family.enter(stage, &[0; MOST_STAGES], &mut discovery);
    }
    (0..SLOTS).map(|slot| discovery.stage_of(slot)).collect()
}

/// Whether two sheets agree to the last bit on every slot that is entered up to a place, counted from one.
pub fn assert_alike(one: &Known, other: &Known, entered_at: &[Option<usize>], up_to: usize, path: &Path) {
    for (slot, at) in entered_at.iter().enumerate() {
        if at.is_some_and(|at| at <= up_to) {
            let (one, other) = (one.value(slot), other.value(slot));
            let alike = one.to_bits() == other.to_bits() || one.is_nan() && other.is_nan();
            assert!(alike, "{}: {one} and {other} on {path:?}", crate::characteristic::id(slot));
        }
    }
}

/// How many stages are entered by trying everything, and by each way to search: the walk, the best alone, the nearest miss, what
/// rules a family out, what is better than a merit, and how many are.
struct Effort;

impl Trial for Effort {
    type Output = [u64; 7];
    fn on<F: Family>(&self, family: &F, demand: &Demand<'_>, setting: &Setting<'_>) -> [u64; 7] {
        let counted = Counted::new(family);
        let everything = Setting { exhaustive: true, ..*setting };
        // a hundredth dearer than the best
        let out = ruled_out(family, demand, setting);
        let merit = 1.01 * best_of(family, demand, setting).map_or(1.0, |found| found.attributes.merit);
        [
            entered_by(&counted, |family| drop(walk(family, demand, &everything, None))),
            entered_by(&counted, |family| drop(walk(family, demand, setting, None))),
            entered_by(&counted, |family| _ = best_of(family, demand, setting)),
            entered_by(&counted, |family| _ = nearest(family, demand, setting, &out)),
            entered_by(&counted, |family| drop(ruled_out(family, demand, setting))),
            entered_by(&counted, |family| drop(walk(family, demand, setting, Some(merit)))),
            entered_by(&counted, |family| _ = count_below(family, demand, setting, merit)),
        ]
    }
}

#[test]
fn little_is_looked_at_of_all_there_is() {
    let efforts = on_all(&Effort);
    let [everything, walked, best, missed, out, better, number] =
        [0, 1, 2, 3, 4, 5, 6].map(|way| efforts.iter().map(|each| each[way]).sum::<u64>());
    let mut more = Vec::new();
    // as counted once; other parts or rules that are built in may change them a little, a bound that is less close does
    for (way, entered, most) in [
        ("walk", walked, 4_262),
        ("best", best, 3_041),
        ("nearest", missed, 191_148),
        ("ruled out", out, 112_850),
        ("better", better, 3_469),
        ("how many", number, 3_469),
    ] {
        more.extend((entered > most).then(|| format!("{way}: {entered} of {everything}, {most} were enough")));
    }
    assert!(more.is_empty(), "{more:#?}");
}

#[test]
fn a_row_passes_what_its_utilisation_passes_up_to_the_last_digits() {
    let handful = Handful::of(BRIEFS[0]);
    let mut judged = 0;
    for (index, rule) in handful.rulebook.rules.iter().enumerate() {
        let row = Row::new(index, rule, rule.when);
        for limit in [0.0, 2.0, 3e-7, -1.5, f64::INFINITY, f64::NAN] {
            let hair = |share: f64| limit * (1.0 + share);
            for demand in [hair(0.0), hair(9e-10), hair(-9e-10), hair(1.1e-9), hair(-1.1e-9), hair(0.3), 0.0, f64::NAN]
            {
                let mut sheet = Known::default();
                for slot in rule.slots() {
                    sheet.keep_given(slot, limit / rule.factor, Origin::Formula);
                }
                sheet.keep_given(rule.demand, demand, Origin::Formula);
                let utilisation = row.utilisation(&sheet);
                assert_eq!(row.passed(&sheet), passes(utilisation), "{}: {demand} of {limit}", rule.id);
                let lanes = row.passed_lanes(&Columns::like(&sheet, Asides::default()));
                assert_eq!(lanes, [u64::from(row.passed(&sheet)); LANES], "{}: {demand} of {limit}", rule.id);
                let same = if rule.holds(&sheet) { rule.utilisation(&sheet) } else { 0.0 };
                assert!(same == utilisation || same.is_nan() && utilisation.is_nan(), "{}", rule.id);
                judged += usize::from(utilisation > 1.0 && row.passed(&sheet));
            }
        }
    }
    assert!(judged > 50, "only {judged} lie on their limit");
}
