//! How long the program of the machine takes: random machines of several axes and drives, with limits that bind.
//!
//! Method: a fixed pseudo-random sequence makes drives of which none beats another in all that counts; limits are shares
//! of what the drives of least merit need, so that they bind. Prints times, columns and ratios; it asserts no time.
//! Run with `cargo bench --bench machine`.

use axiswright::brief::{self, Brief, Limits};
use axiswright::search::{Attributes, Found, MOST_STAGES, Offer};
use axiswright::select::{Machine, Status};
use axiswright::units::{Length, Measure, Money, Power};
use std::time::Instant;

/// A multiplicative sequence (Knuth's constants for 64 bits).
struct Sequence(u64);

impl Sequence {
    fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.unit()
    }
}

/// So many axes: pairs carry one another, or nobody carries anybody.
fn brief(axes: usize, carried: bool) -> Brief {
    let mut text = String::from("machine: Bench\naxes:\n");
    for axis in 0..axes {
        let carries = if carried && axis % 2 == 0 && axis + 1 < axes {
            format!(", carries: [a{}]", axis + 1)
        } else {
            String::new()
        };
        text += &format!(
            "  a{axis}: {{ direction: horizontal, travel: 1 m, moved-mass: 50 kg, speed: 10 m/min, \
             acceleration: 1 m/s²{carries} }}\n"
        );
    }
    brief::load("bench.yaml", &text).expect("the brief of the bench loads")
}

const FAMILIES: [&str; 5] = ["ball-screw", "driven-nut", "helical-rack", "straight-rack", "twin-pinion"];

fn beats(a: &Attributes, b: &Attributes) -> bool {
    a.merit <= b.merit
        && a.error <= b.error
        && a.mass <= b.mass
        && a.purchase <= b.purchase
        && a.power <= b.power
        && a.motor == b.motor
}

fn offers(axes: usize, drives: usize, carried: bool, noise: f64, sequence: &mut Sequence) -> Vec<Vec<Offer>> {
    (0..axes)
        .map(|axis| {
            let mut offers: Vec<Offer> = Vec::new();
            while offers.len() < drives {
                let mut path = [0; MOST_STAGES];
                path[0] = offers.len() as u16;
                // what costs more is better in the rest, within some noise
                let size = sequence.unit();
                let mut near = |value: f64| value * sequence.between(1.0 - noise, 1.0 + noise);
                let attributes = Attributes {
                    merit: near(2000.0 + 4000.0 * size),
                    error: near(40e-6 / (1.0 + 6.0 * size)),
                    mass: near(12.0 + 30.0 * (1.0 - size)),
                    purchase: near(1200.0 + 3200.0 * size),
                    power: near(3000.0 - 1500.0 * size),
                    whole_life: 0.0,
                    lead_time: 0.0,
                    motor: 0,
                    gearbox: 0,
                };
                let motor = 1 + (sequence.unit() * 24.0) as u64;
                let gearbox = (sequence.unit() * 12.0) as u64;
                let attributes = Attributes { motor, gearbox, ..attributes };
                if offers.iter().any(|offer| beats(&offer.found.attributes, &attributes)) {
                    continue;
                }
                offers.retain(|offer| !beats(&attributes, &offer.found.attributes));
                let loaded = carried && axis % 2 == 0;
                let (least, most) = if loaded { (0.0, 50.0 + sequence.between(10.0, 45.0)) } else { (0.0, 0.0) };
                let family = FAMILIES[(sequence.unit() * 5.0) as usize % 5];
                offers.push(Offer { found: Found { family, path, attributes }, least, most });
            }
            offers.sort_by(|a, b| a.found.order(&b.found));
            offers
        })
        .collect()
}

fn main() {
    println!("axes x drives  limits                          status        merit/bound  choose ms  next ms  other ms");
    for (axes, drives) in [(3, 50), (6, 50), (8, 50), (5, 200), (8, 200), (8, 400)] {
        for (name, purchase, error, power, motors, carried) in [
            ("none", 0.0, 0.0, 0.0, None, false),
            ("mass", 0.0, 0.0, 0.0, None, true),
            ("error", 0.0, 0.5, 0.0, None, false),
            ("error, mass", 0.0, 0.5, 0.0, None, true),
            ("error, power, mass", 0.0, 0.6, 0.92, None, true),
            ("error, purchase", 1.15, 0.75, 0.0, None, false),
            ("error, purchase, power, mass", 1.2, 0.75, 0.95, None, true),
            ("3 motors", 0.0, 0.0, 0.0, Some(3), false),
            ("4 motors, error, mass", 0.0, 0.6, 0.0, Some(4), true),
            ("3 motors, all", 1.3, 0.75, 0.98, Some(3), true),
        ] {
            for seed in 1..=3 {
                let brief = brief(axes, carried);
                let mut sequence = Sequence(seed * 7919 + axes as u64 * 31 + drives as u64);
                let offers = offers(axes, drives, carried, 0.12, &mut sequence);
                let sum = |of: fn(&Attributes) -> f64| -> f64 {
                    offers.iter().map(|offer| of(&offer[0].found.attributes)).sum()
                };
                let some = |share: f64, of: fn(&Attributes) -> f64| (share > 0.0).then(|| share * sum(of));
                let limits = Limits {
                    purchase: some(purchase, |attributes| attributes.purchase).map(Money),
                    tool_point_error: some(error, |attributes| attributes.error.powi(2))
                        .map(|square| Length::of_si(error.sqrt() * square.sqrt())),
                    supply_power: some(power, |attributes| attributes.power).map(Power::of_si),
                    motor_models: motors,
                    ..Limits::default()
                };
                let machine = Machine { brief: &brief, limits, offers };
                let start = Instant::now();
                let choice = machine.choose(false, |_, _, _| true);
                let choosing = start.elapsed().as_secs_f64() * 1e3;
                let (mut next, mut other) = (0.0, 0.0);
                if choice.status == Status::Optimal {
                    let start = Instant::now();
                    let found = machine.next_best(&choice.picks, 4, |_, _, _| true);
                    next = start.elapsed().as_secs_f64() * 1e3;
                    assert!(found.iter().all(|next| next.objective >= choice.objective.unwrap_or_default()));
                    let start = Instant::now();
                    machine.best_of_other_family(&choice.picks, |_, _, _| true);
                    other = start.elapsed().as_secs_f64() * 1e3;
                }
                println!(
                    "{axes} x {drives:4}  {name:30}  {:12}  {:9.4}  {choosing:9.1}  {next:7.1}  {other:7.1}",
                    format!("{:?}", choice.status),
                    choice.objective.unwrap_or(f64::NAN) / machine.floor(),
                );
            }
        }
    }
}
