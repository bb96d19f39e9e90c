//! What a brief states and may not mean, told before anything is worked out.

use super::Console;
use crate::brief::Brief;

/// Tells every doubt; the command goes on with the values as they are read.
pub fn tell(brief: &Brief, console: &mut Console) {
    for doubt in &brief.doubts {
        console.message(&format!("note: {}: {}", doubt.key, doubt.words));
    }
}
