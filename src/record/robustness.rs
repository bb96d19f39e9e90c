//! How often drives stay admissible when what the brief states is off, and how that comes into the record.

use super::candidate_build::parameter;
use super::{Parameter, known, parameters};
use crate::brief::Brief;
use crate::drive::Demand;
use crate::inquiry::{Odds, SAMPLES, SEED, Trial};
use crate::search::{AxisSearch, Found, Setting, work_out};
use crate::units::{Mass, Measure};
use serde::{Deserialize, Serialize};

/// The odds of the drives of an axis.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct RobustnessRecord {
    /// The seed of chance.
    pub seed: u64,
    /// How many samples; all drives of all axes share them.
    pub samples: u64,
    /// Standard deviations, %.
    pub uncertainties: Vec<UncertaintyRecord>,
    /// The drive that was chosen, then its rivals by merit.
    pub drives: Vec<OddsRecord>,
}

/// How far a value of the brief may be off.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct UncertaintyRecord {
    /// The key of `uncertainty` in the brief.
    pub quantity: String,
    /// Standard deviation, as a share of the value, %.
    pub deviation: f64,
    /// Whether the brief states it; otherwise it is an assumption.
    pub stated: bool,
}

/// The odds of one drive.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OddsRecord {
    /// Id of its family.
    pub family: String,
    /// Its main sizes.
    #[serde(with = "parameters")]
    pub parameters: Vec<Parameter>,
    /// Whether it is the one that was chosen.
    pub chosen: bool,
    /// Share of the samples in which it is admissible.
    pub probability: f64,
    /// Lower end of the interval that holds the probability with 95 %.
    pub low: f64,
    /// Upper end.
    pub high: f64,
    /// The rule that most of the other samples break first.
    pub fails_first: Option<String>,
    /// Worst utilisation of the rules that the uncertain values move; none where they move no rule.
    pub utilisation: Option<UtilisationRecord>,
}

/// The worst utilisation over the samples.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct UtilisationRecord {
    /// 5 % of the samples are below.
    #[serde(with = "known")]
    pub low: f64,
    /// Half of the samples are below.
    #[serde(with = "known")]
    pub median: f64,
    /// 95 % of the samples are below.
    #[serde(with = "known")]
    pub high: f64,
}

/// What is tried, and against whom.
pub(super) struct Field<'f> {
    pub brief: &'f Brief,
    pub axis: usize,
    pub setting: &'f Setting<'f>,
    pub search: &'f AxisSearch,
    pub next: &'f [Found],
}

impl Field<'_> {
    /// The odds of the drive that was chosen, at the mass that it carries, of the next-best and of the best of each family.
    pub fn odds(&self, (chosen, carried): &(Found, f64)) -> RobustnessRecord {
        let mut drives = vec![chosen.clone()];
        let best = self.search.families.iter().filter(|family| family.family != chosen.family);
        let mut rivals: Vec<Found> = best.filter_map(|family| family.walk.best.first()).cloned().collect();
        rivals.extend_from_slice(self.next);
        rivals.sort_by(Found::order);
        rivals.dedup_by(|one, other| one.family == other.family && one.path == other.path);
        rivals.retain(|rival| rival.family != chosen.family || rival.path != chosen.path);
        drives.extend(rivals);
        let (brief, axis, setting) = (self.brief, self.axis, self.setting);
        let trial = Trial { brief, axis, carried: *carried, setting, samples: SAMPLES, seed: SEED };
        let demand = Demand::new(brief, axis, Mass::of_si(*carried));
        let record = |(place, (found, odds)): (usize, (&Found, Odds))| OddsRecord {
            family: found.family.into(),
            parameters: work_out(found.family, &found.path, &demand, setting)
                .map_or(Vec::new(), |worked| worked.sizes.iter().map(parameter).collect()),
            chosen: place == 0,
            probability: odds.passed as f64 / SAMPLES as f64,
            low: odds.interval.0,
            high: odds.interval.1,
            fails_first: odds.fails_first,
            utilisation: odds.utilisation.map(|[low, median, high]| UtilisationRecord { low, median, high }),
        };
        let odds = trial.run(&drives);
        RobustnessRecord {
            seed: SEED,
            samples: SAMPLES as u64,
            uncertainties: uncertainties(brief),
            drives: drives.iter().zip(odds).enumerate().map(record).collect(),
        }
    }
}

fn uncertainties(brief: &Brief) -> Vec<UncertaintyRecord> {
    let told = |(quantity, entry): (&str, crate::brief::Entry<crate::units::Ratio>)| UncertaintyRecord {
        quantity: quantity.into(),
        // a percentage as it was written, without the last bits of its conversion
        deviation: (entry.value.si() * 1e11).round() / 1e9,
        stated: entry.stated,
    };
    brief.uncertainty.all().into_iter().map(told).collect()
}
