//! `new --ask`: the questions that a brief cannot do without, asked one after the other.
//!
//! Method: every answer is put into a brief at once and read by the loader of briefs; a fault at its key is told in the
//! loader's words and the question comes again. So limits, units and messages are those of the brief, and nothing is
//! checked twice. An empty answer leaves a key out, and the brief's default holds.
//! Limits: what is asked for is enough for a first answer; duty, moves, feedback and the like are written into the file.

mod draft;
mod questions;

use super::{Console, Failure};
use crate::brief;
use crate::brief::guide::{Key, keys};
use crate::yaml::{Faults, nearest};
use draft::{AxisDraft, Draft};
use questions::{Kind, OF_AXIS, OF_MACHINE, Question};
use std::io::BufRead;

/// Asks until the brief is whole; its text.
pub fn ask(input: &mut dyn BufRead, console: &mut Console) -> Result<String, Failure> {
    let mut talk = Talk { input, console, keys: keys() };
    talk.say("A dozen questions. Quantities carry their unit, such as 1.2 m or 40 m/min.");
    talk.say("An empty answer takes what stands in brackets; ? explains the question.");
    let mut draft = Draft::default();
    for question in OF_MACHINE {
        talk.fill(&mut draft, question)?;
    }
    loop {
        let number = draft.axes.len() + 1;
        talk.say(&format!("\nAxis {number}"));
        draft.axes.push(AxisDraft::default());
        talk.name(&mut draft)?;
        for question in OF_AXIS.iter().filter(|question| question.kind != Kind::Name) {
            if (question.when)(&draft) {
                talk.fill(&mut draft, question)?;
            }
        }
        if number > 1 {
            talk.carrier(&mut draft)?;
        }
        if !talk.another()? {
            return Ok(draft.text());
        }
    }
}

/// The two ends of the talk.
struct Talk<'t> {
    input: &'t mut dyn BufRead,
    console: &'t mut Console,
    keys: Vec<Key>,
}

impl Talk<'_> {
    fn say(&mut self, text: &str) {
        self.console.prompt(&format!("{text}\n"));
    }

    /// One line of what is answered, without the blanks around it.
    fn line(&mut self, words: &str) -> Result<String, Failure> {
        self.console.prompt(&format!("{words}: "));
        let mut line = String::new();
        let read = self.input.read_line(&mut line);
        match read.map_err(|error| Failure::Input(format!("the answer cannot be read: {error}")))? {
            0 => Err(Failure::Input(format!("the answers ended at the question “{words}”; nothing is written"))),
            _ => Ok(line.trim_matches(|letter: char| letter.is_whitespace() || letter == '\u{feff}').to_string()),
        }
    }

    /// Asks until the loader of briefs takes the answer.
    fn fill(&mut self, draft: &mut Draft, question: &Question) -> Result<(), Failure> {
        loop {
            let answer = self.line(&question.words())?;
            match answer.as_str() {
                "?" => self.explain(question),
                "" if question.required => self.say(&format!("  an answer is needed, such as {}", question.example)),
                answer => {
                    draft.set(question, question.meant(answer));
                    let Some(fault) = fault_of(draft, question) else { return Ok(()) };
                    self.say(&format!("  {fault}"));
                    draft.set(question, "");
                }
            }
        }
    }

    /// The name of the axis, which no other has.
    fn name(&mut self, draft: &mut Draft) -> Result<(), Failure> {
        let taken: Vec<String> = draft.axes.iter().map(|axis| axis.name.clone()).collect();
        let free = ["x", "y", "z", "u", "v", "w"].into_iter().find(|name| !taken.iter().any(|taken| taken == name));
        loop {
            let words = match free {
                Some(free) => format!("Name of the axis [{free}]"),
                None => "Name of the axis".into(),
            };
            let answer = self.line(&words)?;
            let name = if answer.is_empty() { free.unwrap_or_default() } else { answer.as_str() };
            match name {
                "?" => self.say("  what the report calls the axis; the name is yours"),
                "" => self.say("  an answer is needed"),
                name if taken.iter().any(|taken| taken == name) => self.say("  another axis has this name"),
                name => {
                    if let Some(axis) = draft.axes.last_mut() {
                        axis.name = name.into();
                    }
                    return Ok(());
                }
            }
        }
    }

    /// Which axis carries the last one.
    fn carrier(&mut self, draft: &mut Draft) -> Result<(), Failure> {
        let last = draft.axes.len() - 1;
        let names: Vec<String> = draft.axes.iter().take(last).map(|axis| axis.name.clone()).collect();
        loop {
            let answer = self.line(&format!("Which axis carries this one ({}) [none]", names.join(", ")))?;
            match answer.as_str() {
                "" | "none" => return Ok(()),
                "?" => self.say("  the axis that moves this one along; its drive must move the mass of both"),
                answer => match names.iter().position(|name| name == answer) {
                    Some(carrier) => {
                        let rider = draft.axes.get(last).map(|axis| axis.name.clone());
                        draft.axes[carrier].carries.extend(rider);
                        return Ok(());
                    }
                    None => {
                        let near = nearest(answer, names.iter().map(String::as_str));
                        let near = near.map_or(String::new(), |near| format!("; did you mean `{near}`?"));
                        self.say(&format!("  there is no axis `{answer}`{near}"));
                    }
                },
            }
        }
    }

    fn another(&mut self) -> Result<bool, Failure> {
        loop {
            match self.line("Another axis, yes or no [no]")?.to_lowercase().as_str() {
                "" | "no" | "n" => return Ok(false),
                "yes" | "y" => return Ok(true),
                _ => self.say("  yes or no"),
            }
        }
    }

    /// What the guide to the brief says of the key.
    fn explain(&mut self, question: &Question) {
        let key = self.keys.iter().find(|key| key.name == question.key);
        let told = key.map_or_else(Vec::new, Key::plainly);
        for (head, cell) in told {
            self.say(&format!("  {head}: {cell}"));
        }
    }
}

/// What the loader says of the key that was just answered, in one line.
fn fault_of(draft: &Draft, question: &Question) -> Option<String> {
    let faults: Faults = brief::load("answers", &draft.probe()).err()?;
    // what was answered before has no fault, so the key alone tells
    let key = |path: &str| path.rsplit('.').next().map(|last| last.split('[').next().unwrap_or(last).to_string());
    let at_key = faults.iter().find(|fault| key(&fault.path).as_deref() == Some(question.key))?;
    Some(match &at_key.help {
        Some(help) => format!("{}; {help}", at_key.message),
        None => at_key.message.clone(),
    })
}

#[cfg(test)]
mod tests;
