//! Cloth on a plate: a flat tone in the cloth's own colour, pale enough that yarns of any colour, lines
//! and figures stand on it; and the weights of the lines.

use draft::ClothUse;
use sewing::{Face, Garment};
use trade::{Colour, Length};

/// The finished or cut edge of what the plate is about: the heaviest line.
pub(super) const EDGE: Length = Length::mm(0.5);
/// Edges of what lies round it.
pub(super) const AROUND: Length = Length::mm(0.3);
/// Lines one does not see on the cloth: an edge that lies below, a seam line, a fold.
pub(super) const BELOW: Length = Length::mm(0.2);

const NO_CLOTH: Colour = Colour::rgb(0xdd, 0xdd, 0xdd);

/// The cloth of a use as one face of the garment shows it.
pub(super) fn tone(garment: &Garment, cloth: ClothUse, face: Face) -> Colour {
    let refs = &garment.doc.cloth;
    let key = match cloth {
        ClothUse::Shell => Some(&refs.shell),
        ClothUse::Pocketing => Some(&refs.pocketing),
        ClothUse::Lining => refs.lining.as_ref(),
    };
    match key {
        Some(key) => tone_of(garment, key, face),
        None => pale(NO_CLOTH),
    }
}

/// The cloth of this key as one of its faces shows it.
pub(super) fn tone_of(garment: &Garment, key: &str, face: Face) -> Colour {
    let cloth = garment.collection.cloths.get(key);
    let colour = cloth.map_or(NO_CLOTH, |c| match face {
        Face::Outside => c.colour,
        Face::Inside => c.reverse_colour,
    });
    pale(colour)
}

/// Paler the darker it is: dark cloth comes to a middle tone, pale cloth stays as it is.
pub(super) fn pale(colour: Colour) -> Colour {
    let [r, g, b] = [colour.red, colour.green, colour.blue].map(f64::from);
    let light = (0.299 * r + 0.587 * g + 0.114 * b) / 255.0;
    colour.mixed(Colour::WHITE, 0.68 * (1.0 - light).powf(0.6))
}

/// What lies round the detail, set back.
pub(super) fn set_back(tone: Colour) -> Colour {
    tone.mixed(Colour::WHITE, 0.5)
}
