//! What a sewer or a pattern cutter would notice.
//!
//! Each rule is a row of [`SEWING_RULES`]: its code, what it demands and why, where its numbers come
//! from, and the function that looks.

mod bulk;
mod case;
mod closing;
mod cloths;
mod fibres;
mod hems;
mod inner;
mod loops;
mod open;
mod pockets;
mod rivets;
mod rows;
mod seams;
mod selvedge;
mod table;
mod trims;
mod values;
mod yarns;

use draft::{Finding, Severity};
use style::Edit;
use words::Key;

pub use table::SEWING_RULES;

use crate::bulk::crossings;
use crate::context::Context;
use crate::garment::{Fixing, Garment, StitchRow};
use case::{Broken, Case};

/// One rule of sewing.
#[derive(Clone, Copy)]
pub struct SewingRule {
    /// Stable code, such as `sewing::row-near-edge`.
    pub code: &'static str,
    /// What the rule demands, in a few words.
    pub title: Key,
    /// What goes wrong otherwise.
    pub reason: Key,
    /// Where the rule and its numbers come from.
    pub source: Key,
    /// The most serious it can be.
    pub severity: Severity,
    /// What has to be looked at.
    reads: Reads,
    check: fn(&Case<'_>) -> Vec<Broken>,
}

/// Whether a rule still means something when the chart could not be drafted.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reads {
    /// Seams, yarns, trims and the lengths of the chart.
    Style,
    /// The pieces, which are only a compromise when the chart is in conflict.
    Pieces,
}

/// What the rules say about a garment as it stands, in the order of [`SEWING_RULES`].
///
/// [`Garment::findings`] holds these already, with those of the draft; this looks again, at a garment
/// that has been changed.
pub fn sewing_findings(garment: &Garment) -> Vec<Finding> {
    let context = Context {
        doc: &garment.doc,
        collection: &garment.collection,
        size: garment.size,
        pattern: &garment.pattern,
        seams: &garment.seams,
    };
    let drafts = garment.conflict.is_none();
    findings(&context, &garment.rows, &garment.fixings, drafts)
}

/// What the rules say; those that read the pieces only where the chart `drafts`.
pub(crate) fn findings(
    context: &Context<'_>,
    rows: &[StitchRow],
    fixings: &[Fixing],
    drafts: bool,
) -> Vec<Finding> {
    let case = Case {
        context,
        rows,
        fixings,
        crossings: &crossings(context, fixings),
    };
    let mut out = Vec::new();
    for rule in SEWING_RULES {
        if !drafts && rule.reads == Reads::Pieces {
            continue;
        }
        out.extend((rule.check)(&case).into_iter().map(|broken| {
            Finding {
                code: rule.code,
                severity: broken.severity,
                subject: broken.subject,
                size: Some(context.size),
                found_in: None,
                message: broken.message,
                source: broken.source.unwrap_or_else(|| rule.source.into()),
                remedy: broken.remedy,
                edit: broken
                    .cure
                    .and_then(|(path, value)| Edit::set(&path, &value).ok()),
                // Places on a compromise mean nothing.
                place: broken.place.filter(|_| drafts),
                follows: false,
            }
        }));
    }
    out
}
