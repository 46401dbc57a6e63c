//! Hardware, tacks, loops, patch and labels.

use draft::PieceId;
use flat::{Half, Hand, View};
use geometry::{BezPath, Point, Vec2, left_of};
use sewing::{Face, Fixing, FixingKind};
use style::Drawing;
use trade::{Colour, Length};

use super::ink::{EDGE, OUTLINE, contrast, seen_on, woven};
use super::scene::Scene;
use crate::art::{on_flat, room_for_words};
use crate::lettering::too_small_to_read;
use crate::palette::TYPE_FIGURES;
use crate::sheet::{Anchor, Layer, Stroke, Text, circle, closed, open};

/// What differs less from the cloth has a light or dark rim, and how thick that is.
const RIM_BELOW: f64 = 1.6;
const RIM: Length = Length::mm(0.9);
/// A bartack is drawn no narrower, so that it is seen at a fifth of the size.
const LEAST_TACK: Length = Length::mm(1.8);

/// Views are printed at no larger a scale than one to this.
const PRINTED_ONE_TO: f64 = 5.0;
/// Letters smaller than this on the cloth are not even strokes on a view.
const LEAST_STROKES: Length = Length::mm(1.5);

/// Beyond the centre line by more than this, a fixing lies in the fold between the legs.
const HIDDEN_BEYOND_MM: f64 = -6.0;

/// Everything set on the side that faces the viewer.
pub(super) fn fixings(scene: &Scene) -> Layer {
    let mut layer = Layer::named("fixings");
    // Loops first: tacks and buttons lie on top of them.
    let order = |f: &&Fixing| match f.kind {
        FixingKind::Patch(..) | FixingKind::Label(..) => 0,
        FixingKind::Loop(..) => 1,
        FixingKind::Buttonhole(..) => 2,
        _ => 3,
    };
    let mut sorted: Vec<&Fixing> = scene.garment.fixings.iter().collect();
    sorted.sort_by_key(order);
    for fixing in sorted {
        let covered = match (scene.view, scene.face) {
            (View::Front, Face::Outside) => fixing.piece == PieceId::CoinPocket,
            (View::Front, Face::Inside) => {
                let hole = matches!(fixing.kind, FixingKind::Buttonhole(_));
                hole && fixing.piece == PieceId::Band && scene.laid.covered(fixing.at)
            }
            (View::Back, _) => false,
        };
        if covered || !shows(fixing, scene.face) {
            continue;
        }
        for hand in scene.laid.copies(fixing.piece, fixing.on) {
            place(scene, fixing, *hand, &mut layer);
        }
    }
    layer
}

/// Fixings of some pieces on one half, for pieces that lie partly under another.
pub(super) fn on_pieces(scene: &Scene, hand: Hand, layer: &mut Layer, pieces: &[PieceId]) {
    for fixing in &scene.garment.fixings {
        if pieces.contains(&fixing.piece)
            && shows(fixing, scene.face)
            && scene.laid.copies(fixing.piece, fixing.on).contains(&hand)
        {
            place(scene, fixing, hand, layer);
        }
    }
}

/// Labels on the inside of the back band, seen over the front waist.
pub(super) fn behind(scene: &Scene, layer: &mut Layer) {
    if scene.face == Face::Inside {
        return;
    }
    for fixing in &scene.garment.fixings {
        if fixing.piece != PieceId::Band || !fixing.inside {
            continue;
        }
        let spot = scene.laid.band(fixing.at);
        if spot.half == Half::Back && matches!(fixing.kind, FixingKind::Label(..)) {
            draw(scene, fixing, spot.at, Vec2::new(1.0, 0.0), layer);
        }
    }
}

fn shows(fixing: &Fixing, face: Face) -> bool {
    match face {
        Face::Outside => fixing.outside,
        Face::Inside => fixing.inside,
    }
}

fn place(scene: &Scene, fixing: &Fixing, hand: Hand, layer: &mut Layer) {
    let Some(at) = scene.laid.point(fixing.piece, fixing.at, hand) else {
        return;
    };
    // What is folded in between the legs is not seen.
    if fixing.piece != PieceId::Band && at.x * scene.laid.sign(hand) < HIDDEN_BEYOND_MM {
        return;
    }
    let along = scene
        .laid
        .direction(fixing.piece, fixing.at, fixing.along, hand);
    draw(scene, fixing, at, along, layer);
}

/// A rectangle about a middle, `length` along a direction.
fn block(at: Point, along: Vec2, length: Length, width: Length) -> BezPath {
    closed(&geometry::block(at, along, length, width))
}

