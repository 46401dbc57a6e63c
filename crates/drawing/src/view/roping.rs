//! The diagonal ridges of a roped hem.
//!
//! The folder rolls both layers of the hem at once and the feed takes the lower one along faster than
//! the foot lets the upper one go, so the roll is sewn twisted; washing shrinks the cloth along the
//! twist and the ridges rise (common practice). They are drawn as shaded valleys across the hem.

use draft::{EdgeId, PieceId};
use flat::{Hand, View};
use geometry::{Path, Point};
use style::{Construction, MeasureId, SeamId};
use trade::{Colour, Length};

use super::scene::Scene;
use crate::sheet::{Layer, Stroke, open};

/// From ridge to ridge along the hem (common practice: 5 to 8 mm on a hem of 12 mm).
const RIDGE: Length = Length::mm(6.5);

/// How far a valley runs along the hem while it crosses it, against the hem's depth.
const LEAN: f64 = 0.9;

/// The valleys of both panels on one half, clipped like the panels.
pub(super) fn ridges(scene: &Scene, hand: Hand, panels: &Layer) -> Layer {
    let mut layer = Layer::named("roping");
    layer.clip.clone_from(&panels.clip);
    let garment = scene.garment;
    let rolled = garment
        .seams
        .iter()
        .any(|seam| seam.id == SeamId::Hem && seam.construction == Construction::RolledHem);
    if !(garment.doc.hem.roping && rolled) {
        return layer;
    }
    let piece = match scene.view {
        View::Front => PieceId::Front,
        View::Back => PieceId::Back,
    };
    let depth = garment.pattern.spec[MeasureId::HemDepth];
    let edge = garment
        .pattern
        .piece(piece)
        .and_then(|p| p.edge(EdgeId::Hem));
    let (Some(edge), true) = (edge, depth.is_finite() && depth > Length::ZERO) else {
        return layer;
    };
    // Both legs are sewn round the same way, and a twist leans alike from wherever it is seen; only the
    // inside shows it leaning the other way.
    let toward_right = scene.face == sewing::Face::Outside;
    let colour = scene.inks.panel.mixed(Colour::BLACK, 0.35);
    let light = scene.inks.panel.mixed(Colour::WHITE, 0.22);
    let part = Some("seam:hem");
    for (line, colour, width) in valleys(edge, depth, lean(scene, piece, hand, edge, toward_right))
        .into_iter()
        .flat_map(|[dark, lit]| [(dark, colour, 1.3), (lit, light, 0.7)])
    {
        for run in scene.laid.line(piece, &line, hand) {
            let stroke = Stroke {
                round: true,
                ..Stroke::plain(colour, Length::mm(width))
            };
            layer.line(part, open(&run), stroke);
        }
    }
    layer
}

/// Forwards or backwards along the hem's own direction, so that the ridges lean to the wanted side
/// on the view.
fn lean(scene: &Scene, piece: PieceId, hand: Hand, hem: &Path, toward_right: bool) -> f64 {
    // The ends themselves may lie round the fold, on the other view.
    let inner = [0.4, 0.6].map(|share| hem.point_at(hem.length() * share));
    let [from, to] = inner.map(|p| scene.laid.point(piece, p, hand));
    let rightwards = match (from, to) {
        (Some(from), Some(to)) => to.x > from.x,
        _ => true,
    };
    if rightwards == toward_right {
        1.0
    } else {
        -1.0
    }
}

/// A shaded valley and the lit flank beside it, ridge by ridge along the hem, in the frame of its panel; `lean` is one
/// forwards along the hem, minus one backwards.
pub(crate) fn valleys(hem: &Path, depth: Length, lean: f64) -> Vec<[Vec<Point>; 2]> {
    const STEPS: u32 = 4;
    /// Leaves the fold and the row themselves clear.
    const CLEAR: f64 = 0.1;
    let count = (hem.length() / RIDGE).floor();
    if !count.is_finite() {
        return Vec::new();
    }
    let across = |start: Length| -> Vec<Point> {
        (0..=STEPS)
            .filter_map(|k| {
                let t = CLEAR + (1.0 - 2.0 * CLEAR) * f64::from(k) / f64::from(STEPS);
                // Steeper at the fold and at the row than in the middle, as a twist shows.
                let turned = t - (std::f64::consts::TAU * t).sin() / 14.0;
                let along = start + depth * (LEAN * turned * lean);
                let inside = along >= Length::ZERO && along <= hem.length();
                inside.then(|| {
                    let on = hem.point_at(along);
                    on + geometry::left_of(hem.direction_at(along)) * (depth * t).to_mm()
                })
            })
            .collect()
    };
    let most = count.min(400.0) as u32;
    (0..=most)
        .map(|k| {
            let start = RIDGE * f64::from(k);
            [across(start), across(start + RIDGE * 0.3)]
        })
        .filter(|pair| pair.iter().all(|line| line.len() > 1))
        .collect()
}
