//! Front, back and yoke, and the facing that fills the corner of the front, as one block.

use crate::piece::EdgeId;
use geometry::{Affine, Path, Point, Vec2};
use style::{Level, MeasureId};
use trade::{Angle, Length};

use super::frame::{laid, upright};
use super::panel::Panel;
use crate::block::Block;
use crate::layout::{LegMarks, Marks};
use crate::pattern::Proportions;
use crate::spec::Spec;

/// A notch this near to the height of the knee or the seat level is the one that marks it.
const NEAR_LEVEL: Length = Length::mm(80.0);

/// How far the file's notch for the pocket mouth may lie from where the chart puts it.
const NEAR_MOUTH: Length = Length::mm(25.0);

/// The brought body.
pub(super) struct Body {
    pub front: Panel,
    pub back: Panel,
    pub yoke: Panel,
    pub facing: Option<Panel>,
    pub block: Block,
    pub marks: Marks,
    /// The mouth where the front has it cut away.
    pub mouth: Option<Path>,
    /// The chart, with what the layout needs to know as the pieces have it.
    pub spec: Spec,
}

impl Body {
    pub fn new(
        chart: &Spec,
        front: Panel,
        back: Panel,
        yoke: Panel,
        facing: Option<Panel>,
    ) -> Result<Body, String> {
        let mut spec = chart.clone();
        let front = in_piece("front", set_front(&front, &mut spec))?;
        let facing = facing
            .map(|facing| in_piece("hip pocket facing", set_facing(&facing, &front, &mut spec)))
            .transpose()?;
        let hem_y = middle(front.need(EdgeId::Hem)?).y;
        let back = in_piece("back", set_back(&back, &spec, hem_y))?;
        let yoke = in_piece("yoke", set_yoke(&yoke, &back))?;
        let block = block(&spec, &front, &back, &yoke, facing.as_ref(), hem_y)?;
        let marks = Marks {
            front: leg_marks(
                &spec,
                &front,
                (&block.front_inseam, &block.front_side),
                None,
            ),
            back: leg_marks(
                &spec,
                &back,
                (&block.back_inseam, &block.back_side),
                Some((&front, &block)),
            ),
        };
        Ok(Body {
            mouth: front.edge(EdgeId::Mouth).cloned(),
            front,
            back,
            yoke,
            facing,
            block,
            marks,
            spec,
        })
    }

    /// What the draft of a chart would tell of its shape.
    pub fn proportions(&self) -> Proportions {
        let b = &self.block;
        let seat_foot = b
            .back_seat
            .crossings_at_y(self.spec.level(Level::Seat).to_mm());
        let reach = |x: f64, crotch: Point| Length::mm(x - crotch.x);
        let yoke = b.yoke_lower.end_direction().atan2() - b.yoke_lower.start_direction().atan2();
        Proportions {
            front_extension: reach(0.0, b.front_centre.end()),
            back_extension: reach(
                seat_foot.first().map_or(0.0, |foot| foot.x),
                b.back_seat.end(),
            ),
            drop: Length::mm(b.front_centre.end().y - b.back_seat.end().y),
            waist_rise: Length::mm(b.front_side.end().y - b.front_centre.start().y),
            yoke_turn: Angle::rad(yoke),
        }
    }
}

fn in_piece<T>(name: &str, made: Result<T, String>) -> Result<T, String> {
    made.map_err(|why| format!("{name}: {why}"))
}

fn middle(path: &Path) -> Point {
    path.start().midpoint(path.end())
}

/// Where a line from `at` along `direction` comes to the height `y`; `at` itself where it never does.
fn at_height(at: Point, direction: Vec2, y: f64) -> Point {
    if direction.y.abs() < 0.2 {
        return at;
    }
    at + direction * ((y - at.y) / direction.y)
}

