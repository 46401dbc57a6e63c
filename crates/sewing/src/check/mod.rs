//! What a sewer or a pattern cutter would notice.
//!
//! Each rule is a row of [`SEWING_RULES`]: its code, what it demands and why, where its numbers come
//! from, and the function that looks.

mod bulk;
pub(crate) mod case;
mod closing;
mod cloths;
mod fibres;
mod hems;
mod inner;
mod label_texts;
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
mod wash;
mod whys;
mod yarns;

use draft::{Finding, Severity};
use style::Edit;
use words::Key;

pub use table::SEWING_RULES;

use crate::bulk::crossings;
use crate::clash::Scene;
use crate::context::Context;
use crate::garment::Garment;
use crate::work::{closing_seam, sewing_order};
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
    let order = if drafts {
        sewing_order(garment)
    } else {
        Vec::new()
    };
    let scene = Scene::of(&garment.pattern, &garment.rows, &garment.fixings, &order);
    let case = Case {
        context: &context,
        rows: &garment.rows,
        fixings: &garment.fixings,
        crossings: &crossings(&context, &garment.fixings),
        scene: &scene,
        closing: closing_seam(garment),
    };
    let rules = SEWING_RULES
        .iter()
        .filter(|rule| drafts || rule.reads != Reads::Pieces);
    rules
        .flat_map(|rule| of_rule(&case, rule, drafts))
        .collect()
}

fn of_rule(case: &Case<'_>, rule: &SewingRule, drafts: bool) -> Vec<Finding> {
    let broken = (rule.check)(case).into_iter();
    broken
        .map(|broken| Finding {
            code: rule.code,
            severity: broken.severity,
            subject: broken.subject,
            size: Some(case.context.size),
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
        })
        .collect()
}
