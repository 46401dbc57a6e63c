//! Rows of stitches, each stitch at its pitch, the yarn at its thickness and colour.

use draft::PieceId;
use flat::{Half, Hand, View};
use geometry::Point;
use sewing::{Face, RowYarn, StitchRow};
use style::SeamId;
use trade::stitch::FaceLook;
use trade::{Colour, Length};

use super::cloth::is_on;
use super::ink::seen_on;
use super::polyline::simplified;
use super::scene::Scene;
use crate::sheet::{Layer, Stroke, open};

const ROW_STEP: Length = Length::mm(3.0);
/// Yarn is drawn no thinner than this. At a fifth of the size, as the pack prints a view and a screen shows it, it is a line of
/// 0.2 mm, which is seen; on the cloth the thickest topstitch stands out about as wide with its shadow (from memory).
const LEAST_YARN: Length = Length::mm(0.95);

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
                draw(scene, row, scene.face, run, layer);
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
                    draw(scene, row, scene.face, run, &mut layer);
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
            draw(scene, row, other, run, layer);
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

fn draw(scene: &Scene, row: &StitchRow, face: Face, run: Vec<Point>, layer: &mut Layer) {
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
    let colour = seen_on(yarn.colour, scene.inks.ground(row.piece, face));
    layer.line(Some(&part), path.clone(), stroke(yarn, colour, look, pitch));
    if matches!(look, FaceLook::Chain | FaceLook::ChainAndOveredge) {
        // The gap between the two legs of each loop.
        let dark = colour.mixed(Colour::BLACK, 0.45);
        let gap = pitch * 0.5;
        layer.line(
            Some(&part),
            path,
            Stroke::plain(dark, yarn.diameter * 0.45).dashed(gap, pitch - gap),
        );
    }
}

/// Dash and thickness of one stitch.
fn stroke(yarn: &RowYarn, colour: Colour, look: FaceLook, pitch: Length) -> Stroke {
    let d = yarn.diameter.max(LEAST_YARN);
    // Two strands side by side are seen as they are.
    let chain = (yarn.diameter * 2.1).max(LEAST_YARN);
    let (width, share, round) = match look {
        // Nearly closed.
        FaceLook::Chain | FaceLook::ChainAndOveredge => (chain, 0.93, true),
        FaceLook::Zigzag | FaceLook::ZigzagChain => (Length::mm(2.0), 0.55, false),
        FaceLook::Overedge | FaceLook::OveredgeTwoRows | FaceLook::DashesAndOveredge => {
            (Length::mm(4.0), 0.22, false)
        }
        FaceLook::CoverLoops => (yarn.diameter * 3.0, 0.8, true),
        FaceLook::Dashes => (d, 0.8, true),
    };
    // A round end adds half a thickness at both ends of the dash.
    let ends = if round { width } else { Length::ZERO };
    let dash = (pitch * share - ends).max(pitch * 0.05);
    Stroke {
        colour,
        width,
        dash: Some((dash, (pitch - dash).max(Length::mm(0.01)))),
        round,
    }
}