/// The crotch point at height 0, the centre front line drawn on down to x = 0.
fn set_front(panel: &Panel, spec: &mut Spec) -> Result<Panel, String> {
    let mut front = upright(panel, EdgeId::Fly, EdgeId::Inseam)?;
    if front.edge(EdgeId::Crotch).is_none() {
        let whole = front.length(EdgeId::Fly)?;
        let stated = front.need(EdgeId::Fly)?.clone();
        let fly = front
            .notch_near(&stated, spec[MeasureId::FlyLength], NEAR_MOUTH)
            .unwrap_or(spec[MeasureId::FlyLength]);
        front.split_end(EdgeId::Fly, EdgeId::Crotch, whole - fly)?;
    }
    spec.set(MeasureId::FlyLength, front.length(EdgeId::Fly)?);
    let fly = front.need(EdgeId::Fly)?;
    let crotch = front.need(EdgeId::Crotch)?.end();
    let foot = at_height(fly.start(), fly.start_direction(), crotch.y);
    Ok(front.moved(Affine::translate(Vec2::new(-foot.x, -crotch.y))))
}

/// The facing behind the mouth: its corner of the front, or the corner that the mouth cut away.
fn set_facing(panel: &Panel, front: &Panel, spec: &mut Spec) -> Result<Panel, String> {
    let mut facing = upright(panel, EdgeId::Side, EdgeId::Inner)
        .or_else(|_| upright(panel, EdgeId::Waist, EdgeId::Inner))?;
    let near = |edge: &Path, along: Length| facing.notch_near(edge, along, NEAR_MOUTH);
    let (waist, side) = (facing.need(EdgeId::Waist)?, facing.need(EdgeId::Side)?);
    let width = near(waist, spec[MeasureId::MouthWidth]).unwrap_or(spec[MeasureId::MouthWidth]);
    let from_end = side.length() - spec[MeasureId::MouthDepth];
    let depth = side.length() - near(side, from_end).unwrap_or(from_end);
    if facing.edge(EdgeId::WaistUnder).is_none() {
        let whole = facing.length(EdgeId::Waist)?;
        facing.split_end(EdgeId::Waist, EdgeId::WaistUnder, whole - width)?;
    }
    facing.split_start(EdgeId::Side, EdgeId::SideUnder, depth)?;
    spec.set(MeasureId::MouthWidth, facing.length(EdgeId::Waist)?);
    spec.set(MeasureId::MouthDepth, facing.length(EdgeId::Side)?);
    let map = match front.edge(EdgeId::Mouth) {
        Some(mouth) => {
            let (on_side, on_waist) = (
                facing.need(EdgeId::Side)?.start(),
                facing.need(EdgeId::Waist)?.end(),
            );
            laid(
                on_side.midpoint(on_waist),
                on_waist - on_side,
                middle(mouth),
                mouth.end() - mouth.start(),
            )
        }
        None => {
            let corner = facing.need(EdgeId::Side)?.end();
            Affine::translate(front.need(EdgeId::Side)?.end() - corner)
        }
    };
    Ok(facing.moved(map))
}

/// The hem as high as the front's, the seat line at x = 0 where it crosses the seat level.
fn set_back(panel: &Panel, spec: &Spec, hem_y: f64) -> Result<Panel, String> {
    let back = upright(panel, EdgeId::Seat, EdgeId::Inseam)?;
    let down = hem_y - middle(back.need(EdgeId::Hem)?).y;
    let back = back.moved(Affine::translate(Vec2::new(0.0, down)));
    let seat = back.need(EdgeId::Seat)?;
    let foot = at_height(
        seat.start(),
        seat.start_direction(),
        spec.level(Level::Seat).to_mm(),
    );
    Ok(back.moved(Affine::translate(Vec2::new(-foot.x, 0.0))))
}

/// The yoke on top of the back, its centre in line with the seat seam.
fn set_yoke(panel: &Panel, back: &Panel) -> Result<Panel, String> {
    let centre = panel.need(EdgeId::Centre)?;
    let seat = back.need(EdgeId::Seat)?;
    let chord = centre.end() - centre.start();
    Ok(panel.moved(laid(
        centre.end(),
        chord,
        seat.start(),
        seat.start_direction(),
    )))
}

