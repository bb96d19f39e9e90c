//! Limits of undercut and parts of the involute geometry.
//!
//! ISO 21771, equations from memory, with the basic rack of ISO 53 profile A. The straight limit of 17.10
//! teeth is printed in every gear text (G. Niemann, H. Winter, *Maschinenelemente* vol. II, from memory: z = 17);
//! the others are worked by hand from the same equations.

use crate::{mm, near, newton, ratio, straight};
use axiswright::formula::gear_geometry::*;
use axiswright::units::Measure;

#[test]
fn a_straight_pinion_needs_17_10_teeth_and_a_metric_helix_14_52() {
    near("straight", (LEAST_TEETH.apply)(straight(), ratio(0.0)).si(), 17.10, 0.005);
    near("metric helix", (LEAST_TEETH.apply)(metric_helix(), ratio(0.0)).si(), 14.52, 0.005);
}

#[test]
fn least_profile_shift_of_small_pinions() {
    let straight_limits = [(10.0, 0.415), (12.0, 0.298), (14.0, 0.181), (15.0, 0.123), (17.0, 0.006)];
    let helical_limits = [(10.0, 0.311), (12.0, 0.174), (14.0, 0.036), (15.0, -0.033), (17.0, -0.170)];
    for (helix, limits) in [(straight(), straight_limits), (metric_helix(), helical_limits)] {
        for (teeth, limit) in limits {
            let value = (LEAST_PROFILE_SHIFT.apply)(ratio(teeth), helix);
            near(&format!("{teeth} teeth"), value.si(), limit, 0.0005);
            let teeth_again = (LEAST_TEETH.apply)(helix, value).si();
            assert!((teeth_again - teeth).abs() < 1e-9, "{teeth} teeth come back as {teeth_again}");
        }
    }
}

#[test]
fn tip_thickness_of_straight_pinions() {
    for (teeth, shift, thickness) in [(20.0, 0.0, 0.695), (20.0, 0.5, 0.473), (14.0, 0.5, 0.349)] {
        let value = (TIP_THICKNESS.apply)(ratio(teeth), straight(), ratio(shift)).si();
        near(&format!("{teeth} teeth, x {shift}"), value, thickness, 0.0005);
    }
}

#[test]
fn tooth_force_across_the_shaft() {
    near("straight", (RADIAL_LOAD.apply)(newton(1000.0), straight()).si(), 1064.2, 0.05);
    near("metric helix", (RADIAL_LOAD.apply)(newton(1000.0), metric_helix()).si(), 1072.0, 0.05);
}

#[test]
fn contact_ratios_of_a_module_2_pair() {
    let module = mm(2.0);
    let transverse = (TRANSVERSE_CONTACT_RATIO.apply)(module, ratio(20.0), metric_helix(), ratio(0.0));
    let overlap = (OVERLAP_RATIO.apply)(module, metric_helix(), mm(24.0));
    near("ε_α", transverse.si(), 1.615, 0.0005);
    near("ε_β", overlap.si(), 1.277, 0.0005);
    near("ε_γ", (TOTAL_CONTACT_RATIO.apply)(transverse, overlap).si(), 2.892, 0.0005);
}
