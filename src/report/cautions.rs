//! What a reader is warned of, by the ids that the record carries.
//!
//! Limits: a caution is information, not a safety concept. It claims no conformity and gives no
//! performance level.

/// Id and text of every caution.
pub const CAUTIONS: &[(&str, &str)] = &[
    (
        "general",
        "This is an engineering aid. Its results are as good as the brief and the assumptions listed here. A \
         qualified engineer, licensed where the law asks for it, must check them before anything is ordered or \
         built. Local codes, the standards for the machine and the documentation of each component take \
         precedence. No conformity with any directive or standard is claimed.",
    ),
    (
        "suspended",
        "The load can drive this axis backwards, with a screw as well as with a rack. Switching off the torque of \
         the motor does not hold it. The risk assessment says by what means the load is held, with what test \
         factor and how often that is tested. Holding figures here take no credit for friction. The brake of a motor is \
         made to hold; it bears few stops from full speed, and each of them heats and wears it.",
    ),
    (
        "people-below",
        "People may be under this load. Most codes then ask for two independent means of holding, or for one that \
         is tested in a cycle. This program gives no performance level and cannot judge the safety functions.",
    ),
    (
        "counterbalance",
        "Loss of the counterbalance is a case to design for: brake and drive must hold the full weight. A gas \
         spring or cylinder keeps its pressure when the power is off. It needs a way to shut it off and to let the \
         pressure down before work begins. A hanging weight needs a guarded shaft, and a rope whose slackening or \
         breaking is detected; nobody works below it.",
    ),
    (
        "rack-trapping",
        "Rack and pinion draw in fingers and sleeves where the teeth meet, and moving covers close gaps that crush. \
         Guard both. Size buffers and end stops for the full force of the drive plus the weight along the axis, and \
         check that overtravel is detected.",
    ),
    (
        "screw-entanglement",
        "A turning screw winds up hair, gloves and clothing. Enclose the screw, its couplings and its belts over the \
         whole travel.",
    ),
    (
        "screw-hangs",
        "The screw is worked out as hanging from its thrust bearing: on an inclined axis that bearing, or one of two, is \
         the upper end, so that the weight pulls. Mounted with the thrust bearing below, the weight presses the screw, \
         and the buckling figure here does not hold.",
    ),
    (
        "turning-nut",
        "Nut, belt and motor ride along the travel. The turning nut and its belt wind up hair, gloves and clothing and \
         draw in fingers against the standing screw. Enclose them, and cover the screw over the whole travel.",
    ),
    (
        "end-stop-inertia",
        "Motor and screw, or motor and driven nut, store more energy than the slide. In a crash into a rigid end stop that energy goes through \
         the nut and its bearings, and a torque limit does not take it away. Use yielding stops; the worksheet gives the \
         energy and the stroke of a buffer of three times the push of the drive. Check nut and bearings for the crash.",
    ),
    (
        "belt",
        "A belt stands between the motor with its brake and the load. If the belt breaks or jumps, the brake holds \
         nothing and the load falls. Use a second brake or a clamp on the load's side, or a drive without a belt.",
    ),
    (
        "scale-feedback",
        "The position loop closes over a linear scale. Play inside the loop can make the axis hunt. If the scale \
         fails or jumps, the axis can move without control, so the control must compare it with the motor encoder \
         and stop on a difference.",
    ),
    (
        "two-drives",
        "Two drives move this axis together. If one is lost or lags, the gantry skews and the other drive takes the \
         whole load. The control must watch the difference and stop both. The gantry must bear the skew that \
         arises until they stand; part two gives force, moment and angle for a stop on one side alone. Errors and \
         temperatures that differ between the two sides press drives and guides against each other. That racking \
         force counts here in drives and motors; it hangs on the stiffness of the guides and on the difference of \
         temperature, which are assumed unless the brief states them. Measure it when the axis is fitted.",
    ),
    (
        "dust",
        "The brief names dust. Dust that burns or conducts brings rules for explosion protection and electrical \
         clearances that are outside this program. Covers, wipers and lubrication must suit it.",
    ),
    (
        "stored-energy",
        "Capacitors of the drive electronics, springs and raised loads hold energy after the main switch is off. \
         Before work: stop, isolate every supply, lock and tag, lower or prop the load, wait for the capacitors to \
         discharge, and prove that nothing moves or carries voltage.",
    ),
];

/// The text of a caution.
pub fn text(id: &str) -> Option<&'static str> {
    CAUTIONS.iter().find(|(known, _)| *known == id).map(|(_, text)| *text)
}
