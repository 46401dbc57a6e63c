//! The pieces of an order on one cloth, ready to be laid.

use std::collections::BTreeMap;

use lay::{MOST_PIECES, Matched, OnEdge, Piece, Problem, StraightSide, Turn, Zone};
use style::Cloth;
use trade::Length;
use words::Said;

use crate::fewer_points::thinned;
use crate::piece::{CutPiece, CutSize};

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

/// The rules all pieces of a spread keep.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpreadRules {
    /// How pieces may lie.
    pub way: Way,
    /// What is left between pieces for the knife.
    pub gap: Length,
    /// How many shade zones the width is parted into, evenly. Left and right of a pair lie in one zone.
    pub zones: u32,
    /// For a pair that cannot lie in one zone, because its pieces lie on the cloth's own edges or are
    /// wider than a zone, or where there is one zone only: how far apart along the cloth left and right
    /// may be. `None` does not ask.
    pub match_within: Option<Length>,
}

impl SpreadRules {
    /// Pieces may lie this way with that gap, and shade is not looked at.
    pub const fn plain(way: Way, gap: Length) -> Self {
        Self {
            way,
            gap,
            zones: 1,
            match_within: None,
        }
    }
}

/// Some pairs of one size to be laid.
#[derive(Clone, Copy, Debug)]
pub struct SizePairs<'a> {
    /// What they are called on the lay: "32x32", or with the style's name where several lie together.
    pub label: &'a str,
    /// Their pieces.
    pub cut: &'a CutSize,
    /// How many pairs.
    pub pairs: u32,
}

/// Pieces to be laid, and which piece each key of the lay stands for.
#[derive(Clone, Debug)]
pub struct Spread {
    /// What is to be laid.
    pub problem: Problem,
    /// Pieces that have to lie near each other along the cloth.
    pub matched: Vec<Matched>,
    /// Whether every piece comes as often as its mirror image: only then can plies lie face to face.
    pub face_to_face: bool,
    pieces: BTreeMap<String, Named>,
}

/// What one key of a lay stands for.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// "32x32".
    pub size: String,
    /// "Front", "Waistband, left half".
    pub piece: Said,
    /// Whether it is cut from the mirror image.
    pub mirrored: bool,
}

