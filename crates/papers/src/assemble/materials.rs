//! What one pair is made of: cloth, yarn, metal, patch and labels.

use draft::ClothUse;
use sewing::yarn::{Consumption, Sewn, consumption};
use sewing::{FixingKind, On};
use style::{Trim, known};
use trade::{Area, Length, Share};

use super::Context;
use super::construction::cloth_of;
use super::pieces::{area, cuts};
use super::words::{capital, joined, millimetres, swatch};
use crate::{MaterialGroup, MaterialRow};

pub(super) fn note(context: &Context<'_>) -> String {
    let unstated = consumption(context.shown).unstated_estimate();
    let more = if unstated > Length::ZERO {
        format!(
            "; work the style writes no row for, about {}, is not in it",
            context.words.yarn(unstated)
        )
    } else {
        String::new()
    };
    format!(
        "For one pair in size {}. Cloth is the net area of the cut pieces, not a lay: what falls between them is not in it. \
         Yarn is a geometric estimate without waste{more}.",
        context.shown.size
    )
}

pub(super) fn materials(context: &Context<'_>) -> Vec<MaterialGroup> {
    let group = |heading: &str, rows: Vec<MaterialRow>| MaterialGroup {
        heading: heading.to_owned(),
        rows,
    };
    [
        group("Cloth", cloths(context)),
        group("Sewing yarn", yarns(context)),
        group("Buttons, rivets and zip", metal(context)),
        group("Patch and labels", patch_and_labels(context)),
    ]
    .into_iter()
    .filter(|group| !group.rows.is_empty())
    .collect()
}

fn cloths(context: &Context<'_>) -> Vec<MaterialRow> {
    let uses = [ClothUse::Shell, ClothUse::Pocketing, ClothUse::Lining];
    uses.into_iter()
        .filter_map(|cloth| cloth_row(context, cloth))
        .collect()
}

fn cloth_row(context: &Context<'_>, cloth: ClothUse) -> Option<MaterialRow> {
    let words = context.words;
    let bought = cloth_of(context, cloth)?;
    let pieces = || {
        context
            .shown
            .pattern
            .pieces
            .iter()
            .filter(move |p| p.cloth == cloth)
    };
    let net: Area = pieces()
        .flat_map(|piece| {
            cuts(context, piece.id).map(|cut| {
                let count = match cut.on {
                    On::AsDrawn => piece.cut.as_drawn,
                    On::Mirrored => piece.cut.mirrored,
                    On::Both => piece.cut.total(),
                };
                area(cut) * f64::from(count)
            })
        })
        .sum();
    if net <= Area::ZERO {
        return None;
    }
    let left = |share: Share| 1.0 - share.to_ratio();
    let unwashed = net / (left(bought.warp_shrinkage) * left(bought.weft_shrinkage));
    let names: Vec<&str> = pieces().map(|piece| piece.id.name()).collect();
    let spec = [
        bought.construction.clone(),
        bought.fibre.clone(),
        words.weight(bought.weight),
        format!("usable width {}", words.length(bought.width)),
        if bought.selvedge {
            "finished edges".to_owned()
        } else {
            String::new()
        },
        format!(
            "stated to shrink {} × {} (warp × weft)",
            bought.warp_shrinkage.show(words.system),
            bought.weft_shrinkage.show(words.system)
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
        quantity: format!(
            "{} net; {} before the wash",
            words.area(net),
            words.area(unwashed)
        ),
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
            Sewn::Row(_) => known::seam_name(&item.seam).map_or("other seams", |known| known.title),
        };
        if !titles.contains(&title) {
            titles.push(title);
        }
    }
    titles
}

fn metal(context: &Context<'_>) -> Vec<MaterialRow> {
    let fly = &context.loaded.style.fly;
    let mut rows = Vec::new();
    let mut counted: Vec<&str> = Vec::new();
    for fixing in &context.shown.fixings {
        let is_metal = matches!(fixing.kind, FixingKind::Rivet(_) | FixingKind::Button(_));
        if !is_metal || counted.contains(&fixing.from.as_str()) {
            continue;
        }
        counted.push(&fixing.from);
        rows.push(trim_row(
            context,
            &fixing.from,
            &metal_places(context, &fixing.from),
            count(context, &fixing.from),
        ));
    }
    if let Some(zip) = &fly.zip {
        rows.push(trim_row(context, zip, "Fly", 1));
    }
    rows
}

/// How many buttons or rivets of a trim one pair takes.
fn count(context: &Context<'_>, trim: &str) -> u32 {
    context
        .shown
        .fixings
        .iter()
        .filter(|f| {
            f.from == trim && matches!(f.kind, FixingKind::Rivet(_) | FixingKind::Button(_))
        })
        .map(|f| if f.on == On::Both { 2 } else { 1 })
        .sum()
}

fn metal_places(context: &Context<'_>, trim: &str) -> String {
    let mut pieces: Vec<&str> = Vec::new();
    for fixing in &context.shown.fixings {
        let counts = matches!(fixing.kind, FixingKind::Rivet(_) | FixingKind::Button(_));
        let name = match fixing.piece {
            draft::PieceId::Front => "pocket mouths",
            draft::PieceId::BackPocketLeft | draft::PieceId::BackPocketRight => {
                "back pocket corners, hidden"
            }
            other => other.name(),
        };
        if counts && fixing.from == trim && !pieces.contains(&name) {
            pieces.push(name);
        }
    }
    capital(&pieces.join(", ").to_lowercase())
}

fn patch_and_labels(context: &Context<'_>) -> Vec<MaterialRow> {
    let style = &context.loaded.style;
    let patch = style.patch.iter().map(|patch| {
        let place = format!(
            "On the band, right of centre back by {}",
            context.words.length(patch.from_centre)
        );
        trim_row(context, &patch.trim, &place, 1)
    });
    let labels = style
        .labels
        .iter()
        .map(|label| trim_row(context, &label.trim, &capital(&label.place), 1));
    patch.chain(labels).collect()
}

fn trim_row(context: &Context<'_>, key: &str, used: &str, count: u32) -> MaterialRow {
    let trim = context.loaded.collection.trims.get(key);
    MaterialRow {
        name: trim.map_or_else(|| key.to_owned(), |trim| trim.name.clone()),
        spec: trim.map_or_else(String::new, trim_spec),
        colour: trim.and_then(|trim| swatch(trim.colour)),
        used: used.to_owned(),
        quantity: count.to_string(),
    }
}

fn trim_spec(trim: &Trim) -> String {
    let across = trim.diameter.map(|d| format!("{} across", millimetres(d)));
    let flat = trim
        .width
        .zip(trim.height)
        .map(|(w, h)| format!("{} × {}", millimetres(w), millimetres(h)));
    let long = trim.length.map(|l| format!("{} long", millimetres(l)));
    let reads = if trim.text.is_empty() {
        String::new()
    } else {
        format!("reads “{}”", trim.text)
    };
    let size = across.or(flat).or(long).unwrap_or_default();
    joined(
        [
            trim.kind.word(),
            size.as_str(),
            trim.material.as_str(),
            reads.as_str(),
        ],
        ", ",
    )
}
