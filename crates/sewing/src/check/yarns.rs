//! Yarns and trims against the collection and the weight of the cloth.

use draft::{ClothUse, Finding, Severity};
use trade::yarn::yarns_for;
use trade::{ArealWeight, YarnSize};

use crate::context::{Context, finding, with_remedy};
use crate::describe::sewn_on;

pub(super) fn findings(context: &Context<'_>) -> Vec<Finding> {
    let mut out = sewing_yarns(context);
    out.extend(trims(context));
    out
}

/// Yarns that are unknown, or unusual for the weight of the shell.
fn sewing_yarns(context: &Context<'_>) -> Vec<Finding> {
    let mut out = Vec::new();
    let mut seen: Vec<(&str, bool)> = Vec::new();
    let rows = context
        .seams
        .iter()
        .filter(|seam| sewn_on(seam) == ClothUse::Shell)
        .flat_map(|seam| &seam.rows);
    let tacks = &context.doc.bartacks;
    let used = rows
        .flat_map(|row| [(row.yarn.as_str(), true), (row.under.as_str(), false)])
        .chain([(tacks.yarn.as_str(), true), (tacks.under.as_str(), false)]);
    for (key, needle) in used {
        if seen.contains(&(key, needle)) {
            continue;
        }
        seen.push((key, needle));
        match context.collection.yarns.get(key) {
            Some(yarn) => out.extend(unusual(context, key, yarn.size, needle)),
            None if seen.contains(&(key, !needle)) => {}
            None => out.push(unknown(context, "yarn", key, "yarns.toml")),
        }
    }
    out
}

fn unusual(context: &Context<'_>, key: &str, size: YarnSize, needle: bool) -> Option<Finding> {
    let weight: ArealWeight = context
        .collection
        .cloths
        .get(&context.doc.cloth.shell)?
        .weight;
    let advice = yarns_for(weight);
    let (usual, role) = if needle {
        (advice.needle, "on the needle")
    } else {
        (advice.under, "on looper and bobbin")
    };
    let (finest, heaviest) = (usual.first()?, usual.last()?);
    let word = if size < *finest {
        "fine"
    } else if size > *heaviest {
        "heavy"
    } else {
        return None;
    };
    Some(Finding {
        source: "usual yarns by weight of denim, from memory",
        ..finding(
            context,
            "sewing::yarn-for-cloth",
            Severity::Note,
            format!("yarn {key}, {role}"),
            format!("{size} is {word} for {weight} denim; usual are {finest} to {heaviest}"),
        )
    })
}

fn unknown(context: &Context<'_>, what: &str, key: &str, file: &str) -> Finding {
    with_remedy(
        finding(
            context,
            "sewing::unknown-name",
            Severity::Error,
            format!("{what} {key}"),
            format!("the collection has no {what} named \"{key}\""),
        ),
        format!("add it to {file}, or name one that is there"),
    )
}

fn trims(context: &Context<'_>) -> Vec<Finding> {
    let doc = context.doc;
    let mut keys: Vec<&str> = vec![&doc.fly.band_button];
    keys.extend(doc.fly.button.as_deref());
    keys.extend(doc.fly.zip.as_deref());
    keys.extend(doc.rivets.as_ref().map(|r| r.trim.as_str()));
    keys.extend(doc.patch.as_ref().map(|p| p.trim.as_str()));
    keys.extend(doc.labels.iter().map(|l| l.trim.as_str()));
    let mut out: Vec<Finding> = Vec::new();
    for (index, key) in keys.iter().enumerate() {
        if !context.collection.trims.contains_key(*key) && !keys[..index].contains(key) {
            out.push(unknown(context, "trim", key, "trims.toml"));
        }
    }
    out
}
