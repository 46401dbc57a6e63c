//! How the cloth lies on the table, and what of that no style states.

use cutting::Way;
use words::{Given, Key, key, say};

use super::context::Context;
use super::lays::{ClothLay, WAY};
use super::open::ask;
use crate::{Ask, Who};

/// What whoever spreads and cuts needs and no style can state.
pub(super) fn asks(context: &Context<'_>) -> Vec<Ask> {
    [key::PAPERS_ASK_PLIES, key::PAPERS_ASK_REST]
        .map(|what| ask(context, Who::Cutter, what))
        .into()
}

/// Above the lists of what is cut: what holds of all cloths, and what is open of it.
pub(super) fn note(context: &Context<'_>, lays: &[ClothLay<'_>], asks: &[Ask]) -> String {
    let size = context.cut.size.to_string();
    let mut said = vec![context.say.say(say::PapersCuttingNote { size })];
    said.extend(context.cut.refused.iter().map(|refused| {
        let why = Given::from(refused.message());
        context.say.say(say::PapersBandRefused { why })
    }));
    said.push(context.say.named(table_words(WAY)).to_owned());
    let alike = lays.iter().filter(|laid| laid.spread.face_to_face);
    let cloths: Vec<Given> = alike.map(|laid| laid.cloth.name.as_str().into()).collect();
    said.push(if cloths.is_empty() {
        context.say.named(key::PAPERS_NEVER_FACE_TO_FACE).to_owned()
    } else {
        let cloths = Given::List(cloths);
        context.say.say(say::PapersFaceToFace { cloths })
    });
    said.extend(asks.iter().map(|ask| ask.said.clone()));
    said.join(" ")
}

/// How the cloth lies, and how pieces may lie on it.
const fn table_words(way: Way) -> Key {
    match way {
        Way::OneWay => key::PAPERS_LAID_ONE_WAY,
        Way::TwoWay => key::PAPERS_LAID_TWO_WAYS,
    }
}
