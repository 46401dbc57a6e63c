//! What the workroom must mind whatever the style: metal, leather, needles, labels, the wash.
//!
//! The rules named are those of the European Union and the United States as generally known when this
//! was written. They are pointers, not advice: each text defers to local law and to licensed testing.

use cutting::{ClothWash, Shrinkage};
use style::{Label, Purpose, Tanning, Trim, TrimKind, Wash};

use words::{Words, key};

use super::context::Context;
use super::wash;
use super::words::joined;
use crate::Caution;

pub(super) fn cautions(context: &Context<'_>) -> Vec<Caution> {
    let caution = |heading: &str, text: String| Caution {
        heading: heading.to_owned(),
        text,
    };
    let english = Words::english();
    let leather = patch(context).filter(|trim| trim.is_leather());
    let chromium = leather.map(|trim| caution("Chromium in leather", chromium(trim)));
    [
        Some(caution(
            english.named(key::PAPERS_WASH),
            wash::wash(context, english),
        )),
        Some(caution("Before you cut", shrinkage(context))),
        Some(caution("Nickel", nickel(context))),
        chromium,
        Some(caution("Dyes and chemicals", CHEMICALS.to_owned())),
        Some(caution(
            "Needles and metal",
            "One broken needle is one recorded case: all parts found and kept with the record, or the garment does not ship. \
             Needles are changed and counted by one named person. Pass every finished pair through a metal detector set up \
             with a test piece agreed with us, before and after each lot; metal trims as approved are excepted as agreed."
                .to_owned(),
        )),
        Some(caution("Fibre and origin", fibre(context, leather.is_some()))),
        Some(caution("Care", care(context))),
        size_in_every_pair(context).map(|text| caution("Size", text)),
        Some(caution("Safety and the maker's address", SAFETY.to_owned())),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// Entry 43 names the amines and 30 mg/kg; entry 72 names substances and limits one by one.
const CHEMICALS: &str = "In the European Union textiles and leather that touch the skin may not hold azo colourants that can release more \
    than 30 mg/kg of a listed aromatic amine (REACH Annex XVII entry 43), and clothing may hold substances that cause cancer, change genes \
    or harm reproduction only below the limits of entry 72. Ask mill, dyer, printer, tanner and laundry for a licensed laboratory's report \
    for the lot used. Where your law asks more, it goes before this.";

const SAFETY: &str = "In the European Union the general product safety regulation, (EU) 2023/988, applies since 13 December 2024: the maker's \
    name, postal and electronic address stand on the pair, its packing or a paper with it, and those of a responsible person in the Union where the \
    maker is not there. Settle where they stand before labels are ordered. The law of the country of sale goes before this; have it looked \
    at by someone licensed to advise on it.";

fn patch<'a>(context: &Context<'a>) -> Option<&'a Trim> {
    let patch = context.loaded.style.patch.as_ref()?;
    context.loaded.collection.trims.get(&patch.trim)
}

fn nickel(context: &Context<'_>) -> String {
    let unsaid = unsaid_nickel(context);
    let these = if unsaid.is_empty() {
        String::new()
    } else {
        format!(
            " What {} made of does not say that it is free of nickel: ask before it is ordered.",
            joined_with_verb(&unsaid)
        )
    };
    let hidden = context
        .loaded
        .style
        .rivets
        .as_ref()
        .is_some_and(|rivets| rivets.back_hidden);
    let most = if hidden {
        ", the backs of hidden rivets most of all"
    } else {
        ""
    };
    format!(
        "Buttons, rivets and zips touch the skin for hours{most}. In the European Union they may release at \
         most 0.5 µg of nickel per cm² and week (REACH Annex XVII entry 27; tested by EN 1811, coated parts worn first by EN \
         12472).{these} Send a licensed laboratory's report for the lot used; where your law asks more, it goes before this."
    )
}

/// The metal trims of the style whose material says nothing of nickel.
fn unsaid_nickel(context: &Context<'_>) -> Vec<String> {
    let style = &context.loaded.style;
    let fly = &style.fly;
    let rivet = style.rivets.as_ref().map(|rivets| &rivets.trim);
    let keys = [
        Some(&fly.band_button),
        fly.button.as_ref(),
        fly.zip.as_ref(),
        rivet,
    ];
    let mut out: Vec<String> = Vec::new();
    for trim in keys.into_iter().flatten() {
        let Some(trim) = context.loaded.collection.trims.get(trim) else {
            continue;
        };
        let metal = matches!(
            trim.kind,
            TrimKind::ShankButton | TrimKind::Rivet | TrimKind::Zip
        );
        if metal && !trim.material.to_lowercase().contains("nickel") && !out.contains(&trim.name) {
            out.push(trim.name.clone());
        }
    }
    out
}

