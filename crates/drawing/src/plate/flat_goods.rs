//! A patch or a label as it lies: its leather or cloth, the maker's lines and words on it.

use geometry::{Affine, Point, Vec2, left_of};
use sewing::{Fixing, FixingKind, Garment};
use style::Drawing;
use trade::{Colour, Length};

use super::figure::Figure;
use crate::art::{on_flat, room_for_words};
use crate::palette::{HAIRLINE, INK};
use crate::sheet::Stroke;

/// Width of a maker's line where the drawing says none, on the thing itself.
const LINE_MM: f64 = 0.8;

/// How lines and letters stand on their ground.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Standing {
    /// Flat ink.
    Printed,
    /// Sunk: the upper flank lies in shade.
    Pressed,
    /// Proud of a pressed ground: the lower flank lies in shade.
    Raised,
}

/// Size and words of a patch or label.
pub(super) fn flat_of(fixing: &Fixing) -> Option<(Length, Length, &str)> {
    match &fixing.kind {
        FixingKind::Patch(w, h, words) | FixingKind::Label(w, h, words) => Some((*w, *h, words)),
        _ => None,
    }
}

/// The maker's drawing for a patch or label.
pub(super) fn drawing_of<'a>(garment: &'a Garment, fixing: &Fixing) -> Option<&'a Drawing> {
    match &fixing.kind {
        FixingKind::Patch(..) => garment.doc.patch.as_ref()?.drawing.as_ref(),
        _ => {
            let labels = &garment.doc.labels;
            labels
                .iter()
                .find(|l| fixing.from.trim() == Some(l.trim.as_str()))?
                .drawing
                .as_ref()
        }
    }
}

/// Corners of a flat fixing mapped into the frame: lower left, lower right, upper right, upper left as it is read.
pub(super) fn corners(fixing: &Fixing, map: Affine) -> Option<[Point; 4]> {
    let (w, h, _) = flat_of(fixing)?;
    let (at, along, up) = lie(fixing, map);
    let (a, u) = (along * (w.to_mm() / 2.0), up * (h.to_mm() / 2.0));
    Some([at - a - u, at + a - u, at + a + u, at - a + u])
}

/// Middle, reading direction and upward direction in the frame.
fn lie(fixing: &Fixing, map: Affine) -> (Point, Vec2, Vec2) {
    let at = map * fixing.at;
    let along = map * (fixing.at + fixing.along) - at;
    let up = map * (fixing.at + left_of(fixing.along)) - at;
    (at, along, up)
}

/// Draws it. `upright` where it is read level on paper, so that words can be set.
pub(super) fn lay(
    figure: &mut Figure<'_>,
    fixing: &Fixing,
    map: Affine,
    standing: Standing,
    upright: bool,
) {
    let (Some((wide, tall, words)), Some(corners)) = (flat_of(fixing), corners(fixing, map)) else {
        return;
    };
    let part = format!("fixing:{}", fixing.from.code());
    let rim = Stroke::plain(INK, HAIRLINE * 1.6);
    figure.fill(&part, &corners, fixing.colour, Some(rim));
    let drawing = drawing_of(figure.garment, fixing);
    let (at, along, up) = lie(fixing, map);
    let ink = fixing.colour.mixed(
        Colour::BLACK,
        if standing == Standing::Printed {
            0.75
        } else {
            0.5
        },
    );
    let lit = fixing.colour.mixed(Colour::WHITE, 0.45);
    if let Some(drawing) = drawing {
        // Drawn in its own frame with the middle at the origin, then laid where the fixing lies.
        let lying = Affine::new([along.x, along.y, up.x, up.y, at.x, at.y]);
        let lines = on_flat(drawing, Point::ORIGIN, Vec2::new(1.0, 0.0), wide, tall);
        let width = figure.on_paper(Length::mm(LINE_MM));
        for line in lines {
            let shifted = |by: f64| {
                let mut moved = line.clone();
                moved.apply_affine(lying * Affine::translate(Vec2::new(by, -by)));
                moved
            };
            let flank = match standing {
                Standing::Printed => None,
                Standing::Pressed => Some(0.3),
                Standing::Raised => Some(-0.3),
            };
            if let Some(by) = flank {
                figure.stroke(&part, &shifted(by), Stroke::plain(lit, width));
            }
            figure.stroke(
                &part,
                &shifted(0.0),
                Stroke {
                    round: true,
                    ..Stroke::plain(ink, width)
                },
            );
        }
    }
    if upright {
        let (above, room) = room_for_words(drawing, tall);
        let middle = at + up * above.to_mm();
        let most = (
            wide * 0.86,
            room * if drawing.is_some() { 0.5 } else { 0.7 },
        );
        figure.lettering(&part, middle, words, most, ink);
    }
}
