//! Mounting and lubrication.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::energy::END;

    FASTENER_TORQUE: Torque, "fastener-torque", "T_A", "N·m", "tightening torque of one rack fastener";
    SEGMENT_FASTENERS: Ratio, "segment-fasteners", "n_fs", "1", "fasteners of one rack segment";
    JOINTS: Ratio, "joints", "n_j", "1", "joints of the rack line";
    PINS_PER_SEGMENT: Ratio, "pins-per-segment", "n_ps", "1", "locating pins of one rack segment";
    PIN_DIAMETER: Length, "pin-diameter", "d_pin", "mm", "diameter of a locating pin";
    PIN_STRENGTH: Pressure, "pin-strength", "τ_pin", "MPa", "shear stress that a pin in its bore bears";
    PINS: Ratio, "pins", "n_pin", "1", "locating pins of the rack line";
    SEGMENT_HOLDING_FORCE: Force, "segment-holding-force", "F_hs", "kN", "force at which a whole rack segment moves, all fasteners and pins";
    STOP_SEAT_FORCE: Force, "stop-seat-force", "F_se", "kN", "force in the seat of the rack in an emergency stop";
    GREASE_PER_DISTANCE: LinearMassDensity, "grease-per-distance", "q_gr", "g/km", "grease that the teeth ask for their way, at the reference width";
    GREASE_WIDTH: Length, "grease-width", "b_0", "mm", "face width for which that is stated";
    GREASE_PER_YEAR: Mass, "grease-per-year", "m_gr", "kg", "grease that one rack line asks in a year of service";
    LUBRICATOR_SPEED_LIMIT: Velocity, "lubricator-speed-limit", "v_lub", "m/min", "highest speed at which a lubricating pinion brings grease to the teeth";
    RELUBRICATION_DISTANCE: Length, "relubrication-distance", "s_l", "km", "way between two lubrications of a nut";
    RELUBRICATION_HOURS: Time, "relubrication-hours", "t_l", "h", "working time between two lubrications of a nut";
    GREASE_PER_DIAMETER: LinearMassDensity, "grease-per-diameter", "q_l", "kg/m", "grease of one lubrication over the diameter of the screw";
    SURROUNDINGS_SHARE: Ratio, "surroundings-share", "x_su", "%", "interval of lubrication in these surroundings over that in clean air";
    LUBRICATION_INTERVAL: Time, "lubrication-interval", "t_i", "h", "working time between two lubrications of a nut in these surroundings";
    GREASE_NEED: Mass, "grease-need", "m_gn", "kg", "grease that one drive asks in a year in these surroundings";
    GREASE_DOSE: Mass, "grease-dose", "m_l", "kg", "grease of one lubrication of a nut";
}
