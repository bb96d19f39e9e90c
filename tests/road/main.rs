//! The whole road from a brief to a choice, on a small catalogue on which everything can be tried.

mod census;
mod facts;
mod ledger;
mod machine;
mod same_answer;
mod small;
