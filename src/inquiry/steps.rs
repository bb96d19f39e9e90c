//! The values at which a requirement is tried: anchors that are searched in full, fine steps between, and breaks of the catalogue.

use super::requirement::Requirement;
use crate::brief::Brief;
use crate::catalog::Catalog;
use crate::units::Measure;

/// How many times as much, or as little, is searched in full.
pub const ANCHORS: [f64; 2] = [1.3, 2.0];

/// The same for what a machine is drawn around: travel and speed may be turned farther.
pub const FAR_ANCHORS: [f64; 3] = [1.3, 2.0, 4.0];

/// Fine steps between two anchors.
const FINE: usize = 8;

/// How far to either side of a break of the catalogue is looked, relative.
const BESIDE: f64 = 1e-6;

/// A value to try.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// The value, in SI units.
    pub value: f64,
    /// Whether the axis is searched in full there.
    pub anchor: bool,
}

/// The values to try, from what is asked now outward.
pub fn steps(requirement: Requirement, brief: &Brief, axis: usize, catalog: &Catalog, now: f64, up: bool) -> Vec<Step> {
    let turned = |times: f64| if up { now * times } else { now / times };
    let mut steps = Vec::new();
    let mut before: f64 = 1.0;
    let anchors: &[f64] = match requirement {
        Requirement::Travel | Requirement::Speed => &FAR_ANCHORS,
        _ => &ANCHORS,
    };
    // where only a limit is turned no figure of a drive changes: the present drive stays the best until it fails, and the best
    // within a wide limit is the best within every narrower one that it keeps
    let searched = |times: f64| match (requirement.only_a_limit(), up) {
        (false, _) => true,
        (true, true) => Some(&times) == anchors.last(),
        (true, false) => false,
    };
    for &anchor in anchors {
        for fine in 1..=FINE {
            let times = before * (anchor / before).powf(fine as f64 / FINE as f64);
            steps.push(Step { value: turned(times), anchor: fine == FINE && searched(anchor) });
        }
        before = anchor;
    }
    let end = turned(before);
    let (least, most) = if up { (now, end) } else { (end, now) };
    for at in breaks(requirement, brief, axis, catalog) {
        let sides = [at * (1.0 - BESIDE), at * (1.0 + BESIDE)];
        steps.extend(
            sides.into_iter().filter(|value| (least..most).contains(value)).map(|value| Step { value, anchor: false }),
        );
    }
    steps.sort_by(|a, b| a.value.total_cmp(&b.value));
    if !up {
        steps.reverse();
    }
    steps
}

/// Values at which an entry of the catalogue ends: lengths and speeds of scales, segments of racks, speeds of their qualities.
fn breaks(requirement: Requirement, brief: &Brief, axis: usize, catalog: &Catalog) -> Vec<f64> {
    let wanted = &brief.axes[axis];
    let mut values: Vec<f64> = match requirement {
        Requirement::Travel => {
            let segments = catalog.rack_grades.iter().flat_map(|grade| {
                let length = grade.segment_length.si();
                let count = if length > 0.0 { (3.0 * wanted.travel.si() / length) as usize } else { 0 };
                (1..=count.min(100)).map(move |count| count as f64 * length)
            });
            catalog.linear_scales.iter().map(|scale| scale.length_limit.si()).chain(segments).collect()
        }
        Requirement::Speed => {
            let racks = catalog.rack_grades.iter();
            let qualities = racks.flat_map(|grade| [grade.speed_limit_helical.si(), grade.speed_limit_straight.si()]);
            catalog.linear_scales.iter().map(|scale| scale.speed_limit.si()).chain(qualities).collect()
        }
        Requirement::Acceleration => catalog.ball_screws.iter().map(|screw| screw.acceleration_limit.si()).collect(),
        _ => Vec::new(),
    };
    values.sort_by(f64::total_cmp);
    values.dedup();
    values
}
