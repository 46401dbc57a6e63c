//! Which piece is set on which, and how the frame of one lies in the frame of the other.

use draft::{EdgeId, LineId, Pattern, Piece, PieceId, Spec};
use geometry::{Affine, Path, Point, Vec2, left_of, unit};

use crate::garment::On;

/// A piece set on another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// The piece that is set on.
    pub piece: PieceId,
    /// The piece it lies on or behind.
    pub onto: PieceId,
    /// On which copies of `onto`. Where that is the mirrored copy, mirror after mapping.
    pub on: On,
    /// From the frame of `piece` to the frame of `onto`.
    pub map: Affine,
}

/// The back pockets and the copy of the back each is on; backs are drawn as the right.
pub(crate) fn back_pockets() -> [(PieceId, On); 2] {
    [
        (PieceId::BackPocketLeft, On::Mirrored),
        (PieceId::BackPocketRight, On::AsDrawn),
    ]
}

/// The copy of the front the coin pocket is on; fronts are drawn as the left.
pub(crate) fn coin_on(spec: &Spec) -> On {
    if spec.coin_on_right {
        On::Mirrored
    } else {
        On::AsDrawn
    }
}

/// The copy of the bag the concealed pocket is set on.
pub(crate) fn extra_on(spec: &Spec) -> On {
    match spec.extra_pocket {
        Some(extra) if !extra.on_left => On::Mirrored,
        _ => On::AsDrawn,
    }
}

/// Every piece that is set on another.
///
/// Patches and the fly facing lie where the placement lines of the pattern say; linings lie under
/// their pockets. Pocket facing and pocket bag are drawn in the frame of the front already. The
/// shield hangs on the fly edge of the right front; its frame shows the outer half, from the sewn
/// edge at the left to the fold at x = 0.
pub fn placements(pattern: &Pattern) -> Vec<Placed> {
    let spec = &pattern.spec;
    let mut out = Vec::new();
    let mut place = |piece, onto, on, map: Option<Affine>| {
        if let Some(map) = map
            && pattern.piece(piece).is_some()
        {
            out.push(Placed {
                piece,
                onto,
                on,
                map,
            });
        }
    };
    let set = |id: PieceId, edges: &[EdgeId], onto: PieceId, line: LineId| {
        let piece = pattern.piece(id)?;
        map_onto(&outline(piece, edges)?, pattern.piece(onto)?.line(line)?)
    };
    use PieceId as P;
    let here = Some(Affine::IDENTITY);
    place(P::PocketFacing, P::Front, On::Both, here);
    place(P::PocketBag, P::Front, On::Both, here);
    let coin = set(
        P::CoinPocket,
        &[EdgeId::Left, EdgeId::Foot, EdgeId::Right],
        P::PocketFacing,
        LineId::CoinPocket,
    );
    place(P::CoinPocket, P::PocketFacing, coin_on(spec), coin);
    let sides = [
        EdgeId::Inner,
        EdgeId::FootInner,
        EdgeId::FootOuter,
        EdgeId::Outer,
    ];
    for ((pocket, on), (line, lining)) in back_pockets().into_iter().zip([
        (LineId::PocketLeft, P::BackLiningLeft),
        (LineId::PocketRight, P::BackLiningRight),
    ]) {
        let map = set(pocket, &sides, P::Back, line);
        place(pocket, P::Back, on, map);
        place(lining, P::Back, on, map);
    }
    let facing = set(
        P::FlyFacing,
        &[EdgeId::Foot, EdgeId::Back],
        P::Front,
        LineId::FlyStitch,
    );
    place(P::FlyFacing, P::Front, On::AsDrawn, facing);
    place(P::FlyShield, P::Front, On::Mirrored, shield_map(pattern));
    let extra = set(
        P::ExtraPocket,
        &[EdgeId::Left, EdgeId::Foot, EdgeId::Right],
        P::PocketBag,
        LineId::ExtraPocket,
    );
    place(P::ExtraPocket, P::PocketBag, extra_on(spec), extra);
    out
}

/// The map under which a piece lies on a copy, if it is set on another at all.
pub fn placed(pattern: &Pattern, piece: PieceId) -> Option<Placed> {
    placements(pattern).into_iter().find(|p| p.piece == piece)
}

fn outline(piece: &Piece, edges: &[EdgeId]) -> Option<Path> {
    let mut edges = edges.iter().map(|id| piece.edge(*id));
    let first = edges.next()??.clone();
    edges.try_fold(first, |path, next| Some(path.then(next?)))
}

/// The turn and shift that brings the ends of `outline` onto the ends of `line`.
fn map_onto(outline: &Path, line: &Path) -> Option<Affine> {
    let (a, b) = (
        unit(outline.end() - outline.start()),
        unit(line.end() - line.start()),
    );
    let (cos, sin) = (a.dot(b), a.cross(b));
    let turn = Affine::new([cos, sin, -sin, cos, 0.0, 0.0]);
    let shift = line.start() - turn * outline.start();
    let map = Affine::translate(shift) * turn;
    map.is_finite().then_some(map)
}

/// The shield hangs on the fly edge and reaches away from the front by the width of its half.
fn shield_map(pattern: &Pattern) -> Option<Affine> {
    let fly = pattern.piece(PieceId::Front)?.edge(EdgeId::Fly)?;
    let sewn = pattern
        .piece(PieceId::FlyShield)?
        .edge(EdgeId::Left)?
        .start();
    let inward = left_of(unit(fly.start_direction()));
    let up = -unit(fly.start_direction());
    let origin: Point = fly.start() + inward * sewn.x;
    let away: Vec2 = -inward;
    let map = Affine::new([away.x, away.y, up.x, up.y, origin.x, origin.y]);
    map.is_finite().then_some(map)
}
