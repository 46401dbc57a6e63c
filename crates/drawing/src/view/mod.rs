//! The four garment views: front and back, outside and inside, drawn from the solved pieces.

mod cloth;
mod fixings;
mod ink;
mod polyline;
pub(crate) mod roping;
mod rows;
mod scene;
#[cfg(test)]
mod seen_tests;
mod shade;
mod sides;
#[cfg(test)]
mod tests;

use flat::{Hand, LaidGarment, View};
use geometry::{Affine, Point, Rect};
use sewing::{Face, Garment};
use trade::Length;
use words::{Key, Words, key, say};

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
pub fn garment_view(garment: &Garment, view: View, face: Face, words: &Words) -> Sheet {
    drawn(garment, view, face, (words, true))
}

/// The same without words beside it, for pictures too small to be read.
pub fn garment_picture(garment: &Garment, view: View, face: Face, words: &Words) -> Sheet {
    drawn(garment, view, face, (words, false))
}

const fn view_key(view: View) -> Key {
    match view {
        View::Front => key::VIEW_FRONT,
        View::Back => key::VIEW_BACK,
    }
}

const fn face_key(face: Face) -> Key {
    match face {
        Face::Outside => key::VIEW_OUTSIDE,
        Face::Inside => key::VIEW_INSIDE,
    }
}

/// `told` are the words, and whether they stand beside the garment as well.
fn drawn(garment: &Garment, view: View, face: Face, (words, told): (&Words, bool)) -> Sheet {
    let title = words.say(say::ViewTitle {
        face: face_key(face),
        size: garment.size.to_string(),
        style: garment.doc.style.name.as_str(),
        view: view_key(view),
    });
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
    // The half that is drawn first runs on under the other.
    let halves = [Hand::Right, Hand::Left].map(|hand| (hand, cloth::panels(&scene, hand)));
    let light = shade::on_body(&scene, halves.iter().map(|(_, panels)| panels));
    layers.extend(halves.iter().map(|(_, panels)| panels.clone()));
    layers.extend(light);
    for (hand, panels) in &halves {
        layers.extend([
            cloth::bag(&scene, *hand, panels),
            roping::ridges(&scene, *hand, panels),
            rows::panel_rows(&scene, *hand, panels),
        ]);
    }
    layers.push(cloth::outline(&scene));
    let band = cloth::band(&scene);
    let weave = shade::on_band(&band);
    layers.extend([band, weave]);
    layers.push(rows::band_rows(&scene));
    layers.push(fixings::fixings(&scene));
    layers.push(rows::top_rows(&scene));
    layers.push(cloth::shield(&scene));
    if told {
        layers.push(sides::words(&scene, words));
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
