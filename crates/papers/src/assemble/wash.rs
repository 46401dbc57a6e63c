//! Who gives the pair its first wash, when and how.

use style::{SetAfter, Wash, WashFinish, WashedBy};
use words::{Given, Key, Said, Words, key, say};

use super::context::Context;

/// What the pack says of the wash, sentence after sentence.
pub(super) fn wash(context: &Context<'_>, words: &Words) -> String {
    let said: Vec<Said> = match &context.loaded.style.wash {
        None => vec![key::PAPERS_WASH_NOT_STATED.into()],
        Some(wash) => [Some(finish(wash)), recipe(wash), set_after(context, wash)]
            .into_iter()
            .flatten()
            .collect(),
    };
    let said: Vec<String> = said.iter().map(|said| words.saying(said)).collect();
    said.join(" ")
}

fn finish(wash: &Wash) -> Said {
    let by = by(wash.by);
    match wash.finish {
        WashFinish::Raw => say::PapersWashRaw { by }.into(),
        _ if wash.by == WashedBy::Mill => key::PAPERS_WASH_MILL.into(),
        WashFinish::Rinsed => say::PapersWashRinsed { by }.into(),
        WashFinish::Washed => say::PapersWashWashed { by }.into(),
    }
}

/// A raw pair has no recipe of ours to ask for.
fn recipe(wash: &Wash) -> Option<Said> {
    if wash.steps.is_empty() {
        return (!wash.is_raw()).then(|| key::PAPERS_WASH_NO_STEPS.into());
    }
    let steps: Vec<String> = wash.steps.iter().map(ToString::to_string).collect();
    let steps = steps.join("; ");
    Some(say::PapersWashSteps { steps }.into())
}

fn set_after(context: &Context<'_>, wash: &Wash) -> Option<Said> {
    if !wash.set_after.is_empty() {
        let what = wash.set_after.iter().map(|what| set(*what).into());
        let what = Given::List(what.collect());
        return Some(say::PapersWashSetAfter { what }.into());
    }
    let patched = context.loaded.style.patch.is_some() && !wash.is_raw();
    patched.then(|| key::PAPERS_WASH_NOTHING_AFTER.into())
}

const fn by(by: WashedBy) -> Key {
    match by {
        WashedBy::Mill => key::WASHED_BY_MILL,
        WashedBy::Laundry => key::WASHED_BY_LAUNDRY,
        WashedBy::Workroom => key::WASHED_BY_WORKROOM,
        WashedBy::Wearer => key::WASHED_BY_WEARER,
    }
}

const fn set(what: SetAfter) -> Key {
    match what {
        SetAfter::Patch => key::SET_AFTER_PATCH,
        SetAfter::Labels => key::SET_AFTER_LABELS,
        SetAfter::Buttons => key::SET_AFTER_BUTTONS,
        SetAfter::Rivets => key::SET_AFTER_RIVETS,
    }
}
