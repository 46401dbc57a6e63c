//! The fit: moving the block's shape until measuring it gives the chart.

use geometry::Point;
use style::{Level, MeasureId};
use trade::Length;
use words::{Key, Said, key, say};

use crate::block::{Block, PARAMETERS, Shape, build};
use crate::measure::{Decides, Measurable, Panel, Run, Taking, extent_at, taking};
use crate::piece::{PieceId, PointId};
use crate::solve::{Solution, least_squares, least_squares_within};
use crate::spec::Spec;

/// Where no outseam is given, the waist seam rises by this much from centre front to side
/// (common practice: 1 to 2.5 cm).
const WAIST_RISE_MM: f64 = 20.0;

/// What counts as met, per equation.
pub(crate) const MET_MM: f64 = 0.01;

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
                return Some(
                    (b.front_waist.length() + b.yoke_top.length()) * 2.0 - self.spec.band_ease,
                );
            }
            Run::BandEnd => return Some(self.spec[MeasureId::BandHeight] * 2.0),
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

    fn named_point(&self, _: PieceId, _: PointId) -> Option<Point> {
        None
    }
}

/// One equation per free parameter: first the chart (front and back together), then how each
/// measure is shared and which seams must match.
fn residuals(spec: &Spec, block: &Block) -> Vec<f64> {
    let on = OnBlock { block, spec };
    let mut r = Vec::with_capacity(PARAMETERS);
    for measure in MeasureId::ALL {
        let Taking { take, decides, .. } = taking(measure);
        // What is placed is met by construction, and no part by itself is the block's to meet.
        let wanted = spec.stated(measure);
        if let Some(wanted) = wanted.filter(|_| decides == Decides::Fitted) {
            let got = take.of(&on, spec).map_or(f64::NAN, Length::to_mm);
            r.push(got - wanted.to_mm());
        }
    }
    if spec.stated(MeasureId::Outseam).is_none() {
        r.push(block.front_waist.start().y - block.front_waist.end().y - WAIST_RISE_MM);
    }
    let length = |run| on.run_length(run).map_or(f64::NAN, Length::to_mm);
    let thigh_y = -spec.level(Level::Thigh).to_mm();
    let width = |panel| on.width(panel, thigh_y).map_or(f64::NAN, Length::to_mm);
    let shared = |back: f64, front: f64, split: Length| back - front - 2.0 * split.to_mm();
    r.push(shared(
        width(Panel::Back),
        width(Panel::Front),
        spec.thigh_split,
    ));
    r.push(shared(
        length(Run::BackHem),
        length(Run::FrontHem),
        spec.hem_split,
    ));
    r.push(shared(
        length(Run::YokeTop),
        length(Run::FrontWaist),
        spec.waist_split,
    ));
    r.push(length(Run::BackInseam) + spec.inseam_stretch.to_mm() - length(Run::FrontInseam));
    r.push(length(Run::BackSide) + length(Run::YokeSide) - length(Run::FrontSide));
    let dart = length(Run::BackTop) - length(Run::YokeTop) - spec.seat_dart.to_mm();
    r.push(if spec.straight_outseam {
        on_the_cloths_edge(spec, block, dart)
    } else {
        dart
    });
    r
}

/// What a straight outseam misses: of the stated dart, or of not running out beyond the cloth's own edge
/// above the hip. Nothing can be cut beyond that edge, so there the dart is taken as much smaller as the
/// outseam has to come in, and its seam line lies at one distance from the edge; never to less than nought.
fn on_the_cloths_edge(spec: &Spec, block: &Block, dart_over: f64) -> f64 {
    let runs_out = block.back_side.end().x - block.back_side.start().x;
    dart_over.max(runs_out.min(dart_over + spec.seat_dart.to_mm()))
}

