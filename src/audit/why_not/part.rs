//! Why a part was not chosen: the drives with it, searched again where the record has none.
//!
//! Method: the catalogue keeps this part as the only one of its kind. A family that may do without the kind is held to the
//! choices that take it. What is left is walked whole: how many drives are admissible, which is the best, what excludes
//! the others, and where none is admissible which misses by least. The place among the parts of its kind is counted by
//! looking, for each other one, whether any drive with it is better.
//! Limits: a family that has the part only together with certain choices of two stages is searched with all of them.

use super::only::Only;
use super::{Answer, Excluded, Figure, HELD, Miss, Side, Stand, finite};
use crate::brief::Brief;
use crate::catalog::{Catalog, KINDS, Kind};
use crate::characteristic;
use crate::drive::{Demand, Family, Merit, WithFamily, considered, with_family};
use crate::ledger::{Figures, Known};
use crate::pipeline::Inputs;
use crate::record::{AxisRecord, DecisionRecord};
use crate::rule::{Obligation, Rulebook, passes};
use crate::search::{Coupling, MOST_STAGES, Path, RuledOut, Setting, Walk, Worked, nearest, ruled_out, walk, work_out};
use crate::units::{Mass, Measure};

/// The most parts of a kind among which the place of one is counted.
const MOST_RIVALS: usize = 400;

/// The answer for a part of the catalogue; none where the catalogue has no such part.
pub fn of_part(record: &DecisionRecord, axis: &AxisRecord, inputs: &Inputs, designation: &str) -> Option<Answer> {
    let kind = KINDS.iter().find(|kind| (kind.find_row)(&inputs.catalog, designation).is_some())?;
    let has =
        |drive: &crate::record::CandidateRecord| drive.components.iter().any(|part| part.designation == designation);
    if axis.chosen.as_ref().is_some_and(has) {
        return Some(Answer::new(record, axis, designation, Stand::Chosen));
    }
    let place = inputs.brief.axes.iter().position(|wanted| wanted.name == axis.name)?;
    let asking = Asking {
        brief: &inputs.brief,
        rulebook: &inputs.rulebook,
        axis: place,
        carried: axis.carried_mass.chosen.unwrap_or_else(|| axis.carried_mass.census()),
        waived: crate::pipeline::waived_on(&inputs.brief, &axis.name),
    };
    let mut answer = Answer::new(record, axis, designation, Stand::NotConsidered);
    if let Some(index) = axis.runners_up.iter().position(has) {
        answer.remarks.push(format!("it is in next-best drive {} of the record", index + 1));
    }
    let catalog = only(&inputs.catalog, kind, designation);
    let walked = asking.walks(&catalog, designation, None);
    if walked.is_empty() {
        answer.remarks.push(format!(
            "no drive of the families that the brief lets stand for the axis is made with this part, of the kind `{}`",
            kind.name
        ));
        return Some(answer);
    }
    answer.configurations = Some(walked.iter().map(|one| one.walk.census.configurations).sum());
    answer.admissible = Some(walked.iter().map(|one| one.walk.census.admissible).sum());
    answer.excluded_by = excluded(&inputs.rulebook, &walked);
    let order = |one: &&Walked| one.walk.best.first().map(|found| found.attributes.merit);
    let best = walked.iter().filter(|one| order(one).is_some());
    let best = best.min_by(|a, b| order(a).unwrap_or(f64::NAN).total_cmp(&order(b).unwrap_or(f64::NAN)));
    match best {
        Some(best) => {
            answer.standing = if axis.runners_up.iter().any(has) { Stand::NextBest } else { Stand::Beaten };
            let merit = order(&best).unwrap_or(f64::NAN);
            answer.best = best.paths.first().and_then(|path| asking.side(&catalog, best.family, path));
            answer.rank = asking.rank(&inputs.catalog, kind, designation, merit);
            if axis.chosen.as_ref().is_some_and(|chosen| chosen.merit > merit) {
                answer.remarks.push(
                    "on this axis alone it is better than the drive chosen: the machine as a whole decided otherwise"
                        .into(),
                );
            }
        }
        None => {
            answer.standing = Stand::NotAdmissible;
            let missing = asking.misses(&catalog, designation);
            let least = missing.iter().min_by(|a, b| a.shortfall.total_cmp(&b.shortfall));
            if let Some(least) = least {
                answer.nearest = asking.side(&catalog, least.family, &least.path);
                answer.ruled_out_by = asking.ruled_out(&catalog, least);
                if missing.len() > 1 {
                    answer
                        .remarks
                        .push(format!("told of the family {}, whose drives with it miss by least", least.family));
                }
            }
        }
    }
    Some(answer)
}

