//! How far each yarn is in colour from the cloth it lies on: for the maker, who chose both.

use sewing::yarn::{Ground, Group, YarnPlan};
use words::key;

use super::context::Context;
use crate::YarnOnClothRow;

/// Every pair of yarns and cloth once, in the order of the plan.
pub(super) fn rows(context: &Context<'_>, plan: &YarnPlan) -> Vec<YarnOnClothRow> {
    let mut out = Vec::new();
    for group in &plan.groups {
        for ground in &group.grounds {
            let row = row(context, group, ground);
            if !out.contains(&row) {
                out.push(row);
            }
        }
    }
    out
}

fn row(context: &Context<'_>, group: &Group, ground: &Ground) -> YarnOnClothRow {
    let collection = &context.loaded.collection;
    let yarn = |key: &String| match collection.yarns.get(key) {
        Some(yarn) => yarn.name.clone(),
        None => key.clone(),
    };
    let cloth = collection.cloths.get(&ground.cloth);
    let cloth = cloth.map_or(ground.cloth.as_str(), |cloth| cloth.name.as_str());
    let face = if ground.reverse {
        key::PAPERS_CLOTH_REVERSE
    } else {
        key::PAPERS_CLOTH_FACE
    };
    let yarns: Vec<String> = group.yarns.iter().map(yarn).collect();
    YarnOnClothRow {
        yarns: yarns.join(", "),
        cloth: format!("{cloth}, {}", context.say.named(face)),
        difference: ground.difference.to_string(),
        contrast: context
            .say
            .named(ground.difference.contrast().key())
            .to_owned(),
    }
}
