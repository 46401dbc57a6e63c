//! The garment laid flat: one mapping from any point of a panel to the view.
//!
//! The pair lies closed, as an inspector lays it to measure. Each level of a leg is a tube of girth
//! *front width + back width*, so flattened it is half as wide. The front panel lies in the middle of
//! the front face; the wider back panel wraps round the folds, which is why outseam and inseam show
//! just inside the edges. Above the seat level the tube is the whole body with the centre front
//! upright; between seat level and the leg one runs into the other, and the extensions of the fork lie
//! behind the inner edges (see [`crate::legs`]).
//!
//! Coordinates: y up, x from the centre line towards the side, for one half; the other half is the
//! mirror image. Widths along a level are true: what the tape measures on the view, and what is tucked
//! away there, is what it measures on the pattern.

use draft::measure::{self, MeasureId};
use draft::{EdgeId, Pattern, Piece, PieceId, PointId};
use geometry::{Path, Point, Vec2};

use crate::centre_seam::CentreSeam;
use crate::edge_table::EdgeTable;
use crate::legs::{LegMeasures, lay_legs};
use crate::level::{Level, STEP_MM, Tucked};
use crate::lift::Lift;
use crate::looks::SEAT_SHARE;
use crate::side::{Half, Spot};
use crate::yoke::YokeRules;

/// The flat garment of one pattern.
pub(crate) struct Flat {
    pub(crate) levels: Vec<Level>,
    pub(crate) lift: Lift,
    pub(crate) low: f64,
    front_seam: CentreSeam,
    back_seam: CentreSeam,
    pub(crate) seat_y: f64,
    pub(crate) hem_y: f64,
    /// Waist: half widths along the seam, and heights.
    pub(crate) front_waist: Path,
    pub(crate) front_waist_length: f64,
    pub(crate) yoke_waist_length: f64,
    pub(crate) side_waist_y: f64,
    pub(crate) centre_back_y: f64,
    pub(crate) band_ease_scale: f64,
    pub(crate) band_height: f64,
    pub(crate) squeeze: f64,
    pub(crate) yoke: Option<YokeRules>,
}

