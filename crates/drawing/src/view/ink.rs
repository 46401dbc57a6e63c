//! The colours and line weights of a view.

use draft::{ClothUse, PieceId};
use sewing::{Face, Garment};
use trade::{Colour, Length, Share};

/// Weight of a panel's edge. Heavier than any yarn is wrong, lighter vanishes at a fifth of the size.
pub(super) const EDGE: Length = Length::mm(0.45);
/// Weight of the garment's outline.
pub(super) const OUTLINE: Length = Length::mm(0.9);

/// From rib to rib of the weave, straight across it: a denim of usual weight has about nine to the centimetre (from memory).
pub(super) const RIB: Length = Length::mm(1.1);
/// How wide the lit side of a rib is.
pub(super) const LIT: Length = Length::mm(0.5);
/// How much the lit sides veil the cloth.
pub(super) const WEAVE: Share = Share::percent(7.0);

/// A colour of cloth as it looks with its weave, for what is too small to be drawn with it.
pub(super) fn woven(colour: Colour) -> Colour {
    colour.mixed(Colour::WHITE, WEAVE.to_ratio() * (LIT / RIB))
}

/// Colours of one view.
pub(super) struct Inks {
    /// Panels as this face shows them.
    pub panel: Colour,
    /// Edges of panels.
    pub edge: Colour,
    /// The outline.
    pub outline: Colour,
    /// The face of the cloth, whichever face is shown (band inside, loops, open allowances).
    pub cloth_face: Colour,
    /// The reverse of the cloth.
    pub cloth_reverse: Colour,
    /// Pocketing.
    pub pocketing: Colour,
    /// The cloth's own finished edge.
    pub selvedge: Colour,
}

const NO_CLOTH: Colour = Colour::rgb(0xdd, 0xdd, 0xdd);

impl Inks {
    pub fn of(garment: &Garment, face: Face) -> Inks {
        let cloth = |use_: ClothUse| {
            let refs = &garment.doc.cloth;
            let key = match use_ {
                ClothUse::Shell => Some(&refs.shell),
                ClothUse::Pocketing => Some(&refs.pocketing),
                ClothUse::Lining => refs.lining.as_ref(),
            };
            key.and_then(|k| garment.collection.cloths.get(k))
        };
        let shell_face = cloth(ClothUse::Shell).map_or(NO_CLOTH, |c| c.colour);
        let shell_reverse = cloth(ClothUse::Shell).map_or(NO_CLOTH, |c| c.reverse_colour);
        let panel = match face {
            Face::Outside => shell_face,
            Face::Inside => shell_reverse,
        };
        Inks {
            panel,
            edge: panel.mixed(Colour::BLACK, 0.5),
            outline: panel.mixed(Colour::BLACK, 0.7),
            cloth_face: shell_face,
            cloth_reverse: shell_reverse,
            pocketing: cloth(ClothUse::Pocketing).map_or(NO_CLOTH, |c| c.colour),
            selvedge: Colour::rgb(0xf1, 0xee, 0xe4),
        }
    }

    /// What a row or fixing of a piece lies on.
    pub fn ground(&self, piece: PieceId, face: Face) -> Colour {
        match (piece, face) {
            (PieceId::PocketBag | PieceId::BackLiningLeft | PieceId::BackLiningRight, _)
            // Turned out, the bag hangs before the facing that is sewn on it.
            | (PieceId::PocketFacing | PieceId::CoinPocket | PieceId::ExtraPocket, Face::Inside) => self.pocketing,
            // Folded along its length, the band shows the face of the cloth on both sides.
            (PieceId::Band | PieceId::LoopStrip | PieceId::FlyShield, _) | (_, Face::Outside) => {
                self.cloth_face
            }
            (_, Face::Inside) => self.cloth_reverse,
        }
    }
}

/// Two colours whose contrast is less are hard to tell apart in a line as thin as a row at a fifth of the size; half of what
/// large letters need (WCAG 2.2, 1.4.3 and 1.4.11 ask 3 to 1 of them).
const LEAST_CONTRAST: f64 = 1.6;

/// A colour that is seen on a ground: itself, or as much lighter or darker as it takes.
pub(super) fn seen_on(colour: Colour, ground: Colour) -> Colour {
    const STEPS: u32 = 20;
    let away = if luminance(ground) < 0.18 {
        Colour::WHITE
    } else {
        Colour::BLACK
    };
    (0..=STEPS)
        .map(|k| colour.mixed(away, f64::from(k) / f64::from(STEPS)))
        .find(|mixed| contrast(*mixed, ground) >= LEAST_CONTRAST)
        .unwrap_or(away)
}

/// The contrast ratio of WCAG 2.2, from 1 to 21.
pub(super) fn contrast(a: Colour, b: Colour) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// Relative luminance of WCAG 2.2, from 0 to 1.
fn luminance(colour: Colour) -> f64 {
    let linear = |channel: u8| {
        let c = f64::from(channel) / 255.0;
        if c <= 0.04045 {
            c / 12.92
        } else {
            ((c + 0.055) / 1.055).powf(2.4)
        }
    };
    0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue)
}
