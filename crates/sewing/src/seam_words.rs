//! What is said of a seam wherever it is told: how it lies, how wide its allowances are, how its rows end.

use draft::ClothUse;
use style::{MeasureId, Ply, Seam, SeamId};
use trade::Length;
use words::{Key, Said, key, say};

use crate::allowance::allowances;
use crate::construct::{Rule, construct};
use crate::garment::{Garment, RowEnd};
use crate::seam::facts;

/// Which ply is on top, and which way the allowance lies.
pub(crate) fn lies(garment: &Garment, seam: &Seam) -> Said {
    let lies = construct(seam.construction).lies;
    match seam.lap {
        Some(lap) => say::SeamLiesLapped {
            lies,
            over: ply(lap.over),
            under: ply(lap.under),
        }
        .into(),
        None if seam.id == SeamId::Hem && garment.doc.hem.roping => {
            say::SeamLiesRoped { lies }.into()
        }
        None if garment.catches_lining(seam.id) => {
            if seam.id == SeamId::BackPocketHem {
                say::SeamLiesOnLining { lies }.into()
            } else {
                say::SeamLiesWithLining { lies }.into()
            }
        }
        None => lies.into(),
    }
}

/// What a ply is called after the panel it belongs to.
const fn ply(ply: Ply) -> Key {
    match ply {
        Ply::Front => key::SEAM_PLY_FRONT,
        Ply::Back => key::SEAM_PLY_BACK,
        Ply::Left => key::SEAM_PLY_LEFT,
        Ply::Right => key::SEAM_PLY_RIGHT,
        Ply::Yoke => key::SEAM_PLY_YOKE,
    }
}

/// Both ends of a row, or of each of its runs where these differ; none for a row that is not laid.
///
/// Where a run goes on over a seam, only its other end is an end.
pub(crate) fn ends_of(garment: &Garment, seam: SeamId, number: usize) -> Option<Said> {
    let mut ways: Vec<Said> = Vec::new();
    for row in &garment.rows {
        if row.seam != seam || row.number != number {
            continue;
        }
        let (begins, ends) = (row.begins.said(), row.ends.said());
        let way: Said = match (row.begins, row.ends) {
            (RowEnd::RunsOn, RowEnd::RunsOn) => continue,
            (_, RowEnd::RunsOn) => say::RowEndsBegin { begins }.into(),
            (RowEnd::RunsOn, _) => say::RowEndsEnd { ends }.into(),
            (begin, end) if begin == end => say::RowEndsBoth { ends }.into(),
            _ => say::RowEndsDiffer { begins, ends }.into(),
        };
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    all_said(ways)
}

/// Several things that are said of the same, one after the other; none where nothing is.
pub fn all_said(parts: impl IntoIterator<Item = Said>) -> Option<Said> {
    let both = |first, next| say::JoinedAlso { first, next }.into();
    parts.into_iter().reduce(both)
}

pub(crate) fn widths(garment: &Garment, seam: &Seam) -> Option<Said> {
    let both = allowances(seam, garment.sewn(MeasureId::HemDepth).figure());
    let width = both.over.in_mm(1);
    Some(match (construct(seam.construction).rule, seam.lap) {
        (Rule::None, _) => return None,
        (Rule::Felled, Some(lap)) => say::SeamWidths {
            over: ply(lap.over),
            over_width: width,
            under: ply(lap.under),
            under_width: both.under.in_mm(1),
        }
        .into(),
        _ if construct(seam.construction).joins > 1 && both.over > Length::ZERO => {
            say::SeamWidthEach { width }.into()
        }
        _ => say::SeamWidth { width }.into(),
    })
}

/// The cloth a seam is mostly sewn through.
pub(crate) fn sewn_on(seam: &Seam) -> ClothUse {
    facts(seam.id).through
}
