//! Defaults that belong to the drive and not to the brief; every one is listed as an assumption.

use crate::brief::Axis;
use crate::catalog::BallScrew;
use crate::units::*;

/// Expansion of steel, 1/K: screw, rack and bed.
pub const STEEL_EXPANSION: f64 = 11.5e-6;

/// Length of the short run from cold that is told of a motor.
pub fn short_time() -> Time {
    Time::of_si(600.0)
}

/// Values that nobody states for an axis.
#[derive(Debug, Clone, Copy)]
pub struct AxisDefaults {
    /// Stroke of a usual move: the shortest of the duty.
    pub usual_stroke: Length,
    /// Bracket and housing that take the drive force.
    pub bracket_stiffness: Stiffness,
    /// Between a linear scale and the slide.
    pub scale_mount_stiffness: Stiffness,
    /// From the end of overtravel to the bearing, each end.
    pub end_gap: Length,
    /// Part of the friction that varies from approach to approach.
    pub friction_scatter: Ratio,
    /// Part of the play that the controller compensates.
    pub compensated_play: Ratio,
    /// Torque limit set in the drive over the largest torque of the duty.
    pub torque_margin: Ratio,
    /// Time from loss of power to the grip of the brake.
    pub brake_delay: Time,
    /// Part of the rated brake torque that a warm or worn brake still gives.
    pub brake_share: Ratio,
}

/// The defaults of an axis.
pub fn for_axis(axis: &Axis) -> AxisDefaults {
    let strokes = axis.duty.iter().filter(|line| !line.stand).map(|line| line.stroke.unwrap_or(axis.usual_stroke()));
    let distances = axis.moves.iter().map(|line| Length::of_si(line.distance.si().abs()));
    let usual_stroke =
        strokes.chain(distances).fold(axis.travel, |least, stroke| if stroke < least { stroke } else { least });
    AxisDefaults {
        usual_stroke,
        bracket_stiffness: Stiffness::of_si(800e6),
        scale_mount_stiffness: Stiffness::of_si(400e6),
        end_gap: Length::of_si(0.040),
        friction_scatter: Ratio::of_si(0.1),
        compensated_play: Ratio::of_si(0.0),
        torque_margin: Ratio::of_si(1.5),
        brake_delay: Time::of_si(0.05),
        brake_share: Ratio::of_si(0.8),
    }
}

pub mod parts;
pub mod servo;
pub mod stopping;

