//! Rows of stitches, each stitch at its pitch, the yarn at its thickness and colour.

use draft::PieceId;
use flat::{Half, Hand, View};
use geometry::Point;
use geometry::tolerance::NO_LENGTH_MM;
use sewing::{Face, RowYarn, StitchRow};
use style::SeamId;
use trade::stitch::FaceLook;
use trade::{Colour, Length};

use super::cloth::is_on;
use super::scene::Scene;
use crate::sheet::{Layer, Stroke, open};

const ROW_STEP: Length = Length::mm(3.0);
/// How far a simplified row may stray: a tenth of a yarn.
const ROW_TOLERANCE_MM: f64 = 0.04;

/// Rows on the panels of one half, clipped like the panels.
pub(super) fn panel_rows(scene: &Scene, hand: Hand, panels: &Layer) -> Layer {
    let mut layer = Layer::named("rows");
    layer.clip.clone_from(&panels.clip);
    let hidden_under_front = |piece: PieceId| {
        scene.view == View::Front
            && scene.face == Face::Outside
            && matches!(
                piece,
                PieceId::CoinPocket
                    | PieceId::PocketFacing
                    | PieceId::PocketBag
                    | PieceId::ExtraPocket
            )
    };
    let pieces: Vec<PieceId> = PieceId::ALL
        .into_iter()
        .filter(|p| !matches!(p, PieceId::Band | PieceId::LoopStrip | PieceId::FlyShield))
        .filter(|p| !hidden_under_front(*p))
        .collect();
    piece_rows(scene, hand, &mut layer, &pieces);
    layer
}

/// Rows of the given pieces on one half.
pub(super) fn piece_rows(scene: &Scene, hand: Hand, layer: &mut Layer, pieces: &[PieceId]) {
    for row in &scene.garment.rows {
        if pieces.contains(&row.piece)
            && shows(row, scene.face)
            && !drawn_on_its_edge(scene, row)
            && is_on(scene, row.piece, row.on, hand)
        {
            let points = dense_line(row);
            for run in scene.laid.line(row.piece, &points, hand) {
                draw(row, scene.face, run, layer);
            }
        }
    }
}

/// An overedge alone lies on the edge of the allowance, not on the seam line, and is drawn there.
fn drawn_on_its_edge(scene: &Scene, row: &StitchRow) -> bool {
    let alone = row.stitch.looks().under_face == FaceLook::Overedge;
    let laps = &scene.garment.laps;
    alone && laps.iter().any(|lap| lap.seam() == Some(row.seam))
}

/// Rows that hold what lies on top of the band: they are drawn on it.
fn on_top(row: &StitchRow) -> bool {
    matches!(row.seam, SeamId::PatchSet | SeamId::LabelSet)
}

/// Rows on the band; those of patch and labels where they are not seen on what they hold.
pub(super) fn band_rows(scene: &Scene) -> Layer {
    rows_on_band(scene, |row| {
        !on_top(row) || scene.face == Face::Inside && row.shows_outside
    })
}

/// The rows of patch and labels, on top of them.
pub(super) fn top_rows(scene: &Scene) -> Layer {
    rows_on_band(scene, |row| {
        on_top(row) && (scene.face == Face::Outside || !row.shows_outside)
    })
}

fn rows_on_band(scene: &Scene, wanted: impl Fn(&StitchRow) -> bool) -> Layer {
    let mut layer = Layer::named("rows");
    for row in &scene.garment.rows {
        if row.piece == PieceId::Band && shows(row, scene.face) && wanted(row) {
            let points = dense_line(row);
            for points in points.split(|p| scene.laid.covered(*p)) {
                for run in scene.laid.line(row.piece, points, Hand::Left) {
                    draw(row, scene.face, run, &mut layer);
                }
            }
        }
    }
    layer
}

/// The rows of the back band as one sees them over the front waist, from inside.
pub(super) fn behind_rows(scene: &Scene, layer: &mut Layer) {
    let other = match scene.face {
        Face::Outside => Face::Inside,
        Face::Inside => Face::Outside,
    };
    for row in &scene.garment.rows {
        if row.piece != PieceId::Band || !shows(row, other) {
            continue;
        }
        let run: Vec<Point> = dense_line(row)
            .into_iter()
            .map(|p| scene.laid.band(p))
            .filter(|spot| spot.half == Half::Back)
            .map(|spot| spot.at)
            .collect();
        if run.len() > 1 {
            draw(row, other, run, layer);
        }
    }
}

