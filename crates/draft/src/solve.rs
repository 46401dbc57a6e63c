//! Nonlinear least squares with numerical derivatives, and nothing about garments.

use levenberg_marquardt::{LeastSquaresProblem, LevenbergMarquardt};
use nalgebra::storage::Owned;
use nalgebra::{DMatrix, DVector, Dyn};

/// The solver stops where misses fall by a smaller share than this from step to step, or no longer fall with any knob.
const SETTLED: f64 = 1e-14;
/// It stops as well where no knob moves by a larger share.
const STANDS_STILL: f64 = 1e-12;

/// Step of the forward differences, in the parameters' own unit (millimetres here). Lengths are
/// computed to about 1e-12 mm, so the derivative is good to about eight digits.
const STEP: f64 = 1e-5;

/// What the solver found.
#[derive(Clone, Debug, PartialEq)]
pub struct Solution {
    /// The parameters at the end.
    pub parameters: Vec<f64>,
    /// The residuals there.
    pub residuals: Vec<f64>,
    /// How often the residuals were computed.
    pub evaluations: usize,
}

impl Solution {
    /// Largest absolute residual.
    pub fn worst(&self) -> f64 {
        self.residuals.iter().fold(0.0, |m, r| r.abs().max(m))
    }
}

struct Problem<F> {
    at: DVector<f64>,
    residuals: F,
    evaluations: std::cell::Cell<usize>,
}

impl<F: Fn(&[f64]) -> Vec<f64>> LeastSquaresProblem<f64, Dyn, Dyn> for Problem<F> {
    type ResidualStorage = Owned<f64, Dyn>;
    type JacobianStorage = Owned<f64, Dyn, Dyn>;
    type ParameterStorage = Owned<f64, Dyn>;

    fn set_params(&mut self, x: &DVector<f64>) {
        self.at.copy_from(x);
    }

    fn params(&self) -> DVector<f64> {
        self.at.clone()
    }

    fn residuals(&self) -> Option<DVector<f64>> {
        self.evaluations.set(self.evaluations.get() + 1);
        let r = (self.residuals)(self.at.as_slice());
        r.iter()
            .all(|v| v.is_finite())
            .then(|| DVector::from_vec(r))
    }

    fn jacobian(&self) -> Option<DMatrix<f64>> {
        let base = self.residuals()?;
        let mut jacobian = DMatrix::zeros(base.len(), self.at.len());
        let mut moved = self.at.clone();
        for k in 0..self.at.len() {
            moved[k] = self.at[k] + STEP;
            self.evaluations.set(self.evaluations.get() + 1);
            let r = (self.residuals)(moved.as_slice());
            moved[k] = self.at[k];
            for (i, v) in r.iter().enumerate() {
                let slope = (v - base[i]) / STEP;
                if !slope.is_finite() {
                    return None;
                }
                jacobian[(i, k)] = slope;
            }
        }
        Some(jacobian)
    }
}

/// How long to try, in residual computations for each parameter. A draft that closes needs fewer
/// than one; only charts in conflict come near this.
const PATIENCE: usize = 30;

/// Moves `first` until the sum of squares of `residuals` is smallest (Levenberg–Marquardt).
///
/// The answer may be a least-squares compromise: look at [`Solution::worst`].
pub fn least_squares(first: &[f64], residuals: impl Fn(&[f64]) -> Vec<f64>) -> Solution {
    least_squares_within(PATIENCE, first, residuals)
}

/// As [`least_squares`], but gives up after `patience` computations for each parameter.
pub(crate) fn least_squares_within(
    patience: usize,
    first: &[f64],
    residuals: impl Fn(&[f64]) -> Vec<f64>,
) -> Solution {
    let problem = Problem {
        at: DVector::from_column_slice(first),
        residuals,
        evaluations: std::cell::Cell::new(0),
    };
    let (problem, _) = LevenbergMarquardt::new()
        .with_ftol(SETTLED)
        .with_xtol(STANDS_STILL)
        .with_gtol(SETTLED)
        .with_patience(patience)
        .minimize(problem);
    let parameters = problem.at.as_slice().to_vec();
    Solution {
        residuals: (problem.residuals)(&parameters),
        evaluations: problem.evaluations.get(),
        parameters,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rosenbrock_valley() {
        // H. H. Rosenbrock, Computer Journal 3 (1960) 175: minimum at (1, 1) from (-1.2, 1).
        let s = least_squares(&[-1.2, 1.0], |x| {
            vec![10.0 * (x[1] - x[0] * x[0]), 1.0 - x[0]]
        });
        assert!(s.worst() < 1e-9);
        assert!((s.parameters[0] - 1.0).abs() < 1e-8);
    }

    #[test]
    fn contradiction_gives_the_compromise() {
        let s = least_squares(&[0.0], |x| vec![x[0] - 1.0, x[0] - 3.0]);
        assert!((s.parameters[0] - 2.0).abs() < 1e-6);
        assert!((s.worst() - 1.0).abs() < 1e-6);
    }
}
