//! Along which direction of the machine an axis moves the tool.

use super::defaults;
use super::reader::{Reader, key_below};
use super::types::{Axis, Entry};
use crate::units::Measure;
use crate::yaml::Node;

/// A direction of the machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Along {
    /// First horizontal direction.
    X,
    /// Second horizontal direction.
    Y,
    /// Upright.
    Z,
}

impl Along {
    /// The words of a brief.
    pub const WORDS: [(&'static str, Along); 3] = [("x", Along::X), ("y", Along::Y), ("z", Along::Z)];

    /// Its word.
    pub fn word(self) -> &'static str {
        match self {
            Along::X => "x",
            Along::Y => "y",
            Along::Z => "z",
        }
    }
}

/// Fills in the directions that the brief leaves open: upright axes z; of the horizontal ones the lowest in the order of
/// carrying, and of those the longest, x, the next y, all others x.
pub(super) fn fill_in(axes: &mut [Axis], nodes: &[(String, Node<'_>)], reader: &mut Reader<'_>) {
    let depth = |axis: &Axis| {
        let carriers =
            std::iter::successors(axis.carried_by, |&below| axes.get(below).and_then(|axis| axis.carried_by));
        carriers.take(axes.len()).count()
    };
    // steeper than 45 degrees counts as upright
    let upright = |axis: &Axis| axis.inclination.si().sin().abs() > std::f64::consts::FRAC_1_SQRT_2;
    let mut level: Vec<usize> =
        (0..axes.len()).filter(|&index| !axes[index].along.stated && !upright(&axes[index])).collect();
    level.sort_by(|&one, &other| {
        let (one, other) = (&axes[one], &axes[other]);
        let longer = other.travel.si().total_cmp(&one.travel.si());
        depth(one).cmp(&depth(other)).then(longer).then(one.name.cmp(&other.name))
    });
    let taken = |along: Along| axes.iter().any(|axis| axis.along.stated && axis.along.value == along);
    let mut free = [Along::X, Along::Y].into_iter().filter(|&along| !taken(along));
    let level: Vec<(usize, Along)> = level.into_iter().map(|index| (index, free.next().unwrap_or(Along::X))).collect();
    for (index, axis) in axes.iter_mut().enumerate().filter(|(_, axis)| !axis.along.stated) {
        let value = level.iter().find(|(place, _)| *place == index).map_or(Along::Z, |(_, along)| *along);
        if let Some((_, node)) = nodes.get(index) {
            reader.assume(key_below(node, "along"), value.word(), "", &defaults::ALONG);
        }
        axis.along = Entry { value, stated: false };
    }
}