/// Straight rows need points in between: what is straight on a piece may be bent on the view.
fn dense_line(row: &StitchRow) -> Vec<Point> {
    geometry::resample(&row.path.dense(ROW_STEP), ROW_STEP)
}

fn shows(row: &StitchRow, face: Face) -> bool {
    match face {
        Face::Outside => row.shows_outside,
        Face::Inside => row.shows_inside,
    }
}

fn draw(row: &StitchRow, face: Face, run: Vec<Point>, layer: &mut Layer) {
    let (yarn, look) = match face {
        Face::Outside => (&row.needle, row.stitch.looks().needle_face),
        // A label is sewn from the side it is read on.
        Face::Inside if !row.shows_outside && on_top(row) => {
            (&row.needle, row.stitch.looks().needle_face)
        }
        Face::Inside => (&row.under, row.stitch.looks().under_face),
    };
    let part = format!("seam:{}", row.seam.code());
    let path = open(&simplified(&run));
    let pitch = row.density.pitch();
    layer.line(Some(&part), path.clone(), stroke(yarn, look, pitch));
    if matches!(look, FaceLook::Chain | FaceLook::ChainAndOveredge) {
        // The gap between the two legs of each loop.
        let dark = yarn.colour.mixed(Colour::BLACK, 0.45);
        let gap = pitch * 0.5;
        layer.line(
            Some(&part),
            path,
            Stroke::plain(dark, yarn.diameter * 0.45).dashed(gap, pitch - gap),
        );
    }
}

/// Dash and thickness of one stitch.
fn stroke(yarn: &RowYarn, look: FaceLook, pitch: Length) -> Stroke {
    let d = yarn.diameter;
    let (width, share, round) = match look {
        // Two strands side by side, nearly closed.
        FaceLook::Chain | FaceLook::ChainAndOveredge => (d * 2.1, 0.93, true),
        FaceLook::Zigzag | FaceLook::ZigzagChain => (Length::mm(2.0), 0.55, false),
        FaceLook::Overedge | FaceLook::OveredgeTwoRows | FaceLook::DashesAndOveredge => {
            (Length::mm(4.0), 0.22, false)
        }
        FaceLook::CoverLoops => (d * 3.0, 0.8, true),
        FaceLook::Dashes => (d, 0.8, true),
    };
    // A round end adds half a thickness at both ends of the dash.
    let ends = if round { width } else { Length::ZERO };
    let dash = (pitch * share - ends).max(pitch * 0.05);
    Stroke {
        colour: yarn.colour,
        width,
        dash: Some((dash, (pitch - dash).max(Length::mm(0.01)))),
        round,
    }
}

/// Leaves out points that lie within the tolerance of the line between their neighbours
/// (Douglas–Peucker), so that a straight row is two points.
fn simplified(points: &[Point]) -> Vec<Point> {
    let n = points.len();
    if n < 3 {
        return points.to_vec();
    }
    let mut keep = vec![false; n];
    keep[0] = true;
    keep[n - 1] = true;
    let mut stack = vec![(0, n - 1)];
    while let Some((a, b)) = stack.pop() {
        let (p, q) = (points[a], points[b]);
        let along = q - p;
        let length = along.hypot();
        let mut worst = (0.0, a);
        for (k, r) in points.iter().enumerate().take(b).skip(a + 1) {
            let off = if length > NO_LENGTH_MM {
                (along.cross(*r - p) / length).abs()
            } else {
                (*r - p).hypot()
            };
            if off > worst.0 {
                worst = (off, k);
            }
        }
        if worst.0 > ROW_TOLERANCE_MM {
            keep[worst.1] = true;
            stack.push((a, worst.1));
            stack.push((worst.1, b));
        }
    }
    points
        .iter()
        .zip(keep)
        .filter_map(|(p, k)| k.then_some(*p))
        .collect()
}
