//! The briefs that the tests read, and how they read them.

use axiswright::brief::{Brief, load};
use axiswright::yaml::Faults;

/// The least that a brief must say.
pub const LEAST: &str = "\
machine: Test
axes:
  x:
    direction: horizontal
    travel: 2 m
    moved-mass: 100 kg
    speed: 30 m/min
    acceleration: 2 m/s²
";

/// A brief with three axes, each carrying the next.
pub const FULL: &str = "\
machine: Trimming gantry
currency: EUR
years-in-service: 12
hours-per-year: 3500
discount-rate: 4 %
energy-price: 0.3
downtime-cost: 90
environment: [composite dust, draught]
temperature-swing: 6 K
supply-voltage: 480 V
supply-tolerance: 5 %
altitude: 1600 m
ambient-temperature: 45 °C
reliability: 97 %
uncertainty: { moved-mass: 4 %, guide-friction: 25 %, cutting-force: 10 %, temperature-swing: 0 %, stiffness: 20 % }
limits:
  purchase: 60000
  tool-point-error: 0.15 mm
  supply-power: 40 kW
  motor-models: 2
  gearbox-models: 3
  lead-time: 12 weeks
prefer: { whole-life-cost: 5, accuracy: 2, stiffness: 2, upkeep: 1 }
axes:
  long:
    purpose: gantry along the mould
    direction: horizontal
    travel: 11 m
    overtravel: 60 mm
    moved-mass: 1850 kg
    carries: [cross]
    drives: 2
    drive-spacing: 3.6 m
    mass-offset: 120 mm
    yaw-stiffness: 3e5 kN·m/rad
    side-temperature-difference: 1.5 K
    side-correction: 60 %
    guide-spacing: 3.4 m
    guide-base: 1.2 m
    speed: 50 m/min
    acceleration: 2 m/s²
    jerk: 40 m/s³
    cutting-force: 900 N
    cutting-force-direction: forward
    cutting-speed: 12 m/min
    bed: cast-iron
    guide-friction: 0.004
    wiper-force: 80 N
    accuracy: 0.20 mm
    section-accuracy: 0.10 mm
    repeatability: 0.05 mm
    reversal: 0.04 mm
    cutting-deflection: 0.05 mm
    ripple: 0.01 mm
    first-mode: 20 Hz
    feedback: scale
    mapping: none
    along: x
    guide-tilt: 8 arcsec
    tool-to-drive: 400 mm
    tool-to-scale: 250 mm
    families: [helical-rack, twin-pinion]
    duty:
      - { share: 15 %, speed: 50 m/min, stroke: 8 m }
      - { share: 55 %, speed: 12 m/min, force: 900 N }
      - { share: 30 %, stand: true, force: 100 N }
  cross:
    direction: 0 deg
    travel: 3.2 m
    moved-mass: 900 lb
    carries: [ram]
    speed: 1000 in/min
    acceleration: 0.3 g
    cutting-force: 200 lbf
  ram:
    direction: vertical
    travel: 0.7 m
    moved-mass: 180 kg
    speed: 20 m/min
    acceleration: 3 m/s²
    counterbalance: { kind: gas, share: 85 % }
    people-below: true
waivers:
  - { rule: inertia-ratio, axis: long, reason: tuned on the prototype, by: drive engineer, until: 2028-02-29 }
  - { rule: ripple, reason: sanded afterwards, by: owner }
";

pub fn brief(text: &str) -> Brief {
    load("test.yaml", text).unwrap_or_else(|faults| panic!("{faults}"))
}

pub fn refused(text: &str) -> Faults {
    match load("test.yaml", text) {
        Ok(_) => panic!("this brief should be refused:\n{text}"),
        Err(faults) => faults,
    }
}

/// `LEAST` with more lines for its axis.
pub fn with_axis_lines(lines: &str) -> String {
    let mut text = LEAST.to_string();
    for line in lines.lines() {
        text.push_str(&format!("    {line}\n"));
    }
    text
}

/// `LEAST` with a line replaced.
pub fn with_replaced(line: &str, by: &str) -> String {
    assert!(LEAST.contains(line));
    LEAST.replace(line, by)
}

/// Exactly one fault, at this line and key, that says this.
#[track_caller]
pub fn one_fault(text: &str, line: usize, path: &str, says: &str) {
    let faults = refused(text);
    assert_eq!(faults.len(), 1, "{faults}");
    let fault = faults.iter().next().unwrap();
    assert_eq!((fault.line, fault.path.as_str()), (line, path), "{fault}");
    assert!(fault.message.contains(says) || fault.help.as_deref().is_some_and(|help| help.contains(says)), "{fault}");
}
