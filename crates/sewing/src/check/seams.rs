//! Seams and hems as a whole.

use style::{Construction, MeasureId, Seam};
use trade::Length;

use super::case::{Broken, Case};
use super::rows::joins;
use crate::allowance::{EDGE_MARGIN, FELL_WIDTH};
use crate::bulk::Thicknesses;
use crate::construct::construct;
use crate::context::mm;
use crate::garment::Finish;
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
                format!(
                    "its rows end {} from the fold; a felled lap narrower than {} cannot be turned in",
                    mm(far),
                    mm(FELL_WIDTH.0)
                ),
            )
            .help("8 mm from the fold is usual for the second row")
            .curing(format!("seams.{}.rows[{last}].offset", seam.id.code()), "8 mm")
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
            Broken::note(
                seam.id,
                "only its topstitching is stated; the row that joins the plies is left to the workroom",
            )
            .help("add a row with offset 0 to fix its stitch and yarn")
        })
    })
}

pub(super) fn no_rows(case: &Case<'_>) -> Vec<Broken> {
    each(case, |seam| {
        seam.rows.is_empty().then(|| {
            Broken::warning(seam.id, "has no row of stitches, so nothing holds it")
                .help("give it at least one row")
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
        let stated = seam
            .rows
            .iter()
            .any(|row| row.stitch.class_name().starts_with("class 500"));
        let seen = facts(seam.id).joins_panels();
        (seen && finish == Finish::Overedged && !selvedge && !stated).then(|| {
            Broken::note(
                seam.id,
                "its allowance is overedged and seen inside; no row states the stitch and the yarn",
            )
            .help("add a row of 504 with offset 0, or choose a felled seam, which hides its edges")
        })
    })
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
                format!(
                    "a hem of {} is too narrow to turn twice in a cloth of {:.2} mm",
                    mm(depth),
                    ply.to_mm()
                ),
            )
            .help(format!("at least {}", mm(least)))
            .curing(
                &MeasureId::HemDepth.path("value"),
                format!("{} mm", least.to_mm().ceil()),
            )
        })
    })
}
