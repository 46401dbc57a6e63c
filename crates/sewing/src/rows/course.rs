//! Along which edges the rows of a seam run, and where they show.

use draft::{EdgeId, PieceId};
use std::slice;
use style::{Construction, Ply, RowSpec, Seam, SeamId};

use super::fly;
use crate::context::Context;
use crate::edges::{over_ply, side_of};
use crate::garment::{On, RowEnd};
use crate::joining::JOINING;
use crate::placement::{back_pockets, coin_on, extra_on};
use crate::seam::{Half, Line, Side, facts};

/// A run of edges that rows follow on one piece.
pub(super) struct Course {
    pub piece: PieceId,
    /// The edges, one after the other anticlockwise.
    pub edges: &'static [EdgeId],
    pub on: On,
    pub begins: RowEnd,
    pub ends: RowEnd,
    pub outside: bool,
    pub inside: bool,
    /// Begins at the topstitching of the fly: under it, or on it where that is sewn first.
    pub from_fly: bool,
}

impl Course {
    /// A run that begins and ends in the neighbouring seams and shows on both faces.
    const fn new(piece: PieceId, edges: &'static [EdgeId], on: On) -> Course {
        Course {
            piece,
            edges,
            on,
            begins: RowEnd::CaughtInSeam,
            ends: RowEnd::CaughtInSeam,
            outside: true,
            inside: true,
            from_fly: false,
        }
    }

    const fn ended(self, begins: RowEnd, ends: RowEnd) -> Course {
        Course {
            begins,
            ends,
            ..self
        }
    }

    const fn hidden_inside(self) -> Course {
        Course {
            inside: false,
            ..self
        }
    }

    const fn hidden_outside(self) -> Course {
        Course {
            outside: false,
            ..self
        }
    }
}

const PATCH_HEM: &[EdgeId] = &[EdgeId::Top];
const PATCH_SIDES: &[EdgeId] = &[EdgeId::Left, EdgeId::Foot, EdgeId::Right];
pub(super) const BACK_POCKET_SIDES: &[EdgeId] = &[
    EdgeId::Inner,
    EdgeId::FootInner,
    EdgeId::FootOuter,
    EdgeId::Outer,
];

/// The runs a row of this seam follows. Empty for the seams with shapes of their own.
pub(super) fn courses(context: &Context<'_>, seam: &Seam, spec: &RowSpec) -> Vec<Course> {
    use PieceId::{Band, CoinPocket, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing};
    match facts(seam.id).line {
        Line::Panels(sides) => return between(seam, spec, sides),
        Line::Halves(edges) => return left_and_right(context, (seam, spec), edges),
        Line::OfItsOwn => (),
    }
    match seam.id {
        SeamId::Band => vec![
            Course::new(Band, &[EdgeId::Join, EdgeId::Overlap], On::AsDrawn)
                .ended(RowEnd::TuckedIn, RowEnd::TuckedIn),
        ],
        // The bag lies over the rows inside.
        SeamId::Mouth => vec![Course::new(Front, &[EdgeId::Mouth], On::Both).hidden_inside()],
        // Overedged together, bound or turned in by itself.
        SeamId::FlyEdge => vec![
            Course::new(
                FlyFacing,
                &[EdgeId::Foot, EdgeId::Back],
                facing_plies(context, seam),
            )
            .ended(RowEnd::CaughtInSeam, RowEnd::CaughtInSeam)
            .hidden_outside(),
        ],
        SeamId::CoinHem => {
            vec![Course::new(CoinPocket, PATCH_HEM, coin_on(&context.pattern.spec)).hidden_inside()]
        }
        SeamId::CoinSet => vec![
            Course::new(CoinPocket, PATCH_SIDES, coin_on(&context.pattern.spec))
                .ended(RowEnd::Backtacked, RowEnd::Backtacked)
                .hidden_inside(),
        ],
        SeamId::BackPocketHem => back_pockets()
            .map(|(piece, on)| Course::new(piece, PATCH_HEM, on).hidden_inside())
            .into(),
        SeamId::BackPocketSet => back_pockets()
            .map(|(piece, on)| {
                Course::new(piece, BACK_POCKET_SIDES, on)
                    .ended(RowEnd::Backtacked, RowEnd::Backtacked)
            })
            .into(),
        SeamId::FacingSet => {
            vec![Course::new(PocketFacing, &[EdgeId::Inner], On::Both).hidden_outside()]
        }
        SeamId::BagClose => vec![
            Course::new(PocketBag, &[EdgeId::FootUnder], On::Both)
                .ended(RowEnd::Backtacked, RowEnd::CaughtInSeam)
                .hidden_outside(),
        ],
        SeamId::ExtraHem => {
            vec![
                Course::new(ExtraPocket, PATCH_HEM, extra_on(&context.pattern.spec))
                    .hidden_outside(),
            ]
        }
        // It hangs behind the pocket mouth, so it can only be set on the bag.
        SeamId::ExtraSet => vec![
            Course::new(ExtraPocket, PATCH_SIDES, extra_on(&context.pattern.spec))
                .ended(RowEnd::Backtacked, RowEnd::Backtacked)
                .hidden_outside(),
        ],
        // Shapes of their own. Seams between panels are done above.
        SeamId::Hem
        | SeamId::BandJoin
        | SeamId::Fly
        | SeamId::LoopEdge
        | SeamId::Decoration
        | SeamId::PatchSet
        | SeamId::LabelSet
        | SeamId::Outseam
        | SeamId::Inseam
        | SeamId::Seat
        | SeamId::Yoke
        | SeamId::FrontRise => Vec::new(),
    }
}

