//! One computation read twice: the worksheet and the plain numbers of the search are the same, and every line of a
//! worksheet can be worked out again from the lines that it names.

use crate::small::{self, Entered, HORIZONTAL, VERTICAL};
use axiswright::calc;
use axiswright::characteristic::{self as ch, SLOTS};
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::formula::Note;
use axiswright::ledger::{Figures, Ledger, Origin, Worksheet};
use axiswright::search::Path;
use axiswright::units::Dimension;
use proptest::prelude::*;
use std::cell::RefCell;
use std::collections::BTreeSet;

/// A horizontal axis with two drives, without cutting force and requirements, with the default duty.
pub const BARE: &str = "
machine: Portal
axes:
  portal:
    direction: 12 deg
    travel: 3.5 m
    moved-mass: 600 kg
    drives: 2
    drive-spacing: 2 m
    speed: 50 m/min
    acceleration: 3 m/s²
    counterbalance: { kind: gas, share: 40 % }
";

fn worksheet<F: Family>(family: &F, demand: &Demand<'_>, path: &Path) -> Worksheet {
    let mut sheet = Worksheet::default();
    demand.enter(&mut sheet);
    for stage in 0..family.stages().len() {
        family.enter(stage, path, &mut sheet);
    }
    sheet
}

/// Reads from a finished sheet and remembers what was read since the last entry.
struct Again<'s> {
    finished: &'s Worksheet,
    read: RefCell<Vec<usize>>,
    /// Slot, value, slots named as inputs, slots read before them.
    lines: Vec<(usize, f64, Vec<usize>, Vec<usize>)>,
}

impl Figures for Again<'_> {
    fn value(&self, slot: usize) -> f64 {
        self.read.borrow_mut().push(slot);
        self.finished.value(slot)
    }
}

impl Ledger for Again<'_> {
    fn keep_given(&mut self, slot: usize, value: f64, _: Origin) {
        let read = self.read.take();
        self.lines.push((slot, value, Vec::new(), read));
    }
    // a quantity that does not exist makes no line
    fn keep_absent(&mut self, _: usize) {}
    fn keep_computed(&mut self, slot: usize, value: f64, _: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        let mut slots = Vec::new();
        inputs(&mut slots);
        let read = self.read.take();
        self.lines.push((slot, value, slots, read));
    }
}

struct Checked<'c> {
    demand: &'c Demand<'c>,
    seeds: &'c [u16],
}

impl WithFamily for Checked<'_> {
    type Output = ();
    fn with<F: Family>(self, family: &F) {
        let path = small::path_of(&family.stages(), self.seeds);
        let entered = Entered::of(family, self.demand, &path);
        let names: Vec<String> = entered.twice.iter().map(|&slot| ch::id(slot)).collect();
        assert!(names.is_empty(), "{} enters {names:?} twice on {path:?}", family.id());

        let sheet = worksheet(family, self.demand, &path);
        let known = small::numbers(family, self.demand, &path);
        for slot in 0..SLOTS {
            let (line, plain) = (sheet.value(slot), known.value(slot));
            assert_eq!(line.to_bits(), plain.to_bits(), "{} on {path:?}: {line} and {plain}", ch::id(slot));
        }

        let mut before = BTreeSet::new();
        for line in &sheet.lines {
            for input in &line.inputs {
                assert!(before.contains(input), "{} needs {} before it", ch::id(line.slot), ch::id(*input));
            }
            assert_eq!(line.note.is_some(), line.origin == Origin::Formula, "{}", ch::id(line.slot));
            if let Some(note) = line.note {
                assert!(!line.inputs.is_empty(), "{} by {} from nothing", ch::id(line.slot), note.id);
            }
            before.insert(line.slot);
        }

        let mut again = Again { finished: &sheet, read: RefCell::default(), lines: Vec::new() };
        self.demand.enter(&mut again);
        for stage in 0..family.stages().len() {
            family.enter(stage, &path, &mut again);
        }
        assert_eq!(again.lines.len(), sheet.lines.len());
        for ((slot, value, inputs, read), line) in again.lines.iter().zip(&sheet.lines) {
            assert_eq!((*slot, inputs), (line.slot, &line.inputs));
            assert_eq!(value.to_bits(), line.value.to_bits(), "{} replayed on {path:?}", ch::id(*slot));
            // a formula reads what it names and nothing else; which of two formulas is meant is asked beside it:
            // A or E by the travel, the motor's curves by its field weakening
            let weakening = [ch::PEAK_TORQUE_USE.slot, ch::CONTINUOUS_TORQUE.slot].contains(slot);
            let asked: &[usize] = match *slot {
                slot if slot == ch::ACCURACY.slot => &[ch::TRAVEL.slot, ch::SECTION_LIMIT.slot],
                _ if weakening => &[ch::FIELD_WEAKENING.slot],
                _ => &[],
            };
            // how many pinions there are is asked before any line that differs by it
            let read: Vec<usize> = read.iter().copied().skip_while(|&slot| slot == ch::PINIONS.slot).collect();
            let inputs_read = inputs.iter().copied().skip_while(|&slot| slot == ch::PINIONS.slot);
            let expected: Vec<usize> = asked.iter().copied().chain(inputs_read).collect();
            assert_eq!(read, expected, "{} reads beside its inputs", ch::id(*slot));
        }
    }
}

