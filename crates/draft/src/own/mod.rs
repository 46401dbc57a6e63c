//! A pattern from panels the maker brought.
//!
//! Each piece is taken from its file as it lies there ([`panel`]), freed of its allowances and of what the
//! wash takes, and set into the frame of the draft ([`frame`]). Front, back and yoke then stand where the
//! solved block would, and the same layout makes everything the file does not hold. What the chart says of
//! the brought pieces is not what they are made by but what they are compared with.

mod body;
mod frame;
mod panel;
mod pockets;
mod sewn_line;
#[cfg(test)]
mod tests;

use style::{MeasureId, OwnPattern, Size};
use trade::Length;
use words::Words;

use crate::layout::{Mouth, pieces};
use crate::measure::{Measurable, Run, taking};
use crate::pattern::{FromFile, Pattern};
use crate::piece::{EdgeId, Piece, PieceId};
use crate::spec::Spec;
use body::Body;
use panel::Panel;

/// How far a notch of the draft may lie from one of the file and still be the same.
const SAME_NOTCH: Length = Length::mm(20.0);

/// The pattern of one size.
///
/// # Errors
/// In words, why the pieces of the file cannot be used.
pub(crate) fn own_pattern(chart: &Spec, own: &OwnPattern, size: Size) -> Result<Pattern, String> {
    let taken = |id: PieceId| -> Result<Option<Panel>, String> {
        let Some(outline) = own.outline(id, size) else {
            return Ok(None);
        };
        Panel::of(outline, own)
            .map(Some)
            .map_err(|why| format!("{}: {why}", id.words(Words::english()).to_lowercase()))
    };
    let need = |id: PieceId| {
        taken(id)?.ok_or_else(|| {
            format!(
                "the pattern holds no {}",
                id.words(Words::english()).to_lowercase()
            )
        })
    };
    let body = Body::new(
        chart,
        need(PieceId::Front)?,
        need(PieceId::Back)?,
        need(PieceId::Yoke)?,
        taken(PieceId::PocketFacing)?,
    )?;
    let mut spec = body.spec.clone();
    let band = taken(PieceId::Band)?
        .map(|panel| frame::band(&panel, &mut spec))
        .transpose()?;
    let coin = taken(PieceId::CoinPocket)?
        .map(|panel| frame::hung(&panel))
        .transpose()?;
    if let Some(coin) = &coin {
        pockets::take_coin(coin, &mut spec);
    }
    let back_pocket = |id| -> Result<Option<Panel>, String> {
        let hung = taken(id)?.map(|panel| frame::hung(&panel)).transpose()?;
        Ok(hung.map(|panel| pockets::from_corner(&panel)))
    };
    let left = back_pocket(PieceId::BackPocketLeft)?;
    let right = back_pocket(PieceId::BackPocketRight)?;
    pockets::take_back(left.as_ref(), right.as_ref(), &mut spec);

    // The layout makes the band as long as the body less its ease; a brought band is as long as it is.
    let mut laid_out = spec.clone();
    if let Some(band) = &band {
        let body = (body.block.front_waist.length() + body.block.yoke_top.length()) * 2.0;
        laid_out.band_ease = body - band.length(EdgeId::Join)?;
    }
    let mouth = body
        .mouth
        .clone()
        .map_or_else(|| Mouth::on(&laid_out, &body.block), Mouth::along);
    let mut all = pieces(&laid_out, &body.block, &body.marks, &mouth);
    let mut brought = vec![PieceId::Front, PieceId::Back, PieceId::Yoke];
    for (id, panel) in [
        (PieceId::PocketFacing, body.facing.as_ref()),
        (PieceId::Band, band.as_ref()),
        (PieceId::BackPocketLeft, left.as_ref()),
        (PieceId::BackPocketRight, right.as_ref()),
    ] {
        if let Some((panel, piece)) = panel.zip(all.iter_mut().find(|p| p.id == id)) {
            brought.push(id);
            put_edges(piece, panel);
        }
    }
    if coin.is_some() {
        brought.push(PieceId::CoinPocket);
    }
    brought.sort();
    pockets::mend_points(&mut all, &brought);
    // Their edges are in the block already.
    for (id, panel) in [
        (PieceId::Front, &body.front),
        (PieceId::Back, &body.back),
        (PieceId::Yoke, &body.yoke),
    ] {
        if let Some(piece) = all.iter_mut().find(|p| p.id == id) {
            piece.grain = panel.grain;
            snap_notches(piece, panel);
        }
    }
    let mut pattern = Pattern {
        spec,
        pieces: all,
        proportions: body.proportions(),
        own: Some(FromFile {
            file: own.file.as_str().to_owned(),
            pieces: brought,
            chart: chart.clone(),
        }),
    };
    as_measured(&mut pattern);
    Ok(pattern)
}

/// Makes the spec say what the pieces measure, so that everything that reads it suits them.
fn as_measured(pattern: &mut Pattern) {
    let of_panels = |measure: &MeasureId| taking(*measure).decides.shapes_panels();
    for measure in MeasureId::ALL.into_iter().filter(of_panels) {
        if let Some(value) = pattern.measure(measure) {
            pattern.spec.set(measure, value);
        }
    }
    for (measure, run) in [
        (MeasureId::BandOverlap, Run::BandOverlap),
        (MeasureId::FlyLength, Run::FlyEdge),
    ] {
        if let Some(value) = pattern.run_length(run) {
            pattern.spec.set(measure, value);
        }
    }
}

/// Puts the edges, the grain and the notches of a brought piece in place of the drafted ones.
fn put_edges(piece: &mut Piece, panel: &Panel) {
    for edge in &mut piece.edges {
        if let Some(path) = panel.edge(edge.id) {
            edge.path = path.clone();
        }
    }
    // The band is cut as the lay decides; its own grain says nothing about its shape.
    if piece.id != PieceId::Band {
        piece.grain = panel.grain;
    }
    snap_notches(piece, panel);
}

/// Moves each notch of the draft to the file's notch beside it; one without a counterpart stays.
fn snap_notches(piece: &mut Piece, panel: &Panel) {
    let edges = piece.edges.clone();
    for notch in &mut piece.notches {
        let Some(edge) = edges.iter().find(|e| e.id == notch.edge) else {
            continue;
        };
        if let Some(along) = panel.notch_near(&edge.path, notch.along, SAME_NOTCH) {
            notch.along = along;
        }
    }
}
