//! The local page over plain HTTP: what it answers, what it refuses, and what hostile visitors get.

mod answers;
mod hostile;
mod load;
#[path = "../page_program.rs"]
mod program;
mod request;
#[path = "../docs_commands/small.rs"]
mod small;
