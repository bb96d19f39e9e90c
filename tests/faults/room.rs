//! A folder with what every command needs, and what commands write.

use crate::small;
use assert_cmd::cargo::cargo_bin;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::LazyLock;

/// A brief of one short axis.
pub const BRIEF: &str = "\
machine: Test slide
currency: EUR
axes:
  slide:
    direction: horizontal
    travel: 600 mm
    moved-mass: 120 kg
    speed: 15 m/min
    acceleration: 2 m/s²
    families: [straight-rack]
";

/// The parts that the tests choose from: file of the catalogue, and which entries and variants stay.
const PARTS: &[(&str, &[&str])] = &[
    ("rack/generic", &["-straight", "rack-2"]),
    ("rack-grade/generic", &["q7-hardened-ground"]),
    ("pinion/generic", &["pinion-18-straight"]),
    ("gearbox/planetary", &["-i5", "planetary-80-standard"]),
    ("servo-motor/generic", &["servo-1.0kw", "servo-2.2kw-brake"]),
];

/// The brief of another machine on the same parts.
pub fn other() -> String {
    BRIEF.replace("Test slide", "Other slide").replace("120 kg", "90 kg")
}

/// A folder with brief, parts and a measured axis.
pub struct Room {
    folder: tempfile::TempDir,
}

impl Room {
    pub fn new() -> Room {
        let room = Room { folder: tempfile::tempdir().expect("a folder") };
        fs::write(room.path("brief.yaml"), BRIEF).expect("a brief");
        fs::create_dir(room.path("parts")).expect("a folder");
        for (name, kept) in PARTS {
            let text = fs::read_to_string(format!("catalog/{name}.yaml")).expect("the built-in file");
            fs::write(room.path("parts").join(name.replace('/', "-") + ".yaml"), small::cut(&text, kept))
                .expect("parts");
        }
        fs::write(room.path("measured.csv"), measured()).expect("a table");
        for name in ["motor-list.csv", "motor-list-map.yaml"] {
            fs::copy(format!("docs/examples/supplier/{name}"), room.path(name)).expect("a copy");
        }
        room
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes what `recommend` made in peace into a folder.
    pub fn put(&self, name: &str, files: &Folder) {
        for (file, content) in files {
            let path = self.path(name).join(file);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            fs::write(path, content).expect("a file");
        }
    }

    /// The program in this folder.
    pub fn program(&self, words: &[&str]) -> Command {
        let mut command = Command::new(cargo_bin("axiswright"));
        command.current_dir(self.folder.path()).args(words).env_remove("RUST_BACKTRACE");
        command
    }

    pub fn run(&self, words: &[&str]) -> Run {
        Run::of(self.program(words).output().expect("the program runs"))
    }

    /// The names in this folder that no test put there.
    pub fn strays(&self) -> Vec<String> {
        let known = ["brief.yaml", "parts", "measured.csv", "motor-list.csv", "motor-list-map.yaml", "out"];
        let entries = fs::read_dir(self.folder.path()).expect("a folder");
        let names = entries.map(|entry| entry.expect("an entry").file_name().to_string_lossy().into_owned());
        names.filter(|name| !known.contains(&name.as_str())).collect()
    }
}

/// How a run ended.
#[derive(Debug)]
pub struct Run {
    /// None where a signal ended it.
    pub status: Option<i32>,
    pub out: String,
    pub err: String,
}

impl Run {
    pub fn of(output: Output) -> Run {
        let text = |bytes: Vec<u8>| String::from_utf8_lossy(&bytes).into_owned();
        let run = Run { status: output.status.code(), out: text(output.stdout), err: text(output.stderr) };
        assert!(!run.err.contains("panicked") && !run.err.contains("a fault of axiswright, not"), "{}", run.err);
        run
    }

