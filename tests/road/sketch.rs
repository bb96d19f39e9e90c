//! The answer in a hurry against the whole one: what is left out changes nothing of what is told.
//!
//! Every property is derived here, no source.

use crate::small::{self, HORIZONTAL, MACHINE, VERTICAL};
use axiswright::drive::FAMILIES;
use axiswright::pipeline::{Inputs, Look, Memory, recommend, sketch};
use axiswright::record::DecisionRecord;
use axiswright::search::Stop;
use axiswright::units::{Measure, Velocity};

fn looked(inputs: &Inputs, memory: &Memory, look: Look) -> DecisionRecord {
    sketch(inputs, memory, look, &Stop::default()).expect("nobody stopped it")
}

/// The drives chosen, part by part.
fn drives(record: &DecisionRecord) -> Vec<Vec<String>> {
    let of = |axis: &axiswright::record::AxisRecord| {
        let chosen = axis.chosen.iter();
        chosen.flat_map(|drive| &drive.components).map(|part| part.designation.clone()).collect()
    };
    record.axes.iter().map(of).collect()
}

/// Of each axis the family and merit of the best of every family.
fn best(record: &DecisionRecord) -> Vec<Vec<(String, u64)>> {
    let of = |axis: &axiswright::record::AxisRecord| {
        let chosen = axis.chosen.iter();
        let all = chosen.chain(axis.families.iter().filter_map(|family| family.best.as_ref()));
        let mut all: Vec<_> = all.map(|drive| (drive.family.clone(), drive.merit.to_bits())).collect();
        all.sort();
        all.dedup();
        all
    };
    record.axes.iter().map(of).collect()
}

#[test]
fn the_first_look_has_the_drives_of_the_second_and_of_the_whole_answer_of_an_axis_alone() {
    for text in [HORIZONTAL, VERTICAL, MACHINE] {
        let inputs = small::inputs(text);
        let (fresh, used) = (Memory::default(), Memory::default());
        let first = looked(&inputs, &used, Look::Best);
        let second = looked(&inputs, &used, Look::EachFamily);
        assert_eq!(drives(&first), drives(&second));
        assert!(first.axes.iter().all(|axis| axis.families.len() == 1), "the winner's family alone");
        assert!(second.axes.iter().all(|axis| axis.families.len() == FAMILIES.len()));
        // what was seen before changes nothing, a farther look stands for a nearer one
        assert_eq!(best(&second), best(&looked(&inputs, &fresh, Look::EachFamily)));
        assert_eq!(best(&second), best(&looked(&inputs, &used, Look::Best)));
        let mut faster = inputs.clone();
        faster.brief.axes[0].speed = Velocity::of_si(inputs.brief.axes[0].speed.si() * 1.1);
        assert_eq!(
            best(&looked(&faster, &used, Look::EachFamily)),
            best(&looked(&faster, &Memory::default(), Look::EachFamily))
        );
        if inputs.brief.axes.len() == 1 {
            assert_eq!(best(&second), best(&recommend(&inputs, false)));
        }
    }
}
