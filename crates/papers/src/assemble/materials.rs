//! What one pair is made of: cloth and yarn, with the trims.

use ::words::{Given, Key, Said, key, say};
use draft::{ClothUse, Piece};
use sewing::yarn::{Consumption, Sewn, consumption};
use style::{Closing, Cloth, Yarn};
use trade::{Area, Length};

use super::context::Context;
use super::lays::ClothLay;
use super::open::ask;
use super::pieces::{cloth_of_piece, cuts};
use super::shrinkage;
use super::supply;
use super::trims::{metal, patch_and_labels};
use super::words::{capital, joined, swatch};
use crate::{Ask, MaterialGroup, MaterialRow, Who};

pub(super) fn note(context: &Context<'_>) -> String {
    let unstated = consumption(context.shown).unstated_estimate(context.words.yarn_step());
    let more = (unstated > Length::ZERO).then(|| say::PapersMaterialsUncounted {
        much: context.words.yarn(unstated),
    });
    let loops = &context.loaded.style.loops;
    let belt = (loops.count > 0).then(|| say::PapersMaterialsBelt {
        belt: context.words.length(loops.belt),
    });
    let size = context.shown.size.to_string();
    let said: [Option<Said>; 4] = [
        Some(say::PapersMaterialsNote { size }.into()),
        more.map(Into::into),
        belt.map(Into::into),
        Some(key::PAPERS_MATERIALS_BASIS.into()),
    ];
    let said: Vec<String> = said
        .iter()
        .flatten()
        .map(|said| context.say.saying(said))
        .collect();
    said.join(" ")
}

pub(super) fn materials(context: &Context<'_>, lays: &[ClothLay<'_>]) -> Vec<MaterialGroup> {
    let group = |heading: Key, rows: Vec<MaterialRow>| MaterialGroup {
        heading: context.say.named(heading).to_owned(),
        rows,
    };
    let metal_parts = match context.loaded.style.fly.closing {
        Closing::Buttons => key::PAPERS_BUTTONS_RIVETS,
        Closing::Zip => key::PAPERS_BUTTONS_RIVETS_ZIP,
    };
    let mut cloth = cloths(context, lays);
    if !cloth.is_empty() {
        cloth.push(no_interlining(context));
    }
    [
        group(key::PAPERS_CLOTH, cloth),
        group(key::PAPERS_SEWING_YARN, yarns(context)),
        group(metal_parts, metal(context)),
        group(key::PAPERS_PATCH_AND_LABELS, patch_and_labels(context)),
    ]
    .into_iter()
    .filter(|group| !group.rows.is_empty())
    .collect()
}

/// No style can state an interlining, and a reader looks for one in band and fly.
fn no_interlining(context: &Context<'_>) -> MaterialRow {
    let named = |key| context.say.named(key).to_owned();
    MaterialRow {
        name: named(key::PAPERS_INTERLINING),
        spec: named(key::PAPERS_INTERLINING_NONE),
        ..MaterialRow::default()
    }
}

/// The cloths in the order of their pieces; linings each by their own cloth.
fn cloths(context: &Context<'_>, lays: &[ClothLay]) -> Vec<MaterialRow> {
    let mut keys: Vec<(ClothUse, &str)> = Vec::new();
    for piece in &context.shown.pattern.pieces {
        if let Some(key) = cloth_of_piece(context, piece)
            && !keys.contains(&(piece.cloth, key))
        {
            keys.push((piece.cloth, key));
        }
    }
    keys.sort_by_key(|(cloth, _)| match cloth {
        ClothUse::Shell => 0,
        ClothUse::Pocketing => 1,
        ClothUse::Lining => 2,
    });
    keys.into_iter()
        .filter_map(|(cloth, key)| cloth_row(context, cloth, key, lays))
        .collect()
}

fn cloth_row(
    context: &Context<'_>,
    cloth: ClothUse,
    key: &str,
    lays: &[ClothLay],
) -> Option<MaterialRow> {
    let words = context.words;
    let bought = context.loaded.collection.cloths.get(key)?;
    let pieces: Vec<&Piece> = context
        .shown
        .pattern
        .pieces
        .iter()
        .filter(|p| p.cloth == cloth && cloth_of_piece(context, p) == Some(key))
        .collect();
    let net: Area = pieces
        .iter()
        .flat_map(|piece| cuts(context, piece.id))
        .map(|cut| cut.area() * f64::from(cut.as_drawn + cut.mirrored))
        .sum();
    if net <= Area::ZERO {
        return None;
    }
    let laid = lays
        .iter()
        .find(|lay| lay.key == key)
        .and_then(ClothLay::length);
    let net = words.area(net);
    let quantity = match laid {
        Some(length) => context.say.say(say::PapersQuantityLaid {
            laid: words.cloth(length),
            net,
        }),
        None => context.say.say(say::PapersQuantityNet { net }),
    };
    let names: Vec<&str> = pieces
        .iter()
        .map(|piece| piece.id.words(context.say))
        .collect();
    Some(MaterialRow {
        name: bought.name.clone(),
        spec: cloth_spec(context, bought),
        colour: swatch(bought.colour),
        supply: supply::supply(context, &bought.supply, None),
        asks: cloth_asks(context, cloth, bought),
        used: format!(
            "{}: {}",
            capital(cloth.code()),
            names.join(", ").to_lowercase()
        ),
        quantity,
    })
}

