//! The two streams of a command, and how its failures are told.

use crate::yaml::Faults;
use std::io::{self, ErrorKind, IsTerminal, Write};
use std::process::ExitCode;

/// Why a command gives no answer.
#[derive(Debug)]
pub enum Failure {
    /// Files that a user wrote are at fault.
    Faults(Faults),
    /// The input is at fault, in words.
    Input(String),
    /// The program is at fault, or the system under it.
    Ours(String),
}

impl From<Faults> for Failure {
    fn from(faults: Faults) -> Failure {
        Failure::Faults(faults)
    }
}

impl Failure {
    fn status(&self) -> u8 {
        match self {
            Failure::Faults(_) | Failure::Input(_) => 2,
            Failure::Ours(_) => 3,
        }
    }

    fn text(&self) -> String {
        match self {
            Failure::Faults(faults) => {
                let count = faults.len();
                let faults = faults.to_string();
                if count > 1 { format!("{faults}\n\n{count} faults") } else { faults }
            }
            Failure::Input(message) => format!("error: {message}"),
            Failure::Ours(message) => format!("error: {message}\nthis is a fault of axiswright or of the system"),
        }
    }
}

/// Where a command writes.
#[derive(Debug)]
pub struct Console {
    quiet: bool,
}

impl Console {
    /// Both streams of the process; a quiet console prints no messages besides faults.
    pub fn new(quiet: bool) -> Console {
        Console { quiet }
    }

    /// Whether it prints no messages besides faults.
    pub fn is_quiet(&self) -> bool {
        self.quiet
    }

    /// Writes a result to stdout. A reader that closed the pipe has what it wanted.
    pub fn result(&mut self, text: &str) -> Result<(), Failure> {
        let mut out = io::stdout().lock();
        match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
            Err(error) if error.kind() != ErrorKind::BrokenPipe => {
                Err(Failure::Ours(format!("the result cannot be written: {error}")))
            }
            _ => Ok(()),
        }
    }

    /// Writes a message to stderr, unless quiet.
    pub fn message(&mut self, text: &str) {
        if !self.quiet {
            tell(text);
        }
    }

    /// Asks on stderr, without a line end, also of those who give the answers from a file; unless quiet.
    pub fn prompt(&mut self, text: &str) {
        if !self.quiet {
            let mut stream = io::stderr().lock();
            let _ = stream.write_all(text.as_bytes()).and_then(|()| stream.flush());
        }
    }

    /// Tells a failure and gives its exit status.
    pub fn fail(&mut self, failure: &Failure) -> ExitCode {
        let text = failure.text();
        if io::stderr().is_terminal() && std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty()) {
            tell(&coloured(&text));
        } else {
            tell(&text);
        }
        ExitCode::from(failure.status())
    }
}

/// Writes to stderr; there is nobody left to tell if that fails.
fn tell(text: &str) {
    let _ = writeln!(io::stderr().lock(), "{text}");
}

/// Writes what a dying program has to say.
pub(super) fn last_words(text: &str) {
    tell(&format!("error: {text}"));
}

/// The words that head a fault, in colour.
fn coloured(text: &str) -> String {
    let line = |line: &str| {
        for (head, colour) in [("error:", "1;31"), ("  = help:", "1;36")] {
            if let Some(rest) = line.strip_prefix(head) {
                return format!("\u{1b}[{colour}m{head}\u{1b}[0m{rest}");
            }
        }
        line.to_string()
    };
    text.lines().map(line).collect::<Vec<_>>().join("\n")
}

/// Help and version go to stdout with status 0; a wrong command line goes to stderr with status 2.
pub(super) fn usage(message: &clap::Error) -> ExitCode {
    let wrong = message.use_stderr();
    match message.print() {
        // who closed the pipe has what he wanted; that a fault could not be told changes nothing of it
        Err(error) if !wrong && error.kind() != ErrorKind::BrokenPipe => {
            last_words(&format!("the help cannot be written: {error}"));
            ExitCode::from(3)
        }
        _ => ExitCode::from(if wrong { 2 } else { 0 }),
    }
}
