//! The cut line round a piece: every edge moved out by its own allowance, every corner shaped by its
//! rule.

use draft::{Pattern, Piece, PieceId};
use geometry::{Point, Vec2, is_simple, offset_outline};
use sewing::On;
use trade::Length;

use crate::corner::{
    ACROSS, ACROSS_MIRROR, BARE, CHANGES, Corner, CornerRule, FELLED, HEM, HEM_ON_EDGE, INWARD,
    Meeting, OPENED, RUNS_ON, SHARP, TOGETHER, decide,
};
use crate::lie::{EdgeLie, Lie, beside, side_of};
use crate::line::{
    between, crossings, ends, long, outward, parallel, reversed, starts, to_depth, without_repeats,
};
use crate::selvedge::ClothEdge;

/// Distance of the points along a curve.
const STEP_MM: f64 = 1.0;

/// An outline has about this many points at most, however large the piece.
const MOST_POINTS: f64 = 4000.0;

/// A corner whose cut lines meet further away than this many allowances is cut off square (common
/// practice: 2.5 to 3).
const MITRE_LIMIT: f64 = 3.0;

/// How far lines are run on to find where they meet.
const REACH_MM: f64 = 400.0;

/// One copy of a piece with everything its cut line needs.
pub(crate) struct Ground<'a> {
    /// The pieces of the leg it is on, and of the other.
    pub legs: (&'a Pattern, &'a Pattern),
    pub piece: &'a Piece,
    pub on: On,
    /// In the order of the piece's edges.
    pub lies: &'a [EdgeLie],
    /// The edge that lies on the cloth's own, if one does.
    pub cloth_edge: Option<&'a ClothEdge>,
    /// How the edges of any copy lie, for what lies beside this piece.
    pub lies_of: &'a dyn Fn(PieceId, On) -> Option<Vec<EdgeLie>>,
}

/// The cut line of a piece.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Outline {
    /// Anticlockwise, first point not repeated.
    pub cut: Vec<Point>,
    /// The sewn line of each edge.
    pub sewn: Vec<Vec<Point>>,
    /// What is left of each edge's own cut line between its corners; empty where they leave nothing.
    pub edges: Vec<Vec<Point>>,
    pub corners: Vec<Corner>,
}

/// Why there is no cut line as the corners ask.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum NoOutline {
    /// The piece has no finite shape.
    NoShape,
    /// The corners cannot all be shaped; the plain mitred cut line is given instead.
    Plain(Outline),
    /// Not even that can be drawn; the finished outline is given instead.
    Finished(Outline, String),
}

/// The points along each edge of a piece; `None` where it has no finite shape.
pub(crate) fn sewn_lines(piece: &Piece) -> Option<Vec<Vec<Point>>> {
    let around = piece.edges.iter().map(|e| e.path.length()).sum::<Length>();
    let around = around.to_mm();
    let finite = around.is_finite() && around > 0.0;
    let finite = finite && piece.edges.iter().all(|e| e.path.start().is_finite());
    let step = Length::mm(STEP_MM.max(around / MOST_POINTS));
    let lines: Vec<Vec<Point>> = finite
        .then(|| piece.edges.iter().map(|e| e.path.dense(step)))?
        .map(|line| without_repeats(&line))
        .collect();
    (lines.len() >= 2 && lines.iter().all(|l| l.len() >= 2)).then_some(lines)
}

