//! Gearboxes that differ in play, price and delivery alone: one choice until the stage of the play.
//!
//! Method: like gearboxes stand together in the order of the catalogue. Limits: where the kinds do not all come with equally
//! many plays, every gearbox is a kind of its own, for a stage offers the same choices whatever was chosen before.

use super::Pinions;
use crate::catalog::{Catalog, Gearbox};
use crate::drive::price::least;
use crate::units::Measure;
use std::collections::{BTreeMap, BTreeSet};

/// The gearboxes by kind and play.
#[derive(Debug)]
pub struct Alike<'a> {
    kinds: Vec<Vec<&'a Gearbox>>,
    /// Price of the cheapest of each kind.
    least: Vec<f64>,
    least_of_all: f64,
}

/// Everything of a gearbox but its play, its price and its delivery.
fn figures(gearbox: &Gearbox) -> [f64; 19] {
    [
        f64::from(gearbox.stages),
        gearbox.ratio.si(),
        gearbox.acceleration_torque.si(),
        gearbox.continuous_torque.si(),
        gearbox.stop_torque.si(),
        gearbox.nominal_speed.si(),
        gearbox.speed_limit.si(),
        gearbox.torsional_stiffness.si(),
        gearbox.inertia.si(),
        gearbox.efficiency.si(),
        gearbox.radial_limit.si(),
        gearbox.axial_limit.si(),
        gearbox.bearing_span.si(),
        gearbox.overhang.si(),
        gearbox.shaft_diameter.si(),
        gearbox.tilt_stiffness.si(),
        gearbox.no_load_torque.si(),
        gearbox.mass.si(),
        gearbox.frame_size.si(),
    ]
}

fn like(one: &Gearbox, other: &Gearbox) -> bool {
    // most differ here already
    if one.ratio.si() != other.ratio.si() || one.acceleration_torque.si() != other.acceleration_torque.si() {
        return false;
    }
    figures(one) == figures(other) && one.frame == other.frame
}

/// Gearboxes that are alike, each kind where its first stands.
///
/// Only those of one ratio and one torque can be alike, and these are found by their bits, so that thousands are grouped at once.
fn grouped<'a>(gearboxes: &[&'a Gearbox]) -> Vec<Vec<&'a Gearbox>> {
    // adding zero makes one of both zeros
    let bits = |value: f64| (value + 0.0).to_bits();
    let mut kinds: Vec<Vec<&Gearbox>> = Vec::new();
    let mut places: BTreeMap<[u64; 2], Vec<usize>> = BTreeMap::new();
    for &gearbox in gearboxes {
        let key = [bits(gearbox.ratio.si()), bits(gearbox.acceleration_torque.si())];
        let near = places.entry(key).or_default();
        match near.iter().find(|&&kind| kinds[kind].first().is_some_and(|first| like(first, gearbox))) {
            Some(&kind) => kinds[kind].push(gearbox),
            None => {
                near.push(kinds.len());
                kinds.push(vec![gearbox]);
            }
        }
    }
    kinds
}

/// Whether another of a kind is cheaper and delivered as soon.
fn dearer(gearbox: &Gearbox, kind: &[&Gearbox]) -> bool {
    let mut cheaper = kind.iter().filter(|rival| rival.price.si() < gearbox.price.si());
    cheaper.any(|rival| rival.lead_time.si() == gearbox.lead_time.si())
}

impl<'a> Alike<'a> {
    /// The gearboxes that are offered. A bias closes the play, so of gearboxes that differ in play and price alone two pinions
    /// are offered the cheaper.
    pub fn of(catalog: &'a Catalog, layout: Pinions) -> Alike<'a> {
        let all: Vec<&Gearbox> = catalog.gearboxes.iter().collect();
        let mut kinds = grouped(&all);
        if layout == Pinions::Two {
            let dear: BTreeSet<&str> = kinds
                .iter()
                .flat_map(|kind| kind.iter().filter(|gearbox| dearer(gearbox, kind)))
                .map(|gearbox| gearbox.designation.as_str())
                .collect();
            let offered = |gearbox: &&&Gearbox| !dear.contains(gearbox.designation.as_str());
            // a kind stands where the first stands that is offered
            kinds = grouped(&all.iter().filter(offered).copied().collect::<Vec<_>>());
        }
        let plays = kinds.first().map_or(0, Vec::len);
        if kinds.iter().any(|kind| kind.len() != plays) {
            kinds = kinds.into_iter().flatten().map(|gearbox| vec![gearbox]).collect();
        }
        let cheapest = |kind: &Vec<&Gearbox>| least(kind.iter().map(|gearbox| gearbox.price.si()));
        let prices: Vec<f64> = kinds.iter().map(cheapest).collect();
        Alike { kinds, least_of_all: least(prices.iter().copied()), least: prices }
    }

    /// How many kinds there are.
    pub fn kinds(&self) -> usize {
        self.kinds.len()
    }

    /// How many plays each kind comes with.
    pub fn plays(&self) -> usize {
        self.kinds.first().map_or(0, Vec::len)
    }

    /// The price of the cheapest gearbox of this kind, or of all.
    pub fn least_price(&self, kind: Option<u16>) -> f64 {
        let of = |kind: u16| self.least[usize::from(kind)];
        kind.map_or(self.least_of_all, of)
    }

    /// The gearbox of this kind with this play.
    pub fn picked(&self, kind: u16, play: u16) -> &'a Gearbox {
        self.kinds[usize::from(kind)][usize::from(play)]
    }
}
