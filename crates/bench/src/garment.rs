//! The two calls into the rooms below: work out a garment, and draw it.

use sewing::Garment;
use style::{Loaded, Size};

use crate::see::See;

/// Works out one size of a style.
pub(crate) fn evaluate(loaded: &Loaded, size: Size) -> Garment {
    sewing::make(&loaded.style, &loaded.collection, size)
}

/// A drawing, ready to be put into a page.
pub(crate) struct Picture {
    /// What it shows, in words.
    pub(crate) title: String,
    /// The drawing as SVG.
    pub(crate) svg: String,
}

/// Draws the side and face that are looked at.
pub(crate) fn picture(garment: &Garment, see: &See) -> Picture {
    let mut sheet = drawing::garment_view(garment, see.view, see.face);
    // A title inside a drawing pops up over all of it; the page says it beside the drawing instead.
    let title = std::mem::take(&mut sheet.title);
    Picture {
        title,
        svg: drawing::svg(&sheet),
    }
}
