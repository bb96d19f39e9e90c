//! Where a number comes from, so that a reader can judge how far to trust it.
//!
//! Every formula, rule and catalogue file carries at least one source. Its standing says what kind of
//! support it has; the citation says where to look.

use std::fmt;

/// What kind of support a number or an equation has.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Read in, or checked against, a published standard.
    Standard,
    /// Read in, or checked against, a book, paper or public report.
    Publication,
    /// Follows by calculation from mechanics; checked by a second method.
    Derived,
    /// Usual in the trade; no source can be named.
    CommonPractice,
    /// Remembered from a standard or book whose text was not at hand.
    Memory,
    /// Made up in a realistic size for the generic catalogue.
    Invented,
}

impl Standing {
    /// Every standing, in order of how much it supports.
    pub const ALL: [Standing; 6] = [
        Standing::Standard,
        Standing::Publication,
        Standing::Derived,
        Standing::CommonPractice,
        Standing::Memory,
        Standing::Invented,
    ];

    /// The key by which files name this standing.
    pub fn key(self) -> &'static str {
        match self {
            Standing::Standard => "standard",
            Standing::Publication => "publication",
            Standing::Derived => "derived",
            Standing::CommonPractice => "practice",
            Standing::Memory => "memory",
            Standing::Invented => "invented",
        }
    }

    /// The words by which a reader is told.
    pub fn words(self) -> &'static str {
        match self {
            Standing::Standard => "standard",
            Standing::Publication => "publication",
            Standing::Derived => "derived here",
            Standing::CommonPractice => "common practice, no source",
            Standing::Memory => "from memory, text not at hand",
            Standing::Invented => "invented, realistic size",
        }
    }
}

/// A source that is known when the program is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Source {
    /// What kind of support this is.
    pub standing: Standing,
    /// Where to look.
    pub citation: &'static str,
}

impl Source {
    /// A published standard.
    pub const fn standard(citation: &'static str) -> Source {
        Source { standing: Standing::Standard, citation }
    }
    /// A book, paper or public report.
    pub const fn publication(citation: &'static str) -> Source {
        Source { standing: Standing::Publication, citation }
    }
    /// A derivation; the citation says from what and how it was checked.
    pub const fn derived(citation: &'static str) -> Source {
        Source { standing: Standing::Derived, citation }
    }
    /// Usual in the trade.
    pub const fn practice(citation: &'static str) -> Source {
        Source { standing: Standing::CommonPractice, citation }
    }
    /// Remembered; the citation says of what.
    pub const fn memory(citation: &'static str) -> Source {
        Source { standing: Standing::Memory, citation }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.citation.is_empty() {
            f.write_str(self.standing.words())
        } else {
            write!(f, "{} ({})", self.citation, self.standing.words())
        }
    }
}
