//! The one module through which all YAML goes: a text becomes a tree of nodes, and every fault gets a place.
//!
//! Method: `serde_yaml` reads the text into a tree that keeps the order of keys and sees duplicate keys. A
//! reader walks the tree through [`Node`] and goes on after each fault, so that one run tells all of them. Only
//! when a fault is made does `saphyr-parser` walk the text again to find lines and columns.
//! Limits: one document a file, UTF-8, at most 16 MiB, 128 levels of nesting, no tags, no merge keys.

mod document;
mod fault;
mod missing;
mod node;
mod place;
mod purpose;
mod spelling;
mod syntax;

pub use document::{Document, key_path, read_text};
pub use fault::{Fault, Faults};
pub use node::Node;
pub use purpose::Purpose;
pub use spelling::nearest;
