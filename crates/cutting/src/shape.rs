//! The shape of one corner of a cut line, in the frame of the edge whose allowance is shaped there.

use draft::EdgeId;
use geometry::{Point, Straight, Vec2};
use sewing::On;
use trade::Length;

use crate::allowance_lie::{EdgeLie, Lie, beside, side_of};
use crate::corner::{
    ACROSS, ACROSS_MIRROR, BARE, CHANGES, CornerRule, FELLED, HEM, HEM_ON_EDGE, INWARD, Meeting,
    OPENED, RUNS_ON, SHARP, TOGETHER, decide,
};
use crate::outline::{Ground, moved_lines, sewn_lines};
use crate::polyline::{
    Crossing, between, crossings, ends, long, outward, reversed, starts, to_depth, without_repeats,
};

/// A corner whose cut lines meet further away than this many allowances is cut off square (common
/// practice: 2.5 to 3).
const MITRE_LIMIT: f64 = 3.0;

/// How far lines are run on to find where they meet.
const REACH_MM: f64 = 400.0;

/// One corner: where the cut lines of its two edges stop and begin, and the line between.
pub(crate) struct Made {
    pub rule: &'static CornerRule,
    pub shaped: Option<EdgeId>,
    pub stops: f64,
    pub begins: f64,
    pub line: Vec<Point>,
}

/// The frame of the corner for the edge that is shaped: along its seam line and on beyond the corner,
/// and outward from it.
#[derive(Clone, Copy)]
struct Frame {
    origin: Point,
    along: Vec2,
    out: Vec2,
}

impl Frame {
    fn of(&self, p: Point) -> Point {
        let v = p - self.origin;
        Point::new(v.dot(self.along), v.dot(self.out))
    }

    fn place(&self, local: Point) -> Point {
        self.origin + self.along * local.x + self.out * local.y
    }
}

/// The two edges of a corner, turned so that one runs to the corner and the other away from it.
struct Pair {
    frame: Frame,
    /// Cut line of the edge that is shaped, towards the corner.
    to: Vec<Point>,
    /// Cut line of the other, away from the corner.
    away: Vec<Point>,
}

impl Pair {
    fn of(
        sewn: &[Vec<Point>],
        moved: &[Vec<Point>],
        (i, j): (usize, usize),
        first_is_before: bool,
    ) -> Pair {
        let origin = sewn[j][0];
        if first_is_before {
            let along = ends(&sewn[i]);
            Pair {
                frame: Frame {
                    origin,
                    along,
                    out: outward(along),
                },
                to: moved[i].clone(),
                away: moved[j].clone(),
            }
        } else {
            let along = -starts(&sewn[j]);
            Pair {
                frame: Frame {
                    origin,
                    along,
                    out: -outward(along),
                },
                to: reversed(&moved[j]),
                away: reversed(&moved[i]),
            }
        }
    }

    /// The other edge's cut line in the frame of the corner, run on beyond its start.
    fn crossing_line(&self) -> Vec<Point> {
        between(&self.away, -REACH_MM, long(&self.away))
            .iter()
            .map(|p| self.frame.of(*p))
            .collect()
    }

    /// Where the seam line, run on beyond the corner, meets the other edge's cut line: in the frame of
    /// the corner, and as a distance along that cut line.
    fn meets(&self) -> Option<(Point, f64)> {
        let line = self.crossing_line();
        let seam = [Point::new(-0.01, 0.0), Point::new(REACH_MM, 0.0)];
        let found = crossings(&seam, &line);
        let first = found.first()?;
        Some((Point::new(first.at.x, 0.0), first.along_second - REACH_MM))
    }
}

