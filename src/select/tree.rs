//! An exact search over the axes that keeps the k best machines: decides between equals by a fixed order and checks what
//! the solver says.
//!
//! Method: the axes are taken one by one, those with the fewest columns of interest first, the columns of an axis by their
//! priced merit. A branch is left where the prices on the limits put every machine in it above the k best found, where a
//! row cannot be kept with the least that the other axes may add, or where models run out; once as many models are in use as
//! are allowed, the other axes are bounded by the columns of these models alone. Of machines that cost the same, those
//! whose columns come first are kept; nothing that ties is left out.
//! Limits: it gives up after a fixed number of nodes and says so; the count does not depend on the computer.

use super::Machine;
use super::dual::{Prices, kept_by};
use super::table::{Table, larger};

/// Nodes after which it gives up.
const MOST_NODES: u64 = 3_000_000;
/// Sets of prices that bound a branch.
const BOUNDS: usize = 4;

/// What the search found.
pub struct Tree {
    /// The best machines: what each costs, and the place of the column of each axis.
    pub best: Vec<(f64, Vec<usize>)>,
    /// Whether every branch was seen or shown to hold nothing better.
    pub complete: bool,
}

/// What to search for.
pub struct Wanted<'w> {
    /// How many machines.
    pub count: usize,
    /// Machines that are known; they bound the search.
    pub known: &'w [(f64, Vec<usize>)],
    /// Whether a choice of places may stand.
    pub allows: &'w dyn Fn(&[usize]) -> bool,
    /// What a choice of places costs.
    pub cost: &'w dyn Fn(&[usize]) -> f64,
}

/// The least of each axis for each model, for one kind of part.
struct ByModel {
    limit: Option<usize>,
    /// For each axis and model; the last entry is that of columns without such a part.
    least: Vec<Vec<f64>>,
}

impl ByModel {
    fn new(table: &Table, prices: &Prices, limit: Option<usize>, models: usize, gearbox: bool) -> ByModel {
        let mut least = vec![vec![f64::INFINITY; models + 1]; table.axes.len()];
        for (axis, columns) in table.axes.iter().enumerate() {
            for (column, priced) in columns.iter().zip(&prices.priced[axis]) {
                let model = if gearbox { column.gearbox.unwrap_or(models) } else { column.motor };
                if *priced < least[axis][model] {
                    least[axis][model] = *priced;
                }
            }
        }
        ByModel { limit, least }
    }

    /// The least of an axis if only the models in use may serve; nothing where more are allowed.
    fn bound(&self, axis: usize, used: &[usize]) -> Option<f64> {
        self.limit.filter(|&limit| used.len() >= limit)?;
        let least = &self.least[axis];
        let without = least.last().copied().unwrap_or(f64::INFINITY);
        Some(used.iter().map(|&model| least[model]).fold(without, |a, b| if b < a { b } else { a }))
    }
}

struct Search<'t, 'm> {
    machine: &'t Machine<'m>,
    table: &'t Table,
    wanted: &'t Wanted<'t>,
    prices: &'t [Prices],
    /// The axes in the order in which they are taken.
    order: Vec<usize>,
    /// The columns of each axis, by priced merit.
    columns: Vec<Vec<usize>>,
    /// For each set of prices and depth, the least that the axes from there on can add, less what the rows are worth.
    rest: Vec<Vec<f64>>,
    /// For each depth and row, the least that the axes from there on add to it.
    rows: Vec<Vec<f64>>,
    motors: ByModel,
    gearboxes: ByModel,
    best: Vec<(f64, Vec<usize>)>,
    nodes: u64,
    /// No machine costs more than this.
    ceiling: f64,
    /// Rounding of the bounds, which may be differences of large numbers.
    slack: f64,
}

/// A branch on the way down.
struct Branch {
    choice: Vec<usize>,
    priced: Vec<f64>,
    rows: Vec<f64>,
    motors: Vec<usize>,
    gearboxes: Vec<usize>,
}

/// Searches these columns of the table.
pub fn search(
    machine: &Machine<'_>,
    table: &Table,
    stay: &[Vec<usize>],
    prices: &[Prices],
    wanted: &Wanted<'_>,
) -> Tree {
    let mut best: Vec<(f64, Vec<usize>)> = Vec::new();
    for (_, places) in wanted.known {
        keep(&mut best, (wanted.cost)(places), places.clone(), wanted.count);
    }
    if stay.iter().any(Vec::is_empty) || wanted.count == 0 || prices.is_empty() {
        return Tree { best, complete: true };
    }
    let prices = &prices[..prices.len().min(BOUNDS)];
    let axes = table.axes.len();
    let mut order: Vec<usize> = (0..axes).collect();
    order.sort_by_key(|&axis| stay[axis].len());
    let columns: Vec<Vec<usize>> = stay
        .iter()
        .enumerate()
        .map(|(axis, places)| {
            let mut sorted = places.clone();
            let priced = &prices[0].priced[axis];
            sorted.sort_by(|&a, &b| priced[a].total_cmp(&priced[b]).then_with(|| a.cmp(&b)));
            sorted
        })
        .collect();
    let least = |axis: usize, of: &dyn Fn(usize) -> f64| {
        stay[axis].iter().map(|&column| of(column)).fold(f64::INFINITY, |a, b| if b < a { b } else { a })
    };
    let suffix = |of: &dyn Fn(usize, usize) -> f64| {
        let mut sums = vec![0.0; axes + 1];
        for depth in (0..axes).rev() {
            sums[depth] = sums[depth + 1] + least(order[depth], &|column| of(order[depth], column));
        }
        sums
    };
    let rest = prices
        .iter()
        .map(|prices| {
            let sums = suffix(&|axis, column| prices.priced[axis][column]);
            sums.into_iter().map(|sum| sum - prices.worth).collect()
        })
        .collect();
    let by_row: Vec<Vec<f64>> =
        (0..table.bounds.len()).map(|row| suffix(&|axis, column| table.axes[axis][column].uses[row])).collect();
    let rows = (0..=axes).map(|depth| by_row.iter().map(|sums| sums[depth]).collect()).collect();
    let motors = ByModel::new(table, &prices[0], table.motors, table.models.0, false);
    let gearboxes = ByModel::new(table, &prices[0], table.gearboxes, table.models.1, true);
    let slack = prices.iter().map(|prices| 1e-12 * prices.worth.abs()).fold(0.0, larger);
    let ceiling = table.ceiling();
    let ceiling = ceiling + 1e-9 * ceiling.abs() + slack;
    let mut search = Search {
        machine,
        table,
        wanted,
        prices,
        order,
        columns,
        rest,
        rows,
        motors,
        gearboxes,
        best,
        nodes: 0,
        ceiling,
        slack,
    };
    let mut branch = Branch {
        choice: vec![0; axes],
        priced: vec![0.0; search.prices.len()],
        rows: vec![0.0; table.bounds.len()],
        motors: Vec::new(),
        gearboxes: Vec::new(),
    };
    let complete = search.onward(0, &mut branch);
    Tree { best: search.best, complete }
}

