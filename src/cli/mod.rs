//! The commands: reading the command line, running one command, exit status.
//!
//! Method: every command takes a [`Console`] and gives an [`Answer`] or a [`Failure`]; only [`main`] turns
//! that into an exit status. Results go to stdout, messages to stderr. A reader that closes the pipe early
//! is no fault.
//! Limits: without the feature `serve` there is no page.

mod accept;
mod ask;
mod audit;
mod calc;
mod catalog;
mod check;
mod console;
mod crossover;
mod dates;
mod doubts;
mod explain;
mod file;
pub mod folder;
mod import;
mod keys;
mod new;
mod progress;
mod recommend;
mod schema;
#[cfg(feature = "serve")]
mod serve;
mod shell;
mod stop;
mod units;
mod version;

pub use console::{Console, Failure};

use progress::Progress;

use clap::{CommandFactory, FromArgMatches, Parser, Subcommand};
use std::process::ExitCode;

/// What a command that ran to its end says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Done, and the requirement is met.
    Yes,
    /// Done, and the answer is no.
    No,
}

/// The most threads that may be asked for.
const MOST_THREADS: u16 = 1024;

const AFTER_HELP: &str = "Exit status: 0 done, and the requirement is met; 1 done, and the answer is no; \
                          2 the input is at fault; 3 a fault of this program.";

/// Chooses the linear drive of every machine axis from a written brief, and says why.
#[derive(Parser)]
#[command(name = "axiswright", version, after_help = AFTER_HELP, disable_help_subcommand = true)]
struct Line {
    /// No messages besides faults
    #[arg(long, global = true)]
    quiet: bool,
    /// Threads to work with; as many as the machine has if left out
    #[arg(long, global = true, value_name = "N", value_parser = threads)]
    threads: Option<u16>,
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    Recommend(Box<recommend::Recommend>),
    Check(Box<check::Check>),
    Accept(Box<accept::Accept>),
    Audit(Box<audit::Audit>),
    Crossover(Box<crossover::Crossover>),
    Calc(calc::Calc),
    Explain(explain::Explain),
    Catalog(catalog::CatalogCommand),
    Schema(schema::Schema),
    #[cfg(feature = "serve")]
    Serve(serve::Serve),
    New(new::New),
    Completions(shell::Completions),
    Man(shell::Man),
}

impl Command {
    fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        match self {
            Command::Recommend(command) => command.run(console),
            Command::Check(command) => command.run(console),
            Command::Accept(command) => command.run(console),
            Command::Audit(command) => command.run(console),
            Command::Crossover(command) => command.run(console),
            Command::Calc(command) => command.run(console),
            Command::Explain(command) => command.run(console),
            Command::Catalog(command) => command.run(console),
            Command::Schema(command) => command.run(console),
            #[cfg(feature = "serve")]
            Command::Serve(command) => command.run(console),
            Command::New(command) => command.run(console),
            Command::Completions(command) => command.run(console),
            Command::Man(command) => command.run(console),
        }
    }
}

/// A number of threads.
fn threads(text: &str) -> Result<u16, String> {
    match text.parse() {
        Ok(threads @ 1..=MOST_THREADS) => Ok(threads),
        _ => Err(format!("a whole number from 1 to {MOST_THREADS} was expected")),
    }
}

/// A JSON value as text with a line end.
fn json(value: &impl serde::Serialize) -> Result<String, Failure> {
    serde_json::to_string_pretty(value)
        .map(|text| text + "\n")
        .map_err(|error| Failure::Ours(format!("the answer cannot be written as JSON: {error}")))
}

/// Runs the program on the command line of this process.
pub fn main() -> ExitCode {
    report_faults_of_ours();
    let line = match parse() {
        Ok(line) => line,
        Err(message) => return console::usage(&message),
    };
    if let Err(failure) = stop::whole_or_not_at_all() {
        return Console::new(line.quiet).fail(&failure);
    }
    let mut console = Console::new(line.quiet);
    if let Some(threads) = line.threads {
        // one pool serves the whole process; it is set before anything uses it
        if let Err(error) = rayon::ThreadPoolBuilder::new().num_threads(usize::from(threads)).build_global() {
            return console.fail(&Failure::Ours(format!("the threads could not be started: {error}")));
        }
    }
    match line.command.run(&mut console) {
        Ok(Answer::Yes) => ExitCode::from(0),
        Ok(Answer::No) => ExitCode::from(1),
        Err(failure) => console.fail(&failure),
    }
}

/// The command line of this process. What `--version` tells is worked out for those who ask.
fn parse() -> Result<Line, clap::Error> {
    let mut command = Line::command();
    if std::env::args_os().any(|word| word == "--version") {
        command = command.long_version(version::long());
    }
    Line::from_arg_matches(&command.try_get_matches()?)
}

/// A broken promise inside the program ends it with status 3 and says where.
fn report_faults_of_ours() {
    std::panic::set_hook(Box::new(|fault| {
        console::last_words(&format!("this is a fault of axiswright, not of your input: {fault}"));
        std::process::exit(3);
    }));
}
