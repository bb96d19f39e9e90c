//! The whole road from a brief to a choice, on a small catalogue on which everything can be tried.

mod ask;
mod balanced;
mod budget;
mod census;
mod crossover;
mod diagrams;
mod facts;
mod invariant;
mod ledger;
mod life_cost;
mod machine;
mod monotone;
mod moves;
mod next_machines;
mod obstacles;
mod outcomes;
mod racks;
mod robustness;
mod same_answer;
mod screws;
mod small;
mod turning;
mod twin;
mod upkeep;
mod weights;
mod whole;
