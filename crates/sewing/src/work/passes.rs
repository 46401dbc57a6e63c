//! Which rows of a seam are sewn together, and in which order.
//!
//! A seam is sewn in passes: raw edges are neatened before a seam that is pressed open is joined and
//! after any other is; the plies are joined; then come the rows that hold everything. Rows of the
//! same stitch and density go into one pass where a machine has needles for them.

use style::{BandMethod, Construction, RowSpec, Seam, SeamId};
use trade::{Length, StitchType, Unwashed};
use words::{Said, say};

use super::machine;
use super::operation::gauge_words;
use super::pass_kinds::{Does, Holding};
use crate::construct::{joins_by, operation_of};
use crate::garment::Garment;
use crate::joining::JOINING;
use crate::yarn::overedge_bite;

/// Rows sewn at once.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Pass {
    pub does: Does,
    /// Row numbers within the seam, from 1, in the order of the style.
    pub rows: Vec<usize>,
}

/// The passes of a seam in the order in which they are sewn; only rows that have a place.
pub(super) fn passes(garment: &Garment, seam: &Seam) -> Vec<Pass> {
    let laid = |number: usize| {
        let row = |r: &crate::StitchRow| r.seam == seam.id && r.number == number;
        garment.rows.iter().any(row)
    };
    let mut in_turn: Vec<(Does, usize, &RowSpec)> = seam
        .rows
        .iter()
        .enumerate()
        .filter(|(index, _)| laid(index + 1))
        .map(|(index, row)| (does(garment, seam, index, row), index + 1, row))
        .collect();
    // Among rows that do the same the order of the style counts.
    in_turn.sort_by_key(|(does, ..)| turn(seam.construction, *does));
    let mut out: Vec<Pass> = Vec::new();
    for (does, number, row) in in_turn {
        match out.last_mut() {
            Some(pass) if pass.does == does && together(seam, pass, row) => pass.rows.push(number),
            _ => out.push(Pass {
                does,
                rows: vec![number],
            }),
        }
    }
    out
}

fn turn(construction: Construction, does: Does) -> u8 {
    match (does, construction) {
        // Each edge by itself, and a single one before anything is sewn to it.
        (Does::Neatens, Construction::PressedOpen) => 0,
        (Does::Joins, _) => 1,
        (Does::Neatens, _) => 2,
        (Does::Holds(Holding::Round), _) => 4,
        (Does::Holds(_), _) => 3,
    }
}

fn does(garment: &Garment, seam: &Seam, index: usize, row: &RowSpec) -> Does {
    let on_the_line = |r: &RowSpec| r.offset < JOINING;
    if row.stitch.is_overedge() {
        let joined_by_another = seam
            .rows
            .iter()
            .any(|r| on_the_line(r) && !r.stitch.is_overedge());
        let neatens =
            seam.id == SeamId::FlyEdge || joined_by_another || !joins_by(seam, row.stitch);
        return if neatens { Does::Neatens } else { Does::Joins };
    }
    let round = garment.doc.band.method == BandMethod::AllRound && index > 0;
    let joining = on_the_line(row) && is_joined_first(seam) && seam.id != SeamId::FlyEdge;
    match holding(seam.construction) {
        _ if seam.id == SeamId::Band && round => Does::Holds(Holding::Round),
        _ if joining => Does::Joins,
        holding => Does::Holds(holding),
    }
}

/// Whether a row on the seam line joins the plies before others hold them.
fn is_joined_first(seam: &Seam) -> bool {
    match seam.construction {
        Construction::PressedOpen
        | Construction::MockFelled
        | Construction::SafetyStitched
        | Construction::Overlocked
        | Construction::FrenchSeam
        | Construction::BandTurned
        | Construction::TurnedEdge => true,
        // A single edge is bound by itself, a bag is closed first.
        Construction::BoundEdge => seam.id == SeamId::BagClose && seam.rows.len() > 1,
        _ => false,
    }
}

