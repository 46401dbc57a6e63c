//! Back pockets, yokes and seat: flat work, each panel by itself as long as it may be.

use draft::PieceId;
use style::SeamId;

use super::operation::{Operation, Stage, Work};
use super::plan::{After, Plan, operation, says};
use super::seams::At;
use super::small_parts::Ready;
use crate::garment::FixingKind;

const STAGE: Stage = Stage::Backs;

/// What has to be done before the backs are used.
pub(super) fn backs(plan: &mut Plan<'_>, ready: &Ready) -> After {
    let pockets = [PieceId::BackPocketLeft, PieceId::BackPocketRight];
    let hidden =
        plan.fixings(|f| pockets.contains(&f.piece) && matches!(f.kind, FixingKind::Rivet(_)));
    let mut after = ready.back_pockets.clone();
    if !hidden.is_empty() {
        after = plan.add(Operation {
            pieces: vec![PieceId::Back, PieceId::BackPocketLeft, PieceId::BackPocketRight],
            fixings: hidden,
            mind: says(&[
                "open the pressed sides out: through the turned-in corners and the back, not through the pocket's face",
                "the setting rows then cover them outside; the stud shows inside only",
            ]),
            after,
            ..operation(
                STAGE,
                (Work::Set, "rivet press"),
                "back-pockets-rivets",
                "Back pockets: hidden rivets",
            )
        });
    }
    let set = plan.seam(SeamId::BackPocketSet, &At::new(STAGE, &after));
    let yokes = plan.seam(SeamId::Yoke, &At::new(STAGE, &set));
    plan.seam(SeamId::Seat, &At::new(STAGE, &yokes))
}
