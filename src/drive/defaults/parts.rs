//! Values of parts that no catalogue entry states: a screw, a mesh, a bolted seat, a belt, a brake.

use crate::units::*;

/// Yield strength of the core of a screw.
pub fn screw_yield_strength() -> Pressure {
    Pressure::of_si(350e6)
}
/// Groove radius over ball diameter, for ratings that the catalogue does not state.
pub fn conformity() -> Ratio {
    Ratio::of_si(0.54)
}
/// Stretch of a standing screw between its clamps.
pub fn clamp_stretch() -> TemperatureInterval {
    TemperatureInterval::of_si(3.0)
}
/// Clamp at one end of a standing screw.
pub fn clamp_stiffness() -> Stiffness {
    Stiffness::of_si(2000e6)
}
/// Pretension of each span of a belt over its largest pull.
pub fn pretension_share() -> Ratio {
    Ratio::of_si(0.8)
}
/// Friction of a greased mesh.
pub fn mesh_friction() -> Ratio {
    Ratio::of_si(0.09)
}
/// Friction of fastener thread and head.
pub fn thread_friction() -> Ratio {
    Ratio::of_si(0.12)
}
/// Friction between rack and seat, dry machined steel.
pub fn seat_friction() -> Ratio {
    Ratio::of_si(0.15)
}
/// Scatter of tightening by torque wrench.
pub fn tightening_factor() -> Ratio {
    Ratio::of_si(1.6)
}
/// Preload lost by embedding.
pub fn embedding_loss() -> Ratio {
    Ratio::of_si(0.075)
}
/// Fasteners that share the force at a segment end.
pub fn sharing_fasteners() -> Ratio {
    Ratio::of_si(3.0)
}
/// Distance along the rack of the two pinions of a drive.
pub fn pinion_spacing() -> Length {
    Length::of_si(0.3)
}
/// Scatter that no ball screw axis falls below.
pub fn screw_scatter() -> Length {
    Length::of_si(0.6e-6)
}
/// Damping ratio of the first resonance of a drive.
pub fn drive_damping() -> Ratio {
    Ratio::of_si(0.05)
}
/// Damping ratio of a screw that bends.
pub fn screw_damping() -> Ratio {
    Ratio::of_si(0.02)
}
/// Scatter that no rack axis falls below.
pub fn rack_scatter() -> Length {
    Length::of_si(1.5e-6)
}
/// Scatter that no axis falls below whose position a linear scale measures.
pub fn scale_scatter() -> Length {
    Length::of_si(0.6e-6)
}
/// Run-out of gearbox shaft and pinion bore together.
pub fn seat_run_out() -> Length {
    Length::of_si(10e-6)
}
/// How far the pinion axis stands off square to the rack on 100 mm, where the quality does not say.
pub fn pinion_squareness() -> Length {
    Length::of_si(50e-6)
}
/// Flatness of the seat on a metre, where the quality does not say.
pub fn seat_straightness() -> Length {
    Length::of_si(100e-6)
}
/// From the front bearing of a gearbox to the face of a pinion.
pub fn bearing_gap() -> Length {
    Length::of_si(8e-3)
}
/// Core of the screw of 50 mm that racks are compared with.
pub fn reference_core() -> Length {
    Length::of_si(44e-3)
}
/// Nut, bearings and bracket of that screw.
pub fn reference_rest() -> Stiffness {
    Stiffness::of_si(500e6)
}
/// Cycles up to which flanks bear no more than at fewer.
pub fn flank_static_cycles() -> Ratio {
    Ratio::of_si(1e5)
}
/// Mean stress factor of teeth loaded on both flanks.
pub fn reversal_factor() -> Ratio {
    Ratio::of_si(0.7)
}
