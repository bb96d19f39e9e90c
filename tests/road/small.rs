//! A catalogue cut down out of the built-in one, small enough to try every configuration, and briefs for it.
//!
//! Method: the built-in files are read, then every list keeps only what is named here. The rules are all there.

use axiswright::brief::{self, Brief};
use axiswright::catalog::{self, Catalog};
use axiswright::characteristic::SLOTS;
use axiswright::drive::{Demand, Family, Merit};
use axiswright::ledger::{Figures, Known, Ledger, Origin};
use axiswright::pipeline::{self, Inputs};
use axiswright::rule::{self, Rulebook};
use axiswright::search::{Coupling, MOST_STAGES, Path, Setting};
use axiswright::units::{Mass, Measure};
use proptest::test_runner::{Config, RngSeed};
use std::sync::LazyLock;

const SCREWS: [&str; 6] = ["screw-25x10", "screw-32x20", "screw-40x20", "screw-40x40", "screw-50x40", "screw-63x40"];
const GRADES: [&str; 3] = ["rolled-t7", "ground-p5", "ground-p3"];
const PRELOADS: [&str; 2] = ["clearance", "light"];
const ENDS: [&str; 3] = ["fixed-free", "fixed-supported", "fixed-fixed-stretched"];
const BEARINGS: [&str; 3] = ["axial-bearing-17-pair", "axial-bearing-25-pair", "axial-bearing-30-triple"];
const REDUCTIONS: [&str; 3] = ["coupling-60", "coupling-150", "belt-8x50-28-i2"];
const NUT_UNITS: [&str; 4] = ["nut-unit-32", "nut-unit-40", "nut-unit-50", "nut-unit-63"];
const MOTORS: [&str; 4] = ["servo-1.5kw", "servo-2.2kw-brake", "servo-4.5kw", "servo-4.5kw-brake"];
const RACKS: [&str; 2] = ["rack-2", "rack-3"];
const QUALITIES: [&str; 3] = ["q5-hardened-ground", "q6-hardened-ground", "q8-milled-hardened"];
const TEETH: [u32; 4] = [15, 20, 25, 30];
const GEARBOXES: [&str; 8] = [
    "planetary-80-standard-i5",
    "planetary-80-reduced-i10",
    "planetary-110-standard-i5",
    "planetary-110-reduced-i10",
    "planetary-140-standard-i4",
    "planetary-140-reduced-i5",
    "planetary-140-reduced-i7",
    "planetary-140-reduced-i10",
];
/// Kinds of gearboxes that come with two plays each, for the inputs that share them.
const PAIRED: [&str; 6] = [
    "planetary-80-standard-i5",
    "planetary-80-reduced-i5",
    "planetary-110-standard-i10",
    "planetary-110-reduced-i10",
    "planetary-140-standard-i5",
    "planetary-140-reduced-i5",
];
const SCALES: [&str; 2] = ["glass-scale-5", "tape-scale-5"];

/// Keeps what is named of a catalogue; every name has to be there.
pub fn cut(mut catalog: Catalog) -> Catalog {
    fn keep<T>(list: &mut Vec<T>, name: impl Fn(&T) -> &str, wanted: &[&str]) {
        list.retain(|part| wanted.contains(&name(part)));
        assert_eq!(list.len(), wanted.len(), "the built-in catalogue has all of {wanted:?}");
    }
    keep(&mut catalog.ball_screws, |part| &part.designation, &SCREWS);
    keep(&mut catalog.screw_grades, |part| &part.designation, &GRADES);
    keep(&mut catalog.preload_classes, |part| &part.designation, &PRELOADS);
    keep(&mut catalog.end_arrangements, |part| &part.designation, &ENDS);
    keep(&mut catalog.screw_bearings, |part| &part.designation, &BEARINGS);
    keep(&mut catalog.nut_units, |part| &part.designation, &NUT_UNITS);
    keep(&mut catalog.screw_reductions, |part| &part.designation, &REDUCTIONS);
    keep(&mut catalog.servo_motors, |part| &part.designation, &MOTORS);
    keep(&mut catalog.rack_grades, |part| &part.designation, &QUALITIES);
    keep(&mut catalog.gearboxes, |part| &part.designation, &GEARBOXES);
    keep(&mut catalog.linear_scales, |part| &part.designation, &SCALES);
    catalog.racks.retain(|rack| RACKS.iter().any(|name| rack.designation.starts_with(name)));
    catalog.pinions.retain(|pinion| TEETH.contains(&pinion.teeth));
    assert_eq!((catalog.racks.len(), catalog.pinions.len()), (4, 8));
    catalog
}

