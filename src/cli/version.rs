//! What `--version` says: the program, the record it writes, and what is built in to choose from and to judge by.
//!
//! Method: catalogue and rules have no number of their own that somebody could forget to raise; they are named by the
//! first digits of a SHA-256 over the names and texts of their files.
//! Limits: the digits say that two are the same, not which is newer; the version of the program says that.

use crate::catalog;
use crate::record::{self, RECORD_VERSION};
use crate::rule;
use std::sync::OnceLock;

/// Digits shown of a hash; the record holds the hash of every file whole.
const DIGITS: usize = 12;

/// The lines of `--version`.
pub fn long() -> &'static str {
    static TEXT: OnceLock<String> = OnceLock::new();
    TEXT.get_or_init(|| {
        let catalog = catalog::built_in();
        let rules = rule::built_in();
        format!(
            "{}\nrecord {RECORD_VERSION}\ncatalogue {} (built in, generic and invented; {} files)\nrules {} (built in; {} files)",
            env!("CARGO_PKG_VERSION"),
            digits(&catalog),
            catalog.len(),
            digits(&rules),
            rules.len()
        )
    })
}

/// The first digits of the hash over names and texts, in the order of the names.
fn digits(files: &[(String, String)]) -> String {
    let mut lines: Vec<String> = files.iter().map(|(name, text)| format!("{name} {}\n", record::hash(text))).collect();
    lines.sort();
    record::hash(&lines.concat()).chars().take(DIGITS).collect()
}
