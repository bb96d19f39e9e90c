//! The load and life factors of ISO 6336 that pitting and root strength share.
//!
//! Method: the printed lines and tables, with three repairs that keep the stress rising with force, speed
//! and quality number: the load sharing factor never lets force times factor fall (the standard's step at
//! 100 N/mm does), the speed term of the dynamic factor is held at its highest value, and a quality between
//! two grades takes the coarser. Finer than grade 5 counts as 5; coarser than 10 gives no number.
//! Limits: from memory of ISO 6336-1, -2 and -3, editions 2006.

use crate::formula::extremes::{larger, smaller};
use crate::formula::gear_geometry::Mesh;

/// Value on a line of constant slope in log-log through two points.
fn log_line(cycles: f64, (from, high): (f64, f64), (to, low): (f64, f64)) -> f64 {
    high * (cycles / from).powf((low / high).ln() / (to / from).ln())
}

fn life(cycles: f64, points: [(f64, f64); 3]) -> f64 {
    let [first, knee, last] = points;
    if cycles <= first.0 {
        first.1
    } else if cycles <= knee.0 {
        log_line(cycles, first, knee)
    } else if cycles <= last.0 {
        log_line(cycles, knee, last)
    } else if cycles > last.0 {
        last.1
    } else {
        f64::NAN
    }
}

/// Cycles at the break points of the life line of flanks: first, knee, last.
pub(super) const FLANK_CYCLES: [f64; 3] = [1e5, 5e7, 1e10];
/// Life factors there.
pub(super) const FLANK_FACTORS: [f64; 3] = [1.6, 1.0, 0.85];
/// Cycles at the knee and the last point of the life line of roots; the first is a matter of the steel.
pub(super) const ROOT_CYCLES: [f64; 2] = [3e6, 1e10];
/// Life factors at the first point, knee and last point.
pub(super) const ROOT_FACTORS: [f64; 3] = [2.5, 1.0, 0.85];

/// The break points as pairs.
fn points(cycles: [f64; 3], factors: [f64; 3]) -> [(f64, f64); 3] {
    [(cycles[0], factors[0]), (cycles[1], factors[1]), (cycles[2], factors[2])]
}

/// Life factor of contact stress Z_NT, no pitting allowed: through-, case- and induction-hardened steel.
///
/// Lines through (1e5, 1.6), (5e7, 1.0), (1e10, 0.85); held beyond. 1e6: 1.344; 1e8: 0.979.
pub fn contact_life_factor(cycles: f64) -> f64 {
    life(cycles, points(FLANK_CYCLES, FLANK_FACTORS))
}

/// Life factor of root stress Y_NT on the line that begins at this many cycles.
///
/// Lines through (1e3 or 1e4, 2.5), (3e6, 1.0), (1e10, 0.85); held beyond. From 1e3: 1e6 1.134; from 1e4: 1e6 1.193; 1e7: 0.976.
pub fn root_life_factor(cycles: f64, first: f64) -> f64 {
    let known = 0.0 * first;
    life(cycles, points([first, ROOT_CYCLES[0], ROOT_CYCLES[1]], ROOT_FACTORS)) + known
}

/// The grade whose row counts: 5 to 10, or none.
fn grade(quality: f64) -> Option<usize> {
    (quality <= 10.0).then(|| quality.ceil().max(5.0) as usize)
}

const K1_STRAIGHT: [f64; 6] = [7.5, 14.9, 26.8, 39.1, 52.8, 76.6];
const K1_HELICAL: [f64; 6] = [6.7, 13.3, 23.9, 34.8, 47.0, 68.2];
const K2_STRAIGHT: f64 = 0.0193;
const K2_HELICAL: f64 = 0.0087;
/// Line load below which the dynamic factor stays as it is and sharing is at its worst, N/mm.
pub(super) const LEAST_LINE_LOAD: f64 = 100.0;

