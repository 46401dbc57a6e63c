//! The plan for programs; lengths in millimetres.

use lay::Splice;
use serde::Serialize;
use spreading::{ClothPlan, Rolls, SpreadLay};
use style::LoadedOrder;

use super::Planned;

/// The version of the shape.
const FORMAT: u32 = 1;

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

/// A place where a roll may end.
#[derive(Serialize)]
pub struct SpliceRow {
    from: f64,
    until: f64,
    lap: f64,
}

impl From<&Splice> for SpliceRow {
    fn from(splice: &Splice) -> Self {
        Self {
            from: splice.from.to_mm(),
            until: splice.until.to_mm(),
            lap: splice.lap().to_mm(),
        }
    }
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

pub fn answer(loaded: &LoadedOrder, planned: &[Planned<'_>]) -> Result<String, serde_json::Error> {
    let answer = Answer {
        format: FORMAT,
        unit: "mm",
        order: &loaded.order.name,
        pairs: loaded.order.pairs(),
        unusual: super::unusual(&loaded.order),
        cloths: planned.iter().map(cloth).collect(),
    };
    serde_json::to_string(&answer).map(|text| text + "\n")
}

fn cloth<'a>(one: &'a Planned<'a>) -> ClothRow<'a> {
    let plan: &ClothPlan = &one.plan;
    ClothRow {
        cloth: one.job.name,
        width: one.job.cloth.width.to_mm(),
        pairs: plan.pairs,
        length: plan.cloth.to_mm(),
        each: plan.each().to_mm(),
        ends: plan.ends.to_mm(),
        waste: plan.waste.to_ratio(),
        to_buy: plan.to_buy.to_mm(),
        proved: plan.proved,
        no_less: plan.no_less.to_mm(),
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
                length: choice.cloth.to_mm(),
                found: choice.found,
            })
            .collect(),
        rolls: one.rolls.as_ref().map(rolls),
    }
}

fn lay<'a>(one: &'a Planned<'a>, lay: &'a SpreadLay) -> LayRow<'a> {
    let found = lay.found.as_ref();
    let sizes = one.job.kinds.iter().zip(&lay.planned.pairs);
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
        length: lay.planned.length.to_mm(),
        found: found.is_some(),
        ply: lay.ply.to_mm(),
        cloth: lay.cloth.to_mm(),
        each: lay.ply.to_mm() / f64::from(lay.planned.pairs_in_ply().max(1)),
        efficiency: found.map(|found| found.efficiency.to_ratio()),
        bound: found.map(|found| found.bounds.best().to_mm()),
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
                length: rest.length.to_mm(),
                whole: rest.whole,
            })
            .collect(),
        missing: &rolls.missing,
        short: rolls.short.to_mm(),
        laps: rolls.laps.to_mm(),
    }
}
