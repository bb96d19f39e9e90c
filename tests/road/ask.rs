//! Random demands on one axis, written as briefs, and what a search of the small catalogue makes of them.

use crate::small;
use axiswright::drive::{Demand, FAMILIES, Family, WithFamily, with_family};
use axiswright::pipeline::Inputs;
use axiswright::search::{Path, Setting, Walk, walk};
use proptest::prelude::*;

/// What is asked of one axis; every share of the duty states its speed, force and stroke.
#[derive(Debug, Clone)]
pub struct Ask {
    /// horizontal, vertical or an angle.
    pub direction: &'static str,
    /// both, up, down, forward or back.
    pub cutting: &'static str,
    /// Travel, m.
    pub travel: f64,
    /// Moved mass, kg.
    pub mass: f64,
    /// Highest speed, m/s.
    pub speed: f64,
    /// Acceleration, m/s².
    pub acceleration: f64,
    /// Cutting force, N.
    pub force: f64,
    /// Working hours a year.
    pub hours: f64,
    /// Accuracy, mm; repeatability and reversal are a share of it.
    pub accuracy: f64,
    /// Give under the cutting force, mm.
    pub deflection: f64,
    /// Lowest resonance, Hz.
    pub first_mode: f64,
    /// Friction of the guides.
    pub friction: f64,
    /// Temperature swing, K.
    pub swing: f64,
    /// Shares of working time: percent, speed of the moves in m/s (0 stands), whether it cuts, stroke in m.
    pub duty: Vec<(f64, f64, bool, f64)>,
}

impl Ask {
    /// The brief.
    pub fn text(&self) -> String {
        let Ask { direction, cutting, travel, mass, speed, acceleration, force, hours, accuracy, deflection, .. } =
            self;
        let (repeatability, reversal) = (accuracy * 0.7, accuracy * 0.6);
        let mut text = format!(
            "machine: Asked\nhours-per-year: {hours:?}\ntemperature-swing: {:?} K\naxes:\n  axis:\n    \
             direction: {direction}\n    travel: {travel:?} m\n    moved-mass: {mass:?} kg\n    speed: {speed:?} m/s\n    \
             acceleration: {acceleration:?} m/s²\n    cutting-force: {force:?} N\n    \
             cutting-force-direction: {cutting}\n    cutting-speed: 0.1 m/s\n    guide-friction: {:?}\n    \
             accuracy: {accuracy:?} mm\n    repeatability: {repeatability:?} mm\n    reversal: {reversal:?} mm\n    \
             cutting-deflection: {deflection:?} mm\n    ripple: 30 µm\n    first-mode: {:?} Hz\n    duty:\n",
            self.swing, self.friction, self.first_mode
        );
        if *direction != "horizontal" {
            text = text.replace("    duty:\n", "    people-below: false\n    duty:\n");
        }
        for &(share, speed, cuts, stroke) in &self.duty {
            text += &if speed == 0.0 {
                format!("      - {{ share: {share:?} %, stand: true }}\n")
            } else {
                let force = if cuts { self.force } else { 0.0 };
                format!(
                    "      - {{ share: {share:?} %, speed: {speed:?} m/s, stroke: {stroke:?} m, force: {force:?} N }}\n"
                )
            };
        }
        text
    }

    /// The small catalogue and all rules for it.
    pub fn inputs(&self) -> Inputs {
        small::inputs(&self.text())
    }
}

/// A horizontal axis that cuts either way.
pub fn ask() -> impl Strategy<Value = Ask> {
    let demands = (0.4..2.2_f64, 40.0..500.0_f64, 0.25..0.9_f64, 0.5..5.0_f64, 100.0..2500.0_f64);
    let rest = (1000.0..5500.0_f64, 0.05..0.2_f64, 0.02..0.1_f64, 10.0..40.0_f64, 0.002..0.02_f64, 1.0..8.0_f64);
    (demands, rest, 0.1..1.0_f64).prop_map(
        |(
            (travel, mass, speed, acceleration, force),
            (hours, accuracy, deflection, first_mode, friction, swing),
            part,
        )| {
            Ask {
                direction: "horizontal",
                cutting: "both",
                travel,
                mass,
                speed,
                acceleration,
                force,
                hours,
                accuracy,
                deflection,
                first_mode,
                friction,
                swing,
                duty: vec![(30.0, speed * part, false, travel * 0.7), (50.0, 0.1, true, 0.3), (20.0, 0.0, false, 0.0)],
            }
        },
    )
}

struct Walked<'w, 'a> {
    demand: &'w Demand<'w>,
    setting: &'w Setting<'a>,
}

impl WithFamily for Walked<'_, '_> {
    type Output = (Vec<usize>, Walk);
    fn with<F: Family>(self, family: &F) -> Self::Output {
        (family.stages(), walk(family, self.demand, self.setting, None))
    }
}

/// Every family searched: its id, its stages, and what was found.
pub fn search(inputs: &Inputs) -> Vec<(&'static str, Vec<usize>, Walk)> {
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    FAMILIES
        .into_iter()
        .map(|id| {
            let work = Walked { demand: &demand, setting: &setting };
            let (stages, walk) = with_family(id, &demand, &inputs.catalog, work).expect("a family");
            (id, stages, walk)
        })
        .collect()
}

/// Whether a configuration passes every binding rule on a full sheet.
pub fn admits(inputs: &Inputs, family: &str, path: &Path) -> bool {
    let (demand, setting) = (small::demand(inputs, 0), small::setting(inputs));
    axiswright::search::work_out(family, path, &demand, &setting).expect("the configuration exists").admissible()
}