    /// Ended with this status and a message of a line or two that holds these words.
    pub fn tells(&self, status: i32, words: &str) {
        assert_eq!(self.status, Some(status), "{}", self.err);
        assert!(self.err.starts_with("error: ") && self.err.contains(words), "`{words}` is not in: {}", self.err);
        assert!(self.err.lines().count() <= 2, "{}", self.err);
    }
}

/// `recommend` into `out`.
pub const RECOMMEND: &[&str] =
    &["recommend", "brief.yaml", "--catalog", "parts", "--no-turning-points", "--out", "out", "--threads", "1"];

/// Every command that writes a folder whole; the last word is the target.
pub const FOLDERS: &[&[&str]] = &[
    &["recommend", "brief.yaml", "--catalog", "parts", "--no-turning-points", "--out"],
    &["accept", "brief.yaml", "--catalog", "parts", "--axis", "slide", "--measured", "measured.csv", "--out"],
    &[
        "crossover",
        "brief.yaml",
        "--catalog",
        "parts",
        "--axis",
        "slide",
        "--over",
        "travel=400mm..800mm",
        "--steps",
        "2",
        "--out",
    ],
];

/// Every command that writes files, each whole.
pub const FILES: &[&[&str]] = &[
    &["new", "--out"],
    &["catalog", "import", "motor-list.csv", "--kind", "servo-motor", "--map", "motor-list-map.yaml", "--out"],
    &["man", "--out"],
];

/// Every command that answers on stdout, quickly.
pub const PRINTING: &[&[&str]] = &[
    &["recommend", "brief.yaml", "--catalog", "parts", "--no-turning-points"],
    &["recommend", "brief.yaml", "--catalog", "parts", "--no-turning-points", "--json"],
    &["accept", "brief.yaml", "--catalog", "parts", "--axis", "slide", "--measured", "measured.csv"],
    &["audit", "out", "--record-only"],
    &["calc", "--list"],
    &["explain", "lead"],
    &["catalog", "list"],
    &["catalog", "show", "servo-1.0kw"],
    &["catalog", "import", "motor-list.csv", "--kind", "servo-motor", "--map", "motor-list-map.yaml"],
    &["schema", "brief"],
    &["new"],
    &["completions", "bash"],
    &["man"],
    &["--help"],
    &["--version"],
];

/// A folder as its files.
pub type Folder = BTreeMap<PathBuf, Vec<u8>>;

/// Everything below a folder; empty where it is not there.
pub fn folder(path: &Path) -> Folder {
    let mut found = Folder::new();
    let mut open = vec![path.to_path_buf()];
    while let Some(below) = open.pop() {
        let Ok(entries) = fs::read_dir(&below) else { continue };
        for entry in entries.map(|entry| entry.expect("an entry").path()) {
            if entry.is_dir() {
                open.push(entry);
            } else {
                let name = entry.strip_prefix(path).expect("below").to_path_buf();
                found.insert(name, fs::read(&entry).expect("a file"));
            }
        }
    }
    found
}

/// What `recommend` writes in peace: for the brief of the tests, and for the other one.
pub static IN_PEACE: LazyLock<(Folder, Folder)> = LazyLock::new(|| {
    let write = |brief: &str| {
        let room = Room::new();
        fs::write(room.path("brief.yaml"), brief).expect("a brief");
        let run = room.run(RECOMMEND);
        assert_eq!((run.status, room.strays()), (Some(0), Vec::new()), "{}", run.err);
        folder(&room.path("out"))
    };
    let both = (write(BRIEF), write(&other()));
    assert!(both.0.len() > 50 && both.0 != both.1, "{} files", both.0.len());
    both
});

/// A made-up measurement of the slide.
fn measured() -> String {
    let mut text = String::from("target [mm];direction;run;deviation [µm]\n");
    for run in 1..=5 {
        for (word, half) in [("up", -2), ("down", 2)] {
            for target in [11, 130, 240, 365, 480, 590] {
                text.push_str(&format!("{target};{word};{run};{}\n", half + target / 100 + run % 3));
            }
        }
    }
    text
}
