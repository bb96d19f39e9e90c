//! A beam of Hermite elements: bending, mass and geometric stiffness matrices, smallest eigenvalues.
//!
//! Method: cubic elements with consistent mass and geometric stiffness (as in any text on finite elements); the
//! generalised problem K·x = μ·B·x is brought to a symmetric one by the Cholesky factor of K, whose largest
//! eigenvalue is 1/μ. Length, bending stiffness and mass a length are one.

use nalgebra::{DMatrix, DVector, SMatrix};

/// How an end is held.
#[derive(Clone, Copy, PartialEq)]
pub enum End {
    /// Neither deflection nor slope.
    Fixed,
    /// No deflection; a rotational spring, in units of E·I/L, resists the slope.
    Sprung(f64),
    /// No deflection.
    Supported,
    /// Nothing.
    Free,
}

/// The four fixities of a screw, with the words of `calc`.
pub const FIXITIES: [(&str, End, End); 4] = [
    ("fixed-free", End::Fixed, End::Free),
    ("supported-supported", End::Supported, End::Supported),
    ("fixed-supported", End::Fixed, End::Supported),
    ("fixed-fixed", End::Fixed, End::Fixed),
];

type Element = SMatrix<f64, 4, 4>;

fn bending(l: f64) -> Element {
    Element::new(
        12.0,
        6.0 * l,
        -12.0,
        6.0 * l, //
        6.0 * l,
        4.0 * l * l,
        -6.0 * l,
        2.0 * l * l, //
        -12.0,
        -6.0 * l,
        12.0,
        -6.0 * l, //
        6.0 * l,
        2.0 * l * l,
        -6.0 * l,
        4.0 * l * l,
    ) / l.powi(3)
}

fn mass(l: f64) -> Element {
    Element::new(
        156.0,
        22.0 * l,
        54.0,
        -13.0 * l, //
        22.0 * l,
        4.0 * l * l,
        13.0 * l,
        -3.0 * l * l, //
        54.0,
        13.0 * l,
        156.0,
        -22.0 * l, //
        -13.0 * l,
        -3.0 * l * l,
        -22.0 * l,
        4.0 * l * l,
    ) * (l / 420.0)
}

fn geometric(l: f64) -> Element {
    Element::new(
        36.0,
        3.0 * l,
        -36.0,
        3.0 * l, //
        3.0 * l,
        4.0 * l * l,
        -3.0 * l,
        -l * l, //
        -36.0,
        -3.0 * l,
        36.0,
        -3.0 * l, //
        3.0 * l,
        -l * l,
        -3.0 * l,
        4.0 * l * l,
    ) / (30.0 * l)
}

/// The beam: how many elements, how its ends are held, and the nodes at which a pin holds it on the way.
#[derive(Clone, Copy)]
pub struct Beam<'p> {
    pub elements: usize,
    pub ends: (End, End),
    pub pins: &'p [usize],
}

/// Puts the elements together, adds the springs of the ends if wanted, and strikes out what ends and pins hold.
fn assemble(element: Element, beam: Beam<'_>, springs: bool) -> DMatrix<f64> {
    let Beam { elements, ends, .. } = beam;
    let size = 2 * (elements + 1);
    let mut whole = DMatrix::zeros(size, size);
    for first in (0..2 * elements).step_by(2) {
        for row in 0..4 {
            for column in 0..4 {
                whole[(first + row, first + column)] += element[(row, column)];
            }
        }
    }
    for (end, slope) in [(ends.0, 1), (ends.1, size - 1)] {
        if let (End::Sprung(spring), true) = (end, springs) {
            whole[(slope, slope)] += spring;
        }
    }
    let kept = kept(beam);
    DMatrix::from_fn(kept.len(), kept.len(), |row, column| whole[(kept[row], kept[column])])
}

/// The displacements and slopes that ends and pins leave free.
fn kept(beam: Beam<'_>) -> Vec<usize> {
    let size = 2 * (beam.elements + 1);
    let mut held: Vec<usize> = beam.pins.iter().map(|pin| 2 * pin).collect();
    for (end, deflection) in [(beam.ends.0, 0), (beam.ends.1, size - 2)] {
        if end != End::Free {
            held.push(deflection);
        }
        if end == End::Fixed {
            held.push(deflection + 1);
        }
    }
    (0..size).filter(|index| !held.contains(index)).collect()
}

/// The smallest μ of K·x = μ·B·x.
fn smallest(stiffness: DMatrix<f64>, other: DMatrix<f64>) -> f64 {
    let lower = stiffness.cholesky().expect("the held beam is stiff").l();
    let half = lower.solve_lower_triangular(&other).expect("the factor can be inverted");
    let whole = lower.solve_lower_triangular(&half.transpose()).expect("the factor can be inverted");
    let symmetric = (&whole + whole.transpose()) / 2.0;
    1.0 / symmetric.symmetric_eigenvalues().max()
}

/// Squared eigenvalue λ² of the first bending mode under an axial tension (in units of E·I/L²).
pub fn eigenvalue_squared(elements: usize, ends: (End, End), tension: f64) -> f64 {
    eigenvalue_squared_of(Beam { elements, ends, pins: &[] }, tension)
}

/// The same for a beam that pins hold on the way.
pub fn eigenvalue_squared_of(beam: Beam<'_>, tension: f64) -> f64 {
    let l = 1.0 / beam.elements as f64;
    let stiffness = assemble(bending(l), beam, true) + assemble(geometric(l), beam, false) * tension;
    smallest(stiffness, assemble(mass(l), beam, false)).sqrt()
}

/// The compression at which the beam buckles, in units of E·I/L².
pub fn buckling(elements: usize, ends: (End, End)) -> f64 {
    buckling_of(Beam { elements, ends, pins: &[] })
}

/// The same for a beam that pins hold on the way.
pub fn buckling_of(beam: Beam<'_>) -> f64 {
    let l = 1.0 / beam.elements as f64;
    smallest(assemble(bending(l), beam, true), assemble(geometric(l), beam, false))
}

/// The deepest point of the beam under its own weight and an axial tension, in units of w·L⁴/(E·I).
pub fn deepest(beam: Beam<'_>, tension: f64) -> f64 {
    let l = 1.0 / beam.elements as f64;
    let stiffness = assemble(bending(l), beam, true) + assemble(geometric(l), beam, false) * tension;
    let size = 2 * (beam.elements + 1);
    let mut load = DVector::zeros(size);
    for first in (0..2 * beam.elements).step_by(2) {
        for (row, part) in [l / 2.0, l * l / 12.0, l / 2.0, -l * l / 12.0].into_iter().enumerate() {
            load[first + row] += part;
        }
    }
    let left = kept(beam);
    let load = DVector::from_iterator(left.len(), left.iter().map(|&index| load[index]));
    let solved = stiffness.cholesky().expect("the held beam is stiff").solve(&load);
    left.iter().zip(solved.iter()).filter(|(index, _)| *index % 2 == 0).map(|(_, value)| *value).fold(0.0, f64::max)
}
