//! The brief that a new user starts from.

/// A commented brief that reads without faults.
pub fn starter() -> &'static str {
    include_str!("../../docs/starter.yaml")
}
