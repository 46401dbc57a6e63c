//! A place where seams cross, and the style while they are counted.

use draft::{PieceId, Place, PointId};
use geometry::Point;
use style::{Construction, Seam, SeamId};
use trade::Length;
use words::{Said, say};

use super::machine::{Machine, machine_of};
use super::plies::{Lying, Plies, Thicknesses, lying};
use crate::context::Context;
use crate::garment::On;

/// What kind of place a crossing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrossingKind {
    /// The seat seam over the yoke seam.
    SeatYoke,
    /// The inseam over front rise and seat seam.
    Crotch,
    /// The hem over a leg seam.
    Hem,
    /// The outseam over the yoke seam.
    OutseamYoke,
    /// The band seam over a seam of the body, or over the end of a pocket mouth.
    Band,
    /// A belt loop: its top, its foot, or its middle over the band seam.
    Loop,
    /// The outseam over the end of a pocket mouth.
    Mouth,
    /// An upper corner of a back pocket.
    BackPocket,
    /// An upper corner of the coin pocket.
    CoinPocket,
}

/// A place where more than the plies of one seam lie on one another.
#[derive(Clone, Debug, PartialEq)]
pub struct Crossing {
    /// What kind of place.
    pub kind: CrossingKind,
    /// Which, in words that follow the plies: "where the hem crosses the inseam".
    pub name: Said,
    /// The plies, nothing cut away.
    pub plies: Plies,
    /// Their thickness, not pressed.
    pub thickness: Length,
    /// The plies and thickness left when turned-in edges inside the crossing are cut away, where
    /// there are any.
    pub trimmed: Option<(Plies, Length)>,
    /// The machine that has to sew across it; `None` where nothing does.
    pub machine: Option<Machine>,
    /// The seam that is sewn across it with that machine.
    pub sewn_by: Option<SeamId>,
    /// Where.
    pub place: Place,
    /// On which copies of the piece.
    pub on: On,
    /// Plies and thickness of each in words.
    said: Said,
}

impl Crossing {
    /// Whether a machine takes it once the turned-in edges inside it are cut away.
    pub(crate) fn fits_trimmed(&self, machine: Machine) -> bool {
        self.trimmed
            .is_some_and(|(_, thickness)| thickness <= machine.lift)
    }

    /// Whether edges have to be cut away before its machine can sew across it, and that is enough.
    pub(crate) fn asks_for_trimming(&self) -> bool {
        self.machine
            .is_some_and(|machine| self.thickness > machine.sews && self.fits_trimmed(machine))
    }

    /// In words: "twelve plies of 0.82 mm, 9.8 mm, where the hem crosses the inseam".
    pub fn words(&self) -> Said {
        say::CrossingWords {
            place: self.name.clone(),
            plies: self.said.clone(),
            thickness: self.thickness.in_mm(1),
        }
        .into()
    }
}

/// The style while its crossings are counted.
pub(super) struct Site<'a> {
    pub context: &'a Context<'a>,
    pub one: Thicknesses,
}

/// What sews across a crossing.
#[derive(Clone, Copy)]
pub(super) struct Sewing {
    pub seam: SeamId,
    pub machine: Machine,
}

/// A crossing before its thickness is known.
pub(super) struct Found {
    pub kind: CrossingKind,
    pub name: Said,
    pub plies: Plies,
    pub trimmed: Option<Plies>,
    pub sewn: Option<Sewing>,
    pub piece: PieceId,
    pub on: On,
}

impl Site<'_> {
    pub fn seam(&self, id: SeamId) -> Option<&Seam> {
        self.context.seam(id)
    }

    /// The seam with the machine that sews it.
    pub fn sewn(&self, id: SeamId) -> Option<Sewing> {
        let machine = machine_of(self.seam(id)?)?;
        Some(Sewing { seam: id, machine })
    }

    /// How a seam lies; a seam the style does not have joins as plainly as may be.
    pub fn lying(&self, id: SeamId) -> Lying {
        lying(self.construction(id))
    }

    pub fn construction(&self, id: SeamId) -> Construction {
        self.seam(id)
            .map_or(Construction::Overlocked, |seam| seam.construction)
    }

    /// A point of a piece.
    pub fn point(&self, piece: PieceId, id: PointId) -> Option<Point> {
        self.context.pattern.piece(piece)?.point(id)
    }

    pub fn crossing(&self, found: Found, at: Point) -> Crossing {
        let thickness = |plies: Plies| plies.thickness(&self.one);
        Crossing {
            kind: found.kind,
            name: found.name,
            thickness: thickness(found.plies),
            trimmed: found
                .trimmed
                .filter(|plies| *plies != found.plies)
                .map(|plies| (plies, thickness(plies))),
            machine: found.sewn.map(|sewn| sewn.machine),
            sewn_by: found.sewn.map(|sewn| sewn.seam),
            place: Place {
                piece: found.piece,
                at,
            },
            on: found.on,
            said: found.plies.words(&self.one),
            plies: found.plies,
        }
    }
}
