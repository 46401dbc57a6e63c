//! What the needle goes through at each row and fixing.
//!
//! Common practice: counted along the seam, away from crossings, from the construction and how far
//! the allowances reach below the row. No row counts more plies than its construction has, but for the lining a back
//! pocket has caught.

use draft::{ClothUse, PieceId};
use style::{Construction, MeasureId, PatchThrough, Seam, SeamId};
use trade::{Length, StitchType};

use crate::allowance::{EDGE_MARGIN, Fell, TURNED_UNDER, allowances, turned_depth};
use crate::construct::construct;
use crate::garment::Garment;
use crate::joining::JOINING;
use crate::lining::lining_under;
use crate::seam::facts;

/// SewnThrough lying on one another.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct SewnThrough {
    /// How many of which cloth.
    pub layers: Vec<(u8, ClothUse)>,
    /// All together; a cloth that is not in the collection counts as nothing.
    pub thickness: Length,
}

impl SewnThrough {
    /// How many.
    pub fn count(&self) -> u8 {
        self.layers.iter().map(|(n, _)| *n).sum()
    }

    pub(super) fn new(garment: &Garment, layers: &[(u8, ClothUse)]) -> SewnThrough {
        let mut out = SewnThrough::default();
        for (n, cloth) in layers.iter().copied().filter(|(n, _)| *n > 0) {
            out.thickness += thickness(garment, cloth) * f64::from(n);
            match out.layers.iter_mut().find(|(_, known)| *known == cloth) {
                Some((known, _)) => *known += n,
                None => out.layers.push((n, cloth)),
            }
        }
        out
    }
}

/// The key of a cloth of the style; none where nothing is lined.
pub(super) fn cloth_key(garment: &Garment, cloth: ClothUse) -> Option<&str> {
    let refs = &garment.doc.cloth;
    match cloth {
        ClothUse::Shell => Some(&refs.shell),
        ClothUse::Pocketing => Some(&refs.pocketing),
        ClothUse::Lining => garment.doc.linings().first().copied(),
    }
}

fn thickness(garment: &Garment, cloth: ClothUse) -> Length {
    cloth_key(garment, cloth)
        .and_then(|key| garment.collection.cloths.get(key))
        .map_or(Length::ZERO, |cloth| super::countable(cloth.thickness))
}

/// What a piece is cut from; the shell where the style does not have it.
pub(super) fn cloth_of(garment: &Garment, piece: PieceId) -> ClothUse {
    garment
        .pattern
        .piece(piece)
        .map_or(ClothUse::Shell, |p| p.cloth)
}

/// The plies at a row this far from the seam line, on this piece.
pub(super) fn at_row(
    garment: &Garment,
    seam: &Seam,
    piece: PieceId,
    row: (StitchType, Length),
) -> SewnThrough {
    let mut plies = without_lining(garment, seam, piece, row);
    let lining = lining_under(&garment.doc, seam.id, piece);
    if let Some((lined, cloth)) = lining.filter(|_| row.1 <= depth_of_lining(seam)) {
        let cloth = garment.collection.cloths.get(cloth);
        let thickness = cloth.map_or(Length::ZERO, |cloth| super::countable(cloth.thickness));
        plies.thickness += thickness * f64::from(lined);
        plies.layers.push((lined, ClothUse::Lining));
    }
    plies
}

/// How far from its edge a back pocket holds the lining between its plies.
fn depth_of_lining(seam: &Seam) -> Length {
    match seam.construction {
        Construction::TurnedHem => turned_depth(seam),
        _ => allowances(seam, Length::ZERO).over,
    }
}

