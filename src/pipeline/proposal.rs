//! Judging what someone proposes: the same road with nothing on the axis but the proposal, beside the recommendation.
//!
//! Method: the brief with the family proposed and the catalogue with the parts proposed are decided as any brief is; what is
//! left open is chosen, other axes get what suits the machine with it. Limits of the machine are told and do not choose.
//! Limits: ranks count the drives of the catalogue at the carried mass at which the recommendation weighs.

use super::{Inputs, Way, decide, setting, waived_on};
use crate::catalog::Catalog;
use crate::choice::{Choice, Proposal};
use crate::drive::{Demand, Family, WithFamily, considered, with_family};
use crate::inquiry::Placed;
use crate::record::{DecisionRecord, Judged, ProposalRecord, proposal_record};
use crate::search::{
    Attributes, CarriedRange, Coupling, Found, Path, Setting, Stop, admissible, count_below, nearest, search_axis,
};
use crate::units::{Mass, Measure};
use crate::yaml::Faults;

/// Judges a choice; a fault where no drive can be joined from what is named.
pub fn check_proposal(inputs: &Inputs, choice: &Choice) -> Result<ProposalRecord, Faults> {
    judge_all(inputs, choice, None)
}

/// The same; none where it was stopped before it was there.
pub fn check_proposal_until(inputs: &Inputs, choice: &Choice, stop: &Stop) -> Option<Result<ProposalRecord, Faults>> {
    let judged = judge_all(inputs, choice, Some(stop));
    (!stop.asked()).then_some(judged)
}

fn judge_all(inputs: &Inputs, choice: &Choice, stop: Option<&Stop>) -> Result<ProposalRecord, Faults> {
    let mut restricted = inputs.clone();
    restricted.catalog = choice.catalog.clone();
    let mut catalogs: Vec<Catalog> = vec![inputs.catalog.clone(); inputs.brief.axes.len()];
    for proposal in &choice.proposals {
        let catalog = &mut catalogs[proposal.axis];
        *catalog = choice.catalog.clone();
        proposal.restrict(&mut restricted.brief, catalog);
    }
    let mut faults = Faults::default();
    for proposal in &choice.proposals {
        if !joins(&restricted, proposal, &catalogs[proposal.axis]) {
            let axis = &inputs.brief.axes[proposal.axis].name;
            let message = format!("no {} of axis `{axis}` can be joined from what is named", proposal.family);
            let help = "straight teeth do not go with helical ones; leave a part out to see what fits";
            choice.fault_at(axis, message, help, &mut faults);
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    let recommended = decide(inputs, &Way { stop, ..Way::default() });
    let proposed = decide(&restricted, &Way { proposed: Some(&catalogs), stop, ..Way::default() });
    let judged = choice.proposals.iter().map(|proposal| {
        let of = OfAxis { inputs, restricted: &restricted, catalog: &catalogs[proposal.axis] };
        of.judge(proposal, &recommended, &proposed)
    });
    let judged: Vec<Judged> = judged.collect();
    Ok(proposal_record(choice, &inputs.brief, recommended, proposed, judged))
}

/// Whether there is any configuration of what is proposed.
fn joins(restricted: &Inputs, proposal: &Proposal, catalog: &Catalog) -> bool {
    struct Any;
    impl WithFamily for Any {
        type Output = bool;
        fn with<F: Family>(self, family: &F) -> bool {
            family.stages().iter().all(|&choices| choices > 0)
        }
    }
    let demand = Demand::new(&restricted.brief, proposal.axis, Mass::of_si(0.0));
    with_family(&proposal.family, &demand, catalog, Any).unwrap_or(false)
}

struct OfAxis<'o> {
    inputs: &'o Inputs,
    restricted: &'o Inputs,
    catalog: &'o Catalog,
}

impl OfAxis<'_> {
    fn judge(&self, proposal: &Proposal, recommended: &DecisionRecord, proposed: &DecisionRecord) -> Judged {
        let axis = proposal.axis;
        let waived = waived_on(&self.inputs.brief, &self.inputs.brief.axes[axis].name);
        let whole = setting(self.inputs, Coupling::default(), &waived, false);
        let own = Setting { catalog: self.catalog, ..whole };
        let carried =
            proposed.axes[axis].carried_mass.chosen.unwrap_or_else(|| proposed.axes[axis].carried_mass.census());
        let found = self.found(proposal, carried, &own);
        let brief = &self.restricted.brief;
        let margins =
            found.as_ref().map_or(Vec::new(), |found| Placed { brief, axis, carried, setting: &own, found }.margins());
        let demand = Demand::new(brief, axis, Mass::of_si(carried));
        let passes = |found: &Found| admissible(found.family, &found.path, &demand, &own);
        let rank = found.filter(passes).and_then(|found| self.rank(axis, &found, &own, &whole, recommended));
        Judged { axis, margins, rank }
    }

    /// The drive that stands for the proposal: the best of what is left open, or what misses by least.
    fn found(&self, proposal: &Proposal, carried: f64, own: &Setting<'_>) -> Option<Found> {
        struct Nearest<'n> {
            demand: &'n Demand<'n>,
            setting: &'n Setting<'n>,
        }
        impl WithFamily for Nearest<'_> {
            type Output = Option<(&'static str, Path)>;
            fn with<F: Family>(self, family: &F) -> Self::Output {
                nearest(family, self.demand, self.setting, &[]).map(|(path, _)| (family.id(), path))
            }
        }
        let brief = &self.restricted.brief;
        let range = CarriedRange::exactly(carried);
        let search = search_axis(brief, proposal.axis, range, own);
        if let Some(offer) = search.offers.into_iter().next() {
            return Some(offer.found);
        }
        let demand = Demand::new(brief, proposal.axis, Mass::of_si(carried));
        let missing = Nearest { demand: &demand, setting: own };
        let (family, path) = with_family(&proposal.family, &demand, own.catalog, missing).flatten()?;
        let worked = crate::search::work_out(family, &path, &demand, own)?;
        Some(Found { family, path, attributes: worked.attributes })
    }

    /// How many admissible drives of the catalogue are better, at the carried mass at which the recommendation weighs.
    fn rank(
        &self,
        axis: usize,
        found: &Found,
        own: &Setting<'_>,
        whole: &Setting<'_>,
        recommended: &DecisionRecord,
    ) -> Option<u64> {
        struct Better<'b> {
            demand: &'b Demand<'b>,
            setting: &'b Setting<'b>,
            merit: f64,
        }
        impl WithFamily for Better<'_> {
            type Output = u64;
            fn with<F: Family>(self, family: &F) -> u64 {
                count_below(family, self.demand, self.setting, self.merit)
            }
        }
        let most = Mass::of_si(recommended.axes[axis].carried_mass.census());
        let demand = Demand::new(&self.restricted.brief, axis, most);
        let attributes: Attributes = crate::search::work_out(found.family, &found.path, &demand, own)?.attributes;
        let demand = Demand::new(&self.inputs.brief, axis, most);
        let of = |id: &str| {
            let better = Better { demand: &demand, setting: whole, merit: attributes.merit };
            with_family(id, &demand, &self.inputs.catalog, better).unwrap_or(0)
        };
        Some(considered(&self.inputs.brief, axis).into_iter().map(of).sum())
    }
}
