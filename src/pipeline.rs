//! The whole road, top to bottom: from a brief to the record.

mod crossover;
mod meaning;
mod proposal;
mod questions;
mod sketch;

pub use crossover::{RangeError, Ranges, STEPS_OF_ONE, STEPS_OF_TWO, Span, crossover, crossover_beside};
pub use meaning::check;
pub use proposal::{check_proposal, check_proposal_until};
pub use sketch::{Look, Memory, sketch};

use crate::brief::{self, Brief, Limits};
use crate::catalog::{self, Catalog};
use crate::drive::{Demand, Merit};
use crate::inquiry::machine_obstacle;
use crate::record::{DecisionRecord, Parts, build};
use crate::rule::{self, Rulebook};
use crate::search::{
    AxisSearch, CarriedRange, Coupling, Found, Setting, Stop, admissible, best_on, explain_none, offer_lighter,
    search_axis,
};
use crate::select::{Machine, needs};
use crate::units::{Mass, Measure};
use crate::yaml::Faults;
use std::path::{Path, PathBuf};

/// Everything that goes in.
#[derive(Debug, Clone)]
pub struct Inputs {
    /// What the machine must do.
    pub brief: Brief,
    /// What there is to choose from.
    pub catalog: Catalog,
    /// What a drive is judged by.
    pub rulebook: Rulebook,
}

/// Reads brief, catalogue and rules; tells every fault of all of them.
pub fn load(brief: &Path, catalogs: &[PathBuf], rules: &[PathBuf]) -> Result<Inputs, Faults> {
    let mut faults = Faults::default();
    let written = brief::text_of(brief, &mut faults);
    let catalog = keep(catalog::load(catalogs), &mut faults);
    let rulebook = keep(rule::load(rules), &mut faults);
    whole(written.as_ref().map(|(name, text)| (name.as_str(), text.as_str())), catalog, rulebook, faults)
}

/// Inputs of a brief given as text beside a catalogue and rules that are there already; tells every fault of the brief.
pub fn with_brief(name: &str, text: &str, catalog: &Catalog, rulebook: &Rulebook) -> Result<Inputs, Faults> {
    match brief::load(name, text) {
        Ok(brief) => check(Inputs { brief, catalog: catalog.clone(), rulebook: rulebook.clone() }),
        Err(mut faults) => {
            beside_faults(Some((name, text)), Some(catalog), Some(rulebook), &mut faults);
            Err(faults)
        }
    }
}

/// The same from texts: the brief by name and text, the catalogue layer by layer, rules and cautions, and nothing built in.
pub fn load_texts(
    written: (&str, &str),
    layers: Vec<Vec<(String, String)>>,
    rules: Vec<(String, String)>,
    cautions: Vec<(String, String)>,
) -> Result<Inputs, Faults> {
    let mut faults = Faults::default();
    let catalog = keep(catalog::load_layers(layers), &mut faults);
    let rulebook = keep(rule::load_only(rules, cautions), &mut faults);
    whole(Some(written), catalog, rulebook, faults)
}

/// What was read, if nothing of it is at fault. Where something is, what can be checked of the rest is told beside it.
fn whole(
    written: Option<(&str, &str)>,
    catalog: Option<Catalog>,
    rulebook: Option<Rulebook>,
    mut faults: Faults,
) -> Result<Inputs, Faults> {
    let brief = written.and_then(|(name, text)| keep(brief::load(name, text), &mut faults));
    match (brief, catalog, rulebook) {
        (Some(brief), Some(catalog), Some(rulebook)) => check(Inputs { brief, catalog, rulebook }),
        (_, catalog, rulebook) => {
            beside_faults(written, catalog.as_ref(), rulebook.as_ref(), &mut faults);
            Err(faults)
        }
    }
}

/// Tells what can be checked of the rest where something is at fault.
fn beside_faults(
    written: Option<(&str, &str)>,
    catalog: Option<&Catalog>,
    rulebook: Option<&Rulebook>,
    faults: &mut Faults,
) {
    if let (Some((name, text)), Some(rulebook)) = (written, rulebook) {
        meaning::waivers(name, text, rulebook, faults);
    }
    if let Some(catalog) = catalog {
        meaning::workshop_lines(catalog, faults);
    }
}