/// A path moved at one end only, so that it meets its neighbour.
fn to_meet(path: &Path, start: Option<Point>) -> Path {
    let Some(start) = start else {
        return path.clone();
    };
    let mut points = path.segments().to_vec();
    if let Some(first) = points.first_mut() {
        *first = match *first {
            geometry::PathSeg::Line(line) => {
                geometry::PathSeg::Line(geometry::Line::new(start, line.p1))
            }
            other => {
                let bez = other.to_cubic();
                let by = start - bez.p0;
                geometry::PathSeg::Cubic(geometry::CubicBez::new(
                    start,
                    bez.p1 + by,
                    bez.p2,
                    bez.p3,
                ))
            }
        };
    }
    Path::new(points)
}

fn block(
    spec: &Spec,
    front: &Panel,
    back: &Panel,
    yoke: &Panel,
    facing: Option<&Panel>,
    hem_y: f64,
) -> Result<Block, String> {
    let (side, waist) = (front.need(EdgeId::Side)?, front.need(EdgeId::Waist)?);
    let (front_side, front_waist) = match (front.edge(EdgeId::Mouth), facing) {
        (Some(_), Some(facing)) => {
            let corner_side = to_meet(facing.need(EdgeId::Side)?, Some(side.end()));
            let corner_waist = facing.need(EdgeId::Waist)?;
            (
                side.then(&corner_side),
                corner_waist.then(&to_meet(waist, Some(corner_waist.end()))),
            )
        }
        (Some(_), None) => {
            return Err("the front has its mouth cut away and there is no facing".to_owned());
        }
        (None, _) => (side.clone(), waist.clone()),
    };
    let path = |panel: &Panel, id: EdgeId| panel.need(id).cloned();
    Ok(Block {
        front_centre: front.need(EdgeId::Fly)?.then(front.need(EdgeId::Crotch)?),
        front_inseam: path(front, EdgeId::Inseam)?,
        front_hem: path(front, EdgeId::Hem)?,
        front_side,
        front_waist,
        back_seat: path(back, EdgeId::Seat)?,
        back_inseam: path(back, EdgeId::Inseam)?,
        back_hem: path(back, EdgeId::Hem)?,
        back_side: path(back, EdgeId::Side)?,
        back_top: path(back, EdgeId::Top)?,
        yoke_centre: path(yoke, EdgeId::Centre)?,
        yoke_lower: path(yoke, EdgeId::Lower)?,
        yoke_side: path(yoke, EdgeId::Side)?,
        yoke_top: path(yoke, EdgeId::Top)?,
        front_crease: front.grain.0.x,
        back_crease: back.grain.0.x,
        knee_y: -spec.level(Level::Knee).to_mm(),
        hem_y,
    })
}

/// Where knee and hip are marked on a panel: at the file's notches, else where the other panel has them,
/// else where the chart takes its measures.
fn leg_marks(
    spec: &Spec,
    panel: &Panel,
    (inseam, side): (&Path, &Path),
    other: Option<(&Panel, &Block)>,
) -> LegMarks {
    let knee_y = -spec.level(Level::Knee).to_mm();
    let hip_y = spec.level(Level::Seat).to_mm();
    let level = |path: &Path, y: f64, share: f64| {
        let crossing = path.crossings_at_y(y).into_iter().next();
        crossing.map_or(path.length() * share, |p| path.nearest(p).0)
    };
    let marked = |panel: &Panel, path: &Path, y: f64, share: f64| {
        panel.notch_near(path, level(path, y, share), NEAR_LEVEL)
    };
    // From the hem, for a partner that has no notch of its own.
    let partner = |front: fn(&Block) -> &Path, y: f64, share: f64, from_end: bool| {
        let (panel, block) = other?;
        let path = front(block);
        let at = marked(panel, path, y, share).unwrap_or_else(|| level(path, y, share));
        Some(if from_end { path.length() - at } else { at })
    };
    let on_side = |y: f64, share: f64| {
        marked(panel, side, y, share)
            .or_else(|| partner(|b| &b.front_side, y, share, false))
            .unwrap_or_else(|| level(side, y, share))
    };
    let knee_in = marked(panel, inseam, knee_y, 0.45)
        .or_else(|| Some(inseam.length() - partner(|b| &b.front_inseam, knee_y, 0.45, true)?))
        .unwrap_or_else(|| level(inseam, knee_y, 0.45));
    LegMarks {
        knee_in,
        knee_out: on_side(knee_y, 0.45),
        hip: on_side(hip_y, 0.85),
    }
}
