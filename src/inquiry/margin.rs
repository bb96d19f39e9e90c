//! How far requirements may grow before a drive breaks a rule, and which rule that is.
//!
//! Method: each requirement is made harder in steps until the drive, all its parts as they are, fails; the last step is halved.
//! Limits: one requirement at a time; what an axis carries stays as it is; a rule that fails within one step and holds
//! again at its end is not seen.

use super::Requirement;
use crate::brief::Brief;
use crate::drive::Demand;
use crate::search::{Found, Setting, admissible, worst_failed};
use crate::units::{Mass, Measure};

/// The factors by which a requirement is made harder, one after the other.
const STEPS: [f64; 14] = [1.005, 1.02, 1.05, 1.1, 1.15, 1.2, 1.3, 1.4, 1.5, 1.75, 2.0, 2.5, 3.0, 4.0];
/// Halvings of the step in which the drive fails.
const HALVINGS: usize = 30;

/// How far one requirement may grow.
#[derive(Debug, Clone, PartialEq)]
pub struct Margin {
    /// The requirement.
    pub requirement: Requirement,
    /// What the brief asks, SI units.
    pub now: f64,
    /// Up to where the drive passes, SI units; the last value looked at where it passes all.
    pub holds: f64,
    /// The rule that it breaks beyond; none where it passes all that was looked at.
    pub breaks: Option<String>,
}

/// A drive on its axis.
#[derive(Debug, Clone, Copy)]
pub struct Placed<'p> {
    /// The brief.
    pub brief: &'p Brief,
    /// The axis, as place in the brief.
    pub axis: usize,
    /// What it carries, kg.
    pub carried: f64,
    /// How the axis is judged, with the catalogue that the drive is of.
    pub setting: &'p Setting<'p>,
    /// The drive.
    pub found: &'p Found,
}

impl Placed<'_> {
    fn passes(&self, brief: &Brief) -> bool {
        let demand = Demand::new(brief, self.axis, Mass::of_si(self.carried));
        admissible(self.found.family, &self.found.path, &demand, self.setting)
    }

    /// How far each requirement of the axis may grow, the one with the least room first; nothing of a drive that fails now.
    pub fn margins(&self) -> Vec<Margin> {
        if !self.passes(self.brief) {
            return Vec::new();
        }
        let grown = Requirement::ALL.into_iter().filter(|&requirement| requirement != Requirement::Purchase);
        let mut margins: Vec<Margin> = grown.filter_map(|requirement| self.margin(requirement)).collect();
        let room = |margin: &Margin| (margin.holds / margin.now).ln().abs();
        margins.sort_by(|a, b| {
            let open = |margin: &Margin| margin.breaks.is_none();
            open(a).cmp(&open(b)).then(room(a).total_cmp(&room(b)))
        });
        margins
    }

    fn margin(&self, requirement: Requirement) -> Option<Margin> {
        let now = requirement.of(self.brief, self.axis)?;
        let tolerance = requirement.only_a_limit();
        let at = |factor: f64| if tolerance { now / factor } else { now * factor };
        let with = |factor: f64| requirement.with(self.brief, self.axis, at(factor));
        let mut inside = 1.0;
        for step in STEPS {
            if self.passes(&with(step)) {
                inside = step;
                continue;
            }
            let mut outside = step;
            for _ in 0..HALVINGS {
                let middle = 0.5 * (inside + outside);
                if self.passes(&with(middle)) { inside = middle } else { outside = middle }
            }
            let breaks = worst_failed(&with(outside), self.axis, self.carried, self.setting, self.found);
            return Some(Margin { requirement, now, holds: at(inside), breaks });
        }
        Some(Margin { requirement, now, holds: at(inside), breaks: None })
    }
}