fn keep<T>(read: Result<T, Faults>, faults: &mut Faults) -> Option<T> {
    read.map_err(|found| faults.merge(found)).ok()
}

fn setting<'a>(inputs: &'a Inputs, coupling: Coupling, waived: &'a [String], exhaustive: bool) -> Setting<'a> {
    Setting {
        catalog: &inputs.catalog,
        rulebook: &inputs.rulebook,
        merit: Merit::new(&inputs.brief.prefer),
        coupling,
        waived,
        exhaustive,
        stop: None,
    }
}

/// From the inputs to the record.
///
/// Limits of the machine enter one by one: the machine is chosen under those that are known to bind, at first
/// none, and checked against all. A machine that keeps all limits is the best under all, since fewer limits
/// allow no worse one. A limit that is exceeded joins, and the axes are searched again for what it counts.
/// The mass of a drive that another axis carries counts as far as an axis that carries it may gain by less: a lighter one
/// may then be worth its price.
/// Drives are weighed at what their axis carries in the machine that is chosen: at first in that of the drives that are best one by one, and
/// then in the one chosen, until it is chosen again.
pub fn recommend(inputs: &Inputs, exhaustive: bool) -> DecisionRecord {
    decide(inputs, &Way { exhaustive, ..Way::default() })
}

/// The same, and what would change the answer: that takes several times as long.
pub fn recommend_and_ask(inputs: &Inputs, exhaustive: bool) -> DecisionRecord {
    decide(inputs, &Way { exhaustive, ask: true, ..Way::default() })
}

/// The recommendation, with what would change it where that is asked; none where it was stopped before it was there.
pub fn recommend_until(inputs: &Inputs, ask: bool, stop: &Stop) -> Option<DecisionRecord> {
    let record = decide(inputs, &Way { ask, stop: Some(stop), ..Way::default() });
    (!stop.asked()).then_some(record)
}

/// How a decision is made.
#[derive(Default)]
struct Way<'w> {
    /// Whether nothing may be skipped.
    exhaustive: bool,
    /// Whether it is asked what would change the answer.
    ask: bool,
    /// What ends it before its time.
    stop: Option<&'w Stop>,
    /// What each axis may have, where that is less than the whole catalogue; limits of the machine are then told, not kept.
    proposed: Option<&'w [Catalog]>,
}

/// How often drives are weighed anew at what their axes carry in the machine chosen; where that does not settle, they are weighed at the
/// most, where power, torque and forces are the largest, and the record tells both masses.
const MOST_WEIGHINGS: usize = 4;

