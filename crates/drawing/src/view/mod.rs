//! The four garment views: front and back, outside and inside, drawn from the solved pieces.

mod cloth;
mod fixings;
mod flat;
mod ink;
mod places;
mod project;
pub(crate) mod roping;
mod rows;
mod sides;
#[cfg(test)]
mod tests;

use draft::{EdgeId, PieceId};
use geometry::{Affine, BezPath, Point, Rect};
use sewing::{Face, Garment};
use trade::Length;

use crate::lettering::text_box;
use crate::sheet::{Layer, Sheet};
use flat::{Flat, Half};
use ink::Inks;
pub use places::Places;
use project::{Copy, Projector};

/// Which side of the garment faces the viewer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// The front.
    Front,
    /// The back.
    Back,
}

impl View {
    /// The word for people and for programs.
    pub const fn word(self) -> &'static str {
        match self {
            View::Front => "front",
            View::Back => "back",
        }
    }

    const fn half(self) -> Half {
        match self {
            View::Front => Half::Front,
            View::Back => Half::Back,
        }
    }
}

/// White space round the garment.
const MARGIN_MM: f64 = 25.0;

/// Everything the parts of a view need.
struct Scene<'a> {
    garment: &'a Garment,
    view: View,
    face: Face,
    flat: Flat,
    inks: Inks,
    projector: Projector,
}

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
    let Some(flat) = Flat::new(&garment.pattern) else {
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
        projector: Projector::new(garment, view, face),
        flat,
    };
    let mut layers = Vec::new();
    if view == View::Front {
        layers.push(cloth::behind(&scene));
    }
    for copy in [Copy::Right, Copy::Left] {
        let panels = cloth::panels(&scene, copy);
        let rows = rows::panel_rows(&scene, copy, &panels);
        let ridges = roping::ridges(&scene, copy, &panels);
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

impl Scene<'_> {
    /// Height at which the crotch seam reaches the centre line on this view.
    fn crotch_y(&self) -> f64 {
        let (piece, edges): (PieceId, &[EdgeId]) = match self.view {
            View::Front => (PieceId::Front, &[EdgeId::Fly, EdgeId::Crotch]),
            View::Back => (PieceId::Back, &[EdgeId::Seat]),
        };
        let Some(piece) = self.garment.pattern.piece(piece) else {
            return 0.0;
        };
        edges
            .iter()
            .filter_map(|id| piece.edge(*id))
            .flat_map(|path| path.dense(Length::mm(2.0)))
            .map(|p| match self.view {
                View::Front => self.flat.front(p).at,
                View::Back => self.flat.back_unfolded(p),
            })
            .filter(|p| p.x >= 0.0)
            .map(|p| p.y)
            .fold(f64::INFINITY, f64::min)
            .min(1e4)
    }

    /// A whole piece on this view, as a closed outline in view coordinates (y up).
    fn area(&self, piece: PieceId, points: &[Point], copy: Copy) -> BezPath {
        crate::sheet::closed(&self.projector.area(&self.flat, piece, points, copy))
    }
}
