//! A block as a piece.

use geometry::{Point, area};
use trade::Angle;

use super::flattened::{Flat, FlatShape, Passed, pass};
use super::layer;
use super::mark::Marks;
use crate::chain;
use crate::error::{ReadError, shown};
use crate::grid::ring_on_grid;
use crate::limits::MOST_ON_CUT;
use crate::model::Piece;

/// The least area of a piece, in square millimetres.
const LEAST_AREA: f64 = 1.0;

/// Makes a piece of what lies in a block; none where it is no piece at all.
pub(super) fn build(
    block: &str,
    line: usize,
    flats: Vec<Flat>,
    passed: &mut Passed,
) -> Result<Option<Piece>, ReadError> {
    let mut piece = Piece {
        as_drawn: 1,
        ..Piece::default()
    };
    let (mut rings, mut parts) = (Vec::new(), Vec::new());
    let (mut is_piece, mut grain) = (false, 0.0);
    let mut marks = Marks::new(line);
    for flat in flats {
        match (flat.layer, flat.shape) {
            (Some(layer::CUT), FlatShape::Path { points, closed }) => {
                is_piece = true;
                if closed { &mut rings } else { &mut parts }.push(points);
            }
            (Some(layer::MIRROR), FlatShape::Path { points, .. }) => {
                piece.mirror = piece.mirror.or(ends(&points));
            }
            (Some(layer::GRAIN), FlatShape::Path { points, .. }) => {
                // Arrow heads may be drawn beside the line: the longest is the grain.
                if let Some((a, b)) = ends(&points)
                    && (b - a).hypot() > grain
                {
                    grain = (b - a).hypot();
                    piece.grain = Some((a, b));
                }
            }
            (
                Some(layer::CUTOUT),
                FlatShape::Path {
                    points,
                    closed: true,
                },
            ) => {
                piece.cutouts.push(ring_on_grid(points));
            }
            (Some(layer::CURVE), FlatShape::Point { .. }) => {}
            (layer, FlatShape::Text { at, along, words }) => {
                let is_note = layer == Some(layer::NOTE);
                if !is_note && piece_text(&mut piece, flat.line, (at, along), &words)? {
                    is_piece = true;
                } else if !is_note && is_grade_rule(&words) {
                    pass(passed, "grade rule");
                } else {
                    marks.text(flat.line, at, words)?;
                }
            }
            (Some(layer), shape) => {
                if !marks.add(flat.line, layer, shape)? {
                    pass(passed, &format!("on layer {layer}"));
                }
            }
            (None, _) => pass(passed, &format!("on layer {}", shown(&flat.layer_name))),
        }
    }
    if !is_piece {
        return Ok(None);
    }
    let (chained, _) = chain::closed(parts);
    rings.extend(chained);
    piece.cut = cut_line(block, line, rings, &mut piece.cutouts)?;
    if piece.name.is_empty() {
        block.clone_into(&mut piece.name);
    }
    marks.settle(&mut piece);
    Ok(Some(piece))
}

/// The largest of the closed lines; the others are cut out of it.
fn cut_line(
    block: &str,
    line: usize,
    rings: Vec<Vec<Point>>,
    cutouts: &mut Vec<Vec<Point>>,
) -> Result<Vec<Point>, ReadError> {
    const INSTEAD: &str = "draw the cut line as one closed POLYLINE on layer 1";
    let mut rings: Vec<Vec<Point>> = rings.into_iter().map(ring_on_grid).collect();
    let size = |ring: &Vec<Point>| area(ring).to_mm2();
    let largest = (0..rings.len()).max_by(|a, b| {
        let at = |k: &usize| rings.get(*k).map_or(0.0, size);
        // The first of equals.
        at(a).total_cmp(&at(b)).then(b.cmp(a))
    });
    let Some(largest) = largest else {
        let what = format!("the block {} has no closed cut line", shown(block));
        return Err(ReadError::line(line, what, INSTEAD));
    };
    let cut = rings.remove(largest);
    if cut.len() < 3 || size(&cut) < LEAST_AREA {
        let what = format!(
            "the cut line of the block {} encloses nothing",
            shown(block)
        );
        return Err(ReadError::line(line, what, INSTEAD));
    }
    if cut.len() > MOST_ON_CUT {
        return Err(ReadError::line(
            line,
            format!(
                "the cut line of the block {} has {} points",
                shown(block),
                cut.len()
            ),
            format!("write at most {MOST_ON_CUT}"),
        ));
    }
    cutouts.extend(rings.into_iter().filter(|ring| ring.len() > 2));
    Ok(cut)
}

fn ends(points: &[Point]) -> Option<(Point, Point)> {
    points
        .first()
        .copied()
        .zip(points.last().copied())
        .filter(|(a, b)| a != b)
}

/// "# 12": which rule grades the point beside it.
fn is_grade_rule(words: &str) -> bool {
    let number = words.strip_prefix('#').map(str::trim);
    number.is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()))
}

/// Takes what a text says of the piece as a whole; false where it says something else.
fn piece_text(
    piece: &mut Piece,
    line: usize,
    place: (Point, Angle),
    words: &str,
) -> Result<bool, ReadError> {
    let Some((key, value)) = words.split_once(':') else {
        return Ok(false);
    };
    let value = value.trim();
    let field = match key.trim().to_ascii_lowercase().as_str() {
        "piece name" => {
            (piece.words_at, piece.words_along) = place;
            &mut piece.name
        }
        "size" => &mut piece.size,
        "category" => &mut piece.category,
        "material" => &mut piece.material,
        "annotation" => {
            if piece.notes.len() < crate::limits::MOST_MARKS && !value.is_empty() {
                piece.notes.push(value.to_owned());
            }
            return Ok(true);
        }
        "quantity" => {
            (piece.as_drawn, piece.mirrored) = quantity(line, value)?;
            return Ok(true);
        }
        _ => return Ok(false),
    };
    value.clone_into(field);
    Ok(true)
}

/// "1,1": how many as drawn, and how many mirrored.
fn quantity(line: usize, value: &str) -> Result<(u32, u32), ReadError> {
    /// More of one piece than any garment has.
    const MOST: u32 = 1_000;
    let number = |text: &str| text.trim().parse().ok().filter(|n| *n <= MOST);
    let both = match value.split_once(',') {
        Some((drawn, mirrored)) => number(drawn).zip(number(mirrored)),
        None => number(value).zip(Some(0)),
    };
    both.ok_or_else(|| {
        ReadError::line(
            line,
            format!("the quantity is `{}`", shown(value)),
            "write how many as drawn and how many mirrored, such as Quantity: 1,1",
        )
    })
}
