//! Which cautions a chosen drive needs; their words belong to the report.

use crate::brief::{Axis, Brief};
use crate::units::Measure;

/// Words of an environment that mean dust which may burn, conduct or pack.
const DUSTY: [&str; 7] = ["dust", "carbon", "wood", "composite", "glass", "stone", "graphite"];

/// The ids of the cautions that this axis needs with a drive of this family, in order.
pub fn cautions(brief: &Brief, axis: &Axis, family: Option<&str>, scale: bool, belt: bool) -> Vec<&'static str> {
    let mut ids = Vec::new();
    let inclined = axis.inclination.si() > 0.0;
    if inclined {
        ids.push("suspended");
    }
    if axis.people_below.value {
        ids.push("people-below");
    }
    if axis.counterbalance.is_some() {
        ids.push("counterbalance");
    }
    if inclined && belt {
        ids.push("belt");
    }
    if inclined && family == Some("ball-screw") {
        ids.push("screw-hangs");
    }
    match family {
        Some("ball-screw") => ids.extend(["screw-entanglement", "end-stop-inertia"]),
        Some("driven-nut") => ids.extend(["turning-nut", "end-stop-inertia"]),
        Some(_) => ids.push("rack-trapping"),
        None => {}
    }
    if scale {
        ids.push("scale-feedback");
    }
    if axis.drives.value > 1 {
        ids.push("two-drives");
    }
    if brief.environment.iter().any(|word| DUSTY.iter().any(|dusty| word.to_lowercase().contains(dusty))) {
        ids.push("dust");
    }
    ids.extend(["stored-energy", "general"]);
    ids
}
