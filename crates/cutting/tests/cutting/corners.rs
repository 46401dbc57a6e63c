//! Every corner folded as it is sewn: nothing may stick out of the piece it comes to lie on, and what is
//! to end flush does.

use std::collections::BTreeMap;

use cutting::{CORNER_RULES, Corner, CornerKind, CutPiece, CutSize, Lie, cut, side_of};
use draft::{EdgeId, PieceId};
use geometry::{Point, Vec2};
use style::{Construction, SeamId, Size};

use crate::common::{base, copy, ferryman, from_outline, outside, plan, sewn};

const NEAR_MM: f64 = 0.05;

/// Along the shaped edge beyond the corner, and outward from it.
struct Frame {
    at: Point,
    along: Vec2,
    out: Vec2,
}

impl Frame {
    /// At one end of an edge.
    fn at_end_of(piece: &CutPiece, edge: EdgeId, at_end: bool) -> Frame {
        let line = &piece.edge(edge).unwrap().sewn;
        let n = line.len();
        let unit = |v: Vec2| v / v.hypot();
        if at_end {
            let along = unit(line[n - 1] - line[n - 2]);
            Frame {
                at: line[n - 1],
                along,
                out: Vec2::new(along.y, -along.x),
            }
        } else {
            let along = unit(line[0] - line[1]);
            Frame {
                at: line[0],
                along,
                out: Vec2::new(-along.y, along.x),
            }
        }
    }

    fn local(&self, p: Point) -> (f64, f64) {
        let v = p - self.at;
        (v.dot(self.along), v.dot(self.out))
    }

    fn place(&self, u: f64, v: f64) -> Point {
        self.at + self.along * u + self.out * v
    }
}

/// The corner that lies beside a corner once it is sewn, written down from how jeans go together.
fn beside(piece: PieceId, edge: EdgeId, at_end: bool) -> (PieceId, EdgeId, bool, bool) {
    use PieceId::{Back, Front, PocketFacing, Yoke};
    match (piece, edge) {
        (Back, EdgeId::Top) => (Yoke, EdgeId::Lower, !at_end, false),
        (Yoke, EdgeId::Lower) => (Back, EdgeId::Top, !at_end, false),
        (Front, EdgeId::Inseam) => (Back, EdgeId::Inseam, at_end, false),
        (Back, EdgeId::Inseam) => (Front, EdgeId::Inseam, at_end, false),
        (Front, EdgeId::Side) => (Back, EdgeId::Side, at_end, false),
        (Back, EdgeId::Side) => (Front, EdgeId::Side, at_end, false),
        (PocketFacing, EdgeId::Side) => (Yoke, EdgeId::Side, at_end, false),
        (Yoke, EdgeId::Side) => (PocketFacing, EdgeId::Side, at_end, false),
        (Back, EdgeId::Seat) => (Back, EdgeId::Seat, at_end, true),
        (Yoke, EdgeId::Centre) => (Yoke, EdgeId::Centre, at_end, true),
        (Front, EdgeId::Crotch) => (Front, EdgeId::Crotch, at_end, true),
        other => panic!("nothing is known to lie beside {other:?}"),
    }
}