proptest! {
    #![proptest_config(small::cases(40))]

    #[test]
    fn worksheet_and_plain_numbers_agree_and_every_line_follows_from_the_lines_it_names(
        seeds in prop::array::uniform12(any::<u16>()),
        which in 0..3_usize,
        carried in 0.0..400.0_f64,
    ) {
        let inputs = small::inputs([HORIZONTAL, VERTICAL, BARE][which]);
        let demand = Demand::new(&inputs.brief, 0, axiswright::units::Measure::of_si(carried));
        for id in FAMILIES {
            with_family(id, &demand, &inputs.catalog, Checked { demand: &demand, seeds: &seeds }).expect("a family");
        }
    }
}

/// A value as `calc` takes it, in the unit whose factor is 1.
fn text(dimension: Dimension, value: f64) -> String {
    let unit = dimension.units().find(|unit| unit.si == 1.0).map_or("", |unit| unit.name);
    format!("{value:?} {unit}").trim_end().to_string()
}

struct Replayed<'c> {
    demand: &'c Demand<'c>,
    seeds: &'c [u16],
}

impl WithFamily for Replayed<'_> {
    /// The ids of the formulas that were worked out again.
    type Output = BTreeSet<&'static str>;
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let path = small::path_of(&family.stages(), self.seeds);
        let sheet = worksheet(family, self.demand, &path);
        let mut replayed = BTreeSet::new();
        for line in &sheet.lines {
            let Some(note) = line.note else { continue };
            // `calc` gives no answer that is not a number, such as the way to stop without a brake
            if !line.value.is_finite() {
                continue;
            }
            let entry = calc::find(note.id).unwrap_or_else(|| panic!("calc does not know {}", note.id));
            if !matches!(entry.run, calc::Run::Plain(_)) {
                continue;
            }
            let mut rest = line.inputs.as_slice();
            let mut arguments = Vec::new();
            let lists = entry.arguments.iter().filter(|argument| matches!(argument.kind, calc::Kind::List(_))).count();
            let in_lists = line.inputs.len() + lists - entry.arguments.len();
            for argument in &entry.arguments {
                let (count, dimension) = match argument.kind {
                    calc::Kind::List(dimension) => (in_lists / lists, dimension),
                    calc::Kind::Value(dimension) => (1, dimension),
                    _ => panic!("{} takes a word", note.id),
                };
                let (mine, others) = rest.split_at(count);
                rest = others;
                let values: Vec<String> = mine.iter().map(|&slot| text(dimension, sheet.value(slot))).collect();
                arguments.push((argument.name.to_string(), values.join(", ")));
            }
            assert!(rest.is_empty(), "{} takes fewer arguments than the line names", note.id);
            let answer = calc::calculate(note.id, &arguments).unwrap_or_else(|error| panic!("{error}"));
            let unit = entry.dimension.units().find(|unit| unit.name == entry.unit).map_or(1.0, |unit| unit.si);
            let (again, kept) = (answer.value * unit, line.value);
            // one conversion to the unit of the answer and back
            assert!((again - kept).abs() <= 4.0 * f64::EPSILON * kept.abs(), "{}: {again}, {kept}", note.id);
            replayed.insert(note.id);
        }
        replayed
    }
}

#[test]
fn lines_of_a_worksheet_come_out_of_calc_again() {
    let mut replayed = BTreeSet::new();
    for text in [HORIZONTAL, VERTICAL, BARE] {
        let inputs = small::inputs(text);
        let demand = small::demand(&inputs, 0);
        for seeds in [[0_u16; 12], [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], [7, 2, 2, 5, 2, 2, 3, 0, 2, 2, 0, 0]] {
            for id in FAMILIES {
                let work = Replayed { demand: &demand, seeds: &seeds };
                replayed.extend(with_family(id, &demand, &inputs.catalog, work).expect("a family"));
            }
        }
    }
    assert!(replayed.len() > 70, "only {} formulas: {replayed:?}", replayed.len());
}
