//! Form factor and stress correction of 20° teeth loaded at the tip, basic rack with root radius 0.38 modules.
//!
//! Pu Lianggui (ed.), *Mechanical Design*, Higher Education Press, Beijing, Table 10-5 (book and table number
//! from memory), as reproduced in a university course on machine design (public mirror, page
//! jxcjjp/kcnr/6/21.htm). The last column of the printed table stands under no tooth number: it is the rack.
//!
//! The printed values are smoothed: 25 of 50 differ from the equations by more than half of their last digit,
//! by at most 0.71 % (Y_Fa) and 0.44 % (Y_Sa). An independent numerical generation of the tooth (tests/methods)
//! sides with the equations. Our values stand beside the printed ones; a row without one agrees as printed.

use crate::{near, ratio, straight};
use axiswright::formula::tooth_strength::{TIP_FORM_FACTOR, TIP_STRESS_CORRECTION, rack_tooth_at_tip};
use axiswright::units::Measure;

/// Teeth, Y_Fa and Y_Sa as printed, and our value where it differs by more than half of the last digit.
type Row = (f64, f64, Option<f64>, f64, Option<f64>);

const TABLE: [Row; 25] = [
    (17.0, 2.97, Some(2.9575), 1.52, None),
    (18.0, 2.91, Some(2.8979), 1.53, None),
    (19.0, 2.85, None, 1.54, None),
    (20.0, 2.80, None, 1.55, None),
    (21.0, 2.76, None, 1.56, None),
    (22.0, 2.72, None, 1.57, None),
    (23.0, 2.69, None, 1.575, Some(1.5776)),
    (24.0, 2.65, Some(2.6605), 1.58, Some(1.5851)),
    (25.0, 2.62, Some(2.6336), 1.59, None),
    (26.0, 2.60, Some(2.6091), 1.595, Some(1.5989)),
    (27.0, 2.57, Some(2.5865), 1.60, Some(1.6053)),
    (28.0, 2.55, Some(2.5658), 1.61, None),
    (29.0, 2.53, Some(2.5467), 1.62, None),
    (30.0, 2.52, Some(2.5290), 1.625, None),
    (35.0, 2.45, Some(2.4571), 1.65, None),
    (40.0, 2.40, None, 1.67, None),
    (45.0, 2.35, Some(2.3646), 1.68, Some(1.6868)),
    (50.0, 2.32, Some(2.3330), 1.70, None),
    (60.0, 2.28, Some(2.2863), 1.73, None),
    (70.0, 2.24, Some(2.2535), 1.75, None),
    (80.0, 2.22, Some(2.2291), 1.77, None),
    (90.0, 2.20, Some(2.2103), 1.78, None),
    (100.0, 2.18, Some(2.1953), 1.79, None),
    (150.0, 2.14, Some(2.1508), 1.83, Some(1.8380)),
    (200.0, 2.12, Some(2.1287), 1.865, None),
];

/// Half of the last printed digit; three decimals are printed in steps of 0.005.
fn half_digit(printed: f64) -> f64 {
    if (printed * 100.0 - (printed * 100.0).round()).abs() > 1e-6 { 0.0025 } else { 0.005 }
}

fn compare(what: &str, teeth: f64, value: f64, printed: f64, kept: Option<f64>, furthest: f64) {
    let what = format!("{what} of {teeth} teeth");
    match kept {
        Some(ours) => {
            near(&what, value, ours, 0.00005);
            assert!((ours - printed).abs() > half_digit(printed), "{what} agrees and needs no note");
        }
        None => near(&what, value, printed, half_digit(printed)),
    }
    assert!((value / printed - 1.0).abs() <= furthest, "{what}: {value}, printed {printed}");
}

#[test]
fn tip_form_factor_and_stress_correction_follow_the_printed_table() {
    for (teeth, form, our_form, correction, our_correction) in TABLE {
        let value = (TIP_FORM_FACTOR.apply)(ratio(teeth), straight(), ratio(0.0)).si();
        compare("Y_Fa", teeth, value, form, our_form, 0.0071);
        let value = (TIP_STRESS_CORRECTION.apply)(ratio(teeth), straight(), ratio(0.0)).si();
        compare("Y_Sa", teeth, value, correction, our_correction, 0.0044);
    }
}

#[test]
fn rack_column_of_the_table_is_met() {
    let rack = rack_tooth_at_tip();
    near("Y_Fa of the rack", rack.form_factor, 2.06, 0.005);
    near("Y_Sa of the rack", rack.stress_correction(), 1.97, 0.005);
}

/// Both factors approach those of the rack as a + b/z + c/z²; three large pinions give a, which is the rack.
#[test]
fn rack_tooth_is_the_limit_of_a_pinion_with_200_000_teeth() {
    let rack = rack_tooth_at_tip();
    let at = |teeth: f64| {
        let form = (TIP_FORM_FACTOR.apply)(ratio(teeth), straight(), ratio(0.0)).si();
        let correction = (TIP_STRESS_CORRECTION.apply)(ratio(teeth), straight(), ratio(0.0)).si();
        [form, correction]
    };
    let (small, middle, large) = (at(100_000.0), at(200_000.0), at(400_000.0));
    for (index, limit) in [rack.form_factor, rack.stress_correction()].into_iter().enumerate() {
        let drawn = (8.0 * large[index] - 6.0 * middle[index] + small[index]) / 3.0;
        assert!((drawn / limit - 1.0).abs() < 1e-8, "{drawn} against {limit}");
    }
    // what is left at 200 000 teeth: 6.3/z of the form factor, 13/z of the stress correction
    near("Y_Fa", middle[0] / rack.form_factor - 1.0, 3.2e-5, 0.05e-5);
    near("Y_Sa", middle[1] / rack.stress_correction() - 1.0, -6.5e-5, 0.05e-5);
}
