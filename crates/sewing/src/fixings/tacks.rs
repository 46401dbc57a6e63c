//! Belt loops and bartacks, at the points where jeans usually carry them (common practice).

use draft::{EdgeId, PieceId, PointId};
use geometry::{Path, Point, Vec2};
use style::{MeasureId, SeamId};
use trade::Length;

use super::setting::{fixing, midway};
use crate::context::Context;
use crate::garment::{Fixing, FixingKind, On};
use crate::placement::{back_pockets, coin_on};
use crate::rows::fly_line;

/// From a seam to the middle of the tack that crosses a pocket mouth beside it.
const TACK_FROM_SEAM: Length = Length::mm(3.0);

/// Along the fly stitching, from its end to the tack that secures it (at least 2 cm).
const TACK_ON_FLY: Length = Length::mm(25.0);

/// The points of the band that may carry a loop.
fn loop_points(context: &Context<'_>) -> Vec<Point> {
    context
        .pattern
        .piece(PieceId::Band)
        .into_iter()
        .flat_map(|band| &band.points)
        .filter(|p| PointId::LOOPS.contains(&p.id))
        .map(|p| p.at)
        .collect()
}

/// The loops, from the top edge of the band down over the band seam.
///
/// Places are in the frame of the band; a loop longer than the band is high hangs below y = 0,
/// onto the yoke or the front.
pub(super) fn loops(context: &Context<'_>) -> Vec<Fixing> {
    let spec = &context.pattern.spec;
    let shell = context.collection.cloths.get(&context.doc.cloth.shell);
    let colour = shell.map_or(context.trim_colour(""), |cloth| cloth.colour);
    let tack = &context.doc.bartacks;
    let top = spec[MeasureId::BandHeight].to_mm();
    let foot = top - spec[MeasureId::LoopLength].to_mm();
    // A tack lies across its loop and within it.
    let across = tack.length.min(spec[MeasureId::LoopWidth]);
    let half = tack.width.to_mm() / 2.0;
    let mut out = Vec::new();
    for p in loop_points(context) {
        out.push(fixing(
            FixingKind::Loop(spec[MeasureId::LoopLength], spec[MeasureId::LoopWidth]),
            PieceId::Band,
            On::AsDrawn,
            Point::new(p.x, (top + foot) / 2.0),
            Vec2::new(0.0, 1.0),
            (SeamId::LoopEdge.into(), colour),
        ));
        for y in [top - half, foot + half] {
            out.push(tacked(
                context,
                PieceId::Band,
                On::AsDrawn,
                (Point::new(p.x, y), Vec2::new(1.0, 0.0)),
                (across, SeamId::LoopEdge),
            ));
        }
    }
    out
}

/// All other tacks.
pub(super) fn bartacks(context: &Context<'_>) -> Vec<Fixing> {
    let spec = &context.pattern.spec;
    let (tack, rivets) = (&context.doc.bartacks, context.doc.rivets.as_ref());
    let length = tack.length;
    let mut out = Vec::new();
    let mut push = |piece, on, place: Option<(Point, Vec2)>, seam| {
        out.extend(place.map(|place| tacked(context, piece, on, place, (length, seam))));
    };
    let mouth = || midway(context, PieceId::Front, &[EdgeId::Mouth], SeamId::Mouth);
    if let Some(line) = tack.at_mouth(rivets).then(mouth).flatten() {
        for along in [TACK_FROM_SEAM, line.length() - TACK_FROM_SEAM] {
            push(
                PieceId::Front,
                On::Both,
                Some(across(&line, along)),
                SeamId::Mouth,
            );
        }
    }
    let front = context.pattern.piece(PieceId::Front);
    let fly = front.filter(|_| tack.fly);
    let foot = fly.and_then(|f| {
        let fly = f.edge(EdgeId::Fly)?;
        Some((fly.end(), fly.end_direction()))
    });
    push(PieceId::Front, On::AsDrawn, foot, SeamId::Fly);
    push(
        PieceId::Front,
        On::AsDrawn,
        fly.and_then(|_| on_fly_stitching(context)),
        SeamId::Fly,
    );
    let crotch = front.filter(|_| tack.crotch).and_then(|f| {
        let rise = f.edge(EdgeId::Crotch)?;
        Some((rise.end(), rise.end_direction()))
    });
    push(PieceId::Front, On::AsDrawn, crotch, SeamId::Inseam);
    if tack.at_coin(rivets) {
        let sides = [EdgeId::Left, EdgeId::Foot, EdgeId::Right];
        for place in ends(context, PieceId::CoinPocket, &sides, SeamId::CoinSet) {
            push(
                PieceId::CoinPocket,
                coin_on(spec),
                Some(place),
                SeamId::CoinSet,
            );
        }
    }
    let held = tack.at_back_pockets(rivets);
    for (id, on) in back_pockets().into_iter().filter(|_| held) {
        let sides = [
            EdgeId::Inner,
            EdgeId::FootInner,
            EdgeId::FootOuter,
            EdgeId::Outer,
        ];
        for place in ends(context, id, &sides, SeamId::BackPocketSet) {
            push(id, on, Some(place), SeamId::BackPocketSet);
        }
    }
    out
}

/// On the outermost row of the fly, a little above its end.
fn on_fly_stitching(context: &Context<'_>) -> Option<(Point, Vec2)> {
    let offsets = context.seam(SeamId::Fly)?.rows.iter().map(|r| r.offset);
    let line = fly_line(context.pattern, offsets.fold(Length::ZERO, Length::max))?;
    let along = line.length() - TACK_ON_FLY;
    Some((line.point_at(along), line.direction_at(along)))
}

/// At both upper corners of a patch, down along its sides between the rows.
fn ends(
    context: &Context<'_>,
    piece: PieceId,
    edges: &[EdgeId],
    seam: SeamId,
) -> Vec<(Point, Vec2)> {
    let half = context.doc.bartacks.length / 2.0;
    let Some(line) = midway(context, piece, edges, seam) else {
        return Vec::new();
    };
    [half, line.length() - half]
        .map(|along| (line.point_at(along), line.direction_at(along)))
        .into()
}

/// A place on a line, turned across it.
fn across(line: &Path, along: Length) -> (Point, Vec2) {
    (
        line.point_at(along),
        geometry::left_of(line.direction_at(along)),
    )
}

fn tacked(
    context: &Context<'_>,
    piece: PieceId,
    on: On,
    (at, along): (Point, Vec2),
    (length, seam): (Length, SeamId),
) -> Fixing {
    let tack = &context.doc.bartacks;
    Fixing {
        // A tack goes through everything, but what lies inside a pocket or under the bag is hidden.
        inside: !matches!(piece, PieceId::CoinPocket) && seam != SeamId::Mouth,
        ..fixing(
            FixingKind::Bartack(length, tack.width, tack.stitches),
            piece,
            on,
            at,
            along,
            (seam.into(), context.yarn(&tack.yarn).colour),
        )
    }
}