/// Shapes the corner between two edges, given by their places.
pub(crate) fn corner(
    ground: &Ground<'_>,
    sewn: &[Vec<Point>],
    moved: &[Vec<Point>],
    (i, j): (usize, usize),
) -> Made {
    let (a, b) = (ends(&sewn[i]), starts(&sewn[j]));
    let edges = (ground.piece.edges[i].id, ground.piece.edges[j].id);
    let on_cloth = |edge| ground.cloth_edge.is_some_and(|c| c.edge == edge);
    let meeting = Meeting {
        lies: (&ground.lies[i], &ground.lies[j]),
        turn: a.cross(b).atan2(a.dot(b)),
        on_cloth_edge: (on_cloth(edges.0), on_cloth(edges.1)),
    };
    let next_to = |before: bool| {
        let (edge, at_end) = if before {
            (edges.0, true)
        } else {
            (edges.1, false)
        };
        let found = beside(ground.piece.id, edge, at_end)?;
        Some(found.other_side)
    };
    let decision = decide(&meeting, next_to);
    let rule = decision.rule;
    let whole = |made: (f64, f64, Vec<Point>)| Made {
        rule,
        shaped: None,
        stops: made.0,
        begins: made.1,
        line: made.2,
    };
    if rule == &CHANGES {
        return whole((long(&moved[i]), 0.0, Vec::new()));
    }
    if rule == &RUNS_ON || rule == &INWARD {
        return whole(crossed(&moved[i], &moved[j], meeting.turn));
    }
    if rule == &TOGETHER {
        let widest = ground.lies[i].allowance.max(ground.lies[j].allowance);
        return mitred(rule, &moved[i], &moved[j], sewn[j][0], widest.to_mm());
    }
    let first_is_before = decision.first_is_before;
    let (edge, at_end, lie) = if first_is_before {
        (edges.0, true, &ground.lies[i])
    } else {
        (edges.1, false, &ground.lies[j])
    };
    let pair = Pair::of(sewn, moved, (i, j), first_is_before);
    let shaped = shaped_end(ground, rule, &pair, edge, at_end, lie).and_then(|(end, begins)| {
        let (stops, line) = closed(&pair, &end)?;
        Some((stops, begins, line))
    });
    let Some((stops, begins, line)) = shaped else {
        let widest = ground.lies[i].allowance.max(ground.lies[j].allowance);
        return mitred(&TOGETHER, &moved[i], &moved[j], sewn[j][0], widest.to_mm());
    };
    let (stops, begins, line) = if first_is_before {
        (stops, begins, line)
    } else {
        let (i_long, j_long) = (long(&moved[i]), long(&moved[j]));
        (i_long - begins, j_long - stops, reversed(&line))
    };
    Made {
        rule,
        shaped: Some(edge),
        stops,
        begins,
        line,
    }
}

/// The end of the shaped allowance in the frame of the corner, from the seam line outward and a little
/// beyond the allowance; and where the other edge's cut line begins.
fn shaped_end(
    ground: &Ground<'_>,
    rule: &'static CornerRule,
    pair: &Pair,
    edge: EdgeId,
    at_end: bool,
    lie: &EdgeLie,
) -> Option<(Vec<Point>, f64)> {
    let (meets, begins) = pair.meets()?;
    let depth = lie.allowance.to_mm() + 1.0;
    let own = pair.crossing_line();
    let place = on_level(&own, meets)?;
    let natural = || reversed(&between(&own, 0.0, place));
    let folded = || {
        let inside = between(&own, place, long(&own) + REACH_MM);
        inside
            .iter()
            .map(|p| Point::new(p.x, -p.y))
            .collect::<Vec<_>>()
    };
    let other = || lies_beside(ground, edge, at_end);
    let layered = |end: Vec<Point>, fold: Length| turned_at(&end, fold.to_mm());
    let end = if rule == &BARE || rule == &HEM_ON_EDGE {
        natural()
    } else if rule == &OPENED {
        vec![meets, Point::new(meets.x, depth)]
    } else if rule == &ACROSS || rule == &ACROSS_MIRROR {
        other().unwrap_or_else(natural)
    } else if rule == &FELLED {
        match lie.lie {
            Lie::Felled { lap } => layered(other().unwrap_or_else(natural), lap)?,
            _ => natural(),
        }
    } else if rule == &HEM {
        match lie.lie {
            Lie::Hemmed { first } => layered(folded(), first)?,
            _ => folded(),
        }
    } else {
        folded()
    };
    // The piece beside may end a little higher or lower; the seam line bridges that.
    let end = std::iter::once(meets).chain(end).collect::<Vec<_>>();
    let end = without_repeats(&end);
    if lie.allowance <= Length::ZERO {
        return Some((vec![meets], begins));
    }
    Some((to_depth(&end, depth, |p| p.y)?, begins))
}

/// The end up to `fold`, then its mirror image over the line at that depth.
fn turned_at(end: &[Point], fold: f64) -> Option<Vec<Point>> {
    let near = to_depth(end, fold, |p| p.y)?;
    let back = near.iter().rev().map(|p| Point::new(p.x, 2.0 * fold - p.y));
    let mut out: Vec<Point> = near.iter().copied().chain(back).collect();
    // Run on a little, so that the cut line of the allowance surely crosses it.
    out = between(&without_repeats(&out), 0.0, long(&out) + 5.0);
    Some(out)
}

