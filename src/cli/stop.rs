//! What happens when somebody stops the program by Ctrl-C, closes its terminal or ends it.
//!
//! Method: a thread waits for the signal. While a folder or file is being put in its place the thread waits for that
//! to end, which takes a fraction of a second; then the process ends with status 130, the usual one. What is stopped before
//! its result was written has written nothing.
//! Limits: a process that is killed outright (signal 9, power) may leave a temporary folder `.axiswright-…` beside the
//! target, never half a result.

use super::Failure;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// The status of a process that was stopped: 128 and the number of the signal, as shells have it.
const STOPPED: i32 = 130;

static WRITING: Mutex<()> = Mutex::new(());

/// Held while results are put in their place.
pub fn writing() -> MutexGuard<'static, ()> {
    WRITING.lock().unwrap_or_else(PoisonError::into_inner)
}

/// From now on a stop waits for what is being written.
pub fn whole_or_not_at_all() -> Result<(), Failure> {
    let stop = || {
        let _held = writing();
        super::progress::wipe_at_the_end();
        std::process::exit(STOPPED);
    };
    ctrlc::set_handler(stop).map_err(|error| Failure::Ours(format!("no handler for Ctrl-C could be set: {error}")))
}
