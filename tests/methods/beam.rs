//! A beam of Hermite elements: bending, mass and geometric stiffness matrices, smallest eigenvalues.
//!
//! Method: cubic elements with consistent mass and geometric stiffness (as in any text on finite elements); the
//! generalised problem K·x = μ·B·x is brought to a symmetric one by the Cholesky factor of K, whose largest
//! eigenvalue is 1/μ. Length, bending stiffness and mass a length are one.

use nalgebra::{DMatrix, SMatrix};

/// How an end is held.
#[derive(Clone, Copy, PartialEq)]
pub enum End {
    /// Neither deflection nor slope.
    Fixed,
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

/// Puts the elements together and strikes out what the ends hold.
fn assemble(element: Element, elements: usize, ends: (End, End)) -> DMatrix<f64> {
    let size = 2 * (elements + 1);
    let mut whole = DMatrix::zeros(size, size);
    for first in (0..2 * elements).step_by(2) {
        for row in 0..4 {
            for column in 0..4 {
                whole[(first + row, first + column)] += element[(row, column)];
            }
        }
    }
    let mut held = Vec::new();
    for (end, deflection) in [(ends.0, 0), (ends.1, size - 2)] {
        if end != End::Free {
            held.push(deflection);
        }
        if end == End::Fixed {
            held.push(deflection + 1);
        }
    }
    held.sort_unstable();
    for index in held.into_iter().rev() {
        whole = whole.remove_row(index).remove_column(index);
    }
    whole
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
    let l = 1.0 / elements as f64;
    let stiffness = assemble(bending(l), elements, ends) + assemble(geometric(l), elements, ends) * tension;
    smallest(stiffness, assemble(mass(l), elements, ends)).sqrt()
}

/// The compression at which the beam buckles, in units of E·I/L².
pub fn buckling(elements: usize, ends: (End, End)) -> f64 {
    let l = 1.0 / elements as f64;
    smallest(assemble(bending(l), elements, ends), assemble(geometric(l), elements, ends))
}