impl Flat {
    /// `None` when the panels are missing or have no height.
    pub(crate) fn new(pattern: &Pattern) -> Option<Flat> {
        let front = pattern.piece(PieceId::Front)?;
        let facing = pattern.piece(PieceId::PocketFacing)?;
        let back = pattern.piece(PieceId::Back)?;
        let yoke = pattern.piece(PieceId::Yoke)?;
        let front_inner = EdgeTable::new(&edges(
            front,
            &[EdgeId::Fly, EdgeId::Crotch, EdgeId::Inseam],
        )?);
        let front_outer = EdgeTable::new(&[front.edge(EdgeId::Side)?, facing.edge(EdgeId::Side)?]);
        let back_inner = EdgeTable::new(&edges(back, &[EdgeId::Seat, EdgeId::Inseam])?);
        let back_outer = EdgeTable::new(&[back.edge(EdgeId::Side)?]);

        let hem_y = front
            .point(PointId::HemIn)?
            .y
            .min(back.point(PointId::HemIn)?.y);
        let side_waist = front.point(PointId::SideWaist)?;
        let seat_y = pattern.spec.level(measure::Level::Seat).to_mm();
        let yoke_side_y = back.point(PointId::YokeSide)?.y;
        // The level of the crotch, where front and back turn, is one of the table.
        let low = ((hem_y - 5.0) / STEP_MM).floor() * STEP_MM;
        let high = side_waist.y.max(front.point(PointId::WaistCentre)?.y) + 40.0;
        if !(high - low).is_finite() || high - low > 5000.0 || high - low < 50.0 {
            return None;
        }

        let front_waist = facing
            .edge(EdgeId::Waist)?
            .then(front.edge(EdgeId::Waist)?)
            .reversed();
        let front_waist_length = front_waist.length().to_mm();
        let yoke_waist_length = yoke.edge(EdgeId::Top)?.length().to_mm();
        let straight = side_waist.x - front_inner.x(side_waist.y);
        let full_stretch = front_waist_length / straight.max(1.0) - 1.0;
        let rise = (side_waist.y - seat_y).max(1.0);
        let waist_wrap = ((yoke_waist_length - front_waist_length) / 2.0).max(0.0);

        let lift = Lift {
            drop: front.point(PointId::Crotch)?.y - back.point(PointId::Crotch)?.y,
            thigh: pattern.spec.level(measure::Level::Thigh).to_mm().max(10.0),
            seat: seat_y,
        };
        let count = ((high - low) / STEP_MM).ceil() as usize + 1;
        let mut levels: Vec<Level> = (0..count)
            .map(|k| {
                let y = low + k as f64 * STEP_MM;
                let t = ((y - seat_y) / rise).clamp(0.0, 1.0);
                let stretch = 1.0 + full_stretch * t;
                let front_in = front_inner.x(y);
                let front_w = (front_outer.x(y) - front_in).max(0.0) * stretch;
                let back_y = y - lift.at(y);
                let (back_in, back_out) = (back_inner.x(back_y), back_outer.x(back_y));
                let back_w = (back_out - back_in).max(0.0);
                let spare = if y <= yoke_side_y {
                    (back_w - front_w) / 2.0
                } else {
                    let seam_spare =
                        (back_outer.x(yoke_side_y) - back_inner.x(yoke_side_y) - front_w) / 2.0;
                    let share =
                        ((y - yoke_side_y) / (side_waist.y - yoke_side_y).max(1.0)).clamp(0.0, 1.0);
                    seam_spare + (waist_wrap - seam_spare) * share
                }
                .max(0.0);
                Level {
                    front_in,
                    back_in,
                    back_out,
                    front: front_w,
                    flat: front_w + spare,
                    wrap_in: 0.0,
                    wrap_out: spare,
                    tucked: Tucked::default(),
                    outer: Point::new(front_w + spare, y),
                    along: Vec2::new(1.0, 0.0),
                    stretch,
                }
            })
            .collect();
        let rise = [EdgeId::Fly, EdgeId::Crotch]
            .into_iter()
            .filter_map(|id| front.edge(id))
            .map(|edge| edge.length().to_mm());
        let measures = LegMeasures {
            seat_y,
            knee_y: -pattern.spec.level(measure::Level::Knee).to_mm(),
            hem_y,
            rise: rise.sum(),
            rise_height: front.point(PointId::WaistCentre)?.y,
        };
        lay_legs(&mut levels, low, &measures);

        let centre_top = yoke.point(PointId::WaistCentre)?;
        let centre_back_y = side_waist.y + SEAT_SHARE * (centre_top.y - side_waist.y);
        // The yoke keeps its height; the fullness lies in the back below it.
        let seam_y = back.point(PointId::YokeCentre)?.y;
        let drawn_seam_y = centre_back_y - pattern.spec[MeasureId::YokeCentre].to_mm();
        let squeeze = (drawn_seam_y - seat_y) / (seam_y - seat_y).max(1.0);
        let waist = pattern
            .piece(PieceId::Band)?
            .edge(EdgeId::Join)?
            .length()
            .to_mm();
        let mut flat = Flat {
            front_seam: CentreSeam::new(
                &edges(front, &[EdgeId::Fly, EdgeId::Crotch])?,
                front.point(PointId::Crotch)?,
                seat_y,
            ),
            back_seam: CentreSeam::new(
                &edges(back, &[EdgeId::Seat])?,
                back.point(PointId::Crotch)?,
                seat_y,
            ),
            levels,
            lift,
            low,
            seat_y,
            hem_y,
            front_waist,
            front_waist_length,
            yoke_waist_length,
            side_waist_y: side_waist.y,
            centre_back_y,
            band_ease_scale: 2.0 * (front_waist_length + yoke_waist_length) / waist.max(1.0),
            band_height: pattern.spec[MeasureId::BandHeight].to_mm(),
            squeeze,
            yoke: None,
        };
        flat.yoke = YokeRules::new(&flat, back, yoke);
        Some(flat)
    }

