//! A row on a plate: every stitch its own dash, from where the needle goes in to where it goes in
//! next.
//!
//! What is counted is how often the needle goes in, as [`StitchRow::stitches`] does: a row of `n`
//! needle points has `n - 1` dashes between them, and the rest of the row, shorter than a stitch,
//! runs into the seam at its end.

use draft::PieceId;
use geometry::tolerance::{NO_DIRECTION, SAME_MM};
use geometry::{Affine, BezPath, Point, Rect, Vec2, left_of};
use sewing::{Face, StitchRow};
use style::SeamId;
use trade::stitch::FaceLook;
use trade::{Colour, Length};

use crate::dimension::unit;
use crate::sheet::{Layer, Stroke};

/// The stitches of one row as drawn on a plate.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnStitches {
    /// Place of the row in [`sewing::Garment::rows`].
    pub row: usize,
    /// Its seam.
    pub seam: SeamId,
    /// Its number within the seam.
    pub number: usize,
    /// The piece it runs on.
    pub piece: PieceId,
    /// The face drawn.
    pub face: Face,
    /// Needle points on the plate.
    pub drawn: usize,
    /// Whether the whole row is drawn; else part of it lies beyond the drawing.
    pub whole: bool,
}

/// No row has more stitches than this drawn; nothing sewn comes near it.
const MOST_STITCHES: usize = 6000;
/// Chords of a curve that stitches follow, on the cloth.
const STEP: Length = Length::mm(0.5);
/// Width of zigzag, of an overedge and of a coverstitch where the style does not say, on the cloth
/// (as the yarn page draws them).
const THROW_MM: f64 = 2.0;
const BITE_MM: f64 = 4.0;
/// From a row to the overedge beside it where the cut edge is not known.
const ASIDE_MM: f64 = 2.0;
/// Thinnest yarn and smallest needle point that still print.
const THIN_MM: f64 = 0.26;
const POINT_MM: f64 = 0.22;
/// The darker rim that sets a yarn off from its cloth.
const RIM_MM: f64 = 0.13;

/// A line one can go along.
struct Walk {
    points: Vec<Point>,
    /// Arc length at each point.
    at: Vec<f64>,
}

impl Walk {
    fn along(row: &StitchRow) -> Option<Walk> {
        let points = row.path.dense(STEP);
        let mut at = Vec::with_capacity(points.len());
        let mut sum = 0.0;
        let mut last = *points.first()?;
        for p in &points {
            sum += (*p - last).hypot();
            at.push(sum);
            last = *p;
        }
        sum.is_finite().then_some(Walk { points, at })
    }

    fn point(&self, s: f64) -> Point {
        let k = self.at.partition_point(|a| *a < s);
        match (k.checked_sub(1), self.points.get(k)) {
            (Some(before), Some(p)) => {
                let (a, b) = (self.at[before], self.at[k]);
                self.points[before].lerp(*p, (s - a) / (b - a).max(NO_DIRECTION))
            }
            (None, Some(p)) => *p,
            (_, None) => self.points.last().copied().unwrap_or(Point::ORIGIN),
        }
    }

    /// The unit vector to the left of the way at an arc length: into the cloth.
    fn left(&self, s: f64) -> Vec2 {
        let on = unit(self.point(s + STEP.to_mm()) - self.point(s - STEP.to_mm()));
        on.map_or(Vec2::ZERO, left_of)
    }

    fn between(&self, from: f64, to: f64) -> Vec<Point> {
        let first = self.at.partition_point(|a| *a <= from + SAME_MM);
        let end = self.at.partition_point(|a| *a < to - SAME_MM);
        let mut out = vec![self.point(from)];
        out.extend(self.points.get(first..end).into_iter().flatten());
        out.push(self.point(to));
        out
    }
}

/// Where a row is drawn.
pub(super) struct On {
    /// From the frame of its piece to paper.
    pub map: Affine,
    /// Millimetres on paper for one of cloth.
    pub times: f64,
    /// Only what lies inside is drawn.
    pub window: Option<Rect>,
    /// The face drawn.
    pub face: Face,
    /// From the row to the cut edge an overedge wraps, on the cloth, where that is known.
    pub edge: Option<f64>,
}

