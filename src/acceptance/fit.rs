//! Least squares with few unknowns, and how likely a gain is by chance.
//!
//! Method: columns are made orthogonal one after the other (modified Gram–Schmidt, twice); a column that the earlier
//! ones give already has no coefficient. The gain of a further term is judged by the F test: with two coefficients
//! its chance is exactly (S_1/S_0)^(ν/2) for sums of squares S_0 before and S_1 after and ν degrees of freedom left,
//! with one coefficient the true chance is smaller. Limits: errors of the fit taken as independent and alike.

/// A part of a column below this is rounding, not information.
const DEPENDENT: f64 = 1e-6;

/// A least-squares fit.
#[derive(Debug, Clone)]
pub(super) struct Fit {
    /// Coefficient of each column; 0 for one that the earlier columns give already.
    pub coefficients: Vec<f64>,
    /// What is left at each point.
    pub residuals: Vec<f64>,
    /// Sum of squares of what is left.
    pub rest: f64,
}

pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn take_out(from: &mut [f64], direction: &[f64]) -> f64 {
    let amount = dot(from, direction);
    from.iter_mut().zip(direction).for_each(|(value, part)| *value -= amount * part);
    amount
}

/// What further columns would take off the squares of what a fit has left, and how many of them have information of
/// their own; `fitted`: the orthonormal directions of the fit.
pub(super) fn gain(fitted: &[Vec<f64>], residuals: &[f64], more: &[Vec<f64>]) -> (f64, usize) {
    let mut basis: Vec<Vec<f64>> = fitted.to_vec();
    let (mut gain, mut own) = (0.0, 0);
    for column in more {
        let before = dot(column, column).sqrt();
        let mut left = column.clone();
        for _ in 0..2 {
            for direction in &basis {
                take_out(&mut left, direction);
            }
        }
        let length = dot(&left, &left).sqrt();
        if length > DEPENDENT * before {
            left.iter_mut().for_each(|value| *value /= length);
            gain += dot(residuals, &left).powi(2);
            own += 1;
            basis.push(left);
        }
    }
    (gain, own)
}

/// The orthonormal directions of columns that have information of their own.
pub(super) fn directions(columns: &[Vec<f64>]) -> Vec<Vec<f64>> {
    orthonormal(columns).into_iter().flatten().collect()
}

/// Orthonormal directions of columns, each without what the earlier ones hold; `None` where nothing is left.
fn orthonormal(columns: &[Vec<f64>]) -> Vec<Option<Vec<f64>>> {
    let mut basis: Vec<Option<Vec<f64>>> = Vec::new();
    for column in columns {
        let before = dot(column, column).sqrt();
        let mut left = column.clone();
        for _ in 0..2 {
            for direction in basis.iter().flatten() {
                take_out(&mut left, direction);
            }
        }
        let length = dot(&left, &left).sqrt();
        let has_own = length > DEPENDENT * before;
        basis.push(has_own.then(|| left.iter().map(|value| value / length).collect()));
    }
    basis
}

/// Fits values by a sum of columns.
pub(super) fn fit(columns: &[Vec<f64>], values: &[f64]) -> Fit {
    let basis = orthonormal(columns);
    let mut residuals = values.to_vec();
    let mut along = vec![0.0; columns.len()];
    for (direction, amount) in basis.iter().zip(&mut along) {
        if let Some(direction) = direction {
            *amount = take_out(&mut residuals, direction);
        }
    }
    // back from the orthonormal directions to the columns: the last column first
    let mut coefficients = vec![0.0; columns.len()];
    let mut explained: Vec<f64> = values.iter().zip(&residuals).map(|(value, rest)| value - rest).collect();
    for index in (0..columns.len()).rev() {
        if let Some(direction) = &basis[index] {
            let coefficient = dot(&explained, direction) / dot(&columns[index], direction);
            coefficients[index] = coefficient;
            explained.iter_mut().zip(&columns[index]).for_each(|(left, part)| *left -= coefficient * part);
        }
    }
    let rest = dot(&residuals, &residuals);
    Fit { coefficients, residuals, rest }
}

/// The logarithm of the chance that a gain from `before` to `after` comes from independent errors alone.
///
/// `left`: degrees of freedom that remain after the fit; `trials`: how many such terms were tried.
pub(super) fn log_chance(before: f64, after: f64, left: usize, trials: usize) -> f64 {
    if before.is_nan() || before <= 0.0 || left == 0 {
        return 0.0;
    }
    let ratio = if after > 0.0 { after / before } else { f64::MIN_POSITIVE };
    0.5 * left as f64 * ratio.ln() + (trials.max(1) as f64).ln()
}

/// How much of a wave's two columns is their own once `others` are taken out: the lesser of the two eigenvalues of
/// their products, as a part of the half of the count that an evenly sampled wave has.
pub(super) fn own_part(others: &[Vec<f64>], wave: &[Vec<f64>; 2]) -> f64 {
    let basis = orthonormal(others);
    let mut left = wave.clone();
    for column in &mut left {
        for direction in basis.iter().flatten() {
            take_out(column, direction);
        }
    }
    let half = left[0].len() as f64 / 2.0;
    let [a, b, c] = [dot(&left[0], &left[0]), dot(&left[0], &left[1]), dot(&left[1], &left[1])];
    let middle = (a + c) / 2.0;
    (middle - ((a - c) * (a - c) / 4.0 + b * b).sqrt()) / half
}

