//! The constructions of a seam: how many plies meet, what they need beyond the seam line, how the
//! allowance ends up inside, and the published class.
//!
//! Allowances without another source are common practice.

use style::{Construction, Seam};
use trade::Length;
use trade::seam::{SeamClass, SeamOperation, operation};

use crate::garment::Finish;

/// Both plies of an even seam.
const fn even(mm: f64) -> Rule {
    Rule::Even(Length::mm(mm))
}

/// The lap of a felled seam lies between these when it is sewn on a two-needle machine
/// (common practice: finished 6 to 11 mm).
pub const FELL_WIDTH: (Length, Length) = (Length::mm(5.0), Length::mm(14.0));

/// A row never lies nearer to a fold than this, so the lap is at least this much wider than its
/// outermost row (common practice: an edge row is sewn at 1/16 inch).
pub const EDGE_MARGIN: Length = Length::mm(1.6);

/// Taken up by the thickness of the cloth at each turn of a hem (trade practice: 1.5 to 3 mm over
/// both turns of a chain-stitched hem; 1/8 inch at historical-tailoring.com, selvedge jeans).
pub const CLOTH_TURN: Length = Length::mm(1.5);

/// How the allowances of a construction are found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rule {
    /// The same on both plies.
    Even(Length),
    /// Unequal, from the width of the lap; see [`Fell`].
    Felled,
    /// Twice the depth of the hem and what two turns of the cloth take up.
    RolledHem,
    /// Twice the depth the rows need and what two turns of the cloth take up.
    TurnedHem,
    /// No cloth beyond the line.
    None,
}

/// What is known about a construction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Construct {
    /// Which.
    pub construction: Construction,
    /// Plies the needle goes through at the thickest place along the seam.
    pub plies: u8,
    /// Plies it joins.
    pub joins: u8,
    /// How its allowances are found.
    pub rule: Rule,
    /// How the edge inside is finished.
    pub finish: Finish,
    /// Which way it lies inside, in words.
    pub lies: &'static str,
    /// The key of the operation in [`trade::seam::OPERATIONS`] whose machine and class it has.
    pub operation: &'static str,
    /// Which of the operation's classes.
    class: usize,
}

/// All constructions, in the order of [`Construction::WORDS`].
pub const CONSTRUCTS: [Construct; 12] = [
    Construct {
        construction: Construction::PressedOpen,
        plies: 2,
        joins: 2,
        rule: even(12.7),
        finish: Finish::Overedged,
        lies: "allowances pressed apart",
        operation: "outseam-busted",
        class: 0,
    },
    Construct {
        construction: Construction::LapFelled,
        plies: 4,
        joins: 2,
        rule: Rule::Felled,
        finish: Finish::Folded,
        lies: "both edges turned into each other",
        operation: "inseam-felled",
        class: 0,
    },
    Construct {
        construction: Construction::MockFelled,
        plies: 3,
        joins: 2,
        rule: even(12.7),
        finish: Finish::Overedged,
        lies: "both allowances towards the ply on top",
        operation: "front-rise",
        class: 0,
    },
    Construct {
        construction: Construction::SafetyStitched,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: "both allowances to one side",
        operation: "inseam-overedged",
        class: 0,
    },
    Construct {
        construction: Construction::Overlocked,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: "both allowances to one side",
        operation: "outseam-overedged",
        class: 0,
    },
    Construct {
        construction: Construction::BandOverEdge,
        plies: 5,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Folded,
        lies: "body edge inside the band",
        operation: "waistband-folder",
        class: 0,
    },
    Construct {
        construction: Construction::RolledHem,
        plies: 3,
        joins: 1,
        rule: Rule::RolledHem,
        finish: Finish::Folded,
        lies: "turned twice to the inside",
        operation: "hem",
        class: 0,
    },
    Construct {
        construction: Construction::TurnedHem,
        plies: 3,
        joins: 1,
        rule: Rule::TurnedHem,
        finish: Finish::Folded,
        lies: "turned twice to the inside",
        operation: "pocket-hem",
        class: 0,
    },
    Construct {
        construction: Construction::TurnedEdge,
        plies: 3,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Raw,
        lies: "turned to the inside between the plies",
        operation: "pocket-mouth",
        class: 0,
    },
    Construct {
        construction: Construction::PatchSet,
        plies: 3,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Folded,
        lies: "edges turned in under the patch",
        operation: "patch-pocket",
        class: 0,
    },
    Construct {
        construction: Construction::Strip,
        plies: 2,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: "edges meet in the middle of the underside",
        operation: "belt-loop",
        class: 0,
    },
    Construct {
        construction: Construction::Surface,
        plies: 1,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: "joins nothing",
        operation: "fly",
        class: 2,
    },
];

