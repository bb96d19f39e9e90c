//! Differential equations in time, solved by a general-purpose library (Dormand and Prince, order 5).

use ode_solvers::{Dopri5, SVector, System};

struct Rate<F>(F);

impl<const N: usize, F: Fn(f64, [f64; N]) -> [f64; N]> System<f64, SVector<f64, N>> for Rate<F> {
    fn system(&self, time: f64, state: &SVector<f64, N>, rate: &mut SVector<f64, N>) {
        *rate = SVector::from((self.0)(time, (*state).into()));
    }
}

/// Times and states from `from` to `to`, one every `every`.
pub fn solve<const N: usize>(
    [from, to, every]: [f64; 3],
    state: [f64; N],
    tolerance: f64,
    rate: impl Fn(f64, [f64; N]) -> [f64; N],
) -> Vec<(f64, [f64; N])> {
    let mut solver = Dopri5::new(Rate(rate), from, to, every, SVector::from(state), 1e-9, tolerance);
    solver.integrate().expect("the equations are solved");
    let states = solver.y_out().iter().map(|state| (*state).into());
    solver.x_out().iter().copied().zip(states).collect()
}
