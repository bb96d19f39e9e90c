//! The formulas of the position loop.

use super::super::generic::Plain;
use crate::formula::servo;

pub(super) static FORMULAS: &[&dyn Plain] = &[
    &servo::MASS_RATIO,
    &servo::FREE_MODE,
    &servo::FOLLOWING_ERROR,
    &servo::FED_CIRCLE_ERROR,
    &servo::CONTOUR_ERROR,
    &servo::REVERSAL_SPIKE,
    &servo::JERK_RESIDUE,
    &servo::JERK_ENVELOPE,
    &servo::SETTLING_TIME,
];
