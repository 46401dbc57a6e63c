//! Rivets, buttons and buttonholes.

use draft::{EdgeId, PieceId, PointId};
use geometry::tolerance::NO_SQUARE_MM2;
use geometry::{Point, Straight, Vec2};
use style::{Closing, MeasureId, SeamId};
use trade::Length;
use trade::hardware::{RIVET_CAPS, buttonhole_length};

use super::setting::{BAND_HOLE_FROM_END, HOLE_TO_ROW, fixing, fly_eye, midway};
use crate::context::Context;
use crate::garment::{Fixing, FixingKind, On};
use crate::placement::{back_pockets, coin_on};
use crate::rows::{fly_line, v_point};

/// From the band seam, or the outseam, to the rim of a mouth rivet (1/4 inch, from memory).
const RIVET_FROM_SEAM: Length = Length::mm(6.35);

/// From the corner of a pocket to the middle of the rivet, along and below the top edge
/// (common practice).
const CORNER_INSET_MM: f64 = 6.5;

/// From the fly edge to the teeth of a zip, so that the left front covers them (from memory).
const ZIP_FROM_EDGE_MM: f64 = 16.0;

/// Both tapes of a jeans zip (from memory).
const ZIP_WIDTH: Length = Length::mm(30.0);

/// A button where the trim does not say how large it is: 27 lignes.
const USUAL_BUTTON: Length = Length::ligne(27.0);

pub(super) fn rivets(context: &Context<'_>) -> Vec<Fixing> {
    let Some(rivets) = &context.doc.rivets else {
        return Vec::new();
    };
    let cap = diameter(context, &rivets.trim).unwrap_or(RIVET_CAPS.0);
    let rivet = |piece, on, at| Fixing {
        inside: true,
        ..fixing(
            FixingKind::Rivet(cap),
            piece,
            on,
            at,
            Vec2::new(1.0, 0.0),
            (
                rivets.trim.as_str().into(),
                context.trim_colour(&rivets.trim),
            ),
        )
    };
    let mut out = Vec::new();
    if rivets.mouth
        && let Some(line) = midway(context, PieceId::Front, &[EdgeId::Mouth], SeamId::Mouth)
    {
        let inset = RIVET_FROM_SEAM + cap / 2.0;
        for along in [inset, line.length() - inset] {
            let at = line.point_at(along);
            // Backed by the pocket bag: only the stud shows there, under the bag.
            out.push(Fixing {
                inside: false,
                ..rivet(PieceId::Front, On::Both, at)
            });
        }
    }
    let corners = |id: PieceId, from: f64, to: f64| {
        let (left, right) = (from + CORNER_INSET_MM, to - CORNER_INSET_MM);
        let there = context.pattern.piece(id).is_some() && left < right;
        let places = [left, right].map(|x| Point::new(x, -CORNER_INSET_MM));
        there.then_some(places).into_iter().flatten()
    };
    let spec = &context.pattern.spec;
    if rivets.coin {
        let half = spec[MeasureId::CoinWidth].to_mm() / 2.0;
        for at in corners(PieceId::CoinPocket, -half, half) {
            out.push(Fixing {
                inside: false,
                ..rivet(PieceId::CoinPocket, coin_on(spec), at)
            });
        }
    }
    if rivets.back_hidden {
        for (id, on) in back_pockets() {
            for at in corners(id, 0.0, spec[MeasureId::BackPocketWidth].to_mm()) {
                out.push(Fixing {
                    outside: false,
                    ..rivet(id, on, at)
                });
            }
        }
    }
    out
}

/// The band button on the right end, its buttonhole on the left end, and those of a button fly.
///
/// A buttonhole's direction points to its eye, at the edge it pulls towards; the button sits under
/// the eye when the fly is closed.
pub(super) fn buttons(context: &Context<'_>) -> Vec<Fixing> {
    let fly = &context.doc.fly;
    let sewn = context.yarn(&context.doc.bartacks.yarn).colour;
    let spec = &context.pattern.spec;
    let towards_edge = Vec2::new(-1.0, 0.0);
    let mut out = Vec::new();
    if let Some(band) = context.pattern.piece(PieceId::Band)
        && let Some(right) = band.point(PointId::CentreFrontRight)
    {
        let size = diameter(context, &fly.band_button).unwrap_or(USUAL_BUTTON);
        let hole = buttonhole_length(size);
        // The V of a row round the band points at the button; other bands hold it in their middle.
        let (eye, middle) = v_point(context).map_or(
            (
                BAND_HOLE_FROM_END.to_mm(),
                spec[MeasureId::BandHeight].to_mm() / 2.0,
            ),
            |point| (point.x - right.x, point.y),
        );
        out.push(fixing(
            FixingKind::Button(size),
            PieceId::Band,
            On::AsDrawn,
            Point::new(right.x + eye, middle),
            Vec2::new(1.0, 0.0),
            (
                fly.band_button.as_str().into(),
                context.trim_colour(&fly.band_button),
            ),
        ));
        out.push(Fixing {
            inside: true,
            ..fixing(
                FixingKind::Buttonhole(hole),
                PieceId::Band,
                On::AsDrawn,
                Point::new(eye + hole.to_mm() / 2.0, middle),
                towards_edge,
                (fly.band_button.as_str().into(), sewn),
            )
        });
    }
    match fly.closing {
        Closing::Buttons => out.extend(fly_buttons(context)),
        Closing::Zip => out.extend(zip(context)),
    }
    out
}

