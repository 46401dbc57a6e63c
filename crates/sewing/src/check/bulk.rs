//! Crossings against what goes under the foot of a machine and what it sews.
//!
//! The sum of the plies is not pressed. One that is thicker than the machine sews, but goes under its raised foot, may be
//! sewn once it is flattened: a note. What does not go under the foot cannot be begun: a warning.

use style::{PartId, SeamId, Subject};
use trade::Length;
use words::{Said, key, say};

use super::case::{Broken, Case};
use crate::bulk::{Crossing, CrossingKind, Machine};

fn sewn<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a Crossing, Machine)> + use<'a> {
    case.crossings.iter().filter_map(|c| Some((c, c.machine?)))
}

fn too_thick(crossing: &Crossing, machine: Machine) -> Said {
    say::SewingBulkTooThick {
        machine: machine.name,
        lift: machine.lift.in_mm(1),
        sews: machine.sews.in_mm(1),
        words: crossing.words(),
    }
    .into()
}

/// What is left when turned-in edges are cut away, in words; whether that is still more than the machine sews.
fn left(crossing: &Crossing, machine: Machine) -> Option<Said> {
    let (plies, left) = crossing.trimmed?;
    let (plies, thickness) = (u64::from(plies.total()), left.in_mm(1));
    Some(if left > machine.sews {
        let sews = machine.sews.in_mm(1);
        say::SewingBulkLeftThick {
            plies,
            sews,
            thickness,
        }
        .into()
    } else {
        say::SewingBulkLeft { plies, thickness }.into()
    })
}

/// Everything but crossings of felled seams and hems, which have rules of their own.
pub(super) fn machine(case: &Case<'_>) -> Vec<Broken> {
    use CrossingKind::{Crotch, Hem, SeatYoke};
    sewn(case)
        .filter(|(c, m)| !matches!(c.kind, SeatYoke | Crotch | Hem) && c.thickness > m.sews)
        .map(|(c, m)| {
            let help = left(c, m).unwrap_or_else(|| key::SEWING_BULK_MACHINE.into());
            judged(c, m, c.thickness).help(help).at(Some(c.place))
        })
        .collect()
}

fn about(crossing: &Crossing) -> Subject {
    match crossing.kind {
        CrossingKind::SeatYoke => PartId::SeatAndYoke.into(),
        CrossingKind::Crotch => PartId::Crotch.into(),
        CrossingKind::Hem => SeamId::Hem.into(),
        CrossingKind::OutseamYoke => PartId::OutseamAndYoke.into(),
        CrossingKind::Band => PartId::Band.into(),
        CrossingKind::Loop => PartId::BeltLoop.into(),
        CrossingKind::Mouth => PartId::PocketMouth.into(),
        CrossingKind::BackPocket => PartId::BackPocket.into(),
        CrossingKind::CoinPocket => PartId::CoinPocket.into(),
    }
}

/// A note on a crossing of which so much is left as goes under the raised foot; else an error, for the machine cannot
/// sew it.
fn judged(crossing: &Crossing, machine: Machine, left: Length) -> Broken {
    let said = too_thick(crossing, machine);
    if left <= machine.lift {
        Broken::note(about(crossing), said)
    } else {
        Broken::error(about(crossing), said)
    }
}

/// Turned-in edges inside these crossings are cut away before they are sewn.
pub(super) fn felled(case: &Case<'_>) -> Vec<Broken> {
    sewn(case)
        .filter(|(c, m)| {
            matches!(c.kind, CrossingKind::SeatYoke | CrossingKind::Crotch) && c.thickness > m.sews
        })
        .map(|(c, m)| {
            let thickness = c.trimmed.map_or(c.thickness, |(_, thickness)| thickness);
            judged(c, m, thickness)
                .help(left(c, m).unwrap_or_else(|| key::SEWING_BULK_FELLED.into()))
                .at(Some(c.place))
        })
        .collect()
}

pub(super) fn hem(case: &Case<'_>) -> Vec<Broken> {
    sewn(case)
        .filter(|(c, m)| c.kind == CrossingKind::Hem && c.thickness > m.sews)
        .map(|(c, m)| {
            judged(c, m, c.thickness)
                .help(key::SEWING_BULK_HEM_HELP)
                .at(Some(c.place))
        })
        .collect()
}
