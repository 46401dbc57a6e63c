//! Who gives the pair its first wash, when and how.

use style::{SetAfter, Wash, WashFinish, WashedBy};
use words::{Given, Key, Said, key, say};

use super::context::Context;
use super::open::{ask, ask_in};
use crate::{Ask, Who};

/// What the pack says of the wash, sentence after sentence, and what of it is open.
pub(super) fn wash(context: &Context<'_>) -> (String, Vec<Ask>) {
    let Some(wash) = &context.loaded.style.wash else {
        let asked = key::PAPERS_WASH_ASKED;
        let ask = ask_in(context, Who::Laundry, asked, key::PAPERS_WASH_NOT_STATED);
        let said = context.say.named(key::PAPERS_WASH_CHART).to_owned();
        return (said, vec![ask]);
    };
    let said = [Some(finish(wash)), recipe(wash), set_after(context, wash)];
    let said: Vec<String> = said
        .iter()
        .flatten()
        .map(|said| context.say.saying(said))
        .collect();
    // A raw pair has no recipe of ours to ask for.
    let unwritten = wash.steps.is_empty() && !wash.is_raw();
    let sent = wash.by == WashedBy::Laundry;
    let asks = [
        unwritten.then(|| ask(context, Who::Laundry, key::PAPERS_WASH_RECIPE)),
        sent.then(|| ask(context, Who::Laundry, key::PAPERS_WASH_WHICH_LAUNDRY)),
    ];
    (said.join(" "), asks.into_iter().flatten().collect())
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

fn recipe(wash: &Wash) -> Option<Said> {
    if wash.steps.is_empty() {
        return None;
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
