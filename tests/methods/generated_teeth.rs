//! Contact ratio and root form against teeth that are drawn point by point.
//!
//! Method: a pinion flank is drawn as an involute, its fillet as the envelope of the rounded tip of the rack
//! cutter. Pinion and rack are rolled on each other; where the flanks touch inside both of them is searched for
//! by the least gap, with no use of the line of action. The root is measured where the drawn fillet leans 30°.
//! Lengths in normal modules; helical teeth in the transverse plane, roots of straight teeth only.

use crate::{mm, ratio, straight};
use axiswright::formula::gear_geometry::{TRANSVERSE_CONTACT_RATIO, metric_helix};
use axiswright::formula::tooth_strength::{pinion_tooth, rack_tooth};
use axiswright::units::{Angle, Measure};
use std::f64::consts::PI;

struct Pinion {
    radius: f64,
    base: f64,
    tip: f64,
    angle: f64,
    shift: f64,
    pitch: f64,
}

const CUTTER_RADIUS: f64 = 0.38;
/// Depth of the middle of the cutter's rounding below its datum line.
const CUTTER_DEPTH: f64 = 1.25 - CUTTER_RADIUS;

impl Pinion {
    fn new(teeth: f64, helix: Angle, shift: f64) -> Pinion {
        let cos = helix.si().cos();
        let angle = (20f64.to_radians().tan() / cos).atan();
        let radius = teeth / cos / 2.0;
        Pinion { radius, base: radius * angle.cos(), tip: radius + 1.0 + shift, angle, shift, pitch: PI / cos }
    }

    /// Roll of the involute at a radius.
    fn roll(&self, radius: f64) -> f64 {
        ((radius / self.base).powi(2) - 1.0).max(0.0).sqrt()
    }

    /// Radius and angle about the axis of the flank at a roll; the angle is nothing at the reference circle.
    fn flank(&self, roll: f64) -> (f64, f64) {
        let involute = roll - roll.atan();
        (self.base * (1.0 + roll * roll).sqrt(), involute - (self.angle.tan() - self.angle))
    }

    /// Gap between pinion flank and rack flank along the travel, and height of the point above the axis.
    fn gap(&self, roll: f64, turned: f64) -> (f64, f64) {
        let (radius, angle) = self.flank(roll);
        let (sin, cos) = (angle + turned).sin_cos();
        let rack = self.radius * turned + (radius * cos - self.radius) * self.angle.tan();
        (radius * sin - rack, radius * cos)
    }

    /// Whether the flanks touch inside both of them when the pinion is turned so far.
    fn touches(&self, turned: f64, start: f64) -> bool {
        let (mut low, mut high) = (self.roll(start), self.roll(self.tip));
        for _ in 0..120 {
            let (a, b) = (low + (high - low) * 0.382, low + (high - low) * 0.618);
            if self.gap(a, turned).0 < self.gap(b, turned).0 { high = b } else { low = a }
        }
        let (gap, height) = self.gap(0.5 * (low + high), turned);
        gap < 1e-10 && height >= self.radius + self.shift - 1.0
    }

    /// Transverse contact ratio by rolling, with the involute beginning at this radius.
    fn rolled_ratio(&self, start: f64) -> f64 {
        assert!(self.touches(0.0, start), "the flanks touch at the pitch point");
        let edge = |mut out: f64| {
            let mut inside = 0.0;
            for _ in 0..60 {
                let middle = 0.5 * (inside + out);
                if self.touches(middle, start) { inside = middle } else { out = middle }
            }
            inside
        };
        self.radius * (edge(1.2) - edge(-1.2)) / self.pitch
    }

    /// Point of the fillet that the cutter leaves when the pinion is turned so far: radius and angle on the pinion.
    fn fillet(&self, turned: f64) -> (f64, f64) {
        let middle_height = self.radius + self.shift - CUTTER_DEPTH;
        let flank_height = middle_height - CUTTER_RADIUS * self.angle.sin();
        let middle = (flank_height - self.radius) * self.angle.tan() - CUTTER_RADIUS * self.angle.cos();
        let (x, y) = (self.radius * turned + middle, middle_height);
        // the envelope touches on the line through the pitch point
        let (dx, dy) = (x, y - self.radius);
        let far = 1.0 + CUTTER_RADIUS / dx.hypot(dy);
        let (x, y) = (dx * far, self.radius + dy * far);
        (x.hypot(y), x.atan2(y) - turned)
    }

    /// Radius from which the flank is left uncut.
    fn involute_start(&self) -> f64 {
        let mut start = self.base;
        for step in 0..200_000 {
            let (radius, angle) = self.fillet(-1.5 + 3.0 * f64::from(step) / 200_000.0);
            if radius > start && radius < self.tip && angle > self.flank(self.roll(radius)).1 + 1e-9 {
                start = radius;
            }
        }
        start
    }
}

fn formula(teeth: f64, helix: Angle, shift: f64) -> f64 {
    (TRANSVERSE_CONTACT_RATIO.apply)(mm(1.0), ratio(teeth), helix, ratio(shift)).si()
}

#[test]
fn contact_ratio_is_that_of_rolled_flanks() {
    let straight_pinions = [(14.0, 0.2), (17.0, 0.1), (20.0, 0.0), (20.0, 0.5), (25.0, -0.2), (30.0, 0.0), (40.0, 0.0)];
    let helical_pinions = [(14.0, 0.1), (17.0, 0.0), (20.0, 0.0), (20.0, 0.4), (30.0, -0.3), (40.0, 0.0)];
    for (helix, pinions) in [(straight(), straight_pinions.as_slice()), (metric_helix(), helical_pinions.as_slice())] {
        for (teeth, shift) in pinions {
            let pinion = Pinion::new(*teeth, helix, *shift);
            let rolled = pinion.rolled_ratio(pinion.base);
            let value = formula(*teeth, helix, *shift);
            assert!((rolled - value).abs() < 1e-4, "{teeth} teeth, x {shift}: {value}, rolled {rolled}");
        }
    }
}

