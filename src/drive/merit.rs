//! What is made small when a drive is chosen: whole-life cost, or a weighted sum on fixed scales.
//!
//! Method: each preference is measured in a fixed reference, so that a drive added to the catalogue never
//! changes how two others compare. With the default weights the merit is the whole-life cost itself.
//! Limits: references are set here for all machines; the sum cannot reach a drive that is best only between
//! the corners of what is possible.

use crate::brief::Prefer;
use crate::characteristic as ch;
use crate::ledger::{Characteristic, Figures};
use crate::units::{Length, Measure, Money, Stiffness};

/// One reference: name in the brief, size, unit, what is measured.
pub type Reference = (&'static str, f64, &'static str, &'static str);

/// The scales on which preferences are weighed, one each.
pub const REFERENCES: [Reference; 4] = [
    ("whole-life-cost", 10_000.0, "currency", "price, energy, upkeep and exchanges over the years of service"),
    ("accuracy", 50.0, "µm", "half band that the axis adds at the tool"),
    ("stiffness", 0.01, "µm/N", "give of the drive"),
    ("upkeep", 1_000.0, "currency a year", "lubrication and inspection"),
];

/// What is added to the words of every merit.
const ADVICE: &str = ", more by the share that its rule states for every advice not followed";

/// How a drive is weighed.
#[derive(Debug, Clone, Copy)]
pub struct Merit {
    weights: [f64; 4],
    /// The weights over their references.
    scaled: [f64; 4],
}

/// What of the merit is known at a stage.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Floor {
    /// Prices of one drive.
    drive: Vec<usize>,
    /// Prices of one motor with what hangs on it.
    unit: Vec<usize>,
    upkeep: bool,
    energy: bool,
    replacement: bool,
    stiffness: bool,
    /// Springs in series that are parts of the stiffness, as far as they are known before the whole is.
    springs: Vec<usize>,
}

impl Floor {
    /// What is known where these slots are, of a drive whose stiffness is that of these springs in series and others.
    pub fn known(springs: &[Characteristic<Stiffness>], known: impl Fn(usize) -> bool) -> Floor {
        let among = |prices: &[Characteristic<Money>]| {
            prices.iter().map(|price| price.slot).filter(|&slot| known(slot)).collect()
        };
        Floor {
            drive: among(&[ch::ELEMENT_PRICE, ch::SUPPORT_PRICE, ch::FITTING_PRICE, ch::COVER_PRICE]),
            unit: among(&[ch::REDUCTION_PRICE, ch::MOTOR_PRICE]),
            upkeep: known(ch::UPKEEP_COST.slot),
            energy: known(ch::ENERGY_COST.slot),
            replacement: known(ch::REPLACEMENT_COST.slot),
            stiffness: known(ch::TOTAL_STIFFNESS.slot),
            springs: springs.iter().map(|spring| spring.slot).filter(|&slot| known(slot)).collect(),
        }
    }

    /// What these slots cost of all drives of the axis, of those that are prices.
    pub fn price_of(sheet: &impl Figures, slots: &[usize]) -> f64 {
        let among = |slot: &usize| slots.contains(slot);
        let known = Floor::known(&[], |slot| among(&slot));
        known.prices(sheet)
    }

    #[inline]
    fn prices(&self, sheet: &impl Figures) -> f64 {
        let sum = |slots: &[usize]| -> f64 { slots.iter().map(|&slot| positive(sheet.value(slot))).sum() };
        let units = super::motor::units(sheet);
        sum(&self.drive) * sheet.read(ch::DRIVES).si() + sum(&self.unit) * positive(sheet.read(units).si())
    }
}

#[inline(always)]
fn positive(value: f64) -> f64 {
    if value > 0.0 { value } else { 0.0 }
}

/// Stiffness of one drive; of two pinions both count.
#[inline(always)]
fn drive_stiffness(sheet: &impl Figures) -> f64 {
    let pinions = if super::motor::twin(sheet) { sheet.read(ch::PINIONS).si() } else { 1.0 };
    pinions * sheet.read(ch::TOTAL_STIFFNESS).si()
}

