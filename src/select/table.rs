//! The machine as plain numbers: the columns of each axis, and the limits as linear rows over them.
//!
//! Method: purchase, squared error and power add up over the axes; what an axis carries less the most, or the least less
//! what it carries, of the column chosen add up too. So every limit but those of models is a row that sums one number of
//! each axis and may not exceed a bound. Rows are scaled to like size and a hair looser than the direct evaluation, which
//! alone decides. Limits: columns of a merit that is not known are left out; the search asks for them apart.

use super::Machine;
use super::check::MASS_TOLERANCE;
use crate::search::{Attributes, Offer};
use crate::units::Measure;

/// One column.
#[derive(Debug, Clone)]
pub struct Column {
    /// Its place in what the axis offers.
    pub place: usize,
    /// What is made small.
    pub merit: f64,
    /// What it adds to each row.
    pub uses: Vec<f64>,
    /// Place of its motor's model among those of the machine.
    pub motor: usize,
    /// Place of its gearbox's model; none without one.
    pub gearbox: Option<usize>,
}

/// The machine as numbers.
#[derive(Debug, Clone)]
pub struct Table {
    /// The columns of each axis.
    pub axes: Vec<Vec<Column>>,
    /// What each row may come to.
    pub bounds: Vec<f64>,
    /// Motor models that are allowed, where they are limited.
    pub motors: Option<usize>,
    /// Gearbox models that are allowed, where they are limited.
    pub gearboxes: Option<usize>,
    /// How many models of motors and of gearboxes there are.
    pub models: (usize, usize),
}

/// Rows are looser than the direct evaluation by this share of their limit.
const LOOSE: f64 = 4e-9;

/// Stands for a carried mass that has no end, in units of what is carried.
const ENDLESS: f64 = 1e6;

type Use<'m> = Box<dyn Fn(usize, &Offer) -> f64 + 'm>;

impl Table {
    /// The columns that are allowed, as numbers; `value` is what is made small.
    pub fn new(machine: &Machine<'_>, allowed: &[Vec<usize>], value: &dyn Fn(&Attributes) -> f64) -> Table {
        let (rows, bounds): (Vec<Use<'_>>, Vec<f64>) = rows(machine).into_iter().unzip();
        let models = |of: fn(&Attributes) -> u64| {
            let offers = machine.offers.iter().zip(allowed);
            let all = offers.flat_map(|(offer, places)| places.iter().map(|&place| of(&offer[place].found.attributes)));
            let mut all: Vec<u64> = all.filter(|&model| model != 0).collect();
            all.sort_unstable();
            all.dedup();
            all
        };
        let (motors, gearboxes) = (models(|attributes| attributes.motor), models(|attributes| attributes.gearbox));
        let column = |axis: usize, place: usize| {
            let offer = &machine.offers[axis][place];
            let attributes = &offer.found.attributes;
            Column {
                place,
                merit: value(attributes),
                uses: rows.iter().map(|row| row(axis, offer)).collect(),
                motor: motors.binary_search(&attributes.motor).unwrap_or(0),
                gearbox: gearboxes.binary_search(&attributes.gearbox).ok(),
            }
        };
        let known = |column: &Column| column.merit.is_finite() && column.uses.iter().all(|used| used.is_finite());
        let axes = allowed
            .iter()
            .enumerate()
            .map(|(axis, places)| places.iter().map(|&place| column(axis, place)).filter(known).collect())
            .collect();
        let limit = |limit: Option<u32>| limit.map(|limit| limit as usize);
        Table {
            axes,
            bounds,
            motors: limit(machine.limits.motor_models),
            gearboxes: limit(machine.limits.gearbox_models),
            models: (motors.len(), gearboxes.len()),
        }
    }

    /// No machine costs more than this.
    pub fn ceiling(&self) -> f64 {
        let most = |columns: &Vec<Column>| columns.iter().map(|column| column.merit).fold(f64::NEG_INFINITY, larger);
        self.axes.iter().map(most).sum()
    }

    /// The places of a choice of columns.
    pub fn places(&self, choice: &[usize]) -> Vec<usize> {
        choice.iter().zip(&self.axes).map(|(&column, columns)| columns[column].place).collect()
    }
}

/// The larger of two numbers.
pub fn larger(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// Every row with its bound.
fn rows<'m>(machine: &'m Machine<'_>) -> Vec<(Use<'m>, f64)> {
    let limits = &machine.limits;
    let mut rows: Vec<(Use<'m>, f64)> = Vec::new();
    let mut limit = |limit: Option<f64>, of: fn(&Attributes) -> f64| {
        if let Some(limit) = limit {
            // a limit of nothing leaves the numbers as they are
            let scale = if limit > 0.0 { limit } else { 1.0 };
            let used: Use<'m> = Box::new(move |_, offer| of(&offer.found.attributes) / scale);
            rows.push((used, limit / scale * (1.0 + LOOSE)));
        }
    };
    limit(limits.purchase.map(|limit| limit.0), |attributes| attributes.purchase);
    let squared = limits.tool_point_error.map(|limit| limit.si() * limit.si());
    limit(squared, |attributes| attributes.error * attributes.error);
    limit(limits.supply_power.map(|limit| limit.si()), |attributes| attributes.power);
    for axis in 0..machine.offers.len() {
        let below = machine.subtree(axis);
        if below.is_empty() {
            continue;
        }
        let fixed: f64 = below.iter().map(|&carried| machine.brief.axes[carried].moved_mass.si()).sum();
        let scale = larger(fixed, 1.0);
        let slack = 2.0 * MASS_TOLERANCE / scale;
        let end = move |value: f64| if value.is_finite() { value / scale } else { ENDLESS.copysign(value) };
        let (rides, least_rides) = (below.clone(), below);
        let most: Use<'m> = Box::new(move |other, offer| match other {
            other if other == axis => -end(offer.most),
            other if rides.contains(&other) => offer.found.attributes.mass / scale,
            _ => 0.0,
        });
        let least: Use<'m> = Box::new(move |other, offer| match other {
            other if other == axis => end(offer.least),
            other if least_rides.contains(&other) => -offer.found.attributes.mass / scale,
            _ => 0.0,
        });
        rows.push((most, slack - fixed / scale));
        rows.push((least, slack + fixed / scale));
    }
    rows
}
