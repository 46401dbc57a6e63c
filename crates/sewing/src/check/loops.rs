//! Belt loops against belt, band and patch.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{MeasureId, PartId, SeamId};
use trade::Length;
use words::{Said, key, say};

use super::case::{Broken, Case, place};
use crate::garment::FixingKind;

/// What a belt needs beside its own width to slide through a loop (common practice).
const PLAY: Length = Length::mm(3.0);

/// More than this beside the belt's own width lets it ride up and down (from memory).
const MOST_PLAY: Length = Length::mm(30.0);

/// The foot of a loop is tacked at least this far below the band seam (common practice).
const BELOW_SEAM: Length = Length::mm(6.0);

/// Between two loops behind, and between the two beside the fly (common practice).
const FARTHEST: Length = Length::mm(220.0);
const FARTHEST_FRONT: Length = Length::mm(340.0);

/// Two loops nearer than this crowd one another (common practice).
const NEAREST: Length = Length::mm(40.0);

/// Fewer loops than this let a belt sag (common practice).
const LEAST: u32 = 5;

fn any_loop(case: &Case<'_>) -> Option<draft::Place> {
    case.fixing_of(SeamId::LoopEdge)
}

pub(super) fn short(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let inside = spec[MeasureId::LoopLength] - case.context.doc.bartacks.width * 2.0;
    let belt = case.context.doc.loops.belt;
    let needs = belt + PLAY;
    if spec.loop_count == 0 || inside >= needs {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::BeltLoops,
            say::SewingLoopsShort {
                belt: belt.in_mm(1),
                inside: inside.in_mm(1),
                needs: needs.in_mm(1),
            },
        )
        .help(say::SewingLoopsShortHelp {
            width: (needs + case.context.doc.bartacks.width * 2.0).in_mm(1),
        })
        .at(any_loop(case)),
    ]
}

/// Loops much higher than their belt.
pub(super) fn loose(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let inside = spec[MeasureId::LoopLength] - case.context.doc.bartacks.width * 2.0;
    let belt = case.context.doc.loops.belt;
    if spec.loop_count == 0 || inside <= belt + MOST_PLAY {
        return Vec::new();
    }
    vec![
        Broken::note(
            PartId::BeltLoops,
            say::SewingLoopsLoose {
                belt: belt.in_mm(1),
                inside: inside.in_mm(1),
            },
        )
        .help(key::SEWING_LOOPS_LOOSE_HELP)
        .at(any_loop(case)),
    ]
}

pub(super) fn foot(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let below = spec[MeasureId::LoopLength] - spec[MeasureId::BandHeight];
    if spec.loop_count == 0 || below >= BELOW_SEAM {
        return Vec::new();
    }
    let said: Said = if below > Length::ZERO {
        say::SewingLoopsFoot {
            below: below.in_mm(1),
        }
        .into()
    } else {
        say::SewingLoopsFoot2 {
            band_height: spec[MeasureId::BandHeight].in_mm(1),
            loop_length: spec[MeasureId::LoopLength].in_mm(1),
        }
        .into()
    };
    vec![
        Broken::warning(PartId::BeltLoops, say::SewingLoopsFoot3 { said })
            .help(say::SewingLoopsFootHelp {
                below_seam: (spec[MeasureId::BandHeight] + BELOW_SEAM).in_mm(1),
            })
            .at(any_loop(case)),
    ]
}

pub(super) fn spacing(case: &Case<'_>) -> Vec<Broken> {
    let count = case.context.doc.loops.count;
    if count < LEAST {
        return vec![
            Broken::note(
                PartId::BeltLoops,
                say::SewingLoopsSpacing {
                    count: count.to_string(),
                    least: LEAST.to_string(),
                },
            )
            .at(any_loop(case)),
        ];
    }
    let mut places: Vec<Point> = case
        .fixings
        .iter()
        .filter(|f| matches!(f.kind, FixingKind::Loop(..)))
        .map(|f| f.at)
        .collect();
    places.sort_by(|a, b| a.x.total_cmp(&b.x));
    let mut out = Vec::new();
    for pair in places.windows(2) {
        let gap = Length::mm(pair[1].x - pair[0].x);
        let said = if gap > FARTHEST {
            key::SEWING_LOOPS_SPACING_FAR
        } else if gap < NEAREST {
            key::SEWING_LOOPS_SPACING_NEAR
        } else {
            continue;
        };
        out.push(
            Broken::note(
                PartId::BeltLoops,
                say::SewingLoopsSpacing2 {
                    gap: gap.in_mm(1),
                    said,
                },
            )
            .help(say::SewingLoopsSpacingHelp {
                farthest: FARTHEST.in_mm(1),
                nearest: NEAREST.in_mm(1),
            })
            .at(place(PieceId::Band, pair[0].midpoint(pair[1]))),
        );
    }
    let centre = case.point(PieceId::Band, PointId::CentreFrontRight);
    if let (Some(first), Some(last), Some(end)) = (places.first(), places.last(), centre) {
        let gap = Length::mm(first.x + end.at.x - last.x);
        if gap > FARTHEST_FRONT {
            out.push(
                Broken::note(
                    PartId::BeltLoops,
                    say::SewingLoopsSpacing3 { gap: gap.in_mm(1) },
                )
                .help(say::SewingLoopsSpacingHelp2 {
                    farthest_front: FARTHEST_FRONT.in_mm(1),
                })
                .at(place(PieceId::Band, *first)),
            );
        }
    }
    out
}

pub(super) fn under_patch(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let (patch, half) = case.fixings.iter().find_map(|f| match &f.kind {
            FixingKind::Patch(width, ..) => Some((f.at, width.to_mm() / 2.0)),
            _ => None,
        })?;
        let at = case.fixings.iter().find_map(|f| match f.kind {
            FixingKind::Loop(_, width) if (f.at.x - patch.x).abs() < half + width.to_mm() / 2.0 => {
                Some(f.at)
            }
            _ => None,
        })?;
        Some(
            Broken::warning(PartId::Patch, key::SEWING_LOOPS_UNDER_PATCH)
                .help(key::SEWING_LOOPS_UNDER_PATCH_HELP)
                .at(place(PieceId::Band, at)),
        )
    };
    found().into_iter().collect()
}
