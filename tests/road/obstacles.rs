//! What stands in the way: conflicts and corrections against trying every set, relaxed axes and machines against the search.

use crate::small::{self, HORIZONTAL, IMPOSSIBLE, MACHINE};
use axiswright::inquiry::conflict::{conflict, correction};
use axiswright::inquiry::{Condition, obstacle};
use axiswright::pipeline::{Inputs, recommend, recommend_and_ask};
use axiswright::record::Outcome;
use axiswright::search::best_on;
use proptest::prelude::*;

proptest! {
    #![proptest_config(small::cases(300))]

    /// Demands clash in random groups; a set is possible where it holds no group whole.
    #[test]
    fn conflicts_and_corrections_cannot_be_made_smaller(
        count in 1..8_usize,
        groups in prop::collection::vec(1..255_u32, 0..5),
        shuffle in any::<u64>(),
    ) {
        let all = (1_u32 << count) - 1;
        let groups: Vec<u32> = groups.into_iter().map(|group| group & all).filter(|&group| group != 0).collect();
        let set_of = |active: &[bool]| -> u32 { (0..count).filter(|&place| active[place]).map(|place| 1 << place).sum() };
        let possible = |set: u32| groups.iter().all(|&group| group & !set != 0);
        let found = conflict(count, &mut |active| possible(set_of(active)));
        // every set of demands is tried
        prop_assert_eq!(found.is_none(), possible(all));
        if let Some(found) = &found {
            let set: u32 = found.iter().map(|&place| 1 << place).sum();
            prop_assert!(!possible(set));
            let smaller = (0..=all).filter(|&other| other & set == other && other != set);
            prop_assert!(smaller.into_iter().all(possible));
        }
        let mut order: Vec<usize> = (0..count).collect();
        order.sort_by_key(|&place| shuffle.rotate_left(place as u32 * 7) % 13);
        let give = correction(count, &order, &mut |active| possible(set_of(active))).expect("nothing in force is possible");
        let gone: u32 = give.iter().map(|&place| 1 << place).sum();
        prop_assert!(possible(all & !gone));
        for &place in &give {
            prop_assert!(!possible(all & !gone | 1 << place), "{place} need not give");
        }
    }
}

/// Requirements of one axis that no drive of the small catalogue keeps; the rest is easy.
fn inputs(changed: &[(&str, &str)]) -> Inputs {
    let mut text = HORIZONTAL.to_string();
    for (now, then) in changed {
        assert!(text.contains(now), "{now}");
        text = text.replace(now, then);
    }
    small::inputs(&text)
}

fn admissible(inputs: &Inputs, kept: &[Condition]) -> bool {
    let brief = &inputs.brief;
    let dropped = Condition::stated(brief, 0).into_iter().filter(|condition| !kept.contains(condition));
    let brief = dropped.fold(brief.clone(), |brief, condition| condition.without(&brief, 0));
    best_on(&brief, 0, 0.0, &small::setting(inputs), None, &[]).is_some()
}

#[test]
fn the_conflict_of_an_axis_is_none_without_any_one_of_it() {
    for changed in [
        &[("speed: 36 m/min\n", "speed: 150 m/min\n"), ("acceleration: 2.5", "acceleration: 30")][..],
        &[("accuracy: 0.09 mm", "accuracy: 0.002 mm")],
        &[("travel: 0.9 m", "travel: 30 m"), ("accuracy: 0.09 mm", "accuracy: 0.004 mm")],
    ] {
        let inputs = inputs(changed);
        let found = obstacle(&inputs.brief, 0, 0.0, &small::setting(&inputs));
        assert!(!found.conflict.is_empty(), "{changed:?}");
        // every set of the conflict is tried
        for set in 0..1_u32 << found.conflict.len() {
            let in_force = found.conflict.iter().enumerate().filter(|(place, _)| set & (1 << place) != 0);
            let kept: Vec<Condition> = in_force.map(|(_, condition)| *condition).collect();
            let whole = kept.len() == found.conflict.len();
            assert_eq!(admissible(&inputs, &kept), !whole, "{changed:?}: {kept:?}");
        }
    }
}

