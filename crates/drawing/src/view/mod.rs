//! The four garment views: front and back, outside and inside, drawn from the solved pieces.

mod cloth;
mod fixings;
mod ink;
pub(crate) mod roping;
mod rows;
mod scene;
mod sides;
#[cfg(test)]
mod tests;

use flat::{Hand, LaidGarment, View};
use geometry::{Affine, Point, Rect};
use sewing::{Face, Garment};
use trade::Length;

use crate::lettering::text_box;
use crate::sheet::{Layer, Sheet};
use ink::Inks;
use scene::Scene;

/// White space round the garment.
const MARGIN_MM: f64 = 25.0;

/// The garment laid flat and closed, seen from one side, true to scale, with words beside its waist
/// that say which half is the wearer's left and which the right.
///
/// The inside is the garment turned out and laid down again: left and right have changed places, every
/// panel shows its reverse, allowances lie as the construction says, bags and labels hang in place.
///
/// A garment whose panels could not be drafted gives an empty sheet with its title.
pub fn garment_view(garment: &Garment, view: View, face: Face) -> Sheet {
    drawn(garment, view, face, true)
}

/// The same without words beside it, for pictures too small to be read.
pub fn garment_picture(garment: &Garment, view: View, face: Face) -> Sheet {
    drawn(garment, view, face, false)
}

fn drawn(garment: &Garment, view: View, face: Face, told: bool) -> Sheet {
    let title = format!(
        "{} {}, {}, size {}",
        garment.doc.style.name,
        view.word(),
        match face {
            Face::Outside => "outside",
            Face::Inside => "inside, turned out",
        },
        garment.size
    );
    let Some(laid) = LaidGarment::of(garment, view, face) else {
        return Sheet {
            title,
            origin: Point::ORIGIN,
            width: Length::mm(500.0),
            height: Length::mm(1100.0),
            layers: Vec::new(),
        };
    };
    let scene = Scene {
        garment,
        view,
        face,
        inks: Inks::of(garment, face),
        laid,
    };
    let mut layers = Vec::new();
    if view == View::Front {
        layers.push(cloth::behind(&scene));
    }
    for hand in [Hand::Right, Hand::Left] {
        let panels = cloth::panels(&scene, hand);
        let rows = rows::panel_rows(&scene, hand, &panels);
        let ridges = roping::ridges(&scene, hand, &panels);
        layers.extend([panels, ridges, rows]);
    }
    layers.push(cloth::outline(&scene));
    layers.push(cloth::band(&scene));
    layers.push(rows::band_rows(&scene));
    layers.push(fixings::fixings(&scene));
    layers.push(rows::top_rows(&scene));
    layers.push(cloth::shield(&scene));
    if told {
        layers.push(sides::words(&scene));
    }
    layers.retain(|l| !l.marks.is_empty());
    on_paper(title, layers)
}

/// Turns y down and sets the sheet round what is drawn.
fn on_paper(title: String, mut layers: Vec<Layer>) -> Sheet {
    let flip = Affine::new([1.0, 0.0, 0.0, -1.0, 0.0, 0.0]);
    let mut bounds: Option<Rect> = None;
    for layer in &mut layers {
        for path in layer.paths_mut() {
            path.apply_affine(flip);
        }
        for text in layer.texts_mut() {
            text.at = flip * text.at;
        }
        if layer.clip.is_none() {
            let mut drawn: Vec<Rect> = layer.texts_mut().map(|t| text_box(t)).collect();
            drawn.extend(layer.paths_mut().map(|path| geometry::bounds(path)));
            for b in drawn {
                bounds = Some(bounds.map_or(b, |a| a.union(b)));
            }
        }
    }
    let b = bounds.unwrap_or_default().inflate(MARGIN_MM, MARGIN_MM);
    // The centre line stays in the middle, so that the pair does not move when it is turned.
    let half = b.x1.max(-b.x0);
    let b = Rect::new(-half, b.y0, half, b.y1);
    Sheet {
        title,
        origin: Point::new(b.x0, b.y0),
        width: Length::mm(b.width()),
        height: Length::mm(b.height()),
        layers,
    }
}