/// A block that meets its chart, or the nearest that could be found.
#[derive(Clone, Debug)]
pub(crate) struct Fitted {
    pub shape: Shape,
    pub block: Block,
    /// Largest miss over all equations, in millimetres.
    pub worst_mm: f64,
    /// Why the shape cannot be sewn, if it cannot.
    pub impossible: Option<Key>,
}

impl Fitted {
    pub fn holds(&self) -> bool {
        self.worst_mm <= MET_MM && self.impossible.is_none()
    }

    /// What would go wrong.
    pub fn reason(&self) -> Said {
        match self.impossible {
            Some(reason) => reason.into(),
            None => {
                let off = Length::mm(self.worst_mm.min(9999.0).ceil());
                say::ConflictMisses { off: off.in_cm(1) }.into()
            }
        }
    }
}

pub(crate) fn fit(spec: &Spec) -> Fitted {
    let solution = least_squares(&Shape::first(spec).to_array(), |x| {
        residuals(spec, &build(spec, &to_shape(x)))
    });
    fitted(spec, &solution)
}

/// Whether the draft of this chart closes; gives up sooner than [`fit`].
pub(crate) fn closes(spec: &Spec) -> bool {
    let first = Shape::first(spec).to_array();
    let solution = least_squares_within(TRIAL_PATIENCE, &first, |x| {
        residuals(spec, &build(spec, &to_shape(x)))
    });
    fitted(spec, &solution).holds()
}

/// The value of one thing the style says, nearest to what was asked, at which all else could be met by a shape that
/// cloth can take; `with` gives the size for a value. An estimate: [`closes`] decides.
pub(crate) fn nearest_value(spec: &Spec, asked: f64, with: impl Fn(f64) -> Spec) -> Option<f64> {
    // The value becomes one more parameter, held to what was asked by a weak spring; the
    // limits of a sensible shape push back like equations once they are crossed.
    let mut first = Shape::first(spec).to_array().to_vec();
    first.push(asked);
    let solution = least_squares_within(TRIAL_PATIENCE, &first, |x| {
        let moved = with(x[PARAMETERS]);
        let shape = to_shape(&x[..PARAMETERS]);
        let block = build(&moved, &shape);
        let mut r = residuals(&moved, &block);
        r.extend(limits(&moved, &shape, &block).map(|(over, _)| (over + INSIDE_MM).max(0.0)));
        r.push((x[PARAMETERS] - asked) * SPRING);
        r
    });
    let value = solution.parameters.get(PARAMETERS).copied()?;
    let (_, demands) = solution.residuals.split_last()?;
    let met = demands.iter().all(|r| r.abs() < NEARLY_MM);
    (met && value.is_finite()).then_some(value)
}

/// Enough for a draft that closes, little for one that does not; see [`least_squares_within`].
const TRIAL_PATIENCE: usize = 3;
/// Stiffness of the spring in [`nearest_value`]: weak enough to give way to every equation.
const SPRING: f64 = 0.01;
/// The spring keeps the equations from closing by about a tenth of this; where they miss by more,
/// moving the measure does not help.
const NEARLY_MM: f64 = 3.0;
/// How far inside its limits a shape is sought.
const INSIDE_MM: f64 = 0.2;

fn to_shape(x: &[f64]) -> Shape {
    let mut a = [0.0; PARAMETERS];
    a.copy_from_slice(x);
    Shape::from_array(&a)
}

fn fitted(spec: &Spec, solution: &Solution) -> Fitted {
    let shape = to_shape(&solution.parameters);
    let block = build(spec, &shape);
    let worst = solution.worst();
    Fitted {
        impossible: impossible(spec, &shape, &block),
        shape,
        block,
        worst_mm: if worst.is_finite() {
            worst
        } else {
            f64::INFINITY
        },
    }
}

/// The equations may close on a shape that no cloth can take. This names the worst reason.
fn impossible(spec: &Spec, shape: &Shape, block: &Block) -> Option<Key> {
    limits(spec, shape, block)
        .filter(|(over, _)| *over > 0.0)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, reason)| reason)
}

