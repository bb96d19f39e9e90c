//! `catalog`: what the catalogue holds, one part in full, and a look for rows that are hardly right.

use super::import::Import;
use super::{Answer, Console, Failure};
use crate::catalog::{self, Catalog, KINDS, Kind};
use clap::{Args, Subcommand};
use std::fmt::Write;
use std::path::PathBuf;

/// List, show or check the catalogue
#[derive(Args)]
pub struct CatalogCommand {
    /// Folder with catalogue files that add to or replace the built-in parts; may be given again
    #[arg(long, value_name = "DIR", global = true)]
    catalog: Vec<PathBuf>,
    #[command(subcommand)]
    action: Action,
}

#[derive(Subcommand)]
enum Action {
    /// List the kinds, or the parts of one kind
    List {
        /// The kind, such as ball-screw
        kind: Option<String>,
    },
    /// Show everything known of one part
    Show {
        /// Its designation
        designation: String,
    },
    /// Make a catalogue file of a supplier's table; exit status 1 if parts were left out, columns not used, or values hardly right
    Import(Import),
    /// Look for parts that load but are hardly right; exit status 1 if there are any
    Check,
}

impl CatalogCommand {
    /// Runs the command.
    pub fn run(&self, console: &mut Console) -> Result<Answer, Failure> {
        if let Action::Import(import) = &self.action {
            return import.run(console);
        }
        let catalog = catalog::load(&self.catalog)?;
        match &self.action {
            Action::Import(import) => import.run(console),
            Action::List { kind } => {
                if let Some(kind) = kind.as_deref().filter(|kind| Kind::find(kind).is_none()) {
                    let names = KINDS.iter().map(|kind| kind.name);
                    return Err(Failure::Input(super::keys::unknown("kind of part", kind, names, "catalog list")));
                }
                console.result(&catalog::list(&catalog, kind.as_deref()))?;
                Ok(Answer::Yes)
            }
            Action::Show { designation } => match catalog::show(&catalog, designation) {
                Some(text) => {
                    console.result(&text)?;
                    Ok(Answer::Yes)
                }
                None => Err(Failure::Input(unknown_part(&catalog, designation))),
            },
            Action::Check => check(&catalog, console),
        }
    }
}

fn unknown_part(catalog: &Catalog, designation: &str) -> String {
    let rows: Vec<String> = KINDS.iter().flat_map(|kind| (kind.rows)(catalog)).map(|row| row.designation).collect();
    super::keys::unknown("part", designation, rows.iter().map(String::as_str), "catalog list KIND")
}

fn check(catalog: &Catalog, console: &mut Console) -> Result<Answer, Failure> {
    let remarks = catalog::check(catalog);
    let parts: usize = KINDS.iter().map(|kind| (kind.rows)(catalog).len()).sum();
    let mut text = String::new();
    for remark in &remarks {
        let _ = writeln!(text, "{remark}");
    }
    let count = remarks.len();
    let _ = writeln!(text, "{parts} parts, {count} {}", if count == 1 { "remark" } else { "remarks" });
    console.result(&text)?;
    Ok(if remarks.is_empty() { Answer::Yes } else { Answer::No })
}
