//! Along which edges the rows of a seam run, and where they show.

use draft::{EdgeId, PieceId};
use style::{Construction, Ply, RowSpec, Seam};

use super::JOINING;
use crate::context::Context;
use crate::edges::{over_ply, side_of};
use crate::garment::{On, RowEnd};
use crate::placement::{back_pockets, coin_on, extra_on};

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
    /// Begins under the topstitching of the fly.
    pub under_fly: bool,
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
            under_fly: false,
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
    use PieceId::{
        Back, Band, CoinPocket, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing, Yoke,
    };
    let over = over_ply(seam);
    let joined = |runs: &[(PieceId, &'static [EdgeId])], on: On| -> Vec<Course> {
        runs.iter()
            .map(|(piece, edges)| shown(seam, spec, Course::new(*piece, edges, on)))
            .collect()
    };
    // Of a left and a right copy, the one on top.
    let copy = |piece: PieceId| {
        if over == Some(side_of(piece, true)) {
            On::Mirrored
        } else {
            On::AsDrawn
        }
    };
    let back = over == Some(Ply::Back);
    // Pressed open, each of the two edges is neatened by itself.
    let each_edge = seam.construction == Construction::PressedOpen && spec.stitch.is_overedge();
    match seam.name.as_str() {
        "outseam" if each_edge => joined(
            &[
                (Front, &[EdgeId::Side]),
                (PocketFacing, &[EdgeId::Side]),
                (Back, &[EdgeId::Side]),
                (Yoke, &[EdgeId::Side]),
            ],
            On::Both,
        ),
        "inseam" if each_edge => joined(
            &[(Front, &[EdgeId::Inseam]), (Back, &[EdgeId::Inseam])],
            On::Both,
        ),
        "yoke" if each_edge => joined(
            &[(Yoke, &[EdgeId::Lower]), (Back, &[EdgeId::Top])],
            On::Both,
        ),
        "seat" if each_edge => joined(
            &[(Yoke, &[EdgeId::Centre]), (Back, &[EdgeId::Seat])],
            On::Both,
        ),
        "front_rise" if each_edge => joined(&[(Front, &[EdgeId::Crotch])], On::Both),
        "outseam" if back => joined(
            &[(Back, &[EdgeId::Side]), (Yoke, &[EdgeId::Side])],
            On::Both,
        ),
        "outseam" => joined(
            &[(Front, &[EdgeId::Side]), (PocketFacing, &[EdgeId::Side])],
            On::Both,
        ),
        "inseam" if back => joined(&[(Back, &[EdgeId::Inseam])], On::Both),
        "inseam" => joined(&[(Front, &[EdgeId::Inseam])], On::Both),
        "yoke" if back => joined(&[(Back, &[EdgeId::Top])], On::Both),
        "yoke" => joined(&[(Yoke, &[EdgeId::Lower])], On::Both),
        "seat" => joined(
            &[(Yoke, &[EdgeId::Centre]), (Back, &[EdgeId::Seat])],
            copy(Back),
        ),
        "front_rise" => {
            let on = copy(Front);
            let mut rise = joined(&[(Front, &[EdgeId::Crotch])], on);
            // Only the left front carries the topstitching of the fly.
            rise.iter_mut()
                .for_each(|c| c.under_fly = on == On::AsDrawn);
            rise
        }
        "band" => vec![
            Course::new(Band, &[EdgeId::Join, EdgeId::Overlap], On::AsDrawn)
                .ended(RowEnd::TuckedIn, RowEnd::TuckedIn),
        ],
        // The bag lies over the rows inside.
        "mouth" => vec![Course::new(Front, &[EdgeId::Mouth], On::Both).hidden_inside()],
        // Overedged together, bound or turned in by itself.
        "fly_edge" => vec![
            Course::new(FlyFacing, &[EdgeId::Foot, EdgeId::Back], facing_plies(seam))
                .ended(RowEnd::CaughtInSeam, RowEnd::CaughtInSeam)
                .hidden_outside(),
        ],
        "coin_hem" => {
            vec![Course::new(CoinPocket, PATCH_HEM, coin_on(&context.pattern.spec)).hidden_inside()]
        }
        "coin_set" => vec![
            Course::new(CoinPocket, PATCH_SIDES, coin_on(&context.pattern.spec))
                .ended(RowEnd::Backtacked, RowEnd::Backtacked)
                .hidden_inside(),
        ],
        "back_pocket_hem" => back_pockets()
            .map(|(piece, on)| Course::new(piece, PATCH_HEM, on).hidden_inside())
            .into(),
        "back_pocket_set" => back_pockets()
            .map(|(piece, on)| {
                Course::new(piece, BACK_POCKET_SIDES, on)
                    .ended(RowEnd::Backtacked, RowEnd::Backtacked)
            })
            .into(),
        "facing_set" => {
            vec![Course::new(PocketFacing, &[EdgeId::Inner], On::Both).hidden_outside()]
        }
        "bag_close" => vec![
            Course::new(PocketBag, &[EdgeId::FootUnder], On::Both)
                .ended(RowEnd::Backtacked, RowEnd::CaughtInSeam)
                .hidden_outside(),
        ],
        "extra_hem" => {
            vec![
                Course::new(ExtraPocket, PATCH_HEM, extra_on(&context.pattern.spec))
                    .hidden_outside(),
            ]
        }
        // It hangs behind the pocket mouth, so it can only be set on the bag.
        "extra_set" => vec![
            Course::new(ExtraPocket, PATCH_SIDES, extra_on(&context.pattern.spec))
                .ended(RowEnd::Backtacked, RowEnd::Backtacked)
                .hidden_outside(),
        ],
        _ => Vec::new(),
    }
}

/// The plies of the fly facing a row of its edge is sewn on.
fn facing_plies(seam: &Seam) -> On {
    if seam.construction == Construction::Overlocked {
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