    pub(crate) fn level(&self, y: f64) -> Level {
        let k = ((y - self.low) / STEP_MM).clamp(0.0, (self.levels.len() - 1) as f64);
        let i = (k.floor() as usize).min(self.levels.len() - 2);
        Level::mix(&self.levels[i], &self.levels[i + 1], k - i as f64)
    }

    /// The inner and the outer end of a level: what a tape straight across finds.
    pub(crate) fn across(&self, y: f64) -> (Point, Point) {
        let level = self.level(y);
        (level.place(0.0), level.outer)
    }

    /// The ends of the lower edge of a leg.
    pub(crate) fn hem(&self) -> (Point, Point) {
        self.across(self.hem_y)
    }

    /// A point in the frame of the front (front, pocket facing, bag, fly).
    pub(crate) fn front(&self, p: Point) -> Spot {
        let level = self.level(p.y);
        let by_level = level.place(level.front_along(p.x)) + Vec2::new(0.0, self.beyond(p.y));
        Spot {
            half: Half::Front,
            at: self.by_seam(&self.front_seam, p, by_level, |y| y),
        }
    }

    /// A point of a panel that its level takes to `by_level`, laid by the centre seam where it is near it; `level_of` gives the
    /// level at which a height of the panel is drawn.
    fn by_seam(
        &self,
        seam: &CentreSeam,
        p: Point,
        by_level: Point,
        level_of: impl Fn(f64) -> f64,
    ) -> Point {
        let Some(beside) = seam.beside(p) else {
            return by_level;
        };
        let level = self.level(level_of(beside.foot.y));
        let at = level.place(beside.away) - Vec2::new(0.0, beside.round);
        by_level.lerp(at, beside.weight)
    }

    /// Where both legs, front and back meet.
    pub(crate) fn fork(&self) -> Point {
        self.level(0.0).place(0.0)
    }

    /// Points above the tabulated levels keep their height.
    fn beyond(&self, y: f64) -> f64 {
        let top = self.low + (self.levels.len() - 1) as f64 * STEP_MM;
        (y - top).max(0.0)
    }

    /// A point in the frame of the back (back panel and what is set on it).
    pub(crate) fn back(&self, on_piece: Point) -> Spot {
        let p = Point::new(on_piece.x, self.lift.level_of(on_piece.y));
        let level = self.level(p.y);
        let from_in = level.back_along(p.x);
        let from_out = level.back_seen() - from_in;
        let height = |at: Point, share: f64| Point::new(at.x, self.squeezed(at.y, p.y, share));
        if p.y < self.seat_y && from_in < level.wrap_in {
            return Spot {
                half: Half::Front,
                at: level.place(level.wrap_in - from_in),
            };
        }
        if from_out < level.wrap_out {
            return Spot {
                half: Half::Front,
                at: level.place(level.flat - level.wrap_out + from_out),
            };
        }
        let along = from_in - level.wrap_in;
        let at = height(level.place(along), along / level.flat.max(1.0));
        Spot {
            half: Half::Back,
            at: self.by_seam(&self.back_seam, on_piece, at, |y| self.lift.level_of(y)),
        }
    }

    /// A point in the frame of the back, unfolded onto the back face: beyond the folds it simply
    /// goes on, for areas that are clipped to the outline.
    pub(crate) fn back_unfolded(&self, on_piece: Point) -> Point {
        let p = Point::new(on_piece.x, self.lift.level_of(on_piece.y));
        let level = self.level(p.y);
        let along = level.back_along(p.x) - level.wrap_in;
        let at = level.place(along);
        let at = Point::new(at.x, self.squeezed(at.y, p.y, along / level.flat.max(1.0)));
        self.by_seam(&self.back_seam, on_piece, at, |y| self.lift.level_of(y))
    }

