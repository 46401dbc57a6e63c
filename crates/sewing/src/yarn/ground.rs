//! The face of cloth a yarn lies on.

use draft::{ClothUse, PieceId};
use style::{Construction, SeamId};
use trade::colour_difference::ColourDifference;
use trade::{Colour, Length, Unwashed, ciede2000};

use super::plies::{cloth_key, cloth_of};
use super::{Item, Role};
use crate::garment::Garment;
use crate::seam::facts;

/// Colour of a cloth that is not in the collection: that of undyed paper in a plan.
const UNKNOWN: Colour = Colour::rgb(0xdd, 0xdd, 0xdd);

/// A face of cloth under rows of a group.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// Key in `cloths.toml`.
    pub cloth: String,
    /// The reverse instead of the face.
    pub reverse: bool,
    /// Its colour.
    pub colour: Colour,
    /// From the yarn's colour to it.
    pub difference: ColourDifference,
    /// How much of the group's sewing lies on it, in a pair.
    pub sewn: Unwashed<Length>,
}

/// The face an item's yarn lies on.
pub(super) fn of_item(garment: &Garment, item: &Item, role: Role, yarn: Colour) -> Ground {
    let own = cloth_of(garment, item.piece);
    let (cloth, reverse) = match role {
        Role::Needle => (own, false),
        Role::Under => below(item, own),
    };
    let key = cloth_key(garment, cloth).unwrap_or_default();
    let colour = garment.collection.cloths.get(key).map_or(UNKNOWN, |cloth| {
        if reverse {
            cloth.reverse_colour
        } else {
            cloth.colour
        }
    });
    Ground {
        cloth: key.to_owned(),
        reverse,
        colour,
        difference: ciede2000(yarn, colour),
        sewn: item.sewn_length(),
    }
}

/// What is seen below a seam: what is turned to the inside shows its face there, and so does the
/// inner half of the band; everything else its reverse.
fn below(item: &Item, own: ClothUse) -> (ClothUse, bool) {
    if item.piece == PieceId::Band && item.seam != SeamId::LoopEdge {
        return (own, false);
    }
    match item.construction {
        Some(
            Construction::RolledHem
            | Construction::FoldedHem
            | Construction::TurnedHem
            | Construction::CleanFinished,
        ) => (own, false),
        Some(Construction::TurnedEdge) if item.seam == SeamId::Fly => (own, false),
        Some(Construction::TurnedEdge) => (ClothUse::Pocketing, true),
        Some(Construction::PatchSet | Construction::LaidOn) => {
            let ground = item.seam.seam().map(|seam| facts(seam).ground());
            (ground.unwrap_or(ClothUse::Shell), true)
        }
        _ => (own, true),
    }
}