fn draw(scene: &Scene, fixing: &Fixing, at: Point, along: Vec2, layer: &mut Layer) {
    let part = format!("fixing:{}", fixing.from.code());
    let part = Some(part.as_str());
    let colour = fixing.colour;
    let dark = colour.mixed(Colour::BLACK, 0.45);
    let light = colour.mixed(Colour::WHITE, 0.35);
    let ground = scene.inks.ground(fixing.piece, scene.face);
    // What is as dark as the cloth is told from it by its rim.
    let rim = match contrast(colour, ground) < RIM_BELOW {
        true => Stroke::plain(seen_on(colour, ground), RIM),
        false => Stroke::plain(dark, EDGE),
    };
    let thread = seen_on(colour, ground);
    match &fixing.kind {
        FixingKind::Rivet(d) => {
            layer.area(part, circle(at, *d / 2.0), colour, Some(rim));
            layer.line(part, circle(at, *d * 0.28), Stroke::plain(light, EDGE));
        }
        FixingKind::Button(d) => {
            layer.area(part, circle(at, *d / 2.0), colour, Some(rim));
            layer.line(part, circle(at, *d * 0.4), Stroke::plain(light, EDGE));
            layer.area(part, circle(at, *d * 0.12), dark, None);
        }
        FixingKind::Buttonhole(length) => {
            layer.area(
                part,
                block(at, along, *length, Length::mm(4.0)),
                thread,
                Some(rim),
            );
            let half = along * (length.to_mm() * 0.38);
            layer.line(
                part,
                open(&[at - half, at + half]),
                Stroke::plain(scene.inks.outline, Length::mm(0.8)),
            );
        }
        FixingKind::Zip(length, width) => {
            layer.area(part, block(at, along, *length, *width), light, Some(rim));
            let half = along * (length.to_mm() / 2.0);
            layer.line(
                part,
                open(&[at - half, at + half]),
                Stroke::plain(dark, Length::mm(5.0)).dashed(Length::mm(1.2), Length::mm(0.8)),
            );
        }
        FixingKind::Bartack(length, width, stitches) => {
            let half = along * (length.to_mm() / 2.0);
            let pitch = *length / f64::from((*stitches).max(1)) * 2.0;
            layer.line(
                part,
                open(&[at - half, at + half]),
                Stroke::plain(thread, (*width).max(LEAST_TACK)).dashed(pitch * 0.72, pitch * 0.28),
            );
        }
        FixingKind::Loop(length, width) => {
            let cloth = woven(scene.inks.cloth_face);
            layer.area(
                part,
                block(at, along, *length, *width),
                cloth,
                Some(Stroke::plain(scene.inks.outline, OUTLINE)),
            );
            loop_rows(scene, at, along, *length, *width, layer);
        }
        FixingKind::Patch(width, height, words) | FixingKind::Label(width, height, words) => {
            let across = if along.x < 0.0 { -along } else { along };
            layer.area(part, block(at, across, *width, *height), colour, Some(rim));
            let lying = Lying {
                at,
                across,
                width: *width,
                height: *height,
            };
            let drawing = art_of(scene, fixing);
            marked(&lying, part, (drawing, words), dark, layer);
        }
    }
}

/// The two rows of a belt loop.
fn loop_rows(
    scene: &Scene,
    at: Point,
    along: Vec2,
    length: Length,
    width: Length,
    layer: &mut Layer,
) {
    for row in scene
        .garment
        .rows
        .iter()
        .filter(|r| r.piece == PieceId::LoopStrip)
    {
        // Rows lie on the unfolded strip, whose middle is the middle of the loop.
        let across = row.path.start().x - width.to_mm();
        let middle = at + left_of(along) * across;
        let half = along * (length.to_mm() / 2.0);
        let pitch = row.density.pitch();
        layer.line(
            Some("seam:loop_edge"),
            open(&[middle - half, middle + half]),
            Stroke {
                colour: row.needle.colour,
                width: row.needle.diameter,
                dash: Some((pitch * 0.68, pitch * 0.32)),
                round: true,
            },
        );
    }
}

/// The maker's drawing for a patch or a label.
fn art_of<'a>(scene: &Scene<'a>, fixing: &Fixing) -> Option<&'a Drawing> {
    let doc = &scene.garment.doc;
    match fixing.kind {
        FixingKind::Patch(..) => doc.patch.as_ref()?.drawing.as_ref(),
        _ => {
            let label = doc
                .labels
                .iter()
                .find(|l| fixing.from.trim() == Some(l.trim.as_str()));
            label?.drawing.as_ref()
        }
    }
}

/// Where a flat fixing lies: its middle, the direction in which it is read, its size.
struct Lying {
    at: Point,
    across: Vec2,
    width: Length,
    height: Length,
}

/// The maker's lines and the words of a patch or label; words keep clear of the lines.
fn marked(
    lying: &Lying,
    part: Option<&str>,
    (drawing, words): (Option<&Drawing>, &str),
    colour: Colour,
    layer: &mut Layer,
) {
    let Lying {
        at,
        across,
        width,
        height,
    } = *lying;
    if let Some(drawing) = drawing {
        for line in on_flat(drawing, at, across, width, height) {
            layer.line(part, line, Stroke::plain(colour, Length::mm(0.8)));
        }
    }
    let (up, room) = room_for_words(drawing, height);
    let middle = at + left_of(across) * up.to_mm();
    lettering(middle, across, width, room, words, colour, layer);
}

/// Words centred on a block, as large as fits; strokes in their place where they print too small to be read.
fn lettering(
    at: Point,
    along: Vec2,
    width: Length,
    height: Length,
    words: &str,
    colour: Colour,
    layer: &mut Layer,
) {
    let count = words.chars().count().max(1) as f64;
    // Capitals of a plain face are about 0.68 of the em wide on average.
    let size = (width * (0.8 / (0.68 * count))).min(height * 0.4);
    if size >= TYPE_FIGURES * PRINTED_ONE_TO {
        let text = Text {
            at: at - left_of(along) * (size.to_mm() * 0.35),
            words: words.to_owned(),
            size,
            anchor: Anchor::Middle,
            turn_deg: -along.atan2().to_degrees(),
            colour,
            bold: false,
        };
        layer.text(None, text);
    } else if size >= LEAST_STROKES {
        let strokes = too_small_to_read(words, size, at, along);
        layer.line(None, strokes, Stroke::plain(colour, size * 0.4));
    }
}
