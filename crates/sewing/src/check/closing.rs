//! Whether buttons, buttonholes and zip fit the band and the fly.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{Closing, MeasureId, PartId, SeamId, Subject};
use trade::Length;
use trade::hardware::buttonhole_length;

use super::case::{Broken, Case, distance, place};
use crate::context::mm;
use crate::fixings::{BAND_HOLE_FROM_END, FLY_HOLE_FROM_EDGE};
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
                    format!(
                        "the overlap of {} is too short for a button of {} set {} beyond the centre front",
                        mm(spec[MeasureId::BandOverlap]),
                        mm(size),
                        mm(BAND_HOLE_FROM_END)
                    ),
                )
                .help(format!("at least {}", mm(needs))),
            );
        }
        (spec[MeasureId::BandHeight] < size + ROOM * 2.0).then(|| {
            Broken::warning(
                PartId::BandButton,
                format!(
                    "a band of {} leaves no room above and below a button of {}",
                    mm(spec[MeasureId::BandHeight]),
                    mm(size)
                ),
            )
            .help("a smaller button, or a higher band")
        })
    });
    let found = found.map(|b| b.at(case.fixing(key)));
    found.into_iter().collect()
}

fn button_fly(case: &Case<'_>) -> bool {
    case.context.doc.fly.closing == Closing::Buttons
}

/// The holes of a button fly end before the topstitching that holds their facing.
pub(super) fn holes_in_stitching(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let fly = &case.context.doc.fly;
        let size = case.diameter(fly.button.as_deref()?)?;
        let end = FLY_HOLE_FROM_EDGE + buttonhole_length(size);
        let rows = &case.context.seam(SeamId::Fly)?.rows;
        let (index, nearest) = rows
            .iter()
            .map(|r| r.offset)
            .enumerate()
            .filter(|(_, offset)| *offset > FLY_HOLE_FROM_EDGE)
            .min_by(|a, b| a.1.total_cmp(&b.1))?;
        (button_fly(case) && nearest < end).then(|| {
            Broken::warning(
                PartId::Fly,
                format!(
                    "a row at {} crosses the buttonholes, which end {} from the fly edge",
                    mm(nearest),
                    mm(end)
                ),
            )
            .help("move the row outward, widen the fly, or choose a smaller button")
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
            Broken::warning(
                PartId::Fly,
                if fly.buttons == 1 {
                    format!(
                        "1 button of {} stands only {} from each end",
                        mm(size),
                        mm(gap)
                    )
                } else {
                    format!(
                        "{} buttons of {} stand only {} apart",
                        fly.buttons,
                        mm(size),
                        mm(gap)
                    )
                },
            )
            .help("fewer buttons, or a longer fly")
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
        let said = if length > fly {
            format!("the zip is {} long and the fly {}", mm(length), mm(fly))
        } else if length < fly - ZIP_SHORTER {
            format!(
                "the zip is {} long and leaves {} of the fly closed",
                mm(length),
                mm(fly - length)
            )
        } else {
            return None;
        };
        (!button_fly(case)).then(|| {
            Broken::warning(PartId::Zip, said)
                .help(format!(
                    "about {}: half an inch less than the fly",
                    mm(fly - Length::inches(0.5))
                ))
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
                    format!(
                        "it ends {} from the edge and tears out",
                        mm(Length::mm(room))
                    ),
                )
                .help(format!("leave at least {}", mm(HOLE_FROM_EDGE)))
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
                    format!(
                        "a button of {} does not go through a hole of {}",
                        mm(button),
                        mm(hole)
                    ),
                )
                .help(format!("a hole of {}", mm(buttonhole_length(button))))
                .at(place(fixing.piece, fixing.at)),
            );
        }
    }
    out
}
