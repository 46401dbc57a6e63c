//! A lay: where each piece lies, in millimetres, beside the length no lay can be shorter than.

use cutting::Spread;
use jobs::Found;
use lay::Splice;
use serde::Serialize;
use trade::Length;

use crate::number::{self, Fine, Xy, written};
use crate::shape::Shape;
use crate::splice::SpliceRow;
use crate::text::{AnswerError, line};

/// A lay that was found, with what it is of and how it is spread.
pub struct LaidLay<'a> {
    /// The cloth's name in the collection.
    pub cloth: &'a str,
    /// The pieces and their rules.
    pub spread: &'a Spread,
    /// The lay.
    pub found: &'a Found,
    /// How many pairs lie in it.
    pub pairs: u32,
    /// What is lost at each end of a ply.
    pub end_loss: Length,
    /// Where a roll may end.
    pub splices: &'a [Splice],
    /// Which lay of an order's plan it is, where it is one.
    pub of_plan: Option<LayOfPlan>,
}

/// Which lay of an order's plan it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LayOfPlan {
    /// Its number, from 1.
    pub lay: usize,
    /// How many there are.
    pub of: usize,
    /// Its plies.
    pub plies: u32,
}

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    cloth: &'a str,
    width: f64,
    length: f64,
    ply: f64,
    each: f64,
    efficiency: f64,
    kept: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    of_plan: Option<OfPlanRow>,
    bounds: BoundsRow,
    splices: Vec<SpliceRow>,
    placements: Vec<PlacedRow<'a>>,
}

#[derive(Serialize)]
struct OfPlanRow {
    lay: usize,
    of: usize,
    plies: u32,
}

#[derive(Serialize)]
struct BoundsRow {
    best: f64,
    area: f64,
    longest: f64,
    wide: f64,
    segment: f64,
    path: f64,
    skeleton: f64,
    lines: f64,
}

#[derive(Serialize)]
struct PlacedRow<'a> {
    key: &'a str,
    copy: usize,
    turn: u16,
    x: f64,
    y: f64,
    on_edge: bool,
    outline: Vec<Xy>,
}

/// The answer for a lay.
///
/// # Errors
/// It cannot be put into JSON.
pub fn lay(laid: &LaidLay<'_>) -> Result<String, AnswerError> {
    let (spread, lay) = (laid.spread, &laid.found.lay);
    let ply = lay.length + laid.end_loss * 2.0;
    let bounds = &lay.bounds;
    let placements = lay.placements.iter().filter_map(|placed| {
        let piece = spread.problem.pieces.iter().find(|p| p.key == placed.key)?;
        let outline = placed.outline(piece).into_iter();
        Some(PlacedRow {
            key: &placed.key,
            copy: placed.copy,
            turn: placed.turn.degrees(),
            x: mm(placed.x),
            y: mm(placed.y),
            on_edge: piece.on_edge.is_some(),
            outline: outline.map(|at| number::xy(at, Fine::Whole)).collect(),
        })
    });
    line(&Answer {
        format: Shape::Lay.version(),
        unit: "mm",
        cloth: laid.cloth,
        width: mm(spread.problem.width),
        length: mm(lay.length),
        ply: mm(ply),
        each: mm(ply / f64::from(laid.pairs.max(1))),
        efficiency: written(lay.efficiency.to_ratio(), Fine::Whole),
        kept: laid.found.kept,
        of_plan: laid
            .of_plan
            .map(|LayOfPlan { lay, of, plies }| OfPlanRow { lay, of, plies }),
        bounds: BoundsRow {
            best: mm(bounds.best()),
            area: mm(bounds.area),
            longest: mm(bounds.longest),
            wide: mm(bounds.wide),
            segment: mm(bounds.segment),
            path: mm(bounds.path),
            skeleton: mm(bounds.skeleton),
            lines: mm(bounds.lines),
        },
        splices: laid.splices.iter().map(SpliceRow::from).collect(),
        placements: placements.collect(),
    })
}

fn mm(length: Length) -> f64 {
    number::mm(length, Fine::Whole)
}
