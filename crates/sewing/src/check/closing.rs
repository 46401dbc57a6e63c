//! Whether buttons, buttonholes and zip fit the band and the fly.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{Closing, MeasureId, PartId, SeamId, Subject};
use trade::Length;
use trade::hardware::buttonhole_length;
use words::{Said, key, say};

use super::case::{Broken, Case, distance, place};
use crate::fixings::{BAND_HOLE_FROM_END, FLY_HOLE_FROM_EDGE, HOLE_TO_ROW, fly_eye};
use crate::garment::FixingKind;

/// Cloth between two buttons, or between a button and an edge (common practice).
const ROOM: Length = Length::mm(3.0);

/// Cloth between the end of a buttonhole and the edge it pulls towards (common practice: 1/4 inch).
const HOLE_FROM_EDGE: Length = Length::mm(6.0);

/// A hole is at least this much longer than its button is wide (common practice; 1/8 inch is usual).
const HOLE_EASE: Length = Length::mm(1.0);

/// A zip that is shorter than its fly by more than this does not open it (zips come in steps of half an inch, from memory).
const ZIP_SHORTER: Length = Length::mm(45.0);

pub(super) fn band_button(case: &Case<'_>) -> Vec<Broken> {
    let key = &case.context.doc.fly.band_button;
    let found = case.diameter(key).and_then(|size| {
        let spec = &case.context.pattern.spec;
        let needs = BAND_HOLE_FROM_END + size / 2.0 + ROOM;
        if spec[MeasureId::BandOverlap] < needs {
            return Some(
                Broken::warning(
                    PartId::BandButton,
                    say::SewingClosingBandButton {
                        band_hole_from_end: BAND_HOLE_FROM_END.in_mm(1),
                        band_overlap: spec[MeasureId::BandOverlap].in_mm(1),
                        size: size.in_mm(1),
                    },
                )
                .help(say::SewingClosingBandButtonHelp {
                    needs: needs.in_mm(1),
                }),
            );
        }
        (spec[MeasureId::BandHeight] < size + ROOM * 2.0).then(|| {
            Broken::warning(
                PartId::BandButton,
                say::SewingClosingBandButton2 {
                    band_height: spec[MeasureId::BandHeight].in_mm(1),
                    size: size.in_mm(1),
                },
            )
            .help(key::SEWING_CLOSING_BAND_BUTTON_HELP_2)
        })
    });
    let found = found.map(|b| b.at(case.fixing(key)));
    found.into_iter().collect()
}

fn button_fly(case: &Case<'_>) -> bool {
    case.context.doc.fly.closing == Closing::Buttons
}

/// The holes of a button fly end clear of the topstitching that holds their facing.
pub(super) fn holes_in_stitching(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let fly = &case.context.doc.fly;
        let size = case.diameter(fly.button.as_deref()?)?;
        let seam = case.context.seam(SeamId::Fly)?;
        let end = fly_eye(Some(seam), size) + buttonhole_length(size);
        let rows = &seam.rows;
        let (index, nearest) = rows
            .iter()
            .map(|r| r.offset)
            .enumerate()
            .filter(|(_, offset)| *offset > FLY_HOLE_FROM_EDGE)
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        (button_fly(case) && nearest - end < HOLE_TO_ROW).then(|| {
            Broken::warning(
                PartId::Fly,
                say::SewingClosingHolesInStitching {
                    end: end.in_mm(1),
                    nearest: nearest.in_mm(1),
                    wanted: HOLE_TO_ROW.in_mm(1),
                },
            )
            .help(key::SEWING_CLOSING_HOLES_IN_STITCHING_HELP)
            .at(case.row_place(SeamId::Fly, index))
        })
    };
    found().into_iter().collect()
}