#[test]
fn undercut_pinions_have_less_contact_than_the_formula_says() {
    for (teeth, printed, by_formula) in [(12.0, 1.275, 1.405), (14.0, 1.459, 1.542)] {
        let pinion = Pinion::new(teeth, straight(), 0.0);
        let rolled = pinion.rolled_ratio(pinion.involute_start());
        assert!((rolled - printed).abs() < 1e-3, "{teeth} teeth: generated {rolled}");
        assert!((formula(teeth, straight(), 0.0) - by_formula).abs() < 5e-4);
    }
    // at the undercut limit nothing is lost
    let pinion = Pinion::new(14.0, straight(), 0.19);
    assert!((pinion.rolled_ratio(pinion.involute_start()) - formula(14.0, straight(), 0.19)).abs() < 1e-3);
}

/// Chord, arm, fillet radius and form factor of a drawn tooth under the load of single contact.
fn drawn_root(teeth: f64, shift: f64) -> [f64; 4] {
    let pinion = Pinion::new(teeth, straight(), shift);
    let middle = (PI / 4.0 + shift * pinion.angle.tan()) / pinion.radius;
    let point = |turned: f64| {
        let (radius, angle) = pinion.fillet(turned);
        (radius * (angle - middle).sin(), radius * (angle - middle).cos())
    };
    const STEP: f64 = 1e-4;
    let lean = |turned: f64| {
        let (a, b) = (point(turned - STEP), point(turned + STEP));
        ((b.0 - a.0) / (b.1 - a.1)).abs().atan()
    };
    // from the flank, leaning little, down to the root circle, leaning 90°: search the side that leads to the flank
    let root = (0..40_000).map(|step| -1.5 + 3.0 * f64::from(step) / 40_000.0);
    let lowest = root.min_by(|a, b| pinion.fillet(*a).0.total_cmp(&pinion.fillet(*b).0)).expect("a lowest point");
    let side = if pinion.fillet(lowest + 0.05).1 > pinion.fillet(lowest).1 { 1.0 } else { -1.0 };
    let mut turned = lowest + side * 1e-3;
    while lean(turned) > PI / 6.0 {
        turned += side * 1e-4;
    }
    let (mut low, mut high) = (turned - side * 1e-4, turned);
    for _ in 0..50 {
        let half = 0.5 * (low + high);
        if lean(half) > PI / 6.0 { low = half } else { high = half }
    }
    let (x, y) = point(low);
    let arc = |turned: f64| point(turned);
    let (a, b) = (arc(low - STEP), arc(low + STEP));
    let way = (b.0 - a.0).hypot(b.1 - a.1);
    let fillet = way / (lean(low + STEP) - lean(low - STEP)).abs();
    // force line of the outer point of single contact, tangent to the base circle
    let single = (formula(teeth, straight(), shift) - 1.0) * PI * pinion.angle.cos();
    let roll = pinion.roll(pinion.tip) - single / pinion.base;
    let force_angle = pinion.flank(roll).1 - middle + roll.atan();
    let arm = pinion.base / force_angle.cos() - y;
    let chord = 2.0 * x.abs();
    [chord, arm, fillet, 6.0 * arm * force_angle.cos() / (chord * chord * pinion.angle.cos())]
}

#[test]
fn tooth_root_is_that_of_a_generated_tooth() {
    for (teeth, shift) in [(17.0, 0.1), (20.0, 0.0), (20.0, 0.4), (28.0, 0.0), (45.0, -0.2), (100.0, 0.0)] {
        let form = pinion_tooth(ratio(teeth), straight(), ratio(shift));
        let closed = [form.root_chord, form.arm, form.fillet, form.form_factor];
        let drawn = drawn_root(teeth, shift);
        for (index, tolerance) in [1e-5, 1e-5, 1e-4, 1e-5].into_iter().enumerate() {
            let (closed, drawn) = (closed[index], drawn[index]);
            assert!((closed - drawn).abs() < tolerance, "{teeth} teeth, x {shift}, {index}: {closed}, drawn {drawn}");
        }
    }
}

/// An independent calculation of ISO 6336-3 printed these: chord, arm, fillet radius, Y_F, Y_S.
#[test]
fn roots_under_single_contact_agree_with_an_independent_calculation() {
    let (z, x) = (ratio(20.0), ratio(0.0));
    for (what, form, printed) in [
        ("pinion, straight", pinion_tooth(z, straight(), x), [1.9447, 0.8677, 0.5730, 1.4104, 1.8893]),
        ("pinion, metric helix", pinion_tooth(z, metric_helix(), x), [1.9982, 0.8504, 0.5639, 1.3053, 1.9550]),
        ("rack, straight", rack_tooth(z, straight(), x), [2.3547, 1.0275, 0.38, 1.1119, 2.4966]),
        ("rack, metric helix", rack_tooth(z, metric_helix(), x), [2.3547, 1.0011, 0.38, 1.0833, 2.5249]),
    ] {
        let values = [form.root_chord, form.arm, form.fillet, form.form_factor, form.stress_correction()];
        for (value, printed) in values.into_iter().zip(printed) {
            assert!((value - printed).abs() <= 0.000_051, "{what}: {value}, printed {printed}");
        }
    }
}