/// The cut line of a piece with every corner shaped.
///
/// # Errors
/// [`NoOutline`] holds the next best cut line, where there is one.
pub(crate) fn outline(ground: &Ground<'_>) -> Result<Outline, NoOutline> {
    let sewn = sewn_lines(ground.piece)
        .filter(|lines| lines.len() == ground.lies.len())
        .ok_or(NoOutline::NoShape)?;
    let moved = moved_lines(ground, &sewn);
    let n = sewn.len();
    let made: Vec<Made> = (0..n)
        .map(|i| corner(ground, &sewn, &moved, (i, (i + 1) % n)))
        .collect();
    // Each edge's own cut line runs from the corner before it to the one after.
    let edges: Vec<Vec<Point>> = (0..n)
        .map(|k| {
            let (begins, stops) = (made[(k + n - 1) % n].begins, made[k].stops);
            within(ground, between(&moved[k], begins, stops))
        })
        .collect();
    let corners: Vec<Corner> = made
        .into_iter()
        .enumerate()
        .map(|(i, made)| {
            let j = (i + 1) % n;
            Corner {
                at: sewn[j][0],
                before: ground.piece.edges[i].name,
                after: ground.piece.edges[j].name,
                rule: made.rule,
                shaped: made.shaped,
                line: within(ground, made.line),
            }
        })
        .collect();
    let mut cut = Vec::new();
    for (edge, corner) in edges.iter().zip(&corners) {
        cut.extend_from_slice(edge);
        cut.extend_from_slice(&corner.line);
    }
    let mut cut = without_repeats(&cut);
    if let Some(cloth) = ground.cloth_edge {
        cut = cloth.one_run(&cut);
    }
    while cut.len() > 1 && (cut[0] - cut[cut.len() - 1]).hypot() < 1e-6 {
        cut.pop();
    }
    let made = Outline {
        cut,
        sewn,
        edges,
        corners,
    };
    if is_simple(&made.cut) && made.cut.iter().all(|p| p.is_finite()) {
        Ok(made)
    } else {
        Err(plain(ground, made))
    }
}

/// A part of the cut line, kept on the cloth.
fn within(ground: &Ground<'_>, line: Vec<Point>) -> Vec<Point> {
    match ground.cloth_edge {
        Some(cloth) => cloth.within(&line),
        None => line,
    }
}

