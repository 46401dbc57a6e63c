//! What is done before a machine sews a crossing that is thicker than it takes.

use style::SeamId;
use words::{Said, say};

use crate::bulk::{Crossing, CrossingKind, Machine, bulk};
use crate::garment::Garment;

/// What to mind at the crossings of a seam that are thicker than its machine sews, the thickest first.
pub(super) fn thick_crossings(garment: &Garment, seam: SeamId) -> Vec<Said> {
    let crossings = bulk(garment);
    let of_seam = crossings.iter().filter(|c| c.sewn_by == Some(seam));
    let mut out: Vec<Said> = Vec::new();
    for said in of_seam.filter_map(thick) {
        if !out.contains(&said) {
            out.push(said);
        }
    }
    out
}

fn thick(crossing: &Crossing) -> Option<Said> {
    let machine = crossing.machine?;
    if crossing.thickness <= machine.sews {
        return None;
    }
    let place = crossing.name.clone();
    let thick = crossing.thickness.in_mm(1);
    let sews = machine.sews.in_mm(1);
    let Some((_, left)) = crossing.trimmed else {
        return Some(say::MindThickHammer { place, sews, thick }.into());
    };
    let fits = left <= machine.sews;
    let left = left.in_mm(1);
    Some(match (is_cut_before(crossing, machine), fits) {
        (true, true) => say::MindThickCut {
            left,
            place,
            sews,
            thick,
        }
        .into(),
        (true, false) => say::MindThickCutHammer {
            left,
            place,
            sews,
            thick,
        }
        .into(),
        (false, true) => say::MindThickEither {
            left,
            place,
            sews,
            thick,
        }
        .into(),
        (false, false) => say::MindThickHammer { place, sews, thick }.into(),
    })
}

/// Whether an operation of its own cuts turned-in edges away there.
fn is_cut_before(crossing: &Crossing, machine: Machine) -> bool {
    matches!(crossing.kind, CrossingKind::SeatYoke | CrossingKind::Crotch)
        && crossing.fits_trimmed(machine)
}
