//! A part of the built-in catalogue, so that a build without optimisation searches it in seconds.
//!
//! Method: of each file named here those entries and variants stay that are named; they take the place of all parts of
//! their kind. Limits: it knows the layout of the built-in files, one entry or variant a line that begins with `  - {`.

use std::path::Path;

/// The kinds that make the search large, each with what is kept.
const KEPT: &[(&str, &[&str])] = &[
    ("ball-screw/generic", &["screw-32x20", "screw-32x32", "screw-40x10", "screw-40x20"]),
    ("screw-grade/generic", &["rolled-t7", "ground-p5"]),
    ("screw-reduction/couplings", &["coupling-60", "coupling-150"]),
    ("rack/generic", &["-helical", "-straight", "rack-1.5", "rack-2"]),
    ("rack-grade/generic", &["q5-hardened-ground", "q6-hardened-ground", "q7-hardened-ground"]),
    (
        "pinion/generic",
        &[
            "pinion-15-straight",
            "pinion-16-helical",
            "pinion-18-helical",
            "pinion-18-straight",
            "pinion-22-helical",
            "pinion-22-straight",
        ],
    ),
    ("gearbox/planetary", &["-i5", "-i7", "-i8", "planetary-60-standard", "planetary-80-standard"]),
    (
        "servo-motor/generic",
        &["servo-1.0kw", "servo-1.0kw-brake", "servo-2.2kw-brake", "servo-3.0kw", "servo-3.0kw-brake"],
    ),
];

/// Writes it into a folder.
pub fn write(folder: &Path) {
    std::fs::create_dir_all(folder).expect("a folder");
    for (name, kept) in KEPT {
        let text = std::fs::read_to_string(format!("catalog/{name}.yaml")).expect("the built-in file");
        let file = folder.join(format!("{}.yaml", name.replace('/', "-")));
        std::fs::write(file, cut(&text, kept)).expect("a file");
    }
}

/// Leaves of a built-in file only the entries and variants named, for all parts of the kind.
pub fn cut(text: &str, kept: &[&str]) -> String {
    let mut out = String::from("replaces-kind: true\n");
    let (mut keep, mut found) = (true, 0);
    for line in text.lines() {
        let name = ["  - { designation: ", "  - { suffix: "].iter().find_map(|begin| line.strip_prefix(begin));
        match name.map(|name| name.split([',', ' ', '}']).next().unwrap_or_default()) {
            Some(name) => {
                keep = kept.contains(&name);
                found += usize::from(keep);
            }
            None if !line.starts_with("   ") => keep = true,
            None => {}
        }
        if keep {
            out.push_str(line);
            out.push('\n');
        }
    }
    assert_eq!(found, kept.len(), "the built-in catalogue has all of {kept:?}");
    out
}
