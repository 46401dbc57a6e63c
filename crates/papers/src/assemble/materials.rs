//! What one pair is made of: cloth and yarn, with the trims.

use cutting::{ClothWash, Shrinkage};
use draft::{ClothUse, Piece};
use sewing::yarn::{Consumption, Sewn, consumption};
use trade::{Area, Length};

use super::context::Context;
use super::lays::ClothLay;
use super::pieces::{cloth_of_piece, cuts};
use super::trims::{metal, patch_and_labels};
use super::words::{capital, joined, swatch};
use crate::{MaterialGroup, MaterialRow};

pub(super) fn note(context: &Context<'_>) -> String {
    let unstated = consumption(context.shown).unstated_estimate(context.words.yarn_step());
    let more = if unstated > Length::ZERO {
        format!(
            "; work the style writes no row for, about {}, is not in it",
            context.words.yarn(unstated)
        )
    } else {
        String::new()
    };
    let loops = &context.loaded.style.loops;
    let belt = if loops.count > 0 {
        format!(
            " The loops are for a belt of {}, which is not part of the pair.",
            context.words.length(loops.belt)
        )
    } else {
        String::new()
    };
    format!(
        "For one pair in size {}. Cloth is what the lay shown takes, without the ends of a spread; the net area is that of the cut pieces before the wash. \
         Yarn is a geometric estimate without waste{more}.{belt} {}",
        context.shown.size,
        context.say.named(::words::key::PAPERS_SUPPLY_ASK),
    )
}

pub(super) fn materials(context: &Context<'_>, lays: &[ClothLay]) -> Vec<MaterialGroup> {
    let group = |heading: &str, rows: Vec<MaterialRow>| MaterialGroup {
        heading: heading.to_owned(),
        rows,
    };
    [
        group("Cloth", cloths(context, lays)),
        group("Sewing yarn", yarns(context)),
        group("Buttons, rivets and zip", metal(context)),
        group("Patch and labels", patch_and_labels(context)),
    ]
    .into_iter()
    .filter(|group| !group.rows.is_empty())
    .collect()
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
    let Shrinkage { warp, weft } = ClothWash::of(bought).shrinkage;
    let laid = lays
        .iter()
        .find(|lay| lay.key == key)
        .and_then(ClothLay::length);
    let laid = laid.map_or(String::new(), |length| {
        format!("{} laid; ", words.cloth(length))
    });
    let names: Vec<&str> = pieces
        .iter()
        .map(|piece| piece.id.words(::words::Words::english()))
        .collect();
    let spec = [
        bought.construction.clone(),
        bought.fibre.clone(),
        words.weight(bought.weight),
        format!("{:.2} mm thick", bought.thickness.to_mm()),
        format!("usable width {}", words.length(bought.width)),
        if bought.selvedge {
            "finished edges".to_owned()
        } else {
            String::new()
        },
        format!(
            "stated to shrink {} × {} (warp × weft)",
            warp.show(words.system),
            weft.show(words.system)
        ),
    ];
    Some(MaterialRow {
        name: bought.name.clone(),
        spec: joined(spec.iter().map(String::as_str), ", "),
        colour: swatch(bought.colour),
        used: format!(
            "{}: {}",
            capital(cloth.code()),
            names.join(", ").to_lowercase()
        ),
        quantity: format!("{laid}{} net", words.area(net)),
    })
}

fn yarns(context: &Context<'_>) -> Vec<MaterialRow> {
    let words = context.words;
    let taken = consumption(context.shown);
    taken
        .by_yarn()
        .into_iter()
        .map(|(key, used)| {
            let yarn = context.loaded.collection.yarns.get(key);
            let spec = yarn.map(|yarn| {
                let put_up = yarn
                    .put_up
                    .map(|cone| format!("{:.0} m to the cone", cone.to_m()));
                [
                    yarn.size.show(words.system),
                    yarn.fibre.clone(),
                    yarn.colour_name.clone(),
                    put_up.unwrap_or_default(),
                ]
            });
            MaterialRow {
                name: yarn.map_or_else(|| key.to_owned(), |yarn| yarn.name.clone()),
                spec: joined(spec.iter().flatten().map(String::as_str), ", "),
                colour: yarn.and_then(|yarn| swatch(yarn.colour)),
                used: capital(&sewn_with(&taken, key).join(", ")),
                quantity: words.yarn(used.total()),
            }
        })
        .collect()
}

/// What a yarn sews, each once, in the order of the garment.
fn sewn_with(taken: &Consumption, key: &str) -> Vec<&'static str> {
    let mut titles = Vec::new();
    for item in taken
        .items
        .iter()
        .filter(|i| i.needle_yarn == key || i.under_yarn == key)
    {
        let title = match item.sewn {
            Sewn::Bartack(_) => "bartacks",
            Sewn::Buttonhole => "buttonholes",
            Sewn::Row(_) => item
                .seam
                .seam()
                .map_or("other seams", |seam| seam.words(::words::Words::english())),
        };
        if !titles.contains(&title) {
            titles.push(title);
        }
    }
    titles
}
