//! Geometry of a shifted pair of straight gears.
//!
//! Work sheet of a gear design with module 12 mm, 14 and 79 teeth, profile shift +0.4 and −0.4, 20°, as
//! reproduced on a public document site (document 2847158). The sheet prints the base diameter of the pinion
//! and the tip pressure angles of both gears with nine and ten digits.
//!
//! A kept disagreement: the sheet takes 20° as 0.349 065 845 rad in place of 0.349 065 850, which moves its last
//! digits (d_b 157.868 360 6 in place of 157.868 360 3). With that angle every printed digit comes out.

use crate::{mm, near, ratio, straight};
use axiswright::formula::gear_geometry::{base_diameter, tip_pressure_angle};
use axiswright::units::Measure;

/// 20° as the sheet has it, over 20° as it is: ratio of the cosines.
fn sheet() -> f64 {
    0.349_065_845_f64.cos() / 20f64.to_radians().cos()
}

#[test]
fn base_diameter_and_tip_angles_follow_the_work_sheet() {
    let diameter = base_diameter(mm(12.0), ratio(14.0), straight()).si() * 1e3;
    near("d_b", diameter * sheet(), 157.868_360_6, 0.5e-7);
    for (teeth, shift, printed) in [(14.0, 0.4, 0.671_197_963), (79.0, -0.4, 0.388_093_034)] {
        let angle = tip_pressure_angle(ratio(teeth), straight(), ratio(shift)).si();
        near(&format!("α_a of {teeth} teeth"), (angle.cos() * sheet()).acos(), printed, 0.5e-9);
        near(&format!("α_a of {teeth} teeth, 20° as it is"), angle, printed, 6e-9);
    }
}
