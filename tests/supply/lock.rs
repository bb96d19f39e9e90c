//! `Cargo.lock` as packages.

use std::collections::BTreeMap;

/// A package of the lock file.
#[derive(Default)]
pub struct Package {
    pub name: String,
    pub version: String,
    pub source: Option<String>,
    pub checksum: Option<String>,
}

/// All packages, of every platform.
pub fn packages() -> Vec<Package> {
    read(include_str!("../../Cargo.lock"))
}

/// Those of the project of its own that makes small changes to this one.
pub fn packages_of_mutants() -> Vec<Package> {
    read(include_str!("../mutants/Cargo.lock"))
}

fn read(text: &str) -> Vec<Package> {
    let mut packages: Vec<Package> = Vec::new();
    for line in text.lines() {
        if line == "[[package]]" {
            packages.push(Package::default());
        }
        let (Some(package), Some((key, value))) = (packages.last_mut(), line.split_once(" = ")) else { continue };
        let value = value.trim_matches('"').to_string();
        match key {
            "name" => package.name = value,
            "version" => package.version = value,
            "source" => package.source = Some(value),
            "checksum" => package.checksum = Some(value),
            _ => {}
        }
    }
    packages
}

/// What is there in more than one version: name and versions, oldest first, as far as they do not go together.
pub fn twice(packages: &[Package]) -> BTreeMap<String, Vec<String>> {
    let mut found: BTreeMap<String, Vec<(u64, u64)>> = BTreeMap::new();
    for package in packages {
        let mut numbers = package.version.split('.').map(|part| part.parse::<u64>().unwrap_or(0));
        let (major, minor) = (numbers.next().unwrap_or(0), numbers.next().unwrap_or(0));
        // versions that begin with 1 or more go together whatever follows
        found.entry(package.name.clone()).or_default().push((major, if major > 0 { 0 } else { minor }));
    }
    let told = |(major, minor): &(u64, u64)| if *major > 0 { major.to_string() } else { format!("0.{minor}") };
    let many = found.into_iter().filter(|(_, versions)| versions.len() > 1);
    many.map(|(name, mut versions)| {
        versions.sort_unstable();
        (name, versions.iter().map(told).collect())
    })
    .collect()
}

#[test]
fn packages_are_read_with_source_and_hash() {
    let text = "version = 4\n\n[[package]]\nname = \"a\"\nversion = \"1.2.3\"\nsource = \"s\"\nchecksum = \"c\"\n\n\
                [[package]]\nname = \"a\"\nversion = \"2.0.0\"\ndependencies = [\n \"b\",\n]\n\n[[package]]\nname = \"b\"\nversion = \"0.10.1\"\n";
    let packages = read(text);
    assert_eq!(packages.len(), 3);
    assert_eq!((packages[0].source.as_deref(), packages[0].checksum.as_deref()), (Some("s"), Some("c")));
    assert_eq!(packages[1].checksum, None);
    assert_eq!(twice(&packages), BTreeMap::from([("a".to_string(), vec!["1".to_string(), "2".to_string()])]));
}
