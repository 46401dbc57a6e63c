//! The sewing order: every operation with its machine, stitches and yarns.

use sewing::work::{Needle, NotStated, Operation, Stage, sewing_order};
use trade::{StitchDensity, StitchType};

use super::context::Context;
use super::words::{capital, joined};
use super::yarn::yarn_text;
use crate::{OperationRow, OperationStitch, StageBlock};

pub(super) fn note(context: &Context<'_>) -> String {
    format!(
        "Size {}. One operation is one pass at one machine or table; an operation never comes before what it needs. \
         Machines and attachments are the usual ones: a workroom may use its own, as long as rows, stitches and yarns stay.",
        context.shown.size
    )
}

/// Operations by stage; a stage the course comes back to is told again.
pub(super) fn order(context: &Context<'_>) -> Vec<StageBlock> {
    let say = ::words::Words::english();
    let mut out: Vec<(Stage, StageBlock)> = Vec::new();
    for operation in sewing_order(context.shown) {
        let row = row(context, &operation);
        match out.last_mut() {
            Some((stage, block)) if *stage == operation.stage => block.operations.push(row),
            _ => out.push((
                operation.stage,
                StageBlock {
                    name: capital(&say.say(operation.stage.said())),
                    operations: vec![row],
                },
            )),
        }
    }
    out.into_iter().map(|(_, block)| block).collect()
}

fn row(context: &Context<'_>, operation: &Operation) -> OperationRow {
    let say = ::words::Words::english();
    let pieces: Vec<&str> = operation.pieces.iter().map(|piece| piece.name()).collect();
    OperationRow {
        number: operation.number.to_string(),
        name: operation.name.clone(),
        pieces: pieces.join(", ").to_lowercase(),
        machine: operation.machine.to_owned(),
        attachment: operation
            .attachment
            .as_ref()
            .map_or_else(String::new, |attachment| say.saying(&attachment.what)),
        stitches: stitches(context, &operation.needles),
        needles: operation.gauge_words(),
        ends: ends(&operation.needles),
        mind: operation.mind.iter().map(|words| capital(words)).collect(),
        ask: operation
            .not_stated
            .as_ref()
            .map_or_else(String::new, |missing| ask(context, missing)),
    }
}

/// "Not stated: overedge of the raw edges. Its yarn is estimated as 504, 3.15 /cm (8 /in)."
fn ask(context: &Context<'_>, missing: &NotStated) -> String {
    let stitch = missing.stitch.map(|stitch| {
        let sewn = stitch_words(context, stitch, missing.density);
        format!(" Its yarn is estimated as {sewn}.")
    });
    format!(
        "Not stated: {}.{}",
        missing.what,
        stitch.unwrap_or_default()
    )
}

/// "401, 3.15 /cm (8 /in)".
fn stitch_words(
    context: &Context<'_>,
    stitch: StitchType,
    density: Option<StitchDensity>,
) -> String {
    let density = density.map_or_else(String::new, |density| {
        let [own, other] = context.words.densities(density);
        format!("{own} ({other})")
    });
    joined([stitch.code(), density.as_str()], ", ")
}

/// Each stitch, density and pair of yarns once, in the order of the needles.
fn stitches(context: &Context<'_>, needles: &[Needle]) -> Vec<OperationStitch> {
    let mut out: Vec<OperationStitch> = Vec::new();
    for needle in needles {
        let told = OperationStitch {
            stitch: stitch_words(context, needle.stitch, needle.density),
            needle: yarn_text(context, &needle.yarn.key),
            under: yarn_text(context, &needle.under.key),
        };
        if !out.contains(&told) {
            out.push(told);
        }
    }
    out
}

/// How the rows begin and end; each way once.
fn ends(needles: &[Needle]) -> String {
    let mut ways: Vec<&str> = Vec::new();
    for needle in needles {
        if !needle.ends.is_empty() && !ways.contains(&needle.ends.as_str()) {
            ways.push(&needle.ends);
        }
    }
    capital(&ways.join("; "))
}
