//! Judging a proposal: the recommended drive proposed is the best there is, ranks count every better drive, margins hold.

use crate::small::{self, HORIZONTAL};
use axiswright::choice::{Choice, Named, Proposal, kinds_of};
use axiswright::drive::{Demand, Family, WithFamily, considered, with_family};
use axiswright::inquiry::Requirement;
use axiswright::pipeline::{Inputs, check_proposal, recommend};
use axiswright::record::{CandidateRecord, ProposalRecord};
use axiswright::search::{Setting, work_out};
use axiswright::units::{Dimension, parse_as};

/// The drive as a choice, every part of it named.
fn proposed(inputs: &Inputs, drive: &CandidateRecord) -> Choice {
    let kinds = kinds_of(&drive.family);
    let named = |kind: &&'static str| {
        let part = drive.components.iter().find(|part| part.role == **kind);
        let without = matches!(*kind, "linear-scale" | "error-table").then_some("none".to_string());
        let designation = part.map(|part| part.designation.clone()).or(without)?;
        Some(Named { kind, designation, own: false })
    };
    let parts = kinds.iter().filter_map(named).collect();
    let proposal = Proposal { axis: 0, family: drive.family.clone(), parts };
    choice(inputs, proposal)
}

fn choice(inputs: &Inputs, proposal: Proposal) -> Choice {
    Choice {
        name: "choice.yaml".into(),
        text: String::new(),
        own: vec![],
        remarks: vec![],
        proposals: vec![proposal],
        catalog: inputs.catalog.clone(),
    }
}

fn check(inputs: &Inputs, drive: &CandidateRecord) -> ProposalRecord {
    check_proposal(inputs, &proposed(inputs, drive)).expect("the drive can be joined from its own parts")
}

#[test]
fn the_drive_recommended_is_none_other_than_itself_when_proposed() {
    let inputs = small::inputs(HORIZONTAL);
    let record = recommend(&inputs, false);
    let chosen = record.axes[0].chosen.as_ref().expect("a drive");
    let checked = check(&inputs, chosen);
    let axis = &checked.axes[0];
    assert!(checked.meets && axis.admissible);
    assert_eq!(axis.better, Some(0), "nothing is better");
    assert_eq!(axis.left_open, Vec::<String>::new());
    let drive = axis.drive.as_ref().expect("a drive");
    assert_eq!((&drive.components, &drive.findings), (&chosen.components, &chosen.findings));
    assert_eq!(drive.worksheet, chosen.worksheet);
    assert_eq!(axis.recommended.as_ref(), Some(chosen));
}

/// The merit of every admissible configuration, each worked out by itself.
fn merits(inputs: &Inputs) -> Vec<f64> {
    struct All<'a> {
        demand: &'a Demand<'a>,
        setting: &'a Setting<'a>,
    }
    impl WithFamily for All<'_> {
        type Output = Vec<f64>;
        fn with<F: Family>(self, family: &F) -> Vec<f64> {
            let paths = small::paths(&family.stages());
            let worked = |path| {
                let worked = work_out(family.id(), path, self.demand, self.setting).expect("a path of the family");
                worked.admissible().then_some(worked.attributes.merit)
            };
            paths.iter().filter_map(worked).collect()
        }
    }
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    let of = |id| with_family(id, &demand, &inputs.catalog, All { demand: &demand, setting: &setting });
    considered(&inputs.brief, 0).into_iter().filter_map(of).flatten().collect()
}

#[test]
fn a_rank_counts_every_better_drive() {
    let mut inputs = small::inputs(HORIZONTAL);
    inputs.brief.axes[0].families = Some(vec!["straight-rack".into(), "helical-rack".into()]);
    let merits = merits(&inputs);
    let record = recommend(&inputs, false);
    let runners = &record.axes[0].runners_up;
    assert!(!runners.is_empty());
    for runner in runners {
        let axis = check(&inputs, runner).axes.remove(0);
        let worse = axis.drive.as_ref().expect("a drive").merit;
        let better = merits.iter().filter(|merit| **merit < worse).count() as u64;
        assert_eq!(axis.better, Some(better), "{}", runner.family);
        assert!(better > 0);
    }
}

/// A margin means: at its value the drive still meets the brief, a hair beyond it breaks the rule that is named.
#[test]
fn margins_hold_up_to_their_value_and_break_beyond() {
    let inputs = small::inputs(HORIZONTAL);
    let record = recommend(&inputs, false);
    let chosen = record.axes[0].chosen.as_ref().expect("a drive");
    let checked = check(&inputs, chosen);
    let margins = &checked.axes[0].margins;
    let broken: Vec<_> = margins.iter().filter_map(|margin| Some((margin, margin.breaks.as_ref()?))).collect();
    assert!(broken.len() >= 3, "{margins:?}");
    for (margin, breaks) in broken {
        let requirement = Requirement::named(&margin.requirement).expect("a requirement");
        let (dimension, unit) =
            requirement.unit().map_or((Dimension::Ratio, ""), |(dimension, unit)| (dimension, unit.name));
        let si = parse_as(dimension, &format!("{} {unit}", margin.holds_to)).expect("a value");
        let harder = if requirement.only_a_limit() { 1.0 - 1e-6 } else { 1.0 + 1e-6 };
        for (value, meets) in [(si * (2.0 - harder), true), (si * harder, false)] {
            let mut changed = inputs.clone();
            changed.brief = requirement.with(&inputs.brief, 0, value);
            let axis = check(&changed, chosen).axes.remove(0);
            assert_eq!(axis.admissible, meets, "{} at {value}", margin.requirement);
            let findings = axis.drive.expect("a drive").findings;
            let failed = findings.iter().any(|finding| finding.rule == *breaks && finding.verdict == "fail");
            assert_eq!(failed, !meets, "{breaks}");
        }
    }
}

#[test]
fn parts_that_do_not_go_together_are_told_and_nothing_gives_up() {
    let inputs = small::inputs(HORIZONTAL);
    let straight = inputs.catalog.racks.iter().find(|rack| !rack.helical).expect("a straight rack");
    let part = Named { kind: "rack", designation: straight.designation.clone(), own: false };
    let proposal = Proposal { axis: 0, family: "helical-rack".into(), parts: vec![part] };
    let faults = check_proposal(&inputs, &choice(&inputs, proposal)).expect_err("straight teeth are not helical");
    assert!(faults.to_string().contains("helical-rack"), "{faults}");
}