/// One corner: where the cut lines of its two edges stop and begin, and the line between.
struct Made {
    rule: &'static CornerRule,
    shaped: Option<&'static str>,
    stops: f64,
    begins: f64,
    line: Vec<Point>,
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

fn corner(
    ground: &Ground<'_>,
    sewn: &[Vec<Point>],
    moved: &[Vec<Point>],
    (i, j): (usize, usize),
) -> Made {
    let (a, b) = (ends(&sewn[i]), starts(&sewn[j]));
    let names = (ground.piece.edges[i].name, ground.piece.edges[j].name);
    let on_cloth = |name| ground.cloth_edge.is_some_and(|c| c.edge == name);
    let meeting = Meeting {
        lies: (&ground.lies[i], &ground.lies[j]),
        turn: a.cross(b).atan2(a.dot(b)),
        on_cloth_edge: (on_cloth(names.0), on_cloth(names.1)),
    };
    let next_to = |before: bool| {
        let (edge, at_end) = if before {
            (names.0, true)
        } else {
            (names.1, false)
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
        (names.0, true, &ground.lies[i])
    } else {
        (names.1, false, &ground.lies[j])
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
    edge: &str,
    at_end: bool,
    lie: &EdgeLie,
) -> Option<(Vec<Point>, f64)> {
    let (meets, begins) = pair.meets()?;
    let depth = lie.allowance.to_mm() + 1.0;
    let own = pair.crossing_line();
    let level = [Point::new(-REACH_MM, 0.0), Point::new(REACH_MM, 0.0)];
    let place = crossings(&own, &level)
        .iter()
        .min_by(|a, b| {
            (a.at.x - meets.x)
                .abs()
                .total_cmp(&(b.at.x - meets.x).abs())
        })?
        .along_first;
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
fn lies_beside(ground: &Ground<'_>, edge: &str, at_end: bool) -> Option<Vec<Point>> {
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
    let k = piece.edges.iter().position(|e| e.name == next.edge)?;
    let ends = if next.at_end {
        (k, (k + 1) % n)
    } else {
        ((k + n - 1) % n, k)
    };
    let pair = Pair::of(&sewn, &moved, ends, next.at_end);
    let line = pair.crossing_line();
    let (meets, _) = pair.meets()?;
    let level = [Point::new(-REACH_MM, 0.0), Point::new(REACH_MM, 0.0)];
    let place = crossings(&line, &level)
        .iter()
        .min_by(|a, b| {
            (a.at.x - meets.x)
                .abs()
                .total_cmp(&(b.at.x - meets.x).abs())
        })?
        .along_first;
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
    if turn.abs() < 1e-9 {
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

/// Where two cut lines, run on straight, meet.
fn met(one: &[Point], other: &[Point]) -> Option<(f64, f64, Vec<Point>)> {
    let (d, e) = (ends(one), starts(other));
    let (&p, &q) = (one.last()?, other.first()?);
    let cross = d.cross(e);
    if cross.abs() < 1e-9 {
        return None;
    }
    let on = (q - p).cross(e) / cross;
    let back = (q - p).cross(d) / cross;
    Some((long(one) + on, back, vec![p + d * on]))
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

/// The mitred cut line, where corners cannot be shaped.
fn plain(ground: &Ground<'_>, made: Outline) -> NoOutline {
    let runs: Vec<(Vec<Point>, Length)> = made
        .sewn
        .iter()
        .zip(ground.lies)
        .map(|(line, lie)| (line.clone(), lie.allowance))
        .collect();
    match offset_outline(&runs) {
        Ok(cut) => NoOutline::Plain(Outline {
            cut,
            corners: Vec::new(),
            ..made
        }),
        Err(reason) => {
            let cut = made.sewn.iter().flat_map(|l| l[..l.len() - 1].to_vec());
            NoOutline::Finished(
                Outline {
                    cut: cut.collect(),
                    corners: Vec::new(),
                    ..made.clone()
                },
                reason.to_string(),
            )
        }
    }
}

/// The cut line of every edge on its own: parallel to the sewn line, or straight where it is the
/// cloth's own edge.
fn moved_lines(ground: &Ground<'_>, sewn: &[Vec<Point>]) -> Vec<Vec<Point>> {
    sewn.iter()
        .zip(ground.lies)
        .zip(&ground.piece.edges)
        .map(|((line, lie), edge)| {
            let moved = parallel(line, lie.allowance.to_mm());
            match ground.cloth_edge {
                Some(cloth) if cloth.edge == edge.name => cloth.straightened(&moved),
                _ => moved,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use draft::{ClothUse, Cut, Edge, Spec};
    use geometry::{Path, area};

    /// A piece of straight edges, whose allowances are the given ones.
    fn cut_round(corners: &[(f64, f64)], lies: &[EdgeLie]) -> Outline {
        const NAMES: [&str; 6] = ["one", "two", "three", "four", "five", "six"];
        let n = corners.len();
        let p = |k: usize| Point::from(corners[k % n]);
        let piece = Piece {
            id: PieceId::FlyShield,
            cloth: ClothUse::Shell,
            cut: Cut::ONE,
            edges: (0..n)
                .map(|k| Edge {
                    name: NAMES[k],
                    path: Path::line(p(k), p(k + 1)),
                })
                .collect(),
            points: Vec::new(),
            lines: Vec::new(),
            notches: Vec::new(),
            grain: (Point::ORIGIN, Point::new(0.0, 1.0)),
        };
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        let doc = style::load(folder.as_ref()).unwrap().style;
        let drafted = draft::draft(&Spec::of(&doc, doc.sizes.base));
        outline(&Ground {
            legs: (&drafted.pattern, &drafted.pattern),
            piece: &piece,
            on: On::AsDrawn,
            lies,
            cloth_edge: None,
            lies_of: &|_, _| None,
        })
        .unwrap()
    }

    fn edge(seam: Option<&'static str>, lie: Lie, mm: f64) -> EdgeLie {
        EdgeLie {
            seam,
            construction: None,
            lie,
            allowance: Length::mm(mm),
            over: None,
        }
    }

    fn keys(outline: &Outline) -> Vec<&'static str> {
        outline.corners.iter().map(|c| c.rule.key).collect()
    }

    const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0)];

    #[test]
    fn a_rectangle_turned_in_all_round() {
        let made = cut_round(&SQUARE, &vec![edge(None, Lie::Turned, 10.0); 4]);
        assert_eq!(keys(&made), ["together"; 4]);
        assert!((area(&made.cut).to_mm2() - 120.0 * 70.0).abs() < 1e-9);
    }

    #[test]
    fn an_edge_without_allowance_runs_on_through_the_next() {
        let lies = [
            edge(Some("loop_edge"), Lie::None, 0.0),
            edge(Some("band"), Lie::Across, 9.5),
            edge(Some("loop_edge"), Lie::None, 0.0),
            edge(Some("band"), Lie::Across, 9.5),
        ];
        let made = cut_round(&SQUARE, &lies);
        assert_eq!(keys(&made), ["bare"; 4]);
        assert!((area(&made.cut).to_mm2() - 119.0 * 50.0).abs() < 1e-6);
    }

    #[test]
    fn an_inward_corner_ends_where_the_cut_lines_cross() {
        let corners = [
            (0.0, 0.0),
            (100.0, 0.0),
            (100.0, 50.0),
            (50.0, 50.0),
            (50.0, 100.0),
            (0.0, 100.0),
        ];
        let made = cut_round(&corners, &vec![edge(None, Lie::Turned, 10.0); 6]);
        assert_eq!(made.corners[2].rule.key, "inward");
        assert!((area(&made.cut).to_mm2() - (120.0 * 120.0 - 50.0 * 50.0)).abs() < 1e-6);
    }

    #[test]
    fn a_sharp_tip_is_cut_off_square() {
        let corners = [(0.0, 0.0), (200.0, 0.0), (0.0, 30.0)];
        let made = cut_round(&corners, &vec![edge(None, Lie::Turned, 10.0); 3]);
        assert_eq!(made.corners[0].rule.key, "sharp");
        let furthest = made.cut.iter().map(|p| p.x).fold(f64::MIN, f64::max);
        // Mitred it would reach 10 ÷ tan(8.53° ÷ 2) = 134 mm beyond the corner.
        assert!((209.0..212.0).contains(&furthest), "{furthest}");
    }

    /// An edge in two parts with different allowances: a step square to it, where they meet.
    #[test]
    fn a_change_of_allowance_is_a_square_step() {
        let corners = [
            (0.0, 0.0),
            (40.0, 0.0),
            (100.0, 0.0),
            (100.0, 50.0),
            (0.0, 50.0),
        ];
        let mut lies = vec![edge(None, Lie::Turned, 10.0); 5];
        lies[1] = edge(Some("front_rise"), Lie::Turned, 16.0);
        let made = cut_round(&corners, &lies);
        assert_eq!(made.corners[0].rule.key, "changes");
        let step: Vec<f64> = made
            .cut
            .iter()
            .filter(|p| (p.x - 40.0).abs() < 1e-9)
            .map(|p| p.y)
            .collect();
        assert_eq!(step, [-10.0, -16.0]);
        lies[1] = lies[0].clone();
        let even = cut_round(&corners, &lies);
        assert_eq!(even.corners[0].rule.key, "runs-on");
        assert!((area(&even.cut).to_mm2() - 120.0 * 70.0).abs() < 1e-9);
    }

    /// A pocket narrower at its foot, 100 wide at the top, each side leaning in by 10 in 50; its hem of
    /// 8 is turned twice. Worked by hand: the sides' cut lines lie 10 outside, so the top of the first
    /// turn is 8 × 10 / 50 = 1.6 narrower on each side, the end of the second as wide as the top.
    #[test]
    fn a_hem_turned_twice_is_mirrored_twice() {
        let corners = [(10.0, 0.0), (90.0, 0.0), (100.0, 50.0), (0.0, 50.0)];
        let hem = Lie::Hemmed {
            first: Length::mm(8.0),
        };
        let side = || edge(Some("back_pocket_set"), Lie::Turned, 10.0);
        let lies = [
            side(),
            side(),
            edge(Some("back_pocket_hem"), hem, 16.0),
            side(),
        ];
        let made = cut_round(&corners, &lies);
        assert_eq!(keys(&made), ["together", "hem", "hem", "together"]);
        let right = |y: f64| {
            let at = made.cut.iter().filter(|p| (p.y - y).abs() < 1e-6);
            at.map(|p| p.x).fold(f64::MIN, f64::max)
        };
        // The side's cut line crosses the top edge at 100 + 10 × √(1 + 0.2²).
        let top = 100.0 + 10.0 * 1.04_f64.sqrt();
        assert!((right(58.0) - (top - 1.6)).abs() < 1e-6, "{}", right(58.0));
        assert!((right(66.0) - top).abs() < 1e-6, "{}", right(66.0));
    }

    #[test]
    fn what_has_no_shape_has_no_cut_line() {
        let path = Path::line(Point::ORIGIN, Point::ORIGIN);
        let piece = Piece {
            id: PieceId::FlyShield,
            cloth: ClothUse::Shell,
            cut: Cut::ONE,
            edges: vec![Edge { name: "one", path }],
            points: Vec::new(),
            lines: Vec::new(),
            notches: Vec::new(),
            grain: (Point::ORIGIN, Point::ORIGIN),
        };
        assert_eq!(sewn_lines(&piece), None);
    }
}
