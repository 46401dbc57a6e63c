//! The corners of the pieces that have to be square, and the lines that have to run on from one
//! piece to the next. Both are measured on the pieces' own edges.

use geometry::angle_between;
use style::PartId;
use trade::Angle;

use crate::pattern::Pattern;
use crate::piece::PieceId;

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
type At = (PieceId, &'static str, &'static str);

const CORNERS: &[(PartId, At)] = {
    use PieceId::{Back, Band, Front, Yoke};
    &[
        (PartId::FrontCentreAtWaist, (Front, "waist", "fly")),
        (PartId::BackCentreAtWaist, (Yoke, "top", "centre")),
        (PartId::FrontHemAtInseam, (Front, "inseam", "hem")),
        (PartId::FrontHemAtOutseam, (Front, "hem", "side")),
        (PartId::BackHemAtInseam, (Back, "inseam", "hem")),
        (PartId::BackHemAtOutseam, (Back, "hem", "side")),
        (PartId::LeftBandEndLower, (Band, "end_left", "join")),
        (PartId::RightBandEndLower, (Band, "overlap", "end_right")),
        (PartId::RightBandEndInner, (Band, "end_right", "inner")),
        (PartId::LeftBandEndInner, (Band, "inner", "end_left")),
    ]
};

const JOINTS: &[(PartId, At, At)] = {
    use PieceId::{Back, Front, PocketFacing, Yoke};
    &[
        (
            PartId::SeatAcrossYoke,
            (Back, "top", "seat"),
            (Yoke, "centre", "lower"),
        ),
        (
            PartId::OutseamAcrossYoke,
            (Back, "side", "top"),
            (Yoke, "lower", "side"),
        ),
        (
            PartId::WaistAcrossOutseam,
            (PocketFacing, "side", "waist"),
            (Yoke, "side", "top"),
        ),
        (
            PartId::HemAcrossOutseam,
            (Front, "hem", "side"),
            (Back, "hem", "side"),
        ),
        (
            PartId::HemAcrossInseam,
            (Front, "inseam", "hem"),
            (Back, "inseam", "hem"),
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
