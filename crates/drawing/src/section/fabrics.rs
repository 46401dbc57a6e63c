//! Which cloths meet in a seam, and what a list calls them.

use draft::{ClothUse, PieceId};
use sewing::Garment;
use style::{Seam, known};
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

/// The ply on top and the ply below.
pub(super) fn fabrics(garment: &Garment, seam: &Seam, thickened: f64) -> (Fabric, Fabric) {
    use PieceId::{Band, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing};
    let lap = seam
        .lap
        .or_else(|| known::seam_name(&seam.name).and_then(|s| s.usual_lap));
    let (over, under, pieces) = match seam.name.as_str() {
        "band" => ("waistband", "body", (Band, Front)),
        "hem" => ("leg", "leg", (Front, Front)),
        "mouth" => ("front", "pocket bag", (Front, PocketBag)),
        "fly" => ("front", "fly facing", (Front, FlyFacing)),
        "coin_hem" => ("coin pocket", "", (PocketFacing, PocketFacing)),
        "coin_set" => ("coin pocket", "facing", (PocketFacing, PocketFacing)),
        "back_pocket_hem" | "decoration" => ("back pocket", "", (Front, Front)),
        "back_pocket_set" => ("back pocket", "back", (Front, Front)),
        "facing_set" => ("facing", "pocket bag", (PocketFacing, PocketBag)),
        "bag_close" => ("pocket bag", "pocket bag", (PocketBag, PocketBag)),
        "extra_hem" => ("extra pocket", "", (ExtraPocket, ExtraPocket)),
        "extra_set" => ("extra pocket", "pocket bag", (ExtraPocket, PocketBag)),
        "loop_edge" => ("belt loop", "", (Front, Front)),
        _ => match lap {
            Some(lap) => (lap.over.word(), lap.under.word(), (Front, Front)),
            None => ("upper ply", "lower ply", (Front, Front)),
        },
    };
    (
        fabric(garment, over, pieces.0, thickened),
        fabric(garment, under, pieces.1, thickened),
    )
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
    let stated = cloth.map_or(Length::mm(0.8), |c| c.thickness).to_mm() * thickened;
    let thickness = if stated.is_finite() {
        stated.clamp(THICKNESS_MM.0, THICKNESS_MM.1)
    } else {
        THICKNESS_MM.0
    };
    Fabric {
        name: name.to_owned(),
        thickness,
        // A cloth alike on both faces still has a face: a darker line says which.
        face: cloth.map_or(INK, |c| c.colour.mixed(INK, 0.25)),
        reverse: cloth.map_or(Colour::WHITE, |c| {
            c.reverse_colour.mixed(Colour::WHITE, 0.45)
        }),
    }
}
