//! Metal, patch and labels as one pair takes them.

use ::words::{Given, Key, key, say};
use draft::PieceId;
use sewing::{Fixing, FixingKind, On, label_below_band};
use style::{Label, LabelFold, Patch, Tanning, Trim, TrimKind};

use super::context::Context;
use super::open::ask;
use super::supply;
use super::words::{capital, joined, swatch};
use crate::{Ask, MaterialRow, Who};

/// Buttons and rivets in the order in which they are met on the garment, then the zip.
pub(super) fn metal(context: &Context<'_>) -> Vec<MaterialRow> {
    let mut kinds: Vec<(&str, bool)> = Vec::new();
    for fixing in context.shown.fixings.iter().filter(|f| is_metal(f)) {
        let kind = (fixing.from.code(), is_hidden(fixing));
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    let mut rows: Vec<MaterialRow> = kinds
        .into_iter()
        .map(|(trim, hidden)| metal_row(context, trim, hidden))
        .collect();
    if let Some(zip) = &context.loaded.style.fly.zip {
        rows.push(trim_row(
            context,
            zip,
            context.say.named(key::PAPERS_AT_FLY),
            1,
        ));
    }
    rows
}

fn is_metal(fixing: &Fixing) -> bool {
    matches!(fixing.kind, FixingKind::Rivet(_) | FixingKind::Button(_))
}

/// A rivet that is seen inside only.
fn is_hidden(fixing: &Fixing) -> bool {
    matches!(fixing.kind, FixingKind::Rivet(_)) && !fixing.outside
}

fn metal_row(context: &Context<'_>, trim: &str, hidden: bool) -> MaterialRow {
    let of: Vec<&Fixing> = context
        .shown
        .fixings
        .iter()
        .filter(|f| is_metal(f) && f.from.trim() == Some(trim) && is_hidden(f) == hidden)
        .collect();
    let count = of
        .iter()
        .map(|f| if f.on == On::Both { 2 } else { 1 })
        .sum();
    let mut places: Vec<&str> = Vec::new();
    for fixing in &of {
        let name = place_of(context, fixing.piece);
        if !places.contains(&name) {
            places.push(name);
        }
    }
    let used = capital(&places.join(", "));
    if !hidden {
        return trim_row(context, trim, &used, count);
    }
    let used = context.say.say(say::PapersHiddenRivets { places: used });
    let row = trim_row(context, trim, &used, count);
    let name = row.name.as_str();
    MaterialRow {
        name: context.say.say(say::PapersHidden { name }),
        ..row
    }
}

fn place_of<'a>(context: &'a Context<'_>, piece: PieceId) -> &'a str {
    match piece {
        PieceId::Front => context.say.named(key::PAPERS_AT_MOUTHS),
        PieceId::CoinPocket => context.say.named(key::PAPERS_AT_COIN_POCKET),
        PieceId::BackPocketLeft | PieceId::BackPocketRight => {
            context.say.named(key::PAPERS_AT_BACK_POCKETS)
        }
        PieceId::Band => context.say.named(key::PAPERS_AT_BAND),
        PieceId::FlyShield => context.say.named(key::PAPERS_AT_FLY_SHIELD),
        other => other.words(context.say),
    }
}

pub(super) fn patch_and_labels(context: &Context<'_>) -> Vec<MaterialRow> {
    let style = &context.loaded.style;
    let patch = style.patch.iter().map(|patch| patch_row(context, patch));
    let labels = style.labels.iter().map(|label| label_row(context, label));
    patch.chain(labels).collect()
}

fn patch_row(context: &Context<'_>, patch: &Patch) -> MaterialRow {
    let place = context.say.say(say::PapersPatchPlace {
        away: context.words.length(patch.from_centre),
    });
    let row = trim_row(context, &patch.trim, &place, 1);
    let letters = patch.letters.word();
    let letters = context.say.say(say::PapersPatchLetters { letters });
    let trim = context.loaded.collection.trims.get(&patch.trim);
    let silent = trim.is_none_or(|trim| trim.text.is_empty()) && patch.art.is_none();
    let drawn = drawn(context, patch.art.is_some());
    let leather = trim.filter(|trim| trim.is_leather());
    let open = [
        (key::PAPERS_WHAT_IT_SAYS, silent),
        (
            key::PAPERS_TANNING,
            leather.is_some_and(|trim| trim.tanning.is_none()),
        ),
        (
            key::PAPERS_THICKNESS,
            trim.is_some_and(|trim| trim.thickness.is_none()),
        ),
    ];
    MaterialRow {
        spec: joined([row.spec.as_str(), letters.as_str(), drawn], ", "),
        asks: asks(context, trim, &open),
        ..row
    }
}

fn label_row(context: &Context<'_>, label: &Label) -> MaterialRow {
    let trim = context.loaded.collection.trims.get(&label.trim);
    let purposes = label.purpose.iter().map(|purpose| purpose.key().into());
    let purposes: Vec<Given> = purposes.collect();
    let silent = purposes.is_empty();
    let tells = (!silent).then(|| {
        let purposes = Given::List(purposes);
        context.say.say(say::PapersTells { purposes })
    });
    let text = label_text(context, label);
    let open = [
        (key::PAPERS_WHAT_IT_TELLS, silent),
        (
            key::PAPERS_WHAT_IT_SAYS,
            text.is_empty() && label.art.is_none(),
        ),
        (turned_under(label.fold), label.fold != LabelFold::Flat),
    ];
    let own = trim.map_or_else(String::new, |trim| material_and_size(context, trim));
    MaterialRow {
        spec: joined(
            [
                own.as_str(),
                context.say.named(folded(label.fold)),
                tells.unwrap_or_default().as_str(),
                reads(context, &text).as_str(),
                drawn(context, label.art.is_some()),
            ],
            ", ",
        ),
        asks: asks(context, trim, &open),
        ..trim_row(context, &label.trim, &place_of_label(context, label), 1)
    }
}

/// Where a label is sewn in, in the maker's words; in an outseam with its distance from the band, which words leave open.
fn place_of_label(context: &Context<'_>, label: &Label) -> String {
    let place = capital(&label.place);
    let sewn = &context.sewn;
    let mut of = sewn.fixings.iter().filter(|f| {
        matches!(f.kind, FixingKind::Label(..)) && f.from.trim() == Some(label.trim.as_str())
    });
    match of.find_map(|fixing| label_below_band(sewn, fixing)) {
        Some(below) => {
            let below = context.words.with_unit(below.figure());
            context.say.say(say::PapersLabelBelow { below, place })
        }
        None => place,
    }
}

/// Who sells it, and what else is open of it.
fn asks(context: &Context<'_>, trim: Option<&Trim>, open: &[(Key, bool)]) -> Vec<Ask> {
    let supply = trim.and_then(|trim| supply::open(context, &trim.supply, &[]));
    let open = open.iter().filter(|(_, open)| *open);
    let open = open.map(|(what, _)| ask(context, Who::Buyer, *what));
    supply.into_iter().chain(open).collect()
}

fn drawn<'a>(context: &Context<'a>, has_art: bool) -> &'a str {
    match has_art {
        true => context.say.named(key::PAPERS_DRAWN_ON_PLATE),
        false => "",
    }
}