/// The zip on the fly facing, its teeth beside the fly edge, from the band seam down. One longer than
/// the fly is cut off at its foot.
fn zip(context: &Context<'_>) -> Option<Fixing> {
    let key = context.doc.fly.zip.as_deref()?;
    let stated = context
        .collection
        .trims
        .get(key)
        .and_then(|trim| trim.length);
    let fly = context.pattern.spec[MeasureId::FlyLength];
    let length = stated.unwrap_or(fly).min(fly);
    context.pattern.piece(PieceId::FlyFacing)?;
    let at = Point::new(ZIP_FROM_EDGE_MM, -length.to_mm() / 2.0);
    Some(Fixing {
        outside: false,
        inside: true,
        ..fixing(
            FixingKind::Zip(length, ZIP_WIDTH),
            PieceId::FlyFacing,
            On::AsDrawn,
            at,
            Vec2::new(0.0, 1.0),
            (key.into(), context.trim_colour(key)),
        )
    })
}

/// How far down the fly holes can lie: to its foot, or to where the topstitching that curves in there leaves the
/// last of them no bite.
fn room_for_holes(context: &Context<'_>, hole_ends: Length) -> Length {
    let whole = context.pattern.spec[MeasureId::FlyLength];
    let rows = context.seam(SeamId::Fly).map(|seam| &seam.rows[..]);
    let offsets = rows.unwrap_or_default().iter().map(|row| row.offset);
    let innermost = offsets
        .filter(|offset| *offset > hole_ends)
        .reduce(Length::min);
    let line = innermost.and_then(|offset| fly_line(context.pattern, offset));
    let front = context.pattern.piece(PieceId::Front);
    let edge = front.and_then(|front| front.edge(EdgeId::Fly));
    let (Some(line), Some(edge)) = (line, edge) else {
        return whole;
    };
    // A straight edge is followed by its ends alone.
    let steps = (edge.length() / FLY_STEP).ceil().clamp(1.0, MOST_STEPS) as u32;
    let at = |k: u32| edge.point_at(edge.length() * (f64::from(k) / f64::from(steps)));
    let (row, edge): (_, Vec<Point>) = (line.dense(FLY_STEP), (0..=steps).map(at).collect());
    let top = edge.iter().map(|p| p.y).fold(f64::NEG_INFINITY, f64::max);
    // A hole lies across from the edge towards the row, and ends this short of it.
    let no_bite = |p: &&Point| {
        let sides = row.windows(2);
        let far =
            sides.map(|side| Straight::between(side[0], side[1]).distance(**p, NO_SQUARE_MM2));
        let far = far.fold(Length::mm(f64::INFINITY), Length::min);
        far < hole_ends + HOLE_TO_ROW - FLATTENED
    };
    let highest = edge.iter().filter(no_bite).map(|p| p.y).reduce(f64::max);
    // Where it is nowhere clear a finding says so; the buttons stay spread over the whole fly.
    match highest {
        Some(y) if top - y > whole.to_mm() / 2.0 => (Length::mm(top - y) - ABOVE_CURVE).min(whole),
        _ => whole,
    }
}

/// Buttons spread evenly between the band seam and the foot of the fly, and no lower than their holes have a bite:
/// on the outer half of the shield, with their holes in the facing behind the left front.
fn fly_buttons(context: &Context<'_>) -> Vec<Fixing> {
    let fly = &context.doc.fly;
    let key = fly.button.as_deref().unwrap_or(&fly.band_button);
    let size = diameter(context, key).unwrap_or(USUAL_BUTTON);
    let hole = buttonhole_length(size);
    let sewn = context.yarn(&context.doc.bartacks.yarn).colour;
    let sewn_edge = context
        .pattern
        .piece(PieceId::FlyShield)
        .and_then(|shield| shield.edge(EdgeId::Left))
        .map(|edge| edge.start().x);
    let eye = fly_eye(context.seam(SeamId::Fly), size).to_mm();
    // More would not fit a fly; a file could ask for any number.
    let count = fly.buttons.min(MOST_FLY_BUTTONS);
    let evenly = context.pattern.spec[MeasureId::FlyLength].to_mm() / f64::from(count + 1);
    let room = room_for_holes(context, Length::mm(eye) + hole).to_mm();
    let gap = evenly.min(room / f64::from(count.max(1)));
    let mut out = Vec::new();
    for k in 1..=count {
        let y = -gap * f64::from(k);
        // Covered by the left front when closed: neither shows on the finished outside.
        out.extend(sewn_edge.map(|x| Fixing {
            outside: true,
            ..fixing(
                FixingKind::Button(size),
                PieceId::FlyShield,
                On::AsDrawn,
                Point::new(x + eye, y),
                Vec2::new(1.0, 0.0),
                (key.into(), context.trim_colour(key)),
            )
        }));
        out.push(Fixing {
            outside: false,
            inside: true,
            ..fixing(
                FixingKind::Buttonhole(hole),
                PieceId::FlyFacing,
                On::AsDrawn,
                Point::new(eye + hole.to_mm() / 2.0, y),
                Vec2::new(-1.0, 0.0),
                (key.into(), sewn),
            )
        });
    }
    out
}

/// A fly is looked at in no more places than this, however long a file makes it.
const MOST_STEPS: f64 = 1000.0;

/// What following two curves by points leaves between them.
const FLATTENED: Length = Length::mm(0.1);

/// The last hole lies this much above where it would just keep its bite.
const ABOVE_CURVE: Length = Length::mm(2.0);

/// How far apart the topstitching is looked at for the bite of the holes.
const FLY_STEP: Length = Length::mm(1.0);

/// As many buttons as a fly could hold edge to edge.
const MOST_FLY_BUTTONS: u32 = 12;

fn diameter(context: &Context<'_>, trim: &str) -> Option<Length> {
    context.collection.trims.get(trim)?.diameter
}
