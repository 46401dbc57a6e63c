//! The plan of an order; lengths in millimetres.

use jobs::PlannedCloth;
use serde::Serialize;
use spreading::{Rolls, SpreadLay};
use style::LoadedOrder;
use trade::Length;

use crate::number::{self, Fine};
use crate::shape::Shape;
use crate::splice::SpliceRow;
use crate::text::{AnswerError, line};

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    order: &'a str,
    pairs: u32,
    /// What the order states beyond what is usual.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    unusual: Vec<String>,
    cloths: Vec<ClothRow<'a>>,
}

#[derive(Serialize)]
struct ClothRow<'a> {
    cloth: &'a str,
    width: f64,
    pairs: u32,
    length: f64,
    each: f64,
    ends: f64,
    waste: f64,
    to_buy: f64,
    proved: bool,
    no_less: f64,
    settled: bool,
    face_to_face: bool,
    apart: usize,
    lays: Vec<LayRow<'a>>,
    choices: Vec<ChoiceRow>,
    #[serde(skip_serializing_if = "Option::is_none")]
    rolls: Option<RollsRow<'a>>,
}

#[derive(Serialize)]
struct LayRow<'a> {
    sizes: Vec<SizeRow<'a>>,
    plies: u32,
    length: f64,
    found: bool,
    ply: f64,
    cloth: f64,
    each: f64,
    #[serde(skip_serializing_if = "Option::is_none")]
    efficiency: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    bound: Option<f64>,
    splices: Vec<SpliceRow>,
}

#[derive(Serialize)]
struct SizeRow<'a> {
    style: &'a str,
    size: String,
    pairs: u32,
}

#[derive(Serialize)]
struct ChoiceRow {
    lays: usize,
    plies: u32,
    length: f64,
    found: bool,
}

#[derive(Serialize)]
struct RollsRow<'a> {
    drawn: Vec<DrawnRow<'a>>,
    rests: Vec<RestRow<'a>>,
    missing: &'a [u32],
    short: f64,
    laps: f64,
}

#[derive(Serialize)]
struct DrawnRow<'a> {
    roll: &'a str,
    shade: &'a str,
    lay: usize,
    plies: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    begun: Option<BegunRow<'a>>,
}

#[derive(Serialize)]
struct BegunRow<'a> {
    by: &'a str,
    at: SpliceRow,
}

#[derive(Serialize)]
struct RestRow<'a> {
    roll: &'a str,
    shade: &'a str,
    length: f64,
    whole: bool,
}

/// The answer for an order that was planned.
///
/// # Errors
/// It cannot be put into JSON.
pub fn plan(loaded: &LoadedOrder, planned: &[PlannedCloth]) -> Result<String, AnswerError> {
    line(&Answer {
        format: Shape::Plan.version(),
        unit: "mm",
        order: &loaded.order.name,
        pairs: loaded.order.pairs(),
        unusual: jobs::unusual(&loaded.order),
        cloths: planned.iter().map(cloth).collect(),
    })
}

fn mm(length: Length) -> f64 {
    number::mm(length, Fine::Whole)
}

fn cloth(one: &PlannedCloth) -> ClothRow<'_> {
    let plan = &one.plan;
    ClothRow {
        cloth: &one.name,
        width: mm(one.cloth.width),
        pairs: plan.pairs,
        length: mm(plan.cloth),
        each: mm(plan.each()),
        ends: mm(plan.ends),
        waste: number::written(plan.waste.to_ratio(), Fine::Whole),
        to_buy: mm(plan.to_buy),
        proved: plan.proved,
        no_less: mm(plan.no_less),
        settled: plan.settled,
        face_to_face: plan.lays.iter().all(|lay| lay.spread.face_to_face),
        apart: one.apart,
        lays: plan.lays.iter().map(|row| lay(one, row)).collect(),
        choices: plan
            .choices
            .iter()
            .map(|choice| ChoiceRow {
                lays: choice.lays,
                plies: choice.plies,
                length: mm(choice.cloth),
                found: choice.found,
            })
            .collect(),
        rolls: one.rolls.as_ref().map(rolls),
    }
}

fn lay<'a>(one: &'a PlannedCloth, lay: &'a SpreadLay) -> LayRow<'a> {
    let found = lay.found.as_ref();
    let sizes = one.kinds.iter().zip(&lay.planned.pairs);
    LayRow {
        sizes: sizes
            .filter(|(_, pairs)| **pairs > 0)
            .map(|(kind, pairs)| SizeRow {
                style: &kind.style,
                size: kind.size.to_string(),
                pairs: *pairs,
            })
            .collect(),
        plies: lay.planned.plies,
        length: mm(lay.planned.length),
        found: found.is_some(),
        ply: mm(lay.ply),
        cloth: mm(lay.cloth),
        each: number::written(
            lay.ply.to_mm() / f64::from(lay.planned.pairs_in_ply().max(1)),
            Fine::Whole,
        ),
        efficiency: found.map(|found| number::written(found.efficiency.to_ratio(), Fine::Whole)),
        bound: found.map(|found| mm(found.bounds.best())),
        splices: lay.splices.iter().map(SpliceRow::from).collect(),
    }
}

fn rolls(rolls: &Rolls) -> RollsRow<'_> {
    RollsRow {
        drawn: rolls
            .drawn
            .iter()
            .map(|drawn| DrawnRow {
                roll: &drawn.roll,
                shade: &drawn.shade,
                lay: drawn.lay + 1,
                plies: drawn.plies,
                begun: drawn.begun.as_ref().map(|begun| BegunRow {
                    by: &begun.by,
                    at: SpliceRow::from(&begun.at),
                }),
            })
            .collect(),
        rests: rolls
            .rests
            .iter()
            .map(|rest| RestRow {
                roll: &rest.roll,
                shade: &rest.shade,
                length: mm(rest.length),
                whole: rest.whole,
            })
            .collect(),
        missing: &rolls.missing,
        short: mm(rolls.short),
        laps: mm(rolls.laps),
    }
}