/// What is known about a construction.
pub fn construct(construction: Construction) -> &'static Construct {
    CONSTRUCTS
        .iter()
        .find(|c| c.construction == construction)
        .unwrap_or(&CONSTRUCTS[0])
}

impl Construct {
    /// The usual operation, with its machine.
    pub fn operation(&self) -> Option<&'static SeamOperation> {
        operation(self.operation)
    }

    /// The class in ISO 4916 and ASTM D6193, the variant with as many rows as the seam has where
    /// the table knows one.
    pub fn class(&self, rows: usize) -> Option<&'static SeamClass> {
        let classes = self.operation()?.seams;
        let usual = classes.get(self.class)?;
        let family = |c: &SeamClass| c.astm.split('-').next();
        classes
            .iter()
            .find(|c| family(c) == family(usual) && c.rows().map(usize::from) == Some(rows))
            .or(Some(usual))
    }
}

/// The lap of a felled seam.
///
/// Measured from the visible fold, which is the seam line: the ply on top is turned under by
/// `turn`; the ply below reaches across the lap and is turned back by `turn`. So the two
/// allowances together are `width + 2 turn`, wherever the seam line is put within the lap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fell {
    /// From the visible fold to the fold inside.
    pub width: Length,
    /// How far each edge is turned in.
    pub turn: Length,
}

impl Fell {
    /// The lap that holds a seam's rows: the outermost row keeps the same distance from the inner
    /// fold as the first row keeps from the visible one. The turn is 1.5 mm less than the lap
    /// (trade practice: 8 mm in a lap of 9.5 mm, 9.5 mm in one of 11 mm).
    pub fn of(seam: &Seam) -> Fell {
        let offsets = || seam.rows.iter().map(|r| r.offset).filter(|o| o.is_finite());
        let near = offsets().fold(Length::mm(8.0), Length::min).max(EDGE_MARGIN);
        let far = offsets().fold(Length::ZERO, Length::max);
        let width = (far + near).max(FELL_WIDTH.0).min(FELL_WIDTH.1);
        Fell {
            width,
            turn: width - Length::mm(1.5),
        }
    }

    /// Allowance of the ply on top.
    pub fn over(&self) -> Length {
        self.turn
    }

    /// Allowance of the ply below.
    pub fn under(&self) -> Length {
        self.width + self.turn
    }
}

/// How deep a pocket's hem is turned: enough for its rows.
pub fn turned_depth(seam: &Seam) -> Length {
    let far = seam.rows.iter().map(|r| r.offset).filter(|o| o.is_finite());
    (far.fold(Length::ZERO, Length::max) + EDGE_MARGIN)
        .max(Length::mm(6.0))
        .min(Length::mm(60.0))
}

/// Allowances of the two plies of a seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowances {
    /// On the ply on top, seen from outside.
    pub over: Length,
    /// On the ply below.
    pub under: Length,
}

/// What a seam needs beyond its line on each ply, given the chart's hem depth.
pub fn allowances(seam: &Seam, hem_depth: Length) -> Allowances {
    let both = |a: Length| Allowances { over: a, under: a };
    match construct(seam.construction).rule {
        Rule::Even(a) => both(a),
        Rule::Felled => {
            let fell = Fell::of(seam);
            Allowances {
                over: fell.over(),
                under: fell.under(),
            }
        }
        Rule::RolledHem => both(turned_twice(hem_depth)),
        Rule::TurnedHem => both(turned_twice(turned_depth(seam))),
        Rule::None => both(Length::ZERO),
    }
}

fn turned_twice(depth: Length) -> Length {
    if depth.is_finite() {
        depth.max(Length::ZERO) * 2.0 + CLOTH_TURN * 2.0
    } else {
        Length::ZERO
    }
}
