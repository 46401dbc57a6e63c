//! The first page: what the style is and how it looks.

use ::words::{Key, key, say};
use drawing::{View, garment_picture};
use sewing::Face;
use style::{Closing, Cloth, Lining, Tag, Workroom};

use super::back_pockets;
use super::context::{Assembly, Context};
use super::figures::view;
use super::open::{ask_in, fact, fact_or_ask};
use super::words::{capital, joined};
use crate::{Cover, Fact, PaperError, StyleHead, Who};

pub(super) fn head(context: &Context<'_>, assembly: &Assembly) -> StyleHead {
    let style = &context.loaded.style.style;
    let workroom = context.loaded.collection.workrooms.get(&style.workroom);
    let open = || match style.workroom.as_str() {
        "" => context.say.named(key::PAPERS_WORKROOM_OPEN).to_owned(),
        key => key.to_owned(),
    };
    StyleHead {
        collection: context.loaded.collection.name.clone(),
        name: style.name.clone(),
        code: style.code.clone(),
        revision: context.say.say(say::PapersRevision {
            number: assembly.revision.max(1).to_string(),
        }),
        workroom: workroom.map_or_else(open, |w| joined([w.name.as_str(), w.place.as_str()], ", ")),
        summary: style.summary.clone(),
    }
}

pub(super) fn cover(context: &Context<'_>) -> Result<Cover, PaperError> {
    let words = context.say;
    let picture = |from| garment_picture(context.shown, from, Face::Outside, words);
    Ok(Cover {
        drawings: vec![
            view(picture(View::Front), words.named(key::PAPERS_COVER_FRONT))?,
            view(picture(View::Back), words.named(key::PAPERS_COVER_BACK))?,
        ],
        facts: facts(context),
        contact: contact(context),
    })
}

/// Who made the style, who sews it and whom to ask. What no file states is asked for.
fn contact(context: &Context<'_>) -> Vec<Fact> {
    let collection = &context.loaded.collection;
    let style = &context.loaded.style.style;
    let workroom = collection.workrooms.get(&style.workroom);
    let place = workroom.map(|w| joined([w.name.as_str(), w.place.as_str()], ", "));
    let line = |label, value| fact_or_ask(context, label, value, Who::Buyer);
    vec![
        line(key::PAPERS_CONTACT_MAKER, collection.name.clone()),
        line(key::PAPERS_CONTACT_QUESTIONS, collection.contact.clone()),
        order(context),
        line(key::PAPERS_CONTACT_WORKROOM, place.unwrap_or_default()),
        there(context, workroom),
        fact_or_ask(context, key::PAPERS_COVER_SAMPLE, String::new(), Who::Sewer),
    ]
}

/// Whom to ask at the workroom.
fn there(context: &Context<'_>, workroom: Option<&Workroom>) -> Fact {
    let label = key::PAPERS_CONTACT_THERE;
    if let Some(known) = workroom.filter(|workroom| !workroom.contact.is_empty()) {
        return fact(context, label, known.contact.clone());
    }
    let asked = key::PAPERS_CONTACT_THERE_ASKED;
    let ask = ask_in(context, Who::Buyer, asked, key::PAPERS_ASK);
    Fact {
        asks: vec![ask.clone()],
        ..fact(context, label, ask.said)
    }
}

/// How many pairs and by when is no part of a pack.
fn order(context: &Context<'_>) -> Fact {
    let asked = key::PAPERS_ORDER_ASKED;
    let ask = ask_in(context, Who::Buyer, asked, key::PAPERS_ORDER_STATES);
    Fact {
        asks: vec![ask.clone()],
        ..fact(context, key::PAPERS_CONTACT_ORDER, ask.said)
    }
}

