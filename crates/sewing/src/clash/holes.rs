//! Buttonholes and buttons without bite.

use draft::PieceId;
use style::{PartId, Subject};
use trade::Length;
use words::say;

use super::scene::{What, meets, nearest};
use super::whereabouts::{operation, place, whereabouts};
use crate::check::case::{Broken, Case, distance};
use crate::garment::FixingKind;

/// Cloth between the end of a buttonhole and the nearest row (common practice).
const BITE: Length = Length::mm(5.0);

/// Nearer than this the hole is cut into the row, which is said as such.
const INTO_ROW_MM: f64 = 0.05;

/// From the middle of a shank button, whose nail holds 8 mm across, to the nearest edge of its ply (from memory).
const NAIL_FROM_EDGE: Length = Length::mm(9.0);

/// Buttonholes and the rows near their ends; each pair of hole and seam once.
pub(crate) fn hole_bite(case: &Case<'_>) -> Vec<Broken> {
    let (scene, pattern) = (case.scene, case.context.pattern);
    let mut out: Vec<Broken> = Vec::new();
    for hole in &scene.sewn {
        let What::Set(fixing) = hole.what else {
            continue;
        };
        let (FixingKind::Buttonhole(_), &[from, to]) = (&fixing.kind, &hole.line[..]) else {
            continue;
        };
        for sewn in &scene.sewn {
            let What::Row(row) = sewn.what else {
                continue;
            };
            let there = (hole.ground, hole.on, &hole.through[..]);
            if !meets((sewn.ground, sewn.on, &sewn.through), there) {
                continue;
            }
            let Some((at, gap)) = nearest(&sewn.line, (from, to)) else {
                continue;
            };
            let about = Subject::Buttonhole(fixing.piece);
            let known = out.iter().any(|b| b.subject == about);
            if gap >= BITE.to_mm() || gap < INTO_ROW_MM || known {
                continue;
            }
            let said = say::ClashHoleBite {
                bite: BITE.in_mm(1),
                cut: operation(scene, hole.operation),
                gap: Length::mm(gap).in_mm(1),
                now: operation(scene, sewn.operation),
                sewn: &Subject::Row(row.seam, row.number),
                where_of: whereabouts(pattern, sewn.ground, at),
            };
            out.push(
                Broken::warning(about, said)
                    .help(say::ClashHoleBiteHelp {
                        bite: BITE.in_mm(1),
                    })
                    .at(place(sewn.ground, at)),
            );
        }
    }
    out
}

/// Buttons whose nail stands too near to an edge.
pub(crate) fn button_bite(case: &Case<'_>) -> Vec<Broken> {
    let scene = case.scene;
    let mut out: Vec<Broken> = Vec::new();
    for metal in &scene.metal {
        let fixing = metal.fixing;
        let (FixingKind::Button(_), Some(ground)) = (&fixing.kind, case.ground(fixing.piece))
        else {
            continue;
        };
        let room = Length::mm(distance(ground.polygon(), fixing.at));
        let about: Subject = match fixing.piece {
            PieceId::Band => PartId::BandButton.into(),
            _ => Subject::Trim(fixing.from.code().to_owned()),
        };
        if room >= NAIL_FROM_EDGE || out.iter().any(|b| b.subject == about) {
            continue;
        }
        let said = say::ClashButtonBite {
            now: operation(scene, metal.operation),
            room: room.in_mm(1),
            where_of: whereabouts(case.context.pattern, fixing.piece, fixing.at),
        };
        out.push(
            Broken::warning(about, said)
                .help(say::ClashButtonBiteHelp {
                    least: NAIL_FROM_EDGE.in_mm(1),
                })
                .at(place(fixing.piece, fixing.at)),
        );
    }
    out
}
