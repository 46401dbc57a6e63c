//! What is constant about a seam while it is sewn: one row a seam, in one table.
//!
//! Whatever follows from the seam alone stands here; what also asks for its construction, its rows or
//! the style is worked out where it is needed. A seam without its row does not compile.

use draft::{ClothUse, EdgeId, PieceId};
use style::{Construction, Ply, SeamId};
use trade::seam::SeamOperationId;
use words::{Key, key};

/// What is constant about a seam while it is sewn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SeamFacts {
    /// Where its line lies.
    pub line: Line,
    /// The pieces it is sewn onto without an edge of theirs in it.
    pub onto: &'static [PieceId],
    /// The pieces it catches without an edge of theirs in it.
    pub catches: &'static [PieceId],
    /// The cloth it is mostly sewn through.
    pub through: ClothUse,
    /// How it is pulled when the pair is worn.
    pub strain: Strain,
    /// What is faced where an edge is turned; `None` for a seam that turns none.
    pub turned: Option<Turned>,
    /// Operations of the trade that are its own, each with the constructions it is for; any other is
    /// that of its construction.
    pub operations: &'static [OwnOperation],
    /// The machine that is built for it alone.
    pub machine: Option<OwnMachine>,
    /// What it joins: "front and back, crotch to hem".
    pub joins: Key,
    /// What it is called at the head of an operation: "Inseams".
    pub head: Key,
}

/// Where the line of a seam lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Line {
    /// Between different panels, on both legs: the edges of each of its two plies.
    Panels(&'static [Side]),
    /// Between the left and the right copy of the same panels.
    Halves(&'static [Half]),
    /// Elsewhere; how its rows are laid is said seam by seam.
    OfItsOwn,
}

/// An edge of a seam between panels, with the ply it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Side {
    pub piece: PieceId,
    pub edge: EdgeId,
    pub ply: Ply,
}

/// An edge of a seam between two copies of the same panel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Half {
    pub piece: PieceId,
    pub edge: EdgeId,
}

/// An edge of a panel that is joined to what faces it, on both legs, before it is turned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Turned {
    pub piece: PieceId,
    pub edge: EdgeId,
    /// The piece that comes to lie behind it.
    pub faced_with: PieceId,
}

/// How a seam is pulled when the pair is worn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Strain {
    /// Pulled with every step and every seat.
    Loaded,
    /// Holds something in its place.
    Holds,
    /// Bears nothing.
    None,
}

/// An operation of the trade that belongs to one seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct OwnOperation {
    /// The constructions of the seam it is for.
    pub of: &'static [Construction],
    /// Which.
    pub id: SeamOperationId,
}

/// A machine that is built for one seam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum OwnMachine {
    /// A cylinder bed, for the foot of a leg.
    Hemmer,
    /// Rows as far apart as a band is high, behind a band folder.
    Waistband,
}

impl SeamFacts {
    /// Whether it joins panels of the shell.
    pub const fn joins_panels(&self) -> bool {
        matches!(self.line, Line::Panels(_) | Line::Halves(_))
    }

    /// The cloth of the piece it sets something on.
    pub fn ground(&self) -> ClothUse {
        if self.onto.contains(&PieceId::PocketBag) {
            ClothUse::Pocketing
        } else {
            ClothUse::Shell
        }
    }
}

const fn side(piece: PieceId, edge: EdgeId, ply: Ply) -> Side {
    Side { piece, edge, ply }
}

const fn half(piece: PieceId, edge: EdgeId) -> Half {
    Half { piece, edge }
}

