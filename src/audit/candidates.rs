//! Every drive that a record tells of, with the place where it stands.

use crate::record::{CandidateRecord, DecisionRecord};

/// A drive of a record and where it stands.
pub struct Placed<'r> {
    /// The place as a path: `axes[long].chosen`.
    pub path: String,
    /// The place in words: "axis long, the drive chosen".
    pub words: String,
    /// The axis.
    pub axis: &'r str,
    /// The drive.
    pub drive: &'r CandidateRecord,
}

/// Every drive of a record: chosen, next-best, the best and the nearest of each family.
pub fn candidates(record: &DecisionRecord) -> Vec<Placed<'_>> {
    let mut all = Vec::new();
    for axis in &record.axes {
        let name = axis.name.as_str();
        let mut put = |place: String, words: String, drive| {
            let (path, words) = (format!("axes[{name}].{place}"), format!("axis {name}, {words}"));
            all.push(Placed { path, words, axis: name, drive });
        };
        if let Some(drive) = &axis.chosen {
            put("chosen".into(), "the drive chosen".into(), drive);
        }
        for (index, drive) in axis.runners_up.iter().enumerate() {
            put(format!("runners-up[{index}]"), format!("next-best drive {}", index + 1), drive);
        }
        for family in &axis.families {
            if let Some(drive) = &family.best {
                put(format!("families[{}].best", family.family), format!("the best {}", family.family), drive);
            }
            if let Some(drive) = &family.nearest {
                put(format!("families[{}].nearest", family.family), format!("the nearest {}", family.family), drive);
            }
        }
    }
    all
}
