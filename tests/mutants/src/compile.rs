//! Mutants that do not compile are found and left out.
//!
//! Method: `cargo check` tells each error with its places; the innermost switch around a place is left out, and the check is made
//! again until it passes.

use crate::plant::Mutant;
use crate::tree;
use proc_macro2::LineColumn;
use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;
use syn::spanned::Spanned;
use syn::visit::{self, Visit};

/// Rounds after which there must be nothing left.
const ROUNDS: usize = 20;

/// A stretch of a file with the mutants whose switches stand there.
#[derive(Default)]
struct Switches {
    found: Vec<(LineColumn, LineColumn, BTreeSet<u32>)>,
    /// Those inside the switch that is being read.
    inside: BTreeSet<u32>,
}

impl<'a> Visit<'a> for Switches {
    fn visit_expr_call(&mut self, call: &'a syn::ExprCall) {
        if let (syn::Expr::Path(path), Some(syn::Expr::Lit(literal))) = (&*call.func, call.args.first()) {
            let names: Vec<String> = path.path.segments.iter().map(|segment| segment.ident.to_string()).collect();
            if let (["crate", "mutant", "on"], syn::Lit::Int(int)) =
                (names.iter().map(String::as_str).collect::<Vec<_>>().as_slice(), &literal.lit)
            {
                self.inside.insert(int.base10_parse().expect("a number"));
            }
        }
        visit::visit_expr_call(self, call);
    }
    fn visit_expr_paren(&mut self, paren: &'a syn::ExprParen) {
        let outer = std::mem::take(&mut self.inside);
        visit::visit_expr_paren(self, paren);
        let own = std::mem::replace(&mut self.inside, outer);
        if !own.is_empty() {
            self.found.push((paren.span().start(), paren.span().end(), own));
        }
    }
    // results that are returned early stand as statements
    fn visit_expr_if(&mut self, expr: &'a syn::ExprIf) {
        let outer = std::mem::take(&mut self.inside);
        visit::visit_expr_if(self, expr);
        let own = std::mem::replace(&mut self.inside, outer);
        let plain = matches!(&*expr.cond, syn::Expr::Call(call) if call.args.len() == 1) && expr.else_branch.is_none();
        if plain && own.len() == 1 {
            self.found.push((expr.span().start(), expr.span().end(), own));
        } else {
            self.inside.extend(own);
        }
    }
}

/// The mutants of the innermost switch around a place.
fn around(switches: &Switches, line: usize, column: usize) -> BTreeSet<u32> {
    let place = LineColumn { line, column: column.saturating_sub(1) };
    let holding = switches.found.iter().filter(|(start, end, _)| *start <= place && place < *end);
    // the innermost one begins last
    holding
        .max_by_key(|(start, end, _)| (*start, std::cmp::Reverse(*end)))
        .map_or_else(BTreeSet::new, |one| one.2.clone())
}

/// Checks the tree; the mutants to leave out, and the messages for which there is none.
fn check(tree: &Path) -> (BTreeSet<u32>, Vec<String>, bool) {
    let output = Command::new("cargo")
        .args(["check", "--lib", "--message-format=json", "--quiet", "-j", "2"])
        .current_dir(tree)
        .output()
        .expect("cargo");
    let mut files: BTreeMap<String, Switches> = BTreeMap::new();
    let (mut wrong, mut unknown) = (BTreeSet::new(), Vec::new());
    for line in String::from_utf8_lossy(&output.stdout).lines() {
        let Ok(message) = serde_json::from_str::<serde_json::Value>(line) else { continue };
        let message = &message["message"];
        if message["level"] != "error" {
            continue;
        }
        let spans = message["spans"].as_array().cloned().unwrap_or_default();
        let mut found = BTreeSet::new();
        for primary in [true, false] {
            for span in spans.iter().filter(|span| span["is_primary"] == primary) {
                let file = span["file_name"].as_str().unwrap_or_default().to_string();
                let switches = files.entry(file.clone()).or_insert_with(|| {
                    let mut switches = Switches::default();
                    if let Ok(text) = std::fs::read_to_string(tree.join(&file)) {
                        switches.visit_file(&syn::parse_file(&text).expect("Rust"));
                    }
                    switches
                });
                let number = |key: &str| span[key].as_u64().unwrap_or(0) as usize;
                found.extend(around(switches, number("line_start"), number("column_start")));
            }
            if !found.is_empty() {
                break;
            }
        }
        if found.is_empty() && !spans.is_empty() {
            unknown.push(message["rendered"].as_str().unwrap_or_default().to_string());
        }
        wrong.extend(found);
    }
    (wrong, unknown, output.status.success())
}

/// Copies the project and plants all that compiles into these rooms.
pub fn plant(project: &Path, work: &Path, rooms: &[&str]) {
    let tree = work.join("tree");
    std::fs::create_dir_all(&tree).expect("a folder of work");
    let stated = work.join("left-out.txt");
    // numbers hang on the sources: what was left out of others counts no more
    let sources = sources(project, rooms);
    let mut left_out: BTreeSet<u32> = match std::fs::read_to_string(&stated) {
        Ok(text) if text.lines().next() == Some(sources.as_str()) => {
            text.lines().skip(1).filter_map(|line| line.parse().ok()).collect()
        }
        _ => BTreeSet::new(),
    };
    for round in 1..=ROUNDS {
        let mutants = tree::copy(project, &tree, rooms, &left_out);
        let (wrong, unknown, passes) = check(&tree);
        println!(
            "round {round}: {} mutants, {} left out, {} more do not compile",
            mutants.len(),
            left_out.len(),
            wrong.len()
        );
        left_out.extend(&wrong);
        let numbers: String = left_out.iter().map(|id| format!("{id}\n")).collect();
        std::fs::write(&stated, format!("{sources}\n{numbers}")).expect("a file");
        if passes {
            list(work, &mutants);
            return;
        }
        assert!(!wrong.is_empty(), "errors outside of every mutant:\n{}", unknown.join("\n"));
    }
    panic!("it does not compile after {ROUNDS} rounds");
}

fn sources(project: &Path, rooms: &[&str]) -> String {
    use std::hash::{DefaultHasher, Hash, Hasher};
    let mut hasher = DefaultHasher::new();
    for room in rooms {
        let folder = project.join("src").join(room);
        for path in tree::files(&folder) {
            (path.to_string_lossy().into_owned(), std::fs::read(folder.join(&path)).expect("a file")).hash(&mut hasher);
        }
    }
    format!("sources {:016x}", hasher.finish())
}

/// One line a mutant: number, room, place, change, `planted` or `left out`.
fn list(work: &Path, mutants: &[Mutant]) {
    let line = |mutant: &Mutant| {
        let Mutant { id, file, line, column, change, planted } = mutant;
        let room = file.split('/').nth(1).unwrap_or_default();
        let state = if *planted { "planted" } else { "left out" };
        format!("{id}\t{room}\t{file}:{line}:{column}\t{change}\t{state}\n")
    };
    std::fs::write(work.join("mutants.tsv"), mutants.iter().map(line).collect::<String>()).expect("a file");
}