/// One drive default as an assumption: name, value, unit, why.
pub type Told = (&'static str, String, &'static str, &'static str);

/// The defaults above in words, for the list of assumptions.
pub fn told(axis: &Axis) -> Vec<Told> {
    let d = for_axis(axis);
    let length = |value: Length| significant(value.si() * 1e3, 6);
    let practice = |why: &'static str| why;
    let mut list = vec![
        (
            "bracket-stiffness",
            significant(d.bracket_stiffness.si() / 1e6, 4),
            "N/µm",
            practice("brackets of 500 to 2000 N/µm are usual (common practice, no source)"),
        ),
        (
            "scale-mount-stiffness",
            significant(d.scale_mount_stiffness.si() / 1e6, 4),
            "N/µm",
            practice("300 to 400 N/µm between scale and slide (common practice, no source)"),
        ),
        (
            "end-gap",
            length(d.end_gap),
            "mm",
            practice("room for wiper, buffer and bearing at each end of a screw (common practice, no source)"),
        ),
        (
            "friction-scatter",
            significant(d.friction_scatter.si() * 100.0, 3),
            "%",
            practice("variation of friction from approach to approach (common practice, no source)"),
        ),
        (
            "compensated-play",
            significant(d.compensated_play.si() * 100.0, 3),
            "%",
            practice("no play compensation in the controller is credited"),
        ),
        (
            "torque-margin",
            significant(d.torque_margin.si(), 3),
            "1",
            "the drive electronics limit the motor to 1.5 times the largest torque of the duty, or of the whole weight at rest where that is more; it must be set so (common practice, no source)",
        ),
        (
            "brake-delay",
            significant(d.brake_delay.si() * 1e3, 3),
            "ms",
            "time until a spring-applied motor brake grips, 20 to 60 ms (common practice, no source)",
        ),
        (
            "brake-share",
            significant(d.brake_share.si(), 3),
            "1",
            "a warm or worn holding brake still gives 70 to 80 % of its rated torque (common practice, no source)",
        ),
        (
            "duty-interleaving",
            "2".into(),
            "winding time constants",
            "the shares of the duty alternate within about twice the thermal time constant of the winding (some minutes), for single ramps and cuts are judged from its mean heat; of longer bursts the duty must state one alone (common practice, no source)",
        ),
        (
            "short-time",
            significant(short_time().si() / 60.0, 3),
            "min",
            "length of the short run from cold that is told of a motor, duty type S2; it decides nothing (common practice, no source)",
        ),
        (
            "acceleration-with-force",
            "none".into(),
            "",
            "full acceleration and the cutting force never act together, save in a stroke too short to reach its speed (common practice, no source)",
        ),
        (
            "section-limit",
            "2000".into(),
            "mm",
            "ISO 230-2 states A and R up to 2 m of travel (scope, as published in GOST ISO 230-2-2016)",
        ),
        (
            "expansion",
            significant(STEEL_EXPANSION * 1e6, 4),
            "µm/(m·K)",
            "steel screw, rack and bed (common practice, no source)",
        ),
    ];
    list.extend(stopping::told());
    list.extend(servo::told());
    list
}

/// Defaults of driven nuts in words, for the list of assumptions.
pub fn told_driven_nuts() -> Vec<Told> {
    vec![
        (
            "clamp-stiffness",
            significant(parts::clamp_stiffness().si() / 1e6, 4),
            "N/µm",
            "block that clamps one end of a standing screw, 1000 to 4000 N/µm; in place of the screw bearing (common practice, no source)",
        ),
        (
            "clamp-tilt",
            "1".into(),
            "d_r",
            "a clamp gives when tilted as much as a free piece of screw of one root diameter in length (common practice, no source)",
        ),
        (
            "stretch",
            significant(parts::clamp_stretch().si(), 3),
            "K",
            "the standing screw is drawn apart between its clamps as by this warming, 2 to 3 K (common practice, no source); it must be mounted so",
        ),
    ]
}

/// Ratings of nuts that the catalogue leaves out, for the list of assumptions; none if it states them all.
pub fn told_estimates(screws: &[BallScrew]) -> Vec<Told> {
    let estimated: Vec<&str> =
        screws.iter().filter(|screw| screw.rating_is_estimated()).map(|screw| screw.designation.as_str()).collect();
    if estimated.is_empty() {
        return Vec::new();
    }
    vec![(
        "rating-estimated",
        format!("conformity {} for {}", significant(parts::conformity().si(), 3), estimated.join(", ")),
        "",
        "the catalogue states no rating of these screws; it is worked out from their geometry (ISO 3408-5, from memory), ±25 %",
    )]
}

/// Defaults of parts in words, for the list of assumptions; `rack` chooses those of a rack.
pub fn told_parts(rack: bool) -> Vec<Told> {
    let ratio = |value: Ratio| significant(value.si(), 4);
    let damping = (
        "drive-damping",
        ratio(parts::drive_damping()),
        "1",
        "damping of the first resonance, 0.03 to 0.10 of critical (common practice, no source)",
    );
    if rack {
        vec![
            damping,
            (
                "least-scatter",
                significant(parts::rack_scatter().si() * 1e6, 3),
                "µm",
                "standard deviation that no rack axis falls below which measures at the motor; 0.6 µm with a linear scale (common practice, no source)",
            ),
            (
                "mesh-friction",
                ratio(parts::mesh_friction()),
                "1",
                "greased teeth at feed speed, 0.08 to 0.10 (common practice, no source)",
            ),
            (
                "thread-friction",
                ratio(parts::thread_friction()),
                "1",
                "oiled steel fastener (VDI 2230 friction class B, from memory)",
            ),
            (
                "seat-friction",
                ratio(parts::seat_friction()),
                "1",
                "dry machined steel on steel, 0.12 to 0.20 (common practice, no source)",
            ),
            ("tightening-factor", ratio(parts::tightening_factor()), "1", "torque wrench (VDI 2230, from memory)"),
            (
                "embedding-loss",
                ratio(parts::embedding_loss()),
                "1",
                "5 to 10 % of the preload (common practice, no source)",
            ),
            (
                "sharing-fasteners",
                ratio(parts::sharing_fasteners()),
                "1",
                "elastic sharing along the bar at a segment end (derived)",
            ),
            (
                "pinion-spacing",
                significant(parts::pinion_spacing().si() * 1e3, 3),
                "mm",
                "two gearboxes beside each other on one plate, both pinions of a drive (common practice, no source)",
            ),
            (
                "reversal-factor",
                ratio(parts::reversal_factor()),
                "1",
                "both flanks loaded, fully reversed (ISO 6336-3, from memory)",
            ),
            (
                "seat-run-out",
                significant(parts::seat_run_out().si() * 1e6, 3),
                "µm",
                "run-out of gearbox shaft and pinion bore, 10 to 20 µm (common practice, no source)",
            ),
            (
                "pinion-squareness",
                significant(parts::pinion_squareness().si() * 1e6, 3),
                "µm",
                "pinion axis off square to the rack on 100 mm, where the quality does not state it (common practice, no source)",
            ),
            (
                "seat-straightness",
                significant(parts::seat_straightness().si() * 1e6, 3),
                "µm",
                "flatness of the rack's seat on a metre, where the quality does not state it (common practice, no source)",
            ),
            (
                "bearing-gap",
                significant(parts::bearing_gap().si() * 1e3, 3),
                "mm",
                "room for seal and shoulder between gearbox bearing and pinion (common practice, no source)",
            ),
            (
                "reference-core",
                significant(parts::reference_core().si() * 1e3, 3),
                "mm",
                "core of a ball screw of 50 mm, for the comparison of stiffness only",
            ),
            (
                "reference-rest",
                significant(parts::reference_rest().si() / 1e6, 3),
                "N/µm",
                "nut, bearings and bracket of that screw, for the comparison of stiffness only (common practice, no source)",
            ),
            (
                "flank-static-cycles",
                ratio(parts::flank_static_cycles()),
                "1",
                "first point of the life line of flanks (ISO 6336-2, from memory)",
            ),
        ]
    } else {
        vec![
            (
                "least-scatter",
                significant(parts::screw_scatter().si() * 1e6, 3),
                "µm",
                "standard deviation that no screw axis falls below which measures at the motor; 0.6 µm with a linear scale (common practice, no source)",
            ),
            damping,
            (
                "screw-damping",
                ratio(parts::screw_damping()),
                "1",
                "damping of a steel shaft in rolling bearings, 0.01 to 0.05 (common practice, no source)",
            ),
            (
                "conformity",
                ratio(parts::conformity()),
                "1",
                "groove radius over ball diameter, 0.515 to 0.55 (common practice, no source), where the catalogue states no rating and for the check of those that it states",
            ),
            (
                "screw-expansion",
                significant(STEEL_EXPANSION * 1e6, 4),
                "µm/(m·K)",
                "the screw is of steel (common practice, no source)",
            ),
            (
                "screw-yield-strength",
                significant(parts::screw_yield_strength().si() / 1e6, 4),
                "MPa",
                "core of a hardened screw, 350 to 700 MPa (common practice, no source); low value taken",
            ),
            (
                "nut-fixity",
                "0".into(),
                "1",
                "the nut holds the screw sideways but lets it tilt, which is on the safe side for buckling (derived)",
            ),
            (
                "pretension-share",
                ratio(parts::pretension_share()),
                "1",
                "pretension of each span of a belt over its largest pull, 0.6 to 1.0 (common practice, no source); above 0.75 both spans stay tight in an emergency stop at 1.5 times the largest torque",
            ),
        ]
    }
}
