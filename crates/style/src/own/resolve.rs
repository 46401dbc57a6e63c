//! Finding the edges that `[pattern]` names on the outlines of the file of pieces.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;

use super::pieces::{PieceBlock, PieceFile, read_piece_file};
use super::{OwnOutline, OwnPiece, Place};
use crate::details::ArtPath;
use crate::known::nearest;
use crate::load::{read_file_of, unfit_file};
use crate::parse::Places;
use crate::reader::{or_list, short};
use crate::report::{Diagnostic, Report, Source};
use crate::{Along, Collection, EdgeId, PieceId, Size, StyleDoc};

/// The largest file of pieces that is read: 27 sizes of a dozen pieces with 500 points each are 3 MB.
const LARGEST: u64 = 24 * 1024 * 1024;

/// Reads the file of pieces and lays the style's edges on it.
pub(crate) fn take_pattern(
    source: &Source,
    style: &mut StyleDoc,
    folder: &Path,
    collection: Option<&Collection>,
    places: &Places,
    report: &mut Report,
) {
    let sizes: Vec<Size> = style.sizes.all().collect();
    let shell = collection.and_then(|c| c.cloths.get(&style.cloth.shell));
    let Some(pattern) = &mut style.pattern else {
        return;
    };
    pattern.shrinkage =
        shell.map(|cloth| [Along::Warp, Along::Weft].map(|along| cloth.shrinkage(along)));
    let problem = |path: &str, code, message: String, hint: String| {
        let span = places.get(path).cloned().unwrap_or(0..0);
        Diagnostic::at(source, span, code, message)
            .about(path)
            .hint(hint)
    };
    let file = match read_pieces(&pattern.file, folder) {
        Ok(file) => file,
        Err(Unread::Here(code, message)) => {
            let hint = "put the file into the style's own folder with fellwork bring, and name it from there";
            report.push(problem("pattern.file", code, message, hint.to_owned()));
            return;
        }
        Err(Unread::There(other)) => {
            for one in other.problems {
                report.push(one.about("pattern.file"));
            }
            return;
        }
    };
    let file_name = pattern.file.as_str().to_owned();
    let allowed: Vec<bool> = pattern
        .pieces
        .values()
        .map(|piece| {
            piece
                .edges
                .iter()
                .all(|e| pattern.allowance(e.id).is_some())
        })
        .collect();
    for ((id, piece), has_allowances) in pattern.pieces.iter_mut().zip(allowed) {
        match laid(&file_name, &file, *id, piece, &sizes, has_allowances) {
            Ok(outlines) => piece.outlines = Arc::new(outlines),
            Err(Unfit { at, message, hint }) => {
                let path = match at {
                    At::Piece => format!("pattern.{}.piece", id.code()),
                    At::Edge(edge) => format!("pattern.{}.{}", id.code(), edge.code()),
                };
                report.push(problem(&path, "style::unfit-pattern", message, hint));
            }
        }
    }
}

