//! The colours and line weights of a view.

use draft::ClothUse;
use sewing::{Face, Garment};
use trade::{Colour, Length};

/// Weight of a panel's edge. Heavier than any yarn is wrong, lighter vanishes at a fifth of the size.
pub(super) const EDGE: Length = Length::mm(0.45);
/// Weight of the garment's outline.
pub(super) const OUTLINE: Length = Length::mm(0.9);

/// Colours of one view.
pub(super) struct Inks {
    /// Panels as this face shows them.
    pub panel: Colour,
    /// The same where it lies behind or wraps round from the other side.
    pub panel_behind: Colour,
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
            panel_behind: panel.mixed(Colour::BLACK, 0.14),
            edge: panel.mixed(Colour::BLACK, 0.5),
            outline: panel.mixed(Colour::BLACK, 0.7),
            cloth_face: shell_face,
            cloth_reverse: shell_reverse,
            pocketing: cloth(ClothUse::Pocketing).map_or(NO_CLOTH, |c| c.colour),
            selvedge: Colour::rgb(0xf1, 0xee, 0xe4),
        }
    }
}