/// Keeps the best; of equals those whose columns come first.
pub fn keep(best: &mut Vec<(f64, Vec<usize>)>, cost: f64, places: Vec<usize>, count: usize) {
    let entry = (cost, places);
    let order = |a: &(f64, Vec<usize>), b: &(f64, Vec<usize>)| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(&b.1));
    if let Err(place) = best.binary_search_by(|other| order(other, &entry)) {
        best.insert(place, entry);
        best.truncate(count);
    }
}

impl Search<'_, '_> {
    /// What a branch may cost and still matter; a hair more, so that rounding cuts nothing that ties.
    fn cutoff(&self) -> f64 {
        match self.best.get(self.wanted.count - 1) {
            Some((cost, _)) => cost + 1e-9 * cost.abs() + self.slack,
            None => self.ceiling,
        }
    }

    /// The least that the axes from this depth on can add, with the models in use.
    fn with_models(&self, depth: usize, branch: &Branch) -> f64 {
        let mut sum = 0.0;
        for &axis in &self.order[depth..] {
            let own = self.prices[0].least[axis];
            let motors = self.motors.bound(axis, &branch.motors).unwrap_or(own);
            let gearboxes = self.gearboxes.bound(axis, &branch.gearboxes).unwrap_or(own);
            sum += larger(own, larger(motors, gearboxes));
        }
        sum - self.prices[0].worth
    }

    /// Returns whether the branch was seen to its end.
    fn onward(&mut self, depth: usize, branch: &mut Branch) -> bool {
        if depth == self.order.len() {
            let places = self.table.places(&branch.choice);
            if (self.wanted.allows)(&places) && kept_by(self.machine, &places).is_some() {
                let cost = (self.wanted.cost)(&places);
                keep(&mut self.best, cost, places, self.wanted.count);
            }
            return true;
        }
        let axis = self.order[depth];
        let limited = self.motors.limit.is_some() || self.gearboxes.limit.is_some();
        for index in 0..self.columns[axis].len() {
            self.nodes += 1;
            if self.nodes > MOST_NODES {
                return false;
            }
            let place = self.columns[axis][index];
            let cutoff = self.cutoff();
            let dearer =
                |set: usize| branch.priced[set] + self.prices[set].priced[axis][place] + self.rest[set][depth + 1];
            // columns come in rising order of the first prices
            if dearer(0) > cutoff {
                break;
            }
            if (1..self.prices.len()).any(|set| dearer(set) > cutoff) {
                continue;
            }
            let column = &self.table.axes[axis][place];
            let over = |row: usize| {
                branch.rows[row] + column.uses[row] + self.rows[depth + 1][row]
                    > self.table.bounds[row] + 1e-12 * larger(1.0, branch.rows[row].abs())
            };
            if (0..self.table.bounds.len()).any(over) {
                continue;
            }
            let motor = !branch.motors.contains(&column.motor);
            let gearbox = column.gearbox.filter(|gearbox| !branch.gearboxes.contains(gearbox));
            let full = |limit: Option<usize>, used: usize| limit.is_some_and(|limit| used >= limit);
            if (motor && full(self.motors.limit, branch.motors.len()))
                || (gearbox.is_some() && full(self.gearboxes.limit, branch.gearboxes.len()))
            {
                continue;
            }
            if motor {
                branch.motors.push(column.motor);
            }
            branch.gearboxes.extend(gearbox);
            let complete = if limited
                && branch.priced[0] + self.prices[0].priced[axis][place] + self.with_models(depth + 1, branch) > cutoff
            {
                true
            } else {
                self.descend(depth, axis, place, branch)
            };
            if motor {
                branch.motors.pop();
            }
            if gearbox.is_some() {
                branch.gearboxes.pop();
            }
            if !complete {
                return false;
            }
        }
        true
    }

    fn descend(&mut self, depth: usize, axis: usize, place: usize, branch: &mut Branch) -> bool {
        let before = (branch.priced.clone(), branch.rows.clone());
        branch.choice[axis] = place;
        for (sum, prices) in branch.priced.iter_mut().zip(self.prices) {
            *sum += prices.priced[axis][place];
        }
        for (sum, used) in branch.rows.iter_mut().zip(&self.table.axes[axis][place].uses) {
            *sum += used;
        }
        let complete = self.onward(depth + 1, branch);
        (branch.priced, branch.rows) = before;
        complete
    }
}
