//! What is sewn or set through a pocket it should not close.

use draft::{EdgeId, PieceId};
use geometry::{Point, contains};
use style::{PartId, SeamId};
use trade::Length;
use words::{key, say};

use super::scene::{What, nearest, share};
use super::whereabouts::{operation, place, whereabouts};
use crate::check::case::{Broken, Case, distance_to_line};
use crate::garment::FixingKind;
use crate::inset_lines::points_along;

/// Nearer than this to the side of a pocket a tack takes nothing from it: the row that sets the pocket lies there too
/// (common practice).
const AT_THE_SIDE_MM: f64 = 3.0;

/// At both ends of a mouth this much of it may be closed: tacks and rivets hold it there (common practice).
const AT_THE_END_MM: f64 = 16.0;

/// Through how much of a line a needle or a nail closes a pocket, at most.
struct Closing {
    at: Point,
    depth: f64,
}

/// How a line lies in a pocket: the place that lies deepest in it. `None` where it keeps to its side.
fn closing(polygon: &[Point], opening: &[Point], line: &[Point]) -> Option<Closing> {
    let steps = line.windows(2).flat_map(|side| {
        let (from, to) = (side[0], side[1]);
        (0..=8).map(move |k| from.lerp(to, f64::from(k) / 8.0))
    });
    let sides = |p: Point| {
        let n = polygon.len();
        (0..n)
            .map(|k| [polygon[k], polygon[(k + 1) % n]])
            .filter(|side| distance_to_line(opening, side[0].midpoint(side[1])) > 0.5)
            .map(|side| distance_to_line(&side, p))
            .fold(f64::INFINITY, f64::min)
    };
    steps
        .filter(|p| contains(polygon, *p))
        .map(|at| Closing {
            at,
            depth: sides(at),
        })
        .max_by(|a, b| a.depth.total_cmp(&b.depth))
        .filter(|closing| closing.depth > AT_THE_SIDE_MM)
}

/// A pocket that is set on another piece, with the seams of its own that go through it.
struct SetOn {
    pocket: PieceId,
    hem: SeamId,
    set: SeamId,
    part: PartId,
}

/// Tacks and rows that close the concealed pocket, each operation once.
pub(crate) fn closes_extra(case: &Case<'_>) -> Vec<Broken> {
    let extra = SetOn {
        pocket: PieceId::ExtraPocket,
        hem: SeamId::ExtraHem,
        set: SeamId::ExtraSet,
        part: PartId::ExtraPocket,
    };
    closes(case, &extra).unwrap_or_default()
}

/// The same of the coin pocket.
pub(crate) fn closes_coin(case: &Case<'_>) -> Vec<Broken> {
    let coin = SetOn {
        pocket: PieceId::CoinPocket,
        hem: SeamId::CoinHem,
        set: SeamId::CoinSet,
        part: PartId::CoinPocket,
    };
    closes(case, &coin).unwrap_or_default()
}

fn closes(case: &Case<'_>, of: &SetOn) -> Option<Vec<Broken>> {
    let (scene, pattern) = (case.scene, case.context.pattern);
    let pocket = scene.outline(of.pocket)?;
    let opening = points_along(pattern.piece(of.pocket)?.edge(EdgeId::Top)?)?;
    let opening = scene.on_panel(of.pocket, &opening);
    let set = scene.first_of(of.set)?;
    let later = scene.sewn.iter().filter(|sewn| {
        let own = [of.set, of.hem].map(Some).contains(&sewn.what.seam());
        let there = sewn.ground == pocket.ground && share(sewn.on, pocket.on);
        !own && there && sewn.through.contains(&of.pocket) && sewn.operation > set
    });
    let mut out: Vec<(usize, Broken)> = Vec::new();
    for sewn in later {
        if out.iter().any(|(known, _)| *known == sewn.operation) {
            continue;
        }
        let Some(closing) = closing(&pocket.polygon, &opening, &sewn.line) else {
            continue;
        };
        let below = distance_to_line(&opening, closing.at);
        let said = say::ClashClosesExtra {
            below: Length::mm(below).in_mm(1),
            now: operation(scene, sewn.operation),
            set: operation(scene, set),
            sewn: sewn.what.called(),
            where_of: whereabouts(pattern, pocket.ground, closing.at),
        };
        out.push((
            sewn.operation,
            Broken::warning(of.part, said)
                .help(key::CLASH_CLOSES_EXTRA_HELP)
                .at(place(pocket.ground, closing.at)),
        ));
    }
    Some(out.into_iter().map(|(_, broken)| broken).collect())
}

/// A tack that joins the edge of a hip pocket's mouth to what lies behind it, away from the mouth's ends.
pub(crate) fn closes_mouth(case: &Case<'_>) -> Vec<Broken> {
    let (scene, pattern) = (case.scene, case.context.pattern);
    let mouth = pattern
        .piece(PieceId::Front)
        .and_then(|front| front.edge(EdgeId::Mouth));
    let Some((mouth, line)) = mouth.and_then(|path| Some((path, points_along(path)?))) else {
        return Vec::new();
    };
    let inside = |p: Point| {
        [mouth.start(), mouth.end()]
            .into_iter()
            .all(|end| (p - end).hypot() > AT_THE_END_MM)
    };
    let tacks = scene.sewn.iter().filter(|sewn| match sewn.what {
        What::Set(fixing) => {
            matches!(fixing.kind, FixingKind::Bartack(..)) && sewn.through.contains(&PieceId::Front)
        }
        What::Row(_) => false,
    });
    let closed = tacks.filter_map(|tack| {
        let (from, to) = (tack.line.first()?, tack.line.last()?);
        let (at, gap) = nearest(&line, (*from, *to))?;
        let across = tack.ground == PieceId::Front && gap <= tack.half_mm && inside(at);
        across.then(|| {
            let said = say::ClashClosesMouth {
                now: operation(scene, tack.operation),
                sewn: tack.what.called(),
                where_of: whereabouts(pattern, PieceId::Front, at),
            };
            Broken::warning(PartId::PocketMouth, said)
                .help(key::CLASH_CLOSES_MOUTH_HELP)
                .at(place(PieceId::Front, at))
        })
    });
    let mut out: Vec<Broken> = closed.collect();
    out.dedup_by(|a, b| a.message == b.message);
    out
}