/// Whether a row neatens each of the two edges by itself, as where a seam is pressed open.
fn each_edge(seam: &Seam, spec: &RowSpec) -> bool {
    seam.construction == Construction::PressedOpen && spec.stitch.is_overedge()
}

/// On the ply that lies on top, or on both.
fn between(seam: &Seam, spec: &RowSpec, sides: &'static [Side]) -> Vec<Course> {
    let back = over_ply(seam) == Some(Ply::Back);
    sides
        .iter()
        .filter(|side| each_edge(seam, spec) || (side.ply == Ply::Back) == back)
        .map(|side| Course::new(side.piece, slice::from_ref(&side.edge), On::Both))
        .map(|course| shown(seam, spec, course))
        .collect()
}

/// On the copy that lies on top, or on both.
fn left_and_right(
    context: &Context<'_>,
    (seam, spec): (&Seam, &RowSpec),
    edges: &'static [Half],
) -> Vec<Course> {
    let over = over_ply(seam);
    // All panels of one seam are drawn as the same side of the wearer.
    let mirrored = edges
        .first()
        .is_some_and(|half| over == Some(side_of(half.piece, true)));
    let on = match (each_edge(seam, spec), mirrored) {
        (true, _) => On::Both,
        (false, true) => On::Mirrored,
        (false, false) => On::AsDrawn,
    };
    edges
        .iter()
        .map(|half| {
            let course = Course::new(half.piece, slice::from_ref(&half.edge), on);
            // Only the left front carries the topstitching of the fly. What has no reverse cannot be sewn back and forth
            // on it: the tack at the foot of the fly catches where it begins (common practice).
            let from_fly = half.piece == PieceId::Front && on == On::AsDrawn;
            let flat = fly::is_stitched_flat(context.doc, context.seams);
            let on_fly = from_fly && flat && spec.stitch.sews_back();
            let begins = if on_fly {
                RowEnd::Backtacked
            } else {
                course.begins
            };
            Course {
                from_fly,
                begins,
                ..course
            }
        })
        .map(|course| shown(seam, spec, course))
        .collect()
}

/// How often a row of the fly facing's edge is sewn: once through facing and strip together or through the
/// facing of a zip fly, else once on the facing and once on the strip.
fn facing_plies(context: &Context<'_>, seam: &Seam) -> On {
    let alone = !context.pattern.spec.button_fly;
    if alone || seam.construction == Construction::Overlocked {
        On::AsDrawn
    } else {
        On::Both
    }
}

/// Where a row of a seam between panels shows: a lap shows both its rows on both faces; a plain
/// seam hides the row that joins it, outside always and inside when it is pressed open.
fn shown(seam: &Seam, spec: &RowSpec, course: Course) -> Course {
    let joins = spec.offset < JOINING;
    match seam.construction {
        Construction::LapFelled => course,
        Construction::PressedOpen if joins => course.hidden_outside().hidden_inside(),
        _ if joins => course.hidden_outside(),
        _ => course,
    }
}
