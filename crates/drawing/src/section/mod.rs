//! Sections: a seam seen from its cut end, as a textbook draws it but computed from the style.
//!
//! Every ply is a band as thick as its cloth, with its true allowance measured along the middle of
//! the band; folds are round turns; each row goes through exactly the plies that lie at its place.
//! Outside is up. The ply on top comes from the left, so that rows lie to the left of the seam line.

mod band;
#[cfg(test)]
mod check;
mod cloth;
mod fabrics;
mod lie;
mod list;
mod measures;
mod model;
mod names;
mod page;
mod rows;
mod scale;
mod section_size;
mod thread;

use geometry::Point;
use sewing::Garment;
use style::Seam;
use trade::Length;
use words::{Words, say};

use crate::lettering::text_width;
use crate::sheet::Sheet;
pub use model::{End, RowOf, Section, SectionPly, SectionRow, SectionWidth};
use page::Page;
use scale::{Scale, cut, extent};
use section_size::{LIST_LINE, Look, PLATE, THUMBNAIL};

/// The section of a seam as data, its cloth drawn `thickened` times as thick as it is (1 is true;
/// held between 0.2 and 2). `None` where the seam has no cloth to show.
pub fn section_of(garment: &Garment, seam: &Seam, thickened: f64) -> Option<Section> {
    let thickened = if thickened.is_finite() {
        thickened.clamp(0.2, 2.0)
    } else {
        1.0
    };
    let lie = lie::lie(garment, seam, thickened);
    let rows = rows::rows(garment, seam, &lie);
    let section = Section {
        seam: seam.id,
        title: say::SectionTitle {
            construction: seam.construction.key(),
            seam: seam.id,
        }
        .into(),
        thickened,
        plies: lie.plies,
        rows,
        widths: lie.widths,
    };
    extent(&section).map(|_| section)
}

/// The section of a seam at plate size, 130 mm wide, with its rows and plies listed below.
pub fn seam_section(garment: &Garment, seam: &Seam, words: &Words) -> Option<Sheet> {
    drawn(&section_of(garment, seam, 1.0)?, &PLATE, words)
}

/// The section of a seam for a table: 62 mm wide and as high as it needs, rows numbered and dimensioned, without a list.
pub fn seam_section_thumbnail(garment: &Garment, seam: &Seam, words: &Words) -> Option<Sheet> {
    drawn(&section_of(garment, seam, 1.0)?, &THUMBNAIL, words)
}

/// Every drawing is at least so large, however much there is to say about it.
const LEAST: f64 = 0.1;

fn drawn(section: &Section, look: &Look, words: &Words) -> Option<Sheet> {
    let (x0, x1, y0, y1) = extent(section)?;
    let cut = cut(section);
    let moved = Scale {
        times: 1.0,
        zero: Point::ORIGIN,
        cut,
    }
    .moved();
    let x0 = x0 + moved;
    let measures = measures::measures(section, look.listed, words);
    // Room above for numbers and below for dimensions.
    let head = look.margin + 2.0 * look.circle + 2.2;
    let levels = measures.len().max(2);
    let foot = 2.0 + look.level * levels as f64 + look.figures.to_mm() + look.margin;
    let aside = |m: &measures::Measure| text_width(&m.words, look.figures).to_mm() + 1.0;
    let room = look.width - 2.0 * look.margin;
    // Beside the cloth there has to be room for the words of each dimension.
    let farthest = measures.iter().map(|m| m.right()).fold(0.0, f64::max);
    let ends = |m: &measures::Measure| if m.right() > 0.0 { farthest } else { 0.0 };
    let beside = names::room_beside(section, look, words);
    let fits = measures
        .iter()
        .map(|m| (room - aside(m)) / (ends(m) - x0))
        .fold((room - beside) / (x1 - x0), f64::min);
    let times = fits.min(look.tallest / (y1 - y0)).min(look.most).max(LEAST);
    let right = measures
        .iter()
        .map(|m| ends(m) * times + aside(m))
        .fold(x1 * times + beside, f64::max);
    let spare = (room - (right - x0 * times)) / 2.0;
    let left = look.margin + spare;
    let tall = (y1 - y0) * times;
    let top = head;
    let scale = Scale {
        times,
        zero: Point::new(left - x0 * times, top + y1 * times),
        cut,
    };
    let below = top + tall;
    let bottom = below + foot;
    let mut page = Page::new((section, words), scale, look, (top, below, bottom));
    let part = format!("seam:{}", section.seam.code());
    let mut layers = cloth::cloth(section, &scale, look, &part);
    layers.push(page.dimensions(&measures));
    layers.push(thread::threads(section, &scale, look));
    layers.push(page.numbers());
    layers.push(page.sides());
    layers.push(page.names());
    let height = if look.listed {
        let lines = list::lines(section, times);
        layers.push(list::list(&lines, (look.margin, bottom + 3.0), words));
        let lines = lines.len() as f64 * LIST_LINE;
        layers.push(page.bar(bottom + 2.0 + lines));
        bottom + lines + 2.0 + look.margin
    } else {
        layers.push(page.bar(bottom - look.margin - look.figures.to_mm() / 2.0));
        bottom
    };
    Some(Sheet {
        title: words.saying(&section.title),
        origin: Point::ORIGIN,
        width: Length::mm(look.width),
        height: Length::mm(height),
        layers,
    })
}
