//! The resolved packages as `cargo metadata` tells them.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::process::Command;

/// A package of the graph.
pub struct Package {
    pub name: String,
    pub version: String,
    /// The licence expression; empty where the manifest has none.
    pub licence: String,
    /// The oldest Rust that it promises to build with.
    pub rust: Option<String>,
    /// Whether the program is built from it; tests alone otherwise.
    pub shipped: bool,
}

impl Package {
    /// Name and version.
    pub fn told(&self) -> String {
        format!("{} {}", self.name, self.version)
    }
}

/// All packages that are needed to build and test.
pub struct Graph {
    pub packages: Vec<Package>,
}

impl Graph {
    /// Of every platform where all packages were fetched, else of this one.
    pub fn read() -> Graph {
        let told = metadata(&[]).or_else(|_| metadata(&["--filter-platform", &host()]));
        let told = told.unwrap_or_else(|error| panic!("cargo metadata: {error}"));
        let shipped = shipped(&told);
        let text = |value: &Value| value.as_str().map(String::from);
        let package = |value: &Value| Package {
            name: text(&value["name"]).expect("a name"),
            version: text(&value["version"]).expect("a version"),
            licence: text(&value["license"]).unwrap_or_default(),
            rust: text(&value["rust_version"]),
            shipped: shipped.contains(value["id"].as_str().expect("an id")),
        };
        let packages = told["packages"].as_array().expect("packages").iter();
        Graph { packages: packages.map(package).filter(|package| package.name != env!("CARGO_PKG_NAME")).collect() }
    }
}

fn metadata(more: &[&str]) -> Result<Value, String> {
    let run = Command::new(env!("CARGO"))
        .args(["metadata", "--format-version", "1", "--locked", "--offline", "--all-features"])
        .args(more)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .map_err(|error| error.to_string())?;
    if !run.status.success() {
        return Err(String::from_utf8_lossy(&run.stderr).into_owned());
    }
    serde_json::from_slice(&run.stdout).map_err(|error| error.to_string())
}

/// The platform of this cargo.
fn host() -> String {
    let run = Command::new(env!("CARGO")).arg("-vV").output().expect("cargo tells its version");
    let text = String::from_utf8(run.stdout).expect("text");
    text.lines().find_map(|line| line.strip_prefix("host: ")).expect("a host").to_string()
}

/// The ids that the project reaches without what only tests use.
fn shipped(told: &Value) -> BTreeSet<&str> {
    let nodes = told["resolve"]["nodes"].as_array().expect("nodes");
    let nodes: BTreeMap<&str, &Value> = nodes.iter().map(|node| (node["id"].as_str().expect("an id"), node)).collect();
    let mut open = vec![told["resolve"]["root"].as_str().expect("a root")];
    let mut seen = BTreeSet::new();
    while let Some(id) = open.pop() {
        if !seen.insert(id) {
            continue;
        }
        for needed in nodes[id]["deps"].as_array().expect("what it needs") {
            let kinds = needed["dep_kinds"].as_array().expect("kinds");
            if kinds.iter().any(|kind| kind["kind"].as_str() != Some("dev")) {
                open.push(needed["pkg"].as_str().expect("an id"));
            }
        }
    }
    seen
}

/// A version of Rust as numbers, so that versions can be compared.
pub fn version(text: &str) -> (u32, u32, u32) {
    let mut parts = text.split('.').map(|part| part.parse().expect("a number"));
    let mut next = || parts.next().unwrap_or(0);
    (next(), next(), next())
}

#[test]
fn versions_compare_as_numbers() {
    assert!(version("1.9") < version("1.10") && version("1.88") == version("1.88.0"));
}
