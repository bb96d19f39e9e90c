//! What only a driven nut has.

use crate::ledger::{About, Characteristic};
use crate::units::*;

characteristics! {
    after super::screw_ends::END;

    NUT_DIAMETER: Length, "nut-diameter", "D_n", "mm", "outside diameter of the nut body";
    NUT_UNIT_DIAMETER: Length, "nut-unit-diameter", "d_u", "mm", "nominal diameter of the screws that the nut unit is made for";
    NUT_UNIT_MISFIT: Length, "nut-unit-misfit", "Δd_u", "mm", "by how much the nut unit is made for another diameter of screw";
    NUT_UNIT_INERTIA: MomentOfInertia, "nut-unit-inertia", "J_u", "kg·cm²", "inertia of all that turns with a driven nut, the nut included";
    NUT_UNIT_SPEED_LIMIT: AngularVelocity, "nut-unit-speed-limit", "n_nu", "1/min", "highest speed of the nut unit";
    NUT_UNIT_MASS: Mass, "nut-unit-mass", "m_u", "kg", "mass of the nut unit without the nut";
    NUT_UNIT_STIFFNESS: Stiffness, "nut-unit-stiffness", "k_u", "N/µm", "axial stiffness of the nut unit's bearing and housing";
    CLAMP_STIFFNESS: Stiffness, "clamp-stiffness", "k_c", "N/µm", "axial stiffness of the clamp at one end of a standing screw";
    PULLEY_DIAMETER: Length, "pulley-diameter", "d_pu", "mm", "pitch diameter of the belt pulley on screw or nut";
    WARM_WHIP_FACTOR: Ratio, "warm-whip-factor", "x_ww", "1", "critical speed of the warm standing screw over that without axial force";
    WARM_WHIP_SPEED: AngularVelocity, "warm-whip-speed", "n_crw", "1/min", "first bending critical speed of the warm standing screw";
    WARM_WHIP_DISTANCE: Ratio, "warm-whip-distance", "x_crw", "1", "least distance of the nut's speeds from the critical speed of the warm standing screw, over that speed";
    WHIP_DISTANCE: Ratio, "whip-distance", "x_cr", "1", "least distance of the nut's speeds from the critical speed of the standing screw, over that speed";
}