/// "Keel button is", "Keel button and Rowlock rivet are".
fn joined_with_verb(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => format!("{one} is"),
        [before @ .., last] => format!("{} and {last} are", before.join(", ")),
    }
}

fn chromium(patch: &Trim) -> String {
    let how = match patch.tanning {
        Some(Tanning::Chrome) => {
            "The patch is leather tanned with chromium, of which some may turn into chromium(VI) with heat, light and age."
        }
        None => {
            "The patch is leather and its tanning is not stated: treat it as tanned with chromium until the tanner says otherwise."
        }
        Some(Tanning::Vegetable) => {
            "The patch is leather, stated to be tanned with plant extracts; that does not replace the test."
        }
        Some(Tanning::ChromeFree) => {
            "The patch is leather, stated to be tanned without chromium; that does not replace the test."
        }
    };
    format!(
        "{how} In the European Union leather that touches the skin must hold less than 3 mg/kg of chromium(VI) in its dry weight \
         (REACH Annex XVII entry 47; tested by EN ISO 17075). Send a licensed laboratory's report for the lot used. Where your \
         law asks more, it goes before this."
    )
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
fn told_by(context: &Context<'_>, purpose: Purpose, what: &str) -> String {
    let names: Vec<String> = telling(context, purpose)
        .map(|label| label_name(context, label))
        .collect();
    if names.is_empty() {
        format!(
            "No label of this style is stated to tell {what}: settle which one does before the labels are ordered."
        )
    } else {
        format!("Told by the label “{}”.", names.join("”, “"))
    }
}

fn care(context: &Context<'_>) -> String {
    format!(
        "{} Care symbols are those of ISO 3758:2023, which replaces the edition of 2012, in the order it gives: washing, bleaching, drying, \
         ironing, professional care. Each is the harshest treatment the pair is to bear. They are trademarks: printing them needs their \
         owner's licence. The words follow the country of sale (a care label is required in the United States, 16 CFR 423). They must be \
         proven on this cloth, made up and washed, by a licensed laboratory.",
        told_by(context, Purpose::Care, "the care")
    )
}

fn size_in_every_pair(context: &Context<'_>) -> Option<String> {
    telling(context, Purpose::Size).next()?;
    Some(format!(
        "The size label says the size of the pair it is in; the drawings show {}. Check it against the chart before it is sewn in.",
        context.shown.size
    ))
}

/// The pieces are drawn as they are after the first wash; cloth that shrinks has to be cut larger.
fn shrinkage(context: &Context<'_>) -> String {
    let key = &context.loaded.style.cloth.shell;
    let cloth = context.loaded.collection.cloths.get(key);
    let factor = |share: trade::Share| 1.0 / (1.0 - share.to_ratio());
    let shrinks = cloth.and_then(|cloth| {
        let Shrinkage { warp, weft } = ClothWash::of(cloth).shrinkage;
        (warp.max(weft) > trade::Share::ZERO).then_some((cloth, warp, weft))
    });
    let raw = context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw);
    let begin = if raw {
        "Chart, drawings and pieces are those of the unwashed garment."
    } else {
        "Chart and drawings are those of the garment after its first wash."
    };
    match shrinks {
        Some((cloth, warp, weft)) if raw => format!(
            "{begin} {} is stated to shrink {} along the warp and {} along the weft when it is washed: nothing is added for that.",
            cloth.name,
            warp.show(context.words.system),
            weft.show(context.words.system),
        ),
        Some((cloth, warp, weft)) => format!(
            "{begin} {} is stated to shrink {} along the warp and {} along the weft: its pieces are cut larger by {:.3} along the warp \
             and {:.3} along the weft. Measure the shrinkage of the lot you cut before you rely on these figures.",
            cloth.name,
            warp.show(context.words.system),
            weft.show(context.words.system),
            factor(warp),
            factor(weft),
        ),
        None => format!(
            "{begin} The shell is stated not to shrink: measure the shrinkage of the lot you cut before you rely on that."
        ),
    }
}

fn fibre(context: &Context<'_>, leather: bool) -> String {
    let animal = if leather {
        " Because of the leather patch the label also says “Contains non-textile parts of animal origin” (article 12)."
    } else {
        ""
    };
    let origin = if telling(context, Purpose::Origin).next().is_none() {
        "No label of this style is stated to tell the origin, which the United States ask for. "
    } else {
        ""
    };
    joined(
        [
            told_by(context, Purpose::Fibre, "the fibres").as_str(),
            &format!(
                "{origin}The fibre label gives the fibres by their legal names with their shares, the largest first, in the language of the \
                 country of sale: Regulation (EU) 1007/2011 in the European Union; the fibre rules of the Federal Trade Commission \
                 (16 CFR 303), with the country of origin and the maker's or seller's identity, in the United States.{animal} The law of \
                 the country of sale goes before this; composition is proven by a licensed laboratory."
            ),
        ],
        " ",
    )
}