/// How far the points of a corner stick out of what they are folded onto, and how far they miss its cut
/// line.
fn folded(all: &CutSize, piece: &CutPiece, corner: &Corner) -> Option<(f64, f64)> {
    let edge = corner.shaped?;
    let at_end = edge == corner.before;
    let frame = Frame::at_end_of(piece, edge, at_end);
    let lie = piece.edge(edge)?.lie;
    let onto_own = |v: f64| frame_own(&frame, v);
    let other = || {
        let (id, beside_edge, beside_end, across) = beside(piece.piece, edge, at_end);
        let mirrored = piece.on == sewing::On::Mirrored;
        let side = side_of(piece.piece, mirrored);
        let wanted = if across {
            !mirrored
        } else {
            side_of(id, false) != side
        };
        let next = copy(all, id, wanted).unwrap();
        (next, Frame::at_end_of(next, beside_edge, beside_end))
    };
    let (mut most_out, mut most_off) = (0.0_f64, 0.0_f64);
    for p in &corner.line {
        let (u, v) = frame.local(*p);
        // How deep inside the piece below the point comes to lie.
        let deep = match lie {
            Lie::Felled { lap } if v > lap.to_mm() => 2.0 * lap.to_mm() - v,
            Lie::Hemmed { first } if v > first.to_mm() => 2.0 * first.to_mm() - v,
            _ => v,
        };
        let (outline, place) = match lie {
            Lie::Felled { .. } | Lie::Across => {
                let (next, frame) = other();
                (&next.cut, frame.place(u, -deep))
            }
            _ => (&piece.cut, onto_own(deep)(u)),
        };
        // On the seam line itself lies this piece's own cut line, not the end of its allowance.
        if v <= 1e-6 {
            continue;
        }
        most_out = most_out.max(outside(outline, place));
        // Where the cloth itself ends, so does the allowance.
        let cloth_ends = piece
            .cloth_edge
            .as_ref()
            .is_some_and(|c| (p.x - c.from.x).abs() < 1e-6);
        if !cloth_ends {
            most_off = most_off.max(from_outline(outline, place));
        }
    }
    Some((most_out, most_off))
}

fn frame_own(frame: &Frame, v: f64) -> impl Fn(f64) -> Point + '_ {
    move |u| frame.place(u, -v)
}

/// Folds every corner of a size; counts the rules met.
pub fn check(all: &CutSize, who: &str, met: &mut BTreeMap<&'static str, usize>) {
    for piece in &all.pieces {
        assert_eq!(
            piece.corners.len(),
            piece.edges.len(),
            "{who} {}",
            piece.code()
        );
        for corner in &piece.corners {
            *met.entry(corner.rule.key).or_default() += 1;
            let name = format!(
                "{who} {} {:?}: {} to {} ({})",
                piece.code(),
                piece.on,
                corner.before.code(),
                corner.after.code(),
                corner.rule.key
            );
            let Some((out, off)) = folded(all, piece, corner) else {
                continue;
            };
            if corner.rule.key == "hem-on-cloth-edge" || corner.rule.key == "bare" {
                continue;
            }
            assert!(out <= NEAR_MM, "{name}: sticks out {out:.3} mm");
            if corner.rule.key != "opened" {
                // All but the place where the allowance ends, which lies inside.
                assert!(off <= NEAR_MM, "{name}: ends {off:.3} mm off");
            }
        }
    }
}

#[test]
fn folded_and_felled_edges_end_flush() {
    let mut met = BTreeMap::new();
    for size in [Size::new(32, 32), Size::new(28, 30), Size::new(38, 34)] {
        let all = cut(&sewn(&ferryman(), size), &plan());
        check(&all, &size.to_string(), &mut met);
    }
    for key in [
        "hem",
        "turned",
        "felled",
        "changes",
        "together",
        "hem-on-cloth-edge",
    ] {
        assert!(
            met.contains_key(key),
            "no corner by the rule {key}: {met:?}"
        );
    }
}