const OUTSEAM: &[Side] = &[
    side(PieceId::Front, EdgeId::Side, Ply::Front),
    side(PieceId::PocketFacing, EdgeId::Side, Ply::Front),
    side(PieceId::Back, EdgeId::Side, Ply::Back),
    side(PieceId::Yoke, EdgeId::Side, Ply::Back),
];
const INSEAM: &[Side] = &[
    side(PieceId::Front, EdgeId::Inseam, Ply::Front),
    side(PieceId::Back, EdgeId::Inseam, Ply::Back),
];
const YOKE: &[Side] = &[
    side(PieceId::Yoke, EdgeId::Lower, Ply::Yoke),
    side(PieceId::Back, EdgeId::Top, Ply::Back),
];
const SEAT: &[Half] = &[
    half(PieceId::Yoke, EdgeId::Centre),
    half(PieceId::Back, EdgeId::Seat),
];
const FRONT_RISE: &[Half] = &[half(PieceId::Front, EdgeId::Crotch)];

/// A seam of the shell with a line of its own.
const fn row(joins: Key, head: Key) -> SeamFacts {
    SeamFacts {
        line: Line::OfItsOwn,
        onto: &[],
        catches: &[],
        through: ClothUse::Shell,
        strain: Strain::Holds,
        turned: None,
        operations: &[],
        machine: None,
        joins,
        head,
    }
}

const fn panels(sides: &'static [Side], row: SeamFacts) -> SeamFacts {
    SeamFacts {
        line: Line::Panels(sides),
        strain: Strain::Loaded,
        ..row
    }
}

const fn halves(edges: &'static [Half], row: SeamFacts) -> SeamFacts {
    SeamFacts {
        line: Line::Halves(edges),
        strain: Strain::Loaded,
        ..row
    }
}

