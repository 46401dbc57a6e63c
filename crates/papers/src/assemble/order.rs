//! The sewing order: every operation with its machine, stitches and yarns.

use ::words::{Given, Said, key, say};
use sewing::all_said;
use sewing::work::{Needle, NotStated, Operation, Stage, order_notes, sewing_order};
use style::SeamId;
use trade::{StitchDensity, StitchType, Unwashed, Washed};

use super::context::Context;
use super::open::ask_in;
use super::words::{capital, joined};
use super::yarn::yarn_text;
use crate::{Ask, OperationRow, OperationStitch, StageBlock, Who};

pub(super) fn note(context: &Context<'_>) -> String {
    let size = context.shown.size.to_string();
    let mut out = context.say.say(say::PapersOrderNote { size });
    for note in order_notes(context.shown) {
        out += &format!(" {}.", capital(context.say.named(note)));
    }
    out
}

/// What of the whole order no style states: a note that asks, as what to mind does.
pub(super) fn asks(context: &Context<'_>) -> Vec<Ask> {
    let notes = order_notes(context.shown).into_iter();
    let asking = notes.filter(|note| note.name().ends_with(ASKS));
    let ask = |note| Ask {
        who: Who::Sewer,
        what: context.say.named(note).to_owned(),
        said: capital(context.say.named(note)),
    };
    asking.map(ask).collect()
}

/// Operations by stage; a stage the course comes back to is told again.
pub(super) fn order(context: &Context<'_>) -> Vec<StageBlock> {
    let words = context.say;
    let mut out: Vec<(Stage, StageBlock)> = Vec::new();
    let mut shown: Vec<(SeamId, usize)> = Vec::new();
    for operation in sewing_order(context.shown) {
        let mut row = row(context, &operation);
        show_seams(context, &operation, &mut shown, &mut row);
        match out.last_mut() {
            Some((stage, block)) if *stage == operation.stage => block.operations.push(row),
            _ => out.push((
                operation.stage,
                StageBlock {
                    name: capital(&words.say(operation.stage.said())),
                    operations: vec![row],
                },
            )),
        }
    }
    out.into_iter().map(|(_, block)| block).collect()
}

/// Where the machine and what is put on it come from; once where that is the same.
fn basis(operation: &Operation) -> String {
    let mut from = vec![operation.source.to_string()];
    if let Some(attachment) = &operation.attachment {
        from.push(attachment.source.to_string());
    }
    from.dedup();
    from.join("; ")
}

/// A seam is shown with the first operation that sews one of its rows; a later one says with which.
fn show_seams(
    context: &Context<'_>,
    operation: &Operation,
    shown: &mut Vec<(SeamId, usize)>,
    row: &mut OperationRow,
) {
    let sewn = operation
        .needles
        .iter()
        .filter(|needle| needle.row.is_some())
        .filter_map(|needle| needle.seam.seam());
    for seam in sewn {
        match shown.iter().find(|(known, _)| *known == seam) {
            Some((_, at)) if *at == operation.number => {}
            Some((_, at)) => {
                row.section_at = context.say.say(say::PapersSectionAt {
                    number: at.to_string(),
                });
            }
            None => {
                let place = context.shown.seams.iter().position(|s| s.id == seam);
                row.seams.extend(place);
                shown.push((seam, operation.number));
            }
        }
    }
}

fn row(context: &Context<'_>, operation: &Operation) -> OperationRow {
    let say = context.say;
    let pieces: Vec<&str> = operation
        .pieces
        .iter()
        .map(|piece| piece.words(say))
        .collect();
    let not_stated = operation.not_stated.as_ref();
    let not_stated = not_stated.map(|missing| ask(context, missing));
    OperationRow {
        number: operation.number.to_string(),
        name: say.saying(&operation.name),
        pieces: pieces.join(", ").to_lowercase(),
        machine: operation.machine.words(say).to_owned(),
        attachment: operation
            .attachment
            .as_ref()
            .map_or_else(String::new, |attachment| say.saying(&attachment.what)),
        stitches: stitches(context, &operation.needles),
        needles: joined(
            [
                context.said(operation.gauge_words().as_ref()).as_str(),
                context.said(operation.needle_words().as_ref()).as_str(),
            ],
            ", ",
        ),
        ends: capital(&context.said(ends(&operation.needles).as_ref())),
        mind: operation
            .mind
            .iter()
            .map(|mind| capital(&say.saying(mind)))
            .collect(),
        ask: not_stated
            .as_ref()
            .map_or_else(String::new, |ask| ask.said.clone()),
        asks: not_stated
            .into_iter()
            .chain(mind_asks(context, operation))
            .collect(),
        basis: basis(operation),
        seams: Vec::new(),
        section_at: String::new(),
    }
}

/// "Not stated: overedge of the raw edges. Its yarn is estimated as 504, 3.15 /cm (8 /in)."
fn ask(context: &Context<'_>, missing: &NotStated) -> Ask {
    let what = missing.what.clone();
    let said: Said = match missing.stitch {
        Some(stitch) => say::PapersNotStatedSewn {
            stitch: stitch_words(context, stitch, missing.density),
            what: Given::from(what.clone()),
        }
        .into(),
        None => say::PapersNotStated {
            what: Given::from(what.clone()),
        }
        .into(),
    };
    ask_in(context, Who::Sewer, what, said)
}

/// What to mind that asks for something. Such a message is known by the end of its name.
fn mind_asks(context: &Context<'_>, operation: &Operation) -> Vec<Ask> {
    let asking = operation
        .mind
        .iter()
        .filter(|mind| mind.key().ends_with(ASKS));
    let ask = |mind: &Said| {
        let who = if mind.key() == key::MIND_WASH_ASK.name() {
            Who::Laundry
        } else {
            Who::Sewer
        };
        let what = context.say.saying(mind);
        let said = capital(&what);
        Ask { who, what, said }
    };
    asking.map(ask).collect()
}

/// How the name of a message ends that asks for what no file states.
const ASKS: &str = "-ask";

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

/// "401, set to 2.9 /cm (7.4 /in), 3.1 /cm after the wash": what the machine is set to, and what is counted on
/// the finished pair where that differs.
fn needle_words(context: &Context<'_>, needle: &Needle) -> String {
    let set_to = needle.set_to.map(Unwashed::figure);
    let (Some(set), Some(counted)) = (set_to, needle.counted.map(Washed::figure)) else {
        return stitch_words(context, needle.stitch, set_to);
    };
    let [own, other] = context.words.densities(set);
    let [finished, _] = context.words.densities(counted);
    if own == finished {
        return stitch_words(context, needle.stitch, Some(set));
    }
    context.say.say(say::PapersStitchSet {
        finished,
        other,
        own,
        stitch: needle.stitch.code(),
    })
}

/// Each stitch, density and pair of yarns once, in the order of the needles.
fn stitches(context: &Context<'_>, needles: &[Needle]) -> Vec<OperationStitch> {
    let mut out: Vec<OperationStitch> = Vec::new();
    for needle in needles {
        let told = OperationStitch {
            stitch: needle_words(context, needle),
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
fn ends(needles: &[Needle]) -> Option<Said> {
    let mut ways: Vec<Said> = Vec::new();
    for way in needles.iter().filter_map(|needle| needle.ends.as_ref()) {
        if !ways.contains(way) {
            ways.push(way.clone());
        }
    }
    all_said(ways)
}