/// The catalogue with this part as the only one of its kind.
fn only(catalog: &Catalog, kind: &Kind, designation: &str) -> Catalog {
    let mut catalog = catalog.clone();
    (kind.keep_only)(&mut catalog, designation);
    catalog
}

struct Asking<'q> {
    brief: &'q Brief,
    rulebook: &'q Rulebook,
    axis: usize,
    carried: f64,
    waived: Vec<String>,
}

/// A family walked.
struct Walked {
    family: &'static str,
    walk: Walk,
    /// The paths of the best, as the family numbers its choices.
    paths: Vec<Path>,
}

/// The drive of a family that misses by least.
struct Missing {
    family: &'static str,
    path: Path,
    shortfall: f64,
    ruled_out: Vec<RuledOut>,
}

impl Asking<'_> {
    fn demand(&self) -> Demand<'_> {
        Demand::new(self.brief, self.axis, Mass::of_si(self.carried))
    }

    fn setting<'c>(&'c self, catalog: &'c Catalog) -> Setting<'c> {
        Setting {
            catalog,
            rulebook: self.rulebook,
            merit: Merit::new(&self.brief.prefer),
            coupling: Coupling::default(),
            waived: &self.waived,
            exhaustive: false,
            stop: None,
        }
    }

    /// Every family that can have the part, walked with it; with a bound only for what is better.
    fn walks(&self, catalog: &Catalog, designation: &str, below: Option<f64>) -> Vec<Walked> {
        struct Walking<'w, 'd, 'a> {
            designation: &'w str,
            demand: &'d Demand<'d>,
            setting: &'w Setting<'a>,
            below: Option<f64>,
        }
        impl WithFamily for Walking<'_, '_, '_> {
            type Output = Option<Walked>;
            fn with<F: Family>(self, family: &F) -> Option<Walked> {
                let held = hold(family, self.designation)?;
                let walk = walk(&held, self.demand, self.setting, self.below);
                let paths = walk.best.iter().map(|found| held.path(&found.path)).collect();
                Some(Walked { family: family.id(), walk, paths })
            }
        }
        let (demand, setting) = (self.demand(), self.setting(catalog));
        let walking = |id| {
            let work = Walking { designation, demand: &demand, setting: &setting, below };
            with_family(id, &demand, catalog, work).flatten()
        };
        considered(self.brief, self.axis).into_iter().filter_map(walking).collect()
    }

    /// The nearest miss of every family that can have the part.
    fn misses(&self, catalog: &Catalog, designation: &str) -> Vec<Missing> {
        struct Nearest<'w, 'd, 'a> {
            designation: &'w str,
            demand: &'d Demand<'d>,
            setting: &'w Setting<'a>,
        }
        impl WithFamily for Nearest<'_, '_, '_> {
            type Output = Option<Missing>;
            fn with<F: Family>(self, family: &F) -> Option<Missing> {
                let held = hold(family, self.designation)?;
                let (path, shortfall) = nearest(&held, self.demand, self.setting, &[])?;
                let mut ruled_out = ruled_out(&held, self.demand, self.setting);
                for reach in &mut ruled_out {
                    reach.path = held.path(&reach.path);
                }
                Some(Missing { family: family.id(), path: held.path(&path), shortfall, ruled_out })
            }
        }
        let (demand, setting) = (self.demand(), self.setting(catalog));
        let missing = |id| {
            let work = Nearest { designation, demand: &demand, setting: &setting };
            with_family(id, &demand, catalog, work).flatten()
        };
        considered(self.brief, self.axis).into_iter().filter_map(missing).collect()
    }

    fn side(&self, catalog: &Catalog, family: &str, path: &Path) -> Option<Side> {
        let (demand, setting) = (self.demand(), self.setting(catalog));
        let worked = work_out(family, path, &demand, &setting)?;
        let figure = |id: &&str| {
            let (slot, about) = characteristic::find(id)?;
            worked.sheet.line(slot)?;
            let value = finite(worked.sheet.value(slot) / about.display_unit().si);
            Some(Figure { id: (*id).into(), words: about.words.into(), value, unit: about.unit.into() })
        };
        let mut fails: Vec<Miss> = (0..worked.judged.len()).filter_map(|place| failed(&worked, place)).collect();
        let tightness = |miss: &Miss| miss.finding.utilisation.unwrap_or(f64::INFINITY);
        fails.sort_by(|a, b| tightness(b).total_cmp(&tightness(a)));
        Some(Side {
            family: family.into(),
            components: worked.parts.iter().map(|part| part.designation.clone()).collect(),
            purchase: finite(worked.attributes.purchase),
            whole_life: finite(worked.attributes.whole_life),
            merit: finite(worked.attributes.merit),
            figures: HELD.iter().filter_map(figure).collect(),
            fails,
        })
    }

    /// The rules that no drive of the family with the part keeps, each on the drive that comes nearest to it.
    fn ruled_out(&self, catalog: &Catalog, missing: &Missing) -> Vec<Miss> {
        let (demand, setting) = (self.demand(), self.setting(catalog));
        let told = |reach: &RuledOut| {
            let rule = self.rulebook.rules.get(reach.rule)?;
            let worked = work_out(missing.family, &reach.path, &demand, &setting)?;
            let place = worked.judged.iter().position(|judged| judged.rule.id == rule.id)?;
            failed(&worked, place)
        };
        missing.ruled_out.iter().filter_map(told).collect()
    }

    /// The place of a part among those of its kind, by the best drive with each.
    fn rank(&self, catalog: &Catalog, kind: &Kind, designation: &str, merit: f64) -> Option<(u64, u64)> {
        let names: Vec<String> = (kind.rows)(catalog).into_iter().map(|row| row.designation).collect();
        if !merit.is_finite() || names.len() > MOST_RIVALS {
            return None;
        }
        let better = |name: &&String| {
            let walked = self.walks(&only(catalog, kind, name), name, Some(merit));
            walked.iter().any(|one| one.walk.best.first().is_some_and(|found| found.attributes.merit < merit))
        };
        let before = names.iter().filter(|name| *name != designation).filter(better).count() as u64;
        Some((before + 1, names.len() as u64))
    }
}

