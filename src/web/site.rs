//! What all visits share: catalogue, rules, the names by which the page may be called, and the work in hand.

use super::form::Draft;
use super::work::Work;
use crate::catalog::Catalog;
use crate::pipeline::{self, Inputs};
use crate::rule::Rulebook;
use crate::yaml::Faults;
use std::path::PathBuf;

/// The name of every brief of the page, in faults, records and downloads.
pub const BRIEF: &str = "brief.yaml";

/// What all visits share.
#[derive(Debug)]
pub struct Site {
    /// The components.
    pub catalog: Catalog,
    /// The rules.
    pub rulebook: Rulebook,
    /// Folders of the catalogue beside the built-in one.
    pub folders: Vec<PathBuf>,
    /// Names, without a port, by which the page may be called beside those of this computer.
    pub hosts: Vec<String>,
    pub(super) work: Work,
}

impl Site {
    /// A page over this catalogue and these rules.
    pub fn new(catalog: Catalog, rulebook: Rulebook, folders: Vec<PathBuf>, hosts: Vec<String>) -> Site {
        Site { catalog, rulebook, folders, hosts, work: Work::default() }
    }

    /// What a draft comes to, or every fault of it.
    pub(super) fn inputs(&self, draft: &Draft) -> Result<Inputs, Faults> {
        self.inputs_of(&draft.text())
    }

    /// What the text of a brief comes to.
    pub(super) fn inputs_of(&self, text: &str) -> Result<Inputs, Faults> {
        pipeline::with_brief(BRIEF, text, &self.catalog, &self.rulebook)
    }
}
