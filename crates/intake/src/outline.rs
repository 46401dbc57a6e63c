//! One piece of a pattern file as one closed outline with named corners.

use geometry::{Path, Point, corners_of};
use indexmap::IndexMap;
use patterns::{Piece, SewLine};
use style::{PieceBlock, Place};
use trade::Length;

/// Ends of lines nearer than this are the same place: files from elsewhere round.
const SAME_MM: f64 = 0.1;

/// A named point further from the outline than this lies inside the piece.
const ON_LINE_MM: f64 = 0.05;

/// Corners are felt over this distance to either side, so that a slip of the pen is none.
const FEEL: Length = Length::mm(3.0);

/// An edge that the file names, between two places of an outline.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct NamedEdge {
    pub name: String,
    pub from: usize,
    pub to: usize,
}

/// An edge that the file names, by the places of its ends.
struct Between {
    name: String,
    from: Point,
    to: Point,
}

/// A closed line with the edges the file names on it.
type Ring = (Vec<Point>, Vec<Between>);

/// A piece as one outline.
#[derive(Clone, Debug)]
pub(crate) struct Outline {
    /// The line, closed, its first point not repeated, anticlockwise.
    pub line: Vec<Point>,
    /// Whether it is sewn along it; else it is cut.
    pub sewn: bool,
    /// The corners by name, in the order of the line.
    pub corners: IndexMap<String, usize>,
    /// Edges the file itself names, with the places of the line they run between.
    pub named: Vec<NamedEdge>,
    pub grain: Option<(Point, Point)>,
    pub notches: Vec<Point>,
    /// Whether what the wash takes was taken off, as the file says it.
    pub freed: bool,
}

/// A line along which the piece is sewn, made of all its sewn lines, or the line it is cut along.
pub(crate) fn outline(piece: &Piece) -> Outline {
    let whole = piece.sewn.iter().find(|s| s.closed && s.line.len() > 2);
    let (mut line, sewn, mut between) = match (whole, ring(&piece.sewn)) {
        (Some(closed), _) => (closed.line.clone(), true, Vec::new()),
        (None, Some((line, between))) => (line, true, between),
        (None, None) => (piece.cut.clone(), false, Vec::new()),
    };
    if geometry::area(&line).to_mm2() < 0.0 {
        line.reverse();
        for edge in &mut between {
            std::mem::swap(&mut edge.from, &mut edge.to);
        }
    }
    let points = || {
        piece
            .points
            .iter()
            .filter(|p| !p.name.is_empty() || p.corner)
    };
    for at in piece
        .edge_starts
        .iter()
        .map(|s| s.at)
        .chain(points().map(|p| p.at))
    {
        take_in(&mut line, at);
    }
    let mut starts: Vec<(&str, usize)> = piece
        .edge_starts
        .iter()
        .filter_map(|s| Some((s.name.as_str(), index_of(&line, s.at)?)))
        .collect();
    starts.sort_by_key(|s| s.1);
    let next = starts.iter().cycle().skip(1);
    let mut named: Vec<NamedEdge> = between
        .iter()
        .filter_map(|edge| {
            Some(NamedEdge {
                name: edge.name.clone(),
                from: index_of(&line, edge.from)?,
                to: index_of(&line, edge.to)?,
            })
        })
        .collect();
    named.extend(starts.iter().zip(next).map(|(start, next)| NamedEdge {
        name: start.0.to_owned(),
        from: start.1,
        to: next.1,
    }));
    let points: Vec<(&str, usize)> = points()
        .filter_map(|p| Some((p.name.as_str(), index_of(&line, p.at)?)))
        .collect();
    let corners = name_corners(&line, &points, &named);
    Outline {
        line,
        sewn,
        corners,
        named,
        grain: piece.grain,
        notches: piece.notches.iter().map(|n| n.at).collect(),
        freed: false,
    }
}

/// The vertex of a line at a place.
fn index_of(line: &[Point], at: Point) -> Option<usize> {
    let near = |k: &usize| (line[*k] - at).hypot();
    let best = (0..line.len()).min_by(|a, b| near(a).total_cmp(&near(b)))?;
    (near(&best) <= ON_LINE_MM).then_some(best)
}

