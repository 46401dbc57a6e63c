//! The demo style, sewn, for the tests of this room.

use std::path::Path;

use cutting::{CutSize, Plan, cut};
use geometry::Rect;
use sewing::{Garment, make};
use style::{Loaded, Size};

use crate::lettering::text_box;
use crate::sheet::{Shape, Sheet, Text};

pub fn ferryman() -> Loaded {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    match style::load(&path) {
        Ok(loaded) => loaded,
        Err(report) => panic!("{report}"),
    }
}

pub fn sewn(waist: u32, length: u32) -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(waist, length))
}

/// What the demo style decides before cutting.
pub fn plan() -> Plan {
    Plan::of(&ferryman().style)
}

/// A size of the demo, cut.
pub fn cut_out(waist: u32, length: u32) -> CutSize {
    cut(&sewn(waist, length), &plan())
}

/// All words of a sheet.
pub fn texts(sheet: &Sheet) -> Vec<&Text> {
    sheet
        .layers
        .iter()
        .flat_map(|l| &l.marks)
        .filter_map(|m| match &m.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        })
        .collect()
}

/// Fails when words run off the sheet or over one another.
pub fn words_stand_clear(sheet: &Sheet) {
    let page = Rect::new(
        sheet.origin.x,
        sheet.origin.y,
        sheet.origin.x + sheet.width.to_mm(),
        sheet.origin.y + sheet.height.to_mm(),
    );
    let placed: Vec<(Rect, &str)> = texts(sheet)
        .iter()
        .map(|t| (text_box(t), t.words.as_str()))
        .collect();
    for (k, (r, words)) in placed.iter().enumerate() {
        let inside = page.union(*r) == page;
        assert!(inside, "{}: \"{words}\" runs off the sheet", sheet.title);
        for (other, more) in &placed[k + 1..] {
            // The lines of one caption stand close: their boxes may touch, not overlap by a tenth.
            let both = r.intersect(*other);
            let (wide, tall) = (both.x1 - both.x0, both.y1 - both.y0);
            let clear = wide <= 0.1 || tall <= 0.1 * r.height().min(r.width());
            assert!(clear, "{}: \"{words}\" stands on \"{more}\"", sheet.title);
        }
    }
}
