//! Every piece as it is cut, and what a figure of the finished pair is before the wash.

use draft::{ClothUse, EaseOf, EdgeId, JOINS, Join, Pattern, Piece, PieceId};
use geometry::tolerance::NO_DIRECTION;
use geometry::{Point, Vec2};
use style::{BandCutting, Collection, MeasureId, SeamId, StyleDoc};
use trade::{Length, Share, Unwashed, Washed};

use super::behaviour::Washes;
use super::scale::{Follows, Scale, Shrinkage, scaled};

/// The most one edge can be eased onto another on the machine without tucks (common practice).
pub const MOST_EASE: Share = Share::percent(2.0);

/// A cloth sewn to shell before the wash is cut for the shell's shrinkage when the two differ by more
/// than this; less is eased (common practice).
pub const INNER_APART: Share = Share::percent(2.0);

/// Two edges that differ by less before the wash count as even: no sewer sees it, and it is within the accuracy of
/// cutting (common practice).
pub const EVEN: Length = Length::mm(0.5);

/// The way the leg hangs, in the frame of a piece that is cut along its warp.
pub(crate) const DOWN: Vec2 = Vec2::new(0.0, 1.0);

/// Across it.
pub(crate) const ACROSS: Vec2 = Vec2::new(1.0, 0.0);

/// One size before its wash, cut without regard to skew: both copies of a piece are alike.
#[derive(Clone, Debug)]
pub struct BeforeWash {
    scales: Vec<(PieceId, Scale)>,
    /// The pieces as cut, without allowances, and the chart of the unwashed pair; levels, and what the chart has no
    /// measure for, are still those of the finished pair.
    pub pattern: Pattern,
}

impl BeforeWash {
    /// The pieces of a pattern as a style has them cut.
    #[must_use]
    pub fn of(pattern: &Pattern, doc: &StyleDoc, collection: &Collection) -> BeforeWash {
        let (washes, _) = Washes::of_style(doc, collection, |_| None);
        Self::by(pattern, doc, washes)
    }

    /// The same for cloths that behave like this.
    #[must_use]
    pub fn by(pattern: &Pattern, doc: &StyleDoc, washes: Washes) -> BeforeWash {
        let mut scales: Vec<(PieceId, Scale)> = pattern
            .pieces
            .iter()
            .map(|piece| (piece.id, scale_of(washes, piece)))
            .collect();
        if let Some(scale) = band_scale(pattern, doc, washes, || grown(pattern, &scales)) {
            for entry in &mut scales {
                if entry.0 == PieceId::Band {
                    entry.1 = scale;
                }
            }
        }
        for (_, scale) in &mut scales {
            *scale = scale.about_origin();
        }
        let mut before = BeforeWash {
            pattern: grown(pattern, &scales),
            scales,
        };
        for measure in MeasureId::ALL {
            if let Some(sewn) = before.measure(pattern, measure) {
                before.pattern.spec.set(measure, sewn.figure());
            }
        }
        before
    }

    /// How a piece was made larger.
    #[must_use]
    pub fn scale(&self, piece: PieceId) -> Option<&Scale> {
        self.scales
            .iter()
            .find(|(id, _)| *id == piece)
            .map(|(_, scale)| scale)
    }

    /// A finished length that lies on a piece in a direction of its frame, before the wash. Of a piece
    /// that is not there nothing is lost.
    #[must_use]
    pub fn unwashed(
        &self,
        piece: PieceId,
        way: Vec2,
        finished: Washed<Length>,
    ) -> Unwashed<Length> {
        finished.unwashed(self.lost(piece, way))
    }

    /// How far below the band seam the row round the band begins, as it is sewn: it lies along the fly.
    #[must_use]
    pub fn start_below(&self, doc: &StyleDoc) -> Unwashed<Length> {
        self.unwashed(PieceId::Front, DOWN, Washed::new(doc.band.start_below))
    }

    /// The share of a length the wash takes in a direction of a piece's frame.
    #[must_use]
    pub fn lost(&self, piece: PieceId, way: Vec2) -> Share {
        let Some(scale) = self.scale(piece) else {
            return Share::ZERO;
        };
        let length = way.hypot();
        let grown = (scale.map * way.to_point() - scale.map * Point::ORIGIN).hypot();
        if length > NO_DIRECTION && grown > NO_DIRECTION {
            Share::ratio(1.0 - length / grown)
        } else {
            Share::ZERO
        }
    }

