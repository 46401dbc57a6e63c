//! Every size an order names, cut, and what is to be laid on each cloth.

use std::fmt;

use cutting::{CutSize, Plan, SizePairs, Spread, SpreadRules, Way, cut};
use style::{Cloth, LoadedOrder, OrderWay, Size, SpreadLimits};
use thiserror::Error;
use trade::counted;
use words::Words;

/// Why an order cannot be planned.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OrderError {
    /// A piece cannot be cut until somebody decides how.
    #[error("{why}")]
    CannotCut {
        /// What is in the way.
        why: String,
        /// The ways out.
        ways: Vec<String>,
    },
    /// A lay cannot be made.
    #[error("{cloth}, {pairs}: {why}")]
    Lay {
        /// The cloth.
        cloth: String,
        /// What was to be laid.
        pairs: String,
        /// Why not.
        why: lay::LayError,
    },
    /// The limits leave no plan: every one was weighed, with lays as short as can be.
    #[error("{cloth}: no plan cuts {asked}")]
    NoPlan {
        /// The cloth.
        cloth: String,
        /// What was to be cut, and within which limits.
        asked: Asked,
    },
    /// No plan was found, which does not say that there is none.
    #[error("{cloth}: no plan was found that cuts {asked}; {why}")]
    NotFound {
        /// The cloth.
        cloth: String,
        /// What was to be cut, and within which limits.
        asked: Asked,
        /// Why there may be one all the same.
        why: Unsure,
    },
}

/// What an order asks of the plan of one cloth.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Asked {
    /// The pairs ordered.
    pub pairs: u32,
    /// The fewest lays.
    pub fewest_lays: usize,
    /// The most lays.
    pub most_lays: usize,
    /// The most pairs in one lay.
    pub most_pairs: u32,
    /// The most plies in one lay.
    pub most_plies: u32,
    /// The longest ply.
    pub table: String,
}

impl fmt::Display for Asked {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (fewest, most) = (self.fewest_lays, self.most_lays);
        let lays = match (fewest, most) {
            (_, 1) => "1 lay".to_owned(),
            (0..=1, _) => format!("at most {most} lays"),
            _ if fewest == most => format!("{most} lays"),
            _ => format!("{fewest} to {most} lays"),
        };
        write!(
            f,
            "{} exactly in {lays} of at most {} and {} on a table of {}",
            counted(self.pairs, "pair", "pairs"),
            counted(self.most_pairs, "pair", "pairs"),
            counted(self.most_plies, "ply", "plies"),
            self.table,
        )
    }
}

/// Why a plan may exist though none was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unsure {
    /// There are too many to weigh them all.
    TooMany,
    /// By the estimates the plies are longer than the table.
    Estimated,
    /// The lays that were looked for are longer than the table, their bounds are not.
    LookedFor,
}

impl fmt::Display for Unsure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TooMany => "there are too many to weigh them all, so there may be one",
            Self::Estimated => {
                "by the estimates the plies are too long for the table, but lays that are looked for may fit"
            }
            Self::LookedFor => {
                "the lays that were found are too long for the table, but a longer search may find shorter ones"
            }
        })
    }
}

/// Pairs of one size of one style.
#[derive(Clone, Debug)]
pub struct Kind {
    /// The name of the style's folder.
    pub style: String,
    /// The size.
    pub size: Size,
    /// What it is called on a lay: the size, and the style's name where several are ordered.
    pub label: String,
    /// How many pairs are ordered.
    pub pairs: u32,
    /// The shell it is cut from.
    pub shell: String,
    /// Its pieces.
    pub cut: CutSize,
}

/// An order with every size cut.
#[derive(Clone, Debug)]
pub struct CutOrder<'a> {
    loaded: &'a LoadedOrder,
    /// What is ordered, in the order of the file; a size that is there twice is counted together.
    pub kinds: Vec<Kind>,
}

