//! What a file seems to be written for, by its keys, so that one that stands in the place of another is told as that.
//!
//! Method: a few keys tell each kind of file. Limits: a file with keys of two kinds, or of none, is taken for what it should be.

use super::fault::Faults;
use super::node::Node;

/// What a file is written for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// What a machine must do.
    Brief,
    /// Drives that someone proposes.
    Choice,
    /// Parts of the catalogue.
    Parts,
    /// A rule.
    Rule,
    /// A caution.
    Caution,
    /// A record of the program.
    Record,
}

impl Purpose {
    fn words(self) -> &'static str {
        match self {
            Purpose::Brief => "a brief",
            Purpose::Choice => "a choice of drives",
            Purpose::Parts => "a file of the catalogue",
            Purpose::Rule => "a rule",
            Purpose::Caution => "a caution",
            Purpose::Record => "a record that this program wrote",
        }
    }

    /// What such a file holds, and where it is described.
    fn help(self) -> &'static str {
        match self {
            Purpose::Brief => {
                "a brief has `machine` and, below `axes`, what each axis must do; docs/brief.md lists its keys"
            }
            Purpose::Choice => "a choice has `axes` and, below each, its `family` and `parts`; docs/check.md shows one",
            Purpose::Parts => {
                "a file of the catalogue has `kind`, `basis` and `entries`; docs/catalogue.md lists their keys"
            }
            Purpose::Rule => {
                "a rule has `limit`, `reason`, `remedy` and more, and stands in a folder of rules; docs/rules.md shows them"
            }
            Purpose::Caution => "a caution has `for` and `text`, and stands in a folder `cautions` below the rules",
            Purpose::Record => "`axiswright audit` reads a record",
        }
    }

    /// What the values below this root are written for, as far as its keys tell.
    fn of(root: &Node<'_>) -> Option<Purpose> {
        let has = |key: &str| root.get(key).is_some();
        let mut unheard = Faults::default();
        let axes = root.get("axes").filter(Node::is_mapping).map(|axes| axes.entries(&mut unheard)).unwrap_or_default();
        let of_axes = |keys: &[&str]| axes.iter().any(|(_, axis)| keys.iter().any(|key| axis.get(key).is_some()));
        let brief = has("machine") || of_axes(&["travel", "moved-mass", "direction", "speed"]);
        let choice = has("components") || of_axes(&["family", "parts"]);
        let told = [
            (Purpose::Record, has("record")),
            (Purpose::Brief, brief),
            (Purpose::Choice, choice),
            (Purpose::Parts, has("kind") && has("entries")),
            (Purpose::Rule, has("limit") && (has("obligation") || has("remedy"))),
            (Purpose::Caution, has("text") && has("for")),
        ];
        let mut found = told.into_iter().filter(|(_, is)| *is).map(|(purpose, _)| purpose);
        found.next().filter(|_| found.next().is_none())
    }
}

impl Node<'_> {
    /// Whether this root may be read for a purpose; one that is written for another is a fault, the only one to tell.
    pub fn is_for(&self, wanted: Purpose, faults: &mut Faults) -> bool {
        if !self.is_mapping() {
            // the words are those of every group
            let mut told = Faults::default();
            self.entries(&mut told);
            for mut fault in told {
                fault.help = Some(wanted.help().into());
                faults.push(fault);
            }
            return false;
        }
        match Purpose::of(self) {
            Some(found) if found != wanted => {
                let message = format!("this looks like {}, not {}", found.words(), wanted.words());
                self.fault(faults, message, Some(wanted.help().into()));
                false
            }
            _ => true,
        }
    }
}
