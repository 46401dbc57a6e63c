//! The outseam cut along the cloth's own edge.

use draft::{EdgeId, Piece, PointId};
use geometry::Point;
use geometry::tolerance::{ROUNDING, SAME_MM};
use sewing::{Finish, Garment};
use trade::Length;

/// How far a grain line may lean and still count as upright.
const UPRIGHT: f64 = 1e-9;

/// An edge of a cut piece that is the cloth's own finished edge, straight along the warp.
#[derive(Clone, Debug, PartialEq)]
pub struct ClothEdge {
    /// The edge of the piece.
    pub edge: EdgeId,
    /// Lower end of the straight part of the cut line, in the frame of the piece, millimetres.
    pub from: Point,
    /// Upper end, above which the cut line leaves the cloth's edge.
    pub to: Point,
    /// The narrowest allowance between seam line and cloth's edge along it.
    pub narrowest: Length,
    /// The widest: more than the narrowest where the seam line is not straight.
    pub widest: Length,
    /// How far the seam line runs out above the hip, beyond its outermost place below; zero where it does not.
    pub runs_out: Length,
}

impl ClothEdge {
    /// The cut line of the edge: straight on the cloth's own edge up to the hip, and on above it as long
    /// as the allowance still reaches the cloth's edge.
    pub(crate) fn straightened(&self, moved: &[Point]) -> Vec<Point> {
        let x = self.from.x;
        let start = moved.first().map_or(self.from, |p| Point::new(x, p.y));
        let reaching = moved.iter().rposition(|p| p.x >= x - ROUNDING);
        let leaves = reaching
            .and_then(|k| moved.get(k))
            .map_or(self.to.y, |p| p.y.max(self.to.y));
        let mut out = vec![start, Point::new(x, leaves)];
        out.extend(moved.iter().filter(|p| p.y > leaves));
        self.within(&out)
    }

    /// The line with everything beyond the cloth's edge put back onto it: there is no cloth there.
    pub(crate) fn within(&self, line: &[Point]) -> Vec<Point> {
        line.iter()
            .map(|p| Point::new(p.x.min(self.from.x), p.y))
            .collect()
    }

    /// The cut line with every run along the cloth's edge as one straight, so that points put back onto it
    /// cannot double back.
    pub(crate) fn one_run(&self, cut: &[Point]) -> Vec<Point> {
        let on = |p: &Point| (p.x - self.from.x).abs() < ROUNDING;
        let mut out: Vec<Point> = Vec::with_capacity(cut.len());
        for p in cut {
            let n = out.len();
            if n >= 2 && on(p) && on(&out[n - 1]) && on(&out[n - 2]) {
                out.pop();
            }
            out.push(*p);
        }
        out
    }

    /// The same once the cut line is drawn: where it begins and ends, and how wide the allowance is
    /// between.
    pub(crate) fn settled(&self, cut: &[Point], sewn: &[Point]) -> ClothEdge {
        let x = self.from.x;
        let n = cut.len();
        let on_edge = |k: usize| cut.get(k % n.max(1)).filter(|p| (p.x - x).abs() < SAME_MM);
        let from_foot = |k: &usize| on_edge(*k).map(|p| (p.y - self.from.y).abs());
        let nearest = (0..n)
            .filter_map(|k| from_foot(&k).map(|off| (k, off)))
            .min_by(|a, b| a.1.total_cmp(&b.1));
        // A corner further up may touch the cloth's edge again: only the unbroken run counts.
        let run = nearest.into_iter().flat_map(|(k, _)| {
            let up = (k..k + n).map_while(on_edge);
            up.chain((0..n).map_while(move |back| on_edge(k + n - back)))
        });
        let ends = run.fold(None, |ends: Option<(f64, f64)>, p| {
            let (low, high) = ends.unwrap_or((p.y, p.y));
            Some((low.min(p.y), high.max(p.y)))
        });
        let (low, high) = ends.unwrap_or((self.from.y, self.to.y));
        let beside = sewn
            .iter()
            .filter(|p| p.y <= high + ROUNDING)
            .map(|p| x - p.x);
        let (least, most) = beside.fold((f64::INFINITY, 0.0_f64), |(l, m), w| (l.min(w), m.max(w)));
        ClothEdge {
            edge: self.edge,
            from: Point::new(x, low),
            to: Point::new(x, high),
            narrowest: Length::mm(least),
            widest: Length::mm(most),
            runs_out: self.runs_out,
        }
    }
}

/// Whether an edge runs along the cloth's own edge, as the sewn garment says.
pub(crate) fn runs_along(garment: &Garment, piece: &Piece, edge: EdgeId) -> bool {
    garment
        .laps
        .iter()
        .any(|l| l.piece == piece.id && l.edge == edge && l.finish == Finish::Selvedge)
}

/// The cloth's edge along the outseam of a panel: upright, beyond the outermost place of the seam line by
/// the allowance, so that the allowance is nowhere narrower. Where the seam line runs out above the hip the
/// allowance is wider below it.
pub(crate) fn cloth_edge(piece: &Piece, sewn: &[Point], allowance: Length) -> Option<ClothEdge> {
    let upright = (piece.grain.1.x - piece.grain.0.x).abs() < UPRIGHT;
    let hip = piece.point(PointId::Hip)?;
    let foot = *sewn.first()?;
    piece.edge(EdgeId::Side)?;
    if !upright || hip.y <= foot.y {
        return None;
    }
    let along = || sewn.iter().filter(|p| p.y <= hip.y + ROUNDING).map(|p| p.x);
    let (least, most) = along().fold((f64::INFINITY, f64::NEG_INFINITY), |(l, m), x| {
        (l.min(x), m.max(x))
    });
    if !(least.is_finite() && most.is_finite()) {
        return None;
    }
    // Straight up to the outermost place, where that lies above the hip.
    let (outermost, top) =
        sewn.iter().fold(
            (most, hip.y),
            |(x, y), p| {
                if p.x > x { (p.x, p.y) } else { (x, y) }
            },
        );
    let x = outermost + allowance.to_mm();
    Some(ClothEdge {
        edge: EdgeId::Side,
        from: Point::new(x, foot.y),
        to: Point::new(x, top),
        narrowest: allowance,
        widest: allowance + Length::mm(outermost - least),
        runs_out: Length::mm(outermost - most),
    })
}