enum Unread {
    /// The name in the style file is at fault.
    Here(&'static str, String),
    /// The file itself is.
    There(Report),
}

fn read_pieces(name: &ArtPath, folder: &Path) -> Result<PieceFile, Unread> {
    if let Some((code, message)) = unfit_file(name, folder, LARGEST) {
        return Err(Unread::Here(code, message));
    }
    let path = name.in_folder(folder);
    let path = fs::canonicalize(&path).unwrap_or(path);
    let text = read_file_of(&path, LARGEST).map_err(Unread::There)?;
    read_piece_file(&name.in_folder(folder).display().to_string(), &text).map_err(Unread::There)
}

/// Where in the style file something does not fit.
enum At {
    Piece,
    Edge(EdgeId),
}

/// Why a piece does not fit.
struct Unfit {
    at: At,
    message: String,
    hint: String,
}

impl Unfit {
    fn piece(message: impl Into<String>, hint: impl Into<String>) -> Unfit {
        Unfit {
            at: At::Piece,
            message: message.into(),
            hint: hint.into(),
        }
    }
}

fn laid(
    file_name: &str,
    file: &PieceFile,
    id: PieceId,
    piece: &OwnPiece,
    sizes: &[Size],
    has_allowances: bool,
) -> Result<BTreeMap<Size, OwnOutline>, Unfit> {
    let there = file.pieces.keys().map(String::as_str);
    let Some(blocks) = file.pieces.get(&piece.piece) else {
        let hint = match nearest(&piece.piece, there.clone()) {
            Some(near) => format!("did you mean \"{near}\"?"),
            None => {
                let names: Vec<String> = there.map(|n| format!("\"{}\"", short(n))).collect();
                format!("write {}", or_list(&names))
            }
        };
        let message = format!(
            "{} has no piece named \"{}\"",
            file_name,
            short(&piece.piece)
        );
        return Err(Unfit::piece(message, hint));
    };
    let mut out = BTreeMap::new();
    for size in sizes {
        let Some(block) = blocks.get(size) else {
            let held: Vec<String> = blocks.keys().map(Size::to_string).collect();
            return Err(Unfit::piece(
                format!(
                    "{} has \"{}\" in {}, not in {size}, and [sizes] asks for it",
                    file_name,
                    piece.piece,
                    held.join(", ")
                ),
                "keep in [sizes] only what the pattern holds, or bring the graded pattern",
            ));
        };
        if block.grain.is_none() {
            return Err(Unfit::piece(
                format!("\"{}\" in {size} has no grain line", piece.piece),
                "draw the grain line in the pattern and bring it again",
            ));
        }
        if !block.sewn && !has_allowances {
            return Err(Unfit::piece(
                format!(
                    "\"{}\" has no line it is sewn along, only the one it is cut along",
                    piece.piece
                ),
                "state what is cut beyond the seam: allowance = \"1 cm\" in [pattern], and other widths in [pattern.allowances]",
            ));
        }
        let edges = edges(block, id, piece, *size)?;
        out.insert(
            *size,
            OwnOutline {
                edges,
                sewn: block.sewn,
                grain: block.grain,
                notches: block.notches.clone(),
            },
        );
    }
    Ok(out)
}

/// The edges of a piece as stretches of its outline, in the style's order.
fn edges(
    block: &PieceBlock,
    id: PieceId,
    piece: &OwnPiece,
    size: Size,
) -> Result<Vec<(EdgeId, Vec<Place>)>, Unfit> {
    let at = |edge: EdgeId, corner: &str| {
        block.corners.get(corner).copied().ok_or_else(|| {
            let names: Vec<String> = block.corners.keys().map(|n| format!("\"{n}\"")).collect();
            Unfit {
                at: At::Edge(edge),
                message: format!(
                    "\"{}\" in {size} has no corner named \"{}\"",
                    piece.piece,
                    short(corner)
                ),
                hint: format!("its corners are {}", names.join(", ")),
            }
        })
    };
    let mut ends = Vec::new();
    for edge in &piece.edges {
        ends.push((edge.id, at(edge.id, &edge.from)?, at(edge.id, &edge.to)?));
    }
    let n = block.outline.len();
    let order = || {
        let names: Vec<&str> = piece.edges.iter().map(|e| e.id.code()).collect();
        names.join(", ")
    };
    for (k, (edge, from, to)) in ends.iter().enumerate() {
        let (before, _, end) = ends[(k + ends.len() - 1) % ends.len()];
        if end != *from {
            return Err(Unfit {
                at: At::Edge(*edge),
                message: format!(
                    "`{}` begins at \"{}\", and `{}` ends at \"{}\"",
                    edge.code(),
                    piece.edges[k].from,
                    before.code(),
                    piece.edges[(k + piece.edges.len() - 1) % piece.edges.len()].to
                ),
                hint: format!(
                    "each edge begins where the one before it ends, once round the {}: {}",
                    id.code().replace('_', " "),
                    order()
                ),
            });
        }
        if from == to {
            return Err(Unfit {
                at: At::Edge(*edge),
                message: format!("`{}` begins and ends at the same corner", edge.code()),
                hint: "name the corner it ends at".to_owned(),
            });
        }
    }
    // Either way round is fine, but it has to be once round.
    let round = |forward: bool| -> usize {
        let step = |(_, from, to): &(EdgeId, usize, usize)| {
            if forward {
                (to + n - from) % n
            } else {
                (from + n - to) % n
            }
        };
        ends.iter().map(step).sum()
    };
    let forward = if round(true) == n {
        true
    } else if round(false) == n {
        false
    } else {
        return Err(Unfit {
            at: At::Piece,
            message: format!(
                "the edges of \"{}\" in {size} do not go once round it",
                piece.piece
            ),
            hint: format!(
                "name their corners in the order in which they lie: {}",
                order()
            ),
        });
    };
    let stretch = |from: usize, to: usize| -> Vec<Place> {
        let (steps, step) = if forward {
            ((to + n - from) % n, 1)
        } else {
            ((from + n - to) % n, n - 1)
        };
        (0..=steps)
            .map(|k| block.outline[(from + k * step) % n])
            .collect()
    };
    Ok(ends
        .into_iter()
        .map(|(edge, from, to)| (edge, stretch(from, to)))
        .collect())
}
