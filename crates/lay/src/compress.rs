//! Pressing the best lay together by ever smaller steps.

use crate::shared_search::Stage;
use crate::worker::{Patience, Verdict, Worker};

/// The step at the beginning and at the end, as shares of the length.
const FIRST_STEP: f64 = 0.0005;
const LAST_STEP: f64 = 0.00001;

const PATIENCE: Patience = Patience {
    passes: 100,
    strikes: 5,
};

/// Takes a thin strip out of the best lay at a place of chance and parts what then overlaps; keeps
/// the lay where that succeeds. Returns when the search is over.
pub(crate) fn compress(worker: &mut Worker) {
    while let Stage::Compress(share) = worker.stage {
        let step = FIRST_STEP + (LAST_STEP - FIRST_STEP) * share.clamp(0.0, 1.0);
        let best = worker.best.clone();
        worker.board.load(&best);
        let cut = worker.random.between(0.0, best.length);
        let shorter = worker.shorter(best.length, step);
        worker.board.shorten(shorter, cut);
        match worker.part(&PATIENCE) {
            Verdict::Free => {
                worker.squeeze(step);
                worker.keep();
                if worker.look_up() == Some(Verdict::Over) {
                    return;
                }
            }
            Verdict::Over => return,
            Verdict::Stuck | Verdict::Overtaken => {}
        }
    }
}