fn decide(inputs: &Inputs, way: &Way<'_>) -> DecisionRecord {
    let (exhaustive, ask) = (way.exhaustive, way.ask);
    let brief = &inputs.brief;
    let waived: Vec<Vec<String>> = brief.axes.iter().map(|axis| waived_on(brief, &axis.name)).collect();
    let mut coupling = Coupling::default();
    let mut limits = Limits { lead_time: brief.limits.lead_time, ..Limits::default() };
    let settings_of = |coupling: Coupling, exhaustive: bool| -> Vec<Setting<'_>> {
        let of_axis = |axis: usize| {
            let coupling = Coupling { mass: coupling.mass && brief.axes[axis].carried_by.is_some(), ..coupling };
            let setting = Setting { stop: way.stop, ..setting(inputs, coupling, &waived[axis], exhaustive) };
            let own = way.proposed.and_then(|catalogs| catalogs.get(axis));
            own.map_or(setting, |catalog| Setting { catalog, ..setting })
        };
        (0..brief.axes.len()).map(of_axis).collect()
    };
    let (mut weighed, mut weighings, mut at_most) = (likely_loads(brief, &settings_of(coupling, false)), 0, false);
    let mut before: Option<(Coupling, Vec<AxisSearch>)> = None;
    loop {
        let settings = settings_of(coupling, exhaustive);
        let alike = before.take().filter(|(known, _)| *known == coupling).map(|(_, searches)| searches);
        let mut searches = search_all(brief, &settings, weighed.as_deref(), alike.as_deref());
        before = Some((coupling, searches.clone()));
        if coupling == Coupling::default() && !offer_lighter_drives(brief, &settings, &mut searches) {
            coupling.mass = true;
            continue;
        }
        let offers = || searches.iter().map(|search| search.offers.clone()).collect();
        let machine = Machine { brief, limits, offers: offers() };
        let complete = machine.offers.iter().all(|offers| !offers.is_empty());
        let verify = |axis: usize, found: &Found, carried: f64| {
            let demand = Demand::new(brief, axis, Mass::of_si(carried));
            admissible(found.family, &found.path, &demand, &settings[axis])
        };
        let choice = complete.then(|| machine.choose(exhaustive, verify));
        let whole = Machine { brief, limits: brief.limits, offers: offers() };
        let picks = choice.as_ref().map(|choice| choice.picks.as_slice()).unwrap_or_default();
        let judged = !picks.is_empty() && way.proposed.is_none();
        let exceeded = if judged { needs(&whole, picks).exceeded } else { Vec::new() };
        // where no machine keeps those that joined, all that are stated join, so that what is told of them holds
        let none = choice.as_ref().is_some_and(|choice| choice.picks.is_empty());
        let exceeded = if none { stated(&brief.limits) } else { exceeded };
        if join(&exceeded, &brief.limits, &mut coupling, &mut limits) {
            continue;
        }
        // where none keeps the limits, that counts which would do with the least of one more
        let nearest = none.then(|| machine_obstacle(&whole, &verify).relaxations.into_iter().next());
        let told = nearest.flatten().map_or_else(|| picks.to_vec(), |nearest| nearest.picks);
        let real: Vec<f64> = (0..told.len()).map(|axis| machine.carried(axis, &told)).collect();
        let apart = |(real, search): (&f64, &AxisSearch)| (real - search.carried.weighed).abs() > 1e-9 * real;
        if !at_most && real.iter().zip(&searches).any(apart) {
            at_most = weighings == MOST_WEIGHINGS;
            weighed = Some(real).filter(|_| !at_most);
            weighings += 1;
            continue;
        }
        for (axis, search) in searches.iter_mut().enumerate() {
            explain_none(brief, axis, search, &settings[axis]);
        }
        let chosen = choice.as_ref().filter(|choice| ask && !choice.picks.is_empty());
        let turning = chosen.map(|choice| questions::turning(inputs, &searches, &settings, &whole, choice));
        let parts = Parts {
            brief,
            catalog: &inputs.catalog,
            rulebook: &inputs.rulebook,
            searches: &searches,
            settings: &settings,
            machine: &whole,
            choice: choice.as_ref(),
            turning: turning.as_deref(),
            asked: ask,
            pictured: true,
        };
        return build(&parts);
    }
}

/// Lets the limits that are exceeded join; says whether any did.
fn join(exceeded: &[&str], all: &Limits, coupling: &mut Coupling, limits: &mut Limits) -> bool {
    let before = *coupling;
    for key in exceeded {
        match *key {
            "purchase" => (coupling.purchase, limits.purchase) = (true, all.purchase),
            "supply-power" => (coupling.power, limits.supply_power) = (true, all.supply_power),
            "motor-models" => (coupling.motors, limits.motor_models) = (true, all.motor_models),
            "gearbox-models" => (coupling.gearboxes, limits.gearbox_models) = (true, all.gearbox_models),
            "tool-point-error" => (coupling.error, limits.tool_point_error) = (true, all.tool_point_error),
            _ => {}
        }
    }
    // a machine that gives way to a limit may take other masses too
    coupling.mass |= *coupling != before;
    *coupling != before
}

/// The limits that the brief states and that couple the axes.
fn stated(limits: &Limits) -> Vec<&'static str> {
    let all = [
        ("purchase", limits.purchase.is_some()),
        ("supply-power", limits.supply_power.is_some()),
        ("motor-models", limits.motor_models.is_some()),
        ("gearbox-models", limits.gearbox_models.is_some()),
        ("tool-point-error", limits.tool_point_error.is_some()),
    ];
    all.into_iter().filter(|(_, stated)| *stated).map(|(key, _)| key).collect()
}