impl Spread {
    /// The pieces of some pairs on one cloth of the collection: of each size as many as asked.
    ///
    /// On cloth woven with a finished edge, pieces that are sewn along it lie with that side on an edge.
    pub fn new(
        order: &[SizePairs<'_>],
        cloth_name: &str,
        cloth: &Cloth,
        rules: &SpreadRules,
    ) -> Spread {
        let mut spread = Spread {
            problem: Problem {
                width: cloth.width,
                pieces: Vec::new(),
                gap: rules.gap,
                faults: Vec::new(),
                sets: Vec::new(),
            },
            matched: Vec::new(),
            face_to_face: true,
            pieces: BTreeMap::new(),
        };
        for pairs in order.iter().filter(|pairs| pairs.pairs > 0) {
            let on_cloth = pairs.cut.pieces.iter();
            let on_cloth = on_cloth.filter(|piece| piece.cloth_name == cloth_name);
            // What one pair of this size takes of each piece, pair by pair.
            // More pairs than a lay may hold pieces are refused when it is looked for.
            let mut sets = vec![Vec::new(); (pairs.pairs as usize).min(MOST_PIECES)];
            // The two copies of a pair that differ are two entries, one after the other.
            let mut entries: Vec<&CutPiece> = Vec::new();
            for piece in on_cloth {
                let together = entries.last().is_some_and(|last| {
                    last.pair && piece.pair && (last.piece, last.part) == (piece.piece, piece.part)
                });
                if !together {
                    spread.add(pairs, &entries, (cloth, rules), &mut sets);
                    entries.clear();
                }
                entries.push(piece);
            }
            spread.add(pairs, &entries, (cloth, rules), &mut sets);
            sets.retain(|set| !set.is_empty());
            spread.problem.sets.extend(sets);
        }
        spread
    }

    /// What a key stands for.
    pub fn named(&self, key: &str) -> Option<&Named> {
        self.pieces.get(key)
    }

    /// Adds the copies of one piece, and to the set of each pair how many it takes.
    fn add(
        &mut self,
        pairs: &SizePairs<'_>,
        entries: &[&CutPiece],
        (cloth, rules): (&Cloth, &SpreadRules),
        sets: &mut [Vec<usize>],
    ) {
        let mut lies = Vec::new();
        for piece in entries {
            self.face_to_face &= piece.as_drawn == piece.mirrored;
            for (mirrored, count) in [(false, piece.as_drawn), (true, piece.mirrored)] {
                let copies = (count as usize).saturating_mul(pairs.pairs as usize);
                if copies > 0 {
                    lies.push(Lies::new(piece, mirrored, copies, cloth, rules));
                }
            }
        }
        let twins = match lies.as_slice() {
            [left, right] => left.cut.pair && left.piece.demand == right.piece.demand,
            _ => false,
        };
        let zones = if twins && lies.iter().all(|one| one.fits_a_zone(cloth, rules)) {
            rules.zones.max(1)
        } else {
            1
        };
        // Piece by piece another zone comes first, so that all are filled alike.
        let first = self.problem.pieces.len() / 2;
        for zone in 0..zones {
            let mut keys = Vec::new();
            for one in &lies {
                let in_zone = |copy: &usize| (copy + first) % zones as usize == zone as usize;
                let demand = (0..one.piece.demand).filter(in_zone).count();
                if demand == 0 {
                    continue;
                }
                let each = one.piece.demand / sets.len().max(1);
                for (pair, set) in sets.iter_mut().enumerate() {
                    let of_pair = pair * each..(pair + 1) * each;
                    set.resize(self.problem.pieces.len(), 0);
                    set.push(of_pair.filter(in_zone).count());
                }
                let mut key = key(pairs.label, one.cut, one.mirrored);
                let mut laid = one.piece.clone();
                if zones > 1 {
                    key = format!("{key}, zone {}", zone + 1);
                    let width = cloth.width / f64::from(zones);
                    laid.within = Some(Zone {
                        from: width * f64::from(zone),
                        to: width * f64::from(zone + 1),
                    });
                }
                let named = Named {
                    size: pairs.label.to_owned(),
                    piece: one.cut.said(),
                    mirrored: one.mirrored,
                };
                self.pieces.insert(key.clone(), named);
                keys.push(key.clone());
                self.problem.pieces.push(Piece {
                    key,
                    demand,
                    ..laid
                });
            }
            if let (true, 1, [first, second], Some(within)) =
                (twins, zones, keys.as_slice(), rules.match_within)
            {
                self.matched.push(Matched {
                    first: first.clone(),
                    second: second.clone(),
                    within,
                });
            }
        }
    }
}

/// How one hand of a piece lies on the cloth.
struct Lies<'a> {
    cut: &'a CutPiece,
    mirrored: bool,
    piece: Piece,
}

impl<'a> Lies<'a> {
    fn new(
        cut: &'a CutPiece,
        mirrored: bool,
        demand: usize,
        cloth: &Cloth,
        rules: &SpreadRules,
    ) -> Self {
        let lies = cut.on_cloth(mirrored);
        let turns = match rules.way {
            Way::OneWay => vec![Turn::None],
            Way::TwoWay => vec![Turn::None, Turn::Half],
        };
        Self {
            cut,
            mirrored,
            piece: Piece {
                key: String::new(),
                outline: thinned(&lies.outline, WITHIN),
                demand,
                turns,
                on_edge: lies.edge.filter(|_| cloth.selvedge).map(|edge| OnEdge {
                    side: if edge.upper {
                        StraightSide::Upper
                    } else {
                        StraightSide::Lower
                    },
                    inset: Length::ZERO,
                }),
                within: None,
            },
        }
    }

    fn fits_a_zone(&self, cloth: &Cloth, rules: &SpreadRules) -> bool {
        let levels = self.piece.outline.iter().map(|p| p.y);
        let (low, high) = levels.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), y| {
            (low.min(y), high.max(y))
        });
        let zone = cloth.width / f64::from(rules.zones.max(1));
        self.piece.on_edge.is_none() && high - low <= zone.to_mm()
    }
}

fn key(label: &str, piece: &CutPiece, mirrored: bool) -> String {
    let hand = if mirrored { "mirrored" } else { "as drawn" };
    format!("{label} {} {hand}", piece.code())
}
