//! What rules a family out on its own, against trying every configuration on every rule.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, IMPOSSIBLE, VERTICAL};
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::rule::{Obligation, passes};
use axiswright::search::{Path, RuledOut, Setting, nearest, ruled_out, walk};
use rayon::prelude::*;

struct Both<'b, 'a> {
    demand: &'b Demand<'b>,
    setting: &'b Setting<'a>,
}

impl Both<'_, '_> {
    /// Of every binding rule the least utilisation of all configurations; none where the rule is not judged.
    fn tried<F: Family>(&self, family: &F) -> Vec<Option<f64>> {
        let rules = &self.setting.rulebook.rules;
        let least = |one: Vec<Option<f64>>, other: Vec<Option<f64>>| -> Vec<Option<f64>> {
            let lesser = |(one, other): (Option<f64>, Option<f64>)| match (one, other) {
                (Some(one), Some(other)) => Some(if other < one { other } else { one }),
                (one, other) => one.or(other),
            };
            one.into_iter().zip(other).map(lesser).collect()
        };
        small::paths(&family.stages())
            .into_par_iter()
            .map(|path| {
                let sheet = small::numbers(family, self.demand, &path);
                let judged = |rule: &axiswright::rule::Rule| {
                    let binds = rule.obligation == Obligation::Shall && rule.meant_for(family.id());
                    let utilisation = if rule.applies(family.id(), &sheet) { rule.utilisation(&sheet) } else { 0.0 };
                    binds.then_some(if utilisation.is_nan() { f64::INFINITY } else { utilisation })
                };
                rules.iter().map(judged).collect()
            })
            .reduce(|| vec![None; rules.len()], least)
    }
}

impl WithFamily for Both<'_, '_> {
    type Output = (Vec<RuledOut>, Vec<Option<f64>>);
    fn with<F: Family>(self, family: &F) -> Self::Output {
        (ruled_out(family, self.demand, self.setting), self.tried(family))
    }
}

#[test]
fn the_rules_that_no_configuration_keeps_are_those_of_trying_everything() {
    let mut out = 0;
    for text in [HORIZONTAL, VERTICAL, IMPOSSIBLE] {
        let inputs = small::inputs(text);
        let (demand, setting) = (small::demand(&inputs, 0), small::setting(&inputs));
        for id in FAMILIES {
            let work = Both { demand: &demand, setting: &setting };
            let (found, tried) = with_family(id, &demand, &inputs.catalog, work).expect("a family");
            let mut expected: Vec<(usize, f64)> =
                tried.iter().enumerate().filter_map(|(rule, least)| Some((rule, (*least)?))).collect();
            expected.retain(|(_, least)| !passes(*least));
            expected.sort_by(|a, b| b.1.total_cmp(&a.1).then_with(|| a.0.cmp(&b.0)));
            let found: Vec<(usize, f64)> = found.iter().map(|reached| (reached.rule, reached.utilisation)).collect();
            assert_eq!(found, expected, "{id}");
            out += found.len();
        }
    }
    assert!(out >= 10, "{out} rules rule a family out");
}

#[test]
fn a_family_without_a_configuration_has_nothing_that_rules_it_out() {
    let mut inputs = small::inputs(HORIZONTAL);
    inputs.catalog.servo_motors.clear();
    let (demand, setting) = (small::demand(&inputs, 0), small::setting(&inputs));
    for id in FAMILIES {
        let out = with_family(id, &demand, &inputs.catalog, Empty { demand: &demand, setting: &setting });
        assert_eq!(out, Some((vec![], None, 0)), "{id}");
    }
}

struct Empty<'b, 'a> {
    demand: &'b Demand<'b>,
    setting: &'b Setting<'a>,
}

impl WithFamily for Empty<'_, '_> {
    type Output = (Vec<RuledOut>, Option<(Path, f64)>, u64);
    fn with<F: Family>(self, family: &F) -> Self::Output {
        let all = walk(family, self.demand, self.setting, None).census;
        assert_eq!(all.excluded.iter().sum::<u64>() + all.admissible, all.configurations);
        let out = ruled_out(family, self.demand, self.setting);
        let nearest = nearest(family, self.demand, self.setting, &out);
        (out, nearest, all.configurations)
    }
}
