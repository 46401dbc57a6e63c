//! The waistband and the strip the belt loops are cut from.

use geometry::{Path, Point};
use style::MeasureId;
use trade::Length;

use super::named::{at, fold, mm, outline};
use crate::block::Block;
use crate::piece::{
    ClothUse, Cut, EdgeId, LineId, NamedPoint, Notch, NotchId, Piece, PieceId, PointId,
};
use crate::spec::Spec;

/// Turned under at each end of a loop (common practice: about 1 cm).
const LOOP_TURN_MM: f64 = 12.0;

/// The front loop stands this far outside the inner end of the pocket mouth, clear of its rivet.
const FRONT_LOOP_MM: f64 = 28.0;

/// The band lies unfolded, outer face up, as one sees it walking round the body: from the left
/// centre front (x = 0) over the left side, centre back and right side to the right centre front,
/// then on into the overlap.
pub(super) fn band(spec: &Spec, block: &Block) -> Piece {
    let height = mm(spec[MeasureId::BandHeight]);
    let body = mm(block.front_waist.length() + block.yoke_top.length()) * 2.0;
    let waist = body - mm(spec.band_ease);
    let overlap = mm(spec[MeasureId::BandOverlap]);
    let end = waist + overlap;
    // Ease is spread evenly, so every landmark moves in proportion.
    let scale = waist / body;
    let front = mm(block.front_waist.length()) * scale;
    let landmarks = [
        (PointId::SideLeft, NotchId::SideLeft, front),
        (PointId::CentreBack, NotchId::CentreBack, waist / 2.0),
        (PointId::SideRight, NotchId::SideRight, waist - front),
        (PointId::CentreFrontRight, NotchId::CentreFrontRight, waist),
    ];
    let p = |x: f64, y: f64| Point::new(x, y);
    let mut points = vec![
        at(PointId::CentreFrontLeft, p(0.0, 0.0)),
        at(PointId::EndRight, p(end, 0.0)),
    ];
    points.extend(landmarks.map(|(point, _, x)| at(point, p(x, 0.0))));
    points.extend(loops(spec, front, waist, height));
    Piece {
        id: PieceId::Band,
        cloth: ClothUse::Shell,
        cut: Cut::ONE,
        notches: landmarks
            .iter()
            .map(|(_, id, x)| Notch {
                edge: EdgeId::Join,
                along: Length::mm(*x),
                id: *id,
                double: *id == NotchId::CentreBack,
            })
            .collect(),
        points,
        lines: vec![fold(LineId::Fold, p(0.0, height), p(end, height))],
        grain: (p(end * 0.35, height * 0.5), p(end * 0.65, height * 0.5)),
        edges: outline(
            PieceId::Band,
            [
                Path::line(p(0.0, 0.0), p(waist, 0.0)),
                Path::line(p(waist, 0.0), p(end, 0.0)),
                Path::line(p(end, 0.0), p(end, 2.0 * height)),
                Path::line(p(end, 2.0 * height), p(0.0, 2.0 * height)),
                Path::line(p(0.0, 2.0 * height), p(0.0, 0.0)),
            ],
        ),
    }
}

/// Where the loops sit on the band: the front pair above the inner end of the pocket mouth, the
/// others spread over the back; an odd count puts one at the centre back, an even count two beside
/// it (common practice).
fn loops(spec: &Spec, front: f64, waist: f64, height: f64) -> Vec<NamedPoint> {
    let count = (spec.loop_count as usize).min(PointId::LOOPS.len());
    let mouth = front - mm(spec[MeasureId::MouthWidth]) + FRONT_LOOP_MM;
    let centre = waist / 2.0;
    let half = count / 2;
    let mut left: Vec<f64> = Vec::new();
    if half > 0 {
        let last = if count % 2 == 1 {
            centre
        } else {
            centre - 30.0
        };
        let gaps = if count % 2 == 1 {
            half
        } else {
            half.max(2) - 1
        };
        for k in 0..half {
            left.push(mouth + (last - mouth) * k as f64 / gaps as f64);
        }
    }
    let mut all = left.clone();
    if count % 2 == 1 {
        all.push(centre);
    }
    all.extend(left.iter().rev().map(|x| waist - x));
    all.iter()
        .zip(PointId::LOOPS)
        .map(|(x, id)| at(id, Point::new(*x, height / 2.0)))
        .collect()
}

/// What a strip has beyond its loops: the folder takes it to begin with, and it is cut off (common practice).
const STRIP_END_MM: f64 = 30.0;

/// All loops in one strip; its raw edges meet in the middle of the underside.
pub(super) fn loop_strip(spec: &Spec) -> Piece {
    let width = mm(spec[MeasureId::LoopWidth]);
    let one = mm(spec[MeasureId::LoopLength]) + 2.0 * LOOP_TURN_MM;
    let length = one * f64::from(spec.loop_count.max(1)) + STRIP_END_MM;
    let p = |x: f64, y: f64| Point::new(x, y);
    Piece {
        id: PieceId::LoopStrip,
        cloth: ClothUse::Shell,
        cut: Cut::ONE,
        edges: outline(
            PieceId::LoopStrip,
            [
                Path::line(p(0.0, 0.0), p(2.0 * width, 0.0)),
                Path::line(p(2.0 * width, 0.0), p(2.0 * width, length)),
                Path::line(p(2.0 * width, length), p(0.0, length)),
                Path::line(p(0.0, length), p(0.0, 0.0)),
            ],
        ),
        points: vec![
            at(PointId::FoldLeft, p(0.5 * width, LOOP_TURN_MM)),
            at(PointId::FoldRight, p(1.5 * width, LOOP_TURN_MM)),
            at(PointId::LoopFoot, p(width, LOOP_TURN_MM)),
            at(PointId::LoopTop, p(width, one - LOOP_TURN_MM)),
        ],
        lines: vec![
            fold(
                LineId::FoldLeft,
                p(0.5 * width, 0.0),
                p(0.5 * width, length),
            ),
            fold(
                LineId::FoldRight,
                p(1.5 * width, 0.0),
                p(1.5 * width, length),
            ),
        ],
        notches: Vec::new(),
        grain: (p(width, length * 0.3), p(width, length * 0.7)),
    }
}