fn without_lining(
    garment: &Garment,
    seam: &Seam,
    piece: PieceId,
    (stitch, offset): (StitchType, Length),
) -> SewnThrough {
    let overedge = stitch.is_overedge();
    let cloth = cloth_of(garment, piece);
    let reach = allowances(seam, garment.pattern.spec[MeasureId::HemDepth]).over;
    let within = |depth: Length, plies: u8| if offset <= depth { plies } else { 1 };
    let one = |plies: u8| SewnThrough::new(garment, &[(plies, cloth)]);
    match seam.construction {
        // Facing and strip together.
        Construction::Overlocked if seam.id == SeamId::FlyEdge => one(1 + strip_plies(garment)),
        // An overedge wraps each of the two edges by itself.
        Construction::PressedOpen => one(if overedge { 1 } else { 2 }),
        Construction::LapFelled => one(in_fell(&Fell::of(seam), offset)),
        Construction::MockFelled | Construction::SafetyStitched | Construction::Overlocked => {
            one(if offset < JOINING {
                2
            } else {
                within(reach, 3)
            })
        }
        // The band and its turned edge on both faces, with the body between; above it the band alone.
        Construction::BandOverEdge => one(if offset <= reach { 5 } else { 2 }),
        // The band's two plies and its turned edge, and the body's edge up inside it.
        Construction::BandTurned => one(match offset {
            on_seam if on_seam < JOINING => 2,
            within if within <= reach => 5,
            _ => 2,
        }),
        // Both rows go through one ply of each side: the enclosed edges end before the closing row.
        Construction::FrenchSeam => one(2),
        // A bag is closed first, where a row for it is stated, and bound afterwards.
        Construction::BoundEdge if seam.id == SeamId::BagClose => {
            let closes = offset < JOINING && seam.rows.len() > 1;
            one(if closes { 2 } else { 6 })
        }
        Construction::BoundEdge => one(5),
        Construction::CleanFinished => one(within(reach, 2)),
        Construction::RolledHem => one(within(garment.pattern.spec[MeasureId::HemDepth], 3)),
        Construction::FoldedHem => {
            let depth = garment.pattern.spec[MeasureId::HemDepth];
            // Nearer to the edge than the part turned under there are only two.
            one(if offset > depth {
                1
            } else if offset >= depth - TURNED_UNDER {
                3
            } else {
                2
            })
        }
        // An overedge wraps the edge before the piece is laid on.
        Construction::LaidOn if overedge => one(1),
        Construction::LaidOn => laid_on(garment, seam),
        Construction::TurnedHem => one(within(turned_depth(seam), 3)),
        // Front and facing, each with its allowance, and behind them the strip with the holes.
        Construction::TurnedEdge
            if facts(seam.id)
                .turned
                .is_some_and(|turned| turned.faced_with == PieceId::FlyFacing) =>
        {
            if offset < JOINING {
                one(2)
            } else {
                let folded = if offset <= reach { 4 } else { 2 };
                one(folded + strip_plies(garment))
            }
        }
        Construction::TurnedEdge => SewnThrough::new(
            garment,
            &[
                (within(reach, 2), cloth),
                (within(reach, 2), ClothUse::Pocketing),
            ],
        ),
        Construction::PatchSet => SewnThrough::new(
            garment,
            &[(within(reach, 2), cloth), (1, facts(seam.id).ground())],
        ),
        Construction::Strip => one(2),
        Construction::Surface => one(1),
    }
}

/// Plies of the strip behind the fly facing that carries the buttonholes; a fly with a zip has none.
pub(crate) fn strip_plies(garment: &Garment) -> u8 {
    if garment.pattern.spec.button_fly {
        2
    } else {
        0
    }
}

/// What the row of a seam that has the most below it goes through; of a seam without rows, one along its edge.
pub(crate) fn thickest(garment: &Garment, seam: &Seam) -> SewnThrough {
    let laid = garment.rows.iter().find(|row| row.seam == seam.id);
    let piece = laid.map(|row| row.piece);
    // Rows of a seam that is laid nowhere are of the cloth the seam is mostly sewn through.
    let piece = piece.unwrap_or(match facts(seam.id).through {
        ClothUse::Pocketing => PieceId::PocketBag,
        ClothUse::Shell | ClothUse::Lining => PieceId::Front,
    });
    let rows = seam.rows.iter().map(|row| (row.stitch, row.offset));
    let places = rows.filter(|(_, offset)| offset.is_finite());
    places
        .map(|place| at_row(garment, seam, piece, place))
        .reduce(|most, other| {
            if other.thickness > most.thickness {
                other
            } else {
                most
            }
        })
        .unwrap_or_else(|| at_row(garment, seam, piece, (StitchType::S301, EDGE_MARGIN)))
}

/// What a patch, a label or a flat facing is sewn to: the facing lies on its bag, the patch goes through both plies
/// of the band or the outer one alone, a label through the inner one alone. The trim's own thickness counts where it
/// is stated.
fn laid_on(garment: &Garment, seam: &Seam) -> SewnThrough {
    if seam.id == SeamId::FacingSet {
        return SewnThrough::new(garment, &[(1, ClothUse::Shell), (1, ClothUse::Pocketing)]);
    }
    if seam.id != SeamId::PatchSet {
        return SewnThrough::new(garment, &[(1, ClothUse::Shell)]);
    }
    let patch = garment.doc.patch.as_ref();
    let mut out = SewnThrough::new(garment, &[(band_plies(garment), ClothUse::Shell)]);
    let trim = patch.and_then(|patch| garment.collection.trims.get(&patch.trim));
    out.thickness += trim
        .and_then(|trim| trim.thickness)
        .map_or(Length::ZERO, super::countable);
    out
}

/// How many plies of the band a patch is sewn through.
pub(super) fn band_plies(garment: &Garment) -> u8 {
    match garment.doc.patch.as_ref().map(|patch| patch.through) {
        Some(PatchThrough::OuterPly) => 1,
        Some(PatchThrough::WholeBand) | None => 2,
    }
}

/// Within the lap lie the ply on top and the ply below, and whichever of the two turned edges
/// reaches so far.
fn in_fell(fell: &Fell, offset: Length) -> u8 {
    if offset > fell.width {
        return 1;
    }
    2 + u8::from(offset <= fell.turn) + u8::from(offset >= fell.width - fell.turn)
}

/// The plies below the first row of a seam, where tacks on it are sewn.
pub(super) fn at_seam(garment: &Garment, seam: SeamId, piece: PieceId) -> Option<SewnThrough> {
    let seam = garment.seams.iter().find(|s| s.id == seam)?;
    let near = seam.rows.iter().map(|r| r.offset).filter(|o| o.is_finite());
    Some(match near.reduce(Length::min) {
        Some(offset) => at_row(garment, seam, piece, (StitchType::S301, offset)),
        None => SewnThrough::new(
            garment,
            &[(construct(seam.construction).plies, cloth_of(garment, piece))],
        ),
    })
}
