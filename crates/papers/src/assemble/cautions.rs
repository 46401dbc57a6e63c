//! What the workroom must mind whatever the style: metal, leather, needles, labels, the wash.
//!
//! The rules named are those of the European Union and the United States as generally known when this
//! was written. They are pointers, not advice: each text defers to local law and to licensed testing.

use style::TrimKind;

use super::Context;
use crate::Caution;

pub(super) fn cautions(context: &Context<'_>) -> Vec<Caution> {
    let caution = |heading: &str, text: String| Caution {
        heading: heading.to_owned(),
        text,
    };
    let leather = patch_is_leather(context);
    let mut out = vec![
        caution("Before you cut", shrinkage(context)),
        caution(
            "Nickel",
            "Buttons, rivets and zips touch the skin for hours. In the European Union they may release at most 0.5 µg of \
             nickel per cm² and week (REACH Annex XVII entry 27; tested by EN 1811, coated parts worn first by EN 12472). \
             Send a licensed laboratory's report for the lot used; where your law asks more, it goes before this."
                .to_owned(),
        ),
        caution(
            "Needles and metal",
            "One broken needle is one recorded case: all parts found and kept with the record, or the garment does not ship. \
             Needles are changed and counted by one named person. Pass every finished pair through a metal detector set up \
             with a test piece agreed with us, before and after each lot; metal trims as approved are excepted as agreed."
                .to_owned(),
        ),
        caution("Fibre and origin", fibre(leather)),
        caution(
            "Care",
            "Care symbols are those of ISO 3758, in the order it gives; the words follow the country of sale (a care label is \
             required in the United States, 16 CFR 423). They must be proven on this cloth, made up and washed, \
             by a licensed laboratory."
                .to_owned(),
        ),
    ];
    if leather {
        out.insert(
            2,
            caution(
                "Chromium in leather",
                "The patch is leather. In the European Union leather that touches the skin must hold less than 3 mg/kg of \
                 chromium(VI) in its dry weight (REACH Annex XVII entry 47; tested by EN ISO 17075). Vegetable tanning does \
                 not replace the test: send a licensed laboratory's report. Where your law asks more, it goes before this."
                    .to_owned(),
            ),
        );
    }
    out
}

/// Whether the patch is leather, by the words of its material.
pub(super) fn patch_is_leather(context: &Context<'_>) -> bool {
    let trims = &context.loaded.collection.trims;
    let patch = context
        .loaded
        .style
        .patch
        .as_ref()
        .and_then(|patch| trims.get(&patch.trim));
    patch.is_some_and(|trim| {
        let material = trim.material.to_lowercase();
        let imitation = ["imitation", "faux", "vegan", "leatherette", "artificial"];
        trim.kind == TrimKind::Patch
            && material.contains("leather")
            && !imitation.iter().any(|word| material.contains(word))
    })
}

/// The pieces are drawn as they are after the first wash; cloth that shrinks has to be cut larger.
fn shrinkage(context: &Context<'_>) -> String {
    let key = &context.loaded.style.cloth.shell;
    let cloth = context.loaded.collection.cloths.get(key);
    let factor = |share: trade::Share| 1.0 / (1.0 - share.to_ratio());
    let stated =
        cloth.filter(|c| c.warp_shrinkage.to_ratio() > 0.0 || c.weft_shrinkage.to_ratio() > 0.0);
    let begin = "Chart, drawings and pieces are those of the garment after its first wash.";
    match stated {
        Some(cloth) => format!(
            "{begin} {} is stated to shrink {} along the warp and {} along the weft: its pieces are cut larger by {:.3} along the warp \
             and {:.3} along the weft. Measure the shrinkage of the lot you cut before you rely on these figures.",
            cloth.name,
            cloth.warp_shrinkage.show(context.words.system),
            cloth.weft_shrinkage.show(context.words.system),
            factor(cloth.warp_shrinkage),
            factor(cloth.weft_shrinkage),
        ),
        None => format!(
            "{begin} The shell is stated not to shrink: measure the shrinkage of the lot you cut before you rely on that."
        ),
    }
}

fn fibre(leather: bool) -> String {
    let animal = if leather {
        " Because of the leather patch the label also says “Contains non-textile parts of animal origin” (article 12)."
    } else {
        ""
    };
    format!(
        "The fibre label gives the fibres by their legal names with their shares, the largest first, in the language of the country of sale: \
         Regulation (EU) 1007/2011 in the European Union; the fibre rules of the Federal Trade Commission (16 CFR 303), with the country of \
         origin and the maker's or seller's identity, in the United States.{animal} The law of the country of sale goes before \
         this; composition is proven by a licensed laboratory."
    )
}
