//! Reading what hangs on an axis: its counterbalance and its cable chain.

use super::defaults;
use super::reader::{Reader, above_zero_to, zero_to};
use super::types::{CableChain, Counterbalance, CounterbalanceKind, Entry};
use crate::units::{Angle, Measure, Ratio};
use crate::yaml::Node;

pub(super) fn counterbalance(
    axis: &Node<'_>,
    inclination: Option<Angle>,
    reader: &mut Reader<'_>,
) -> Option<Counterbalance> {
    let node = axis.get("counterbalance")?;
    node.only_keys(&["kind", "share", "ripple"], reader.faults);
    let kind = node.need_choice("kind", &CounterbalanceKind::WORDS, reader.faults);
    let share = share(&node, kind, reader);
    let ripple = match (kind, node.get("ripple")) {
        (Some(CounterbalanceKind::Weight), Some(stated)) => {
            let help = "leave it out; only the force of a gas counterbalance varies over the stroke";
            stated.fault(reader.faults, "a hanging weight has no ripple", Some(help.into()));
            None
        }
        (Some(CounterbalanceKind::Weight), None) => Some(Entry { value: Ratio::of_si(0.0), stated: false }),
        (Some(CounterbalanceKind::Gas), _) => {
            reader.or_preset(&node, "ripple", zero_to(50.0, "%"), &defaults::COUNTERBALANCE_RIPPLE)
        }
        (None, _) => None,
    };
    if inclination.is_some_and(|angle| angle.si() == 0.0) {
        let help = "leave `counterbalance` out, or write how the axis stands: `direction: vertical`";
        node.fault(reader.faults, "a horizontal axis has no weight to balance", Some(help.into()));
    }
    Some(Counterbalance { kind: kind?, share: share?, ripple: ripple? })
}

/// The share of the weight that is balanced; a counterbalance that outweighs its load is refused.
fn share(node: &Node<'_>, kind: Option<CounterbalanceKind>, reader: &mut Reader<'_>) -> Option<Ratio> {
    let share_node = node.need_in("share", "%", reader.faults)?;
    let stated: Ratio = share_node.quantity(reader.faults)?;
    if stated.si() <= 1.0 + 1e-12 {
        return reader.bounded(&share_node, above_zero_to(100.0, "%"));
    }
    let message = match kind {
        Some(CounterbalanceKind::Weight) => "the counterweight is heavier than its load: a share is at most 100 %",
        Some(CounterbalanceKind::Gas) | None => "the counterbalance lifts more than its load: a share is at most 100 %",
    };
    let help = "the axis would rise when nothing holds it; 70 to 100 % is usual";
    share_node.fault(reader.faults, message, Some(help.into()));
    None
}

pub(super) fn cable_chain(axis: &Node<'_>, reader: &mut Reader<'_>) -> Option<CableChain> {
    let node = axis.get("cable-chain")?;
    node.only_keys(&["mass-per-metre", "friction"], reader.faults);
    if !node.is_mapping() {
        return None;
    }
    let mass_per_metre = reader.need(&node, "mass-per-metre", above_zero_to(1000.0, "kg/m"));
    let friction = reader.or_preset(&node, "friction", zero_to(1.0, "1"), &defaults::CABLE_CHAIN_FRICTION);
    Some(CableChain { mass_per_metre: mass_per_metre?, friction: friction? })
}