/// Makes a place of a closed line one of its points, if it lies on it.
fn take_in(line: &mut Vec<Point>, at: Point) {
    let n = line.len();
    if n < 2 || index_of(line, at).is_some() {
        return;
    }
    let away = |k: usize| Path::line(line[k], line[(k + 1) % n]).nearest(at).1.to_mm();
    let best = (0..n).min_by(|a, b| away(*a).total_cmp(&away(*b)));
    if let Some(best) = best.filter(|k| away(*k) <= ON_LINE_MM) {
        line.insert(best + 1, at);
    }
}

/// Open sewn lines put together into one closed line, with the places between which each runs that has a
/// name; `None` where they do not make one.
fn ring(lines: &[SewLine]) -> Option<Ring> {
    let mut left: Vec<&SewLine> = lines
        .iter()
        .filter(|s| !s.closed && s.line.len() > 1)
        .collect();
    if left.is_empty() {
        return None;
    }
    let first = left.remove(0);
    let mut out: Vec<Point> = first.line.clone();
    let mut starts = vec![(first.name.clone(), *out.first()?)];
    while !left.is_empty() {
        let end = *out.last()?;
        let gap = |p: Option<&Point>| p.map_or(f64::INFINITY, |p| (*p - end).hypot());
        let nearest = |s: &SewLine| gap(s.line.first()).min(gap(s.line.last()));
        let (k, next) = left
            .iter()
            .enumerate()
            .min_by(|a, b| nearest(a.1).total_cmp(&nearest(b.1)))?;
        if nearest(next) > SAME_MM {
            return None;
        }
        starts.push((next.name.clone(), end));
        let forward = gap(next.line.first()) <= gap(next.line.last());
        if forward {
            out.extend(next.line.iter().skip(1));
        } else {
            out.extend(next.line.iter().rev().skip(1));
        }
        left.remove(k);
    }
    let (first, last) = (*out.first()?, out.pop()?);
    if (first - last).hypot() > SAME_MM || out.len() < 3 {
        return None;
    }
    let next = starts.iter().cycle().skip(1);
    let named = starts
        .iter()
        .zip(next)
        .filter(|(start, _)| !start.0.is_empty())
        .map(|(start, next)| Between {
            name: start.0.clone(),
            from: start.1,
            to: next.1,
        })
        .collect();
    Some((out, named))
}

/// Names for the corners: the file's own, else numbers in the order of the line.
fn name_corners(
    line: &[Point],
    points: &[(&str, usize)],
    named: &[NamedEdge],
) -> IndexMap<String, usize> {
    let mut at: Vec<usize> = corners_of(line, FEEL);
    at.extend(points.iter().map(|p| p.1));
    at.extend(named.iter().flat_map(|n| [n.from, n.to]));
    at.sort_unstable();
    at.dedup();
    let mut out: IndexMap<String, usize> = IndexMap::new();
    let taken: Vec<&str> = points.iter().map(|p| p.0).collect();
    let mut numbers = (1..)
        .map(|n: u32| n.to_string())
        .filter(|n| !taken.contains(&n.as_str()));
    for k in at {
        let own = points
            .iter()
            .find(|(name, at)| *at == k && !name.is_empty() && !out.contains_key(*name))
            .map(|(name, _)| (*name).to_owned());
        if let Some(name) = own.or_else(|| numbers.next()) {
            out.insert(name, k);
        }
    }
    out
}

impl Outline {
    /// Gives a piece without grain line one that runs up through its middle.
    pub fn grain_up(&mut self) {
        let Some(&first) = self.line.first() else {
            return;
        };
        let (low, high) = self.line.iter().fold((first, first), |(low, high), p| {
            (
                Point::new(low.x.min(p.x), low.y.min(p.y)),
                Point::new(high.x.max(p.x), high.y.max(p.y)),
            )
        });
        let middle = (low.x + high.x) / 2.0;
        let at = |share: f64| Point::new(middle, low.y + (high.y - low.y) * share);
        self.grain = self.grain.or(Some((at(0.25), at(0.75))));
    }

