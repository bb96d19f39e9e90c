//! `new`: a commented brief to start from, or one made of answers to questions.

use super::{Answer, Console, Failure, ask, file};
use crate::brief;
use clap::Args;
use std::path::PathBuf;

/// Print a commented brief to start from, or ask for what one needs
#[derive(Args)]
pub struct New {
    /// Ask a dozen questions in the terminal and make the brief of the answers
    #[arg(long)]
    ask: bool,
    /// Write the brief to this file, which must not be there yet, instead of stdout
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// Let --out replace a file that is there
    #[arg(long, requires = "out")]
    replace: bool,
}

impl New {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        if let Some(target) = self.out.as_ref().filter(|target| !self.replace && target.exists()) {
            return Err(file::is_there(target));
        }
        let text = match self.ask {
            true => ask::ask(&mut std::io::stdin().lock(), console)?,
            false => brief::starter().to_string(),
        };
        match &self.out {
            Some(target) => {
                file::write(target, text.as_bytes(), self.replace)?;
                let name = target.display();
                console.message(&format!("written to {name}; next: axiswright recommend {name}"));
            }
            None => console.result(&text)?,
        }
        Ok(Answer::Yes)
    }
}