    /// By how much one side of a seam is cut longer than the other, and has to be stretched or eased as it is
    /// sewn: `a` less `b`; negative where `b` is the longer. None where a piece is not there.
    #[must_use]
    pub fn fuller(&self, join: &Join) -> Option<Unwashed<Length>> {
        let (a, b) = join.sides(&self.pattern)?;
        Some(Unwashed::new(a - b))
    }
}

/// How much larger a piece is cut along its own grain.
#[must_use]
pub fn scale_of(washes: Washes, piece: &Piece) -> Scale {
    let (own, shell) = (washes.of(piece.cloth), washes.of(ClothUse::Shell));
    let follows_shell =
        piece.cloth != ClothUse::Shell && own.shrinkage.apart(shell.shrinkage) > INNER_APART;
    let (shrinkage, follows) = if follows_shell {
        (shell.shrinkage, Follows::Shell)
    } else {
        (own.shrinkage, Follows::OwnCloth)
    };
    Scale::new(piece.grain, shrinkage, own.shrinkage, follows, Share::ZERO)
}

/// The pieces made larger, each by its scale.
fn grown(pattern: &Pattern, scales: &[(PieceId, Scale)]) -> Pattern {
    let pieces = pattern.pieces.iter().zip(scales);
    Pattern {
        pieces: pieces
            .map(|(piece, (_, scale))| scaled(piece, scale))
            .collect(),
        ..pattern.clone()
    }
}

/// The band in the way the style has it cut; none where it is cut along its own grain.
fn band_scale(
    pattern: &Pattern,
    doc: &StyleDoc,
    washes: Washes,
    body: impl FnOnce() -> Pattern,
) -> Option<Scale> {
    let band = pattern.piece(PieceId::Band)?;
    let shell = washes.of(ClothUse::Shell).shrinkage;
    let scale = |grain, shrinkage, cloth, follows| {
        Scale::new(grain, shrinkage, cloth, follows, Share::ZERO)
    };
    Some(match doc.cutting.band? {
        BandCutting::Weft => scale(band_grain_along_weft(band), shell, shell, Follows::OwnCloth),
        BandCutting::Preshrunk => {
            let residual = Shrinkage {
                warp: doc.cutting.residual_warp,
                weft: doc.cutting.residual_weft,
            };
            let residual = residual.checked().ok()?;
            scale(band.grain, residual, residual, Follows::Stated)
        }
        BandCutting::Eased => {
            let finished = band.edge(EdgeId::Join)?.length();
            let body = body_before(&body())? - doc.shape.band_ease;
            let cut = eased_band(finished, shell.warp, body);
            let stated = eased_shrinkage(finished, cut, shell);
            scale(band.grain, stated, shell, Follows::Stated)
        }
    })
}

/// The waist seam of the body before the wash.
fn body_before(sewn: &Pattern) -> Option<Length> {
    let band = |join: &&Join| join.seam == SeamId::Band && join.ease == EaseOf::Band;
    let (body, _) = JOINS.iter().find(band)?.sides(sewn)?;
    Some(body)
}

/// The length a band is cut along the warp, before the wash, so that a body of this length is eased onto it
/// by no more than the machine takes.
#[must_use]
pub fn eased_band(finished: Length, warp: Share, body: Length) -> Length {
    let most = body / (1.0 - MOST_EASE.to_ratio());
    let least = body / (1.0 + MOST_EASE.to_ratio());
    Washed::new(finished)
        .unwashed(warp)
        .figure()
        .max(least)
        .min(most)
}

/// The shrinkage a band of this finished length is cut for so that it is cut as long as its ease allows; along the
/// weft it is the shell's.
#[must_use]
pub fn eased_shrinkage(finished: Length, cut: Length, shell: Shrinkage) -> Shrinkage {
    let warp = Share::ratio(1.0 - finished / cut);
    Shrinkage {
        warp: if warp.is_finite() { warp } else { shell.warp },
        weft: shell.weft,
    }
}

/// The grain line of a band cut along the weft: across it, well inside.
#[must_use]
pub fn band_grain_along_weft(band: &Piece) -> (Point, Point) {
    let middle = band.grain.0.midpoint(band.grain.1);
    let (low, high) = band
        .edge(EdgeId::EndRight)
        .map_or((middle.y, middle.y), |e| (e.start().y, e.end().y));
    let at = |share: f64| Point::new(middle.x, low + (high - low) * share);
    (at(0.2), at(0.8))
}
