//! The best machines of some columns, in order: prices, reduction and search put together.
//!
//! Method: the prices climb, the machines found on the way and their neighbours of one exchange bound what is sought, the
//! columns that cannot be in it fall, and the tree searches the rest. Columns of a merit that is not known come last and
//! only where the others do not give enough machines; such machines are in the order of their columns.

use super::table::Table;
use super::{Machine, dual, tree};

/// Machines in order.
pub(super) struct Ranked {
    /// What each costs, and the place of the column of each axis.
    pub best: Vec<(f64, Vec<usize>)>,
    /// Whether no other machine comes before any of them.
    pub complete: bool,
    /// The columns that a machine as good as the last of them may hold.
    pub kept: Vec<Vec<usize>>,
}

impl Machine<'_> {
    /// The best `count` machines of the columns that are allowed, without those refused. With `exhaustive` no column falls
    /// before the search.
    pub(super) fn ranked(
        &self,
        allowed: &[Vec<usize>],
        count: usize,
        refused: &[Vec<usize>],
        exhaustive: bool,
    ) -> Ranked {
        let cost = |places: &[usize]| self.objective(places);
        let allows = |places: &[usize]| !refused.iter().any(|cut| cut == places);
        let table = Table::new(self, allowed, &|attributes| attributes.merit);
        let mut ranked = self.of_table(&table, count, &allows, &cost, exhaustive);
        let unknown = |(axis, places): (usize, &Vec<usize>)| {
            places.iter().any(|&place| !self.offers[axis][place].found.attributes.merit.is_finite())
        };
        if ranked.best.len() < count && ranked.complete && allowed.iter().enumerate().any(unknown) {
            let found = ranked.best.clone();
            let further =
                |places: &[usize]| allows(places) && !found.iter().any(|(_, known)| known.as_slice() == places);
            let table = Table::new(self, allowed, &|_| 0.0);
            let more = self.of_table(&table, count - found.len(), &further, &|_| 0.0, exhaustive);
            ranked.best.extend(more.best.into_iter().map(|(_, places)| (self.objective(&places), places)));
            ranked.complete = more.complete;
        }
        ranked
    }

    fn of_table(
        &self,
        table: &Table,
        count: usize,
        allows: &dyn Fn(&[usize]) -> bool,
        cost: &dyn Fn(&[usize]) -> f64,
        exhaustive: bool,
    ) -> Ranked {
        if table.axes.iter().any(Vec::is_empty) {
            return Ranked { best: Vec::new(), complete: true, kept: vec![Vec::new(); table.axes.len()] };
        }
        let dual = dual::climb(self, table, allows);
        let mut known: Vec<(f64, Vec<usize>)> = Vec::new();
        for (_, places) in dual.machines.iter().take(count) {
            tree::keep(&mut known, cost(places), places.clone(), count);
        }
        if count > 1
            && let Some((_, best)) = dual.machines.first()
        {
            self.neighbours(table, best, &mut |places| {
                if allows(places) {
                    tree::keep(&mut known, cost(places), places.to_vec(), count);
                }
            });
        }
        let ceiling = table.ceiling();
        let most = |best: &[(f64, Vec<usize>)]| best.get(count - 1).map_or(ceiling, |(cost, _)| *cost);
        let stay = |most: f64| dual::stay(table, &dual, most + 1e-9 * most.abs());
        let columns = if exhaustive {
            table.axes.iter().map(|columns| (0..columns.len()).collect()).collect()
        } else {
            stay(most(&known))
        };
        let wanted = tree::Wanted { count, known: &known, allows, cost };
        let tree = tree::search(self, table, &columns, &dual.prices, &wanted);
        let kept = stay(most(&tree.best));
        let places = |(axis, columns): (usize, &Vec<usize>)| {
            columns.iter().map(|&column| table.axes[axis][column].place).collect()
        };
        Ranked { best: tree.best, complete: tree.complete, kept: kept.iter().enumerate().map(places).collect() }
    }

    /// Every machine that keeps everything and differs from this one in one drive.
    fn neighbours(&self, table: &Table, of: &[usize], take: &mut dyn FnMut(&[usize])) {
        let mut places = of.to_vec();
        for (axis, columns) in table.axes.iter().enumerate() {
            let before = places[axis];
            for column in columns.iter().filter(|column| column.place != before) {
                places[axis] = column.place;
                if dual::kept_by(self, &places).is_some() {
                    take(&places);
                }
            }
            places[axis] = before;
        }
    }
}
