//! The cut line round a piece: every edge moved out by its own allowance, every corner shaped by its
//! rule.

use draft::{Pattern, Piece, PieceId};
use geometry::tolerance::SAME_MM;
use geometry::{OffsetError, Point, is_simple, moved_left, offset_outline};
use sewing::On;
use trade::Length;
use words::{Key, key};

use crate::allowance_lie::EdgeLie;
use crate::corner::Corner;
use crate::polyline::{between, without_repeats};
use crate::selvedge::ClothEdge;
use crate::shape::{Made, corner};

/// Distance of the points along a curve.
const STEP_MM: f64 = 1.0;

/// An outline has about this many points at most, however large the piece.
const MOST_POINTS: f64 = 4000.0;

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
    Finished(Outline, Key),
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
                before: ground.piece.edges[i].id,
                after: ground.piece.edges[j].id,
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
    while cut.len() > 1 && (cut[0] - cut[cut.len() - 1]).hypot() < SAME_MM {
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
                match reason {
                    OffsetError::NoArea => key::CUTTING_NO_AREA,
                    OffsetError::Crosses => key::CUTTING_CROSSES,
                },
            )
        }
    }
}

/// The cut line of every edge on its own: parallel to the sewn line, or straight where it is the
/// cloth's own edge.
pub(crate) fn moved_lines(ground: &Ground<'_>, sewn: &[Vec<Point>]) -> Vec<Vec<Point>> {
    sewn.iter()
        .zip(ground.lies)
        .zip(&ground.piece.edges)
        .map(|((line, lie), edge)| {
            let moved = moved_left(line, -lie.allowance);
            match ground.cloth_edge {
                Some(cloth) if cloth.edge == edge.id => cloth.straightened(&moved),
                _ => moved,
            }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::allowance_lie::Lie;
    use draft::{ClothUse, Cut, Edge, EdgeId, Spec};
    use geometry::{Path, area};
    use style::SeamId;

    /// A piece of straight edges, whose allowances are the given ones.
    fn cut_round(corners: &[(f64, f64)], lies: &[EdgeLie]) -> Outline {
        const IDS: [EdgeId; 6] = [
            EdgeId::Left,
            EdgeId::Foot,
            EdgeId::Outer,
            EdgeId::Right,
            EdgeId::Top,
            EdgeId::Inner,
        ];
        let n = corners.len();
        let p = |k: usize| Point::from(corners[k % n]);
        let piece = Piece {
            id: PieceId::FlyShield,
            cloth: ClothUse::Shell,
            cut: Cut::ONE,
            edges: (0..n)
                .map(|k| Edge {
                    id: IDS[k],
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

    fn edge(seam: Option<SeamId>, lie: Lie, mm: f64) -> EdgeLie {
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
            edge(Some(SeamId::LoopEdge), Lie::None, 0.0),
            edge(Some(SeamId::Band), Lie::Across, 9.5),
            edge(Some(SeamId::LoopEdge), Lie::None, 0.0),
            edge(Some(SeamId::Band), Lie::Across, 9.5),
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
        lies[1] = edge(Some(SeamId::FrontRise), Lie::Turned, 16.0);
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
        let side = || edge(Some(SeamId::BackPocketSet), Lie::Turned, 10.0);
        let lies = [
            side(),
            side(),
            edge(Some(SeamId::BackPocketHem), hem, 16.0),
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
            edges: vec![Edge {
                id: EdgeId::Left,
                path,
            }],
            points: Vec::new(),
            lines: Vec::new(),
            notches: Vec::new(),
            grain: (Point::ORIGIN, Point::ORIGIN),
        };
        assert_eq!(sewn_lines(&piece), None);
    }
}
