//! A DXF file without blocks.

use super::flattened::{Flat, FlatShape, Passed, pass};
use super::layer;
use crate::chain;
use crate::error::ReadError;
use crate::loose::{self, LooseLine};
use crate::model::{Note, Piece};

/// Makes pieces of entities that lie in no block. Lines of a layer that meet end to end are one line.
pub(super) fn pieces(flats: Vec<Flat>, passed: &mut Passed) -> Result<Vec<Piece>, ReadError> {
    let mut lines = Vec::new();
    let mut parts = std::collections::BTreeMap::new();
    let mut texts = Vec::new();
    for flat in flats {
        match flat.shape {
            FlatShape::Path {
                points,
                closed: true,
            } => lines.push(loose(points, true)),
            FlatShape::Path { points, .. } => {
                let layer: &mut Vec<_> = parts.entry(flat.layer_name).or_default();
                layer.push(points);
            }
            FlatShape::Text { at, words, .. } if flat.layer != Some(layer::CUT) => {
                texts.push(Note { words, at });
            }
            FlatShape::Text { at, words, .. } if !words.contains(':') => {
                texts.push(Note { words, at });
            }
            FlatShape::Text { .. } => {}
            FlatShape::Point { .. } => pass(passed, "POINT outside any block"),
        }
    }
    for (_, layer) in parts {
        let (rings, open) = chain::closed(layer);
        lines.extend(rings.into_iter().map(|points| loose(points, true)));
        lines.extend(open.into_iter().map(|points| loose(points, false)));
    }
    loose::pieces(lines, texts)
}

fn loose(points: Vec<geometry::Point>, closed: bool) -> LooseLine {
    LooseLine {
        points,
        closed,
        name: String::new(),
    }
}
