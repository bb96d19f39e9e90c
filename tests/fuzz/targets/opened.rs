//! Fuzzes the entry `opened`.
#![no_main]

#[allow(dead_code)]
#[path = "../entries.rs"]
mod entries;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::opened(bytes));
