//! The stitching on the back pockets: a pair of tide lines, one below the other, that rise towards
//! the outseam. The two pockets mirror each other.

use draft::Piece;
use geometry::{Path, Point, Vec2};
use style::RowSpec;

use super::Laid;
use crate::context::Context;
use crate::garment::RowEnd;
use crate::inset::{Ground, points_along};
use crate::placement::back_pockets;

/// Where the upper and the lower line run, as a share of the pocket's length below its top edge.
const DOWN: [f64; 2] = [0.40, 0.49];

/// Waves across the pocket, counted as half waves.
const HALF_WAVES: u32 = 5;

/// Height of the tallest crest, as a share of the pocket's length.
const CREST: f64 = 0.035;

/// How much higher the line ends at the outer side, as a share of the pocket's length.
const RISE: f64 = 0.06;

/// Handles of each half wave, as a share of its width: level at crest and trough.
const HANDLE: f64 = 0.4;

/// The lines on both pockets; a further row of the seam runs below the first by its offset.
pub(super) fn rows(context: &Context<'_>, spec: &RowSpec) -> Vec<Laid> {
    let mut out = Vec::new();
    for (id, on) in back_pockets() {
        let Some(piece) = context.pattern.piece(id) else {
            continue;
        };
        for (index, down) in DOWN.into_iter().enumerate() {
            let below = Vec2::new(0.0, -spec.offset.to_mm());
            out.extend(
                tide_line(piece, down, index as u32, below).map(|path| Laid {
                    piece: id,
                    on,
                    path,
                    begins: RowEnd::CaughtInSeam,
                    ends: RowEnd::CaughtInSeam,
                    outside: true,
                    inside: false,
                }),
            );
        }
    }
    out
}

/// One line from side to side. Crests grow towards the outer side; the lower line starts with a
/// trough where the upper starts with a crest.
fn tide_line(piece: &Piece, down: f64, phase: u32, below: Vec2) -> Option<Path> {
    let (outer, point) = (piece.point("top_outer")?, piece.point("point")?);
    let (width, length) = (outer.x, -point.y);
    let at = |k: u32| {
        let share = f64::from(k) / f64::from(HALF_WAVES);
        let swing = if (k + phase).is_multiple_of(2) {
            0.5
        } else {
            -0.5
        };
        let crest = CREST * (0.5 + 0.5 * share) * swing;
        Point::new(width * share, length * (RISE * share + crest - down)) + below
    };
    let reach = Vec2::new(HANDLE * width / f64::from(HALF_WAVES), 0.0);
    let waves: Vec<_> = (0..HALF_WAVES)
        .flat_map(|k| {
            let (a, b) = (at(k), at(k + 1));
            Path::cubic(a, a + reach, b - reach, b).segments().to_vec()
        })
        .collect();
    Ground::of(piece)?.clip(&points_along(&Path::new(waves))?)
}