/// What is constant about a seam.
pub(crate) const fn facts(seam: SeamId) -> SeamFacts {
    use Construction as C;
    use PieceId as P;
    use SeamOperationId as O;
    match seam {
        SeamId::Outseam => SeamFacts {
            operations: &[OwnOperation {
                of: &[C::SafetyStitched, C::Overlocked],
                id: O::OutseamOveredged,
            }],
            ..panels(
                OUTSEAM,
                row(key::SEAM_JOINS_OUTSEAM, key::SEAM_HEAD_OUTSEAM),
            )
        },
        SeamId::Inseam => panels(INSEAM, row(key::SEAM_JOINS_INSEAM, key::SEAM_HEAD_INSEAM)),
        SeamId::Seat => SeamFacts {
            operations: &[OwnOperation {
                of: &[C::LapFelled],
                id: O::Seat,
            }],
            ..halves(SEAT, row(key::SEAM_JOINS_SEAT, key::SEAM_HEAD_SEAT))
        },
        SeamId::Yoke => SeamFacts {
            operations: &[OwnOperation {
                of: &[C::LapFelled],
                id: O::Yoke,
            }],
            ..panels(YOKE, row(key::SEAM_JOINS_YOKE, key::SEAM_HEAD_YOKE))
        },
        SeamId::FrontRise => SeamFacts {
            operations: &[OwnOperation {
                of: &[C::LapFelled, C::MockFelled],
                id: O::FrontRise,
            }],
            ..halves(
                FRONT_RISE,
                row(key::SEAM_JOINS_FRONT_RISE, key::SEAM_HEAD_FRONT_RISE),
            )
        },
        SeamId::Band => SeamFacts {
            strain: Strain::Loaded,
            machine: Some(OwnMachine::Waistband),
            ..row(key::SEAM_JOINS_BAND, key::SEAM_HEAD_BAND)
        },
        SeamId::BandJoin => SeamFacts {
            strain: Strain::Loaded,
            onto: &[P::Band],
            ..row(key::SEAM_JOINS_BAND_JOIN, key::SEAM_HEAD_BAND_JOIN)
        },
        SeamId::Hem => SeamFacts {
            machine: Some(OwnMachine::Hemmer),
            ..row(key::SEAM_JOINS_HEM, key::SEAM_HEAD_HEM)
        },
        SeamId::Mouth => SeamFacts {
            turned: Some(Turned {
                piece: P::Front,
                edge: EdgeId::Mouth,
                faced_with: P::PocketBag,
            }),
            ..row(key::SEAM_JOINS_MOUTH, key::SEAM_HEAD_MOUTH)
        },
        // The facing on the left front and the shield on the right.
        SeamId::Fly => SeamFacts {
            turned: Some(Turned {
                piece: P::Front,
                edge: EdgeId::Fly,
                faced_with: P::FlyFacing,
            }),
            operations: &[OwnOperation {
                of: &[C::TurnedEdge],
                id: O::Fly,
            }],
            ..row(key::SEAM_JOINS_FLY, key::SEAM_HEAD_FLY)
        },
        SeamId::FlyEdge => SeamFacts {
            strain: Strain::None,
            operations: &[OwnOperation {
                of: &[C::Overlocked],
                id: O::EdgeOveredge,
            }],
            ..row(key::SEAM_JOINS_FLY_EDGE, key::SEAM_HEAD_FLY_EDGE)
        },
        SeamId::CoinHem => row(key::SEAM_JOINS_COIN_HEM, key::SEAM_HEAD_COIN_HEM),
        SeamId::CoinSet => SeamFacts {
            onto: &[P::PocketFacing],
            ..row(key::SEAM_JOINS_COIN_SET, key::SEAM_HEAD_COIN_SET)
        },
        SeamId::BackPocketHem => SeamFacts {
            catches: &[P::BackLiningLeft, P::BackLiningRight],
            ..row(
                key::SEAM_JOINS_BACK_POCKET_HEM,
                key::SEAM_HEAD_BACK_POCKET_HEM,
            )
        },
        SeamId::BackPocketSet => SeamFacts {
            onto: &[P::Back],
            ..row(
                key::SEAM_JOINS_BACK_POCKET_SET,
                key::SEAM_HEAD_BACK_POCKET_SET,
            )
        },
        SeamId::FacingSet => SeamFacts {
            onto: &[P::PocketBag],
            through: ClothUse::Pocketing,
            operations: &[OwnOperation {
                of: &[C::PatchSet, C::LaidOn],
                id: O::PocketFacing,
            }],
            ..row(key::SEAM_JOINS_FACING_SET, key::SEAM_HEAD_FACING_SET)
        },
        SeamId::BagClose => SeamFacts {
            through: ClothUse::Pocketing,
            operations: &[OwnOperation {
                of: &[C::PressedOpen, C::SafetyStitched, C::Overlocked],
                id: O::PocketBag,
            }],
            ..row(key::SEAM_JOINS_BAG_CLOSE, key::SEAM_HEAD_BAG_CLOSE)
        },
        SeamId::ExtraHem => SeamFacts {
            through: ClothUse::Pocketing,
            ..row(key::SEAM_JOINS_EXTRA_HEM, key::SEAM_HEAD_EXTRA_HEM)
        },
        SeamId::ExtraSet => SeamFacts {
            onto: &[P::PocketBag],
            through: ClothUse::Pocketing,
            ..row(key::SEAM_JOINS_EXTRA_SET, key::SEAM_HEAD_EXTRA_SET)
        },
        SeamId::LoopEdge => row(key::SEAM_JOINS_LOOP_EDGE, key::SEAM_HEAD_LOOP_EDGE),
        SeamId::Decoration => SeamFacts {
            onto: &[P::BackPocketLeft, P::BackPocketRight],
            ..row(key::SEAM_JOINS_DECORATION, key::SEAM_HEAD_DECORATION)
        },
        SeamId::PatchSet => SeamFacts {
            onto: &[P::Band],
            ..row(key::SEAM_JOINS_PATCH_SET, key::SEAM_HEAD_PATCH_SET)
        },
        SeamId::LabelSet => SeamFacts {
            onto: &[P::Band],
            strain: Strain::None,
            ..row(key::SEAM_JOINS_LABEL_SET, key::SEAM_HEAD_LABEL_SET)
        },
    }
}
