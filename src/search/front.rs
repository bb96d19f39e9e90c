//! What a configuration brings to the machine, and the set that nothing beats in every respect at once.

use super::{Marks, Path, Standing};
use crate::characteristic as ch;
use crate::drive::{Family, Merit};
use crate::ledger::Figures;
use crate::units::Measure;
use std::collections::BTreeMap;

/// What a configuration brings to the machine; less is better throughout.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attributes {
    /// What is made small.
    pub merit: f64,
    /// Half band that the axis adds at the tool, m.
    pub error: f64,
    /// Complete mass of the drives with counterweights and cable chain, kg.
    pub mass: f64,
    /// Price to buy and fit.
    pub purchase: f64,
    /// Largest power from the supply, W.
    pub power: f64,
    /// Price over the years of service.
    pub whole_life: f64,
    /// Longest delivery time, s.
    pub lead_time: f64,
    /// Hash of the motor's model; equal models have equal hashes.
    pub motor: u64,
    /// Hash of the gearbox's model; 0 without a gearbox.
    pub gearbox: u64,
}

fn known(value: f64) -> f64 {
    if value.is_nan() { f64::INFINITY } else { value }
}

/// What a merit or a bound comes to with this weight of advice that is not followed.
#[inline(always)]
pub(super) fn with_unmet(merit: f64, unmet: f64) -> f64 {
    merit * (1.0 + unmet)
}

/// A stable hash of a name (FNV-1a), the same on every machine and in every run.
pub(super) fn stable_hash(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

impl Attributes {
    /// Read from a finished sheet; `unmet` is how much worse it counts for the advice that it does not follow.
    #[inline]
    pub fn of<F: Family>(family: &F, path: &Path, sheet: &impl Figures, merit: &Merit, unmet: f64) -> Attributes {
        Attributes::plain(sheet, merit).whole(family, path, unmet)
    }

    /// Read from a finished sheet as if all advice were followed, and without the models.
    #[inline]
    pub fn plain(sheet: &impl Figures, merit: &Merit) -> Attributes {
        Attributes::with_merit(merit.of(sheet), sheet)
    }

    /// The same where the merit is known already.
    #[inline]
    pub fn with_merit(merit: f64, sheet: &impl Figures) -> Attributes {
        Attributes {
            merit,
            error: known(sheet.read(ch::TOOL_ERROR).si()),
            mass: known(sheet.read(ch::ADDED_MASS).si()),
            purchase: known(sheet.read(ch::PURCHASE_COST).si()),
            power: known(sheet.read(ch::SUPPLY_POWER).si()),
            whole_life: known(sheet.read(ch::WHOLE_LIFE_COST).si()),
            lead_time: known(sheet.read(ch::LEAD_TIME).si()),
            motor: 0,
            gearbox: 0,
        }
    }

    /// With the models, and worse by the advice that is not followed.
    #[inline]
    pub fn whole<F: Family>(self, family: &F, path: &Path, unmet: f64) -> Attributes {
        Attributes {
            merit: with_unmet(self.merit, unmet),
            motor: stable_hash(family.motor_model(path)),
            gearbox: family.gearbox_model(path).map_or(0, stable_hash),
            ..self
        }
    }
}

/// By which attributes the axes of a machine are coupled; the others need no place in the undominated set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Coupling {
    /// Another axis carries this one.
    pub mass: bool,
    /// The error at the tool is limited; it counts in any case, so that the set shows cost against accuracy.
    pub error: bool,
    /// The purchase is limited.
    pub purchase: bool,
    /// The power is limited.
    pub power: bool,
    /// The number of motor models is limited.
    pub motors: bool,
    /// The number of gearbox models is limited.
    pub gearboxes: bool,
}

impl Coupling {
    /// Whether the number of models is limited.
    #[inline(always)]
    pub fn models(&self) -> bool {
        self.motors || self.gearboxes
    }

    /// Whether `a` is at least as good as `b` in every respect that counts; merit and error always count.
    #[inline(always)]
    fn covers(&self, a: &Attributes, b: &Attributes) -> bool {
        a.merit <= b.merit
            && a.error <= b.error
            && (!self.mass || a.mass <= b.mass)
            && (!self.purchase || a.purchase <= b.purchase)
            && (!self.power || a.power <= b.power)
    }

    /// The drives of a block that `a` is surely better than in merit and no worse than in all else that counts, without a branch.
    #[inline(always)]
    pub(super) fn beaten(&self, a: &Attributes, drives: &Standing<'_>) -> Marks {
        let [error, mass, purchase, power] =
            [ch::TOOL_ERROR.slot, ch::ADDED_MASS.slot, ch::PURCHASE_COST.slot, ch::SUPPLY_POWER.slot]
                .map(|slot| drives.column(slot));
        std::array::from_fn(|lane| {
            let beaten = (a.merit < drives.at_least[lane])
                & (a.error <= error[lane])
                & (!self.mass | (a.mass <= mass[lane]))
                & (!self.purchase | (a.purchase <= purchase[lane]))
                & (!self.power | (a.power <= power[lane]));
            u64::from(beaten)
        })
    }

    /// Only drives with the same key are compared: where models are limited, one cannot stand for another.
    #[inline(always)]
    fn key(&self, attributes: &Attributes) -> Key {
        (self.motors.then_some(attributes.motor), self.gearboxes.then_some(attributes.gearbox))
    }
}

/// The models of motor and gearbox, each where their number is limited.
type Key = (Option<u64>, Option<u64>);

/// The undominated set, built one configuration at a time.
#[derive(Debug, Clone)]
pub struct Front {
    coupling: Coupling,
    groups: BTreeMap<Key, Vec<(Attributes, Path)>>,
}

impl Front {
    /// An empty set.
    pub fn new(coupling: Coupling) -> Front {
        Front { coupling, groups: BTreeMap::new() }
    }

    /// Offers a configuration; of two that are equal in every respect the smaller path stays.
    #[inline]
    pub fn offer(&mut self, attributes: Attributes, path: Path) {
        if self.beats(&attributes, &path) {
            return;
        }
        let coupling = self.coupling;
        let members = self.groups.entry(coupling.key(&attributes)).or_default();
        members.retain(|(other, _)| !coupling.covers(&attributes, other));
        members.push((attributes, path));
    }

    /// Whether a member is better in every respect that counts, or as good with a smaller path.
    #[inline]
    pub fn beats(&mut self, attributes: &Attributes, path: &Path) -> bool {
        let coupling = self.coupling;
        let Some(members) = self.groups.get_mut(&coupling.key(attributes)) else { return false };
        let beaten = members.iter().position(|(other, other_path)| {
            coupling.covers(other, attributes) && (!coupling.covers(attributes, other) || other_path <= path)
        });
        if let Some(place) = beaten {
            // what beats one often beats the next; the order of members has no meaning
            members.swap(0, place);
        }
        beaten.is_some()
    }

    /// The member that beat what was offered last, where all are compared with all.
    #[inline]
    pub fn foremost(&self) -> Option<&Attributes> {
        let members = if self.coupling.models() { None } else { self.groups.values().next() };
        members.and_then(|members| members.first()).map(|(attributes, _)| attributes)
    }

    /// Takes in another set.
    pub fn merge(mut self, other: Front) -> Front {
        for (attributes, path) in other.into_members() {
            self.offer(attributes, path);
        }
        self
    }

    /// The members, in no order that has a meaning.
    pub fn into_members(self) -> impl Iterator<Item = (Attributes, Path)> {
        self.groups.into_values().flatten()
    }
}