impl<'a> CutOrder<'a> {
    /// Cuts every size of an order.
    ///
    /// # Errors
    /// [`OrderError::CannotCut`] when a piece cannot be cut as stated.
    pub fn new(loaded: &'a LoadedOrder) -> Result<Self, OrderError> {
        let mut kinds: Vec<Kind> = Vec::new();
        for line in &loaded.order.lines {
            let Some(style) = loaded.styles.get(&line.style) else {
                continue;
            };
            let mut document = style.style.clone();
            if let Some(cloth) = &line.cloth {
                document.cloth.shell.clone_from(cloth);
            }
            for (size, pairs) in &line.pairs {
                let same = kinds.iter_mut().find(|kind| {
                    (&kind.style, kind.size, &kind.shell)
                        == (&line.style, *size, &document.cloth.shell)
                });
                if let Some(same) = same {
                    same.pairs = same.pairs.saturating_add(*pairs);
                    continue;
                }
                let garment = sewing::make(&document, &loaded.collection, *size);
                let cut = cut(&garment, &Plan::of(&document));
                if let Some(refused) = cut.refused.first() {
                    let words = Words::english();
                    let ways = refused.ways.iter().map(|way| words.say(way.as_help()));
                    return Err(OrderError::CannotCut {
                        why: words.say(refused.message()),
                        ways: ways.collect(),
                    });
                }
                kinds.push(Kind {
                    style: line.style.clone(),
                    size: *size,
                    label: size.to_string(),
                    pairs: *pairs,
                    shell: document.cloth.shell.clone(),
                    cut,
                });
            }
        }
        tell_apart(&mut kinds);
        Ok(Self { loaded, kinds })
    }

    /// What is to be laid on each cloth, in the order of the collection's cloths.
    #[must_use]
    pub fn jobs(&self) -> Vec<ClothJob<'_>> {
        let cloths = self.loaded.collection.cloths.iter();
        cloths
            .map(|(name, cloth)| ClothJob {
                name,
                cloth,
                limits: self.loaded.order.limits_of(name),
                kinds: self
                    .kinds
                    .iter()
                    .filter(|kind| kind.cut.pieces.iter().any(|p| p.cloth_name == *name))
                    .collect(),
            })
            .filter(|job| !job.kinds.is_empty())
            .collect()
    }
}

/// Names the style beside the size where several styles are ordered, and the shell where one is cut
/// from several.
fn tell_apart(kinds: &mut [Kind]) {
    let differ = |of: fn(&Kind) -> &String| {
        kinds
            .first()
            .is_some_and(|first| kinds.iter().any(|kind| of(kind) != of(first)))
    };
    let (styles, shells) = (differ(|kind| &kind.style), differ(|kind| &kind.shell));
    for kind in kinds {
        if styles {
            kind.label = format!("{} {}", kind.style, kind.label);
        }
        if shells {
            kind.label = format!("{} {}", kind.label, kind.shell);
        }
    }
}

/// What an order asks of one cloth.
#[derive(Clone, Debug)]
pub struct ClothJob<'a> {
    /// Its name in the collection.
    pub name: &'a str,
    /// The cloth.
    pub cloth: &'a Cloth,
    /// What the cutting room can do with it.
    pub limits: &'a SpreadLimits,
    /// The sizes that have pieces of it.
    pub kinds: Vec<&'a Kind>,
}

impl ClothJob<'_> {
    /// The pieces of one ply with so many pairs of each size.
    #[must_use]
    pub fn spread(&self, pairs: &[u32]) -> Spread {
        let order: Vec<SizePairs<'_>> = self
            .kinds
            .iter()
            .zip(pairs)
            .filter(|(_, pairs)| **pairs > 0)
            .map(|(kind, pairs)| SizePairs {
                label: &kind.label,
                cut: &kind.cut,
                pairs: *pairs,
            })
            .collect();
        let rules = SpreadRules {
            way: match self.limits.way {
                OrderWay::OneWay => Way::OneWay,
                OrderWay::TwoWay => Way::TwoWay,
            },
            gap: self.limits.gap,
            zones: self.limits.zones,
            match_within: self.limits.match_within,
        };
        Spread::new(&order, self.name, self.cloth, &rules)
    }

    /// "1 x 30x32, 2 x 32x32".
    #[must_use]
    pub fn in_words(&self, pairs: &[u32]) -> String {
        let words: Vec<String> = self
            .kinds
            .iter()
            .zip(pairs)
            .filter(|(_, pairs)| **pairs > 0)
            .map(|(kind, pairs)| format!("{pairs} x {}", kind.label))
            .collect();
        words.join(", ")
    }

    /// What a lay is known by: "tideline-14 ferryman 30x32=1 32x32=2".
    #[must_use]
    pub fn known_by(&self, pairs: &[u32]) -> String {
        let mut words = self.name.to_owned();
        let mut style = "";
        for (kind, pairs) in self.kinds.iter().zip(pairs).filter(|(_, n)| **n > 0) {
            if kind.style != style {
                style = &kind.style;
                words.push(' ');
                words.push_str(style);
            }
            words.push_str(&format!(" {}={pairs}", kind.size));
        }
        words
    }

    /// The pairs ordered of each size.
    #[must_use]
    pub fn wanted(&self) -> Vec<u32> {
        self.kinds.iter().map(|kind| kind.pairs).collect()
    }
}
