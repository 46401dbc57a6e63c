//! Along which edges the rows of a seam run, and where they show.

use draft::PieceId;
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
    pub edges: &'static [&'static str],
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
    const fn new(piece: PieceId, edges: &'static [&'static str], on: On) -> Course {
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

const PATCH_HEM: &[&str] = &["top"];
const PATCH_SIDES: &[&str] = &["left", "foot", "right"];
pub(super) const BACK_POCKET_SIDES: &[&str] = &["inner", "foot_inner", "foot_outer", "outer"];

/// The runs a row of this seam follows. Empty for the seams with shapes of their own.
pub(super) fn courses(context: &Context<'_>, seam: &Seam, spec: &RowSpec) -> Vec<Course> {
    use PieceId::{
        Back, Band, CoinPocket, ExtraPocket, FlyFacing, Front, PocketBag, PocketFacing, Yoke,
    };
    let over = over_ply(seam);
    let joined = |runs: &[(PieceId, &'static [&'static str])], on: On| -> Vec<Course> {
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
                (Front, &["side"]),
                (PocketFacing, &["side"]),
                (Back, &["side"]),
                (Yoke, &["side"]),
            ],
            On::Both,
        ),
        "inseam" if each_edge => joined(&[(Front, &["inseam"]), (Back, &["inseam"])], On::Both),
        "yoke" if each_edge => joined(&[(Yoke, &["lower"]), (Back, &["top"])], On::Both),
        "seat" if each_edge => joined(&[(Yoke, &["centre"]), (Back, &["seat"])], On::Both),
        "front_rise" if each_edge => joined(&[(Front, &["crotch"])], On::Both),
        "outseam" if back => joined(&[(Back, &["side"]), (Yoke, &["side"])], On::Both),
        "outseam" => joined(&[(Front, &["side"]), (PocketFacing, &["side"])], On::Both),
        "inseam" if back => joined(&[(Back, &["inseam"])], On::Both),
        "inseam" => joined(&[(Front, &["inseam"])], On::Both),
        "yoke" if back => joined(&[(Back, &["top"])], On::Both),
        "yoke" => joined(&[(Yoke, &["lower"])], On::Both),
        "seat" => joined(&[(Yoke, &["centre"]), (Back, &["seat"])], copy(Back)),
        "front_rise" => {
            let on = copy(Front);
            let mut rise = joined(&[(Front, &["crotch"])], on);
            // Only the left front carries the topstitching of the fly.
            rise.iter_mut()
                .for_each(|c| c.under_fly = on == On::AsDrawn);
            rise
        }
        "band" => vec![
            Course::new(Band, &["join", "overlap"], On::AsDrawn)
                .ended(RowEnd::TuckedIn, RowEnd::TuckedIn),
        ],
        // The bag lies over the rows inside.
        "mouth" => vec![Course::new(Front, &["mouth"], On::Both).hidden_inside()],
        // Overedged together, bound or turned in by itself.
        "fly_edge" => vec![
            Course::new(FlyFacing, &["foot", "back"], facing_plies(seam))
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
        "facing_set" => vec![Course::new(PocketFacing, &["inner"], On::Both).hidden_outside()],
        "bag_close" => vec![
            Course::new(PocketBag, &["foot_under"], On::Both)
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
