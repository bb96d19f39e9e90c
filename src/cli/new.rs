//! `new`: prints a commented brief to start from.

use super::{Answer, Console, Failure};
use crate::brief;
use clap::Args;

/// Print a commented brief to start from
#[derive(Args)]
pub struct New {}

impl New {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        console.result(brief::starter())?;
        Ok(Answer::Yes)
    }
}
