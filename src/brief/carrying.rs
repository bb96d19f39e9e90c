//! Who carries whom: a forest, checked and filled in, and what it comes to.

use super::types::{Axis, Brief};
use crate::units::Measure;
use crate::yaml::{Faults, Node, nearest};
use std::collections::BTreeSet;

/// For every axis, the places of the axes it carries and of the one that carries it.
pub(super) struct Carrying {
    carries: Vec<Vec<usize>>,
    carried_by: Vec<Option<usize>>,
}

/// Reads `carries` of all axes, also of those that have faults of their own.
pub(super) fn read(axes: &[(String, Node<'_>)], faults: &mut Faults) -> Carrying {
    let mut carries = vec![Vec::new(); axes.len()];
    let mut carried_by: Vec<Option<usize>> = vec![None; axes.len()];
    let mut lists: Vec<Option<Node<'_>>> = vec![None; axes.len()];
    for (carrier, (name, axis)) in axes.iter().enumerate() {
        let Some(list) = axis.get("carries") else { continue };
        for item in list.list(faults) {
            let Some(carried_name) = item.text(faults) else { continue };
            let Some(carried) = axes.iter().position(|(other, _)| *other == carried_name) else {
                let names = axes.iter().map(|(other, _)| other.as_str()).filter(|other| other != name);
                let help = axes_to_name(&carried_name, names);
                item.fault(faults, format!("there is no axis `{carried_name}`"), Some(help));
                continue;
            };
            if carried == carrier {
                let help = "name the axes that ride on this one, or leave `carries` out";
                item.fault(faults, format!("`{name}` cannot carry itself"), Some(help.into()));
                continue;
            }
            match carried_by[carried] {
                Some(first) if first == carrier => {
                    item.fault(faults, format!("`{carried_name}` is named twice"), Some("keep one of the two".into()));
                }
                Some(first) => {
                    let help = Some("name only what an axis carries directly".into());
                    let message = format!("`{carried_name}` is carried by `{}` already", axes[first].0);
                    item.fault(faults, message, help);
                }
                None => {
                    carried_by[carried] = Some(carrier);
                    carries[carrier].push(carried);
                }
            }
        }
        lists[carrier] = Some(list);
    }
    tell_rings(axes, &carried_by, &lists, faults);
    Carrying { carries, carried_by }
}

/// What to write for the name of an axis that is not there.
pub(super) fn axes_to_name<'n>(wrong: &str, names: impl Iterator<Item = &'n str>) -> String {
    let names: Vec<&str> = names.collect();
    match nearest(wrong, names.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if names.is_empty() => "the machine has no other axis".into(),
        None => format!("there are: {}", names.join(", ")),
    }
}

/// Fills in the places. The axes are those the carrying was read from.
pub(super) fn fill_in(axes: &mut [Axis], carrying: Carrying) {
    for ((axis, carries), carried_by) in axes.iter_mut().zip(carrying.carries).zip(carrying.carried_by) {
        axis.carries = carries;
        axis.carried_by = carried_by;
    }
}

/// Each axis has one carrier at most, so a walk from carrier to carrier ends or turns in a ring.
fn tell_rings(
    axes: &[(String, Node<'_>)],
    carried_by: &[Option<usize>],
    lists: &[Option<Node<'_>>],
    faults: &mut Faults,
) {
    let mut done = BTreeSet::new();
    for start in 0..axes.len() {
        let mut walk: Vec<usize> = Vec::new();
        let mut at = Some(start);
        while let Some(axis) = at {
            if done.contains(&axis) {
                break;
            }
            if let Some(from) = walk.iter().position(|other| *other == axis) {
                let mut ring: Vec<&str> = walk[from..].iter().rev().map(|&axis| axes[axis].0.as_str()).collect();
                let first = walk[from..].iter().copied().min().unwrap_or(axis);
                while ring.first() != Some(&axes[first].0.as_str()) {
                    ring.rotate_left(1);
                }
                ring.push(&axes[first].0);
                let message = format!("axes carry each other in a ring: {}", ring.join(" carries "));
                if let Some(list) = &lists[first] {
                    let help =
                        "an axis is carried by one that stands nearer to the frame; take one name out of the ring";
                    list.fault(faults, message, Some(help.into()));
                }
                break;
            }
            walk.push(axis);
            at = carried_by[axis];
        }
        done.extend(walk);
    }
}

impl Brief {
    /// The places of all axes, carried axes before those that carry them.
    pub fn from_the_leaves(&self) -> Vec<usize> {
        let depth = |mut at: usize| {
            let mut depth = 0;
            // no ring passes the loader; the bound keeps a ring made by hand from hanging
            while let (Some(carrier), true) = (self.axes[at].carried_by, depth < self.axes.len()) {
                at = carrier;
                depth += 1;
            }
            depth
        };
        let mut order: Vec<usize> = (0..self.axes.len()).collect();
        order.sort_by_key(|&at| std::cmp::Reverse(depth(at)));
        order
    }

    /// All axes that an axis carries, directly or through others, in their order.
    pub fn carried_by_way_of(&self, axis: usize) -> Vec<usize> {
        let mut found: Vec<usize> = Vec::new();
        let mut open = self.axes[axis].carries.clone();
        while let Some(carried) = open.pop() {
            if !found.contains(&carried) {
                open.extend(&self.axes[carried].carries);
                found.push(carried);
            }
        }
        found.sort_unstable();
        found
    }

    /// What an axis carries where each axis has a drive of this mass, kg.
    pub fn load(&self, axis: usize, drive: impl Fn(usize) -> f64) -> f64 {
        let of = |carried: usize| self.axes[carried].moved_mass.si() + drive(carried);
        // not a sum, for that of nothing is -0
        self.carried_by_way_of(axis).into_iter().map(of).fold(0.0, |all, mass| all + mass)
    }
}
