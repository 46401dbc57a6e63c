//! Reading `[pattern]`.

use std::sync::Arc;

use indexmap::IndexMap;
use trade::counted;

use super::{Drawn, OWN_PIECES, OwnEdge, OwnPattern, OwnPiece, OwnPieceName};
use crate::details::ArtPath;
use crate::read_collection::{all, allowed};
use crate::reader::{Node, Table};
use crate::{EdgeId, PieceId};

/// What the reader of a style says of its own pattern.
pub(crate) fn pattern(mut table: Table<'_>) -> Option<OwnPattern> {
    let file = table
        .required(
            "file",
            "file = \"pattern/....toml\", as fellwork bring writes it",
        )
        .and_then(|node| file(&node));
    let drawn = table
        .optional("drawn")
        .map_or(Some(Drawn::AfterWash), |node| {
            node.choice("style::unknown-word", Drawn::WORDS)
        });
    let allowance = table.optional("allowance").map(|node| node.quantity());
    let allowances = allowances(table.optional_section("allowances"));
    let pieces: Vec<Option<(PieceId, OwnPiece)>> = OWN_PIECES
        .iter()
        .filter_map(|known| {
            let node = table.optional(known.id.code())?;
            Some(
                node.table()
                    .and_then(|table| Some((known.id, piece(known, table)?))),
            )
        })
        .collect();
    let node = table.node.clone();
    table.finish();
    let pieces: IndexMap<PieceId, OwnPiece> = all(pieces.into_iter())?.into_iter().collect();
    whole_body(&node, &pieces)?;
    Some(OwnPattern {
        file: file?,
        drawn: drawn?,
        allowance: allowed(allowance)?,
        allowances: allowances?,
        pieces,
        shrinkage: None,
    })
}

/// Front, back and yoke carry everything else, and only together.
fn whole_body(node: &Node<'_>, pieces: &IndexMap<PieceId, OwnPiece>) -> Option<()> {
    let missing: Vec<&str> = [PieceId::Front, PieceId::Back, PieceId::Yoke]
        .into_iter()
        .filter(|id| !pieces.contains_key(id))
        .map(PieceId::code)
        .collect();
    if !missing.is_empty() {
        let message = format!("[pattern] has no {}", missing.join(" and no "));
        let hint = format!(
            "front, back and yoke are brought together: add [pattern.{}] with its piece and edges",
            missing[0]
        );
        node.problem("style::incomplete-pattern", message, hint);
        return None;
    }
    let front = pieces.get(&PieceId::Front);
    let cut_away = front.is_some_and(|piece| piece.edges.iter().any(|e| e.id == EdgeId::Mouth));
    if cut_away && !pieces.contains_key(&PieceId::PocketFacing) {
        node.problem(
            "style::incomplete-pattern",
            "the front has its pocket mouth cut away, and [pattern] has no pocket_facing to fill the corner",
            "add [pattern.pocket_facing], or bring a front that reaches the outseam and leave out `mouth`",
        );
        return None;
    }
    Some(())
}

fn file(node: &Node<'_>) -> Option<ArtPath> {
    match ArtPath::new(&node.text()?) {
        Ok(path) => Some(path),
        Err(why) => {
            let hint =
                "name a file inside the style's own folder, such as \"pattern/harbour.toml\"";
            node.problem("style::art-outside", format!("`file`: {why}"), hint);
            None
        }
    }
}

fn allowances(table: Table<'_>) -> Option<IndexMap<EdgeId, trade::Length>> {
    let mut table = table;
    let mut edges: Vec<EdgeId> = Vec::new();
    for edge in OWN_PIECES.iter().flat_map(OwnPieceName::edges) {
        if !edges.contains(edge) {
            edges.push(*edge);
        }
    }
    let found: Vec<Option<(EdgeId, trade::Length)>> = edges
        .into_iter()
        .filter_map(|edge| {
            let node = table.optional(edge.code())?;
            Some(node.quantity().map(|length| (edge, length)))
        })
        .collect();
    table.finish();
    Some(all(found.into_iter())?.into_iter().collect())
}

fn piece(known: &'static OwnPieceName, mut table: Table<'_>) -> Option<OwnPiece> {
    let name = table
        .required("piece", "piece = \"...\", a name from the file of pieces")
        .and_then(|node| node.text());
    let mut fine = true;
    let mut edges = Vec::new();
    for edge in known.edges() {
        let (code, left_out) = (edge.code(), known.left_out(*edge));
        let node = if left_out.is_some() {
            table.optional(code)
        } else {
            table.required(
                code,
                &format!("{code} = [\"1\", \"2\"], the corners it runs between"),
            )
        };
        match node.map(|node| ends(&node)) {
            Some(Some([from, to])) => edges.push(OwnEdge {
                id: *edge,
                from,
                to,
            }),
            Some(None) => fine = false,
            None => fine &= left_out.is_some(),
        }
    }
    table.finish();
    fine.then_some(())?;
    Some(OwnPiece {
        piece: name?,
        edges,
        outlines: Arc::default(),
    })
}

/// The two corners of an edge.
fn ends(node: &Node<'_>) -> Option<[String; 2]> {
    const EXAMPLE: &str = "[\"1\", \"2\"], the corners it runs between";
    let members = node.list(EXAMPLE)?;
    let [from, to] = members.as_slice() else {
        let message = format!(
            "`{}` names {}",
            node.key(),
            counted(members.len(), "corner", "corners")
        );
        node.problem("style::unfit-edge", message, format!("write {EXAMPLE}"));
        return None;
    };
    let (from, to) = (from.text(), to.text());
    Some([from?, to?])
}
