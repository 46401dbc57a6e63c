//! Sewing one size, or the whole run.

use draft::{Finding, Severity, Spec, draft};
use style::{Collection, Seam, Size, StyleDoc};

use crate::context::{Context, finding};
use crate::garment::Garment;
use crate::{check, cut, fixings, laps, rows};

/// Drafts and sews one size.
///
/// Always gives a garment: what cannot be made as the style says is left out or drawn as near as
/// may be, and said in the findings, worst first.
pub fn make(doc: &StyleDoc, collection: &Collection, size: Size) -> Garment {
    let drafted = draft(&Spec::of(doc, size));
    let seams: Vec<Seam> = doc.all_seams().collect();
    let context = Context {
        doc,
        collection,
        size,
        pattern: &drafted.pattern,
        seams: &seams,
    };
    let mut findings: Vec<Finding> = Vec::new();
    if let Some(conflict) = &drafted.conflict {
        findings.push(finding(
            &context,
            "fit::conflict",
            Severity::Error,
            "chart",
            conflict.to_string(),
        ));
    }
    let cut = cut::cut_pieces(&context, &mut findings);
    let rows = rows::rows(&context, &mut findings);
    let fixings = fixings::fixings(&context, &mut findings);
    let laps = laps::laps(&context);
    check::check(&context, &fixings, &mut findings);
    // Worst first; among equals the order in which they were found.
    findings.sort_by_key(|f| std::cmp::Reverse(f.severity));
    Garment {
        doc: doc.clone(),
        collection: collection.clone(),
        size,
        conflict: drafted.conflict,
        seams,
        rows,
        fixings,
        laps,
        cut,
        findings,
        pattern: drafted.pattern,
    }
}

/// Sews every size of the style, in the order of its run.
pub fn make_run(doc: &StyleDoc, collection: &Collection) -> Vec<Garment> {
    doc.sizes
        .all()
        .map(|size| make(doc, collection, size))
        .collect()
}