/// How a label is cut and folded.
pub(super) const fn folded(fold: LabelFold) -> Key {
    match fold {
        LabelFold::Flat => key::PAPERS_FOLD_FLAT,
        LabelFold::EndFold => key::PAPERS_FOLD_ENDS,
        LabelFold::CentreFold => key::PAPERS_FOLD_CENTRE,
        LabelFold::MitreFold => key::PAPERS_FOLD_MITRE,
    }
}

/// What the size of a folded label does not tell whoever weaves or prints it.
const fn turned_under(fold: LabelFold) -> Key {
    match fold {
        LabelFold::Flat | LabelFold::EndFold | LabelFold::MitreFold => key::PAPERS_TURNED_UNDER,
        LabelFold::CentreFold => key::PAPERS_CAUGHT_IN_SEAM,
    }
}

/// What the drawn pair's label says: the sewn garment knows the text of its size.
fn label_text(context: &Context<'_>, label: &Label) -> String {
    let sewn = context.shown.fixings.iter().find_map(|f| match &f.kind {
        FixingKind::Label(_, _, text) if f.from.trim() == Some(label.trim.as_str()) => {
            Some(text.clone())
        }
        _ => None,
    });
    let own = || {
        let trim = context.loaded.collection.trims.get(&label.trim);
        trim.map_or_else(String::new, |trim| trim.text.clone())
    };
    label.text.clone().or(sewn).unwrap_or_else(own)
}

fn trim_row(context: &Context<'_>, key: &str, used: &str, count: u32) -> MaterialRow {
    let trim = context.loaded.collection.trims.get(key);
    MaterialRow {
        name: trim.map_or_else(|| key.to_owned(), |trim| trim.name.clone()),
        spec: trim.map_or_else(String::new, |trim| trim_spec(context, trim)),
        colour: trim.and_then(|trim| swatch(trim.colour)),
        supply: trim.map_or_else(String::new, |trim| {
            supply::supply(context, &trim.supply, None)
        }),
        asks: asks(context, trim, &[]),
        used: used.to_owned(),
        quantity: count.to_string(),
    }
}

fn trim_spec(context: &Context<'_>, trim: &Trim) -> String {
    joined(
        [
            material_and_size(context, trim).as_str(),
            reads(context, &trim.text).as_str(),
        ],
        ", ",
    )
}

fn reads(context: &Context<'_>, text: &str) -> String {
    if text.is_empty() {
        return String::new();
    }
    context.say.say(say::PapersReads { text })
}

fn material_and_size(context: &Context<'_>, trim: &Trim) -> String {
    let words = context.say;
    let across = trim.diameter.map(|across| {
        let across = across.show_mm();
        words.say(say::PapersAcross { across })
    });
    let flat = trim.width.zip(trim.height).map(|(width, height)| {
        let [width, height] = [width, height].map(trade::Length::show_mm);
        if trim.kind == TrimKind::Label {
            words.say(say::PapersFinishedFlat { height, width })
        } else {
            words.say(say::PapersFlat { height, width })
        }
    });
    let long = trim.length.map(|length| {
        let length = length.show_mm();
        words.say(say::PapersLong { length })
    });
    let thick = trim.thickness.map(|thickness| {
        let thickness = thickness.show_mm();
        words.say(say::PapersThick { thickness })
    });
    let tanned = trim.tanning.map(|tanning| words.named(tanned(tanning)));
    joined(
        [
            trim.kind.word(),
            &across.or(flat).or(long).unwrap_or_default(),
            &trim.material,
            &thick.unwrap_or_default(),
            tanned.unwrap_or_default(),
        ],
        ", ",
    )
}

const fn tanned(tanning: Tanning) -> Key {
    match tanning {
        Tanning::Vegetable => key::PAPERS_TANNED_VEGETABLE,
        Tanning::Chrome => key::PAPERS_TANNED_CHROME,
        Tanning::ChromeFree => key::PAPERS_TANNED_CHROME_FREE,
    }
}
