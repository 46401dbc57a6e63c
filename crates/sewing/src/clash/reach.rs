//! Rows in a leg that is a tube already, which no machine with an arm sews.

use draft::PieceId;
use style::Subject;
use trade::StitchType;
use words::{key, say};

use super::scene::What;
use super::whereabouts::{operation, place};
use crate::check::case::{Broken, Case};

/// Whether a machine with a narrow arm or a cylinder bed sews this stitch along a tube, or the edge of one is all that goes
/// under the needle (from memory).
const fn reaches(stitch: StitchType) -> bool {
    use StitchType as S;
    match stitch {
        S::S301 | S::S101 | S::S401 | S::S404 => true,
        S::S503 | S::S504 | S::S505 | S::S512 | S::S514 | S::S515 | S::S516 => true,
        S::S304 | S::S406 | S::S602 | S::S605 | S::S607 => false,
    }
}

/// Rows of the legs sewn once the legs are tubes, in a stitch made on a flat bed alone.
pub(crate) fn no_arm(case: &Case<'_>) -> Vec<Broken> {
    let scene = case.scene;
    let closes = case.closing;
    let Some(closed) = scene.first_of(closes) else {
        return Vec::new();
    };
    let mut out: Vec<Broken> = Vec::new();
    for sewn in &scene.sewn {
        let What::Row(row) = sewn.what else {
            continue;
        };
        let leg = matches!(sewn.ground, PieceId::Front | PieceId::Back);
        let about = Subject::Row(row.seam, row.number);
        let known = out.iter().any(|b| b.subject == about);
        if !leg || known || sewn.operation <= closed || reaches(row.stitch) {
            continue;
        }
        let middle = row.path.point_at(row.length() / 2.0);
        out.push(
            Broken::warning(
                about,
                say::ClashNoArm {
                    closed: operation(scene, closed),
                    now: operation(scene, sewn.operation),
                    stitch: row.stitch.key(),
                },
            )
            .help(key::CLASH_NO_ARM_HELP)
            .at(place(row.piece, middle)),
        );
    }
    out
}