/// The cut line of the piece an allowance comes to lie on, in the frame of the corner.
fn lies_beside(ground: &Ground<'_>, edge: EdgeId, at_end: bool) -> Option<Vec<Point>> {
    let next = beside(ground.piece.id, edge, at_end)?;
    let pattern = if next.other_side {
        ground.legs.1
    } else {
        ground.legs.0
    };
    let piece = pattern.piece(next.piece)?;
    let side = side_of(ground.piece.id, ground.on == On::Mirrored);
    let same = side_of(next.piece, false) == side;
    let on = if same != next.other_side {
        On::AsDrawn
    } else {
        On::Mirrored
    };
    let lies = (ground.lies_of)(next.piece, on)?;
    let sewn = sewn_lines(piece).filter(|lines| lines.len() == lies.len())?;
    let other = Ground {
        piece,
        on,
        lies: &lies,
        cloth_edge: None,
        ..*ground
    };
    let moved = moved_lines(&other, &sewn);
    let n = sewn.len();
    let k = piece.edges.iter().position(|e| e.id == next.edge)?;
    let ends = if next.at_end {
        (k, (k + 1) % n)
    } else {
        ((k + n - 1) % n, k)
    };
    let pair = Pair::of(&sewn, &moved, ends, next.at_end);
    let line = pair.crossing_line();
    let (meets, _) = pair.meets()?;
    let place = on_level(&line, meets)?;
    let inside = between(&line, place, long(&line) + REACH_MM);
    Some(inside.iter().map(|p| Point::new(p.x, -p.y)).collect())
}

/// Closes a shaped corner: where the cut line of the shaped allowance stops, and the line from there
/// along its end to the other edge's cut line.
fn closed(pair: &Pair, end: &[Point]) -> Option<(f64, Vec<Point>)> {
    let end: Vec<Point> = end.iter().map(|p| pair.frame.place(*p)).collect();
    let along = long(&pair.to);
    if end.len() < 2 {
        // No allowance: the cut line is the seam line, run on to where the end lies.
        let at = *end.first()?;
        let on = along + (at - pair.frame.origin).dot(pair.frame.along);
        return Some((on, vec![at]));
    }
    let to = between(&pair.to, 0.0, along + REACH_MM);
    let found = crossings(&end, &to).into_iter().next()?;
    let line = reversed(&between(&end, 0.0, found.along_first));
    Some((found.along_second, line))
}

/// Two cut lines cut back, or run on, to where they cross.
fn crossed(one: &[Point], other: &[Point], turn: f64) -> (f64, f64, Vec<Point>) {
    let a = long(one);
    if turn.abs() < SIDE_BY_SIDE {
        return (a, 0.0, Vec::new());
    }
    if turn < 0.0 {
        let found = crossings(one, other);
        let last = found
            .iter()
            .max_by(|p, q| p.along_first.total_cmp(&q.along_first));
        if let Some(last) = last {
            return (last.along_first, last.along_second, vec![last.at]);
        }
    }
    met(one, other).unwrap_or((a, 0.0, Vec::new()))
}

/// Two directions with a smaller cross product run on side by side, in radians.
const SIDE_BY_SIDE: f64 = 1e-9;

/// Where two cut lines, run on straight, meet.
fn met(one: &[Point], other: &[Point]) -> Option<(f64, f64, Vec<Point>)> {
    let (d, e) = (ends(one), starts(other));
    let (&p, &q) = (one.last()?, other.first()?);
    let (first, second) = (Straight { from: p, way: d }, Straight { from: q, way: e });
    let meeting = first.meeting(second, SIDE_BY_SIDE)?;
    let at = first.at(meeting.first);
    Some((long(one) + meeting.first, meeting.second, vec![at]))
}

/// The corner where both cut lines run on until they meet, or are cut off square where that is far.
fn mitred(
    rule: &'static CornerRule,
    one: &[Point],
    other: &[Point],
    corner: Point,
    widest: f64,
) -> Made {
    let whole = |rule, (stops, begins, line)| Made {
        rule,
        shaped: None,
        stops,
        begins,
        line,
    };
    let near = met(one, other).filter(|(_, _, line)| {
        line.iter()
            .all(|m| (*m - corner).hypot() <= MITRE_LIMIT * widest)
    });
    match near {
        Some(made) => whole(rule, made),
        None if widest <= 0.0 => whole(rule, (long(one), 0.0, Vec::new())),
        None => whole(&SHARP, (long(one) + widest, -widest, Vec::new())),
    }
}

/// How far along a line it crosses the level of the edge, at the crossing nearest to where the pair meets.
fn on_level(line: &[Point], meets: Point) -> Option<f64> {
    let level = [Point::new(-REACH_MM, 0.0), Point::new(REACH_MM, 0.0)];
    let off = |crossing: &Crossing| (crossing.at.x - meets.x).abs();
    crossings(line, &level)
        .iter()
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .map(|crossing| crossing.along_first)
}
