//! Lines beside the road: nothing else hangs on them, no choice moves one into another group, and a rule that names one is
//! judged as if every line were entered.

use crate::ledger::BARE;
use crate::small::{self, HORIZONTAL, VERTICAL};
use axiswright::characteristic::{self as ch, SLOTS};
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::formula::Note;
use axiswright::ledger::{Aside, Asides, Figures, Known, Ledger, Origin};
use axiswright::rule::{Limit, Obligation, Rule, Sense};
use axiswright::search::{Setting, walk};
use axiswright::units::Measure;
use proptest::prelude::*;

/// The group in which each slot was entered, if it was entered at all.
struct Grouped {
    known: Known,
    now: Option<Aside>,
    groups: Vec<Option<Option<Aside>>>,
}

impl Figures for Grouped {
    fn value(&self, slot: usize) -> f64 {
        self.known.value(slot)
    }
}

impl Ledger for Grouped {
    fn aside(&mut self, aside: Aside, enter: impl FnOnce(&mut Self)) {
        assert!(self.now.is_none(), "a group within a group");
        self.now = Some(aside);
        enter(self);
        self.now = None;
    }
    fn keep_given(&mut self, slot: usize, value: f64, origin: Origin) {
        self.groups[slot] = Some(self.now);
        self.known.keep_given(slot, value, origin);
    }
    fn keep_computed(&mut self, slot: usize, value: f64, note: &'static Note, inputs: impl FnOnce(&mut Vec<usize>)) {
        self.groups[slot] = Some(self.now);
        self.known.keep_computed(slot, value, note, inputs);
    }
}

struct Compared<'c> {
    demand: &'c Demand<'c>,
    seeds: [&'c [u16]; 2],
}

impl WithFamily for Compared<'_> {
    type Output = ();
    fn with<F: Family>(self, family: &F) {
        let stages = family.stages();
        let all = self.seeds.map(|seeds| {
            let path = small::path_of(&stages, seeds);
            let mut grouped = Grouped { known: Known::default(), now: None, groups: vec![None; SLOTS] };
            self.demand.enter(&mut grouped);
            (0..stages.len()).for_each(|stage| family.enter(stage, &path, &mut grouped));

            let mut short = Known::default();
            self.demand.enter(&mut short);
            short.leave_out(Asides::such(|_| true));
            (0..stages.len()).for_each(|stage| family.enter(stage, &path, &mut short));
            for slot in 0..SLOTS {
                let (whole, short) = (grouped.value(slot), short.value(slot));
                let beside = grouped.groups[slot].flatten().is_some();
                let right = if beside { short.is_nan() } else { short.to_bits() == whole.to_bits() };
                assert!(right, "{} of {} on {path:?}: {short}, {whole}", ch::id(slot), family.id());
            }
            for aside in Aside::ALL {
                let holds = grouped.groups.contains(&Some(Some(aside)));
                assert!(holds || aside == Aside::Sides, "{} has no line of {aside:?}", family.id());
            }
            grouped.groups
        });
        for (slot, (one, other)) in all[0].iter().zip(&all[1]).enumerate() {
            let same = one.is_none() || other.is_none() || one == other;
            assert!(same, "{} of {} stands in {one:?} and {other:?}", ch::id(slot), family.id());
        }
    }
}

proptest! {
    #![proptest_config(small::cases(40))]

    #[test]
    fn nothing_is_worked_out_from_lines_beside_the_road(
        one in prop::array::uniform18(any::<u16>()),
        other in prop::array::uniform18(any::<u16>()),
        which in 0..3_usize,
    ) {
        let inputs = small::inputs([HORIZONTAL, VERTICAL, BARE][which]);
        let demand = Demand::new(&inputs.brief, 0, Measure::of_si(0.0));
        for id in FAMILIES {
            let compared = Compared { demand: &demand, seeds: [&one, &other] };
            with_family(id, &demand, &inputs.catalog, compared).expect("a family");
        }
    }
}

struct Counted<'c, 'a> {
    demand: &'c Demand<'c>,
    setting: Setting<'a>,
}

impl WithFamily for Counted<'_, '_> {
    /// How many the last rule excludes.
    type Output = u64;
    fn with<F: Family>(self, family: &F) -> u64 {
        let staged = walk(family, self.demand, &self.setting, None);
        let plainly = walk(family, self.demand, &Setting { exhaustive: true, ..self.setting }, None);
        assert_eq!(staged.census, plainly.census, "{}", family.id());
        assert_eq!(staged.best, plainly.best, "{}", family.id());
        staged.census.excluded.last().copied().unwrap_or_default()
    }
}

#[test]
fn a_rule_that_names_a_line_beside_the_road_is_judged_as_ever() {
    for (slot, limit, text) in [
        (ch::LOOP_GAIN.slot, 40.0, HORIZONTAL),
        (ch::CRASH_FORCE.slot, 60_000.0, HORIZONTAL),
        (ch::DROP_FROM_REST.slot, 2e-3, VERTICAL),
        (ch::SHORT_TIME_FACTOR.slot, 1.9, HORIZONTAL),
        (ch::YAW_ANGLE.slot, 2e-5, BARE),
    ] {
        let mut inputs = small::inputs(text);
        let rules = &mut inputs.rulebook.rules;
        let like = rules.first().expect("a rule").clone();
        rules.push(Rule {
            id: "zz-beside".into(),
            applies_to: Vec::new(),
            obligation: Obligation::Shall,
            weighs: 0.0,
            demand: slot,
            sense: Sense::AtMost,
            factor: 1.0,
            limit: Limit::Value(limit),
            when: None,
            ..like
        });
        let demand = Demand::new(&inputs.brief, 0, Measure::of_si(0.0));
        let excluded = ["ball-screw", "helical-rack"].map(|id| {
            let counted = Counted { demand: &demand, setting: small::setting(&inputs) };
            with_family(id, &demand, &inputs.catalog, counted).expect("a family")
        });
        assert!(excluded.iter().sum::<u64>() > 0, "{} excludes nothing at {limit}", ch::id(slot));
    }
}
