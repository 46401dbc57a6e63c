//! What the layout says of itself, and in which state figures are.

use style::Wash;
use words::{Said, key, say};

use super::context::Context;
use crate::PackWords;

pub(super) fn pack_words(context: &Context<'_>) -> PackWords {
    let words = context.say;
    let named = |key| words.named(key).to_owned();
    let raw = context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw);
    let one = words.say(say::PapersOneSize {
        size: context.shown.size.to_string(),
    });
    let all = named(key::PAPERS_ALL_SIZES);
    let before = |sizes: String| -> Said {
        match raw {
            true => say::PapersStateUnwashed { sizes }.into(),
            false => say::PapersStateBefore { sizes }.into(),
        }
    };
    PackWords {
        before: words.say(before(one)),
        after: state_after(context),
        before_all: words.say(before(all.clone())),
        after_all: after(context, all),
        findings: named(key::PAPERS_FINDINGS),
        findings_lead: named(key::PAPERS_FINDINGS_LEAD),
        findings_none: named(key::PAPERS_FINDINGS_NONE),
        mind: named(key::PAPERS_MIND),
        mind_lead: named(key::PAPERS_MIND_LEAD),
        why: named(key::PAPERS_WHY),
        why_lead: named(key::PAPERS_WHY_LEAD),
        why_about: named(key::PAPERS_WHY_ABOUT),
        materials: named(key::PAPERS_MATERIALS),
        annex: named(key::PAPERS_STATE_ANNEX),
        annex_title: named(key::PAPERS_ANNEX),
        by_size: named(key::PAPERS_BY_SIZE),
        checks: named(key::PAPERS_CHECKS),
        codes: named(key::PAPERS_CODES),
        codes_lead: named(key::PAPERS_CODES_LEAD),
        left_so: named(key::PAPERS_LEFT_SO),
        yarn_on_cloth: named(key::PAPERS_YARN_ON_CLOTH),
        yarn_on_cloth_note: named(key::PAPERS_YARN_ON_CLOTH_NOTE),
        measures_basis: named(key::PAPERS_MEASURES_BASIS),
        moves_basis: named(key::PAPERS_MOVES_BASIS),
        changes: named(key::PAPERS_CHANGES),
        changes_lead: named(key::PAPERS_CHANGES_LEAD),
        other_seams: named(key::PAPERS_OTHER_SEAMS),
        class: named(key::PAPERS_SEAM_CLASS),
        rows: named(key::PAPERS_SEAM_ROWS),
    }
}

/// In which state the figures of the finished pair are, of the size that is drawn.
pub(super) fn state_after(context: &Context<'_>) -> String {
    let size = context.shown.size.to_string();
    after(context, context.say.say(say::PapersOneSize { size }))
}

fn after(context: &Context<'_>, sizes: String) -> String {
    let raw = context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw);
    let state: Said = match raw {
        true => say::PapersStateUnwashed { sizes }.into(),
        false => say::PapersStateAfter { sizes }.into(),
    };
    context.say.saying(&state)
}
