//! Seams and hems as a whole.

use draft::{PieceId, PointId};
use style::{Construction, MeasureId, Seam, SeamId};
use trade::{Length, StitchType};
use words::{key, say};

use super::case::{Broken, Case};
use super::rows::joins;
use crate::allowance::{EDGE_MARGIN, FELL_WIDTH};
use crate::band_parts::joined;
use crate::bulk::Thicknesses;
use crate::construct::Finish;
use crate::construct::construct;
use crate::joining::JOIN_ALLOWANCE;
use crate::laps::runs_to_selvedge;
use crate::seam::facts;

/// A hem turned twice is at least this many plies deep.
const HEM_PLIES: f64 = 8.0;

fn each(case: &Case<'_>, look: impl Fn(&Seam) -> Option<Broken>) -> Vec<Broken> {
    let seams = case.context.seams.iter();
    seams
        .filter_map(|seam| Some(look(seam)?.at(case.seam_place(seam.id))))
        .collect()
}

pub(super) fn fell_width(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        if seam.construction != Construction::LapFelled {
            return None;
        }
        let far = seam.rows.iter().map(|r| r.offset);
        let far = far.fold(Length::ZERO, Length::max);
        let last = seam
            .rows
            .iter()
            .rposition(|row| row.offset == far)
            .unwrap_or(0);
        (far + EDGE_MARGIN < FELL_WIDTH.0).then(|| {
            Broken::warning(
                seam.id,
                say::SewingSeamsFellWidth {
                    far: far.in_mm(1),
                    fell_width: FELL_WIDTH.0.in_mm(1),
                },
            )
            .help(key::SEWING_SEAMS_FELL_WIDTH_HELP)
            .curing(
                format!("seams.{}.rows[{last}].offset", seam.id.code()),
                "8 mm",
            )
        })
    })
}

pub(super) fn no_joining_row(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        let needs = matches!(
            seam.construction,
            Construction::PressedOpen
                | Construction::SafetyStitched
                | Construction::Overlocked
                | Construction::MockFelled
        );
        let stated = seam.rows.is_empty() || seam.rows.iter().any(|row| joins(seam, row));
        (needs && !stated).then(|| {
            Broken::note(seam.id, key::SEWING_SEAMS_NO_JOINING_ROW)
                .help(key::SEWING_SEAMS_NO_JOINING_ROW_HELP)
        })
    })
}

pub(super) fn no_rows(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        seam.rows.is_empty().then(|| {
            Broken::warning(seam.id, key::SEWING_SEAMS_NO_ROWS).help(key::SEWING_SEAMS_NO_ROWS_HELP)
        })
    })
}

/// The allowance is neatened, but no row says with what.
pub(super) fn overedge(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        let finish = construct(seam.construction).finish;
        let selvedge = draft::PieceId::ALL
            .into_iter()
            .any(|id| runs_to_selvedge(case.context, seam, id));
        // Beside the cloth's own edge facing and yoke are raw, and the front where its side line leaves it.
        let said = if selvedge {
            key::SEWING_SEAMS_OVEREDGE_BESIDE
        } else {
            key::SEWING_SEAMS_OVEREDGE
        };
        let stated = seam.rows.iter().any(|row| row.stitch.is_overedge());
        let seen = facts(seam.id).joins_panels();
        (seen && finish == Finish::Overedged && !stated)
            .then(|| Broken::note(seam.id, said).help(key::SEWING_SEAMS_OVEREDGE_HELP))
    })
}

/// A facing laid flat on its bag has a raw edge inside the pocket: it is overedged before, or a coverstitch covers it.
pub(super) fn facing_edge(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        let flat = seam.id == SeamId::FacingSet && seam.construction == Construction::LaidOn;
        let covers = |stitch: StitchType| stitch.is_overedge() || stitch.covers();
        let covered = seam.rows.iter().any(|row| covers(row.stitch));
        (flat && !covered).then(|| {
            Broken::warning(seam.id, key::SEWING_SEAMS_FACING_EDGE)
                .help(key::SEWING_SEAMS_FACING_EDGE_HELP)
        })
    })
}

/// A band that is cut in two, and nothing says how its halves are joined.
pub(super) fn band_join(case: &Case<'_>) -> Vec<Broken> {
    let context = case.context;
    let open = joined(context) && context.seam(SeamId::BandJoin).is_none();
    let found = open.then(|| {
        Broken::note(SeamId::BandJoin, key::SEWING_SEAMS_BAND_JOIN)
            .help(say::SewingSeamsBandJoinHelp {
                allowance: JOIN_ALLOWANCE.in_mm(1),
            })
            .at(case.point(PieceId::Band, PointId::CentreBack))
    });
    found.into_iter().collect()
}

pub(super) fn hem_narrow(case: &Case<'_>) -> Vec<Broken> {
    let depth = case.context.pattern.spec[MeasureId::HemDepth];
    let ply = Thicknesses::of(case.context.doc, case.context.collection).shell;
    each(case, |seam| {
        let rolled = seam.construction == Construction::RolledHem;
        let least = ply * HEM_PLIES;
        (rolled && depth < least).then(|| {
            Broken::warning(
                seam.id,
                say::SewingSeamsHemNarrow {
                    depth: depth.in_mm(1),
                    ply: format!("{:.2}", ply.to_mm()),
                },
            )
            .help(say::SewingSeamsHemNarrowHelp {
                least: least.in_mm(1),
            })
            .curing(
                MeasureId::HemDepth.path("value"),
                format!("{} mm", least.to_mm().ceil()),
            )
        })
    })
}