fn facts(context: &Context<'_>) -> Vec<Fact> {
    let style = &context.loaded.style;
    let tags = |tags: &[Tag]| {
        let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
        tags.join(", ")
    };
    let lined: Vec<String> = style
        .linings()
        .into_iter()
        .map(|key| cloth(context, key))
        .collect();
    let linings = if lined.is_empty() {
        context.say.named(key::PAPERS_NONE).to_owned()
    } else {
        lined.join("; ")
    };
    let fit = format!("{}, {}", style.style.figure, style.style.fit);
    let pocketing = cloth(context, &style.cloth.pocketing);
    [
        Some((key::PAPERS_COVER_FIT, fit)),
        Some((key::PAPERS_COVER_WAISTS, tags(&style.sizes.waists))),
        Some((key::PAPERS_COVER_LENGTHS, tags(&style.sizes.lengths))),
        Some((key::PAPERS_COVER_DRAWN, context.shown.size.to_string())),
        Some((key::PAPERS_COVER_CLOSING, closing(context))),
        Some((key::PAPERS_COVER_LOOPS, belt_loops(context))),
        Some((key::PAPERS_COVER_SHELL, cloth(context, &style.cloth.shell))),
        Some((key::PAPERS_COVER_POCKETING, pocketing)),
        Some((key::PAPERS_COVER_LINING, linings)),
        Some((key::PAPERS_COVER_BACK_POCKETS, back_pocket_words(context))),
        extra_pocket(context).map(|where_to| (key::PAPERS_COVER_EXTRA, where_to)),
    ]
    .into_iter()
    .flatten()
    .map(|(label, value)| fact(context, label, value))
    .collect()
}

/// "Tideline loomstate selvedge, deep indigo, 475 g/m²".
fn cloth(context: &Context<'_>, key: &str) -> String {
    let known = context.loaded.collection.cloths.get(key);
    let told = |cloth: &Cloth| {
        let weight = context.words.weight(cloth.weight);
        joined(
            [
                cloth.name.as_str(),
                cloth.colour_name.as_str(),
                weight.as_str(),
            ],
            ", ",
        )
    };
    known.map_or_else(|| key.to_owned(), told)
}

fn closing(context: &Context<'_>) -> String {
    let fly = &context.loaded.style.fly;
    let trims = &context.loaded.collection.trims;
    match fly.closing {
        Closing::Buttons => context.say.say(say::PapersCoverButtons {
            count: fly.buttons.to_string(),
        }),
        Closing::Zip => {
            let key = fly.zip.as_deref().unwrap_or_default();
            let zip = trims.get(key).map_or(key, |trim| trim.name.as_str());
            context.say.say(say::PapersCoverZip { zip })
        }
    }
}

/// "5, for a belt of 3.8 cm".
fn belt_loops(context: &Context<'_>) -> String {
    let loops = &context.loaded.style.loops;
    match loops.count {
        0 => context.say.named(key::PAPERS_NONE).to_owned(),
        count => context.say.say(say::PapersCoverLoopsFor {
            belt: context.words.length(loops.belt),
            count: count.to_string(),
        }),
    }
}

fn back_pocket_words(context: &Context<'_>) -> String {
    let back = &context.loaded.style.pockets.back;
    let words = context.say;
    let (left, right) = (lined(back.left.lining), lined(back.right.lining));
    let lined = if left == right {
        capital(words.named(left))
    } else {
        words.say(say::PapersLeftRightLined { left, right })
    };
    let differ = back_pockets::differ(context).unwrap_or_default();
    joined([lined.as_str(), differ.as_str()], ". ")
}

const fn lined(lining: Lining) -> Key {
    match lining {
        Lining::None => key::PAPERS_UNLINED,
        Lining::Half => key::PAPERS_HALF_LINED,
        Lining::Full => key::PAPERS_FULLY_LINED,
    }
}

fn extra_pocket(context: &Context<'_>) -> Option<String> {
    let extra = context.loaded.style.pockets.extra.as_ref()?;
    let side = match extra.side {
        style::Side::Left => key::PAPERS_LEFT,
        style::Side::Right => key::PAPERS_RIGHT,
    };
    Some(context.say.say(say::PapersCoverExtraOn { side }))
}
