//! The entries of an import as a file of the catalogue, in the shape in which the built-in ones are written.

use super::map::quoted;
use crate::catalog::Kind;

/// Longest line of an entry, in letters.
const WIDTH: usize = 116;

/// The file: head, then one group an entry.
pub fn file(kind: &Kind, basis: &str, from: &str, entries: &[&[(String, String)]]) -> String {
    let name: String = from.chars().filter(|letter| !letter.is_control()).collect();
    let mut out = format!(
        "# Imported from {name}. Compare with the supplier's document before anything is ordered.\nkind: {}\nbasis: {}\nentries:\n",
        kind.name,
        quoted(basis)
    );
    for entry in entries {
        out.push_str(&group(entry));
    }
    out
}

/// One entry: `- { key: value, … }`, broken where a line gets too long.
fn group(entry: &[(String, String)]) -> String {
    let mut out = String::from("  - {");
    let mut length = out.chars().count();
    for (place, (key, value)) in entry.iter().enumerate() {
        let piece = format!(" {key}: {value}{}", if place + 1 < entry.len() { "," } else { " }" });
        let width = piece.chars().count();
        if length + width > WIDTH {
            out.push_str("\n     ");
            length = 5;
        }
        out.push_str(&piece);
        length += width;
    }
    out.push('\n');
    out
}
