//! Sewing one size, or the whole run.

use draft::draft_style;
use style::{Collection, Seam, Size, StyleDoc};

use crate::context::Context;
use crate::garment::Garment;
use crate::wash::BeforeWash;
use crate::{check, fixings, grown_pieces, laps, rows};

/// Drafts and sews one size.
///
/// Always gives a garment: what cannot be made as the style says is left out or drawn as near as
/// may be, and said in the findings, worst first.
pub fn make(doc: &StyleDoc, collection: &Collection, size: Size) -> Garment {
    let drafted = draft_style(doc, size);
    let seams: Vec<Seam> = rows::from_seam_line(doc, &drafted.pattern.spec);
    let context = Context {
        doc,
        collection,
        size,
        pattern: &drafted.pattern,
        seams: &seams,
    };
    let mut findings = draft::findings(&drafted, size, doc);
    let mut on_pieces = Vec::new();
    let cut = grown_pieces::cut_pieces(&context, &mut on_pieces);
    let rows = rows::rows(&context, &mut on_pieces);
    let fixings = fixings::fixings(&context, &mut findings);
    let laps = laps::laps(&context);
    let mut garment = Garment {
        before_wash: BeforeWash::of(&drafted.pattern, doc, collection),
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
    };
    garment.findings.extend(check::sewing_findings(&garment));
    // The pieces of a chart in conflict are a compromise: what is wrong with them says nothing more.
    if garment.conflict.is_none() {
        garment.findings.append(&mut on_pieces);
    }
    // Worst first; among equals the order in which they were found.
    garment
        .findings
        .sort_by_key(|f| std::cmp::Reverse(f.severity));
    garment
}

/// Sews every size of the style, in the order of its run.
pub fn make_run(doc: &StyleDoc, collection: &Collection) -> Vec<Garment> {
    doc.sizes
        .all()
        .map(|size| make(doc, collection, size))
        .collect()
}
