//! A way to end a search that nobody waits for any more.
//!
//! Method: whoever asked sets the mark from any thread; every search that was given it looks at it once a branch and leaves all
//! that is left. What a stopped search gives is not its answer, so whoever set the mark throws it away.
//! Limits: a branch that is being worked out is worked out to its end, which takes milliseconds.

use std::sync::atomic::{AtomicBool, Ordering};

/// A mark that a search is to end.
#[derive(Debug, Default)]
pub struct Stop(AtomicBool);

impl Stop {
    /// Ends every search that was given this mark.
    pub fn now(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    /// Whether to end.
    pub fn asked(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }
}
