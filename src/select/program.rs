//! The integer program, written for good_lp and solved by microlp.

use super::Machine;
use super::check::MASS_TOLERANCE;
use crate::units::Measure;
use good_lp::solvers::microlp::microlp;
use good_lp::{
    Expression, ResolutionError, Solution, SolutionStatus, SolverModel, Variable, WithTimeLimit, constraint, variable,
    variables,
};
use std::collections::BTreeMap;

/// Seconds after which the solver gives up; the answer then counts as not proven.
const MOST_SECONDS: f64 = 10.0;

/// What the solver says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Solved {
    /// A choice, and whether it is proven best.
    Picks {
        /// The column of each axis.
        picks: Vec<usize>,
        /// Whether the solver proved it.
        proven: bool,
    },
    /// No choice keeps all rows.
    Infeasible,
    /// No answer in time, or a fault of the solver.
    NotProven,
}

/// Solves the program over the columns that were kept.
pub fn solve(machine: &Machine<'_>, kept: &[Vec<usize>], cuts: &[Vec<usize>]) -> Solved {
    if kept.iter().any(Vec::is_empty) {
        return Solved::Infeasible;
    }
    let finite = |axis: usize, column: usize| machine.offers[axis][column].found.attributes.merit.is_finite();
    let mut vars = variables!();
    let binaries: Vec<Vec<(usize, Variable)>> = kept
        .iter()
        .enumerate()
        .map(|(axis, columns)| {
            let known = columns.iter().filter(|&&column| finite(axis, column));
            known.map(|&column| (column, vars.add(variable().binary()))).collect()
        })
        .collect();
    let motors = model_switches(machine, &binaries, &mut vars, |attributes| attributes.motor);
    let gearboxes = model_switches(machine, &binaries, &mut vars, |attributes| attributes.gearbox);
    let total = |of: &dyn Fn(&crate::search::Attributes) -> f64| -> Expression {
        let terms = binaries.iter().enumerate().flat_map(|(axis, columns)| {
            columns.iter().map(move |&(column, x)| (x, &machine.offers[axis][column].found.attributes))
        });
        terms.map(|(x, attributes)| of(attributes) * x).sum()
    };
    let limits = &machine.limits;
    let mut model = vars.minimise(total(&|attributes| attributes.merit)).using(microlp).with_time_limit(MOST_SECONDS);
    for columns in &binaries {
        model = model.with(constraint!(columns.iter().map(|&(_, x)| x).sum::<Expression>() == 1.0));
    }
    for axis in 0..kept.len() {
        model = carried_rows(machine, axis, &binaries, model);
    }
    // rows are scaled by their limits, so that all are of like size
    let mut rows: Vec<(Expression, f64)> = Vec::new();
    if let Some(limit) = limits.purchase {
        rows.push((total(&|attributes| attributes.purchase / limit.0), 1.0));
    }
    if let Some(limit) = limits.tool_point_error {
        rows.push((total(&|attributes| (attributes.error / limit.si()).powi(2)), 1.0));
    }
    if let Some(limit) = limits.supply_power {
        rows.push((total(&|attributes| attributes.power / limit.si()), 1.0));
    }
    for (limit, switches) in [(limits.motor_models, &motors), (limits.gearbox_models, &gearboxes)] {
        if let Some(limit) = limit {
            rows.push((switches.values().map(|(y, _)| *y).sum(), f64::from(limit)));
            for (y, users) in switches.values() {
                for axis in users {
                    let sum: Expression = axis.iter().copied().sum();
                    rows.push((sum - *y, 0.0));
                }
            }
        }
    }
    for (row, limit) in rows {
        model = model.with(constraint!(row <= limit));
    }
    for cut in cuts {
        let mut same: Vec<Variable> = Vec::new();
        for (axis, &column) in cut.iter().enumerate() {
            same.extend(binaries[axis].iter().filter(|(kept, _)| *kept == column).map(|(_, x)| *x));
        }
        if same.len() == cut.len() {
            let most = cut.len() as f64 - 1.0;
            model = model.with(constraint!(same.into_iter().sum::<Expression>() <= most));
        }
    }
    match model.solve() {
        Ok(solution) => {
            let pick = |columns: &Vec<(usize, Variable)>| {
                columns
                    .iter()
                    .max_by(|a, b| solution.value(a.1).total_cmp(&solution.value(b.1)).then_with(|| b.0.cmp(&a.0)))
                    .map(|&(column, _)| column)
            };
            match binaries.iter().map(pick).collect() {
                Some(picks) => Solved::Picks { picks, proven: matches!(solution.status(), SolutionStatus::Optimal) },
                None => Solved::Infeasible,
            }
        }
        Err(ResolutionError::Infeasible) => Solved::Infeasible,
        Err(_) => Solved::NotProven,
    }
}

type Binaries = [Vec<(usize, Variable)>];
/// For each model its switch, and the binaries that need it, axis by axis.
type Switches = BTreeMap<u64, (Variable, Vec<Vec<Variable>>)>;

fn model_switches(
    machine: &Machine<'_>,
    binaries: &Binaries,
    vars: &mut good_lp::ProblemVariables,
    model_of: fn(&crate::search::Attributes) -> u64,
) -> Switches {
    let mut switches: Switches = BTreeMap::new();
    for (axis, columns) in binaries.iter().enumerate() {
        for &(column, x) in columns {
            let model = model_of(&machine.offers[axis][column].found.attributes);
            if model == 0 {
                continue;
            }
            let (_, users) = switches
                .entry(model)
                .or_insert_with(|| (vars.add(variable().min(0.0).max(1.0)), vec![Vec::new(); binaries.len()]));
            users[axis].push(x);
        }
    }
    switches
}

/// What the axis carries stays within the interval of the column that is chosen.
fn carried_rows<M: SolverModel>(machine: &Machine<'_>, axis: usize, binaries: &Binaries, model: M) -> M {
    let below = machine.subtree(axis);
    if below.is_empty() {
        return model;
    }
    let fixed: f64 = below.iter().map(|&carried| machine.brief.axes[carried].moved_mass.si()).sum();
    let mut carried = Expression::from(fixed);
    for &other in &below {
        for &(column, x) in &binaries[other] {
            carried += machine.offers[other][column].found.attributes.mass * x;
        }
    }
    let bound = |of: fn(&crate::search::Offer) -> f64| -> Expression {
        binaries[axis].iter().map(|&(column, x)| of(&machine.offers[axis][column]) * x).sum()
    };
    let scale = if fixed > 1.0 { fixed } else { 1.0 };
    let (least, most) = (bound(|column| column.least), bound(|column| column.most));
    model
        .with(constraint!((carried.clone() - most) / scale <= MASS_TOLERANCE / scale))
        .with(constraint!((least - carried) / scale <= MASS_TOLERANCE / scale))
}