/// The same with one screw that is not built in.
pub fn cut_with(catalog: Catalog, screw: &str) -> Catalog {
    let own = catalog.ball_screws.iter().find(|part| part.designation == screw).expect("the screw is there").clone();
    let mut cut = cut(catalog);
    cut.ball_screws.push(own);
    cut.ball_screws.sort_by(|a, b| a.designation.cmp(&b.designation));
    cut
}

/// The cut-down catalogue: 23 328 screws, 3456 driven nuts and 2304 racks of either kind of teeth (twin pinions: three times as many) for a vertical axis with any feedback.
pub fn catalog() -> Catalog {
    static SMALL: LazyLock<Catalog> =
        LazyLock::new(|| cut(catalog::load_texts(catalog::built_in()).expect("the built-in catalogue loads")));
    SMALL.clone()
}

/// All built-in rules.
pub fn rules() -> Rulebook {
    static RULES: LazyLock<Rulebook> = LazyLock::new(|| rule::load(&[]).expect("the built-in rules load"));
    RULES.clone()
}

/// So many random cases, the same in every run.
pub fn cases(cases: u32) -> Config {
    Config { cases, failure_persistence: None, rng_seed: RngSeed::Fixed(2002), ..Config::default() }
}

/// A brief out of its text.
pub fn brief(text: &str) -> Brief {
    brief::load("test.yaml", text).unwrap_or_else(|faults| panic!("{faults:?}\n{text}"))
}

/// The small catalogue and all rules for a brief.
pub fn inputs(text: &str) -> Inputs {
    let inputs = Inputs { brief: brief(text), catalog: catalog(), rulebook: rules() };
    pipeline::check(inputs).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// The same with gearboxes that come in pairs of like ones.
pub fn paired_inputs(text: &str) -> Inputs {
    let mut inputs = inputs(text);
    let all = catalog::load(&[]).unwrap_or_else(|faults| panic!("{faults:?}")).gearboxes;
    inputs.catalog.gearboxes = all.into_iter().filter(|part| PAIRED.contains(&part.designation.as_str())).collect();
    assert_eq!(inputs.catalog.gearboxes.len(), PAIRED.len());
    inputs
}

/// A handful of parts out of those, so that everything is tried in a moment: some hundred configurations of each family.
pub fn tiny_inputs(text: &str) -> Inputs {
    let mut inputs = inputs(text);
    let catalog = &mut inputs.catalog;
    catalog
        .ball_screws
        .retain(|part| ["screw-32x20", "screw-40x20", "screw-40x40"].contains(&part.designation.as_str()));
    catalog.screw_grades.retain(|part| part.designation != "rolled-t7");
    catalog.preload_classes.retain(|part| part.designation == "light");
    catalog.end_arrangements.retain(|part| part.designation != "fixed-free");
    catalog.screw_bearings.retain(|part| part.designation != "axial-bearing-17-pair");
    catalog.screw_reductions.retain(|part| part.designation != "coupling-60");
    catalog.servo_motors.retain(|part| part.designation.ends_with("-brake"));
    catalog.linear_scales.retain(|part| part.designation == "glass-scale-5");
    catalog.racks.retain(|rack| rack.designation.starts_with("rack-2"));
    catalog.pinions.retain(|pinion| [20, 30].contains(&pinion.teeth));
    catalog.gearboxes.retain(|part| !part.designation.contains("-80-") && !part.designation.contains("i4"));
    inputs
}

/// How one axis alone is searched.
pub fn setting(inputs: &Inputs) -> Setting<'_> {
    Setting {
        catalog: &inputs.catalog,
        rulebook: &inputs.rulebook,
        merit: Merit::new(&inputs.brief.prefer),
        coupling: Coupling::default(),
        waived: &[],
        exhaustive: false,
        stop: None,
    }
}

/// The demand of an axis that carries nothing.
pub fn demand(inputs: &Inputs, axis: usize) -> Demand<'_> {
    Demand::new(&inputs.brief, axis, Mass::of_si(0.0))
}

/// A horizontal axis of 0.9 m with a cutting force either way.
pub const HORIZONTAL: &str = concat!("\n", include_str!("slide.yaml"));

/// A vertical axis of 0.5 m.
pub const VERTICAL: &str = "
machine: Slide that lifts a spindle
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
    repeatability: 0.05 mm
    reversal: 0.05 mm
    ripple: 0.02 mm
    duty:
      - { share: 25 %, speed: 24 m/min, stroke: 0.3 m }
      - { share: 45 %, speed: 4 m/min, force: 500 N, stroke: 0.2 m }
      - { share: 30 %, stand: true }
";

