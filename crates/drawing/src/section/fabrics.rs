//! Which cloths meet in a seam, and what a list calls them.

use draft::{ClothUse, PieceId};
use sewing::Garment;
use style::{Seam, SeamId, Trim, known};
use trade::{Colour, Length};

use crate::palette::INK;

/// Cloth thinner or thicker than this is not drawn as stated.
const THICKNESS_MM: (f64, f64) = (0.05, 3.0);

/// A cloth as a section shows it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Fabric {
    pub name: String,
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
}

/// The ply on top, the ply below, and a strip around them.
pub(super) fn fabrics(garment: &Garment, seam: &Seam, thickened: f64) -> Fabrics {
    use PieceId::{Band, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing};
    let lap = seam.lap.or(known::seam(seam.id).usual_lap);
    let (over, under, pieces) = match seam.id {
        SeamId::Band => ("waistband", "body", (Band, Front)),
        SeamId::Hem => ("leg", "leg", (Front, Front)),
        SeamId::Mouth => ("front", "pocket bag", (Front, PocketBag)),
        SeamId::Fly => ("front", "fly facing", (Front, FlyFacing)),
        SeamId::CoinHem => ("coin pocket", "", (PocketFacing, PocketFacing)),
        SeamId::CoinSet => ("coin pocket", "facing", (PocketFacing, PocketFacing)),
        SeamId::BackPocketHem | SeamId::Decoration => ("back pocket", "", (Front, Front)),
        SeamId::BackPocketSet => ("back pocket", "back", (Front, Front)),
        SeamId::FacingSet => ("facing", "pocket bag", (PocketFacing, PocketBag)),
        SeamId::BagClose => ("pocket bag", "pocket bag", (PocketBag, PocketBag)),
        SeamId::ExtraHem => ("extra pocket", "", (ExtraPocket, ExtraPocket)),
        SeamId::ExtraSet => ("extra pocket", "pocket bag", (ExtraPocket, PocketBag)),
        SeamId::FlyEdge => ("fly facing", "fly facing", (FlyFacing, FlyFacing)),
        SeamId::PatchSet | SeamId::LabelSet => ("", "waistband", (Band, Band)),
        SeamId::LoopEdge => ("belt loop", "", (Front, Front)),
        SeamId::Outseam | SeamId::Inseam | SeamId::Seat | SeamId::Yoke | SeamId::FrontRise => {
            match lap {
                Some(lap) => (lap.over.word(), lap.under.word(), (Front, Front)),
                None => ("upper ply", "lower ply", (Front, Front)),
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
        strip: fabric(garment, "strip", PocketBag, thickened),
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
        "patch"
    } else {
        "patch, thickness not stated"
    };
    laid(name, stated.unwrap_or(LEATHER), trim, thickened)
}

fn label(garment: &Garment, thickened: f64) -> Fabric {
    let trim = garment.doc.labels.first().map(|label| label.trim.as_str());
    let trim = trim.and_then(|key| garment.collection.trims.get(key));
    laid("label", WOVEN, trim, thickened)
}

fn laid(name: &str, thickness: Length, trim: Option<&Trim>, thickened: f64) -> Fabric {
    let colour = trim.map_or(Colour::WHITE, |trim| trim.colour);
    Fabric {
        name: name.to_owned(),
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

fn fabric(garment: &Garment, name: &str, piece: PieceId, thickened: f64) -> Fabric {
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
        ClothUse::Lining => cloths.lining.as_ref().unwrap_or(&cloths.pocketing),
    };
    let cloth = garment.collection.cloths.get(key);
    Fabric {
        name: name.to_owned(),
        thickness: drawable(cloth.map_or(Length::mm(0.8), |c| c.thickness), thickened),
        // A cloth alike on both faces still has a face: a darker line says which.
        face: cloth.map_or(INK, |c| c.colour.mixed(INK, 0.25)),
        reverse: cloth.map_or(Colour::WHITE, |c| {
            c.reverse_colour.mixed(Colour::WHITE, 0.45)
        }),
    }
}
