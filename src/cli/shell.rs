//! `completions` and `man`: what a shell and a reader of manuals want to know of the command line.
//!
//! Method: both are made from the same description of the command line that reads it, so that they cannot differ.
//! Limits: files and designations are completed as file names; the names of a catalogue are not known to a shell.

use super::{Answer, Console, Failure, Line, file};
use clap::{Args, CommandFactory};
use std::path::PathBuf;

/// Print the completions of a shell
#[derive(Args)]
pub struct Completions {
    /// The shell
    shell: clap_complete::Shell,
}

/// Print the manual page, or write one page a command into a folder
#[derive(Args)]
pub struct Man {
    /// Folder for all pages: axiswright.1, axiswright-recommend.1 …
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,
}

const PROGRAM: &str = "axiswright";

impl Completions {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let mut text = Vec::new();
        clap_complete::generate(self.shell, &mut Line::command(), PROGRAM, &mut text);
        console.result(&String::from_utf8_lossy(&text))?;
        Ok(Answer::Yes)
    }
}

impl Man {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        let mut whole = Line::command();
        whole.build();
        let Some(folder) = &self.out else {
            console.result(&page(whole, PROGRAM)?)?;
            return Ok(Answer::Yes);
        };
        let mut pages = Vec::new();
        collect(whole, PROGRAM.to_string(), &mut pages)?;
        let count = pages.len();
        for (name, text) in pages {
            file::write(&folder.join(name), &text, true)?;
        }
        console.message(&format!("{count} pages written to {}", folder.display()));
        Ok(Answer::Yes)
    }
}

/// The pages of a command and of those below it.
fn collect(command: clap::Command, name: String, pages: &mut Vec<(PathBuf, Vec<u8>)>) -> Result<(), Failure> {
    for below in command.get_subcommands().filter(|below| !below.is_hide_set()) {
        collect(below.clone(), format!("{name}-{}", below.get_name()), pages)?;
    }
    let text = page(command, &name)?;
    pages.push((PathBuf::from(format!("{name}.1")), text.into_bytes()));
    Ok(())
}

/// One page in the format of manuals. It carries no date: the same program gives the same bytes.
fn page(command: clap::Command, name: &str) -> Result<String, Failure> {
    let mut text = Vec::new();
    let fault = |error: std::io::Error| Failure::Ours(format!("the manual page cannot be made: {error}"));
    clap_mangen::Man::new(command).title(name).render(&mut text).map_err(fault)?;
    String::from_utf8(text).map_err(|error| Failure::Ours(format!("the manual page is no text: {error}")))
}
