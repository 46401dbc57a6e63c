//! The pieces of an order on one cloth, ready to be laid.

use std::collections::BTreeMap;

use lay::{OnEdge, Piece, Problem, StraightSide, Turn};
use style::Cloth;
use trade::Length;

use crate::piece::{CutPiece, CutSize};
use crate::thin::thinned;

/// A lay is searched on outlines this near the cut line (common practice: a knife is no truer).
const WITHIN: Length = Length::mm(0.05);

/// How the cloth may be laid on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Every piece the same way up: cloth with a nap or one that shades.
    OneWay,
    /// Pieces may lie head to tail.
    TwoWay,
}

/// Pieces to be laid, and which piece each key of the lay stands for.
#[derive(Clone, Debug)]
pub struct Spread {
    /// What is to be laid.
    pub problem: Problem,
    pieces: BTreeMap<String, Named>,
}

/// What one key of a lay stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// "32x32".
    pub size: String,
    /// "Front", "Waistband, left half".
    pub piece: String,
    /// Whether it is cut from the mirror image.
    pub mirrored: bool,
}

impl Spread {
    /// The pieces of some pairs on one cloth of the collection: of each size as many as asked.
    ///
    /// On cloth woven with a finished edge, pieces that are sewn along it lie with that side on an edge.
    /// `gap` is left between pieces for the knife.
    pub fn new(
        order: &[(&CutSize, u32)],
        cloth_name: &str,
        cloth: &Cloth,
        (way, gap): (Way, Length),
    ) -> Spread {
        let turns = match way {
            Way::OneWay => vec![Turn::None],
            Way::TwoWay => vec![Turn::None, Turn::Half],
        };
        let mut pieces = Vec::new();
        let mut names = BTreeMap::new();
        let copies = order.iter().flat_map(|(size, pairs)| {
            let on_cloth = size.pieces.iter().filter(|p| p.cloth_name == cloth_name);
            on_cloth.map(move |piece| (*size, piece, *pairs))
        });
        for (size, piece, pairs) in copies {
            for (mirrored, count) in [(false, piece.as_drawn), (true, piece.mirrored)] {
                let demand = (count as usize).saturating_mul(pairs as usize);
                if demand == 0 {
                    continue;
                }
                let key = key(size, piece, mirrored);
                let lies = piece.on_cloth(mirrored);
                let named = Named {
                    size: size.size.to_string(),
                    piece: piece.name(),
                    mirrored,
                };
                names.insert(key.clone(), named);
                pieces.push(Piece {
                    key,
                    outline: thinned(&lies.outline, WITHIN),
                    demand,
                    turns: turns.clone(),
                    on_edge: lies.edge.filter(|_| cloth.selvedge).map(|edge| OnEdge {
                        side: if edge.upper {
                            StraightSide::Upper
                        } else {
                            StraightSide::Lower
                        },
                        inset: Length::ZERO,
                    }),
                });
            }
        }
        Spread {
            problem: Problem {
                width: cloth.width,
                pieces,
                gap,
                faults: Vec::new(),
            },
            pieces: names,
        }
    }

    /// What a key stands for.
    pub fn named(&self, key: &str) -> Option<&Named> {
        self.pieces.get(key)
    }
}

fn key(size: &CutSize, piece: &CutPiece, mirrored: bool) -> String {
    let hand = if mirrored { "mirrored" } else { "as drawn" };
    format!("{} {} {hand}", size.size, piece.code())
}
