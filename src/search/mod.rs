//! The search of one axis: every configuration of every family, staged, with an exact census.
//!
//! Method: a family's stages are walked depth first. A rule is judged as soon as every characteristic it
//! names is known; a configuration that fails a binding rule falls with the whole branch behind it, and the
//! size of that branch is added to the rule's count. What remains is admissible: the best by merit are kept,
//! and those that no other beats in every respect at once (the undominated set).
//! Exactness: branch sizes are products, so the census counts every configuration once, at the first rule it
//! fails in the order of stages and rule ids. Nothing depends on threads or on the order of files: ties are
//! broken by the path of choices, and merging keeps no order.

mod axis;
mod best;
mod block;
mod front;
mod loads;
mod nearest;
mod plan;
mod reach;
mod row;
mod steps;
mod stop;
mod tests;
mod walk;

pub use axis::{
    AxisSearch, CarriedRange, FamilySearch, Offer, explain_briefly, explain_none, offer_lighter, search_axis,
};
pub use best::{Accept, best_among, best_on, best_that};
pub use block::{Block, Marks, Outcome, Standing};
pub use front::{Attributes, Coupling, Front};
pub use nearest::nearest;
pub use plan::{NeverEntered, Plan, never_entered};
pub use reach::{RuledOut, ruled_out};
pub use stop::Stop;
pub use walk::{Census, Walk, count_below, walk};

use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::drive::{Demand, Family, Merit, Size, WithFamily, with_family};
use crate::ledger::Worksheet;
use crate::rule::{Obligation, Rule, Rulebook, passes};
use crate::units::{Mass, Measure};

/// The most stages that a family may have.
pub const MOST_STAGES: usize = 20;

/// The choices of one configuration, one a stage; unused places are zero.
pub type Path = [u16; MOST_STAGES];

/// One configuration found.
#[derive(Debug, Clone, PartialEq)]
pub struct Found {
    /// Id of its family.
    pub family: &'static str,
    /// Its choices.
    pub path: Path,
    /// What it brings to the machine.
    pub attributes: Attributes,
}

impl Found {
    /// The order in which configurations are preferred: by merit, then family, then path.
    pub fn order(&self, other: &Found) -> std::cmp::Ordering {
        self.attributes
            .merit
            .total_cmp(&other.attributes.merit)
            .then_with(|| self.family.cmp(other.family))
            .then_with(|| self.path.cmp(&other.path))
    }
}

/// Everything that a search needs to know beside the demand.
#[derive(Debug, Clone, Copy)]
pub struct Setting<'a> {
    /// The components.
    pub catalog: &'a Catalog,
    /// The rules.
    pub rulebook: &'a Rulebook,
    /// How drives are weighed.
    pub merit: Merit,
    /// Which attributes the machine couples axes by.
    pub coupling: Coupling,
    /// Ids of rules that the brief waives on this axis.
    pub waived: &'a [String],
    /// Whether nothing may be skipped.
    pub exhaustive: bool,
    /// What ends the search before its time; what it gives then is no answer.
    pub stop: Option<&'a Stop>,
}

impl Setting<'_> {
    /// Whether the search is to end at once.
    #[inline]
    pub fn stopped(&self) -> bool {
        self.stop.is_some_and(Stop::asked)
    }
}

/// One rule judged on one sheet.
#[derive(Debug, Clone)]
pub struct Judged<'a> {
    /// The rule.
    pub rule: &'a Rule,
    /// Demand over limit.
    pub utilisation: f64,
    /// Whether the brief waives it on this axis.
    pub waived: bool,
}

/// One configuration worked out with every line, and judged by every rule that applies.
#[derive(Debug)]
pub struct Worked<'a> {
    /// The sheet.
    pub sheet: Worksheet,
    /// The rules, in the order of their ids.
    pub judged: Vec<Judged<'a>>,
    /// The components.
    pub parts: Vec<crate::drive::Part>,
    /// The main sizes.
    pub sizes: Vec<crate::drive::Size>,
    /// What it brings to the machine.
    pub attributes: Attributes,
    /// How much worse it counts for the advice that it does not follow.
    pub unmet_advice: f64,
}

impl Worked<'_> {
    /// Whether every binding rule is passed or waived.
    pub fn admissible(&self) -> bool {
        self.judged
            .iter()
            .all(|judged| judged.rule.obligation == Obligation::Should || judged.waived || passes(judged.utilisation))
    }
}

