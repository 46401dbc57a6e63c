//! Crossings against what a machine takes under its foot.

use style::{PartId, SeamId, Subject};
use trade::counted;
use words::{Said, key, say};

use super::case::{Broken, Case};
use crate::bulk::{Crossing, CrossingKind, Machine};

/// A hem thicker than this share of what the machine takes is flattened first (common practice).
const NEAR: f64 = 0.8;

fn sewn<'a>(case: &Case<'a>) -> impl Iterator<Item = (&'a Crossing, Machine)> + use<'a> {
    case.crossings.iter().filter_map(|c| Some((c, c.machine?)))
}

fn too_thick(crossing: &Crossing, machine: Machine) -> Said {
    say::SewingBulkTooThick {
        machine: article(machine.name).to_string(),
        machine_2: machine.name.to_string(),
        takes: machine.takes.in_mm(1),
        words: crossing.words().to_string(),
    }
    .into()
}

/// "a lockstitch machine", "an overlock machine".
fn article(name: &str) -> &'static str {
    if name.starts_with(['a', 'e', 'i', 'o', 'u']) {
        "an"
    } else {
        "a"
    }
}

/// What is left when turned-in edges are cut away, in words.
fn left(crossing: &Crossing) -> Option<Said> {
    let (plies, thickness) = crossing.trimmed?;
    Some(
        say::SewingBulkLeft {
            plies: counted(plies.total(), "ply", "plies"),
            thickness: thickness.in_mm(1),
        }
        .into(),
    )
}

/// Everything but crossings of felled seams and hems, which have rules of their own.
pub(super) fn machine(case: &Case<'_>) -> Vec<Broken> {
    use CrossingKind::{Crotch, Hem, SeatYoke};
    sewn(case)
        .filter(|(c, m)| !matches!(c.kind, SeatYoke | Crotch | Hem) && c.thickness > m.takes)
        .map(|(c, m)| {
            let help = left(c).unwrap_or_else(|| key::SEWING_BULK_MACHINE.into());
            Broken::warning(about(c), too_thick(c, m))
                .help(help)
                .at(Some(c.place))
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

/// A note where cutting away the turned-in edges is enough, a warning where it is not.
pub(super) fn felled(case: &Case<'_>) -> Vec<Broken> {
    sewn(case)
        .filter(|(c, m)| {
            matches!(c.kind, CrossingKind::SeatYoke | CrossingKind::Crotch) && c.thickness > m.takes
        })
        .map(|(c, m)| {
            let enough = c.trimmed.is_some_and(|(_, thickness)| thickness <= m.takes);
            let said = too_thick(c, m);
            let broken = if enough {
                Broken::note(about(c), said)
            } else {
                Broken::warning(about(c), said)
            };
            broken
                .help(left(c).unwrap_or_else(|| key::SEWING_BULK_FELLED.into()))
                .at(Some(c.place))
        })
        .collect()
}

pub(super) fn hem(case: &Case<'_>) -> Vec<Broken> {
    sewn(case)
        .filter(|(c, m)| c.kind == CrossingKind::Hem && c.thickness > m.takes * NEAR)
        .map(|(c, m)| {
            let broken = if c.thickness > m.takes {
                Broken::warning(about(c), too_thick(c, m))
            } else {
                Broken::note(about(c), too_thick(c, m))
            };
            broken.help(key::SEWING_BULK_HEM_HELP).at(Some(c.place))
        })
        .collect()
}
