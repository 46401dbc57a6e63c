//! Which cloths meet in a seam, and what a list calls them.

use draft::{ClothUse, PieceId};
use sewing::Garment;
use style::{Lining, Seam, SeamId, Trim, known};
use trade::{Colour, Length};
use words::{Key, key};

use crate::palette::INK;

/// Cloth thinner or thicker than this is not drawn as stated.
const THICKNESS_MM: (f64, f64) = (0.05, 3.0);

/// A cloth as a section shows it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fabric {
    pub name: Key,
    /// As drawn, millimetres.
    pub thickness: f64,
    pub face: Colour,
    pub reverse: Colour,
}

/// What meets in a seam.
pub(super) struct Fabrics {
    pub over: Fabric,
    pub under: Fabric,
    /// Of a binding: no style states it, so it is drawn in the pocketing (common practice: a light
    /// cloth).
    pub strip: Fabric,
    /// The lining of a back pocket, in the seams that catch it.
    pub lining: Option<Fabric>,
}

/// The ply on top, the ply below, and a strip around them.
pub(super) fn fabrics(garment: &Garment, seam: &Seam, thickened: f64) -> Fabrics {
    use PieceId::{BackLiningLeft, BackLiningRight};
    use PieceId::{Band, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing};
    let lap = seam.lap.or(known::seam(seam.id).usual_lap);
    let (over, under, pieces) = match seam.id {
        SeamId::Band => (
            key::SECTION_PLY_WAISTBAND,
            key::SECTION_PLY_BODY,
            (Band, Front),
        ),
        SeamId::BandJoin => (
            key::SECTION_PLY_LEFT_HALF,
            key::SECTION_PLY_RIGHT_HALF,
            (Band, Band),
        ),
        SeamId::Hem => (key::SECTION_PLY_LEG, key::SECTION_PLY_LEG, (Front, Front)),
        SeamId::Mouth => (
            key::SECTION_PLY_FRONT,
            key::SECTION_PLY_POCKET_BAG,
            (Front, PocketBag),
        ),
        SeamId::Fly => (
            key::SECTION_PLY_FRONT,
            key::SECTION_PLY_FLY_FACING,
            (Front, FlyFacing),
        ),
        SeamId::CoinHem => (
            key::SECTION_PLY_COIN_POCKET,
            key::SECTION_PLY_COIN_POCKET,
            (PocketFacing, PocketFacing),
        ),
        SeamId::CoinSet => (
            key::SECTION_PLY_COIN_POCKET,
            key::SECTION_PLY_FACING,
            (PocketFacing, PocketFacing),
        ),
        SeamId::BackPocketHem | SeamId::Decoration => (
            key::SECTION_PLY_BACK_POCKET,
            key::SECTION_PLY_BACK_POCKET,
            (Front, Front),
        ),
        SeamId::BackPocketSet => (
            key::SECTION_PLY_BACK_POCKET,
            key::SECTION_PLY_BACK,
            (Front, Front),
        ),
        SeamId::FacingSet => (
            key::SECTION_PLY_FACING,
            key::SECTION_PLY_POCKET_BAG,
            (PocketFacing, PocketBag),
        ),
        SeamId::BagClose => (
            key::SECTION_PLY_POCKET_BAG,
            key::SECTION_PLY_POCKET_BAG,
            (PocketBag, PocketBag),
        ),
        SeamId::ExtraHem => (
            key::SECTION_PLY_EXTRA_POCKET,
            key::SECTION_PLY_EXTRA_POCKET,
            (ExtraPocket, ExtraPocket),
        ),
        SeamId::ExtraSet => (
            key::SECTION_PLY_EXTRA_POCKET,
            key::SECTION_PLY_POCKET_BAG,
            (ExtraPocket, PocketBag),
        ),
        SeamId::FlyEdge => (
            key::SECTION_PLY_FLY_FACING,
            key::SECTION_PLY_FLY_FACING,
            (FlyFacing, FlyFacing),
        ),
        SeamId::PatchSet | SeamId::LabelSet => (
            key::SECTION_PLY_WAISTBAND,
            key::SECTION_PLY_WAISTBAND,
            (Band, Band),
        ),
        SeamId::LoopEdge => (
            key::SECTION_PLY_BELT_LOOP,
            key::SECTION_PLY_BELT_LOOP,
            (Front, Front),
        ),
        SeamId::Outseam | SeamId::Inseam | SeamId::Seat | SeamId::Yoke | SeamId::FrontRise => {
            match lap {
                Some(lap) => (lap.over.key(), lap.under.key(), (Front, Front)),
                None => (
                    key::SECTION_PLY_UPPER,
                    key::SECTION_PLY_LOWER,
                    (Front, Front),
                ),
            }
        }
    };
    let over = if seam.id == SeamId::PatchSet {
        patch(garment, thickened)
    } else if seam.id == SeamId::LabelSet {
        label(garment, thickened)
    } else {
        fabric(garment, over, pieces.0, thickened)
    };
    Fabrics {
        over,
        under: fabric(garment, under, pieces.1, thickened),
        strip: fabric(garment, key::SECTION_PLY_STRIP, PocketBag, thickened),
        lining: garment.catches_lining(seam.id).then(|| {
            let back = &garment.doc.pockets.back;
            let half = [&back.left, &back.right]
                .iter()
                .any(|pocket| pocket.lining == Lining::Half);
            let name = if half {
                key::SECTION_PLY_LINING_HALF
            } else {
                key::SECTION_PLY_LINING
            };
            let lined = [BackLiningLeft, BackLiningRight].into_iter();
            let mut lined = lined.filter(|id| garment.pattern.piece(*id).is_some());
            fabric(
                garment,
                name,
                lined.next().unwrap_or(BackLiningLeft),
                thickened,
            )
        }),
    }
}

