//! The fit: moving the block's shape until measuring it gives the chart.

use geometry::Point;
use trade::Length;

use crate::block::{Block, PARAMETERS, Shape, build};
use crate::measure::{Measurable, Measure, Panel, Run, extent_at, measure};
use crate::piece::PieceId;
use crate::solve::least_squares;
use crate::spec::Spec;

/// Where no outseam is given, the waist seam rises by this much from centre front to side
/// (common practice: 1 to 2.5 cm).
const WAIST_RISE_MM: f64 = 20.0;

/// What counts as met, per equation.
pub(crate) const MET_MM: f64 = 0.01;

/// The chart measures that the block decides, in the order of the equations.
const CORE: [&str; 9] = [
    "waist",
    "front_rise",
    "back_rise",
    "thigh",
    "hem",
    "inseam",
    "outseam",
    "seat",
    "knee",
];

/// The block being measured.
struct OnBlock<'a> {
    block: &'a Block,
    spec: &'a Spec,
}

impl Measurable for OnBlock<'_> {
    fn run_length(&self, run: Run) -> Option<Length> {
        let b = self.block;
        let path = match run {
            Run::FrontCentre => &b.front_centre,
            Run::FrontInseam => &b.front_inseam,
            Run::FrontHem => &b.front_hem,
            Run::FrontSide => &b.front_side,
            Run::FrontWaist => &b.front_waist,
            Run::BackSeat => &b.back_seat,
            Run::BackInseam => &b.back_inseam,
            Run::BackHem => &b.back_hem,
            Run::BackSide => &b.back_side,
            Run::BackTop => &b.back_top,
            Run::YokeCentre => &b.yoke_centre,
            Run::YokeLower => &b.yoke_lower,
            Run::YokeSide => &b.yoke_side,
            Run::YokeTop => &b.yoke_top,
            Run::BandJoin => {
                return Some((b.front_waist.length() + b.yoke_top.length()) * 2.0 - self.spec.band_ease);
            }
            Run::BandEnd => return Some(self.spec.band_height * 2.0),
            _ => return None,
        };
        Some(path.length())
    }

    fn width(&self, panel: Panel, y_mm: f64) -> Option<Length> {
        let b = self.block;
        let paths = match panel {
            Panel::Front => [&b.front_centre, &b.front_inseam, &b.front_side],
            Panel::Back => [&b.back_seat, &b.back_inseam, &b.back_side],
        };
        extent_at(paths.into_iter(), y_mm)
    }

    fn named_point(&self, _: PieceId, _: &str) -> Option<Point> {
        None
    }
}

/// The chart value a measure has to meet.
pub(crate) fn wanted(spec: &Spec, key: &str) -> Option<Length> {
    match key {
        "waist" => Some(spec.waist),
        "seat" => Some(spec.seat),
        "front_rise" => Some(spec.front_rise),
        "back_rise" => Some(spec.back_rise),
        "thigh" => Some(spec.thigh),
        "knee" => Some(spec.knee),
        "hem" => Some(spec.hem),
        "inseam" => Some(spec.inseam),
        "outseam" => spec.outseam,
        "band_height" => Some(spec.band_height),
        "band_overlap" => Some(spec.band_overlap),
        "fly_length" => Some(spec.fly_length),
        "fly_width" => Some(spec.fly_width),
        "yoke_centre" => Some(spec.yoke_centre),
        "yoke_side" => Some(spec.yoke_side),
        "mouth_width" => Some(spec.mouth_width),
        "mouth_depth" => Some(spec.mouth_depth),
        "coin_width" => Some(spec.coin_width),
        "coin_depth" => Some(spec.coin_depth),
        "back_pocket_width" => Some(spec.back_pocket_width),
        "back_pocket_length" => Some(spec.back_pocket_length),
        "back_pocket_from_yoke" => Some(spec.back_pocket_from_yoke),
        "back_pocket_from_centre" => Some(spec.back_pocket_from_centre),
        "loop_length" => Some(spec.loop_length),
        "loop_width" => Some(spec.loop_width),
        "hem_depth" => Some(spec.hem_depth),
        _ => None,
    }
}

/// Changes one measure of the chart; used to ask which change would resolve a conflict.
pub(crate) fn with_measure(spec: &Spec, key: &str, value: Length) -> Spec {
    let mut s = spec.clone();
    match key {
        "waist" => s.waist = value,
        "seat" => s.seat = value,
        "front_rise" => s.front_rise = value,
        "back_rise" => s.back_rise = value,
        "thigh" => s.thigh = value,
        "knee" => s.knee = value,
        "hem" => s.hem = value,
        "inseam" => s.inseam = value,
        "outseam" => s.outseam = Some(value),
        "band_height" => s.band_height = value,
        "yoke_centre" => s.yoke_centre = value,
        "yoke_side" => s.yoke_side = value,
        _ => {}
    }
    s
}

/// The core measures of the chart that this spec states.
pub(crate) fn core_measures(spec: &Spec) -> impl Iterator<Item = (&'static Measure, Length)> {
    CORE.iter()
        .filter_map(|key| Some((measure(key)?, wanted(spec, key)?)))
}

