//! Entry of `calc` on the preload of a screw, which reads its thread.
//!
//! Method: "M8" means the coarse pitch of ISO 261, "M8x1" the pitch written. Limits: M3 to M36.

use super::Entry;
use super::argument::{Argument, Kind};
use super::error::Fault;
use super::given::{Given, Outcome};
use crate::formula::bolt;
use crate::units::Dimension as D;
use crate::units::{Length, Measure, Pressure};

/// Coarse threads of ISO 261, from memory: nominal diameter and pitch, mm.
const COARSE: [(f64, f64); 17] = [
    (3.0, 0.5),
    (4.0, 0.7),
    (5.0, 0.8),
    (6.0, 1.0),
    (8.0, 1.25),
    (10.0, 1.5),
    (12.0, 1.75),
    (14.0, 2.0),
    (16.0, 2.0),
    (18.0, 2.5),
    (20.0, 2.5),
    (22.0, 2.5),
    (24.0, 3.0),
    (27.0, 3.0),
    (30.0, 3.5),
    (33.0, 3.5),
    (36.0, 4.0),
];

/// The entries of this file.
pub(super) fn entries() -> Vec<Entry> {
    vec![Entry::own(
        &bolt::BOLT_PRELOAD.note,
        &[
            Argument::new("thread", Kind::Text("M8|M8x1")),
            Argument::word("class", &["8.8", "10.9", "12.9"]),
            Argument::not_negative("friction", D::Ratio).or("0.12"),
        ],
        (D::Force, "kN"),
        preload,
    )]
}

/// Nominal diameter and pitch of a thread, mm.
fn thread(text: &str) -> Result<(f64, f64), Fault> {
    let refused = |why: &str| Fault::OutOfRange { name: "thread".into(), text: format!("`{text}`"), why: why.into() };
    let shape = "must be a metric thread from M3 to M36, such as M8 or M8x1";
    let written = text.trim().to_lowercase().replace(['×', '*'], "x");
    let sizes = written.strip_prefix('m').ok_or_else(|| refused(shape))?;
    let (nominal, pitch) = sizes.split_once('x').map_or((sizes, None), |(nominal, pitch)| (nominal, Some(pitch)));
    let number = |text: &str| text.trim().parse::<f64>().map_err(|_| refused(shape));
    let nominal = number(nominal)?;
    let coarse = COARSE.iter().find(|(size, _)| *size == nominal).map(|(_, pitch)| *pitch);
    let coarse = coarse.ok_or_else(|| refused(shape))?;
    let pitch = pitch.map_or(Ok(coarse), number)?;
    if pitch > 0.0 && pitch <= coarse { Ok((nominal, pitch)) } else { Err(refused("must not be coarser than ISO 261")) }
}

/// Yield strength R_p0.2 of a property class, MPa (ISO 898-1, from memory).
fn strength(class: &str, nominal: f64) -> f64 {
    match class {
        "8.8" if nominal <= 16.0 => 640.0,
        "8.8" => 660.0,
        "10.9" => 940.0,
        _ => 1100.0,
    }
}

fn preload(given: &Given) -> Result<Outcome, Fault> {
    let (nominal, pitch) = thread(given.word("thread"))?;
    let strength = Pressure::of_si(strength(given.word("class"), nominal) * 1e6);
    let (nominal, pitch) = (Length::of_si(nominal * 1e-3), Length::of_si(pitch * 1e-3));
    let friction = given.get("friction");
    let force = bolt::bolt_preload(nominal, pitch, strength, friction);
    Ok(Outcome::of(force)
        .step("d", nominal)
        .step("P", pitch)
        .step("R_p0.2", strength)
        .step("tightening torque", bolt::tightening_torque(nominal, pitch, force, friction))
        .valid_if(given.value("friction") <= 0.3, "a friction coefficient above 0.3"))
}