/// How alike two waves are on the same targets, 0 to 1: the least cosine between what they can make, once `others`
/// are taken out of both.
pub(super) fn likeness(others: &[Vec<f64>], first: &[Vec<f64>; 2], second: &[Vec<f64>; 2]) -> f64 {
    let directions = |wave: &[Vec<f64>; 2]| {
        let columns: Vec<Vec<f64>> = others.iter().chain(wave).cloned().collect();
        orthonormal(&columns).into_iter().skip(others.len()).collect::<Option<Vec<Vec<f64>>>>()
    };
    let (Some(first), Some(second)) = (directions(first), directions(second)) else { return 0.0 };
    let [[a, b], [c, d]] = [0, 1].map(|i| [0, 1].map(|j: usize| dot(&first[i], &second[j])));
    // the lesser singular value of a 2 × 2 matrix
    let squares = a * a + b * b + c * c + d * d;
    let determinant = a * d - b * c;
    let root = (squares * squares / 4.0 - determinant * determinant).max(0.0).sqrt();
    (squares / 2.0 - root).max(0.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_and_a_wave_are_found_again_on_uneven_targets() {
        let at: Vec<f64> = vec![0.0, 0.11, 0.19, 0.32, 0.40, 0.53, 0.61, 0.70, 0.83, 0.9];
        let wave =
            |part: fn(f64) -> f64| at.iter().map(|x| part(std::f64::consts::TAU * x / 0.3)).collect::<Vec<f64>>();
        let columns = [vec![1.0; 10], at.clone(), wave(f64::cos), wave(f64::sin)];
        let made = [3.0, -2.0, 0.5, 1.25];
        let values: Vec<f64> = (0..10).map(|i| (0..4).map(|column| made[column] * columns[column][i]).sum()).collect();
        let found = fit(&columns, &values);
        for (found, made) in found.coefficients.iter().zip(made) {
            assert!((found - made).abs() < 1e-12, "{found} {made}");
        }
        assert!(found.rest < 1e-24);
    }

    // second method: singular value decomposition of nalgebra
    #[test]
    fn coefficients_and_rest_are_those_of_another_least_squares() {
        let at: Vec<f64> = (0..15).map(|index| f64::from(index) + 0.37 * f64::from(index % 4)).collect();
        let part = |which: usize, x: f64| match which {
            0 => 1.0,
            1 => x,
            2 => (0.9 * x).cos(),
            3 => (0.9 * x).sin(),
            _ => f64::from(u8::from(x > 6.2)),
        };
        let columns: Vec<Vec<f64>> = (0..5).map(|which| at.iter().map(|x| part(which, *x)).collect()).collect();
        let values: Vec<f64> = at.iter().map(|x| (x * x * 7.3).sin() * 4.0 + 0.3 * x).collect();
        let found = fit(&columns, &values);
        let matrix = nalgebra::DMatrix::from_fn(15, 5, |row, column| columns[column][row]);
        let right = nalgebra::DVector::from_vec(values);
        let other = matrix.clone().svd(true, true).solve(&right, 1e-12).expect("solved");
        let rest = (&right - &matrix * &other).norm_squared();
        for (found, other) in found.coefficients.iter().zip(other.iter()) {
            assert!((found - other).abs() < 1e-10, "{found} {other}");
        }
        assert!((found.rest - rest).abs() < 1e-10);
    }

    #[test]
    fn the_gain_of_further_columns_is_what_the_wider_fit_leaves_less() {
        let at: Vec<f64> = vec![0.0, 1.0, 2.5, 3.0, 4.5, 6.0, 7.0];
        let values = [1.0, -2.0, 0.5, 3.0, 2.0, -1.0, 4.0];
        let squares: Vec<f64> = at.iter().map(|x| x * x).collect();
        let cubes: Vec<f64> = at.iter().map(|x| x * x * x).collect();
        let few = [vec![1.0; 7], at.clone()];
        let many = [vec![1.0; 7], at.clone(), squares.clone(), cubes.clone()];
        let (before, after) = (fit(&few, &values), fit(&many, &values));
        let (gain, own) = gain(&directions(&few), &before.residuals, &[squares, cubes]);
        assert!((gain - (before.rest - after.rest)).abs() < 1e-12 && own == 2, "{gain}");
    }

    #[test]
    fn a_column_that_says_nothing_new_gets_nothing() {
        let found = fit(&[vec![1.0; 4], vec![2.0; 4]], &[1.0, 2.0, 3.0, 4.0]);
        assert_eq!(found.coefficients[1], 0.0);
        assert!((found.coefficients[0] - 2.5).abs() < 1e-12);
    }

    // F distribution with 2 and ν degrees of freedom: the chance above F is (1 + 2F/ν)^(−ν/2); Abramowitz and Stegun
    // 26.6, from memory. F 4.46 at 2 and 8 is the 5 % point of every table of F.
    #[test]
    fn the_chance_of_two_coefficients_is_that_of_the_tables_of_f() {
        let ratio = 1.0 / (1.0 + 2.0 * 4.46 / 8.0);
        assert!((log_chance(1.0, ratio, 8, 1).exp() - 0.05).abs() < 1e-4);
    }

    #[test]
    fn waves_that_the_targets_cannot_tell_apart_are_alike() {
        let at: Vec<f64> = (0..12).map(|index| f64::from(index) * 0.25).collect();
        let wave = |period: f64| {
            [f64::cos, f64::sin].map(|part| at.iter().map(|x| part(std::f64::consts::TAU * x / period)).collect())
        };
        // 0.2 m and 1 m: 0.25/0.2 = 1 + 1/4 turns from target to target, 0.25/1 = 1/4 turn
        assert!(likeness(&[vec![1.0; 12]], &wave(0.2), &wave(1.0)) > 0.999);
        assert!(likeness(&[vec![1.0; 12]], &wave(0.6), &wave(1.0)) < 0.5);
        assert!(own_part(&[vec![1.0; 12]], &wave(0.25)) < 1e-9, "every target at the same phase");
        assert!(own_part(&[vec![1.0; 12]], &wave(1.0)) > 0.9);
    }
}