pub(super) fn buttons_crowded(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let fly = &case.context.doc.fly;
        let key = fly.button.as_deref()?;
        let size = case.diameter(key)?;
        let gap = case.context.pattern.spec[MeasureId::FlyLength] / (f64::from(fly.buttons) + 1.0);
        (button_fly(case) && fly.buttons > 0 && gap < size + ROOM).then(|| {
            let (gap, size) = (gap.in_mm(1), size.in_mm(1));
            let message: Said = match fly.buttons {
                1 => say::SewingClosingButtonsCrowded { gap, size }.into(),
                buttons => say::SewingClosingButtonsCrowded2 {
                    buttons: buttons.to_string(),
                    gap,
                    size,
                }
                .into(),
            };
            Broken::warning(PartId::Fly, message)
                .help(key::SEWING_CLOSING_BUTTONS_CROWDED_HELP)
                .at(case.fixing(key))
        })
    };
    found().into_iter().collect()
}

/// The zip ends inside the tack at the foot of the fly, and opens nearly all of it.
pub(super) fn zip(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let key = case.context.doc.fly.zip.as_deref()?;
        let length = case.trim(key)?.length?;
        let fly = case.context.pattern.spec[MeasureId::FlyLength];
        let said: Said = if length > fly {
            say::SewingClosingZip {
                fly: fly.in_mm(1),
                value: length.in_mm(1),
            }
            .into()
        } else if length < fly - ZIP_SHORTER {
            say::SewingClosingZip2 {
                fly: (fly - length).in_mm(1),
                value: length.in_mm(1),
            }
            .into()
        } else {
            return None;
        };
        (!button_fly(case)).then(|| {
            Broken::warning(PartId::Zip, said)
                .help(say::SewingClosingZipHelp {
                    inches: (fly - Length::inches(0.5)).in_mm(1),
                })
                .at(case.point(PieceId::Front, PointId::FlyFoot))
        })
    };
    found().into_iter().collect()
}

/// The end of a buttonhole nearest to an edge of its piece.
pub(super) fn hole_near_end(case: &Case<'_>) -> Vec<Broken> {
    let mut out: Vec<Broken> = Vec::new();
    for fixing in case.fixings {
        let FixingKind::Buttonhole(length) = fixing.kind else {
            continue;
        };
        let Some(ground) = case.ground(fixing.piece) else {
            continue;
        };
        let half = fixing.along * (length.to_mm() / 2.0);
        let ends: [Point; 2] = [fixing.at + half, fixing.at - half];
        let room = ends
            .map(|p| distance(ground.polygon(), p))
            .into_iter()
            .fold(f64::INFINITY, f64::min);
        let about = Subject::Buttonhole(fixing.piece);
        if Length::mm(room) < HOLE_FROM_EDGE && out.iter().all(|b| b.subject != about) {
            out.push(
                Broken::warning(
                    about,
                    say::SewingClosingHoleNearEnd {
                        room: Length::mm(room).in_mm(1),
                    },
                )
                .help(say::SewingClosingHoleNearEndHelp {
                    hole_from_edge: HOLE_FROM_EDGE.in_mm(1),
                })
                .at(place(fixing.piece, fixing.at)),
            );
        }
    }
    out
}

/// Every button against the hole made for it.
pub(super) fn hole_for_button(case: &Case<'_>) -> Vec<Broken> {
    let mut out: Vec<Broken> = Vec::new();
    for fixing in case.fixings {
        let FixingKind::Buttonhole(hole) = fixing.kind else {
            continue;
        };
        let button = case.fixings.iter().find_map(|f| match f.kind {
            FixingKind::Button(size) if f.from == fixing.from => Some(size),
            _ => None,
        });
        let about = Subject::ButtonholeFor(fixing.from.code().to_owned());
        let Some(button) = button.filter(|b| hole < *b + HOLE_EASE) else {
            continue;
        };
        if out.iter().all(|b| b.subject != about) {
            out.push(
                Broken::warning(
                    about,
                    say::SewingClosingHoleForButton {
                        button: button.in_mm(1),
                        hole: hole.in_mm(1),
                    },
                )
                .help(say::SewingClosingHoleForButtonHelp {
                    button: buttonhole_length(button).in_mm(1),
                })
                .at(place(fixing.piece, fixing.at)),
            );
        }
    }
    out
}
