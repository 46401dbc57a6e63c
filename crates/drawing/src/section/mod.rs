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
mod look;
mod model;
mod rows;
mod scale;
mod thread;
mod words;

use geometry::Point;
use sewing::Garment;
use style::{Seam, known};
use trade::Length;

use crate::lettering::text_width;
use crate::sheet::Sheet;
use look::{LIST_LINE, Look, PLATE, THUMBNAIL};
pub use model::{End, RowOf, Section, SectionPly, SectionRow, SectionWidth};
use scale::{Scale, cut, extent};
use words::{Across, Between};

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
    let name = known::seam_name(&seam.name).map_or(seam.name.as_str(), |s| s.title);
    let section = Section {
        seam: seam.name.clone(),
        title: format!("Section of {name}, {}", seam.construction.word()),
        zero: lie.zero,
        thickened,
        plies: lie.plies,
        rows,
        widths: lie.widths,
    };
    extent(&section).map(|_| section)
}

/// The section of a seam at plate size, 130 mm wide, with its rows and plies listed below.
pub fn seam_section(garment: &Garment, seam: &Seam) -> Option<Sheet> {
    drawn(&section_of(garment, seam, 1.0)?, &PLATE)
}

/// The section of a seam for a table: 46 × 24 mm, rows numbered and dimensioned, without a list.
pub fn seam_section_thumbnail(garment: &Garment, seam: &Seam) -> Option<Sheet> {
    drawn(&section_of(garment, seam, 1.0)?, &THUMBNAIL)
}

fn drawn(section: &Section, look: &Look) -> Option<Sheet> {
    let (x0, x1, y0, y1) = extent(section)?;
    let cut = cut(section);
    let moved = Scale {
        times: 1.0,
        zero: Point::ORIGIN,
        cut,
    }
    .moved();
    let x0 = x0 + moved;
    let measures = words::measures(section);
    let list = if look.listed {
        words::lines(section, 1.0).len() as f64 * LIST_LINE + 3.0
    } else {
        0.0
    };
    // Room above for numbers and below for dimensions.
    let head = look.margin + 2.0 * look.circle + 2.2;
    let foot = 2.0 + look.level * measures.len().max(2) as f64 + look.figures.to_mm() + look.margin;
    let aside = measures
        .iter()
        .map(|m| text_width(m.words(), look.figures) + 1.0)
        .fold(0.0, f64::max);
    let room = look.width - 2.0 * look.margin;
    let times = (room / (x1 - x0))
        .min((room - aside) / -x0)
        .min((look.height - list - head - foot) / (y1 - y0))
        .min(look.most);
    let right = (x1 * times).max(aside);
    let spare = (room - (right - x0 * times)) / 2.0;
    let left = look.margin + spare;
    let tall = (y1 - y0) * times;
    let free = (look.height - list - head - foot - tall) / 2.0;
    let top = head + if look.listed { 0.0 } else { free };
    let scale = Scale {
        times,
        zero: Point::new(left - x0 * times, top + y1 * times),
        cut,
    };
    let between = Between {
        top,
        foot: top + tall,
    };
    let part = format!("seam:{}", section.seam);
    let mut layers = cloth::cloth(section, &scale, look, &part);
    layers.push(words::dimensions(section, &measures, &scale, look, between));
    layers.push(thread::threads(section, &scale, look));
    layers.push(words::numbers(section, &scale, look, between));
    let across = Across {
        left: look.margin,
        right: look.width - look.margin,
    };
    layers.push(words::sides(
        section,
        &measures,
        &scale,
        look,
        (between, across),
    ));
    layers.push(words::names(section, &measures, &scale, look, between));
    let mut height = look.height;
    if look.listed {
        layers.push(words::list(
            section,
            (look.margin, between.foot + foot + 3.0),
            times,
        ));
        height = between.foot + foot + list;
    }
    Some(Sheet {
        title: section.title.clone(),
        origin: Point::ORIGIN,
        width: Length::mm(look.width),
        height: Length::mm(height),
        layers,
    })
}
