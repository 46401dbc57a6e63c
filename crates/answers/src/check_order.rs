//! An order that was checked: of each cloth its plan by estimates, or why there is none.

use serde::Serialize;
use style::LoadedOrder;
use trade::Length;

use crate::number::{Fine, mm};
use crate::shape::Shape;
use crate::text::{AnswerError, lines};

/// One cloth of an order: its plan by estimates, or why there is none.
pub struct CheckedCloth {
    /// Its name in the collection; empty where the order cannot be cut at all.
    pub cloth: String,
    /// How many lays its plan has.
    pub lays: Option<usize>,
    /// The cloth of all plies.
    pub length: Option<Length>,
    /// Why there is no plan.
    pub problem: Option<String>,
}

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    order: Head<'a>,
    errors: usize,
    cloths: Vec<ClothRow<'a>>,
}

#[derive(Serialize)]
struct Head<'a> {
    name: &'a str,
    file: String,
    pairs: u32,
}

#[derive(Serialize)]
struct ClothRow<'a> {
    cloth: &'a str,
    lays: Option<usize>,
    length_mm: Option<f64>,
    problem: Option<&'a str>,
}

/// The answer for an order that was checked.
///
/// # Errors
/// It cannot be put into JSON.
pub fn check_order(loaded: &LoadedOrder, cloths: &[CheckedCloth]) -> Result<String, AnswerError> {
    lines(&Answer {
        format: Shape::CheckOrder.version(),
        order: Head {
            name: &loaded.order.name,
            file: loaded.path.display().to_string(),
            pairs: loaded.order.pairs(),
        },
        errors: cloths.iter().filter(|one| one.problem.is_some()).count(),
        cloths: cloths.iter().map(row).collect(),
    })
}

fn row(checked: &CheckedCloth) -> ClothRow<'_> {
    let length = checked.length;
    ClothRow {
        cloth: &checked.cloth,
        lays: checked.lays,
        length_mm: length.map(|length| mm(length, Fine::Thousandth)),
        problem: checked.problem.as_deref(),
    }
}