/// Works one configuration out in full; `None` if the family or a choice does not exist.
pub fn work_out<'a>(family: &str, path: &Path, demand: &Demand<'_>, setting: &Setting<'a>) -> Option<Worked<'a>> {
    with_family(family, demand, setting.catalog, WorkOut { path, demand, setting }).flatten()
}

struct WorkOut<'s, 'd, 'a> {
    path: &'s Path,
    demand: &'d Demand<'d>,
    setting: &'s Setting<'a>,
}

impl<'a> WithFamily for WorkOut<'_, '_, 'a> {
    type Output = Option<Worked<'a>>;

    fn with<F: Family>(self, family: &F) -> Self::Output {
        let stages = family.stages();
        if stages.iter().zip(self.path).any(|(&choices, &choice)| usize::from(choice) >= choices) {
            return None;
        }
        let mut sheet = Worksheet::default();
        self.demand.enter(&mut sheet);
        for stage in 0..stages.len() {
            family.enter(stage, self.path, &mut sheet);
        }
        let judged = self
            .setting
            .rulebook
            .rules
            .iter()
            .filter(|rule| rule.applies(family.id(), &sheet))
            .map(|rule| Judged {
                rule,
                utilisation: rule.utilisation(&sheet),
                waived: self.setting.waived.contains(&rule.id),
            })
            .collect();
        let parts = family.parts(self.path, &sheet);
        let sizes = family.sizes(self.path);
        let plan = Plan::new(family, self.demand, self.setting);
        let unmet_advice = plan.unmet_advice(&sheet);
        let attributes = Attributes::of(family, self.path, &sheet, &self.setting.merit, unmet_advice);
        Some(Worked { sheet, judged, parts, sizes, attributes, unmet_advice })
    }
}

/// The main sizes of a configuration: of a screw diameter and lead, of a rack module and teeth.
pub fn main_sizes(brief: &Brief, axis: usize, carried: f64, setting: &Setting<'_>, found: &Found) -> Vec<Size> {
    struct Sizes<'s>(&'s Path);
    impl WithFamily for Sizes<'_> {
        type Output = Vec<Size>;
        fn with<F: Family>(self, family: &F) -> Vec<Size> {
            family.sizes(self.0).into_iter().take(2).collect()
        }
    }
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    with_family(found.family, &demand, setting.catalog, Sizes(&found.path)).unwrap_or_default()
}

/// The id of the binding rule that a configuration fails worst; none if it is admissible.
pub fn worst_failed(brief: &Brief, axis: usize, carried: f64, setting: &Setting<'_>, found: &Found) -> Option<String> {
    let demand = Demand::new(brief, axis, Mass::of_si(carried));
    let worked = work_out(found.family, &found.path, &demand, setting)?;
    let binding = worked.judged.iter().filter(|judged| judged.rule.obligation == Obligation::Shall && !judged.waived);
    let failed = binding.filter(|judged| !passes(judged.utilisation));
    let known = |judged: &&Judged<'_>| if judged.utilisation.is_nan() { f64::INFINITY } else { judged.utilisation };
    let worst = failed.max_by(|a, b| known(a).total_cmp(&known(b)).then_with(|| b.rule.id.cmp(&a.rule.id)));
    worst.map(|judged| judged.rule.id.clone())
}

/// Whether a configuration passes every binding rule at this demand, without keeping a sheet.
pub fn admissible(family: &str, path: &Path, demand: &Demand<'_>, setting: &Setting<'_>) -> bool {
    struct Check<'s, 'd, 'a> {
        path: &'s Path,
        demand: &'d Demand<'d>,
        setting: &'s Setting<'a>,
    }
    impl WithFamily for Check<'_, '_, '_> {
        type Output = bool;
        fn with<F: Family>(self, family: &F) -> bool {
            let mut sheet = crate::ledger::Known::default();
            self.demand.enter(&mut sheet);
            family.order().iter().for_each(|&stage| family.enter(stage, self.path, &mut sheet));
            // a plan would cost more than some dozen drives worked out to the end
            row::binding(family.id(), self.setting).iter().all(|row| row.passed(&sheet))
        }
    }
    with_family(family, demand, setting.catalog, Check { path, demand, setting }).unwrap_or_default()
}
