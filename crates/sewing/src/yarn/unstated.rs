//! Sewing a workroom does although the style states no row for it.
//!
//! A turned or mock-felled edge is joined before its visible rows are sewn, raw edges are
//! overedged, patch and labels are sewn on. The style need not say so, and what it does not say is
//! not counted; but whoever orders yarn should know about it. Common practice throughout.

use draft::{ClothUse, EdgeId, PieceId};
use style::{Construction, Seam, SeamId};
use trade::seam::operation;
use trade::{Length, StitchDensity, StitchType};

use super::count::{copies, per_length};
use super::width::StitchWidth;
use super::{SewnThrough, countable};
use crate::construct::Finish;
use crate::garment::Origin;
use crate::garment::{FixingKind, Garment, InsideLap};
use crate::rows::JOINING;
use crate::seam::facts;

/// Work without a stated row, with an estimate of its yarn.
#[derive(Clone, Debug, PartialEq)]
pub struct Unstated {
    /// What kind of work.
    pub kind: UnstatedKind,
    /// The seam; the trim, for one that is sewn on.
    pub of: Origin,
    /// "front rise seam, joining row below the topstitching".
    pub what: String,
    /// The stitch the estimate takes.
    pub stitch: StitchType,
    /// The density the estimate takes.
    pub density: StitchDensity,
    /// Length sewn in a pair.
    pub sewn: Length,
    /// Yarn, above and below together, without waste.
    pub estimate: Length,
}

/// What kind of work has no stated row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UnstatedKind {
    /// A row that joins the plies of a seam before they are turned.
    Joining,
    /// An overedge of a seam's raw edges.
    Overedge,
    /// A patch or label sewn on.
    SewnOn,
}

/// Density of joining rows, patch and labels where no row of the seam gives one.
const PLAIN: StitchDensity = StitchDensity::per_inch(8.0);

pub(super) fn unstated(garment: &Garment) -> Vec<Unstated> {
    let mut out = Vec::new();
    for seam in &garment.seams {
        out.extend(joining(garment, seam));
        out.extend(overedged(garment, seam));
    }
    out.extend(sewn_on(garment));
    out
}

fn estimated(
    garment: &Garment,
    (kind, of, what): (UnstatedKind, Origin, String),
    (stitch, density): (StitchType, StitchDensity),
    (plies, cloth): (u8, ClothUse),
    sewn: Length,
) -> Option<Unstated> {
    let sewn = countable(sewn);
    let width = if stitch.is_overedge() {
        StitchWidth::overedge().width
    } else {
        Length::ZERO
    };
    let plies = SewnThrough::new(garment, &[(plies, cloth)]);
    let per = per_length(stitch, density, &plies, width);
    (sewn > Length::ZERO).then(|| Unstated {
        kind,
        of,
        what,
        stitch,
        density,
        sewn,
        estimate: countable(sewn * (per.needle + per.under)),
    })
}

fn edge(garment: &Garment, piece: PieceId, edge: EdgeId) -> Length {
    garment
        .pattern
        .piece(piece)
        .and_then(|p| p.edge(edge))
        .map_or(Length::ZERO, |path| countable(path.length()))
}

/// The row that joins the plies before they are turned, where the style states none.
fn joining(garment: &Garment, seam: &Seam) -> Option<Unstated> {
    let stated = seam.rows.iter().any(|row| row.offset < JOINING);
    if stated
        || !matches!(
            seam.construction,
            Construction::MockFelled | Construction::TurnedEdge
        )
    {
        return None;
    }
    let sewn = match facts(seam.id).turned {
        Some(turned) => edge(garment, turned.piece, turned.edge) * 2.0,
        None => garment
            .rows
            .iter()
            .filter(|row| row.seam == seam.id && row.number == 1)
            .map(|row| countable(row.length()) * f64::from(copies(row.on)))
            .sum(),
    };
    let first = seam.rows.first();
    estimated(
        garment,
        (
            UnstatedKind::Joining,
            seam.id.into(),
            format!("{}, joining row below the topstitching", seam.id.title()),
        ),
        (
            first.map_or(StitchType::S301, |row| row.stitch),
            first.map_or(PLAIN, |row| row.density),
        ),
        (2, ClothUse::Shell),
        sewn,
    )
}

/// Allowances neatened by an overedge the style states no row for.
fn overedged(garment: &Garment, seam: &Seam) -> Option<Unstated> {
    if seam.rows.iter().any(|row| row.stitch.is_overedge()) {
        return None;
    }
    let of_seam = |lap: &&InsideLap| lap.seam() == Some(seam.id);
    let sewn = garment
        .laps
        .iter()
        .filter(|lap| lap.finish == Finish::Overedged)
        .filter(of_seam)
        .map(|lap| edge(garment, lap.piece, lap.edge) * f64::from(copies(lap.on)))
        .sum();
    // Pressed open, each edge is neatened by itself.
    let plies = if seam.construction == Construction::PressedOpen {
        1
    } else {
        2
    };
    let usual = operation("edge-overedge").and_then(|o| o.density);
    estimated(
        garment,
        (
            UnstatedKind::Overedge,
            seam.id.into(),
            format!("{}, overedge of raw edges", seam.id.title()),
        ),
        (StitchType::S504, usual.map_or(PLAIN, |(_, most)| most)),
        (plies, ClothUse::Shell),
        sewn,
    )
}

/// Patch all round, labels along both short ends, on the two plies of the band.
fn sewn_on(garment: &Garment) -> Vec<Unstated> {
    let stated = |id: SeamId| garment.seams.iter().any(|seam| seam.id == id);
    garment
        .fixings
        .iter()
        .filter_map(|fixing| {
            let (what, sewn) = match &fixing.kind {
                FixingKind::Patch(width, height, _) if !stated(SeamId::PatchSet) => {
                    ("patch sewn on", (*width + *height) * 2.0)
                }
                FixingKind::Label(_, height, _)
                    if fixing.piece != PieceId::Band || !stated(SeamId::LabelSet) =>
                {
                    ("label sewn in", *height * 2.0)
                }
                _ => return None,
            };
            estimated(
                garment,
                (
                    UnstatedKind::SewnOn,
                    fixing.from.clone(),
                    format!("{}, {what}", fixing.from.code()),
                ),
                (StitchType::S301, PLAIN),
                (2, ClothUse::Shell),
                sewn,
            )
        })
        .collect()
}
