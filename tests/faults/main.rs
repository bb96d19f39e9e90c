//! Faults of the outside world: full disks, folders that cannot be written, ends at any moment, files that change, readers that go.
//!
//! Method: the program runs as a user runs it, on a few parts, so that a run takes half a second without optimisation. The same
//! inputs give the same bytes, so a folder is compared whole with one that was written in peace. Small disks are mounted in a
//! namespace of the test's own (`unshare`); a fault at one certain call of the system is put there by `strace`.
//! Limits: Unix. Where `unshare` or `strace` is not there or not allowed, the test says so in a printed line and holds nothing.
#![cfg(unix)]

mod changed;
mod closed;
mod full;
mod injected;
mod killed;
mod read_only;
mod room;
#[allow(dead_code)]
#[path = "../docs_commands/small.rs"]
mod small;
mod together;
mod tools;