/// More than any drive of the small catalogue gives.
pub const IMPOSSIBLE: &str = "
machine: Slide that nobody can build
axes:
  slide:
    direction: horizontal
    travel: 6 m
    moved-mass: 900 kg
    speed: 120 m/min
    acceleration: 15 m/s²
    cutting-force: 3 kN
    cutting-speed: 20 m/min
    accuracy: 5 µm
    repeatability: 2 µm
    reversal: 1 µm
    cutting-deflection: 5 µm
    ripple: 1 µm
    first-mode: 60 Hz
";

/// Every path of a family, in rising order.
pub fn paths(stages: &[usize]) -> Vec<Path> {
    let mut all = vec![[0_u16; MOST_STAGES]];
    for (stage, &choices) in stages.iter().enumerate() {
        all = all
            .into_iter()
            .flat_map(|path| {
                (0..choices).map(move |choice| {
                    let mut longer = path;
                    longer[stage] = u16::try_from(choice).expect("few choices");
                    longer
                })
            })
            .collect();
    }
    all
}

/// A path out of random numbers.
pub fn path_of(stages: &[usize], seeds: &[u16]) -> Path {
    let mut path = [0; MOST_STAGES];
    for ((place, &choices), &seed) in path.iter_mut().zip(stages).zip(seeds) {
        *place = seed % u16::try_from(choices).expect("few choices");
    }
    path
}

/// Works a configuration out from nothing on plain numbers.
pub fn numbers<F: Family>(family: &F, demand: &Demand<'_>, path: &Path) -> Known {
    let mut sheet = Known::default();
    demand.enter(&mut sheet);
    for stage in 0..family.stages().len() {
        family.enter(stage, path, &mut sheet);
    }
    sheet
}

/// Remembers in which stage each slot is entered, 0 for the axis itself; keeps no numbers but its own.
pub struct Entered {
    known: Known,
    now: usize,
    /// The stage of each slot.
    pub stage: Vec<Option<usize>>,
    /// Slots that were entered more than once.
    pub twice: Vec<usize>,
}

impl Entered {
    /// What this path of a family enters where.
    pub fn of<F: Family>(family: &F, demand: &Demand<'_>, path: &Path) -> Entered {
        let mut entered = Entered { known: Known::default(), now: 0, stage: vec![None; SLOTS], twice: Vec::new() };
        demand.enter(&mut entered);
        for (place, stage) in family.order().into_iter().enumerate() {
            entered.now = place + 1;
            family.enter(stage, path, &mut entered);
        }
        entered
    }

    fn note(&mut self, slot: usize) {
        if self.stage[slot].is_some() {
            self.twice.push(slot);
        }
        self.stage[slot] = Some(self.now);
    }
}

impl Figures for Entered {
    fn value(&self, slot: usize) -> f64 {
        self.known.value(slot)
    }
}

impl Ledger for Entered {
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.note(slot);
        self.known.keep_given(slot, value, origin);
    }
    fn keep_computed(
        &mut self,
        slot: usize,
        value: f64,
        note: &'static axiswright::formula::Note,
        inputs: impl FnOnce(&mut Vec<usize>),
    ) {
        self.note(slot);
        self.known.keep_computed(slot, value, note, inputs);
    }
}

/// A portal with two drives that carries a slide that carries a ram, with limits of the machine that bind.
pub const MACHINE: &str = "
machine: Portal with a ram
hours-per-year: 3000
limits:
  purchase: 24000
  tool-point-error: 0.0381 mm
  supply-power: 14.913997431645405 kW
  motor-models: 2
  gearbox-models: 1
  lead-time: 9 weeks
axes:
  portal:
    direction: horizontal
    travel: 2032 mm
    moved-mass: 272.155422 kg
    carries: [slide]
    drives: 2
    drive-spacing: 1524 mm
    speed: 30480 mm/min
    acceleration: 2032 mm/s²
    cutting-force: 444.8221615260501 N
    cutting-speed: 5080 mm/min
    accuracy: 0.127 mm
    repeatability: 0.0762 mm
    reversal: 0.0762 mm
    first-mode: 15 Hz
  slide:
    direction: horizontal
    travel: 1016 mm
    moved-mass: 136.077711 kg
    carries: [ram]
    speed: 30480 mm/min
    acceleration: 2540 mm/s²
    cutting-force: 444.8221615260501 N
    cutting-speed: 5080 mm/min
    accuracy: 0.1016 mm
    reversal: 0.0762 mm
  ram:
    direction: vertical
    travel: 406.4 mm
    moved-mass: 45.359237 kg
    people-below: false
    speed: 20320 mm/min
    acceleration: 2032 mm/s²
    cutting-force: 444.8221615260501 N
    cutting-speed: 2540 mm/min
    accuracy: 0.0762 mm
    reversal: 0.0762 mm
";
