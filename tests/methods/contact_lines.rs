//! Contact lines and ripple of a mesh against a count of slices.
//!
//! Method: the face is cut into slices; each slice is a straight gear that is behind its neighbour by a share
//! of the overlap ratio. Counting the tooth pairs in contact slice by slice gives the line length at each phase
//! of the mesh; the extremes over all phases stand against the closed form.

use crate::{mm, ratio, straight};
use axiswright::formula::gear_geometry::{OVERLAP_RATIO, TRANSVERSE_CONTACT_RATIO, metric_helix};
use axiswright::formula::mesh::*;
use axiswright::units::{Angle, Force, Length, Measure};

/// Least and greatest length of the contact lines in face widths, by count.
fn counted(transverse: f64, overlap: f64, slices: usize, phases: usize) -> (f64, f64) {
    let mut extremes = (f64::INFINITY, f64::NEG_INFINITY);
    for phase in 0..phases {
        let phase = (phase as f64 + 0.5) / phases as f64;
        let mut lines = 0.0;
        for slice in 0..slices {
            // this slice began its contact so far behind the first
            let way = phase - overlap * (slice as f64 + 0.5) / slices as f64;
            // pairs j with 0 ≤ way + j < ε_α
            lines += (transverse - way).ceil() - (-way).ceil();
        }
        let lines = lines / slices as f64;
        extremes = (extremes.0.min(lines), extremes.1.max(lines));
    }
    extremes
}

#[test]
fn contact_lines_agree_with_a_count_of_slices() {
    let pairs = [
        (1.769, 0.0),
        (1.615, 0.3),
        (1.615, 0.7),
        (1.615, 1.0),
        (1.615, 1.277),
        (1.8, 1.6),
        (1.2, 0.9),
        (1.95, 2.4),
        (2.1, 0.15),
    ];
    for (transverse, overlap) in pairs {
        let (least, greatest) = counted(transverse, overlap, 2000, 2000);
        let closed = (CONTACT_LINE_MINIMUM.apply)(ratio(transverse), ratio(overlap)).si();
        assert!((closed - least).abs() < 2e-3, "ε_α {transverse}, ε_β {overlap}: {closed}, counted {least}");
        let closed = (CONTACT_LINE_MAXIMUM.apply)(ratio(transverse), ratio(overlap)).si();
        assert!((closed - greatest).abs() < 2e-3, "ε_α {transverse}, ε_β {overlap}: {closed}, counted {greatest}");
    }
}

#[test]
fn a_whole_overlap_ratio_has_no_variation() {
    for transverse in [1.3, 1.615, 1.9] {
        for overlap in [1.0, 2.0, 3.0] {
            let least = (CONTACT_LINE_MINIMUM.apply)(ratio(transverse), ratio(overlap)).si();
            let greatest = (CONTACT_LINE_MAXIMUM.apply)(ratio(transverse), ratio(overlap)).si();
            assert!((least - transverse).abs() < 1e-12 && (greatest - transverse).abs() < 1e-12);
        }
    }
}

fn ripple(force: f64, module: f64, helix: Angle, width: f64, pitch_step: f64) -> f64 {
    let force = Force::of_si(force);
    let step = Length::of_si(pitch_step * 1e-6);
    (MESH_RIPPLE.apply)(force, mm(module), ratio(20.0), helix, mm(width), ratio(0.0), step).si() * 1e6
}

#[test]
fn ripple_under_load_follows_the_counted_lines() {
    for (module, width, force) in [(2.0, 24.0, 1e3), (2.0, 24.0, 3e3), (3.0, 29.0, 3e3), (5.0, 49.0, 10e3)] {
        for helix in [straight(), metric_helix()] {
            let transverse = (TRANSVERSE_CONTACT_RATIO.apply)(mm(module), ratio(20.0), helix, ratio(0.0)).si();
            let overlap = (OVERLAP_RATIO.apply)(mm(module), helix, mm(width)).si();
            let (least, greatest) = counted(transverse, overlap, 4000, 1000);
            // the stiffness of one pair, out of the mean mesh stiffness
            let mesh = (MESH_STIFFNESS.apply)(mm(module), ratio(20.0), helix, mm(width), ratio(0.0)).si();
            let pair = mesh / (0.75 * transverse + 0.25);
            let by_count = force / pair * (1.0 / least - 1.0 / greatest) * 1e6;
            let closed = ripple(force, module, helix, width, 0.0);
            assert!((closed - by_count).abs() < 0.01, "module {module}: {closed} µm, by count {by_count} µm");
        }
    }
}

/// An independent calculation of the same model printed these peak-to-peak values in µm.
#[test]
fn ripple_of_usual_pairs() {
    for (module, width, force, straight_ripple, helical_ripple) in [
        (2.0, 24.0, 1e3, 1.66, 0.30),
        (2.0, 24.0, 3e3, 4.99, 0.91),
        (3.0, 29.0, 3e3, 4.13, 0.09),
        (5.0, 49.0, 10e3, 8.15, 0.27),
    ] {
        assert!((ripple(force, module, straight(), width, 0.0) - straight_ripple).abs() < 0.005);
        assert!((ripple(force, module, metric_helix(), width, 0.0) - helical_ripple).abs() < 0.005);
    }
    // pitch steps of 8.3 and 9 µm on both sides of the mesh
    let step = f64::hypot(8.3, 9.0);
    assert!((ripple(1e3, 2.0, straight(), 24.0, step) - 12.4).abs() < 0.05);
    assert!((ripple(1e3, 2.0, metric_helix(), 24.0, step) - 7.2).abs() < 0.05);
}

#[test]
fn mesh_stiffness_of_usual_pairs() {
    // ISO 6336-1 with the rack as limit, an independent calculation, N/µm
    for (module, width, stiffness) in
        [(2.0, 24.0, 417.0), (3.0, 29.0, 504.0), (4.0, 39.0, 677.0), (5.0, 49.0, 851.0), (6.0, 59.0, 1025.0)]
    {
        let value = (MESH_STIFFNESS.apply)(mm(module), ratio(20.0), metric_helix(), mm(width), ratio(0.0)).si() / 1e6;
        assert!((value - stiffness).abs() < 0.5, "module {module}: {value} N/µm");
    }
}
