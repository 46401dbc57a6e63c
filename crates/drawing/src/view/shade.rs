//! Light and shade on the cloth, and its weave: quiet enough that no line is lost in it, and gone in the colour of the cloth
//! where a pair is shown small.

use draft::PieceId;
use flat::Hand;
use geometry::tolerance::NO_LENGTH_MM;
use geometry::{BezPath, Point, Vec2, bounds};
use sewing::Face;
use trade::{Colour, Length, Share};

use super::cloth::half_outline;
use super::ink::{LIT, RIB, WEAVE};
use super::polyline::simplified;
use super::scene::Scene;
use crate::sheet::{Layer, Mark, Shape, Stroke, closed, open};

/// How far the shade of the folds reaches in, and that of the fork as a share of what lies behind its edges, from the
/// widest in: many light steps are seen as one.
const STEPS: [(Length, Share); 5] = [
    (Length::mm(20.0), Share::percent(52.0)),
    (Length::mm(13.0), Share::percent(37.0)),
    (Length::mm(8.0), Share::percent(24.0)),
    (Length::mm(4.5), Share::percent(13.0)),
    (Length::mm(2.0), Share::percent(5.0)),
];
const STEP: Share = Share::percent(4.0);
/// How far the shade of a panel's edge reaches to either side, and how dark it is.
const BESIDE_EDGE: Length = Length::mm(1.6);
const EDGE_SHADE: Share = Share::percent(14.0);

/// How steeply the ribs climb: those of a right-hand three-to-one twill, with more warp than weft to the centimetre (from
/// memory).
const CLIMB_DEG: f64 = 63.0;

/// The weave and the shade on both halves of the body, over their panels.
pub(super) fn on_body<'a>(scene: &Scene, panels: impl Iterator<Item = &'a Layer>) -> Vec<Layer> {
    let mut body = BezPath::new();
    for hand in [Hand::Right, Hand::Left] {
        body.extend(closed(&half_outline(scene, hand, 0.0)));
    }
    let edges: Vec<&BezPath> = panels
        .flat_map(|panel| &panel.marks)
        .filter_map(edge)
        .collect();
    let mut layers = vec![weave(scene.face, body.clone(), CLIMB_DEG)];
    layers.extend(STEPS.map(|step| shade(scene, &body, step)));
    let mut seams = covering(Layer::named("shade"), body, EDGE_SHADE);
    for edge in edges {
        let stroke = Stroke::plain(Colour::BLACK, BESIDE_EDGE * 2.0);
        seams.line(None, edge.clone(), stroke);
    }
    layers.push(seams);
    layers
}

/// The weave of the band, which is cut along the cloth, lies across and shows its face inside and out.
pub(super) fn on_band(band: &Layer) -> Layer {
    let mut outline = BezPath::new();
    for mark in &band.marks {
        if let Shape::Area { path, .. } = &mark.shape {
            outline.extend(path.iter());
        }
    }
    weave(Face::Outside, outline, CLIMB_DEG - 90.0)
}

/// The outline of a piece that lies on top and stands out by its thickness.
fn edge(mark: &Mark) -> Option<&BezPath> {
    let on_top = [
        PieceId::Front,
        PieceId::Back,
        PieceId::Yoke,
        PieceId::BackPocketLeft,
        PieceId::BackPocketRight,
    ];
    let piece = mark.part.as_deref()?.strip_prefix("piece:")?;
    match &mark.shape {
        Shape::Area {
            path,
            stroke: Some(_),
            ..
        } if on_top.iter().any(|id| id.code() == piece) => Some(path),
        _ => None,
    }
}

fn shade(scene: &Scene, body: &BezPath, (from_fold, from_fork): (Length, Share)) -> Layer {
    let mut layer = covering(Layer::named("shade"), body.clone(), STEP);
    let outer = scene.laid.folds().outer;
    let inner = scene.laid.inner_shade(from_fork, from_fold);
    // A line is as wide on the other side of the fold, where nothing of it is seen.
    let fold = Stroke::plain(Colour::BLACK, from_fold * 2.0);
    for hand in [Hand::Right, Hand::Left] {
        let on_view = |points: &[Point]| -> Vec<Point> {
            let points = points.iter();
            simplified(
                &points
                    .map(|p| scene.laid.mirrored(*p, hand))
                    .collect::<Vec<_>>(),
            )
        };
        layer.line(None, open(&on_view(&outer)), fold);
        layer.area(None, closed(&on_view(&inner)), Colour::BLACK, None);
    }
    layer
}

/// The ribs of a twill that climb to the right as one looks at the face of the cloth, and to the left on its reverse. All of
/// them are one line across them, as wide as the cloth, of which only the lit sides are drawn.
fn weave(face: Face, within: BezPath, climb_deg: f64) -> Layer {
    let (colour, climb) = match face {
        Face::Outside => (Colour::WHITE, climb_deg),
        Face::Inside => (Colour::BLACK, 180.0 - climb_deg),
    };
    let room = bounds(&within);
    let reach = room.width().hypot(room.height()).max(NO_LENGTH_MM);
    let across = Vec2::from_angle((climb - 90.0).to_radians()) * (reach / 2.0);
    let middle = room.center();
    let mut layer = covering(Layer::named("weave"), within, WEAVE);
    layer.line(
        None,
        open(&[middle - across, middle + across]),
        Stroke::plain(colour, Length::mm(reach)).dashed(LIT, RIB - LIT),
    );
    layer
}

fn covering(layer: Layer, within: BezPath, cover: Share) -> Layer {
    Layer {
        clip: Some(within),
        cover: Some(cover),
        ..layer
    }
}