    /// Heights above the seat level are drawn in towards the centre back, where the fullness of the
    /// seat takes up part of the seam.
    pub(crate) fn squeezed(&self, drawn_y: f64, y: f64, share: f64) -> f64 {
        if y <= self.seat_y {
            return drawn_y;
        }
        let share = share.clamp(0.0, 1.0);
        let factor = self.squeeze + (1.0 - self.squeeze) * share;
        drawn_y + (y - self.seat_y) * (factor - 1.0)
    }
}

fn edges<'a>(piece: &'a Piece, ids: &[EdgeId]) -> Option<Vec<&'a Path>> {
    ids.iter().map(|id| piece.edge(*id)).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::sample::ferryman;
    use draft::{Spec, draft};
    use trade::Length;

    /// What an inspector's tape finds on the view is the chart, in every size.
    #[test]
    fn the_view_measures_like_the_chart() {
        let doc = ferryman().style;
        for size in doc.sizes.all() {
            let spec = Spec::of(&doc, size);
            let pattern = draft(&spec).pattern;
            let flat = Flat::new(&pattern).unwrap();
            let near = |what: &str, got: f64, chart: Length| {
                let miss = got - chart.to_mm();
                assert!(miss.abs() <= 1.0, "{size} {what}: off by {miss:.2} mm");
            };
            near("waist", 4.0 * flat.fold(), spec[MeasureId::Waist]);
            let across = |y: f64| {
                let level = flat.level(y);
                (level.outer - level.place(0.0)).hypot()
            };
            near(
                "seat",
                4.0 * across(spec.level(measure::Level::Seat).to_mm()),
                spec[MeasureId::Seat],
            );
            let thigh = -spec.level(measure::Level::Thigh).to_mm();
            let tucked = flat.level(thigh).tucked;
            near(
                "thigh",
                2.0 * across(thigh) + tucked.front + tucked.back,
                spec[MeasureId::Thigh],
            );
            near(
                "knee",
                2.0 * across(-spec.level(measure::Level::Knee).to_mm()),
                spec[MeasureId::Knee],
            );
            near("hem", 2.0 * across(flat.hem_y), spec[MeasureId::Hem]);
        }
    }

    /// Going once round a leg at any level, no point is lost and none is shown twice: the front and
    /// the back together cover both faces.
    #[test]
    fn a_level_is_covered_once() {
        let doc = ferryman().style;
        let pattern = draft(&Spec::of(&doc, doc.sizes.base)).pattern;
        let flat = Flat::new(&pattern).unwrap();
        for y in [-700.0, -400.0, -200.0, -80.0, 30.0, 80.0, 120.0, 160.0] {
            let level = flat.level(y);
            let back_face = level.back_seen() - level.wrap_in - level.wrap_out;
            assert!(
                (back_face - level.flat).abs() < 0.6,
                "at {y}: the back face is {back_face} wide, the view {}",
                level.flat
            );
            let edge = flat.back(Point::new(level.back_out - 0.01, y));
            assert_eq!(
                edge.half,
                Half::Front,
                "the outseam shows on the front at {y}"
            );
        }
    }

    #[test]
    fn a_yoke_sits_between_its_seam_and_the_waist() {
        let doc = ferryman().style;
        let pattern = draft(&Spec::of(&doc, doc.sizes.base)).pattern;
        let flat = Flat::new(&pattern).unwrap();
        let yoke = pattern.piece(PieceId::Yoke).unwrap();
        let low = flat.yoke(yoke.point(PointId::SeamCentre).unwrap());
        let seam = flat.back(
            pattern
                .piece(PieceId::Back)
                .unwrap()
                .point(PointId::YokeCentre)
                .unwrap(),
        );
        assert!((low.at - seam.at).hypot() < 0.5, "{low:?} {seam:?}");
        let top = flat.yoke(yoke.point(PointId::WaistCentre).unwrap());
        assert!((top.at.y - low.at.y - pattern.spec[MeasureId::YokeCentre].to_mm()).abs() < 0.5);
        assert_eq!(
            flat.yoke(yoke.point(PointId::SideWaist).unwrap()).half,
            Half::Front
        );
    }
}
