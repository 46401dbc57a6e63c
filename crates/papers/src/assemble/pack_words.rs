//! What the layout says of itself, and in which state figures are.

use style::Wash;
use words::{key, say};

use super::context::Context;
use crate::PackWords;

pub(super) fn pack_words(context: &Context<'_>) -> PackWords {
    let words = context.say;
    let named = |key| words.named(key).to_owned();
    let size = || context.shown.size.to_string();
    let raw = context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw);
    let unwashed = || words.say(say::PapersStateUnwashed { size: size() });
    let (before, after) = if raw {
        (unwashed(), unwashed())
    } else {
        (
            words.say(say::PapersStateBefore { size: size() }),
            words.say(say::PapersStateAfter { size: size() }),
        )
    };
    PackWords {
        before,
        after,
        annex: named(key::PAPERS_STATE_ANNEX),
        annex_title: named(key::PAPERS_ANNEX),
        by_size: named(key::PAPERS_BY_SIZE),
        checks: named(key::PAPERS_CHECKS),
        codes: named(key::PAPERS_CODES),
        codes_lead: named(key::PAPERS_CODES_LEAD),
        left_so: named(key::PAPERS_LEFT_SO),
        other_seams: named(key::PAPERS_OTHER_SEAMS),
        class: named(key::PAPERS_SEAM_CLASS),
        rows: named(key::PAPERS_SEAM_ROWS),
    }
}
