//! The list of pieces.

use cutting::CutPiece;
use draft::{ClothUse, Cut, InnerKind, Piece, PieceId};

use super::context::Context;
use super::figures::drawn;
use super::words::joined;
use crate::{PaperError, PieceRow};

pub(super) fn note(context: &Context<'_>) -> String {
    format!(
        "Areas are of one cut piece with its allowances, size {}, as it is cut, before the first wash. {}",
        context.shown.size,
        context.say.named(::words::key::PAPERS_PIECES_TRUE_SIZE),
    )
}

pub(super) fn pieces(context: &Context<'_>) -> Result<Vec<PieceRow>, PaperError> {
    let pieces = &context.shown.pattern.pieces;
    pieces
        .iter()
        .enumerate()
        .map(|(index, piece)| row(context, index, piece))
        .collect()
}

fn row(context: &Context<'_>, index: usize, piece: &Piece) -> Result<PieceRow, PaperError> {
    let cuts: Vec<&CutPiece> = cuts(context, piece.id).collect();
    let areas: Vec<String> = cuts
        .iter()
        .map(|cut| context.words.piece_area(cut.area()))
        .collect();
    let thumbnail = cuts
        .first()
        .map(|cut| drawn(&cut_sheets::piece_thumbnail(cut, ::words::Words::english())));
    Ok(PieceRow {
        number: (index + 1).to_string(),
        name: piece.id.words(::words::Words::english()).to_owned(),
        cloth: cloth_name(context, piece),
        count: piece.cut.total().to_string(),
        pairing: pairing(piece.cut),
        area: areas.join(" / "),
        notes: notes(piece, &cuts),
        thumbnail: thumbnail.transpose()?,
    })
}

/// The cut pieces of a piece: one, or one for each copy where they differ.
pub(super) fn cuts<'a>(
    context: &'a Context<'_>,
    piece: PieceId,
) -> impl Iterator<Item = &'a CutPiece> {
    context.cut.of(piece)
}

fn cloth_name(context: &Context<'_>, piece: &Piece) -> String {
    cloth_of_piece(context, piece)
        .and_then(|key| context.loaded.collection.cloths.get(key))
        .map_or_else(|| piece.cloth.code().to_owned(), |c| c.name.clone())
}

/// The name of the cloth a piece is cut from; a pocket's lining may have one of its own.
pub(super) fn cloth_of_piece<'a>(context: &Context<'a>, piece: &Piece) -> Option<&'a str> {
    let style = &context.loaded.style;
    let back = &style.pockets.back;
    match (piece.cloth, piece.id) {
        (_, PieceId::BackLiningLeft) => style.lining_of(&back.left),
        (_, PieceId::BackLiningRight) => style.lining_of(&back.right),
        (ClothUse::Shell, _) => Some(&style.cloth.shell),
        (ClothUse::Pocketing, _) => Some(&style.cloth.pocketing),
        (ClothUse::Lining, _) => style.cloth.lining.as_deref(),
    }
}

fn pairing(cut: Cut) -> String {
    match (cut.as_drawn, cut.mirrored) {
        (0 | 1, 0) | (0, 1) => String::new(),
        (n, 0) | (0, n) => format!("{n} alike"),
        (1, 1) => "left and right".to_owned(),
        (n, m) if n == m => format!("{n} left, {m} right"),
        (n, m) => format!("{n} as drawn, {m} mirrored"),
    }
}

fn notes(piece: &Piece, cuts: &[&CutPiece]) -> String {
    let refused = cuts.is_empty();
    let halves = cuts.iter().any(|cut| cut.part != cutting::Part::Whole);
    let differ = cuts.len() > 1 && !halves;
    let fold = piece.lines.iter().any(|line| line.kind == InnerKind::Fold);
    let on_cloth_edge = cuts.iter().any(|cut| cut.cloth_edge.is_some());
    joined(
        [
            if refused {
                "not cut until it is settled how"
            } else {
                ""
            },
            if on_cloth_edge {
                "outseam on the cloth's finished edge"
            } else {
                ""
            },
            if halves {
                "cut in two, joined at the centre back"
            } else {
                ""
            },
            if differ { "left and right differ" } else { "" },
            if fold { "folded" } else { "" },
        ],
        "; ",
    )
}