    /// Whether it is sewn along the same line as another, with the same edges. The points of the two lines need not be
    /// the same: each copy of a piece may be drawn with as few as its own shape needs.
    pub fn is_same(&self, other: &Outline) -> bool {
        self.sewn
            && other.sewn
            && self.lies_on(other)
            && other.lies_on(self)
            && self.named.iter().all(|edge| {
                let twin = other.named.iter().find(|twin| twin.name == edge.name);
                twin.is_some_and(|twin| {
                    let near =
                        |a: usize, b: usize| (self.line[a] - other.line[b]).hypot() <= ON_LINE_MM;
                    near(edge.from, twin.from) && near(edge.to, twin.to)
                })
            })
    }

    fn lies_on(&self, other: &Outline) -> bool {
        let mut ring = other.line.clone();
        ring.extend(other.line.first());
        let ring = Path::polyline(&ring);
        let near = |p: &Point| ring.nearest(*p).1.to_mm() <= ON_LINE_MM;
        self.line.iter().all(near)
    }

    /// As `style` keeps it.
    pub fn block(&self) -> PieceBlock {
        let place = |p: &Point| -> Place { [Length::mm(p.x), Length::mm(p.y)] };
        PieceBlock {
            sewn: self.sewn,
            outline: self.line.iter().map(place).collect(),
            corners: self.corners.clone(),
            grain: self.grain.map(|(a, b)| [place(&a), place(&b)]),
            notches: self.notches.iter().map(place).collect(),
        }
    }

    /// The name of the corner at a place of the line.
    pub fn corner_at(&self, at: usize) -> Option<&str> {
        let found = self.corners.iter().find(|(_, k)| **k == at);
        found.map(|(name, _)| name.as_str())
    }

    /// The part of the line from one place on to another, ends included.
    pub fn stretch(&self, from: usize, to: usize) -> Vec<Point> {
        let n = self.line.len();
        let steps = (to + n - from) % n;
        let steps = if steps == 0 { n } else { steps };
        (0..=steps).map(|k| self.line[(from + k) % n]).collect()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use patterns::TurnPoint;

    fn sewn(name: &str, points: &[(f64, f64)]) -> SewLine {
        SewLine {
            name: name.to_owned(),
            closed: false,
            line: points.iter().map(|p| Point::new(p.0, p.1)).collect(),
        }
    }

    #[test]
    fn open_lines_are_put_together_however_they_run() {
        let piece = Piece {
            sewn: vec![
                sewn("hem", &[(0.0, 0.0), (100.0, 0.0)]),
                sewn("side", &[(100.0, 80.0), (100.0, 0.0)]),
                sewn("", &[(0.0, 80.0), (100.0, 80.0)]),
                sewn("fly", &[(0.0, 80.0), (0.0, 0.0)]),
            ],
            points: vec![TurnPoint {
                name: "crotch".to_owned(),
                at: Point::new(0.0, 30.0),
                corner: false,
            }],
            ..Piece::default()
        };
        let found = outline(&piece);
        assert!(found.sewn);
        assert_eq!(found.line.len(), 5);
        let names: Vec<&str> = found.corners.keys().map(String::as_str).collect();
        assert_eq!(names, ["1", "2", "3", "4", "crotch"]);
        let hem = found.named.iter().find(|n| n.name == "hem").unwrap();
        assert_eq!((found.line[hem.from].x, found.line[hem.to].x), (0.0, 100.0));
        assert_eq!(found.named.len(), 3);
    }

    #[test]
    fn lines_that_make_no_ring_leave_the_cut_line() {
        let piece = Piece {
            sewn: vec![sewn("hem", &[(10.0, 10.0), (90.0, 10.0)])],
            cut: [(0.0, 0.0), (100.0, 0.0), (100.0, 80.0), (0.0, 80.0)]
                .map(|p| Point::new(p.0, p.1))
                .to_vec(),
            ..Piece::default()
        };
        let found = outline(&piece);
        assert!(!found.sewn);
        assert_eq!(found.corners.len(), 4);
    }
}
