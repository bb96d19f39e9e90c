//! Working a formula out again from numbers alone, as a line of a worksheet names them.
//!
//! Method: the type of the formula says how many arguments it has and which are lists; all lists of a formula are of one
//! length. Limits: none.

use super::generic::Plain;
use super::library;
use std::collections::BTreeMap;
use std::sync::LazyLock;

static BY_ID: LazyLock<BTreeMap<&'static str, &'static dyn Plain>> =
    LazyLock::new(|| library::formulas().map(|formula| (formula.note().id, formula)).collect());

/// A formula, ready for so many inputs.
pub struct Replay {
    formula: &'static dyn Plain,
    counts: Vec<usize>,
}

/// Why a formula cannot be worked out again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NoReplay {
    /// No formula has this id.
    UnknownFormula,
    /// It takes another number of inputs.
    OtherInputs,
}

impl Replay {
    /// The formula with this id for so many inputs, phase by phase.
    pub fn of(id: &str, inputs: usize) -> Result<Replay, NoReplay> {
        let formula = *BY_ID.get(id).ok_or(NoReplay::UnknownFormula)?;
        let arguments = formula.arguments();
        let lists = arguments.iter().filter(|(_, list)| *list).count();
        let in_lists = inputs.checked_sub(arguments.len() - lists).ok_or(NoReplay::OtherInputs)?;
        let fits = if lists == 0 { in_lists == 0 } else { in_lists.is_multiple_of(lists) };
        if !fits {
            return Err(NoReplay::OtherInputs);
        }
        let of_list = in_lists.checked_div(lists).unwrap_or(0);
        let counts = arguments.iter().map(|(_, list)| if *list { of_list } else { 1 }).collect();
        Ok(Replay { formula, counts })
    }

    /// The result in SI units, from the inputs in SI units in the order of the formula.
    pub fn value(&self, inputs: &[f64]) -> f64 {
        let mut rest = inputs;
        let mut arguments = Vec::with_capacity(self.counts.len());
        for &count in &self.counts {
            let Some((mine, others)) = rest.split_at_checked(count) else { return f64::NAN };
            arguments.push(mine);
            rest = others;
        }
        self.formula.apply(&arguments)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_formula_is_worked_out_from_numbers_and_other_counts_are_refused() {
        let annuity = Replay::of("annuity", 2).expect("the formula");
        // 8 %, 10 years of 365.25 days: 6.7101 in printed tables of interest factors
        assert!((annuity.value(&[0.08, 10.0 * 31_557_600.0]) - 6.7101).abs() < 5e-5);
        assert_eq!(Replay::of("annuity", 3).err(), Some(NoReplay::OtherInputs));
        assert_eq!(Replay::of("annuity", 0).err(), Some(NoReplay::OtherInputs));
        assert_eq!(Replay::of("anuity", 2).err(), Some(NoReplay::UnknownFormula));
        assert!(Replay::of("mean-load", 6).is_ok(), "two lists of three");
        assert_eq!(Replay::of("mean-load", 5).err(), Some(NoReplay::OtherInputs));
    }
}
