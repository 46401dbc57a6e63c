//! What no lay of a problem can be shorter than, without looking for one.

use crate::bounds::Bounds;
use crate::problem::{LayError, Problem};
use crate::shapes::Shapes;
use crate::tables::Tables;

/// The lower bounds of a problem.
///
/// # Errors
/// A [`LayError`] when the problem makes no sense.
pub fn bounds(problem: &Problem) -> Result<Bounds, LayError> {
    let shapes = Shapes::exact(problem)?;
    Ok(Bounds::new(&Tables::new(&shapes)))
}
