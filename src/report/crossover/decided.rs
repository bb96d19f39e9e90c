//! How the places of a map were decided, in words.

use crate::record::CrossoverRecord;

/// One sentence or two; empty over one requirement, where every place is decided by the whole catalogue.
pub fn sentence(record: &CrossoverRecord) -> String {
    let resolution = &record.resolution;
    let (whole, known) = (resolution.nodes_in_full, resolution.nodes_among_known);
    match (&record.and, known) {
        (None, _) => String::new(),
        (Some(_), 0) => format!("All {whole} places were decided by a search of the whole catalogue."),
        (Some(_), _) => format!(
            "{whole} places were decided by a search of the whole catalogue. {known} more lie among places of one kind of drive and were \
             decided among the drives that are best elsewhere on the map: a small field of another kind may be missed there, and \
             the sizes and costs told there may be somewhat above the best."
        ),
    }
}
