//! Reading a brief: every value, every default, every fault, all at once.

mod damage;
mod faults;
mod misplaced;
mod moves;
mod texts;
mod uncertainty;
mod values;
