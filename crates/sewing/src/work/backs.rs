//! Back pockets, yokes and seat: flat work, each panel by itself as long as it may be.

use draft::PieceId;
use style::SeamId;
use trade::MachineId;
use words::key;

use super::operation::{Operation, Stage, Work};
use super::operation_key::Task;
use super::plan::{After, Plan, operation, says};
use super::seams::At;
use super::small_parts::Ready;
use crate::bulk::CrossingKind;
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
            pieces: vec![
                PieceId::Back,
                PieceId::BackPocketLeft,
                PieceId::BackPocketRight,
            ],
            fixings: hidden,
            mind: says(&[key::MIND_HIDDEN_RIVETS, key::MIND_HIDDEN_RIVETS_COVERED]),
            after,
            ..operation(
                STAGE,
                (Work::Set, MachineId::RivetPress),
                Task::BackPocketsRivets,
            )
        });
    }
    let set = plan.seam(SeamId::BackPocketSet, &At::new(STAGE, &after));
    let yokes = plan.seam(SeamId::Yoke, &At::new(STAGE, &set));
    let thin = plan.thinned(CrossingKind::SeatYoke, SeamId::Seat, STAGE, &yokes);
    plan.seam(SeamId::Seat, &At::new(STAGE, &thin))
}
