//! Why a family was not chosen, out of the record.

use super::{Answer, Excluded, Stand, miss, side, title};
use crate::record::{AxisRecord, DecisionRecord};

/// The answer for a family.
pub fn of_family(record: &DecisionRecord, axis: &AxisRecord, family: &str) -> Answer {
    let Some(searched) = axis.families.iter().find(|searched| searched.family == family) else {
        let mut answer = Answer::new(record, axis, family, Stand::NotConsidered);
        answer.remarks.push("the brief does not let this family stand for the axis".into());
        return answer;
    };
    let chosen = axis.chosen.as_ref().is_some_and(|drive| drive.family == family);
    let standing = match searched.admissible {
        _ if chosen => Stand::Chosen,
        0 => Stand::NotAdmissible,
        _ => Stand::Beaten,
    };
    let mut answer = Answer::new(record, axis, family, standing);
    answer.configurations = Some(searched.configurations);
    answer.admissible = Some(searched.admissible);
    answer.best = searched.best.as_ref().map(|drive| side(record, drive));
    answer.nearest = searched.nearest.as_ref().map(|drive| side(record, drive));
    answer.ruled_out_by = searched.ruled_out_by.iter().map(|finding| miss(record, finding)).collect();
    answer.excluded_by = searched
        .excluded_by
        .iter()
        .map(|exclusion| Excluded {
            rule: exclusion.rule.clone(),
            title: title(record, &exclusion.rule),
            configurations: exclusion.configurations,
        })
        .collect();
    let carried = &axis.carried_mass;
    if !carried.settled() && !chosen {
        answer.remarks.push(format!(
            "the best of the family is worked out at {} kg carried, the drive chosen at {} kg",
            crate::units::significant(carried.census(), 4),
            crate::units::significant(carried.chosen.unwrap_or_else(|| carried.census()), 4)
        ));
    }
    answer
}
