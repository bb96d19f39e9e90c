//! Which mutant is on: one number for the whole process, read once from the environment.
//!
//! This file is planted into the copy of the tree as `src/mutant.rs`. `AXISWRIGHT_MUTANT` holds the number of a mutant, or `reach`:
//! then the number of every mutant that is come by is added to the file that `AXISWRIGHT_REACH` names.

use std::io::Write;
use std::sync::atomic::{AtomicU32, AtomicU64, Ordering};

const UNREAD: u32 = u32::MAX;
const REACH: u32 = u32::MAX - 1;

static ACTIVE: AtomicU32 = AtomicU32::new(UNREAD);
static SEEN: [AtomicU64; 1024] = [const { AtomicU64::new(0) }; 1024];

/// Whether this mutant is on.
#[inline(always)]
pub fn on(id: u32) -> bool {
    let active = ACTIVE.load(Ordering::Relaxed);
    active == id || (active >= REACH && special(id))
}

#[cold]
#[inline(never)]
fn special(id: u32) -> bool {
    if ACTIVE.load(Ordering::Relaxed) == UNREAD {
        let asked = std::env::var("AXISWRIGHT_MUTANT").unwrap_or_default();
        let number = if asked == "reach" { REACH } else { asked.parse().unwrap_or(0) };
        ACTIVE.store(number, Ordering::Relaxed);
        if number != REACH {
            return number == id;
        }
    }
    let (place, bit) = (id as usize / 64, 1 << (id % 64));
    if SEEN[place].load(Ordering::Relaxed) & bit == 0 && SEEN[place].fetch_or(bit, Ordering::Relaxed) & bit == 0 {
        let file = std::env::var("AXISWRIGHT_REACH").unwrap_or_default();
        if let Ok(mut file) = std::fs::OpenOptions::new().append(true).create(true).open(file) {
            let _ = file.write_all(format!("{id}\n").as_bytes());
        }
    }
    false
}
