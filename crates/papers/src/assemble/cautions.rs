//! What the workroom must mind whatever the style: metal, leather, needles, labels, the wash.
//!
//! The rules named are those of the European Union and the United States as generally known when this
//! was written. They are pointers, not advice: each text defers to local law and to licensed testing.

use cutting::{ClothWash, Shrinkage};
use style::{Closing, Cloth, Label, Purpose, Tanning, Trim, TrimKind, Wash};
use trade::Share;
use words::{Given, Key, Said, key, say};

use super::context::Context;
use super::open::ask_in;
use super::shrinkage::Basis;
use super::wash;
use super::words::joined;
use crate::{Ask, Caution, Who};

pub(super) fn cautions(context: &Context<'_>) -> Vec<Caution> {
    let named = |key| context.say.named(key).to_owned();
    let caution = |heading: Key, (text, asks): (String, Vec<Ask>)| Caution {
        heading: named(heading),
        text,
        asks,
    };
    let plain = |heading: Key, text: String| caution(heading, (text, Vec::new()));
    let leather = patch(context).filter(|trim| trim.is_leather());
    let chromium = leather.map(|trim| chromium(context, trim));
    [
        Some(caution(key::PAPERS_WASH, wash::wash(context))),
        Some(plain(key::PAPERS_BEFORE_CUT, shrinkage(context))),
        Some(caution(key::PAPERS_NICKEL, nickel(context))),
        chromium.map(|text| plain(key::PAPERS_CHROMIUM, text)),
        Some(plain(key::PAPERS_DYES, named(key::PAPERS_DYES_TEXT))),
        Some(plain(key::PAPERS_NEEDLES, named(key::PAPERS_NEEDLES_TEXT))),
        Some(caution(
            key::PAPERS_FIBRE,
            fibre(context, leather.is_some()),
        )),
        Some(caution(key::PAPERS_CARE, care(context))),
        size_in_every_pair(context).map(|text| plain(key::PAPERS_SIZE_TOLD, text)),
        Some(plain(key::PAPERS_SAFETY, named(key::PAPERS_SAFETY_TEXT))),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn patch<'a>(context: &Context<'a>) -> Option<&'a Trim> {
    let patch = context.loaded.style.patch.as_ref()?;
    context.loaded.collection.trims.get(&patch.trim)
}

fn nickel(context: &Context<'_>) -> (String, Vec<Ask>) {
    let style = &context.loaded.style;
    let hidden = style
        .rivets
        .as_ref()
        .is_some_and(|rivets| rivets.back_hidden);
    let touching = match (style.fly.closing, style.rivets.is_some()) {
        (Closing::Zip, true) => key::PAPERS_METAL_ZIP_RIVETS,
        (Closing::Zip, false) => key::PAPERS_METAL_ZIP,
        (Closing::Buttons, true) => key::PAPERS_METAL_RIVETS,
        (Closing::Buttons, false) => key::PAPERS_METAL_BUTTONS,
    };
    let begin = if hidden {
        context.say.say(say::PapersNickelHidden { metal: touching })
    } else {
        context
            .say
            .say(say::PapersNickelTouches { metal: touching })
    };
    let text = [begin.as_str(), context.say.named(key::PAPERS_NICKEL_TEXT)].join(" ");
    let asks = unsaid_nickel(context).into_iter().map(|trim| {
        let trim = trim.name.as_str();
        ask_in(
            context,
            Who::Buyer,
            say::PapersNickelAsked { trim },
            say::PapersNickelUnsaid { trim },
        )
    });
    (text, asks.collect())
}

/// The metal trims of the style whose material says nothing of nickel.
fn unsaid_nickel<'a>(context: &Context<'a>) -> Vec<&'a Trim> {
    let style = &context.loaded.style;
    let fly = &style.fly;
    let rivet = style.rivets.as_ref().map(|rivets| &rivets.trim);
    let keys = [
        Some(&fly.band_button),
        fly.button.as_ref(),
        fly.zip.as_ref(),
        rivet,
    ];
    let mut out: Vec<&Trim> = Vec::new();
    for trim in keys.into_iter().flatten() {
        let Some(trim) = context.loaded.collection.trims.get(trim) else {
            continue;
        };
        let metal = matches!(
            trim.kind,
            TrimKind::ShankButton | TrimKind::Rivet | TrimKind::Zip
        );
        let unsaid = !trim.material.to_lowercase().contains("nickel");
        if metal && unsaid && !out.contains(&trim) {
            out.push(trim);
        }
    }
    out
}

fn chromium(context: &Context<'_>, patch: &Trim) -> String {
    let how = match patch.tanning {
        Some(Tanning::Chrome) => key::PAPERS_CHROMIUM_CHROME,
        None => key::PAPERS_CHROMIUM_OPEN,
        Some(Tanning::Vegetable) => key::PAPERS_CHROMIUM_VEGETABLE,
        Some(Tanning::ChromeFree) => key::PAPERS_CHROMIUM_FREE,
    };
    [how, key::PAPERS_CHROMIUM_TEXT]
        .map(|key| context.say.named(key))
        .join(" ")
}

