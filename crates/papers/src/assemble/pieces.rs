//! The list of pieces.

use ::words::{key, say};
use cutting::CutPiece;
use draft::{ClothUse, Cut, InnerKind, Piece, PieceId};

use super::back_pockets;
use super::context::Context;
use super::figures::drawn;
use crate::{PaperError, PieceRow};

pub(super) fn note(context: &Context<'_>) -> String {
    let size = context.shown.size.to_string();
    let mut said = vec![
        context.say.say(say::PapersPiecesNote { size }),
        context.say.named(key::PAPERS_PIECES_TRUE_SIZE).to_owned(),
    ];
    said.extend(back_pockets::differ(context).map(|differ| differ + "."));
    said.join(" ")
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
        .map(|cut| drawn(&cut_sheets::piece_thumbnail(cut, context.say)));
    Ok(PieceRow {
        number: (index + 1).to_string(),
        name: piece.id.words(context.say).to_owned(),
        cloth: cloth_name(context, piece),
        // A piece that is cut in two is counted by its halves.
        count: (piece.cut.total() as usize).max(cuts.len()).to_string(),
        pairing: pairing(context, piece.cut),
        area: areas.join(" / "),
        notes: notes(context, piece, &cuts),
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

fn pairing(context: &Context<'_>, cut: Cut) -> String {
    let words = context.say;
    match (cut.as_drawn, cut.mirrored) {
        (0 | 1, 0) | (0, 1) => String::new(),
        (n, 0) | (0, n) => words.say(say::PapersAlike { n: n.to_string() }),
        (1, 1) => words.named(key::PAPERS_LEFT_AND_RIGHT).to_owned(),
        (n, m) if n == m => words.say(say::PapersLefts {
            left: n.to_string(),
            right: m.to_string(),
        }),
        (n, m) => words.say(say::PapersDrawnMirrored {
            drawn: n.to_string(),
            mirrored: m.to_string(),
        }),
    }
}

fn notes(context: &Context<'_>, piece: &Piece, cuts: &[&CutPiece]) -> String {
    let refused = cuts.is_empty();
    let halves = cuts.iter().any(|cut| cut.part != cutting::Part::Whole);
    let differ = cuts.len() > 1 && !halves;
    let fold = piece.lines.iter().any(|line| line.kind == InnerKind::Fold);
    let on_cloth_edge = cuts.iter().any(|cut| cut.cloth_edge.is_some());
    let said = [
        (refused, key::PAPERS_PIECE_NOT_CUT),
        (on_cloth_edge, key::PAPERS_PIECE_ON_EDGE),
        (halves, key::PAPERS_PIECE_IN_TWO),
        (differ, key::PAPERS_PIECE_SIDES_DIFFER),
        (fold, key::PAPERS_PIECE_FOLDED),
    ];
    let said: Vec<&str> = said
        .into_iter()
        .filter(|(there, _)| *there)
        .map(|(_, key)| context.say.named(key))
        .collect();
    said.join("; ")
}
