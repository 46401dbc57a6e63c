//! Lines that run inside a piece at a distance from its edge: the way a sewer guides a row along a
//! seam, an edge or round a pocket.

use draft::{Edge, EdgeId, Piece};
use geometry::tolerance::{BEYOND_END, PARALLEL, ROUNDING, SAME_POINT};
use geometry::{
    Meeting, Path, Point, Straight, clip_to_polygon, moved_left, polyline_length, unit,
    without_repeats,
};
use trade::Length;

/// Long curves are followed to this share of their length.
const FOLLOW_SHARE: f64 = 1e-5;

/// How closely curves are followed, for pieces of usual size.
const FOLLOW_MM: f64 = 0.01;

/// Two edges that meet at less than this turn count as one smooth line: a row ends square to it
/// instead of running on to the next edge.
const SMOOTH_TURN_RAD: f64 = 0.5;

/// The longest row or outline that is still followed; nothing sewn comes near it.
const LONGEST_MM: f64 = 1.0e6;

/// A piece as a polygon, for laying lines inside it.
pub(crate) struct Ground<'a> {
    piece: &'a Piece,
    polygon: Vec<Point>,
}

impl<'a> Ground<'a> {
    /// `None` where the piece has no shape that lines could lie in: it is not finite, or of no or
    /// absurd size.
    pub fn of(piece: &'a Piece) -> Option<Ground<'a>> {
        let mut polygon: Vec<Point> = Vec::new();
        for edge in &piece.edges {
            polygon.extend(points_along(&edge.path)?);
        }
        let polygon = without_repeats(&polygon, SAME_POINT);
        (polygon.len() >= 3).then_some(Ground { piece, polygon })
    }

    /// The outline, first point not repeated.
    pub fn polygon(&self) -> &[Point] {
        &self.polygon
    }

    /// The line at `offset` inside the named edges, which follow one another anticlockwise. It ends
    /// where it meets the outline, so a row runs into the seams at both its ends.
    pub fn inset(&self, edges: &[EdgeId], offset: Length) -> Option<Path> {
        let offset = offset.to_mm();
        let run = self.run(edges)?;
        if !offset.is_finite() {
            return None;
        }
        if offset.abs() < ROUNDING {
            return Some(Path::polyline(&run));
        }
        let line = without_loops(&moved_left(&run, Length::mm(offset)));
        let (before, after) = self.corners(edges);
        let reach = 2.0 * offset.abs() + 1.0;
        let line = extended(
            line,
            if before { reach } else { 0.0 },
            if after { reach } else { 0.0 },
        );
        self.clip(&line)
    }

    /// The longest part of a line that lies on the piece.
    pub fn clip(&self, line: &[Point]) -> Option<Path> {
        let parts = clip_to_polygon(line, &self.polygon);
        let longest = parts
            .into_iter()
            .max_by(|a, b| polyline_length(a).total_cmp(&polyline_length(b)))?;
        (longest.len() >= 2).then(|| Path::polyline(&longest))
    }

    fn run(&self, edges: &[EdgeId]) -> Option<Vec<Point>> {
        let mut run = Vec::new();
        for edge in edges {
            run.extend(points_along(self.piece.edge(*edge)?)?);
        }
        let run = without_repeats(&run, SAME_POINT);
        (run.len() >= 2).then_some(run)
    }

    /// Whether the run begins and ends at an outward corner of the piece.
    fn corners(&self, edges: &[EdgeId]) -> (bool, bool) {
        let all = &self.piece.edges;
        let n = all.len();
        let place = |id: Option<&EdgeId>| {
            let id = id?;
            all.iter().position(|e: &Edge| e.id == *id)
        };
        let corner = |first: usize, second: usize| {
            let (a, b) = (
                all[first].path.end_direction(),
                all[second].path.start_direction(),
            );
            a.cross(b).atan2(a.dot(b)) > SMOOTH_TURN_RAD
        };
        let before = place(edges.first()).is_some_and(|i| corner((i + n - 1) % n, i));
        let after = place(edges.last()).is_some_and(|i| corner(i, (i + 1) % n));
        (before, after)
    }
}

/// Points that follow a path closely; `None` where it is not finite or absurdly long.
pub(crate) fn points_along(path: &Path) -> Option<Vec<Point>> {
    let length = path.length().to_mm();
    if !length.is_finite() || length > LONGEST_MM {
        return None;
    }
    // Long curves are followed in proportion, so that the number of points stays small.
    let points = path.flattened(Length::mm(FOLLOW_MM.max(length * FOLLOW_SHARE)));
    points.iter().all(|p| p.is_finite()).then_some(points)
}

/// The line with every loop cut out at the point where it crosses itself, as an offset line does
/// at a corner tighter than the offset.
fn without_loops(points: &[Point]) -> Vec<Point> {
    let n = points.len();
    let mut out = Vec::with_capacity(n);
    let Some(&first) = points.first() else {
        return out;
    };
    out.push(first);
    let mut k = 0;
    let mut from = first;
    while k + 1 < n {
        let crossing = (k + 2..n.saturating_sub(1)).rev().find_map(|m| {
            let next = Straight::between(from, points[k + 1]);
            crossing(next, Straight::between(points[m], points[m + 1])).map(|x| (m, x))
        });
        match crossing {
            Some((m, x)) => {
                out.push(x);
                from = x;
                k = m;
            }
            None => {
                out.push(points[k + 1]);
                from = points[k + 1];
                k += 1;
            }
        }
    }
    out
}

/// Where two stretches cross between their ends; not at the very beginning of the first, where a loop was just cut out.
fn crossing(first: Straight, second: Straight) -> Option<Point> {
    let Meeting {
        first: t,
        second: u,
    } = first.meeting(second, PARALLEL)?;
    (t > BEYOND_END && t < 1.0 && u > 0.0 && u < 1.0).then(|| first.at(t))
}

/// The line run on straight at both ends.
pub(crate) fn extended(mut line: Vec<Point>, before: f64, after: f64) -> Vec<Point> {
    let n = line.len();
    if n < 2 {
        return line;
    }
    let (start, end) = (unit(line[0] - line[1]), unit(line[n - 1] - line[n - 2]));
    line[0] += start * before;
    line[n - 1] += end * after;
    line
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use draft::{ClothUse, Cut, PieceId};

    fn square(side: f64) -> Piece {
        let corners = [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)].map(Point::from);
        let names = [EdgeId::Foot, EdgeId::Right, EdgeId::Top, EdgeId::Left];
        Piece {
            id: PieceId::CoinPocket,
            cloth: ClothUse::Shell,
            cut: Cut::ONE,
            edges: (0..4)
                .map(|k| Edge {
                    id: names[k],
                    path: Path::line(corners[k], corners[(k + 1) % 4]),
                })
                .collect(),
            points: Vec::new(),
            lines: Vec::new(),
            notches: Vec::new(),
            grain: (Point::ORIGIN, Point::new(0.0, 1.0)),
        }
    }

