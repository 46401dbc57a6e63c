//! The first page: what the style is and how it looks.

use ::words::key;
use drawing::{View, garment_picture};
use sewing::Face;
use style::{Closing, Lining, Tag};

use super::context::{Assembly, Context};
use super::figures::view;
use super::words::{capital, joined};
use crate::{Cover, Fact, PaperError, StyleHead};

pub(super) fn head(context: &Context<'_>, assembly: &Assembly) -> StyleHead {
    let style = &context.loaded.style.style;
    let workroom = context.loaded.collection.workrooms.get(&style.workroom);
    let open = || match style.workroom.as_str() {
        "" => "a workroom that is open".to_owned(),
        key => key.to_owned(),
    };
    StyleHead {
        collection: context.loaded.collection.name.clone(),
        name: style.name.clone(),
        code: style.code.clone(),
        revision: format!("Revision {}", assembly.revision.max(1)),
        workroom: workroom.map_or_else(open, |w| joined([w.name.as_str(), w.place.as_str()], ", ")),
        summary: style.summary.clone(),
    }
}

pub(super) fn cover(context: &Context<'_>) -> Result<Cover, PaperError> {
    let picture = |from| {
        garment_picture(
            context.shown,
            from,
            Face::Outside,
            ::words::Words::english(),
        )
    };
    Ok(Cover {
        drawings: vec![
            view(picture(View::Front), "Front")?,
            view(picture(View::Back), "Back")?,
        ],
        facts: facts(context),
        contact: contact(context),
    })
}

/// Who made the style and whom to ask. What the collection does not state is said to be open.
fn contact(context: &Context<'_>) -> Vec<Fact> {
    let words = context.say;
    let collection = &context.loaded.collection;
    let ask = || words.named(key::PAPERS_ASK).to_owned();
    let workroom = collection
        .workrooms
        .get(&context.loaded.style.style.workroom);
    let place = workroom.map(|w| joined([w.name.as_str(), w.place.as_str()], ", "));
    let stated = |value: Option<String>| value.filter(|v| !v.is_empty()).unwrap_or_else(ask);
    [
        (
            key::PAPERS_CONTACT_MAKER,
            stated(Some(collection.name.clone())),
        ),
        (key::PAPERS_CONTACT_WORKROOM, stated(place)),
        (key::PAPERS_CONTACT_QUESTIONS, ask()),
        (
            key::PAPERS_CONTACT_ORDER,
            words.named(key::PAPERS_ORDER_STATES).to_owned(),
        ),
    ]
    .into_iter()
    .map(|(label, value)| Fact {
        label: words.named(label).to_owned(),
        value,
    })
    .collect()
}

fn facts(context: &Context<'_>) -> Vec<Fact> {
    let style = &context.loaded.style;
    let collection = &context.loaded.collection;
    let cloth = |key: &str| {
        collection.cloths.get(key).map_or_else(
            || key.to_owned(),
            |c| format!("{}, {}", c.name, context.words.weight(c.weight)),
        )
    };
    let tags = |tags: &[Tag]| {
        let tags: Vec<String> = tags.iter().map(Tag::to_string).collect();
        tags.join(", ")
    };
    let trim = |key: &str| {
        collection
            .trims
            .get(key)
            .map_or_else(|| key.to_owned(), |t| t.name.clone())
    };
    let fly = &style.fly;
    let closing = match fly.closing {
        Closing::Buttons => format!("button fly, {} and 1 on the band", fly.buttons),
        Closing::Zip => format!(
            "zip fly, {}, and 1 button on the band",
            fly.zip.as_deref().map(trim).unwrap_or_default()
        ),
    };
    let lined: Vec<String> = style.linings().into_iter().map(cloth).collect();
    let linings = if lined.is_empty() {
        "none".to_owned()
    } else {
        lined.join("; ")
    };
    let fact = |label: &str, value: String| Fact {
        label: label.to_owned(),
        value,
    };
    vec![
        fact(
            "Fit",
            format!("{}, {}", style.style.figure, style.style.fit),
        ),
        fact("Waists", tags(&style.sizes.waists)),
        fact("Lengths", tags(&style.sizes.lengths)),
        fact("Drawn size", context.shown.size.to_string()),
        fact("Closing", closing),
        fact("Shell", cloth(&style.cloth.shell)),
        fact("Pocketing", cloth(&style.cloth.pocketing)),
        fact("Lining", linings),
        fact("Back pockets", back_pockets(context)),
        fact("Belt loops", belt_loops(context)),
    ]
}

/// "5, for a belt of 3.8 cm".
fn belt_loops(context: &Context<'_>) -> String {
    let loops = &context.loaded.style.loops;
    let belt = context.words.length(loops.belt);
    match loops.count {
        0 => "none".to_owned(),
        count => format!("{count}, for a belt of {belt}"),
    }
}

fn back_pockets(context: &Context<'_>) -> String {
    let back = &context.loaded.style.pockets.back;
    let lined = |lining: Lining| match lining {
        Lining::None => "unlined",
        Lining::Half => "upper half lined",
        Lining::Full => "fully lined",
    };
    let (left, right) = (lined(back.left.lining), lined(back.right.lining));
    if left == right {
        capital(left)
    } else {
        format!("Left {left}, right {right}")
    }
}
