//! What no file states: made at the line that lacks it, and gathered from there into one list.

use words::{Given, Key, Said, key, say};

use super::context::Context;
use super::words::capital;
use crate::{Ask, Fact, OpenGroup, OpenPart, OpenRow, Pack, Who};

/// Something that is not stated: "What counts as a fault: not stated, ask."
pub(super) fn ask(context: &Context<'_>, who: Who, what: impl Into<Given>) -> Ask {
    let what = context.say.putting(&what.into());
    let said = context.say.say(say::PapersAsked {
        what: capital(&what),
    });
    Ask { who, what, said }
}

/// The same where a sentence of its own says it.
pub(super) fn ask_in(
    context: &Context<'_>,
    who: Who,
    what: impl Into<Said>,
    said: impl Into<Said>,
) -> Ask {
    Ask {
        who,
        what: context.say.say(what),
        said: context.say.say(said),
    }
}

/// The same where the label of the line is the question.
pub(super) fn ask_whole(context: &Context<'_>, who: Who) -> Ask {
    Ask {
        who,
        what: String::new(),
        said: context.say.named(key::PAPERS_ASK).to_owned(),
    }
}

/// A labelled fact; one that is empty is asked for.
pub(super) fn fact_or_ask(context: &Context<'_>, label: Key, value: String, who: Who) -> Fact {
    if !value.is_empty() {
        return fact(context, label, value);
    }
    let ask = ask_whole(context, who);
    Fact {
        asks: vec![ask.clone()],
        ..fact(context, label, ask.said)
    }
}

/// A labelled fact.
pub(super) fn fact(context: &Context<'_>, label: Key, value: String) -> Fact {
    Fact {
        label: context.say.named(label).to_owned(),
        value,
        asks: Vec::new(),
    }
}

/// All that the filled parts of a pack leave open, by who needs the answer.
pub(super) fn list(context: &Context<'_>, pack: &Pack) -> OpenPart {
    let asked = gathered(context, pack);
    let mut number = 0;
    let mut groups = Vec::new();
    for who in Who::ALL {
        let of = asked.iter().filter(|asked| asked.ask.who == who);
        let rows: Vec<OpenRow> = of
            .map(|asked| {
                number += 1;
                row(context, asked, number)
            })
            .collect();
        if !rows.is_empty() {
            groups.push(OpenGroup {
                who: context.say.named(needs(who)).to_owned(),
                rows,
            });
        }
    }
    let named = |key| context.say.named(key).to_owned();
    OpenPart {
        title: named(key::PAPERS_TO_ASK),
        count: if number > 0 {
            context.say.say(say::PapersOpenCount { count: number })
        } else {
            String::new()
        },
        note: named(if groups.is_empty() {
            key::PAPERS_OPEN_NONE
        } else {
            key::PAPERS_OPEN_NOTE
        }),
        heads: [
            key::PAPERS_OPEN_WHAT,
            key::PAPERS_OPEN_PLACE,
            key::PAPERS_OPEN_ANSWER,
        ]
        .map(named),
        groups,
    }
}

/// A question with the line it stands at.
struct Asked<'a> {
    about: String,
    place: String,
    ask: &'a Ask,
}

/// Every question of the pack, in the order of its pages.
fn gathered<'a>(context: &Context<'_>, pack: &'a Pack) -> Vec<Asked<'a>> {
    let named = |key| context.say.named(key).to_owned();
    let mut out = Vec::new();
    let mut take = |about: &str, place: String, asks: &'a [Ask]| {
        out.extend(asks.iter().map(|ask| Asked {
            about: about.to_owned(),
            place: place.clone(),
            ask,
        }));
    };
    let cover = &pack.cover;
    for fact in cover.contact.iter().chain(&cover.facts) {
        take(&fact.label, named(key::PAPERS_PLACE_COVER), &fact.asks);
    }
    for caution in &pack.cautions {
        take(&caution.heading, named(key::PAPERS_MIND), &caution.asks);
    }
    for row in pack.materials.iter().flat_map(|group| &group.rows) {
        take(&row.name, named(key::PAPERS_MATERIALS), &row.asks);
    }
    take("", named(key::PAPERS_PLACE_CUTTING), &pack.cutting.asks);
    for cloth in &pack.cutting.cloths {
        for fact in &cloth.facts {
            let about = format!("{}, {}", cloth.name, fact.label);
            take(&about, named(key::PAPERS_PLACE_CUTTING), &fact.asks);
        }
    }
    take("", named(key::PAPERS_PLACE_ORDER), &pack.order_asks);
    for row in pack.order.iter().flat_map(|stage| &stage.operations) {
        let place = say::PapersPlaceOperation {
            number: row.number.as_str(),
        };
        take(&row.name, context.say.say(place), &row.asks);
    }
    for group in &pack.checks.groups {
        let place = say::PapersPlaceChecks {
            group: group.heading.as_str(),
        };
        let place = context.say.say(place);
        for row in &group.rows {
            take(&row.what, place.clone(), &row.asks);
        }
    }
    out
}

fn row(context: &Context<'_>, asked: &Asked<'_>, number: usize) -> OpenRow {
    let (about, what) = (asked.about.as_str(), asked.ask.what.as_str());
    let what = match (about, what) {
        ("", what) => capital(what),
        (about, "") => about.to_owned(),
        (about, what) => context.say.say(say::PapersOpenAbout { about, what }),
    };
    OpenRow {
        number: number.to_string(),
        what,
        place: asked.place.clone(),
    }
}

const fn needs(who: Who) -> Key {
    match who {
        Who::Buyer => key::PAPERS_WHO_BUYER,
        Who::Cutter => key::PAPERS_WHO_CUTTER,
        Who::Sewer => key::PAPERS_WHO_SEWER,
        Who::Laundry => key::PAPERS_WHO_LAUNDRY,
        Who::Inspector => key::PAPERS_WHO_INSPECTOR,
        Who::Packer => key::PAPERS_WHO_PACKER,
    }
}
