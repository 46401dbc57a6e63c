//! The fly: the facing behind the left edge and the shield behind both.

use geometry::{Path, Point, Vec2};

use super::named::{at, fold, mm, outline};
use crate::piece::{ClothUse, Cut, LineId, Piece, PieceId, PointId};
use crate::spec::Spec;
use style::MeasureId;

/// How much longer the shield is than the facing, so that it covers the stitching.
const SHIELD_LONGER_MM: f64 = 15.0;

/// The far edge of the facing, from the fly foot round and up to the waist; the fly is topstitched
/// along it. Drawn with the fly edge on the y axis, the waist on the x axis.
pub(super) fn stitch_outline(spec: &Spec) -> Path {
    let (width, length) = (
        mm(spec[MeasureId::FlyWidth]),
        mm(spec[MeasureId::FlyLength]),
    );
    let turn = (1.25 * width).min(0.6 * length);
    let foot = Point::new(0.0, -length);
    let shoulder = Point::new(width, -length + turn);
    Path::cubic(
        foot,
        foot + Vec2::new(0.55 * width, 0.12 * turn),
        shoulder - Vec2::new(0.0, 0.6 * turn),
        shoulder,
    )
    .then(&Path::line(shoulder, Point::new(width, 0.0)))
}

pub(super) fn facing(spec: &Spec) -> Piece {
    let (width, length) = (
        mm(spec[MeasureId::FlyWidth]),
        mm(spec[MeasureId::FlyLength]),
    );
    let far = stitch_outline(spec);
    let turn = far.segments()[0].to_cubic().p3.y;
    let (foot, back) = (
        Path::new(far.segments()[..1].to_vec()),
        Path::new(far.segments()[1..].to_vec()),
    );
    Piece {
        id: PieceId::FlyFacing,
        cloth: ClothUse::Shell,
        // The facing looks to the inside, so it is cut mirrored. Behind it lies the strip with the holes of a
        // button fly: two plies of the same shape, one for either face (common practice). A zip needs no strip.
        cut: Cut {
            as_drawn: u32::from(spec.button_fly),
            mirrored: 1 + u32::from(spec.button_fly),
        },
        edges: outline(
            PieceId::FlyFacing,
            [
                Path::line(Point::ORIGIN, Point::new(0.0, -length)),
                foot,
                back,
                Path::line(Point::new(width, 0.0), Point::ORIGIN),
            ],
        ),
        points: vec![
            at(PointId::Top, Point::ORIGIN),
            at(PointId::Foot, Point::new(0.0, -length)),
            at(PointId::Shoulder, Point::new(width, turn)),
        ],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (
            Point::new(width / 2.0, -length * 0.65),
            Point::new(width / 2.0, -length * 0.15),
        ),
    }
}

pub(super) fn shield(spec: &Spec) -> Piece {
    // Its fold is level with the end of the band, so it is as wide as the band overlaps; never narrower than the facing.
    let width = mm(spec[MeasureId::BandOverlap]).max(mm(spec[MeasureId::FlyWidth]));
    let length = mm(spec[MeasureId::FlyLength]) + SHIELD_LONGER_MM;
    let corners = [
        Point::new(-width, 0.0),
        Point::new(-width, -length + 8.0),
        Point::new(0.0, -length),
        Point::new(width, -length + 8.0),
        Point::new(width, 0.0),
    ];
    Piece {
        id: PieceId::FlyShield,
        cloth: ClothUse::Shell,
        cut: Cut::ONE,
        edges: outline(
            PieceId::FlyShield,
            [
                Path::line(corners[0], corners[1]),
                Path::polyline(&[corners[1], corners[2], corners[3]]),
                Path::line(corners[3], corners[4]),
                Path::line(corners[4], corners[0]),
            ],
        ),
        points: vec![
            at(PointId::FoldTop, Point::ORIGIN),
            at(PointId::FoldFoot, corners[2]),
        ],
        lines: vec![fold(LineId::Fold, Point::ORIGIN, corners[2])],
        notches: Vec::new(),
        grain: (
            Point::new(width / 2.0, -length * 0.75),
            Point::new(width / 2.0, -length * 0.2),
        ),
    }
}
