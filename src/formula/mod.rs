//! Arithmetic with a source: pure functions, filed by mechanics and not by drive family.
//!
//! A formula is a constant that holds its function: the same constant serves the search, the worksheet,
//! `calc` and `explain`. A function takes typed quantities, knows no defaults and makes no choices; what
//! it gives outside its validity is said in its `validity` text.

// The type of a formula lists its arguments, and a tooth has many.
#![allow(clippy::type_complexity, clippy::too_many_arguments)]

use crate::source::Source;
use crate::units::Measure;
use std::marker::PhantomData;

pub mod bearing_set;
pub mod belt;
pub mod bolt;
pub mod brake;
pub mod budget;
pub mod cable_chain;
pub mod column;
pub mod constants;
pub mod cost;
pub mod counterbalance;
pub mod coupling;
pub mod duty;
pub mod dynamics;
pub mod end_stop;
pub mod energy;
pub mod envelope;
pub mod extremes;
pub mod gantry;
pub mod gear_accuracy;
pub mod gear_geometry;
pub mod gearbox;
pub mod gearbox_load;
pub mod held_beam;
pub mod inertia;
pub mod iso_230_2;
pub mod layout;
pub mod lead_accuracy;
pub mod matching;
pub mod mesh;
pub mod mesh_motion;
pub mod motion;
pub mod motor;
pub mod mounting;
pub mod moves;
pub mod overload;
pub mod pricing;
pub mod rack;
pub mod rack_bed;
pub mod rating;
pub mod regeneration;
pub mod rolling_life;
pub mod s_curve;
pub mod screw;
pub mod servo;
pub mod shaft;
pub mod site;
pub mod stiffness;
pub mod stop;
pub mod stretch;
pub mod test_plan;
pub mod thermal;
pub mod tooth_strength;
pub mod turn_motion;
pub mod twin;

/// What a reader is told of a formula.
#[derive(Debug, Clone, Copy)]
pub struct Note {
    /// Its id, as `calc` and `explain` know it.
    pub id: &'static str,
    /// What it gives, in words.
    pub title: &'static str,
    /// The equation as an engineer writes it, with the symbols of `inputs`.
    pub equation: &'static str,
    /// Each argument in order: its symbol in the equation, and its name as `calc` takes it (kebab-case).
    pub inputs: &'static [(&'static str, &'static str)],
    /// Where it holds, and what it gives elsewhere.
    pub validity: &'static str,
    /// Where it comes from.
    pub sources: &'static [Source],
}

/// A formula: what it is, and the function that works it out.
#[derive(Debug, Clone, Copy)]
pub struct Formula<F: 'static> {
    /// What a reader is told.
    pub note: Note,
    /// The function.
    pub apply: F,
}

/// The most phases that a duty may have.
pub const MOST_PHASES: usize = 164;

/// How many values a series holds in place; more stand apart.
pub(crate) const IN_PLACE: usize = 32;

/// A list of quantities, one for each phase of the duty.
#[derive(Debug, Clone)]
pub struct Series<Q> {
    values: [f64; IN_PLACE],
    count: usize,
    apart: Option<Box<[f64]>>,
    quantity: PhantomData<Q>,
}

impl<Q: Measure> Series<Q> {
    /// The series of these SI values; no more than [`MOST_PHASES`] are kept.
    pub fn of_si(values: &[f64]) -> Series<Q> {
        Series::filled(values.len(), |index| values[index])
    }

    /// The series whose SI values a function of the index gives; no more than [`MOST_PHASES`] are kept.
    #[inline(always)]
    pub fn filled(count: usize, value: impl Fn(usize) -> f64) -> Series<Q> {
        let count = count.min(MOST_PHASES);
        let mut series = Series { values: [0.0; IN_PLACE], count, apart: None, quantity: PhantomData };
        if count > IN_PLACE {
            series.apart = Some((0..count).map(value).collect());
        } else {
            for (index, place) in series.values.iter_mut().enumerate().take(count) {
                *place = value(index);
            }
        }
        series
    }

    /// The series of the first of these SI values.
    #[inline(always)]
    pub(crate) fn first_of(values: &[f64; IN_PLACE], count: usize) -> Series<Q> {
        Series { values: *values, count: count.min(IN_PLACE), apart: None, quantity: PhantomData }
    }

    /// The SI values.
    #[inline(always)]
    pub fn si(&self) -> &[f64] {
        match &self.apart {
            Some(apart) => apart,
            None => &self.values[..self.count],
        }
    }
}
