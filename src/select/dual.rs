//! Prices on the limits: a bound from below for every machine, columns that none of interest can hold, and good machines.
//!
//! Method: with a price on each row, the sum over the axes of the least priced merit, less the priced bounds, is below
//! every machine that keeps the rows (Lagrangian relaxation). The prices climb along the rows' excess (subgradient, step
//! after Polyak) in a fixed number of steps. The choice that is best at some prices, mended by exchanging one drive at a
//! time, gives machines. A column whose reduced cost lifts a bound above what is sought falls. Exact for any prices;
//! limits of models count in mending and in the search only.

use super::Machine;
use super::check::{Needs, needs};
use super::table::{Table, larger};

/// Steps of the climb.
const STEPS: usize = 120;
/// Every so many steps the prices are kept for dropping columns.
const KEEP_EVERY: usize = 12;
/// Choices that are mended.
const MENDED: usize = 10;
/// Exchanges at the most when a choice is mended.
const EXCHANGES: usize = 60;

/// One set of prices.
#[derive(Debug, Clone)]
pub struct Prices {
    /// The priced merit of each column.
    pub priced: Vec<Vec<f64>>,
    /// The least of each axis.
    pub least: Vec<f64>,
    /// What the bounds of the rows are worth.
    pub worth: f64,
}

impl Prices {
    fn new(table: &Table, prices: &[f64]) -> Prices {
        let priced: Vec<Vec<f64>> = table
            .axes
            .iter()
            .map(|columns| {
                let of = |uses: &[f64]| -> f64 { prices.iter().zip(uses).map(|(price, used)| price * used).sum() };
                columns.iter().map(|column| column.merit + of(&column.uses)).collect()
            })
            .collect();
        let least = priced.iter().map(|priced| priced.iter().copied().fold(f64::INFINITY, smaller)).collect();
        let worth = prices.iter().zip(&table.bounds).map(|(price, bound)| price * bound).sum();
        Prices { priced, least, worth }
    }

    /// No machine that keeps the rows is below this.
    pub fn bound(&self) -> f64 {
        self.least.iter().sum::<f64>() - self.worth
    }

    fn best(&self) -> Vec<usize> {
        let first =
            |priced: &Vec<f64>| (0..priced.len()).min_by(|&a, &b| priced[a].total_cmp(&priced[b])).unwrap_or_default();
        self.priced.iter().map(first).collect()
    }
}

