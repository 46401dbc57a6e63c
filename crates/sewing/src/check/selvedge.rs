//! An outseam along the cloth's own edge has to be straight, for that edge is.

use draft::{EdgeId, PieceId, PointId};
use geometry::{Point, unit};
use style::{Construction, OutseamLine, PartId, SeamId, Subject, Valued};
use trade::Length;
use words::{key, say};

use super::case::{Broken, Case};
use crate::allowance::allowances;
use crate::inset_lines::points_along;
use crate::laps::runs_to_selvedge;

/// Least cloth that must be left between seam line and the cloth's edge for the allowance to lie
/// open (common practice).
const LEAST: Length = Length::mm(6.0);

/// For front and back: how far the outseam strays from straight below the hip, where the cut runs
/// along the cloth's own edge.
pub(super) fn curve(case: &Case<'_>) -> Vec<Broken> {
    let context = case.context;
    let Some(seam) = context.seam(SeamId::Outseam) else {
        return Vec::new();
    };
    let room = allowances(seam, Length::ZERO).over - LEAST;
    [
        (PieceId::Front, PartId::FrontPanel),
        (PieceId::Back, PartId::BackPanel),
    ]
    .into_iter()
    .filter(|(id, _)| runs_to_selvedge(context, seam, *id))
    .filter_map(|(id, part)| {
        let piece = context.pattern.piece(id)?;
        let (foot, hip) = (piece.point(PointId::HemOut)?, piece.point(PointId::Hip)?);
        let side = points_along(piece.edge(EdgeId::Side)?)?;
        let strays = Length::mm(strays(&side, foot, hip));
        (strays > room).then(|| {
            Broken::note(
                part,
                say::SewingSelvedgeCurve {
                    strays: strays.in_mm(1),
                },
            )
            .help(key::SEWING_SELVEDGE_CURVE_HELP)
            .at(case.point(id, PointId::KneeOut))
        })
    })
    .collect()
}

/// The greatest spread of a line to both sides of the straight from `a` to `b`, between their heights.
fn strays(line: &[Point], a: Point, b: Point) -> f64 {
    let along = unit(b - a);
    let (low, high) = (a.y.min(b.y), a.y.max(b.y));
    let off = line
        .iter()
        .filter(|p| p.y >= low && p.y <= high)
        .map(|p| along.cross(*p - a));
    let (least, most) = off.fold((0.0_f64, 0.0_f64), |(l, m), d| (l.min(d), m.max(d)));
    most - least
}

/// A dart that is taken smaller than stated, so that the back's outseam does not run out over the cloth's edge.
pub(super) fn dart(case: &Case<'_>) -> Vec<Broken> {
    /// Smaller changes of a dart are not seen.
    const SEEN: Length = Length::mm(0.5);
    let found = || {
        let pattern = case.context.pattern;
        let long = |piece, edge| Some(pattern.piece(piece)?.edge(edge)?.length());
        let taken = long(PieceId::Back, EdgeId::Top)? - long(PieceId::Yoke, EdgeId::Top)?;
        let stated = pattern.spec.seat_dart;
        let drafted = pattern.own.is_none() && pattern.spec.straight_outseam;
        (drafted && stated - taken > SEEN).then(|| {
            Broken::note(
                Subject::Value(Valued::new("shape.seat_dart", key::VALUED_SEAT_DART)),
                say::SewingSelvedgeDart {
                    stated: stated.in_mm(1),
                    taken: taken.in_mm(1),
                },
            )
            .help(say::SewingSelvedgeDartHelp {
                taken: taken.in_mm(1),
            })
            .at(case.point(PieceId::Back, PointId::YokeSide))
        })
    };
    found().into_iter().collect()
}

/// The outseam is laid along the cloth's own edge, and the cloth has none to show.
pub(super) fn missing(case: &Case<'_>) -> Vec<Broken> {
    let context = case.context;
    let doc = context.doc;
    let asked = doc.shape.outseam == OutseamLine::Straight
        && context
            .seam(SeamId::Outseam)
            .is_some_and(|s| s.construction == Construction::PressedOpen);
    let cloth = context.collection.cloths.get(&doc.cloth.shell);
    let missing = cloth.filter(|c| asked && !c.selvedge).map(|c| {
        Broken::warning(
            SeamId::Outseam,
            say::SewingSelvedgeMissing {
                c: c.name.to_string(),
            },
        )
        .help(key::SEWING_SELVEDGE_MISSING_HELP)
        .at(case.point(PieceId::Front, PointId::KneeOut))
    });
    missing.into_iter().collect()
}