impl Merit {
    /// The merit of these preferences.
    pub fn new(prefer: &Prefer) -> Merit {
        let weights = [prefer.whole_life_cost, prefer.accuracy, prefer.stiffness, prefer.upkeep];
        let sum: f64 = weights.iter().sum();
        let weights = if sum > 0.0 { weights.map(|weight| weight / sum) } else { [1.0, 0.0, 0.0, 0.0] };
        Merit { weights, scaled: std::array::from_fn(|index| weights[index] / REFERENCES[index].1) }
    }

    /// What is made small; infinite where a part of it is not known.
    #[inline]
    pub fn of(&self, sheet: &impl Figures) -> f64 {
        let cost = sheet.read(ch::WHOLE_LIFE_COST).si();
        let merit = if self.weights[0] == 1.0 {
            cost
        } else {
            let measured = [
                cost / REFERENCES[0].1,
                sheet.read(ch::TOOL_ERROR).si() * 1e6 / REFERENCES[1].1,
                1e6 / drive_stiffness(sheet) / REFERENCES[2].1,
                sheet.read(ch::UPKEEP_COST).si() / REFERENCES[3].1,
            ];
            self.weights
                .iter()
                .zip(measured)
                .map(|(weight, value)| if *weight > 0.0 { weight * value } else { 0.0 })
                .sum()
        };
        if merit.is_nan() { f64::INFINITY } else { merit }
    }

    /// What a price and an error at the tool add to the merit.
    #[inline]
    pub fn position(&self, cost: f64, error: Length) -> f64 {
        if self.weights[0] == 1.0 {
            return cost;
        }
        let of_error = if self.weights[1] > 0.0 { self.scaled[1] * error.si() * 1e6 } else { 0.0 };
        self.scaled[0] * cost + of_error
    }

    /// No configuration behind this sheet has a merit below this, whatever is chosen in the stages to come, which add at least
    /// `to_come` to the price and `position` to the merit.
    #[inline]
    pub fn floor(&self, sheet: &impl Figures, known: &Floor, to_come: f64, position: f64) -> f64 {
        let yearly = |counts: bool, cost: Characteristic<Money>| {
            if counts { positive(sheet.read(cost).si()) } else { 0.0 }
        };
        let upkeep = yearly(known.upkeep, ch::UPKEEP_COST);
        let running = upkeep + yearly(known.energy, ch::ENERGY_COST);
        let replacement = if known.replacement { positive(sheet.read(ch::REPLACEMENT_COST).si()) } else { 0.0 };
        let cost = known.prices(sheet) + to_come + running * positive(sheet.read(ch::ANNUITY).si()) + replacement;
        let merit = if self.weights[0] == 1.0 {
            cost
        } else {
            let give = if known.stiffness {
                positive(1e6 / drive_stiffness(sheet))
            } else {
                known.springs.iter().map(|&spring| positive(1e6 / sheet.value(spring))).sum()
            };
            // a bound needs no last digit, so that weights and references are divided once
            let [of_cost, _, of_give, of_upkeep] = self.scaled;
            of_cost * cost + of_give * give + of_upkeep * upkeep
        };
        // a hair less, so that rounding cuts nothing that ties
        (merit + position) * (1.0 - 1e-9)
    }

    /// In words, what is made small.
    pub fn words(&self) -> String {
        if self.weights[0] == 1.0 {
            return format!("whole-life cost{ADVICE}");
        }
        let parts: Vec<String> = REFERENCES
            .iter()
            .zip(self.weights)
            .filter(|(_, weight)| *weight > 0.0)
            .map(|((name, size, unit, _), weight)| {
                format!(
                    "{} × {name} / ({} {unit})",
                    crate::units::significant(weight, 3),
                    crate::units::significant(*size, 6)
                )
            })
            .collect();
        format!("{}{ADVICE}", parts.join(" + "))
    }
}
