//! Bulk: how many plies meet, and how thick they are, wherever seams cross.
//!
//! Plies are counted from the constructions as they lie once sewn: where one seam crosses another,
//! every ply of the one is the whole stack of the other. Thickness is the sum of the cloths, not
//! pressed.

mod loops;
mod machine;
mod panels;
mod plies;
mod pockets;

use draft::{PieceId, Place, PointId};
use geometry::Point;
use style::{Construction, Seam, SeamId};
use trade::Length;

pub use machine::{Machine, machine_of};
pub use plies::{Lying, Plies, Thicknesses, lying, lying_trimmed};

use crate::context::Context;
use crate::garment::{Fixing, Garment, On};

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
    pub name: String,
    /// The plies, nothing cut away.
    pub plies: Plies,
    /// Their thickness, not pressed.
    pub thickness: Length,
    /// The plies and thickness left when turned-in edges inside the crossing are cut away, where
    /// there are any.
    pub trimmed: Option<(Plies, Length)>,
    /// The machine that has to sew across it; `None` where nothing does.
    pub machine: Option<Machine>,
    /// Where.
    pub place: Place,
    /// On which copies of the piece.
    pub on: On,
    /// Plies and thickness in words.
    said: String,
}

impl Crossing {
    /// In words: "twelve plies of 0.82 mm, 9.8 mm, where the hem crosses the inseam".
    pub fn words(&self) -> String {
        format!(
            "{}, {:.1} mm, {}",
            self.said,
            self.thickness.to_mm(),
            self.name
        )
    }
}

/// Every crossing of the garment, thickest first; equal ones from the waist down.
pub fn bulk(garment: &Garment) -> Vec<Crossing> {
    let context = Context {
        doc: &garment.doc,
        collection: &garment.collection,
        size: garment.size,
        pattern: &garment.pattern,
        seams: &garment.seams,
    };
    crossings(&context, &garment.fixings)
}

pub(crate) fn crossings(context: &Context<'_>, fixings: &[Fixing]) -> Vec<Crossing> {
    let site = Site {
        context,
        one: Thicknesses::of(context.doc, context.collection),
    };
    let mut out = loops::crossings(&site, fixings);
    out.extend(panels::crossings(&site));
    out.extend(pockets::crossings(&site));
    out.retain(|c| c.place.at.is_finite() && c.thickness.is_finite());
    out.sort_by(|a, b| b.thickness.total_cmp(&a.thickness));
    out
}

/// What a rivet at the end of a pocket mouth goes through; beside the outseam with its allowance.
pub(crate) fn mouth_plies(context: &Context<'_>, at_side: bool) -> Plies {
    let site = Site {
        context,
        one: Thicknesses::of(context.doc, context.collection),
    };
    let stack = pockets::mouth_stack(&site);
    if at_side {
        site.lying(SeamId::Outseam).of(stack, Plies::shell(1))
    } else {
        stack
    }
}

/// The style while its crossings are counted.
struct Site<'a> {
    context: &'a Context<'a>,
    one: Thicknesses,
}

/// A crossing before its thickness is known.
struct Found {
    kind: CrossingKind,
    name: String,
    plies: Plies,
    trimmed: Option<Plies>,
    machine: Option<Machine>,
    piece: PieceId,
    on: On,
}

impl Site<'_> {
    fn seam(&self, id: SeamId) -> Option<&Seam> {
        self.context.seam(id)
    }

    fn machine(&self, id: SeamId) -> Option<Machine> {
        machine_of(self.seam(id)?)
    }

    /// How a seam lies; a seam the style does not have joins as plainly as may be.
    fn lying(&self, id: SeamId) -> Lying {
        lying(self.construction(id))
    }

    fn construction(&self, id: SeamId) -> Construction {
        self.seam(id)
            .map_or(Construction::Overlocked, |seam| seam.construction)
    }

    /// A point of a piece.
    fn point(&self, piece: PieceId, id: PointId) -> Option<Point> {
        self.context.pattern.piece(piece)?.point(id)
    }

    fn crossing(&self, found: Found, at: Point) -> Crossing {
        let thickness = |plies: Plies| plies.thickness(&self.one);
        Crossing {
            kind: found.kind,
            name: found.name,
            thickness: thickness(found.plies),
            trimmed: found
                .trimmed
                .filter(|plies| *plies != found.plies)
                .map(|plies| (plies, thickness(plies))),
            machine: found.machine,
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