/// One equation per free parameter: first the chart (front and back together), then how each
/// measure is shared and which seams must match.
fn residuals(spec: &Spec, block: &Block) -> Vec<f64> {
    let on = OnBlock { block, spec };
    let mut r = Vec::with_capacity(PARAMETERS);
    for (measure, wanted) in core_measures(spec) {
        // Seat and knee are met by construction: the block places their points outright.
        if matches!(measure.key, "seat" | "knee") {
            continue;
        }
        let got = measure.of(&on, spec).map_or(f64::NAN, Length::to_mm);
        r.push(got - wanted.to_mm());
    }
    if spec.outseam.is_none() {
        r.push(
            block.front_waist.start().y - block.front_waist.end().y - WAIST_RISE_MM,
        );
    }
    let length = |run| on.run_length(run).map_or(f64::NAN, Length::to_mm);
    let thigh_y = -spec.thigh_at.to_mm();
    let width = |panel| on.width(panel, thigh_y).map_or(f64::NAN, Length::to_mm);
    let shared = |back: f64, front: f64, split: Length| back - front - 2.0 * split.to_mm();
    r.push(shared(width(Panel::Back), width(Panel::Front), spec.thigh_split));
    r.push(shared(length(Run::BackHem), length(Run::FrontHem), spec.hem_split));
    r.push(shared(length(Run::YokeTop), length(Run::FrontWaist), spec.waist_split));
    r.push(length(Run::BackInseam) + spec.inseam_stretch.to_mm() - length(Run::FrontInseam));
    r.push(length(Run::BackSide) + length(Run::YokeSide) - length(Run::FrontSide));
    r.push(length(Run::BackTop) - length(Run::YokeTop) - spec.seat_dart.to_mm());
    r
}

/// A block that meets its chart, or the nearest that could be found.
#[derive(Clone, Debug)]
pub(crate) struct Fitted {
    pub shape: Shape,
    pub block: Block,
    /// Largest miss over all equations, in millimetres.
    pub worst_mm: f64,
    /// Why the shape cannot be sewn, if it cannot.
    pub impossible: Option<&'static str>,
}

impl Fitted {
    pub fn holds(&self) -> bool {
        self.worst_mm <= MET_MM && self.impossible.is_none()
    }
}

pub(crate) fn fit(spec: &Spec, first: Option<Shape>) -> Fitted {
    let start = first.unwrap_or_else(|| Shape::first(spec));
    let to_shape = |x: &[f64]| {
        let mut a = [0.0; PARAMETERS];
        a.copy_from_slice(x);
        Shape::from_array(&a)
    };
    let solution = least_squares(&start.to_array(), |x| {
        residuals(spec, &build(spec, &to_shape(x)))
    });
    let shape = to_shape(&solution.parameters);
    let block = build(spec, &shape);
    let worst = solution.worst();
    Fitted {
        impossible: impossible(spec, &shape, &block),
        shape,
        block,
        worst_mm: if worst.is_finite() { worst } else { f64::INFINITY },
    }
}

/// The equations may close on a shape that no cloth can take. This names the first reason.
fn impossible(spec: &Spec, shape: &Shape, block: &Block) -> Option<&'static str> {
    let hip_y = spec.seat_at.to_mm();
    if shape.front_extension < 8.0 || shape.back_extension < 15.0 {
        return Some("the crotch would have no width");
    }
    if shape.front_extension > 0.12 * spec.seat.to_mm()
        || shape.back_extension > 0.2 * spec.seat.to_mm()
    {
        return Some("the crotch would be far too wide");
    }
    if !(-15.0..=45.0).contains(&shape.drop) {
        return Some("the back crotch point would lie at the wrong height");
    }
    if shape.front_waist_y < hip_y + 15.0 || shape.seat_line < 15.0 {
        return Some("the waist would lie below the seat level");
    }
    if shape.hem_y > block.knee_y - 20.0 {
        return Some("the hem would lie above the knee");
    }
    if shape.side_waist.1 < hip_y + 15.0 || shape.side_yoke.1 < hip_y + 5.0 {
        return Some("the side seam would end below the seat level");
    }
    if shape.side_waist.1 - shape.front_waist_y > 90.0
        || shape.side_waist.1 - shape.front_waist_y < -40.0
    {
        return Some("the waist would climb or fall too steeply towards the side");
    }
    if shape.yoke_turn.abs() > 0.9 {
        return Some("the yoke would turn too sharply");
    }
    if shape.side_waist.0 < spec.front_tilt.to_mm() + 40.0 || shape.side_yoke.0 < 60.0 {
        return Some("the waist would have no width");
    }
    let hips = [
        block.front_side.crossings_at_y(hip_y),
        block.back_side.crossings_at_y(hip_y),
    ];
    let tops = [shape.side_waist.0, shape.side_yoke.0];
    for (hip, top) in hips.iter().zip(tops) {
        let hip_x = hip.iter().map(|p| p.x).fold(f64::MIN, f64::max);
        if top - hip_x > 25.0 {
            return Some("the waist would be wider than the seat");
        }
    }
    None
}

