//! The drive families: what each is joined from, and how it is worked out.
//!
//! Method: a family lists its stages; a configuration is a path of choices, one a stage. `enter` writes the
//! quantities of one stage into a ledger; the search runs it on plain numbers, the record on a worksheet.
//! Limits: every stage offers the same choices whatever was chosen before, so that the size of a branch is
//! the product of what follows; what does not fit together falls by a rule, with its reason.

mod ball_screw;
pub mod defaults;
mod demand;
mod driven_nut;
mod energy;
mod exchange;
mod feedback;
mod mapping;
mod merit;
mod motor;
mod mounting;
mod position;
mod price;
mod rack;
mod reduction;
mod rest;
mod screw;
mod servo;
mod sides;
mod stops;
mod surroundings;

pub use ball_screw::BallScrewDrive;
pub use demand::{Demand, Phase};
pub use driven_nut::DrivenNutDrive;
pub use merit::{Floor, Merit, REFERENCES};
pub use position::{LeastPosition, OwnErrors, Position};
pub use rack::{Pinions, RackDrive};

use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::ledger::{Characteristic, Known, Ledger};
use crate::units::Stiffness;

/// The families that can be chosen, in the order in which they are reported.
pub const FAMILIES: [&str; 5] = ["ball-screw", "driven-nut", "straight-rack", "helical-rack", "twin-pinion"];

/// The families that are considered for an axis.
pub fn considered(brief: &Brief, axis: usize) -> Vec<&'static str> {
    let wanted = brief.axes[axis].families.as_ref();
    FAMILIES.into_iter().filter(|family| wanted.is_none_or(|wanted| wanted.iter().any(|name| name == family))).collect()
}

/// One component of a configuration, all drives of the axis together.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What it does.
    pub role: &'static str,
    /// Its designation in the catalogue.
    pub designation: String,
    /// How many, or how many metres.
    pub count: f64,
    /// "1" or "m".
    pub unit: &'static str,
    /// Whether the entry is generic.
    pub generic: bool,
}

impl Part {
    fn new(role: &'static str, designation: &str, count: f64, generic: bool) -> Part {
        Part { role, designation: designation.into(), count, unit: "1", generic }
    }

    fn metres(role: &'static str, designation: &str, count: f64, generic: bool) -> Part {
        Part { role, designation: designation.into(), count, unit: "m", generic }
    }
}

/// One main size of a configuration.
#[derive(Debug, Clone, PartialEq)]
pub enum Size {
    /// A number with its unit.
    Number(&'static str, f64, &'static str),
    /// A word.
    Word(&'static str, String),
}

impl Size {
    fn number(name: &'static str, value: f64, unit: &'static str) -> Size {
        // sizes are shown as they are ordered: without the last bits of a conversion
        Size::Number(name, (value * 1e9).round() / 1e9, unit)
    }

    fn word(name: &'static str, value: &str) -> Size {
        Size::Word(name, value.into())
    }
}

/// A drive family on one axis.
pub trait Family: Sync {
    /// Its id.
    fn id(&self) -> &'static str;
    /// How many choices each stage offers.
    fn stages(&self) -> Vec<usize>;
    /// The order in which the search takes the stages; the stages in their own order must be possible too.
    fn order(&self) -> Vec<usize> {
        (0..self.stages().len()).collect()
    }
    /// Whether a stage hangs on the first two of [`Family::order`] alone, though it is taken later: its figures may then be kept
    /// for as long as those two choices stand. Every choice of such a stage enters the same quantities.
    fn kept(&self, _stage: usize) -> bool {
        false
    }
    /// Whether a stage hangs on the axis alone: its figures are then worked out once for a search, like those of [`Family::kept`].
    fn apart(&self, _stage: usize) -> bool {
        false
    }
    /// Of a stage that hangs on the first two of [`Family::order`] and on two others alone: these two in their order. Its figures are
    /// remembered for each choice of the second until the first is chosen anew.
    fn remembered(&self, _stage: usize) -> Option<[usize; 2]> {
        None
    }
    /// What the stages that are not yet entered add at least to the price of all drives of the axis, as far as it is easily told;
    /// of the stage at hand, if there is one, the choice of the path counts.
    fn to_come(&self, _path: &[u16], _at_hand: Option<usize>, _entered: impl Fn(usize) -> bool) -> f64 {
        0.0
    }
    /// What the choice of a stage costs, of one part, as far as that hangs on the choice alone; zero where it is not known. The
    /// search takes the cheapest first.
    fn price(&self, _stage: usize, _choice: u16) -> f64 {
        0.0
    }
    /// Springs in series that its whole stiffness is made of, of those that may be known before it; none for two pinions, of
    /// which both count.
    fn springs(&self) -> &'static [Characteristic<Stiffness>] {
        &[]
    }
    /// What its last two stages choose among: what measures the position, and what corrects it.
    fn position(&self) -> Position<'_>;
    /// Enters the quantities of a stage; the path holds the choices up to and including it.
    fn enter<L: Ledger>(&self, stage: usize, path: &[u16], sheet: &mut L);
    /// Enters the last stage but one, which hangs on what measures and on the sheet alone.
    fn enter_feedback<L: Ledger>(&self, scale: u16, sheet: &mut L);
    /// Enters the last stage, which hangs on what measures, on the table and on the sheet alone.
    fn enter_mapping<L: Ledger>(&self, scale: u16, table: u16, sheet: &mut L);
    /// Enters, in place of a stage, figures that are no better than those of the stage where they are much cheaper, and says
    /// whether it did: a configuration that keeps all rules with them keeps them. It may enter only what rules bound from above
    /// and nothing else reads.
    fn screen(&self, _stage: usize, _path: &[u16], _sheet: &mut Known) -> bool {
        false
    }
    /// Enters, once a stage is entered, what of a later one is easily told: a use of the motor's peak torque that is not above the
    /// real one. Says whether it did: a configuration that breaks a limit of it with these figures breaks it.
    fn glimpse(&self, _stage: usize, _path: &[u16], _sheet: &mut Known) -> bool {
        false
    }
    /// The motor's model, without its brake.
    fn motor_model(&self, path: &[u16]) -> &str;
    /// The gearbox's model, if there is one.
    fn gearbox_model(&self, path: &[u16]) -> Option<&str>;
    /// The components of a configuration; the sheet is the finished one.
    fn parts(&self, path: &[u16], sheet: &impl Ledger) -> Vec<Part>;
    /// The main sizes of a configuration.
    fn sizes(&self, path: &[u16]) -> Vec<Size>;
}

/// Something to do with whichever family an id names.
pub trait WithFamily {
    /// What comes out.
    type Output;
    /// Does it.
    fn with<F: Family>(self, family: &F) -> Self::Output;
}

/// Builds the family with this id on this demand and hands it on; `None` for an id that is no family here.
pub fn with_family<W: WithFamily>(id: &str, demand: &Demand<'_>, catalog: &Catalog, work: W) -> Option<W::Output> {
    match id {
        "ball-screw" => Some(work.with(&BallScrewDrive::new(demand, catalog))),
        "driven-nut" => Some(work.with(&DrivenNutDrive::new(demand, catalog))),
        "straight-rack" => Some(work.with(&RackDrive::new(demand, catalog, false, Pinions::One))),
        "helical-rack" => Some(work.with(&RackDrive::new(demand, catalog, true, Pinions::One))),
        "twin-pinion" => Some(work.with(&RackDrive::new(demand, catalog, true, Pinions::Two))),
        _ => None,
    }
}
