//! Belt loops against belt, band and patch.

use draft::{PieceId, PointId};
use geometry::Point;
use style::{MeasureId, PartId, SeamId};
use trade::Length;

use super::case::{Broken, Case, place};
use crate::context::mm;
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
            format!(
                "between its tacks a loop is {} high; a belt of {} needs {}",
                mm(inside),
                mm(belt),
                mm(needs)
            ),
        )
        .help(format!(
            "a length of {}",
            mm(needs + case.context.doc.bartacks.width * 2.0)
        ))
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
            format!(
                "between its tacks a loop is {} high and the belt {}, which lies loose in it",
                mm(inside),
                mm(belt)
            ),
        )
        .help("a shorter loop, or the width of the belt they are made for as `belt`")
        .at(any_loop(case)),
    ]
}

pub(super) fn foot(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let below = spec[MeasureId::LoopLength] - spec[MeasureId::BandHeight];
    if spec.loop_count == 0 || below >= BELOW_SEAM {
        return Vec::new();
    }
    let said = if below > Length::ZERO {
        format!("their feet end only {} below the band seam", mm(below))
    } else {
        format!(
            "a loop of {} does not reach below a band of {}",
            mm(spec[MeasureId::LoopLength]),
            mm(spec[MeasureId::BandHeight])
        )
    };
    vec![
        Broken::warning(
            PartId::BeltLoops,
            format!("{said}, and pull on the band alone"),
        )
        .help(format!(
            "at least {}",
            mm(spec[MeasureId::BandHeight] + BELOW_SEAM)
        ))
        .at(any_loop(case)),
    ]
}

pub(super) fn spacing(case: &Case<'_>) -> Vec<Broken> {
    let count = case.context.doc.loops.count;
    if count < LEAST {
        return vec![
            Broken::note(
                PartId::BeltLoops,
                format!("{count} are few to hold a belt; {LEAST} to 7 are usual"),
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
            "far"
        } else if gap < NEAREST {
            "near"
        } else {
            continue;
        };
        out.push(
            Broken::note(
                PartId::BeltLoops,
                format!("two neighbours stand {} apart, which is {said}", mm(gap)),
            )
            .help(format!("between {} and {}", mm(NEAREST), mm(FARTHEST)))
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
                    format!("the two beside the fly stand {} apart", mm(gap)),
                )
                .help(format!("at most {}", mm(FARTHEST_FRONT)))
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
            Broken::warning(PartId::Patch, "a belt loop crosses the patch")
                .help("move the patch, or let its edge be caught under the loop on purpose")
                .at(place(PieceId::Band, at)),
        )
    };
    found().into_iter().collect()
}
