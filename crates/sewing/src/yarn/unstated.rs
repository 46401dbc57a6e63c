//! Sewing a workroom does although the style states no row for it.
//!
//! A turned or mock-felled edge is joined before its visible rows are sewn, raw edges are
//! overedged, patch and labels are sewn on. The style need not say so, and what it does not say is
//! not counted; but whoever orders yarn should know about it. Common practice throughout.

use draft::{ClothUse, EdgeId, PieceId};
use style::{Construction, MeasureId, Seam, SeamId};
use trade::seam::{SeamOperationId, operation};
use trade::{Length, StitchDensity, StitchType, Unwashed};
use words::{Said, key, say};

use super::count::{copies, per_length};
use super::plies::band_plies;
use super::width::StitchWidth;
use super::{SewnThrough, countable};
use crate::band_parts::band_is_joined;
use crate::construct::{Finish, joined_by_no_row};
use crate::garment::Origin;
use crate::garment::{FixingKind, Garment, InsideLap};
use crate::seam::facts;

/// Work without a stated row, with an estimate of its yarn.
#[derive(Clone, Debug, PartialEq)]
pub struct Unstated {
    /// What kind of work.
    pub kind: UnstatedKind,
    /// The seam; the trim, for one that is sewn on.
    pub of: Origin,
    /// "front rise seam, joining row below the topstitching".
    pub what: Said,
    /// The stitch the estimate takes.
    pub stitch: StitchType,
    /// The density the estimate takes.
    pub density: StitchDensity,
    /// Length sewn in a pair, before its wash.
    pub sewn: Unwashed<Length>,
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
    /// The row that closes the front edge of the strip with a fly's buttonholes.
    ButtonholeStrip,
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
    out.extend(fly_strip(garment));
    out.extend(band_join(garment));
    out.extend(sewn_on(garment));
    out
}

/// The row that closes the strip behind the facing of a button fly, along the fly edge.
fn fly_strip(garment: &Garment) -> Option<Unstated> {
    if !garment.pattern.spec.button_fly {
        return None;
    }
    estimated(
        garment,
        (
            UnstatedKind::ButtonholeStrip,
            SeamId::FlyEdge.into(),
            key::NOT_STATED_FLY_STRIP.into(),
        ),
        (StitchType::S301, PLAIN),
        (2, ClothUse::Shell),
        edge(garment, PieceId::FlyFacing, EdgeId::Edge),
    )
}

/// The row that joins the halves of a band cut in two, across the whole band before it is folded.
fn band_join(garment: &Garment) -> Option<Unstated> {
    let laid = garment.rows.iter().any(|row| row.seam == SeamId::BandJoin);
    if laid || !band_is_joined(garment) {
        return None;
    }
    estimated(
        garment,
        (
            UnstatedKind::Joining,
            SeamId::BandJoin.into(),
            key::NOT_STATED_BAND_JOIN.into(),
        ),
        (StitchType::S301, PLAIN),
        (2, ClothUse::Shell),
        garment.sewn(MeasureId::BandHeight).figure() * 2.0,
    )
}

fn estimated(
    garment: &Garment,
    (kind, of, what): (UnstatedKind, Origin, Said),
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
        sewn: Unwashed::new(sewn),
        estimate: countable(sewn * (per.needle + per.under)),
    })
}

fn edge(garment: &Garment, piece: PieceId, edge: EdgeId) -> Length {
    garment
        .before_wash
        .pattern
        .piece(piece)
        .and_then(|p| p.edge(edge))
        .map_or(Length::ZERO, |path| countable(path.length()))
}

/// The row that joins the plies before they are turned, where the style states none.
fn joining(garment: &Garment, seam: &Seam) -> Option<Unstated> {
    if !joined_by_no_row(seam) {
        return None;
    }
    let sewn = match facts(seam.id).turned {
        Some(turned) => edge(garment, turned.piece, turned.edge) * 2.0,
        None => garment
            .rows
            .iter()
            .filter(|row| row.seam == seam.id && row.number == 1)
            .map(|row| {
                countable(garment.length_at_machine(row).figure()) * f64::from(copies(row.on))
            })
            .sum(),
    };
    let first = seam.rows.first();
    estimated(
        garment,
        (
            UnstatedKind::Joining,
            seam.id.into(),
            say::UnstatedJoining { seam: seam.id }.into(),
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
        .filter_map(|lap| {
            // Of a part of an edge, that share of the edge before its wash.
            let whole = garment.pattern.piece(lap.piece)?.edge(lap.edge)?.length();
            let share = lap.line(&garment.pattern)?.length() / whole;
            let long = edge(garment, lap.piece, lap.edge) * share;
            Some(countable(long) * f64::from(copies(lap.on)))
        })
        .sum();
    // Pressed open, each edge is neatened by itself.
    let plies = if seam.construction == Construction::PressedOpen {
        1
    } else {
        2
    };
    let usual = operation(SeamOperationId::EdgeOveredge).density;
    estimated(
        garment,
        (
            UnstatedKind::Overedge,
            seam.id.into(),
            say::UnstatedOveredge { seam: seam.id }.into(),
        ),
        (StitchType::S504, usual.map_or(PLAIN, |(_, most)| most)),
        (plies, ClothUse::Shell),
        sewn,
    )
}

/// Patch all round, labels along both short ends, on the plies of the band.
fn sewn_on(garment: &Garment) -> Vec<Unstated> {
    let stated = |id: SeamId| garment.seams.iter().any(|seam| seam.id == id);
    garment
        .fixings
        .iter()
        .filter_map(|fixing| {
            let key = fixing.from.code();
            let known = garment.collection.trims.get(key);
            let trim = known.map_or(key, |trim| trim.name.as_str());
            let (what, plies, sewn): (Said, u8, Length) = match &fixing.kind {
                FixingKind::Patch(width, height, _) if !stated(SeamId::PatchSet) => (
                    say::UnstatedPatch { trim }.into(),
                    band_plies(garment),
                    (*width + *height) * 2.0,
                ),
                FixingKind::Label(_, height, _)
                    if fixing.piece != PieceId::Band || !stated(SeamId::LabelSet) =>
                {
                    (say::UnstatedLabel { trim }.into(), 2, *height * 2.0)
                }
                _ => return None,
            };
            estimated(
                garment,
                (UnstatedKind::SewnOn, fixing.from.clone(), what),
                (StitchType::S301, PLAIN),
                (plies, ClothUse::Shell),
                sewn,
            )
        })
        .collect()
}