/// How the visible rows of a construction hold it.
pub(super) const fn holding(construction: Construction) -> Holding {
    match construction {
        Construction::LapFelled => Holding::Fell,
        Construction::PressedOpen
        | Construction::MockFelled
        | Construction::SafetyStitched
        | Construction::Overlocked
        | Construction::TurnedEdge
        | Construction::BandTurned => Holding::Topstitch,
        Construction::FrenchSeam => Holding::Enclose,
        Construction::BoundEdge => Holding::Bind,
        Construction::CleanFinished => Holding::TurnIn,
        Construction::RolledHem | Construction::FoldedHem | Construction::TurnedHem => Holding::Hem,
        Construction::BandOverEdge | Construction::PatchSet | Construction::LaidOn => Holding::Set,
        Construction::Strip => Holding::Strip,
        Construction::Surface => Holding::Decorate,
    }
}

/// Whether a machine sews a further row at once with those of a pass.
fn together(seam: &Seam, pass: &Pass, row: &RowSpec) -> bool {
    let Does::Holds(holding) = pass.does else {
        return false;
    };
    let spec = |number: &usize| seam.rows.get(number.wrapping_sub(1));
    let mut offsets: Vec<Length> = pass
        .rows
        .iter()
        .filter_map(spec)
        .map(|r| r.offset)
        .collect();
    let Some(first) = pass.rows.first().and_then(spec) else {
        return false;
    };
    offsets.push(row.offset);
    first.stitch == row.stitch
        && first.density == row.density
        && offsets.len() <= usize::from(machine::most_needles(seam, holding, row.stitch))
        && gauges(offsets).iter().map(|gauge| gauge.figure()).all(|g| {
            g >= machine::LEAST_GAUGE && g <= machine::widest_gauge(seam, holding, row.stitch)
        })
}

/// From each row to the next.
pub(super) fn gauges(mut offsets: Vec<Length>) -> Vec<Unwashed<Length>> {
    offsets.sort_by(Length::total_cmp);
    let apart = |pair: &[Length]| Unwashed::new(pair[1] - pair[0]);
    offsets.windows(2).map(apart).collect()
}

/// Needles in the machine: one a row, or as many as the stitch has for itself.
pub(super) fn needles_in(stitch: StitchType, rows: usize) -> u8 {
    let rows = u8::try_from(rows).unwrap_or(u8::MAX);
    rows.max(stitch.threads().needle)
}

/// The bite of an overedge, or the spacing of the needles of a covering stitch, where one row is
/// sewn by itself.
pub(super) fn bite_of(seam: &Seam, number: usize) -> Option<Unwashed<Length>> {
    let stitch = seam.rows.get(number.checked_sub(1)?)?.stitch;
    if stitch.is_overedge() {
        return Some(Unwashed::new(overedge_bite()));
    }
    let gauge = operation_of(seam).gauge?;
    (stitch.threads().needle > 1).then(|| Unwashed::new((gauge.0 + gauge.1) / 2.0))
}

/// How the needles stand that sew a row: "two needles, 6.4 mm", "single needle, 34.0 mm from row 1".
/// None for a row without a place.
pub(crate) fn gauge_of(garment: &Garment, seam: &Seam, number: usize) -> Option<Said> {
    let passes = passes(garment, seam);
    let pass = passes.iter().find(|pass| pass.rows.contains(&number))?;
    let spec = |number: usize| seam.rows.get(number.checked_sub(1)?);
    let together = || pass.rows.iter().filter_map(|number| spec(*number));
    let stitch = together()
        .map(|row| row.stitch)
        .next()
        .unwrap_or(StitchType::S301);
    let bite = bite_of(seam, number).filter(|_| pass.rows.len() == 1);
    let needles = needles_in(stitch, pass.rows.len());
    let gauges = gauges(together().map(|r| r.offset).collect());
    let needles = gauge_words(needles, &gauges, bite)?;
    let holds = |other: usize| {
        let of = |pass: &&Pass| pass.rows.contains(&other) && pass.does.holds();
        passes.iter().any(|pass| of(&pass))
    };
    // A visible row sewn by itself keeps its distance from the one before.
    let before = (1..number).rev().find(|other| holds(*other));
    if let (true, 1, Some(before)) = (pass.does.holds(), pass.rows.len(), before)
        && let (Some(this), Some(other)) = (spec(number), spec(before))
    {
        let apart = (this.offset - other.offset).abs().in_mm(1);
        let row = before;
        return Some(
            say::GaugeFromRow {
                apart,
                needles,
                row,
            }
            .into(),
        );
    }
    Some(needles)
}