fn smaller(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// What the climb leaves.
pub struct Dual {
    /// Prices that were kept, the best first; the second are zero.
    pub prices: Vec<Prices>,
    /// Machines that keep everything, the best first: what they cost, and their places.
    pub machines: Vec<(f64, Vec<usize>)>,
}

/// Climbs, and gathers machines on the way. `allows` says whether a choice of places may stand.
pub fn climb(machine: &Machine<'_>, table: &Table, allows: &dyn Fn(&[usize]) -> bool) -> Dual {
    let rows = table.bounds.len();
    let spread = table.axes.iter().map(|columns| {
        let merits = columns.iter().map(|column| column.merit);
        merits.clone().fold(f64::NEG_INFINITY, larger) - merits.fold(f64::INFINITY, smaller)
    });
    let spread: f64 = spread.sum();
    let ceiling = table.ceiling();
    let zero = Prices::new(table, &vec![0.0; rows]);
    let mut found = Found { machine, table, allows, machines: Vec::new() };
    found.take(&zero.best());
    let mut seen = vec![zero.best()];
    let mut kept: Vec<Prices> = Vec::new();
    let mut best = zero.clone();
    let mut prices = vec![0.0; rows];
    let mut now = zero.clone();
    let mut share = 1.0;
    let mut idle = 0;
    for step in 0..if rows > 0 { STEPS } else { 0 } {
        let choice = now.best();
        let excess: Vec<f64> = (0..rows)
            .map(|row| {
                let used = choice.iter().zip(&table.axes).map(|(&column, columns)| columns[column].uses[row]);
                used.sum::<f64>() - table.bounds[row]
            })
            .collect();
        // where a row is kept and has no price, its slack says nothing of the way to climb
        let counts = |row: usize| excess[row] > 0.0 || prices[row] > 0.0;
        let length: f64 = (0..rows).filter(|&row| counts(row)).map(|row| excess[row] * excess[row]).sum();
        if length <= 1e-24 {
            break;
        }
        let aim = found.machines.first().map_or(best.bound() + 0.1 * spread, |machine| machine.0);
        let step_length = share * larger(aim - now.bound(), 1e-6 * spread) / length;
        let priced: Vec<usize> = (0..rows).filter(|&row| counts(row)).collect();
        for row in priced {
            prices[row] = larger(prices[row] + step_length * excess[row], 0.0);
        }
        now = Prices::new(table, &prices);
        if now.bound() > best.bound() {
            best = now.clone();
            idle = 0;
        } else {
            idle += 1;
            if idle >= 6 {
                share *= 0.6;
                idle = 0;
            }
        }
        let choice = now.best();
        if !seen.contains(&choice) {
            found.take(&choice);
            seen.push(choice);
        }
        if step % KEEP_EVERY == 0 {
            kept.push(now.clone());
        }
        if best.bound() > ceiling {
            // even the dearest machine would be below the bound: there is none
            break;
        }
    }
    let from = seen.len().saturating_sub(MENDED);
    let of_few_models = few_models(table, &best);
    for choice in seen.iter().take(1).chain(&seen[from..]).chain(&of_few_models) {
        found.mend(choice.clone());
    }
    kept.insert(0, zero);
    kept.insert(0, best);
    Dual { prices: kept, machines: found.machines }
}

/// Sets of motor models that are tried.
const MOST_SETS: usize = 20_000;

/// Where motor models are limited: the best priced choices that hold to a set of them, for the best sets.
fn few_models(table: &Table, prices: &Prices) -> Vec<Vec<usize>> {
    let models = table.models.0;
    let Some(allowed) = table.motors.filter(|&allowed| allowed > 0 && allowed < models) else { return Vec::new() };
    let sets = (0..allowed).try_fold(1_usize, |sets, k| sets.checked_mul(models - k).map(|sets| sets / (k + 1)));
    if sets.is_none_or(|sets| sets > MOST_SETS) {
        return Vec::new();
    }
    // the best column of each axis for each model
    let mut best: Vec<Vec<Option<usize>>> = vec![vec![None; models]; table.axes.len()];
    for ((columns, priced), best) in table.axes.iter().zip(&prices.priced).zip(&mut best) {
        for (place, column) in columns.iter().enumerate() {
            let known = &mut best[column.motor];
            if known.is_none_or(|known| priced[place] < priced[known]) {
                *known = Some(place);
            }
        }
    }
    let mut set: Vec<usize> = (0..allowed).collect();
    let mut ranked: Vec<(f64, Vec<usize>)> = Vec::new();
    loop {
        let choice: Option<Vec<usize>> = best
            .iter()
            .zip(&prices.priced)
            .map(|(best, priced)| {
                set.iter().filter_map(|&model| best[model]).min_by(|&a, &b| priced[a].total_cmp(&priced[b]))
            })
            .collect();
        if let Some(choice) = choice {
            let cost = choice.iter().zip(&prices.priced).map(|(&column, priced)| priced[column]).sum();
            super::tree::keep(&mut ranked, cost, choice, MENDED);
        }
        // the next set in rising order
        let Some(place) = (0..allowed).rev().find(|&place| set[place] < models - allowed + place) else { break };
        set[place] += 1;
        for after in place + 1..allowed {
            set[after] = set[after - 1] + 1;
        }
    }
    ranked.into_iter().map(|(_, choice)| choice).collect()
}

/// Machines found so far.
struct Found<'f, 'm> {
    machine: &'f Machine<'m>,
    table: &'f Table,
    allows: &'f dyn Fn(&[usize]) -> bool,
    machines: Vec<(f64, Vec<usize>)>,
}

impl Found<'_, '_> {
    fn merit(&self, choice: &[usize]) -> f64 {
        choice.iter().zip(&self.table.axes).map(|(&column, columns)| columns[column].merit).sum()
    }

    /// Takes a choice in if it keeps everything.
    fn take(&mut self, choice: &[usize]) {
        let places = self.table.places(choice);
        if !(self.allows)(&places) || !needs(self.machine, &places).keep_all() {
            return;
        }
        let entry = (self.merit(choice), places);
        let order = |a: &(f64, Vec<usize>), b: &(f64, Vec<usize>)| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1));
        if let Err(place) = self.machines.binary_search_by(|other| order(other, &entry)) {
            self.machines.insert(place, entry);
        }
    }

    /// How far a choice is from keeping the rows and the limits of models.
    fn excess(&self, sums: &[f64], choice: &[usize]) -> f64 {
        let rows = sums.iter().zip(&self.table.bounds).map(|(sum, bound)| larger(sum - bound, 0.0)).sum::<f64>();
        let models = |limit: Option<usize>, of: &dyn Fn(usize) -> Option<usize>| {
            let Some(limit) = limit else { return 0.0 };
            let mut used: Vec<usize> = (0..choice.len()).filter_map(of).collect();
            used.sort_unstable();
            used.dedup();
            used.len().saturating_sub(limit) as f64
        };
        let column = |axis: usize| &self.table.axes[axis][choice[axis]];
        rows + models(self.table.motors, &|axis| Some(column(axis).motor))
            + models(self.table.gearboxes, &|axis| column(axis).gearbox)
    }

    /// Exchanges one drive at a time, first towards keeping everything, then towards less.
    fn mend(&mut self, mut choice: Vec<usize>) {
        let rows = self.table.bounds.len();
        let mut sums = vec![0.0; rows];
        for (&column, columns) in choice.iter().zip(&self.table.axes) {
            for (sum, used) in sums.iter_mut().zip(&columns[column].uses) {
                *sum += used;
            }
        }
        let mut now = (self.excess(&sums, &choice), self.merit(&choice));
        let mut exchanged: Vec<f64> = Vec::with_capacity(rows);
        for _ in 0..EXCHANGES {
            let mut best: Option<Exchange> = None;
            for axis in 0..choice.len() {
                let (before, own) = (choice[axis], &self.table.axes[axis][choice[axis]]);
                for (column, other) in self.table.axes[axis].iter().enumerate() {
                    let merit = now.1 - own.merit + other.merit;
                    // once everything is kept, only what costs less matters
                    if now.0 <= 0.0 && merit >= now.1 - 1e-12 * now.1.abs() {
                        continue;
                    }
                    if best.as_ref().is_some_and(|best| !best.key.0 && merit >= best.key.1) {
                        continue;
                    }
                    let uses = own.uses.iter().zip(&other.uses);
                    exchanged.clear();
                    exchanged.extend(sums.iter().zip(uses).map(|(sum, (own, other))| sum - own + other));
                    choice[axis] = column;
                    let excess = self.excess(&exchanged, &choice);
                    let dearer = larger(merit - now.1, 1e-9 * now.1.abs());
                    let key = if excess > 0.0 { (true, (excess - now.0) / dearer) } else { (false, merit) };
                    let towards = excess <= 0.0 || excess < now.0 - 1e-12;
                    if towards && best.as_ref().is_none_or(|best| key < best.key) {
                        best = Some(Exchange { key, reached: (excess, merit), axis, column });
                    }
                }
                choice[axis] = before;
            }
            let Some(Exchange { reached, axis, column, .. }) = best else { break };
            let (own, other) = (&self.table.axes[axis][choice[axis]].uses, &self.table.axes[axis][column].uses);
            for (sum, (own, other)) in sums.iter_mut().zip(own.iter().zip(other)) {
                *sum += other - own;
            }
            choice[axis] = column;
            now = reached;
            if now.0 <= 0.0 {
                self.take(&choice);
            }
        }
    }
}

/// One drive exchanged.
struct Exchange {
    /// Whether something is still exceeded; then the excess per merit that it costs, else the merit.
    key: (bool, f64),
    /// The excess and the merit.
    reached: (f64, f64),
    axis: usize,
    column: usize,
}

/// The columns of each axis that a machine of at most this much may hold, as places in the table.
pub fn stay(table: &Table, dual: &Dual, most: f64) -> Vec<Vec<usize>> {
    let stays = |axis: usize, column: usize| {
        let bound = |prices: &Prices| prices.bound() - prices.least[axis] + prices.priced[axis][column];
        !dual.prices.iter().any(|prices| bound(prices) > most + 1e-12 * prices.worth.abs())
    };
    (0..table.axes.len())
        .map(|axis| (0..table.axes[axis].len()).filter(|&column| stays(axis, column)).collect())
        .collect()
}

/// What a choice needs, where it keeps everything.
pub fn kept_by(machine: &Machine<'_>, places: &[usize]) -> Option<Needs> {
    Some(needs(machine, places)).filter(Needs::keep_all)
}