/// Every other construction of the leg seams: felled, mock felled, overlocked, pressed open.
#[test]
fn other_constructions_end_flush_too() {
    use Construction::{LapFelled, MockFelled, Overlocked, PressedOpen, SafetyStitched};
    let mut met = BTreeMap::new();
    for construction in [
        LapFelled,
        MockFelled,
        Overlocked,
        PressedOpen,
        SafetyStitched,
    ] {
        let mut loaded = ferryman();
        loaded.style.shape.outseam = style::OutseamLine::Shaped;
        for id in [
            SeamId::Outseam,
            SeamId::Inseam,
            SeamId::Seat,
            SeamId::Yoke,
            SeamId::FrontRise,
        ] {
            let seam = loaded.style.seams.get_mut(&id).unwrap();
            seam.construction = Some(construction);
            seam.lap = None;
        }
        for cloth in loaded.collection.cloths.values_mut() {
            cloth.selvedge = false;
        }
        let all = cut(&sewn(&loaded, Size::new(32, 32)), &plan());
        check(&all, &construction.to_string(), &mut met);
    }
    let kinds: Vec<CornerKind> = CORNER_RULES
        .iter()
        .filter(|r| met.contains_key(r.key))
        .map(|r| r.kind)
        .collect();
    for kind in CornerKind::ALL {
        assert!(
            kinds.contains(&kind),
            "no corner is {}: {met:?}",
            kind.code()
        );
    }
    for key in ["opened", "opened-sharp", "across", "across-mirrored"] {
        assert!(
            met.contains_key(key),
            "no corner by the rule {key}: {met:?}"
        );
    }
}

/// A pocket narrower at the foot: its hem, turned down, is as wide as the pocket where it lies, with the
/// allowances of its sides; simply running its sides on would make it too wide.
#[test]
fn a_hem_is_as_wide_as_the_pocket_where_it_lies() {
    let all = base();
    let pocket = copy(&all, PieceId::BackPocketRight, false).unwrap();
    let Lie::Hemmed { first } = pocket.edge(EdgeId::Top).unwrap().lie else {
        panic!("the hem is turned twice");
    };
    let y = pocket.edge(EdgeId::Top).unwrap().sewn[0].y;
    let reach = |level: f64| {
        let next = pocket.cut.iter().cycle().skip(1);
        pocket
            .cut
            .iter()
            .zip(next)
            .filter(|(a, b)| (a.y - level) * (b.y - level) <= 0.0 && a.y != b.y)
            .map(|(a, b)| a.x + (b.x - a.x) * (level - a.y) / (b.y - a.y))
            .fold(f64::INFINITY, f64::min)
    };
    let first = first.to_mm();
    for deep in [2.0, 6.0, first - 1.0] {
        let off = reach(y + deep) - reach(y - deep);
        assert!(off.abs() < 0.05, "{deep} mm deep: {off}");
        // Turned in again, it lies under the first turn.
        let again = reach(y + 2.0 * first - deep) - reach(y - deep);
        assert!(again.abs() < 0.05, "{deep} mm deep, second turn: {again}");
    }
    assert!(reach(y - 9.0) - reach(y) > 0.5, "the pocket tapers");
}

/// Top and bottom together take the lap and two turns (the arithmetic of a lap-felled seam).
#[test]
fn both_plies_of_a_felled_seam_add_up() {
    let all = base();
    let seams = [
        (
            "inseam",
            (PieceId::Front, EdgeId::Inseam, false),
            (PieceId::Back, EdgeId::Inseam, false),
        ),
        (
            "yoke",
            (PieceId::Yoke, EdgeId::Lower, false),
            (PieceId::Back, EdgeId::Top, false),
        ),
        (
            "seat",
            (PieceId::Back, EdgeId::Seat, false),
            (PieceId::Back, EdgeId::Seat, true),
        ),
    ];
    for (seam, over, under) in seams {
        let edge = |(id, edge, mirrored): (PieceId, EdgeId, bool)| {
            copy(&all, id, mirrored)
                .unwrap()
                .edge(edge)
                .unwrap()
                .clone()
        };
        let (mut a, mut b) = (edge(over), edge(under));
        if matches!(a.lie, Lie::Felled { .. }) {
            std::mem::swap(&mut a, &mut b);
        }
        let Lie::Felled { lap } = b.lie else {
            panic!("{seam}: the lower ply is felled");
        };
        let turn = b.allowance - lap;
        let sum = a.allowance + b.allowance - (lap + turn * 2.0);
        assert!(sum.to_mm().abs() < 1e-9, "{seam}: {sum}");
        assert_eq!(a.lie, Lie::Turned, "{seam}");
    }
}