/// What turns a tangential force into the force that stress is reckoned with.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LoadFactors {
    face_width_mm: f64,
    k1: f64,
    k2: f64,
    speed_term: f64,
    sharing: f64,
    worst_sharing: f64,
    face: f64,
}

impl LoadFactors {
    /// Factors for a mesh; `face` is K_Hβ or K_Fβ.
    pub(crate) fn of(mesh: &Mesh, overlap: f64, face_width: f64, quality: f64, speed: f64, face: f64) -> Self {
        let row = grade(quality);
        // ISO 6336-1 method C: between no overlap and full overlap the values lie on a straight line
        let helical_share = smaller(overlap, 1.0);
        let between = |straight: f64, helical: f64| straight + (helical - straight) * helical_share;
        let (k1, k2) = match row {
            Some(row) => (between(K1_STRAIGHT[row - 5], K1_HELICAL[row - 5]), between(K2_STRAIGHT, K2_HELICAL)),
            None => (f64::NAN, f64::NAN),
        };
        let worst_sharing = if mesh.helical {
            larger(1.4, mesh.virtual_ratio())
        } else {
            larger(1.2, 3.0 / (4.0 - mesh.transverse_ratio()))
        };
        // surface-hardened steel; through-hardened teeth share no worse
        let sharing = match (row, mesh.helical) {
            (Some(5), _) | (Some(6), false) => 1.0,
            (Some(6), true) | (Some(7), false) => 1.1,
            (Some(7), true) | (Some(8), false) => 1.2,
            (Some(8), true) => 1.4,
            (Some(_), _) => worst_sharing,
            (None, _) => f64::NAN,
        };
        // s·K_3 is largest at s = 2.071/(2·0.357) and held there; it is held too where the printed values step down
        let s = smaller(speed.abs() * mesh.teeth / 100.0, 2.071 / (2.0 * 0.357));
        let speed_term = if s <= 0.2 { 2.0 * s } else { larger(0.4, s * (2.071 - 0.357 * s)) };
        LoadFactors {
            face_width_mm: face_width * 1e3,
            k1,
            k2,
            speed_term,
            sharing,
            worst_sharing: larger(worst_sharing, sharing),
            face,
        }
    }

    /// Force times dynamic, sharing and face factor, N; never falling with the force.
    pub(crate) fn effective(&self, force: f64) -> f64 {
        let line_load = force / self.face_width_mm;
        let dynamic = |line_load: f64| 1.0 + (self.k1 / line_load + self.k2) * self.speed_term;
        let at_worst = dynamic(LEAST_LINE_LOAD) * self.worst_sharing;
        let shared = if line_load < LEAST_LINE_LOAD {
            force * at_worst
        } else {
            larger(force * dynamic(line_load) * self.sharing, LEAST_LINE_LOAD * self.face_width_mm * at_worst)
        };
        shared * self.face
    }

    /// What a newton more adds to the effective force above 100 N/mm, face factor left out.
    pub(crate) fn slope(&self) -> f64 {
        (1.0 + self.k2 * self.speed_term) * self.sharing
    }

    /// What the effective force holds above 100 N/mm whatever the force, N, face factor left out.
    pub(crate) fn offset(&self) -> f64 {
        self.k1 * self.face_width_mm * self.speed_term * self.sharing
    }

    /// Effective force over force below 100 N/mm, face factor left out.
    pub(crate) fn light(&self) -> f64 {
        (1.0 + (self.k1 / LEAST_LINE_LOAD + self.k2) * self.speed_term) * self.worst_sharing
    }

    /// The one force whose effective force is this much.
    pub(crate) fn force_for(&self, effective: f64) -> f64 {
        if !(effective > 0.0 && self.effective(1.0).is_finite()) {
            return if effective == 0.0 { 0.0 } else { f64::NAN };
        }
        // every factor but the face factor is at least 1, so the force lies below this
        let mut high = effective / self.face;
        let mut low = 0.0;
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if self.effective(middle) < effective { low = middle } else { high = middle }
        }
        0.5 * (low + high)
    }
}