    #[test]
    fn a_row_along_one_edge_runs_from_side_to_side() {
        let piece = square(100.0);
        let row = Ground::of(&piece)
            .unwrap()
            .inset(&[EdgeId::Foot], Length::mm(8.0))
            .unwrap();
        assert_eq!(row.start(), Point::new(0.0, 8.0));
        assert_eq!(row.end(), Point::new(100.0, 8.0));
    }

    #[test]
    fn a_row_round_corners_follows_them() {
        let piece = square(100.0);
        let row = Ground::of(&piece).unwrap().inset(
            &[EdgeId::Left, EdgeId::Foot, EdgeId::Right],
            Length::mm(10.0),
        );
        // Three sides of the inner square: 90 down, 80 across, 90 up.
        assert!((row.unwrap().length().to_mm() - 260.0).abs() < 1e-9);
    }

    #[test]
    fn a_row_wider_than_the_piece_has_no_place() {
        let piece = square(100.0);
        let ground = Ground::of(&piece).unwrap();
        assert_eq!(ground.inset(&[EdgeId::Foot], Length::mm(120.0)), None);
        assert_eq!(ground.inset(&[EdgeId::Foot], Length::mm(f64::NAN)), None);
        assert_eq!(ground.inset(&[EdgeId::Fly], Length::mm(1.0)), None);
    }

    #[test]
    fn a_loop_at_a_tight_corner_is_cut_out() {
        // A notch 4 wide: at an offset of 5 the line inside it would cross itself.
        let line: Vec<Point> = [
            (0.0, 0.0),
            (48.0, 0.0),
            (48.0, -3.0),
            (52.0, -3.0),
            (52.0, 0.0),
        ]
        .into_iter()
        .chain([(100.0, 0.0)])
        .map(Point::from)
        .collect();
        let moved = without_loops(&moved_left(&line, Length::mm(5.0)));
        for (k, a) in moved.windows(2).enumerate() {
            for b in moved[k..].windows(2).skip(2) {
                let [a, b] = [a, b].map(|w| Straight::between(w[0], w[1]));
                assert_eq!(crossing(a, b), None);
            }
        }
        assert_eq!(moved[0], Point::new(0.0, 5.0));
        assert_eq!(moved[moved.len() - 1], Point::new(100.0, 5.0));
    }

    #[test]
    fn what_is_not_finite_has_no_ground() {
        assert!(Ground::of(&square(f64::INFINITY)).is_none());
        assert!(Ground::of(&square(f64::NAN)).is_none());
        assert!(Ground::of(&square(0.0)).is_none());
        assert!(Ground::of(&square(1.0e9)).is_none());
    }
}