/// The labels that tell something.
fn telling<'a>(context: &Context<'a>, purpose: Purpose) -> impl Iterator<Item = &'a Label> {
    let labels = context.loaded.style.labels.iter();
    labels.filter(move |label| label.purpose.contains(&purpose))
}

fn label_name(context: &Context<'_>, label: &Label) -> String {
    let trim = context.loaded.collection.trims.get(&label.trim);
    trim.map_or_else(|| label.trim.clone(), |trim| trim.name.clone())
}

/// Which labels tell something; or that none is stated to.
fn told_by(context: &Context<'_>, purpose: Purpose, what: Key) -> (String, Option<Ask>) {
    let names: Vec<String> = telling(context, purpose)
        .map(|label| label_name(context, label))
        .collect();
    if !names.is_empty() {
        let labels = names.join("”, “");
        return (context.say.say(say::PapersToldBy { labels }), None);
    }
    let asked = say::PapersLabelAsked { what };
    let said = say::PapersLabelUntold { what };
    let ask = ask_in(context, Who::Buyer, asked, said);
    (String::new(), Some(ask))
}

/// The pack prints the words of a label, and draws no symbols.
fn care(context: &Context<'_>) -> (String, Vec<Ask>) {
    let (told, untold) = told_by(context, Purpose::Care, key::PAPERS_TOLD_CARE);
    let text = joined(
        [told.as_str(), context.say.named(key::PAPERS_CARE_TEXT)],
        " ",
    );
    let symbols = ask_in(
        context,
        Who::Buyer,
        key::PAPERS_CARE_SYMBOLS_ASKED,
        key::PAPERS_CARE_SYMBOLS,
    );
    (text, untold.into_iter().chain([symbols]).collect())
}

fn size_in_every_pair(context: &Context<'_>) -> Option<String> {
    telling(context, Purpose::Size).next()?;
    let size = context.shown.size.to_string();
    Some(context.say.say(say::PapersSizeText { size }))
}

/// The pieces are drawn as they are after the first wash; cloth that shrinks has to be cut larger.
fn shrinkage(context: &Context<'_>) -> String {
    let raw = context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw);
    let begin = if raw {
        key::PAPERS_CUT_RAW
    } else {
        key::PAPERS_CUT_WASHED
    };
    let key = &context.loaded.style.cloth.shell;
    let cloth = context.loaded.collection.cloths.get(key);
    let end: Said = cloth
        .and_then(|cloth| shrinks(context, cloth, raw))
        .unwrap_or_else(|| key::PAPERS_CUT_NO_SHRINKAGE.into());
    let said = [
        context.say.named(begin).to_owned(),
        context.say.saying(&end),
    ];
    said.join(" ")
}

/// What a shell that shrinks is cut larger by; none of one that is not known to shrink.
fn shrinks(context: &Context<'_>, shell: &Cloth, raw: bool) -> Option<Said> {
    let Shrinkage { warp, weft } = ClothWash::of(shell).shrinkage;
    if warp.max(weft) <= Share::ZERO {
        return (Basis::of(shell).is_open()).then(|| key::PAPERS_CUT_UNKNOWN.into());
    }
    let larger = |share: Share| format!("{:.3}", 1.0 / (1.0 - share.to_ratio()));
    let [warp_text, weft_text] = [warp, weft].map(|share| share.show(context.words.system));
    let cloth = shell.name.as_str();
    let basis = Given::from(Basis::of(shell).shrinks());
    Some(if raw {
        say::PapersCutRawShrinks {
            basis,
            cloth,
            warp: warp_text,
            weft: weft_text,
        }
        .into()
    } else {
        say::PapersCutLarger {
            basis,
            cloth,
            warp: warp_text,
            warp_factor: larger(warp),
            weft: weft_text,
            weft_factor: larger(weft),
        }
        .into()
    })
}

fn fibre(context: &Context<'_>, leather: bool) -> (String, Vec<Ask>) {
    let named = |there: bool, key| if there { context.say.named(key) } else { "" };
    let (told, untold) = told_by(context, Purpose::Fibre, key::PAPERS_TOLD_FIBRES);
    let (_, no_origin) = told_by(context, Purpose::Origin, key::PAPERS_TOLD_ORIGIN);
    let text = joined(
        [
            told.as_str(),
            context.say.named(key::PAPERS_FIBRE_TEXT),
            named(leather, key::PAPERS_FIBRE_LEATHER),
            context.say.named(key::PAPERS_FIBRE_LAW),
        ],
        " ",
    );
    (text, untold.into_iter().chain(no_origin).collect())
}