#[test]
fn a_relaxed_requirement_allows_the_drive_that_is_named_and_a_little_less_allows_none() {
    let inputs = inputs(&[("accuracy: 0.09 mm", "accuracy: 0.002 mm")]);
    let setting = small::setting(&inputs);
    let found = obstacle(&inputs.brief, 0, 0.0, &setting);
    let single = found.relaxations.iter().find(|relaxation| relaxation.changes.len() == 1).expect("one alone helps");
    let change = single.changes[0];
    let (now, to) = (change.now.expect("a number"), change.to.expect("a number"));
    assert_eq!(change.condition.key(), "accuracy");
    assert!(to > now && single.factor.is_some_and(|factor| (factor - to / now).abs() < 1e-12));
    let at = |value: f64| {
        let brief = change.condition.with(&inputs.brief, 0, value);
        best_on(&brief, 0, 0.0, &setting, None, &[])
    };
    assert_eq!(at(to).as_ref(), Some(&single.found));
    // half a percent of the halving and three digits of rounding
    assert_eq!(at(to / 1.02), None);
    assert!(found.relaxations.windows(2).all(|two| two[0].factor <= two[1].factor || two[1].factor.is_none()));
}

#[test]
fn an_axis_that_nobody_can_build_is_told_with_what_would_have_to_give() {
    let inputs = small::inputs(IMPOSSIBLE);
    let record = recommend_and_ask(&inputs, false);
    let axis = &record.axes[0];
    assert!(axis.conflict.as_ref().is_some_and(|conflict| !conflict.is_empty()) && !axis.relaxations.is_empty());
    for relaxation in &axis.relaxations {
        // the brief with these values has an admissible drive, and the best is the one that is named
        let brief = relaxation.changes.iter().fold(inputs.brief.clone(), |brief, change| {
            let condition = Condition::stated(&inputs.brief, 0)
                .into_iter()
                .find(|condition| condition.key() == change.requirement)
                .expect("a condition of the brief");
            let unit = condition.unit().map_or(1.0, |unit| unit.si);
            change.to.map_or_else(|| condition.without(&brief, 0), |to| condition.with(&brief, 0, to * unit))
        });
        let best = best_on(&brief, 0, 0.0, &small::setting(&inputs), None, &[]).expect("a drive");
        assert_eq!(best.family, relaxation.drive.family);
        assert!((best.attributes.purchase - relaxation.drive.purchase).abs() < 1e-6 * relaxation.drive.purchase);
    }
}

/// The machine of three axes with these limits.
fn with_limits(limits: &str) -> Inputs {
    let begin = MACHINE.find("limits:").expect("limits");
    let end = MACHINE.find("axes:").expect("axes");
    small::inputs(&format!("{}limits: {{ {limits} }}\n{}", &MACHINE[..begin], &MACHINE[end..]))
}

#[test]
fn the_least_limit_that_would_do_does_and_a_little_less_does_not() {
    for (key, limit, unit) in
        [("purchase", "9000", ""), ("supply-power", "0.2 kW", " kW"), ("tool-point-error", "0.002 mm", " mm")]
    {
        let record = recommend(&with_limits(&format!("{key}: {limit}")), false);
        assert_eq!(record.outcome, Outcome::MachineLimit, "{key}");
        assert_eq!(record.machine.conflict, [key]);
        assert_eq!(record.machine.relaxations.len(), 1, "{key}");
        let raised = &record.machine.relaxations[0];
        assert_eq!((raised.status.as_str(), raised.limits.len()), ("optimal", 1), "{key}");
        let least = raised.limits[0].least;
        assert!(least > raised.limits[0].allowed);
        for (share, outcome) in [(1.0001, Outcome::Chosen), (0.999, Outcome::MachineLimit)] {
            let record = recommend(&with_limits(&format!("{key}: {}{unit}", least * share)), false);
            assert_eq!(record.outcome, outcome, "{key} at {share} of the least");
        }
    }
}