/// The ids of the rules that a brief waives on an axis.
pub fn waived_on(brief: &Brief, axis: &str) -> Vec<String> {
    let here = brief.waivers.iter().filter(|waiver| waiver.axis.as_ref().is_none_or(|wanted| wanted == axis));
    here.map(|waiver| waiver.rule.clone()).collect()
}

/// Lets lighter drives be offered where an axis that carries them may gain by it; says whether that settles the masses.
fn offer_lighter_drives(brief: &Brief, settings: &[Setting<'_>], searches: &mut [AxisSearch]) -> bool {
    let gains: Vec<f64> = searches.iter().map(|search| search.gain).collect();
    brief.from_the_leaves().into_iter().filter(|&axis| brief.axes[axis].carried_by.is_some()).all(|axis| {
        // not what this axis itself gains
        let others = gains.iter().enumerate().filter(|(other, gain)| *other != axis && **gain > 0.0);
        let gain: f64 = others.map(|(_, gain)| gain).sum();
        gain == 0.0 || offer_lighter(brief, axis, gain, &mut searches[axis], &settings[axis])
    })
}

/// What each axis carries where every axis has the drive that is best for it alone, kg; none where an axis that is carried has no drive.
fn likely_loads(brief: &Brief, settings: &[Setting<'_>]) -> Option<Vec<f64>> {
    let mut masses = vec![0.0; brief.axes.len()];
    for axis in brief.from_the_leaves().into_iter().filter(|&axis| brief.axes[axis].carried_by.is_some()) {
        let load = brief.load(axis, |carried| masses[carried]);
        masses[axis] = best_on(brief, axis, load, &settings[axis], None, &[])?.attributes.mass;
    }
    let loads: Vec<f64> = (0..masses.len()).map(|axis| brief.load(axis, |carried| masses[carried])).collect();
    loads.iter().all(|load| load.is_finite()).then_some(loads)
}

/// Searches every axis, carried axes before those that carry them; drives are weighed at these masses, or at the most. An axis whose load
/// is that of a search that is there already is not searched again.
fn search_all(
    brief: &Brief,
    settings: &[Setting<'_>],
    weighed: Option<&[f64]>,
    known: Option<&[AxisSearch]>,
) -> Vec<AxisSearch> {
    let mut searches: Vec<Option<AxisSearch>> = vec![None; brief.axes.len()];
    for axis in brief.from_the_leaves() {
        let mut carried = CarriedRange::exactly(0.0);
        for &below in &brief.axes[axis].carries {
            let (least, most) = load_of(brief, below, searches[below].as_ref());
            carried.least += least;
            carried.most += most;
        }
        carried.weighed = carried.most;
        if let Some(&mass) = weighed.and_then(|masses| masses.get(axis)) {
            carried = CarriedRange { least: carried.least.min(mass), most: carried.most.max(mass), weighed: mass };
        }
        let alike = known.and_then(|known| known.get(axis)).filter(|known| known.carried == carried);
        searches[axis] = Some(alike.cloned().unwrap_or_else(|| search_axis(brief, axis, carried, &settings[axis])));
    }
    searches.into_iter().flatten().collect()
}

/// The least that an axis may weigh on its carrier, with its lightest drive, and the most, with any that it offers:
/// itself, what it carries, and the drive.
fn load_of(brief: &Brief, axis: usize, search: Option<&AxisSearch>) -> (f64, f64) {
    let own = brief.axes[axis].moved_mass.si();
    let Some(search) = search else { return (own, own) };
    let masses = search.offers.iter().map(|offer| offer.found.attributes.mass).filter(|mass| mass.is_finite());
    let most = masses.fold(0.0, f64::max);
    let least = if search.lightest.is_finite() { search.lightest } else { 0.0 };
    (own + search.carried.least + least, own + search.carried.most + most)
}