/// The family held to what has the part; none where it cannot have it.
fn hold<'f, F: Family>(family: &'f F, designation: &str) -> Option<Only<'f, F>> {
    let stages = family.stages();
    if stages.contains(&0) {
        return None;
    }
    let sheet = Known::default();
    let has = |path: &Path| family.parts(path, &sheet).iter().any(|part| part.designation == designation);
    let first = [0; MOST_STAGES];
    if has(&first) {
        // it is the only one of its kind, and this family always takes one, unless another choice does without
        for (stage, &count) in stages.iter().enumerate() {
            let choices = choices(stage, count, &first, has);
            if choices.len() < count {
                return Some(Only { family, stage, choices });
            }
        }
        return Some(Only { family, stage: 0, choices: (0..stages.first().copied()? as u16).collect() });
    }
    stages.iter().enumerate().find_map(|(stage, &count)| {
        let choices = choices(stage, count, &first, has);
        (!choices.is_empty()).then_some(Only { family, stage, choices })
    })
}

/// The choices of a stage that take the part.
fn choices(stage: usize, count: usize, first: &Path, has: impl Fn(&Path) -> bool) -> Vec<u16> {
    let with = |choice: &u16| {
        let mut path = *first;
        if let Some(place) = path.get_mut(stage) {
            *place = *choice;
        }
        has(&path)
    };
    (0..count as u16).filter(with).collect()
}

/// The finding of a binding rule that a drive fails.
fn failed(worked: &Worked<'_>, place: usize) -> Option<Miss> {
    let judged = worked.judged.get(place)?;
    let rule = judged.rule;
    if rule.obligation == Obligation::Should || judged.waived || passes(judged.utilisation) {
        return None;
    }
    Some(Miss { finding: crate::record::finding(judged, &worked.sheet), title: rule.title.clone() })
}

fn excluded(rulebook: &Rulebook, walked: &[Walked]) -> Vec<Excluded> {
    let mut all: Vec<Excluded> = rulebook
        .rules
        .iter()
        .enumerate()
        .map(|(place, rule)| Excluded {
            rule: rule.id.clone(),
            title: rule.title.clone(),
            configurations: walked.iter().filter_map(|one| one.walk.census.excluded.get(place)).sum(),
        })
        .filter(|excluded| excluded.configurations > 0)
        .collect();
    all.sort_by(|a, b| b.configurations.cmp(&a.configurations).then_with(|| a.rule.cmp(&b.rule)));
    all
}
