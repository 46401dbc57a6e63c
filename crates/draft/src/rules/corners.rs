//! The corners of the pieces that have to be square, and the lines that have to run on from one
//! piece to the next. Both are measured on the pieces' own edges.

use geometry::angle_between;
use style::PartId;
use trade::Angle;

use crate::pattern::Pattern;
use crate::piece::{EdgeId, PieceId};

/// A corner that should be a right angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Where it is, for people.
    pub name: PartId,
    /// The piece it belongs to.
    pub piece: PieceId,
    /// The angle inside the piece, between the tangents of the two edges.
    pub angle: Angle,
}

impl Corner {
    /// By how much the corner misses a right angle.
    pub fn off_square(&self) -> Angle {
        (self.angle - Angle::deg(90.0)).abs()
    }
}

/// A place where a line crosses a seam and should run on without a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// The line and the seam it crosses, for people.
    pub name: PartId,
    /// The angles inside both pieces together; half a turn when the line runs on.
    pub angle: Angle,
}

impl Joint {
    /// By how much the line bends at the seam.
    pub fn bend(&self) -> Angle {
        (self.angle - Angle::deg(180.0)).abs()
    }
}

/// A corner of a piece, as the edge that arrives and the edge that leaves.
type At = (PieceId, EdgeId, EdgeId);

const CORNERS: &[(PartId, At)] = {
    use PieceId::{Back, Band, Front, Yoke};
    &[
        (
            PartId::FrontCentreAtWaist,
            (Front, EdgeId::Waist, EdgeId::Fly),
        ),
        (
            PartId::BackCentreAtWaist,
            (Yoke, EdgeId::Top, EdgeId::Centre),
        ),
        (
            PartId::FrontHemAtInseam,
            (Front, EdgeId::Inseam, EdgeId::Hem),
        ),
        (
            PartId::FrontHemAtOutseam,
            (Front, EdgeId::Hem, EdgeId::Side),
        ),
        (PartId::BackHemAtInseam, (Back, EdgeId::Inseam, EdgeId::Hem)),
        (PartId::BackHemAtOutseam, (Back, EdgeId::Hem, EdgeId::Side)),
        (
            PartId::LeftBandEndLower,
            (Band, EdgeId::EndLeft, EdgeId::Join),
        ),
        (
            PartId::RightBandEndLower,
            (Band, EdgeId::Overlap, EdgeId::EndRight),
        ),
        (
            PartId::RightBandEndInner,
            (Band, EdgeId::EndRight, EdgeId::Inner),
        ),
        (
            PartId::LeftBandEndInner,
            (Band, EdgeId::Inner, EdgeId::EndLeft),
        ),
    ]
};

const JOINTS: &[(PartId, At, At)] = {
    use PieceId::{Back, Front, PocketFacing, Yoke};
    &[
        (
            PartId::SeatAcrossYoke,
            (Back, EdgeId::Top, EdgeId::Seat),
            (Yoke, EdgeId::Centre, EdgeId::Lower),
        ),
        (
            PartId::OutseamAcrossYoke,
            (Back, EdgeId::Side, EdgeId::Top),
            (Yoke, EdgeId::Lower, EdgeId::Side),
        ),
        (
            PartId::WaistAcrossOutseam,
            (PocketFacing, EdgeId::Side, EdgeId::Waist),
            (Yoke, EdgeId::Side, EdgeId::Top),
        ),
        (
            PartId::HemAcrossOutseam,
            (Front, EdgeId::Hem, EdgeId::Side),
            (Back, EdgeId::Hem, EdgeId::Side),
        ),
        (
            PartId::HemAcrossInseam,
            (Front, EdgeId::Inseam, EdgeId::Hem),
            (Back, EdgeId::Inseam, EdgeId::Hem),
        ),
    ]
};

fn angle_at(pattern: &Pattern, (piece, arrives, leaves): At) -> Option<Angle> {
    let piece = pattern.piece(piece)?;
    let (a, b) = (piece.edge(arrives)?, piece.edge(leaves)?);
    Some(angle_between(-a.end_direction(), b.start_direction()))
}

/// The corners that have to be square, of the pieces the style has.
pub fn corners(pattern: &Pattern) -> Vec<Corner> {
    CORNERS
        .iter()
        .filter_map(|&(name, at)| {
            Some(Corner {
                name,
                piece: at.0,
                angle: angle_at(pattern, at)?,
            })
        })
        .collect()
}

/// The lines that have to run on through a seam, where the style has both pieces.
///
/// The crotch line through the inseam is judged apart: see [`Pattern::crotch_jump`].
pub fn joints(pattern: &Pattern) -> Vec<Joint> {
    JOINTS
        .iter()
        .filter_map(|&(name, a, b)| {
            Some(Joint {
                name,
                angle: angle_at(pattern, a)? + angle_at(pattern, b)?,
            })
        })
        .collect()
}
