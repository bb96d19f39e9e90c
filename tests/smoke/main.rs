//! Texts that nobody would write, read by everything that reads: no fault of the program, whatever comes in.
//!
//! Method: the entries of `tests/fuzz` are given the examples and the data of the tests with mutations under a fixed seed, and texts
//! that are small and ask for much. What fails is written below the folder of temporary files. The long run is asked for by name:
//! `cargo test --release --test smoke campaign::campaign -- --ignored --nocapture`.
//! Limits: a fuzzer that sees which lines were reached finds more; `tests/fuzz` is its project. No times are held here.
#![cfg(feature = "serve")]

mod bombs;
mod campaign;
mod chance;
#[path = "../fuzz/entries.rs"]
mod entries;
mod mutate;
mod refused;
mod seeds;
mod small;

use chance::Chance;
use entries::{ENTRIES, Entry};
use rayon::prelude::*;
use std::panic::catch_unwind;
use std::path::PathBuf;

/// Reads a text; if that fails, the text is kept and its place told.
fn survives(entry: &Entry, told: &str, bytes: &[u8]) -> Result<(), String> {
    let read = entry.read;
    catch_unwind(|| read(bytes)).map_err(|_| format!("{} ({told}): {}", entry.name, keep(entry.name, bytes).display()))
}

/// Keeps a text below the folder of temporary files.
fn keep(name: &str, bytes: &[u8]) -> PathBuf {
    let mark = bytes
        .iter()
        .fold(0xcbf2_9ce4_8422_2325_u64, |mark, byte| (mark ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3));
    let path = std::env::temp_dir().join(format!("axiswright-{name}-{mark:016x}"));
    std::fs::write(&path, bytes).expect("a file");
    path
}

fn all_survive(failed: Vec<Result<(), String>>) {
    let failed: Vec<String> = failed.into_iter().filter_map(Result::err).collect();
    assert!(failed.is_empty(), "the program failed on these texts:\n{}", failed.join("\n"));
}

#[test]
fn what_seeds_hold_is_read() {
    all_survive(
        ENTRIES
            .par_iter()
            .flat_map(|entry| {
                let seeds = seeds::seeds(entry.name);
                seeds.par_iter().take(entry.a_second).map(|bytes| survives(entry, "seed", bytes)).collect::<Vec<_>>()
            })
            .collect(),
    );
}

#[test]
fn texts_that_ask_for_much_are_read_or_refused() {
    let bombs = bombs::bombs();
    // an entry that begins by reading the catalogue is given the first ones
    let few = |entry: &Entry| if entry.a_second < 10 { 12 } else { bombs.len() };
    let all = ENTRIES.iter().flat_map(|entry| bombs.iter().take(few(entry)).map(move |bomb| (entry, bomb)));
    let all: Vec<_> = all.collect();
    all_survive(all.par_iter().map(|(entry, (name, bytes))| survives(entry, name, bytes)).collect());
}

#[test]
fn mutations_are_read_or_refused() {
    all_survive(
        ENTRIES
            .par_iter()
            .flat_map(|entry| {
                let seeds = seeds::seeds(entry.name);
                let one =
                    |number: usize| survives(entry, "mutation", &mutate::mutated(&seeds, &mut Chance(number as u64)));
                (0..entry.a_second.div_ceil(2)).into_par_iter().map(one).collect::<Vec<_>>()
            })
            .collect(),
    );
}

#[test]
fn every_entry_is_a_target_of_the_fuzzer() {
    let manifest = include_str!("../fuzz/Cargo.toml");
    for entry in ENTRIES {
        let target = format!("name = \"{0}\"\npath = \"targets/{0}.rs\"", entry.name);
        assert!(manifest.contains(&target), "tests/fuzz/Cargo.toml has no target {}", entry.name);
        let path = format!("{}/tests/fuzz/targets/{}.rs", env!("CARGO_MANIFEST_DIR"), entry.name);
        let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
        assert!(text.contains(&format!("entries::{}(bytes)", entry.name)), "{path}");
    }
    assert_eq!(manifest.matches("[[bin]]").count(), ENTRIES.len());
}