/// What is left of the front rise below the fly, so that it can be closed and tacked (common practice: 2 cm at the least).
const BELOW_FLY_MM: f64 = 20.0;
/// What is left of the front's waist beside a pocket mouth or a fly.
const BESIDE_MOUTH_MM: f64 = 12.0;

/// What a shape that can be sewn stays within: how far each limit is crossed, in millimetres
/// (negative inside it), and what that would mean.
fn limits(spec: &Spec, shape: &Shape, block: &Block) -> impl Iterator<Item = (f64, Key)> {
    let hip_y = spec.level(Level::Seat).to_mm();
    let seat = spec[MeasureId::Seat].to_mm();
    let waist_rise = shape.side_waist.1 - shape.front_waist_y;
    let hip_x = |side: &geometry::Path| {
        let crossings = side.crossings_at_y(hip_y);
        crossings.iter().map(|p| p.x).fold(f64::MIN, f64::max)
    };
    let narrow = key::CONFLICT_CROTCH_NARROW;
    let wide = key::CONFLICT_CROTCH_WIDE;
    let height = key::CONFLICT_CROTCH_HEIGHT;
    let low = key::CONFLICT_WAIST_LOW;
    let side_low = key::CONFLICT_SIDE_LOW;
    let steep = key::CONFLICT_WAIST_STEEP;
    let thin = key::CONFLICT_WAIST_THIN;
    let big = key::CONFLICT_WAIST_BIG;
    let mouth_foot = block
        .front_side
        .point_at(block.front_side.length() - spec[MeasureId::MouthDepth]);
    let front_waist = block.front_waist.length();
    let centre_back = hip_y
        + (shape.seat_line + spec[MeasureId::YokeCentre].to_mm()) * spec.seat_angle.to_rad().cos();
    [
        (8.0 - shape.front_extension, narrow),
        (15.0 - shape.back_extension, narrow),
        (shape.front_extension - 0.12 * seat, wide),
        (shape.back_extension - 0.2 * seat, wide),
        (-15.0 - shape.drop, height),
        (shape.drop - 45.0, height),
        (hip_y + 15.0 - shape.front_waist_y, low),
        (15.0 - shape.seat_line, low),
        (shape.hem_y - (block.knee_y - 20.0), key::CONFLICT_HEM_HIGH),
        (hip_y + 15.0 - shape.side_waist.1, side_low),
        (hip_y + 5.0 - shape.side_yoke.1, side_low),
        (
            shape.front_waist_y - centre_back,
            key::CONFLICT_WAIST_TIPPED,
        ),
        (waist_rise - 90.0, steep),
        (-40.0 - waist_rise, steep),
        // 0.9 rad, on the scale of the parameter.
        (
            (shape.yoke_turn.abs() - 0.9) * 200.0,
            key::CONFLICT_YOKE_TURNED,
        ),
        (spec.front_tilt.to_mm() + 40.0 - shape.side_waist.0, thin),
        (60.0 - shape.side_yoke.0, thin),
        (shape.side_waist.0 - hip_x(&block.front_side) - 25.0, big),
        (shape.side_yoke.0 - hip_x(&block.back_side) - 25.0, big),
        // What is laid out on the panels has to find room there.
        (
            (spec[MeasureId::FlyLength] - block.front_centre.length()).to_mm() + BELOW_FLY_MM,
            key::CONFLICT_FLY_LONG,
        ),
        (
            (spec[MeasureId::FlyWidth] - front_waist).to_mm() + BESIDE_MOUTH_MM,
            key::CONFLICT_FLY_WIDE,
        ),
        (
            (spec[MeasureId::MouthWidth] - front_waist).to_mm() + BESIDE_MOUTH_MM,
            key::CONFLICT_MOUTH_WIDE,
        ),
        (hip_y - mouth_foot.y, key::CONFLICT_MOUTH_DEEP),
    ]
    .into_iter()
}