fn cloth_spec(context: &Context<'_>, bought: &Cloth) -> String {
    let (words, say) = (context.words, context.say);
    let selvedge = if bought.selvedge {
        say.named(key::PAPERS_FINISHED_EDGES)
    } else {
        ""
    };
    let spec = [
        bought.construction.clone(),
        bought.fibre.clone(),
        bought.colour_name.clone(),
        bought.dye.clone(),
        words.weight(bought.weight),
        say.say(say::PapersThick {
            thickness: format!("{:.2} mm", bought.thickness.to_mm()),
        }),
        say.say(say::PapersUsableWidth {
            width: words.length(bought.width),
        }),
        selvedge.to_owned(),
        shrinkage::told(context, bought),
    ];
    joined(spec.iter().map(String::as_str), ", ")
}

/// How a lining is dyed nobody asks.
fn cloth_asks(context: &Context<'_>, cloth: ClothUse, bought: &Cloth) -> Vec<Ask> {
    let dyed = cloth == ClothUse::Shell && bought.dye.is_empty();
    let more = [
        (key::PAPERS_COLOUR, bought.colour_name.is_empty()),
        (key::PAPERS_DYE, dyed),
    ];
    let unknown = shrinkage::Basis::of(bought).is_open();
    let shrinks = unknown.then(|| ask(context, Who::Cutter, key::PAPERS_WHAT_IT_LOSES));
    let supply = supply::open(context, &bought.supply, &more);
    supply.into_iter().chain(shrinks).collect()
}

fn yarns(context: &Context<'_>) -> Vec<MaterialRow> {
    let taken = consumption(context.shown);
    taken
        .by_yarn()
        .into_iter()
        .map(|(key, used)| {
            let yarn = context.loaded.collection.yarns.get(key);
            MaterialRow {
                used: capital(&sewn_with(context, &taken, key).join(", ")),
                quantity: context.words.yarn(used.total()),
                ..yarn.map_or_else(|| named(key), |yarn| yarn_row(context, yarn))
            }
        })
        .collect()
}

/// What the collection does not know is called by its key.
fn named(key: &str) -> MaterialRow {
    MaterialRow {
        name: key.to_owned(),
        ..MaterialRow::default()
    }
}

fn yarn_row(context: &Context<'_>, yarn: &Yarn) -> MaterialRow {
    let put_up = yarn.put_up.map(|cone| {
        context.say.say(say::PapersToTheCone {
            length: format!("{:.0} m", cone.to_m()),
        })
    });
    let spec = [
        yarn.size.show(context.words.system),
        yarn.fibre.clone(),
        yarn.colour_name.clone(),
        put_up.unwrap_or_default(),
    ];
    let shade = (!yarn.shade.is_empty()).then(|| {
        let shade = yarn.shade.as_str();
        Given::from(say::PapersShade { shade })
    });
    let more = [
        (key::PAPERS_COLOUR, yarn.colour_name.is_empty()),
        (key::PAPERS_SHADE_NUMBER, yarn.shade.is_empty()),
    ];
    MaterialRow {
        name: yarn.name.clone(),
        spec: joined(spec.iter().map(String::as_str), ", "),
        colour: swatch(yarn.colour),
        supply: supply::supply(context, &yarn.supply, shade),
        asks: supply::open(context, &yarn.supply, &more)
            .into_iter()
            .collect(),
        ..MaterialRow::default()
    }
}

/// What a yarn sews, each once, in the order of the garment.
fn sewn_with(context: &Context<'_>, taken: &Consumption, yarn: &str) -> Vec<&'static str> {
    let mut titles = Vec::new();
    for item in taken
        .items
        .iter()
        .filter(|i| i.needle_yarn == yarn || i.under_yarn == yarn)
    {
        let title = match item.sewn {
            Sewn::Bartack(_) => context.say.named(key::PAPERS_BARTACKS),
            Sewn::Buttonhole => context.say.named(key::PAPERS_BUTTONHOLES),
            Sewn::Row(_) => item
                .seam
                .seam()
                .map_or(context.say.named(key::PAPERS_OTHER_SEWN), |seam| {
                    seam.words(context.say)
                }),
        };
        if !titles.contains(&title) {
            titles.push(title);
        }
    }
    titles
}