/// Draws a row; gives the number of needle points drawn and whether they are all there are.
pub(super) fn stitches(layer: &mut Layer, row: &StitchRow, on: &On) -> (usize, bool) {
    let Some(walk) = Walk::along(row) else {
        return (0, row.stitches() == 0);
    };
    let all = row.stitches();
    let pitch = row.density.pitch().to_mm();
    let (yarn, look) = match on.face {
        Face::Outside => (&row.needle, row.stitch.looks().needle_face),
        Face::Inside => (&row.under, row.stitch.looks().under_face),
    };
    let thick = yarn.diameter.to_mm().clamp(0.0, 3.0);
    let inside = |p: Point| {
        on.window.is_none_or(|w| {
            let p = on.map * p;
            w.inflate(SAME_MM, SAME_MM).contains(p)
        })
    };
    // The overedge beside a row ends at the cut edge.
    let aside = on.edge.map_or(ASIDE_MM, |e| (e - BITE_MM).clamp(0.0, 30.0));
    // One that is stated from the edge itself has its needle a bite inside: it lies on the cloth, not beside it.
    let inward = match look {
        FaceLook::Overedge | FaceLook::OveredgeTwoRows => {
            on.edge.map_or(0.0, |e| (BITE_MM - e).clamp(0.0, BITE_MM))
        }
        _ => 0.0,
    };
    let mut dashes = BezPath::new();
    let mut points = BezPath::new();
    let mut drawn = 0;
    for k in 0..all.min(MOST_STITCHES) {
        let from = pitch * k as f64;
        let here = walk.point(from);
        let next = k + 1 < all && inside(walk.point(from + pitch));
        let starts = inside(here);
        // A stitch that reaches beyond the window is cut off by it.
        if k + 1 < all && (starts || next) {
            dash(
                &mut dashes,
                &walk,
                look,
                (from, pitch),
                (thick, aside, inward),
                on.map,
                k,
            );
        }
        if starts {
            drawn += 1;
            let p = on.map * (here + walk.left(from) * inward);
            points.move_to((p.x - 0.01, p.y));
            points.line_to((p.x + 0.01, p.y));
        }
    }
    let part = format!("row:{}:{}", row.seam.code(), row.number);
    let fine = matches!(look, FaceLook::Dashes);
    let width = (thick * on.times * if fine { 1.0 } else { 0.8 }).max(THIN_MM);
    let round = |colour, width| Stroke {
        round: true,
        ..Stroke::plain(colour, Length::mm(width))
    };
    if !dashes.elements().is_empty() {
        let rim = yarn.colour.mixed(Colour::BLACK, 0.5);
        layer.line(None, dashes.clone(), round(rim, width + RIM_MM));
        layer.line(Some(&part), dashes, round(yarn.colour, width));
    }
    if !points.elements().is_empty() {
        let hole = yarn.colour.mixed(Colour::BLACK, 0.75);
        let size = (width * 0.62).max(POINT_MM);
        layer.line(
            Some(&format!("needle-points:{}:{}", row.seam.code(), row.number)),
            points,
            round(hole, size),
        );
    }
    (drawn, drawn == all)
}

/// One stitch, from the needle point at arc length `from` to the next a `pitch` on.
fn dash(
    path: &mut BezPath,
    walk: &Walk,
    look: FaceLook,
    (from, pitch): (f64, f64),
    (thick, aside, inward): (f64, f64, f64),
    map: Affine,
    k: usize,
) {
    let (a, b) = (walk.point(from), walk.point(from + pitch));
    let Some(along) = unit(b - a) else { return };
    // The needle runs anticlockwise along the edges of a piece: cloth to its left, edge to its right.
    let left = left_of(along);
    let long = (b - a).hypot();
    let end = (0.12 * pitch + thick / 2.0).min(0.4 * pitch);
    let mut run = |points: &[Point]| {
        for (n, p) in points.iter().enumerate() {
            let p = map * *p;
            if n == 0 {
                path.move_to(p);
            } else {
                path.line_to(p);
            }
        }
    };
    let straight = || walk.between(from + end, from + pitch - end);
    let side = if k.is_multiple_of(2) { 0.5 } else { -0.5 };
    match look {
        FaceLook::Dashes => run(&straight()),
        FaceLook::Zigzag | FaceLook::ZigzagChain => {
            run(&[a + left * (THROW_MM * side), b - left * (THROW_MM * side)])
        }
        FaceLook::CoverLoops => run(&[a + left * (BITE_MM * side), b - left * (BITE_MM * side)]),
        FaceLook::Overedge | FaceLook::OveredgeTwoRows => {
            run(&wrap(a + left * inward, along, long, -BITE_MM));
        }
        FaceLook::DashesAndOveredge => {
            run(&straight());
            run(&wrap(a - left * aside, along, long, -BITE_MM));
        }
        FaceLook::Chain | FaceLook::ChainAndOveredge => {
            // Two legs that open from the loop before and close in the next.
            let open_to = 1.3 * thick;
            for leg in [-1.0, 1.0] {
                let bend = left * (leg * open_to);
                path.move_to(map * a);
                path.curve_to(
                    map * (a + along * (0.25 * long) + bend),
                    map * (b - along * (0.1 * long) + bend),
                    map * (b + along * (0.06 * long)),
                );
            }
            if look == FaceLook::ChainAndOveredge {
                let points = wrap(a - left * aside, along, long, -BITE_MM);
                for (n, p) in points.iter().enumerate() {
                    if n == 0 {
                        path.move_to(map * *p);
                    } else {
                        path.line_to(map * *p);
                    }
                }
            }
        }
    }
}

/// One stitch of an overedge: along the needle line, slanting to the edge and along it.
fn wrap(from: Point, along: Vec2, long: f64, bite: f64) -> [Point; 4] {
    let across = left_of(along) * bite;
    let at = |share: f64, out: f64| from + along * (long * share) + across * out;
    [at(0.0, 0.0), at(0.7, 0.0), at(1.0, 1.0), at(0.35, 1.0)]
}
