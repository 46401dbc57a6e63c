//! Rivets: what they go through, and how far from the edge.

use draft::{PieceId, PointId};
use style::{SeamId, Subject};
use trade::Length;
use words::{key, say};

use super::case::{Broken, Case, distance, place};
use crate::allowance::allowances;
use crate::bulk::{CrossingKind, Plies, Thicknesses, mouth_plies};
use crate::garment::{Fixing, FixingKind};

/// A rivet closes on at least this much cloth, and on so many plies (from memory).
const LEAST: Length = Length::mm(1.5);
const LEAST_PLIES: u32 = 2;

/// Its nail closes on at most this much (from memory).
const MOST: Length = Length::mm(8.0);

/// What a rivet goes through, and how thick that is.
struct Grip {
    plies: Plies,
    thickness: Length,
}

fn rivets<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a Fixing, Length)> {
    case.fixings.iter().filter_map(|f| match f.kind {
        FixingKind::Rivet(cap) => Some((f, cap)),
        _ => None,
    })
}

fn grip(case: &Case<'_>, rivet: &Fixing) -> Option<Grip> {
    let one = Thicknesses::of(case.context.doc, case.context.collection);
    let corner = |kind: CrossingKind| {
        case.crossings
            .iter()
            .find(|c| c.kind == kind && c.place.piece == rivet.piece)
            .map(|c| c.plies)
    };
    let plies = match rivet.piece {
        PieceId::Front => {
            // Near the outseam its allowance lies below.
            let side = case.point(PieceId::Front, PointId::MouthSide)?.at;
            let allowance = case
                .context
                .seam(SeamId::Outseam)
                .map_or(Length::ZERO, |s| allowances(s, Length::ZERO).over);
            let at_side = (rivet.at - side).hypot() < allowance.to_mm();
            mouth_plies(case.context, at_side)
        }
        PieceId::CoinPocket => corner(CrossingKind::CoinPocket)?,
        // A hidden rivet does not pierce the outer ply of the pocket.
        _ => {
            let all = corner(CrossingKind::BackPocket)?;
            let outer = u32::from(!rivet.outside);
            Plies {
                shell: all.shell.saturating_sub(outer),
                ..all
            }
        }
    };
    Some(Grip {
        plies,
        thickness: plies.thickness(&one),
    })
}

/// What a rivet is on, for people.
fn about(rivet: &Fixing) -> Subject {
    Subject::RivetOn(rivet.piece)
}

/// Says something of each kind of rivet once.
fn each(case: &Case<'_>, look: impl Fn(&Fixing, Length) -> Option<Broken>) -> Vec<Broken> {
    let mut out: Vec<Broken> = Vec::new();
    for (rivet, cap) in rivets(case) {
        let Some(broken) = look(rivet, cap) else {
            continue;
        };
        if out.iter().all(|b| b.subject != broken.subject) {
            out.push(broken.at(place(rivet.piece, rivet.at)));
        }
    }
    out
}

pub(super) fn thin(case: &Case<'_>) -> Vec<Broken> {
    each(case, |rivet, _| {
        let grip = grip(case, rivet)?;
        (grip.plies.total() < LEAST_PLIES || grip.thickness < LEAST).then(|| {
            Broken::warning(
                about(rivet),
                say::SewingRivetsThin {
                    plies: u64::from(grip.plies.total()),
                    thickness: grip.thickness.in_mm(1),
                },
            )
            .help(say::SewingRivetsThinHelp {
                least: LEAST.in_mm(1),
                least_plies: LEAST_PLIES.to_string(),
            })
        })
    })
}

pub(super) fn thick(case: &Case<'_>) -> Vec<Broken> {
    each(case, |rivet, _| {
        let grip = grip(case, rivet)?;
        (grip.thickness > MOST).then(|| {
            Broken::warning(
                about(rivet),
                say::SewingRivetsThick {
                    most: MOST.in_mm(1),
                    plies: u64::from(grip.plies.total()),
                    thickness: grip.thickness.in_mm(1),
                },
            )
            .help(key::SEWING_RIVETS_THICK_HELP)
        })
    })
}

pub(super) fn near_edge(case: &Case<'_>) -> Vec<Broken> {
    each(case, |rivet, cap| {
        let ground = case.ground(rivet.piece)?;
        let to_edge = Length::mm(distance(ground.polygon(), rivet.at));
        let over = cap / 2.0 - to_edge;
        (over > Length::ZERO).then(|| {
            Broken::warning(
                about(rivet),
                say::SewingRivetsNearEdge {
                    cap: cap.in_mm(1),
                    over: over.in_mm(1),
                    to_edge: to_edge.in_mm(1),
                },
            )
            .help(key::SEWING_RIVETS_NEAR_EDGE_HELP)
        })
    })
}

/// Between the cap of a rivet and the nearest stitch of a tack (common practice).
const CLEAR: Length = Length::mm(1.0);

/// A tack sewn over a rivet, or a rivet set through a tack.
pub(super) fn tack_on_rivet(case: &Case<'_>) -> Vec<Broken> {
    let mut out: Vec<Broken> = Vec::new();
    for (rivet, cap) in rivets(case) {
        for tack in case.fixings {
            let FixingKind::Bartack(length, width, _) = tack.kind else {
                continue;
            };
            if tack.piece != rivet.piece {
                continue;
            }
            let apart = rivet.at - tack.at;
            let along = (apart.dot(tack.along).abs() - length.to_mm() / 2.0).max(0.0);
            let across = (apart.cross(tack.along).abs() - width.to_mm() / 2.0).max(0.0);
            let gap = Length::mm(along.hypot(across)) - cap / 2.0;
            if gap >= CLEAR {
                continue;
            }
            let about = Subject::Rivet(rivet.from.code().to_owned());
            let where_ = tack.from.code().replace('_', " ");
            out.push(
                Broken::warning(
                    about,
                    say::SewingRivetsTackOnRivet {
                        where_of: where_.to_string(),
                        zero: gap.max(Length::ZERO).in_mm(1),
                    },
                )
                .help(key::SEWING_RIVETS_TACK_ON_RIVET_HELP)
                .at(place(rivet.piece, rivet.at)),
            );
        }
    }
    out
}