/// Leather of patches is drawn this thick where the trim does not say (common practice: 1.2 to 2 mm).
const LEATHER: Length = Length::mm(1.6);
/// Woven labels are drawn this thick (common practice).
const WOVEN: Length = Length::mm(0.25);

fn patch(garment: &Garment, thickened: f64) -> Fabric {
    let trim = garment.doc.patch.as_ref().map(|patch| patch.trim.as_str());
    let trim = trim.and_then(|key| garment.collection.trims.get(key));
    let stated = trim.and_then(|trim| trim.thickness);
    let name = if stated.is_some() {
        key::SECTION_PLY_PATCH
    } else {
        key::SECTION_PLY_PATCH_UNSTATED
    };
    laid(name, stated.unwrap_or(LEATHER), trim, thickened)
}

fn label(garment: &Garment, thickened: f64) -> Fabric {
    let trim = garment.doc.labels.first().map(|label| label.trim.as_str());
    let trim = trim.and_then(|key| garment.collection.trims.get(key));
    laid(key::SECTION_PLY_LABEL, WOVEN, trim, thickened)
}

fn laid(name: Key, thickness: Length, trim: Option<&Trim>, thickened: f64) -> Fabric {
    let colour = trim.map_or(Colour::WHITE, |trim| trim.colour);
    Fabric {
        name,
        thickness: drawable(thickness, thickened),
        face: colour.mixed(INK, 0.25),
        reverse: colour.mixed(Colour::WHITE, 0.45),
    }
}

fn drawable(thickness: Length, thickened: f64) -> f64 {
    let mm = thickness.to_mm() * thickened;
    if mm.is_finite() {
        mm.clamp(THICKNESS_MM.0, THICKNESS_MM.1)
    } else {
        THICKNESS_MM.0
    }
}

fn fabric(garment: &Garment, name: Key, piece: PieceId, thickened: f64) -> Fabric {
    let cloths = &garment.doc.cloth;
    let used = garment.pattern.piece(piece).map(|p| p.cloth);
    // A piece this style does not have is drawn in the cloth it is usually cut from.
    let usual = match piece {
        PieceId::PocketBag | PieceId::ExtraPocket => ClothUse::Pocketing,
        _ => ClothUse::Shell,
    };
    let key = match used.unwrap_or(usual) {
        ClothUse::Shell => &cloths.shell,
        ClothUse::Pocketing => &cloths.pocketing,
        ClothUse::Lining => {
            let linings = garment.doc.linings();
            linings.first().copied().unwrap_or(&cloths.pocketing)
        }
    };
    let cloth = garment.collection.cloths.get(key);
    Fabric {
        name,
        thickness: drawable(cloth.map_or(Length::mm(0.8), |c| c.thickness), thickened),
        // A cloth alike on both faces still has a face: a darker line says which.
        face: cloth.map_or(INK, |c| c.colour.mixed(INK, 0.25)),
        reverse: cloth.map_or(Colour::WHITE, |c| {
            c.reverse_colour.mixed(Colour::WHITE, 0.45)
        }),
    }
}
