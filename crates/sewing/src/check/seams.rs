//! Rows against edges, allowances and each other.

use draft::{Finding, Severity};
use style::{Construction, RowSpec, Seam};
use trade::Length;

use crate::allowance::{EDGE_MARGIN, FELL_WIDTH, allowances};
use crate::context::{Context, finding, mm, with_remedy};
use crate::rows::JOINING;

/// A visible row nearer to its edge than this slips off the fold.
const NEAREST_TO_EDGE: Length = Length::mm(1.0);

/// A stitch shorter than this many diameters of its yarn is crowded.
const LEAST_PITCH: f64 = 2.5;

pub(super) fn findings(context: &Context<'_>) -> Vec<Finding> {
    let mut out = Vec::new();
    for seam in context.seams {
        for (index, row) in seam.rows.iter().enumerate() {
            let about = format!("{}, row {}", seam.name, index + 1);
            out.extend(near_edge(context, seam, row, &about));
            out.extend(beyond(context, seam, row, &about));
            out.extend(crowded(context, row, &about));
        }
        out.extend(fell_width(context, seam));
        out.extend(no_joining_row(context, seam));
    }
    out
}

/// Whether the row is the one that joins the plies, on the seam line.
fn joins(seam: &Seam, row: &RowSpec) -> bool {
    let plain = matches!(
        seam.construction,
        Construction::PressedOpen
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::MockFelled
            | Construction::Surface
    );
    plain && row.offset.abs() < JOINING
}

fn near_edge(context: &Context<'_>, seam: &Seam, row: &RowSpec, about: &str) -> Option<Finding> {
    if joins(seam, row) || row.offset >= NEAREST_TO_EDGE {
        return None;
    }
    let found = finding(
        context,
        "sewing::row-near-edge",
        Severity::Warning,
        about,
        format!(
            "runs {} from the edge and may slip off the fold",
            mm(row.offset)
        ),
    );
    Some(with_remedy(
        found,
        "1.6 mm is usual for a row along an edge",
    ))
}

/// What a row of this construction has to catch lies this far from the seam line at most.
fn reach(context: &Context<'_>, seam: &Seam) -> Option<(Length, &'static str)> {
    let spec = &context.pattern.spec;
    let allowance = allowances(seam, spec.hem_depth).over;
    Some(match (seam.name.as_str(), seam.construction) {
        ("fly", _) => (spec.fly_width, "the facing is this wide"),
        ("band", _) => (spec.band_height, "the band is this high"),
        (_, Construction::RolledHem) => (spec.hem_depth, "the hem is this deep"),
        (_, Construction::Strip) => (spec.loop_width, "the loop is this wide"),
        (_, Construction::LapFelled) => (FELL_WIDTH.1 - EDGE_MARGIN, "a lap is at most this wide"),
        (
            _,
            Construction::MockFelled
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::PressedOpen
            | Construction::PatchSet,
        ) => (allowance, "the allowance reaches this far"),
        _ => return None,
    })
}

fn beyond(context: &Context<'_>, seam: &Seam, row: &RowSpec, about: &str) -> Option<Finding> {
    let (reach, what) = reach(context, seam)?;
    if row.offset <= reach {
        return None;
    }
    let found = finding(
        context,
        "sewing::row-catches-nothing",
        Severity::Warning,
        about,
        format!(
            "runs {} from the seam line, past what it should catch ({what}: {})",
            mm(row.offset),
            mm(reach)
        ),
    );
    let inside = (reach - EDGE_MARGIN).max(Length::ZERO);
    Some(with_remedy(found, format!("at most {}", mm(inside))))
}

fn crowded(context: &Context<'_>, row: &RowSpec, about: &str) -> Option<Finding> {
    let pitch = row.density.pitch();
    let diameter = context.yarn(&row.yarn).diameter;
    if pitch >= diameter * LEAST_PITCH {
        return None;
    }
    let found = finding(
        context,
        "sewing::stitches-crowded",
        Severity::Warning,
        about,
        format!(
            "a stitch of {} is too short for a yarn of {:.2} mm",
            mm(pitch),
            diameter.to_mm()
        ),
    );
    Some(with_remedy(
        found,
        format!("make it at least {}", mm(diameter * LEAST_PITCH)),
    ))
}

fn fell_width(context: &Context<'_>, seam: &Seam) -> Option<Finding> {
    if seam.construction != Construction::LapFelled {
        return None;
    }
    let far = seam.rows.iter().map(|r| r.offset);
    let far = far.fold(Length::ZERO, Length::max);
    if far + EDGE_MARGIN >= FELL_WIDTH.0 {
        return None;
    }
    Some(finding(
        context,
        "sewing::lap-narrow",
        Severity::Warning,
        seam.name.as_str(),
        format!(
            "its rows end {} from the fold; a felled lap narrower than {} cannot be turned in",
            mm(far),
            mm(FELL_WIDTH.0)
        ),
    ))
}

fn no_joining_row(context: &Context<'_>, seam: &Seam) -> Option<Finding> {
    let needs = matches!(
        seam.construction,
        Construction::PressedOpen
            | Construction::SafetyStitched
            | Construction::Overlocked
            | Construction::MockFelled
    );
    if !needs || seam.rows.iter().any(|row| joins(seam, row)) {
        return None;
    }
    let found = finding(
        context,
        "sewing::joining-row",
        Severity::Note,
        seam.name.as_str(),
        "only its topstitching is stated; the row that joins the plies is left to the workroom",
    );
    Some(with_remedy(
        found,
        "add a row with offset 0 to fix its stitch and yarn",
    ))
}
